// Writing down what happened, in few taps.
import type { App } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, choices, el, fill, type Child } from "./element.ts";
import type { Ask, DayClass, EventKindInput, LiftToday, NextSet, PainAnswer, PainFeature, WorkSet } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import { ASKS } from "./kinds.ts";
import type { Mass } from "./numbers.ts";
import { stopsTold } from "./stops_told.ts";
import { recordEntry } from "./write_box.ts";

/** Whether a load may be gone on with: one above today's only while the lift is trained as granted, with nothing since that
 * asks for less. */
export function stands(lift: LiftToday, load: Mass): boolean {
  const asGranted = lift.verdict === "train" && lift.limit.kg >= lift.granted.work.load.kg;
  return asGranted || load.kg <= (lift.load ?? lift.limit).kg;
}

/** Load of the next set: that of the set before, unless the rules ask for less. */
export function nextLoad(app: App, lift: LiftToday): Mass {
  const lifter = app.lifter;
  const before = lifter && app.draft(lifter).findLast((one) => one.lift === lift.lift)?.set.load;
  const on = before && stands(lift, before) ? before : undefined;
  return slippedThen(app, lift)?.down ?? on ?? lift.load ?? lift.limit;
}

/** What a set that lost a critical point asks for now. */
export interface AfterSlip {
  /** The lift is over for today. */
  ends: boolean;
  /** A lighter load for the next set. */
  down: Mass | undefined;
  /** What it asks for could not be worked out: nothing heavier is given. */
  unknown?: boolean;
  /** A rung that is easier. */
  rung: string | undefined;
  /** Why, in sentences. */
  why: string[];
}

/** Reasons that only say what nobody told: they come last. */
const UNTOLD = ["pain_not_asked", "not_marked", "effort_not_said"];

/** Why the next set is what it is, the telling reasons first, without the line that says what to do. */
export function reasonsOf(next: NextSet, why: string[]): string[] {
  const untold = (at: number): boolean => UNTOLD.includes(String(next.reasons[at]));
  const sentences = why.slice(1, 1 + next.reasons.length);
  return [...sentences.filter((_, at) => !untold(at)), ...sentences.filter((_, at) => untold(at))];
}


/** Whether anything was seen in a set that could ask for less: then the rules are asked, which takes a look at the whole log. */
function somethingSlipped(set: WorkSet): boolean {
  const { marks } = set;
  const seen = marks?.marks?.some((one) => one.mark !== "met" && one.mark !== "not_seen") ?? false;
  return set.failed === true || seen || (marks?.acceptable !== undefined && marks.acceptable < marks.reps);
}

/** What the sets of this session ask for where a critical point was not met; nothing where every one was. */
export function slippedThen(app: App, lift: LiftToday, lifter = app.lifter): AfterSlip | undefined {
  if (!lifter) return undefined;
  const sets = app.draft(lifter).filter((one) => one.lift === lift.lift).map((one) => one.set);
  if (!sets.some(somethingSlipped)) return undefined;
  const today = lift.load ?? lift.limit;
  const { answer: found, refused } = app.afterSets(lifter, lift.lift, sets);
  if (!found) {
    const last = sets.at(-1)?.load ?? today;
    return { ends: false, down: last.kg < today.kg ? last : today, unknown: true, rung: undefined, why: ["Something slipped in this session.", refused.message] };
  }
  const lost = found.next.reasons.some((one) => kindOf(one, "criticalFault") !== undefined || one === "repetition_missed" || one === "two_faults");
  if (!lost) return undefined;
  const { then } = found.next;
  const down = kindOf(then, "downTo");
  return { ends: then === "stop", down: down && !stands(lift, down) ? today : down, rung: kindOf(then, "easierRung") ?? found.next.instead, why: reasonsOf(found.next, found.why) };
}

const FEATURES = [
  ["new", "New"],
  ["rising", "More than last time"],
  ["sharp", "Sharp"],
  ["radiating", "Runs down a limb"],
  ["locking", "The joint locks"],
  ["numbness", "Numb or weak"],
  ["pop", "A pop with swelling"],
] as const;

export interface PainFacts {
  region: string | undefined;
  /** Not answered until it is tapped. */
  score: number | undefined;
  /** Nothing tapped is not an answer; an empty list is the answer that nothing came with it. */
  features: PainFeature[] | undefined;
}

/** What is still to be answered about a pain; nothing once it can be written down. */
export function painLacks(facts: PainFacts): string | undefined {
  if (facts.region === undefined) return "Where, please.";
  return facts.score === undefined ? "How much, please." : undefined;
}

/** A report of pain as the log spells it. */
export function painEvent(facts: PainFacts, region: string): PainAnswer {
  // Nobody has answered: nothing stands for that.
  if (facts.score === undefined) throw new Error("pain that nobody rated");
  return { region, score: facts.score, ...(facts.features ? { features: facts.features } : {}) };
}

export function regionsOf(app: App): string[] {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  const names = (parameters?.regions ?? []).map((one) => one.id as string);
  const all = [...new Set<string>(names)];
  return all.length > 0 ? all : ["lower back", "knee", "shoulder", "hip"];
}

export function regionChoices(app: App): { value: string; label: string }[] {
  return regionsOf(app).map((value) => ({ value, label: app.regionName(value) }));
}

/** Any of several, or none of them, or no answer. */
function severalOf<T extends string>(none: string, all: readonly (readonly [T, string])[], now: T[] | undefined, put: (next: T[] | undefined) => void): HTMLElement {
  const pressed = (on: boolean): Record<string, string> => ({ class: "choice", "aria-pressed": on ? "true" : "false" });
  const toggle = (code: T): void => {
    const others = (now ?? []).filter((one) => one !== code);
    const next = now?.includes(code) ? others : [...others, code];
    put(next.length > 0 ? next : undefined);
  };
  return el(
    "div",
    { class: "choices" },
    button(none, () => put(now?.length === 0 ? undefined : []), { ...pressed(now?.length === 0), "data-none": true }),
    all.map(([code, label]) => button(label, () => toggle(code), pressed(now?.includes(code) ?? false))),
  );
}

/** More than one place can hurt: those named so far, and a way to name another. */
export function morePains(app: App, facts: PainFacts, named: PainAnswer[], redraw: () => void): Child {
  return [
    named.length > 0 && el("p", { "data-named": named.length }, `Also: ${named.map((one) => `${app.regionName(one.region)} ${one.score} of 10`).join(", ")}.`),
    painLacks(facts) === undefined &&
      button("Another place hurts too", () => {
        // A place that is named twice counts as last said.
        const region = facts.region as string;
        const others = named.filter((one) => one.region !== region);
        named.splice(0, named.length, ...others, painEvent(facts, region));
        Object.assign(facts, { region: undefined, score: undefined, features: undefined });
        redraw();
      }, { "data-act": "another-place" }),
  ];
}

/** What is still missing, where some places are named already: nothing more has to be. */
export function painsLack(facts: PainFacts, named: PainAnswer[]): string | undefined {
  const begun = facts.region !== undefined || facts.score !== undefined;
  return named.length > 0 && !begun ? undefined : painLacks(facts);
}

/** Every place that was named, each once. */
export function painsOf(facts: PainFacts, named: PainAnswer[]): PainAnswer[] {
  const last = facts.region === undefined ? [] : [painEvent(facts, facts.region)];
  return [...named.filter((one) => one.region !== facts.region), ...last];
}

export function painFields(app: App, facts: PainFacts, redraw: () => void): Child[] {
  return [
    choices("Where", regionChoices(app), facts.region, (value) => {
      facts.region = value;
      redraw();
    }),
    choices("How much, 0 to 10", Array.from({ length: 11 }, (_, value) => ({ value, label: String(value) })), facts.score, (value) => {
      facts.score = value;
      redraw();
    }),
    el(
      "div",
      { class: "field" },
      el("span", { class: "label" }, "What came with it"),
      severalOf("None of these", FEATURES, facts.features, (features) => {
        facts.features = features;
        redraw();
      }),
    ),
  ];
}

const CLASSES: { value: DayClass; label: string }[] = [
  { value: "within", label: "Within the usual" },
  { value: "above", label: "Above the usual" },
  { value: "below_single", label: "One sign below the usual" },
  { value: "below", label: "Several signs below the usual" },
  { value: "unknown", label: "Cannot say" },
];

/** The day's questions: what is asked first, pain now, how the day is. */
export function dayBox(app: App): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": "The day\u2019s questions" });
  const pain: PainFacts = { region: undefined, score: undefined, features: undefined };
  const named: PainAnswer[] = [];
  const wrong = el("p", { class: "wrong", role: "alert" });
  let hurt: "no" | "yes" | undefined;
  // Nothing tapped is not an answer.
  let asks: Ask[] | undefined;
  let shape: DayClass | undefined;
  const pains = (): PainAnswer[] => (painLacks(pain) === undefined ? painsOf(pain, named) : named);
  const lacks = (): string | undefined => (hurt === "yes" ? painsLack(pain, named) : undefined);
  const nothing = (): boolean => hurt === undefined && asks === undefined && shape === undefined;
  /** What was answered; a pain of which something is missing is none yet. */
  const report = (): EventKindInput => ({
    dayReport: {
      ...(shape ? { class: shape } : {}),
      ...(hurt === undefined || (hurt === "yes" && pains().length === 0) ? {} : { pain: hurt === "yes" ? pains() : [] }),
      ...(asks ? { asks } : {}),
    },
  });
  const save = (): Promise<boolean> => recordEntry(app, lifter, report(), wrong, () => own.close());
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, "The day\u2019s questions"),
      el(
        "div",
        { class: "field" },
        el("span", { class: "label" }, "Any of these since last time?"),
        severalOf("None of these", ASKS, asks, (next) => {
          asks = next;
          draw();
        }),
      ),
      choices("Pain now, in a joint, a tendon or the spine?", [{ value: "no", label: "None" }, { value: "yes", label: "Some" }], hurt, (value) => { hurt = value; draw(); }),
      hurt === "yes" ? [painFields(app, pain, draw), morePains(app, pain, named, draw)] : undefined,
      lacks() && el("p", { class: "soft" }, lacks() ?? ""),
      choices("Against this lifter\u2019s own usual days, today is", CLASSES, shape, (value) => { shape = value; draw(); }),
      wrong,
      el("div", { class: "row" }, button("Cancel", () => own.cancel(), { class: "quiet" }), button("Save", () => void save(), { class: "main", "data-act": "save-day", disabled: lacks() !== undefined || nothing() })),
    );
  draw();
  const stops = (): string[] => stopsTold(app, { asks, pain: hurt === "yes" ? pains() : [] });
  // What stops something is written down also where the rest is half told.
  const own = showEntry(box, { stops, write: () => (nothing() || (lacks() !== undefined && stops().length === 0) ? undefined : save) });
}
