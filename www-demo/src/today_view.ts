// The opening view: what does this lifter do today?
import { gateDots } from "./charts.ts";
import { loadedDrawing } from "./bar_drawing.ts";
import { button, el, type Child } from "./element.ts";
import { caution, list } from "./answer.ts";
import type { App } from "./app.ts";
import type { Tree } from "./engine.ts";
import { count, dayShort, mass, plain } from "./numbers.ts";
import { finishBox, goodSets, setBox, dayBox } from "./record.ts";

const MARKS: Record<string, string> = { train: "\u25b6", "ease off": "\u25bd", "technique only": "\u25cb", rest: "\u2013", stop: "\u25a0" };

/** Load, sets, repetitions and reserve of a lift in one line. */
export function liftLine(lift: Tree): string {
  if (lift.sets === 0) return lift.verdict === "stop" ? "Nothing until this is cleared" : "Leave it out today";
  const load = lift.load ? mass(lift.load) : "No load";
  // Lines break between the parts, not inside them.
  const parts = [load, `${lift.sets} \u00d7 ${lift.reps}`, `leave ${plain(lift.reserve, 1)}`];
  return parts.map((part) => part.replaceAll(" ", "\u00a0")).join(" \u00b7 ");
}

const DAYS: Record<string, string> = {
  bad_agreeing: "a bad day by agreeing signs",
  bad_single: "one sign of a bad day",
  ordinary: "an ordinary day",
  good: "a good day",
  unknown: "not asked how the day is",
};
export function dayWords(day: string): string {
  return DAYS[day] ?? day;
}

/** The reason that says most in one line. */
export function mainReason(line: Tree): string {
  const quiet = ["clearance_missing", "no_limits_on_record", "day_unknown", "rounded_down"];
  // An open gate with no step to take is told by what stands in the way.
  const first = line.why.find((one: Tree) => !quiet.includes(one.code) && !(one.code === "move_on_offer" && line.blockers.length > 0)) ?? line.blockers.at(-1) ?? line.why[0];
  return first?.text ?? "As planned.";
}

function gatePicture(lift: Tree): Child {
  for (const [kind, body] of [...lift.gate.missing, ...lift.gate.met].flatMap((one: Tree) => Object.entries(one)) as [string, Tree][]) {
    if (kind === "passingSessions") return gateDots(body.have, body.need);
  }
  return undefined;
}

export function whyPart(line: Tree, lift: Tree): HTMLElement {
  return el(
    "div",
    {},
    el("h3", {}, "Why"),
    list(line.why.map((one: Tree) => one.text)),
    el("h3", {}, "The gate"),
    gatePicture(lift),
    line.missing.length > 0
      ? list(line.missing.map((one: string) => `${/^\d+ of /.test(one) ? "So far" : "Still missing:"} ${one}.`))
      : el("p", {}, lift.gate.open ? "Open." : "Nothing is missing from the gate itself."),
    line.changes.length > 0 && [el("h3", {}, "What would change it"), list(line.changes)],
    lift.evidence.length > 0 && el("p", { class: "soft" }, `The gate counts sessions number ${lift.evidence.join(", ")}.`),
    line.cautions.map((one: Tree) => caution(one.code)),
  );
}

function warmUp(lift: Tree): Child {
  if (lift.warmUp.length === 0) return undefined;
  const sets = lift.warmUp.map((set: Tree) => `${mass(set.load)} \u00d7 ${set.reps}${set.reference ? " (the day's check)" : ""}`);
  return el("p", { class: "soft" }, `Warm up: ${sets.join(", then ")}.`);
}

export function liftCard(app: App, lift: Tree, line: Tree): HTMLElement {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  const done = app.draft(lifter).filter((one) => one.lift === lift.lift);
  const place = app.facts(lifter).places.find((one: Tree) => one.lift === lift.lift);
  // What is in the log for today is not asked for a second time.
  const over = done.length === 0 && place?.lastSession !== undefined && place.lastSession === app.day(lifter);
  const stopped = lift.verdict === "stop";
  return el(
    "article",
    { class: stopped ? "card stopped" : "card", "data-lift": lift.lift },
    el("header", {}, el("h2", {}, app.liftName(lift.lift)), el("span", { class: "verdict" }, `${MARKS[line.verdict] ?? ""} ${line.verdict}`)),
    over && el("p", { class: "done", "data-over": true }, "\u2713 Done today and in the log. Next time, as things stand:"),
    el("p", { class: "big", "data-answer": true }, liftLine(lift)),
    el("p", { class: "why", "data-why": true }, mainReason(line)),
    lift.loaded && loadedDrawing(lift.loaded, app.kit().stock),
    lift.blocks && el("p", { class: "soft" }, `On blocks of ${plain(lift.blocks.mm, 0)} mm under each end.`),
    warmUp(lift),
    line.cautions.filter((one: Tree) => one.code === "alone_without_pins").map((one: Tree) => caution(one.code)),
    lift.sets > 0 &&
      el(
        "div",
        { class: "row" },
        done.length === 0 &&
          !over &&
          lift.load &&
          button(`Done: ${lift.sets} \u00d7 ${lift.reps}, all good`, () => goodSets(app, lift), { class: "main", "data-act": "all-good" }),
        button(over ? "One more set today" : done.length === 0 ? "Set by set" : "Next set", () => setBox(app, lift, done.length), { "data-act": "set" }),
      ),
    done.length > 0 && el("p", { class: "done", role: "status" }, `\u2713 ${count(done.length, "set")} on the list of this session.`),
    el("details", {}, el("summary", {}, "Why, and what is missing"), whyPart(line, lift)),
  );
}

function draftBar(app: App): Child {
  const lifter = app.lifter;
  const sets = lifter ? app.draft(lifter) : [];
  if (!lifter || sets.length === 0) return undefined;
  return el(
    "div",
    { class: "draft", role: "region", "aria-label": "Session going on" },
    el("p", {}, `Going on: ${count(sets.length, "set")}.`),
    el(
      "div",
      { class: "row" },
      button(
        "Undo last set",
        () => app.addDraft(lifter, [{ undo: true }]),
        { "data-act": "undo-set" },
      ),
      button("Finish session", () => finishBox(app), { class: "main", "data-act": "finish" }),
    ),
  );
}

function offers(app: App, today: Tree): Child {
  const lifter = app.lifter as NonNullable<App["lifter"]>;
  return today.session.lifts
    .filter((lift: Tree) => lift.outlook.onOffer)
    .map((lift: Tree) =>
      el(
        "article",
        { class: "card offer" },
        el("h2", {}, `${app.liftName(lift.lift)}: a step is on offer`),
        el("p", { class: "big" }, `${mass(lift.outlook.onOffer.to.work.load)}, if the coach wants it`),
        el("p", { class: "why" }, "The gate is open. Staying is as good; nobody has to add weight today."),
        el(
          "div",
          { class: "row" },
          button("Stay for now", () => void app.record(lifter, { advance_declined: { lift: lift.lift, who: "coach" } }).then(() => app.refresh()), {}),
          button("Take the step", () => void app.record(lifter, { advance_accepted: { lift: lift.lift, who: "coach" } }).then(() => app.refresh()), {}),
        ),
      ),
    );
}

export function todayView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return welcome(app);
  const found = app.today(lifter);
  if (found.refused || !found.answer) {
    return [
      el("h1", { tabindex: -1 }, "Today"),
      el("p", { class: "big", "data-answer": true }, "No session can be worked out"),
      el("p", { class: "why", "data-why": true }, found.refused?.message ?? ""),
      button("Log and corrections", () => app.go("log")),
    ];
  }
  const { session, lines, cautions, stop } = found.answer;
  const stopped = session.lifts.length > 0 && session.lifts.every((lift: Tree) => lift.verdict === "stop");
  return [
    el(
      "div",
      { class: "head" },
      el("h1", { tabindex: -1 }, "Today"),
      el("p", { class: "soft" }, `${dayShort(session.today)} \u00b7 ${dayWords(session.day)}`),
      button("The day\u2019s questions", () => dayBox(app), { "data-act": "day" }),
      button("Plan and lifts", () => app.go("plan"), { "data-act": "plan" }),
    ),
    app.clockBehind(lifter) && el("p", { class: "caution" }, "The log has a later day than this device. Look at the device\u2019s date."),
    stop.map((words) => el("p", { class: "caution" }, words)),
    stopped && button("A clearance, then the coach\u2019s sign-off: write them down", () => app.go("log"), {}),
    offers(app, found.answer),
    el("div", { class: "cards" }, session.lifts.map((lift: Tree, at: number) => liftCard(app, lift, lines[at]))),
    session.lifts.length === 0 && el("p", {}, "No lift is planned."),
    el("details", { class: "notes" }, el("summary", {}, "Notes beside every answer"), cautions.map((one) => el("p", { class: "caution" }, one.text))),
    draftBar(app),
  ];
}

export function welcome(app: App): Child {
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
