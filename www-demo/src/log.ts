// The log: what is in it, taking back, correcting. Nothing is overwritten; a correction is an event of its own.
import type { App } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, el, fill, showBox, type Child } from "./element.ts";
import type { EntriesEntry, EventKind, EventKindInput, LiftSession, PainAnswer, Session, Undo, WorkSet } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import type { Loaded } from "./store.ts";
import { shownName } from "./names.ts";
import { atLeast, atMost, count, dayShort, mass, plain } from "./numbers.ts";
import { limitWords } from "./limits.ts";
import { kindWords } from "./kinds.ts";
import { opensWords } from "./less.ts";
import { askCorrection, opensBy } from "./opens.ts";
import { confirmBox } from "./pad.ts";
import { ROLES } from "./plan_view.ts";
import { sheet } from "./set_sheet.ts";
import { secondMarks } from "./second_marks.ts";
import { EACH_HAND, eachHand } from "./setup.ts";
import { coursePart } from "./questions/years.ts";
import { recordEntry } from "./write_box.ts";
import { TESTS, testResult, writeDownPart } from "./write_down.ts";

/** The box in which a correction was entered: it goes once that is in the log, and says why it is not. */
interface From {
  wrong: HTMLElement;
  close: () => void;
}

/** Writes what corrects an entry; asks first where that opens anything, or leaves nothing set for the lifts. */
function correct(app: App, lifter: Loaded, by: EventKindInput, from?: From): void {
  const write = (): void => void (from ? recordEntry(app, lifter, by, from.wrong, from.close) : app.record(lifter, by).then(() => app.refresh()));
  const now = app.store.lifter(lifter.id);
  // What is refused is refused in words where it is written.
  const then = now && opensBy(app, now, { suppose: by });
  if (then?.unsets && then.stops.length === 0) return confirmBox("Take the settings back?", ["They are the last settings of the lifts: nothing can be worked out without settings.", ...opensWords(then)], "Take them back", write);
  askCorrection(then, write);
}

/** Another day for an entry: a correction that says nothing else. */
function dayBox(app: App, lifter: Loaded, one: EntriesEntry): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "Another day", "data-opens": true });
  const day = el("input", { type: "date", id: "other-day", value: one.day, autocomplete: "off" });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const save = (): void => {
    const by: EventKindInput = { correction: { replaces: one.last, day: day.value } };
    if (day.value === "" || day.value === one.day) entry.close();
    else correct(app, lifter, by, { wrong, close: entry.close });
  };
  fill(
    box,
    el("h2", {}, "On which day was it?"),
    el("div", { class: "field" }, el("label", { for: "other-day", class: "label" }, "Day"), day),
    wrong,
    el("div", { class: "row" }, button("Cancel", () => entry.cancel(), { class: "quiet" }), button("Save", save, { class: "main", "data-act": "save-day" })),
  );
  const entry = showEntry(box);
}

const DAYS: Record<string, string> = { below: "several signs below the usual", below_single: "one sign below the usual", within: "within the usual", above: "above the usual", unknown: "cannot say" };

function painWords(app: App, answers: PainAnswer[] | undefined): string {
  if (answers === undefined) return "pain not asked";
  return answers.length === 0 ? "no pain" : `pain: ${answers.map((one) => `${app.regionName(one.region)} ${one.score} of 10`).join(", ")}`;
}

/** Sentences for the kinds that people read often; nothing for the others. */
function told(app: App, said: EventKind, of: string | undefined): string | undefined {
  const [day, morning, clearance, signOff, role, layoff, override, test, sign] = [kindOf(said, "dayReport"), kindOf(said, "nextDayReport"), kindOf(said, "clearanceRecorded"), kindOf(said, "coachSignOff"), kindOf(said, "roleSet"), kindOf(said, "layoffNoted"), kindOf(said, "coachOverride"), kindOf(said, "functionTested"), kindOf(said, "symptomReport")];
  const spaced = (text: string): string => text.replaceAll("_", " ");
  if (day) {
    const asks = day.asks && (day.asks.map(spaced).join(", ") || "none of what is asked first");
    return [day.class && `the day is ${DAYS[day.class] ?? day.class}`, painWords(app, day.pain), asks, day.markers && day.markers.map((one) => `${spaced(one.kind)} ${one.value}`).join(", ")].filter(Boolean).join("; ");
  }
  if (morning) return `${of ? `after ${dayShort(of)}: ` : ""}${painWords(app, morning.pain).replace("no pain", "no more pain than before")}`;
  if (clearance) return `${spaced(clearance.status)}${clearance.expires ? ` until ${dayShort(clearance.expires)}` : ""}${(clearance.limits ?? []).map((one) => `; ${limitWords(app, one)}`).join("")}; said by ${clearance.who}`;
  if (signOff) {
    const [region, lift] = [kindOf(signOff.scope, "region"), kindOf(signOff.scope, "gate")];
    return `${region ? app.regionName(region) : lift ? app.liftName(lift) : "every lift"}; ${signOff.who}`;
  }
  if (role) return `${app.liftName(role.lift)}: ${(ROLES[role.role] ?? role.role).toLowerCase()}${role.notBelow ? `, on plan down to ${atLeast(role.notBelow)}${eachHand(app, role.lift)}` : ""}`;
  if (layoff) return `from ${dayShort(layoff.from)}; ${layoff.reason}`;
  if (override) return `${app.liftName(override.lift)}: at most ${atMost(override.load)}${eachHand(app, override.lift)}${override.expires ? ` until ${dayShort(override.expires)}` : ""}; ${override.who}${override.why ? `: ${override.why}` : ""}`;
  if (test) return `${TESTS[test.test][0]}: ${testResult(test.test, test.result)}`;
  return sign?.signs.map(spaced).join(", ");
}

function summary(app: App, said: EventKind, of: string | undefined): string {
  const words = told(app, said, of);
  if (words !== undefined) return words;
  const [advance, weighed] = [kindOf(said, "advanceAccepted") ?? kindOf(said, "advanceDeclined"), kindOf(said, "bodyMassRecorded")];
  if (advance) return `${app.liftName(advance.lift)}; ${advance.who}`;
  if (weighed) return mass(weighed);
  if (kindOf(said, "parametersChanged")) return "lifts, bars, discs and rules";
  const [body]: unknown[] = Object.values(said);
  if (typeof body !== "object" || body === null) return String(body);
  return Object.entries(body)
    .filter(([, value]) => typeof value === "string" || typeof value === "number")
    .map(([key, value]) => `${key}: ${String(value).replaceAll("_", " ")}`)
    .join(", ");
}

/** Said behind a load of a lift that was one of two in that session. */
const handOf = (hands: string[], lift: string): string => (hands.includes(lift) ? EACH_HAND : "");

/** Correcting a session: pick the set, change it. */
function correctBox(app: App, lifter: Loaded, last: number, was: Session, hands: string[]): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "Correct a session" });
  const session = structuredClone(was);
  const criteriaOf = (lift: string) => app.parameters(lifter)?.lifts.find((one) => one.id === lift)?.criteria ?? [];
  const edit = (lift: LiftSession, at: number): void => {
    const set = lift.sets[at];
    if (!set) return;
    box.close();
    sheet(
      app,
      `${app.liftName(lift.lift)}: set ${at + 1}`,
      {
        load: set.load,
        reps: set.reps,
        good: set.marks?.acceptable,
        first: set.marks?.firstFailingRep,
        reserve: set.effort && kindOf(set.effort, "rir"),
        marks: Object.fromEntries((set.marks?.marks ?? []).map((one) => [one.criterion, one.mark])),
        velocity: set.velocity,
        cue: "",
        setup: { company: undefined, pins: undefined },
      },
      criteriaOf(lift.lift),
      (facts, wrong, close) => {
        const { marks: before, effort, velocity: _speed, ...rest } = set;
        const { firstFailingRep: _, ...kept } = before ?? { rater: "coach" as const };
        const marks = {
          ...kept,
          reps: facts.reps,
          acceptable: facts.good ?? 0,
          marks: Object.entries(facts.marks).map(([criterion, mark]) => ({ criterion, mark })),
          ...(facts.first !== undefined && (facts.good ?? 0) < facts.reps ? { firstFailingRep: facts.first } : {}),
        };
        // A rating that was written stays, unless something was said in reserve.
        const other = effort && kindOf(effort, "rir") === undefined ? { effort } : {};
        // Somebody else counted the repetitions that were written then: the count goes, and what they saw lost stays.
        const recounted = set.alsoMarked?.map(({ acceptable: _count, firstFailingRep: _first, ...seen }) => ({ ...seen, reps: facts.reps }));
        const others = facts.reps === set.reps ? set.alsoMarked : recounted;
        lift.sets[at] = {
          ...rest,
          ...(others ? { alsoMarked: others } : {}),
          load: facts.load,
          reps: facts.reps,
          ...(facts.velocity === undefined ? {} : { velocity: facts.velocity }),
          ...(facts.good === undefined ? {} : { marks }),
          ...(facts.reserve === undefined ? other : { effort: { rir: facts.reserve } }),
        };
        correct(app, lifter, { correction: { replaces: last, with: { sessionRecorded: session } } }, { wrong, close });
      },
      undefined,
      { hand: handOf(hands, lift.lift) },
    );
  };
  fill(
    box,
    el("h2", {}, "Which set was wrong?"),
    el("div", { class: "stack" }, session.lifts.map((lift) => lift.sets.map((set, at) => button(`${app.liftName(lift.lift)}: set ${at + 1}, ${mass(set.load)}${handOf(hands, lift.lift)} \u00d7 ${plain(set.reps)}`, () => edit(lift, at), { "data-act": "correct-set" })))),
    button("Cancel", () => box.close(), { class: "quiet" }),
  );
  showBox(box);
}

const PAGE = 30;

const CHANGES: Record<Undo["change"], string> = { entry: "", correction: "the correction of ", taking_back: "taking back ", putting_back: "putting back " };

/** What undoing would take back, or put back. */
function undoWords(undo: Undo): string {
  return `Undo the last entry: ${CHANGES[undo.change]}${kindWords(undo.kind)}, ${dayShort(undo.day)}`;
}

/** Pictures only once somebody wants them: they need the whole history. */
function coursesPart(app: App, lifts: string[]): HTMLElement {
  const inside = el("div", {});
  const box = el("details", {}, el("summary", {}, "Track of each lift"), inside);
  box.addEventListener("toggle", () => {
    if (box.open && inside.childElementCount === 0) fill(inside, lifts.map((lift) => [el("h2", {}, app.liftName(lift)), coursePart(app, lift)]));
  });
  return box;
}

/** Entries of one day together. */
function byDay(entries: EntriesEntry[]): [string, EntriesEntry[]][] {
  const days: [string, EntriesEntry[]][] = [];
  for (const one of entries) {
    const last = days.at(-1);
    if (last && last[0] === one.day) last[1].push(one);
    else days.push([one.day, [one]]);
  }
  return days;
}

/** A dot a repetition: full where it was good, open where it slipped, small where nobody watched. */
function repDots(set: WorkSet): HTMLElement {
  const good = set.marks?.acceptable;
  const { reps } = set;
  const first = set.marks?.firstFailingRep ?? (good ?? 0) + 1;
  const slipped = (rep: number): boolean => good !== undefined && rep >= first && rep < first + reps - good;
  const dots = Array.from({ length: reps }, (_, at) => (good === undefined ? "\u00b7" : slipped(at + 1) ? "\u25cb" : "\u25cf")).join("");
  const words = good === undefined ? `${reps} repetitions, not watched` : `${good} of ${reps} good`;
  return el("span", { class: "dots", role: "img", "aria-label": words }, dots);
}

/** A session as it was done: each lift with its loads, a dot a repetition, pain, and the morning after. */
function sessionBlock(app: App, session: Session, { morning, eachHand: hands }: Pick<EntriesEntry, "morning" | "eachHand">): Child {
  const pain = painWords(app, session.pain);
  const after = morning ? painWords(app, morning.pain).replace("no pain", "no more pain than before") : "not told";
  return [
    session.lifts.map((lift) =>
      el(
        "p",
        { class: "done-lift" },
        el("b", {}, app.liftName(lift.lift)),
        lift.sets.map((set) => [" ", el("span", { class: "set" }, `${mass(set.load)}${handOf(hands, lift.lift)} \u00d7 ${set.reps}\u00a0`, repDots(set), set.velocity === undefined ? "" : ` ${plain(set.velocity)} m/s`)]),
        lift.cue && el("span", { class: "soft" }, ` \u201c${lift.cue}\u201d`),
      ),
    ),
    el("p", { class: "soft" }, `${pain.replace(/^./, (letter) => letter.toUpperCase())}. Morning after: ${after}.`),
  ];
}

/** One entry, with what may be done to it. */
function entry(app: App, lifter: Loaded, one: EntriesEntry): HTMLElement {
  const { said, takenBack, last } = one;
  const session = kindOf(said, "sessionRecorded");
  const named = `${kindWords(one.kind)} of ${dayShort(one.day)}`;
  return el(
    "li",
    { class: takenBack ? "gone" : "" },
    el("p", {}, el("b", {}, kindWords(one.kind)), takenBack ? " (taken back)" : one.corrected ? " (corrected)" : ""),
    session ? sessionBlock(app, session, one) : el("p", { class: "soft" }, summary(app, said, one.of)),
    el(
      "div",
      { class: "row" },
      session && !takenBack && button("Correct", () => correctBox(app, lifter, last, session, one.eachHand), { "aria-label": `Correct the session of ${dayShort(one.day)}`, "data-act": "correct" }),
      session && !takenBack && button("Somebody else\u2019s marks", () => secondMarks(app, session, (lift) => app.parameters(lifter)?.lifts.find((each) => each.id === lift)?.criteria ?? [], (kind, wrong, close) => correct(app, lifter, kind, { wrong, close }), { last, hands: one.eachHand }), { class: "quiet", "aria-label": `Somebody else\u2019s marks for the session of ${dayShort(one.day)}`, "data-act": "second-marks" }),
      !takenBack && one.kind !== "parameters_changed" && button("Take back", () => correct(app, lifter, { correction: { replaces: last } }), { "aria-label": `Take back ${named}` }),
      !takenBack && button("Another day", () => dayBox(app, lifter, one), { class: "quiet", "aria-label": `Another day for ${named}`, "data-act": "other-day" }),
      takenBack && button("Put back", () => correct(app, lifter, { correction: { replaces: last, with: said } }), { "aria-label": `Put back ${named}` }),
    ),
  );
}

export function logView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return [el("h1", { tabindex: -1 }, "Log"), el("p", {}, "No lifter is in view.")];
  const shown = typeof app.kept.shown === "number" ? app.kept.shown : PAGE;
  const { entries, events, all, undo } = app.entries(lifter, shown);
  const lifts = (app.parameters(lifter)?.lifts ?? []).map((one) => one.id);
  return [
    el("h1", { tabindex: -1 }, `Log of ${shownName(lifter.id)}`),
    el("p", { class: "soft" }, `${count(events, "event")}. Nothing is ever overwritten: taking back and correcting add an event.`),
    undo && button(undoWords(undo), () => correct(app, lifter, undo.by), { "data-act": "undo" }),
    writeDownPart(app),
    coursesPart(app, lifts),
    el("h2", {}, "Day by day, latest first"),
    el("p", { class: "soft" }, "A dot a repetition: full good, open slipped, small not watched. How many slipped and which was first is kept, not each one."),
    byDay(entries).map(([day, own]) =>
      el("div", { class: "day", "data-day": day }, el("h3", {}, dayShort(day)), el("ul", { class: "log" }, own.map((one) => entry(app, lifter, one)))),
    ),
    all > shown && button("Earlier entries", () => { app.kept.shown = shown + PAGE; app.refresh(); }),
  ];
}
