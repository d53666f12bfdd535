// What a question is, and what the questions about the bar share.
import type { App } from "../app.ts";
import type { Child } from "../element.ts";
import { choices, el } from "../element.ts";
import type { LiftParameters, LiftPlan, Plan, WorkSet } from "bismar-page-package";
import { ask, attempt, kindOf, type Answered, type Tried } from "../engine.ts";
import { barWords, implementName } from "../kit.ts";
import { deviceDay, given, unitNow, writtenNumber, type Mass } from "../numbers.ts";
import { numberField } from "../pad.ts";
import { answer } from "../answer.ts";

export interface Question {
  number: number;
  title: string;
  group: "Today" | "The bar" | "Loads" | "Weeks and years";
  view: (app: App) => Child;
}

/** What was chosen on this view, or what it begins with. */
export function kept<T>(app: App, key: string, begin: () => T): T {
  if (app.kept[key] === undefined) app.kept[key] = begin();
  return app.kept[key] as T;
}

export function put(app: App, key: string, value: unknown): void {
  app.kept[key] = value;
  app.refresh();
}

/** A mass that the pad changes. */
export function massField(app: App, key: string, label: string, begin: () => Mass, shown = writtenNumber): { field: HTMLElement; value: Mass } {
  const value = kept(app, key, begin);
  const field = numberField(label, shown(value), unitNow(), (number, unit) => {
    const read = attempt("page.mass", { mass: given(number, unit) });
    if (read.refused) {
      app.notice = read.refused.message;
      app.refresh();
    } else put(app, key, read.answer);
  });
  return { field, value };
}

/** A round load to begin a question with, in the unit in use. */
export function usual(kg: number, lb: number): () => Mass {
  return () => ask("page.mass", { mass: unitNow() === "kg" ? { kg } : { lb } });
}

export function countField(app: App, key: string, label: string, begin: () => number, unit = ""): { field: HTMLElement; value: number } {
  const value = kept(app, key, begin);
  return { field: numberField(label, String(value), unit, (number) => put(app, key, number)), value };
}

/** Which bar, where there are several. */
export function barChoice(app: App): Child {
  const bars = app.kit().implements.filter((one) => kindOf(one, "bar"));
  if (bars.length < 2) return undefined;
  return choices("Bar", bars.map((one) => ({ value: implementName(one), label: barWords(one) })), implementName(app.bar()), (value) => {
    const written = app.store.set("bar", value);
    app.refresh();
    void written.then(() => app.say());
  });
}

export function fields(...items: Child[]): HTMLElement {
  return el("div", { class: "fields" }, items);
}

/** What a question says in place of a load where a stop is in force: of that lift, or of any where none of the lifter's
 * own is asked about. Nothing where nothing is stopped. */
export function stopFirst(app: App, lift?: string): HTMLElement | undefined {
  if (!app.lifter) return undefined;
  const { lines, lifts } = app.stops(app.lifter);
  const [first] = lines;
  if (first === undefined) return undefined;
  const own = lift !== undefined && liftNames(app).includes(lift);
  const why = own ? lifts.find((one) => one.lift === lift)?.why : first;
  return why === undefined ? undefined : answer({ big: own ? `No load: ${app.liftName(lift)} is stopped` : "No load: a stop is in force", why, tone: "stop" });
}

/** The lifts of this lifter. */
export function liftNames(app: App): string[] {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return (parameters?.lifts ?? []).map((one) => one.id);
}

export function liftChoice(app: App, key = "lift", first?: string): { field: Child; value: string | undefined } {
  const names = liftNames(app);
  const value = kept(app, key, () => first ?? names[0] ?? "");
  if (names.length === 0) return { field: undefined, value: undefined };
  return { field: choices("Lift", names.map((name) => ({ value: name, label: app.liftName(name) })), value, (name) => put(app, key, name)), value };
}

/** What is said where a question is about somebody and nobody is there. */
export function nobody(what: string): Child {
  return answer({ big: "Needs a lifter", why: `${what} Begin with somebody new, open a file, or try the invented lifter: all under Lifters.` });
}

export function lifts(app: App): LiftParameters[] {
  return app.lifter ? (app.parameters(app.lifter)?.lifts ?? []) : [];
}

/** What the rules say after these sets of a lift: that of the lifter in view, or, with nobody, a row begun here at that load
 * with the bar chosen. `reserve` is what was to be left, where it is not the plan's. */
export function afterSets(app: App, lift: string | undefined, load: Mass, sets: WorkSet[], reserve?: number): Tried<Answered<"page.after_sets">> {
  const { lifter } = app;
  const left = reserve === undefined ? {} : { reserve };
  const planWith = (text: string, id: string): string => {
    const plan: Plan = ask("page.plan", { plan: text });
    const known = plan.lifts.some((one) => one.lift === id);
    const lifts: LiftPlan[] = known ? plan.lifts.map((one) => (one.lift === id ? { ...one, ...left } : one)) : [...plan.lifts, { lift: id, ...left }];
    return ask("page.plan_text", { plan: { ...plan, lifts } });
  };
  if (lifter && lift !== undefined) {
    return attempt("page.after_sets", { log: app.log(lifter), plan: planWith(lifter.plan, lift), lift, sets, today: app.day(lifter), unit: unitNow() });
  }
  const kit = app.kit();
  const today = deviceDay();
  const made: Mass = attempt("loading.load_on", { implement: app.bar(), stock: kit.stock, target: load, policy: "below" }).answer?.total ?? load;
  const begun = attempt("page.begin", { lifter: { id: "nobody" }, day: today, lifts: [{ lift: ALONE, implement: implementName(app.bar()), load: made }], implements: kit.implements, stock: kit.stock });
  if (begun.refused) return begun;
  return attempt("page.after_sets", { log: begun.answer.log, plan: planWith(begun.answer.plan, ALONE), lift: ALONE, sets, today, unit: unitNow() });
}
/** The first lift of today that has sets: what is asked about a set is asked about that. */
export function liftOfToday(app: App): string | undefined {
  const { lifter } = app;
  return lifter && app.today(lifter).answer?.session.lifts.find((one) => one.sets > 0)?.lift;
}

/** A lift that falls on nobody and starts from no height. */
const ALONE = "supported row";
/** What is set for a lift that stands for any of them, as the library begins one. */
export function anyLift(app: App): LiftParameters {
  return ask("page.new_lift", { lift: ALONE, implement: implementName(app.bar()), load: app.startLoad() });
}

/** The critical point of a lift that stands for any of them. */
export function criticalOf(app: App, lift: string | undefined): string | undefined {
  const alone = !app.lifter || lift === undefined;
  const set = alone ? anyLift(app) : lifts(app).find((one) => one.id === lift);
  return set?.criteria.find((one) => one.critical)?.id;
}
