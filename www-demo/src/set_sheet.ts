// One set, written down: a circle a repetition, what was seen, what was left; what looks wrong is asked once.
import type { App } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, choices, el, fill, type Child } from "./element.ts";
import type { Criterion, LiftToday, Mark, Slip, WorkSet } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import { barWords } from "./kit.ts";
import { difference, given, loadOfDay, mass, otherUnit, plain, unitNow, type Mass } from "./numbers.ts";
import { numberField, openPad } from "./pad.ts";
import { eachHand, implementOf, loadOf, overTheBody, setupFields, type Setup } from "./setup.ts";

export interface SetFacts {
  load: Mass;
  reps: number;
  /** Good repetitions; nothing where it was not watched. */
  good: number | undefined;
  first: number | undefined;
  reserve: number | undefined;
  marks: Record<string, Mark>;
  /** Bar speed in m/s, where it was measured. */
  velocity?: number | undefined;
  cue: string;
  setup: Setup;
}

/** What a load that looks mistyped may have been, as the library says of it beside the one that was expected. */
function slipWords(slip: Slip, entered: Mass, today: Mass, words: { entered: string; today: string }): string {
  if (slip === "decimal_point") return `${words.entered} was entered; today\u2019s load is ${words.today}. Is the decimal point in its place?`;
  // The number of today's load in the other unit, or today's number with the other unit.
  const asShown = (slip === "pounds_as_kilograms") === (unitNow() === "kg");
  return asShown
    ? `${words.entered} was entered; today\u2019s load is ${words.today}, which is ${otherUnit(today)}. Is it the other unit?`
    : `${words.entered} was entered, which is ${otherUnit(entered)}; today\u2019s load is ${words.today}. Is it the other unit?`;
}

/** What looks wrong about a load and how it is lifted, each in a sentence; empty where nothing does. */
export function doubts(app: App, lift: LiftToday, facts: SetFacts): string[] {
  const found: string[] = [];
  const today: Mass | undefined = lift.load ?? lift.limit;
  const implement = implementOf(app, lift);
  const bar = kindOf(implement, "bar");
  if (today && facts.load.kg !== today.kg) {
    const hand = eachHand(app, lift.lift);
    const words = { entered: `${mass(facts.load)}${hand}`, today: `${loadOfDay(lift)}${hand}` };
    const { slip } = ask("page.load_slip", { expected: today, now: facts.load });
    found.push(slip ? slipWords(slip, facts.load, today, words) : `${words.entered} was entered; today\u2019s load is ${words.today} (${difference({ kg: facts.load.kg - today.kg })}).`);
  }
  const made = attempt("loading.load_on", { implement, stock: app.kit().stock, target: facts.load, policy: "below" });
  if (bar && made.refused?.code === "below_lightest") found.push(`${mass(facts.load)} is less than the bar alone: ${barWords(implement)}.`);
  if (overTheBody(app, lift.lift) && facts.setup.company === "alone" && typeof facts.setup.pins !== "number") {
    found.push("Alone, and without pins: nobody and nothing catches the bar.");
  }
  return found;
}

/** Which circles are dark at first: the record holds only how many slipped and which was first. */
function slippedAtFirst(facts: SetFacts): Set<number> {
  const bad = facts.good === undefined ? 0 : facts.reps - facts.good;
  const from = facts.first ?? facts.reps - bad + 1;
  return new Set(Array.from({ length: bad }, (_, at) => from + at));
}

const SEEN = [
  ["all", "All met", "all-met"],
  ["some", "Some not", "some-not"],
  ["no", "Not watched", "not-watched"],
] as const;

function seenAtFirst(facts: SetFacts, fresh: boolean): string | undefined {
  if (facts.good === undefined) return fresh ? undefined : "no";
  return Object.values(facts.marks).every((one) => one === "met") ? "all" : "some";
}

/** What is done with a set once it is as it should be: the sheet stays until `close`, and says what is wrong with it in `wrong`. */
type Save = (facts: SetFacts, wrong: HTMLElement, close: () => void) => void;

/** The sheet for one set, also for correcting an old one. `settled` are the doubts that were answered before; `half` keeps what is
 * entered while pain is told first; `hand` is said behind a load that is one of two. */
export function sheet(app: App, title: string, facts: SetFacts, own: Criterion[], save: Save, planned?: LiftToday, so: { far?: string[]; settled?: string[]; turned?: () => string[]; now?: () => { lift: LiftToday; load: Mass } | undefined; half?: (facts: SetFacts) => void; begun?: boolean; hand?: string } = {}): void {
  const box = el("dialog", { class: "pad wide set-sheet", "aria-label": title });
  const cue = el("input", { type: "text", maxlength: 80, id: "cue", autocomplete: "off" });
  cue.value = facts.cue;
  let slipped = slippedAtFirst(facts);
  let seen = seenAtFirst(facts, planned !== undefined);
  let asking: string[] = [];
  const wrong = el("p", { class: "wrong", role: "alert" });
  let unfolded = false;
  let lift = planned;
  let lighter: string[] = [];
  const setupKnown = facts.setup.company !== undefined || facts.setup.pins !== undefined;
  const changed = (): void => {
    asking = [];
    wrong.textContent = "";
    draw();
  };
  const step = (policy: "above" | "below"): void => {
    const found = attempt("loading.load_on", { implement: implementOf(app, lift), stock: app.kit().stock, target: facts.load, policy: "nearest" }).answer;
    const next = policy === "above" ? found?.nextAbove : found?.nextBelow;
    if (next) facts.load = next;
    changed();
  };
  const count = (): void => {
    facts.good = seen === undefined || seen === "no" ? undefined : facts.reps - slipped.size;
    facts.first = slipped.size > 0 && facts.good !== undefined ? Math.min(...slipped) : undefined;
  };
  const tap = (rep: number): void => {
    slipped = new Set(slipped.has(rep) ? [...slipped].filter((one) => one !== rep) : [...slipped, rep]);
    if (slipped.size === 0) return look(seen ?? "all", true);
    look(own.length > 0 ? "some" : "all", true);
  };
  /** How it was watched: "all met", or "some not" with those that were not, the others met. */
  const look = (to: string, keep = false): void => {
    seen = to;
    if (!keep && to === "all" && own.length > 0) slipped = new Set();
    if (to !== "no") for (const one of own) if (to === "all" || facts.marks[one.id] === "not_seen" || facts.marks[one.id] === undefined) facts.marks[one.id] = "met";
    if (to === "no") slipped = new Set();
    count();
    changed();
  };
  const reps = (by: number): void => {
    const next = facts.reps + by;
    if (next < 0 || next > 30) return;
    facts.reps = next;
    slipped = new Set([...slipped].filter((one) => one <= next));
    count();
    changed();
  };
  /** Another window may have written what makes today's load another. */
  const follow = (): boolean => {
    const now = so.now?.();
    const [was, load] = [lift && (lift.load ?? lift.limit), now && (now.lift.load ?? now.lift.limit)];
    if (!now || !was || !load) return false;
    lift = now.lift;
    if (load.kg === was.kg) return false;
    if (facts.load.kg > now.load.kg) facts.load = now.load;
    lighter = [`Today\u2019s load is ${loadOf(app, now.lift.lift, load)} now: it was ${mass(was)} when this was opened, and something was written down since. If the set was lifted before that, set what was lifted.`];
    return true;
  };
  box.addEventListener("less", () => follow() && changed());
  const done = (): void => {
    if (follow()) return changed();
    if (seen === undefined) {
      wrong.textContent = "Watched or not, please.";
      return;
    }
    const open = lift ? [...lighter, ...(so.turned?.() ?? []), ...doubts(app, lift, facts).filter((one) => !so.settled?.includes(one))] : [];
    if (open.length > 0 && asking.length === 0) {
      asking = open;
      draw();
      box.querySelector<HTMLElement>(".asking")?.scrollIntoView({ block: "nearest" });
      return;
    }
    facts.cue = cue.value.trim();
    save({ ...facts }, wrong, entry.close);
  };
  const draw = (): void => {
    fill(
      box,
      el("h2", {}, title),
      asking.length === 0 && lighter.map((one) => el("p", { class: "caution", role: "alert", "data-lighter": true }, one)),
      el(
        "div",
        { class: "stepper" },
        el("span", { class: "label" }, "Load"),
        button("\u2212", () => step("below"), { "aria-label": "Load: less" }),
        button(`${mass(facts.load)}${so.hand ?? ""}`, () => openPad(`Load${so.hand ?? ""}`, unitNow(), (value, unit) => {
          facts.load = attempt("page.mass", { mass: given(value, unit) }).answer ?? facts.load;
          changed();
        }), { class: "number", "aria-label": `Load: ${mass(facts.load)}${so.hand ?? ""}. Change` }),
        button("+", () => step("above"), { "aria-label": "Load: more" }),
      ),
      el(
        "div",
        { class: "field" },
        el(
          "div",
          { class: "reps" },
          el("span", { class: "label" }, `${facts.reps} repetitions; tap those that slipped`),
          button("\u2212", () => reps(-1), { class: "less-more", "aria-label": "Repetitions: less" }),
          button("+", () => reps(1), { class: "less-more", "aria-label": "Repetitions: more" }),
        ),
        el(
          "div",
          { class: "choices circles", role: "group", "aria-label": "Repetitions" },
          Array.from({ length: facts.reps }, (_, at) => at + 1).map((rep) =>
            button(String(rep), () => tap(rep), { class: slipped.has(rep) ? "circle slipped" : "circle", "aria-pressed": slipped.has(rep) ? "true" : "false", "aria-label": `Repetition ${rep} slipped`, "data-rep": rep }),
          ),
        ),
      ),
      el(
        "div",
        { class: "field" },
        el("span", { class: "label" }, own.length > 0 ? "Points of technique" : "Watched?"),
        el("div", { class: "choices three", role: "group", "aria-label": "Was it watched?" }, SEEN.filter(([value]) => value !== "some" || own.length > 0).map(([value, label, act]) => button(value === "all" && own.length === 0 ? "Watched" : label, () => look(value), { class: "choice", "aria-pressed": seen === value ? "true" : "false", "data-value": value, "data-act": act }))),
      ),
      seen === "some" && own.length > 0 && el(
        "div",
        { class: "field" },
        el("span", { class: "label" }, "Which was not met?"),
        el("div", { class: "choices", role: "group", "aria-label": "Which was not met?" }, own.map((one) => button(one.critical ? `${one.id} (critical)` : one.id, () => {
          facts.marks[one.id] = facts.marks[one.id] === "not_met" ? "met" : "not_met";
          changed();
        }, { class: "choice", "aria-pressed": facts.marks[one.id] === "not_met" ? "true" : "false", "data-not-met": one.id }))),
      ),
      choices("Left in reserve", [0, 1, 2, 3, 4, 5].map((value) => ({ value, label: String(value) })), facts.reserve, (value) => {
        facts.reserve = facts.reserve === value ? undefined : value;
        changed();
      }),
      lift && overTheBody(app, lift.lift) && !setupKnown && setupFields(facts.setup, changed),
      asking.length > 0 && el("div", { class: "asking", role: "alert" }, el("p", {}, el("b", {}, "Is that right?")), asking.map((one) => el("p", {}, one))),
      wrong,
      lift ? more() : speed(),
      el(
        "div",
        { class: "row" },
        button("Cancel", () => entry.cancel(), { class: "quiet" }),
        button(asking.length > 0 ? "Yes, save it so" : "Save set", done, { class: "main", "data-act": "save-set" }),
      ),
    );
  };
  const speed = (): Child =>
    numberField("Bar speed, if measured", facts.velocity === undefined ? "not measured" : plain(facts.velocity), facts.velocity === undefined ? "" : "m/s", (value) => {
      facts.velocity = value > 0 ? value : undefined;
      changed();
    }, "m/s");
  const more = (): Child =>
    el(
      "details",
      { open: unfolded, toggle: (event) => void (unfolded = (event.target as HTMLDetailsElement).open) },
      el("summary", {}, "Cue, points one by one, bar speed, setup"),
      speed(),
      el("div", { class: "field" }, el("label", { class: "label", for: "cue" }, "Cue used (may stay empty)"), cue),
      seen !== "no" && seen !== undefined && own.map((one) =>
        choices(one.critical ? `${one.id} (critical)` : one.id, [
          { value: "met", label: "Met" },
          { value: "borderline", label: "Borderline" },
          { value: "not_met", label: "Not met" },
          { value: "not_seen", label: "Not seen" },
        ], facts.marks[one.id] ?? "not_seen", (value) => {
          facts.marks[one.id] = value;
          seen = Object.values(facts.marks).every((mark) => mark === "met") ? "all" : "some";
          count();
          changed();
        }),
      ),
      lift && overTheBody(app, lift.lift) && setupKnown && setupFields(facts.setup, changed),
      so.far && so.far.length > 0 && el("ul", {}, so.far.map((one) => el("li", {}, one))),
      lift && button("It hurt", () => { so.half?.({ ...facts, cue: cue.value.trim() }); entry.close(); app.go("q13"); }, {}),
    );
  draw();
  const entry = showEntry(box, {}, so.begun);
}

/** A set in a few words; `hand` where its load is one of two. */
export function setInWords(set: WorkSet, hand: string): string {
  const good: number | undefined = set.marks?.acceptable;
  const seen = good === undefined ? "not watched" : good === set.reps ? "all good" : `${good} good`;
  const not = (set.marks?.marks ?? []).filter((one) => one.mark === "not_met").map((one) => one.criterion);
  const rir = set.effort && kindOf(set.effort, "rir");
  const left = rir === undefined ? "" : `, ${plain(rir, 1)} left`;
  return `${mass(set.load)}${hand} \u00d7 ${set.reps}, ${seen}${not.length > 0 ? `, not met: ${not.join(", ")}` : ""}${left}${set.velocity === undefined ? "" : `, ${plain(set.velocity)} m/s`}`;
}
