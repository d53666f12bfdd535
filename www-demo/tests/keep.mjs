// What the tests of keeping share: logs to bring in, files to open and to save, a look into what is stored.
import assert from "node:assert/strict";
import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { FILE, Hand, keeps, root } from "./browser.mjs";

/** The day after the last of the demo log: to a lifter made from it nothing is long ago. */
export const NEXT_DAY = "2026-08-28";

const demo = JSON.parse(await readFile(join(root, "..", "examples", "data", "demo-log.json"), "utf8"));
export const demoPlan = JSON.parse(await readFile(join(root, "..", "examples", "data", "demo-plan.json"), "utf8"));

/** The demo log as that of somebody who is not marked as invented, changed as the test needs it. */
export function logOf(id, change = () => undefined, lifter = {}) {
  const log = structuredClone(demo);
  log.lifter = { id, born: "1967-05-20", ...lifter };
  change(log);
  return log;
}

export function fileOf(...parts) {
  return JSON.stringify({ format: "bismar-lifters", version: 1, health_left_out: false, lifters: parts.map((one) => (one.log ? one : { log: one, plan: demoPlan })) });
}

/** An event at the end of a log. */
export function further(log, day, kind, more = {}) {
  log.events.push({ sequence: Math.max(...log.events.map((one) => one.sequence)) + 1, day, kind, ...more });
}

/** A hand on a device that shows that day. */
export async function handOn(browser, day = NEXT_DAY, options = {}) {
  const hand = await Hand.open(browser, options);
  await setDay(hand, day);
  return hand;
}
/** Somebody at a page whose lifter has the demo log's events, stored. */
export async function begun(browser, id) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf(id)));
  await stored(hand, "events", 703);
  return hand;
}
export async function setDay(hand, day) {
  await hand.page.clock.setFixedTime(new Date(`${day}T12:00:00`));
  await reload(hand);
}

export const go = (hand, place) => hand.page.locator(`[data-place="${place}"]`).click();

export async function reload(hand) {
  await hand.page.reload();
  await hand.ready();
}

/** Comes to this window, as a coach does who turns from the other. */
export async function turnTo(hand) {
  await hand.page.bringToFront();
  await hand.page.evaluate(() => dispatchEvent(new Event("focus")));
}

/** Runs in the page: no word from window to window, no look on coming back; only a write can find out. */
export function deafen() {
  globalThis.BroadcastChannel = class { postMessage() {} };
  const { addEventListener: listen } = EventTarget.prototype;
  EventTarget.prototype.addEventListener = function (name, ...rest) {
    if (name !== "focus" && name !== "visibilitychange") listen.call(this, name, ...rest);
  };
}
/** A second window on the same device, deaf to the first one if it is to be. */
export async function second(one, deaf = true) {
  if (deaf) {
    await one.page.addInitScript(deafen);
    await reload(one);
  }
  const two = new Hand(await one.context.newPage());
  two.context = one.context;
  await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
  if (deaf) await two.page.addInitScript(deafen);
  await two.page.goto(FILE);
  await two.ready();
  await one.page.bringToFront();
  return two;
}

export async function upload(hand, content, name = "file.json") {
  await go(hand, "files");
  const folder = await mkdtemp(join(tmpdir(), "bismar-page-"));
  const path = join(folder, name);
  await writeFile(path, content);
  await hand.page.locator("#open-file").setInputFiles(path);
  await hand.page.locator("main article, [data-refused]").first().waitFor();
}

/** Brings in what a file adds, with whatever it asks first. */
export async function bringIn(hand, content) {
  await upload(hand, content);
  await hand.page.locator('[data-act="bring-in"]').first().click();
  await yes(hand);
  await hand.page.locator("#open-file").waitFor({ state: "detached" });
}
export async function yes(hand) {
  // A question is there as soon as the tap that asks it is done, or not at all.
  const box = hand.page.locator("dialog [data-yes]");
  if ((await box.count()) > 0) await box.click();
}

export async function saved(hand, selector) {
  const [download] = await Promise.all([hand.page.waitForEvent("download"), hand.page.locator(selector).first().click()]);
  return readFile(await download.path(), "utf8");
}

/** The device has no room for anything more, until there is room again. */
export const noRoom = (hand) => hand.page.evaluate(() => {
  const { add } = IDBObjectStore.prototype;
  globalThis.room = () => { IDBObjectStore.prototype.add = add; };
  IDBObjectStore.prototype.add = () => { throw new DOMException("no room is left", "QuotaExceededError"); };
});
export const roomAgain = (hand) => hand.page.evaluate(() => globalThis.room());

/** All that is stored, by the name of its list. */
export function everything(hand) {
  return hand.page.evaluate(async () => {
    const found = {};
    for (const { name } of await indexedDB.databases()) {
      const base = await new Promise((resolve) => (indexedDB.open(name).onsuccess = (event) => resolve(event.target.result)));
      for (const list of base.objectStoreNames) {
        const rows = base.transaction(list).objectStore(list);
        const all = (asked) => new Promise((resolve) => (asked.onsuccess = () => resolve(asked.result)));
        const [keys, values] = await Promise.all([all(rows.getAllKeys()), all(rows.getAll())]);
        found[list] = [...(found[list] ?? []), ...keys.map((key, at) => ({ key, value: values[at] }))];
      }
      base.close();
    }
    return found;
  });
}

/** So many rows of a list are on the device: what is on the screen may still be on its way there. */
export async function stored(hand, list, number) {
  const rows = await keeps(async () => (await everything(hand))[list] ?? [], (found) => found.length === number);
  assert.equal(rows.length, number, `${list} on the device`);
  return rows;
}

/** Changes a row behind the page's back; without one that comes out of `act`, it is gone. */
export async function tamper(hand, list, key, act) {
  const row = (await everything(hand))[list].find((one) => JSON.stringify(one.key) === JSON.stringify(key))?.value;
  await hand.page.evaluate(async ({ list, key, next }) => {
    const [{ name }] = await indexedDB.databases();
    const base = await new Promise((resolve) => (indexedDB.open(name).onsuccess = (event) => resolve(event.target.result)));
    const writing = base.transaction(list, "readwrite");
    const rows = writing.objectStore(list);
    if (next === undefined) rows.delete(key);
    else if (rows.keyPath === null) rows.put(next, key);
    else rows.put(next);
    await new Promise((resolve) => (writing.oncomplete = resolve));
    base.close();
  }, { list, key, next: act(row) });
}

export const main = (hand) => hand.page.locator("main").innerText();

/** The page says it, at once or as soon as what it reads from storage is there. */
export async function tells(hand, pattern, where) {
  await hand.page.locator("main").filter({ hasText: pattern }).waitFor({ timeout: 5_000 }).catch(() => undefined);
  assert.match(await main(hand), pattern, where);
}


/** Runs in the page: storage takes what it is asked and answers nothing, from the beginning or from `hold` on, until `speak`. */
export function mute(from) {
  let held = from;
  const waiting = [];
  globalThis.hold = () => { held = true; };
  globalThis.speak = () => {
    held = false;
    for (const act of waiting.splice(0)) act();
  };
  const { addEventListener: listen } = EventTarget.prototype;
  EventTarget.prototype.addEventListener = function (name, act, ...rest) {
    const own = typeof act === "function" && ["success", "complete", "error", "abort"].includes(name) && (this instanceof IDBTransaction || this instanceof IDBRequest);
    listen.call(this, name, own ? (event) => (held ? waiting.push(() => act.call(this, event)) : act.call(this, event)) : act, ...rest);
  };
}
export { FILE, Hand };
