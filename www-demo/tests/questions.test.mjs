// Every question, asked from the lifter's view: at most three taps, the expected answer, nothing on the console.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { Hand, launch } from "./browser.mjs";

const MOST_TAPS = 3;

/** Number, taps after the question is open, and the answer with the invented lifter, a new one, and nobody. */
const QUESTIONS = [
  [1, (hand) => hand.pad("Load on the bar", "62.5"), /^Each end: 20 \+ 1\.25$/, /^Each end: 20 \+ 1\.25$/, /^Each end: 20 \+ 1\.25$/],
  [2, (hand) => hand.tap("[data-disc='0']"), /^60 kg = 132\.3 lb$/, /^60 kg = 132\.3 lb$/, /^60 kg = 132\.3 lb$/],
  [3, (hand) => hand.pad("Wanted, not over", "63.4"), /^62\.5 kg$/, /^62\.5 kg$/, /^62\.5 kg$/],
  [4, (hand) => hand.pad("Load", "25"), /^Only with blocks of \d+(\.\d)? mm$/, /^Only with blocks of \d+(\.\d)? mm$/, /^Only with blocks of \d+(\.\d)? mm$/],
  [5, (hand) => hand.tap("[data-value='200']"), /^100 mm$/, /^100 mm$/, /^100 mm$/],
  [6, (hand) => hand.pad("Work load", "80"), /^20 → (.*→ )?80$/, /^20 → (.*→ )?80$/, /^20 → (.*→ )?80$/],
  [7, (hand) => hand.pad("Second lifter", "80"), /^\d+ disc moves on each end$/, /^\d+ disc moves on each end$/, /^\d+ disc moves on each end$/],
  [8, (hand) => hand.pad("Load", "60"), /^6\d to 8\d kg$/, /^6\d to 8\d kg$/, /^6\d to 8\d kg$/],
  [9, (hand) => hand.tap("[aria-label='It felt like so many left'] [data-value='0']"), /kg$/, /kg$/, /kg$/],
  [10, (hand) => hand.tap("[aria-label^='A critical point'] [data-value='yes']"), /^Bad day by agreeing signs$/, /^Bad day by agreeing signs$/, /^Needs a lifter$/],
  [11, null, /^No step up today$/, /^No step up today$/, /^Needs a lifter$/],
  [12, null, /^front-held squat: 3 more passing sessions in a row/, /: .*passing session/, /^Needs a lifter$/],
  [13, (hand) => hand.tap("[data-act='no-sign']"), /^front-held squat: ease off, .*kg/, /: (ease off|technique only|train)/, /^Ease off: no step up$/],
  [14, (hand) => hand.tap("[aria-label='Days without lifting'] [data-value='21']"), /^front-held squat: 23\.5 kg$/, /: \d+(\.\d+)? kg$/, /^Needs a lifter$/],
  [15, null, /^Usual for this lifter$/, /^Needs a lifter$/, /^Needs a lifter$/],
  [16, (hand) => hand.pad("Load now", "60"), /^Start at 4\d(\.\d+)? kg, learning$/, /^Start at 4\d(\.\d+)? kg, learning$/, /^Start at 4\d(\.\d+)? kg, learning$/],
  [17, (hand) => hand.pad("Load now", "25"), /^A usual step: 2\.1 %$/, /^A usual step: 4 %$/, /^A usual step: 4 %$/],
  [18, (hand) => hand.tap("[aria-label='Weeks'] [data-value='8']"), /^Within noise$/, /^Too few sessions to say$/, /^Needs a lifter$/],
  [19, null, /^Less than usual$/, /^Nothing to compare/, /^Needs a lifter$/],
  [20, (hand) => hand.tap("[aria-label='Gate'] [data-value='set'], [aria-label='Good of 10'] [data-value='9']"), /^About \d+ sessions at 9 good of 10$/, /^About \d+ sessions at 9 good of 10$/, /^About \d+ sessions at 9 good of 10$/],
  [21, (hand) => hand.pad("Strength now", "100"), /^\d\d to \d\d kg$/, /^\d\d to \d\d kg$/, /^\d\d to \d\d kg$/],
  [22, (hand) => hand.pad("Number", "155"), /^155 lb = 70\.31 kg$/, /^155 lb = 70\.31 kg$/, /^155 lb = 70\.31 kg$/],
  [23, (hand) => hand.pad("To", "50"), /^17 loads$/, /^\d+ loads$/, /^\d+ loads$/],
  [24, null, /^front-held squat 27\.04 kg, box squat 64\.54 kg, strict press 15 kg$/, /kg/, /^Needs a lifter$/],
  [25, null, /^27\.04 kg · 3 × 5 · leave 3$/, /^\d+(\.\d+)? kg · \d × 5 · leave 4$/, /^No lifter here yet$/],
  [26, (hand) => hand.tap("[aria-label='Did it hurt?'] [data-value='no']"), /^25\.54 kg for the next set$/, /(for the next set|easier rung)$/, /(for the next set|easier rung)$/],
  [27, null, /^front-held squat 27\.04 kg, strict press 15 kg$/, /^No session yet$/, /^Needs a lifter$/],
  [28, (hand) => hand.tap("[aria-label='Minutes'] [data-value='30']"), /^Keep: front-held squat \d × 5/, /^Keep: /, /^Needs a lifter$/],
  [29, (hand) => hand.tap("[aria-label^='Must the bar'] [data-value='225']"), /^Start at 40 kg$/, /^Start at 30 kg$/, /^Start at 30 kg$/],
];

const STATES = [
  ["a full log", (hand) => hand.demo()],
  ["an empty log", begin],
  ["no lifter", async () => undefined],
];

async function begin(hand) {
  await hand.page.locator('main [data-act="begin"]').click();
  await hand.page.locator("#name").fill("Rowan, invented");
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
          if (act && !(big > 0 && /^Needs a lifter$/.test(await hand.big()))) await act(hand);
          const said = await hand.big();
          const why = await hand.why();
          if (!expected[place].test(said)) wrong.push(`${number}: ${said}`);
          if (/NaN|undefined|Infinity|\[object/.test(await hand.page.locator("main").innerText())) wrong.push(`${number}: holds no proper words`);
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
