// What keeps a lift below what it would be without it goes only after somebody was asked, and told what opens: a limit, the coach's
// lower word, a break, a rest; by undoing, taking back, another day, bringing back, a file, a copy, another window.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, keeps, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, main, NEXT_DAY, second, setDay, stored, tells, turnTo, upload } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const LAST = "2026-08-27";
const LIFT = "box squat";
const limit = (limits, more = {}) => ({ clearance_recorded: { status: "cleared_with_limits", who: "invented clinic", limits, ...more } });
const cleared = { clearance_recorded: { status: "cleared", who: "invented clinic" } };
const THIRTY = limit([{ load: { kg: 30 } }, { effort: 8, no_breath_hold: true }]);
const asked = (log) => further(log, NEXT_DAY, { day_report: { class: "within", pain: [], asks: [] } });
const openAll = (hand) => hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
const number = async (hand) => (await everything(hand)).events.length;

async function at(hand, view) {
  await go(hand, view);
  await openAll(hand);
}
async function box(hand, what) {
  await at(hand, "log");
  await hand.page.getByRole("button", { name: what, exact: true }).click();
}
const pick = (hand, label, value) => hand.tap(`dialog [aria-label="${label}"] [data-value="${value}"]`);
async function pad(hand, label, digits) {
  await hand.tap(`[data-pad="${label}"]`);
  for (const digit of String(digits)) await hand.tap(`dialog[aria-label="${label}"] [data-key="${digit}"]`);
  await hand.tap(`dialog[aria-label="${label}"] [data-key="ok"]`);
}
async function writeLimit(hand, kg = 30) {
  await box(hand, "A clearance");
  await pick(hand, "What was said", "cleared_with_limits");
  await pick(hand, "Where the limit holds", "everywhere");
  await pick(hand, "Long breath-holding", "no");
  await pick(hand, "Loaded bending of the spine", "no");
  await pick(hand, "Highest effort", "unsaid");
  await pad(hand, "Highest load", kg);
  await hand.page.locator("dialog #who").fill("invented clinic");
  await hand.tap('dialog [data-act="write-down"]');
  await counts(hand.page.locator("dialog"), 0);
}
/** Asked in a box that names it; refused, nothing is written, and confirmed, it is. A box in which something was entered stays
 * meanwhile, and what is asked from it is asked `again`. */
async function asksFirst(hand, act, pattern, again) {
  const before = await number(hand);
  await act();
  await says(hand.page.locator("dialog").last(), pattern);
  await hand.page.locator("dialog button.quiet").last().click();
  await counts(hand.page.locator("dialog"), again ? 1 : 0);
  assert.equal(await number(hand), before, "nothing is written by asking");
  await (again ?? act)();
  await hand.page.locator("dialog [data-yes]").click();
  await stored(hand, "events", before + 1);
}

describe("what narrows a lift, taken back", () => {
  for (const [name, kind, pattern] of [
    ["a limit", THIRTY, /A limit of 30 kg for every lift at every place is no longer in force then\..*Box squat: [\d.]+ kg \(high box\) today then, and not 30 kg \(high box\)/is],
    ["the coach's lower word", { coach_override: { lift: LIFT, load: { kg: 30 }, who: "Coach" } }, /Box squat: a working load of [\d.]+ kg \(high box\) then, and not 30 kg/i],
    ["a planned break", { layoff_noted: { from: LAST, to: "2026-09-10", reason: "planned" } }, /The planned break until 10 Sep 2026 is no longer in force then/i],
    ["a rest", { role_set: { lift: LIFT, role: "rest" } }, /The rest of box squat is no longer in force then\..*Box squat: [\d.]+ kg \(high box\) today then; now it is left out/is],
  ]) {
    for (const [how, act] of [
      ["undone", (hand) => hand.tap('[data-act="undo"]')],
      ["taken back", (hand) => hand.page.getByRole("button", { name: /^Take back .*Thu 27 Aug/ }).first().click()],
    ]) {
      it(`is asked about and named: ${name}, ${how}`, async () => {
        const hand = await handOn(browser);
        await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, LAST, kind))));
        await at(hand, "log");
        await asksFirst(hand, () => act(hand), pattern);
        assert.deepEqual(hand.complaints, []);
        await hand.close();
      });
    }
  }

  it("is asked about where it is given another day, before a newer clearance", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe", (log) => { further(log, LAST, THIRTY); further(log, "2026-08-26", cleared); })));
    await at(hand, "log");
    await asksFirst(hand, async () => {
      await hand.page.getByRole("button", { name: /^Another day for Clearance of Thu 27 Aug/ }).first().click();
      await hand.page.locator("dialog input[type=date]").fill("2026-08-25");
      await hand.tap('[data-act="save-day"]');
    }, /A limit of 30 kg for every lift at every place is no longer in force then/, () => hand.tap('[data-act="save-day"]'));
    await counts(hand.page.locator("dialog"), 0);
    await hand.close();
  });

  it("is not asked about where nothing opens", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, LAST, { body_mass_recorded: { kg: 80 } }))));
    await at(hand, "log");
    await hand.tap('[data-act="undo"]');
    await counts(hand.page.locator("dialog"), 0);
    await stored(hand, "events", 705);
    await hand.close();
  });

  it("is told of months of light work too, by taking back and by a file", async () => {
    const { log, plan, day } = heldLong();
    const hand = await handOn(browser, day(243));
    await bringIn(hand, fileOf({ log, plan }));
    const pattern = /Box squat: .*(60|5\d[\d.]*) kg \(high box\) (today )?then, and not (3\d|30)[\d.]* kg/i;
    const back = structuredClone(log);
    further(back, day(243), { correction: { replaces: limitOf(log).sequence } });
    await upload(hand, fileOf({ log: back, plan }));
    await says(hand.page.locator("[data-incoming]"), pattern);
    await hand.tap('[data-act="bring-in"]');
    await says(hand.page.locator("dialog"), pattern);
    await hand.tap("dialog .quiet");
    await at(hand, "log");
    while ((await hand.page.getByRole("button", { name: /^Take back Clearance of Mon 10 Feb/ }).count()) === 0) await hand.page.getByRole("button", { name: "Earlier entries" }).click();
    await asksFirst(hand, () => hand.page.getByRole("button", { name: /^Take back Clearance of Mon 10 Feb/ }).first().click(), pattern);
    await hand.close();
  });
});

const limitOf = (log) => log.events.find((one) => one.kind.clearance_recorded?.status === "cleared_with_limits");

/** Eight sessions at 60 kg, months at 30 kg under a limit, then cleared. */
function heldLong() {
  const log = logOf("Abe");
  const parameters = structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
  const lift = parameters.lifts.find((one) => one.id === LIFT);
  lift.start.work.load = { kg: 60 };
  log.events = [];
  const day = (number) => new Date(Date.parse("2025-01-06") + number * 864e5).toISOString().slice(0, 10);
  const add = (number, kind) => log.events.push({ sequence: log.events.length + 1, day: day(number), kind });
  const marks = { reps: 5, acceptable: 5, marks: lift.criteria.map(({ id }) => ({ criterion: id, mark: "met" })), rater: "coach", rater_id: "c" };
  const session = (number, kg) => {
    add(number, { day_report: { class: "within", pain: [], asks: [] } });
    const at = add(number, { session_recorded: { lifts: [{ lift: LIFT, reserve_asked: 3, sets: [1, 2, 3].map(() => ({ load: { kg }, reps: 5, effort: { rir: 3 }, marks })) }], pain: [] } });
    add(number + 1, { next_day_report: { session: at, pain: [] } });
  };
  add(0, { parameters_changed: parameters });
  add(0, cleared);
  for (let at = 0; at < 8; at += 1) session(at * 4, 60);
  add(35, limit([{ load: { kg: 30 } }]));
  for (let at = 36; at < 240; at += 4) session(at, 30);
  add(242, cleared);
  return { log, plan: { format: "bismar-plan", version: 1, lifts: [{ lift: LIFT, reserve: 3 }] }, day };
}

describe("what was set aside", () => {
  for (const [name, other, pattern] of [
    ["a limit", (hand) => writeLimit(hand), /A limit of 30 kg for every lift at every place is no longer in force then/],
    ["an illness", async (hand) => {
      await box(hand, "A break");
      await hand.page.locator('dialog [data-value="ill"]').click();
      await hand.page.locator("dialog #from").fill(LAST);
      await hand.tap('dialog [data-act="write-down"]');
    }, /A stop would no longer be in force: an illness or operation/],
  ]) {
    it(`lifts nothing in one tap when it is brought back: ${name}`, async () => {
      const hand = await handOn(browser);
      await bringIn(hand, fileOf(logOf("Abe", asked)));
      const other_ = await second(hand, true);
      await box(hand, "A clearance");
      await pick(hand, "What was said", "cleared");
      await hand.page.locator("dialog #who").fill("invented clinic");
      await other_.page.bringToFront();
      await other(other_);
      await stored(other_, "events", 705);
      await hand.page.bringToFront();
      await hand.tap('dialog [data-act="write-down"]');
      await stored(hand, "asides", 1);
      await at(hand, "files");
      await asksFirst(hand, () => hand.page.locator('[data-act="bring-back"]').first().click(), pattern);
      await hand.context.close();
    });
  }
});

describe("what another window records", () => {
  const both = async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe", asked)));
    return { hand, other: await second(hand, false) };
  };
  it("holds a box in which something is entered that would take a limit away: it is named there, and seen first", async () => {
    const { hand, other } = await both();
    await box(hand, "A clearance");
    await pick(hand, "What was said", "cleared");
    await hand.page.locator("dialog #who").fill("invented clinic");
    await other.page.bringToFront();
    await writeLimit(other);
    await turnTo(hand);
    await says(hand.page.locator("dialog [data-happened]"), /A limit of 30 kg for every lift at every place/);
    await tells(hand, /A limit of 30 kg for every lift at every place: recorded there/);
    const written = await number(hand);
    assert.equal(await hand.page.locator('dialog [data-act="write-down"]').click({ timeout: 500 }).then(() => true, () => false), false, "nothing is tapped before it was seen");
    await hand.tap('[data-act="seen"]');
    await says(hand.page.locator("dialog [data-gone]"), /limit of 30 kg/, "what it would end is named");
    await hand.page.locator("dialog .quiet").click();
    await counts(hand.page.locator("dialog"), 0);
    assert.equal(await number(hand), written);
    await hand.context.close();
  });

  it("closes one in which nothing is entered, and says so", async () => {
    const { hand, other } = await both();
    await box(hand, "A clearance");
    await other.page.bringToFront();
    await writeLimit(other);
    await turnTo(hand);
    await counts(hand.page.locator("dialog"), 0);
    await tells(hand, /A limit of 30 kg for every lift at every place: recorded there/);
    await go(hand, "today");
    await tells(hand, /Limits\. .*30 kg/);
    await hand.context.close();
  });

  it("shows the new load in a set's sheet and in that of all sets, and asks", async () => {
    for (const [open, save] of [
      [async (hand) => { await hand.page.locator('article [data-act="set"]').click(); await hand.tap('[data-act="all-met"]'); }, '[data-act="save-set"]'],
      [async (hand) => { await hand.tap('[data-act="all-good"]'); await pick(hand, "Was it watched?", "yes"); await hand.tap('dialog [aria-label^="Left in reserve"] [data-value="3"]'); }, '[data-act="save-good"]'],
    ]) {
      const { hand, other } = await both();
      await go(hand, "today");
      await open(hand);
      await other.page.bringToFront();
      await writeLimit(other);
      await turnTo(hand);
      await says(hand.page.locator("dialog [data-lighter]"), /30 kg now/);
      await hand.tap(save);
      await says(hand.page.locator("dialog .asking"), /Is that right\?.*30 kg now/is);
      await counts(hand.page.locator(".draft"), 0, "nothing is on the list before it was asked");
      await hand.tap(save);
      const sets = await keeps(async () => (await everything(hand)).drafts, (found) => found.length > 0);
      for (const { value } of sets) assert.equal(JSON.parse(value.text).set.load.kg, 30);
      assert.deepEqual(hand.complaints, []);
      await hand.context.close();
    }
  });
});

describe("a copy of somebody under a limit", () => {
  it("comes in beside only after the limit was said, and points to it", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, LAST, THIRTY))));
    await upload(hand, fileOf(logOf("Abe", (log) => { log.events.at(-1).note = "in the file"; })));
    await hand.tap('[data-act="keep-both"]');
    await says(hand.page.locator("dialog"), /For Abe stands on record: a limit of 30 kg for every lift at every place\..*Abe \(2\)/is);
    await hand.tap("dialog [data-yes]");
    await says(hand.page.locator("header .who"), /Abe \(2\)/);
    for (const view of ["today", "q9"]) {
      await hand.view(view);
      await says(hand.page.locator("[data-other-less]"), /For Abe stands on record: a limit of 30 kg for every lift at every place.*is that one person\?/is, view);
    }
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("days that cannot be", () => {
  it("are refused where another day is given, in the box", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, LAST, { body_mass_recorded: { kg: 80 } }))));
    await at(hand, "log");
    await hand.page.getByRole("button", { name: /^Another day for .*Thu 27 Aug/ }).first().click();
    await hand.page.locator("dialog input[type=date]").fill("1960-01-01");
    await hand.tap('[data-act="save-day"]');
    await says(hand.page.locator("dialog .wrong"), /day of birth/);
    assert.equal(await number(hand), 704);
    await hand.tap("dialog .quiet");
    for (const view of ["q21", "q24", "q27"]) {
      await hand.view(view);
      assert.doesNotMatch(await main(hand), /Something went wrong/, view);
    }
    await hand.close();
  });

  for (const day of ["2200-01-02", "1899-12-31"]) {
    it(`are said where the device has one, with the stops that are known: ${day}`, async () => {
      const hand = await handOn(browser);
      await bringIn(hand, fileOf(logOf("Abe", (log) => further(log, LAST, { symptom_report: { signs: ["chest_pain"] } }))));
      await setDay(hand, day);
      await says(hand.page.locator("main"), new RegExp(`This device says ${day}`));
      await counts(hand.page.locator(".stop-band"), 1);
      await says(hand.page.locator(".stop-band"), /chest pain/i);
      await hand.page.locator(".stop-button").click();
      await hand.page.locator("main .sign", { hasText: /Fainting/i }).click();
      await stored(hand, "events", 705);
      await go(hand, "files");
      await counts(hand.page.locator("#open-file"), 1);
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }
});
