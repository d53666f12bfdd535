// What this window holds of what is on the device: every lifter as read, the settings, and what was found wrong.
import type { IDBPDatabase } from "idb";
import { Silent } from "./silence.ts";
import { ask } from "./engine.ts";
import { endsOf, type Ends, type Found, type Loaded, type Unreadable } from "./kept.ts";
import { shownName } from "./names.ts";
import type { Entered, Strange } from "./rejoin.ts";

export interface Fault {
  what: string;
  detail: string;
}
/** What this window knows of a lifter beside what it shows. */
export interface Memory {
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

export class Held {
  fault: Fault | undefined;
  /** What lies on the device was not read: whoever is there is not known, nor what stops them. */
  unread = false;
  /** What was found damaged and mended, in words, and whose it is; said until the page is opened anew. */
  readonly said: { id?: string; words: string }[] = [];
  /** Logs that cannot be read; they are left as they lie. */
  readonly unreadable = new Map<string, Unreadable>();
  /** Called when another window changed something, with words for it. */
  onOther: (words: string) => void = () => undefined;
  /** Called when what the device had refused is stored. */
  onStored: () => void = () => undefined;
  protected base: IDBPDatabase | undefined;
  protected lifters = new Map<string, Loaded>();
  protected memory = new Map<string, Memory>();
  protected settings = new Map<string, string>();
  /** Entries that were given another number since they were entered here: what they are now. */
  protected moved = new Map<string, string>();

  /** The log of whoever is in view, as it was read and left open. */
  protected left: { lifter: Loaded; seal: string; log: number } | undefined;

  protected failed(what: string, error: unknown): void {
    const detail = error instanceof Silent ? error.message : error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    this.fault = { what, detail };
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

  protected install(id: string, found: Found | Unreadable | undefined): void {
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
  protected forget(id: string): string {
    this.install(id, undefined);
    const told = this.said.filter((one) => one.id !== id);
    this.said.splice(0, this.said.length, ...told);
    for (const key of this.moved.keys()) if (key.startsWith(`${id}\n`)) this.moved.delete(key);
    if (this.settings.get("lifter") === id) this.settings.delete("lifter");
    return `${shownName(id)} was erased in another window.`;
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
}
