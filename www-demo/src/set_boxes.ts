// A set and all sets of a lift, written down in a few taps; the sheet follows what another window records meanwhile.
import type { App, DraftSet } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, choices, el, fill } from "./element.ts";
import type { Criterion, LiftToday, Place, WorkSet } from "bismar-page-package";
import { dayLong, deviceDay, loadOfDay, mass } from "./numbers.ts";
import { nextLoad, slippedThen, stands } from "./record.ts";
import { doubts, setInWords, sheet, type SetFacts } from "./set_sheet.ts";
import { eachHand, loadOf, overTheBody, setupEvent, setupFields, type Setup } from "./setup.ts";

function criteria(app: App, lift: string): Criterion[] {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return parameters?.lifts.find((one) => one.id === lift)?.criteria ?? [];
}

function setEvent(facts: SetFacts): WorkSet {
  const marks =
    facts.good === undefined
      ? undefined
      : {
          reps: facts.reps,
          acceptable: facts.good,
          ...(facts.good < facts.reps && facts.first !== undefined ? { firstFailingRep: facts.first } : {}),
          marks: Object.entries(facts.marks).map(([criterion, mark]) => ({ criterion, mark })),
          rater: "coach" as const,
        };
  return {
    load: facts.load,
    reps: facts.reps,
    ...(facts.reserve === undefined ? {} : { effort: { rir: facts.reserve } }),
    ...(facts.velocity === undefined ? {} : { velocity: facts.velocity }),
    ...(marks ? { marks } : {}),
  };
}

/** What was said of the setup of this lift earlier in the session. */
function setupBefore(app: App, lift: string): Setup {
  const lifter = app.lifter;
  const sets = lifter ? app.draft(lifter) : [];
  const before = sets.findLast((one) => one.lift === lift)?.setup;
  // Who is there stays for the session; the pins are those of the lift.
  return { company: before?.company ?? sets.findLast((one) => one.setup?.company)?.setup?.company, pins: before?.pins };
}

/** Where the set is done, unless that is the granted place. */
function placeEvent(lift: LiftToday): Place | undefined {
  const [place, granted] = [lift.place, lift.granted.place];
  return place.rung === granted.rung && place.range === granted.range && place.tempo === granted.tempo ? undefined : place;
}

function draftEntry(lift: LiftToday, facts: SetFacts): DraftSet {
  const [place, setup] = [placeEvent(lift), setupEvent(facts.setup)];
  return { lift: lift.lift, set: setEvent(facts), reserve: Number(lift.reserve), ...(place ? { place } : {}), ...(facts.cue ? { cue: facts.cue } : {}), ...(setup ? { setup } : {}) };
}

/** Words for a box that was opened on another day; a set that was lifted is saved all the same. */
function turnedSince(opened: string): string[] {
  const now = deviceDay();
  return now === opened ? [] : [`The day has changed since this was opened: it is ${dayLong(now)} now, and today\u2019s load is worked out anew. Look at it first, unless this was lifted already.`];
}

/** A lift as it stands today by the log as it is now. */
function liftNow(app: App, id: string, lift: string): LiftToday | undefined {
  const lifter = app.store.lifter(id);
  return lifter && app.today(lifter).answer?.session.lifts.find((one) => one.lift === lift);
}

/** One set: load, repetitions, which slipped, what was seen, how much was left. */
export function setBox(app: App, lift: LiftToday, number: number): void {
  const lifter = app.lifter;
  if (!lifter || app.dayTurned()) return;
  const opened = deviceDay();
  const own = criteria(app, lift.lift);
  const done = app.draft(lifter).filter((one) => one.lift === lift.lift);
  // What was entered before pain was told stands here again; its load only where that is still today's or less.
  const half = app.half?.of === lifter.id && app.half.lift === lift.lift && app.half.number === number ? app.half.facts : undefined;
  app.half = undefined;
  const next = nextLoad(app, lift);
  const facts: SetFacts = half ? { ...half, load: half.load.kg > next.kg ? next : half.load } : {
    load: next,
    reps: lift.reps,
    good: undefined,
    first: undefined,
    reserve: undefined,
    // Nothing is taken as seen until somebody says so.
    marks: Object.fromEntries(own.map((one) => [one.id, "not_seen" as const])),
    cue: "",
    setup: setupBefore(app, lift.lift),
  };
  // What was asked about an earlier set of this lift is not asked again.
  const before = done.at(-1)?.set.load;
  const settled = done.length > 0 ? doubts(app, lift, { ...facts, load: before && stands(lift, before) ? before : facts.load }) : [];
  const far = done.map((one, at) => `Set ${at + 1}: ${setInWords(one.set, eachHand(app, one.lift))}`);
  // One step lighter was offered by the page itself.
  if (slippedThen(app, lift)?.down) settled.push(...doubts(app, lift, facts));
  sheet(app, `${app.liftName(lift.lift)}: set ${number + 1}${number < lift.sets ? ` of ${lift.sets}` : ""}`, facts, own, (given, _wrong, close) => {
    close();
    app.addDraft(lifter, [draftEntry(liftNow(app, lifter.id, lift.lift) ?? lift, given)]);
  }, lift, {
    far,
    hand: eachHand(app, lift.lift),
    settled,
    begun: half !== undefined,
    half: (facts) => void (app.half = { of: lifter.id, lift: lift.lift, number, facts }),
    turned: () => turnedSince(opened),
    now: () => {
      const now = liftNow(app, lifter.id, lift.lift);
      return now && { lift: now, load: nextLoad(app, now) };
    },
  });
}

/** Every planned set as it should be: whether it was watched and how much was left are asked, not taken. */
export function goodBox(app: App, planned: LiftToday): void {
  const lifter = app.lifter;
  if (!lifter || app.dayTurned()) return;
  const opened = deviceDay();
  let lift = planned;
  let lighter: string[] = [];
  const own = criteria(app, lift.lift);
  const box = el("dialog", { class: "pad wide", "aria-label": `${app.liftName(lift.lift)}: all sets` });
  const setup = setupBefore(app, lift.lift);
  const setupKnown = setup.company !== undefined || setup.pins !== undefined;
  let watched: "yes" | "no" | undefined;
  let reserve: number | "not_asked" | undefined;
  let asking: string[] = [];
  const redraw = (): void => {
    asking = [];
    draw();
  };
  const close = (words: string): void => {
    entry.close();
    app.say(words);
  };
  /** Another window may have written what makes today's work another. */
  const follow = (): boolean => {
    const now = liftNow(app, lifter.id, lift.lift);
    const [was, load] = [lift.load ?? lift.limit, now && (now.load ?? now.limit)];
    if (!now || !load || (load.kg === was.kg && now.sets === lift.sets && now.reps === lift.reps)) return false;
    lift = now;
    lighter = [`It is ${now.sets} \u00d7 ${now.reps} with ${loadOf(app, lift.lift, load)} now: something was written down since this was opened, when it was ${mass(was)}. Sets that were lifted before that are saved one by one.`];
    if (now.sets === 0) close(`Not saved: ${app.liftName(lift.lift)} is left out now, by something written down since. Sets that were lifted before that go into the log one by one.`);
    else redraw();
    return true;
  };
  box.addEventListener("less", () => follow());
  const lacks = (): string | undefined => (watched === undefined ? "Watched or not, please." : reserve === undefined ? "How much was left, please; \u201cnot asked\u201d is an answer." : undefined);
  const save = (): void => {
    const turned = turnedSince(opened);
    // Over midnight the day itself is what changed, and that is asked about.
    if (turned.length === 0 && follow()) return;
    const facts: SetFacts = {
      load: lift.load ?? lift.limit,
      reps: lift.reps,
      good: watched === "yes" ? lift.reps : undefined,
      first: undefined,
      reserve: typeof reserve === "number" ? reserve : undefined,
      marks: Object.fromEntries(own.map((one) => [one.id, "met" as const])),
      cue: "",
      setup,
    };
    const open = [...lighter, ...turned, ...doubts(app, lift, facts)];
    if (open.length > 0 && asking.length === 0) {
      asking = open;
      draw();
      return;
    }
    entry.close();
    app.kept.open = undefined;
    app.addDraft(lifter, Array.from({ length: lift.sets }, () => draftEntry(lift, facts)));
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, `${app.liftName(lift.lift)}: ${lift.sets} \u00d7 ${lift.reps} with ${loadOfDay(lift)}${eachHand(app, lift.lift)}`),
      asking.length === 0 && lighter.map((one) => el("p", { class: "caution", role: "alert", "data-lighter": true }, one)),
      choices("Was it watched?", [{ value: "yes", label: own.length > 0 ? "Watched: all points met" : "Watched: all good" }, { value: "no", label: "Not watched" }], watched, (value) => {
        watched = value as typeof watched;
        redraw();
      }),
      choices<number | string>("Left in reserve, in the hardest set", [...[0, 1, 2, 3, 4, 5].map((value) => ({ value, label: String(value) })), { value: "not_asked", label: "Not asked" }], reserve, (value) => {
        reserve = value as typeof reserve;
        redraw();
      }),
      overTheBody(app, lift.lift) && !setupKnown && setupFields(setup, redraw),
      asking.length > 0 && el("div", { class: "asking", role: "alert" }, el("p", {}, el("b", {}, "Is that right?")), asking.map((one) => el("p", {}, one))),
      lacks() && el("p", { class: "soft" }, lacks() ?? ""),
      el(
        "div",
        { class: "row" },
        button("Cancel", () => entry.close(), { class: "quiet" }),
        button(asking.length > 0 ? "Yes, save it so" : "Save", save, { class: "main", "data-act": "save-good", disabled: lacks() !== undefined }),
      ),
    );
  draw();
  const entry = showEntry(box);
}
