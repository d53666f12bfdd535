// A number pad that stays open while the unit is changed in another window: the number is of the unit that the pad names.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { keeps, launch } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, main, second, turnTo } from "./keep.mjs";

const POUNDS = 65;
/** What a mass in pounds is, as the library stores it. */
const near = (kg, lb) => assert.ok(Math.abs(kg - lb * 0.45359237) < 1e-6, `${kg} kg for ${lb} lb`);

const opened = async (hand) => {
  await go(hand, "log");
  await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
};
const box = (what) => async (hand) => {
  await opened(hand);
  await hand.page.getByRole("button", { name: what, exact: true }).click();
};
const pick = (hand, label, value) => hand.tap(`dialog [aria-label="${label}"] [data-value="${value}"]`);
const lastKind = async (hand) => JSON.parse((await everything(hand)).events.at(-1).value.text).kind;
const written = (hand, name) => keeps(() => lastKind(hand), (kind) => kind[name] !== undefined);

async function inPounds(browser) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, "2026-08-28", { day_report: { class: "within", pain: [], asks: [] } }))));
  await hand.tap(".unit");
  const other = await second(hand, false);
  return { hand, other };
}

/** Types a number into a pad that is open, another window going over to kilograms in between. */
async function typeWhileOther({ hand, other }, label) {
  const pad = hand.page.locator(`dialog[aria-label="${label}"]`);
  for (const digit of String(POUNDS)) await pad.locator(`[data-key="${digit}"]`).click();
  assert.match(await pad.locator(".pad-title").innerText(), /\(lb\)/);
  await other.page.bringToFront();
  await other.tap(".unit");
  await turnTo(hand);
  await hand.page.locator(".unit", { hasText: /^kg$/ }).waitFor();
  await pad.locator('[data-key="ok"]').click();
}

describe("a pad whose unit is changed in another window", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  it("takes the number of a limit in the unit that it names", async () => {
    const windows = await inPounds(browser);
    const { hand } = windows;
    await box("A clearance")(hand);
    await pick(hand, "What was said", "cleared_with_limits");
    await pick(hand, "Where the limit holds", "everywhere");
    await pick(hand, "Long breath-holding", "no");
    await pick(hand, "Loaded bending of the spine", "no");
    await pick(hand, "Highest effort", "unsaid");
    await hand.page.locator('[data-pad="Highest load"]').click();
    await typeWhileOther(windows, "Highest load");
    await hand.page.locator("dialog #who").fill("invented clinic");
    await hand.tap('dialog [data-act="write-down"]');
    near((await written(hand, "clearance_recorded")).clearance_recorded.limits[0].load.kg, POUNDS);
    await hand.context.close();
  });

  it("takes the load that the coach allows and a body mass so", async () => {
    for (const [what, label, name, kg] of [
      ["The coach decides otherwise", "Load allowed", "coach_override", (kind) => kind.coach_override.load.kg],
      ["Body mass", "Body mass", "body_mass_recorded", (kind) => kind.body_mass_recorded.kg],
    ]) {
      const windows = await inPounds(browser);
      const { hand } = windows;
      await box(what)(hand);
      if (name === "coach_override") await hand.page.locator('dialog [data-value="box squat"]').click();
      await hand.page.locator(`[data-pad="${label}"]`).click();
      await typeWhileOther(windows, label);
      if (name === "coach_override") await hand.page.locator("dialog #who").fill("Coach");
      await hand.tap('dialog [data-act="write-down"]');
      near(kg(await written(hand, name)), POUNDS);
      await hand.context.close();
    }
  });

  it("takes the load of a set, of question 1 and the mass of a bar so", async () => {
    const windows = await inPounds(browser);
    const { hand, other } = windows;
    const again = async () => {
      await hand.tap(".unit");
      await turnTo(other);
      await other.page.locator(".unit", { hasText: /^lb$/ }).waitFor();
      await hand.page.bringToFront();
    };
    await go(hand, "today");
    await hand.page.locator('article [data-act="set"]').click();
    await hand.page.locator("dialog.set-sheet .stepper .number").click();
    await typeWhileOther(windows, "Load");
    assert.match(await hand.page.locator("dialog.set-sheet .stepper .number").innerText(), /29\.48 kg/);
    await hand.page.locator("dialog.set-sheet").getByRole("button", { name: "Cancel" }).click();
    await again();
    await hand.ask(1);
    const field = hand.page.locator("main [data-pad]").first();
    const label = await field.getAttribute("data-pad");
    await field.click();
    await typeWhileOther(windows, label);
    assert.match(await hand.page.locator("main [data-pad]").first().innerText(), /29\.48\s+kg/);
    await again();
    await go(hand, "gym");
    await hand.page.getByRole("button", { name: "Add a bar" }).click();
    await typeWhileOther(windows, "Mass of the bar");
    await keeps(() => main(hand), (text) => text.includes("29.48 kg"));
    assert.match(await main(hand), /29\.48 kg/);
    assert.deepEqual(hand.complaints, []);
    await hand.context.close();
  });
});
