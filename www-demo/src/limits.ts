// What a clearance limits, in plain words: on Today, in the log and on the card.
import type { App } from "./app.ts";
import type { ClearanceLimits, LiftParameters } from "bismar-page-package";
import { ask } from "./engine.ts";
import { atMost, plain, rangeOf, type Mass } from "./numbers.ts";
import { eachHand } from "./setup.ts";
import type { Loaded } from "./store.ts";

/** One recorded limit in words. */
export function limitWords(app: App, limit: ClearanceLimits, lifter = app.lifter): string {
  const lifts = (lifter && app.parameters(lifter)?.lifts) ?? [];
  const two = lifts.some((one) => (limit.region === undefined || one.regions.includes(limit.region)) && eachHand(app, one.id, lifter) !== "");
  const parts = [
    limit.noBreathHold && "no long breath-holding",
    limit.noLoadedFlexion && "no loaded bending of the spine",
    limit.load && `no more than ${atMost(limit.load)}${two ? ", where there are two of them each hand" : ""}`,
    limit.effort !== undefined && `no effort above ${plain(limit.effort, 1)} of 10`,
    limit.range && `no range beyond ${rangeOf(limit.range)}`,
  ].filter(Boolean);
  return `${parts.join(", ")}${limit.region ? ` (${app.regionName(limit.region, lifter)})` : ""}`;
}

/** The limits that concern one lift of the lifter in view. */
export function limitsOn(app: App, lift: LiftParameters): string[] {
  return app.lifter ? ask("page.limits", { log: app.log(app.lifter), lift: lift.id }).limits.map((one) => limitWords(app, one)) : [];
}

/** The limits of a lifter. */
export function limitsOf(app: App, lifter = app.lifter): string[] {
  return lifter ? app.facts(lifter).limits.map((one) => limitWords(app, one, lifter)) : [];
}

/** What is said of a clearance that is not there, or is there no more. */
const CLEARANCE = ["clearance_missing", "clearance_expired"];

/** Under what somebody trains, each in a sentence: limits, a clearance that is missing or over, a day that nobody asked about. */
export function standsUnder(app: App, lifter: Loaded): string[] {
  const limits = limitsOf(app, lifter);
  const found = app.today(lifter).answer;
  const clearance = new Set((found?.lines ?? []).flatMap((line) => line.why).filter((one) => CLEARANCE.includes(one.code)).map((one) => one.text));
  return [...(limits.length > 0 ? [`Limits: ${limits.join("; ")}.`] : []), ...clearance, ...(found?.session.day === "unknown" ? ["How the day is was not asked yet."] : [])];
}

/** The limits that concern a lift of the lifter in view, or one that is not begun yet, with the lowest load of them. */
export function limitsFor(app: App, lift: string | undefined): { words: string; load: Mass | undefined } {
  const { lifter } = app;
  if (!lifter) return { words: "", load: undefined };
  // Of a lift that nobody has named every limit counts.
  const { limits, load } = ask("page.limits", { log: app.log(lifter), lift: lift || "any lift" });
  return { words: limits.map((one) => limitWords(app, one)).join("; "), load };
}

/** The limits beside an answer: one sentence, and nothing where there are none. */
export function limitLine(words: string): string {
  return words === "" ? "" : ` In force: ${words}.`;
}
