// A file that is opened: read whole or not at all, and every difference to what is here, before it does anything.
import type { App, DraftSet } from "./app.ts";
import { list } from "./answer.ts";
import { aheadIn, aheadWords, daysSet } from "./days.ts";
import { damageOf, together, type Damage } from "./damage.ts";
import { button, el, type Child } from "./element.ts";
import { fitted } from "./ending.ts";
import type { ClearanceLimits, Difference, Less, Preview, WorkSet } from "bismar-page-package";
import { ask, attempt } from "./engine.ts";
import { logOf, usualPlan, type Kept, type StoredLog } from "./kept.ts";
import { capital, onRecord, opensWords } from "./less.ts";
import { limitWords } from "./limits.ts";
import { shownName } from "./names.ts";
import { count, countEntries, dayLong } from "./numbers.ts";
import { opensBy } from "./opens.ts";
import { confirmBox } from "./pad.ts";

/** One lifter of a file, read and checked. */
export interface Incoming {
  id: string;
  preview: Preview;
  events: string[];
  plan: string | undefined;
  /** The session going on, an entry a set. */
  draft: string[];
  /** What of it fits no log, and why; set aside where the lifter comes in. */
  bad: string[];
  badWhy: string;
  /** It was saved while part of its log was damaged and not decided on. */
  damage: Damage | undefined;
  /** What the log and plan here were known by when the differences were looked at. */
  seen: string | undefined;
}

/** What is said where the log here is another by now. */
const MEANWHILE = "Nothing was changed: the log here changed meanwhile. Open the file again and look at what it would change.";

const MARKS: [string, number[]][] = [["utf-8", [0xef, 0xbb, 0xbf]], ["utf-16le", [0xff, 0xfe]], ["utf-16be", [0xfe, 0xff]]];

/** The text of a file: by its mark, else UTF-8; letters are never guessed. */
export function textOf(bytes: Uint8Array): string {
  const marked = MARKS.find(([, mark]) => mark.every((byte, at) => bytes[at] === byte));
  // Without a mark, a zero beside the first sign tells which end comes first.
  const wide = bytes.length > 1 && (bytes[0] === 0 ? "utf-16be" : bytes[1] === 0 ? "utf-16le" : undefined);
  const encoding = marked?.[0] ?? (wide || "utf-8");
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`This text is not in UTF-8${encoding === "utf-8" ? "" : `, and not whole in ${encoding.toUpperCase()}`}: some letters would be lost. Save it as UTF-8 where it was made.`);
  }
}

const DRAFT_FIELDS = ["lift", "set", "day", "place", "reserve", "cue", "setup"];

/** What a file holds, as far as it is what it says it is. */
interface Entry {
  log?: { lifter?: { id?: unknown } | null } | null;
  plan?: unknown;
  draft?: unknown;
  damage?: unknown;
}
interface FileDocument {
  format?: unknown;
  version?: unknown;
  lifters?: unknown;
}

/** More sets that fit nowhere than this, and none of the list is taken (our choice). */
const MOST_BAD = 20;

/** A session going on as far as its sets fit the log, and the rest, with why. */
interface GoingOn {
  draft: string[];
  bad: string[];
  why: string;
}

/** The entries of a session going on, each checked as the log's own sets are. What fits nowhere never keeps a log out. */
function draftOf(log: string, given: unknown): GoingOn {
  const all: GoingOn = { draft: [], bad: [], why: "" };
  if (given === undefined) return all;
  if (!Array.isArray(given) || given.length > 500) return { ...all, bad: [JSON.stringify(given)], why: "It is no list of sets." };
  const open = ask("page.open", { log });
  try {
    for (const entry of given as (Partial<DraftSet> | null)[]) {
      // Whatever it may be, the library refuses what is no set.
      const { lift = "", set = {} as WorkSet, day = "", place, reserve, cue, setup } = entry ?? {};
      const known = Object.keys(entry ?? {}).every((key) => DRAFT_FIELDS.includes(key));
      const { company, pins } = setup ?? {};
      const fits = pins === undefined || pins === "none" || typeof pins === "number";
      const stood = { ...(company === undefined ? {} : { company }), ...(typeof pins === "number" ? { pins: { mm: pins } } : {}) };
      const done = { lift, sets: [set], ...(place === undefined ? {} : { place }), ...(reserve === undefined ? {} : { reserveAsked: reserve }), ...(setup === undefined ? {} : { setup: stood }), ...(cue === undefined ? {} : { cue }) };
      const { refused } = attempt("page.append", { log: open, day, kind: { sessionRecorded: { lifts: [done] } } });
      // Marks of a point that is not set any more are left out when the session is ended.
      const taken = known && fits && (!refused || typeof fitted(log, day, done) !== "string");
      if (taken) all.draft.push(JSON.stringify(entry));
      else {
        all.bad.push(JSON.stringify(entry));
        all.why ||= refused?.message ?? "It is no set.";
      }
      if (all.bad.length > MOST_BAD) return { draft: [], bad: given.map((one) => JSON.stringify(one)), why: all.why };
    }
  } finally {
    ask("page.close", { log: open });
  }
  return all;
}

/** What a file holds; throws words where it holds anything that cannot be read. */
export function readDocument(app: App, text: string): Incoming[] {
  let document: FileDocument | null;
  try {
    document = JSON.parse(text) as FileDocument | null;
  } catch {
    throw new Error("This is not a whole JSON file; it may be cut off.");
  }
  const whole = document?.format === "bismar-lifters";
  const entries: (Entry | null)[] = whole ? (document?.version === 1 && Array.isArray(document.lifters) ? document.lifters : []) : [{ log: document as Entry["log"] }];
  if (entries.length === 0) throw new Error("No lifter is in this file, or it was written by a newer version.");
  if (entries.length > 200) throw new Error("More than 200 lifters in one file are refused.");
  const all = entries.map((entry) => readEntry(app, entry));
  const twice = all.find((one, at) => all.findIndex((other) => other.id === one.id) < at);
  if (twice) throw new Error(`${shownName(twice.id)} is in this file twice. Which one is meant cannot be told.`);
  return all;
}

function readEntry(app: App, entry: Entry | null): Incoming {
  const given = JSON.stringify(entry?.log ?? null);
  const id = typeof entry?.log?.lifter?.id === "string" ? entry.log.lifter.id : "";
  const here = app.store.lifter(id);
  const plan = entry?.plan === undefined ? undefined : JSON.stringify(entry.plan);
  const found = attempt("page.preview", { incoming: given, ...(here ? { here: app.log(here) } : {}), ...(plan === undefined ? {} : { plan }), ...(here ? { planHere: here.plan } : {}) });
  if (found.refused) throw new Error(found.refused.message);
  const { log } = found.answer;
  const checked = plan === undefined ? undefined : attempt("page.check_plan", { plan, log }).refused;
  if (checked) throw new Error(`The plan of ${shownName(id)}: ${checked.message}`);
  const events = (JSON.parse(log) as StoredLog).events.map((event) => JSON.stringify(event));
  const { draft, bad, why } = draftOf(log, entry?.draft);
  return { id, preview: found.answer, events, plan, draft, bad, badWhy: why, damage: damageOf(id, entry?.damage), seen: here && app.seenBy(here) };
}

/** Puts a lifter of a file here under a name, in place of whoever has it; says so where it is another log by now. */
async function bringIn(app: App, one: Incoming, as: string, why: string, daysToday: boolean): Promise<string | undefined> {
  const { version, lifter } = JSON.parse(one.preview.log) as StoredLog;
  const header = JSON.stringify({ ...lifter, id: as });
  const here = app.store.lifter(as);
  if (as === one.id && (here && app.seenBy(here)) !== one.seen) return MEANWHILE;
  const plan = one.plan ?? here?.plan ?? usualPlan(one.preview.log);
  const damage = together(here?.damage, one.damage);
  const kept: Kept = { id: as, header, plan, version, ...(damage ? { damage } : {}) };
  const events = daysToday ? [...one.events, ...(daysSet(kept, one.events) ?? [])] : one.events;
  // The session going on here stays: what is being lifted now is in no file.
  const draft = here && here.draft.length > 0 ? here.draft : one.draft;
  // Who comes in is in view from the tap on: whom the coach goes to while it is written stays in view.
  const [written] = await Promise.all([app.store.put(kept, events, draft, why, true), app.nowOf(as)]);
  if (written) void badAside(app, one, as);
  return written || app.store.fault ? undefined : app.notice || MEANWHILE;
}

/** Sets of a session going on that fit no log are set aside. */
function badAside(app: App, { bad }: Incoming, as: string): Promise<boolean> | boolean {
  return bad.length === 0 || app.store.setAside(as, JSON.stringify({ events: [], draft: bad }), "sets of a session going on in a file that do not fit its log");
}

/** Adds to a lifter who is here what the file has more: entries, or a session going on. Gives words where nothing was added. */
async function add(app: App, one: Incoming): Promise<string | undefined> {
  const here = app.store.lifter(one.id);
  if (!here) return `Nothing was added: ${shownName(one.id)} was erased in another window.`;
  if (app.seenBy(here) !== one.seen) return MEANWHILE;
  const added = new Set(one.preview.added.map((change) => change.sequence));
  const events = one.events.filter((text) => added.has((JSON.parse(text) as { sequence: number }).sequence));
  // What was looked at may be another log by now: another window may have written to it.
  if (attempt("page.accepts", { log: logOf(here, [...here.events, ...events]) }).refused) return "Nothing was added: another window wrote to this log meanwhile. Open the file again.";
  const draft = here.draft.length === 0 ? one.draft : [];
  const holds = one.damage ? { holds: { now: together(here.damage, one.damage) } } : {};
  const [wrote] = await Promise.all([app.store.putBehind(one.id, { events, draft, looked: true, ...holds }), app.nowOf(one.id)]);
  if (wrote) void badAside(app, one, one.id);
  return wrote || app.store.fault ? undefined : MEANWHILE;
}

function freeName(app: App, id: string): string {
  let number = 2;
  while (app.store.lifter(`${id} (${number})`)) number += 1;
  return `${id} (${number})`;
}

function changes(title: string, items: Preview["added"]): Child {
  if (items.length === 0) return undefined;
  return el(
    "details",
    {},
    el("summary", {}, `${title}: ${countEntries(items.length)}`),
    list(items.slice(0, 200).map((one) => `${dayLong(one.day)}, number ${one.sequence}: ${one.kind.replaceAll("_", " ")}`)),
  );
}

/** Limits of a clearance that would go or come, each in a sentence. */
function limitsPart(app: App, one: Incoming): { gone: string[]; come: string[] } {
  const here = app.store.lifter(one.id);
  if (!here) return { gone: [], come: [] };
  const said = (all: ClearanceLimits[]): string[] => all.map((limit) => limitWords(app, limit));
  const [now, then] = [said(app.facts(here).limits), said(attempt("page.lifter", { log: one.preview.log }).answer?.limits ?? [])];
  return { gone: now.filter((words) => !then.includes(words)), come: then.filter((words) => !now.includes(words)) };
}

/** What lets more be done than now, in words for a question; nothing where nothing does. */
function openedWords({ preview }: Incoming, gone: string[], less: Less[]): string[] {
  const [stops, rest] = [opensWords({ stops: preview.opens, less: [] }), opensWords({ stops: [], less })];
  return [...stops, ...gone.map((words) => `A limit would go: ${words}.`), ...rest];
}

/** What keeps a lift here below what it would be with the file: limits have words of their own. */
function lessPart(less: Less[]): Child {
  if (less.length === 0) return undefined;
  return el("div", { class: "caution", role: "alert", "data-less": less.length }, el("p", {}, el("b", {}, "What opens: ")), list(less.map(({ says }) => capital(says))));
}

/** The stops in force here that would be gone: said before anything else. */
function opensPart({ opens }: Preview): Child {
  return opens.map(({ what, since, takenBack }) =>
    el(
      "p",
      { class: "caution", role: "alert", "data-opens": true },
      el("b", {}, takenBack ? "A stop would be taken back: " : "A stop would be lifted: "),
      `${what}, reported on ${dayLong(since)}. ${takenBack ? "The file does not hold it any more, and what it stopped opens again. Only where it was a slip of the finger." : "The file holds what lifts it, and what it stopped opens again."}`,
    ),
  );
}

/** Differences of two trees, each where it is, what is here and what is in the file. */
function differences(title: string, items: Difference[]): Child {
  if (items.length === 0) return undefined;
  const side = (text: string | undefined): string => text ?? "nothing";
  return el("div", {}, el("h3", {}, title), list(items.map((one) => `${one.at}: ${side(one.here)} here, ${side(one.there)} in the file`)));
}

const setsOf = (app: App, draft: DraftSet[]): string => `${draft.map((one) => app.liftName(one.lift)).filter((one, at, all) => all.indexOf(one) === at).join(", ")}: ${count(draft.length, "set")}`;

/** The session going on, here and in the file. */
function draftPart(app: App, one: Incoming): { words: string | undefined; comes: boolean; left?: boolean } {
  const here = app.store.lifter(one.id);
  const theirs = one.draft.map((text) => JSON.parse(text) as DraftSet);
  const own = here ? app.draft(here) : [];
  if (own.length > 0) {
    const same = JSON.stringify(own) === JSON.stringify(theirs);
    const other = theirs.length > 0 && !same ? ` That of the file (${setsOf(app, theirs)}) is not taken.` : "";
    return { words: `The session going on here stays: ${setsOf(app, own)}.${other}`, comes: false, left: other !== "" };
  }
  return theirs.length > 0 ? { words: `The file brings a session going on: ${setsOf(app, theirs)}.`, comes: true } : { words: undefined, comes: false };
}

/** What comes after something was brought in: words, and the way to Today, taken unless the coach went elsewhere meanwhile; and
 * whether all of it is on the device now. */
export type Done = (words: string, way: (words: string) => void, whole: boolean) => void;

/** What one lifter of a file would change, with the ways to do it. */
export function previewPart(app: App, one: Incoming, why: string, done: Done): HTMLElement {
  const { preview, id } = one;
  const here = app.store.lifter(id);
  const name = shownName(id);
  const other: boolean = preview.changed.length > 0 || preview.onlyHere > 0;
  const { header, plan } = preview;
  const draft = draftPart(app, one);
  const { gone, come } = limitsPart(app, one);
  const all = here && opensBy(app, here, { instead: preview.log })?.less;
  const less = (all ?? []).filter((each) => each.kind !== "limit");
  const opened = openedWords(one, gone, less);
  const [stopHere] = here ? app.stops(here).lines : [];
  const beside = `${shownName(freeName(app, id))} would come in beside, by the log of the file`;
  const held = [
    ...(stopHere === undefined ? [] : [`${name} is stopped here: ${stopHere.replace(/\.?$/, ".")} ${beside}. Where both are one person, nothing is lifted by either until it is cleared.`]),
    ...onRecord(name, all ?? []).map((words) => `${words} ${beside}, without it. Where both are one person, it holds for either.`),
  ];
  // Stops that were set aside where the file was saved, and that are not known here.
  const holds = one.damage?.stops.some((text) => !here?.damage?.stops.includes(text)) === true;
  const nothing = here && !other && !holds && preview.added.length === 0 && header.length + plan.length === 0 && !draft.comes;
  const adds = here && !other && header.length === 0 && (preview.added.length > 0 || draft.comes || holds);
  const replaces = here && (other || header.length + plan.length > 0);
  const later = preview.lifter.invented ? [] : aheadIn(preview.log);
  let daysToday = false;
  // A session going on that is not taken is nowhere but where it came from.
  const came = (said: string, way: (words: string) => void) => (not: string | undefined): void =>
    not === undefined ? done(said, way, !draft.left && app.store.fault === undefined) : app.say(not);
  const put = (as: string, said: string) => (): void => {
    const way = app.wayTo("today");
    void bringIn(app, one, as, why, daysToday).then(came(said, way));
  };
  const both = (): void => put(freeName(app, id), "Both are here.")();
  const adding = (): void => {
    const way = app.wayTo("today");
    void add(app, one).then(came("Added.", way));
  };
  const days = el("input", { type: "checkbox", id: `days-${id}` });
  days.addEventListener("change", () => (daysToday = days.checked));
  const words = here ? `Same: ${preview.same}. Added: ${preview.added.length}. Different: ${preview.changed.length}. Only on this device: ${preview.onlyHere}.` : `New here: ${count(preview.events, "event")}.`;
  const replaced = `The log of ${name} on this device is set aside whole, as far as the file does not hold it; it can be brought back under Files.${draft.words ? ` ${draft.words}` : ""}`;
  return el(
    "article",
    { class: "card", "data-incoming": id },
    el("h2", {}, name),
    opensPart(preview),
    gone.map((words) => el("p", { class: "caution", role: "alert", "data-limit": "gone" }, el("b", {}, "A limit would go: "), `${words}. What the file says was cleared does not hold it.`)),
    lessPart(less),
    come.map((words) => el("p", { class: "caution", "data-limit": "come" }, el("b", {}, "A limit would come: "), `${words}.`)),
    el("p", { class: "big", "data-answer": true }, words),
    one.damage && el("p", { class: "caution", "data-damage": true }, `${one.damage.words} No load is shown until somebody has looked and decided.`),
    preview.lifter.invented && el("p", {}, "In the file this lifter is marked as invented."),
    preview.lastDay && el("p", { class: "soft" }, `Last day in the file: ${dayLong(preview.lastDay)}.`),
    later.length > 0 && el("p", { class: "caution" }, el("b", {}, "Which day is it? "), aheadWords(later), " ", daysSet({ id, header: JSON.stringify(preview.lifter), version: (JSON.parse(preview.log) as StoredLog).version, plan: "" }, one.events) && !adds ? [days, el("label", { for: `days-${id}` }, " Set their day to today when it comes in")] : "It can be corrected under Log."),
    differences("Who it is", header),
    differences("The plan", plan),
    here && differences("Lifts, bars, discs and rules", preview.parameters),
    draft.words && el("p", {}, draft.words),
    one.bad.length > 0 && el("p", { class: "caution", "data-bad-draft": one.bad.length }, el("b", {}, "Not taken into the session going on: "), `${count(one.bad.length, "set")}. ${one.badWhy}${nothing ? "" : " Set aside when the lifter comes in, see Files."}`),
    here && changes("Would be added", preview.added),
    changes("Would be different", preview.changed),
    nothing && el("p", {}, "Nothing would change."),
    el(
      "div",
      { class: "row" },
      !here && button("Bring in", put(id, `${name} is here now.`), { class: "main", "data-act": "bring-in" }),
      adds && button(preview.added.length > 0 ? "Add these" : draft.comes ? "Take its session going on" : "Take the stops that were set aside", () => (opened.length > 0 ? confirmBox("Add these?", opened, "Add them", adding) : adding()), { class: "main", "data-act": "bring-in" }),
      plan.length > 0 && here && one.plan && button("Take only the plan", () => {
        const now = app.store.lifter(id);
        if (!now || app.seenBy(now) !== one.seen) return app.say(MEANWHILE);
        const [textNow, taken] = [ask("page.plan_text", { plan: app.plan(now) }), ask("page.plan", { plan: one.plan as string })];
        app.putPlan(now, (plan) => (ask("page.plan_text", { plan }) === textNow ? taken : undefined));
        done("The plan is that of the file now.", app.wayTo("today"), false);
      }, { "data-act": "take-plan" }),
      replaces && button("Keep both", () => (held.length === 0 ? both() : confirmBox("Keep both?", held, "Keep both", both)), { class: "main", "data-act": "keep-both" }),
      replaces && button("Replace what is here", () => confirmBox("Replace?", [...opened, replaced], "Replace", put(id, "Replaced; what it took the place of is set aside.")), { "data-act": "replace" }),
    ),
  );
}

/** Every lifter of a file who is new here, at once. */
export async function bringInAll(app: App, all: Incoming[]): Promise<string> {
  const fresh = all.filter((one) => !app.store.lifter(one.id));
  const not = (await Promise.all(fresh.map((one) => bringIn(app, one, one.id, "replaced by a file", false)))).filter((words) => words !== undefined);
  const came = fresh.length - not.length;
  return [`${count(came, "lifter")} ${came === 1 ? "is" : "are"} here now.`, ...not].join(" ");
}
