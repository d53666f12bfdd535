// Two windows may be open at once: each lifter has a revision that every write looks at and raises, so none writes over another;
// what was entered while another wrote is put after that, and what does not fit there is set aside and said.
import type { IDBPDatabase, IDBPTransaction } from "idb";
import { isCareful, stopsIn, together, unfit, type Damage } from "./damage.ts";
import { allOf, endsOf, find, part, rowOf, rowsOf, type Ends, type Found, type Loaded } from "./kept.ts";
import { shownName } from "./names.ts";
import { countEntries } from "./numbers.ts";
import { rejoin, setOtherwise, type Entered, type Rejoined, type Taken } from "./rejoin.ts";
import { Turns } from "./turns.ts";

/** Something that was set aside, with the key it has there. */
export interface Aside {
  key: IDBValidKey;
  lifter: string;
  text: string;
  why: string;
  seal?: string;
}
export type Writing = IDBPTransaction<unknown, string[], "readwrite">;

/** How often a write is tried again at once where other windows go on writing. */
const TRIES = 50;
/** Another window wrote to this lifter since it was read here, or decided on what is brought back here. */
class Elsewhere extends Error {}
/** Another window erased this lifter: what waits here for it is not written. */
class Erased extends Error {}
export const REFUSED = "entered while another window wrote";

/** Whether another window decided on what is decided here: took what is brought back, or looked at what is damaged. */
function elsewhere({ takes = [], holds }: Entered, damage: Damage | undefined, lying: IDBValidKey[]): boolean {
  return takes.some(({ key }) => !lying.includes(key)) || (holds !== undefined && JSON.stringify(damage) !== JSON.stringify(holds.before));
}

export function holding(lifter: Loaded, damage: Damage | undefined): void {
  if (damage) lifter.damage = damage;
  else delete lifter.damage;
}

export class Joins extends Turns {
  /** Writes to one lifter; where another window did since it was read, after what that one wrote. */
  protected writeTo(id: string, entered: Entered, act: (writing: Writing) => void, longer: (ends: Ends) => Ends): Promise<boolean> {
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
      holding(lifter, together(holds.now, unfit(id, stopsIn(joined.left.events).filter((text) => !isCareful(text)))));
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
}
