// Who is there and where the pins are; which bar a lift uses.
import type { App } from "./app.ts";
import { choices, el, type Child } from "./element.ts";
import type { Tree } from "./engine.ts";
import { numberField } from "./pad.ts";

/** Whether the lift is one that falls on the lifter: a bench press, a squat. */
export function overTheBody(app: App, lift: string): boolean {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return parameters?.lifts.find((one: Tree) => one.id === lift)?.overTheBody ?? false;
}

/** How a set was set up, as far as somebody said so. */
export interface Setup {
  company: "alone" | "spotter" | undefined;
  pins: "none" | "set" | number | undefined;
}

export function setupFields(setup: Setup, redraw: () => void): Child[] {
  return [
    choices("Who is there?", [{ value: "spotter", label: "Somebody spots" }, { value: "alone", label: "Alone" }], setup.company, (value) => {
      setup.company = setup.company === value ? undefined : (value as Setup["company"]);
      redraw();
    }),
    choices("Pins or safeties", [{ value: "set", label: "Set" }, { value: "none", label: "None" }], typeof setup.pins === "number" ? "set" : setup.pins, (value) => {
      setup.pins = value as "none" | "set";
      redraw();
    }),
    (typeof setup.pins === "number" || setup.pins === "set") && numberField("Height of the pins", typeof setup.pins === "number" ? String(setup.pins) : "not measured", typeof setup.pins === "number" ? "mm" : "", (value) => {
      setup.pins = value;
      redraw();
    }, "mm"),
    setup.pins === "set" && el("p", { class: "soft" }, "Without a height it is kept as no pins: nothing is recorded that nobody measured."),
  ];
}

export function setupEvent(setup: Setup): Tree | undefined {
  if (setup.company === undefined && setup.pins === undefined) return undefined;
  // Pins whose height nobody measured cannot be counted on.
  return { company: setup.company, pins: setup.pins === "set" ? "none" : setup.pins };
}

/** The setup of a lift from those of its sets: the barest set counts. */
export function setupOf(all: (Tree | undefined)[]): Tree | undefined {
  const known = all.filter((one): one is Tree => one !== undefined);
  if (known.length === 0) return undefined;
  const heights = known.map((one) => one.pins).filter((one): one is number => typeof one === "number");
  const pinned = heights.length === all.length;
  return {
    ...(pinned ? { pins: { mm: Math.min(...heights) } } : {}),
    ...(known.some((one) => one.company === "alone")
      ? { company: "alone" }
      : all.every((one) => one?.company === "spotter")
        ? { company: "spotter" }
        : {}),
  };
}

export function implementOf(app: App, lift: Tree | undefined): Tree {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  const set = parameters?.lifts.find((one: Tree) => one.id === lift?.lift);
  const all: Tree[] = app.kit().implements;
  return all.find((one) => Object.values(one as Record<string, Tree>).some((body) => body.id === set?.implement)) ?? app.bar();
}

/** Who was there and where the pins were, as far as it is written. */
export function setupWords(setup: Tree): string {
  const company = setup.company === "alone" ? "Alone" : setup.company === "spotter" ? "Somebody spotted" : "Nothing written about who was there";
  return `${company}; ${setup.pins?.mm === undefined ? "no pins written down" : `pins at ${setup.pins.mm} mm`}.`;
}
