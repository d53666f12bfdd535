// What is set for one lift: its role, what moves, gate, points of technique, rungs, regions. Written down as one event.
import type { App } from "./app.ts";
import { list } from "./answer.ts";
import { button, choices, el, later, type Child } from "./element.ts";
import type { Criterion, Dimension, Evidence, Gate, Length, LiftParameters, PassRun, Place, Requirement, Role, Rung } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import { limitsOn } from "./limits.ts";
import { shownName } from "./names.ts";
import { atMost, given, plain, rangeOf, unitNow } from "./numbers.ts";
import { numberField, openPad } from "./pad.ts";
import { gateInWords, putParameters, ROLES } from "./plan_view.ts";
import { placesPart } from "./questions/told.ts";
import { anyLift } from "./questions/shape.ts";
import { regionsOf } from "./record.ts";
import { refusal } from "./write_box.ts";

const MOVING: Record<Dimension, string> = { variant: "Rung", range: "Range", tempo: "Tempo", sets: "Sets", reps: "Repetitions", load: "Load" };

type PlainPart = Extract<Requirement, string>;
type CountPart = "spacing" | "dwellSessions" | "dwellDays";

/** Requirements that stand by themselves, each with what it asks for. */
const PLAIN: Record<PlainPart, string> = {
  no_open_block: "No open block: pain, stop sign, clearance",
  effort_cap: "Effort written down and not above its cap",
  sign_off: "The coach\u2019s sign-off",
  pair: "What the other lift of its pair asks for",
  region: "What its regions ask for",
};

interface GateParts {
  run: PassRun | undefined;
  evidence: Evidence | undefined;
  plain: PlainPart[];
  counts: Partial<Record<CountPart, number>>;
}

const COUNTS: Record<CountPart, [string, string]> = {
  spacing: ["Days since the last step", "days"],
  dwellSessions: ["Sessions at this place", "sessions"],
  dwellDays: ["Days at this place", "days"],
};

const COUNT_PARTS = Object.keys(COUNTS) as CountPart[];
const PLAIN_PARTS = Object.keys(PLAIN) as PlainPart[];

/** The parts of a gate that the page can show as fields; nothing for one that was nested by hand. */
export function gateParts(gate: Gate): GateParts | undefined {
  const parts: GateParts = { run: undefined, evidence: undefined, plain: [], counts: {} };
  for (const one of kindOf(gate, "all") ?? [gate]) {
    const [run, evidence] = [kindOf(one, "passRun"), kindOf(one, "evidence")];
    const count = COUNT_PARTS.find((kind) => kindOf(one, kind) !== undefined);
    const first = !parts.run && !parts.evidence;
    if (typeof one === "string") parts.plain.push(one);
    else if (run && first) parts.run = run;
    else if (evidence && kindOf(evidence.rule, "sequential") && first) parts.evidence = evidence;
    else if (count) parts.counts[count] = kindOf(one, count);
    else return undefined;
  }
  return parts;
}

export function gateOf({ run, evidence, plain, counts }: GateParts): Gate {
  const { spacing, dwellSessions, dwellDays } = counts;
  return {
    all: [
      ...(run ? [{ passRun: run }] : []),
      ...(evidence ? [{ evidence }] : []),
      ...plain,
      ...(spacing === undefined ? [] : [{ spacing }]),
      ...(dwellSessions === undefined ? [] : [{ dwellSessions }]),
      ...(dwellDays === undefined ? [] : [{ dwellDays }]),
    ],
  };
}

/** Whether the library takes a gate with these parts: how far each number goes is for it to say. */
function takes(parts: GateParts): boolean {
  return attempt("gate.check", { gate: gateOf(parts), facts: {} }).refused === undefined;
}

/** A number that goes up and down as far as it is taken. */
function stepped(label: string, value: number, taken: (value: number) => boolean, put: (value: number) => void): HTMLElement {
  return el(
    "div",
    { class: "field" },
    el("span", { class: "label" }, label),
    el(
      "div",
      { class: "stepper" },
      button("\u2212", () => put(value - 1), { "aria-label": `${label}: less`, disabled: !taken(value - 1) }),
      el("output", {}, String(value)),
      button("+", () => put(value + 1), { "aria-label": `${label}: more`, disabled: !taken(value + 1) }),
    ),
  );
}

function toggle(label: string, on: boolean, put: (on: boolean) => void): HTMLElement {
  return button(label, () => put(!on), { class: "choice", "aria-pressed": on ? "true" : "false" });
}

function gatePart(app: App, next: LiftParameters, redraw: () => void): Child {
  const parts = gateParts(next.gate);
  if (!parts) {
    return [
      el("p", {}, "This gate was put together elsewhere and is kept as it is."),
      button("Begin a gate here instead", () => {
        next.gate = anyLift(app).gate;
        redraw();
      }),
    ];
  }
  const put = (change: (parts: GateParts) => void): void => {
    change(parts);
    next.gate = gateOf(parts);
    redraw();
  };
  const { run, evidence } = parts;
  const withRun = (more: Partial<PassRun>) => ({ ...parts, run: run && { ...run, ...more } });
  /** A run of so many repetitions asks for no more of them. */
  const outOf = (of: number) => withRun({ of, acceptable: Math.min(run?.acceptable ?? of, of) });
  const rule = evidence && kindOf(evidence.rule, "sequential");
  const percent = (value: number): string => plain(value * 100, 0);
  return [
    choices("What has to be shown", [{ value: "run", label: "Passing sessions in a row" }, { value: "evidence", label: "Enough good repetitions" }], run ? "run" : evidence ? "evidence" : undefined, (value) =>
      put((own) => {
        own.run = value === "run" ? (run ?? gateParts(anyLift(app).gate)?.run) : undefined;
        own.evidence = value === "evidence" ? (evidence ?? ask("gate.usual_evidence", {})) : undefined;
      }),
    ),
    run &&
      el(
        "div",
        { class: "fields" },
        stepped("Good repetitions", run.acceptable, (acceptable) => takes(withRun({ acceptable })), (acceptable) => put((own) => (own.run = { ...run, acceptable }))),
        stepped("Of so many", run.of, (of) => takes(outOf(of)), (of) => put((own) => (own.run = outOf(of).run))),
        stepped("Sessions in a row", run.sessions, (sessions) => takes(withRun({ sessions })), (sessions) => put((own) => (own.run = { ...run, sessions }))),
      ),
    evidence &&
      rule &&
      el(
        "div",
        { class: "fields" },
        numberField("Good enough, % good repetitions", percent(rule.good), "%", (value) => put((own) => (own.evidence = { ...evidence, rule: { sequential: { ...rule, good: value / 100 } } }))),
        numberField("Not good enough", percent(rule.poor), "%", (value) => put((own) => (own.evidence = { ...evidence, rule: { sequential: { ...rule, poor: value / 100 } } }))),
        stepped("On so many days", evidence.days, (days) => takes({ ...parts, evidence: { ...evidence, days } }), (days) => put((own) => (own.evidence = { ...evidence, days }))),
      ),
    el(
      "div",
      { class: "field" },
      el("span", { class: "label" }, "And besides"),
      el("div", { class: "choices" }, PLAIN_PARTS.map((code) => toggle(PLAIN[code], parts.plain.includes(code), (on) => put((own) => (own.plain = on ? [...own.plain, code] : own.plain.filter((one) => one !== code)))))),
    ),
    el(
      "div",
      { class: "fields" },
      COUNT_PARTS.map((kind) => ({ kind, words: COUNTS[kind][0], unit: COUNTS[kind][1] })).map(({ kind, words, unit }) =>
        numberField(words, parts.counts[kind] === undefined ? "not asked" : String(parts.counts[kind]), parts.counts[kind] === undefined ? "" : unit, (value) =>
          put((own) => {
            if (value > 0) own.counts[kind] = value;
            else delete own.counts[kind];
          }),
        ),
      ),
    ),
    el("p", { class: "soft" }, "0 takes such a number away. Another gate begins its count anew."),
  ];
}

function textAdder(label: string, id: string, add: (text: string) => void): HTMLElement {
  const input = el("input", { type: "text", maxlength: 60, autocomplete: "off", id });
  return el("div", { class: "field adder" }, el("label", { class: "label", for: id }, label), el("div", { class: "row" }, input, button("Add", () => input.value.trim() && add(input.value.trim()), { "aria-label": `${label}: add` })));
}

function criteriaPart(next: LiftParameters, redraw: () => void): Child {
  const all = next.criteria;
  const put = (criteria: Criterion[]): void => {
    next.criteria = criteria;
    redraw();
  };
  return [
    el("p", { class: "soft" }, `With one miss of a critical point the session does not pass; ${ask("gate.critical_criteria", {})} critical points a lift at most.`),
    el(
      "ul",
      { class: "kit roomy" },
      all.map((one, at) =>
        el(
          "li",
          {},
          el("span", {}, one.id),
          button("Critical", () => put(all.map((other, place) => (place === at ? { ...other, critical: !other.critical } : other))), { class: "choice", "aria-pressed": one.critical ? "true" : "false", "aria-label": `${one.id}: critical` }),
          button("Remove", () => put(all.filter((_, place) => place !== at)), { "aria-label": `Remove ${one.id}` }),
        ),
      ),
    ),
    textAdder("Another point of technique", "criterion", (id) => put([...all, { id, critical: false }])),
  ];
}

function rungsPart(next: LiftParameters, at: Place, redraw: () => void): Child {
  const { rungs } = next;
  const put = (all: Rung[]): void => {
    next.rungs = all;
    redraw();
  };
  const own = rungs[at.rung]?.id;
  const harder = (rung: Rung, place: number): Child => {
    const below = rung.harderThan ?? [];
    const others = rungs.filter((other) => other !== rung);
    if (others.length === 0) return undefined;
    return el(
      "div",
      { class: "field" },
      el("span", { class: "label" }, `${rung.name ?? rung.id} is directly harder than`),
      el(
        "div",
        { class: "choices" },
        others.map((other) =>
          toggle(other.name ?? other.id, below.includes(other.id), (on) =>
            put(rungs.map((one, where) => (where === place ? { ...one, harderThan: on ? [...below, other.id] : below.filter((id) => id !== other.id) } : one))),
          ),
        ),
      ),
    );
  };
  const without = (place: number): Rung[] => {
    const gone = rungs[place]?.id;
    return rungs.filter((_, where) => where !== place).map((one) => ({ ...one, harderThan: (one.harderThan ?? []).filter((id) => id !== gone) }));
  };
  return [
    el("p", { class: "soft" }, "Rungs that no chain of \u201charder than\u201d connects are not compared: going from one to the other is sideways."),
    el(
      "ul",
      { class: "rungs" },
      rungs.map((rung, place) =>
        el(
          "li",
          {},
          el("div", { class: "row" }, el("b", {}, rung.name ?? rung.id), rung.id === own ? el("span", { class: "tag" }, "is here now") : button("Remove", () => put(without(place)), { "aria-label": `Remove the rung ${rung.name ?? rung.id}` })),
          harder(rung, place),
        ),
      ),
    ),
    textAdder("Another rung", "rung", (id) => put([...rungs, { id, harderThan: [] }])),
  ];
}

function rangesPart(next: LiftParameters, redraw: () => void): Child {
  const ranges = next.ranges ?? [];
  const put = (all: Length[]): void => {
    next.ranges = all;
    redraw();
  };
  return [
    el("p", {}, ranges.length === 0 ? "Range is not measured for this lift." : `From easiest to full: ${ranges.map((one) => rangeOf(one)).join(", ")}.`),
    el(
      "div",
      { class: "choices" },
      button("Add a fuller range", () => openPad("Height or depth", "mm", (mm) => put([...ranges, { mm }]))),
      ranges.length > 0 && button("Take the last one away", () => put(ranges.slice(0, -1))),
    ),
  ];
}

function regionsPart(app: App, next: LiftParameters, redraw: () => void): Child {
  const own: string[] = next.regions;
  const all = [...new Set([...regionsOf(app), ...own])];
  return [
    el("p", { class: "soft" }, "Pain in one of these concerns every lift that names it."),
    el("div", { class: "choices" }, all.map((region) => toggle(app.regionName(region), own.includes(region), (on) => {
      next.regions = on ? [...own, region] : own.filter((one) => one !== region);
      redraw();
    }))),
    textAdder("Another region", "region", (region) => {
      if (!own.includes(region)) next.regions = [...own, region];
      redraw();
    }),
  ];
}

function holdWords(next: LiftParameters): string | undefined {
  const parts = gateParts(next.gate);
  const reps = parts?.evidence ? { reps: next.start.work.sets * next.start.work.reps } : {};
  const found = attempt("gate.operating_characteristic", { gate: next.gate, skill: { rate: 0.9, ...reps }, sessions: 24 }).answer;
  return found?.meanSessions === undefined ? undefined : `At 9 good of 10, repetitions independent, this gate opens after about ${plain(found.meanSessions, 0)} sessions.`;
}

/** The top of what moves in a lift whose repetitions or sets do. */
function topOf({ moving }: LiftParameters, top: number): Partial<LiftParameters> {
  return moving === "reps" ? { repsTop: top } : { setsTop: top };
}

export function liftView(app: App): Child {
  const { lifter } = app;
  const lifts = (lifter && app.parameters(lifter)?.lifts) ?? [];
  const was = lifts.find((one) => one.id === app.kept.lift) ?? lifts[0];
  if (!lifter || !was) return [el("h1", { tabindex: -1 }, "A lift"), el("p", {}, "No lift is in view.")];
  const place = app.facts(lifter).places.find((one) => one.lift === was.id);
  app.kept.lift = was.id;
  const now = JSON.stringify(was);
  // Where nothing was entered yet, the lift is shown as it is set now.
  if (app.kept.from !== now && JSON.stringify(app.kept.next) === app.kept.from) Object.assign(app.kept, { from: now, next: structuredClone(was) });
  const { from, next } = app.kept as { from: string; next: LiftParameters };
  const elsewhere = from !== now;
  const changed = JSON.stringify(next) !== now;
  const limits = limitsOn(app, was);
  const redraw = (): void => app.refresh();
  const topTaken = (set: LiftParameters): boolean => {
    const all = app.parameters(lifter);
    return all !== undefined && refusal(app, lifter, { parametersChanged: { ...all, lifts: all.lifts.map((one) => (one.id === was.id ? set : one)) } }) === undefined;
  };
  const write = (): Promise<boolean> => putParameters(app, lifter, (all) => (all.lifts = all.lifts.map((one) => (one.id === was.id ? next : one))));
  const away = (view: string, kept?: Record<string, unknown>) => (): void => {
    app.unsaid = undefined;
    app.go(view, kept);
  };
  const save = (): void => void write().then((done) => done && away("plan")());
  if (changed) {
    const words = elsewhere ? "Another window changed this lift meanwhile, so it cannot be written as it is." : "It counts only once it is written down.";
    app.unsaid = { title: "Leave it unwritten?", text: `What was changed of ${shownName(was.name ?? was.id)} is not written down. ${words}`, ...(elsewhere ? {} : { write }), leave: "Leave the lift as it was" };
  }
  return [
    el("h1", { tabindex: -1 }, shownName(was.name ?? was.id)),
    limits.length > 0 && el("p", { class: "caution", "data-limits": true }, el("b", {}, "Limits. "), `${limits.join("; ")}.`),
    choices("Role", (Object.keys(ROLES) as Role[]).map((value) => ({ value, label: ROLES[value] ?? value })), place?.role as Role | undefined, (role) => {
      void app.record(lifter, { roleSet: { lift: was.id, role } }).then(() => app.refresh());
    }),
    place?.role === "maintain" &&
      el(
        "div",
        { class: "field" },
        el("span", { class: "label" }, "Kept as it is; with the years it may drift down to a load that is still on plan"),
        el("div", { class: "choices" }, button("On plan down to \u2026", () =>
          openPad("On plan down to", unitNow(), (value, unit) => {
            const load = attempt("page.mass", { mass: given(value, unit) }).answer;
            if (load) void app.record(lifter, { roleSet: { lift: was.id, role: "maintain", notBelow: load } }).then(() => app.refresh());
          }), { "data-act": "not-below" })),
      ),
    choices("What moves in this block", (Object.keys(MOVING) as Dimension[]).map((value) => ({ value, label: MOVING[value] })), next.moving, (value) => {
      next.moving = value;
      redraw();
    }),
    (next.moving === "reps" || next.moving === "sets") && stepped(next.moving === "reps" ? "Most repetitions a set" : "Most sets", (next.moving === "reps" ? next.repsTop : next.setsTop) ?? next.start.work[next.moving], (top) => topTaken({ ...next, ...topOf(next, top) }), (top) => {
      Object.assign(next, topOf(next, top));
      redraw();
    }),
    el("div", { class: "fields" }, numberField("Highest load the coach allows", next.ceiling === undefined ? "not set" : atMost(next.ceiling), next.ceiling === undefined ? "" : "(0 takes it away)", (value, unit) => {
      const ceiling = attempt("page.mass", { mass: given(value, unit) }).answer;
      if (value > 0 && ceiling) next.ceiling = ceiling;
      else delete next.ceiling;
      redraw();
    }, unitNow())),
    el(
      "section",
      {},
      el("h2", {}, "Gate"),
      el("p", {}, `${gateInWords(next.gate).replace(/^./, (letter) => letter.toUpperCase())}.`),
      el("details", { class: "more" }, el("summary", {}, "More: the numbers of this gate"), gatePart(app, next, redraw), later(() => list([holdWords(next)].filter((one) => one !== undefined)))),
    ),
    el("section", {}, el("h2", {}, "Points of technique"), criteriaPart(next, redraw)),
    el("section", {}, el("h2", {}, "Rungs, easiest first"), rungsPart(next, (place?.at ?? next.start).place, redraw)),
    el("section", {}, el("h2", {}, "Ranges"), rangesPart(next, redraw)),
    el("section", {}, el("h2", {}, "Regions it loads"), regionsPart(app, next, redraw)),
    el("section", { "data-places": was.id }, el("h2", {}, "Another place beside this one"), placesPart(app, was)),
    changed
      ? el(
          "div",
          { class: "draft", role: "region", "aria-label": "Changes to this lift" },
          elsewhere && el("p", { class: "wrong", role: "alert" }, "Another window changed this lift meanwhile: what was entered here would take that back."),
          el(
            "div",
            { class: "row moves" },
            button("Leave it", away("plan"), {}),
            elsewhere ? button("Look at it as it is now", away("lift", { lift: was.id }), { class: "main", "data-act": "lift-now" }) : button("Write it down", save, { class: "main", "data-act": "save-lift" }),
          ),
        )
      : button("Back to the plan", () => app.go("plan")),
  ];
}
