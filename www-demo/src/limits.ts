// What a clearance limits, in plain words: on Today, in the log and on the card.
import type { App } from "./app.ts";
import type { Tree } from "./engine.ts";
import { mass, plain } from "./numbers.ts";

/** One recorded limit in words. */
export function limitWords(app: App, limit: Tree): string {
  const parts = [
    limit.no_breath_hold && "no long breath-holding",
    limit.no_loaded_flexion && "no loaded bending of the spine",
    limit.load && `no more than ${mass({ kg: limit.load.kg ?? 0 })}`,
    limit.effort !== undefined && `no effort above ${plain(limit.effort, 1)} of 10`,
    limit.range && `no range beyond ${plain(limit.range.mm ?? 0, 0)} mm`,
  ].filter(Boolean);
  return `${parts.join(", ")}${limit.region ? ` (${app.regionName(limit.region)})` : ""}`;
}

/** The limits that concern one lift: those of its regions, and those of every lift. */
export function limitsOn(app: App, lift: Tree): string[] {
  const lifter = app.lifter;
  const all: Tree[] = (lifter ? (app.facts(lifter).limits ?? []) : []).map((one: string) => JSON.parse(one));
  return all.filter((one) => one.region === undefined || lift.regions.includes(one.region)).map((one) => limitWords(app, one));
}

/** The limits of the lifter in view. */
export function limitsOf(app: App): string[] {
  const lifter = app.lifter;
  const all: Tree[] = lifter ? (app.facts(lifter).limits ?? []) : [];
  return all.map((one) => limitWords(app, JSON.parse(one)));
}
