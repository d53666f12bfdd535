// Storage that takes what it is asked and never answers: it is said plainly after some seconds, what was entered is kept in the window
// and can be saved as a file, and nothing looks stored that is not.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { begun, bringIn, everything, fileOf, further, go, handOn, logOf, main, mute, NEXT_DAY, saved, stored, tells } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** The page says it within some seconds. */
const soon = (hand, pattern) => hand.page.locator(".fault", { hasText: pattern }).first().waitFor({ timeout: 12_000 });
const speak = (hand) => hand.page.evaluate(() => globalThis.speak());
const hold = (hand) => hand.page.evaluate(() => globalThis.hold());
const SILENT = /The storage of this device does not answer/;

describe("storage that does not answer when the page is opened", () => {
  /** Somebody is kept who is stopped; the page is opened again on a device that says nothing. */
  async function silently() {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Sid", (log) => further(log, NEXT_DAY, { symptom_report: { signs: ["faint"] } }))));
    await stored(hand, "events", 704);
    await hand.page.addInitScript(mute, true);
    await hand.page.reload();
    await hand.ready();
    return hand;
  }

  it("shows nobody, says so, and shows the stop once it answers", async () => {
    const hand = await silently();
    await soon(hand, SILENT);
    assert.match(await main(hand), /Nobody is shown, and no load/);
    assert.doesNotMatch(await main(hand), /No lifter here yet/);
    await speak(hand);
    await counts(hand.page.locator(".stop-band"), 1);
    await counts(hand.page.locator(".fault"), 0);
    await stored(hand, "events", 704);
    await hand.close();
  });

  it("keeps in the window what is entered, offers the file, and writes nothing beside what lies there", async () => {
    const hand = await silently();
    await soon(hand, SILENT);
    await hand.tap('[data-act="begin"]');
    await hand.page.locator('main input[type="text"]').first().fill("Newcomer");
    await hand.page.locator("main .main").last().click();
    await tells(hand, /Newcomer|Not kept on this device/);
    await counts(hand.page.locator('[data-act="rescue"]'), 1);
    await speak(hand);
    await soon(hand, /It answers now/);
    assert.match(await saved(hand, '[data-act="rescue"]'), /Newcomer/);
    const { lifters } = await everything(hand);
    assert.deepEqual(lifters.map((one) => one.key), ["Sid"]);
    await stored(hand, "events", 704);
    await hand.close();
  });
});

describe("storage that falls silent while the page is open", () => {
  async function open(id) {
    const hand = await begun(browser, id);
    await hand.page.addInitScript(mute, false);
    await hand.page.reload();
    await hand.ready();
    return hand;
  }

  it("says that sets are not kept, and gives them in the file; they are written once it answers", async () => {
    const hand = await open("Sue");
    await hold(hand);
    await hand.allGood();
    await soon(hand, SILENT);
    await says(hand.page.locator(".fault").first(), /Not kept on this device/);
    assert.doesNotMatch(await main(hand), /Recorded\./);
    const file = JSON.parse(await saved(hand, '[data-act="rescue"]'));
    assert.equal(file.lifters[0].draft.length, 3);
    await speak(hand);
    await stored(hand, "drafts", 3);
    await hand.page.locator(".fault").waitFor({ state: "detached", timeout: 12_000 });
    await hand.close();
  });

  it("shows a stop at once and does not call it recorded before it is", async () => {
    const hand = await open("Sue");
    await hold(hand);
    await hand.view("q13");
    await hand.page.locator("main .sign").first().click();
    await counts(hand.page.locator(".stop-band"), 1);
    await soon(hand, SILENT);
    assert.doesNotMatch(await main(hand), /Recorded\./);
    assert.match(await saved(hand, '[data-act="rescue"]'), /symptom_report/);
    await speak(hand);
    await hand.page.locator(".fault").waitFor({ state: "detached", timeout: 12_000 });
    await stored(hand, "events", 704);
    await hand.close();
  });

  it("lets nobody wait for a view without a word, and calls nothing erased", async () => {
    const hand = await open("Sue");
    await hold(hand);
    await go(hand, "files");
    await hand.page.locator('[data-act="erase"]').click();
    await hand.page.locator("dialog [data-yes]").click();
    await hand.page.getByText("the device refused to erase what it keeps").waitFor({ timeout: 12_000 });
    await soon(hand, SILENT);
    await counts(hand.page.getByText("Sue was erased."), 0);
    await hand.close();
  });

  it("says so where only what was set aside is asked for", async () => {
    const hand = await open("Sue");
    await hold(hand);
    await go(hand, "files");
    await soon(hand, /What was set aside could not be read/);
    await hand.close();
  });
});
