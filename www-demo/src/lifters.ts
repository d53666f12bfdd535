// Several lifters: who is next on which bar; somebody new; the invented one.
import type { App } from "./app.ts";
import { button, el, type Child } from "./element.ts";
import { ask, attempt, type Tree } from "./engine.ts";
import { LIFTS } from "./kit.ts";
import { deviceDay, mass } from "./numbers.ts";
import { liftLine } from "./today_view.ts";
import demoLog from "demo-log.txt";
import demoPlan from "demo-plan.txt";

interface Next {
  id: string;
  bar: string;
  lift: Tree | undefined;
  words: string;
}

function nextLift(app: App, id: string): Next {
  const lifter = app.store.lifter(id);
  if (!lifter) return { id, bar: "", lift: undefined, words: "" };
  const found = app.today(lifter);
  if (!found.answer) return { id, bar: "", lift: undefined, words: found.refused?.message ?? "" };
  const done = new Set(app.draft(lifter).map((one) => one.lift));
  const lift = found.answer.session.lifts.find((one: Tree) => one.sets > 0 && !done.has(one.lift));
  if (!lift) return { id, bar: "", lift: undefined, words: done.size > 0 ? "done for today" : "nothing to lift today" };
  const bar = app.parameters(lifter)?.lifts.find((one: Tree) => one.id === lift.lift)?.implement ?? "";
  return { id, bar, lift, words: `${app.liftName(lift.lift, lifter)}: ${liftLine(lift)}` };
}

export function liftersView(app: App): Child {
  const all = app.store.ids().map((id) => nextLift(app, id));
  const bars = [...new Set(all.map((one) => one.bar))].toSorted();
  const order = (one: Next, other: Next): number => (one.lift?.load?.kg ?? 0) - (other.lift?.load?.kg ?? 0);
  return [
    el("h1", { tabindex: -1 }, "Lifters"),
    all.length === 0 && el("p", { class: "big", "data-answer": true }, "Nobody is here yet"),
    bars.map((bar) =>
      el(
        "section",
        {},
        el("h2", {}, bar === "" ? "Not waiting for a bar" : `Next on ${bar}, lightest first`),
        el(
          "ol",
          { class: "people" },
          all
            .filter((one) => one.bar === bar)
            .toSorted(order)
            .map((one) =>
              el("li", {}, button([el("b", {}, one.id), el("span", {}, one.words)], () => void app.choose(one.id), { "data-lifter": one.id, ...(one.id === app.current ? { "aria-current": "true" } : {}) })),
            ),
        ),
      ),
    ),
    el(
      "div",
      { class: "stack" },
      app.lifter && button(`Plan and lifts of ${app.lifter.id}`, () => app.go("plan"), { "data-act": "plan" }),
      button("Begin with somebody new", () => app.go("begin"), { "data-act": "begin" }),
      button("Open a file", () => app.go("files")),
      !app.store.ids().includes("invented-lifter") && button("Try the invented lifter", () => void loadDemo(app), { "data-act": "demo" }),
    ),
  ];
}

export async function loadDemo(app: App): Promise<void> {
  const log = JSON.parse(demoLog);
  const events = (log.events as Tree[]).map((event) => JSON.stringify(event));
  const id: string = log.lifter.id;
  await app.store.put({ id, header: JSON.stringify(log.lifter), plan: JSON.stringify(JSON.parse(demoPlan)), version: log.version }, events, "the demo was opened again");
  await app.choose(id);
}

/** The lightest load at the right height for a first day. */
export function firstLoad(lift: string, implement: Tree, stock: Tree): Tree {
  const height = lift.includes("pull") ? { height: { mm: 225 } } : {};
  return attempt("prescription.first_load", { implement, stock, ...height }).answer ?? implement.bar.mass;
}

export function beginView(app: App): Child {
  const name = el("input", { type: "text", id: "name", maxlength: 40, autocomplete: "off", required: true });
  const born = el("input", { type: "date", id: "born", autocomplete: "off" });
  const cleared = el("input", { type: "text", id: "cleared", maxlength: 60, autocomplete: "off" });
  const chosen: string[] = app.kept.lifts ?? ["box squat", "hex-bar pull", "seated press"];
  const kit = app.gymKit();
  name.value = app.kept.name ?? "";
  born.value = app.kept.born ?? "";
  cleared.value = app.kept.cleared ?? "";
  const keep = (): void => {
    app.kept = { ...app.kept, name: name.value, born: born.value, cleared: cleared.value };
  };
  const wrong = el("p", { class: "wrong", role: "alert" });
  const begin = (): void => {
    const id = name.value.trim();
    if (id === "" || app.store.ids().includes(id)) {
      wrong.textContent = id === "" ? "A name, or any sign to know the lifter by." : "Somebody with this name is here already.";
      name.focus();
      return;
    }
    const bars: Tree[] = kit.implements.filter((one) => one.bar);
    const lifts = LIFTS.filter((one) => chosen.includes(one.lift)).map((one) => {
      const implement = bars.find((bar) => bar.bar.id === one.bar) ?? bars[0];
      return { lift: one.lift, implement: implement.bar.id, load: firstLoad(one.lift, implement, kit.stock) };
    });
    const day = deviceDay();
    const made = attempt("page.begin", {
      lifter: { id, ...(born.value ? { born: born.value } : {}) },
      day,
      lifts,
      implements: kit.implements,
      stock: kit.stock,
      ...(cleared.value.trim() ? { clearedBy: cleared.value.trim() } : {}),
    });
    if (made.refused) {
      wrong.textContent = made.refused.message;
      return;
    }
    const log = JSON.parse(made.answer.log);
    const events = (log.events as Tree[]).map((event) => JSON.stringify(event));
    void app.store.put({ id, header: JSON.stringify(log.lifter), plan: made.answer.plan, version: log.version }, events, "begun anew").then(() => app.choose(id));
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
      el("span", { class: "label" }, "Lifts; each starts with the lightest load at the right height"),
      el("div", { class: "choices" }, LIFTS.map((one) =>
        button(one.lift, () => {
          keep();
          app.kept.lifts = chosen.includes(one.lift) ? chosen.filter((other) => other !== one.lift) : [...chosen, one.lift];
          app.refresh();
        }, { class: "choice", "aria-pressed": chosen.includes(one.lift) ? "true" : "false" }),
      )),
    ),
    wrong,
    el("div", { class: "row" }, button("Begin", begin, { class: "main", "data-act": "begin-now", disabled: chosen.length === 0 })),
    el("p", { class: "soft" }, `First loads: ${LIFTS.filter((one) => chosen.includes(one.lift)).map((one) => { const bars: Tree[] = kit.implements.filter((bar) => bar.bar); const bar = bars.find((own) => own.bar.id === one.bar) ?? bars[0]; return `${one.lift} ${mass(firstLoad(one.lift, bar as Tree, kit.stock) as { kg: number })}`; }).join(", ")}.`),
  ];
}

