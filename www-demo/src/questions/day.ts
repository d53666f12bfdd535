// Questions about today: 9 to 14 and 25 to 29.
import { answer, list, refused, table } from "../answer.ts";
import type { App, Supposed, Written } from "../app.ts";
import { loadedDrawing, sideWords } from "../bar_drawing.ts";
import { button, choices, el, later, type Child } from "../element.ts";
import type { ConditionsInput, DayClass, EventKindInput, LiftParameters, LiftToday, NextSet, PainZone, StopSign, TimeOfDay, TodayAnswer, TodayLine } from "bismar-page-package";
import { ask, attempt, kindOf } from "../engine.ts";
import { atMost, atMostNumberOf, atMostOf, atMostPart, count, dayShort, given, limitOfDay, mass, massNumber, plain, unitNow, written, writtenNumber, type Mass } from "../numbers.ts";
import type { Loaded } from "../store.ts";
import { barWords, discsOf, firstBars, implementName, implementNamed, firstLifts, offerWords } from "../kit.ts";
import { limitLine, limitsFor } from "../limits.ts";
import { capital } from "../less.ts";
import { askCorrection, opensBy } from "../opens.ts";
import { numberField } from "../pad.ts";
import { dayBox, painEvent, painLacks, painFields, reasonsOf, type PainFacts } from "../record.ts";
import { setInWords } from "../set_sheet.ts";
import { EACH_HAND, eachHand, implementOf, overTheBody, setupWords } from "../setup.ts";
import { dayWords, liftLine, mainReason, todayView, whyPart } from "../today_view.ts";
import { kindWords } from "../kinds.ts";
import { anotherRung } from "../write_down.ts";
import { verdictsPart } from "./told.ts";
import { afterSets, barChoice, criticalOf, fields, kept, liftChoice, liftOfToday, massField, nobody, put, stopFirst, type Question } from "./shape.ts";

/** A lift of the session, its sentences, and what people call it. */
type Found = { lift: LiftToday; line: TodayLine; name: string };

function lifts(app: App, more: Supposed = {}, plan?: string): { found: Found[]; refused?: string; answer?: TodayAnswer } {
  const lifter = app.lifter;
  if (!lifter) return { found: [] };
  const got = app.today(lifter, more, plan);
  if (!got.answer) return { found: [], refused: got.refused?.message ?? "" };
  const { session, lines } = got.answer;
  return { found: session.lifts.map((lift, at) => ({ lift, line: lines[at] as TodayLine, name: app.liftName(lift.lift) })), answer: got.answer };
}

function eachLift(found: Found[], big: (one: Found) => string, why: (one: Found) => string, more?: (one: Found) => Child): Child {
  return el(
    "div",
    { class: "cards" },
    found.map((one) =>
      el(
        "article",
        { class: "card", "data-lift": one.lift.lift },
        el("h2", {}, one.name),
        el("p", { class: "big" }, big(one)),
        el("p", { class: "why" }, why(one)),
        more?.(one),
        el("details", {}, el("summary", {}, "Working"), whyPart(one.line, one.lift)),
      ),
    ),
  );
}

/** So little above a load, what is typed may be within what the load is shown by: half of a tenth of a pound. */
const CLOSE_KG = 0.025;

function nextSet(app: App): Child {
  const lift = liftChoice(app, "of", liftOfToday(app));
  const own = lift.value === undefined ? undefined : lifts(app).found.find((one) => one.lift.lift === lift.value)?.lift;
  const limits = limitsFor(app, lift.value);
  const hand = eachHand(app, lift.value ?? "");
  // Without a lift nothing limits what is asked of.
  const [words, number] = own ? [(value: Mass) => atMostOf(value, own.load), (value: Mass) => atMostNumberOf(value, own.load)] : [written, writtenNumber];
  const load = massField(app, `load ${lift.value ?? ""}`, `Load${hand}`, () => own?.load ?? own?.limit ?? limits.load ?? app.startLoad(), number);
  const reps = kept(app, "reps", () => 5);
  const felt = kept(app, "felt", () => 1);
  // As the plan asks of the lift; three where there is none (our choice).
  const asked = `wanted ${lift.value ?? ""}`;
  const wanted = kept(app, asked, () => (own ? Number(own.reserve) : 3));
  const inputs = fields(
    lift.field,
    load.field,
    numberField("Repetitions", String(reps), "", (value) => put(app, "reps", value)),
    choices("It felt like so many left", reserve, felt, (value) => put(app, "felt", value)),
    choices("Wanted left", reserve, wanted, (value) => put(app, asked, value)),
    lift.value === undefined && barChoice(app),
  );
  const implement = lift.value === undefined ? app.bar() : implementOf(app, { lift: lift.value });
  const stop = stopFirst(app, lift.value);
  if (stop) return [stop, inputs];
  if (reps < 1 || reps > 30 || !Number.isInteger(reps)) return [inputs, answer({ big: "How many repetitions?", why: "A whole number from 1 to 30, please." })];
  const found = afterSets(app, lift.value, load.value, [{ load: load.value, reps, effort: { rir: felt } }], wanted);
  if (found.refused) return [inputs, refused(found.refused.message)];
  const { next, why } = found.answer;
  const down = kindOf(next.then, "downTo");
  const easier = kindOf(next.then, "easierRung");
  const passed = aboveToday(next, lift.value);
  const most = passed && `At most ${load.value.kg - passed.kg < CLOSE_KG ? atMost(passed) : words(passed)}${hand} today`;
  const big = down ? `${mass(down)}${hand}` : next.then === "stop" ? ends(next) : easier ? `An easier rung: ${easier}` : (most ?? `Stay at ${words(load.value)}${hand}`);
  return [
    inputs,
    answer({
      big,
      why: `${passed ? `${written(load.value)}${hand} is more than this day allows. ` : ""}${reasonsOf(next, why).join(" ")}${passed || next.then === "stop" ? limitLine(limits.words) : ""}`,
      body: down && next.work ? loadedDrawing(next.work.loaded, app.kit().stock, barWords(implement)) : undefined,
      working: el("p", {}, "Ten less the rating is what was left, for ratings of 7 and up. Within a session nothing goes above today\u2019s load."),
      sources: next.sources,
      cautions: ["estimates_are_ranges"],
    }),
  ];
}

/** The load of the day, where the last set was lifted above it; a lift of nobody has none. */
function aboveToday(next: NextSet, lift: string | undefined): Mass | undefined {
  return lift === undefined ? undefined : next.reasons.map((one) => kindOf(one, "limited")).find((one) => one !== undefined)?.to;
}

/** A lift that is over, or that is left today. */
function ends(next: NextSet): string {
  return next.reasons.includes("not_today") ? "Leave it out today" : "End this lift for today";
}

const reserve = [0, 0.5, 1, 1.5, 2, 3, 4, 5].map((value) => ({ value, label: plain(value, 1) }));

function howIsTheDay(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("How a day is, is read against this lifter\u2019s own days.");
  const { answer: got, refused: no } = lifts(app);
  if (!got) return refused(no ?? "");
  const fixed = app.kept.warm_up_effort === undefined ? undefined : fixedSet(app, lifter);
  const answers = MARKERS.flatMap(([marker]) => (app.kept[marker] === undefined ? [] : [{ kind: marker, value: app.kept[marker] as number, ...(marker === "warm_up_effort" && fixed ? { conditions: fixed.conditions } : {}) }]));
  const drop = app.kept.drop as string | undefined;
  const judged = attempt("page.day_against_own", { log: app.log(lifter), today: got.session.today, answers: { markers: answers, technique: drop === undefined ? "not_scored" : drop === "yes" ? "critical_drop" : "as_usual" } });
  if (judged.refused) return refused(judged.refused.message);
  const { verdict, days, missing: unsaid } = judged.answer;
  const loose = unsaid.some((one) => kindOf(one, "conditions") !== undefined);
  const asked = answers.length > 0 || drop !== undefined;
  const day: DayClass = verdict?.class ?? got.session.day;
  const votes = verdict?.votes ?? [];
  const said: Record<string, string> = { below: "below own usual", within: "usual", above: "above own usual", not_enough_history: "too few days yet", not_answered: "not answered" };
  const voted = votes.filter((one) => one.vote === "below" || one.vote === "above").map((one) => `${one.kind.replaceAll("_", " ")} ${said[one.vote]}`);
  const hints: Record<string, string> = {
    below: "Less load, fewer sets; a set that does not pass does not count against the gate.",
    below_single: "Go on as planned and look again after the first work set.",
    within: "The planned work.",
    above: "The planned load all the same; a day above the usual adds none.",
    unknown: "The planned work, and no step up; go by symptoms and by technique in the warm-up.",
  };
  const write = (): void => {
    void app.record(lifter, { dayReport: { class: day, ...(answers.length > 0 ? { markers: answers } : {}) } }).then((done) => done && app.go("today"));
  };
  return [
    answer({
      big: day === "unknown" ? "Not known yet" : dayWords(day).replace(/^an? /, "").replace(/^./, (letter) => letter.toUpperCase()),
      why: `${app.stops(lifter).lines.length > 0 ? "A stop is in force: how the day is changes nothing about it." : (hints[day] ?? "")} ${voted.length > 0 ? `${voted.join(", ")}. ` : ""}${count(days, "earlier day")} to read it against; four are needed.`,
      body: asked && [loose && el("p", { class: "soft", "data-unsaid": true }, "With which load the fixed warm-up set was done is not said: it is read against others of that kind."), el("div", { class: "row" }, button("Write it into the log", write, { class: "main", "data-act": "write-day" }))],
      working: [
        table(["Asked", "Today", "Own usual"], votes.map((one) => [one.kind.replaceAll("_", " "), said[one.vote] ?? one.vote, one.baseline ? `${plain(one.baseline.centre, 1)}, within ${plain(one.baseline.spread, 1)}` : "\u2013"]), "Each sign by itself"),
        el("p", {}, "Two signs must agree before a day counts as below the usual; one alone is often chance. No sign is merged into a score, and a missing answer never counts as one within the usual."),
      ],
      sources: ["condition.judge_day", "condition.baseline"],
      cautions: ["ask_before_today"],
    }),
    fields(
      choices("A critical point dropped in the warm-up?", [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }], drop, (value) => put(app, "drop", value)),
      MARKERS.map(([marker, label]) => choices(label, TEN, app.kept[marker] as number | undefined, (value) => put(app, marker, value))),
      fixed?.fields,
    ),
    button("Fever, a fall, pain: the day\u2019s other questions", () => dayBox(app), { "data-act": "day" }),
    later(() => verdictsPart(app)),
  ];
}

/** The fixed warm-up set: which it was, and what else makes it the same as on other days. The set is that of the last time
 * until another is said; the hour and caffeine are of today. */
function fixedSet(app: App, lifter: Loaded): { conditions: ConditionsInput; fields: Child } {
  const before = app.history(lifter).events.findLast((one) => one.said && kindOf(one.said, "dayReport")?.markers?.some((each) => each.kind === "warm_up_effort"));
  const last = before?.said && kindOf(before.said, "dayReport")?.markers?.find((each) => each.kind === "warm_up_effort")?.conditions;
  const lift = liftChoice(app, "fixed lift", last?.lift ?? liftOfToday(app));
  const load = kept<Mass | undefined>(app, "fixed load", () => last?.load);
  const reps = kept<number | undefined>(app, "fixed reps", () => last?.reps);
  const hour = app.kept["fixed hour"] as TimeOfDay | undefined;
  const caffeine = app.kept["fixed caffeine"] as "no" | "yes" | undefined;
  return {
    conditions: {
      ...(lift.value ? { lift: lift.value } : {}),
      ...(load ? { load } : {}),
      ...(reps === undefined ? {} : { reps }),
      ...(hour ? { timeOfDay: hour } : {}),
      ...(caffeine ? { caffeine: caffeine === "yes" } : {}),
      ...(last?.other && last.other.length > 0 ? { other: last.other } : {}),
    },
    fields: el(
      "section",
      { class: "field whole", "data-fixed": true },
      el("p", { class: "soft" }, "The fixed warm-up set is compared only with the same set under the same conditions."),
      fields(
        lift.field,
        numberField(`Load of the fixed set${eachHand(app, lift.value ?? "")}`, load ? massNumber(load) : "not said", load ? unitNow() : "", (value, unit) => put(app, "fixed load", attempt("page.mass", { mass: given(value, unit) }).answer ?? load), unitNow()),
        numberField("Repetitions of it", reps === undefined ? "not said" : String(reps), "", (value) => put(app, "fixed reps", value)),
        choices("Time of day", [{ value: "morning" as const, label: "Morning" }, { value: "afternoon" as const, label: "Afternoon" }, { value: "evening" as const, label: "Evening" }], hour, (value) => put(app, "fixed hour", value)),
        choices("Caffeine before", [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }], caffeine, (value) => put(app, "fixed caffeine", value)),
      ),
    ),
  };
}
const TEN = Array.from({ length: 11 }, (_, value) => ({ value, label: String(value) }));
// What is asked, each from 0 to 10, by the names of the log's markers.
const MARKERS = [
  ["recovery", "Recovered (10: fully)"],
  ["sleep", "Slept (10: very well)"],
  ["soreness", "Sore muscles (10: very)"],
  ["stress", "Stress (10: very much)"],
  ["warm_up_effort", "The fixed warm-up set felt (10: very hard)"],
] as const;

/** The load that a step on offer would bring. */
function offered(lift: LiftToday): Mass {
  return kindOf(lift.outlook, "onOffer")?.to.work.load ?? lift.limit;
}

function goUp(app: App): Child {
  if (!app.lifter) return nobody("A step up is earned at a lifter\u2019s own gate.");
  const { found, refused: no } = lifts(app);
  if (no !== undefined) return refused(no);
  const open = found.filter((one) => kindOf(one.lift.outlook, "onOffer"));
  const stopped = found.some((one) => one.lift.verdict === "stop");
  return [
    answer({
      big: open.length === 0 ? (stopped ? "No step up: a stop is in force" : "No step up today") : `Yes, once: ${open.map((one) => one.name).join(", ")}`,
      why: stopped ? "What is stopped is not lifted at any load." : "Staying at a load is a good result; nobody has to add weight.",
      ...(stopped ? { tone: "stop" as const } : {}),
    }),
    eachLift(
      found,
      (one) => (one.lift.verdict === "stop" ? liftLine(app, one.lift) : kindOf(one.lift.outlook, "onOffer") ? `Up to ${mass(offered(one.lift))}${eachHand(app, one.lift.lift)} is on offer` : `Stay at ${limitOfDay(one.lift)}${eachHand(app, one.lift.lift)}`),
      (one) => (one.lift.verdict === "stop" ? mainReason(one.line) : one.line.blockers.length === 0 ? "Nothing stands in the way." : `${count(one.line.blockers.length, "reason")} to stay:`),
      (one) => (one.lift.verdict === "stop" ? undefined : list(one.line.blockers.map((each) => each.text))),
    ),
  ];
}

/** What the gate itself still asks for, most telling first. */
function gateWords(one: Found): string {
  if (one.lift.verdict === "stop") return "stopped, a clearance comes first";
  const more = one.lift.wouldChange.map((change) => kindOf(change, "passingSessions")).find((change) => change !== undefined)?.count;
  const sessions = more === undefined ? undefined : more === 1 ? "1 more passing session, on another day" : `${more} more passing sessions in a row, each on another day`;
  const [first] = one.line.missing;
  if (one.lift.gate.open || first === undefined) return "nothing missing";
  const watch = /watch: (.*)$/.exec(first)?.[1];
  return `${sessions ?? first}${watch && sessions ? `; watch: ${watch}` : ""}`;
}

function missing(app: App): Child {
  if (!app.lifter) return nobody("A gate belongs to a lifter\u2019s lift.");
  const { found, refused: no } = lifts(app);
  if (no !== undefined) return refused(no);
  const first = found.find((one) => one.lift.verdict === "stop") ?? found.find((one) => one.line.missing.length > 0) ?? found[0];
  return [
    first && answer({
      big: `${first.name}: ${gateWords(first)}`,
      why: "A session counts when its repetitions pass, the first set among them, each on another day.",
    }),
    eachLift(
      found,
      (one) => capital(gateWords(one)),
      (one) => (one.lift.verdict === "stop" ? mainReason(one.line) : one.line.changes.join(" ")),
    ),
  ];
}

const SIGNS = [
  ["chest_pain", "Chest pain or pressure"],
  ["faint", "Fainting, or nearly"],
  ["breathlessness", "Sudden severe breathlessness"],
  ["headache", "Sudden worst headache ever"],
  ["one_sided_weakness", "Weak or numb on one side, trouble speaking"],
  ["heartbeat", "Heart racing or irregular"],
  ["vision", "Sudden change in sight"],
  ["saddle_numbness", "Bladder or bowel trouble, numb between the legs"],
] as const;

/** What to do at each sign; where nothing stands, help is called at once. */
const HELP: Record<string, string> = {
  faint: "Fainted: call emergency help now. Only nearly: stay sitting, end the session, and call if it does not pass in minutes or comes back.",
  heartbeat: "End the session. Call emergency help if it does not pass in minutes or comes back.",
  vision: "End the session. Call emergency help if it does not pass in minutes or comes back.",
};

/** A sign counts from the first tap: with a lifter in view it is in the log before anything else is asked. */
function tapSign(app: App, code: StopSign): void {
  const lifter = app.lifter;
  if (!lifter) {
    put(app, "sign", code);
    return;
  }
  const { kept: here } = app;
  Object.assign(here, { sign: code, signOf: lifter.id, written: undefined });
  void app.write(lifter, { symptomReport: { signs: [code] } }).then((written) => {
    here.written = written;
    app.refresh();
  });
}

/** A sign on this view is that of whoever is in view, and in their log as long as it says so. */
function forgetSign(app: App): void {
  const written = app.kept.written as Written | undefined;
  const other = app.kept.signOf !== undefined && app.kept.signOf !== app.lifter?.id;
  if (other || (written && app.numberNow(written.lifter, written.sequence) === undefined)) Object.assign(app.kept, { sign: "", signOf: undefined, written: undefined });
}

/** What pain asks for, in a word or two. */
const ZONES: Record<PainZone, string> = { clear: "Go on", hold: "Go on, stay at this load", block: "Ease off: no step up", stop: "Stop the lifts of that region" };

function hurts(app: App): Child {
  forgetSign(app);
  const sign = kept(app, "sign", () => "");
  const signs = el(
    "section",
    { class: "signs" },
    el("h2", {}, "First: any of these?"),
    el("div", { class: "stack" }, SIGNS.map(([code, label]) => button(label, () => tapSign(app, code), { class: "sign", "aria-pressed": sign === code ? "true" : "false" }))),
    button("None of these", () => put(app, "sign", "none"), { class: "main", "data-act": "no-sign", "aria-pressed": sign === "none" ? "true" : "false" }),
  );
  if (sign === "") return signs;
  if (sign !== "none") {
    const label = SIGNS.find(([code]) => code === sign)?.[1] ?? sign;
    const written = app.kept.written as Written | undefined;
    return [
      answer({ big: "Stop. Every lift, now", why: `${label}. Rack the weight and sit down. ${HELP[sign] ?? "Call emergency help now."}${written === undefined ? "" : " It is written into the log: every lift stays stopped until a clearance and the coach\u2019s sign-off."}`, tone: "stop", cautions: ["emergency_signs", "back_emergency"] }),
      written !== undefined && button(`Undo: ${label.toLowerCase()} was tapped by mistake`, () => {
        const by: EventKindInput = { correction: { replaces: written.sequence } };
        const now = app.store.lifter(written.lifter.id);
        askCorrection(now && opensBy(app, now, { suppose: by }), () => {
          void app.record(written.lifter, by).then((done) => { if (done) put(app, "sign", ""); });
        });
      }, { class: "quiet", "data-act": "undo-sign" }),
      written === undefined && button("Back to the signs", () => put(app, "sign", ""), { class: "quiet" }),
    ];
  }
  const facts = kept<PainFacts>(app, "pain", () => ({ region: undefined, score: undefined, features: undefined }));
  const inputs = fields(painFields(app, facts, () => app.refresh()));
  const lacks = painLacks(facts);
  if (lacks !== undefined || facts.score === undefined) return [answer({ big: "Where, and how much?", why: lacks ?? "" }), inputs];
  const region = facts.region ?? "";
  const pain = painEvent(facts, region);
  const kind: EventKindInput = { painReport: pain };
  // By the numbers of the lifter's own rules, or of the usual ones.
  const told = attempt("page.pain", { pain, ...(app.lifter ? { log: app.log(app.lifter) } : {}) });
  if (told.refused) return [refused(told.refused.message), inputs];
  const { zone, blockFrom, stopAbove, clearSessions } = told.answer;
  const stops = zone === "stop";
  if (!app.lifter) {
    return [
      answer({
        big: ZONES[zone],
        why: stops ? "See a clinician before lifting with that region again." : `Drop load or range until it is below ${blockFrom}, else leave the lift. Look again next morning; ${count(clearSessions, "session")} without it before a step up.`,
        cautions: ["see_clinician_first"],
        ...(stops ? { tone: "stop" as const } : {}),
      }),
      inputs,
    ];
  }
  const { found, refused: no } = lifts(app, { suppose: kind });
  const { lifter } = app;
  const write = (): Promise<boolean> => {
    app.unsaid = undefined;
    return app.record(lifter, kind);
  };
  const writeIt = button("Write it into the log", () => void write().then((done) => done && app.go("today")));
  // It came to a stop: that is not left unsaid by going elsewhere, nor where today cannot be worked out.
  const asks = (): void => void (app.unsaid = { title: "Leave it unwritten?", text: `${app.regionName(region)}, ${facts.score} of 10: that is a stop, and it is not in the log yet. It counts only once it is written down.`, write, leave: "It was not so: leave it" });
  if (stops) asks();
  if (no !== undefined) return [refused(no), inputs, writeIt];
  const touched = found.filter((one) => (liftsOf(app, one.lift.lift)?.regions ?? []).includes(region));
  const worst = touched.find((one) => one.lift.verdict === "stop") ?? touched[0];
  if (worst?.lift.verdict === "stop") asks();
  return [
    answer({
      big: worst ? `${worst.name}: ${worst.line.verdict}${worst.lift.sets > 0 ? `, ${liftLine(app, worst.lift)}` : ""}` : "No planned lift loads that region",
      why: `Ask again next morning: more pain than before the session takes the pass back. Get it looked at if it is worse each week or above ${stopAbove}.`,
      cautions: ["see_clinician_first"],
      ...(worst?.lift.verdict === "stop" ? { tone: "stop" as const } : {}),
    }),
    inputs,
    writeIt,
    eachLift(found, (one) => `${one.line.verdict}${one.lift.sets > 0 ? `: ${liftLine(app, one.lift)}` : ""}`, (one) => mainReason(one.line)),
  ];
}

function liftsOf(app: App, name: string): LiftParameters | undefined {
  return app.lifter && app.parameters(app.lifter)?.lifts.find((one) => one.id === name);
}

function afterBreak(app: App): Child {
  const days = kept(app, "days", () => 21);
  const how = kept(app, "how", () => "well");
  const inputs = fields(
    choices("How was it?", [{ value: "well", label: "Well" }, { value: "ill", label: "Ill in bed" }, { value: "hospital", label: "In hospital" }], how, (value) => put(app, "how", value)),
    choices("Days without lifting", [7, 14, 21, 42, 84, 182].map((value) => ({ value, label: String(value) })), days, (value) => put(app, "days", value)),
    numberField("Another number", String(days), "days", (value) => put(app, "days", value)),
  );
  if (!app.lifter) return [inputs, nobody("Where to start again follows from the load before.")];
  const { found, refused: no } = lifts(app, { away: { days, reason: how === "well" ? ("well" as const) : ("ill" as const) } });
  if (no !== undefined) return [inputs, refused(no)];
  const first = found[0];
  const ill = how !== "well";
  return [
    inputs,
    answer({
      big: ill ? "A clearance first, then lower" : first ? `${first.name}: ${first.lift.load ? `${mass(first.lift.load)}${eachHand(app, first.lift.lift)}` : first.line.verdict}` : "No lift is planned",
      why: ill ? "After an illness in bed or a stay in hospital nothing is loaded until somebody cleared it." : `After ${count(days, "day")}: ${first ? mainReason(first.line) : ""}`,
      working: table(["From days", "Load left", "Easier rung"], (app.parameters(app.lifter)?.policy.layoff ?? []).map((row) => [String(row.fromDays), row.restart ? "lightest at the right height" : atMostPart(row.loadLeft), row.easierRung ? "yes, strict lift of a pair" : "no"]), "The table for breaks, this project\u2019s choice"),
    }),
    eachLift(found, (one) => (one.lift.sets > 0 ? liftLine(app, one.lift) : one.line.verdict), (one) => mainReason(one.line)),
  ];
}

function slipped(app: App): Child {
  const lift = liftChoice(app, "lift", liftOfToday(app));
  const start = (): { kg: number } => {
    const found = lifts(app).found.find((one) => one.lift.lift === lift.value)?.lift;
    return found?.load ?? app.startLoad();
  };
  const hand = eachHand(app, lift.value ?? "");
  const load = massField(app, `load ${lift.value ?? ""}`, `Load${hand}`, start);
  const sets = kept(app, "sets", () => 1);
  const pain = kept(app, "pain", () => "");
  const yesNo = [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }];
  const inputs = fields(
    lift.field,
    choices("Did it hurt?", yesNo, pain, (value) => put(app, "pain", value)),
    choices("Sets of this lift today in which it slipped", [1, 2, 3].map((value) => ({ value, label: String(value) })), sets, (value) => put(app, "sets", value)),
    load.field,
  );
  if (pain === "") return [answer({ big: "Did it hurt?", why: "Pain is asked before technique." }), inputs];
  const implement = lift.value ? implementOf(app, { lift: lift.value }) : app.bar();
  if (pain === "yes") {
    return [
      answer({ big: "Stop this lift, ask about the pain", why: "Pain is asked before technique.", cautions: ["gates_unproven"] }),
      button("What to do about pain", () => app.go("q13"), { class: "main" }),
      inputs,
    ];
  }
  const stop = stopFirst(app, lift.value);
  if (stop) return [stop, inputs];
  const limits = limitsFor(app, lift.value);
  const point = criticalOf(app, lift.value);
  if (point === undefined) return [answer({ big: "No critical point is set", why: "Which point of this lift is critical is set under Plan and lifts; only such a one changes the next set." }), inputs];
  const set = { load: load.value, reps: REPS, marks: { reps: REPS, acceptable: REPS - 1, marks: [{ criterion: point, mark: "not_met" as const }], rater: "coach" as const } };
  const found = afterSets(app, lift.value, load.value, Array.from({ length: sets }, () => set));
  if (found.refused) return [inputs, refused(found.refused.message)];
  const { next, why } = found.answer;
  const down = kindOf(next.then, "downTo");
  const rung = kindOf(next.then, "easierRung") ?? next.instead;
  const big = down ? `${mass(down)}${hand} for the next set` : next.then === "stop" ? ends(next) : rung ? `An easier rung: ${rung}` : `Stay at ${written(load.value)}${hand}`;
  return [
    answer({
      big,
      why: `${reasonsOf(next, why).join(" ")}${aboveToday(next, lift.value) ? limitLine(limits.words) : ""}`,
      body: down && next.work && [el("p", {}, `Each end: ${sideWords(discsOf(next.work.loaded))}.`), loadedDrawing(next.work.loaded, app.kit().stock, barWords(implement))],
      working: list(["One loadable step down. After two sets in which a critical point was lost the lift ends (common practice)."]),
      sources: next.sources,
      cautions: ["gates_unproven"],
    }),
    inputs,
  ];
}
/** Repetitions of a set that is only spoken of. */
const REPS = 5;

function lastTime(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("What was done is in a lifter\u2019s log.");
  // What was done last may be among what is set aside.
  if (lifter.damage) return stopFirst(app);
  const history = app.history(lifter);
  const { sessions } = history;
  const last = sessions.at(-1);
  if (!last) return answer({ big: "No session yet", why: "The first one will be here next time." });
  const after = history.events.filter((one) => one.sequence > last.sequence).map((one) => `${dayShort(one.day)}: ${kindWords(one.kind).toLowerCase()}${one.note ? `, ${one.note}` : ""}`);
  const cues = sessions.flatMap((one) => one.lifts.filter((lift) => lift.cue).map((lift) => `${app.liftName(lift.lift)}: \u201c${lift.cue}\u201d (${dayShort(one.day)})`));
  return [
    answer({
      big: last.lifts.map((lift) => `${app.liftName(lift.lift)} ${mass(lift.load)}${lift.eachHand ? EACH_HAND : ""}`).join(", "),
      why: `${dayShort(last.day)}, ${count(last.daysAgo, "day")} ago. ${cues.length > 0 ? `Last cue: ${cues.at(-1)}.` : "No cue was written down."}`,
      body: [
        last.lifts.map((lift) => [el("h2", {}, `${app.liftName(lift.lift)}: ${lift.passed === "pass" ? "passed" : lift.takenBack ? "did not pass: the next morning took it back" : lift.passed === "fail" ? "did not pass" : "not scored"}`), (lift.setup || overTheBody(app, lift.lift)) && el("p", { class: "soft" }, setupWords(lift.setup ?? {})), list(lift.sets.map((set) => setInWords(set, lift.eachHand ? EACH_HAND : "")))]),
        last.pain.length > 0 ? el("p", {}, `Pain: ${last.pain.join(", ")}.`) : el("p", {}, last.painAsked ? "No pain when asked." : "Pain was not asked."),
        last.note && el("p", {}, last.note),
        after.length > 0 && [el("h2", {}, "Since then"), list(after)],
      ],
    }),
    button("Earlier sessions", () => app.go("log")),
  ];
}

function shortOf(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return nobody("What stays and what goes follows from the plan.");
  const minutes = kept(app, "minutes", () => 30);
  const taken = kept<string[]>(app, "taken", () => []);
  const sore = kept(app, "sore", () => "");
  // A bar of this gym that is not in the lifter's own list is not missing there.
  const own = (app.parameters(lifter)?.implements ?? []).map((one) => implementName(one));
  const unavailable = taken.filter((one) => own.includes(one));
  const plan = ask("page.plan_text", { plan: { ...app.plan(lifter), minutes, ...(unavailable.length > 0 ? { unavailable } : {}) } });
  const bars = app.kit().implements;
  const regions = [...new Set<string>((app.parameters(lifter)?.lifts ?? []).flatMap((one) => one.regions))];
  const inputs = fields(
    choices("Minutes", [20, 30, 45, 60].map((value) => ({ value, label: String(value) })), minutes, (value) => put(app, "minutes", value)),
    el("div", { class: "field" }, el("span", { class: "label" }, "Taken or missing"), el("div", { class: "choices" }, bars.map((one) => [implementName(one), barWords(one)] as const).map(([name, words]) => button(words, () => put(app, "taken", taken.includes(name) ? taken.filter((one) => one !== name) : [...taken, name]), { class: "choice", "aria-pressed": taken.includes(name) ? "true" : "false" })))),
    choices("Sore", [{ value: "", label: "Nothing" }, ...regions.map((value) => ({ value, label: app.regionName(value) }))], sore, (value) => put(app, "sore", value)),
  );
  const suppose: Supposed = sore ? { suppose: { painReport: { region: sore, score: 3 } } } : {};
  const { found, refused: no } = lifts(app, suppose, plan);
  if (no !== undefined) return [inputs, refused(no)];
  const stay = found.filter((one) => one.lift.sets > 0);
  const touches = (one: Found): boolean => {
    const set = liftsOf(app, one.lift.lift);
    return one.lift.sets === 0 || (sore !== "" && (set?.regions ?? []).includes(sore)) || taken.includes(set?.implement ?? "");
  };
  const free = (other: string): LiftToday | undefined => {
    const set = liftsOf(app, other);
    const planned = found.find((one) => one.lift.lift === other);
    if (set === undefined || stopFirst(app, other) || (sore !== "" && set.regions.includes(sore)) || taken.includes(set.implement)) return undefined;
    if (planned) return planned.lift.sets > 0 ? planned.lift : undefined;
    // One that is not planned is asked about as if it were: a limit may leave nothing of it.
    const withIt = ask("page.plan_text", { plan: { ...app.plan(lifter), lifts: [...app.plan(lifter).lifts, { lift: other }] } });
    const own = lifts(app, suppose, withIt).found.find((one) => one.lift.lift === other)?.lift;
    return own && own.sets > 0 ? own : undefined;
  };
  return [
    inputs,
    answer({
      big: stay.length === 0 ? "Nothing stays today" : `Keep: ${stay.map((one) => `${one.name} ${one.lift.sets} \u00d7 ${one.lift.reps}`).join(", ")}`,
      why: "Nothing is added to make up for it, today or next time.",
    }),
    eachLift(
      found,
      (one) => (one.lift.sets > 0 ? liftLine(app, one.lift) : "Leave it out"),
      (one) => mainReason(one.line),
      (one) => (one.lift.verdict !== "stop" && touches(one) ? sidewaysPart(app, one.lift.lift, free) : undefined),
    ),
  ];
}

/** Where a lift may go instead: rungs that are not harder, and the other lift of its pair. */
function sidewaysPart(app: App, lift: string, free: (other: string) => LiftToday | undefined): Child {
  const { lifter } = app;
  if (!lifter) return undefined;
  const beside = app.facts(lifter).places.find((one) => one.lift === lift)?.sideways ?? [];
  const pair = app.parameters(lifter)?.pairs?.find((one) => one.strict === lift || one.forgiving === lift);
  const partner: string | undefined = pair && (pair.strict === lift ? pair.forgiving : pair.strict);
  // A partner that is left out today, sore itself or on a bar that is taken, is no way out.
  const other = partner === undefined ? undefined : free(partner);
  if (beside.length === 0 && !other) return el("p", { class: "soft" }, "No rung beside or below this one is set; other lifts stay as planned.");
  return [
    beside.length > 0 && el("p", { "data-sideways": lift }, `Instead, with no more load: ${beside.map((one) => one.name).join(", ")}.`),
    other && el("p", { class: "soft" }, `The other lift of its pair: ${app.liftName(other.lift)}, at its own load: ${liftLine(app, other)}.${limitLine(limitsFor(app, other.lift).words)}`),
    beside.length > 0 && button("Go to another rung", () => anotherRung(app, lift), { "aria-label": `${app.liftName(lift)}: go to another rung` }),
  ];
}

function firstDay(app: App): Child {
  const kit = app.kit();
  const lift = kept(app, "lift", () => "");
  const which = choices("Which lift?", firstLifts().map((value) => ({ value, label: value })), lift, (value) => put(app, "lift", value));
  if (lift === "") return [answer({ big: "Which lift?", why: "The lightest right bar, at the height of the lift, is where it begins." }), fields(which)];
  const stop = stopFirst(app, lift);
  if (stop) return [stop, fields(which)];
  const limits = limitsFor(app, lift);
  const right = firstBars(lift, kit, app.lifter && app.log(app.lifter));
  const offers = right.filter((one) => one.fits);
  if (offers.length === 0 && right.length > 0) return [answer({ big: "No load: a limit is in force", why: `No bar here makes a load for a ${lift} that keeps it.${limitLine(limits.words)}` }), fields(which)];
  const chosen = kept(app, `bar ${lift}`, () => offers[0]?.implement ?? "");
  const offer = offers.find((one) => one.implement === chosen);
  if (!offer) return [answer({ big: "No bar here is right for it", why: `None of the bars here is one for a ${lift}; the list of bars stands under Gym.` }), fields(which)];
  const bar = implementNamed(kit, offer.implement);
  const words = bar ? barWords(bar) : offer.implement;
  const off = offer.offByMm === 0 ? "" : ` No disc and no blocks here bring the bar to its height: it lies ${plain(Math.abs(offer.offByMm), 0)} mm too ${offer.offByMm < 0 ? "low" : "high"}.`;
  const blocks = offer.blocks ? ` On blocks of ${plain(offer.blocks.mm, 0)} mm under each end.` : "";
  const first = chosen === offers[0]?.implement;
  const floor = offer.offByMm !== 0 || offer.blocks !== undefined || lift.includes("pull");
  return [
    answer({
      big: `Start at ${mass(offer.load)}`,
      why: `${first ? "The lightest load at the right height" : "The lightest with this bar"}: ${words}${discsOf(offer.loaded).length === 0 ? ", empty" : `, each end ${sideWords(discsOf(offer.loaded))}`}.${blocks}${off} Five easy repetitions, four or more left.${limitLine(limits.words)}`,
      body: loadedDrawing(offer.loaded, kit.stock, words, { height: floor, ...(offer.blocks ? { blocks: offer.blocks.mm } : {}) }),
      working: list(["Estimates by formula are no guide for a first day; how it moves is.", "A lift is learned more easily light; beginning too light costs a week at most."]),
      sources: ["prescription.first_load"],
      cautions: ["ask_before_starting"],
    }),
    fields(which, offers.length > 1 && choices("Bar, by its lightest load", offers.map((one) => ({ value: one.implement, label: offerWords(kit, one) })), chosen, (value) => put(app, `bar ${lift}`, value))),
  ];
}

export const DAY: Question[] = [
  { number: 25, title: "What does this lifter do today?", group: "Today", view: (app) => todayView(app) },
  { number: 10, title: "How is today, against the usual?", group: "Today", view: howIsTheDay },
  { number: 11, title: "May a lift go up today?", group: "Today", view: goUp },
  { number: 12, title: "What does the gate still miss?", group: "Today", view: missing },
  { number: 13, title: "It hurts. What now?", group: "Today", view: hurts },
  { number: 26, title: "Technique slipped in that set. What now?", group: "Today", view: slipped },
  { number: 9, title: "Harder than wanted: next set?", group: "Today", view: nextSet },
  { number: 27, title: "What did we do and say last time?", group: "Today", view: lastTime },
  { number: 28, title: "Short of time, bar taken, or sore", group: "Today", view: shortOf },
  { number: 29, title: "First day: what load?", group: "Today", view: firstDay },
  { number: 14, title: "After weeks off: where to start?", group: "Loads", view: afterBreak },
];

