// Questions under a limit of a clearance: none gives a load above it, and each names it.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { launch, says } from "./browser.mjs";
import { bringIn, fileOf, further, handOn, logOf, NEXT_DAY } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const QUIET = { day_report: { class: "within", pain: [], asks: [] } };
async function under(...limits) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf("Abe", (log) => {
    further(log, NEXT_DAY, QUIET);
    further(log, NEXT_DAY, { clearance_recorded: { status: "cleared_with_limits", who: "Dr Inv", limits } });
  })));
  return hand;
}
const answerOf = (hand) => hand.page.locator("main [data-answer]").first();

describe("questions under a limit", () => {
  it("start a longer range within it, and name it", async () => {
    const hand = await under({ load: { kg: 25 } });
    await hand.view("q16");
    await hand.tap('[aria-label="Lift"] [data-value="deadlift"]');
    await says(answerOf(hand), /^Start at|limit/);
    const kg = Number(/Start at ([\d.]+)/.exec((await answerOf(hand).innerText()).replaceAll("\u00a0", " "))?.[1] ?? 0);
    assert.ok(kg <= 25, `${kg} kg`);
    await says(hand.page.locator("main"), /In force: no more than 25 kg/);
    // Nor is a load above it said where the range is no longer one.
    await hand.pad("Blocks then", "325");
    await says(answerOf(hand), /^Not a longer range$/);
    await says(hand.page.locator("main"), /In force: no more than 25 kg/);
    await hand.close();
  });

  it("start no longer range under a limit of range", async () => {
    const hand = await under({ range: { mm: 300 } });
    await hand.view("q16");
    await hand.tap('[aria-label="Lift"] [data-value="deadlift"]');
    await says(answerOf(hand), /^No longer range: a limit of range is in force/);
    await says(hand.page.locator("main"), /no range beyond 300 mm/);
    await hand.close();
  });

  it("name no next load above it", async () => {
    const hand = await under({ load: { kg: 25 } });
    await hand.view("q17");
    await hand.tap('[aria-label="Lift"] [data-value="box squat"]');
    await says(answerOf(hand), /^No larger load: a limit is in force/);
    await says(hand.page.locator("main"), /In force: no more than 25 kg/);
    assert.doesNotMatch(await hand.page.locator("main [data-why]").first().innerText(), /48\.04/);
    await hand.close();
  });

  it("begin no lift above it, and one of a region without it as ever", async () => {
    const hand = await under({ load: { kg: 12 }, region: "knee" });
    await hand.view("q29");
    await hand.tap('[aria-label="Which lift?"] [data-value="box squat"]');
    await says(answerOf(hand), /^(No load: a limit is in force|Start at ([0-9]|1[0-2])(\.\d+)? kg)/);
    await says(hand.page.locator("main"), /In force: no more than 12 kg \(knee\)/);
    await hand.tap('[aria-label="Which lift?"] [data-value="bench press"]');
    await says(answerOf(hand), /^Start at/);
    assert.doesNotMatch(await hand.page.locator("main").innerText(), /12 kg \(knee\)/);
    await hand.close();
  });

  it("begin none above a limit that holds everywhere", async () => {
    const hand = await under({ load: { kg: 25 } });
    await hand.view("q29");
    for (const lift of ["straight-bar pull", "bench press", "box squat"]) {
      await hand.tap(`[aria-label="Which lift?"] [data-value="${lift}"]`);
      const big = (await answerOf(hand).innerText()).replaceAll("\u00a0", " ");
      assert.ok(Number(/Start at ([\d.]+)/.exec(big)?.[1] ?? 0) <= 25, `${lift}: ${big}`);
      await says(hand.page.locator("main"), /In force: no more than 25 kg/, lift);
    }
    await hand.close();
  });

  it("send nobody to the other lift of a pair that rests under it", async () => {
    const hand = await under({ load: { kg: 12 } });
    await hand.view("q28");
    await hand.tap("[aria-label='Minutes'] [data-value='45']");
    assert.doesNotMatch(await hand.page.locator("main").innerText(), /at its own/);
    await hand.close();
  });
});
