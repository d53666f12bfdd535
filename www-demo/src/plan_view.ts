// The plan of a lifter: which lifts in which order, which stays when time is short, and which lifts belong together.
import type { App } from "./app.ts";
import { button, choices, el, type Child } from "./element.ts";
import { ask, attempt, type Tree } from "./engine.ts";
import { statusWords } from "./charts.ts";
import { LIFTS } from "./kit.ts";
import { firstLoad } from "./lifters.ts";
import { mass, plain } from "./numbers.ts";
import { openPad } from "./pad.ts";
import { snake } from "./settings.ts";
import type { Loaded } from "./store.ts";

/** Repetitions to leave in reserve where the plan names none (the library's default). */
const RESERVE = 3;
const RESERVES = [1, 2, 3, 4, 5];

export const ROLES: Record<string, string> = {
  train: "To be trained",
  maintain: "Kept as it is",
  rest: "Rests for now",
  retire: "No longer used",
};

/** Every region that a lift names is declared; none that was declared is taken away. */
function declareRegions(all: Tree): void {
  const known = new Set((all.regions ?? []).map((one: Tree) => one.id));
  const named: string[] = all.lifts.flatMap((one: Tree) => one.regions as string[]);
  const added = [...new Set(named)].filter((id) => !known.has(id)).map((id) => ({ id }));
  all.regions = [...(all.regions ?? []), ...added];
}

/** Writes a whole new set of what is set for the lifts. */
export function putParameters(app: App, lifter: Loaded, change: (next: Tree) => void): Promise<boolean> {
  const next = snake(app.parameters(lifter));
  change(next);
  declareRegions(next);
  return app.record(lifter, { parameters_changed: next });
}

function moved<T>(items: T[], from: number, by: number): T[] {
  const next = [...items];
  const [one] = next.splice(from, 1);
  if (one !== undefined) next.splice(from + by, 0, one);
  return next;
}

function planned(app: App, lifter: Loaded, plan: Tree, at: number): HTMLElement {
  const lift = plan.lifts[at];
  const place = app.facts(lifter).places.find((one: Tree) => one.lift === lift.lift);
  const name = app.liftName(lift.lift);
  const put = (lifts: Tree[]): void => app.putPlan(lifter, { ...plan, lifts });
  const change = (more: Tree): void => put(plan.lifts.map((one: Tree, other: number) => (other === at ? { ...one, ...more } : one)));
  return el(
    "li",
    { class: "card", "data-planned": lift.lift },
    el("h2", {}, `${at + 1}. ${name}`),
    place && el("p", { class: "soft" }, `${ROLES[place.role] ?? place.role}; ${statusWords(place.status)} at ${mass(place.at.work.load)}.`),
    choices("Repetitions to leave in reserve", RESERVES.map((value) => ({ value, label: String(value) })), Number(lift.reserve ?? RESERVE), (value) => change({ reserve: value })),
    el(
      "div",
      { class: "row moves" },
      button("Earlier", () => put(moved(plan.lifts, at, -1)), { disabled: at === 0, "aria-label": `${name}: earlier`, "data-act": "earlier" }),
      button("Later", () => put(moved(plan.lifts, at, 1)), { disabled: at === plan.lifts.length - 1, "aria-label": `${name}: later`, "data-act": "later" }),
    ),
    el(
      "div",
      { class: "stack" },
      button("Stays when time is short", () => change({ keep: !lift.keep }), { class: "choice", "aria-pressed": lift.keep ? "true" : "false", "aria-label": `Stays when time is short: ${name}` }),
      button("Leave out of the plan", () => put(plan.lifts.filter((_: Tree, other: number) => other !== at)), { "aria-label": `${name}: leave out of the plan`, disabled: plan.lifts.length < 2 }),
      button("Gate, rungs, regions", () => app.go("lift", { lift: lift.lift }), { "aria-label": `${name}: gate, rungs, regions`, "data-act": "edit-lift" }),
    ),
  );
}

function notPlanned(app: App, lifter: Loaded, plan: Tree, names: string[]): Child {
  const out = names.filter((name) => !plan.lifts.some((lift: Tree) => lift.lift === name));
  if (out.length === 0) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Not in the plan"),
    el("ul", { class: "kit" }, out.map((lift) => el("li", {}, el("span", {}, app.liftName(lift)), button("Plan it", () => app.putPlan(lifter, { ...plan, lifts: [...plan.lifts, { lift }] }), { "aria-label": `Plan it: ${app.liftName(lift)}` }), button("Gate, rungs, regions", () => app.go("lift", { lift }), { "aria-label": `${app.liftName(lift)}: gate, rungs, regions` })))),
  );
}

function newLift(app: App, lifter: Loaded, plan: Tree, names: string[]): Child {
  const left = LIFTS.filter((one) => !names.includes(one.lift));
  const begin = (one: { lift: string; bar: string }): void => {
    const bars: Tree[] = app.kit().implements.filter((bar: Tree) => bar.bar);
    const bar = bars.find((own) => own.bar.id === one.bar) ?? bars[0];
    if (!bar) return;
    const made = attempt("page.new_lift", { lift: one.lift, implement: bar.bar.id, load: firstLoad(one.lift, bar, app.kit().stock) });
    if (made.refused) return;
    void putParameters(app, lifter, (next) => next.lifts.push(JSON.parse(made.answer))).then((done) => {
      if (done) app.putPlan(lifter, { ...plan, lifts: [...plan.lifts, { lift: one.lift }] });
    });
  };
  return el(
    "details",
    {},
    el("summary", {}, "Begin another lift"),
    el("p", { class: "soft" }, "It starts with the lightest load at the right height, learning, with a gate of 9 good of 10 on 3 days."),
    el("div", { class: "asks" }, left.map((one) => button(one.lift, () => begin(one), { class: "ask", "data-new-lift": one.lift }))),
  );
}

function pairsPart(app: App, lifter: Loaded, names: string[]): Child {
  const pairs: Tree[] = app.parameters(lifter)?.pairs ?? [];
  const strict: string = app.kept.strict ?? names[0] ?? "";
  const forgiving: string = app.kept.forgiving ?? names.find((name) => name !== strict) ?? "";
  const options = names.map((value) => ({ value, label: app.liftName(value) }));
  const set = (change: (next: Tree) => void): void => void putParameters(app, lifter, change).then(() => app.refresh());
  return el(
    "section",
    {},
    el("h2", {}, "Strict and forgiving lifts"),
    el("p", { class: "soft" }, "Two variants of one lift, trained on different days. The strict one may carry at most this part of what the forgiving one has proven."),
    pairs.length > 0 &&
      el(
        "ul",
        { class: "kit roomy" },
        pairs.map((pair, at) => {
          const [strict, forgiving] = [app.liftName(pair.strict), app.liftName(pair.forgiving)];
          const most = `${plain(pair.ratioCap * 100, 0)} %`;
          return el(
            "li",
            {},
            el("span", {}, el("b", {}, strict), " strict, ", el("b", {}, forgiving), " forgiving"),
            button(`At most ${most}`, () => openPad(`Strict at most, in % of ${forgiving}`, "%", (percent) => set((next) => (next.pairs[at].ratio_cap = percent / 100))), { "aria-label": `${strict}: at most ${most} of ${forgiving}. Change` }),
            button("Part them", () => set((next) => next.pairs.splice(at, 1)), { "aria-label": `Part them: ${strict} and ${forgiving}` }),
          );
        }),
      ),
    names.length > 1 &&
      el(
        "details",
        {},
        el("summary", {}, "Pair two lifts"),
        choices("Strict", options, strict, (value) => {
          app.kept.strict = value;
          app.refresh();
        }),
        choices("Forgiving", options, forgiving, (value) => {
          app.kept.forgiving = value;
          app.refresh();
        }),
        button("Pair them", () => set((next) => (next.pairs = [...(next.pairs ?? []), { strict, forgiving, ratio_cap: 1 }])), { disabled: strict === forgiving, "data-act": "pair" }),
      ),
  );
}

export function planView(app: App): Child {
  const { lifter } = app;
  if (!lifter) return [el("h1", { tabindex: -1 }, "Plan and lifts"), el("p", {}, "No lifter is in view.")];
  const plan: Tree = JSON.parse(lifter.plan);
  const names: string[] = (app.parameters(lifter)?.lifts ?? []).map((one: Tree) => one.id);
  return [
    el("h1", { tabindex: -1 }, `Plan of ${lifter.id}`),
    el("p", { class: "soft" }, "Sets, repetitions and load come from what each lift has been granted; the plan says which lifts, in which order, and how much to leave."),
    el("ol", { class: "cards planned" }, plan.lifts.map((_: Tree, at: number) => planned(app, lifter, plan, at))),
    choices("This week", [{ value: "usual", label: "A usual week" }, { value: "easy", label: "A planned easy week" }], plan.easy_week ? "easy" : "usual", (value) => app.putPlan(lifter, { ...plan, easy_week: value === "easy" })),
    notPlanned(app, lifter, plan, names),
    newLift(app, lifter, plan, names),
    pairsPart(app, lifter, names),
    el("p", { class: "caution" }, el("b", {}, "Note. "), ask("page.explain", { code: "gates_unproven" })),
  ];
}
