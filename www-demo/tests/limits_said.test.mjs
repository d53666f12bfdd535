// A limit is said wherever a load is, and nowhere that health is left out; a load of the coach that looks wrong is asked about.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, demoPlan, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, reload, saved, stored, tamper } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const DAY = "2026-08-27";
const clearance = (...limits) => ({ clearance_recorded: { status: "cleared_with_limits", who: "Dr Inv", limits } });
const settings = (log) => structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
/** The supported row is done with two handles from that day on. */
function inTwoHands(log) {
  const set = settings(log);
  const lift = set.lifts.find((one) => one.id === "supported row");
  set.implements.push({ handle: { id: "handles", mass: { kg: 2 }, collar: { kg: 0 }, handles: 2 } });
  lift.implement = "handles";
  lift.start.work.load = { kg: 2 };
  further(log, DAY, { parameters_changed: set });
}
async function withLog(...files) {
  const hand = await handOn(browser);
  for (const file of files) await bringIn(hand, file);
  return hand;
}
const text = async (hand) => (await hand.page.locator("main").innerText()).replaceAll("\u00a0", " ");

describe("the coach's own load", () => {
  async function overrule(hand, load) {
    await go(hand, "log");
    await hand.page.locator("details", { hasText: "Write down something else" }).locator("summary").first().click();
    await hand.page.getByRole("button", { name: "The coach decides otherwise" }).click();
    await hand.page.locator('dialog [aria-label="Lift"] [data-value="box squat"]').click();
    await hand.pad("Load allowed", load);
    await hand.page.locator("#who").fill("Coach");
    await hand.page.locator("#why").fill("a test");
    await hand.page.locator("#until").fill("2026-09-30");
    await hand.page.locator('dialog [data-act="write-down"]').click();
  }

  it("is asked about where it is far above the working load", async () => {
    const hand = await withLog(fileOf(logOf("Abe")));
    const before = (await everything(hand)).events.length;
    await overrule(hand, "470");
    await says(hand.page.locator("dialog"), /That is \d+(\.\d+)? kg more than the working load of .*more than was ever lifted here.*Is that right\?/s);
    await stored(hand, "events", before);
    await hand.page.locator('dialog [data-act="write-down"]').click();
    await stored(hand, "events", before + 1);
    await hand.close();
  });

  it("is written at once where it is lower", async () => {
    const hand = await withLog(fileOf(logOf("Abe")));
    const before = (await everything(hand)).events.length;
    await overrule(hand, "30");
    await stored(hand, "events", before + 1);
    await hand.close();
  });
});

describe("health left out", () => {
  it("keeps a limit's figure off the card", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => further(log, NEXT_DAY, clearance({ load: { kg: 31.7 } })))));
    await hand.view("q24");
    await says(hand.page.locator(".handover"), /There is more to ask about/);
    assert.doesNotMatch((await text(hand)), /31\.7/);
    await hand.tap('[aria-label="Health detail on the card"] [data-value="yes"]');
    await says(hand.page.locator(".handover"), /31\.7 kg/);
    await hand.close();
  });

  it("keeps what planned gaps are for, and a mass that is to fall, out of the file", async () => {
    const plan = { ...structuredClone(demoPlan), years: { gaps: [{ name: "operation on the hip", from: "2026-10-01", to: "2026-10-20" }], mass_loss_intended: true } };
    const hand = await withLog(fileOf({ log: logOf("Abe"), plan }));
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-plain"]');
    assert.doesNotMatch(copy, /operation|mass_loss_intended/);
    assert.deepEqual(JSON.parse(copy).lifters[0].plan.years.gaps.map((one) => one.from), ["2026-10-01"]);
    assert.match(await saved(hand, '[data-act="save-full"]'), /operation on the hip/);
    await hand.close();
  });

  it("tells of a damaged log of somebody else only that it is damaged", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => {
      further(log, DAY, { symptom_report: { signs: ["saddle_numbness"] } });
      further(log, DAY, { body_mass_recorded: { kg: 80 } });
    })), fileOf(logOf("Bea")));
    await tamper(hand, "events", ["Abe", 701], (row) => ({ ...row, text: `${row.text} ` }));
    await reload(hand);
    await hand.view("lifters");
    await hand.tap('[data-lifter="Bea"]');
    for (const view of ["today", "log", "plan", "q24", "questions"]) {
      await hand.view(view);
      await says(hand.page.locator(".fault"), /Abe.*set aside/s, view);
      assert.doesNotMatch(await hand.page.locator(".fault").innerText(), /Among what was set aside|bladder/i, view);
    }
    await hand.view("files");
    await says(hand.page.locator(".fault"), /Among what was set aside: .*bladder/is);
    await hand.close();
  });
});

describe("what a lifter trains under", () => {
  it("is said under Lifters and in the plan, with the load that it leaves", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => further(log, NEXT_DAY, clearance({ load: { kg: 30 }, effort: 6, no_breath_hold: true, no_loaded_flexion: true })))), fileOf(logOf("Bea")));
    await hand.view("lifters");
    const said = /no long breath-holding, no loaded bending of the spine, no more than 30 kg, no effort above 6 of 10/;
    await says(hand.page.locator('[data-lifter="Abe"] [data-under]'), said);
    await says(hand.page.locator('[data-lifter="Abe"] [data-under]'), /not asked yet/);
    assert.doesNotMatch(await hand.page.locator('[data-lifter="Bea"]').innerText(), /30 kg,/);
    await hand.tap('[data-lifter="Abe"]');
    await hand.view("plan");
    await says(hand.page.locator("main [data-under]"), said);
    await says(hand.page.locator('[data-sentence="box squat"]'), /for now no more than 30 kg/);
    await hand.close();
  });

  it("names a clearance that has run out", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => further(log, DAY, { clearance_recorded: { status: "cleared", who: "Dr Inv", expires: DAY } }))));
    await hand.view("lifters");
    await says(hand.page.locator('[data-lifter="Abe"] [data-under]'), /The clearance ran out on/);
    await hand.view("plan");
    await says(hand.page.locator("main [data-under]"), /The clearance ran out on/);
    await hand.close();
  });
});

describe("other equipment", () => {
  it("names the lifts whose bar this gym has not, and offers its bars", async () => {
    const hand = await withLog(fileOf(logOf("Abe")));
    await go(hand, "gym");
    await hand.tap('[data-act="kit-lb"]');
    await hand.tap("dialog [data-yes]");
    await says(hand.page.locator("[data-other-bars]"), /box squat is done with bar 20/);
    await hand.tap('[data-act="use-kit"]');
    await says(hand.page.locator("[data-other-bars]"), /Not in this gym.*box squat is done with bar 20/s);
    await hand.tap('[data-other-bar="box squat"]');
    await says(hand.page.locator("dialog"), /bar 45 lb/);
    await hand.page.locator("dialog [data-value]", { hasText: "bar 35 lb" }).click();
    await hand.page.locator('dialog [data-act="write-down"]').click();
    await says(hand.page.locator("[data-other-bars]"), /^((?!box squat).)*$/s);
    await hand.close();
  });

  it("keeps no bar that no lift is done with and the gym has not", async () => {
    const hand = await withLog(fileOf(logOf("Abe")));
    for (const gym of ["kit-lb", "kit-powerlifting"]) {
      await go(hand, "gym");
      await hand.tap(`[data-act="${gym}"]`);
      await hand.tap("dialog [data-yes]");
      await hand.tap('[data-act="use-kit"]');
      await says(hand.page.locator("main"), /Recorded/);
    }
    const events = (await everything(hand)).events.map((row) => JSON.parse(row.value.text));
    const { implements: all } = events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed;
    assert.doesNotMatch(JSON.stringify(all), /lb"/, "bars of the gym before");
    await hand.close();
  });
});

describe("one in each hand", () => {
  it("is said with the load, and with a limit", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => {
      inTwoHands(log);
      further(log, NEXT_DAY, clearance({ load: { kg: 30 } }));
    })));
    await says(hand.page.locator('main [data-lift="supported row"]'), /kg each hand · 3 × 5|kg each hand · \d × \d/);
    await says(hand.page.locator("[data-limits]"), /no more than 30 kg, where there are two of them each hand/);
    for (const [view, where] of [["lifters", '[data-lifter="Abe"]'], ["plan", '[data-sentence="supported row"]'], ["q24", ".handover"]]) {
      await hand.view(view);
      await says(hand.page.locator(where).first(), /each hand/, view);
    }
    await counts(hand.page.locator("h1"), 1);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("is said with the sets that were done so, and with none that was done with a bar", async () => {
    const hand = await withLog(fileOf(logOf("Abe", (log) => {
      inTwoHands(log);
    })));
    const done = async (times) => {
      for (let time = 0; time < times; time += 1) {
        await hand.page.locator('article[data-lift="supported row"] [data-act="set"]').click();
        await says(hand.page.locator("dialog .stepper .number"), /kg each hand$/);
        await hand.tap('[data-act="all-met"]');
        await hand.tap('[data-act="save-set"]');
      }
    };
    await hand.view("today");
    await hand.page.locator('main [data-lift="supported row"]').click();
    await done(2);
    await says(hand.page.locator(".so-far").first(), /kg each hand × \d+, all good/);
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await hand.view("log");
    const lines = hand.page.locator(".done-lift", { hasText: "supported row" });
    await says(lines.first(), /supported row.*kg each hand × \d/s);
    assert.doesNotMatch(await lines.nth(1).innerText(), /each hand/, "a set of a bar");
    await counts(hand.page.locator(".done-lift", { hasText: /squat.*each hand/s }), 0);
    await hand.page.locator('[data-act="correct"]').first().click();
    await says(hand.page.locator('dialog [data-act="correct-set"]').first(), /set 1, .*kg each hand/);
    await hand.page.locator('dialog [data-act="correct-set"]').first().click();
    await says(hand.page.locator("dialog .stepper .number"), /kg each hand$/);
    await hand.page.locator("dialog .quiet").click();
    await hand.page.locator('[data-act="second-marks"]').first().click();
    await says(hand.page.locator('dialog [aria-label="Which set"]'), /set 1, .*kg each hand/);
    await hand.page.locator("dialog .quiet").click();
    await hand.ask(27);
    assert.match(await hand.big(), /supported row .*kg each hand/);
    await says(hand.page.locator("main"), /kg each hand × \d+, all good/);
    await hand.ask(18);
    await hand.tap('[aria-label="Lift"] [data-value="supported row"]');
    await says(hand.page.locator('[data-track="supported row"]'), /Today: .*kg each hand|Today: no load/);
    const label = await hand.page.locator('figure[aria-label^="Working load of supported row"]').getAttribute("aria-label");
    assert.match(label, /from [\d.]+ kg on .* to [\d.]+ kg each hand on/, "from a bar to one in each hand");
    await hand.close();
  });
});
