// Nothing lost: the session going on, damaged plans, headers, kits and rows, and what is set aside.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, demoPlan, everything, FILE, fileOf, further, go, Hand, handOn, logOf, NEXT_DAY, reload, saved, setDay, stored, tells, tamper, upload, yes } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const NOOR = "Noor, invented";
const ROBIN = "Robin, invented";
const plain = () => logOf(NOOR);
const longer = () => logOf(NOOR, (log) => further(log, "2026-08-28", { body_mass_recorded: { kg: 80 } }));
const other = () => logOf(NOOR, (log) => (log.events.at(-1).note = "said later"));

async function withDraft() {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(plain()));
  await go(hand, "today");
  await hand.allGood();
  await hand.page.getByText("Going on: 3 sets.").waitFor();
  await stored(hand, "drafts", 3);
  return hand;
}

describe("the session going on", () => {
  it("stays when entries are added from a file", async () => {
    const hand = await withDraft();
    await bringIn(hand, fileOf(longer()));
    await go(hand, "today");
    await says(hand.page.locator(".draft"), /3 sets/);
    await reload(hand);
    await says(hand.page.locator(".draft"), /3 sets/);
    await hand.close();
  });

  it("stays when the log is replaced, and the file says so before", async () => {
    const hand = await withDraft();
    await upload(hand, fileOf(other()));
    await says(hand.page.locator("main article"), /session going on here stays/i);
    await hand.page.locator('[data-act="replace"]').click();
    await yes(hand);
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await go(hand, "today");
    await says(hand.page.locator(".draft"), /3 sets/);
    await hand.close();
  });

  it("stays when another window replaces the log without having heard of it", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(plain()));
    const two = new Hand(await one.context.newPage());
    await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
    await two.page.addInitScript(() => {
      globalThis.BroadcastChannel = class { postMessage() {} };
      const { addEventListener: listen } = EventTarget.prototype;
      EventTarget.prototype.addEventListener = function (name, ...rest) {
        if (name !== "focus" && name !== "visibilitychange") listen.call(this, name, ...rest);
      };
    });
    await two.page.goto(FILE);
    await two.ready();
    await one.page.bringToFront();
    await go(one, "today");
    await one.allGood();
    await one.page.getByText("Going on: 3 sets.").waitFor();
    await stored(one, "drafts", 3);
    await two.page.bringToFront();
    await upload(two, fileOf(other()));
    await two.page.locator('[data-act="replace"]').click();
    await yes(two);
    await two.page.locator("#open-file").waitFor({ state: "detached" });
    await reload(two);
    await go(two, "today");
    await says(two.page.locator(".draft"), /3 sets/);
    await one.close();
  });

  it("is in the full copy, comes back with it, and has its own day", async () => {
    const hand = await withDraft();
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-full"]');
    const { draft } = JSON.parse(copy).lifters[0];
    assert.equal(draft.length, 3);
    assert.ok(draft.every((one) => one.day === NEXT_DAY));
    await hand.tap('[data-act="erase"]');
    await yes(hand);
    await hand.page.getByText("Nobody is here yet").waitFor();
    await bringIn(hand, copy);
    await go(hand, "today");
    await says(hand.page.locator(".draft"), /3 sets/);
    await hand.close();
  });

  it("is in the rescue file", async () => {
    const hand = await withDraft();
    await hand.page.evaluate(() => (IDBObjectStore.prototype.add = () => { throw new DOMException("no room is left", "QuotaExceededError"); }));
    await hand.allGood();
    const rescue = JSON.parse(await saved(hand, '[data-act="rescue"]'));
    assert.ok(rescue.lifters[0].draft.length > 3);
    await hand.close();
  });

  it("asks on which day it was lifted where it is finished on another", async () => {
    const hand = await withDraft();
    await setDay(hand, "2026-08-29");
    await hand.tap('[data-act="finish"]');
    await says(hand.page.locator("dialog"), /On which day was it lifted\?/);
    await hand.page.locator(`dialog [data-value="${NEXT_DAY}"]`).click();
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    const { events } = await everything(hand);
    assert.equal(JSON.parse(events.at(-1).value.text).day, NEXT_DAY);
    await hand.close();
  });
});

describe("what is damaged in storage is set aside and said, and the rest works", () => {
  async function two() {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(plain()));
    await bringIn(hand, fileOf(logOf(ROBIN)));
    await stored(hand, "lifters", 2);
    return hand;
  }
  const works = async (hand, id) => {
    await go(hand, "lifters");
    await hand.page.locator("[data-lifter]", { hasText: id }).click();
    await hand.page.locator("[data-lift]").first().waitFor({ timeout: 3_000 });
  };
  for (const [what, act, words] of [
    ["a plan that is no JSON", (row) => ({ ...row, plan: row.plan.slice(0, 20) }), /plan/i],
    ["a plan of another shape", (row) => ({ ...row, plan: '{"format":"bismar-plan","version":1,"lifts":[{"lift":"nobody knows"}],"x":1}' }), /plan/i],
    ["a header that is no JSON", (row) => ({ ...row, header: "{" }), /who .* is was damaged/i],
    ["a header with another name in it", (row) => ({ ...row, header: '{"id":"Else","invented":true}' }), /who .* is was damaged/i],
    ["a row that is gone", () => undefined, /row|restored|brought back/i],
  ]) {
    it(what, async () => {
      const hand = await two();
      await tamper(hand, "lifters", NOOR, act);
      await reload(hand);
      await works(hand, ROBIN);
      await works(hand, NOOR);
      const { asides, lifters } = await everything(hand);
      assert.ok(lifters.some((one) => one.key === NOOR));
      if (act({ plan: "x".repeat(50) }) !== undefined) assert.ok((asides ?? []).some((one) => one.value.lifter === NOOR), "set aside");
      await reload(hand);
      await works(hand, NOOR);
      await go(hand, "log");
      await tells(hand, /703 events/);
      await hand.close();
    });
    it(`says so: ${what}`, async () => {
      const hand = await two();
      await tamper(hand, "lifters", NOOR, act);
      await reload(hand);
      await says(hand.page.locator(".fault").first(), words);
      await says(hand.page.locator(".fault").first(), /Noor/);
      await hand.close();
    });
  }

  it("a kit that is no kit", async () => {
    const hand = await two();
    for (const kit of ["{", '{"implements":[],"stock":5}']) {
      await hand.page.evaluate(async (kit) => {
        const [{ name }] = await indexedDB.databases();
        const base = await new Promise((resolve) => (indexedDB.open(name).onsuccess = (event) => resolve(event.target.result)));
        const writing = base.transaction("settings", "readwrite");
        writing.objectStore("settings").put(kit, "kit");
        await new Promise((resolve) => (writing.oncomplete = resolve));
        base.close();
      }, kit);
      await reload(hand);
      await go(hand, "gym");
      await hand.page.getByText("Bars of this gym").waitFor({ timeout: 3_000 });
      await says(hand.page.locator(".fault").first(), /bars and discs/i);
    }
    await hand.close();
  });

  it("an end that was lost is noticed", async () => {
    const hand = await two();
    await tamper(hand, "events", [NOOR, 702], () => undefined);
    await tamper(hand, "events", [NOOR, 701], () => undefined);
    await reload(hand);
    await says(hand.page.locator(".fault").first(), /Part of the log of Noor, invented was damaged .* under Files/s);
    await reload(hand);
    await says(hand.page.locator(".fault").first(), /Part of the log of Noor, invented was damaged .* under Files/s, "until somebody has decided");
    await go(hand, "files");
    await tells(hand, /end of the log was lost/i);
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
    await counts(hand.page.locator(".fault"), 0);
    await reload(hand);
    await counts(hand.page.locator(".fault"), 0, "decided, and kept under what was set aside");
    await hand.close();
  });
});

describe("plans in files", () => {
  for (const [what, plan] of [["of another format", { format: "x", version: 1, lifts: [] }], ["a number", 5], ["with a lift nobody knows", { ...demoPlan, lifts: [{ lift: "nobody knows" }] }], ["with a field too many", { ...demoPlan, surprise: true }], ["of a newer version", { ...demoPlan, version: 99 }]]) {
    it(`are refused like logs: ${what}`, async () => {
      const hand = await handOn(browser);
      await upload(hand, fileOf({ log: plain(), plan }));
      assert.match(await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 }), /Nothing was changed\..*plan/i);
      await hand.close();
    });
  }
});

describe("the demo", () => {
  it("is not begun again by going back, nor is somebody else put aside for it", async () => {
    const hand = await handOn(browser);
    await hand.demo();
    await hand.allGood();
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await bringIn(hand, fileOf(plain()));
    await go(hand, "log");
    for (let step = 0; step < 12; step += 1) {
      await hand.page.goBack({ waitUntil: "commit", timeout: 2_000 }).catch(() => undefined);
      if (!(await hand.page.locator("html[data-ready]").count())) break;
    }
    await hand.page.goto(`${FILE}#demo`);
    await hand.ready();
    await hand.page.waitForTimeout(200);
    const { events, asides } = await everything(hand);
    assert.equal(events.filter((one) => one.key[0] === "invented-lifter").length, 704);
    assert.equal((asides ?? []).length, 0);
    await says(hand.page.locator("header .who"), /Noor/);
    await hand.close();
  });
});

describe("what was set aside", () => {
  it("can be looked at, brought back, and emptied", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(longer()));
    await upload(hand, fileOf(other()));
    await hand.page.locator('[data-act="replace"], button:text("Replace what is here")').first().click();
    await yes(hand);
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await go(hand, "files");
    const aside = hand.page.locator("[data-aside]");
    await aside.first().waitFor({ timeout: 3_000 });
    await says(aside.first(), /Noor.*704 entries/s);
    await aside.first().locator('[data-act="bring-back"]').click();
    await hand.page.locator("main article").waitFor();
    await says(hand.page.locator("main article"), /Different: 1.*Only on this device|Added: 1/s);
    await hand.page.locator('[data-act="replace"], [data-act="bring-in"]').first().click();
    await yes(hand);
    await hand.page.locator(".notice", { hasText: /Replaced;|is here now\.|Added\./ }).waitFor();
    await go(hand, "log");
    await tells(hand, /704 events/);
    await go(hand, "files");
    await hand.page.locator('[data-act="empty"]').click();
    await yes(hand);
    await hand.page.locator("[data-aside]").first().waitFor({ state: "detached" });
    assert.equal((await everything(hand)).asides?.length ?? 0, 0);
    await hand.close();
  });
});
