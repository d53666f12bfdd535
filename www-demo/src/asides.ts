// What was set aside: to be looked at, brought back, saved, emptied.
import type { App } from "./app.ts";
import { list } from "./answer.ts";
import { carefulOf, leaveWords } from "./careful.ts";
import { isCareful, piecesIn, stopsIn } from "./damage.ts";
import { button, el, fill, type Child } from "./element.ts";
import { eraseBox, fileName, openDocument, saveFile } from "./files.ts";
import { isDamage, type StoredEvent } from "./kept.ts";
import { kindWords } from "./kinds.ts";
import { shownName } from "./names.ts";
import { count, countEntries, dayShort } from "./numbers.ts";
import { askOpens, opensBehind } from "./opens.ts";
import { confirmBox } from "./pad.ts";
import { setsOf, type Taken } from "./rejoin.ts";
import type { Aside } from "./store.ts";

/** What is in a piece that was set aside. */
interface Inside {
  /** A whole log, that can take the place of the one here. */
  document: object | undefined;
  events: string[];
  draft: string[];
}

/** Whatever was set aside: an event, a set, or a whole lifter. */
interface Piece extends Partial<StoredEvent> {
  set?: unknown;
  lift?: unknown;
  undo?: unknown;
  version?: unknown;
  header?: unknown;
  plan?: unknown;
  events?: unknown;
  draft?: unknown;
}

function read(text: string): Piece | undefined {
  try {
    return JSON.parse(text) as Piece;
  } catch {
    return undefined;
  }
}

function insideOf(aside: Aside): Inside {
  const found = read(aside.text);
  if (found?.kind) return { document: undefined, events: [aside.text], draft: [] };
  if (found?.set && found?.lift) return { document: undefined, events: [], draft: [aside.text] };
  const events: string[] = Array.isArray(found?.events) ? found.events : [];
  const draft: string[] = Array.isArray(found?.draft) ? found.draft : [];
  const parts = typeof found?.header === "string" && typeof found?.plan === "string" ? [read(found.header), read(found.plan)] : [];
  const log = parts[0] && { format: "bismar-log", version: found?.version, lifter: parts[0], events: events.map(read) };
  const sets = draft.map(read).reduce((all: (Piece | undefined)[], one) => (one?.undo ? all.slice(0, -1) : [...all, one]), []);
  return { document: log && { log, ...(parts[1] ? { plan: parts[1] } : {}), ...(sets.length > 0 ? { draft: sets } : {}) }, events, draft };
}

const line = (text: string): string => {
  const event = read(text);
  return event?.kind ? `${dayShort(event.day ?? "")}: ${kindWords(Object.keys(event.kind)[0] ?? "")}` : `not readable: ${text.slice(0, 80)}`;
};

/** Entries that are not in the log, at its end. */
function addBack(app: App, aside: Aside, inside: Inside): void {
  const lifter = app.store.lifter(aside.lifter);
  if (!lifter) return;
  const known = new Set(lifter.events.map((text) => content(text)));
  const events = inside.events.filter((text) => !known.has(content(text)));
  // What does not fit stays, without what was brought back.
  const rest = (left: string[]): { rest?: string } => (left.length === 0 ? {} : { rest: read(aside.text)?.kind ? aside.text : JSON.stringify({ events: left, draft: [] }) });
  const act = async (): Promise<void> => {
    const now = app.store.lifter(aside.lifter);
    if (!now || app.seenBy(now) !== seen) return app.say("Nothing was brought back: the log changed meanwhile. Look at it, and bring it back again.");
    const { written, left } = app.bringBack(now, events, setsOf(inside.draft), (not) => [{ key: aside.key, ...rest(not) }]);
    if (await written) app.notice = left.length === 0 ? `${countEntries(events.length)} brought back, ${inside.events.length - events.length} were there already.` : `${left.length} of them do not fit the log any more; they stay set aside.`;
    app.refresh();
  };
  const seen = app.seenBy(lifter);
  // What lies in the log since was not seen by whoever wrote what is set aside.
  const only = "What was set aside was written before that was seen. Bring it back only where it holds all the same.";
  askOpens(opensBehind(app, lifter, events), () => void act(), { title: "Bring it back?", yes: "Bring it back", only });
}
/** An entry by what it says, whatever its number. */
function content(text: string): string {
  const event = read(text);
  return event ? JSON.stringify([event.day, event.kind, event.note]) : text;
}

function asidePart(app: App, aside: Aside, found: HTMLElement): HTMLElement {
  const inside = insideOf(aside);
  const name = aside.lifter === "" ? "" : `${shownName(aside.lifter)}: `;
  const size = inside.events.length > 0 ? `, ${countEntries(inside.events.length)}` : "";
  const sets = inside.draft.length > 0 ? `, ${count(inside.draft.length, "set")} of a session going on` : "";
  const here = app.store.lifter(aside.lifter) !== undefined;
  const back = (): void => {
    if (!inside.document) return addBack(app, aside, inside);
    const text = JSON.stringify({ format: "bismar-lifters", version: 1, lifters: [inside.document] });
    try {
      openDocument(app, text, "something set aside was brought back", found, (words, way, whole) => {
        if (whole) void app.store.dropAsides([aside.key]).then(() => way(words));
        else way(words);
      });
      found.scrollIntoView();
    } catch (error) {
      fill(found, el("p", { class: "wrong", role: "alert", "data-refused": true }, `Nothing was changed. ${error instanceof Error ? error.message : String(error)}`));
    }
  };
  return el(
    "li",
    { "data-aside": aside.lifter },
    el("p", {}, `${name}${aside.why}${size}${sets}.`),
    el("details", {}, el("summary", {}, "Look"), inside.events.length > 0 ? list(inside.events.slice(-100).toReversed().map(line)) : el("p", { class: "soft" }, aside.text === "" ? "Nothing is left of it." : aside.text.slice(0, 2000))),
    el(
      "div",
      { class: "row" },
      (inside.document || (here && inside.events.length + inside.draft.length > 0)) && button("Bring back", back, { "data-act": "bring-back" }),
      button("Throw away", () => confirmBox("Throw it away?", "It cannot be brought back then.", "Throw away", () => void app.store.dropAsides([aside.key]).then(() => app.refresh())), {}),
    ),
  );
}

/** Whose log is damaged: to look at what was set aside, and to decide. */
export function damagePart(app: App): Child {
  return app.store.ids().map((id) => {
    const lifter = app.store.lifter(id);
    if (!lifter?.damage) return undefined;
    const name = shownName(id);
    const inside = el("div", {});
    const part = el("section", { class: "caution", "data-damaged": id }, el("h2", {}, `${name}: damaged, and not decided`), inside);
    void app.store.asides().then((all) => {
      if (!part.isConnected) return;
      const own = all.filter((one) => one.lifter === id && isDamage(one.why));
      const events = own.map((one) => one.text).filter((text) => read(text)?.kind && read(text)?.sequence !== undefined);
      const sets = own.map((one) => one.text).filter((text) => read(text)?.set && read(text)?.lift);
      const keys = (texts: string[]): IDBValidKey[] => own.filter((one) => texts.includes(one.text)).map((one) => one.key);
      const decide = (back: boolean): void => {
        const now = app.store.lifter(id);
        if (!now?.damage) return app.refresh();
        const { stops } = now.damage;
        app.notice = back ? "Brought back as far as it fits. What does not fit stays set aside." : "Left out; it stays set aside. Signs, pain and what makes a day more careful are in the log, as far as they can be read.";
        const fit = (left: string[]): string[] => (back ? events.filter((text) => !left.includes(text)) : []);
        const taken = (left: string[]): Taken[] => (back ? keys([...fit(left), ...sets]).map((key) => ({ key })) : []);
        app.decide(now, back ? events : [], back ? sets : [], taken, (left) => {
          // What comes back whole stops by itself; what was thrown away before, or does not fit, as entries that stand alone.
          const whole = new Set(piecesIn(fit(left)));
          return stopsIn([...stops, ...left]).filter((text) => !whole.has(text));
        });
        app.refresh();
      };
      const leave = (): void => {
        const now = app.store.lifter(id);
        const careful = carefulOf(app, now ?? lifter, (now ?? lifter).events, (now?.damage?.stops ?? []).filter(isCareful));
        confirmBox("Leave it out?", leaveWords(name, careful), "Leave it out", () => decide(false));
      };
      fill(
        inside,
        el("p", {}, `${events.length > 0 ? `${countEntries(events.length)} can still be read` : "No entry can be read any more"}${sets.length > 0 ? `, and ${count(sets.length, "set")} of a session going on` : ""}.`),
        events.length > 0 && el("details", { open: events.length <= 10 }, el("summary", {}, "Look"), list(events.slice(-100).map((text) => `${line(text)}${own.find((one) => one.text === text)?.why === "not as it was written" ? " (damaged: what it says may be wrong)" : ""}`))),
        el("p", { class: "soft" }, "A file that was saved before may hold what is lost: open it above, it shows what it would add."),
        el(
          "div",
          { class: "row" },
          events.length + sets.length > 0 && button("Bring back what fits", () => decide(true), { "data-act": "damage-back" }),
          button("Leave it out", () => leave(), { "data-act": "damage-leave" }),
        ),
      );
    });
    return part;
  });
}

export function asidesPart(app: App): Child {
  const inside = el("div", {});
  const found = el("div", {});
  const part = el("section", {}, el("h2", {}, "Set aside"), inside, found);
  void app.store.asides().then((all) => {
    if (!part.isConnected) return;
    fill(
      inside,
      el("p", { class: "soft" }, all.length === 0 ? "Nothing is set aside." : "What something else took the place of, or what was not as it was written. It holds health detail like the log."),
      el("ul", { class: "kit" }, all.map((one) => asidePart(app, one, found))),
      el(
        "div",
        { class: "row" },
        button("Save what was set aside", () => saveFile(fileName("set-aside", "json"), JSON.stringify(all, null, 1), "application/json")),
        all.length > 0 && button("Empty it", () => confirmBox("Throw everything set aside away?", "It cannot be brought back then.", "Throw away", () => void app.store.dropAsides(all.map((one) => one.key)).then(() => app.refresh())), { class: "danger", "data-act": "empty" }),
      ),
    );
  });
  return part;
}

/** Logs that cannot be read: left as they lie, to be saved or erased. */
export function unreadablePart(app: App): Child {
  return [...app.store.unreadable.values()].map((one) =>
    el(
      "section",
      { "data-unreadable": one.id },
      el("h2", {}, `${shownName(one.id)} cannot be read`),
      el("p", {}, `${one.words} The log lies on this device as it was written.`),
      el(
        "div",
        { class: "row" },
        button("Save it as it is", () => saveFile(fileName(one.id, "json"), JSON.stringify({ ...one.row, events: one.events, draft: one.draft }, null, 1), "application/json")),
        button(`Erase ${shownName(one.id)}`, () => eraseBox(app, one.id), { class: "danger" }),
      ),
    ),
  );
}
