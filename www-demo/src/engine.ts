// The library: every number of the page comes through here.
import init, { BismarError, call, type Allowed, type Code, type Functions } from "bismar-page-package";
import { atLeast, atMost, POUND, written, type Mass } from "./numbers.ts";

/** The name of a function or of an answer, what it takes, and what it gives: all declared by the package. */
export type Key = keyof Functions;
export type Given<K extends Key> = NonNullable<Parameters<Functions[K]>[0]>;
export type Answered<K extends Key> = ReturnType<Functions[K]>;

/** An answer, or why there is none. */
export type Tried<T> = { answer: T; refused?: undefined } | { answer?: undefined; refused: Refused };

type KeysOf<U> = U extends object ? keyof U : never;
type At<U, K extends PropertyKey> = U extends { [key in K]?: infer V } ? Exclude<V, undefined> : never;

/** What stands behind a kind, where a value is of that kind; kinds without a body are texts. */
export function kindOf<U, K extends KeysOf<U>>(one: U, kind: K): At<U, K> | undefined {
  return typeof one === "object" && one !== null && kind in one ? ((one as Record<K, At<U, K>>)[kind] as At<U, K>) : undefined;
}

declare const WASM_BASE64: string;

/** Newer browsers read such a text themselves. */
type Reads = { fromBase64?: (text: string) => Uint8Array<ArrayBuffer> };

function bytes(text: string): Uint8Array<ArrayBuffer> {
  const read = (Uint8Array as Reads).fromBase64;
  if (read) return read.call(Uint8Array, text);
  const letters = atob(text);
  const out = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) out[at] = letters.charCodeAt(at);
  return out;
}

export async function start(): Promise<void> {
  const unpacked = new Blob([bytes(WASM_BASE64)]).stream().pipeThrough(new DecompressionStream("gzip"));
  // As it is unpacked it is compiled, beside the thread that draws.
  await init(new Response(unpacked, { headers: { "content-type": "application/wasm" } }));
}

/** What the library refused, in words. */
export class Refused extends Error {
  code: Code;
  field: string;
  constructor(code: Code, text: string, field: string) {
    super(text);
    this.code = code;
    this.field = field;
  }
}

/** A number as a mass, for the unit that the page shows; nothing where it is none. */
function massOf(number: number | undefined, unit: string | undefined): Mass | undefined {
  if (number === undefined || !Number.isFinite(number)) return undefined;
  return unit === "kg" ? { kg: number } : unit === "lb" ? { kg: number * POUND } : undefined;
}

/** What would have been taken; both ends are allowed. */
export function allowed(rule: Allowed | undefined): string {
  if (rule === undefined) return "";
  if (rule.oneOf) return ` Allowed: ${rule.oneOf.join(", ")}.`;
  if (rule.rule) return ` Allowed: ${rule.rule}.`;
  const [low, high] = [massOf(rule.low, rule.unit), massOf(rule.high, rule.unit)];
  if (low && high) return ` Allowed: ${atLeast(low)} to ${atMost(high)}.`;
  return ` Allowed: ${rule.low} to ${rule.high}${rule.unit ? ` ${rule.unit}` : ""}.`;
}

/** The refused value, a mass with its unit. */
function valueWords(error: BismarError): string {
  const refused = massOf(Number(error.value), error.allowed?.unit);
  return refused ? written(refused) : String(error.value);
}

function sentence(error: BismarError): string {
  let meaning: string = error.code;
  try {
    meaning = call("page.explain", { code: error.code });
  } catch {
    // The instance itself is gone; the code has to do.
  }
  const where = error.event === undefined ? "" : `Event ${error.event}: `;
  const what = error.field ? ` (${error.field}${error.value === undefined ? "" : `: ${valueWords(error)}`})` : "";
  return `${where}${meaning.replace(/\.$/, "")}${what}.${allowed(error.allowed)}`;
}

/** Asks the library. */
export function ask<K extends Key>(key: K, given: Given<K>): Answered<K> {
  try {
    return call<K>(key, ...([given] as Parameters<Functions[K]>));
  } catch (error) {
    if (error instanceof BismarError) throw new Refused(error.code, sentence(error), error.field);
    throw error;
  }
}

/** Asks, and gives words instead of an answer where the library refuses. */
export function attempt<K extends Key>(key: K, given: Given<K>): Tried<Answered<K>> {
  try {
    return { answer: ask(key, given) };
  } catch (error) {
    if (error instanceof Refused) return { refused: error };
    throw error;
  }
}
