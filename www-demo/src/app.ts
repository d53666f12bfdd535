// What the page knows at any moment: lifters, the one in view, the day, the gym's kit.
import { ask, attempt, Refused, type Tree } from "./engine.ts";
import { deviceDay, setUnit, unitNow, type Mass } from "./numbers.ts";
import { Store, type Loaded } from "./store.ts";
import { homeKit, poundsKit, type Kit } from "./kit.ts";
import { logOf } from "./kept.ts";
import { shownName } from "./names.ts";
import { dayAllowed } from "./days.ts";

export interface DraftSet {
  lift: string;
  set: Tree;
  /** On which day it was lifted. */
  day?: string;
  /** Where it was done; absent means as granted. */
  place?: Tree;
  cue?: string;
  setup?: Tree;
}

export interface Today {
  session: Tree;
  /** What stands above everything else where something is stopped. */
  stop: string[];
  lines: Tree[];
  cautions: { code: string; text: string }[];
}

export class App {
  store: Store;
  view = "today";
  /** What a view keeps while it is open. */
  kept: Record<string, Tree> = {};
  notice = "";
  private changed: () => void = () => undefined;
  private said: () => void = () => undefined;
  private cache = new Map<string, Tree>();
  /** Logs that the library keeps open, with what each is known to hold. */
  private logs = new Map<string, { number: number; mark: string }>();

  constructor(store: Store) {
    this.store = store;
    this.readSettings();
    const first = store.setting("lifter");
    this.current = first !== undefined && store.ids().includes(first) ? first : store.ids()[0];
  }
  current: string | undefined;
  /** The device's day, where somebody said that it is right although it is far from the log. */
  daySaid: string | undefined;

  /** Settings as they are stored; what cannot be used is set aside and said. */
  private readSettings(): void {
    const [unit, kit] = [this.store.setting("unit"), this.store.setting("kit")];
    setUnit(unit === "lb" ? "lb" : "kg");
    if (kit === undefined) return;
    let read: Tree;
    try {
      read = JSON.parse(kit);
    } catch {
      read = undefined;
    }
    const { implements: all, stock, blocks } = read ?? {};
    if (attempt("page.check_kit", { implements: all ?? 0, stock: stock ?? 0, ...(blocks === undefined ? {} : { blocks }) }).refused)
      this.store.dropSetting("kit", "the gym\u2019s bars and discs: not as they were written", "The list of bars and discs of this gym could not be read: it is set aside, and the first list is used. Look at it under Gym.");
  }

  /** `changed` draws the view anew; `said` only what the page has to say about storing. */
  onChange(changed: () => void, said: () => void): void {
    this.changed = changed;
    this.said = said;
    this.store.onOther = (words) => {
      this.notice = words;
      if (this.current !== undefined && !this.store.lifter(this.current)) this.current = this.store.ids()[0];
      this.readSettings();
      changed();
    };
  }
  /** Shows what is true on screen at once, and says when it is on the device. */
  writing(written: Promise<boolean>, good: string): void {
    void written.then((kept) => {
      if (kept) this.notice = good;
      this.said();
    });
  }
  refresh(): void {
    this.changed();
  }

  go(view: string, kept: Record<string, Tree> = {}): void {
    this.view = view;
    this.kept = kept;
    this.notice = "";
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
  header(lifter: Loaded): { id: string; born?: string; age?: Tree; invented?: boolean } {
    return JSON.parse(lifter.header);
  }
  /** Has a lifter in view, here and when the page is opened again. */
  async nowOf(id: string): Promise<void> {
    this.current = id;
    await this.store.set("lifter", id);
  }
  async choose(id: string): Promise<void> {
    await this.nowOf(id);
    this.go("today");
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
    const number: number = ask("page.open", { log: this.logText(lifter) });
    this.logs.set(lifter.id, { number, mark });
    return number;
  }
  /** Adds an event to the open log, or says why it does not fit; the caller keeps what was taken. */
  private tryAppend(lifter: Loaded, text: string): Refused | undefined {
    const tried = attempt("page.append", { log: this.log(lifter), event: text });
    const kept = this.logs.get(lifter.id);
    if (!tried.refused && kept) kept.mark = this.mark({ ...lifter, events: [...lifter.events, text], seal: ask("page.seal", { before: lifter.seal, text }) });
    return tried.refused;
  }

  /** Asked once for the same log, day and plan. */
  private once(key: string, make: () => Tree): Tree {
    const found = this.cache.get(key);
    if (found !== undefined) return found;
    const made = make();
    if (this.cache.size > 60) this.cache.clear();
    this.cache.set(key, made);
    return made;
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

  /** The device's day; for an invented lifter the day after the last session, so that the demo never grows old. */
  day(lifter: Loaded): string {
    const last = this.lastDay(lifter);
    if (last === undefined) return deviceDay();
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

  today(lifter: Loaded, more: Record<string, Tree> = {}, plan = lifter.plan): { answer?: Today; refused?: Refused } {
    const today = this.day(lifter);
    return this.once(`today ${this.mark(lifter)} ${today} ${unitNow()} ${plan} ${JSON.stringify(more)}`, () =>
      attempt("page.today", { log: this.log(lifter), plan, today, unit: unitNow(), ...more }),
    );
  }
  history(lifter: Loaded): Tree {
    const today = this.day(lifter);
    return this.once(`history ${this.mark(lifter)} ${today}`, () =>
      ask("page.history", { log: this.log(lifter), today }),
    );
  }
  /** What is set for a lifter and where each lift stands. */
  facts(lifter: Loaded): Tree {
    return this.once(`lifter ${this.mark(lifter)}`, () => ask("page.lifter", { log: this.log(lifter) }));
  }
  private rackKey(lifter: Loaded, lift: string): string {
    return `rack ${this.mark(lifter)} ${this.day(lifter)} ${lifter.plan} ${lift}`;
  }
  /** How each load of a lift is made today, with the fewest disc moves; nothing where it cannot be told. */
  rack(lifter: Loaded, lift: string): Tree | undefined {
    return this.once(this.rackKey(lifter, lift), () =>
      attempt("page.rack", { log: this.log(lifter), plan: lifter.plan, lift, today: this.day(lifter) }),
    ).answer;
  }
  /** The same where it was worked out before. */
  rackKnown(lifter: Loaded, lift: string): Tree | undefined {
    return this.cache.get(this.rackKey(lifter, lift))?.answer;
  }
  /** What comes after these sets of a lift, by the rules; each set as JSON text as the log spells it. */
  afterSets(lifter: Loaded, lift: string, sets: string[]): { next: Tree; why: string[] } | undefined {
    const today = this.day(lifter);
    return this.once(`after ${this.mark(lifter)} ${today} ${unitNow()} ${lifter.plan} ${lift} ${sets.join()}`, () =>
      attempt("page.after_sets", { log: this.log(lifter), plan: lifter.plan, lift, sets, today, unit: unitNow() }),
    ).answer;
  }
  parameters(lifter: Loaded): Tree | undefined {
    return this.facts(lifter).parameters;
  }

  /** What is set for the lifts, as the log spells it: a copy, to be changed and written again. */
  parametersToChange(lifter: Loaded): Tree {
    return JSON.parse(ask("page.parameters", { log: this.log(lifter) }));
  }

  /** What people call a lift; its id where it has no name. */
  liftName(id: string, lifter = this.lifter): string {
    const found = lifter && this.parameters(lifter)?.lifts.find((one: Tree) => one.id === id);
    return shownName(found?.name ?? id);
  }
  /** What people call a region; its id where it has no name. */
  regionName(id: string): string {
    const found = this.lifter && this.parameters(this.lifter)?.regions.find((one: Tree) => one.id === id);
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
    if (kept !== undefined) return JSON.parse(kept);
    return unitNow() === "kg" ? homeKit() : poundsKit();
  }
  /** The bar chosen on this device, else the first. */
  bar(): Tree {
    const { implements: all } = this.kit();
    const bars = all.filter((one: Tree) => one.bar);
    const wanted = this.store.setting("bar");
    const found = bars.find((one: Tree) => one.bar.id === wanted) ?? bars[0];
    return found ?? all[0];
  }
  /** The load to begin a question with: today's first, else the empty bar. */
  startLoad(): Mass {
    const lifter = this.lifter;
    const lift = lifter && this.today(lifter).answer?.session.lifts.find((one: Tree) => one.load);
    return lift?.load ?? ask("page.mass", { mass: unitNow() === "kg" ? { kg: 62.5 } : { lb: 145 } });
  }

  /** Writes an event after the library has taken it; refused events are not written. */
  async record(lifter: Loaded, kind: Tree, note?: string, endsDraft = false, on?: string): Promise<boolean> {
    const day = await dayAllowed(this, lifter, kind, on);
    if (day === undefined) {
      this.notice = "Not recorded. Set the date of this device first.";
      this.refresh();
      return false;
    }
    const event = { sequence: this.facts(lifter).nextSequence as number, day, kind, ...(note ? { note } : {}) };
    const text = JSON.stringify(event);
    const refused = this.tryAppend(lifter, text);
    if (refused) {
      this.notice = `Not recorded. ${refused.message}`;
      this.refresh();
      return false;
    }
    this.notice = "";
    this.writing(this.store.append(lifter.id, [text], endsDraft), "Recorded.");
    return true;
  }

  /** Adds to the session that is going on. */
  addDraft(lifter: Loaded, entries: Tree[]): void {
    const day = this.draftDay(lifter) ?? this.day(lifter);
    this.writing(this.store.addDraft(lifter.id, entries.map((entry) => JSON.stringify(entry.undo ? entry : { ...entry, day }))), "");
    this.refresh();
  }

  putPlan(lifter: Loaded, plan: Tree): void {
    const text = JSON.stringify(plan);
    const tried = attempt("page.today", { log: this.log(lifter), plan: text, today: this.day(lifter), unit: unitNow() });
    if (tried.refused) this.notice = `Not changed. ${tried.refused.message}`;
    else this.writing(this.store.putPlan(lifter.id, text), "");
    this.refresh();
  }

  /** Takes in what another window wrote, and adds what was entered here beside it, or leaves that set aside. */
  async join(id: string, add: boolean): Promise<void> {
    const mine = await this.store.takeTheirs(id);
    const lifter = this.store.lifter(id);
    const name = shownName(id);
    if (!lifter && this.current === id) this.current = this.store.ids()[0];
    this.notice = lifter ? `${name} is as the other window wrote it.` : `${name} was erased in another window, and is gone here too.`;
    if (lifter && mine && add) {
      if (mine.draft.length > 0) void this.store.addDraft(id, mine.draft);
      const left = this.appendAnew(lifter, mine.events);
      this.notice = left === 0 ? "Both windows\u2019 entries are in the log now." : `${left} of the entries made here do not fit any more; they are set aside, see Files.`;
    }
    this.refresh();
  }

  /** Events of this window at the end of a log that has grown, with new numbers; gives how many were refused. */
  appendAnew(lifter: Loaded, events: string[]): number {
    const number = new Map<number, number>();
    let left = 0;
    for (const text of events) {
      let event: Tree;
      try {
        event = JSON.parse(text);
      } catch {
        event = undefined;
      }
      if (event?.kind === undefined) {
        left += 1;
        continue;
      }
      const sequence = this.facts(lifter).nextSequence as number;
      number.set(event.sequence, sequence);
      const { correction } = event.kind;
      if (correction) correction.replaces = number.get(correction.replaces) ?? correction.replaces;
      const last = this.lastDay(lifter);
      const next = JSON.stringify({ ...event, sequence, day: last !== undefined && last > event.day && correction ? last : event.day });
      if (this.tryAppend(lifter, next)) left += 1;
      else void this.store.append(lifter.id, [next], false);
    }
    return left;
  }

  /** The day of the session that is going on; it stays when midnight passes. */
  draftDay(lifter: Loaded): string | undefined {
    return this.draft(lifter)[0]?.day;
  }
  draft(lifter: Loaded): DraftSet[] {
    const sets: DraftSet[] = [];
    for (const text of lifter.draft) {
      const entry = JSON.parse(text);
      if (entry.undo) sets.pop();
      else sets.push(entry);
    }
    return sets;
  }
}
