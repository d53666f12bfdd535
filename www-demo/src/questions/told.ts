// Questions whose sentences come whole from the library: a missed session, an easy week, a block, two who mark; and the parts
// of other answers that do.
import { answer, list, refused, table } from "../answer.ts";
import type { App } from "../app.ts";
import { choices, el, type Child } from "../element.ts";
import type { BlockAdvice, EasyWeekStatus, LiftParameters, Place, Sex, VerdictSkill, WhoMarks } from "bismar-page-package";
import { ask, attempt, kindOf } from "../engine.ts";
import { atMostPart, count, dayLong, dayShort, mass, plain, rangeOf, unitNow, type Mass } from "../numbers.ts";
import { barWords, implementName } from "../kit.ts";
import type { Loaded } from "../store.ts";
import { TESTS, testResult } from "../write_down.ts";
import { keepPart, whatIf } from "./keep.ts";
import { fields, kept, massField, nobody, put, stopFirst, type Question } from "./shape.ts";

/** What every question about the log is asked with. */
function about(app: App, lifter: Loaded): { log: number; today: string; unit: "kg" | "lb" } {
  return { log: app.log(lifter), today: app.day(lifter), unit: unitNow() };
}

/** Sentences of the library with the signs that the page has. */
function shown(said: string[]): string[] {
  return said.map((one) => one.replaceAll(" x ", " \u00d7 ").replace(/(^| )-(?=\d)/g, "$1\u2212"));
}

/** The same without the stops, which stand above. */
function belowStops(app: App, lifter: Loaded, said: string[]): string[] {
  const { lines } = app.stops(lifter);
  return shown(said).filter((one) => !lines.includes(one));
}

const WHEN = [0, 1, 2, 3, 4, 5, 6];

function missedSession(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("What becomes of a missed session follows from the lifter\u2019s plan and log.");
  if (lifter.damage) return stopFirst(app);
  const when = kept(app, "when", () => -1);
  const asked = about(app, lifter);
  const next = when < 0 ? {} : { next: { day: ask("page.day", { day: asked.today, plus: when }), lifts: app.plan(lifter).lifts.map((one) => one.lift) } };
  const found = app.told(lifter, `missed ${when}`, () => attempt("page.missed", { ...asked, plan: lifter.plan, ...next }));
  if (found.refused) return refused(found.refused.message);
  const { missed, said } = found.answer;
  const stop = stopFirst(app);
  if (missed.missed === undefined) {
    return [stop, answer({ big: "No missed session within seven days", why: "One is written down under Log: a session was missed. Older ones are past mending; carry on as planned.", sources: missed.sources })];
  }
  const inputs = fields(
    choices("The next session is planned", [{ value: -1, label: "As usual" }, ...WHEN.map((value) => ({ value, label: value === 0 ? "Today" : dayShort(ask("page.day", { day: asked.today, plus: value })) }))], when, (value) => put(app, "when", value)),
  );
  // Which session it was, then lift by lift, and that nothing is added.
  const [first = "", ...others] = belowStops(app, lifter, said);
  const kinds = missed.lifts.map((one) => (one.then === undefined ? "stopped" : one.then === "drop" ? "drop" : kindOf(one.then, "shiftTo") ? "shift" : "merge"));
  const of = (kind: string): string => missed.lifts.filter((_, at) => kinds[at] === kind).map((one) => app.liftName(one.lift)).join(", ");
  const parts = [of("shift") && `Shift: ${of("shift")}`, of("merge") && `Into the next: ${of("merge")}`, of("drop") && `Let go: ${of("drop")}`].filter(Boolean);
  return [
    stop,
    inputs,
    answer({
      big: parts.length > 0 ? parts.join(". ") : "Nothing is made up",
      why: first,
      body: list(others),
      working: missed.lifts.some((one) => one.facts) && table(["Lift", "Its regions last loaded", "Rest days asked for"], missed.lifts.flatMap((one) => (one.facts ? [[app.liftName(one.lift), one.facts.lastLoaded ? dayShort(one.facts.lastLoaded) : "\u2013", String(one.facts.restDays)]] : [])), "What it was worked out from"),
      sources: missed.sources,
    }),
  ];
}

function easyWords(status: EasyWeekStatus | undefined): string {
  if (status === undefined) return "Nothing to count: no session so far";
  if (status === "unknown") return "Not known: a week is not written down";
  const [not, away, consider] = [kindOf(status, "notYet"), kindOf(status, "plannedAbsenceCounts"), kindOf(status, "consider")];
  if (consider) return `May be thought of: ${count(consider.weeksSince, "week")} without one`;
  if (away) return "A break that is coming does for one";
  return `Not due: the last was ${count(not?.weeksSince ?? 0, "week")} ago`;
}

function easyWeek(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("An easy week is counted from this lifter\u2019s own weeks.");
  // Of a log with a part set aside nothing is counted.
  if (lifter.damage) return stopFirst(app);
  const found = app.told(lifter, "easy week", () => attempt("page.easy_week", { ...about(app, lifter), plan: lifter.plan }));
  if (found.refused) return refused(found.refused.message);
  const { week, said } = found.answer;
  const { easyShare } = ask("dose.easy_week_options_default", {});
  return [
    stopFirst(app),
    answer({
      big: easyWords(week.status),
      why: `${week.last ? `The last easy week, planned or made by life, began on ${dayLong(week.last)}. ` : ""}The coach decides; travel, illness and holidays count as easy.`,
      // Stops come first and stand above; then the status, which is said above too.
      body: list(belowStops(app, lifter, said).slice(week.status === undefined ? 0 : 1)),
      working: el("p", {}, `A week counts as easy without a session, or at ${atMostPart(easyShare)} of the lifter\u2019s own usual trained week or less. \u201cA planned easy week\u201d is set under Plan and lifts.`),
      sources: week.sources,
    }),
  ];
}

const ADVICE = { keep: "keep", change: "look for another rung or variant", changeForPain: "look for a rung that spares what hurts", retest: "test again, with some left in reserve", raiseGate: "the gate may ask for more" };

function adviceWords(advice: BlockAdvice): string {
  if (advice === "keep") return ADVICE.keep;
  const kinds = ["changeForPain", "change", "retest", "raiseGate"] as const;
  return ADVICE[kinds.find((kind) => kindOf(advice, kind) !== undefined) ?? "keep"];
}

function blockReview(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("A block is looked back on in a lifter\u2019s own log.");
  const stop = stopFirst(app);
  // Beside a stop nothing is said of loads, nor of what to change.
  if (stop) return stop;
  const found = app.told(lifter, "block", () => attempt("page.block", about(app, lifter)));
  if (found.refused) return refused(found.refused.message);
  const { review, lifts, said } = found.answer;
  const { block } = review;
  if (!block) return answer({ big: "No block to look back on", why: "Where a block of weeks begins and ends is written down under Log. With that, each lift of it is looked at here.", sources: review.sources });
  return [
    answer({
      big: review.lifts.length > 0 ? review.lifts.map((one) => `${app.liftName(one.lift)}: ${one.advice.map(adviceWords).join(", ")}`).join("; ") : "No session in this block",
      why: `${said[0] ?? ""} What it suggests moves nothing; the coach decides.`,
      body: [
        review.lifts.map((one, at) => el("section", { "data-block": one.lift }, el("h2", {}, app.liftName(one.lift)), list(shown(lifts[at] ?? [])))),
        list(shown(said).slice(1)),
      ],
      working: table(["Lift", "Sessions", "Passed", "Good repetitions"], review.lifts.map((one) => [app.liftName(one.lift), String(one.sessions), String(one.passed), `${one.acceptable} of ${one.scored}`]), "Counted from the marks"),
      sources: review.sources,
      cautions: ["holding_is_good"],
    }),
  ];
}

const ROLE: Record<WhoMarks["rater"], string> = { coach: "the coach", lifter: "the lifter", video: "the video" };
function whoWords(who: WhoMarks): string {
  return who.id ?? ROLE[who.rater];
}

function markAlike(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("Who marks alike is read from sets that two people marked.");
  const found = app.told(lifter, "raters", () => attempt("page.raters", about(app, lifter)));
  if (found.refused) return refused(found.refused.message);
  const { raters, said } = found.answer;
  const [first] = raters.pairs;
  const stop = stopFirst(app);
  if (!first) return [stop, answer({ big: "Nobody else has marked the same sets", why: "Under Log, \u201cSomebody else\u2019s marks\u201d beside a session adds what a second person saw in a set, without a look at the first marks.", body: list(belowStops(app, lifter, said)), sources: raters.sources })];
  const { agreement, same, pairs } = first.all;
  return [
    stop,
    answer({
      big: `${whoWords(first.first)} and ${whoWords(first.second)}: ${same} of ${pairs} marks alike`.replace(/^./, (letter) => letter.toUpperCase()),
      why: agreement
        ? `Agreement beyond chance ${plain(agreement.kappa)}, ${plain(agreement.interval.low)} to ${plain(agreement.interval.high)} with 95 % confidence: 1 is alike throughout, 0 no better than chance.`
        : "With one kind of mark only, habit and agreement look alike: nothing can be said beyond the count.",
      body: list(belowStops(app, lifter, said)),
      working: table(["Point", "Alike", "Beyond chance"], first.criteria.map(([point, one]) => [point, `${one.same} of ${one.pairs}`, one.agreement ? plain(one.agreement.kappa) : "\u2013"]), "Point by point"),
      sources: raters.sources,
      cautions: ["gates_unproven"],
    }),
  ];
}

/** This lifter's own curve of repetitions and load, and whether it is used. */
export function curvePart(app: App, lift: string): Child {
  const lifter = app.lifter;
  if (!lifter || stopFirst(app, lift)) return undefined;
  const found = app.told(lifter, `curve ${lift}`, () => attempt("page.curve", { ...about(app, lifter), lift })).answer;
  if (!found) return undefined;
  const { curve, said } = found;
  const own = curve.curve;
  return el(
    "section",
    { "data-curve": lift },
    el("h2", {}, "Own curve of repetitions and load"),
    list(shown(said)),
    el("p", { class: "soft" }, own ? `Half of what was uncertain has to be gone before it is used; ${plain(own.learned * 100, 0)} % is.` : "Sets near enough to failure, their reserve told and technique marked, make one."),
  );
}

/** How good the verdicts about days were. */
export function verdictsPart(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return undefined;
  const found = app.told(lifter, "verdicts", () => attempt("page.verdicts", about(app, lifter))).answer;
  if (!found) return undefined;
  const { verdicts, said } = found;
  const all = verdicts.calibration;
  const SKILLS: Record<VerdictSkill, string> = { not_enough_sessions: "too few days to say", nothing_to_compare: "nothing to compare", no_better_than_chance: "no better than chance", better_than_chance: "better than chance" };
  return el(
    "section",
    { "data-verdicts": true },
    el("h2", {}, all ? `Earlier verdicts: ${SKILLS[all.skill]}` : "Earlier verdicts"),
    list(belowStops(app, lifter, said)),
    el("p", { class: "soft" }, "A day fell short where a repetition was missed, technique did not pass, or less was left than asked. Easing off may itself avert that, so verdicts may be better than they look."),
  );
}

/** How bar speed at one load moves, where it was measured. */
export function velocityWords(velocity: { load: Mass; sessions: number; perWeek: number; interval: { low: number; high: number }; verdict: string } | undefined): string | undefined {
  if (!velocity) return undefined;
  const words: Record<string, string> = { within_noise: "within noise", rising: "faster, by more than chance", falling: "slower, by more than chance" };
  const { load, sessions, perWeek, interval } = velocity;
  return `Bar speed at ${mass(load)}: ${plain(perWeek, 3)} m/s a week, ${plain(interval.low, 3)} m/s to ${plain(interval.high, 3)} m/s with 95 % confidence, over ${count(sessions, "session")}: ${words[velocity.verdict] ?? "too few to say"}. Compared at one load only; it makes no maximum.`;
}

/** A bar by its words instead of its name in the log. */
function withBars(app: App, said: string): string {
  const { implements: all } = app.kit();
  const bar = all.find((one) => said.startsWith(`Weigh ${implementName(one)}:`));
  return bar ? said.replace(implementName(bar), barWords(bar)) : said;
}

const FLOORS = { above: "meets it", between: "between the published floors", below: "does not meet it: worth a talk with a clinician" };

/** Everyday tests against their published floors, with the result before each, and what is due this year. */
export function yearPart(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return undefined;
  const sex = kept<Sex | "unsaid">(app, "sex", () => "unsaid");
  const what = whatIf(app, lifter);
  const told = app.told(lifter, `year ${sex} ${JSON.stringify(what.phases)}`, () => attempt("page.year", { ...about(app, lifter), plan: lifter.plan, ...(sex === "unsaid" ? {} : { sex }), ...(what.phases ? { phases: what.phases } : {}) }));
  // What was asked of the years stays, to be asked otherwise.
  if (told.refused) return what.phases && el("section", { "data-year": true }, what.field, el("p", { class: "wrong" }, told.refused.message));
  const { year, due } = told.answer;
  const rows = year.tests.map((one) => {
    const { written: test, floor, margin, before } = one;
    const [low, high] = floor ? [testResult(test, floor.value.low), testResult(test, floor.value.high)] : [];
    return [
      TESTS[test][0],
      `${testResult(test, one.result)}, ${dayLong(one.on)}`,
      floor && margin ? `${low === high ? low : `${low} to ${high}`}: ${FLOORS[margin.place]}` : "none published here",
      before ? `${testResult(test, before[1])}, ${dayLong(before[0])}` : "\u2013",
    ] as Child[];
  });
  return el(
    "section",
    { "data-year": true },
    el("h2", {}, "Everyday tests and this year"),
    choices("Floors for", [{ value: "unsaid" as const, label: "Not said" }, { value: "female" as const, label: "Women" }, { value: "male" as const, label: "Men" }], sex, (value) => put(app, "sex", value)),
    rows.length > 0
      ? [table(["Everyday test", "Last", "Published floor", "Before"], rows, "Everyday tests against their floors"), el("p", { class: "soft" }, "Floors are of groups of people and tell nothing of one alone; with no sex said both are shown.")]
      : el("p", { class: "soft" }, "Everyday tests (chair rise, walking, grip, rising from the floor) are written down under Log."),
    keepPart(app, lifter),
    what.field,
    list(belowStops(app, lifter, due).map((one) => withBars(app, one))),
  );
}
/** Another place of a lift beside the one where it stands: in what it is harder, and in what easier. */
export function placesPart(app: App, lift: LiftParameters): Child {
  const lifter = app.lifter;
  const at = lifter && app.facts(lifter).places.find((one) => one.lift === lift.id)?.at;
  if (!lifter || !at) return undefined;
  const { rungs, ranges = [], tempos = [] } = lift;
  const place = kept<Place>(app, "other place", () => ({ ...at.place }));
  const pick = (more: Partial<Place>) => put(app, "other place", { ...place, ...more });
  const stopped = stopFirst(app, lift.id) !== undefined;
  const load = massField(app, "other load", "Load there", () => at.work.load);
  const other = { place, work: { ...at.work, load: stopped ? at.work.load : load.value } };
  const found = attempt("page.compare", { log: app.log(lifter), lift: lift.id, one: at, other, unit: unitNow() });
  return [
    el("p", { class: "soft" }, "Against where it stands now. One thing moves at a time: a place that is harder in more than one is no single step."),
    fields(
      rungs.length > 1 && choices("Rung there", rungs.map((one, value) => ({ value, label: one.name ?? one.id })), place.rung, (rung) => pick({ rung })),
      ranges.length > 1 && choices("Range there", ranges.map((one, value) => ({ value, label: rangeOf(one) })), place.range, (range) => pick({ range })),
      tempos.length > 1 && choices("Tempo there", tempos.map((one, value) => ({ value, label: `${plain(one.down, 0)} s down, ${plain(one.hold, 0)} s hold, ${plain(one.up, 0)} s up` })), place.tempo, (tempo) => pick({ tempo })),
      !stopped && load.field,
    ),
    el("p", { "data-compared": true }, found.refused ? found.refused.message : shown(found.answer.said).join(" ")),
  ];
}

export const TOLD: Question[] = [
  { number: 30, title: "A session was missed. What now?", group: "Today", view: missedSession },
  { number: 31, title: "Is an easy week due?", group: "Weeks and years", view: easyWeek },
  { number: 32, title: "Was the block right?", group: "Weeks and years", view: blockReview },
  { number: 33, title: "Do two people mark alike?", group: "Weeks and years", view: markAlike },
];
