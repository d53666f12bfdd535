// Loads that must still be there at a later age: named in the plan, and what if strength goes so or so until then?
import type { App } from "../app.ts";
import { showEntry } from "../boxes.ts";
import { button, choices, el, fill, type Child } from "../element.ts";
import type { LoadToKeep, Phase, Plan } from "bismar-page-package";
import { attempt } from "../engine.ts";
import { shownName } from "../names.ts";
import { atLeast, atLeastNumber, given, unitNow, type Mass } from "../numbers.ts";
import { numberField } from "../pad.ts";
import { eachHand } from "../setup.ts";
import type { Loaded } from "../store.ts";
import { countField, fields, kept, liftNames, put } from "./shape.ts";

type Course = "unasked" | "hold" | "gain" | "lapse";
const COURSES: { value: Course; label: string }[] = [
  { value: "unasked", label: "Not asked" },
  { value: "hold", label: "Held" },
  { value: "gain", label: "Gained, then held" },
  { value: "lapse", label: "Lost in a break, then held" },
];

/** How strength might go from now on, for the loads that the plan keeps for later years; nothing where it keeps none. */
export function whatIf(app: App, lifter: Loaded): { field: Child; phases?: Phase[] | undefined } {
  const ages = (app.plan(lifter).years?.keep ?? []).map((one) => one.atAge);
  const last = Math.max(...ages);
  const now = app.history(lifter).age;
  if (ages.length === 0 || now === undefined) return { field: undefined };
  const course = kept<Course>(app, "course", () => "unasked");
  const by = countField(app, "course by", "By the age of", () => Math.min(now + 5, last));
  const part = countField(app, `course part ${course}`, course === "gain" ? "Gained each year" : "Lost by then", () => (course === "gain" ? 1 : 30), "%");
  const moves = course === "gain" || course === "lapse";
  const field = fields(choices("Loads to keep: what if strength goes so?", COURSES, course, (value) => put(app, "course", value)), moves && by.field, moves && part.field);
  const held: Phase = { until: last, course: "hold" };
  const spread = { low: part.value / 100, middle: part.value / 100, high: part.value / 100 };
  if (course === "unasked") return { field };
  return { field, phases: moves ? [{ until: by.value, course: course === "gain" ? { gain: spread } : { lapse: spread } }, held] : [held] };
}

const keptBy = (plan: Plan): LoadToKeep[] => plan.years?.keep ?? [];
function withKeep(plan: Plan, keep: LoadToKeep[]): Plan {
  return { ...plan, years: { ...plan.years, keep } };
}

/** Why a plan cannot be kept; nothing where it can. */
function refusedPlan(app: App, lifter: Loaded, plan: Plan): string | undefined {
  const text = attempt("page.plan_text", { plan });
  return text.refused?.message ?? app.today(lifter, {}, text.answer).refused?.message;
}

/** Asks for one more load to keep, and writes it into the plan. */
function keepBox(app: App, { id }: Loaded): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "A load to keep" });
  const what = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "keep-name" });
  const wrong = el("p", { class: "wrong", role: "alert" });
  let lift: string | undefined;
  let load: Mass | undefined;
  let atAge: number | undefined;
  const save = (): void => {
    const lifter = app.store.lifter(id);
    const name = what.value.trim();
    if (lift === undefined || name === "" || load === undefined || atAge === undefined) {
      wrong.textContent = lift === undefined ? "Which lift, please." : name === "" ? "What it is for, please." : load === undefined ? "The load, please." : "Until which age, please.";
      return;
    }
    const one: LoadToKeep = { lift, name, load, atAge };
    const add = (plan: Plan): Plan => withKeep(plan, [...keptBy(plan), one]);
    const refused = lifter && refusedPlan(app, lifter, add(app.plan(lifter)));
    if (refused !== undefined) {
      wrong.textContent = refused;
      return;
    }
    entry.close();
    if (lifter) app.putPlan(lifter, add);
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, "A load to keep for later years"),
      el("p", { class: "soft" }, "A suitcase, a grandchild, a bag of soil: a load that must still be there at a later age."),
      choices("With which lift", liftNames(app).map((value) => ({ value, label: app.liftName(value) })), lift, (value) => {
        lift = value;
        draw();
      }),
      el("div", { class: "field" }, el("label", { class: "label", for: "keep-name" }, "What it is for"), what),
      numberField(`Load to keep${lift === undefined ? "" : eachHand(app, lift)}`, load ? atLeastNumber(load) : "not yet", load ? unitNow() : "", (value, unit) => {
        load = attempt("page.mass", { mass: given(value, unit) }).answer ?? load;
        draw();
      }, unitNow()),
      numberField("Until the age of", atAge === undefined ? "not yet" : String(atAge), "", (value) => {
        atAge = value;
        draw();
      }),
      wrong,
      el("div", { class: "row" }, button("Cancel", () => entry.cancel(), { class: "quiet" }), button("Save", save, { class: "main", "data-act": "save-keep" })),
    );
  draw();
  const entry = showEntry(box);
}

/** The loads that the plan keeps for later years, and a way to name another. */
export function keepPart(app: App, lifter: Loaded): Child {
  const all = keptBy(app.plan(lifter));
  const without = (one: LoadToKeep) => (plan: Plan): Plan => withKeep(plan, keptBy(plan).filter((other) => JSON.stringify(other) !== JSON.stringify(one)));
  return [
    all.length > 0 && el("ul", { class: "kit" }, all.map((one) => el("li", {}, el("span", {}, `${shownName(one.name)}: ${atLeast(one.load)}${eachHand(app, one.lift)} with ${app.liftName(one.lift)} until the age of ${one.atAge}`), button("Remove", () => app.putPlan(lifter, without(one)), { "aria-label": `Remove ${shownName(one.name)}` })))),
    liftNames(app).length > 0 && button("A load to keep for later years", () => keepBox(app, lifter), { "data-act": "keep" }),
  ];
}
