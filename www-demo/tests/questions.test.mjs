// Every question, asked from the lifter's view: at most three taps, the expected answer, nothing on the console.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { Hand, launch } from "./browser.mjs";
import { IMPROPER, MOST_TAPS, NEWCOMER, QUESTIONS } from "./expected.mjs";

const STATES = [
  ["a full log", (hand) => hand.demo()],
  ["an empty log", begin],
  ["no lifter", async () => undefined],
];

async function begin(hand) {
  await hand.page.locator('main [data-act="begin"]').click();
  await hand.page.locator("#name").fill(NEWCOMER);
  await hand.page.locator('[data-act="begin-now"]').click();
  await hand.page.waitForSelector("[data-lift]");
}

describe("questions", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  STATES.forEach(([state, arrange], place) => {
    it(`with ${state}: 29 answers in at most ${MOST_TAPS} taps each`, async () => {
      const hand = await Hand.open(browser);
      await arrange(hand);
      const wrong = [];
      for (const [number, act, ...expected] of QUESTIONS) {
        try {
          await hand.ask(number);
          // What the answer needs may not be there without a lifter: then it says so at once.
          const big = await hand.page.locator("main [data-answer]").count();
          if (act && !(big > 0 && /^Needs a lifter$/.test(await hand.big()))) await hand.act(act);
          const said = await hand.big();
          const why = await hand.why();
          if (!expected[place].test(said)) wrong.push(`${number}: ${said}`);
          if (IMPROPER.test(await hand.page.locator("main").innerText())) wrong.push(`${number}: holds no proper words`);
          if (hand.taps > MOST_TAPS) wrong.push(`${number}: ${hand.taps} taps`);
          if (why.trim() === "") wrong.push(`${number}: no line that says why`);
        } catch (error) {
          wrong.push(`${number}: ${String(error).split("\n")[0]}`);
        }
      }
      assert.deepEqual(wrong, []);
      assert.deepEqual(hand.complaints, []);
      assert.deepEqual(hand.requests, []);
      await hand.close();
    });
  });

  it("answers in pounds and with a comma as in kilograms with a point", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(1);
    await hand.page.locator('[data-pad="Load on the bar"]').click();
    await hand.page.keyboard.type("62,5");
    await hand.page.keyboard.press("Enter");
    assert.match(await hand.big(), /20 \+ 1\.25/);
    await hand.tap(".unit");
    assert.match(await hand.why(), /137\.8 lb \(62\.5 kg\)/);
    await hand.close();
  });

  it("opens with the stop signs where pain is asked about, and stops every lift for one of them", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(13);
    assert.equal(await hand.page.locator("main [data-answer]").count(), 0, "no load before the signs are answered");
    await hand.tap(".sign");
    assert.match(await hand.big(), /^Stop\./);
    await hand.page.getByText("Write it into the log").click();
    await hand.page.waitForSelector(".card.stopped");
    const verdicts = await hand.page.locator(".verdict").allInnerTexts();
    assert.ok(verdicts.every((one) => one.includes("stop")), verdicts.join());
    // Only a clearance and then the coach's sign-off open it again.
    for (const [what, stopped] of [["A clearance", true], ["The coach signs off", false]]) {
      await hand.page.locator('[data-place="log"]').click();
      await hand.page.getByText("Write down something else").click();
      await hand.page.getByRole("button", { name: what, exact: true }).click();
      await hand.page.locator("#who").fill("invented clinician");
      await hand.page.locator('[data-act="write-down"]').click();
      await hand.page.getByText("Recorded.").waitFor();
      await hand.page.locator('[data-place="today"]').click();
      assert.equal((await hand.page.locator(".card.stopped").count()) > 0, stopped, what);
    }
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});
