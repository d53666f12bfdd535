// Question 8: what maximum a set points to, of one that is typed or of a lift's own log.
import { answer, refused, table } from "../answer.ts";
import type { App } from "../app.ts";
import { choices, el, type Child } from "../element.ts";
import { ask, attempt, type Answered, type Tried } from "../engine.ts";
import { dayLong, estimate, plain, unitNow } from "../numbers.ts";
import type { Loaded } from "../store.ts";
import { countField, fields, kept, liftNames, massField, put, stopFirst, usual } from "./shape.ts";

/** An estimate with its unit. */
export function estimateOf(kg: number): string {
  return `${estimate(kg)}\u00a0${unitNow()}`;
}

/** The maximum that a set points to: of one that is typed, or of the newest session of a lift of this lifter. */
export function estimated(app: App): Child {
  const own = liftNames(app);
  const lift = kept(app, "of", () => "");
  const counted = kept<"no" | "yes">(app, "unsaid", () => "no");
  const from = own.length > 0 && choices("Lift", [{ value: "", label: "A set typed here" }, ...own.map((name) => ({ value: name, label: app.liftName(name) }))], lift, (value) => put(app, "of", value));
  const unsaid = choices("What people leave unsaid", [{ value: "no" as const, label: "Not counted" }, { value: "yes" as const, label: "Counted" }], counted, (value) => put(app, "unsaid", value));
  return lift !== "" && own.includes(lift) ? estimatedOf(app, lift, counted === "yes", fields(from, unsaid)) : estimatedTyped(app, counted === "yes", from, unsaid);
}

/** Weeks in which the newest sets are looked for. */
const WEEKS = 8;

function newest(app: App, lifter: Loaded, lift: string): Tried<Answered<"page.trend">> {
  return app.told(lifter, `trend ${lift} ${WEEKS}`, () => attempt("page.trend", { log: app.log(lifter), lift, today: app.day(lifter), weeks: WEEKS }));
}

/** What the newest session of a lift points to, of those whose sets can speak. */
export function newestOf(app: App, lift: string): Answered<"page.trend">["newest"] {
  const { lifter } = app;
  return lifter && !lifter.damage ? newest(app, lifter, lift).answer?.newest : undefined;
}

/** What the log says: the newest session of that lift whose sets can speak. */
function estimatedOf(app: App, lift: string, counted: boolean, inputs: HTMLElement): Child {
  const lifter = app.lifter;
  if (!lifter) return inputs;
  if (lifter.damage) return [stopFirst(app), inputs];
  const found = newest(app, lifter, lift);
  if (found.refused) return [inputs, refused(found.refused.message)];
  const last = found.answer.newest;
  if (!last) return [inputs, answer({ big: "No set that can speak", why: `In the last ${WEEKS} weeks no set of ${app.liftName(lift)} passed technique, told what was left and came near enough to failure.`, cautions: ["estimates_are_ranges"] })];
  const nothing = counted && !last.withUnsaid ? " These sets left nothing unsaid." : "";
  return [inputs, estimateAnswer(last.withUnsaid && counted ? last.withUnsaid : last.asCalled, counted && last.withUnsaid !== undefined, `By the sets of ${app.liftName(lift)} on ${dayLong(last.day)}.${nothing} `)];
}

function estimatedTyped(app: App, counted: boolean, from: Child, unsaid: Child): Child {
  const load = massField(app, "load", "Load", usual(60, 150));
  const reps = countField(app, "reps", "Repetitions", () => 5);
  const rpe = kept(app, "rpe", () => 7);
  const good = kept<"passed" | "failed">(app, "good", () => "passed");
  const inputs = fields(
    from,
    load.field,
    reps.field,
    choices("It felt like, of 10", [7, 7.5, 8, 8.5, 9, 9.5, 10].map((value) => ({ value, label: plain(value, 1) })), rpe, (value) => put(app, "rpe", value)),
    choices("Technique", [{ value: "passed" as const, label: "Passed" }, { value: "failed" as const, label: "Slipped" }], good, (value) => put(app, "good", value)),
    unsaid,
  );
  const options = counted ? { bias: { reps: ask("one_rm.halperin_2022_under_call", {}) } } : {};
  const found = attempt("one_rm.estimate", { evidence: [{ load: load.value, reps: reps.value, effort: { rpe }, technique: good }], options });
  if (found.refused) {
    return [inputs, good === "failed" ? answer({ big: "No estimate from that set", why: "A set in which technique slipped says nothing about strength.", cautions: ["estimates_are_ranges"] }) : refused(found.refused.message)];
  }
  return [inputs, estimateAnswer(found.answer, counted, "")];
}

function estimateAnswer(got: Answered<"one_rm.estimate">, counted: boolean, whose: string): Child {
  const underCall = ask("one_rm.halperin_2022_under_call", {});
  return answer({
    big: `${estimate(got.interval.low)} to ${estimate(got.interval.high)} ${unitNow()}`,
    why: `${whose}A range, most likely near ${estimateOf(got.value.kg)}${counted ? `, with ${plain(underCall)} repetitions more than called` : ""}. No line of a day is set by it.`,
    working: [
      el("p", {}, `People call fewer repetitions left than there are: by ${plain(underCall)} repetitions on average, and more the further they are from failure. Counted, an estimate is higher; it is off until somebody turns it on.`),
      el("p", {}, `Where the width comes from: the equations differ by ${plain(got.parts.equation * 100, 0)} %, judging what was left is off by ${plain(got.parts.reserve * 100, 0)} %, one day differs from the next by ${plain(got.parts.dayToDay * 100, 0)} %.`),
      table(["Equation", "Says"], got.byEquation.flatMap((one) => (one.value === undefined ? [] : [[one.equation.replaceAll("_", " "), `${estimate(one.value.kg)} ${unitNow()}`]])), "Each equation alone"),
    ],
    sources: ["one_rm.estimate", ...(counted ? ["one_rm.halperin_2022_under_call"] : []), ...got.byEquation.map((one) => `one_rm.${one.equation}`)],
    cautions: ["estimates_are_ranges"],
  });
}
