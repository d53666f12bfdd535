// A session is ended under settings that may have changed since its sets were lifted: pain is written whatever becomes of
// the sets, what of them fits is written, and what does not is set aside and said.
import type { App, DraftSet } from "./app.ts";
import type { EventKindInput, LiftSession, PainAnswer } from "bismar-page-package";
import { attempt } from "./engine.ts";
import { count } from "./numbers.ts";
import { shownName } from "./names.ts";
import { read } from "./rejoin.ts";
import type { StoredEvent } from "./kept.ts";
import type { Loaded } from "./store.ts";

/** What of a lift fits a log, with the points of technique whose marks had to be left out. */
interface Fitted {
  lift: LiftSession;
  points: string[];
}

/** Whether a log takes an event of that day; words where it does not. */
function refused(log: number | string, day: string, kind: EventKindInput): string | undefined {
  return attempt("page.takes", { log, day, kind }).refused?.message;
}

/** Whether a log takes these lifts as a session of that day; words where it does not. */
function refusal(log: number | string, day: string, lifts: LiftSession[], pain?: PainAnswer[]): string | undefined {
  return refused(log, day, { sessionRecorded: { lifts, ...(pain ? { pain } : {}) } });
}

/** More points than any lift has: marks of more are no marks of a lift. */
const MOST_POINTS = 40;

const pointsOf = (lift: LiftSession): string[] => [...new Set(lift.sets.flatMap((set) => (set.marks?.marks ?? []).map((one) => one.criterion)))];

/** A lift with the marks of those points only. */
function marked(lift: LiftSession, points: string[]): LiftSession {
  const sets = lift.sets.map((set) => (set.marks?.marks ? { ...set, marks: { ...set.marks, marks: set.marks.marks.filter((one) => points.includes(one.criterion)) } } : set));
  return { ...lift, sets };
}

/** A lift as a log takes it on that day, without marks of points that are not set there; words where it takes none of it. */
export function fitted(log: number | string, day: string, lift: LiftSession): Fitted | string {
  const refused = refusal(log, day, [lift]);
  if (refused === undefined) return { lift, points: [] };
  const all = Array.isArray(lift.sets) && lift.sets.every((set) => set?.marks?.marks === undefined || Array.isArray(set.marks.marks)) ? pointsOf(lift) : [];
  if (all.length === 0 || all.length > MOST_POINTS) return refused;
  const known = all.filter((point) => refusal(log, day, [marked(lift, [point])]) === undefined);
  const less = marked(lift, known);
  return refusal(log, day, [less]) === undefined ? { lift: less, points: all.filter((point) => !known.includes(point)) } : refused;
}

function marksWords(app: App, { lift, points }: Fitted): string {
  const of = points.map((point) => {
    const marks = lift.sets.map((set) => set.marks?.marks?.find((one) => one.criterion === point)?.mark);
    return `${shownName(point)} (${marks.map((mark) => (mark ?? "not_seen").replaceAll("_", " ")).join(", ")})`;
  });
  return `${app.liftName(lift.lift)}: ${of.join("; ")}`;
}

/** Whether a pain stands in the log as it was told at an attempt before. Where anything but pain and settings was written
 * since, it is told anew. */
function isWritten({ events }: Loaded, pain: PainAnswer, day: string): boolean {
  const other = ({ kind }: StoredEvent): boolean => !kind.pain_report && !kind.parameters_changed;
  const since = events.slice(events.findLastIndex((text) => other(read(text))) + 1).map(read);
  const features = JSON.stringify(pain.features);
  return since.some((event) => {
    const told = event.kind.pain_report as PainAnswer | undefined;
    return event.day === day && told?.region === pain.region && told.score === pain.score && JSON.stringify(told.features) === features;
  });
}

/** Writes pain by itself: every one that the log takes, on the session's day where the log takes it there, else today.
 * Gives words for those that were refused. */
export async function painAlone(app: App, seen: Loaded, pain: PainAnswer[], day: string): Promise<string[]> {
  const not: string[] = [];
  for (const one of pain) {
    const now = app.store.lifter(seen.id);
    const kind = { painReport: one };
    const on = now && refused(app.log(now), day, kind) === undefined ? day : undefined;
    if (now && isWritten(now, one, on ?? app.day(now))) continue;
    if (!(await app.write(seen, kind, undefined, undefined, on, ""))) not.push(`${app.regionName(one.region)}, ${one.score} of 10: ${app.notice}`);
  }
  return not;
}

/** Ends the session: all of it, or what fits. Nothing is left of it on the list then, and nothing is lost. Gives whether it is ended. */
export async function endSession(app: App, seen: Loaded, lifts: LiftSession[], pain: PainAnswer[] | undefined, entries: DraftSet[], on: string | undefined): Promise<boolean> {
  const now = app.store.lifter(seen.id);
  const day = on ?? (now && app.day(now));
  const whole = { lifts, ...(pain ? { pain } : {}) };
  if (!now || day === undefined || refusal(app.log(now), day, lifts, pain) === undefined) {
    const done = await app.record(seen, { sessionRecorded: whole }, undefined, entries, on);
    app.refresh();
    return done;
  }
  const log = app.log(now);
  const tried = lifts.map((lift) => ({ was: lift, fit: fitted(log, day, lift) }));
  const fits = tried.flatMap(({ fit }) => (typeof fit === "string" ? [] : [fit.lift]));
  const out = tried.flatMap(({ was, fit }) => (typeof fit === "string" ? [{ lift: was.lift, why: fit }] : []));
  const unmarked = tried.flatMap(({ was, fit }) => (typeof fit === "string" || fit.points.length === 0 ? [] : [{ lift: was, points: fit.points }]));
  const inside = fits.length > 0 && refusal(log, day, fits, pain) === undefined;
  // What may stop a lift goes first, and by itself where the session does not take it.
  const not = inside ? [] : await painAlone(app, seen, pain ?? [], day);
  if (not.length > 0) {
    app.notice = `The session is not ended. ${not.join(" ")}${not.length < (pain ?? []).length ? " The other pain that was told is in the log." : ""}`;
    app.refresh();
    return false;
  }
  const notes = unmarked.map((one) => marksWords(app, one));
  const said = ["Recorded."];
  if (notes.length > 0) said.push(`Marks of points of technique that are not set for that day are left out, and kept as a note of the session: ${notes.join(". ")}.`);
  const own = (lift: string): DraftSet[] => entries.filter((one) => one.lift === lift);
  for (const { lift, why } of out) said.push(`${app.liftName(lift)}: ${count(own(lift).length, "set")} not recorded. ${why} Set aside, see Files.`);
  if (fits.length === 0) app.endList(seen.id, entries, said.join(" ").replace(/^Recorded\. /, (pain ?? []).length > 0 ? "The pain is recorded. " : ""));
  else if (!(await app.record(seen, { sessionRecorded: { lifts: fits, ...(inside && pain ? { pain } : {}) } }, notes.length > 0 ? `Marks left out: ${notes.join(". ")}` : undefined, entries, on, said.join(" ")))) return false;
  // Only what is off the list is set aside: what was refused is still on it.
  for (const { lift } of out) void app.store.setAside(seen.id, JSON.stringify({ events: [], draft: own(lift).map((one) => JSON.stringify(one)) }), "sets of a session that do not fit what is set for the lifts");
  app.refresh();
  return true;
}
