// Asked before anything is taken back, put right, brought back or brought in that opens something: a stop, or whatever else keeps a
// lift below what it would be without it. What opens, the package says.
import type { EventKindInput, OpensAnswer } from "bismar-page-package";
import type { App } from "./app.ts";
import { ask, attempt } from "./engine.ts";
import type { Loaded } from "./kept.ts";
import { capital, opensWords } from "./less.ts";
import { unitNow } from "./numbers.ts";
import { confirmBox } from "./pad.ts";

/** One kind of event at the end of the log, or another log in its place: as text, or by the number of one that is open. */
export type Change = { suppose: EventKindInput } | { instead: string | number };

/** What a change would open; nothing where the library refuses it, which is said where it is written. */
export function opensBy(app: App, lifter: Loaded, change: Change): OpensAnswer | undefined {
  return attempt("page.opens", { log: app.log(lifter), today: app.day(lifter), unit: unitNow(), ...change }).answer;
}

/** What entries from elsewhere at the end of the log would open, as far as they fit. */
export function opensBehind(app: App, lifter: Loaded, events: string[]): OpensAnswer | undefined {
  const instead = ask("page.open", { log: app.logText(lifter) });
  try {
    app.joined(instead, events);
    return opensBy(app, lifter, { instead });
  } finally {
    ask("page.close", { log: instead });
  }
}

interface Words {
  title: string;
  yes: string;
  /** Said last. */
  only: string;
}
const SLIP: Words = { title: "Is that right?", yes: "Yes, change the log", only: "Only where what was written was wrong. What was said since is a new entry." };

/** Does something at once where it opens nothing; else asks, and names what opens. */
export function askOpens(opens: OpensAnswer | undefined, act: () => void, words = SLIP): void {
  const said = opens ? opensWords(opens) : [];
  if (said.length === 0) return act();
  confirmBox(words.title, [...said, words.only], words.yes, act);
}

/** The same of what corrects an entry: a stop that is taken back has its own words. */
export function askCorrection(opens: OpensAnswer | undefined, act: () => void): void {
  const stops = opens?.stops ?? [];
  if (!opens || stops.length === 0) return askOpens(opens, act);
  const title = stops.every((one) => one.kind === "sign") ? "Take the sign back?" : "Take the stop back?";
  const what = stops.map((one) => `\u201c${one.what}\u201d`).join(", ");
  const first = `${what} ${stops.length === 1 ? "is" : "are"} taken out of the log, and what it stopped opens again. Only where it was a slip of the finger.`;
  confirmBox(title, [first, ...opens.less.map(({ says }) => capital(says))], "Take it back", act);
}
