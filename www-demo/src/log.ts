// The log: what is in it, taking back, correcting. Nothing is overwritten; a correction is an event of its own.
import type { App } from "./app.ts";
import { button, el, fill, type Child } from "./element.ts";
import type { Tree } from "./engine.ts";
import type { Loaded } from "./store.ts";
import { shownName } from "./names.ts";
import { count, dayShort, mass, plain } from "./numbers.ts";
import { limitWords } from "./limits.ts";
import { kindWords } from "./kinds.ts";
import { ROLES } from "./plan_view.ts";
import { sheet } from "./set_sheet.ts";
import { coursePart } from "./questions/years.ts";
import { TESTS, testResult, writeDownPart } from "./write_down.ts";

interface Chain {
  root: number;
  day: string;
  /** What it said, one after the other; nothing means taken back. */
  said: (Tree | undefined)[];
  last: number;
}

/** Events as they were read, so that drawing anew reads only what was added. */
const readBefore = new WeakMap<string[], Tree[]>();

function eventsOf(lifter: Loaded): Tree[] {
  const read = readBefore.get(lifter.events) ?? [];
  readBefore.set(lifter.events, read);
  for (let at = read.length; at < lifter.events.length; at += 1) read.push(JSON.parse(lifter.events[at] as string));
  return read;
}

/** Each entry with what corrections made of it. */
function chains(lifter: Loaded): { byRoot: Map<number, Chain>; lastRoot: number | undefined } {
  const byRoot = new Map<number, Chain>();
  const rootOf = new Map<number, number>();
  let lastRoot: number | undefined;
  for (const event of eventsOf(lifter)) {
    const correction = event.kind.correction;
    const root: number = correction ? (rootOf.get(correction.replaces) ?? correction.replaces) : event.sequence;
    rootOf.set(event.sequence, root);
    lastRoot = root;
    const chain = byRoot.get(root);
    if (chain) {
      // A correction of the day alone leaves what was said.
      chain.said.push(correction?.with ?? (correction?.day ? chain.said.at(-1) : undefined));
      chain.day = correction?.day ?? chain.day;
      chain.last = event.sequence;
    } else byRoot.set(root, { root, day: event.day, said: [event.kind], last: event.sequence });
  }
  return { byRoot, lastRoot };
}

function correct(app: App, lifter: Loaded, chain: Chain, kind: Tree | undefined): void {
  void app.record(lifter, { correction: { replaces: chain.last, ...(kind ? { with: kind } : {}) } }).then(() => app.refresh());
}

/** Another day for an entry: a correction that says nothing else. */
function dayBox(app: App, lifter: Loaded, chain: Chain): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "Another day" });
  const day = el("input", { type: "date", id: "other-day", value: chain.day, autocomplete: "off" });
  const save = (): void => {
    box.close();
    if (day.value !== "" && day.value !== chain.day) void app.record(lifter, { correction: { replaces: chain.last, day: day.value } }).then(() => app.refresh());
  };
  fill(
    box,
    el("h2", {}, "On which day was it?"),
    el("div", { class: "field" }, el("label", { for: "other-day", class: "label" }, "Day"), day),
    el("div", { class: "row" }, button("Cancel", () => box.close(), { class: "quiet" }), button("Save", save, { class: "main", "data-act": "save-day" })),
  );
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

const DAYS: Record<string, string> = { below: "several signs below the usual", below_single: "one sign below the usual", within: "within the usual", above: "above the usual", unknown: "cannot say" };

function painWords(app: App, answers: Tree[] | undefined): string {
  if (answers === undefined) return "pain not asked";
  return answers.length === 0 ? "no pain" : `pain: ${answers.map((one) => `${app.regionName(one.region)} ${one.score} of 10`).join(", ")}`;
}

function summary(app: App, kind: Tree, byRoot: Map<number, Chain>): string {
  const [name, body] = Object.entries(kind)[0] as [string, Tree];
  if (name === "day_report") {
    return [body.class && `the day is ${DAYS[body.class] ?? body.class}`, painWords(app, body.pain), body.asks && (body.asks.map((one: string) => one.replaceAll("_", " ")).join(", ") || "none of what is asked first"), body.markers && body.markers.map((one: Tree) => `${one.kind.replaceAll("_", " ")} ${one.value}`).join(", ")].filter(Boolean).join("; ");
  }
  if (name === "next_day_report") {
    const of = byRoot.get(body.session);
    return `${of ? `after ${dayShort(of.day)}: ` : ""}${painWords(app, body.pain).replace("no pain", "no more pain than before")}`;
  }
  if (name === "clearance_recorded") return `${String(body.status).replaceAll("_", " ")}${body.expires ? ` until ${dayShort(body.expires)}` : ""}${(body.limits ?? []).map((one: Tree) => `; ${limitWords(app, one)}`).join("")}; said by ${body.who}`;
  if (name === "coach_sign_off") return `${body.scope === "everything" ? "every lift" : body.scope.region ? app.regionName(body.scope.region) : app.liftName(String(Object.values(body.scope)[0]))}; ${body.who}`;
  if (name === "role_set") return `${app.liftName(body.lift)}: ${(ROLES[body.role] ?? body.role).toLowerCase()}${body.not_below ? `, on plan down to ${mass({ kg: body.not_below.kg ?? 0 })}` : ""}`;
  if (name === "layoff_noted") return `from ${dayShort(body.from)}; ${body.reason}`;
  if (name === "coach_override") return `${app.liftName(body.lift)}: at most ${mass({ kg: body.load.kg ?? 0 })}${body.expires ? ` until ${dayShort(body.expires)}` : ""}; ${body.who}${body.why ? `: ${body.why}` : ""}`;
  if (name === "advance_accepted" || name === "advance_declined") return `${app.liftName(body.lift)}; ${body.who}`;
  if (name === "body_mass_recorded") return mass({ kg: body.kg ?? 0 });
  if (name === "function_tested") return `${TESTS[body.test]?.[0] ?? body.test}: ${testResult(body.test, body.result)}`;
  if (name === "symptom_report") return body.signs.map((one: string) => one.replaceAll("_", " ")).join(", ");
  if (name === "parameters_changed") return "lifts, bars, discs and rules";
  if (typeof body === "string") return body;
  return Object.entries(body as Record<string, Tree>)
    .filter(([, value]) => typeof value === "string" || typeof value === "number")
    .map(([key, value]) => `${key.replaceAll("_", " ")}: ${String(value).replaceAll("_", " ")}`)
    .join(", ");
}

/** Correcting a session: pick the set, change it. */
function correctBox(app: App, lifter: Loaded, chain: Chain, kind: Tree): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "Correct a session" });
  const session = structuredClone(kind.session_recorded);
  const criteriaOf = (lift: string): Tree[] => app.parameters(lifter)?.lifts.find((one: Tree) => one.id === lift)?.criteria ?? [];
  const edit = (lift: Tree, at: number): void => {
    const set = lift.sets[at];
    box.close();
    sheet(
      app,
      `${app.liftName(lift.lift)}: set ${at + 1}`,
      {
        load: set.load,
        reps: set.reps,
        good: set.marks?.acceptable,
        first: set.marks?.first_failing_rep,
        reserve: set.effort?.rir,
        marks: Object.fromEntries((set.marks?.marks ?? []).map((one: Tree) => [one.criterion, one.mark])),
        cue: "",
        setup: { company: undefined, pins: undefined },
      },
      criteriaOf(lift.lift),
      (facts) => {
        const marks = facts.good === undefined ? undefined : {
          ...(set.marks ?? { rater: "coach" }),
          reps: facts.reps,
          acceptable: facts.good,
          marks: Object.entries(facts.marks).map(([criterion, mark]) => ({ criterion, mark })),
        };
        if (marks) delete marks.first_failing_rep;
        if (marks && facts.first !== undefined && (facts.good ?? 0) < facts.reps) marks.first_failing_rep = facts.first;
        const next = { ...set, load: facts.load, reps: facts.reps };
        delete next.marks;
        if (marks) next.marks = marks;
        if (facts.reserve === undefined) { if (set.effort?.rir !== undefined) delete next.effort; }
        else next.effort = { rir: facts.reserve };
        lift.sets[at] = next;
        correct(app, lifter, chain, { session_recorded: session });
      },
    );
  };
  fill(
    box,
    el("h2", {}, "Which set was wrong?"),
    el("div", { class: "stack" }, session.lifts.map((lift: Tree) => lift.sets.map((set: Tree, at: number) => button(`${app.liftName(lift.lift)}: set ${at + 1}, ${mass(set.load)} \u00d7 ${plain(set.reps)}`, () => edit(lift, at), { "data-act": "correct-set" })))),
    button("Cancel", () => box.close(), { class: "quiet" }),
  );
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

const PAGE = 30;

/** What undoing would take back, or put back. */
function undoWords(last: Chain): string {
  const now = last.said.at(-1);
  const before = last.said.length > 1 ? last.said.at(-2) : undefined;
  const name = Object.keys(now ?? before ?? {})[0] ?? "";
  const what = last.said.length === 1 ? "" : last.said.length > 2 ? "the last change of " : now ? (before ? "the correction of " : "putting back ") : "taking back ";
  return `Undo the last entry: ${what}${kindWords(name)}, ${dayShort(last.day)}`;
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
function byDay(entries: Chain[]): [string, Chain[]][] {
  const days: [string, Chain[]][] = [];
  for (const chain of entries) {
    const last = days.at(-1);
    if (last && last[0] === chain.day) last[1].push(chain);
    else days.push([chain.day, [chain]]);
  }
  return days;
}

/** A dot a repetition: full where it was good, open where it slipped, small where nobody watched. */
function repDots(set: Tree): HTMLElement {
  const good: number | undefined = set.marks?.acceptable;
  const reps: number = typeof set.reps === "number" ? set.reps : 0;
  const first: number = set.marks?.first_failing_rep ?? (good ?? 0) + 1;
  const slipped = (rep: number): boolean => good !== undefined && rep >= first && rep < first + reps - good;
  const dots = Array.from({ length: reps }, (_, at) => (good === undefined ? "\u00b7" : slipped(at + 1) ? "\u25cb" : "\u25cf")).join("");
  const words = good === undefined ? `${reps} repetitions, not watched` : `${good} of ${reps} good`;
  return el("span", { class: "dots", role: "img", "aria-label": words }, dots);
}

/** The morning after that session, where somebody said it. */
function morningWords(app: App, chain: Chain, byRoot: Map<number, Chain>): string {
  for (const other of byRoot.values()) {
    const said = other.said.at(-1)?.next_day_report;
    if (said && (said.session === chain.root || said.session === chain.last)) return `Morning after: ${painWords(app, said.pain).replace("no pain", "no more pain than before")}.`;
  }
  return "Morning after: not told.";
}

/** A session as it was done: each lift with its loads, a dot a repetition, pain, and the morning after. */
function sessionBlock(app: App, session: Tree, chain: Chain, byRoot: Map<number, Chain>): Child {
  const pain = painWords(app, session.pain);
  return [
    session.lifts.map((lift: Tree) =>
      el(
        "p",
        { class: "done-lift" },
        el("b", {}, app.liftName(lift.lift)),
        lift.sets.map((set: Tree) => [" ", el("span", { class: "set" }, `${mass({ kg: set.load.kg ?? 0 })} \u00d7 ${set.reps}\u00a0`, repDots(set))]),
        lift.cue && el("span", { class: "soft" }, ` \u201c${lift.cue}\u201d`),
      ),
    ),
    el("p", { class: "soft" }, `${pain.replace(/^./, (letter) => letter.toUpperCase())}. ${morningWords(app, chain, byRoot)}`),
  ];
}

/** One entry, with what may be done to it. */
function entry(app: App, lifter: Loaded, chain: Chain, byRoot: Map<number, Chain>): HTMLElement {
  const now = chain.said.at(-1);
  const first = chain.said.find((one) => one !== undefined);
  const name = Object.keys(now ?? first)[0] as string;
  return el(
    "li",
    { class: now ? "" : "gone" },
    el("p", {}, el("b", {}, kindWords(name)), now && JSON.stringify(now) === JSON.stringify(chain.said[0]) ? "" : ` (${now ? "corrected" : "taken back"})`),
    name === "session_recorded" ? sessionBlock(app, (now ?? first).session_recorded, chain, byRoot) : el("p", { class: "soft" }, summary(app, now ?? first, byRoot)),
    el(
      "div",
      { class: "row" },
      name === "session_recorded" && now && button("Correct", () => correctBox(app, lifter, chain, now), { "aria-label": `Correct the session of ${dayShort(chain.day)}`, "data-act": "correct" }),
      now && name !== "parameters_changed" && button("Take back", () => correct(app, lifter, chain, undefined), { "aria-label": `Take back ${kindWords(name)} of ${dayShort(chain.day)}` }),
      now && button("Another day", () => dayBox(app, lifter, chain), { class: "quiet", "aria-label": `Another day for ${kindWords(name)} of ${dayShort(chain.day)}`, "data-act": "other-day" }),
      !now && button("Put back", () => correct(app, lifter, chain, chain.said.findLast((one) => one !== undefined)), { "aria-label": `Put back ${kindWords(name)} of ${dayShort(chain.day)}` }),
    ),
  );
}

export function logView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return [el("h1", { tabindex: -1 }, "Log"), el("p", {}, "No lifter is in view.")];
  const { byRoot, lastRoot } = chains(lifter);
  const shown: number = app.kept.shown ?? PAGE;
  const entries = [...byRoot.values()].toReversed();
  const last = lastRoot === undefined ? undefined : byRoot.get(lastRoot);
  const lifts: string[] = (app.parameters(lifter)?.lifts ?? []).map((one: Tree) => one.id);
  return [
    el("h1", { tabindex: -1 }, `Log of ${shownName(lifter.id)}`),
    el("p", { class: "soft" }, `${count(lifter.events.length, "event")}. Nothing is ever overwritten: taking back and correcting add an event.`),
    last && button(undoWords(last), () => correct(app, lifter, last, last.said.length > 1 ? last.said.at(-2) : undefined), { "data-act": "undo" }),
    writeDownPart(app),
    coursesPart(app, lifts),
    el("h2", {}, "Day by day, latest first"),
    el("p", { class: "soft" }, "A dot a repetition: full good, open slipped, small not watched. How many slipped and which was first is kept, not each one."),
    byDay(entries.slice(0, shown)).map(([day, own]) =>
      el("div", { class: "day", "data-day": day }, el("h3", {}, dayShort(day)), el("ul", { class: "log" }, own.map((chain) => entry(app, lifter, chain, byRoot)))),
    ),
    entries.length > shown && button("Earlier entries", () => { app.kept.shown = shown + PAGE; app.refresh(); }),
  ];
}
