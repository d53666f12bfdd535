// What is entered in a box and not written down yet survives Escape, the way back, another window and a refusal, or is asked about;
// what stops something counts as soon as it is tapped.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, keeps, launch, says } from "./browser.mjs";
import { begun, everything, go, second, setDay, stored, turnTo } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const escape = (hand) => hand.page.keyboard.press("Escape");
const boxes = (hand) => hand.page.locator("dialog[open]");
const last = async (hand) => (await everything(hand)).events.at(-1).value.text;
const pressed = (hand, name) => hand.page.locator("dialog").getByRole("button", { name, pressed: true });
async function inLog(hand, name) {
  await go(hand, "log");
  await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
  await hand.page.getByRole("button", { name, exact: true }).click();
}
async function sign(hand) {
  await hand.page.bringToFront();
  await hand.view("q13");
  await hand.page.locator("main .sign", { hasText: /chest/i }).click();
  await hand.page.getByText("Recorded.").waitFor();
}

/** The boxes of a day, each with what is entered in it, how that looks, and what it is written as. */
const BOXES = [
  {
    name: "the day's questions",
    open: (hand) => hand.tap('[data-act="day"]'),
    enter: (hand) => hand.page.locator("dialog").getByRole("button", { name: "Fever" }).click(),
    entered: (hand) => pressed(hand, "Fever"),
    stops: /Fever: that is a stop, and it is not in the log yet/,
    save: '[data-act="save-day"]',
    written: /day_report.*fever/,
  },
  {
    name: "the morning's",
    open: (hand) => inLog(hand, "The morning after"),
    enter: async (hand) => {
      await hand.tap('dialog [data-value="yes"]');
      await hand.tap('dialog [aria-label="Where"] [data-value="knee"]');
      await hand.tap('dialog [aria-label="How much, 0 to 10"] [data-value="8"]');
    },
    entered: (hand) => pressed(hand, "8"),
    stops: /knee, 8 of 10: that is a stop, and it is not in the log yet/,
    save: '[data-act="write-down"]',
    written: /next_day_report.*"score":8/,
  },
  {
    name: "a clearance",
    open: (hand) => inLog(hand, "A clearance"),
    enter: async (hand) => {
      await hand.tap('dialog [data-value="not_cleared"]');
      await hand.page.locator("dialog #who").fill("invented clinic");
    },
    entered: (hand) => pressed(hand, "Not cleared"),
    stops: /Not cleared: that is a stop/,
    save: '[data-act="write-down"]',
    written: /clearance_recorded.*not_cleared/,
  },
  {
    name: "a set",
    open: (hand) => hand.page.locator('article [data-act="set"]').click(),
    enter: async (hand) => {
      await hand.tap('dialog [aria-label="Left in reserve"] [data-value="4"]');
      await hand.tap('[data-act="all-met"]');
    },
    entered: (hand) => pressed(hand, "4").first(),
    save: '[data-act="save-set"]',
  },
  {
    name: "all sets",
    open: (hand) => hand.tap('[data-act="all-good"]'),
    enter: async (hand) => {
      await hand.tap('dialog [aria-label="Was it watched?"] [data-value="yes"]');
      await hand.tap('dialog [aria-label^="Left in reserve"] [data-value="3"]');
    },
    entered: (hand) => pressed(hand, "3"),
    save: '[data-act="save-good"]',
  },
];

describe("a box in which something is entered", () => {
  for (const { name, open, enter, entered, stops, written } of BOXES) {
    it(`is not closed by Escape without a question: ${name}`, async () => {
      const hand = await begun(browser, "Una");
      await open(hand);
      await enter(hand);
      // Some browsers close what was asked before and not tapped since.
      for (let time = 0; time < 4; time += 1) {
        await escape(hand);
        await says(boxes(hand).last(), stops ?? /Leave what is entered\?/, `the ${time}. time`);
        await counts(boxes(hand), 2);
        if (time % 2 === 0) await hand.tap('[data-act="leave-not"]');
        else await escape(hand);
        await counts(boxes(hand), 1);
        await counts(entered(hand), 1);
      }
      await escape(hand);
      if (written) {
        await hand.tap('[data-act="leave-write"]');
        await stored(hand, "events", 704);
        assert.match(await last(hand), written);
      } else await hand.tap('[data-act="leave-so"]');
      await counts(boxes(hand), 0);
      if (!written) assert.equal((await everything(hand)).events.length, 703);
      await hand.close();
    });

    it(`stays beside a stop that another window records: ${name}`, async () => {
      const hand = await begun(browser, "Una");
      const other = await second(hand, false);
      await go(hand, "today");
      await open(hand);
      await enter(hand);
      await sign(other);
      await turnTo(hand);
      await counts(hand.page.locator(".stop-band"), 1);
      await says(hand.page.locator("dialog [data-happened]"), /chest/i);
      await counts(entered(hand), 1);
      const inert = () => hand.page.evaluate(() => [...document.querySelectorAll("dialog[open] > :not([data-happened])")].every((one) => one.inert));
      assert.equal(await inert(), true, "nothing is written before it was seen");
      await hand.tap('[data-act="seen"]');
      await counts(hand.page.locator("dialog [data-happened]"), 0);
      await counts(entered(hand), 1);
      if (written) {
        await hand.tap(`dialog ${BOXES.find((one) => one.name === name).save}`);
        await stored(hand, "events", 705);
        assert.match(await last(hand), written);
        await counts(boxes(hand), 0);
      }
      await hand.context.close();
    });
  }

  it("is closed at once where nothing is entered, and by Cancel where that stops nothing", async () => {
    const hand = await begun(browser, "Una");
    for (const { open } of BOXES) {
      await go(hand, "today");
      await open(hand);
      await counts(boxes(hand), 1);
      await escape(hand);
      await counts(boxes(hand), 0);
    }
    await go(hand, "today");
    await hand.tap('[data-act="day"]');
    await hand.page.locator("dialog").getByRole("button", { name: "Within the usual" }).click();
    await hand.page.locator("dialog .quiet").click();
    await counts(boxes(hand), 0);
    await hand.tap('[data-act="day"]');
    await hand.page.locator("dialog").getByRole("button", { name: "A fall since last time" }).click();
    await hand.page.locator("dialog .quiet").click();
    await says(boxes(hand).last(), /A fall since last time: that is a stop/);
    await hand.tap('[data-act="leave-so"]');
    await counts(boxes(hand), 0);
    await stored(hand, "events", 703);
    await hand.close();
  });

  it("writes a sign although a pain beside it is half told", async () => {
    const hand = await begun(browser, "Una");
    await hand.tap('[data-act="day"]');
    await hand.page.locator("dialog").getByRole("button", { name: "Fever" }).click();
    await hand.page.locator("dialog").getByRole("button", { name: "Some", exact: true }).click();
    await escape(hand);
    await hand.tap('[data-act="leave-write"]');
    await stored(hand, "events", 704);
    assert.match(await last(hand), /"asks":\["fever"\]/);
    assert.doesNotMatch(await last(hand), /"pain"/);
    await hand.close();
  });

  it("stays where what it holds is not recorded", async () => {
    const hand = await begun(browser, "Una");
    await setDay(hand, "2029-01-01");
    await inLog(hand, "A session was missed");
    await hand.tap('dialog [data-value="work"]');
    await hand.tap('[data-act="write-down"]');
    await says(boxes(hand).last(), /Is it really/);
    await escape(hand);
    await counts(boxes(hand), 1);
    await counts(pressed(hand, "work"), 1);
    await says(hand.page.locator("dialog .wrong"), /Not recorded/);
    await hand.tap('[data-act="write-down"]');
    await hand.tap('dialog [data-act="is-today"]');
    await counts(boxes(hand), 0);
    await stored(hand, "events", 704);
    await hand.close();
  });

  it("is asked about by the browser before the page goes", async () => {
    const hand = await begun(browser, "Una");
    const asked = [];
    hand.page.on("dialog", (box) => { asked.push(box.type()); void box.accept(); });
    await hand.tap('[data-act="day"]');
    await hand.page.locator("dialog").getByRole("button", { name: "Fever" }).click();
    await hand.page.reload();
    await hand.ready();
    assert.deepEqual(asked, ["beforeunload"]);
    await hand.page.reload();
    await hand.ready();
    assert.equal(asked.length, 1, "nothing is entered");
    await hand.close();
  });

  it("keeps a number that is half typed", async () => {
    const hand = await begun(browser, "Una");
    await hand.page.locator('article [data-act="set"]').click();
    await hand.page.locator("dialog .stepper .number").click();
    for (const key of ["4", "0"]) await hand.tap(`dialog [data-key="${key}"]`);
    await escape(hand);
    await says(boxes(hand).last(), /Leave what is entered\?/);
    await hand.tap('[data-act="leave-not"]');
    assert.equal(await hand.page.locator("dialog .pad-field").inputValue(), "40");
    await hand.close();
  });

  it("stands again after pain was told from it", async () => {
    const hand = await begun(browser, "Una");
    await hand.page.locator('article [data-act="set"]').click();
    await hand.tap('dialog [aria-label="Left in reserve"] [data-value="4"]');
    await hand.tap('[data-act="all-met"]');
    await hand.page.locator("dialog summary").click();
    await hand.page.locator("dialog").getByRole("button", { name: "It hurt" }).click();
    await counts(hand.page.locator('main[data-view="q13"]'), 1);
    await go(hand, "today");
    await hand.page.locator('article [data-act="set"]').click();
    await counts(pressed(hand, "4").first(), 1);
    await counts(hand.page.locator('dialog [data-act="all-met"][aria-pressed="true"]'), 1);
    await hand.tap('[data-act="save-set"]');
    await stored(hand, "drafts", 1);
    await hand.close();
  });
});

describe("the pain that is told at the end of a session", () => {
  async function ending(hand) {
    await hand.allGood();
    await stored(hand, "drafts", 3);
    await hand.tap('[data-act="finish"]');
    await hand.page.locator("dialog").getByRole("button", { name: "Yes, some" }).click();
    await hand.tap('dialog [aria-label="Where"] [data-value="knee"]');
    await hand.tap('dialog [aria-label="How much, 0 to 10"] [data-value="8"]');
  }

  it("is asked about before it is left", async () => {
    const hand = await begun(browser, "Una");
    await ending(hand);
    await escape(hand);
    await says(boxes(hand).last(), /knee, 8 of 10: that is a stop/);
    await hand.tap('[data-act="leave-not"]');
    await counts(boxes(hand), 1);
    await boxes(hand).locator(".quiet").click();
    await hand.tap('[data-act="leave-write"]');
    await stored(hand, "events", 704);
    assert.match(await last(hand), /session_recorded.*"score":8/);
    await counts(boxes(hand), 0);
    await hand.close();
  });

  it("is in the log where another window ended the session", async () => {
    const hand = await begun(browser, "Una");
    const other = await second(hand, false);
    await ending(hand);
    await other.page.bringToFront();
    await other.page.reload();
    await other.ready();
    await other.tap('[data-act="finish"]');
    await other.tap('[data-act="no-pain"]');
    await stored(other, "events", 704);
    await turnTo(hand);
    await hand.page.locator("dialog").getByRole("button", { name: "Save the session" }).click();
    const events = await keeps(async () => (await everything(hand)).events, (found) => found.length === 705);
    assert.match(events.at(-1).value.text, /pain_report.*"score":8/);
    await says(hand.page.locator("main"), /ended in another window\. The pain that was told here is in the log/);
    await counts(hand.page.locator(".stop-band"), 1);
    await counts(boxes(hand), 0);
    await hand.context.close();
  });
});
