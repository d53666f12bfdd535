// A session is ended under settings that may have changed since its sets were lifted: pain is written whatever becomes of
// the sets, what of them fits is written, and what does not is set aside and said.
import type { App, DraftSet } from "./app.ts";
import type { LiftSession, PainAnswer } from "bismar-page-package";
import { ask, attempt } from "./engine.ts";
import { count } from "./numbers.ts";
import { shownName } from "./names.ts";
import type { Loaded } from "./store.ts";

/** What of a lift fits a log, with the points of technique whose marks had to be left out. */
interface Fitted {
  lift: LiftSession;
  points: string[];
}

/** Whether a log takes these lifts as a session of that day; words where it does not. */
function refusal(log: string, day: string, lifts: LiftSession[], pain?: PainAnswer[]): string | undefined {
  const open = ask("page.open", { log });
  try {
    return attempt("page.append", { log: open, day, kind: { sessionRecorded: { lifts, ...(pain ? { pain } : {}) } } }).refused?.message;
  } finally {
    ask("page.close", { log: open });
  }
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
export function fitted(log: string, day: string, lift: LiftSession): Fitted | string {
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

/** Ends the session: all of it, or what fits. Nothing is left of it on the list then, and nothing is lost. */
export async function endSession(app: App, seen: Loaded, lifts: LiftSession[], pain: PainAnswer[] | undefined, entries: DraftSet[], on: string | undefined): Promise<void> {
  const now = app.store.lifter(seen.id);
  const day = on ?? (now && app.day(now));
  const whole = { lifts, ...(pain ? { pain } : {}) };
  if (!now || day === undefined || refusal(app.logText(now), day, lifts, pain) === undefined) {
    await app.record(seen, { sessionRecorded: whole }, undefined, true, on);
    return app.refresh();
  }
  const log = app.logText(now);
  const tried = lifts.map((lift) => ({ was: lift, fit: fitted(log, day, lift) }));
  const fits = tried.flatMap(({ fit }) => (typeof fit === "string" ? [] : [fit.lift]));
  const out = tried.flatMap(({ was, fit }) => (typeof fit === "string" ? [{ lift: was.lift, why: fit }] : []));
  const unmarked = tried.flatMap(({ was, fit }) => (typeof fit === "string" || fit.points.length === 0 ? [] : [{ lift: was, points: fit.points }]));
  const inside = fits.length > 0 && refusal(log, day, fits, pain) === undefined;
  // What may stop a lift goes first, and by itself where the session does not take it.
  if (!inside) for (const one of pain ?? []) if (!(await app.record(seen, { painReport: one }))) return;
  const notes = unmarked.map((one) => marksWords(app, one));
  const said = ["Recorded."];
  if (notes.length > 0) said.push(`Marks of points of technique that are not set for that day are left out, and kept as a note of the session: ${notes.join(". ")}.`);
  for (const { lift, why } of out) {
    const own = entries.filter((one) => one.lift === lift);
    said.push(`${app.liftName(lift)}: ${count(own.length, "set")} not recorded. ${why} Set aside, see Files.`);
    const text = JSON.stringify({ events: [], draft: own.map((one) => JSON.stringify(one)) });
    void app.store.setAside(seen.id, text, "sets of a session that do not fit what is set for the lifts");
  }
  if (fits.length === 0) app.endList(seen.id, said.join(" ").replace(/^Recorded\. /, (pain ?? []).length > 0 ? "The pain is recorded. " : ""));
  else if (!(await app.record(seen, { sessionRecorded: { lifts: fits, ...(inside && pain ? { pain } : {}) } }, notes.length > 0 ? `Marks left out: ${notes.join(". ")}` : undefined, true, on, said.join(" ")))) return;
  app.refresh();
}
