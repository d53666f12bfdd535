// What the page knows at any moment: lifters, the one in view, the day, the gym's kit.
import type { AfterSets, Bar, EntriesAnswer, EventKindInput, HistoryAnswer, Implement, Less, LifterAnswer, Plan, PlanInput, Rack, Lifter, RecordParameters, Place, StopsAnswer, TodayAnswer, TodayAskedInput, WorkSet } from "bismar-page-package";
import { closeFor } from "./boxes.ts";
import { el } from "./element.ts";
import { carefulOf } from "./careful.ts";
import { asideWords, damageWords, heldStops, heldWords, isCareful, putStops, unfit } from "./damage.ts";
import { ask, attempt, kindOf, Refused, type Tried } from "./engine.ts";
import { dayLong, deviceDay, setUnit, unitNow, type Mass } from "./numbers.ts";
import { Store, type Loaded } from "./store.ts";
import { homeKit, implementName, poundsKit, type Kit } from "./kit.ts";
import { logOf, parsed, type StoredEvent } from "./kept.ts";
import { shownName } from "./names.ts";
import { capital, narrowing } from "./less.ts";
import { leaveBox, type Unsaid } from "./leave.ts";
import { dayAllowed } from "./days.ts";
import { asSeen, read, repoint, setOtherwise, textAt, type Taken } from "./rejoin.ts";
import type { SetFacts } from "./set_sheet.ts";
import type { SetSetup } from "./setup.ts";

export interface DraftSet {
  lift: string;
  set: WorkSet;
  /** On which day it was lifted. */
  day?: string;
  /** Where it was done; absent means as granted. */
  place?: Place;
  /** How many repetitions were to be left in reserve. */
  reserve?: number;
  cue?: string;
  setup?: SetSetup;
}

/** Takes the last set off the list again. */
export interface DraftUndo {
  undo: true;
}

/** An entry that was written here: its log as it was then, and its number there. */
export interface Written {
  lifter: Loaded;
  sequence: number;
}

/** What is supposed beside the log. */
export type Supposed = Pick<TodayAskedInput, "suppose" | "away">;

export class App {
  store: Store;
  view = "today";
  /** What a view keeps while it is open. */
  kept: Record<string, unknown> = {};
  notice = "";
  private changed: () => void = () => undefined;
  private said: () => void = () => undefined;
  /** How often the coach went from one view to another. */
  private visits = 0;
  private cache = new Map<string, unknown>();
  /** Logs that the library keeps open, with what each is known to hold. */
  private logs = new Map<string, { number: number; mark: string }>();

  constructor(store: Store) {
    this.store = store;
    this.readSettings();
    this.current = this.firstInView();
  }
  /** Who was in view last, else anybody who is here. */
  private firstInView(): string | undefined {
    const [first, ids] = [this.store.setting("lifter"), this.store.ids()];
    return first !== undefined && ids.includes(first) ? first : ids[0];
  }
  current: string | undefined;
  /** Who is in view, and what stands stopped for them, as it was drawn last. */
  drawn: { id: string | undefined; stop: string[] } = { id: undefined, stop: [] };
  /** A set that was half entered when it hurt. */
  half: { of: string; lift: string; number: number; facts: SetFacts } | undefined;
  /** The device's day, where somebody said that it is right although it is far from the log. */
  daySaid: string | undefined;

  /** Settings as they are stored; what cannot be used is set aside and said. */
  private readSettings(): void {
    const [unit, kit] = [this.store.setting("unit"), this.store.setting("kit")];
    setUnit(unit === "lb" ? "lb" : "kg");
    if (kit === undefined) return;
    let read: Partial<Kit> | null = {};
    try {
      read = JSON.parse(kit) as Partial<Kit> | null;
    } catch {
      // What is no JSON has no bars either, and is refused below.
    }
    const { implements: all, stock, blocks } = read ?? {};
    if (!all || !stock || attempt("page.check_kit", { implements: all, stock, ...(blocks === undefined ? {} : { blocks }) }).refused)
      this.store.dropSetting("kit", "the gym\u2019s bars and discs: not as they were written", "The list of bars and discs of this gym could not be read: it is set aside, and the first list is used. Look at it under Gym.");
  }

  /** `changed` draws the view anew; `said` only what the page has to say about storing. */
  onChange(changed: () => void, said: () => void): void {
    this.changed = changed;
    this.said = said;
    this.store.onStored = said;
    this.store.onOther = (words) => {
      const was = this.drawn;
      const before = this.logs.get(this.current ?? "");
      this.notice = words;
      // Storage that answered late: nobody could be in view before.
      if (this.current === undefined && this.view === "today") this.current = this.firstInView();
      if (this.current !== undefined && !this.store.lifter(this.current)) {
        // Nothing of somebody who was erased stays in view, nor in mind.
        this.current = this.store.ids()[0];
        if (this.view !== "begin") this.kept = {};
        this.forgetAnswers();
      }
      this.readSettings();
      const less = this.lessSince(was.id, before);
      const held = narrowing(less).map(({ what }) => capital(what.replace(/,$/, "")));
      if (held.length > 0) this.notice = `${words} ${held.join("; ")}: recorded there. Look at it first; what stood open here and might open it was closed.`;
      changed();
      const { id, stop } = this.drawn;
      if (id !== was.id) this.closeBoxes([]);
      else if (stop.some((one) => !was.stop.includes(one))) this.closeBoxes(stop);
      else if (less.length > 0) {
        if (held.length > 0) for (const box of document.querySelectorAll<HTMLDialogElement>("dialog[open][data-opens]")) closeFor(box, held);
        for (const box of document.querySelectorAll("dialog[open]")) box.dispatchEvent(new CustomEvent("less", { detail: held }));
      }
    };
  }
  /** What narrows a lift of whoever is in view since another window wrote: the log that was open here is held against the new one. */
  private lessSince(id: string | undefined, before: { number: number; mark: string } | undefined): Less[] {
    const { lifter } = this;
    if (!lifter || !before || lifter.id !== id || lifter.damage || this.logs.get(id) !== before || this.mark(lifter) === before.mark) return [];
    this.logs.delete(id);
    const tried = attempt("page.opens", { log: this.log(lifter), instead: before.number, today: this.day(lifter), unit: unitNow() });
    ask("page.close", { log: before.number });
    return tried.answer?.less ?? [];
  }
  /** What stands open belongs to what was seen before it; what asks the day of something entered already stays, with the
   * stop above it. */
  private closeBoxes(stop: string[]): void {
    for (const box of document.querySelectorAll<HTMLDialogElement>("dialog[open]")) {
      if (box.dataset.stays === undefined || stop.length === 0) closeFor(box, stop.slice(0, 1));
      else box.prepend(el("p", { class: "wrong", role: "alert" }, stop[0]));
    }
  }
  /** Shows what is true on screen at once, and says when it is on the device. */
  writing(written: Promise<boolean>, good: string): void {
    const before = this.notice;
    void written.then((kept) => {
      // What another window's writing has to say meanwhile stays, unless there is something to say.
      if (kept && (good !== "" || this.notice === before)) this.notice = good;
      this.said();
    });
  }
  refresh(): void {
    this.changed();
  }
  /** The device's day as it was when the view was drawn. */
  drawnOn = deviceDay();
  /** Whether the view is of a day that is over. Then it is drawn anew, and says so; half-typed words stay until the next tap. */
  dayTurned(): boolean {
    const now = deviceDay();
    if (this.drawnOn === now) return false;
    this.notice = `The day has changed: it is ${dayLong(now)} now. What is shown is worked out anew; look at it first.`;
    if (document.activeElement?.matches("main :is(input, textarea, select)")) this.said();
    else this.changed();
    return true;
  }

  /** Has a view open, without drawing it. */
  open(view: string, kept: Record<string, unknown> = {}): void {
    this.visits += 1;
    this.view = view;
    this.kept = kept;
    this.notice = "";
  }
  /** What waits for storage before it goes to a view: whoever went elsewhere meanwhile stays there, and only reads the words. */
  wayTo(view: string): (words?: string) => void {
    const from = this.visits;
    return (words) => {
      if (this.visits === from) this.go(view);
      this.say(words);
    };
  }
  /** Has words above the view, and leaves the view as it is: something may be half typed there. */
  say(words = this.notice): void {
    this.notice = words;
    this.said();
  }

  /** What would be lost by going elsewhere; each view says so as it is drawn. */
  unsaid: Unsaid | undefined;
  /** Goes on where nothing would be lost, or once that is written down or knowingly left. */
  leave(then: () => void): void {
    const { unsaid } = this;
    if (!unsaid) return then();
    const go = (): void => {
      this.unsaid = undefined;
      then();
    };
    leaveBox(unsaid, () => void unsaid.write?.().then((done) => done && go()), go);
  }

  go(view: string, kept: Record<string, unknown> = {}): void {
    if (this.unsaid) return this.leave(() => this.go(view, kept));
    this.open(view, kept);
    try {
      if (location.hash !== `#${view}`) history.pushState(null, "", `#${view}`);
    } catch {
      // Some browsers refuse after many views in a few seconds; then only the way back is shorter.
    }
    this.changed();
    globalThis.scrollTo(0, 0);
    document.querySelector<HTMLElement>("main h1")?.focus();
  }

  get lifter(): Loaded | undefined {
    return this.current === undefined ? undefined : this.store.lifter(this.current);
  }
  header(lifter: Loaded): Pick<Lifter, "id" | "born" | "invented"> {
    return JSON.parse(lifter.header) as Lifter;
  }
  /** Has a lifter in view, here at once, and when the page is opened again. */
  async nowOf(id: string): Promise<void> {
    this.current = id;
    await this.store.set("lifter", id);
  }
  async choose(id: string): Promise<void> {
    if (this.unsaid) return this.leave(() => void this.choose(id));
    const kept = this.nowOf(id);
    this.go("today");
    await kept;
  }
  /** Has somebody in view whose log is being written, and goes to Today once it is on the device. */
  async arrive(id: string, written: Promise<boolean>): Promise<void> {
    const way = this.wayTo("today");
    const kept = this.nowOf(id);
    await written;
    await kept;
    way();
  }

  logText(lifter: Loaded): string {
    return logOf(lifter, lifter.events);
  }

  /** The number under which the library keeps a lifter's log open. Read whole once; what is appended goes through
   * `append`. A log that was replaced is opened anew. */
  log(lifter: Loaded): number {
    const kept = this.logs.get(lifter.id);
    const mark = this.mark(lifter);
    if (kept?.mark === mark) return kept.number;
    if (kept) ask("page.close", { log: kept.number });
    this.logs.delete(lifter.id);
    const number = this.store.openLog(lifter) ?? ask("page.open", { log: this.logText(lifter) });
    this.logs.set(lifter.id, { number, mark });
    return number;
  }
  /** The open log has these more at its end. */
  private grown(lifter: Loaded, texts: string[]): void {
    const kept = this.logs.get(lifter.id);
    if (!kept || texts.length === 0) return;
    const seal = texts.reduce((before, text) => ask("page.seal", { before, text }), lifter.seal);
    kept.mark = this.mark({ ...lifter, events: [...lifter.events, ...texts], seal });
  }

  /** Asked once for the same log, day and plan. */
  private once<T>(key: string, make: () => T): T {
    const found = this.cache.get(key);
    if (found !== undefined) return found as T;
    const made = make();
    if (this.cache.size > 60) this.cache.clear();
    this.cache.set(key, made);
    return made;
  }
  /** Asked once for the same log, day, plan and unit. */
  told<T>(lifter: Loaded, what: string, make: () => T): T {
    return this.once(`told ${what} ${this.seenBy(lifter)} ${this.day(lifter)} ${unitNow()}`, make);
  }
  /** Whether it was asked before, so that it is there at once. */
  isTold(lifter: Loaded, what: string): boolean {
    return this.cache.has(`told ${what} ${this.seenBy(lifter)} ${this.day(lifter)} ${unitNow()}`);
  }
  /** Nothing that was worked out before is kept: of somebody who was erased nothing stays. */
  forgetAnswers(): void {
    this.cache.clear();
    for (const { number } of this.logs.values()) ask("page.close", { log: number });
    this.logs.clear();
  }
  /** What a log is known by: its header, and the seal of its last event, which stands for all of them. */
  private mark(lifter: Loaded): string {
    return `${lifter.version} ${lifter.header}\u0000${lifter.events.length} ${lifter.seal}`;
  }

  /** The same with the plan beside it. */
  seenBy(lifter: Loaded): string {
    return `${this.mark(lifter)}\u0000${lifter.plan}`;
  }

  /** Why the device's day is none that the library counts with; nothing where it is one. */
  dayWrong(): string | undefined {
    return attempt("page.day", { day: deviceDay(), plus: 0 }).refused?.message;
  }
  /** The device's day, or that of the last entry where the device has none that can be counted with; for an invented lifter the day after the last session, so that the demo never grows old. */
  day(lifter: Loaded): string {
    const last = this.lastDay(lifter);
    if (last === undefined) return deviceDay();
    if (this.dayWrong() !== undefined) return last;
    if (!this.header(lifter).invented) return last > deviceDay() ? last : deviceDay();
    return ask("page.day", { day: last, plus: this.facts(lifter).dayOver ? 1 : 0 });
  }
  lastDay(lifter: Loaded): string | undefined {
    return this.facts(lifter).lastDay;
  }
  clockBehind(lifter: Loaded): boolean {
    const last = this.lastDay(lifter);
    return !this.header(lifter).invented && last !== undefined && last > deviceDay();
  }

  today(lifter: Loaded, more: Supposed = {}, plan = lifter.plan): Tried<TodayAnswer> {
    if (lifter.damage) return { refused: new Refused("not_ready", heldWords(lifter.id), "") };
    const today = this.day(lifter);
    return this.once(`today ${this.mark(lifter)} ${today} ${unitNow()} ${plan} ${JSON.stringify(more)}`, () =>
      attempt("page.today", { log: this.log(lifter), plan, today, unit: unitNow(), ...more }),
    );
  }
  /** What is stopped, from the log alone: whatever is planned, and though no session can be worked out. Of a log that is
   * damaged everything is, with the stops among what was set aside. */
  stops(lifter: Loaded): StopsAnswer {
    const { damage } = lifter;
    const today = this.day(lifter);
    if (!damage) return this.stopsWritten(lifter);
    const lifts = (this.parameters(lifter)?.lifts ?? []).map((one) => one.id);
    return this.once(`held ${this.mark(lifter)} ${today} ${JSON.stringify(damage)}`, () => heldStops(lifter, lifter.events, damage, today, lifts));
  }
  /** Lifters here whose names differ in a number only: copies of one log, as far as anybody can tell. */
  copiesOf(id: string): string[] {
    const bare = (name: string): string => name.replace(/ \(\d+\)$/, "");
    return this.store.ids().filter((other) => other !== id && bare(other) === bare(id));
  }
  /** Of a copy of the lifter in view: a stop that is not in force for the one in view. */
  stopElsewhere(): { id: string; stop: string }[] {
    const { lifter } = this;
    if (!lifter) return [];
    const own = this.stops(lifter).inForce.map((one) => one.what);
    return this.copiesOf(lifter.id).flatMap((id) => {
      const other = this.store.lifter(id);
      const found = other && this.stops(other);
      return found?.lines[0] !== undefined && found.inForce.some((one) => !own.includes(one.what)) ? [{ id, stop: found.lines[0] }] : [];
    });
  }
  /** Of a copy of the lifter in view: what narrows a lift there and not here. */
  lessElsewhere(): { id: string; less: Less[] }[] {
    const { lifter } = this;
    if (!lifter || lifter.damage) return [];
    return this.copiesOf(lifter.id).flatMap((id) => {
      const other = this.store.lifter(id);
      if (!other || other.damage) return [];
      const { answer } = this.once(`less ${this.mark(other)} ${this.mark(lifter)} ${this.day(other)} ${unitNow()}`, () =>
        attempt("page.opens", { log: this.log(other), instead: this.log(lifter), today: this.day(other), unit: unitNow() }),
      );
      const less = narrowing(answer?.less ?? []);
      return less.length > 0 ? [{ id, less }] : [];
    });
  }
  private stopsWritten(lifter: Loaded): StopsAnswer {
    const today = this.day(lifter);
    return this.once(`stops ${this.mark(lifter)} ${today}`, () => ask("page.stops", { log: this.log(lifter), today }));
  }
  /** What is damaged, whosever it is, until somebody has decided. What stops somebody is said only where that lifter is in
   * view (`open`), and under Files. */
  damaged(open: boolean): string[] {
    return this.store.ids().flatMap((id) => {
      const lifter = this.store.lifter(id);
      if (lifter?.damage && !(this.view === "files" || (open && id === this.current))) return [asideWords(id)];
      return lifter?.damage ? [damageWords(lifter.damage, this.stops(lifter).inForce, this.stopsWritten(lifter).inForce)] : [];
    });
  }
  history(lifter: Loaded): HistoryAnswer {
    const today = this.day(lifter);
    return this.once(`history ${this.mark(lifter)} ${today}`, () =>
      ask("page.history", { log: this.log(lifter), today }),
    );
  }
  /** The latest entries of the log, each with what corrections made of it. */
  entries(lifter: Loaded, most: number): EntriesAnswer {
    return this.once(`entries ${this.mark(lifter)} ${most}`, () => ask("page.entries", { log: this.log(lifter), most }));
  }
  /** What is set for a lifter and where each lift stands. */
  facts(lifter: Loaded): LifterAnswer {
    return this.once(`lifter ${this.mark(lifter)}`, () => ask("page.lifter", { log: this.log(lifter) }));
  }
  private rackKey(lifter: Loaded, lift: string): string {
    return `rack ${this.mark(lifter)} ${this.day(lifter)} ${lifter.plan} ${lift}`;
  }
  /** How each load of a lift is made today, with the fewest disc moves; nothing where it cannot be told. */
  rack(lifter: Loaded, lift: string): Rack | undefined {
    return this.once(this.rackKey(lifter, lift), () =>
      attempt("page.rack", { log: this.log(lifter), plan: lifter.plan, lift, today: this.day(lifter) }),
    ).answer;
  }
  /** The same where it was worked out before. */
  rackKnown(lifter: Loaded, lift: string): Rack | undefined {
    return (this.cache.get(this.rackKey(lifter, lift)) as Tried<Rack> | undefined)?.answer;
  }
  /** What comes after these sets of a lift, by the rules. */
  afterSets(lifter: Loaded, lift: string, sets: WorkSet[]): Tried<AfterSets> {
    const today = this.day(lifter);
    return this.once(`after ${this.mark(lifter)} ${today} ${unitNow()} ${lifter.plan} ${lift} ${JSON.stringify(sets)}`, () =>
      attempt("page.after_sets", { log: this.log(lifter), plan: lifter.plan, lift, sets, today, unit: unitNow() }),
    );
  }
  parameters(lifter: Loaded): RecordParameters | undefined {
    return this.facts(lifter).parameters;
  }

  /** The plan of a lifter. */
  plan(lifter: Loaded): Plan {
    return this.once(`plan ${lifter.plan}`, () => ask("page.plan", { plan: lifter.plan }));
  }

  /** What people call a lift; its id where it has no name. */
  liftName(id: string, lifter = this.lifter): string {
    const found = lifter && this.parameters(lifter)?.lifts.find((one) => one.id === id);
    return shownName(found?.name ?? id);
  }
  /** What people call a region; its id where it has no name. */
  regionName(id: string, lifter = this.lifter): string {
    const found = lifter && this.parameters(lifter)?.regions.find((one) => one.id === id);
    return shownName(found?.name ?? id);
  }

  /** Bars and discs in view: the lifter's, else the gym's. */
  kit(): Kit {
    const parameters = this.lifter && this.parameters(this.lifter);
    if (parameters) return { implements: parameters.implements, stock: parameters.stock, blocks: parameters.blocks ?? [] };
    return this.gymKit();
  }
  gymKit(): Kit {
    const kept = this.store.setting("kit");
    if (kept !== undefined) return JSON.parse(kept) as Kit;
    return unitNow() === "kg" ? homeKit() : poundsKit();
  }
  /** The bar chosen on this device, else the first. */
  bar(): Implement & { bar: Bar } {
    const bars = [...this.kit().implements, ...homeKit().implements].filter((one): one is { bar: Bar } => kindOf(one, "bar") !== undefined);
    const wanted = this.store.setting("bar");
    return bars.find((one) => implementName(one) === wanted) ?? (bars[0] as { bar: Bar });
  }
  /** The load to begin a question with: today's first, else the empty bar. */
  startLoad(): Mass {
    const lifter = this.lifter;
    const lift = lifter && this.today(lifter).answer?.session.lifts.find((one) => one.load);
    return lift?.load ?? ask("page.mass", { mass: unitNow() === "kg" ? { kg: 62.5 } : { lb: 145 } });
  }

  /** The number that an entry has in the log as it is now; nothing where it is no longer that entry. */
  numberNow(seen: Loaded, sequence: number): number | undefined {
    const [text, now] = [textAt(seen.events, sequence), this.store.lifter(seen.id)];
    if (text === undefined || !now) return undefined;
    const moved = this.store.now(seen.id, text);
    if (moved !== text) return now.events.includes(moved) ? read(moved).sequence : undefined;
    return seen === now || asSeen(seen.events, now.events, sequence) ? sequence : undefined;
  }
  /** The same event, with the number that the entry which it speaks of has now; nothing where that is another by now. */
  private spokenOf(seen: Loaded, kind: EventKindInput): EventKindInput | undefined {
    const [correction, morning] = [kindOf(kind, "correction"), kindOf(kind, "nextDayReport")];
    if (correction) {
      const replaces = this.numberNow(seen, correction.replaces);
      return replaces === undefined ? undefined : { correction: { ...correction, replaces } };
    }
    if (!morning) return kind;
    const session = this.numberNow(seen, morning.session);
    return session === undefined ? undefined : { nextDayReport: { ...morning, session } };
  }

  /** Whether an event was written: see `write`. */
  async record(seen: Loaded, kind: EventKindInput, note?: string, ends?: DraftSet[], on?: string, said?: string): Promise<boolean> {
    return (await this.write(seen, kind, note, ends, on, said)) !== undefined;
  }
  /** Writes an event after the library has taken it; refused events are not written. Whoever calls may have had the
   * lifter since before a box was opened, and another window may have written since: what is here now is added to, and
   * what speaks of an entry is written only where that is still the entry that was seen. A session ends the sets that were
   * seen (`ends`). */
  async write(seen: Loaded, of: EventKindInput, note?: string, ends?: DraftSet[], on?: string, said = "Recorded."): Promise<Written | undefined> {
    const { id } = seen;
    const not = (why: string): undefined => {
      this.notice = `Not recorded. ${why}`;
      this.refresh();
      return undefined;
    };
    const gone = `${shownName(id)} was erased in another window.`;
    const asked = this.store.lifter(id);
    if (!asked) return not(gone);
    const day = await dayAllowed(this, asked, of, on);
    const lifter = this.store.lifter(id);
    if (!lifter) return not(gone);
    if (day === undefined) return not("Set the date of this device first.");
    // It says all that is set: written on other settings than it was made from, it would take those back unseen.
    if (kindOf(of, "parametersChanged") && seen !== lifter && setOtherwise(lifter, seen.events, lifter.events))
      return not("The lifts, bars or discs were changed meanwhile: look at them first.");
    const kind = this.spokenOf(seen, of);
    if (!kind) return not("What it speaks of is no longer in the log as it was seen: another window wrote to it.");
    const tried = attempt("page.append", { log: this.log(lifter), day, kind, ...(note ? { note } : {}) });
    if (tried.refused) return not(tried.refused.message);
    const { text, sequence } = tried.answer;
    this.grown(lifter, [text]);
    this.notice = "";
    this.writing(this.store.append(lifter.id, [text], ends?.map((one) => JSON.stringify(one))), said);
    return { lifter, sequence };
  }

  /** Takes the sets that were seen off the list without an entry: whoever calls sets them aside. */
  endList(id: string, ends: DraftSet[], said: string): void {
    this.writing(this.store.append(id, [], ends.map((one) => JSON.stringify(one))), said);
  }

  /** Adds to the session that is going on. An undo says which set it takes off. */
  addDraft({ id }: Loaded, entries: (DraftSet | DraftUndo)[], off?: DraftSet): void {
    const lifter = this.store.lifter(id);
    if (!lifter) return;
    if (off && JSON.stringify(this.draft(lifter).at(-1)) !== JSON.stringify(off)) {
      this.notice = "No set was taken off the list: another window changed it.";
      this.refresh();
      return;
    }
    const day = this.draftDay(lifter) ?? this.day(lifter);
    this.writing(this.store.addDraft(lifter.id, entries.map((entry) => JSON.stringify("undo" in entry ? entry : { ...entry, day }))), "");
    this.refresh();
  }

  /** Changes the plan that is stored, which may be another than the one that was drawn; gives nothing where it does not fit. */
  putPlan(seen: Loaded, change: (plan: Plan) => PlanInput | undefined): void {
    const changed = (plan: string): string | undefined => {
      const next = change(ask("page.plan", { plan }));
      return next && ask("page.plan_text", { plan: next });
    };
    const lifter = this.store.lifter(seen.id);
    const text = lifter && changed(lifter.plan);
    if (!lifter) this.notice = `Not changed. ${shownName(seen.id)} was erased in another window.`;
    else if (text === undefined) this.notice = "Not changed. The plan is another by now: look at it first.";
    else {
      // What is worked out for this is what the view shows next.
      const tried = this.today(lifter, {}, text);
      if (tried.refused) this.notice = `Not changed. ${tried.refused.message}`;
      else this.writing(this.store.putPlan(lifter.id, text, changed), "");
    }
    this.refresh();
  }

  /** Entries from elsewhere at the end of an open log that has grown, with new numbers: as they are there, and those that do not fit. */
  joined(log: number, events: string[]): { texts: string[]; left: string[] } {
    const numbers = new Map<number, number>();
    const left: string[] = [];
    const texts: string[] = [];
    for (const text of events) {
      const event = parsed(text) as StoredEvent | null | undefined;
      // What cannot be read fits nowhere.
      if (!event?.kind) {
        left.push(text);
        continue;
      }
      repoint(event, numbers);
      const [one] = ask("page.join", { log, events: [JSON.stringify(event)] }).texts;
      if (one === undefined) left.push(text);
      else {
        numbers.set(event.sequence, read(one).sequence);
        texts.push(one);
      }
    }
    return { texts, left };
  }

  /** Brings back what was set aside, in its order, as far as it fits; `taken` says what that takes out of what is set aside. Gives
   * whether it was written, and what does not fit. */
  bringBack(lifter: Loaded, events: string[], draft: string[], taken: (left: string[]) => Taken[]): { written: Promise<boolean>; left: string[] } {
    const { texts, left } = this.joined(this.log(lifter), events);
    this.grown(lifter, texts);
    return { written: this.store.putBehind(lifter.id, { events: texts, draft, takes: taken(left) }), left };
  }

  /** Decides on what is damaged: what is brought back, and stops that count though the rest of theirs does not. */
  decide(lifter: Loaded, events: string[], draft: string[], taken: (left: string[]) => Taken[], stops: (left: string[]) => string[]): void {
    const { texts, left } = this.joined(this.log(lifter), events);
    const found = stops(left);
    // What makes a day more careful goes first: a clearance must not answer for a stop that comes with it.
    const careful = carefulOf(this, lifter, [...lifter.events, ...texts], found.filter(isCareful));
    texts.push(...this.joined(this.log(lifter), careful.texts).texts);
    const put = putStops(this.log(lifter), found.filter((text) => !isCareful(text)));
    this.grown(lifter, [...texts, ...put.texts]);
    if (careful.not.length > 0) this.notice = `${this.notice} Not put into the log, since it would open something or does not fit: ${careful.not.join("; ")}.`;
    const held = unfit(lifter.id, put.left);
    if (held) this.notice = `${this.notice} ${held.words} No load is shown until it fits: bring back what was set aside, or set what it needs.`;
    const behind = { events: [...texts, ...put.texts], draft, takes: taken(left), holds: { now: held } };
    this.writing(this.store.putBehind(lifter.id, behind), this.notice);
  }

  /** The day of the session that is going on; it stays when midnight passes. */
  draftDay(lifter: Loaded): string | undefined {
    return this.draft(lifter)[0]?.day;
  }
  draft(lifter: Loaded): DraftSet[] {
    const sets: DraftSet[] = [];
    for (const text of lifter.draft) {
      const entry = JSON.parse(text) as DraftSet | DraftUndo;
      if ("undo" in entry) sets.pop();
      else sets.push(entry);
    }
    return sets;
  }
}
