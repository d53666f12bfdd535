// What was entered and not written down is not left without a question: pain that comes to a stop, and what is set for a
// lift; and under a stop nothing is said of sets that are done or to be done.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { begun, everything, go, main, stored } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

async function hurts(hand, score = 8) {
  await hand.page.locator(".stop-button").click();
  await hand.tap('[data-act="no-sign"]');
  await hand.tap('[aria-label="Where"] [data-value="knee"]');
  await hand.tap(`[aria-label="How much, 0 to 10"] [data-value="${score}"]`);
}

describe("pain that comes to a stop", () => {
  it("is asked about before the view is left, by a tap or by going back", async () => {
    const hand = await begun(browser, "Una");
    await hurts(hand);
    for (const away of [() => go(hand, "today"), () => hand.page.goBack()]) {
      await away();
      await says(hand.page.locator("dialog"), /knee, 8 of 10: that is a stop, and it is not in the log yet/);
      await hand.tap('[data-act="leave-not"]');
      await counts(hand.page.locator('main[data-view="q13"]'), 1);
    }
    await go(hand, "files");
    await hand.tap('[data-act="leave-write"]');
    await counts(hand.page.locator('main[data-view="files"]'), 1);
    await counts(hand.page.locator(".stop-band"), 1);
    await stored(hand, "events", 704);
    assert.match((await everything(hand)).events.at(-1).value.text, /pain_report.*"score":8/);
    await hand.close();
  });

  it("is left where it was not so, and nothing is asked where it is no stop or was written", async () => {
    const hand = await begun(browser, "Una");
    await hurts(hand);
    await go(hand, "today");
    await hand.tap('[data-act="leave-so"]');
    await counts(hand.page.locator('main[data-view="today"]'), 1);
    await stored(hand, "events", 703);
    await hurts(hand, 1);
    await go(hand, "today");
    await counts(hand.page.locator("dialog"), 0);
    await hurts(hand);
    await hand.page.getByRole("button", { name: "Write it into the log" }).click();
    await counts(hand.page.locator('main[data-view="today"]'), 1);
    await counts(hand.page.locator("dialog"), 0);
    await stored(hand, "events", 704);
    await hand.close();
  });
});

describe("the speed of a set that is corrected", () => {
  it("is written as it was said, and taken away where it was taken away", async () => {
    const hand = await begun(browser, "Wyn");
    const correct = async (speed) => {
      await go(hand, "log");
      await hand.page.locator('[data-act="correct"]').first().click();
      await hand.page.locator('[data-act="correct-set"]').first().click();
      await hand.page.locator('dialog [data-pad="Bar speed, if measured"]').click();
      for (const digit of speed) await hand.page.locator(`dialog [data-key="${digit}"]`).click();
      await hand.page.locator('dialog [data-key="ok"]').click();
      await hand.page.locator('[data-act="save-set"]').click();
    };
    const written = async (count) => JSON.parse((await stored(hand, "events", count)).at(-1).value.text).kind.correction.with.session_recorded.lifts[0].sets[0].velocity;
    await correct("0.5");
    assert.equal(await written(704), 0.5);
    await correct("0.4");
    assert.equal(await written(705), 0.4);
    await correct("0");
    assert.equal(await written(706), undefined);
    await hand.close();
  });
});

describe("what is set for a lift", () => {
  it("is asked about before the view is left, and written or left", async () => {
    const hand = await begun(browser, "Val");
    const change = async () => {
      await hand.view("plan");
      await hand.page.locator("summary", { hasText: "More about box squat" }).click();
      await hand.page.getByRole("button", { name: "box squat: gate, rungs, regions" }).click();
      await hand.page.getByRole("button", { name: "Remove even left and right", exact: true }).click();
    };
    await change();
    await go(hand, "today");
    await says(hand.page.locator("dialog"), /What was changed of box squat is not written down/);
    await hand.tap('[data-act="leave-so"]');
    await counts(hand.page.locator('main[data-view="today"]'), 1);
    await stored(hand, "events", 703);
    await change();
    await go(hand, "log");
    await hand.tap('[data-act="leave-write"]');
    await counts(hand.page.locator('main[data-view="log"]'), 1);
    await stored(hand, "events", 704);
    await hand.close();
  });
});

describe("sets beside a stop", () => {
  it("are not counted against none, and not called all that is planned", async () => {
    const hand = await begun(browser, "Wim");
    await hand.allGood();
    await stored(hand, "drafts", 3);
    await hand.page.locator(".stop-button").click();
    await hand.page.locator("main .sign").first().click();
    await counts(hand.page.locator(".stop-band"), 1);
    await go(hand, "today");
    const words = await main(hand);
    assert.match(words, /Going on: 3 sets/);
    assert.doesNotMatch(words, /of 0|Every planned set/);
    await hand.close();
  });
});
