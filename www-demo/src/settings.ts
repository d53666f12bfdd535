// Units, look, and the bars and discs of the gym.
import type { App } from "./app.ts";
import { button, choices, el, type Child } from "./element.ts";
import { attempt, type Tree } from "./engine.ts";
import { homeKit, implementName } from "./kit.ts";
import { face, given, mass, plain, setUnit, unitNow, type Unit } from "./numbers.ts";
import { confirmBox, openPad } from "./pad.ts";

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

/** Field names as the log spells them; names of lifts and bars are values, never keys. */
export function snake(tree: Tree): Tree {
  if (Array.isArray(tree)) return tree.map(snake);
  if (tree === null || typeof tree !== "object") return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`), snake(value)]));
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
  const kit = app.gymKit();
  const lifter = app.lifter;
  const save = (next: Tree): void =>
    void app.store.set("kit", JSON.stringify(next)).then((kept) => {
      app.notice = kept || app.store.fault ? "" : "Another window changed the list of bars and discs meanwhile. It stands here now; look, and change it again.";
      app.refresh();
    });
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
      el("span", {}, `${implementName(one)}${one.bar ? `: ${mass(one.bar.mass)}` : ""}`),
      button("Remove", () => save({ ...kit, implements: kit.implements.filter((_, place) => place !== at) }), { "aria-label": `Remove ${implementName(one)}`, disabled: kit.implements.length < 2 }),
    ),
  );
  const addDisc = (): void =>
    openPad("Mass of one disc", unitNow(), (value) => {
      // Kept in the unit in which it was said: that is what is marked on the disc.
      const nominal = given(value);
      if (!attempt("page.mass", { mass: nominal }).answer) return;
      openPad("Diameter", "mm", (mm) => save({ ...kit, stock: { discs: [...kit.stock.discs, { nominal, diameter: { mm }, thickness: { mm: 24 }, count: 2 }] } }));
    });
  const addBar = (): void =>
    openPad("Mass of the bar", unitNow(), (value) => {
      const own = attempt("page.mass", { mass: given(value) }).answer;
      if (!own) return;
      const id = `bar ${plain(own.kg)}`;
      if (kit.implements.some((one) => implementName(one) === id)) return;
      save({ ...kit, implements: [...kit.implements, { bar: { id, mass: own, collar: { kg: 0 }, kind: "straight" } }] });
    });
  return [
    el("h1", { tabindex: -1 }, "Gym and page"),
    choices("Units", [{ value: "kg", label: "Kilograms" }, { value: "lb", label: "Pounds" }], unitNow(), (unit) => void useUnit(app, unit as Unit)),
    choices("Look", [{ value: "auto", label: "As the device" }, { value: "light", label: "Light" }, { value: "dark", label: "Dark" }], app.store.setting("theme") ?? "auto", (theme) => {
      applyTheme(theme);
      void app.store.set("theme", theme).then(() => app.refresh());
    }),
    el("h2", {}, "Bars of this gym"),
    el("ul", { class: "kit" }, bars),
    button("Add a bar", addBar),
    el("h2", {}, "Discs of this gym, counted singly"),
    el("ul", { class: "kit" }, discs),
    el("div", { class: "row" }, button("Add a disc", addDisc), button("Begin from the first list again", () => confirmBox("Begin the list again?", "The bars and discs listed here are replaced by the first list.", "Begin again", () => save(homeKit())))),
    lifter &&
      el(
        "section",
        {},
        el("h2", {}, `Bars and discs of ${lifter.id}`),
        el("p", { class: "soft" }, "A lifter\u2019s loads are made with the bars and discs written in the lifter\u2019s own log. Other discs change which loads can be made, from now on."),
        button(`Use this gym\u2019s discs for ${lifter.id}`, () => {
          const now = app.parameters(lifter);
          if (!now) return;
          const missing = now.implements.filter((one: Tree) => !kit.implements.some((other) => implementName(other) === implementName(one)));
          void app.record(lifter, { parameters_changed: snake({ ...now, stock: kit.stock, implements: [...kit.implements, ...missing] }) }).then(() => app.refresh());
        }),
      ),
    el("h2", {}, "About"),
    el("p", {}, "The page does sums and keeps rules; it examines nobody. It sends nothing anywhere: what it keeps stays on this device until you save a file or erase it."),
  ];
}
