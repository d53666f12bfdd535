// What keeps a lift below what it would be without it, in words.
import type { Less } from "bismar-page-package";

/** A sentence that begins with what it is about. */
export function capital(text: string): string {
  return text.replace(/^./, (letter) => letter.toUpperCase());
}

/** What opens, a sentence each. */
export function opensWords({ stops, less }: { stops: { what: string }[]; less: Pick<Less, "says">[] }): string[] {
  return [...stops.map(({ what }) => `A stop would no longer be in force: ${what}.`), ...less.map(({ says }) => capital(says))];
}

/** Loads follow from what was done: they are no narrowing of their own. */
const LOADS = ["work", "load"];

/** What narrows beside the loads. */
export function narrowing(less: Less[]): Less[] {
  return less.filter((one) => !LOADS.includes(one.kind));
}

/** What holds for somebody beside the loads, in a sentence; nothing where nothing does. */
export function onRecord(name: string, less: Less[]): string[] {
  const all = narrowing(less).map(({ what }) => what);
  return all.length === 0 ? [] : [`For ${name} stands on record: ${all.map((what) => what.replace(/,$/, "")).join("; ")}.`];
}
