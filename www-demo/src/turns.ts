// Writes take turns, and what the device refused is tried again; what other windows wrote is looked for in between. Settings
// are kept here too.
import type { IDBPDatabase } from "idb";
import { Held } from "./held.ts";
import { answers } from "./silence.ts";
import { allOf, findOrLeave, part } from "./kept.ts";
import { shownName } from "./names.ts";

/** How often what the device refused is tried again, while nobody does anything, in milliseconds. */
const TRY_EVERY = 5_000;
const UNWRITTEN = "The last entries could not be written to this device.";
/** What is said of a setting that another window changed; others need no words. */
const SETTINGS_SAID: Record<string, string> = {
  kit: "Another window changed the list of bars and discs.",
  unit: "Another window changed the units.",
};

export class Turns extends Held {
  private unwritten: (() => Promise<void>)[] = [];
  private turn: Promise<unknown> = Promise.resolve();
  /** How much of what was asked of storage it has not answered for long. */
  private waiting = 0;
  private channel: BroadcastChannel | undefined;

  /** Other windows say what they wrote; whoever was away looks when coming back. */
  protected listen(): void {
    const look = (): void => void this.lookForOthers();
    setInterval(() => this.unwritten.length > 0 && this.waiting === 0 && look(), TRY_EVERY);
    addEventListener("focus", look);
    document.addEventListener("visibilitychange", () => document.hidden || look());
    try {
      this.channel = new BroadcastChannel(this.base?.name ?? "bismar");
      this.channel.onmessage = look;
    } catch {
      // Without it, coming back to the window and every write still look.
    }
  }

  /** Takes in what other windows wrote. */
  private lookForOthers(): Promise<void> {
    const looked = this.turn.then(() => this.look()).then(() => true);
    this.turn = looked;
    return this.heard(looked, "What other windows wrote could not be read.").then(() => undefined);
  }

  /** Whether it was done; where storage does not answer, that is said, and it counts as refused until it does. */
  private async heard(done: Promise<boolean>, what: string): Promise<boolean> {
    try {
      return await answers(done);
    } catch (error) {
      // What waits to be written is the worse of two things that wait.
      if (!this.fault || what === UNWRITTEN) this.failed(what, error);
      const { fault } = this;
      this.waiting += 1;
      this.onStored();
      void done.then(() => {
        this.waiting -= 1;
        if (this.fault === fault) this.fault = undefined;
        this.onStored();
      });
      return false;
    }
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
        const fresh = await findOrLeave(base, id);
        // Asked only now: what was entered while it was read finds out by itself when it is written.
        if (known && (!known.stored || known.entered.length > 0 || this.memory.get(id) !== known)) continue;
        const before = this.unreadable.get(id);
        this.install(id, fresh);
        // Tried again at every look; only what came of it is said.
        if (before && fresh && "words" in fresh && fresh.words === before.words) continue;
        words.push(before ? `${shownName(id)} was read anew.` : `Another window wrote to ${shownName(id)}.`);
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

  /** Writes, or keeps what could not be written for the next try and says so. Writes take turns. */
  protected write(work: (base: IDBPDatabase) => Promise<void>): Promise<boolean> {
    const { base } = this;
    if (!base) return Promise.resolve(false);
    this.unwritten.push(() => work(base));
    const done = this.turn.then(() => this.writeAll());
    this.turn = done;
    return this.heard(done, UNWRITTEN);
  }

  private async writeAll(): Promise<boolean> {
    try {
      while (this.unwritten.length > 0) {
        await (this.unwritten[0] as () => Promise<void>)();
        this.unwritten.shift();
      }
      const before = this.fault;
      this.fault = undefined;
      if (before) this.onStored();
      this.channel?.postMessage("written");
      return true;
    } catch (error) {
      this.failed(UNWRITTEN, error);
      return false;
    }
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
}
