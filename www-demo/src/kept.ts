// What lies on the device, read and mended: each event is sealed to the one before, and so are header, plan and the end of
// the log. What is not as it was written is set aside and said; nothing that can be read is kept from anybody for it.
import type { IDBPDatabase } from "idb";
import { answers, Silent } from "./silence.ts";
import { stopsIn, type Damage } from "./damage.ts";
import { ask, attempt } from "./engine.ts";
import { shownName } from "./names.ts";
import { countEntries } from "./numbers.ts";

/** An event and a log as they are kept: what is in them is for the library to read. */
export interface StoredEvent {
  sequence: number;
  day: string;
  kind: Record<string, unknown>;
  note?: string;
}
export interface StoredLog {
  version: number;
  lifter: { id: string };
  events: StoredEvent[];
}
/** Something that is set aside, before it has a key. */
interface Torn {
  lifter: string;
  text: string;
  why: string;
  seal?: string;
}

export interface Kept {
  id: string;
  header: string;
  plan: string;
  /** Version of the log's format, as it came: a newer one may hold entries that this page does not know. */
  version: number;
  /** Rows of it that were set aside as damaged, until somebody has decided. */
  damage?: Damage;
}
/** A text with the seal that ties it to the one before. */
export interface Row {
  lifter: string;
  place: number;
  text: string;
  seal: string;
}
/** How long the two lists of a lifter are, and their last seals. */
export interface Ends {
  events: number;
  last: string;
  draft: number;
  draftLast: string;
}
/** A lifter's row on the device. */
export interface Stored extends Kept {
  revision: number;
  ends: Ends;
  seals: { header: string; plan: string; ends: string };
}
export interface Loaded extends Kept {
  events: string[];
  draft: string[];
  /** The seal of the last event: it stands for all of them. */
  seal: string;
}
/** A lifter as the device has it, with what was found wrong there. */
export interface Found {
  lifter: Loaded;
  draftSeal: string;
  /** The next free places of both lists. */
  places: { events: number; draft: number };
  revision: number;
  said: string[];
  /** The number under which the library has the log open; nothing where it was closed again. */
  log?: number;
}
/** Somebody whose log cannot be read: it is left as it lies. */
export interface Unreadable {
  id: string;
  words: string;
  row: Partial<Stored> | undefined;
  events: string[];
  draft: string[];
}

/** Why a row is set aside: it is the first that is not as it was written, it comes after that one, or rows are gone. */
const DAMAGED = "not as it was written";
const BEHIND = "written after an entry that is not as it was written";
const LOST = "the end of the log was lost:";
export const isDamage = (why: string): boolean => why === DAMAGED || why === BEHIND || why.startsWith(LOST);

/** More than any log has: the end of a lifter's range of places. */
const PLACES_MOST = 10_000_000;

export function allOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, PLACES_MOST]);
}

function seal(before: string, text: string): string {
  return ask("page.seal", { before, text });
}

/** The row of a lifter, sealed. */
export function rowOf(kept: Kept, revision: number, ends: Ends): Stored {
  const { id, header, plan, version, damage } = kept;
  return { id, header, plan, version, revision, ends, ...(damage ? { damage } : {}), seals: sealsOf({ id, header, plan, version, ends }) };
}
function sealsOf(row: Kept & { ends: Ends }): Stored["seals"] {
  const { events, last, draft, draftLast } = row.ends;
  return {
    header: seal(row.id, `header ${row.version} ${row.header}`),
    plan: seal(row.id, `plan ${row.plan}`),
    ends: seal(row.id, `ends ${events} ${last} ${draft} ${draftLast}`),
  };
}

/** Texts as rows, each sealed to the one before. */
export function rowsOf(id: string, texts: string[], start: string, place: number): { rows: Row[]; seal: string } {
  let last = start;
  const rows = texts.map((text, at) => {
    last = seal(last, text);
    return { lifter: id, place: place + at, text, seal: last };
  });
  return { rows, seal: last };
}

export function logOf(kept: Kept, events: string[]): string {
  return `{"format":"bismar-log","version":${kept.version},"lifter":${kept.header},"events":[${events.join(",")}]}`;
}

/** A plan with every lift, where none came with the log. */
export function usualPlan(log: string | number): string {
  const lifts = (attempt("page.lifter", { log }).answer?.parameters?.lifts ?? []).map((one) => ({ lift: one.id }));
  return JSON.stringify({ format: "bismar-plan", version: 1, lifts });
}

/** Names that have events or rows here. */
export async function everybody(base: IDBPDatabase): Promise<string[]> {
  const ids = new Set((await base.getAllKeys("lifters")) as string[]);
  for (const name of ["events", "drafts"]) {
    const rows = base.transaction(name).store;
    let cursor = await rows.openKeyCursor();
    while (cursor) {
      const [id] = cursor.key as unknown as [string, number];
      ids.add(id);
      cursor = await rows.openKeyCursor(IDBKeyRange.lowerBound([id, PLACES_MOST], true));
    }
  }
  return [...ids].filter((id) => typeof id === "string");
}

/** A list as far as it is as it was written, and the rest. */
function whole(id: string, rows: Row[]): { texts: string[]; seal: string; torn: Row[]; next: number } {
  const texts = rows.map((row) => String(row.text));
  const checked = ask("page.check_seals", { start: id, texts, seals: rows.map((row) => String(row.seal)) });
  const good = checked.whole;
  return {
    texts: texts.slice(0, good),
    seal: checked.last,
    torn: rows.slice(good),
    next: rows.reduce((most, row) => (row.place >= most ? row.place + 1 : most), 0),
  };
}


/** What is wrong with a row, and what is used instead: who it is. */
function mendHeader(kept: Kept, row: Partial<Stored> | undefined, seals: Stored["seals"] | undefined, events: string[], aside: Torn[], said: string[]): void {
  const { id } = kept;
  const { seals: written } = row ?? {};
  const name = shownName(id);
  if (!row) said.push(`The row that says who ${name} is was gone. It was restored from the log, without the day of birth and with a plan of every lift; look at both.`);
  const readable = attempt("page.accepts", { log: safely(kept.header) ? logOf(kept, []) : "{" }).answer && safely(kept.header)?.id === id;
  if (!row || !readable || seals?.header !== written?.header) {
    if (row) {
      aside.push({ lifter: id, text: kept.header, why: "who the lifter is: not as it was written" });
      said.push(`What was written down about who ${name} is was damaged: it is set aside. The day of birth is not known now.`);
    }
    kept.header = JSON.stringify({ id });
    // A newer version, where the log has kinds of entries that this one does not know.
    kept.version = attempt("page.accepts", { log: logOf({ ...kept, version: 1 }, events) }).answer ? 1 : 2;
  }
}

/** The same of the plan, beside the log, which lies open under a number. */
function mendPlan(kept: Kept, row: Partial<Stored> | undefined, seals: Stored["seals"] | undefined, log: number, aside: Torn[], said: string[]): void {
  if (row && seals?.plan === row.seals?.plan && !attempt("page.check_plan", { plan: kept.plan, log }).refused) return;
  if (row) {
    aside.push({ lifter: kept.id, text: kept.plan, why: "the plan: not as it was written" });
    said.push(`The plan of ${shownName(kept.id)} was not as it was written: it is set aside, and every lift is planned. Look at the plan.`);
  }
  kept.plan = usualPlan(log);
}

/** The value of a text; nothing where it is none. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
const safely = (text: string): { id?: unknown } | null | undefined => parsed(text) as { id?: unknown } | null | undefined;

/** What lies on the device of one lifter, as it lies. */
export type Lying = [row: Partial<Stored> | undefined, events: Row[], drafts: Row[]];
export async function lyingOf(base: IDBPDatabase, id: string): Promise<Lying> {
  const reading = base.transaction(["lifters", "events", "drafts"]);
  return (await Promise.all([
    reading.objectStore("lifters").get(id),
    reading.objectStore("events").getAll(allOf(id)),
    reading.objectStore("drafts").getAll(allOf(id)),
  ])) as Lying;
}

/** One lifter as the device has it, mended where that is needed; nothing for one who is gone. Whoever is asked about at
 * once has the log left open (`open`). */
export async function find(base: IDBPDatabase, id: string, lying?: Lying, open = false): Promise<Found | Unreadable | undefined> {
  const [row, events, drafts] = lying ?? (await lyingOf(base, id));
  if (!row && events.length + drafts.length === 0) return undefined;
  const [own, draft] = [whole(id, events), whole(id, drafts)];
  const aside: Torn[] = [];
  const said: string[] = [];
  const name = shownName(id);
  const torn = own.torn.length + draft.torn.length;
  const hurt: string[] = [];
  if (torn > 0) {
    hurt.push(`Part of the log of ${name} was damaged. ${torn === 1 ? "1 entry was" : `${torn} entries were`} not as written and set aside, from the first damaged one on; the rest is whole. Look at the last entries, and see Files for what was set aside.`);
    for (const one of [own.torn, draft.torn]) aside.push(...one.map((row, at) => ({ ...row, why: at === 0 ? DAMAGED : BEHIND })));
  }
  const kept: Kept = { id, header: String(row?.header), plan: String(row?.plan), version: Number(row?.version) || 1 };
  const seals = row?.ends && sealsOf({ ...kept, ends: row.ends });
  mendHeader(kept, row, seals, own.texts, aside, said);
  // Read whole once: it stays open while the plan is held against it.
  const opened = attempt("page.open", { log: logOf(kept, own.texts) });
  if (opened.refused) return { id, words: opened.refused.message, row, events: own.texts, draft: draft.texts };
  mendPlan(kept, row, seals, opened.answer, aside, said);
  if (!open) ask("page.close", { log: opened.answer });
  const lost = lostEnd(row, own, draft);
  if (lost) {
    hurt.push(`${lost.startsWith("The end") ? "" : "The end of the log was lost: "}${lost} ${name}. If there is a file, open it: it shows what it would add.`);
    aside.push({ lifter: id, text: "", why: `${LOST} ${lost} ${name}` });
  }
  const before = row?.damage;
  if (before) kept.damage = { words: String(before.words), stops: Array.isArray(before.stops) ? before.stops.map(String) : [] };
  if (hurt.length > 0) kept.damage = { words: hurt.join(" "), stops: stopsIn([...(kept.damage?.stops ?? []), ...own.torn.map((one) => one.text)]) };
  const revision = Number(row?.revision) || 0;
  const found = {
    lifter: { ...kept, events: own.texts, draft: draft.texts, seal: own.seal },
    draftSeal: draft.seal,
    places: { events: own.next, draft: draft.next },
    revision,
    said,
    ...(open ? { log: opened.answer } : {}),
  };
  if (said.length + hurt.length > 0) await mend(base, found, aside, [own.torn, draft.torn], JSON.stringify([row, events, drafts]));
  return found;
}

/** The same; where reading fails, that lifter is left as it lies, and said: nobody else is kept from anything for it. */
export async function findOrLeave(base: IDBPDatabase, id: string, lying?: Lying, open = false, again = false): Promise<Found | Unreadable | undefined> {
  try {
    return await find(base, id, lying ?? (await answers(lyingOf(base, id))), open);
  } catch (error) {
    if (error instanceof Silent) throw error;
    // Another window may have written in between.
    if (error instanceof Otherwise && lying) return findOrLeave(base, id, undefined, open);
    if (error instanceof Otherwise && !again) return findOrLeave(base, id, undefined, open, true);
    const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return { id, words: `Reading it from this device failed (${detail}). Nothing of it was changed; open the page anew to try again, and go by no load until it can be read.`, row: undefined, events: [], draft: [] };
  }
}

type List = ReturnType<typeof whole>;

/** Entries that the row knows of and that are not there. */
function lostEnd(row: Partial<Stored> | undefined, own: List, draft: List): string | undefined {
  const { ends } = row ?? {};
  if (!ends) return undefined;
  const lost = ends.events - own.texts.length - own.torn.length;
  const sets = ends.draft - draft.texts.length - draft.torn.length;
  if (lost > 0) return `${countEntries(lost)} at the end ${lost === 1 ? "is" : "are"} not there in the log of`;
  if (sets > 0) return `${countEntries(sets)} at the end of the session going on ${sets === 1 ? "is" : "are"} not there for`;
  const other = own.torn.length === 0 && ends.last !== own.seal;
  return other ? "The end of the log is not the one that was written for" : undefined;
}

/** Part of a transaction: whether it is kept is told by the whole, which may be given up while this waits. */
export function part(request: Promise<unknown>): void {
  request.catch(() => undefined);
}

/** What was read is not what is read a second time. */
class Otherwise extends Error {
  constructor() {
    super("what was read is not what lies there");
  }
}

/** Writes down what was mended, with what was set aside, in one piece: only where what was read is what lies there when it is read
 * a second time. */
async function mend(base: IDBPDatabase, found: Found, aside: Torn[], torn: [Row[], Row[]], read: string): Promise<void> {
  const { lifter } = found;
  const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
  const finished = writing.done;
  finished.catch(() => undefined);
  const lists = (["events", "drafts"] as const).map((name) => writing.objectStore(name).getAll(allOf(lifter.id)));
  const again = await Promise.all([writing.objectStore("lifters").get(lifter.id), ...lists]);
  if (JSON.stringify(again) !== read) {
    writing.abort();
    throw new Otherwise();
  }
  for (const one of aside) part(writing.objectStore("asides").add(one));
  for (const row of torn[0]) part(writing.objectStore("events").delete([row.lifter, row.place]));
  for (const row of torn[1]) part(writing.objectStore("drafts").delete([row.lifter, row.place]));
  found.revision += 1;
  part(writing.objectStore("lifters").put(rowOf(lifter, found.revision, endsOf(lifter, found.draftSeal))));
  await finished;
}

export function endsOf(lifter: Loaded, draftLast: string): Ends {
  return { events: lifter.events.length, last: lifter.seal, draft: lifter.draft.length, draftLast };
}
