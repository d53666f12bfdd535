// The opening view: what does this lifter do today?
import { gateDots } from "./charts.ts";
import { loadedDrawing, sideWords } from "./bar_drawing.ts";
import { button, el, later, type Child } from "./element.ts";
import { caution, list } from "./answer.ts";
import type { App } from "./app.ts";
import type { EndMoves, Face, Handling, LiftToday, Loaded, RackSet, SessionPlan, TodayLine } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import { atLeast, atMostOf, count, dayShort, face, mass, plain, rangeOf, weekday, weekdayName } from "./numbers.ts";
import { barWords, discsOf } from "./kit.ts";
import { finishBox } from "./finish.ts";
import { dayBox, nextLoad, slippedThen } from "./record.ts";
import { goodBox, setBox } from "./set_boxes.ts";
import { setInWords } from "./set_sheet.ts";
import { eachHand, implementOf } from "./setup.ts";
import { dayDoubts } from "./days.ts";
import { limitsOf } from "./limits.ts";
import { morningAfter } from "./write_down.ts";

const MARKS: Record<string, string> = { train: "\u25b6", "ease off": "\u25bd", "technique only": "\u25cb", rest: "\u2013", stop: "\u25a0" };

/** Load, sets, repetitions and reserve of a lift in one line. */
export function liftLine(app: App, lift: LiftToday, lifter = app.lifter): string {
  if (lift.sets === 0) return lift.verdict === "stop" ? "Nothing until this is cleared" : "Leave it out today";
  const load = lift.load ? `${mass(lift.load)}${eachHand(app, lift.lift, lifter)}` : "No load";
  // Lines break between the parts, not inside them.
  const parts = [load, `${lift.sets} \u00d7 ${lift.reps}`, `leave ${plain(lift.reserve, 1)}`];
  return parts.map((part) => part.replaceAll(" ", "\u00a0")).join(" \u00b7 ");
}

const DAYS: Record<string, string> = {
  below: "below the usual",
  below_single: "one sign below the usual",
  within: "within the usual",
  above: "above the usual",
  unknown: "day not asked",
};
export function dayWords(day: string): string {
  return DAYS[day] ?? day;
}

/** Reasons that tell where a lift stands, not why it is eased. */
const STANDS = ["learning_not_done", "holding", "consolidating", "gate_not_open", "move_on_offer", "maintaining", "returning", "rack_not_asked", "asks_not_asked", "effort_not_said", "not_scored"];

/** The reason that says most in one line. */
export function mainReason(line: Pick<TodayLine, "verdict" | "why" | "blockers">): string {
  const quiet = ["clearance_missing", "no_limits_on_record", "day_unknown", "rounded_down", "height_off"];
  // What eases a lift says more than where it stands.
  const eases = line.verdict === "train" ? undefined : line.why.find((one) => !quiet.includes(one.code) && !STANDS.includes(one.code));
  if (eases) return eases.text;
  // An open gate with no step to take is told by what stands in the way.
  const first = line.why.find((one) => !quiet.includes(one.code) && !(one.code === "move_on_offer" && line.blockers.length > 0)) ?? line.blockers.at(-1) ?? line.why[0];
  return first?.text ?? "As planned.";
}

function gatePicture(lift: LiftToday): Child {
  const found = [...lift.gate.missing.map((one) => kindOf(one, "passingSessions")), ...lift.gate.met.map((one) => kindOf(one, "passingSessions"))].find((one) => one !== undefined);
  return found && gateDots(found.have, found.need);
}

export function whyPart(line: TodayLine, lift: LiftToday): HTMLElement {
  return el(
    "div",
    {},
    el("h3", {}, "Why"),
    list(line.why.map((one) => one.text)),
    // Beside a stop nothing is said of the way to a step.
    lift.verdict !== "stop" && gatePart(line, lift),
    line.cautions.map((one) => caution(one.code)),
  );
}

function gatePart(line: TodayLine, lift: LiftToday): Child {
  return [
    el("h3", {}, "The gate"),
    gatePicture(lift),
    line.missing.length > 0
      ? list(line.missing.map((one: string) => `${/^\d+ of /.test(one) ? "So far" : "Still missing:"} ${one}.`))
      : el("p", {}, lift.gate.open ? "Open." : "Nothing is missing from the gate itself."),
    line.changes.length > 0 && [el("h3", {}, "What would change it"), list(line.changes)],
  ];
}

/** Discs that move on each end before a set. */
export function movesInWords(moves: Pick<EndMoves, "off" | "on">): string {
  const said = (words: string, discs: { nominal: Face }[]): string => (discs.length === 0 ? "" : `${words} ${discs.map((disc) => face(disc.nominal)).join(", ")}`);
  return [said("off", moves.off), said("on", moves.on)].filter(Boolean).join("; ");
}

/** The way up to the work sets: what comes off and goes on each end before each of them. */
function warmUp(app: App, lift: LiftToday): Child {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  if (lift.warmUp.length === 0) return undefined;
  if (app.rackKnown(lifter, lift.lift)) return warmUpList(app, lift);
  // The moves come a moment after the load; where they make it of other discs, the card is drawn with those.
  return later(() => {
    const sides = (): string => sideWords(discsOf(loadedNow(app, lift)));
    const before = sides();
    app.rack(lifter, lift.lift);
    if (sides() !== before) setTimeout(() => app.refresh());
    return warmUpList(app, lift);
  });
}

function warmUpList(app: App, lift: LiftToday): Child {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const racked = app.rackKnown(lifter, lift.lift)?.sets ?? [];
  const lines = lift.warmUp.map((set, at) => {
    const moves = racked[at]?.load.kg === set.load.kg ? racked[at].moves : undefined;
    const words = moves === undefined ? "" : movesInWords(moves) || (moves.side.length === 0 ? "the empty bar" : "as it is");
    return el("li", {}, el("b", {}, `${mass(set.load)}${eachHand(app, lift.lift)} \u00d7 ${set.reps}`), [words && ` ${words}`, set.reference ? ", the day\u2019s check" : ""].filter(Boolean).join(""));
  });
  const work = racked[lift.warmUp.length]?.moves;
  return [
    el("p", { class: "soft" }, "Warm up; discs off and on at each end:"),
    el("ol", { class: "so-far warm-up" }, lines, work && el("li", {}, el("b", {}, `then ${mass(work.total)}`), movesInWords(work) ? ` ${movesInWords(work)}` : "")),
    handlingPart(app, racked),
  ];
}

/** In which order the discs of the two ends are handled, so that the bar does not tip. */
function handlingPart(app: App, sets: RackSet[]): Child {
  const { discs } = app.kit().stock;
  const said = (order: Handling[]): string => order.map((one) => `${one.end} ${one.on ? "on" : "off"} ${face(discs[one.kind]?.nominal ?? {})}`).join(", ");
  const lines = sets.flatMap((set) => (set.handling && set.handling.order.length > 0 ? [{ set, ...set.handling }] : []));
  const [first] = lines.toSorted((one, other) => other.mostImbalance.kg - one.mostImbalance.kg);
  return first && el(
    "details",
    { "data-handling": true },
    el("summary", {}, "In which order, end by end"),
    el("p", { class: "soft" }, `The ends in turn: neither is ever more than ${atLeast(first.mostImbalance)} heavier than the other on the way. One end first and then the other would make it ${mass(first.oneEndFirst)}.`),
    el("ol", { class: "so-far" }, lines.map(({ set, order }) => el("li", {}, el("b", {}, mass(set.load)), ` ${said(order)}`))),
  );
}

/** The load of today as it is made on the way up, so that drawing and disc moves agree. */
function loadedNow(app: App, lift: LiftToday): Loaded | undefined {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  if (lift.warmUp.length === 0 || !lift.loaded || !kindOf(lift.loaded.setting, "discs")) return lift.loaded;
  const work = app.rackKnown(lifter, lift.lift)?.sets.at(-1)?.moves;
  if (work === undefined || work.total.kg !== lift.loaded.total.kg || startsLow(app, lift)) return lift.loaded;
  return { ...lift.loaded, setting: { discs: work.side } };
}

/** Whether the height of the bar is part of the lift: it starts from the floor, blocks or pins. */
function startsLow(app: App, lift: LiftToday): boolean {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const set = app.parameters(lifter)?.lifts.find((one) => one.id === lift.lift);
  return set?.startsFrom === "floor" || set?.startsFrom === "pins";
}

/** Where a lift is done: bar, rung, range and tempo, as far as they are set. */
export function placeWords(app: App, lift: LiftToday): string {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const set = app.parameters(lifter)?.lifts.find((one) => one.id === lift.lift);
  const rung = set?.rungs?.[lift.place.rung];
  const range = set?.ranges?.[lift.place.range];
  const tempo = set?.tempos?.[lift.place.tempo];
  const named = [rung && (rung.name ?? rung.id), range && rangeOf(range), tempo && `${plain(tempo.down, 0)} s down, ${plain(tempo.hold, 0)} s hold, ${plain(tempo.up, 0)} s up`].filter((one): one is string => one !== undefined);
  return [barWords(implementOf(app, lift)), ...named].join(" \u00b7 ");
}

/** What a set in which a critical point was not met asks for now, before anything else on the card. */
function slippedPart(app: App, lift: LiftToday): { big: string; why: string; ends: boolean } | undefined {
  const then = slippedThen(app, lift);
  if (then === undefined) return undefined;
  const why = then.why.join(" ");
  if (then.unknown && then.down) return { big: "The next set could not be worked out", why: `${why} Nothing heavier than ${atMostOf(then.down, lift.load)}${eachHand(app, lift.lift)} until that is worked out; to end the lift for today is as good.`, ends: false };
  if (then.ends) return { big: "End this lift for today", why, ends: true };
  if (then.down) return { big: `${mass(then.down)}${eachHand(app, lift.lift)} for the next set`, why, ends: false };
  return { big: then.rung ? `An easier rung: ${then.rung}` : "Shorter set, or an easier rung", why, ends: false };
}

/** Discs of one end as large labelled discs, the innermost first. */
function discChips(loaded: Loaded | undefined): Child {
  const discs = discsOf(loaded);
  if (discs.length === 0) return undefined;
  return el("p", { class: "discs" }, el("span", { class: "soft" }, "Each end "), discs.map((disc) => el("span", { class: "disc-chip" }, face(disc.nominal))));
}

/** Whether all sets of a lift are on the list of this session. */
function listed(app: App, lift: LiftToday): number {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  return app.draft(lifter).filter((one) => one.lift === lift.lift).length;
}

/** What is in the log for today is not asked for a second time. */
function isOver(app: App, lift: LiftToday): boolean {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const place = app.facts(lifter).places.find((one) => one.lift === lift.lift);
  return listed(app, lift) === 0 && place?.lastSession !== undefined && place.lastSession === app.day(lifter);
}

/** One of the other lifts, in one line. */
function liftRow(app: App, lift: LiftToday, line: TodayLine): HTMLElement {
  const sets = listed(app, lift);
  const over = isOver(app, lift);
  return button(
    [
      el("b", {}, app.liftName(lift.lift)),
      el("span", { class: "verdict" }, `${MARKS[line.verdict] ?? ""} ${line.verdict}`),
      el("span", {}, liftLine(app, lift)),
      kindOf(lift.outlook, "onOffer") && !over && sets === 0 && el("span", { class: "soft" }, "a step is on offer"),
      over && el("span", { class: "done", "data-over": true }, "\u2713 done today"),
      !over && sets === 0 && meantFor(app, lift) && el("span", { class: "soft", "data-meant": true }, `planned for ${meantFor(app, lift)}`),
      sets > 0 && el("span", { class: "done" }, `\u2713 ${count(sets, "set")}${lift.sets > 0 ? ` of ${lift.sets}` : ""}`),
    ],
    () => {
      app.kept.open = lift.lift;
      app.refresh();
    },
    { class: lift.verdict === "stop" ? "lift-row stopped" : "lift-row", "data-lift": lift.lift, "data-row": true },
  );
}

export function liftCard(app: App, lift: LiftToday, line: TodayLine): HTMLElement {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const done = app.draft(lifter).filter((one) => one.lift === lift.lift);
  const over = isOver(app, lift);
  const stopped = lift.verdict === "stop";
  const slipped = stopped ? undefined : slippedPart(app, lift);
  const words = liftLine(app, lift);
  const load = lift.sets > 0 && lift.load ? `${mass(lift.load)}${eachHand(app, lift.lift)}`.replaceAll(" ", "\u00a0") : "";
  const next = done.length > 0 && !slipped && lift.load && lift.sets > 0 && nextLoad(app, lift).kg !== lift.load.kg ? nextLoad(app, lift) : undefined;
  return el(
    "article",
    { class: stopped ? "card stopped" : "card now", "data-lift": lift.lift },
    el("header", {}, el("h2", {}, app.liftName(lift.lift)), el("span", { class: "verdict" }, `${MARKS[line.verdict] ?? ""} ${line.verdict}`)),
    lift.sets > 0 && el("p", { class: "place" }, placeWords(app, lift)),
    !over && done.length === 0 && meantFor(app, lift) && el("p", { class: "soft", "data-meant": true }, `Planned for ${meantFor(app, lift)}.`),
    over && el("p", { class: "done", "data-over": true }, "\u2713 Done today and in the log. Next time, as things stand:"),
    slipped && el("div", { class: "slipped-now", role: "status", "data-slipped": lift.lift }, el("p", { class: "big" }, slipped.big), el("p", {}, slipped.why)),
    !slipped && el("p", { class: "big", "data-answer": true }, load ? [el("span", { class: "load" }, load), el("span", { class: "between" }, " \u00b7 "), el("span", { class: "rest" }, words.slice(load.length + 3))] : words),
    !slipped && discChips(loadedNow(app, lift)),
    el("p", { class: "why", "data-why": true }, mainReason(line)),
    next && el("p", { class: "soft" }, `The last set was done with ${mass(next)}${eachHand(app, lift.lift)}.`),
    !slipped && heightOff(line, lift),
    lift.blocks && el("p", { class: "soft" }, `On blocks of ${plain(lift.blocks.mm, 0)} mm under each end.`),
    line.cautions.filter((one) => one.code === "alone_without_pins" && !done.some((set) => set.setup?.company === "spotter" || typeof set.setup?.pins === "number")).map((one) => caution(one.code)),
    lift.sets > 0 &&
      !slipped?.ends &&
      el(
        "div",
        { class: "row" },
        button(over ? "One more set today" : done.length < lift.sets ? `Set ${done.length + 1} of ${lift.sets}` : "One more set", () => setBox(app, lift, done.length), { "data-act": "set", ...(done.length > 0 && done.length < lift.sets ? { class: "main" } : {}) }),
        done.length === 0 &&
          !over &&
          lift.load &&
          button(`Done: ${lift.sets} \u00d7 ${lift.reps}, all good`, () => goodBox(app, lift), { class: "main", "data-act": "all-good" }),
      ),
    offer(app, lift),
    done.length > 0 && el("p", { class: "done", role: "status" }, `\u2713 ${count(done.length, "set")} on the list of this session.`),
    done.length > 0 && el("ol", { class: "so-far" }, done.map((one) => el("li", {}, setInWords(one.set, eachHand(app, one.lift))))),
    done.length === 0 && warmUp(app, lift),
    !slipped && lift.loaded && loadedDrawing(loadedNow(app, lift) ?? lift.loaded, app.kit().stock, barWords(implementOf(app, lift)), { height: startsLow(app, lift), blocks: lift.blocks?.mm }),
    el("details", {}, el("summary", {}, "Why, and what is missing"), whyPart(line, lift)),
  );
}

/** A bar that lies off its height is said beside the load, with the blocks that bring it back. */
function heightOff(line: TodayLine, lift: LiftToday): Child {
  const told = line.why.find((one) => one.code === "height_off");
  const mm = lift.reasons.map((one) => kindOf(one, "heightOff")).find((one) => one !== undefined)?.mm;
  if (!told || mm === undefined) return undefined;
  const lower = mm < 0 ? ` Blocks of ${plain(-mm, 0)} mm under each end bring it back. Without them this is a longer range than the lift\u2019s own: leave the lift out where something is sore.` : "";
  return el("p", { class: "caution", "data-height-off": plain(mm, 0) }, el("b", {}, "Height. "), `${told.text}${lower}`);
}

/** On which days a lift is meant, where that is not today; nothing where it is. */
function meantFor(app: App, lift: LiftToday): string | undefined {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const days = app.plan(lifter).lifts.find((one) => one.lift === lift.lift)?.days ?? [];
  return days.length === 0 || days.includes(weekday(app.day(lifter))) ? undefined : days.map(weekdayName).join(", ");
}

/** Which lift stands open: the one tapped, else the first that still has sets to do, those meant for today first. */
function openLift(app: App, lifts: LiftToday[]): string | undefined {
  if (lifts.some((lift) => lift.lift === app.kept.open)) return app.kept.open as string;
  const still = lifts.filter((lift) => lift.sets > 0 && !isOver(app, lift) && listed(app, lift) < lift.sets);
  const left = still.find((lift) => listed(app, lift) > 0 || meantFor(app, lift) === undefined) ?? still[0];
  const going = lifts.some((lift) => listed(app, lift) > 0);
  // Everything is on the list: nothing is left to stand open.
  return (left ?? (going ? undefined : lifts[0]))?.lift;
}

/** What still waits for an answer: the morning after the last session, and the day's questions. */
function waiting(app: App, session: SessionPlan): Child {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const { morning } = app.facts(lifter);
  const open = morning && morning.day < session.today ? morning : undefined;
  const day = session.day === "unknown";
  if (!open && !day) return undefined;
  return el(
    "section",
    { class: "strip", "aria-label": "Still to be answered" },
    open &&
      el(
        "div",
        { class: "strip-line", "data-morning": open.session },
        el("p", {}, `The morning after ${dayShort(open.day)}: more pain in a joint, a tendon or the spine than before?`),
        el(
          "div",
          { class: "row" },
          button("No more", () => void app.record(lifter, { nextDayReport: { session: open.session, pain: [] } }).then(() => app.refresh()), { "data-act": "morning-no" }),
          button("More pain", () => morningAfter(app, open, "yes"), { "data-act": "morning-yes" }),
        ),
      ),
    day && el("div", { class: "strip-line" }, el("p", {}, "How the day is was not asked yet."), button("The day\u2019s questions", () => dayBox(app), { "data-act": "day" })),
  );
}

function draftBar(app: App): Child {
  const lifter = app.lifter;
  const sets = lifter ? app.draft(lifter) : [];
  const last = sets.at(-1);
  if (!lifter || !last) return undefined;
  const place = sets.filter((one) => one.lift === last.lift).length;
  const begun = app.draftDay(lifter);
  return el(
    "div",
    { class: "draft", role: "region", "aria-label": "Session going on" },
    el("p", {}, `Going on: ${count(sets.length, "set")}.${begun && begun !== app.day(lifter) ? ` Begun on ${dayShort(begun)}.` : ""}`),
    el(
      "div",
      { class: "row" },
      button(
        `Undo ${app.liftName(last.lift)} set ${place}`,
        () => app.addDraft(lifter, [{ undo: true }], last),
        { "data-act": "undo-set" },
      ),
      button("Finish session", () => finishBox(app), { class: "main", "data-act": "finish" }),
    ),
  );
}

/** A step that is on offer, on the card of its lift. */
function offer(app: App, lift: LiftToday): Child {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const offered = kindOf(lift.outlook, "onOffer");
  if (!offered || listed(app, lift) > 0) return undefined;
  return el(
    "section",
    { class: "offer", "aria-label": "A step is on offer", "data-offer": lift.lift },
    el("p", {}, el("b", {}, `A step is on offer: ${mass(offered.to.work.load)}${eachHand(app, lift.lift)}, if the coach wants it. `), "The gate is open. Staying is as good; nobody has to add weight today."),
    el(
      "div",
      { class: "row" },
      button("Stay for now", () => void app.record(lifter, { advanceDeclined: { lift: lift.lift, who: "coach" } }).then(() => app.refresh()), {}),
      button("Take the step", () => void (app.dayTurned() || app.record(lifter, { advanceAccepted: { lift: lift.lift, who: "coach" } }).then(() => app.refresh())), {}),
    ),
  );
}

export function todayView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return welcome(app);
  const found = app.today(lifter);
  if (found.refused || !found.answer) {
    const stopped = app.stops(lifter).lines.length > 0;
    return [
      el("h1", { tabindex: -1 }, "Today"),
      el("p", { class: "big", "data-answer": true }, stopped ? "Stopped: nothing is lifted" : "No session can be worked out"),
      el("p", { class: "why", "data-why": true }, found.refused?.message ?? ""),
      lifter.damage && button("Look, and decide: under Files", () => app.go("files"), { "data-act": "look-damage" }),
      button("Log and corrections", () => app.go("log")),
      draftBar(app),
    ];
  }
  const { session, lines, cautions } = found.answer;
  const open = openLift(app, session.lifts);
  return [
    el(
      "div",
      { class: "head" },
      el("h1", { tabindex: -1 }, "Today"),
      el("p", { class: "soft" }, `${dayShort(session.today)} \u00b7 ${dayWords(session.day)}`),
      session.day !== "unknown" && button("The day\u2019s questions", () => dayBox(app), { "data-act": "day" }),
      button("Plan and lifts", () => app.go("plan"), { "data-act": "plan" }),
    ),
    dayDoubts(app, lifter),
    limitsOf(app).length > 0 && el("p", { class: "caution", "data-limits": true }, el("b", {}, "Limits. "), `${limitsOf(app).join("; ")}.`),
    waiting(app, session),
    el("div", { class: "lifts" }, session.lifts.map((lift, at) => (lift.lift === open ? liftCard : liftRow)(app, lift, lines[at] as TodayLine))),
    session.lifts.some((lift) => lift.sets > 0) && open === undefined && session.lifts.every((lift) => lift.verdict !== "stop") && el("p", { class: "done", "data-answer": true }, "Every planned set is on the list. Finish the session below."),
    session.lifts.length === 0 && el("p", {}, "No lift is planned."),
    el("details", { class: "notes" }, el("summary", {}, "Notes beside every answer"), cautions.map((one) => el("p", { class: "caution" }, one.text))),
    draftBar(app),
  ];
}

export function welcome(app: App): Child {
  if (app.store.unread)
    return [
      el("h1", { tabindex: -1 }, "What is kept here was not read"),
      el("p", { class: "big", "data-answer": true }, "Nobody is shown, and no load"),
      el("p", { class: "why", "data-why": true }, "The storage of this device does not answer. Whoever is kept on it may be stopped or limited: go by what is known of them, not by this page. Close other windows of this page, then open it anew. What is entered until then is kept in this window only."),
      el("div", { class: "stack" }, button("Begin with somebody new", () => app.go("begin"), { "data-act": "begin" }), button("Open a file", () => app.go("files"), { "data-act": "open" })),
    ];
  return [
    el("h1", { tabindex: -1 }, "What does the lifter do today?"),
    el("p", { class: "big", "data-answer": true }, "No lifter here yet"),
    el("p", { class: "why", "data-why": true }, "Everything stays on this device; the page talks to nobody."),
    el(
      "div",
      { class: "stack" },
      button("Try the invented lifter", () => app.go("demo"), { class: "main", "data-act": "demo" }),
      button("Begin with somebody new", () => app.go("begin"), { "data-act": "begin" }),
      button("Open a file", () => app.go("files"), { "data-act": "open" }),
    ),
    el("p", { class: "soft" }, "The sums for bar and discs work without a lifter: see Questions."),
  ];
}
