// The device's database: which one, and its lists.
import { openDB, type IDBPDatabase } from "idb";
import { allOf, rowOf, type Kept, type Row } from "./kept.ts";

/** Of a file, one log for the device. Of a host, one for each folder, since others may have theirs beside it; an address
 * that ends in `?log=/other/folder/` uses the log of that folder instead. */
function baseName(): string {
  if (!location.protocol.startsWith("http")) return "bismar lifters";
  const told = new URLSearchParams(location.search).get("log");
  const own = location.pathname.replace(/[^/]*$/, "");
  return `bismar lifters ${told !== null && /^\/[\w./~-]*$/.test(told) ? told : own}`;
}

const VERSION = 2;

/** A browser that keeps nothing for this page may say so at once or later: told alike. */
export async function openBase(): Promise<IDBPDatabase> {
  return openDB(baseName(), VERSION, {
    async upgrade(base, from, _to, changing) {
      if (from === 0) {
        base.createObjectStore("lifters", { keyPath: "id" });
        base.createObjectStore("events", { keyPath: ["lifter", "place"] });
        base.createObjectStore("drafts", { keyPath: ["lifter", "place"] });
        base.createObjectStore("asides", { autoIncrement: true });
        base.createObjectStore("settings");
        return;
      }
      // Rows of the first version have no seals and no ends yet.
      const lifters = changing.objectStore("lifters");
      for (const row of (await lifters.getAll()) as (Kept & { revision?: number })[]) {
        const [events, drafts] = (await Promise.all([changing.objectStore("events").getAll(allOf(row.id)), changing.objectStore("drafts").getAll(allOf(row.id))])) as [Row[], Row[]];
        const ends = { events: events.length, last: events.at(-1)?.seal ?? row.id, draft: drafts.length, draftLast: drafts.at(-1)?.seal ?? row.id };
        void lifters.put(rowOf(row, row.revision ?? 0, ends));
      }
    },
    blocking(_now, _next, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
