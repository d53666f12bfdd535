// Units, look, and the bars and discs of the gym.
import type { App } from "./app.ts";
import { button, choices, el, later, type Child } from "./element.ts";
import type { Implement } from "bismar-page-package";
import { ask, attempt, kindOf, type Answered } from "./engine.ts";
import { barWords, GYMS, implementName, type Kit } from "./kit.ts";
import { shownName } from "./names.ts";
import { count, face, given, mass, plain, setUnit, unitNow, type Unit } from "./numbers.ts";
import { confirmBox, openPad } from "./pad.ts";
import type { Loaded } from "./store.ts";
import { anotherBar } from "./write_down.ts";

export async function useUnit(app: App, unit: Unit): Promise<void> {
  setUnit(unit);
  app.refresh();
  await app.store.set("unit", unit);
}

const DARK = matchMedia("(prefers-color-scheme: dark)");
let theme: string | undefined;

/** The look: the device's, unless one was chosen here. */
export function applyTheme(chosen: string | undefined): void {
  theme = chosen;
  document.documentElement.dataset.theme = chosen === "light" || chosen === "dark" ? chosen : DARK.matches ? "dark" : "light";
}
DARK.addEventListener("change", () => applyTheme(theme));

/** A bar by its name, with its mass where the name does not say it in the unit in use. */
function barIn(one: Implement): string {
  const bar = kindOf(one, "bar");
  return bar && !bar.id.endsWith(` ${unitNow()}`) ? `${bar.id}: ${mass(bar.mass)}` : implementName(one);
}

function steps(label: string, shown: string, less: () => void, more: () => void): HTMLElement {
  return el(
    "div",
    { class: "stepper" },
    button("\u2212", less, { "aria-label": `${label}: one less` }),
    el("output", {}, shown),
    button("+", more, { "aria-label": `${label}: one more` }),
  );
}

export function settingsView(app: App): Child {
  const seen = app.store.setting("kit");
  const kit = app.gymKit();
  const lifter = app.lifter;
  const blocks = kit.blocks ?? [];
  const save = (next: Kit): void => {
    const written = app.store.set("kit", JSON.stringify(next), seen);
    // Shown before it is written: the next tap counts from this one.
    app.notice = "";
    app.refresh();
    void written.then((kept) => {
      if (kept || app.store.fault) return app.say();
      app.notice = "Not changed: another window changed the list of bars and discs meanwhile. It is shown here now; look, and change it again.";
      app.refresh();
    });
  };
  const discs = kit.stock.discs.map((disc, at) => {
    const name = `${face(disc.nominal)}, \u2300 ${plain(disc.diameter?.mm ?? 0, 0)} mm`;
    const set = (count: number): void => {
      if (count < 0 || count > 40) return;
      save({ ...kit, stock: { discs: kit.stock.discs.map((one, place) => (place === at ? { ...one, count } : one)) } });
    };
    return el("li", {}, el("span", {}, el("b", {}, face(disc.nominal)), ` \u2300 ${plain(disc.diameter?.mm ?? 0, 0)} mm`), steps(name, String(disc.count), () => set(disc.count - 1), () => set(disc.count + 1)));
  });
  const bars = kit.implements.map((one, at) =>
    el(
      "li",
      {},
      el("span", {}, barIn(one)),
      button("Remove", () => save({ ...kit, implements: kit.implements.filter((_, place) => place !== at) }), { "aria-label": `Remove ${barWords(one)}`, disabled: kit.implements.length < 2 }),
    ),
  );
  const addDisc = (): void =>
    openPad("Mass of one disc", unitNow(), (value, unit) => {
      // Kept in the unit in which it was said: that is what is marked on the disc.
      const nominal = given(value, unit);
      if (!attempt("page.mass", { mass: nominal }).answer) return;
      openPad("Diameter", "mm", (mm) => save({ ...kit, stock: { discs: [...kit.stock.discs, { nominal, diameter: { mm }, thickness: { mm: 24 }, count: 2 }] } }));
    });
  const addBar = (): void =>
    openPad("Mass of the bar", unitNow(), (value, unit) => {
      const own = attempt("page.mass", { mass: given(value, unit) }).answer;
      if (!own) return;
      const id = `bar ${mass(own)}`;
      if (kit.implements.some((one) => implementName(one) === id)) return;
      save({ ...kit, implements: [...kit.implements, { bar: { id, mass: own, collar: { kg: 0 }, kind: "straight" } }] });
    });
  return [
    el("h1", { tabindex: -1 }, "Gym and page"),
    choices("Units", [{ value: "kg", label: "Kilograms" }, { value: "lb", label: "Pounds" }], unitNow(), (unit) => void useUnit(app, unit as Unit)),
    choices("Look", [{ value: "auto", label: "As the device" }, { value: "light", label: "Light" }, { value: "dark", label: "Dark" }], app.store.setting("theme") ?? "auto", (theme) => {
      applyTheme(theme);
      const kept = app.store.set("theme", theme);
      app.refresh();
      void kept.then(() => app.say());
    }),
    el("h2", {}, "Ready lists"),
    el("p", { class: "soft" }, "Masses, and 450 mm for the large discs, are those of federation rules as remembered; other diameters are common sizes, no standard."),
    el("div", { class: "choices" }, GYMS.map((gym) => button(gym.title, () => confirmBox("Begin the list again?", `${gym.title}: the bars and discs listed here are replaced.`, "Begin again", () => save({ ...gym.kit(), blocks })), { "data-act": gym.id }))),
    el("h2", {}, "Bars of this gym"),
    el("ul", { class: "kit" }, bars),
    button("Add a bar", addBar),
    el("h2", {}, "Discs of this gym, counted singly"),
    el("p", { class: "soft" }, "The first lists hold common sizes. Weigh and measure your own: a bar or a disc may be off by a few parts in a hundred, and its diameter sets the height."),
    el("ul", { class: "kit" }, discs),
    el("div", { class: "choices" }, button("Add a disc", addDisc)),
    el("h2", {}, "Blocks to put under the discs"),
    el("p", { class: "soft" }, "Where a lift starts from the floor, blocks bring small discs to its height. Measure them; a pair each."),
    el("ul", { class: "kit" }, blocks.map((one, at) => el("li", {}, el("span", {}, `${plain(one.mm, 0)} mm`), button("Remove", () => save({ ...kit, blocks: blocks.filter((_, place) => place !== at) }), { "aria-label": `Remove blocks of ${plain(one.mm, 0)} mm` })))),
    el("div", { class: "choices" }, button("Add blocks", () => openPad("Height of one block", "mm", (mm) => { if (mm > 0 && mm <= 500 && !blocks.some((one) => one.mm === mm)) save({ ...kit, blocks: [...blocks, { mm }] }); }), { "data-act": "add-blocks" })),
    lifter &&
      el(
        "section",
        {},
        el("h2", {}, `Bars and discs of ${shownName(lifter.id)}`),
        el("p", { class: "soft" }, "A lifter\u2019s loads are made with the bars and discs written in the lifter\u2019s own log. Other discs change which loads can be made, from now on."),
        button(`Use this gym\u2019s bars, discs and blocks for ${shownName(lifter.id)}`, () => {
          if (app.store.setting("kit") !== seen) {
            app.notice = "Not changed: the list of bars and discs was changed meanwhile. It is shown here now; look, and use it again.";
            return app.refresh();
          }
          const made = attempt("page.with_kit", { log: app.log(lifter), implements: kit.implements, stock: kit.stock, blocks });
          if (made.answer) void app.record(lifter, { parametersChanged: made.answer }).then(() => app.refresh());
        }, { "data-act": "use-kit" }),
        otherBars(app, lifter, kit),
      ),
    el("h2", {}, "Does this device count right?"),
    bitsPart(app),
    el("h2", {}, "About"),
    el("p", {}, "The page does sums and keeps rules; it examines nobody. It sends nothing anywhere: what it keeps stays on this device until you save a file or erase it."),
  ];
}

/** Lifts that are done with a bar which this gym has not, each with a way to another. */
function otherBars(app: App, lifter: Loaded, kit: Kit): Child {
  const all = app.parameters(lifter);
  const here = new Set(kit.implements.map(implementName));
  const without = (all?.lifts ?? []).filter((one) => !here.has(one.implement));
  if (without.length === 0) return undefined;
  const barOf = (id: string): string => {
    const own = all?.implements.find((one) => implementName(one) === id);
    return own ? barWords(own) : id;
  };
  return [
    el("p", { class: "caution", "data-other-bars": true }, el("b", {}, "Not in this gym. "), without.map((one) => `${app.liftName(one.id)} is done with ${barOf(one.implement)}`).join("; "), ". Once this gym\u2019s bars are used, another can be chosen for each lift."),
    el("div", { class: "stack" }, without.map((one) => button(`Another bar for ${app.liftName(one.id)}`, () => anotherBar(app, one.id), { "data-other-bar": one.id }))),
  ];
}

/** What the same answers come to where they were counted natively. */
declare const SAME_BITS: string;
let counted: Answered<"page.same_bits"> | undefined;
/** The library asked here and, when the page was built, elsewhere: every bit of every answer. */
function bitsPart(app: App): Child {
  const asked = app.kept.bits === true;
  if (!asked) return button("Count, and compare with where this page was made", () => { app.kept.bits = true; app.refresh(); }, { "data-act": "bits" });
  return later(() => {
    counted ??= ask("page.same_bits", {});
    const { answers, functions, digest } = counted;
    const same = digest === SAME_BITS;
    return el("p", { "data-bits": digest, ...(same ? {} : { class: "wrong", role: "alert" }) }, same
      ? `The same to the last bit: ${count(answers, "answer")} of ${functions} functions. On any device that says ${digest} a log gives the same loads.`
      : `Not the same (${digest}): do not go by what this device says, and write down what device and browser it is.`);
  });
}
