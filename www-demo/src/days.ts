// One wrong clock must not poison a log: entries dated after the device's day, and a device's day far from the log's.
import type { App } from "./app.ts";
import { button, el, fill, type Child } from "./element.ts";
import type { Ahead, EventKindInput } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import { logOf, type Loaded } from "./kept.ts";
import { dayLong, deviceDay } from "./numbers.ts";
import { askCorrection, opensBy } from "./opens.ts";

/** Days after the last entry from which the device's day is asked about (our choice: longer than most breaks). */
const FAR_DAYS = 120;
/** Days of one session, its own and the morning after: entries of more are not put on one day with one tap (our choice). */
const SESSION_DAYS = 2;
/** What is written down whatever the device's day may be: nothing that may stop a lift waits for a calendar. */
const NEVER_WAITS = ["symptomReport", "painReport", "dayReport", "nextDayReport", "correction"] as const;
function neverWaits(kind: EventKindInput): boolean {
  const stops = kindOf(kind, "clearanceRecorded")?.status === "not_cleared" || kindOf(kind, "layoffNoted")?.reason === "ill";
  return stops || NEVER_WAITS.some((name) => kindOf(kind, name) !== undefined);
}

/** Entries in force of a log that are dated after the device's day. */
export function aheadIn(log: string | number): Ahead[] {
  return attempt("page.ahead", { log, day: deviceDay() }).answer ?? [];
}
function ofOneSession(all: Ahead[]): boolean {
  return new Set(all.map((one) => one.day)).size <= SESSION_DAYS;
}
function ahead(app: App, lifter: Loaded): Ahead[] {
  return app.clockBehind(lifter) ? aheadIn(app.log(lifter)) : [];
}
export function aheadWords(all: Ahead[]): string {
  const latest = all.reduce((most, one) => (one.day > most ? one.day : most), "");
  return `${all.length === 1 ? "1 entry is" : `${all.length} entries are`} dated after this device\u2019s day (${dayLong(deviceDay())}), the last ${dayLong(latest)}.`;
}

/** The last entry's day, where the device's is far after it and nobody has said that it is right. */
function far(app: App, lifter: Loaded): string | undefined {
  const last = app.lastDay(lifter);
  const now = deviceDay();
  if (last === undefined || app.header(lifter).invented || app.daySaid === now) return undefined;
  return ask("page.day", { day: last, plus: FAR_DAYS }) < now ? last : undefined;
}

/** Entries with their day set to the device's: corrections, so that what was written stays. */
export function daysSet(log: { version: number; header: string; id: string; plan: string }, events: string[]): string[] | undefined {
  const day = deviceDay();
  const all = aheadIn(logOf(log, events));
  if (!ofOneSession(all)) return undefined;
  let sequence = ask("page.lifter", { log: logOf(log, events) }).nextSequence;
  const next = all.map((one) => JSON.stringify({ sequence: sequence++, day, kind: { correction: { replaces: one.last, day } } }));
  return attempt("page.accepts", { log: logOf(log, [...events, ...next]) }).answer ? next : undefined;
}

function daysRight(app: App, { id }: Loaded): void {
  const lifter = app.store.lifter(id);
  if (!lifter) return;
  const next = daysSet(lifter, lifter.events);
  if (next) {
    const { seal } = lifter;
    askCorrection(opensBy(app, lifter, { instead: logOf(lifter, [...lifter.events, ...next]) }), () => {
      if (app.store.lifter(id)?.seal === seal) app.writing(app.store.append(id, next), "Their day is today now; what was written first stays in the log.");
      app.refresh();
    });
    return;
  }
  app.notice = "These days cannot be set to today: an entry would come before one that it speaks of. Correct them under Log.";
  app.refresh();
}

/** What the opening view asks where device and log disagree about the day. */
export function dayDoubts(app: App, lifter: Loaded): Child {
  const later = ahead(app, lifter);
  if (later.length > 0) {
    const one = ofOneSession(later);
    return el(
      "section",
      { class: "caution", "data-ahead": later.length },
      el("p", {}, el("b", {}, "Which day is it? "), `${aheadWords(later)} One of the two is wrong.`),
      one && el("div", { class: "row" }, button(`It is ${dayLong(deviceDay())}: set ${later.length === 1 ? "its day" : "their days"} to today`, () => daysRight(app, lifter), { class: "main", "data-act": "days-right" })),
      el("p", { class: "soft" }, one ? "If the device is wrong, set its date. Under Log each entry can be given its own day." : "They are of several days: look at the date of this device first. If that is right, each can be given its own day under Log."),
    );
  }
  const last = far(app, lifter);
  if (last === undefined) return undefined;
  return el(
    "section",
    { class: "caution", "data-far": last },
    el("p", {}, el("b", {}, "Is that the day? "), `This device says ${dayLong(deviceDay())}; the last entry is of ${dayLong(last)}.`),
    el("div", { class: "row" }, button("Yes, that is today", () => { app.daySaid = deviceDay(); app.refresh(); }, { "data-act": "is-today" })),
    el("p", { class: "soft" }, "If it is not, set the date of the device before anything is written down."),
  );
}

/** Asks with a box; nothing where it was closed without an answer. */
function asked(title: string, text: string, answers: { label: string; day: string | undefined; act: string }[]): Promise<string | undefined> {
  return new Promise((done) => {
    const box = el("dialog", { class: "pad wide", "aria-label": title, "data-stays": true });
    let day: string | undefined;
    fill(
      box,
      el("h2", {}, title),
      el("p", {}, text),
      el("div", { class: "row" }, answers.map((one) => button(one.label, () => { day = one.day; box.close(); }, { "data-act": one.act }))),
    );
    box.addEventListener("close", () => {
      box.remove();
      done(day);
    });
    document.body.append(box);
    box.showModal();
  });
}

/** The day of an event to come: asked where device and log disagree; nothing where it is not to be written. */
export async function dayAllowed(app: App, lifter: Loaded, kind: EventKindInput, on: string | undefined): Promise<string | undefined> {
  const day = on ?? app.day(lifter);
  if (on !== undefined || neverWaits(kind)) return day;
  const now = deviceDay();
  const later = ahead(app, lifter);
  if (later.length > 0 && app.daySaid !== now) {
    const title = "Which day is it?";
    const chosen = await asked(title, aheadWords(later), [
      { label: `${dayLong(now)}, as this device says`, day: now, act: "device-day" },
      { label: `${dayLong(day)}, as the log says`, day, act: "log-day" },
      { label: "Do not record it", day: undefined, act: "not-today" },
    ]);
    return chosen;
  }
  if (far(app, lifter) === undefined) return day;
  const said = await asked(`Is it really ${dayLong(now)}?`, `The last entry is of ${dayLong(app.lastDay(lifter) ?? now)}.`, [
    { label: "Yes, that is today", day, act: "is-today" },
    { label: "No", day: undefined, act: "not-today" },
  ]);
  if (said !== undefined) app.daySaid = now;
  return said;
}
