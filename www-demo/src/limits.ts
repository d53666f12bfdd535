// What a clearance limits, in plain words: on Today, in the log and on the card.
import type { App } from "./app.ts";
import type { ClearanceLimits, LiftParameters } from "bismar-page-package";
import { atMost, plain, rangeOf } from "./numbers.ts";

/** One recorded limit in words. */
export function limitWords(app: App, limit: ClearanceLimits): string {
  const parts = [
    limit.noBreathHold && "no long breath-holding",
    limit.noLoadedFlexion && "no loaded bending of the spine",
    limit.load && `no more than ${atMost(limit.load)}`,
    limit.effort !== undefined && `no effort above ${plain(limit.effort, 1)} of 10`,
    limit.range && `no range beyond ${rangeOf(limit.range)}`,
  ].filter(Boolean);
  return `${parts.join(", ")}${limit.region ? ` (${app.regionName(limit.region)})` : ""}`;
}

/** The limits that concern one lift: those of its regions, and those of every lift. */
export function limitsOn(app: App, lift: LiftParameters): string[] {
  const lifter = app.lifter;
  const all = lifter ? app.facts(lifter).limits : [];
  return all.filter((one) => one.region === undefined || lift.regions.includes(one.region)).map((one) => limitWords(app, one));
}

/** The limits of the lifter in view. */
export function limitsOf(app: App): string[] {
  const lifter = app.lifter;
  return lifter ? app.facts(lifter).limits.map((one) => limitWords(app, one)) : [];
}
