// The library: every number of the page comes through here.
import init, { BismarError, call } from "bismar-page-package";
import { mass } from "./numbers.ts";

// Answers are plain trees; what is in them is said by the package's own types and tests.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type Tree = any;

declare const WASM_BASE64: string;

function bytes(text: string): Uint8Array<ArrayBuffer> {
  const letters = atob(text);
  const out = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) out[at] = letters.charCodeAt(at);
  return out;
}

export async function start(): Promise<void> {
  await init(bytes(WASM_BASE64));
}

/** What the library refused, in words. */
export class Refused extends Error {
  code: string;
  constructor(code: string, text: string) {
    super(text);
    this.code = code;
  }
}

function allowed(rule: Tree): string {
  if (rule === undefined) return "";
  if (rule.oneOf) return ` Allowed: ${rule.oneOf.join(", ")}.`;
  if (rule.rule) return ` Allowed: ${rule.rule}.`;
  // Masses in the unit that the page shows.
  if (rule.unit === "kg") return ` Allowed: ${mass({ kg: rule.low })} to ${mass({ kg: rule.high })}.`;
  return ` Allowed: ${rule.low} to ${rule.high}${rule.unit ? ` ${rule.unit}` : ""}.`;
}

/** The refused value, a mass with its unit. */
function valueWords(error: InstanceType<typeof BismarError>): string {
  const number = Number(error.value);
  return (error.allowed as Tree)?.unit === "kg" && Number.isFinite(number) ? mass({ kg: number }) : String(error.value);
}

function sentence(error: InstanceType<typeof BismarError>): string {
  let meaning: string = error.code;
  try {
    meaning = call("page.explain", { code: error.code }) as string;
  } catch {
    // The instance itself is gone; the code has to do.
  }
  const where = error.event === undefined ? "" : `Event ${error.event}: `;
  const what = error.field ? ` (${error.field}${error.value === undefined ? "" : `: ${valueWords(error)}`})` : "";
  return `${where}${meaning.replace(/\.$/, "")}${what}.${allowed(error.allowed)}`;
}

/** Asks the library. */
export function ask(key: string, given: object = {}): Tree {
  try {
    return call(key, given);
  } catch (error) {
    if (error instanceof BismarError) throw new Refused(error.code, sentence(error));
    throw error;
  }
}

/** Asks, and gives words instead of an answer where the library refuses. */
export function attempt(key: string, given: object): { answer?: Tree; refused?: Refused } {
  try {
    return { answer: ask(key, given) };
  } catch (error) {
    if (error instanceof Refused) return { refused: error };
    throw error;
  }
}
