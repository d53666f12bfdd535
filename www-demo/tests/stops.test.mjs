// Stops: they come first in every view and list, from the log alone; no question gives a load beside one; and nothing
// takes one back unasked.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, describe, it } from "node:test";
import { counts, Hand, keeps, launch, says } from "./browser.mjs";
import { QUESTIONS } from "./expected.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const PLACES = ["today", "questions", "lifters", "log", "files", "gym", "plan", ...Array.from({ length: QUESTIONS.length }, (_, at) => `q${at + 1}`)];

async function begin(hand, name = "Cyd") {
  await hand.view("begin");
  await hand.page.locator("#name").fill(name);
  await hand.page.locator('[data-act="begin-now"]').click();
  await hand.page.waitForSelector("[data-lift]");
}

async function sign(hand, words = "Chest pain or pressure") {
  await hand.view("q13");
  await hand.page.getByRole("button", { name: words, exact: true }).click();
  await hand.page.waitForSelector(".stop-band");
}

/** Writes down something else, by the box of that name. */
async function writeDown(hand, what, act) {
  await hand.view("log");
  await hand.page.getByText("Write down something else").click();
  await hand.page.getByRole("button", { name: what, exact: true }).click();
  await act(hand.page.locator("dialog"));
  await hand.page.locator('[data-act="write-down"]').click();
  await hand.page.getByText("Recorded.").waitFor();
}

const notCleared = (hand) =>
  writeDown(hand, "A clearance", async (box) => {
    await box.locator('[data-value="not_cleared"]').click();
    await hand.page.locator("#who").fill("invented clinician");
  });

async function upload(hand, text) {
  await hand.page.locator("#open-file").setInputFiles({ name: "file.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await hand.page.locator("[data-incoming]").first().waitFor();
}

async function saved(hand, selector) {
  const [download] = await Promise.all([hand.page.waitForEvent("download"), hand.page.locator(selector).click()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

describe("a stop without settings of the lifts", () => {
  const ways = [
    ["a sign", (hand) => sign(hand), /chest pain/i],
    ["a clearance that was not given", notCleared, /clearance was not to train/],
    [
      "an illness",
      (hand) =>
        writeDown(hand, "A break", async (box) => {
          await box.locator('[data-value="ill"]').click();
          await box.locator("#from").fill(await hand.page.evaluate(() => new Date(Date.now() - 864e5).toLocaleDateString("sv")));
        }),
      /clinician.s new clearance comes first/,
    ],
  ];
  for (const [name, act, words] of ways) {
    it(`stands first in every view and list: ${name}`, async () => {
      const hand = await Hand.open(browser);
      await begin(hand);
      await hand.view("log");
      await hand.page.locator('[data-act="undo"]').click();
      await hand.page.locator("[data-yes]").click({ timeout: 2_000 });
      await says(hand.page.locator(".log"), /taken back/);
      await act(hand);
      const wrong = [];
      for (const view of PLACES) {
        await hand.view(view);
        const text = await hand.page.locator("main > :not(:empty)").first().innerText();
        if (!words.test(text)) wrong.push(`${view}: ${text.slice(0, 60)}`);
      }
      assert.deepEqual(wrong, []);
      await hand.view("lifters");
      await says(hand.page.locator("main section h2").first(), /^Stopped$/);
      await says(hand.page.locator("[data-lifter]").first(), words);
      await hand.view("today");
      await says(hand.page.locator("main [data-answer]").first(), /^Stopped/);
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }

  it("is asked about before the last settings are taken back", async () => {
    const hand = await Hand.open(browser);
    await begin(hand);
    await hand.view("log");
    await hand.page.locator('[data-act="undo"]').click();
    await says(hand.page.locator("dialog"), /nothing can be worked out without settings/);
    await hand.page.locator("dialog .quiet").click();
    await counts(hand.page.locator(".log .gone"), 0);
    await hand.close();
  });

  it("stands there too where no lift of the plan is stopped by it", async () => {
    const hand = await Hand.open(browser);
    await begin(hand);
    await hand.view("q13");
    await hand.tap('[data-act="no-sign"]');
    await hand.tap('[aria-label="Where"] [data-value="shoulder"]');
    await hand.tap('[aria-label="How much, 0 to 10"] [data-value="8"]');
    await hand.page.getByRole("button", { name: "Write it into the log" }).click();
    await says(hand.page.locator(".stop-band"), /shoulder/);
    await hand.view("plan");
    await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
    await hand.page.getByRole("button", { name: "seated press: leave out of the plan" }).click();
    await hand.page.getByRole("button", { name: "seated press: leave out of the plan" }).waitFor({ state: "detached" });
    for (const view of ["today", "lifters", "q9"]) {
      await hand.view(view);
      await says(hand.page.locator(".stop-band"), /shoulder/);
    }
    await hand.close();
  });
});

/** A load that is given to be lifted. */
const LOAD = /(start at|stay at|the next load is|next set|keep:|up to|at most|begin at)\s[^.]*?\d[\d.]*\s?(kg|lb)\b|\d[\d.]*\s?(kg|lb) for the next set|^\d[\d.]*\s?(kg|lb)( ·|$)|own working load/im;
/** Sums about numbers that were typed, with nobody in them. */
const SUMS = [1, 2, 3, 4, 5, 6, 7, 8, 21, 22, 23];

describe("questions of a lifter who is stopped", () => {
  it("knows a load that is given when it reads one", () => {
    for (const words of ["Start at 8 kg", "The next load is 9 kg.", "Stay at 8 kg", "7.5 kg for the next set", "8 kg · 3 × 5", "At most 8 kg today"]) assert.match(words, LOAD);
    for (const words of ["Working load 8 kg. Today: nothing until this is cleared.", "Stopped", "box squat 8 kg × 5"]) assert.doesNotMatch(words, LOAD);
  });

  for (const [name, act] of [["a sign", (hand) => sign(hand)], ["a clearance that was not given", notCleared]]) {
    it(`gives no load in any question, and says the stop first: ${name}`, async () => {
      const hand = await Hand.open(browser);
      await begin(hand);
      await act(hand);
      const wrong = [];
      for (const [number, then] of QUESTIONS) {
        await hand.view("today");
        await hand.view(`q${number}`);
        const band = await hand.page.locator("main > :not(:empty)").first().getAttribute("class");
        if (band !== "stop-band") wrong.push(`${number}: the stop is not first`);
        if (SUMS.includes(number) || number === 13) continue;
        const looks = [];
        const look = async () => {
          await hand.settled();
          looks.push(await hand.page.evaluate(() => {
            const main = document.querySelector("main").cloneNode(true);
            // What was typed is no answer.
            for (const one of main.querySelectorAll("[data-pad], .stop-band, .says")) one.remove();
            for (const one of main.querySelectorAll("details")) one.open = true;
            document.body.append(main);
            const text = main.innerText.replaceAll("\u00a0", " ");
            main.remove();
            return text;
          }));
        };
        await look();
        if (then?.tap && (await hand.page.locator(then.tap).count()) > 0) {
          await hand.act(then);
          await look();
        }
        // Every lift that can be chosen.
        for (const lift of await hand.page.locator('main [aria-label="Lift"] button, main [aria-label="Which lift?"] button').all()) {
          await lift.click();
          await look();
        }
        for (const text of looks) {
          const found = LOAD.exec(text);
          if (found) wrong.push(`${number}: ${found[0]}`);
        }
      }
      assert.deepEqual([...new Set(wrong)], []);
      for (const [number, lift] of [[16, "Lift"], [17, "Lift"], [9, "Lift"], [26, undefined], [29, "Which lift?"]]) {
        await hand.view("today");
        await hand.view(`q${number}`);
        if (number === 26) await hand.tap('[aria-label="Did it hurt?"] [data-value="no"]');
        if (lift) await hand.page.locator(`main [aria-label="${lift}"] button`).first().click();
        await says(hand.page.locator("main [data-answer]").first(), /stop/i, `q${number}`);
      }
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }
});

describe("taking a stop back", () => {
  const undo = (hand) => hand.page.locator('[data-act="undo"]').click();
  const takeBack = (kind) => (hand) => hand.page.getByRole("button", { name: new RegExp(`^Take back ${kind}`) }).first().click();
  const pain = async (hand) => {
    await hand.view("q13");
    await hand.tap('[data-act="no-sign"]');
    await hand.tap('[aria-label="Where"] [data-value="knee"]');
    await hand.tap('[aria-label="How much, 0 to 10"] [data-value="8"]');
    await hand.page.getByRole("button", { name: "Write it into the log" }).click();
    await hand.page.waitForSelector(".stop-band");
  };
  const chest = (hand) => sign(hand);
  for (const [name, act, how, title] of [
    ["a sign, undone", chest, undo, /Take the sign back\?/],
    ["a sign, taken back", chest, takeBack("Stop sign"), /Take the sign back\?/],
    ["a clearance not given, undone", notCleared, undo, /Take the stop back\?/],
    ["a clearance not given, taken back", notCleared, takeBack("Clearance"), /Take the stop back\?/],
    ["pain that stops, undone", pain, undo, /Take the stop back\?/],
    ["pain that stops, taken back", pain, takeBack("Pain"), /Take the stop back\?/],
  ]) {
    it(`asks first, and says what that opens: ${name}`, async () => {
      const hand = await Hand.open(browser);
      await begin(hand);
      await act(hand);
      await hand.view("log");
      await how(hand);
      await says(hand.page.locator("dialog"), title);
      await says(hand.page.locator("dialog"), /what it stopped opens again/);
      await hand.page.locator("dialog button.quiet").click();
      await counts(hand.page.locator("dialog"), 0);
      await counts(hand.page.locator(".stop-band"), 1, "nothing is taken back by asking");
      await how(hand);
      await hand.page.locator("dialog [data-yes]").click();
      await counts(hand.page.locator(".stop-band"), 0);
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }

  it("is not asked where nothing opens", async () => {
    const hand = await Hand.open(browser);
    await begin(hand);
    await writeDown(hand, "A session was missed", (box) => box.locator('[data-value="work"]').click());
    await hand.view("log");
    await hand.page.locator('[data-act="undo"]').click();
    await counts(hand.page.locator(".log .gone"), 1);
    await counts(hand.page.locator("dialog"), 0);
    await hand.close();
  });

  it("is said first where a file would do it", async () => {
    const hand = await Hand.open(browser);
    await begin(hand);
    await sign(hand);
    await hand.view("files");
    const { text } = await saved(hand, '[data-act="save-full"]');
    const file = JSON.parse(text);
    const { events } = file.lifters[0].log;
    const last = events.at(-1);
    assert.ok(last.kind.symptom_report);
    events.push({ sequence: last.sequence + 1, day: last.day, kind: { correction: { replaces: last.sequence } } });
    await upload(hand, JSON.stringify(file));
    const first = hand.page.locator("[data-incoming] > :not(h2)").first();
    await says(first, /A stop would be taken back: chest pain.*reported on .*\d{4}.*opens again/is);
    await hand.close();
  });
});

describe("what leaves the device", () => {
  it("prints neither sign nor region on a card without health detail", async () => {
    const hand = await Hand.open(browser);
    await begin(hand);
    await sign(hand);
    await hand.view("q24");
    await hand.page.emulateMedia({ media: "print" });
    const printed = () => hand.page.locator("body").innerText();
    assert.match(await printed(), /Stop: no training until a clinician and the coach have said so/);
    assert.doesNotMatch(await printed(), /chest|pain|emergency|numb/i);
    await hand.page.emulateMedia({ media: "screen" });
    await says(hand.page.locator(".stop-band"), /chest pain/i);
    await hand.page.locator('[aria-label="Health detail on the card"] [data-value="yes"]').click();
    await hand.page.locator('[data-value="yes"][aria-pressed="true"]').waitFor();
    await hand.page.emulateMedia({ media: "print" });
    assert.match(await printed(), /chest pain/i);
    await hand.close();
  });

  it("says the same of every lift on a card without health detail, and no load, whatever the stop", async () => {
    const cards = [];
    for (const region of [undefined, "shoulder", "knee"]) {
      const hand = await Hand.open(browser);
      await begin(hand);
      if (region === undefined) await sign(hand);
      else {
        await hand.view("q13");
        await hand.tap('[data-act="no-sign"]');
        await hand.tap(`[aria-label="Where"] [data-value="${region}"]`);
        await hand.tap('[aria-label="How much, 0 to 10"] [data-value="8"]');
        await hand.page.getByRole("button", { name: "Write it into the log" }).click();
        await hand.page.waitForSelector(".stop-band");
      }
      await hand.view("q24");
      const card = (await hand.page.locator(".handover").innerText()).replaceAll("\u00a0", " ");
      assert.match(card, /Stop: no training until a clinician and the coach have said so/);
      assert.doesNotMatch(card.split("Bars and discs")[0], /\d (kg|lb)|\d \u00d7 \d/, region);
      const lifts = await hand.page.locator(".handover-lift").allInnerTexts();
      assert.equal(new Set(lifts.map((one) => one.split("\n").slice(1).join(" ").replace(/Watched for.*/, "").trim())).size, 1, region);
      cards.push(card);
      await hand.close();
    }
    assert.equal(new Set(cards).size, 1, "the card does not tell which stop it is");
  });

  it("has another name for each sort of file, and no lifter's name where none is inside", async () => {
    const hand = await Hand.open(browser);
    await begin(hand, "Zebulon");
    await hand.view("files");
    const [full, plain, table] = [await saved(hand, '[data-act="save-full"]'), await saved(hand, '[data-act="save-plain"]'), await saved(hand, '[data-act="save-csv"]')];
    assert.match(plain.name, /without-health/);
    assert.doesNotMatch(full.name, /without-health/);
    assert.notEqual(full.name, plain.name);
    assert.doesNotMatch(table.text, /Zebulon/);
    assert.doesNotMatch(table.name, /Zebulon/i);
    await hand.close();
  });
});

describe("names", () => {
  it("that look alike are found here already", async () => {
    const hand = await Hand.open(browser);
    await begin(hand, "Ren\u00e9");
    for (const other of ["Rene\u0301", "REN\u00c9", "rene\u0301"]) {
      await hand.view("today");
      await hand.view("begin");
      await hand.page.locator("#name").fill(other);
      await hand.page.locator('[data-act="begin-now"]').click();
      await says(hand.page.locator(".wrong"), /here already/, other);
    }
    await hand.view("lifters");
    await counts(hand.page.locator("[data-lifter]"), 1);
    assert.equal(await keeps(() => hand.page.locator("[data-lifter]").getAttribute("data-lifter"), (id) => id === "Ren\u00e9"), "Ren\u00e9");
    await hand.close();
  });
});
