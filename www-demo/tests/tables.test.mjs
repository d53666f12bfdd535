// A table of sets that is opened: every guess and every row that is left out is on the screen before anything is added, and one
// tap adds the rest.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { keeps, launch, root } from "./browser.mjs";
import { bringIn, everything, FILE, fileOf, further, go, Hand, handOn, logOf, main, NEXT_DAY, saved, stored, upload } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const OPEN = "main #incoming article";
const table = (hand, text) => upload(hand, text, "sets.csv");
const report = async (hand) => (await hand.page.locator("#incoming").innerText()).replaceAll("\u00a0", " ");
const lines = (hand, part) => hand.page.locator(`[data-${part}] li`).allInnerTexts();
/** The lines that those words name. */
const linesIn = (all) =>
  all.flatMap((words) =>
    [...words.split(":")[0].matchAll(/(\d+)(?:\u2013(\d+))?/g)].flatMap(([, from, to = from]) => Array.from({ length: to - from + 1 }, (_, at) => Number(from) + at)),
  ).toSorted((one, other) => one - other);
const choose = (hand, group, value) => hand.page.locator(`${OPEN} [role="group"][aria-label*="${group}"] [data-value="${value}"]`).click();
const eventsOf = async (hand, id) => ((await everything(hand)).events ?? []).filter((row) => row.key[0] === id).map((row) => row.value.text);
const add = async (hand) => {
  await hand.page.locator('#incoming [data-act="bring-in"]').click();
  await hand.page.locator("#open-file").waitFor({ state: "detached" });
};

/** A table of an invented lifter: guesses of many kinds, three rows that cannot be taken. */
const MIXED = [
  "Date;Exercise;Weight (lbs);Repetitions;RPE;Mood",
  "13/8/2026 18:30;Front Squat;77,5;5;7,5;good",
  "13/8/2026 18:45;front squat;77,5;5;;",
  "14/8/2026;SSB;100;5;;",
  "14/8/2026;strict press;50;;;",
  "15/8/2026;strict press;50;5;12;",
  "",
].join("\r\n");

describe("a table of sets", () => {
  it("shows every guess, every column and row that is left out with its line, and has added nothing yet", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented")));
    const before = await eventsOf(hand, "Noor, invented");
    await table(hand, MIXED);
    assert.match(await report(hand), /What this table would add to the log of Noor, invented\n+2 of 5 rows would be added, as 1 session/);
    assert.deepEqual(await lines(hand, "guesses"), [
      "Cells stand between semicolons.",
      "The column \u201cDate\u201d was read as the day.",
      "The column \u201cExercise\u201d was read as the lift.",
      "The column \u201cWeight (lbs)\u201d was read as the load in lb.",
      "The column \u201cRepetitions\u201d was read as repetitions.",
      "The column \u201cRPE\u201d was read as the rating of effort (RPE).",
      "The time of day in 2 rows is left out: a log keeps days.",
      "Days were read with the day first, since 5 rows can be read in no other way.",
      "\u201cFront Squat\u201d was read as front squat.",
      "A comma in 2 rows was read as the decimal mark.",
      "2 loads in pounds.",
      "The rows of one day are one session, since no column tells sessions apart.",
      "Every row is a work set, since no column tells warm-ups apart.",
      "Every set counts as done at the rung, range and tempo of that day, since the table says nothing of them.",
    ]);
    assert.deepEqual(await lines(hand, "columns-left-out"), ["\u201cMood\u201d"]);
    const left = await lines(hand, "rows-left-out");
    assert.deepEqual(left.map((line) => line.match(/^Lines? [\d, \u2013]+/)[0]), ["Line 4", "Line 5", "Line 6"]);
    assert.match(left[0], /the lift: \u201cSSB\u201d/);
    assert.match(left[1], /repetitions/);
    assert.match(left[2], /rating of effort \(RPE\): \u201c12\u201d/);
    assert.deepEqual(await eventsOf(hand, "Noor, invented"), before);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("is added by one tap, behind a log in which nothing changes; the same table again adds nothing", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented")));
    const before = await eventsOf(hand, "Noor, invented");
    await table(hand, MIXED);
    await choose(hand, "SSB", "box squat");
    assert.match(await report(hand), /3 of 5 rows would be added, as 2 sessions/);
    assert.match(await report(hand), /Would be added: 2 entries/);
    await add(hand);
    await stored(hand, "events", before.length + 2);
    const now = await eventsOf(hand, "Noor, invented");
    assert.deepEqual(now.slice(0, before.length), before);
    const added = now.slice(before.length).map((text) => JSON.parse(text));
    assert.deepEqual(added.map((event) => [event.day, event.kind.session_recorded.lifts.map((lift) => [lift.lift, lift.sets.length])]), [
      ["2026-08-13", [["front squat", 2]]],
      ["2026-08-14", [["box squat", 1]]],
    ]);
    assert.match(await main(hand), /Added\./);
    await table(hand, MIXED);
    await choose(hand, "SSB", "box squat");
    assert.match(await report(hand), /0 of 5 rows would be added, as 0 sessions[^]*Lines 2\u20134: A session of these sets is in the log already\.[^]*Nothing would be added\./);
    assert.equal(await hand.page.locator('#incoming [data-act="bring-in"]').count(), 0);
    await hand.close();
  });

  it("is asked about where it does not say the unit, or which number is the month", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented")));
    await table(hand, "day,lift,load,reps\n3/8/2026,front squat,40,5\n");
    assert.doesNotMatch(await report(hand), /would be added/);
    await choose(hand, "Which comes first", "day_first");
    assert.doesNotMatch(await report(hand), /would be added/);
    await choose(hand, "In which unit", "lb");
    assert.match(await report(hand), /1 of 1 row would be added, as 1 session[^]*1 load in pounds\./);
    const added = () => hand.page.locator("#incoming details li").allTextContents();
    assert.match((await added()).join(), /^3 Aug 2026/);
    await choose(hand, "Which comes first", "month_first");
    assert.match((await added()).join(), /^8 Mar 2026/);
    await hand.close();
  });

  it("of which nobody says whose sets they are is added to nobody", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe")));
    await bringIn(hand, fileOf(logOf("Bea")));
    const before = await eventsOf(hand, "Bea");
    await table(hand, "day,lift,load_kg,reps\n2026-08-13,box squat,40,5\n");
    assert.doesNotMatch(await report(hand), /would be added/);
    await choose(hand, "Whose sets", "Abe");
    await add(hand);
    await stored(hand, "events", 2 * before.length + 1);
    assert.deepEqual(await eventsOf(hand, "Bea"), before);
    assert.match(await hand.page.locator("header .who").innerText(), /^Abe/);
    await hand.close();
  });

  for (const [what, text, words] of [
    ["without a column of days", "lift,load_kg,reps\nbox squat,40,5\n", /table\.day/],
    ["with a quotation mark that does not end", "day,lift,load_kg,reps\n2026-08-13,\"box squat,40,5\n", /table\.line/],
    ["without rows", "day,lift,load_kg,reps\n", /table\.rows/],
    ["that is no text", Buffer.from([0x64, 0xff, 0xfe, 0x2c]), /UTF-8/],
  ]) {
    it(`${what} is refused whole, in words`, async () => {
      const hand = await handOn(browser);
      await bringIn(hand, fileOf(logOf("Noor, invented")));
      const before = await eventsOf(hand, "Noor, invented");
      await table(hand, text);
      const refused = await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 });
      assert.match(refused, /^Nothing was changed\./);
      assert.match(refused, words);
      assert.deepEqual(await eventsOf(hand, "Noor, invented"), before);
      await hand.close();
    });
  }

  it("for nobody is refused", async () => {
    const hand = await handOn(browser);
    await table(hand, "day,lift,load_kg,reps\n2026-08-13,box squat,40,5\n");
    assert.match(await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 }), /Begin with somebody new/);
    await hand.close();
  });

  it("is not what a copy becomes that is called a text: what is in it tells", async () => {
    const hand = await handOn(browser);
    await upload(hand, `\ufeff\n ${fileOf(logOf("Noor, invented"))}`, "copy.json.txt");
    assert.match(await report(hand), /^What this file would change/);
    await hand.page.locator('[data-act="bring-in"]').click();
    await stored(hand, "events", 703);
    await hand.close();
  });

  it("lists many rows that are refused without losing one", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented")));
    const rows = Array.from({ length: 2_000 }, (_, at) => `2026-08-13,front squat,40,${at % 5 === 0 ? 5 : `${at}x`}`);
    await table(hand, `day,lift,load_kg,reps\n${rows.join("\n")}\n`);
    // A session of 400 sets of one lift is refused too.
    assert.deepEqual(linesIn(await lines(hand, "rows-left-out")), rows.map((_, at) => at + 2));
    await hand.close();
  });

  it("that was looked at before another window wrote is not added unseen", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Noor, invented")));
    const before = await eventsOf(one, "Noor, invented");
    await table(one, "day,lift,load_kg,reps\n2026-08-13,box squat,40,5\n");
    const two = new Hand(await one.context.newPage());
    await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
    await two.page.goto(FILE);
    await two.ready();
    await two.view("q13");
    await two.page.locator("main .sign", { hasText: /chest/i }).click();
    await two.page.getByText("Recorded.").waitFor();
    await one.page.bringToFront();
    const button = one.page.locator('#incoming [data-act="bring-in"]');
    // It may be gone, or go while it is tapped: what was looked at does not stand any more.
    await button.click({ timeout: 3_000 }).catch((error) => assert.equal(error.name, "TimeoutError"));
    const now = await keeps(() => eventsOf(one, "Noor, invented"), (texts) => texts.length !== before.length + 1);
    assert.equal(now.filter((text) => text.includes('"session_recorded"')).length, before.filter((text) => text.includes('"session_recorded"')).length);
    await one.close();
  });
});

describe("the cases of every language", () => {
  it("that are text and have an answer leave out those rows, guess as much, and add to the log on the device what they say", async () => {
    const { log, cases } = JSON.parse(await readFile(join(root, "..", "tests", "doors", "tables.json"), "utf8"));
    const answered = cases.filter((one) => one.lines && one.expect);
    assert.ok(answered.length >= 17);
    assert.ok(answered.some((one) => one.expect.added.length === 0));
    const hand = await handOn(browser);
    for (const [at, { shows, lines: text, reading = {}, after: behind, expect }] of answered.entries()) {
      const id = `case ${at}`;
      const before = [...log.events, ...(behind ? cases.find((one) => one.shows === behind).expect.added : [])];
      await bringIn(hand, JSON.stringify({ ...log, lifter: { id, invented: true }, events: before }));
      await table(hand, text.map((line) => `${line}\n`).join(""));
      if (at > 0) await choose(hand, "Whose sets", id);
      if (reading.day_order) await choose(hand, "Which comes first", reading.day_order);
      if (reading.unit) await choose(hand, "In which unit", reading.unit);
      // A lift that nobody has cannot be chosen here.
      for (const { text: spelled, lift } of reading.lifts ?? []) if (lift !== "nobody") await choose(hand, `\u201c${spelled}\u201d`, lift);
      assert.deepEqual(linesIn(await lines(hand, "rows-left-out")), expect.left_out.map((row) => row.line), shows);
      assert.equal((await lines(hand, "guesses")).length, expect.guesses.length, shows);
      assert.equal((await lines(hand, "columns-left-out")).length, expect.columns_left_out.length, shows);
      assert.match(await report(hand), new RegExp(`${expect.taken} of ${expect.rows} rows? would be added, as ${expect.sessions} session`), shows);
      const button = hand.page.locator('#incoming [data-act="bring-in"]');
      assert.equal(await button.count(), Math.min(1, expect.added.length), shows);
      if (expect.added.length > 0) await add(hand);
      const texts = await keeps(() => eventsOf(hand, id), (found) => found.length === before.length + expect.added.length);
      assert.deepEqual(texts.slice(before.length).map((one) => JSON.parse(one)), expect.added, shows);
    }
    await hand.close();
  });

  it("and a table that was saved here says that all of it is here already", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented", (log) => log.events.splice(40))));
    await go(hand, "files");
    await table(hand, await saved(hand, '[data-act="save-csv"]'));
    assert.match(await report(hand), /0 of \d+ rows would be added[^]*Nothing would be added/);
    await hand.close();
  });
});

describe("a table with thousands of names", () => {
  it("lists the first of its lifts and columns, and says how many more there are", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Noor, invented")));
    const many = Array.from({ length: 3_000 }, (_, at) => at);
    await table(hand, ["day,lift,load_kg,reps", ...many.map((at) => `2026-08-13,lift ${at},20,5`)].join("\n"));
    assert.equal(await hand.page.locator(`${OPEN} [role="group"][aria-label*="Which lift is that?"]`).count(), 40);
    assert.match(await report(hand), /2960 more names of lifts are not known here, and their rows are left out/);
    assert.match(await report(hand), /Rows that are left out: 3000/);
    await table(hand, [`day,lift,load_kg,reps,${many.map((at) => `note ${at}`).join(",")}`, "2026-08-13,front squat,20,5"].join("\n"));
    assert.equal((await lines(hand, "columns-left-out")).length, 41);
    assert.match((await lines(hand, "columns-left-out")).at(-1), /and 2960 more/);
    await hand.close();
  });
});
