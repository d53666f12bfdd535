// Who is there and where the pins are; which bar a lift uses.
import type { App } from "./app.ts";
import { choices, el, type Child } from "./element.ts";
import type { Implement, Setup as Written } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import { implementName } from "./kit.ts";
import { mass, type Mass } from "./numbers.ts";
import { numberField } from "./pad.ts";

/** Whether the lift is one that falls on the lifter: a bench press, a squat. */
export function overTheBody(app: App, lift: string): boolean {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  return parameters?.lifts.find((one) => one.id === lift)?.overTheBody ?? false;
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

/** A setup as it is kept with a set that is not in the log yet. */
export interface SetSetup {
  company?: Setup["company"];
  pins?: "none" | number;
}

export function setupEvent(setup: Setup): SetSetup | undefined {
  if (setup.company === undefined && setup.pins === undefined) return undefined;
  // Pins whose height nobody measured cannot be counted on.
  const pins = setup.pins === "set" ? "none" : setup.pins;
  return { ...(setup.company === undefined ? {} : { company: setup.company }), ...(pins === undefined ? {} : { pins }) };
}

/** The setup of a lift from those of its sets: the barest set counts. */
export function setupOf(all: (SetSetup | undefined)[]): Written | undefined {
  const known = all.filter((one): one is SetSetup => one !== undefined);
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

export function implementOf(app: App, lift: { lift: string } | undefined): Implement {
  const lifter = app.lifter;
  const parameters = lifter && app.parameters(lifter);
  const set = parameters?.lifts.find((one) => one.id === lift?.lift);
  return app.kit().implements.find((one) => implementName(one) === set?.implement) ?? app.bar();
}

/** Who was there and where the pins were, as far as it is written. */
export function setupWords(setup: Written): string {
  const company = setup.company === "alone" ? "Alone" : setup.company === "spotter" ? "Somebody spotted" : "Nothing written about who was there";
  return `${company}; ${setup.pins?.mm === undefined ? "no pins written down" : `pins at ${setup.pins.mm} mm`}.`;
}

/** Said behind a load that is one of two. */
export const EACH_HAND = " each hand";
/** A load of a lift as it is set now. */
export function loadOf(app: App, lift: string, load: Mass, lifter = app.lifter): string {
  return `${mass(load)}${eachHand(app, lift, lifter)}`;
}
/** Behind a load that is one of two, one in each hand; else nothing. */
export function eachHand(app: App, lift: string, lifter = app.lifter): string {
  const parameters = lifter && app.parameters(lifter);
  const set = parameters?.lifts.find((one) => one.id === lift);
  const own = parameters?.implements.find((one) => implementName(one) === set?.implement);
  return own && (kindOf(own, "handle")?.handles === 2 || kindOf(own, "pieces")) ? EACH_HAND : "";
}
