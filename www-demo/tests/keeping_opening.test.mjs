// What a file lets be done that was not before: stops and limits are named before it does anything, and the stop of a copy
// stands beside the other; what a full device refused is stored as soon as there is room.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, noRoom, roomAgain, stored, upload } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const cleared = (limits) => ({ clearance_recorded: { status: limits.length > 0 ? "cleared_with_limits" : "cleared", who: "an invented clinic", ...(limits.length > 0 ? { limits } : {}) } });
const sign = (log) => further(log, NEXT_DAY, { symptom_report: { signs: ["chest_pain"] } });
const other = (log) => { log.events.at(-1).note = "in the file"; };

describe("a copy of somebody who is stopped", () => {
  it("comes in beside only after the stop was said, and points to it by both names", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Ann", sign)));
    await counts(hand.page.locator(".stop-band"), 1);
    await upload(hand, fileOf(logOf("Ann", other)));
    await hand.tap('[data-act="keep-both"]');
    await says(hand.page.locator("dialog"), /Ann is stopped here: .*chest pain.*Ann \(2\)/is);
    await hand.tap("dialog [data-yes]");
    await says(hand.page.locator("header .who"), /Ann \(2\)/);
    await go(hand, "today");
    for (const view of ["today", "log", "q9", "q24"]) {
      await hand.view(view);
      await says(hand.page.locator("main > :not(:empty)").first(), /Ann is stopped\. .*chest pain.*Ann \(2\) is here under another name/is, view);
    }
    await hand.page.getByRole("button", { name: "Look at Ann", exact: true }).click();
    await says(hand.page.locator("header .who"), /^Ann$/);
    await counts(hand.page.locator("[data-other-stop]"), 0);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("limits of a clearance", () => {
  const limits = [{ effort: 6 }];
  for (const [what, there, pattern, kind] of [
    ["go", [], /A limit would go: no effort above 6 of 10/, "gone"],
    ["come", [...limits, { no_loaded_flexion: true }], /A limit would come: no loaded bending of the spine/, "come"],
  ]) {
    it(`that ${what} with a file are named before it does anything`, async () => {
      const hand = await handOn(browser);
      await bringIn(hand, fileOf(logOf("Bo", (log) => further(log, NEXT_DAY, cleared(limits)))));
      // One file that adds an entry, one that takes the place of the log.
      for (const [act, change] of [["bring-in", (log) => { further(log, NEXT_DAY, cleared(limits)); further(log, NEXT_DAY, cleared(there)); }], ["replace", (log) => further(log, NEXT_DAY, cleared(there))]]) {
        await upload(hand, fileOf(logOf("Bo", change)));
        await says(hand.page.locator(`[data-limit="${kind}"]`), pattern, act);
        await hand.tap(`[data-act="${act}"]`);
        if (kind === "gone") await says(hand.page.locator("dialog"), pattern, act);
        if ((await hand.page.locator("dialog .quiet").count()) > 0) await hand.tap("dialog .quiet");
        if (kind === "gone") await stored(hand, "events", 704);
        else break;
      }
      await hand.close();
    });
  }
});

describe("what a full device refused", () => {
  it("is stored once there is room, though nobody does anything", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Cay")));
    await noRoom(hand);
    await hand.view("q13");
    await hand.page.locator("main .sign").first().click();
    await hand.page.waitForSelector(".fault");
    await roomAgain(hand);
    await hand.page.waitForSelector(".fault", { state: "detached", timeout: 12_000 });
    await stored(hand, "events", 704);
    assert.match((await everything(hand)).events.at(-1).value.text, /symptom_report/);
    await hand.close();
  });
});
