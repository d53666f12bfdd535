// Rows that are not as they were written: until somebody has looked and decided, the page says so on every load, names a
// stop among them, and gives no load.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, reload, stored, tamper } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const EARLY = 700;
const changed = (row) => ({ ...row, text: row.text.replace(/"reps":\d/, '"reps":6').replace('"day":"2026', '"day":"2025') });
const WAYS = [
  ["an early row changed", EARLY, changed, true],
  ["an early row gone", EARLY, () => undefined, true],
  ["the last row gone", 704, () => undefined, false],
];
/** Somebody with a sign and an entry behind it, of whom a row is damaged. */
async function hurt([, place, act], day = NEXT_DAY) {
  const hand = await handOn(browser, day);
  await bringIn(hand, fileOf(logOf("Sam", (log) => {
    further(log, NEXT_DAY, { symptom_report: { signs: ["chest_pain"] } });
    further(log, NEXT_DAY, { body_mass_recorded: { kg: 80 } });
  })));
  await stored(hand, "events", 705);
  await tamper(hand, "events", ["Sam", place], act);
  await reload(hand);
  return hand;
}
const textsOf = async (hand) => (await everything(hand)).events.map((row) => row.value.text);

describe("a damaged log", () => {
  for (const way of WAYS) {
    it(`is said on every load, and no load is shown: ${way[0]}`, async () => {
      const hand = await hurt(way);
      for (const time of ["first", "second"]) {
        await says(hand.page.locator(".fault"), /Sam.*No load is shown until somebody has looked and decided/s, time);
        if (way[3]) await says(hand.page.locator(".fault"), /Among what was set aside: .*chest pain/is, time);
        for (const view of ["today", "lifters", "q9", "q10", "q24", "q25"]) {
          await hand.view(view);
          await says(hand.page.locator(".stop-band"), /was damaged.*no load until/s, view);
          await says(hand.page.locator(".stop-band"), /chest pain/i, view);
          assert.doesNotMatch((await hand.page.locator("main").innerText()).replaceAll("\u00a0", " "), /\d (kg|lb) · \d/, view);
        }
        await hand.view("today");
        await reload(hand);
      }
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }

  it("is whole again where what can be read is brought back, in its order", async () => {
    const hand = await hurt(WAYS[1]);
    await hand.tap('[data-act="look-damage"]');
    await says(hand.page.locator("[data-damaged]"), /4 entries can still be read/);
    await hand.tap('[data-act="damage-back"]');
    await counts(hand.page.locator("[data-damaged]"), 0);
    await stored(hand, "events", 704);
    const [lost] = await stored(hand, "asides", 1);
    assert.match(lost.value.why, /1 entry .* not there/, "what nothing is left of");
    assert.match((await textsOf(hand)).at(-2), /symptom_report/);
    await reload(hand);
    await counts(hand.page.locator(".fault"), 0);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    await hand.close();
  });

  it("keeps the stop where the rest is left out", async () => {
    const hand = await hurt(WAYS[0]);
    await hand.tap('[data-act="look-damage"]');
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
    await counts(hand.page.locator("[data-damaged]"), 0);
    // Pain that was told in a session that is left out counts too.
    await stored(hand, "events", 702);
    assert.match((await textsOf(hand)).at(-2), /pain_report/);
    assert.match((await textsOf(hand)).at(-1), /symptom_report/);
    await reload(hand);
    await counts(hand.page.locator(".fault"), 0);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    await says(hand.page.locator(".stop-band"), /^((?!damaged).)*$/s);
    await stored(hand, "asides", 5);
    await hand.close();
  });

  it("gives loads again once a lost end without a stop was looked at", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Sam")));
    await stored(hand, "events", 703);
    await tamper(hand, "events", ["Sam", 702], () => undefined);
    await reload(hand);
    await says(hand.page.locator(".fault"), /1 entry at the end is not there/);
    await counts(hand.page.locator("main [data-lift]"), 0);
    await hand.tap('[data-act="look-damage"]');
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
    await counts(hand.page.locator("[data-damaged]"), 0);
    await go(hand, "today");
    await hand.page.locator("main [data-lift]").first().waitFor();
    await hand.close();
  });
});
