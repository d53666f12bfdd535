// Several lifters: who is next on which bar; somebody new; the invented one.
import type { App } from "./app.ts";
import { button, choices, el, later, type Child } from "./element.ts";
import type { LiftToday, NextSet, WorkSet } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import type { StoredLog } from "./kept.ts";
import { sideWords } from "./bar_drawing.ts";
import { barWords, firstBars, firstLifts, implementName, offerWords } from "./kit.ts";
import { deviceDay } from "./numbers.ts";
import { standsUnder } from "./limits.ts";
import { sameName, shownName } from "./names.ts";
import { slippedThen } from "./record.ts";
import { fewestMoves } from "./sharing.ts";
import { liftLine } from "./today_view.ts";
import demoLog from "demo-log.txt";
import demoPlan from "demo-plan.txt";

interface Next {
  id: string;
  /** Work sets of this lift that are on the list of the session going on. */
  done: number;
  bar: string;
  lift: LiftToday | undefined;
  words: string;
  /** Under what the lifter trains: limits, a clearance that is missing or over, a day that was not asked about. */
  under?: string;
}

function nextLift(app: App, id: string): Next {
  const lifter = app.store.lifter(id);
  if (!lifter) return { id, bar: "", lift: undefined, done: 0, words: "" };
  const [stop] = app.stops(lifter).lines;
  if (stop !== undefined) return { id, bar: STOPPED, lift: undefined, done: 0, words: `\u2b23 ${stop}` };
  const found = app.today(lifter);
  if (!found.answer) return { id, bar: "", lift: undefined, done: 0, words: found.refused?.message ?? "" };
  const sets = app.draft(lifter);
  const of = (one: LiftToday): WorkSet[] => sets.filter((set) => set.lift === one.lift).map((set) => set.set);
  /** What the rules say after the sets on the list; nothing where there are none. */
  const after = (one: LiftToday): NextSet | undefined => (of(one).length > 0 ? app.afterSets(lifter, one.lift, of(one)).answer?.next : undefined);
  // A session that is in the log is over.
  const inLog = (one: LiftToday): boolean => of(one).length === 0 && app.facts(lifter).places.find((place) => place.lift === one.lift)?.lastSession === app.day(lifter);
  const over = (one: LiftToday): boolean => inLog(one) || after(one)?.then === "stop";
  const left = found.answer.session.lifts.filter((one) => one.sets > 0 && !over(one));
  // In the middle of a lift nobody is sent to the next bar.
  const planned = left.find((one) => one.lift === sets.at(-1)?.lift) ?? left[0];
  // Where something slipped the next set is another; it is that of the lifter's own Today.
  const next = planned && slippedThen(app, planned, lifter) && after(planned);
  const rung = next && kindOf(next.then, "easierRung");
  const lift: LiftToday | undefined = planned && { ...planned, ...(next?.work ? { load: next.work.load, loaded: next.work.loaded } : {}) };
  const under = standsUnder(app, lifter).join(" ");
  if (!lift) return { id, bar: "", lift: undefined, done: 0, under, words: sets.length > 0 || found.answer.session.lifts.some(over) ? "done for today" : "nothing to lift today" };
  const discs = lift.loaded && kindOf(lift.loaded.setting, "discs");
  const ends = discs === undefined ? "" : discs.length === 0 ? ", the empty bar" : `, each end ${sideWords(discs)}`;
  const bar = app.parameters(lifter)?.lifts.find((one) => one.id === lift.lift)?.implement ?? "";
  const done = of(lift).length;
  return { id, bar, lift, done, under, words: `${app.liftName(lift.lift, lifter)}${rung === undefined ? "" : `, on the easier rung ${rung}`}, set ${done + 1} of ${lift.sets}: ${liftLine(app, lift, lifter)}${ends}` };
}

/** Where the list names those who are stopped; no bar has this name, since names hold no such sign. */
const STOPPED = "\u2b23";

export function liftersView(app: App): Child {
  const all = app.store.ids().map((id) => nextLift(app, id));
  const bars = [...new Set(all.map((one) => one.bar))].toSorted((one, other) => (one === STOPPED ? -1 : other === STOPPED ? 1 : one < other ? -1 : 1));
  // Lifters bring their own lists of bars: the first that names this one.
  const barNamed = (name: string): string => {
    const own = app.store.ids().flatMap((id) => { const lifter = app.store.lifter(id); return lifter ? (app.parameters(lifter)?.implements ?? []) : []; });
    const found = own.find((one) => implementName(one) === name);
    return found ? barWords(found) : name;
  };
  const order = (one: Next, other: Next): number => (one.lift?.load?.kg ?? 0) - (other.lift?.load?.kg ?? 0);
  return [
    el("h1", { tabindex: -1 }, "Lifters"),
    all.length === 0 && el("p", { class: "big", "data-answer": true }, "Nobody is here yet"),
    bars.map((bar) =>
      el(
        "section",
        {},
        el("h2", {}, bar === STOPPED ? "Stopped" : bar === "" ? "Not waiting for a bar" : `Next on ${barNamed(bar)}, lightest first`),
        bar !== STOPPED && bar !== "" && later(() => fewestMoves(app, all.filter((one) => one.bar === bar).toSorted(order).flatMap((one) => (one.lift ? [{ id: one.id, lift: one.lift.lift, done: one.done }] : [])))),
        el(
          "ol",
          { class: "people" },
          all
            .filter((one) => one.bar === bar)
            .toSorted(order)
            .map((one) =>
              el("li", {}, button([el("b", {}, shownName(one.id)), el("span", {}, one.words), one.under && el("span", { class: "soft", "data-under": true }, one.under)], () => void app.choose(one.id), { "data-lifter": one.id, ...(one.id === app.current ? { "aria-current": "true" } : {}) })),
            ),
        ),
      ),
    ),
    el(
      "div",
      { class: "stack" },
      app.lifter && button(`Plan and lifts of ${shownName(app.lifter.id)}`, () => app.go("plan"), { "data-act": "plan" }),
      button("Begin with somebody new", () => app.go("begin"), { "data-act": "begin" }),
      button("Open a file", () => app.go("files")),
      !app.store.ids().includes("invented-lifter") && button("Try the invented lifter", () => void loadDemo(app), { "data-act": "demo" }),
    ),
  ];
}

/** The invented lifter; who is here already is only brought into view. */
export async function loadDemo(app: App): Promise<void> {
  const log = JSON.parse(demoLog) as StoredLog;
  const events = log.events.map((event) => JSON.stringify(event));
  const { id } = log.lifter;
  if (app.store.lifter(id)) return app.choose(id);
  await app.arrive(id, app.store.put({ id, header: JSON.stringify(log.lifter), plan: JSON.stringify(JSON.parse(demoPlan)), version: log.version }, events, [], "the demo was opened again"));
}

export function beginView(app: App): Child {
  const name = el("input", { type: "text", id: "name", maxlength: 40, autocomplete: "off", required: true });
  const born = el("input", { type: "date", id: "born", autocomplete: "off" });
  const cleared = el("input", { type: "text", id: "cleared", maxlength: 60, autocomplete: "off" });
  const chosen = (app.kept.lifts as string[] | undefined) ?? ["box squat", "seated press", "supported row"];
  const kit = app.gymKit();
  const bars = (app.kept.bars as Record<string, string> | undefined) ?? {};
  // The lightest right bar unless the coach says otherwise.
  const offered = firstLifts().filter((lift) => chosen.includes(lift)).map((lift) => {
    const offers = firstBars(lift, kit);
    return { lift, offers, offer: offers.find((one) => one.implement === bars[lift]) ?? offers[0] };
  });
  name.value = String(app.kept.name ?? "");
  born.value = String(app.kept.born ?? "");
  cleared.value = String(app.kept.cleared ?? "");
  const keep = (): void => {
    app.kept = { ...app.kept, name: name.value, born: born.value, cleared: cleared.value };
  };
  const wrong = el("p", { class: "wrong", role: "alert" });
  const begin = (): void => {
    const id = name.value.trim();
    if (id === "" || [...app.store.ids(), ...app.store.unreadable.keys()].some((other) => sameName(other, id))) {
      wrong.textContent = id === "" ? "A name, or any sign to know the lifter by." : "Somebody with this name is here already.";
      name.focus();
      return;
    }
    const barless = offered.filter((one) => one.offer === undefined).map((one) => one.lift);
    if (barless.length > 0) {
      wrong.textContent = `No bar of this gym is right for: ${barless.join(", ")}. The bars stand under Gym.`;
      return;
    }
    const lifts = offered.map(({ lift, offer }) => ({ lift, implement: offer?.implement, load: offer?.load }));
    const day = deviceDay();
    const made = attempt("page.begin", {
      lifter: { id, ...(born.value ? { born: born.value } : {}) },
      day,
      lifts,
      implements: kit.implements,
      stock: kit.stock,
      blocks: kit.blocks ?? [],
      ...(cleared.value.trim() ? { clearedBy: cleared.value.trim() } : {}),
    });
    if (made.refused) {
      wrong.textContent = made.refused.message;
      return;
    }
    const log = JSON.parse(made.answer.log) as StoredLog;
    const events = log.events.map((event) => JSON.stringify(event));
    void app.arrive(id, app.store.put({ id, header: JSON.stringify(log.lifter), plan: made.answer.plan, version: log.version }, events, [], "begun anew"));
  };
  return [
    el("h1", { tabindex: -1 }, "Somebody new"),
    el("p", { class: "caution" }, el("b", {}, "Note. "), ask("page.explain", { code: "ask_before_starting" })),
    el("div", { class: "field" }, el("label", { for: "name", class: "label" }, "Name or sign"), name),
    el("div", { class: "field" }, el("label", { for: "born", class: "label" }, "Born (may stay empty; breaks count more from 70 on)"), born),
    el("div", { class: "field" }, el("label", { for: "cleared", class: "label" }, "Who said that training may begin (may stay empty; no step up without)"), cleared),
    el(
      "div",
      { class: "field" },
      el("span", { class: "label" }, "Lifts; each starts with the lightest load at its height"),
      el("div", { class: "choices" }, firstLifts().map((lift) =>
        button(lift, () => {
          keep();
          app.kept.lifts = chosen.includes(lift) ? chosen.filter((other) => other !== lift) : [...chosen, lift];
          app.refresh();
        }, { class: "choice", "aria-pressed": chosen.includes(lift) ? "true" : "false" }),
      )),
    ),
    el("h2", {}, "With which bar, and which first load"),
    offered.map(({ lift, offers, offer }) =>
      offers.length === 0
        ? el("p", { class: "caution" }, `${lift}: no bar of this gym is right for it.`)
        : choices(lift, offers.map((one) => ({ value: one.implement, label: offerWords(kit, one) })), offer?.implement, (value) => {
            keep();
            app.kept.bars = { ...bars, [lift]: value };
            app.refresh();
          }),
    ),
    wrong,
    el("div", { class: "row" }, button("Begin", begin, { class: "main", "data-act": "begin-now", disabled: chosen.length === 0 })),
  ];
}

