// What is set for one lift: its role, what moves, gate, points of technique, rungs, regions. Written down as one event.
import type { App } from "./app.ts";
import { list } from "./answer.ts";
import { button, choices, el, type Child } from "./element.ts";
import { attempt, type Tree } from "./engine.ts";
import { limitsOn } from "./limits.ts";
import { shownName } from "./names.ts";
import { mass, given, plain, unitNow } from "./numbers.ts";
import { numberField, openPad } from "./pad.ts";
import { gateInWords, putParameters, ROLES } from "./plan_view.ts";
import { regionsOf } from "./record.ts";

const MOVING: Record<string, string> = { variant: "Rung", range: "Range", tempo: "Tempo", sets: "Sets", reps: "Repetitions", load: "Load" };

/** Requirements that stand by themselves, each with what it asks for. */
const PLAIN: Record<string, string> = {
  no_open_block: "No open block: pain, stop sign, clearance",
  effort_cap: "Effort written down and not above its cap",
  sign_off: "The coach\u2019s sign-off",
  pair: "What the other lift of its pair asks for",
  region: "What its regions ask for",
};

interface GateParts {
  run: Tree | undefined;
  evidence: Tree | undefined;
  plain: string[];
  counts: Record<string, number>;
}

const COUNTS: Record<string, [string, string]> = {
  spacing: ["Days since the last step", "days"],
  dwell_sessions: ["Sessions at this place", "sessions"],
  dwell_days: ["Days at this place", "days"],
};

/** The parts of a gate that the page can show as fields; nothing for one that was nested by hand. */
export function gateParts(gate: Tree): GateParts | undefined {
  const parts: GateParts = { run: undefined, evidence: undefined, plain: [], counts: {} };
  const all: Tree[] = gate.all ?? [gate];
  for (const one of all) {
    if (typeof one === "string") {
      if (!(one in PLAIN)) return undefined;
      parts.plain.push(one);
      continue;
    }
    const [kind, body] = Object.entries(one)[0] as [string, Tree];
    if (kind === "pass_run" && !parts.run && !parts.evidence) parts.run = body;
    else if (kind === "evidence" && body.rule.sequential && !parts.run && !parts.evidence) parts.evidence = body;
    else if (kind in COUNTS) parts.counts[kind] = body;
    else return undefined;
  }
  return parts;
}

export function gateOf(parts: GateParts): Tree {
  const all: Tree[] = [];
  if (parts.run) all.push({ pass_run: parts.run });
  if (parts.evidence) all.push({ evidence: parts.evidence });
  for (const one of parts.plain) all.push(one);
  for (const [kind, count] of Object.entries(parts.counts)) all.push({ [kind]: count });
  return { all };
}

const RUN = { acceptable: 9, of: 10, sessions: 3 };
const EVIDENCE = { rule: { sequential: { poor: 0.7, good: 0.9, false_open: 0.05, false_shut: 0.1 } }, most_reps: 60, days: 2 };

function stepped(label: string, value: number, low: number, high: number, put: (value: number) => void): HTMLElement {
  return el(
    "div",
    { class: "field" },
    el("span", { class: "label" }, label),
    el(
      "div",
      { class: "stepper" },
      button("\u2212", () => put(value - 1), { "aria-label": `${label}: less`, disabled: value <= low }),
      el("output", {}, String(value)),
      button("+", () => put(value + 1), { "aria-label": `${label}: more`, disabled: value >= high }),
    ),
  );
}

function toggle(label: string, on: boolean, put: (on: boolean) => void): HTMLElement {
  return button(label, () => put(!on), { class: "choice", "aria-pressed": on ? "true" : "false" });
}

function gatePart(next: Tree, redraw: () => void): Child {
  const parts = gateParts(next.gate);
  if (!parts) {
    return [
      el("p", {}, "This gate was put together elsewhere and is kept as it is."),
      button("Begin a gate here instead", () => {
        next.gate = gateOf({ run: RUN, evidence: undefined, plain: ["no_open_block"], counts: { spacing: 7 } });
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
  const rule = evidence?.rule.sequential;
  const percent = (value: number): string => plain(value * 100, 0);
  return [
    choices("What has to be shown", [{ value: "run", label: "Passing sessions in a row" }, { value: "evidence", label: "Enough good repetitions" }], run ? "run" : evidence ? "evidence" : undefined, (value) =>
      put((own) => {
        own.run = value === "run" ? (run ?? RUN) : undefined;
        own.evidence = value === "evidence" ? (evidence ?? EVIDENCE) : undefined;
      }),
    ),
    run &&
      el(
        "div",
        { class: "fields" },
        stepped("Good repetitions", run.acceptable, 1, run.of, (acceptable) => put((own) => (own.run = { ...run, acceptable }))),
        stepped("Of so many", run.of, 1, 30, (of) => put((own) => (own.run = { ...run, of, acceptable: Math.min(run.acceptable, of) }))),
        stepped("Sessions in a row", run.sessions, 1, 10, (sessions) => put((own) => (own.run = { ...run, sessions }))),
      ),
    evidence &&
      rule &&
      el(
        "div",
        { class: "fields" },
        numberField("Good enough, % good repetitions", percent(rule.good), "%", (value) => put((own) => (own.evidence = { ...evidence, rule: { sequential: { ...rule, good: value / 100 } } }))),
        numberField("Not good enough", percent(rule.poor), "%", (value) => put((own) => (own.evidence = { ...evidence, rule: { sequential: { ...rule, poor: value / 100 } } }))),
        stepped("On so many days", evidence.days, 1, 10, (days) => put((own) => (own.evidence = { ...evidence, days }))),
      ),
    el(
      "div",
      { class: "field" },
      el("span", { class: "label" }, "And besides"),
      el("div", { class: "choices" }, Object.entries(PLAIN).map(([code, words]) => toggle(words, parts.plain.includes(code), (on) => put((own) => (own.plain = on ? [...own.plain, code] : own.plain.filter((one) => one !== code)))))),
    ),
    el(
      "div",
      { class: "fields" },
      Object.entries(COUNTS).map(([kind, [words, unit]]) =>
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

function criteriaPart(next: Tree, redraw: () => void): Child {
  const all: Tree[] = next.criteria;
  const put = (criteria: Tree[]): void => {
    next.criteria = criteria;
    redraw();
  };
  return [
    el("p", { class: "soft" }, "One miss of a critical point fails the session; three critical points a lift at most."),
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

function rungsPart(next: Tree, at: Tree, redraw: () => void): Child {
  const rungs: Tree[] = next.rungs;
  const put = (all: Tree[]): void => {
    next.rungs = all;
    redraw();
  };
  const own = rungs[at.place?.rung ?? 0]?.id;
  const harder = (rung: Tree, place: number): Child => {
    const below: string[] = rung.harder_than ?? [];
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
            put(rungs.map((one, where) => (where === place ? { ...one, harder_than: on ? [...below, other.id] : below.filter((id) => id !== other.id) } : one))),
          ),
        ),
      ),
    );
  };
  const without = (place: number): Tree[] => {
    const gone = rungs[place]?.id;
    return rungs.filter((_, where) => where !== place).map((one) => ({ ...one, harder_than: (one.harder_than ?? []).filter((id: string) => id !== gone) }));
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
    textAdder("Another rung", "rung", (id) => put([...rungs, { id, harder_than: [] }])),
  ];
}

function rangesPart(next: Tree, redraw: () => void): Child {
  const ranges: Tree[] = next.ranges ?? [];
  const put = (all: Tree[]): void => {
    next.ranges = all;
    redraw();
  };
  return [
    el("p", {}, ranges.length === 0 ? "Range is not measured for this lift." : `From easiest to full: ${ranges.map((one) => `${plain(one.mm, 0)} mm`).join(", ")}.`),
    el(
      "div",
      { class: "choices" },
      button("Add a fuller range", () => openPad("Height or depth", "mm", (mm) => put([...ranges, { mm }]))),
      ranges.length > 0 && button("Take the last one away", () => put(ranges.slice(0, -1))),
    ),
  ];
}

function regionsPart(app: App, next: Tree, redraw: () => void): Child {
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

function holdWords(next: Tree): string | undefined {
  const parts = gateParts(next.gate);
  const reps = parts?.evidence ? { reps: next.start.work.sets * next.start.work.reps } : {};
  const found = attempt("gate.operating_characteristic", { gate: camel(next.gate), skill: { rate: 0.9, ...reps }, sessions: 24 }).answer;
  return found?.meanSessions === undefined ? undefined : `At 9 good of 10, repetitions independent, this gate opens after about ${plain(found.meanSessions, 0)} sessions.`;
}

/** Field names as the library's functions spell them. */
function camel(tree: Tree): Tree {
  if (Array.isArray(tree)) return tree.map(camel);
  if (tree === null || typeof tree !== "object") return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase()), camel(value)]));
}

export function liftView(app: App): Child {
  const { lifter } = app;
  const lifts: Tree[] = (lifter && app.parameters(lifter)?.lifts) ?? [];
  const was = lifts.find((one) => one.id === app.kept.lift) ?? lifts[0];
  if (!lifter || !was) return [el("h1", { tabindex: -1 }, "A lift"), el("p", {}, "No lift is in view.")];
  const place = app.facts(lifter).places.find((one: Tree) => one.lift === was.id);
  app.kept.lift = was.id;
  const asSet: Tree = app.parametersToChange(lifter).lifts.find((one: Tree) => one.id === was.id);
  const next: Tree = (app.kept.next ??= structuredClone(asSet));
  const changed = JSON.stringify(next) !== JSON.stringify(asSet);
  const redraw = (): void => app.refresh();
  const save = (): void =>
    void putParameters(app, lifter, (all) => (all.lifts = all.lifts.map((one: Tree) => (one.id === was.id ? next : one)))).then((done) => {
      if (done) app.go("plan");
    });
  const hold = holdWords(next);
  return [
    el("h1", { tabindex: -1 }, shownName(was.name ?? was.id)),
    limitsOn(app, was).length > 0 && el("p", { class: "caution", "data-limits": true }, el("b", {}, "Limits. "), `${limitsOn(app, was).join("; ")}.`),
    choices("Role", Object.entries(ROLES).map(([value, label]) => ({ value, label })), place?.role, (role) => {
      void app.record(lifter, { role_set: { lift: was.id, role } }).then(() => app.refresh());
    }),
    place?.role === "maintain" &&
      el(
        "div",
        { class: "field" },
        el("span", { class: "label" }, "Kept as it is; with the years it may drift down to a load that is still on plan"),
        el("div", { class: "choices" }, button("On plan down to \u2026", () =>
          openPad("On plan down to", unitNow(), (value) => {
            const load = attempt("page.mass", { mass: given(value) }).answer;
            if (load) void app.record(lifter, { role_set: { lift: was.id, role: "maintain", not_below: load } }).then(() => app.refresh());
          }), { "data-act": "not-below" })),
      ),
    choices("What moves in this block", Object.entries(MOVING).map(([value, label]) => ({ value, label })), next.moving, (value) => {
      next.moving = value;
      redraw();
    }),
    (next.moving === "reps" || next.moving === "sets") && stepped(next.moving === "reps" ? "Most repetitions a set" : "Most sets", next[`${next.moving}_top`] ?? next.start.work[next.moving], 1, 30, (top) => {
      next[`${next.moving}_top`] = top;
      redraw();
    }),
    el("div", { class: "fields" }, numberField("Highest load the coach allows", next.ceiling === undefined ? "not set" : mass(next.ceiling), next.ceiling === undefined ? "" : "(0 takes it away)", (value) => {
      const ceiling = attempt("page.mass", { mass: given(value) }).answer;
      if (value > 0 && ceiling) next.ceiling = ceiling;
      else delete next.ceiling;
      redraw();
    }, unitNow())),
    el(
      "section",
      {},
      el("h2", {}, "Gate"),
      el("p", {}, `${gateInWords(camel(next.gate)).replace(/^./, (letter) => letter.toUpperCase())}.`),
      el("details", { class: "more" }, el("summary", {}, "More: the numbers of this gate"), gatePart(next, redraw), hold && list([hold])),
    ),
    el("section", {}, el("h2", {}, "Points of technique"), criteriaPart(next, redraw)),
    el("section", {}, el("h2", {}, "Rungs, easiest first"), rungsPart(next, place?.at ?? next.start, redraw)),
    el("section", {}, el("h2", {}, "Ranges"), rangesPart(next, redraw)),
    el("section", {}, el("h2", {}, "Regions it loads"), regionsPart(app, next, redraw)),
    changed
      ? el(
          "div",
          { class: "draft", role: "region", "aria-label": "Changes to this lift" },
          el("div", { class: "row moves" }, button("Leave it", () => app.go("plan"), {}), button("Write it down", save, { class: "main", "data-act": "save-lift" })),
        )
      : button("Back to the plan", () => app.go("plan")),
  ];
}
