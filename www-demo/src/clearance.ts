// A clearance: what was said, within which limits, and to which day it holds.
import type { App } from "./app.ts";
import type { Clearance, ClearanceLimits } from "bismar-page-package";
import { button, choices, el, type Child } from "./element.ts";
import { attempt } from "./engine.ts";
import { limitsOf, limitWords } from "./limits.ts";
import { atMostNumber, given, plain, unitNow } from "./numbers.ts";
import { opensBy } from "./opens.ts";
import { numberField } from "./pad.ts";
import { regionChoices } from "./record.ts";
import { NAME, openingBox, who } from "./write_box.ts";

/** Where a limit holds that names no region. */
const EVERYWHERE = "everywhere";
const UNSAID = "unsaid";

/** A limit as far as it was told. */
interface Told {
  where?: string;
  breath?: string;
  bending?: string;
  effort?: string;
  load?: ClearanceLimits["load"];
  range?: number;
  /** Why the number that was typed last is none. */
  refused?: string;
}

/** Which of the questions of a limit waits for an answer; a load and a range are told or not. */
function lacks(told: Told): string | undefined {
  if (told.where === undefined) return "Where the limit holds, please.";
  if (told.breath === undefined) return "Long breath-holding: what was said, please.";
  if (told.bending === undefined) return "Loaded bending of the spine: what was said, please.";
  return told.effort === undefined ? "Highest effort: what was said, please." : undefined;
}

function limitOf(told: Told): ClearanceLimits {
  return {
    ...(told.where !== EVERYWHERE ? { region: told.where } : {}),
    ...(told.load ? { load: told.load } : {}),
    ...(told.effort !== UNSAID ? { effort: Number(told.effort) } : {}),
    ...(told.range !== undefined ? { range: { mm: told.range } } : {}),
    ...(told.bending === "yes" ? { noLoadedFlexion: true } : {}),
    ...(told.breath === "yes" ? { noBreathHold: true } : {}),
  };
}

/** Whether it names no more than where it would hold. */
function limitsNothing(limit: ClearanceLimits): boolean {
  return Object.keys(limit).every((key) => key === "region");
}

const YES_OR_UNSAID = [
  { value: "no", label: "Nothing was said" },
  { value: "yes", label: "Not allowed" },
];

function limitFields(app: App, told: Told, redraw: () => void): Child {
  const put = (key: "where" | "breath" | "bending" | "effort") => (value: string) => {
    told[key] = value;
    redraw();
  };
  return [
    choices("Where the limit holds", [{ value: EVERYWHERE, label: "Everywhere" }, ...regionChoices(app)], told.where, put("where")),
    numberField("Highest load", told.load ? atMostNumber(told.load) : "not said", told.load ? unitNow() : "", (value, unit) => {
      const read = attempt("page.mass", { mass: given(value, unit) });
      Object.assign(told, { refused: read.refused?.message, load: read.answer ?? told.load });
      redraw();
    }, unitNow()),
    numberField("Deepest range", told.range === undefined ? "not said" : plain(told.range, 3), told.range === undefined ? "" : "mm", (value) => {
      told.range = value;
      redraw();
    }, "mm"),
    told.refused !== undefined && el("p", { class: "wrong", role: "alert" }, told.refused),
    told.range !== undefined && el("p", { class: "soft" }, "A lift without ranges rests under a limit of range."),
    choices("Highest effort", [{ value: UNSAID, label: "Nothing was said" }, ...[4, 5, 6, 7, 8, 9].map((rating) => ({ value: String(rating), label: String(rating) }))], told.effort, put("effort")),
    choices("Long breath-holding", YES_OR_UNSAID, told.breath, put("breath")),
    choices("Loaded bending of the spine", YES_OR_UNSAID, told.bending, put("bending")),
  ];
}

/** Who says it makes no difference to what goes. */
const ANYBODY = "somebody";

/** Limits in force that a clearance within these would end, as the library says; all of them where it cannot say. */
function goneBy(app: App, limits: ClearanceLimits[]): string[] {
  const { lifter } = app;
  const status = limits.length > 0 ? "cleared_with_limits" : "cleared";
  const opens = lifter && opensBy(app, lifter, { suppose: { clearanceRecorded: { status, who: ANYBODY, ...(limits.length > 0 ? { limits } : {}) } } });
  return opens ? opens.less.filter((one) => one.kind === "limit").map(({ what }) => what.replace(/,$/, "")) : limitsOf(app);
}

/** Said before anything is written: a clearance takes the place of the limits that were recorded before. */
function goesPart(app: App, all: string[], limits: ClearanceLimits[]): Child {
  if (all.length === 0) return undefined;
  const gone = limits.length > 0 ? goneBy(app, limits) : all;
  const stay = all.filter((one) => !gone.includes(one));
  return el(
    "div",
    { class: "caution", "data-goes": true },
    gone.length > 0 && el("p", { "data-gone": true }, el("b", {}, "No longer in force once this is written: "), `${gone.join("; ")}.`),
    el("p", { "data-stay": true }, stay.length > 0 ? `Still in force: ${stay.join("; ")}.` : "Of the limits recorded before none stays in force."),
  );
}

/** What a clearance says is written down as it was told: several limits, each with where it holds. */
export function clearance(app: App): void {
  const by = who("Who said so");
  const lastDay = el("input", { type: "date", autocomplete: "off", id: "holds-to" });
  let status: Clearance["status"] | undefined;
  let told: Told = {};
  const named: ClearanceLimits[] = [];
  /** The limits in force, of the log as it was looked at last: another window may write one while this is open. */
  let inForce: { seal: string | undefined; all: string[] } | undefined;
  const all = (): string[] => {
    const seal = app.lifter?.seal;
    if (inForce?.seal !== seal || !inForce) inForce = { seal, all: goneBy(app, []) };
    return inForce.all;
  };
  /** The limits that are named so far, the one that is being told too once it is one. */
  const soFar = (): ClearanceLimits[] => (status !== "cleared_with_limits" ? [] : lacks(told) === undefined && !limitsNothing(limitOf(told)) ? [...named, limitOf(told)] : named);
  openingBox(
    app,
    "A clearance",
    (redraw) => [
      el("p", { class: "soft" }, "The page keeps what was said and examines nobody. A stop reopens only with a clearance and then the coach\u2019s sign-off."),
      choices("What was said", [{ value: "cleared", label: "Cleared" }, { value: "cleared_with_limits", label: "Cleared within limits" }, { value: "not_cleared", label: "Not cleared" }], status, (value) => {
        status = value;
        redraw();
      }),
      status === "cleared_with_limits" && [
        el("p", { class: "soft" }, "These limits take the place of all that were recorded before: name every one that still holds."),
        named.map((limit) => el("p", { "data-limit": true }, `Also: ${limitWords(app, limit)}.`)),
        limitFields(app, told, redraw),
        lacks(told) === undefined &&
          !limitsNothing(limitOf(told)) &&
          button("Another limit", () => {
            named.push(limitOf(told));
            told = {};
            redraw();
          }),
      ],
      (status === "cleared" || status === "cleared_with_limits") && el("div", { class: "field" }, el("label", { class: "label", for: "holds-to" }, "Last day it holds, where one was said"), lastDay),
      status !== undefined && status !== "not_cleared" && goesPart(app, all(), soFar()),
      by.field,
    ],
    () => {
      if (status === undefined) return "What was said, please.";
      const limits = [...named];
      if (status === "cleared_with_limits" && !(named.length > 0 && Object.keys(told).length === 0)) {
        const missing = lacks(told);
        if (missing) return missing;
        // A newer clearance takes the place of the limits before it: one that names none would lift them.
        if (limitsNothing(limitOf(told))) return "Which limit, please: without one the limits before it would be gone.";
        limits.push(limitOf(told));
      }
      if (by.name() === "") return NAME;
      const expires = status === "not_cleared" ? "" : lastDay.value;
      return { clearanceRecorded: { status, who: by.name(), ...(expires ? { expires } : {}), ...(limits.length > 0 && status === "cleared_with_limits" ? { limits } : {}) } };
    },
  );
}
