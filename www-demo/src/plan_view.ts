// The plan of a lifter: which lifts in which order, which stays when time is short, and which lifts belong together.
import { shownName } from "./names.ts";
import type { App } from "./app.ts";
import { button, choices, el, later, showBox, type Child } from "./element.ts";
import type { Gate, LifterPlace, LiftPlan, Pair, Plan, RecordParameters } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import { statusWords } from "./charts.ts";
import { barWords, firstBars, firstLifts } from "./kit.ts";
import { atMost, atMostPart, dayShort, mass, plain, weekday } from "./numbers.ts";
import { limitLine, limitsFor, standsUnder } from "./limits.ts";
import { openPad } from "./pad.ts";
import { eachHand, implementOf } from "./setup.ts";
import { anotherBar, anotherRung } from "./write_down.ts";
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
function declareRegions(all: RecordParameters): void {
  const known = new Set(all.regions.map((one) => one.id));
  const named: string[] = all.lifts.flatMap((one) => one.regions);
  const added = [...new Set(named)].filter((id) => !known.has(id)).map((id) => ({ id }));
  all.regions = [...all.regions, ...added];
}

/** Writes a whole new set of what is set for the lifts: what was set where it was seen, changed. Made from that, and not from
 * what another window has set since, it is refused where the two differ. */
export function putParameters(app: App, seen: Loaded, change: (next: RecordParameters) => void): Promise<boolean> {
  // Of somebody who was erased nothing is opened again.
  const known = app.store.lifter(seen.id) && app.parameters(seen);
  if (!known) return Promise.resolve(false);
  const next = structuredClone(known);
  change(next);
  declareRegions(next);
  return app.record(seen, { parametersChanged: next });
}

function moved<T>(items: T[], from: number, by: number): T[] {
  const next = [...items];
  const [one] = next.splice(from, 1);
  if (one !== undefined) next.splice(Math.max(from + by, 0), 0, one);
  return next;
}

/** Changes one lift of the plan that is stored; nothing where that has it no more. */
function changeLift(app: App, lifter: Loaded, lift: string, make: (lifts: LiftPlan[], at: number) => LiftPlan[]): void {
  app.putPlan(lifter, (plan) => {
    const at = plan.lifts.findIndex((one) => one.lift === lift);
    return at < 0 ? undefined : { ...plan, lifts: make(plan.lifts, at) };
  });
}

/** Takes a lift into the plan that is stored, at its end. */
function planIt(app: App, lifter: Loaded, lift: string): void {
  app.putPlan(lifter, (plan) => (plan.lifts.some((one) => one.lift === lift) ? plan : { ...plan, lifts: [...plan.lifts, { lift }] }));
}

function planned(app: App, lifter: Loaded, plan: Plan, lift: LiftPlan, at: number): HTMLElement {
  const place = app.facts(lifter).places.find((one) => one.lift === lift.lift);
  const name = app.liftName(lift.lift);
  const put = (make: (lifts: LiftPlan[], at: number) => LiftPlan[]): void => changeLift(app, lifter, lift.lift, make);
  const change = (more: Partial<LiftPlan>): void => put((lifts, own) => lifts.map((one, other) => (other === own ? { ...one, ...more } : one)));
  return el(
    "li",
    { class: "card", "data-planned": lift.lift },
    el("h2", {}, `${at + 1}. ${name}`),
    place && sentence(app, lift, place, (reserve) => change({ reserve })),
    el(
      "details",
      { class: "more" },
      el("summary", {}, "More", el("span", { class: "unseen" }, ` about ${name}`)),
      el(
        "div",
        { class: "row moves" },
        button("Earlier", () => put((lifts, own) => moved(lifts, own, -1)), { disabled: at === 0, "aria-label": `${name}: earlier`, "data-act": "earlier" }),
        button("Later", () => put((lifts, own) => moved(lifts, own, 1)), { disabled: at === plan.lifts.length - 1, "aria-label": `${name}: later`, "data-act": "later" }),
      ),
      el(
        "div",
        { class: "stack" },
        button("Stays when time is short", () => change({ keep: !lift.keep }), { class: "choice", "aria-pressed": lift.keep ? "true" : "false", "aria-label": `Stays when time is short: ${name}` }),
        button("Leave out of the plan", () => put((lifts, own) => lifts.filter((_, other) => other !== own)), { "aria-label": `${name}: leave out of the plan`, disabled: plan.lifts.length < 2 }),
        button("Gate, rungs, regions", () => app.go("lift", { lift: lift.lift }), { "aria-label": `${name}: gate, rungs, regions`, "data-act": "edit-lift" }),
      ),
    ),
  );
}

/** How many repetitions to leave, as one tap. */
function reserveBox(name: string, now: number, put: (reserve: number) => void): void {
  const box = el("dialog", { class: "pad wide", "aria-label": `${name}: repetitions to leave in reserve` });
  box.append(
    el("h2", {}, name),
    choices("Repetitions to leave in reserve", RESERVES.map((value) => ({ value, label: String(value) })), now, (value) => {
      box.close();
      put(value);
    }),
    el("div", { class: "row" }, button("Cancel", () => box.close(), { class: "quiet" })),
  );
  showBox(box);
}

/** The gate in a few words; what else it asks for stands behind "Gate, rungs, regions". */
export function gateInWords(gate: Gate | undefined): string {
  const parts: Gate[] = gate === undefined ? [] : (kindOf(gate, "all") ?? [gate]);
  const run = parts.map((one) => kindOf(one, "passRun")).find((one) => one !== undefined);
  const evidence = parts.some((one) => kindOf(one, "evidence"));
  if (run) return `up after ${run.sessions} ${run.sessions === 1 ? "session" : "sessions in a row"} with ${run.acceptable} of ${run.of} good`;
  return evidence ? "up after enough good repetitions" : "up by its own gate";
}

/** A lift of the plan in one sentence; its words lead to what they name. */
function sentence(app: App, lift: LiftPlan, place: LifterPlace, leave: (reserve: number) => void): HTMLElement {
  const lifter = app.lifter as Loaded;
  const set = app.parameters(lifter)?.lifts.find((one) => one.id === lift.lift);
  const rung: string = set?.rungs?.[place.at.place.rung]?.name ?? set?.rungs?.[place.at.place.rung]?.id ?? "";
  const edit = (): void => app.go("lift", { lift: lift.lift });
  const word = (words: string, about: string, act: () => void): HTMLElement => button(words, act, { class: "word", "aria-label": `${app.liftName(lift.lift)}, ${about}: ${words}. Change` });
  const { work } = place.at;
  const stopped = app.stops(lifter).lifts.some((one) => one.lift === lift.lift);
  const today = app.today(lifter).answer?.session.lifts.find((one) => one.lift === lift.lift);
  const less = today && today.limit.kg < work.load.kg ? ` (for now no more than ${atMost(today.limit)}${eachHand(app, lift.lift)})` : "";
  return el(
    "p",
    { class: "sentence", "data-sentence": lift.lift },
    word(ROLES[place.role] ?? place.role, "role", edit),
    `, ${statusWords(place.status)}: `,
    word(barWords(implementOf(app, lift)), "bar", () => anotherBar(app, lift.lift)),
    ", ",
    rung !== "" && [word(rung, "rung", () => (place.sideways.length > 0 ? anotherRung(app, lift.lift) : edit())), ", "],
    stopped ? "no load until this is cleared" : `${mass(work.load)}${eachHand(app, lift.lift)}${less}, ${work.sets} \u00d7 ${work.reps}`.replace(/(\d) (?=kg|lb|\u00d7)|(\u00d7) /g, "$1$2\u00a0"),
    ", ",
    word(`leave ${plain(Number(lift.reserve ?? RESERVE), 1)}`, "left in reserve", () => reserveBox(app.liftName(lift.lift), Number(lift.reserve ?? RESERVE), leave)),
    ", ",
    word(gateInWords(set?.gate), "gate", edit),
  );
}

const NOT_MEANT = "\u00b7";
const MEANT = "\u25cb";
const LIFTED = "\u25cf";

/** The week, lift by day: on which days each lift is meant, and what was lifted so far. A tap changes what is meant. */
function weekGrid(app: App, lifter: Loaded, plan: Plan): Child {
  const today = app.day(lifter);
  const monday = ask("page.day", { day: today, plus: -weekday(today) });
  const days = Array.from({ length: 7 }, (_, at) => ask("page.day", { day: monday, plus: at }));
  const done = new Set(app.history(lifter).sessions.slice(-14).flatMap((session) => session.lifts.map((one) => `${session.day} ${one.lift}`)));
  const change = (lift: LiftPlan, at: number): void => {
    const meant = lift.days?.includes(at) ?? false;
    changeLift(app, lifter, lift.lift, (lifts, own) => lifts.map((one, place) => {
      const others = (one.days ?? []).filter((day) => day !== at);
      return place === own ? { ...one, days: (meant ? others : [...others, at]).toSorted((day, other) => day - other) } : one;
    }));
  };
  const cell = (lift: LiftPlan, day: string, at: number): HTMLElement => {
    const [meant, lifted] = [lift.days?.includes(at) ?? false, done.has(`${day} ${lift.lift}`)];
    return button(lifted ? LIFTED : meant ? MEANT : NOT_MEANT, () => change(lift, at), {
      class: day === today ? "choice now" : "choice",
      "aria-pressed": meant ? "true" : "false",
      "aria-label": `${app.liftName(lift.lift)}, ${dayShort(day)}: planned${lifted ? "; lifted" : ""}`,
      "data-day": at,
    });
  };
  const against = attempt("page.planned_week", { log: app.log(lifter), plan }).answer ?? [];
  return el(
    "section",
    { class: "week", "aria-label": "The week" },
    el("h2", {}, "The week"),
    el("div", { class: "week-line week-head", "aria-hidden": "true" }, el("span", {}), days.map((day) => el("span", { class: day === today ? "now" : "" }, dayShort(day).slice(0, 3), el("br", {}), dayShort(day).slice(4).replace(/ .*/, "")))),
    plan.lifts.map((lift) => el("div", { class: "week-line", role: "group", "aria-label": `Days of ${app.liftName(lift.lift)}`, "data-week": lift.lift }, el("b", {}, app.liftName(lift.lift)), days.map((day, at) => cell(lift, day, at)))),
    el("p", { class: "soft" }, `Tap a day to plan a lift for it: ${MEANT} planned, ${LIFTED} lifted this week. A lift without a day is for any.`),
    against.map((words) => el("p", { class: "caution", "data-against": true }, el("b", {}, "The week. "), words)),
  );
}

function notPlanned(app: App, lifter: Loaded, plan: Plan, names: string[]): Child {
  const out = names.filter((name) => !plan.lifts.some((lift) => lift.lift === name));
  if (out.length === 0) return undefined;
  return el(
    "section",
    {},
    el("h2", {}, "Not in the plan"),
    el("ul", { class: "kit" }, out.map((lift) => el("li", {}, el("span", {}, app.liftName(lift)), button("Plan it", () => planIt(app, lifter, lift), { "aria-label": `Plan it: ${app.liftName(lift)}` }), button("Gate, rungs, regions", () => app.go("lift", { lift }), { "aria-label": `${app.liftName(lift)}: gate, rungs, regions` })))),
  );
}

function newLift(app: App, lifter: Loaded, names: string[]): Child {
  const left = firstLifts().filter((lift) => !names.includes(lift));
  const begin = (lift: string): void => {
    const right = firstBars(lift, app.kit(), app.log(lifter));
    const offer = right.find((one) => one.fits);
    if (!offer) {
      app.notice = right.length === 0 ? `No bar here is right for a ${lift}; the bars stand under Gym.` : `Not begun: no bar here makes a load for a ${lift} that keeps the limits.${limitLine(limitsFor(app, lift).words)}`;
      app.refresh();
      return;
    }
    const made = attempt("page.new_lift", { lift, implement: offer.implement, load: offer.load });
    if (made.refused) return;
    void putParameters(app, lifter, (next) => next.lifts.push(made.answer)).then((done) => {
      if (done) planIt(app, lifter, lift);
    });
  };
  return el(
    "details",
    {},
    el("summary", {}, "Begin another lift"),
    el("p", { class: "soft" }, "It starts with the lightest load at the right height, learning, with a gate of 9 good of 10 on 3 days."),
    el("div", { class: "asks" }, left.map((lift) => button(lift, () => begin(lift), { class: "ask", "data-new-lift": lift }))),
  );
}

function pairsPart(app: App, lifter: Loaded, names: string[]): Child {
  const pairs = app.parameters(lifter)?.pairs ?? [];
  const strict = (app.kept.strict as string | undefined) ?? names[0] ?? "";
  const forgiving = (app.kept.forgiving as string | undefined) ?? names.find((name) => name !== strict) ?? "";
  const options = names.map((value) => ({ value, label: app.liftName(value) }));
  const set = (change: (next: RecordParameters) => void): void => void putParameters(app, lifter, change).then(() => app.refresh());
  return el(
    "section",
    {},
    el("h2", {}, "Strict and forgiving lifts"),
    el("p", { class: "soft" }, "Two variants of one lift, trained on different days. The strict one may carry at most this part of what the forgiving one has proven."),
    pairs.length > 0 &&
      el(
        "ul",
        { class: "kit roomy" },
        pairs.map((pair) => {
          const other = (one: Pair): boolean => one.strict !== pair.strict || one.forgiving !== pair.forgiving;
          const [strict, forgiving] = [app.liftName(pair.strict), app.liftName(pair.forgiving)];
          const most = atMostPart(pair.ratioCap);
          return el(
            "li",
            {},
            el("span", {}, el("b", {}, strict), " strict, ", el("b", {}, forgiving), " forgiving"),
            button(`At most ${most}`, () => openPad(`Strict at most, in % of ${forgiving}`, "%", (percent) => set((next) => (next.pairs = (next.pairs ?? []).map((one) => (other(one) ? one : { ...one, ratioCap: percent / 100 }))))), { "aria-label": `${strict}: at most ${most} of ${forgiving}. Change` }),
            button("Part them", () => set((next) => (next.pairs = (next.pairs ?? []).filter(other))), { "aria-label": `Part them: ${strict} and ${forgiving}` }),
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
        button("Pair them", () => set((next) => (next.pairs = [...(next.pairs ?? []), { strict, forgiving, ratioCap: 1 }])), { disabled: strict === forgiving, "data-act": "pair" }),
      ),
  );
}

export function planView(app: App): Child {
  const { lifter } = app;
  if (!lifter) return [el("h1", { tabindex: -1 }, "Plan and lifts"), el("p", {}, "No lifter is in view.")];
  const plan = app.plan(lifter);
  const names: string[] = (app.parameters(lifter)?.lifts ?? []).map((one) => one.id);
  return [
    el("h1", { tabindex: -1 }, `Plan of ${shownName(lifter.id)}`),
    el("p", { class: "soft" }, "Sets, repetitions and load come from where each lift has got to; the plan says which lifts, in which order, and how much to leave."),
    standsUnder(app, lifter).length > 0 && el("p", { class: "caution", "data-under": true }, standsUnder(app, lifter).join(" ")),
    later(() => weekGrid(app, lifter, plan)),
    el("ol", { class: "cards planned" }, plan.lifts.map((lift, at) => planned(app, lifter, plan, lift, at))),
    choices("This week", [{ value: "usual", label: "A usual week" }, { value: "easy", label: "A planned easy week" }], plan.easyWeek ? "easy" : "usual", (value) => app.putPlan(lifter, (own) => ({ ...own, easyWeek: value === "easy" }))),
    notPlanned(app, lifter, plan, names),
    newLift(app, lifter, names),
    pairsPart(app, lifter, names),
    el("p", { class: "caution" }, el("b", {}, "Note. "), ask("page.explain", { code: "gates_unproven" })),
  ];
}
