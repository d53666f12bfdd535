// Reading that fails for one lifter: that one is set aside and said, everybody else is there, and nothing is written over.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, go, handOn, logOf, stored, tells } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** Runs in the page: reading the entries of one lifter fails, each time or the first time only. */
function failing({ id, how }) {
  const { getAll } = IDBObjectStore.prototype;
  let times = 0;
  IDBObjectStore.prototype.getAll = function (range, ...rest) {
    const own = this.name === "events" && range instanceof IDBKeyRange && Array.isArray(range.lower) && range.lower[0] === id;
    if (own && how === "throws") throw new DOMException("the disk could not be read", "UnknownError");
    const request = getAll.call(this, range, ...rest);
    if (own) times += 1;
    const { get } = Object.getOwnPropertyDescriptor(IDBRequest.prototype, "result");
    if (own && how === "garbage") Object.defineProperty(request, "result", { get: () => [null, 5, { text: {} }] });
    // Another row each time, or the first time only.
    if (own && (how === "changing" || (how === "once" && times === 1))) {
      const at = 300 + times;
      Object.defineProperty(request, "result", { get: () => get.call(request).map((row, place) => (place === at ? { ...row, text: `${row.text} ` } : row)) });
    }
    return request;
  };
}

async function read(how) {
  const hand = await handOn(browser);
  for (const id of ["Bad", "Good"]) await bringIn(hand, fileOf(logOf(id)));
  await stored(hand, "events", 2 * 703);
  const before = await everything(hand);
  await hand.page.addInitScript(failing, { id: "Bad", how });
  await hand.page.reload();
  await hand.ready();
  return { hand, before };
}

describe("a lifter who cannot be read", () => {
  for (const how of ["throws", "garbage", "changing"]) {
    it(`is set aside and said, with everybody else there and nothing changed: ${how}`, async () => {
      const { hand, before } = await read(how);
      await tells(hand, /Bad cannot be read/);
      await go(hand, "lifters");
      await counts(hand.page.locator('[data-lifter="Good"]'), 1);
      await counts(hand.page.locator('[data-lifter="Bad"]'), 0);
      await hand.page.locator('[data-lifter="Good"]').click();
      await hand.allGood();
      await stored(hand, "drafts", 3);
      await go(hand, "files");
      await counts(hand.page.locator('[data-unreadable="Bad"]'), 1);
      // The name is taken.
      await hand.view("begin");
      await hand.page.locator('main input[type="text"]').first().fill("Bad");
      await hand.page.locator("main .main").last().click();
      await says(hand.page.locator("main .wrong"), /here already/);
      const after = await everything(hand);
      assert.deepEqual(after.events, before.events);
      assert.deepEqual(after.lifters.find((one) => one.key === "Bad"), before.lifters.find((one) => one.key === "Bad"));
      assert.deepEqual(after.asides ?? [], before.asides ?? []);
      await hand.close();
    });
  }

  it("is read a second time where the first was none, and nothing is set aside", async () => {
    const { hand, before } = await read("once");
    await go(hand, "lifters");
    await counts(hand.page.locator('[data-lifter="Bad"]'), 1);
    await counts(hand.page.locator(".fault"), 0);
    const after = await everything(hand);
    assert.deepEqual(after.events, before.events);
    assert.deepEqual(after.asides ?? [], before.asides ?? []);
    await hand.close();
  });
});
