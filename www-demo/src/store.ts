// What is kept on the device: an append-only log per lifter, each event sealed to the one before. Two windows may be
// open at once: each lifter has a revision that every write looks at and raises, so none writes over another.
import { openDB, type IDBPDatabase, type IDBPTransaction } from "idb";
import { ask } from "./engine.ts";

export interface Kept {
  id: string;
  header: string;
  plan: string;
  /** Version of the log's format, as it came: a newer one may hold entries that this page does not know. */
  version: number;
}
interface Row {
  lifter: string;
  place: number;
  text: string;
  seal: string;
}
export interface Loaded extends Kept {
  events: string[];
  draft: string[];
  /** Stored entries that were not as written and were set aside. */
  torn: number;
}
export interface Fault {
  what: string;
  detail: string;
}
/** What was entered here while another window wrote to the same lifter. */
export interface Mine {
  events: string[];
  draft: string[];
}
interface Ends {
  events: string;
  draft: string;
  eventPlace: number;
  draftPlace: number;
  /** How much of what is in memory is known to be on the device, and its revision there. */
  stored: { events: number; draft: number; plan: string };
  revision: number;
}
interface Fresh {
  lifter: Loaded;
  ends: Ends;
}
type Names = ("events" | "drafts" | "asides")[];
type Writing = IDBPTransaction<unknown, string[], "readwrite">;

/** Another window wrote to this lifter since it was read here. */
class Elsewhere extends Error {}

const PLACES_MOST = 10_000_000;

function allOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, PLACES_MOST]);
}

export class Store {
  fault: Fault | undefined;
  /** Lifters whose last entries here could not be joined to what another window wrote. */
  readonly elsewhere = new Set<string>();
  /** Called when another window changed something, with words for it. */
  onOther: (words: string) => void = () => undefined;
  private base: IDBPDatabase | undefined;
  private lifters = new Map<string, Loaded>();
  private ends = new Map<string, Ends>();
  private settings = new Map<string, string>();
  private unwritten: (() => Promise<void>)[] = [];
  private turn: Promise<unknown> = Promise.resolve();
  private channel: BroadcastChannel | undefined;

  static async open(): Promise<Store> {
    const store = new Store();
    try {
      const opening = openDB("bismar lifters", 1, {
        upgrade(base) {
          base.createObjectStore("lifters", { keyPath: "id" });
          base.createObjectStore("events", { keyPath: ["lifter", "place"] });
          base.createObjectStore("drafts", { keyPath: ["lifter", "place"] });
          base.createObjectStore("asides", { autoIncrement: true });
          base.createObjectStore("settings");
        },
        blocking(_now, _next, event) {
          (event.target as IDBDatabase).close();
        },
      });
      store.base = await opening;
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
      this.channel = new BroadcastChannel("bismar");
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
    const reading = base.transaction(["lifters", "settings"]);
    const [ids, keys, values] = (await Promise.all([
      reading.objectStore("lifters").getAllKeys(),
      reading.objectStore("settings").getAllKeys(),
      reading.objectStore("settings").getAll(),
    ])) as [string[], string[], string[]];
    keys.forEach((key, at) => this.settings.set(key, String(values[at])));
    for (const id of ids) this.install(id, await this.fetch(base, id));
  }

  private install(id: string, fresh: Fresh | undefined): void {
    if (fresh) {
      this.lifters.set(id, fresh.lifter);
      this.ends.set(id, fresh.ends);
    } else {
      this.lifters.delete(id);
      this.ends.delete(id);
    }
  }

  /** One lifter as the device has it; nothing for one who is gone. */
  private async fetch(base: IDBPDatabase, id: string): Promise<Fresh | undefined> {
    const reading = base.transaction(["lifters", "events", "drafts"]);
    const [kept, events, drafts] = (await Promise.all([
      reading.objectStore("lifters").get(id),
      reading.objectStore("events").getAll(allOf(id)),
      reading.objectStore("drafts").getAll(allOf(id)),
    ])) as [(Kept & { revision?: number }) | undefined, Row[], Row[]];
    if (!kept) return undefined;
    const own = await this.whole(base, "events", id, events);
    const draft = await this.whole(base, "drafts", id, drafts);
    const { header, plan, version } = kept;
    const ends = {
      events: own.seal,
      draft: draft.seal,
      eventPlace: own.next,
      draftPlace: draft.next,
      stored: { events: own.texts.length, draft: draft.texts.length, plan },
      revision: kept.revision ?? 0,
    };
    return { lifter: { id, header, plan, version, events: own.texts, draft: draft.texts, torn: own.torn + draft.torn }, ends };
  }

  /** Takes in what other windows wrote; where something of this one waits to be written, it asks instead. */
  private lookForOthers(): Promise<void> {
    const looked = this.turn.then(() => this.look());
    this.turn = looked;
    return looked;
  }

  private async look(): Promise<void> {
    const { base } = this;
    // What waits to be written will look for itself.
    if (!base || this.unwritten.length > 0) return;
    try {
      const reading = base.transaction(["lifters", "settings"]);
      const [rows, keys, values] = (await Promise.all([
        reading.objectStore("lifters").getAll(),
        reading.objectStore("settings").getAllKeys(),
        reading.objectStore("settings").getAll(),
      ])) as [{ id: string; revision?: number }[], string[], string[]];
      const there = new Map(rows.map((row) => [row.id, row.revision ?? 0]));
      const ids = new Set([...there.keys(), ...this.ends.keys()]);
      const words: string[] = [];
      for (const id of ids) {
        if (there.get(id) === this.ends.get(id)?.revision || this.elsewhere.has(id)) continue;
        const fresh = await this.fetch(base, id);
        // Asked only now: something may have been entered while it was read.
        if (this.mine(id)) this.elsewhere.add(id);
        else this.install(id, fresh);
        words.push(there.has(id) ? `Another window wrote to ${id}.` : `Another window erased ${id}.`);
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
    const [lifter, ends] = [this.lifters.get(id), this.ends.get(id)];
    if (!lifter || !ends) return undefined;
    const mine = { events: lifter.events.slice(ends.stored.events), draft: lifter.draft.slice(ends.stored.draft) };
    return mine.events.length + mine.draft.length > 0 || lifter.plan !== ends.stored.plan ? mine : undefined;
  }

  /** The other window's log, and what was entered here beside it: set aside, for the caller to add or to leave. */
  async takeTheirs(id: string): Promise<Mine | undefined> {
    await this.turn;
    const { base } = this;
    if (!base) return undefined;
    const fresh = await this.fetch(base, id);
    const mine = this.mine(id);
    if (mine) await base.add("asides", { lifter: id, text: JSON.stringify(mine), why: "entered while another window wrote" });
    this.install(id, fresh);
    this.elsewhere.delete(id);
    return mine;
  }

  /** The rows that are as they were written; others go to `asides` and are counted, never dropped in silence. */
  private async whole(
    base: IDBPDatabase,
    name: "events" | "drafts",
    lifter: string,
    rows: Row[],
  ): Promise<{ texts: string[]; seal: string; torn: number; next: number }> {
    const texts = rows.map((row) => String(row.text));
    const seals = rows.map((row) => String(row.seal));
    const checked = ask("page.check_seals", { start: lifter, texts, seals });
    const good: number = checked.whole;
    const torn = rows.slice(good);
    if (torn.length > 0) {
      const moving = base.transaction([name, "asides"], "readwrite", { durability: "strict" });
      for (const row of torn) {
        await moving.objectStore("asides").add({ ...row, why: "not as it was written" });
        await moving.objectStore(name).delete([row.lifter, row.place]);
      }
      await moving.done;
    }
    const next = rows.reduce((most, row) => (row.place >= most ? row.place + 1 : most), 0);
    return { texts: texts.slice(0, good), seal: checked.last, torn: torn.length, next };
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
  private writeTo(id: string, names: Names, act: (writing: Writing) => void, after: (ends: Ends) => void): Promise<boolean> {
    const ends = this.ends.get(id);
    const work = async (base: IDBPDatabase): Promise<void> => {
      const kept = this.lifters.get(id);
      if (!ends || !kept || this.ends.get(id) !== ends || this.elsewhere.has(id)) return;
      const writing = base.transaction(["lifters", ...names], "readwrite", { durability: "strict" }) as Writing;
      const finished = writing.done;
      // A refusal shows below; without this it would be reported a second time as nobody's.
      finished.catch(() => undefined);
      const there = (await writing.objectStore("lifters").get(id)) as { revision?: number } | undefined;
      if (!there || (there.revision ?? 0) !== ends.revision) {
        writing.abort();
        throw new Elsewhere();
      }
      try {
        act(writing);
      } catch (error) {
        // Without this the part before the refusal would be kept.
        writing.abort();
        throw error;
      }
      const revision = ends.revision + 1;
      void writing.objectStore("lifters").put({ id, header: kept.header, plan: kept.plan, version: kept.version, revision });
      await finished;
      ends.revision = revision;
      ends.stored.plan = kept.plan;
      after(ends);
    };
    return this.write((base) =>
      work(base).catch((error) => {
        if (!(error instanceof Elsewhere)) throw error;
        this.elsewhere.add(id);
      }),
    ).then((written) => written && !this.elsewhere.has(id));
  }

  /** Keeps a setting; where another window changed it meanwhile, that one stands and nothing is written. */
  async set(key: string, value: string): Promise<boolean> {
    const known = this.settings.get(key);
    this.settings.set(key, value);
    let stood = true;
    const written = await this.write(async (base) => {
      const writing = base.transaction("settings", "readwrite");
      const there = (await writing.store.get(key)) as string | undefined;
      stood = key === "kit" && there !== known && there !== value;
      if (!stood) await writing.store.put(value, key);
      else this.settings.set(key, there ?? "");
      await writing.done;
    });
    return written && !stood;
  }

  private rows(id: string, texts: string[], start: string, place: number): { rows: Row[]; seal: string } {
    let seal = start;
    const rows = texts.map((text, at) => {
      seal = ask("page.seal", { before: seal, text });
      return { lifter: id, place: place + at, text, seal };
    });
    return { rows, seal };
  }

  /** A new lifter, or another log for a known one: the log before it is set aside whole. */
  async put(kept: Kept, events: string[], why: string): Promise<boolean> {
    const { id } = kept;
    const { rows, seal } = this.rows(id, events, id, 0);
    const revision = (this.ends.get(id)?.revision ?? 0) + 1;
    this.lifters.set(id, { ...kept, events, draft: [], torn: 0 });
    const stored = { events: events.length, draft: 0, plan: kept.plan };
    const ends: Ends = { events: seal, draft: id, eventPlace: events.length, draftPlace: 0, stored, revision };
    this.ends.set(id, ends);
    return this.write(async (base) => {
      const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      // What lies on the device is set aside, whoever wrote it: another window may have been first.
      const there = (await writing.objectStore("lifters").get(id)) as { revision?: number } | undefined;
      const before = there && (await writing.objectStore("events").getAll(allOf(id)));
      if (before && before.length > 0) void writing.objectStore("asides").add({ lifter: id, text: JSON.stringify({ ...there, rows: before }), why });
      ends.revision = Math.max(revision, (there?.revision ?? 0) + 1);
      void writing.objectStore("events").delete(allOf(id));
      void writing.objectStore("drafts").delete(allOf(id));
      void writing.objectStore("lifters").put({ ...kept, revision: ends.revision });
      for (const row of rows) void writing.objectStore("events").add(row);
      await writing.done;
    });
  }

  /** Appends events, and ends the draft where they end it, in one piece. */
  append(id: string, events: string[], endsDraft: boolean): Promise<boolean> {
    const lifter = this.lifters.get(id);
    const ends = this.ends.get(id);
    if (!lifter || !ends) return Promise.resolve(false);
    const { rows, seal } = this.rows(id, events, ends.events, ends.eventPlace);
    lifter.events.push(...events);
    ends.events = seal;
    ends.eventPlace += events.length;
    if (endsDraft) {
      lifter.draft = [];
      ends.draft = id;
      ends.draftPlace = 0;
    }
    const act = (writing: Writing): void => {
      for (const row of rows) void writing.objectStore("events").add(row);
      if (endsDraft) void writing.objectStore("drafts").delete(allOf(id));
    };
    return this.writeTo(id, ["events", "drafts"], act, ({ stored }) => {
      stored.events += events.length;
      if (endsDraft) stored.draft = 0;
    });
  }

  /** Adds to the session that is going on. */
  addDraft(id: string, texts: string[]): Promise<boolean> {
    const lifter = this.lifters.get(id);
    const ends = this.ends.get(id);
    if (!lifter || !ends) return Promise.resolve(false);
    const { rows, seal } = this.rows(id, texts, ends.draft, ends.draftPlace);
    lifter.draft.push(...texts);
    ends.draft = seal;
    ends.draftPlace += texts.length;
    const act = (writing: Writing): void => {
      for (const row of rows) void writing.objectStore("drafts").add(row);
    };
    return this.writeTo(id, ["drafts"], act, ({ stored }) => (stored.draft += texts.length));
  }

  putPlan(id: string, plan: string): Promise<boolean> {
    const lifter = this.lifters.get(id);
    if (!lifter) return Promise.resolve(false);
    lifter.plan = plan;
    return this.writeTo(id, [], () => undefined, () => undefined);
  }

  /** Erases everything of a lifter, set-aside copies included. */
  async erase(id: string): Promise<boolean> {
    this.lifters.delete(id);
    this.ends.delete(id);
    this.elsewhere.delete(id);
    return this.write(async (base) => {
      const erasing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      void erasing.objectStore("lifters").delete(id);
      for (const name of ["events", "drafts"] as const) void erasing.objectStore(name).delete(allOf(id));
      let cursor = await erasing.objectStore("asides").openCursor();
      while (cursor) {
        if ((cursor.value as { lifter: string }).lifter === id) await cursor.delete();
        cursor = await cursor.continue();
      }
      await erasing.done;
    });
  }

  /** What was set aside, for saving as a file. */
  async asides(): Promise<unknown[]> {
    return this.base ? this.base.getAll("asides") : [];
  }
}
