// Every question, asked from the lifter's view: at most three taps, the expected answer, nothing on the console.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, Hand, launch, says } from "./browser.mjs";
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

describe("row_78: questions", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  STATES.forEach(([state, arrange], place) => {
    it(`with ${state}: every question is answered in at most ${MOST_TAPS} taps each`, async () => {
      const hand = await Hand.open(browser);
      await arrange(hand);
      const wrong = [];
      for (const [number, act, ...expected] of QUESTIONS) {
        try {
          await hand.ask(number);
          await hand.page.locator(`main[data-view="q${number}"]`).waitFor({ timeout: 5_000 });
          // What the answer needs may not be there without a lifter: then it says so at once.
          await hand.settled();
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
    assert.match(await hand.big(), /20 kg \+ 1\.25 kg/);
    await hand.tap(".unit");
    assert.match(await hand.big(), /^137\.8 lb: each end 20 kg \+ 1\.25 kg$/);
    assert.match(await hand.why(), /62\.5 kg/);
    await hand.close();
  });

  it("opens with the stop signs where pain is asked about, and stops every lift for one of them", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(13);
    await hand.page.locator("main .sign").first().waitFor();
    await counts(hand.page.locator("main [data-answer]"), 0, "no load before the signs are answered");
    await hand.tap(".sign");
    assert.match(await hand.big(), /^Stop\./);
    assert.match(await hand.why(), /^Chest pain or pressure\. .*Call emergency help now\./);
    // It counts from the first tap: above every view, and no lifter's load is given.
    for (const view of ["today", "questions", "lifters", "log", "files", "gym", "plan", ...Array.from({ length: QUESTIONS.length }, (_, at) => `q${at + 1}`)]) {
      await hand.view(view);
      await says(hand.page.locator("main > :not(:empty)").first(), /chest pain/i, view);
    }
    await hand.page.locator('[data-place="lifters"]').click();
    await says(hand.page.locator("[data-lifter]").first(), /chest pain/i);
    await hand.page.locator('[data-place="today"]').click();
    await hand.page.waitForSelector(".card.stopped");
    const verdicts = await hand.page.locator(".verdict").allInnerTexts();
    assert.ok(verdicts.every((one) => one.includes("stop")), verdicts.join());
    // Only a clearance and then the coach's sign-off open it again.
    for (const [what, stopped] of [["A clearance", true], ["The coach signs off", false]]) {
      await hand.page.locator('[data-place="log"]').click();
      await hand.page.getByText("Write down something else").click();
      await hand.page.getByRole("button", { name: what, exact: true }).click();
      // Nothing is filled in: what was said, and for which lifts, has to be tapped.
      await hand.page.locator('[data-act="write-down"]').click();
      await says(hand.page.locator("dialog .wrong"), /please/);
      await hand.page.locator(`dialog [data-value="${stopped ? "cleared" : "everything"}"]`).click();
      await hand.page.locator("#who").fill("invented clinician");
      await hand.page.locator('[data-act="write-down"]').click();
      await hand.page.getByText("Recorded.").waitFor();
      await hand.page.locator('[data-place="today"]').click();
      await hand.page.locator('main[data-view="today"] [data-lift]').first().waitFor();
      assert.equal((await hand.page.locator(".card.stopped").count()) > 0, stopped, what);
    }
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("takes a sign back only after asking, and says what that opens", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(13);
    await hand.tap(".sign");
    await hand.page.waitForSelector(".stop-band");
    await hand.page.locator('[data-act="undo-sign"]').click();
    await says(hand.page.locator("dialog"), /what it stopped opens again/);
    await hand.page.locator("dialog button.quiet").click();
    await counts(hand.page.locator("dialog"), 0);
    await counts(hand.page.locator(".stop-band"), 1, "nothing is taken back by a look at the question");
    await hand.page.locator('[data-act="undo-sign"]').click();
    await hand.page.locator("[data-yes]").click();
    await hand.page.waitForSelector(".sign");
    await counts(hand.page.locator(".stop-band"), 0);
    await hand.close();
  });

  it("fills in nothing about pain: neither where, nor how much, nor whether", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(13);
    await hand.tap('[data-act="no-sign"]');
    await says(hand.page.locator("main [data-answer]").first(), /^Where, and how much\?$/);
    await counts(hand.page.locator("main .choice[aria-pressed='true']"), 0);
    await hand.page.locator('[aria-label="Where"] [data-value="knee"]').click();
    await hand.page.locator('[aria-label="Where"] [data-value="knee"][aria-pressed="true"]').waitFor();
    await says(hand.page.locator("main [data-answer]").first(), /^Where, and how much\?$/);
    await hand.page.locator('[aria-label="How much, 0 to 10"] [data-value="4"]').click();
    await says(hand.page.locator("main [data-answer]").first(), /^box squat: (ease off|stop|technique only)/);
    await hand.ask(26);
    assert.equal(await hand.big(), "Did it hurt?");
    await hand.view("today");
    await hand.page.locator('[data-act="day"]').click();
    await hand.page.locator('dialog [aria-label^="Pain now"] [data-value="yes"]').click();
    assert.equal(await hand.page.locator('[data-act="save-day"]').isDisabled(), true);
    await says(hand.page.locator("dialog"), /Where, please\./);
    await hand.page.locator('dialog [aria-label="Where"] [data-value="knee"]').click();
    await says(hand.page.locator("dialog"), /How much, please\./);
    assert.equal(await hand.page.locator('[data-act="save-day"]').isDisabled(), true);
    await hand.close();
  });
});
