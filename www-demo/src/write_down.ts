// What else happened: the morning after, a break, a sign-off, the coach's own decision.
import type { App } from "./app.ts";
import { clearance } from "./clearance.ts";
import { button, choices, el, type Child } from "./element.ts";
import type { Ask, LayoffReason, Mass as Weight, PainAnswer, EverydayTest } from "bismar-page-package";
import { attempt, kindOf } from "./engine.ts";
import { offerWords, type Offer } from "./kit.ts";
import { atMostNumber, given, mass, massNumber, plain, unitNow } from "./numbers.ts";
import { numberField } from "./pad.ts";
import { ASKS } from "./kinds.ts";
import { morePains, painFields, painsLack, painsOf, regionChoices, type PainFacts } from "./record.ts";
import { eachHand, loadOf } from "./setup.ts";
import { NAME, openingBox, who, writeBox } from "./write_box.ts";

/** The morning after a session: that one, or the last. */
export function morningAfter(app: App, of?: { session: number }, said?: "yes"): void {
  const lifter = app.lifter;
  const last: number | undefined = of?.session ?? (lifter && app.history(lifter).sessions.at(-1)?.sequence);
  if (last === undefined) return;
  const pain: PainFacts = { region: undefined, score: undefined, features: undefined };
  const named: PainAnswer[] = [];
  let more: "no" | "yes" | undefined = said;
  writeBox(
    app,
    "The morning after",
    (redraw) => [
      el("p", { class: "soft" }, "More pain in a joint, a tendon or the spine than before the session takes its pass back."),
      choices("More pain than before the session?", [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }], more, (value) => {
        more = value;
        redraw();
      }),
      more === "yes" && [painFields(app, pain, redraw), morePains(app, pain, named, redraw)],
    ],
    () => {
      if (more === undefined) return "More or not, please.";
      const lacks = more === "yes" ? painsLack(pain, named) : undefined;
      if (lacks) return lacks;
      const answers = more === "yes" ? painsOf(pain, named) : [];
      return { nextDayReport: { session: last, pain: answers } };
    },
    { begun: said !== undefined },
  );
}

function away(app: App): void {
  let reason: LayoffReason | undefined;
  const from = el("input", { type: "date", id: "from", autocomplete: "off" });
  writeBox(
    app,
    "A break",
    (redraw) => [
      choices("How was it?", [{ value: "well", label: "Well: holiday, work" }, { value: "planned", label: "A planned rest" }, { value: "ill", label: "Ill in bed, hospital, operation" }], reason, (value) => {
        reason = value;
        redraw();
      }),
      el("div", { class: "field" }, el("label", { class: "label", for: "from" }, "First day of it"), from),
    ],
    () => (reason === undefined ? "How it was, please." : from.value ? { layoffNoted: { from: from.value, reason } } : "The first day, please."),
  );
}

/** What was said when asked before training stays open until somebody answers it. */
function askAnswered(app: App): void {
  const lifter = app.lifter;
  const open = lifter ? app.facts(lifter).asks : [];
  if (!lifter || open.length === 0) {
    app.notice = "Nothing that was asked waits for an answer.";
    app.refresh();
    return;
  }
  const by = who("Who says that training may go on");
  let ask: Ask | undefined;
  let clinician: "no" | "yes" | undefined;
  openingBox(
    app,
    "What was asked is answered",
    (redraw) => [
      el("p", { class: "soft" }, "A fever that is over the coach may close; anything else a clinician."),
      choices("What", ASKS.filter(([code]) => open.includes(code)).map(([value, label]) => ({ value, label })), ask, (value) => {
        ask = value;
        redraw();
      }),
      choices("Is that a clinician?", [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }], clinician, (value) => {
        clinician = value as typeof clinician;
        redraw();
      }),
      by.field,
    ],
    () => {
      if (ask === undefined) return "Which of them, please.";
      if (clinician === undefined) return "A clinician or not, please.";
      if (by.name() === "") return NAME;
      if (ask !== "fever" && clinician === "no") return "A clinician answers this one.";
      return { askAnswered: { ask, who: by.name(), clinician: clinician === "yes" } };
    },
  );
}

function signOff(app: App): void {
  const by = who("Coach");
  const scopes = [{ value: "everything", label: "Every lift" }, ...regionChoices(app)];
  let scope: string | undefined;
  openingBox(
    app,
    "The coach signs off",
    (redraw) => [
      choices("What may be trained again", scopes, scope, (value) => {
        scope = value;
        redraw();
      }),
      by.field,
    ],
    () => (scope === undefined ? "What may be trained again, please." : by.name() === "" ? NAME : { coachSignOff: { who: by.name(), scope: scope === "everything" ? ("everything" as const) : { region: scope } } }),
  );
}

/** What is asked about a load that is more than a step above the working load, or more than was ever lifted. */
function tooMuch(app: App, lift: string, load: Weight): string | undefined {
  const lifter = app.lifter;
  const place = lifter && app.facts(lifter).places.find((one) => one.lift === lift);
  if (!lifter || !place) return undefined;
  const working = place.at.work.load;
  const most = app.history(lifter).sessions.flatMap((one) => one.lifts).filter((one) => one.lift === lift).flatMap((one) => one.sets.map((set) => set.load.kg)).reduce((high, one) => Math.max(high, one), 0);
  const step = load.kg > working.kg + Math.abs(working.kg) * place.stepCap;
  const ever = load.kg > working.kg && load.kg > most;
  if (!step && !ever) return undefined;
  const by = `That is ${mass({ kg: load.kg - working.kg })} more than the working load of ${loadOf(app, lift, working)}`;
  return `${by}${ever ? `, and more than was ever lifted here (${most > 0 ? loadOf(app, lift, { kg: most }) : "nothing yet"})` : ""}. Is that right? Then write it down once more.`;
}

function overrule(app: App): void {
  const lifter = app.lifter;
  const lifts = (lifter && app.parameters(lifter)?.lifts) ?? [];
  const by = who("Coach");
  const why = el("input", { type: "text", maxlength: 200, autocomplete: "off", id: "why" });
  const until = el("input", { type: "date", autocomplete: "off", id: "until" });
  let lift: string | undefined;
  let load: Weight | undefined;
  let asked: string | undefined;
  openingBox(
    app,
    "The coach decides otherwise",
    (redraw) => [
      el("p", { class: "soft" }, "Downward for good, or upward with a reason and an end. Stops and clearances stand above it."),
      choices("Lift", lifts.map((one) => ({ value: one.id, label: one.name ?? one.id })), lift, (value) => {
        lift = value;
        redraw();
      }),
      numberField(`Load allowed${lift === undefined ? "" : eachHand(app, lift)}`, load ? atMostNumber(load) : "not yet", load ? unitNow() : "", (value, unit) => {
        load = attempt("page.mass", { mass: given(value, unit) }).answer ?? load;
        redraw();
      }, unitNow()),
      by.field,
      el("div", { class: "field" }, el("label", { class: "label", for: "why" }, "Why"), why),
      el("div", { class: "field" }, el("label", { class: "label", for: "until" }, "Until (needed for more load)"), until),
    ],
    (peek) => {
      if (lift === undefined) return "Which lift, please.";
      if (load === undefined) return "The load, please.";
      if (by.name() === "") return NAME;
      const doubt = tooMuch(app, lift, load);
      if (doubt !== undefined && asked !== `${lift} ${load.kg}`) {
        if (!peek) asked = `${lift} ${load.kg}`;
        return doubt;
      }
      return { coachOverride: { lift, load, who: by.name(), ...(why.value.trim() ? { why: why.value.trim() } : {}), ...(until.value ? { expires: until.value } : {}) } };
    },
  );
}

function missed(app: App): void {
  let reason: string | undefined;
  writeBox(
    app,
    "A session that did not happen",
    (redraw) => [
      el("p", { class: "soft" }, "It is never made up by more load or more sets."),
      choices("Why", ["work", "travel", "family", "unwell", "other"].map((value) => ({ value, label: value })), reason, (value) => {
        reason = value;
        redraw();
      }),
    ],
    () => (reason === undefined ? "Why, please." : { sessionMissed: { reason } }),
  );
}

/** A block of weeks: what it is called, where it begins and ends. */
function block(app: App, ends: boolean): void {
  const lifter = app.lifter;
  const events = lifter ? app.history(lifter).events : [];
  const [begun, over] = [events.findLast((one) => one.kind === "block_started"), events.findLast((one) => one.kind === "block_ended")];
  const open = begun?.said && (over === undefined || over.sequence < begun.sequence) ? kindOf(begun.said, "blockStarted") : undefined;
  if (ends && open === undefined) {
    app.notice = "No block is going on.";
    app.refresh();
    return;
  }
  const name = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "block" });
  writeBox(
    app,
    ends ? "A block ends" : "A block begins",
    () => [
      el("p", { class: "soft" }, ends ? `The block \u201c${open}\u201d ends today. What it says of each lift stands under \u201cWas the block right?\u201d.` : "A block is some weeks with one aim; at its end it is looked back on."),
      !ends && el("div", { class: "field" }, el("label", { class: "label", for: "block" }, "What it is called"), name),
    ],
    () => (ends ? { blockEnded: open ?? "" } : name.value.trim() === "" ? "What it is called, please." : { blockStarted: name.value.trim() }),
  );
}

function usualPain(app: App): void {
  const by = who("Who agreed it");
  let region: string | undefined;
  let level: number | undefined;
  let clinician: string | undefined;
  openingBox(
    app,
    "A usual level of pain",
    (redraw) => [
      el("p", { class: "soft" }, "For a region that is never quite free of pain. At or below this level and steady over three sessions a step up is allowed; any rise holds. Looked at again after 90 days; above 2 a clinician agrees it."),
      choices("Where", regionChoices(app), region, (value) => {
        region = value;
        redraw();
      }),
      choices("Level, of 10", [0, 1, 2, 3].map((value) => ({ value, label: String(value) })), level, (value) => {
        level = value;
        redraw();
      }),
      choices("Did a clinician agree it?", [{ value: "no", label: "No" }, { value: "yes", label: "Yes" }], clinician, (value) => {
        clinician = value;
        redraw();
      }),
      by.field,
    ],
    () => {
      if (!region) return "Where, please.";
      if (level === undefined) return "The level, please.";
      if (clinician === undefined) return "A clinician or not, please.";
      if (by.name() === "") return NAME;
      if (level > 2 && clinician === "no") return "Above 2 a clinician agrees the level.";
      return { usualPainAgreed: { region, level, who: by.name(), ...(clinician === "yes" ? { clinician: true } : {}) } };
    },
  );
}

/** Tests of everyday function, with their units; what they lead to is under “What to expect decades on?”. */
export const TESTS: Record<EverydayTest, [string, string]> = {
  chair_rise_seconds: ["Five chair rises", "s"],
  chair_rise_count: ["Chair rises in 30 s", "rises"],
  gait_speed: ["Walking speed", "m/s"],
  grip: ["Grip", ""],
  floor_rise: ["Rising from the floor", "s"],
};
/** Unit of a test as the page shows it: grip is a mass. */
function testUnit(test: EverydayTest): string {
  return test === "grip" ? unitNow() : TESTS[test][1];
}
/** A result with its unit. */
export function testResult(test: EverydayTest, result: number): string {
  return test === "grip" ? mass({ kg: result }) : `${plain(result)} ${testUnit(test)}`;
}

function everydayTest(app: App): void {
  let test: EverydayTest | undefined;
  let result: number | undefined;
  writeBox(
    app,
    "An everyday test",
    (redraw) => [
      choices("Which", (Object.keys(TESTS) as EverydayTest[]).map((value) => ({ value, label: TESTS[value][0] })), test, (value) => {
        test = value;
        result = undefined;
        redraw();
      }),
      test !== undefined && numberField("Result", result === undefined ? "not yet" : testResult(test, result), "", (value, unit) => {
        result = test === "grip" ? attempt("page.mass", { mass: given(value, unit) }).answer?.kg : value;
        redraw();
      }, testUnit(test)),
    ],
    () => (test === undefined ? "Which test, please." : result === undefined ? "The result, please." : { functionTested: { test, result } }),
  );
}

function bodyMass(app: App): void {
  let own: Weight | undefined;
  writeBox(
    app,
    "Body mass",
    (redraw) => [
      numberField("Body mass", own ? massNumber(own) : "not yet", own ? unitNow() : "", (value, unit) => {
        own = attempt("page.mass", { mass: given(value, unit) }).answer ?? own;
        redraw();
      }, unitNow()),
    ],
    () => (own ? { bodyMassRecorded: own } : "The mass, please."),
  );
}

/** Another rung by the coach's hand: sideways or down, with no more load. */
export function anotherRung(app: App, lift: string): void {
  const lifter = app.lifter;
  const place = lifter && app.facts(lifter).places.find((one) => one.lift === lift);
  if (!place || place.sideways.length === 0) return;
  let rung: number | undefined;
  writeBox(
    app,
    `${app.liftName(lift)}: another rung`,
    (redraw) => [
      el("p", { class: "soft" }, "Sideways or easier, never with more load. What the gate has counted begins anew there; the way back up goes through the gate."),
      choices("Rung", place.sideways.map((one) => ({ value: one.rung, label: one.name })), rung, (value) => {
        rung = value;
        redraw();
      }),
    ],
    () => (rung === undefined ? "Which rung, please." : { variantChanged: { lift, to: { ...place.at, place: { ...place.at.place, rung } }, who: "coach" } }),
  );
}

/** Another bar for a lift, by the coach's hand: of the same kind, and none whose lightest load is above the working load. */
export function anotherBar(app: App, lift: string): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const offers: Offer[] = attempt("page.other_bars", { log: app.log(lifter), lift }).answer?.offers ?? [];
  const kit = app.kit();
  let bar: string | undefined = offers.find((one) => one.now)?.implement;
  const heavy = offers.filter((one) => !one.fits && !one.now);
  writeBox(
    app,
    `${app.liftName(lift)}: which bar?`,
    (redraw) => [
      el("p", { class: "soft" }, "Each with its lightest load at the height of the lift. The working load stays; what the gate has counted begins anew."),
      choices("Bar", offers.filter((one) => one.fits || one.now).map((one) => ({ value: one.implement, label: offerWords(kit, one) })), bar, (value) => {
        bar = value;
        redraw();
      }),
      heavy.length > 0 && el("p", { class: "soft" }, `Heavier than the working load, so not offered: ${heavy.map((one) => offerWords(kit, one)).join("; ")}.`),
      offers.length === 0 && el("p", {}, "No bar here is one for this lift; the bars stand under Gym."),
    ],
    () => {
      if (bar === undefined) return "Which bar, please.";
      if (offers.find((one) => one.now)?.implement === bar) return "That is the bar it has now.";
      const made = attempt("page.with_bar", { log: app.log(lifter), lift, implement: bar });
      return made.refused ? made.refused.message : { parametersChanged: made.answer };
    },
  );
}

/** Everything else that can be written down, one tap each. */
export function writeDownPart(app: App): Child {
  const acts: [string, (app: App) => void][] = [
    ["The morning after", (one) => morningAfter(one)],
    ["A session was missed", missed],
    ["A break", away],
    ["A block begins", (one) => block(one, false)],
    ["A block ends", (one) => block(one, true)],
    ["A clearance", clearance],
    ["What was asked is answered", askAnswered],
    ["The coach signs off", signOff],
    ["The coach decides otherwise", overrule],
    ["A usual level of pain", usualPain],
    ["An everyday test", everydayTest],
    ["Body mass", bodyMass],
  ];
  return el("details", {}, el("summary", {}, "Write down something else"), el("div", { class: "asks" }, acts.map(([label, act]) => button(label, () => act(app), { class: "ask" }))));
}
