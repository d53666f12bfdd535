// Writing down what happened, in few taps.
import type { App } from "./app.ts";
import { button, choices, el, fill, type Child } from "./element.ts";
import { attempt, type Tree } from "./engine.ts";
import { given, mass, unitNow, type Mass } from "./numbers.ts";
import { numberField, openPad } from "./pad.ts";

function criteria(app: App, lift: string): Tree[] {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return parameters?.lifts.find((one: Tree) => one.id === lift)?.criteria ?? [];
}

/** Whether the lift is one that falls on the lifter: a bench press, a squat. */
export function overTheBody(app: App, lift: string): boolean {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return parameters?.lifts.find((one: Tree) => one.id === lift)?.overTheBody ?? false;
}

/** How a set was set up, as far as somebody said so. */
export interface Setup {
  company: "alone" | "spotter" | undefined;
  pins: "none" | number | undefined;
}

const PINS_BEGIN = 700;

export function setupFields(setup: Setup, redraw: () => void): Child[] {
  return [
    choices("Who is there?", [{ value: "spotter", label: "Somebody spots" }, { value: "alone", label: "Alone" }], setup.company, (value) => {
      setup.company = setup.company === value ? undefined : (value as Setup["company"]);
      redraw();
    }),
    choices("Pins or safeties", [{ value: "set", label: "Set" }, { value: "none", label: "None" }], typeof setup.pins === "number" ? "set" : setup.pins, (value) => {
      setup.pins = value === "none" ? "none" : PINS_BEGIN;
      redraw();
    }),
    typeof setup.pins === "number" && numberField("Height of the pins", String(setup.pins), "mm", (value) => {
      setup.pins = value;
      redraw();
    }),
  ];
}

function setupEvent(setup: Setup): Tree | undefined {
  if (setup.company === undefined && setup.pins === undefined) return undefined;
  return { company: setup.company, pins: setup.pins };
}

/** The setup of a lift from those of its sets: the barest set counts. */
function setupOf(all: (Tree | undefined)[]): Tree | undefined {
  const known = all.filter((one): one is Tree => one !== undefined);
  if (known.length === 0) return undefined;
  const heights = known.map((one) => one.pins).filter((one): one is number => typeof one === "number");
  const pinned = heights.length === all.length;
  return {
    ...(pinned ? { pins: { mm: Math.min(...heights) } } : {}),
    ...(known.some((one) => one.company === "alone")
      ? { company: "alone" }
      : all.every((one) => one?.company === "spotter")
        ? { company: "spotter" }
        : {}),
  };
}

interface SetFacts {
  load: Mass;
  reps: number;
  good: number | undefined;
  first: number | undefined;
  reserve: number | undefined;
  marks: Record<string, string>;
  cue: string;
  setup: Setup;
}

function setEvent(facts: SetFacts): Tree {
  const marks =
    facts.good === undefined
      ? undefined
      : {
          reps: facts.reps,
          acceptable: facts.good,
          ...(facts.good < facts.reps && facts.first !== undefined ? { first_failing_rep: facts.first } : {}),
          marks: Object.entries(facts.marks).map(([criterion, mark]) => ({ criterion, mark })),
          rater: "coach",
        };
  return {
    load: facts.load,
    reps: facts.reps,
    ...(facts.reserve === undefined ? {} : { effort: { rir: facts.reserve } }),
    ...(marks ? { marks } : {}),
  };
}

/** What was said of the setup of this lift earlier in the session. */
function setupBefore(app: App, lift: string): Setup {
  const lifter = app.lifter;
  const before = lifter && app.draft(lifter).findLast((one) => one.lift === lift)?.setup;
  return { company: before?.company, pins: before?.pins };
}

/** Where the set is done, unless that is the granted place. */
function placeEvent(lift: Tree): Tree | undefined {
  return JSON.stringify(lift.place) === JSON.stringify(lift.granted.place) ? undefined : lift.place;
}

function draftEntry(lift: Tree, facts: SetFacts): Tree {
  const [place, setup] = [placeEvent(lift), setupEvent(facts.setup)];
  return { lift: lift.lift, set: setEvent(facts), ...(place ? { place } : {}), ...(facts.cue ? { cue: facts.cue } : {}), ...(setup ? { setup } : {}) };
}

/** Every planned set, watched by the coach and found good. */
export function goodSets(app: App, lift: Tree): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const marks = Object.fromEntries(criteria(app, lift.lift).map((one) => [one.id, "met"]));
  const entry = draftEntry(lift, { load: lift.load, reps: lift.reps, good: lift.reps, first: undefined, reserve: undefined, marks, cue: "", setup: setupBefore(app, lift.lift) });
  app.addDraft(lifter, Array.from({ length: lift.sets }, () => entry));
}

function stepper(label: string, shown: string, less: () => void, more: () => void, change?: () => void): HTMLElement {
  return el(
    "div",
    { class: "field" },
    el("span", { class: "label" }, label),
    el(
      "div",
      { class: "stepper" },
      button("\u2212", less, { "aria-label": `${label}: less` }),
      change ? button(shown, change, { class: "number", "aria-label": `${label}: ${shown}. Change` }) : el("output", {}, shown),
      button("+", more, { "aria-label": `${label}: more` }),
    ),
  );
}

/** One set: load, repetitions, how many were good, what was seen, how much was left. */
export function setBox(app: App, lift: Tree, number: number): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const own = criteria(app, lift.lift);
  const facts: SetFacts = {
    load: lift.load ?? lift.limit,
    reps: lift.reps,
    good: lift.reps,
    first: undefined,
    reserve: undefined,
    // Nothing is taken as seen until somebody says so.
    marks: Object.fromEntries(own.map((one) => [one.id, "not_seen"])),
    cue: "",
    setup: setupBefore(app, lift.lift),
  };
  sheet(app, `${app.liftName(lift.lift)}: set ${number + 1}`, facts, own, (done) => app.addDraft(lifter, [draftEntry(lift, done)]), lift);
}

/** The sheet for one set, also for correcting an old one. */
export function sheet(app: App, title: string, facts: SetFacts, own: Tree[], save: (facts: SetFacts) => void, lift?: Tree): void {
  const box = el("dialog", { class: "pad wide", "aria-label": title });
  const cue = el("input", { type: "text", maxlength: 80, id: "cue", autocomplete: "off" });
  const step = (policy: "above" | "below"): void => {
    const bar = implementOf(app, lift);
    const found = attempt("loading.load_on", { implement: bar, stock: app.kit().stock, target: facts.load, policy: "nearest" }).answer;
    const next = policy === "above" ? found?.nextAbove : found?.nextBelow;
    if (next) facts.load = next;
    draw();
  };
  const good = (to: number | undefined): void => {
    facts.good = to;
    if (to === undefined || to >= facts.reps) facts.first = undefined;
    draw();
  };
  const reps = (by: number): void => {
    const next = facts.reps + by;
    if (next < 0 || next > 30) return;
    if (facts.good !== undefined && (facts.good === facts.reps || facts.good > next)) facts.good = next;
    facts.reps = next;
    draw();
  };
  const draw = (): void => {
    const seen = facts.good !== undefined;
    const bad = facts.good !== undefined && facts.good < facts.reps;
    fill(
      box,
      el("h2", {}, title),
      stepper("Load", mass(facts.load), () => step("below"), () => step("above"), () =>
        openPad("Load", unitNow(), (value) => {
          facts.load = attempt("page.mass", { mass: given(value) }).answer ?? facts.load;
          draw();
        }),
      ),
      stepper("Repetitions", String(facts.reps), () => reps(-1), () => reps(1)),
      choices("Was it watched?", [{ value: "yes", label: "Watched" }, { value: "no", label: "Not watched" }], seen ? "yes" : "no", (value) => good(value === "yes" ? facts.reps : undefined)),
      seen && stepper("Good repetitions", String(facts.good), () => good((facts.good ?? 0) > 0 ? (facts.good ?? 0) - 1 : 0), () => good((facts.good ?? 0) < facts.reps ? (facts.good ?? 0) + 1 : facts.reps)),
      bad && choices("First one that was not good", Array.from({ length: facts.reps }, (_, at) => ({ value: at + 1, label: String(at + 1) })).filter((one) => one.value <= (facts.good ?? 0) + 1), facts.first, (value) => {
        facts.first = value;
        draw();
      }),
      seen && own.map((one) =>
        choices(one.critical ? `${one.id} (critical)` : one.id, [
          { value: "met", label: "Met" },
          { value: "borderline", label: "Borderline" },
          { value: "not_met", label: "Not met" },
          { value: "not_seen", label: "Not seen" },
        ], facts.marks[one.id] ?? "not_seen", (value) => {
          facts.marks[one.id] = value;
          draw();
        }),
      ),
      seen && own.some((one) => facts.marks[one.id] === "not_seen") && el("p", { class: "soft" }, "A point that nobody saw is not met: with it this set cannot count."),
      seen && own.some((one) => facts.marks[one.id] !== "met") && button("All points met", () => {
        for (const one of own) facts.marks[one.id] = "met";
        draw();
      }, { "data-act": "all-met" }),
      choices("Left in reserve", [0, 1, 2, 3, 4, 5].map((value) => ({ value, label: value === 5 ? "5" : String(value) })), facts.reserve, (value) => {
        facts.reserve = facts.reserve === value ? undefined : value;
        draw();
      }),
      lift && overTheBody(app, lift.lift) && setupFields(facts.setup, draw),
      lift && el("div", { class: "field" }, el("label", { class: "label", for: "cue" }, "Cue used (may stay empty)"), cue),
      el(
        "div",
        { class: "row" },
        button("Cancel", () => box.close(), { class: "quiet" }),
        lift && button("It was ugly", () => { box.close(); app.go("q26", { lift: lift.lift }); }, {}),
        button("Save set", () => {
          facts.cue = cue.value.trim();
          box.close();
          save({ ...facts });
        }, { class: "main", "data-act": "save-set" }),
      ),
    );
  };
  draw();
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

export function implementOf(app: App, lift: Tree | undefined): Tree {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  const set = parameters?.lifts.find((one: Tree) => one.id === lift?.lift);
  const all: Tree[] = app.kit().implements;
  return all.find((one) => Object.values(one as Record<string, Tree>).some((body) => body.id === set?.implement)) ?? app.bar();
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
  score: number;
  /** Nothing tapped is not an answer; an empty list is the answer that nothing came with it. */
  features: string[] | undefined;
}

/** A report of pain as the log spells it. */
export function painEvent(facts: PainFacts, region: string): Tree {
  return { region, score: facts.score, ...(facts.features ? { features: facts.features } : {}) };
}

export function regionsOf(app: App): string[] {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  const names = (parameters?.regions ?? []).map((one: Tree) => one.id as string);
  const all = [...new Set<string>(names)];
  return all.length > 0 ? all : ["lower back", "knee", "shoulder", "hip"];
}

export function regionChoices(app: App): { value: string; label: string }[] {
  return regionsOf(app).map((value) => ({ value, label: app.regionName(value) }));
}

/** Any of several, or none of them, or no answer. */
function severalOf(none: string, all: readonly (readonly [string, string])[], now: string[] | undefined, put: (next: string[] | undefined) => void): HTMLElement {
  const pressed = (on: boolean): Record<string, string> => ({ class: "choice", "aria-pressed": on ? "true" : "false" });
  const toggle = (code: string): void => {
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

/** Ends the session: pain is always asked, and the whole is written as one event. */
export function finishBox(app: App): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": "Finish session" });
  const facts: PainFacts = { region: undefined, score: 0, features: undefined };
  const pains: Tree[] = [];
  let hurt = false;
  const entries = app.draft(lifter);
  const lifts = [...new Set(entries.map((one) => one.lift))];
  const setups = new Map(lifts.filter((lift) => overTheBody(app, lift) && !entries.some((one) => one.lift === lift && one.setup)).map((lift): [string, Setup] => [lift, { company: undefined, pins: undefined }]));
  const write = (asked: boolean): void => {
    const done = lifts.map((lift): Tree => {
      const own = entries.filter((one) => one.lift === lift);
      const cue = own.findLast((one) => one.cue)?.cue;
      const place = own.find((one) => one.place)?.place;
      const said = setups.get(lift);
      const setup = setupOf(own.map((one) => (said ? setupEvent(said) : one.setup)));
      return { lift, ...(place ? { place } : {}), sets: own.map((one) => one.set), ...(setup ? { setup } : {}), ...(cue ? { cue } : {}) };
    });
    if (hurt && facts.region) pains.push(painEvent(facts, facts.region));
    box.close();
    void app
      .record(lifter, { session_recorded: { lifts: done, ...(asked ? { pain: pains } : {}) } }, undefined, true)
      .then(() => app.refresh());
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, "Finish session"),
      [...setups].map(([lift, setup]) => el("div", { class: "field" }, el("h3", {}, `${app.liftName(lift)}: may stay empty`), setupFields(setup, draw))),
      el("h3", {}, "Any pain in a joint, a tendon or the spine?"),
      el("p", { class: "soft" }, "Sore muscles are something else. Not asking is kept as not asked."),
      hurt ? painFields(app, facts, draw) : undefined,
      el(
        "div",
        { class: "stack" },
        !hurt && button("None. Save the session", () => write(true), { class: "main", "data-act": "no-pain" }),
        !hurt && button("Yes, some", () => { hurt = true; draw(); }, {}),
        hurt && button("Save the session", () => write(true), { class: "main", disabled: facts.region === undefined }),
        !hurt && button("Not asked. Save the session", () => write(false), {}),
        button("Not yet", () => box.close(), { class: "quiet" }),
      ),
    );
  draw();
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

export const ASKS = [
  ["fever", "Fever"],
  ["dizziness", "Dizzy"],
  ["palpitations", "Heart racing or irregular"],
  ["fall", "A fall since last time"],
  ["new_medicine", "A new medicine"],
] as const;

const CLASSES = [
  { value: "ordinary", label: "Ordinary" },
  { value: "good", label: "Good" },
  { value: "bad_single", label: "One bad sign" },
  { value: "bad_agreeing", label: "Several bad signs" },
  { value: "unknown", label: "Cannot say" },
];

/** The day's questions: what is asked first, pain now, how the day is. */
export function dayBox(app: App): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": "The day\u2019s questions" });
  const pain: PainFacts = { region: undefined, score: 0, features: undefined };
  let hurt: "no" | "yes" | undefined;
  // Nothing tapped is not an answer.
  let asks: string[] | undefined;
  let shape: string | undefined;
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
      hurt === "yes" ? painFields(app, pain, draw) : undefined,
      choices("Against this lifter\u2019s own usual days, today is", CLASSES, shape, (value) => { shape = value; draw(); }),
      el(
        "div",
        { class: "row" },
        button("Cancel", () => box.close(), { class: "quiet" }),
        button("Save", () => {
          const pains = hurt === "yes" && pain.region ? [painEvent(pain, pain.region)] : [];
          box.close();
          void app.record(lifter, {
            day_report: {
              ...(shape ? { class: shape } : {}),
              ...(hurt === undefined ? {} : { pain: pains }),
              ...(asks ? { asks } : {}),
            },
          }).then(() => app.refresh());
        }, { class: "main", "data-act": "save-day", disabled: (hurt === "yes" && pain.region === undefined) || (hurt === undefined && asks === undefined && shape === undefined) }),
      ),
    );
  draw();
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}
