// What is kept on the device: an append-only log per lifter, each event sealed to the one before. How writes take turns, and how
// they go with those of other windows, stands in the files that this one builds on.
import type { IDBPDatabase } from "idb";
import type { Damage } from "./damage.ts";
import { REFUSED, Joins, holding, type Aside, type Writing } from "./joins.ts";
import type { Memory } from "./held.ts";
import { answers, Silent } from "./silence.ts";
import { allOf, endsOf, everybody, find, findOrLeave, lyingOf, part, rowOf, rowsOf, type Kept, type Loaded, type Row } from "./kept.ts";
import { shownName } from "./names.ts";
import { less, setsOf, type Entered, type Taken } from "./rejoin.ts";

export type { Kept, Loaded } from "./kept.ts";
export type { Aside } from "./joins.ts";

const NOT_READ = "What is kept on this device could not be read: whoever is there is not shown, nor what stops them.";

/** What is put behind a log and its list in one piece. */
export interface Behind {
  events: string[];
  draft: string[];
  looked?: boolean;
  takes?: Taken[];
  /** What is held as damaged from then on; nothing where somebody has looked and decided. */
  holds?: { now: Damage | undefined };
}

export class Store extends Joins {
  /** What lies on the device is read while the library is still being made (`ready`). */
  static async open(base: Promise<IDBPDatabase>, ready: Promise<void>): Promise<Store> {
    const store = new Store();
    try {
      await store.begin(await answers(base), ready);
    } catch (error) {
      store.base = undefined;
      const silent = error instanceof Silent;
      store.failed(silent ? NOT_READ : "This device does not let the page keep anything.", error);
      store.unread = silent;
      store.forgetRead();
      if (silent) void base.then((late) => store.late(late, ready)).catch(() => undefined);
    }
    return store;
  }

  private async begin(base: IDBPDatabase, ready: Promise<void>): Promise<void> {
    this.base = base;
    await this.readAll(base, ready);
    this.listen();
    void navigator.storage?.persist?.().catch(() => false);
  }

  /** Whoever was read before storage fell silent is not shown beside others who were not. */
  private forgetRead(): void {
    this.base = undefined;
    for (const [id, { stored }] of this.memory) if (stored) this.install(id, undefined);
    this.unreadable.clear();
    this.settings.clear();
    this.left = undefined;
  }

  /** Storage answers after all. What was entered meanwhile is in memory only, and is not put beside a log that nobody saw. */
  private async late(base: IDBPDatabase, ready: Promise<void>): Promise<void> {
    await base.count("lifters");
    try {
      if (this.lifters.size === 0) await this.begin(base, ready);
    } catch {
      return this.forgetRead();
    }
    if ([...this.memory.values()].some(({ stored }) => !stored)) {
      this.forgetRead();
      this.failed("The storage of this device did not answer when the page was opened. It answers now.", "What was entered here is in this window only: save it, then open the page anew and add the file to what is kept there");
      return this.onStored();
    }
    this.fault = undefined;
    this.unread = false;
    this.onOther("The storage of this device answers now: what is kept there is shown.");
  }

  private async readAll(base: IDBPDatabase, ready: Promise<void>): Promise<void> {
    const reading = base.transaction("settings");
    const [keys, values] = (await answers(Promise.all([reading.store.getAllKeys(), reading.store.getAll()]))) as [string[], unknown[]];
    keys.forEach((key, at) => this.settings.set(key, String(values[at])));
    const ids = await answers(everybody(base));
    const wanted = this.settings.get("lifter");
    const first = wanted !== undefined && ids.includes(wanted) ? wanted : ids[0];
    // What fails here is read again below, and said there.
    const orNothing = <T>(read: Promise<T>): Promise<T | undefined> => answers(read.catch(() => undefined));
    const lying = first === undefined ? undefined : await orNothing(lyingOf(base, first));
    await ready;
    // Another window may have written meanwhile: then it is read again.
    const now = first === undefined ? undefined : ((await orNothing(base.get("lifters", first))) as { revision?: number } | undefined);
    const stands = now?.revision === lying?.[0]?.revision;
    for (const id of ids) {
      if (this.lifters.has(id)) continue;
      const found = await findOrLeave(base, id, id === first && stands ? lying : undefined, id === first);
      this.install(id, found);
      if (found && "lifter" in found && found.log !== undefined) this.left = { lifter: found.lifter, seal: found.lifter.seal, log: found.log };
    }
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
    const asked = Promise.all([reading.store.getAllKeys(), reading.store.getAll()]) as Promise<[IDBValidKey[], Omit<Aside, "key">[]]>;
    const [keys, rows] = await answers(asked).catch((error: unknown) => {
      this.failed("What was set aside could not be read.", error);
      this.onStored();
      return [[], []] as Awaited<typeof asked>;
    });
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
