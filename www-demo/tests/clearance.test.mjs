// A clearance: every limit that was told is stored as it was told, nothing is filled in, and a limit of load lowers today's.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, demoPlan, fileOf, further, go, handOn, logOf, main, stored } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const NONE = { where: "everywhere", breath: "no", bending: "no", effort: "unsaid" };
const LABELS = { where: "Where the limit holds", breath: "Long breath-holding", bending: "Loaded bending of the spine", effort: "Highest effort" };

const choose = (hand, label, value) => hand.tap(`dialog [aria-label="${label}"] [data-value="${value}"]`);
const write = (hand) => hand.tap('dialog [data-act="write-down"]');

async function boxOf(hand, status = "cleared_with_limits") {
  await go(hand, "log");
  await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
  await hand.page.getByRole("button", { name: "A clearance", exact: true }).click();
  if (status) await choose(hand, "What was said", status);
}
async function tell(hand, limit) {
  const { load, range, ...told } = { ...NONE, ...limit };
  for (const [key, value] of Object.entries(told)) await choose(hand, LABELS[key], value);
  if (load !== undefined) await typed(hand, "Highest load", load);
  if (range !== undefined) await typed(hand, "Deepest range", range);
}
/** The pad lies over the box. */
async function typed(hand, label, number) {
  await hand.tap(`[data-pad="${label}"]`);
  const pad = hand.page.locator(`dialog[aria-label="${label}"]`);
  for (const digit of String(number)) await pad.locator(`[data-key="${digit}"]`).click();
  await pad.locator('[data-key="ok"]').click();
}
async function save(hand) {
  await hand.page.locator("dialog #who").fill("invented clinician");
  await write(hand);
  await hand.page.getByText("Recorded.").waitFor();
}
async function somebody(name = "Cleo", { unit, change } = {}) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf(name, change)));
  if (unit === "lb") {
    await hand.tap(".unit");
    await says(hand.page.locator("main"), /\blb\b/);
  }
  return hand;
}
/** The clearance at the end of the log on the device. */
async function kept(hand, number = 704) {
  const rows = await stored(hand, "events", number);
  return JSON.parse(rows.at(-1).value.text).kind.clearance_recorded;
}

describe("a limit that was told", () => {
  const kinds = [
    ["a load", { load: 32.5 }, { load: { kg: 32.5 } }],
    ["a range", { range: 275 }, { range: { mm: 275 } }],
    ["an effort", { effort: 6 }, { effort: 6 }],
    ["breath-holding", { breath: "yes" }, { no_breath_hold: true }],
    ["bending", { bending: "yes" }, { no_loaded_flexion: true }],
    ["a load of a region", { where: "knee", load: 40 }, { region: "knee", load: { kg: 40 } }],
    ["all of them", { where: "back", load: 25, range: 300, effort: 5, breath: "yes", bending: "yes" }, { region: "back", load: { kg: 25 }, effort: 5, range: { mm: 300 }, no_loaded_flexion: true, no_breath_hold: true }],
  ];
  for (const [name, told, limit] of kinds) {
    it(`is stored as it was told: ${name}`, async () => {
      const hand = await somebody();
      await boxOf(hand);
      await tell(hand, told);
      await save(hand);
      assert.deepEqual(await kept(hand), { status: "cleared_with_limits", who: "invented clinician", limits: [limit] });
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }

  it("is stored as it was told: a load in pounds", async () => {
    const hand = await somebody("Cleo", { unit: "lb" });
    await boxOf(hand);
    await tell(hand, { load: 65 });
    await says(hand.page.locator('dialog [data-pad="Highest load"]'), /^65\s+lb$/);
    await save(hand);
    const { limits } = await kept(hand);
    // The pound by definition: 0.45359237 kg.
    assert.ok(Math.abs(limits[0].load.kg - 65 * 0.45359237) < 1e-9, JSON.stringify(limits));
    await says(hand.page.locator("main"), /cleared with limits; no more than 65 lb; said by invented clinician/);
    await hand.close();
  });

  it("is never shown above what it is: as it was told where it was told in that unit, else rounded down", async () => {
    const hand = await somebody("Cleo", { unit: "lb" });
    await boxOf(hand);
    await tell(hand, { load: 65.75 });
    await says(hand.page.locator('dialog [data-pad="Highest load"]'), /^65\.75\s+lb$/);
    await save(hand);
    await says(hand.page.locator("main"), /no more than 65\.75 lb; said by/);
    // 65.75 lb are 29.8237 kg; in hundredths that is 29.82.
    await hand.tap(".unit");
    await says(hand.page.locator("main"), /no more than 29\.82 kg; said by/);
    await boxOf(hand);
    await tell(hand, { load: 29.826 });
    await says(hand.page.locator('dialog [data-pad="Highest load"]'), /^29\.826\s+kg$/);
    await save(hand);
    await says(hand.page.locator("main"), /no more than 29\.826 kg; said by/);
    // 65.755 lb, to the thousandth and a little more.
    await hand.tap(".unit");
    await says(hand.page.locator("main"), /no more than 65\.7 lb; said by/);
    await hand.close();
  });

  it("may be one of several, each with where it holds", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await tell(hand, { where: "knee", load: 40 });
    await hand.page.getByRole("button", { name: "Another limit", exact: true }).click();
    await says(hand.page.locator("dialog [data-limit]"), /no more than 40 kg \(knee\)/);
    await counts(hand.page.locator('dialog .choice[aria-pressed="true"]'), 1, "only what was said; the next limit begins empty");
    await tell(hand, { where: "shoulder", breath: "yes" });
    await save(hand);
    assert.deepEqual((await kept(hand)).limits, [{ region: "knee", load: { kg: 40 } }, { region: "shoulder", no_breath_hold: true }]);
    await go(hand, "today");
    await says(hand.page.locator("main [data-limits]"), /no more than 40 kg \(knee\); no long breath-holding \(shoulder\)\./);
    await hand.close();
  });

  it("is all there was, where no other was begun after it", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await tell(hand, { effort: 7 });
    await hand.page.getByRole("button", { name: "Another limit", exact: true }).click();
    await save(hand);
    assert.deepEqual((await kept(hand)).limits, [{ effort: 7 }]);
    await hand.close();
  });
});

describe("the box of a clearance", () => {
  it("has nothing filled in", async () => {
    const hand = await somebody();
    await boxOf(hand, null);
    await counts(hand.page.locator('dialog .choice[aria-pressed="true"]'), 0);
    await choose(hand, "What was said", "cleared_with_limits");
    await counts(hand.page.locator('dialog .choice[aria-pressed="true"]'), 1);
    for (const pad of ["Highest load", "Deepest range"]) await says(hand.page.locator(`dialog [data-pad="${pad}"]`), /^not said$/);
    for (const field of ["#who", "#holds-to"]) assert.equal(await hand.page.locator(`dialog ${field}`).inputValue(), "");
    await hand.close();
  });

  it("says which answer is missing, and writes nothing until all are there", async () => {
    const hand = await somebody();
    await boxOf(hand, null);
    const missing = async (words) => {
      await write(hand);
      await says(hand.page.locator("dialog p.wrong").last(), words);
    };
    await missing(/^What was said, please\.$/);
    await choose(hand, "What was said", "cleared_with_limits");
    for (const [key, words] of [["where", /^Where the limit holds/], ["breath", /^Long breath-holding: what was said/], ["bending", /^Loaded bending of the spine: what was said/], ["effort", /^Highest effort: what was said/]]) {
      await missing(words);
      await choose(hand, LABELS[key], NONE[key]);
    }
    await missing(/^Which limit, please/);
    await typed(hand, "Highest load", 30);
    await missing(/^Who, please\.$/);
    await stored(hand, "events", 703);
    await save(hand);
    assert.deepEqual((await kept(hand)).limits, [{ load: { kg: 30 } }]);
    await hand.close();
  });

  it("says it where it is seen, on the smallest screen", async () => {
    const hand = await handOn(browser, undefined, { viewport: { width: 360, height: 640 } });
    await bringIn(hand, fileOf(logOf("Cleo")));
    await boxOf(hand);
    await write(hand);
    const [words, buttons] = [hand.page.locator("dialog p.wrong").last(), hand.page.locator("dialog > .row").last()];
    await says(words, /^Where the limit holds/);
    const [of, under] = [await words.boundingBox(), await buttons.boundingBox()];
    assert.ok(of.y >= 0 && of.y + of.height <= under.y, `${JSON.stringify(of)} above ${JSON.stringify(under)}`);
    assert.equal(await hand.page.evaluate(() => document.documentElement.scrollWidth), 360);
    await hand.close();
  });

  it("asks for the rest of a second limit that was begun", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await tell(hand, { effort: 7 });
    await hand.page.getByRole("button", { name: "Another limit", exact: true }).click();
    await typed(hand, "Highest load", 30);
    await hand.page.locator("dialog #who").fill("invented clinician");
    await write(hand);
    await says(hand.page.locator("dialog p.wrong").last(), /^Where the limit holds/);
    await stored(hand, "events", 703);
    await hand.close();
  });

  it("stays open with all that was entered where the log refuses it", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await tell(hand, {});
    await hand.tap('[data-pad="Deepest range"]');
    await hand.page.locator('dialog[aria-label="Deepest range"] input').fill("9999999");
    await hand.page.locator('dialog[aria-label="Deepest range"] [data-key="ok"]').click();
    await hand.page.locator("dialog #who").fill("invented clinician");
    await write(hand);
    await says(hand.page.locator("dialog p.wrong").last(), /mm/);
    await counts(hand.page.locator('dialog [aria-label="Where the limit holds"] [aria-pressed="true"]'), 1);
    await stored(hand, "events", 703);
    await typed(hand, "Deepest range", 280);
    await save(hand);
    assert.deepEqual((await kept(hand)).limits, [{ range: { mm: 280 } }]);
    await hand.close();
  });

  it("says so where a load is none", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await hand.tap('[data-pad="Highest load"]');
    await hand.page.locator('dialog[aria-label="Highest load"] input').fill("9999999");
    await hand.page.locator('dialog[aria-label="Highest load"] [data-key="ok"]').click();
    await says(hand.page.locator("dialog p.wrong").first(), /kg/);
    await says(hand.page.locator('dialog [data-pad="Highest load"]'), /^not said$/);
    await hand.close();
  });

  it("keeps the last day, and without limits none; a refusal has neither", async () => {
    const hand = await somebody();
    await boxOf(hand);
    await tell(hand, { load: 30 });
    await hand.page.locator("#holds-to").fill("2026-10-01");
    await save(hand);
    assert.deepEqual(await kept(hand), { status: "cleared_with_limits", who: "invented clinician", expires: "2026-10-01", limits: [{ load: { kg: 30 } }] });
    await says(hand.page.locator("main"), /cleared with limits until Thu 1 Oct; no more than 30 kg; said by invented clinician/);
    for (const [status, number, rest] of [["cleared", 705, { expires: "2026-11-02" }], ["not_cleared", 706, {}]]) {
      await boxOf(hand);
      await tell(hand, { load: 20 });
      await hand.page.locator("#holds-to").fill("2026-11-02");
      await choose(hand, "What was said", status);
      await save(hand);
      assert.deepEqual(await kept(hand, number), { status, who: "invented clinician", ...rest });
    }
    await hand.close();
  });
});

describe("a limit of load", () => {
  const plan = { ...demoPlan };
  for (const unit of ["kg", "lb"]) {
    it(`stands on Today, in the log and on the card, and no load of today is above it, in ${unit}`, async () => {
      const hand = await somebody("Cleo", { unit });
      const loads = async () => {
        await go(hand, "today");
        await hand.page.locator('main[data-view="today"] [data-lift]').first().waitFor();
        const found = {};
        for (const { lift } of plan.lifts) {
          const row = hand.page.locator(`[data-row][data-lift="${lift}"]`);
          if ((await row.count()) > 0) await row.click();
          const load = hand.page.locator(`article[data-lift="${lift}"] .load`);
          await hand.page.locator(`article[data-lift="${lift}"]`).waitFor();
          if ((await load.count()) > 0) found[lift] = Number.parseFloat(await load.innerText());
        }
        return found;
      };
      const [before, limit] = [await loads(), unit === "kg" ? 30 : 65];
      assert.ok(Object.values(before).some((load) => load > limit), JSON.stringify(before));
      await boxOf(hand);
      await tell(hand, { load: limit });
      await save(hand);
      const words = new RegExp(`no more than ${limit} ${unit}`);
      await says(hand.page.locator("main"), words);
      const now = await loads();
      for (const [lift, load] of Object.entries(before)) {
        assert.ok(now[lift] === undefined || now[lift] <= Math.min(load, limit), `${lift}: ${load}, now ${now[lift]}`);
      }
      assert.ok(Object.keys(now).length > 0, JSON.stringify(now));
      await says(hand.page.locator("main [data-limits]"), words);
      await hand.ask(24);
      await hand.page.locator(".handover").waitFor();
      assert.doesNotMatch(await main(hand), words, "left out with the health detail");
      await hand.tap('[aria-label="Health detail on the card"] [data-value="yes"]');
      await says(hand.page.locator("main"), words);
      assert.deepEqual(hand.complaints, []);
      await hand.close();
    });
  }
});

describe("the limits that a clearance ends", () => {
  const LIMITS = [{ load: { kg: 30 } }, { region: "knee", effort: 7, no_loaded_flexion: true }];
  const limited = (log) => further(log, "2026-08-28", { clearance_recorded: { status: "cleared_with_limits", who: "invented clinic", limits: LIMITS } });

  it("are named before it is saved: all of them by one without limits", async () => {
    const hand = await somebody("Cleo", { change: limited });
    await boxOf(hand, null);
    await counts(hand.page.locator("dialog [data-goes]"), 0);
    await choose(hand, "What was said", "cleared");
    const gone = hand.page.locator("dialog [data-gone]");
    await says(gone, /No longer in force once this is written:.*limit of 30 kg/);
    await says(gone, /effort.*7/);
    await says(gone, /bending/);
    await says(hand.page.locator("dialog [data-stay]"), /none stays in force/);
    await stored(hand, "events", 704);
    await hand.close();
  });

  it("and those that stay beside them, as they are told again", async () => {
    const hand = await somebody("Cleo", { change: limited });
    await boxOf(hand);
    await says(hand.page.locator("dialog [data-gone]"), /limit of 30 kg/);
    await tell(hand, { load: 30 });
    await says(hand.page.locator("dialog [data-stay]"), /Still in force:.*limit of 30 kg/);
    await says(hand.page.locator("dialog [data-gone]"), /effort.*7/);
    assert.doesNotMatch(await hand.page.locator("dialog [data-gone]").innerText(), /30 kg/);
    await save(hand);
    const facts = await kept(hand, 705);
    assert.deepEqual(facts.limits, [{ load: { kg: 30 } }]);
    await hand.close();
  });
});
