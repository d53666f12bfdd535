// What is kept on the device: an append-only log per lifter, each event sealed to the one before. Two windows may be
// open at once: each lifter has a revision that every write looks at and raises, so none writes over another; what was
// entered while another wrote is put after that, and what does not fit there is set aside and said.
import type { IDBPDatabase, IDBPTransaction } from "idb";
import { ask } from "./engine.ts";
import { stopsIn, together, unfit, type Damage } from "./damage.ts";
import { allOf, endsOf, everybody, find, lyingOf, part, rowOf, rowsOf, type Ends, type Found, type Kept, type Loaded, type Row, type Unreadable } from "./kept.ts";
import { shownName } from "./names.ts";
import { countEntries } from "./numbers.ts";
import { less, rejoin, setOtherwise, setsOf, type Entered, type Rejoined, type Strange, type Taken } from "./rejoin.ts";

export type { Kept, Loaded } from "./kept.ts";

/** What is put behind a log and its list in one piece. */
export interface Behind {
  events: string[];
  draft: string[];
  looked?: boolean;
  takes?: Taken[];
  /** What is held as damaged from then on; nothing where somebody has looked and decided. */
  holds?: { now: Damage | undefined };
}

export interface Fault {
  what: string;
  detail: string;
}
/** Something that was set aside, with the key it has there. */
export interface Aside {
  key: IDBValidKey;
  lifter: string;
  text: string;
  why: string;
  seal?: string;
}
/** What this window knows of a lifter beside what it shows. */
interface Memory {
  draftSeal: string;
  places: { events: number; draft: number };
  /** How much of what is shown is on the device; nothing where it was never written. */
  stored: { ends: Ends; plan: string } | undefined;
  revision: number;
  /** What waits to be written, in the order in which it was entered. */
  entered: Entered[];
  /** What is known while that is put after what another window wrote. */
  joining?: Joining;
}
interface Joining {
  /** The log there as far as it is known here: as it was read, and then with what was put behind it from here. */
  known: { seal: string | undefined; events: string[] };
  strange: Strange;
  numbers: Map<number, number>;
}
type Writing = IDBPTransaction<unknown, string[], "readwrite">;

/** How often what the device refused is tried again, while nobody does anything, in milliseconds. */
const TRY_EVERY = 5_000;
/** How often a write is tried again at once where other windows go on writing. */
const TRIES = 50;
/** Another window wrote to this lifter since it was read here, or decided on what is brought back here. */
class Elsewhere extends Error {}
/** Another window erased this lifter: what waits here for it is not written. */
class Erased extends Error {}
/** What is said of a setting that another window changed; others need no words. */
const SETTINGS_SAID: Record<string, string> = {
  kit: "Another window changed the list of bars and discs.",
  unit: "Another window changed the units.",
};
const REFUSED = "entered while another window wrote";

/** Whether another window decided on what is decided here: took what is brought back, or looked at what is damaged. */
function elsewhere({ takes = [], holds }: Entered, damage: Damage | undefined, lying: IDBValidKey[]): boolean {
  return takes.some(({ key }) => !lying.includes(key)) || (holds !== undefined && JSON.stringify(damage) !== JSON.stringify(holds.before));
}

function holding(lifter: Loaded, damage: Damage | undefined): void {
  if (damage) lifter.damage = damage;
  else delete lifter.damage;
}

export class Store {
  fault: Fault | undefined;
  /** What was found damaged and mended, in words, and whose it is; said until the page is opened anew. */
  readonly said: { id?: string; words: string }[] = [];
  /** Logs that cannot be read; they are left as they lie. */
  readonly unreadable = new Map<string, Unreadable>();
  /** Called when another window changed something, with words for it. */
  onOther: (words: string) => void = () => undefined;
  /** Called when what the device had refused is stored. */
  onStored: () => void = () => undefined;
  private base: IDBPDatabase | undefined;
  private lifters = new Map<string, Loaded>();
  private memory = new Map<string, Memory>();
  private settings = new Map<string, string>();
  /** Entries that were given another number since they were entered here: what they are now. */
  private moved = new Map<string, string>();
  private unwritten: (() => Promise<void>)[] = [];
  private turn: Promise<unknown> = Promise.resolve();
  private channel: BroadcastChannel | undefined;

  /** The log of whoever is in view, as it was read and left open. */
  private left: { lifter: Loaded; seal: string; log: number } | undefined;

  /** What lies on the device is read while the library is still being made (`ready`). */
  static async open(base: Promise<IDBPDatabase>, ready: Promise<void>): Promise<Store> {
    const store = new Store();
    try {
      store.base = await base;
      await store.readAll(store.base, ready);
      store.listen();
      void navigator.storage?.persist?.().catch(() => false);
    } catch (error) {
      store.base = undefined;
      store.failed("This device does not let the page keep anything.", error);
    }
    return store;
  }

  /** Other windows say what they wrote; whoever was away looks when coming back. */
  private listen(): void {
    const look = (): void => void this.lookForOthers();
    setInterval(() => this.unwritten.length > 0 && look(), TRY_EVERY);
    addEventListener("focus", look);
    document.addEventListener("visibilitychange", () => document.hidden || look());
    try {
      this.channel = new BroadcastChannel(this.base?.name ?? "bismar");
      this.channel.onmessage = look;
    } catch {
      // Without it, coming back to the window and every write still look.
    }
  }

  private failed(what: string, error: unknown): void {
    const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    this.fault = { what, detail };
  }

  private async readAll(base: IDBPDatabase, ready: Promise<void>): Promise<void> {
    const reading = base.transaction("settings");
    const [keys, values] = (await Promise.all([reading.store.getAllKeys(), reading.store.getAll()])) as [string[], unknown[]];
    keys.forEach((key, at) => this.settings.set(key, String(values[at])));
    const ids = await everybody(base);
    const wanted = this.settings.get("lifter");
    const first = wanted !== undefined && ids.includes(wanted) ? wanted : ids[0];
    const lying = first === undefined ? undefined : await lyingOf(base, first);
    await ready;
    // Another window may have written meanwhile: then it is read again.
    const now = first === undefined ? undefined : ((await base.get("lifters", first)) as { revision?: number } | undefined);
    const stands = now?.revision === lying?.[0]?.revision;
    for (const id of ids) {
      const found = await find(base, id, id === first && stands ? lying : undefined, id === first);
      this.install(id, found);
      if (found && "lifter" in found && found.log !== undefined) this.left = { lifter: found.lifter, seal: found.lifter.seal, log: found.log };
    }
  }

  /** The number of a lifter's log that was left open when it was read; given away once, and closed where the log has changed
   * since. */
  openLog(lifter: Loaded): number | undefined {
    const { left } = this;
    if (left?.lifter.id !== lifter.id) return undefined;
    this.left = undefined;
    if (left.lifter === lifter && left.seal === lifter.seal) return left.log;
    ask("page.close", { log: left.log });
    return undefined;
  }

  private install(id: string, found: Found | Unreadable | undefined): void {
    this.lifters.delete(id);
    this.memory.delete(id);
    this.unreadable.delete(id);
    if (!found) return;
    if ("words" in found) {
      this.unreadable.set(id, found);
      return;
    }
    const { lifter, draftSeal, places, revision, said } = found;
    this.lifters.set(id, lifter);
    this.memory.set(id, { draftSeal, places, stored: { ends: endsOf(lifter, draftSeal), plan: lifter.plan }, revision, entered: [] });
    this.said.push(...said.map((words) => ({ id, words })));
  }

  /** A lifter that another window erased is gone here too, with what was entered here since. */
  private forget(id: string): string {
    this.install(id, undefined);
    const told = this.said.filter((one) => one.id !== id);
    this.said.splice(0, this.said.length, ...told);
    for (const key of this.moved.keys()) if (key.startsWith(`${id}\n`)) this.moved.delete(key);
    if (this.settings.get("lifter") === id) this.settings.delete("lifter");
    return `${shownName(id)} was erased in another window.`;
  }

  /** Takes in what other windows wrote. */
  private lookForOthers(): Promise<void> {
    const waited = this.fault !== undefined;
    const looked = this.turn.then(() => this.look()).then(() => {
      if (waited && this.fault === undefined) this.onStored();
    });
    this.turn = looked;
    return looked;
  }

  private async look(): Promise<void> {
    const { base } = this;
    if (!base) return;
    // What waits to be written is tried again, and looks for itself.
    if (this.unwritten.length > 0 && !(await this.writeAll())) return;
    try {
      const reading = base.transaction(["lifters", "settings"]);
      const [rows, keys, values] = (await Promise.all([
        reading.objectStore("lifters").getAll(),
        reading.objectStore("settings").getAllKeys(),
        reading.objectStore("settings").getAll(),
      ])) as [{ id: string; revision?: number }[], string[], unknown[]];
      const there = new Map(rows.map((row) => [row.id, row.revision ?? 0]));
      const words: string[] = [];
      for (const id of new Set([...there.keys(), ...this.memory.keys()])) {
        const known = this.memory.get(id);
        const unread: number | undefined = this.unreadable.get(id)?.row?.revision;
        if (there.get(id) === (known?.revision ?? unread)) continue;
        if (!there.has(id) && (await base.count("events", allOf(id))) === 0) {
          if (known?.stored) words.push(this.forget(id));
          continue;
        }
        const fresh = await find(base, id);
        // Asked only now: what was entered while it was read finds out by itself when it is written.
        if (known && (!known.stored || known.entered.length > 0 || this.memory.get(id) !== known)) continue;
        this.install(id, fresh);
        words.push(`Another window wrote to ${shownName(id)}.`);
      }
      let drawnAnew = words.length > 0;
      for (const [at, key] of keys.entries()) {
        const value = String(values[at]);
        if (key === "lifter" || this.settings.get(key) === value) continue;
        this.settings.set(key, value);
        drawnAnew = true;
        const said = SETTINGS_SAID[key];
        if (said !== undefined) words.push(said);
      }
      if (drawnAnew) this.onOther(words.join(" "));
    } catch (error) {
      this.failed("What other windows wrote could not be read.", error);
      this.onOther("");
    }
  }

  /** The text of an entry as it is now, where it was given another number since. */
  now(id: string, text: string): string {
    let now = text;
    for (let next = this.moved.get(`${id}\n${now}`); next !== undefined; next = this.moved.get(`${id}\n${now}`)) now = next;
    return now;
  }

  ids(): string[] {
    return [...this.lifters.keys()];
  }
  lifter(id: string): Loaded | undefined {
    return this.lifters.get(id);
  }
  setting(key: string): string | undefined {
    return this.settings.get(key);
  }

  /** Writes, or keeps what could not be written for the next try and says so. Writes take turns. */
  private write(work: (base: IDBPDatabase) => Promise<void>): Promise<boolean> {
    const { base } = this;
    if (!base) return Promise.resolve(false);
    this.unwritten.push(() => work(base));
    const done = this.turn.then(() => this.writeAll());
    this.turn = done;
    return done;
  }

  private async writeAll(): Promise<boolean> {
    try {
      while (this.unwritten.length > 0) {
        await (this.unwritten[0] as () => Promise<void>)();
        this.unwritten.shift();
      }
      this.fault = undefined;
      this.channel?.postMessage("written");
      return true;
    } catch (error) {
      this.failed("The last entries could not be written to this device.", error);
      return false;
    }
  }

  /** Writes to one lifter; where another window did since it was read, after what that one wrote. */
  private writeTo(id: string, entered: Entered, act: (writing: Writing) => void, longer: (ends: Ends) => Ends): Promise<boolean> {
    const memory = this.memory.get(id);
    memory?.entered.push(entered);
    const work = async (base: IDBPDatabase): Promise<void> => {
      const kept = this.lifters.get(id);
      if (entered.kept !== undefined || !memory?.stored || !kept || this.memory.get(id) !== memory) return;
      const { stored } = memory;
      const ends = longer(stored.ends);
      const plan = entered.plan ?? stored.plan;
      await this.changing(base, id, memory.revision, entered.takes ?? [], (writing) => {
        act(writing);
        part(writing.objectStore("lifters").put(rowOf({ ...kept, plan }, memory.revision + 1, ends)));
      });
      memory.revision += 1;
      memory.stored = { ends, plan };
      memory.entered.splice(memory.entered.indexOf(entered), 1);
      entered.kept = true;
    };
    const joined = (base: IDBPDatabase): Promise<void> =>
      work(base)
        .catch((error) => {
          if (!(error instanceof Elsewhere)) throw error;
          return this.rejoin(base, id);
        })
        .catch((error) => {
          if (!(error instanceof Erased)) throw error;
          this.onOther(this.forget(id));
        });
    return this.write(joined).then((written) => written && entered.kept === true);
  }

  /** Changes one lifter in one piece, if it has this revision and what is taken out of what is set aside still lies there. */
  private async changing(base: IDBPDatabase, id: string, revision: number, takes: Taken[], act: (writing: Writing) => void): Promise<void> {
    const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" }) as Writing;
    const finished = writing.done;
    // A refusal shows below; without this it would be reported a second time as nobody's.
    finished.catch(() => undefined);
    const there = (await writing.objectStore("lifters").get(id)) as { revision?: number } | undefined;
    if (!there || (there.revision ?? 0) !== revision) {
      const left = there ? 1 : await writing.objectStore("events").count(allOf(id));
      writing.abort();
      throw left > 0 ? new Elsewhere() : new Erased();
    }
    const asides = writing.objectStore("asides");
    const lying = (await Promise.all(takes.map(({ key }) => asides.get(key)))) as (Omit<Aside, "key"> | undefined)[];
    if (lying.includes(undefined)) {
      writing.abort();
      throw new Elsewhere();
    }
    try {
      for (const [at, { key, rest }] of takes.entries()) {
        if (rest === undefined) part(asides.delete(key));
        else part(asides.put({ ...lying[at], text: rest }, key));
      }
      act(writing);
    } catch (error) {
      // Without this the part before the refusal would be kept.
      writing.abort();
      throw error;
    }
    await finished;
  }

  /** Reads what another window wrote and writes what was entered here after it, until nothing waits. */
  private async rejoin(base: IDBPDatabase, id: string): Promise<void> {
    const [seen, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!seen || !memory) return;
    let left = 0;
    let unspoken = 0;
    let off = false;
    let planless = false;
    let decided = false;
    const stored = memory.stored?.ends;
    // It outlasts a try that the device refused half way.
    memory.joining ??= { known: { seal: stored?.last, events: seen.events.slice(0, stored?.events) }, strange: { events: false, settings: false }, numbers: new Map() };
    const { joining } = memory;
    const { strange } = joining;
    for (let tried = 0; ; tried += 1) {
      const found = await find(base, id);
      if (!found) throw new Erased();
      // Another log was put in its place here meanwhile.
      if (this.memory.get(id) !== memory) return;
      // What was entered while this was written comes with the next turn.
      const entered = [...memory.entered];
      if (!("words" in found) && entered.length === 0) {
        this.install(id, found);
        break;
      }
      if ("words" in found) {
        const rows = { events: entered.flatMap((one) => one.events), draft: entered.flatMap((one) => one.draft) };
        await base.add("asides", { lifter: id, text: JSON.stringify(rows), why: REFUSED });
        for (const one of entered) one.kept = false;
        this.install(id, found);
        left += rows.events.length + rows.draft.length;
        break;
      }
      if (found.lifter.seal !== joining.known.seal) {
        strange.events = true;
        strange.settings ||= setOtherwise(found.lifter, joining.known.events, found.lifter.events);
      }
      const lying = entered.some((one) => one.takes) ? await base.getAllKeys("asides") : [];
      for (const one of entered) one.decided = elsewhere(one, found.lifter.damage, lying);
      const joined = rejoin(found.lifter, { events: seen.events, plan: memory.stored?.plan ?? "" }, strange, entered, joining.numbers);
      try {
        await this.writeJoined(base, id, found, joined, entered);
      } catch (error) {
        if (error instanceof Elsewhere && tried < TRIES) continue;
        throw error;
      }
      joining.numbers = joined.numbers;
      joining.known = { seal: memory.stored?.ends.last, events: [...found.lifter.events, ...joined.events] };
      for (const [from, to] of joined.moved) {
        // Where it ends is where it is now: so it never goes round.
        this.moved.delete(`${id}\n${to}`);
        if (from !== to) this.moved.set(`${id}\n${from}`, to);
      }
      entered.forEach((one, at) => (one.kept = joined.kept[at] === true));
      memory.entered.splice(0, entered.length);
      left += joined.left.events.length;
      unspoken += joined.left.corrections;
      planless ||= joined.left.plans.length > 0;
      decided ||= entered.some((one) => one.decided);
      off ||= entered.some((one) => one.kept === false && one.last !== undefined);
    }
    const words = [`Another window wrote to ${shownName(id)}.`];
    if (left > 0) words.push(`${countEntries(left)} made here ${left === 1 ? "does" : "do"} not fit it: look at it first. ${left === 1 ? "It is" : "They are"} set aside, see Files.`);
    if (unspoken > 0) words.push("Not corrected, and nothing taken back: the entry is no longer in the log as it was seen here.");
    if (planless) words.push("The plan was not changed here: the change does not fit it any more. It is set aside, see Files.");
    if (decided) words.push("It decided on what was set aside: nothing was put a second time. See Files.");
    if (off) words.push("No set was taken off the list: it is another list now.");
    this.onOther(words.join(" "));
  }

  private async writeJoined(base: IDBPDatabase, id: string, found: Found, joined: Rejoined, entered: Entered[]): Promise<void> {
    const { places, revision } = found;
    const lifter = { ...found.lifter };
    for (const { holds, decided } of entered) {
      if (!holds || decided) continue;
      holding(lifter, together(holds.now, unfit(id, stopsIn(joined.left.events))));
    }
    const own = rowsOf(id, joined.events, lifter.seal, places.events);
    const sets = rowsOf(id, joined.draft, id, 0);
    const ends = endsOf({ ...lifter, events: [...lifter.events, ...joined.events], draft: joined.draft, seal: own.seal }, sets.seal);
    const { events, draft, plans } = joined.left;
    const takes = entered.flatMap((one) => (one.decided ? [] : (one.takes ?? [])));
    await this.changing(base, id, revision, takes, (writing) => {
      for (const row of own.rows) part(writing.objectStore("events").add(row));
      part(writing.objectStore("drafts").delete(allOf(id)));
      for (const row of sets.rows) part(writing.objectStore("drafts").add(row));
      if (events.length + draft.length > 0) part(writing.objectStore("asides").add({ lifter: id, text: JSON.stringify({ events, draft }), why: REFUSED }));
      for (const text of plans) part(writing.objectStore("asides").add({ lifter: id, text, why: "a plan that does not fit what another window wrote" }));
      part(writing.objectStore("lifters").put(rowOf({ ...lifter, plan: joined.plan }, revision + 1, ends)));
    });
    const memory = this.memory.get(id);
    if (memory) memory.stored = { ends, plan: joined.plan };
  }

  /** Keeps a setting. The list of bars and discs is written whole: where it is no longer the one that the new one was made
   * from, what is stored stands and nothing is written; the answer tells. */
  async set(key: string, value: string, from = this.settings.get(key)): Promise<boolean> {
    const known = this.settings.get(key);
    if (key === "kit" && known !== from) return false;
    this.settings.set(key, value);
    let stood = true;
    const written = await this.write(async (base) => {
      // Who was in view is not remembered of somebody who was erased meanwhile.
      if (key === "lifter" && !this.lifters.has(value)) return;
      const writing = base.transaction("settings", "readwrite");
      const there = (await writing.store.get(key)) as string | undefined;
      stood = key === "kit" && there !== known && there !== value;
      if (!stood) await writing.store.put(value, key);
      else if (there !== undefined) this.settings.set(key, there);
      else this.settings.delete(key);
      await writing.done;
    });
    return written && !stood;
  }

  /** A setting that cannot be used: set aside, and as if nobody had set it. */
  dropSetting(key: string, why: string, said: string): void {
    const text = this.settings.get(key) ?? "";
    this.settings.delete(key);
    this.said.push({ words: said });
    void this.write(async (base) => {
      const writing = base.transaction(["settings", "asides"], "readwrite");
      part(writing.objectStore("asides").add({ lifter: "", text, why }));
      part(writing.objectStore("settings").delete(key));
      await writing.done;
    });
  }

  /** A new lifter, or another log for a known one: what it takes the place of and does not hold is set aside whole. Where
   * somebody looked at the difference before (`looked`), only the log that was looked at is replaced. */
  async put(kept: Kept, events: string[], draft: string[], why: string, looked = false): Promise<boolean> {
    const { id } = kept;
    const [own, sets] = [rowsOf(id, events, id, 0), rowsOf(id, draft, id, 0)];
    const before = this.memory.get(id);
    const lifter: Loaded = { ...kept, events, draft: [...draft], seal: own.seal };
    holding(lifter, kept.damage ?? this.lifters.get(id)?.damage);
    const ends = endsOf(lifter, sets.seal);
    const memory: Memory = { draftSeal: sets.seal, places: { events: events.length, draft: draft.length }, stored: before?.stored && { ends, plan: kept.plan }, revision: (before?.revision ?? 0) + 1, entered: [] };
    const known = before?.stored;
    // What waits to be written to the log that is replaced is set aside with it.
    const waiting = before?.entered ?? [];
    this.lifters.set(id, lifter);
    this.memory.set(id, memory);
    let stood = true;
    const written = await this.write(async (base) => {
      if (this.memory.get(id) !== memory) return;
      const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      const finished = writing.done;
      finished.catch(() => undefined);
      const there = (await writing.objectStore("lifters").get(id)) as (Kept & { revision?: number }) | undefined;
      const was = { events: (await writing.objectStore("events").getAll(allOf(id))) as Row[], draft: (await writing.objectStore("drafts").getAll(allOf(id))) as Row[] };
      if (!there && was.events.length === 0 && before?.stored) {
        writing.abort();
        stood = false;
        this.onOther(this.forget(id));
        return;
      }
      const [lastEvent, last] = [was.events.at(-1)?.seal ?? id, was.draft.at(-1)];
      const same = known ? there !== undefined && lastEvent === known.ends.last && there.plan === known.plan : was.events.length === 0;
      if (looked && !same) {
        writing.abort();
        stood = false;
        const rows = { events: waiting.flatMap((one) => one.events), draft: waiting.flatMap((one) => one.draft) };
        if (waiting.length > 0) await base.add("asides", { lifter: id, text: JSON.stringify(rows), why: REFUSED });
        this.install(id, await find(base, id));
        this.onOther(`Nothing was replaced: the log of ${shownName(id)} changed meanwhile. Open the file again and look at what it would change.`);
        return;
      }
      // What lies on the device is set aside, whoever wrote it: another window may have been first.
      const texts = { events: was.events.map((row) => row.text), draft: was.draft.map((row) => row.text) };
      // Sets that another window put on the list meanwhile stay: they were lifted, whatever log they belong to.
      const theirs = before?.stored !== undefined && last !== undefined && (there?.revision ?? 0) !== before.revision && memory.draftSeal === sets.seal;
      if (theirs) {
        lifter.draft = texts.draft;
        memory.draftSeal = last.seal;
        memory.places.draft = last.place + 1;
        ends.draft = texts.draft.length;
        ends.draftLast = last.seal;
      }
      texts.events.push(...waiting.flatMap((one) => one.events));
      const held = texts.events.every((text, at) => text === events[at]) && texts.draft.every((text, at) => text === lifter.draft[at]) && (!there || (there.header === kept.header && there.plan === kept.plan));
      memory.revision = Math.max(memory.revision, (there?.revision ?? 0) + 1);
      // What is set aside as damaged stays so, whatever log comes in.
      if (!lifter.damage && there?.damage) holding(lifter, there.damage);
      try {
        if (!held) part(writing.objectStore("asides").add({ lifter: id, text: JSON.stringify({ header: there?.header, plan: there?.plan, version: there?.version, ...texts }), why }));
        part(writing.objectStore("events").delete(allOf(id)));
        part(writing.objectStore("lifters").put(rowOf({ ...kept, ...(lifter.damage ? { damage: lifter.damage } : {}) }, memory.revision, ends)));
        for (const row of own.rows) part(writing.objectStore("events").add(row));
        if (!theirs) {
          part(writing.objectStore("drafts").delete(allOf(id)));
          for (const row of sets.rows) part(writing.objectStore("drafts").add(row));
        }
      } catch (error) {
        writing.abort();
        throw error;
      }
      await finished;
      memory.stored = { ends, plan: kept.plan };
    });
    return written && stood;
  }

  /** Appends events, and ends the session going on where they end it, in one piece: the sets of it that were seen (`over`);
   * others that came in meanwhile stay. */
  append(id: string, events: string[], over?: string[]): Promise<boolean> {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return Promise.resolve(false);
    const { rows, seal } = rowsOf(id, events, lifter.seal, memory.places.events);
    const stay = over ? less(setsOf(lifter.draft), over) : [];
    const entered: Entered = { events, draft: stay, ...(over ? { ends: lifter.draft } : {}) };
    const rest = rowsOf(id, stay, id, 0);
    lifter.events.push(...events);
    lifter.seal = seal;
    memory.places.events += events.length;
    if (over) {
      lifter.draft = [...stay];
      memory.draftSeal = rest.seal;
      memory.places.draft = stay.length;
    }
    const act = (writing: Writing): void => {
      for (const row of rows) part(writing.objectStore("events").add(row));
      if (over) part(writing.objectStore("drafts").delete(allOf(id)));
      for (const row of rest.rows) part(writing.objectStore("drafts").add(row));
    };
    return this.writeTo(id, entered, act, (ends) => ({ ...ends, events: ends.events + events.length, last: seal, ...(over ? { draft: stay.length, draftLast: rest.seal } : {}) }));
  }

  /** Adds to the session that is going on. */
  addDraft(id: string, texts: string[]): Promise<boolean> {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return Promise.resolve(false);
    const { rows, seal } = rowsOf(id, texts, memory.draftSeal, memory.places.draft);
    const entered: Entered = { events: [], draft: texts, last: setsOf(lifter.draft).at(-1) };
    lifter.draft.push(...texts);
    memory.draftSeal = seal;
    memory.places.draft += texts.length;
    const act = (writing: Writing): void => {
      for (const row of rows) part(writing.objectStore("drafts").add(row));
    };
    return this.writeTo(id, entered, act, (ends) => ({ ...ends, draft: ends.draft + texts.length, draftLast: seal }));
  }

  /** `change` makes the same of another plan, where another window wrote one meanwhile; nothing where it does not fit that. */
  putPlan(id: string, plan: string, change: (plan: string) => string | undefined): Promise<boolean> {
    const lifter = this.lifters.get(id);
    if (!lifter) return Promise.resolve(false);
    lifter.plan = plan;
    return this.writeTo(id, { events: [], draft: [], plan, change }, () => undefined, (ends) => ends);
  }

  /** Erases everything of a lifter: log, session going on, set-aside copies, and who was in view last. */
  async erase(id: string): Promise<boolean> {
    this.forget(id);
    return this.write(async (base) => {
      const erasing = base.transaction(["lifters", "events", "drafts", "asides", "settings"], "readwrite", { durability: "strict" });
      part(erasing.objectStore("lifters").delete(id));
      for (const name of ["events", "drafts"] as const) part(erasing.objectStore(name).delete(allOf(id)));
      if ((await erasing.objectStore("settings").get("lifter")) === id) part(erasing.objectStore("settings").delete("lifter"));
      let cursor = await erasing.objectStore("asides").openCursor();
      while (cursor) {
        if ((cursor.value as { lifter: string }).lifter === id) await cursor.delete();
        cursor = await cursor.continue();
      }
      await erasing.done;
    });
  }

  /** Puts entries behind the log and sets behind the list, in one piece with what that decides: what was set aside is there no
   * more, and what was damaged is held so no longer. Where another window decided on it first, nothing is put. */
  putBehind(id: string, { events, draft, looked, takes, holds }: Behind): Promise<boolean> {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return Promise.resolve(false);
    const own = rowsOf(id, events, lifter.seal, memory.places.events);
    const sets = rowsOf(id, draft, memory.draftSeal, memory.places.draft);
    const entered: Entered = { events, draft, ...(looked ? { looked } : {}), ...(takes ? { takes } : {}), ...(holds ? { holds: { before: lifter.damage, now: holds.now } } : {}) };
    lifter.events.push(...events);
    lifter.draft.push(...draft);
    lifter.seal = own.seal;
    memory.draftSeal = sets.seal;
    memory.places.events += events.length;
    memory.places.draft += draft.length;
    if (holds) holding(lifter, holds.now);
    const act = (writing: Writing): void => {
      for (const row of own.rows) part(writing.objectStore("events").add(row));
      for (const row of sets.rows) part(writing.objectStore("drafts").add(row));
    };
    return this.writeTo(id, entered, act, (ends) => ({ events: ends.events + events.length, last: own.seal, draft: ends.draft + draft.length, draftLast: sets.seal }));
  }

  /** Sets something of a lifter aside who is here. */
  setAside(id: string, text: string, why: string): Promise<boolean> {
    return this.write(async (base) => {
      if (this.lifters.has(id)) await base.add("asides", { lifter: id, text, why });
    });
  }

  /** What was set aside. */
  async asides(): Promise<Aside[]> {
    if (!this.base) return [];
    const reading = this.base.transaction("asides");
    const [keys, rows] = (await Promise.all([reading.store.getAllKeys(), reading.store.getAll()])) as [IDBValidKey[], Omit<Aside, "key">[]];
    return rows.map((row, at) => ({ ...row, key: keys[at] as IDBValidKey }));
  }

  /** Throws away what was set aside under these keys. */
  dropAsides(keys: IDBValidKey[]): Promise<boolean> {
    return this.write(async (base) => {
      const dropping = base.transaction("asides", "readwrite", { durability: "strict" });
      for (const key of keys) void dropping.store.delete(key);
      await dropping.done;
    });
  }
}
