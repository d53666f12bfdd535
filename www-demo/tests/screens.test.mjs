// What stands on a screen and on paper: disc moves of a warm-up, the stop band on a telephone, days of the log, the track
// of a lift, the card, who is first at a bar.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, Hand, launch, says } from "./browser.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const tidy = (text) => text.replaceAll("\u00a0", " ");
const show = (hand, view) => hand.view(view);

async function demo(options) {
  const hand = await Hand.open(browser, options);
  hand.page.setDefaultTimeout(6000);
  await hand.demo();
  return hand;
}

/** Mass of a disc by its face, kg. */
const POUND = 0.45359237;
const mass = (face) => Number.parseFloat(face) * (face.endsWith("lb") ? POUND : 1);

describe("the warm-up", () => {
  it("says which discs come off and go on, and every step then weighs what it says", async () => {
    const hand = await demo();
    await hand.page.locator(".warm-up li").first().waitFor();
    const lines = (await hand.page.locator(".warm-up li").allInnerTexts()).map(tidy);
    assert.ok(lines.length >= 3, lines.join(" | "));
    const on = [];
    for (const line of lines) {
      const discs = (what) => new RegExp(`\\b${what} ([^;]*?)(;|, the day|$)`).exec(line)?.[1].split(", ") ?? [];
      // The outermost comes off first: a disc inside stays until those outside it are off.
      for (const face of discs("off")) assert.equal(on.pop(), face, line);
      on.push(...discs("on"));
      const total = 20 + 2 * on.reduce((sum, face) => sum + mass(face), 0);
      assert.ok(Math.abs(total - Number.parseFloat(/\d+(\.\d+)?/.exec(line)[0])) < 0.01, `${line}: ${total}`);
    }
    // The last step leaves on the bar what the card shows.
    assert.deepEqual(await hand.page.locator("article .disc-chip").allInnerTexts().then((all) => all.map(tidy)), on);
    await hand.close();
  });
});

describe("a stop on a telephone", () => {
  it("leaves room for the view below it, and says the sign and what to do without a tap", async () => {
    const hand = await demo({ viewport: { width: 360, height: 640 } });
    await hand.ask(13);
    await hand.tap(".sign");
    await hand.page.waitForSelector(".stop-band");
    for (const view of ["today", "log", "lifters", "plan", "q1", "q24"]) {
      await show(hand, view);
      const box = await hand.page.locator(".stop-band").boundingBox();
      assert.ok(box.height <= 260 && box.y < 100, `${view}: ${JSON.stringify(box)}`);
      await says(hand.page.locator(".stop-band .stop-words"), /chest pain.*Call emergency help now\./is, view);
    }
    await hand.page.locator(".stop-band summary").click();
    await says(hand.page.locator(".stop-band"), /Every lift stays stopped until a clinician has cleared it and the coach has signed off/);
    await hand.close();
  });
});

describe("answers that somebody has to give", () => {
  it("begin with nothing chosen, also where one thing alone is open", async () => {
    const hand = await demo();
    await hand.page.locator('[data-act="day"]').click();
    await hand.page.locator("dialog .choice").filter({ hasText: "Dizzy" }).click();
    await hand.page.locator('[data-act="save-day"]').click();
    await hand.page.getByText("Recorded.").waitFor();
    await show(hand, "log");
    await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
    await hand.page.getByRole("button", { name: "What was asked is answered", exact: true }).click();
    await hand.page.locator("dialog").waitFor();
    await counts(hand.page.locator('dialog [aria-pressed="true"]'), 0);
    await hand.page.locator('[data-act="write-down"]').click();
    await says(hand.page.locator("dialog .wrong"), /Which of them, please\./);
    await hand.close();
  });
});

describe("the log", () => {
  it("has a block a day: loads, a dot a repetition, pain, the morning after", async () => {
    const hand = await demo();
    await show(hand, "log");
    const day = hand.page.locator('.day[data-day="2026-08-24"]');
    const words = tidy(await day.innerText());
    // The demo's last session: 33.5 kg in the front squat, 23.54 kg in the press, one repetition short in its first set.
    assert.match(words, /^Mon 24 Aug/);
    assert.match(words, /front squat 33\.5 kg × 5 ●●●●●/);
    assert.match(words, /strict press 23\.54 kg × 5 ●●●●○/);
    assert.match(words, /No pain\. Morning after: no more pain than before\./);
    assert.ok((await day.locator('[role="img"][aria-label="4 of 5 good"]').count()) >= 1);
    await hand.close();
  });

  it("tracks a lift with its steps, breaks, pain and today's load, in words for whoever sees no picture", async () => {
    const hand = await demo({ colorScheme: "dark" });
    await show(hand, "log");
    await hand.page.getByText("Track of each lift").click();
    const track = hand.page.locator('[data-track="box squat"]');
    await track.waitFor();
    await says(track, /^Today: 47\.54 kg\. (Breaks: \d+ \w+ \d{4} to |No break).*(Pain in \d+ session|No pain)/s);
    const label = await hand.page.locator('figure[aria-label^="Working load of box squat"]').getAttribute("aria-label");
    // It began with 40 kg on the first day of the log.
    assert.match(tidy(label), /: from 40 kg on 2 Sep to 47\.54 kg on /);
    await hand.page.locator(".chart canvas").first().waitFor();
    // On paper the picture is drawn in the colours of paper, whatever the screen has.
    const dark = () => hand.page.evaluate(() => document.documentElement.dataset.theme);
    await hand.page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    assert.equal(await dark(), "light");
    await hand.page.evaluate(() => dispatchEvent(new Event("afterprint")));
    assert.equal(await dark(), "dark");
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("the card", () => {
  it("is one page with eight lifts and health detail, each with its gate and what is missing", async () => {
    const hand = await Hand.open(browser);
    hand.page.setDefaultTimeout(6000);
    await show(hand, "begin");
    await hand.page.locator("#name").fill("Max, invented");
    for (const lift of ["front squat", "straight-bar pull", "hex-bar pull", "strict press", "bench press"]) await hand.page.getByRole("button", { name: lift, exact: true }).click();
    await hand.page.locator('[data-act="begin-now"]').click();
    await hand.page.waitForSelector("[data-lift]");
    await show(hand, "q24");
    await hand.page.locator('[aria-label="Health detail on the card"] [data-value="yes"]').click();
    await hand.page.locator(".handover").getByText("Gate: up after").nth(7).waitFor();
    const card = tidy(await hand.page.locator(".handover").innerText());
    assert.equal(card.match(/Gate: up after 3 sessions in a row with 9 of 10 good\. So far 0 of 3/g)?.length, 8, card.slice(0, 600));
    for (const format of ["A4", "Letter"]) {
      const pdf = await hand.page.pdf({ format });
      assert.equal(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g).length, 1, format);
    }
    await hand.close();
  });
});

describe("several at one bar", () => {
  it("are told who lifts first and which discs move, from their own logs", async () => {
    const hand = await Hand.open(browser);
    hand.page.setDefaultTimeout(6000);
    for (const name of ["Ann, invented", "Bob, invented"]) {
      await show(hand, "begin");
      await hand.page.locator("#name").fill(name);
      await hand.page.locator('[data-act="begin-now"]').click();
      await hand.page.waitForSelector("[data-lift]");
    }
    await show(hand, "lifters");
    await hand.page.locator("[data-first]").waitFor();
    // Both with the empty bar: nothing moves.
    await says(hand.page.locator("[data-first]"), /^(Ann|Bob), invented first: with turns in this order 0 disc moves on each end, the fewest there are\./);
    await hand.page.locator("main details.more summary").first().click();
    await counts(hand.page.locator('[aria-label="Turns at this bar"] tbody tr'), 6, "three sets each");
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});
