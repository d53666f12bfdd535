// What is kept on the device: an append-only log per lifter, each event sealed to the one before. Two windows may be
// open at once: each lifter has a revision that every write looks at and raises, so none writes over another.
import type { IDBPDatabase, IDBPTransaction } from "idb";
import { openBase } from "./base.ts";
import { allOf, endsOf, everybody, find, rowOf, rowsOf, type Ends, type Found, type Kept, type Loaded, type Row, type Unreadable } from "./kept.ts";
import { shownName } from "./names.ts";

export type { Kept, Loaded } from "./kept.ts";

export interface Fault {
  what: string;
  detail: string;
}
/** What was entered here while another window wrote to the same lifter. */
export interface Mine {
  events: string[];
  draft: string[];
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
}
type Names = ("events" | "drafts" | "asides")[];
type Writing = IDBPTransaction<unknown, string[], "readwrite">;

/** Another window wrote to this lifter since it was read here. */
class Elsewhere extends Error {}
/** Another window erased this lifter: what waits here for it is not written. */
class Erased extends Error {}

export class Store {
  fault: Fault | undefined;
  /** What was found damaged and mended, in words; said until the page is opened anew. */
  readonly said: string[] = [];
  /** Logs that cannot be read; they are left as they lie. */
  readonly unreadable = new Map<string, Unreadable>();
  /** Lifters whose last entries here could not be joined to what another window wrote. */
  readonly elsewhere = new Set<string>();
  /** Called when another window changed something, with words for it. */
  onOther: (words: string) => void = () => undefined;
  private base: IDBPDatabase | undefined;
  private lifters = new Map<string, Loaded>();
  private memory = new Map<string, Memory>();
  private settings = new Map<string, string>();
  private unwritten: (() => Promise<void>)[] = [];
  private turn: Promise<unknown> = Promise.resolve();
  private channel: BroadcastChannel | undefined;

  static async open(): Promise<Store> {
    const store = new Store();
    try {
      store.base = await openBase();
      await store.readAll(store.base);
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

  private async readAll(base: IDBPDatabase): Promise<void> {
    const reading = base.transaction("settings");
    const [keys, values] = (await Promise.all([reading.store.getAllKeys(), reading.store.getAll()])) as [string[], unknown[]];
    keys.forEach((key, at) => this.settings.set(key, String(values[at])));
    for (const id of await everybody(base)) await this.take(base, id);
  }

  /** Reads one lifter from the device into this window. */
  private async take(base: IDBPDatabase, id: string): Promise<void> {
    this.install(id, await find(base, id));
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
    this.memory.set(id, { draftSeal, places, stored: { ends: endsOf(lifter, draftSeal), plan: lifter.plan }, revision });
    this.said.push(...said);
  }

  /** A lifter that another window erased is gone here too, with what was entered here since. */
  private forget(id: string): string {
    this.install(id, undefined);
    this.elsewhere.delete(id);
    if (this.settings.get("lifter") === id) this.settings.delete("lifter");
    return `${shownName(id)} was erased in another window.`;
  }

  /** Takes in what other windows wrote; where something of this one waits to be written, it asks instead. */
  private lookForOthers(): Promise<void> {
    const looked = this.turn.then(() => this.look());
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
        if (there.get(id) === (known?.revision ?? unread) || this.elsewhere.has(id)) continue;
        if (!there.has(id) && (await base.count("events", allOf(id))) === 0) {
          if (known?.stored) words.push(this.forget(id));
          continue;
        }
        const fresh = await find(base, id);
        // Asked only now: something may have been entered while it was read.
        if (this.mine(id)) this.elsewhere.add(id);
        else this.install(id, fresh);
        words.push(`Another window wrote to ${shownName(id)}.`);
      }
      for (const [at, key] of keys.entries()) if (key !== "lifter") this.settings.set(key, String(values[at]));
      if (words.length > 0) this.onOther(words.join(" "));
    } catch (error) {
      this.failed("What other windows wrote could not be read.", error);
      this.onOther("");
    }
  }

  /** What was entered here and is not on the device. */
  private mine(id: string): Mine | undefined {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return undefined;
    const { stored } = memory;
    const mine = { events: lifter.events.slice(stored?.ends.events ?? 0), draft: lifter.draft.slice(stored?.ends.draft ?? 0) };
    return mine.events.length + mine.draft.length > 0 || lifter.plan !== stored?.plan ? mine : undefined;
  }

  /** The other window's log, and what was entered here beside it: set aside, for the caller to add or to leave. */
  async takeTheirs(id: string): Promise<Mine | undefined> {
    await this.turn;
    const { base } = this;
    if (!base) return undefined;
    const fresh = await find(base, id);
    const mine = this.mine(id);
    // Erased is erased: nothing of somebody who was erased is set aside.
    if (mine && fresh) await base.add("asides", { lifter: id, text: JSON.stringify(mine), why: "entered while another window wrote" });
    this.install(id, fresh);
    this.elsewhere.delete(id);
    return fresh && mine;
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

  /** Writes to one lifter if nobody else did since it was read; else it waits until the user has chosen. */
  private writeTo(id: string, names: Names, act: (writing: Writing) => void, longer: (ends: Ends) => Ends): Promise<boolean> {
    const memory = this.memory.get(id);
    const work = async (base: IDBPDatabase): Promise<void> => {
      const kept = this.lifters.get(id);
      if (!memory?.stored || !kept || this.memory.get(id) !== memory || this.elsewhere.has(id)) return;
      const writing = base.transaction(["lifters", ...new Set<string>(["events", ...names])], "readwrite", { durability: "strict" }) as Writing;
      const finished = writing.done;
      // A refusal shows below; without this it would be reported a second time as nobody's.
      finished.catch(() => undefined);
      const there = (await writing.objectStore("lifters").get(id)) as { revision?: number } | undefined;
      if (!there || (there.revision ?? 0) !== memory.revision) {
        const left = there ? 1 : await writing.objectStore("events").count(allOf(id));
        writing.abort();
        throw left > 0 ? new Elsewhere() : new Erased();
      }
      const ends = longer(memory.stored.ends);
      try {
        act(writing);
      } catch (error) {
        // Without this the part before the refusal would be kept.
        writing.abort();
        throw error;
      }
      const { plan } = kept;
      void writing.objectStore("lifters").put(rowOf(kept, memory.revision + 1, ends));
      await finished;
      memory.revision += 1;
      memory.stored = { ends, plan };
    };
    let stood = true;
    return this.write((base) =>
      work(base).catch((error) => {
        stood = false;
        if (error instanceof Erased) this.onOther(this.forget(id));
        else if (error instanceof Elsewhere) this.elsewhere.add(id);
        else throw error;
      }),
    ).then((written) => written && stood && !this.elsewhere.has(id));
  }

  /** Keeps a setting; where another window changed it meanwhile, that one stands and nothing is written. */
  async set(key: string, value: string): Promise<boolean> {
    const known = this.settings.get(key);
    this.settings.set(key, value);
    let stood = true;
    const written = await this.write(async (base) => {
      // Who was in view is not remembered of somebody who was erased meanwhile.
      if (key === "lifter" && !this.lifters.has(value)) return;
      const writing = base.transaction("settings", "readwrite");
      const there = (await writing.store.get(key)) as string | undefined;
      stood = key === "kit" && there !== known && there !== value;
      if (!stood) await writing.store.put(value, key);
      else this.settings.set(key, there ?? "");
      await writing.done;
    });
    return written && !stood;
  }

  /** A setting that cannot be used: set aside, and as if nobody had set it. */
  dropSetting(key: string, why: string, said: string): void {
    const text = this.settings.get(key) ?? "";
    this.settings.delete(key);
    this.said.push(said);
    void this.write(async (base) => {
      const writing = base.transaction(["settings", "asides"], "readwrite");
      void writing.objectStore("asides").add({ lifter: "", text, why });
      void writing.objectStore("settings").delete(key);
      await writing.done;
    });
  }

  /** A new lifter, or another log for a known one: what it takes the place of and does not hold is set aside whole. */
  async put(kept: Kept, events: string[], draft: string[], why: string): Promise<boolean> {
    const { id } = kept;
    const [own, sets] = [rowsOf(id, events, id, 0), rowsOf(id, draft, id, 0)];
    const before = this.memory.get(id);
    const lifter = { ...kept, events, draft: [...draft], seal: own.seal };
    const ends = endsOf(lifter, sets.seal);
    const memory: Memory = { draftSeal: sets.seal, places: { events: events.length, draft: draft.length }, stored: before?.stored && { ends, plan: kept.plan }, revision: (before?.revision ?? 0) + 1 };
    this.lifters.set(id, lifter);
    this.memory.set(id, memory);
    this.elsewhere.delete(id);
    return this.write(async (base) => {
      if (this.memory.get(id) !== memory) return;
      const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      const finished = writing.done;
      finished.catch(() => undefined);
      const there = (await writing.objectStore("lifters").get(id)) as (Kept & { revision?: number }) | undefined;
      const was = { events: (await writing.objectStore("events").getAll(allOf(id))) as Row[], draft: (await writing.objectStore("drafts").getAll(allOf(id))) as Row[] };
      if (!there && was.events.length === 0 && before?.stored) {
        writing.abort();
        this.onOther(this.forget(id));
        return;
      }
      // What lies on the device is set aside, whoever wrote it: another window may have been first.
      const texts = { events: was.events.map((row) => row.text), draft: was.draft.map((row) => row.text) };
      // Sets that another window put on the list meanwhile stay: they were lifted, whatever log they belong to.
      const last = was.draft.at(-1);
      const theirs = before?.stored !== undefined && last !== undefined && (there?.revision ?? 0) !== before.revision && memory.draftSeal === sets.seal;
      if (theirs) {
        lifter.draft = texts.draft;
        memory.draftSeal = last.seal;
        memory.places.draft = last.place + 1;
        ends.draft = texts.draft.length;
        ends.draftLast = last.seal;
      }
      const held = texts.events.every((text, at) => text === events[at]) && texts.draft.every((text, at) => text === lifter.draft[at]) && (!there || (there.header === kept.header && there.plan === kept.plan));
      memory.revision = Math.max(memory.revision, (there?.revision ?? 0) + 1);
      try {
        if (!held) void writing.objectStore("asides").add({ lifter: id, text: JSON.stringify({ header: there?.header, plan: there?.plan, version: there?.version, ...texts }), why });
        void writing.objectStore("events").delete(allOf(id));
        void writing.objectStore("lifters").put(rowOf(kept, memory.revision, ends));
        for (const row of own.rows) void writing.objectStore("events").add(row);
        if (!theirs) {
          void writing.objectStore("drafts").delete(allOf(id));
          for (const row of sets.rows) void writing.objectStore("drafts").add(row);
        }
      } catch (error) {
        writing.abort();
        throw error;
      }
      await finished;
      memory.stored = { ends, plan: kept.plan };
    });
  }

  /** Appends events, and ends the draft where they end it, in one piece. */
  append(id: string, events: string[], endsDraft: boolean): Promise<boolean> {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return Promise.resolve(false);
    const { rows, seal } = rowsOf(id, events, lifter.seal, memory.places.events);
    lifter.events.push(...events);
    lifter.seal = seal;
    memory.places.events += events.length;
    if (endsDraft) {
      lifter.draft = [];
      memory.draftSeal = id;
      memory.places.draft = 0;
    }
    const act = (writing: Writing): void => {
      for (const row of rows) void writing.objectStore("events").add(row);
      if (endsDraft) void writing.objectStore("drafts").delete(allOf(id));
    };
    return this.writeTo(id, ["drafts"], act, (ends) => ({ ...ends, events: ends.events + events.length, last: seal, ...(endsDraft ? { draft: 0, draftLast: id } : {}) }));
  }

  /** Adds to the session that is going on. */
  addDraft(id: string, texts: string[]): Promise<boolean> {
    const [lifter, memory] = [this.lifters.get(id), this.memory.get(id)];
    if (!lifter || !memory) return Promise.resolve(false);
    const { rows, seal } = rowsOf(id, texts, memory.draftSeal, memory.places.draft);
    lifter.draft.push(...texts);
    memory.draftSeal = seal;
    memory.places.draft += texts.length;
    const act = (writing: Writing): void => {
      for (const row of rows) void writing.objectStore("drafts").add(row);
    };
    return this.writeTo(id, ["drafts"], act, (ends) => ({ ...ends, draft: ends.draft + texts.length, draftLast: seal }));
  }

  putPlan(id: string, plan: string): Promise<boolean> {
    const lifter = this.lifters.get(id);
    if (!lifter) return Promise.resolve(false);
    lifter.plan = plan;
    return this.writeTo(id, [], () => undefined, (ends) => ends);
  }

  /** Erases everything of a lifter: log, session going on, set-aside copies, and who was in view last. */
  async erase(id: string): Promise<boolean> {
    this.forget(id);
    return this.write(async (base) => {
      const erasing = base.transaction(["lifters", "events", "drafts", "asides", "settings"], "readwrite", { durability: "strict" });
      void erasing.objectStore("lifters").delete(id);
      for (const name of ["events", "drafts"] as const) void erasing.objectStore(name).delete(allOf(id));
      if ((await erasing.objectStore("settings").get("lifter")) === id) void erasing.objectStore("settings").delete("lifter");
      let cursor = await erasing.objectStore("asides").openCursor();
      while (cursor) {
        if ((cursor.value as { lifter: string }).lifter === id) await cursor.delete();
        cursor = await cursor.continue();
      }
      await erasing.done;
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
