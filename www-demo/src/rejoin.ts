// What was entered here while another window wrote to the same lifter, put after what lies on the device now. What opens a
// stop again is not put after entries that nobody here has seen, and nothing is put on an entry that is another by now.
import type { Damage } from "./damage.ts";
import { ask, attempt } from "./engine.ts";
import { logOf, type Kept, type Loaded, type StoredEvent } from "./kept.ts";

/** Something set aside that is brought back, with what of it does not fit and stays there. */
export interface Taken {
  key: IDBValidKey;
  rest?: string;
}

/** Something entered here that is not on the device yet. */
export interface Entered {
  events: string[];
  /** The list of sets that the events end; nothing where it goes on. */
  ends?: string[];
  draft: string[];
  /** Of an undo: the set that it takes off. */
  last?: string;
  plan?: string;
  /** What makes that plan of the one before, and the same of another; nothing where it does not fit. */
  change?: (plan: string) => string | undefined;
  /** Of a file that was held against the log: it goes to no other log than that. */
  looked?: boolean;
  /** Somebody decided on what is damaged: what was held before, and what is held now. */
  holds?: { before: Damage | undefined; now: Damage | undefined };
  /** What it takes out of what is set aside, each with what stays there of it. */
  takes?: Taken[];
  /** Another window decided on that meanwhile: nothing is put a second time. */
  decided?: boolean;
  /** What became of it. */
  kept?: boolean;
}

/** A lifter as the device has it, with what was entered here after it. */
export interface Rejoined {
  /** Events to append. */
  events: string[];
  draft: string[];
  plan: string;
  /** What does not fit. */
  left: { events: string[]; draft: string[]; plans: string[]; corrections: number };
  /** What became of each that was entered. */
  kept: boolean[];
  /** Texts that were given another number, with what they are now. */
  moved: Map<string, string>;
  numbers: Map<number, number>;
}

const UNDO = JSON.stringify({ undo: true });

export function read(text: string): StoredEvent {
  return JSON.parse(text) as StoredEvent;
}

/** The text of the event with that number. */
export function textAt(events: string[], sequence: number): string | undefined {
  const near = events[sequence - 1];
  if (near !== undefined && read(near).sequence === sequence) return near;
  return events.findLast((text) => read(text).sequence === sequence);
}

/** How often a list holds a correction of the event with that number. */
function correctionsOf(events: string[], sequence: number): number {
  return events.filter((text) => text.includes('"replaces"') && pointsTo(read(text)) === sequence).length;
}

/** What of an event speaks of another one by its number. */
interface Pointing {
  correction?: { replaces: number };
  next_day_report?: { session: number };
}

/** The number of an event that this one speaks of. */
function pointsTo(event: StoredEvent): number | undefined {
  const { correction, next_day_report: morning } = event.kind as Pointing;
  return correction?.replaces ?? morning?.session;
}

/** Gives an event the number that what it speaks of has now, where that was given another. */
export function repoint(event: StoredEvent, numbers: Map<number, number>): void {
  const of = pointsTo(event);
  const to = of === undefined ? undefined : numbers.get(of);
  if (to === undefined) return;
  const { correction, next_day_report: morning } = event.kind as Pointing;
  if (correction) correction.replaces = to;
  if (morning) morning.session = to;
}

/** Whether an entry is in a log as it was seen in another: the same text, and no correction of it that was not seen. */
export function asSeen(seen: string[], now: string[], sequence: number): boolean {
  const text = textAt(seen, sequence);
  return text !== undefined && textAt(now, sequence) === text && correctionsOf(seen, sequence) >= correctionsOf(now, sequence);
}

/** The sets of a list, without those that were taken off again. */
export function setsOf(draft: string[]): string[] {
  return draft.reduce((all: string[], text) => (text === UNDO ? all.slice(0, -1) : [...all, text]), []);
}

/** A list without the entries of another; nothing where it does not hold them all. */
function without(list: string[], gone: string[]): string[] | undefined {
  const rest = [...list];
  for (const text of gone) {
    const at = rest.indexOf(text);
    if (at < 0) return undefined;
    rest.splice(at, 1);
  }
  // Of sets that are no longer on the list, none can be taken off.
  while (rest[0] === UNDO) rest.shift();
  return rest;
}

/** A list without what another holds of it; what the other holds more is passed over. */
export function less(list: string[], gone: string[]): string[] {
  const left = [...gone];
  return list.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

const OPENS = ["coach_sign_off", "ask_answered", "usual_pain_agreed", "advance_accepted", "coach_override"];

/** Whether it lets more be done than before: that is not put after what was not seen. */
function opens(event: StoredEvent): boolean {
  const [name = ""] = Object.keys(event.kind);
  return OPENS.includes(name) || (name === "clearance_recorded" && (event.kind.clearance_recorded as { status?: string }).status !== "not_cleared");
}

/** Whether it says all that is set for the lifts. */
const settles = (event: StoredEvent): boolean => event.kind.parameters_changed !== undefined;

/** Whether other is set for the lifts after the one list of events than after the other, corrections and all. */
export function setOtherwise(kept: Kept, one: string[], other: string[]): boolean {
  const set = (events: string[]): string => JSON.stringify(attempt("page.lifter", { log: logOf(kept, events) }).answer?.parameters);
  return set(one) !== set(other);
}

/** What this window shows, and the plan that it read. */
export interface Seen {
  events: string[];
  plan: string;
}

/** Whether events lie there that nobody saw here, and whether other is set for the lifts by them. */
export interface Strange {
  events: boolean;
  settings: boolean;
}

/** Puts it together. */
export function rejoin(there: Loaded, seen: Seen, strange: Strange, entered: Entered[], before: Map<number, number>): Rejoined {
  const numbers = new Map(before);
  const all: Rejoined = { events: [], draft: [...there.draft], plan: there.plan, left: { events: [], draft: [], plans: [], corrections: 0 }, kept: [], moved: new Map(), numbers };
  const log = ask("page.open", { log: logOf(there, there.events) });
  const put = (event: StoredEvent): string | undefined => attempt("page.join", { log, events: [JSON.stringify(event)] }).answer?.texts[0];
  const one = (text: string): boolean => {
    const event = read(text);
    const { sequence } = event;
    const of = pointsTo(event);
    if (of !== undefined && !numbers.has(of) && !asSeen(seen.events.slice(0, seen.events.indexOf(text)), there.events, of)) return false;
    // What is set is written whole: what is made from other settings would take these back unseen.
    if ((strange.events && opens(event)) || (strange.settings && settles(event))) return false;
    repoint(event, numbers);
    // Whatever is not of a day of its own is of the last day of the log, where that is later.
    const { lastDay } = ask("page.lifter", { log });
    if (lastDay !== undefined && event.day < lastDay && !event.kind.session_recorded) event.day = lastDay;
    const added = put(event);
    if (added === undefined) return false;
    numbers.set(sequence, read(added).sequence);
    all.moved.set(text, added);
    all.events.push(added);
    return true;
  };
  /** Pain that was told stops what it stops, also where what it was told in does not fit. Gives the text without it: brought
   * back later, that tells none of it a second time. */
  const pains = (text: string): string => {
    const event = read(text);
    const { day, kind } = event;
    const told = (kind.session_recorded ?? kind.next_day_report ?? kind.day_report) as { pain?: unknown[] } | undefined;
    if (!told?.pain || told.pain.length === 0) return text;
    const left = told.pain.filter((pain) => {
      const { lastDay = day } = ask("page.lifter", { log });
      const added = put({ sequence: 1, day: day < lastDay ? lastDay : day, kind: { pain_report: pain } });
      if (added !== undefined) all.events.push(added);
      return added === undefined;
    });
    // Nothing in its place would say that there was none.
    if (left.length > 0) told.pain = left;
    else delete told.pain;
    return JSON.stringify(event);
  };
  try {
    for (const { events, ends, draft, last, plan: made, change, looked, decided } of entered) {
      if (decided || (looked && strange.events)) {
        all.kept.push(false);
        continue;
      }
      const rest = ends && without(all.draft, ends);
      const over = ends !== undefined && rest === undefined;
      const refused = events.filter((text) => over || !one(text)).map(pains);
      const ended = rest !== undefined && refused.length === 0;
      if (ended) all.draft = rest;
      const off = draft.includes(UNDO) && setsOf(all.draft).at(-1) !== last;
      // Sets that were to stay are still there where the list is not ended.
      if (!off) all.draft.push(...(ends && !ended ? less(draft, setsOf(all.draft)) : draft));
      // The plan that the other window wrote stays, with what was changed here changed in it too.
      const plan = made === undefined || all.plan === seen.plan ? made : change?.(all.plan);
      const wrong = made !== undefined && (plan === undefined || attempt("page.check_plan", { plan, log }).refused !== undefined);
      if (plan !== undefined && !wrong) all.plan = plan;
      else if (made !== undefined) all.left.plans.push(made);
      // A correction of what is another entry by now must not be brought back either.
      const own = refused.filter((text) => !read(text).kind.correction);
      all.left.events.push(...own);
      all.left.corrections += refused.length - own.length;
      all.kept.push(refused.length === 0 && !off && !wrong);
    }
  } finally {
    ask("page.close", { log });
  }
  return all;
}
