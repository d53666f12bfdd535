// Rows that were not as they were written are set aside. Until somebody has looked and decided, the page says so, a stop
// among them stands, and no load is shown for that lifter.
import type { StopsInForce as InForce, StopsAnswer } from "bismar-page-package";
import { ask } from "./engine.ts";
import { logOf, parsed, type Kept, type StoredEvent } from "./kept.ts";
import { dayLong } from "./numbers.ts";
import { shownName } from "./names.ts";

/** What was set aside and not decided on: said in words, with the stops among it as entries that stand alone. */
export interface Damage {
  words: string;
  stops: string[];
}

interface Told {
  day?: unknown;
  with?: unknown;
  pain?: unknown[];
  asks?: unknown[];
  status?: unknown;
  reason?: unknown;
  role?: unknown;
  lifts?: unknown;
}

/** What of an entry makes a day more careful without stopping it; of settings their ceilings alone. */
function carefulIn(name: string, body: Told): unknown {
  if (name === "clearance_recorded") return body.status === "cleared_with_limits" ? body : undefined;
  if (name === "role_set") return body.role === "rest" || body.role === "retire" ? body : undefined;
  if (name === "coach_override" || name === "layoff_noted") return body;
  if (name !== "parameters_changed" || !Array.isArray(body.lifts)) return undefined;
  const lifts = (body.lifts as ({ id?: unknown; ceiling?: unknown } | null)[]).flatMap((one) => (one?.ceiling === undefined ? [] : [{ id: one.id, ceiling: one.ceiling }]));
  return lifts.length > 0 ? { lifts } : undefined;
}

/** Whether an entry that stands alone makes a day more careful and stops nothing. */
export function isCareful(text: string): boolean {
  const [name, body] = Object.entries(((parsed(text) as Partial<StoredEvent> | null | undefined)?.kind ?? {}) as Record<string, Told | null>)[0] ?? [];
  if (name === undefined || !body || (name === "layoff_noted" && body.reason === "ill")) return false;
  return carefulIn(name, body) !== undefined;
}

/** What in an entry may stop a lift or make a day more careful, each as an entry of its own, whatever else in it is damaged. */
function piecesOf(text: string): StoredEvent[] {
  const event = parsed(text) as Partial<StoredEvent> | null | undefined;
  const [name, body] = Object.entries((event?.kind ?? {}) as Record<string, Told | null>)[0] ?? [];
  if (!event?.day || name === undefined || !body) return [];
  // What a correction put in place of an entry counts like an entry.
  if (name === "correction") return body.with ? piecesOf(JSON.stringify({ day: body.day ?? event.day, kind: body.with })) : [];
  const alone = (kind: Record<string, unknown>): StoredEvent => ({ sequence: 1, day: String(event.day), kind });
  if (name === "symptom_report" || name === "pain_report") return [alone({ [name]: body })];
  if ((name === "clearance_recorded" && body.status === "not_cleared") || (name === "layoff_noted" && body.reason === "ill")) return [alone({ [name]: body })];
  const careful = carefulIn(name, body);
  if (careful) return [alone({ [name]: careful })];
  if (!["session_recorded", "day_report", "next_day_report"].includes(name)) return [];
  const asks = name === "day_report" && Array.isArray(body.asks) && body.asks.length > 0 ? [alone({ day_report: { asks: body.asks } })] : [];
  return [...asks, ...(Array.isArray(body.pain) ? body.pain : []).map((pain) => alone({ pain_report: pain }))];
}

/** All that may stop something or makes a day more careful, each alone. */
export function piecesIn(texts: string[]): string[] {
  return texts.flatMap(piecesOf).map((one) => JSON.stringify(one));
}

interface Pain {
  region?: unknown;
  score?: unknown;
  features?: unknown;
}

/** The entries that may stop something or make a day more careful. Of what was told several times in the same words the last counts; of pain in a region
 * the worst, the last, and the last with each feature. A break is over where a session comes after it. */
export function stopsIn(texts: string[]): string[] {
  const trained = texts.findLastIndex((text) => (parsed(text) as Partial<StoredEvent> | null | undefined)?.kind?.session_recorded !== undefined);
  const all = texts.flatMap((text, at) => piecesOf(text).filter((one) => at > trained || (one.kind.layoff_noted as Told | null | undefined)?.reason !== "planned"));
  const counts = new Map<string, number>();
  for (const [at, { kind }] of all.entries()) {
    const pain = kind.pain_report as Pain | null | undefined;
    if (!pain || typeof pain.score !== "number") {
      counts.set(JSON.stringify(kind), at);
      continue;
    }
    const region = JSON.stringify(pain.region);
    const features = Array.isArray(pain.features) ? pain.features : [];
    for (const one of ["last", ...features.map((feature) => JSON.stringify(feature))]) counts.set(`${region} ${one}`, at);
    const worst = all[counts.get(`${region} worst`) ?? -1]?.kind.pain_report as { score: number } | undefined;
    if (!worst || pain.score >= worst.score) counts.set(`${region} worst`, at);
  }
  const kept = new Set(counts.values());
  return all.filter((_, at) => kept.has(at)).map((one) => JSON.stringify(one));
}

/** What is set aside of two findings together. */
export function together(one: Damage | undefined, other: Damage | undefined): Damage | undefined {
  if (!one || !other) return one ?? other;
  return { words: one.words === other.words ? one.words : `${one.words} ${other.words}`, stops: [...one.stops, ...other.stops.filter((text) => !one.stops.includes(text))] };
}

/** What stays held of stops that do not fit a log; nothing where all do. */
export function unfit(id: string, stops: string[]): Damage | undefined {
  if (stops.length === 0) return undefined;
  const one = stops.length === 1;
  return { words: `${one ? "1 entry" : `${stops.length} entries`} with a sign, pain or a refusal, set aside of ${shownName(id)}, ${one ? "does" : "do"} not fit the log as it is (a region that it does not know, for one), and ${one ? "stands" : "stand"}.`, stops };
}

/** The damage that a saved copy was made with; its words are made anew. */
export function damageOf(id: string, given: unknown): Damage | undefined {
  if (given === undefined || given === null) return undefined;
  const { stops } = given as { stops?: unknown };
  return { words: `This copy of ${shownName(id)} was saved while part of the log was damaged, and nobody had decided.`, stops: Array.isArray(stops) ? stopsIn(stops.map(String)) : [] };
}

/** Puts stops behind an open log, none before its last day; gives their texts as they are there, and those that do not fit. */
export function putStops(log: number, stops: string[]): { texts: string[]; left: string[] } {
  const left: string[] = [];
  const texts = stops.flatMap((text) => {
    const event = parsed(text) as StoredEvent;
    const { lastDay = event.day } = ask("page.lifter", { log });
    const put = ask("page.join", { log, events: [JSON.stringify({ ...event, day: event.day < lastDay ? lastDay : event.day })] }).texts;
    if (put.length === 0) left.push(text);
    return put;
  });
  return { texts, left };
}

/** What is stopped where the stops that were set aside count too. */
function withThem(kept: Kept, events: string[], stops: string[], today: string): StopsAnswer {
  const log = ask("page.open", { log: logOf(kept, events) });
  try {
    putStops(log, stops.filter((text) => !isCareful(text)));
    const { lastDay = today } = ask("page.lifter", { log });
    return ask("page.stops", { log, today: today < lastDay ? lastDay : today });
  } finally {
    ask("page.close", { log });
  }
}

/** What is said in place of a load. */
export function heldWords(id: string): string {
  return `Part of the log of ${shownName(id)} was damaged and is set aside: no load until somebody has looked and decided, under Files.`;
}

/** What is stopped of a lifter whose log is damaged: everything. */
export function heldStops(kept: Kept, events: string[], { stops }: Damage, today: string, lifts: string[]): StopsAnswer {
  const found = withThem(kept, events, stops, today);
  const [first, ...rest] = found.lines;
  const held = heldWords(kept.id);
  return { ...found, lines: first === undefined ? [held] : [`${first} ${held}`, ...rest], lifts: lifts.map((lift) => ({ ...(found.lifts.find((one) => one.lift === lift) ?? { lift, why: held }) })) };
}

/** The same where others may read it: that something was set aside, and nothing of what it says. */
export function asideWords(id: string): string {
  return `Part of the log of ${shownName(id)} was damaged and is set aside. No load of ${shownName(id)} is shown until somebody has looked and decided, under Files.`;
}

/** What is said above every view until somebody has decided. */
export function damageWords({ words }: Damage, all: InForce[], own: InForce[]): string {
  const among = all.filter((one) => !own.some((other) => other.what === one.what && other.since === one.since));
  const names = among.map((one) => `${one.what}, ${dayLong(one.since)}`);
  const stop = names.length === 0 ? "No stop was found in what can still be read of it." : `Among what was set aside: ${names.join("; ")}. It stands.`;
  return `${words} ${stop} No load is shown until somebody has looked and decided, under Files.`;
}
