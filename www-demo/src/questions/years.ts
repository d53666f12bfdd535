// Questions about loads, weeks and years: 8, 15 to 21, 24.
import { answer, list, refused, table } from "../answer.ts";
import type { App } from "../app.ts";
import { loadedDrawing } from "../bar_drawing.ts";
import { decadesChart, courseChart, statusWords, trendChart, type Around } from "../charts.ts";
import { choices, el, later, type Child } from "../element.ts";
import type { LifterPlace, LiftParameters, PairAnswer, Training, WeekDone } from "bismar-page-package";
import { ask, attempt, kindOf, type Answered, type Tried } from "../engine.ts";
import { atLeast, atMostPart, count, dayLong, dayShort, difference, estimate, mass, plain, rangeOf, tonnage, unitNow, written, type Mass } from "../numbers.ts";
import { kindWords } from "../kinds.ts";
import { barWords } from "../kit.ts";
import type { Loaded } from "../store.ts";
import { limitLine, limitsFor } from "../limits.ts";
import { EACH_HAND, eachHand, loadOf, implementOf } from "../setup.ts";
import { cardView } from "../card.ts";
import { estimated, estimateOf, newestOf } from "./estimated.ts";
import { curvePart, velocityWords, yearPart } from "./told.ts";
import { barChoice, countField, fields, kept, liftChoice, liftNames, massField, nobody, put, lifts, stopFirst, usual, type Question } from "./shape.ts";

const PLACES: Record<string, string> = {
  unknown: "Too few weeks to say",
  usual: "Usual for this lifter",
  strict_higher: "Strict lift closer than usual",
  forgiving_ahead: "Forgiving lift has run ahead: look at the pair",
  above_cap: "Above the cap of the pair",
};

/** What a pair is read from takes a look at every session of both lifts: unless it is known, it comes once the view is there. */
function pairSoon(app: App): Child {
  const own = app.lifter && (app.parameters(app.lifter)?.pairs ?? [])[kept(app, "pair", () => 0)];
  return !app.lifter || !own || app.isTold(app.lifter, `pair ${own.strict} ${own.forgiving}`) ? pairRatio(app) : later(() => pairRatio(app));
}

function pairRatio(app: App): Child {
  const pairs = app.lifter ? (app.parameters(app.lifter)?.pairs ?? []) : [];
  if (!app.lifter || pairs.length === 0) return nobody(app.lifter ? "No two lifts are paired; pair them under Plan and lifts." : "Whether a ratio is usual is read against this lifter\u2019s own past.");
  const which = kept(app, "pair", () => 0);
  const own = pairs[which] ?? pairs[0];
  if (!own) return undefined;
  const asked = { log: app.log(app.lifter), strict: own.strict, forgiving: own.forgiving, today: app.day(app.lifter) };
  const { lifter } = app;
  const first = app.told(lifter, `pair ${own.strict} ${own.forgiving}`, () => attempt("page.pair", asked));
  const last: Partial<PairAnswer> = first.answer ?? {};
  const strict = massField(app, `strict ${which}`, `${app.liftName(own.strict)}${eachHand(app, own.strict)}`, () => last.loads?.strict ?? { kg: 60 });
  const forgiving = massField(app, `forgiving ${which}`, `${app.liftName(own.forgiving)}${eachHand(app, own.forgiving)}`, () => last.loads?.forgiving ?? { kg: 100 });
  const inputs = fields(
    pairs.length > 1 && choices("Pair", pairs.map((one, at) => ({ value: at, label: `${app.liftName(one.strict)}, ${app.liftName(one.forgiving)}` })), which, (value) => put(app, "pair", value)),
    strict.field,
    forgiving.field,
  );
  // The loads of the last sessions were answered for already.
  const same = last.loads?.strict?.kg === strict.value.kg && last.loads.forgiving?.kg === forgiving.value.kg;
  const found = same ? first : attempt("page.pair", { ...asked, loads: { strict: strict.value, forgiving: forgiving.value } });
  if (found.refused) return [inputs, refused(found.refused.message)];
  const got = found.answer;
  const usual = got.band ?? got.own.interval;
  // The library itself asks to look at a pair whose lifts grew apart.
  const review: string | undefined = app.today(app.lifter).answer?.lines.flatMap((line) => line.why).find((one) => one.code === "pair_review")?.text;
  const weight = plain(got.own.ownWeight * 100, 0);
  return [
    inputs,
    answer({
      big: PLACES[got.place] ?? got.place,
      why: `${app.liftName(own.forgiving)} is ${plain(got.ratio ?? 0)} times ${app.liftName(own.strict)}. This lifter\u2019s strengths stand at ${plain(got.own.ratio)}; ${got.band ? "nine weeks of ten lay" : "it may lie"} between ${plain(usual.low)} and ${plain(usual.high)} (${count(got.own.pairs, "pair")} of estimates).`,
      body: review && el("p", {}, review),
      working: list([
        `The ratio of the two strengths is between ${plain(got.own.interval.low)} and ${plain(got.own.interval.high)}; ${weight} % of it is the lifter\u2019s own, the rest is what is believed beforehand: ${plain(got.prior.low)} to ${plain(got.prior.high)}.`,
        `The strict lift may carry at most ${atMostPart(got.cap ?? 1)} of what the forgiving one has proven.`,
        "A forgiving lift that ran ahead is for looking at; it blocks nothing. A load never carries over from one lift to the other.",
      ]),
      sources: ["condition.variant_ratio", "one_rm.estimate"],
    }),
  ];
}

/** Where a lift of this lifter stands. */
function placeOf(app: App, lift: string | undefined): LifterPlace | undefined {
  return app.lifter && app.facts(app.lifter).places.find((one) => one.lift === lift);
}

/** From which range to which: those of the lift, easiest first, where the log tells them; else what is typed. */
function rangesAsked(app: App, lift: string | undefined): { field: Child; from: number; to: number; longer: boolean } {
  const ranges = lifts(app).find((one) => one.id === lift)?.ranges ?? [];
  const at = placeOf(app, lift)?.at.place.range ?? 0;
  const [now, further] = [ranges[at], ranges.slice(at + 1)];
  // Of one that is at its fullest what is typed begins there.
  if (now === undefined || further.length === 0) {
    const from = countField(app, `from ${lift ?? ""}`, "Blocks now", () => now?.mm ?? 100, "mm");
    const to = countField(app, `to ${lift ?? ""}`, "Blocks then", () => 50, "mm");
    return { field: [from.field, to.field], from: from.value, to: to.value, longer: to.value < from.value };
  }
  const to = kept(app, `to ${lift ?? ""}`, () => further[0]?.mm ?? now.mm);
  const field = choices(`From ${rangeOf(now)} to`, further.map((one) => ({ value: one.mm, label: rangeOf(one) })), to, (value) => put(app, `to ${lift ?? ""}`, value));
  return { field, from: now.mm, to, longer: true };
}

function rangeStep(app: App): Child {
  const lift = liftChoice(app);
  const asked = rangesAsked(app, lift.value);
  const load = massField(app, `load ${lift.value ?? ""}`, `Load now${eachHand(app, lift.value ?? "")}`, () => placeOf(app, lift.value)?.at.work.load ?? { kg: 60 });
  const inputs = fields(lift.field, asked.field, load.field);
  const stop = stopFirst(app, lift.value);
  if (stop) return [stop, inputs];
  const implement = lift.value ? implementOf(app, { lift: lift.value }) : app.bar();
  const limits = limitsFor(app, lift.value);
  // Under a limit of load none is said: whether the one that is typed keeps it, the day says.
  if (!asked.longer) return [inputs, answer({ big: limits.load ? "Not a longer range" : `Stay at ${written(load.value)}${eachHand(app, lift.value ?? "")}`, why: `Not a longer range: nothing has to be learned anew.${limitLine(limits.words)}` })];
  // A load that these discs cannot make is never changed in silence.
  const now: Mass = attempt("loading.load_on", { implement, stock: app.kit().stock, target: load.value, policy: "below" }).answer?.total ?? load.value;
  const other = now.kg === load.value.kg ? "" : `${written(load.value)} cannot be made here; ${mass(now)}${eachHand(app, lift.value ?? "")} is the closest that is not over. `;
  const of = app.lifter ? { of: { log: app.log(app.lifter), lift: lift.value ?? "any lift" } } : {};
  const found = attempt("page.range_step", { implement, stock: app.kit().stock, load: now, from: { mm: asked.from }, to: { mm: asked.to }, ...of });
  if (found.refused) return [inputs, refused(found.refused.message)];
  const got = found.answer.step;
  if (!got) return [inputs, answer({ big: "No longer range: a limit of range is in force", why: `Whether a longer range keeps it, whoever gave the limit says.${limitLine(limits.words)}` })];
  // A limit below the lightest load of the bar leaves none.
  if (!got.loaded && limits.load) return [inputs, answer({ big: "No load: a limit is in force", why: `This bar makes no load that keeps it.${limitLine(limits.words)}` })];
  return [
    inputs,
    answer({
      big: got.loaded ? `Start at ${mass(got.loaded.total)}${eachHand(app, lift.value ?? "")}` : "Start without a load",
      why: `${other}From ${plain(asked.from, 0)} to ${plain(asked.to, 0)} mm. Only the range moves, so the load is no higher than before; it settles with ${count(got.settle, "passing session")}, and the gate counts anew.${limitLine(limits.words)}`,
      body: got.loaded && loadedDrawing(got.loaded, app.kit().stock, barWords(implement)),
      working: list([
        "Technique shown at one range does not carry over to a longer one: what was counted before counts no more.",
        `If it does not hold there, one step back is the old range. A harder rung, instead of a longer range, would start at ${plain(got.rungPart * 100, 0)} % of the load and be learned.`,
        "The lift goes there by its own gate: set \u201cRange\u201d as what moves, under Plan and lifts.",
      ]),
    }),
  ];
}

function jump(app: App): Child {
  const lift = liftChoice(app);
  const place = placeOf(app, lift.value);
  const load = massField(app, `load ${lift.value ?? ""}`, `Load now${eachHand(app, lift.value ?? "")}`, () => place?.at.work.load ?? { kg: 25 });
  const reps = countField(app, "reps", "Repetitions", () => 5);
  const inputs = fields(lift.field, load.field, reps.field, lift.value ? undefined : barChoice(app));
  const stop = stopFirst(app, lift.value);
  if (stop) return [stop, inputs];
  const found = attempt("loading.step_reality", {
    implement: lift.value ? implementOf(app, { lift: lift.value }) : app.bar(),
    stock: app.kit().stock,
    from: load.value,
    options: { discs: unitNow() === "kg" ? [0.25, 0.5, 1].map((kg) => ({ kg })) : [0.5, 1.25, 2.5].map((lb) => ({ lb })), reps: reps.value, capacity: capacity() },
  });
  if (found.refused) return [inputs, refused(found.refused.message)];
  const got = found.answer;
  const limits = limitsFor(app, lift.value);
  if (limits.load && got.next.total.kg > limits.load.kg) return [inputs, answer({ big: "No larger load: a limit is in force", why: `Every larger load that the discs make here is above it.${limitLine(limits.words)}` })];
  const words: Record<string, string> = { above_range: "A larger step than is advised", in_range: "A usual step", below_range: "A small step" };
  return [
    inputs,
    answer({
      big: `${words[got.size] ?? got.size}: ${plain(got.percent, 1)} %`,
      why: `The next load is ${mass(got.next.total)}${eachHand(app, lift.value ?? "")}. Published advice is 2 to 10 %.${place ? ` As set for ${app.liftName(lift.value ?? "")}, no step is larger than ${atMostPart(place.stepCap)}.` : ""}${limitLine(limits.words)}`,
      body: list([
        got.discsThatHelp.length > 0 && `Smaller discs that help: ${got.discsThatHelp.map((one) => mass(one)).join(", ")}, a pair each.`,
        got.repsFirst !== undefined && `Or more repetitions first: ${plain(got.repsFirst)} at ${written(load.value)}${eachHand(app, lift.value ?? "")}, then ${reps.value} at ${mass(got.next.total)}${eachHand(app, lift.value ?? "")}.`,
      ].filter(Boolean) as Child[]),
      sources: ["loading.step_reality", "loading.rep_bridge", "loading.step_high"],
    }),
  ];
}
const CAPACITY: number[] = [];
/** Parts of the maximum for 1 to 20 repetitions by Epley 1985, asked from the library once. */
function capacity(): number[] {
  for (let reps = CAPACITY.length + 1; reps <= 20; reps += 1) CAPACITY.push(ask("one_rm.fraction_for", { reps, rir: 0, equation: "epley_1985" }));
  return CAPACITY;
}

function trendReal(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("A trend is in a lifter\u2019s own sessions.");
  // Of a log with a part set aside nothing is counted.
  if (lifter.damage) return stopFirst(app);
  const lift = liftChoice(app);
  const weeks = kept(app, "weeks", () => 8);
  const inputs = fields(lift.field, choices("Weeks", [4, 8, 16, 26].map((value) => ({ value, label: String(value) })), weeks, (value) => put(app, "weeks", value)));
  if (lift.value === undefined) return nobody("No lift is set.");
  const found = app.told(lifter, `trend ${lift.value} ${weeks}`, () => attempt("page.trend", { log: app.log(lifter), lift: lift.value ?? "", today: app.day(lifter), weeks }));
  if (found.refused) return [inputs, refused(found.refused.message)];
  const got = found.answer;
  const hand = eachHand(app, lift.value);
  const slope = got.report?.slope;
  const verdict: string = got.report?.verdict ?? "not_enough_history";
  const words: Record<string, string> = { not_enough_history: "Too few sessions to say", within_noise: "Within noise", rising: "Rising, by more than chance", falling: "Falling, by more than chance" };
  return [
    inputs,
    answer({
      big: words[verdict] ?? verdict,
      why: slope
        ? `${difference({ kg: slope.kgPerWeek })} a week, ${difference({ kg: slope.interval.low })} to ${difference({ kg: slope.interval.high })} with 95 % confidence. Two estimates closer than ${mass({ kg: slope.smallestRealDifference })}${hand} do not differ for certain. Holding a load is no fall.`
        : "Four estimates on three days over two weeks are the least.",
      body: [
        got.points.length > 1 && [
          trendChart(got.points, hand),
          el("p", { class: "soft" }, "Circles: estimates of single sessions. Line: the level behind them. Shade: where that level may lie."),
        ],
        el("p", { "data-velocity": true }, velocityWords(got.velocity) ?? "Bar speed: not measured at one load in four sessions over two weeks. It can be written down with each set."),
      ],
      working: got.points.length > 0 && table(["Day", "Estimate", "Range"], got.points.map((one) => [dayShort(one.day), `${estimate(one.value)} ${unitNow()}${hand}`, `${estimate(one.low)} to ${estimate(one.high)} ${unitNow()}`]), "Estimates session by session"),
      sources: ["condition.trend", got.estimatedBy === "own_curve" ? "one_rm.own_curve" : "one_rm.estimate"],
      cautions: ["estimates_are_ranges"],
    }),
    el("h2", {}, "The working load over time"),
    later(() => coursePart(app, lift.value as string)),
    later(() => curvePart(app, lift.value as string)),
  ];
}

/** Breaks, pain and today's load, for the track of a lift. */
function aroundOf(app: App, lifter: Loaded, lift: string): Around {
  const history = app.history(lifter);
  const today = app.day(lifter);
  const days = history.sessions.map((one) => one.day);
  const breaks = history.events
    .flatMap((one) => {
      const layoff = one.said && kindOf(one.said, "layoffNoted");
      if (!layoff) return [];
      const { from, to } = layoff;
      // A break whose end nobody wrote down lasts until the next session.
      return [{ from, to: to ?? days.find((day) => day > from && day >= one.day) ?? today }];
    });
  const pain = history.sessions.filter((one) => one.pain.length > 0).map((one) => ({ day: one.day, words: one.pain.join(", ") }));
  const load = app.today(lifter).answer?.session.lifts.find((one) => one.lift === lift)?.load;
  return { breaks, pain, today: { day: today, load } };
}

export function coursePart(app: App, lift: string): Child {
  const lifter = app.lifter;
  if (!lifter) return undefined;
  const history = app.history(lifter);
  const own = history.steps.filter((one) => one.lift === lift);
  if (own.length < 2) return el("p", {}, "Not enough sessions for a picture yet.");
  const moves = own.filter((one, at) => at === 0 || own[at - 1]?.load.kg !== one.load.kg || own[at - 1]?.status !== one.status);
  const extra = aroundOf(app, lifter, lift);
  return [
    courseChart(lift, app.liftName(lift), history.steps, history.sessions, extra),
    el("p", { class: "soft" }, "Line: the working load, labelled where it moved. Full dots: sessions that passed. Open dots: sessions that did not. Triangles: something hurt. Shade: a break. Dashes: today\u2019s load."),
    el("p", { "data-track": lift }, [
      extra.today.load ? `Today: ${loadOf(app, lift, extra.today.load)}.` : "Today: no load.",
      extra.breaks.length > 0 ? `Breaks: ${extra.breaks.map((one) => `${dayLong(one.from)} to ${dayLong(one.to)}`).join(", ")}.` : "No break is written down.",
      extra.pain.length > 0 ? `Pain in ${count(extra.pain.length, "session")}, last ${dayLong(extra.pain.at(-1)?.day ?? "")}: ${extra.pain.at(-1)?.words}.` : "No pain in any session.",
    ].join(" ")),
    el("details", {}, el("summary", {}, "Each move and why"), table(["Day", "Load", "State", "By"], moves.toReversed().slice(0, 40).map((one) => [dayShort(one.day), `${mass(one.load)}${one.eachHand ? EACH_HAND : ""}`, statusWords(one.status), kindWords(one.cause)]), `Moves of ${app.liftName(lift)}, latest first`)),
  ];
}

function weekJump(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("A week is read against this lifter\u2019s own weeks.");
  if (lifter.damage) return stopFirst(app);
  const found = app.told(lifter, "week", () => attempt("page.week", { log: app.log(lifter), today: app.day(lifter) }));
  if (found.refused) return refused(found.refused.message);
  const { change, measure, total, weeks, felt } = found.answer;
  if (!total) return answer({ big: "Nothing to compare: no session so far", why: "A week is read against this lifter\u2019s own weeks.", sources: ["dose.week_change"] });
  const quiet: Record<string, string> = { not_recorded: "something is not recorded", rested: "a rested week", short_history: "too few trained weeks so far", after_break: "the weeks before were a break" };
  const verdict = change.verdict;
  const big = verdict === "usual" ? "A usual week" : verdict === "more_than_usual" ? "More than usual" : verdict === "less_than_usual" ? "Less than usual" : `Nothing to compare: ${quiet[verdict.quiet] ?? ""}`;
  const lifted = (one: WeekDone): string => (one.volumeLoad ? tonnage(one.volumeLoad.kg) : "\u2013");
  const measured = (value: number): string => (measure === "sets" ? count(Math.round(value), "set") : tonnage(value));
  return answer({
    big,
    why: `${count(total.sets, "set")}${total.volumeLoad ? ` and ${lifted(total)} lifted` : ""} in seven days${change.low === undefined ? "" : `; own band ${measured(change.low)} to ${measured(change.high ?? change.low)}`}. No injury is foretold from this.`,
    body: table(["Seven days from", "Sets", "Load \u00d7 reps"], weeks.toReversed().map((one) => [dayShort(one.from), String(one.sets), lifted(one)]), "Own weeks, latest first"),
    working: felt.load && list([`As the sessions felt, rating times minutes: ${plain(felt.load.total, 0)} in all${felt.load.strain === undefined ? "" : `, monotony ${plain(kindOf(felt.load.monotony, "value") ?? 0)}, strain ${plain(felt.load.strain, 0)}`}.`]),
    sources: ["dose.week_change", "dose.volume_load"],
    cautions: ["same_lift_only"],
  });
}

/** How far repetitions of one day go together (our choice; they share the day, so they are not independent). */
const TOGETHER = 0.2;

function howLong(app: App): Child {
  const lift = liftChoice(app);
  const own = lifts(app).find((one) => one.id === lift.value);
  const good = kept(app, "good", () => 9);
  const sessions = kept(app, "sessions", () => 3);
  const run = { passRun: { acceptable: good, of: 10, sessions } };
  const use = kept(app, "use", () => (own ? "own" : "set"));
  const gate = own && use === "own" ? own.gate : { all: [run] };
  const together = kept(app, "together", () => TOGETHER);
  const inputs = fields(
    own && lift.field,
    own && choices("Gate", [{ value: "own", label: `As set for ${app.liftName(lift.value ?? "")}` }, { value: "set", label: "Another" }], use, (value) => put(app, "use", value)),
    use === "set" && choices("Good of 10", [7, 8, 9, 10].map((value) => ({ value, label: String(value) })), good, (value) => put(app, "good", value)),
    use === "set" && choices("Sessions in a row", [1, 2, 3, 4].map((value) => ({ value, label: String(value) })), sessions, (value) => put(app, "sessions", value)),
    choices("How much repetitions of a day go together", [{ value: 0, label: "Not at all" }, { value: 0.1, label: "A little" }, { value: TOGETHER, label: "Some" }, { value: 0.4, label: "A lot" }], together, (value) => put(app, "together", value)),
  );
  // A test of evidence has to know how many repetitions a session brings.
  const reps = own && JSON.stringify(gate).includes("evidence") ? { reps: own.start.work.sets * own.start.work.reps } : {};
  const at = (rate: number, correlation: number): Tried<Answered<"gate.operating_characteristic">> => attempt("gate.operating_characteristic", { gate, skill: { rate, correlation, ...reps }, sessions: 24 });
  const rows = [0.8, 0.85, 0.9, 0.95, 0.98].map((rate): [number, Answered<"gate.operating_characteristic"> | undefined, Answered<"gate.operating_characteristic"> | undefined] => [rate, at(rate, together).answer, at(rate, 0).answer]);
  const first = at(0.9, together);
  if (first.refused) return [inputs, refused(first.refused.message)];
  const many = (value: number | undefined): string => (value === undefined ? "more than can be said" : value > 200 ? "over 200" : plain(value, 0));
  return [
    inputs,
    answer({
      big: `About ${many(first.answer.meanSessions)} sessions at 9 good of 10`,
      why: `Expected until the gate opens, if repetitions of one day ${together === 0 ? "have nothing to do with each other" : `go together`}. ${together === 0 ? "Real ones do go together: see the other choices." : `Were they each a matter of their own, it would be ${many(rows.find(([rate]) => rate === 0.9)?.[2]?.meanSessions)}.`}`,
      body: table(
        ["Good repetitions", "A session passes", "Sessions until it opens", "Open within 24 sessions"],
        rows.map(([rate, one]) => [`${plain(rate * 100, 0)} %`, one ? `${plain(one.session * 100, 0)} %` : "\u2013", many(one?.meanSessions), one ? `${plain(one.within * 100, 0)} %` : "\u2013"]),
        "By how many repetitions are good",
      ),
      working: list(["How much they go together is the share of what differs between days rather than between repetitions; \u201csome\u201d is a fifth, this page\u2019s choice until a lifter\u2019s own days are known.", "Where repetitions go together, a few days above the usual open the gate sooner than technique alone would: more days then tell more than more repetitions of one day."]),
      sources: ["gate.operating_characteristic"],
      cautions: ["gates_unproven"],
    }),
    own && inventedPart(app, own, gate),
  ];
}

/** Invented lifters of one rehearsal, and its weeks of two sessions. */
const INVENTED = { lifters: 10, weeks: 26, days: [0, 3] };

/** The rules of a lift played through by invented lifters: the same seed makes the same ones anew. */
function inventedPart(app: App, own: LiftParameters, gate: LiftParameters["gate"]): Child {
  const lifter = app.lifter;
  if (!lifter || stopFirst(app, own.id)) return undefined;
  const good = kept(app, "invented", () => 0);
  const seed = countField(app, "seed", "Seed of their luck", () => 1);
  const inputs = fields(
    choices("Played through by invented lifters with so many good repetitions", [{ value: 0, label: "Not yet" }, ...[0.8, 0.9, 0.98, 1].map((value) => ({ value, label: `${plain(value * 100, 0)} %` }))], good, (value) => put(app, "invented", value)),
    good > 0 && seed.field,
  );
  const play = (): Child => {
    const all = app.parameters(lifter);
    if (!all) return undefined;
    const { lifters, weeks, days } = INVENTED;
    const plan = app.plan(lifter);
    const planned = plan.lifts.find((one) => one.lift === own.id) ?? { lift: own.id };
    const found = app.told(lifter, `invented ${own.id} ${good} ${seed.value} ${JSON.stringify(gate)}`, () => attempt("rehearsal.simulate", {
      parameters: { ...all, lifts: all.lifts.map((one) => (one.id === own.id ? { ...one, gate } : one)) },
      plan: { ...plan, lifts: [planned] },
      model: { lifts: [{ lift: own.id, acceptable: good }], week: days.map((weekday) => ({ weekday, lifts: [own.id] })) },
      weeks, lifters, seed: seed.value,
    }));
    if (found.refused) return el("p", { class: "wrong" }, found.refused.message);
    const [played] = found.answer.lifts;
    if (!played) return undefined;
    const { moves: { tenth = 0, half = 0, nineTenths = 0 }, sessions, shares } = played;
    const part = (share: number): string => `${plain(share * 100, 0)} %`;
    return el("p", { "data-invented": true }, `${lifters} invented lifters of seed ${seed.value}, ${weeks} weeks of ${days.length} sessions from the beginning of ${app.liftName(own.id)}: half of them take ${count(half, "step")} up or fewer, one in ten ${tenth} or fewer, nine in ten ${nineTenths} or fewer. Of ${count(sessions, "session")} ${part(shares.held)} stay, ${part(shares.moved)} go up, ${part(shares.steppedBack)} go back. A rehearsal of the rules; it foretells nothing about a person.`);
  };
  return el("section", {}, el("h2", {}, "Played through"), inputs, good > 0 && later(play));
}

/** The strength that is looked ahead from: what is typed, or what the newest sets of a lift point to. */
function strengthNow(app: App): { field: Child; kg: number | undefined; words: string } {
  const own = liftNames(app);
  const of = kept(app, "of", () => "");
  const load = massField(app, "load", "Strength now", usual(100, 225));
  const from = own.length > 0 && choices("Strength of", [{ value: "", label: "A number typed here" }, ...own.map((name) => ({ value: name, label: app.liftName(name) }))], of, (value) => put(app, "of", value));
  if (!own.includes(of)) return { field: [from, load.field], kg: load.value.kg, words: written(load.value) };
  const newest = newestOf(app, of);
  return { field: from, kg: newest?.asCalled.value.kg, words: newest ? `About ${estimateOf(newest.asCalled.value.kg)}${eachHand(app, of)} by the sets of ${app.liftName(of)} on ${dayLong(newest.day)}` : "" };
}

function ahead(app: App): Child {
  const known = app.lifter ? app.history(app.lifter).age : undefined;
  const now = strengthNow(app);
  const age = countField(app, "age", "Age now", () => known ?? 60);
  const to = countField(app, "to", "Age then", () => 80);
  const floor = massField(app, "floor", "Floor to keep", usual(50, 115));
  const training = kept<Training>(app, "training", () => "consistent");
  const inputs = fields(
    now.field,
    age.field,
    to.field,
    floor.field,
    choices("Training", [{ value: "consistent" as const, label: "Kept up" }, { value: "untrained" as const, label: "Stopped" }], training, (value) => put(app, "training", value)),
  );
  const strength = now.kg;
  if (strength === undefined && app.lifter?.damage) return [stopFirst(app), inputs];
  if (strength === undefined) return [inputs, answer({ big: "No set that can speak", why: "No set of this lift passed technique, told what was left and came near enough to failure in the last weeks; a number can be typed.", cautions: ["estimates_are_ranges"] }), later(() => yearPart(app))];
  const at = (then: number): Tried<Answered<"horizon.projection">> => attempt("horizon.projection", { strength, from: age.value, to: then, outlook: { planning: training } });
  const found = at(to.value);
  if (found.refused) return [inputs, refused(found.refused.message)];
  const rows: { age: number; low: number; high: number; middle?: number }[] = [];
  for (let year = Math.trunc(age.value); year <= to.value; year += 1) {
    const got = at(year).answer;
    if (got) rows.push({ age: year, ...got.strength });
  }
  const got = found.answer;
  return [
    inputs,
    answer({
      big: `${estimate(got.strength.low)} to ${estimate(got.strength.high)} ${unitNow()}`,
      why: `${now.words} at ${plain(age.value)}, seen at ${plain(to.value)}, if training is ${training === "consistent" ? "kept up" : "stopped"}. A band over groups of people: ${got.population}.`,
      body: rows.length > 1 && [
        decadesChart(rows, floor.value.kg),
        el("p", { class: "soft" }, `Shade: slowest to fastest fall. Dashes: the floor of ${atLeast(floor.value)}.`),
      ],
      working: table(["Age", "Low", "Middle", "High"], rows.filter((row) => row.age % 5 === 0 || row.age === to.value).map((row) => [String(row.age), estimateOf(row.low), row.middle === undefined ? "\u2013" : estimateOf(row.middle), estimateOf(row.high)]), "Strength by age"),
      sources: ["horizon.projection", "horizon.planning_bands"],
      cautions: got.cautions,
    }),
    later(() => yearPart(app)),
  ];
}

export const YEARS: Question[] = [
  { number: 8, title: "What maximum does a set point to?", group: "Loads", view: estimated },
  { number: 15, title: "Strict against forgiving: fine?", group: "Loads", view: pairSoon },
  { number: 16, title: "A longer range: what load?", group: "Loads", view: rangeStep },
  { number: 17, title: "Is the next jump too big?", group: "Loads", view: jump },
  { number: 18, title: "Is the trend real?", group: "Weeks and years", view: trendReal },
  { number: 19, title: "Was this week a jump?", group: "Weeks and years", view: weekJump },
  { number: 20, title: "How long will a gate hold?", group: "Weeks and years", view: howLong },
  { number: 21, title: "What to expect decades on?", group: "Weeks and years", view: ahead },
  { number: 24, title: "A card for another coach", group: "Weeks and years", view: cardView },
];
