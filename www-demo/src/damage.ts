// Rows that were not as they were written are set aside. Until somebody has looked and decided, the page says so, a stop
// among them stands, and no load is shown for that lifter.
import type { InForce, StopsAnswer } from "bismar-page-package";
import { ask } from "./engine.ts";
import { logOf, parsed, type Kept, type StoredEvent } from "./kept.ts";
import { dayLong } from "./numbers.ts";
import { shownName } from "./names.ts";

/** What was set aside and not decided on: said in words, with the stops among it as entries that stand alone. */
export interface Damage {
  words: string;
  stops: string[];
}

/** More entries than this that may stop something: the latest count. */
const MOST_STOPS = 60;

interface Told {
  pain?: unknown[];
  asks?: unknown[];
  status?: unknown;
  reason?: unknown;
}

/** What in an entry may stop a lift, each as an entry of its own, whatever else in it is damaged. */
function piecesOf(text: string): StoredEvent[] {
  const event = parsed(text) as Partial<StoredEvent> | null | undefined;
  const [name, body] = Object.entries((event?.kind ?? {}) as Record<string, Told | null>)[0] ?? [];
  if (!event?.day || name === undefined || !body) return [];
  const alone = (kind: Record<string, unknown>): StoredEvent => ({ sequence: 1, day: String(event.day), kind });
  if (name === "symptom_report" || name === "pain_report") return [alone({ [name]: body })];
  if ((name === "clearance_recorded" && body.status === "not_cleared") || (name === "layoff_noted" && body.reason === "ill")) return [alone({ [name]: body })];
  if (!["session_recorded", "day_report", "next_day_report"].includes(name)) return [];
  const asks = name === "day_report" && Array.isArray(body.asks) && body.asks.length > 0 ? [alone({ day_report: { asks: body.asks } })] : [];
  return [...asks, ...(Array.isArray(body.pain) ? body.pain : []).map((pain) => alone({ pain_report: pain }))];
}

/** The entries that may stop something. */
export function stopsIn(texts: string[]): string[] {
  return texts.flatMap(piecesOf).slice(-MOST_STOPS).map((one) => JSON.stringify(one));
}

/** Puts stops behind an open log, none before its last day; gives their texts as they are there. */
export function putStops(log: number, stops: string[]): string[] {
  return stops.flatMap((text) => {
    const event = parsed(text) as StoredEvent;
    const { lastDay = event.day } = ask("page.lifter", { log });
    return ask("page.join", { log, events: [JSON.stringify({ ...event, day: event.day < lastDay ? lastDay : event.day })] }).texts;
  });
}

/** What is stopped where the stops that were set aside count too. */
function withThem(kept: Kept, events: string[], stops: string[], today: string): StopsAnswer {
  const log = ask("page.open", { log: logOf(kept, events) });
  try {
    putStops(log, stops);
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

/** What is said above every view until somebody has decided. */
export function damageWords({ words }: Damage, all: InForce[], own: InForce[]): string {
  const among = all.filter((one) => !own.some((other) => other.what === one.what && other.since === one.since));
  const names = among.map((one) => `${one.what}, ${dayLong(one.since)}`);
  const stop = names.length === 0 ? "No stop was found in what can still be read of it." : `Among what was set aside: ${names.join("; ")}. It stands.`;
  return `${words} ${stop} No load is shown until somebody has looked and decided, under Files.`;
}
