// Ending a session: on which day it was, who was there, pain; the whole is written as one entry.
import type { App, DraftSet } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, choices, el, fill } from "./element.ts";
import { endSession, painAlone } from "./ending.ts";
import type { LiftSession, PainAnswer } from "bismar-page-package";
import { count, dayShort } from "./numbers.ts";
import { morePains, painFields, painLacks, painsLack, painsOf, type PainFacts } from "./record.ts";
import { overTheBody, setupEvent, setupFields, setupOf, type Setup } from "./setup.ts";
import { stopsTold } from "./stops_told.ts";
import type { Loaded } from "./store.ts";

/** Ends the session: pain is always asked, and the whole is written as one event. */
export function finishBox(app: App): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": "Finish session" });
  const facts: PainFacts = { region: undefined, score: undefined, features: undefined };
  const pains: PainAnswer[] = [];
  let hurt = false;
  let entries: DraftSet[] = [];
  let lifts: string[] = [];
  let begun = "";
  // A session that was begun on another day: which day it was lifted on is asked, not guessed.
  let on: string | undefined;
  let setups = new Map<string, Setup>();
  let changed = "";
  let busy = false;
  /** Takes in the list as it is now; what was answered stays. */
  const read = (now: Loaded): void => {
    entries = app.draft(now);
    lifts = [...new Set(entries.map((one) => one.lift))];
    const first = app.draftDay(now) ?? app.day(now);
    if (first !== begun) on = first === app.day(now) ? first : undefined;
    begun = first;
    const bare = lifts.filter((lift) => overTheBody(app, lift) && !entries.some((one) => one.lift === lift && one.setup));
    setups = new Map(bare.map((lift): [string, Setup] => [lift, setups.get(lift) ?? { company: undefined, pins: undefined }]));
  };
  /** Whether the list is still what the coach sees here; else another window wrote to it, and the coach looks first. */
  const asSeen = (): boolean => {
    const now = app.store.lifter(lifter.id);
    const next = now ? app.draft(now) : [];
    if (JSON.stringify(next) === JSON.stringify(entries)) return true;
    if (!now || next.length === 0) {
      void endedElsewhere();
      return false;
    }
    read(now);
    changed = `Another window changed the list: ${count(entries.length, "set")} now, of ${lifts.map((lift) => app.liftName(lift)).join(", ")}. Save again if that is right.`;
    draw();
    return false;
  };
  /** Another window ended it: the sets are there, and the pain that was told here is written by itself. */
  const endedElsewhere = async (): Promise<void> => {
    const not = told().length > 0 ? await painAlone(app, lifter, told(), on ?? begun) : [];
    if (not.length > 0) {
      changed = `This session was ended in another window. ${not.join(" ")}`;
      return draw();
    }
    entry.close();
    app.notice = `Not recorded here: this session was ended in another window. ${told().length > 0 ? "The pain that was told here is in the log. " : ""}Look under Log.`;
    app.refresh();
  };
  const told = (): PainAnswer[] => (!hurt ? [] : painLacks(facts) === undefined ? painsOf(facts, pains) : pains);
  /** The box goes once what was told in it is in the log. */
  const write = async (asked: boolean): Promise<boolean> => {
    if (busy || !asSeen()) return false;
    busy = true;
    const done = lifts.map((lift): LiftSession => {
      const own = entries.filter((one) => one.lift === lift);
      const cue = own.findLast((one) => one.cue)?.cue;
      const place = own.find((one) => one.place)?.place;
      // Of a day on which it changed the least: what was done before was done for what was asked then.
      const left = own.flatMap((one) => one.reserve ?? []);
      const reserve = left.length > 0 ? { reserveAsked: Math.min(...left) } : {};
      const said = setups.get(lift);
      const setup = setupOf(own.map((one) => (said ? setupEvent(said) : one.setup)));
      return { lift, ...(place ? { place } : {}), ...reserve, sets: own.map((one) => one.set), ...(setup ? { setup } : {}), ...(cue ? { cue } : {}) };
    });
    return endSession(app, lifter, done, asked ? (hurt ? painsOf(facts, pains) : []) : undefined, entries, on).then((ended) => {
      busy = false;
      if (ended) entry.close();
      else {
        changed = app.notice;
        draw();
      }
      return ended;
    });
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, "Finish session"),
      changed && el("div", { class: "asking", role: "alert", "data-changed": true }, el("p", {}, changed)),
      begun !== app.day(lifter) && choices("On which day was it lifted?", [{ value: begun, label: `${dayShort(begun)}, when it was begun` }, { value: app.day(lifter), label: `${dayShort(app.day(lifter))}, today` }], on, (value) => {
        on = value;
        draw();
      }),
      [...setups].map(([lift, setup]) => el("div", { class: "field" }, el("h3", {}, `${app.liftName(lift)}: may stay empty`), setupFields(setup, draw))),
      el("h3", {}, "Any pain in a joint, a tendon or the spine?"),
      el("p", { class: "soft" }, "Sore muscles are something else. Not asking is kept as not asked."),
      hurt ? [painFields(app, facts, draw), morePains(app, facts, pains, draw)] : undefined,
      el(
        "div",
        { class: "stack" },
        !hurt && button("None. Save the session", () => void write(true), { class: "main", "data-act": "no-pain", disabled: on === undefined }),
        !hurt && button("Yes, some", () => { hurt = true; draw(); }, {}),
        hurt && painsLack(facts, pains) && el("p", { class: "soft" }, painsLack(facts, pains) ?? ""),
        hurt && button("Save the session", () => void write(true), { class: "main", disabled: painsLack(facts, pains) !== undefined || on === undefined }),
        !hurt && button("Not asked. Save the session", () => void write(false), { disabled: on === undefined }),
        button("Not yet", () => entry.cancel(), { class: "quiet" }),
      ),
    );
  read(lifter);
  draw();
  const entry = showEntry(box, { stops: () => stopsTold(app, { pain: told() }), write: () => (hurt && painsLack(facts, pains) === undefined && on !== undefined ? () => write(true) : undefined) });
}
