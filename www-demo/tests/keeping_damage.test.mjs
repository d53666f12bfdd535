// Rows that are not as they were written: until somebody has looked and decided, the page says so on every load, names a
// stop among them, and gives no load.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, reload, saved, stored, tamper, upload, yes } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** Questions that count the log, and those that work on what is typed. */
const COUNTED = [18, 19, 27, 30, 31, 32];
const REDONE = [1, 2, 3, 4, 5, 6, 7, 8, 21, 22, 23];
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

  it("shows no load of theirs under any question", async () => {
    const hand = await hurt(WAYS[0]);
    const found = [];
    for (let number = 1; number <= 33; number += 1) {
      await hand.view(`q${number}`);
      await hand.settled();
      await says(hand.page.locator(".stop-band"), /chest pain/i, `q${number}`);
      const text = (await hand.page.locator("main").innerText()).replaceAll("\u00a0", " ").replaceAll(/bar \d+ \(\d+ kg\)/g, "a bar");
      if (COUNTED.includes(number)) await says(hand.page.locator("main [data-answer]"), /^No load/, `q${number}`);
      if (!REDONE.includes(number)) found.push(...[...text.matchAll(/.{0,30}\d (?:kg|lb)\b.{0,20}/g)].map((one) => `q${number}: ${one[0]}`));
    }
    assert.deepEqual(found, []);
    await hand.close();
  });

  it("is said first where a question is asked of their own lift", async () => {
    const hand = await hurt(WAYS[0]);
    for (const [number, label] of [[8, "Lift"], [21, "Strength of"]]) {
      await hand.view(`q${number}`);
      await hand.tap(`main [aria-label="${label}"] [data-value="front squat"]`);
      await says(hand.page.locator("main [data-answer]").first(), /^No load/, `q${number}`);
    }
    await hand.close();
  });

  it("counts a sign in a correction, and one that lies far behind", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Sam", (log) => {
      further(log, NEXT_DAY, { body_mass_recorded: { kg: 80 } });
      further(log, NEXT_DAY, { correction: { replaces: 704, with: { symptom_report: { signs: ["chest_pain"] } } } });
      for (let at = 0; at < 70; at += 1) further(log, NEXT_DAY, { pain_report: { region: "knee", score: at % 2, features: [] } });
    })));
    await stored(hand, "events", 775);
    await tamper(hand, "events", ["Sam", EARLY], changed);
    await reload(hand);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    const [{ value: { damage } }] = (await everything(hand)).lifters.filter((row) => row.key === "Sam");
    assert.ok(damage.stops.length < 20, "told again and again is kept once");
    await hand.close();
  });

  it("stays damaged where the log is replaced, and in a full copy", async () => {
    const hand = await hurt(WAYS[0]);
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-full"]');
    await upload(hand, fileOf(logOf("Sam")));
    const add = hand.page.locator('[data-act="replace"], [data-act="bring-in"]').first();
    await add.click();
    await yes(hand);
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await upload(hand, fileOf(logOf("Sam", (log) => void log.events.pop())));
    await hand.page.locator('[data-act="replace"]').click();
    await yes(hand);
    await stored(hand, "events", 702);
    await says(hand.page.locator(".stop-band"), /was damaged.*no load until/s);
    await reload(hand);
    await says(hand.page.locator(".stop-band"), /was damaged.*no load until/s);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    await hand.close();
    const other = await handOn(browser);
    await bringIn(other, copy);
    await says(other.page.locator(".stop-band"), /was damaged.*no load until/s);
    await reload(other);
    await says(other.page.locator(".stop-band"), /chest pain/i);
    await go(other, "files");
    await other.tap('[data-act="damage-leave"]');
    await other.tap("dialog [data-yes]");
    await counts(other.page.locator("[data-damaged]"), 0);
    await reload(other);
    await counts(other.page.locator(".fault"), 0);
    await says(other.page.locator(".stop-band"), /chest pain/i);
    await other.close();
  });

  it("keeps a stop whose pieces were thrown away, where the rest is brought back", async () => {
    const hand = await hurt(WAYS[0]);
    await go(hand, "files");
    await hand.tap('[data-act="empty"]');
    await hand.tap("dialog [data-yes]");
    await stored(hand, "asides", 0);
    // A second damage leaves something to bring back.
    await tamper(hand, "events", ["Sam", 699], changed);
    await reload(hand);
    await go(hand, "files");
    await hand.tap('[data-act="damage-back"]');
    await counts(hand.page.locator("[data-damaged]"), 0);
    await reload(hand);
    await counts(hand.page.locator(".fault"), 0);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    await hand.close();
  });

  it("keeps the hold for pain in a region that the log does not know", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Sam", (log) => {
      const set = structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind);
      set.parameters_changed.regions.push({ id: "wrist" });
      further(log, NEXT_DAY, set);
      further(log, NEXT_DAY, { pain_report: { region: "wrist", score: 7, features: [] } });
    })));
    await stored(hand, "events", 705);
    await tamper(hand, "events", ["Sam", 703], (row) => ({ ...row, text: row.text.replace("wrist", "waist") }));
    await reload(hand);
    await hand.tap('[data-act="look-damage"]');
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
    await says(hand.page.locator(".fault"), /1 entry with a sign, pain or a refusal.*does not fit the log/s);
    await reload(hand);
    await says(hand.page.locator(".fault"), /1 entry with a sign, pain or a refusal.*does not fit the log/s);
    await counts(hand.page.locator("main [data-lift]"), 0);
    await hand.close();
  });

  it("stays decided where another window wrote meanwhile", async () => {
    const hand = await hurt(WAYS[0]);
    await go(hand, "files");
    await hand.page.locator('[data-act="damage-leave"]').waitFor();
    await tamper(hand, "lifters", "Sam", (row) => ({ ...row, revision: row.revision + 1 }));
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
    await counts(hand.page.locator("[data-damaged]"), 0);
    await stored(hand, "events", 702);
    await reload(hand);
    await counts(hand.page.locator(".fault"), 0);
    await says(hand.page.locator(".stop-band"), /chest pain/i);
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
