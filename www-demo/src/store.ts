// What is kept on the device: an append-only log per lifter, each event sealed to the one before.
import { openDB, type IDBPDatabase } from "idb";
import { ask } from "./engine.ts";

export interface Kept {
  id: string;
  header: string;
  plan: string;
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

const PLACES_MOST = 10_000_000;

export class Store {
  fault: Fault | undefined;
  private base: IDBPDatabase | undefined;
  private lifters = new Map<string, Loaded>();
  private seals = new Map<string, { events: string; draft: string; eventPlace: number; draftPlace: number }>();
  private settings = new Map<string, string>();
  private unwritten: (() => Promise<void>)[] = [];

  static async open(): Promise<Store> {
    const store = new Store();
    try {
      const opening = openDB("bismar", 1, {
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
      void navigator.storage?.persist?.().catch(() => false);
    } catch (error) {
      store.base = undefined;
      store.failed("This device does not let the page keep anything.", error);
    }
    return store;
  }

  private failed(what: string, error: unknown): void {
    const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    this.fault = { what, detail };
  }

  private async readAll(base: IDBPDatabase): Promise<void> {
    const reading = base.transaction(["lifters", "events", "drafts", "settings"]);
    const [lifters, events, drafts, keys, values] = (await Promise.all([
      reading.objectStore("lifters").getAll(),
      reading.objectStore("events").getAll(),
      reading.objectStore("drafts").getAll(),
      reading.objectStore("settings").getAllKeys(),
      reading.objectStore("settings").getAll(),
    ])) as [Kept[], Row[], Row[], string[], string[]];
    keys.forEach((key, at) => this.settings.set(key, String(values[at])));
    for (const kept of lifters) {
      const own = await this.whole(base, "events", kept.id, events.filter((row) => row.lifter === kept.id));
      const draft = await this.whole(base, "drafts", kept.id, drafts.filter((row) => row.lifter === kept.id));
      this.lifters.set(kept.id, { ...kept, events: own.texts, draft: draft.texts, torn: own.torn + draft.torn });
      this.seals.set(kept.id, { events: own.seal, draft: draft.seal, eventPlace: own.next, draftPlace: draft.next });
    }
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

  /** Writes, or keeps what could not be written for the next try and says so. */
  private async write(work: (base: IDBPDatabase) => Promise<void>): Promise<boolean> {
    const base = this.base;
    if (!base) return false;
    this.unwritten.push(() => work(base));
    try {
      while (this.unwritten.length > 0) {
        await (this.unwritten[0] as () => Promise<void>)();
        this.unwritten.shift();
      }
      this.fault = undefined;
      return true;
    } catch (error) {
      this.failed("The last entries could not be written to this device.", error);
      return false;
    }
  }

  async set(key: string, value: string): Promise<void> {
    this.settings.set(key, value);
    await this.write(async (base) => void (await base.put("settings", value, key)));
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
  async put(kept: Kept, events: string[], why: string): Promise<void> {
    const before = this.lifters.get(kept.id);
    const aside = before && before.events.length > 0 ? { lifter: kept.id, text: JSON.stringify(before), why } : undefined;
    const { rows, seal } = this.rows(kept.id, events, kept.id, 0);
    this.lifters.set(kept.id, { ...kept, events, draft: [], torn: 0 });
    this.seals.set(kept.id, { events: seal, draft: kept.id, eventPlace: events.length, draftPlace: 0 });
    await this.write(async (base) => {
      const writing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      if (aside) void writing.objectStore("asides").add(aside);
      void writing.objectStore("events").delete(IDBKeyRange.bound([kept.id, 0], [kept.id, PLACES_MOST]));
      void writing.objectStore("drafts").delete(IDBKeyRange.bound([kept.id, 0], [kept.id, PLACES_MOST]));
      void writing.objectStore("lifters").put(kept);
      for (const row of rows) void writing.objectStore("events").add(row);
      await writing.done;
    });
  }

  /** Appends events, and ends the draft where they end it, in one piece. */
  async append(id: string, events: string[], endsDraft: boolean): Promise<boolean> {
    const lifter = this.lifters.get(id);
    const at = this.seals.get(id);
    if (!lifter || !at) return false;
    const { rows, seal } = this.rows(id, events, at.events, at.eventPlace);
    lifter.events.push(...events);
    at.events = seal;
    at.eventPlace += events.length;
    if (endsDraft) {
      lifter.draft = [];
      at.draft = id;
      at.draftPlace = 0;
    }
    return this.write(async (base) => {
      const writing = base.transaction(["events", "drafts"], "readwrite", { durability: "strict" });
      for (const row of rows) void writing.objectStore("events").add(row);
      if (endsDraft) void writing.objectStore("drafts").delete(IDBKeyRange.bound([id, 0], [id, PLACES_MOST]));
      await writing.done;
    });
  }

  /** Adds to the session that is going on. */
  async addDraft(id: string, text: string): Promise<boolean> {
    const lifter = this.lifters.get(id);
    const at = this.seals.get(id);
    if (!lifter || !at) return false;
    const { rows, seal } = this.rows(id, [text], at.draft, at.draftPlace);
    lifter.draft.push(text);
    at.draft = seal;
    at.draftPlace += 1;
    return this.write(async (base) => {
      const writing = base.transaction("drafts", "readwrite", { durability: "strict" });
      for (const row of rows) void writing.store.add(row);
      await writing.done;
    });
  }

  async putPlan(id: string, plan: string): Promise<void> {
    const lifter = this.lifters.get(id);
    if (!lifter) return;
    lifter.plan = plan;
    const { header } = lifter;
    await this.write(async (base) => void (await base.put("lifters", { id, header, plan })));
  }

  /** Erases everything of a lifter, set-aside copies included. */
  async erase(id: string): Promise<boolean> {
    this.lifters.delete(id);
    this.seals.delete(id);
    return this.write(async (base) => {
      const erasing = base.transaction(["lifters", "events", "drafts", "asides"], "readwrite", { durability: "strict" });
      void erasing.objectStore("lifters").delete(id);
      for (const name of ["events", "drafts"] as const) {
        void erasing.objectStore(name).delete(IDBKeyRange.bound([id, 0], [id, PLACES_MOST]));
      }
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
