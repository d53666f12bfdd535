// What is put right in the log: where that opens something it is asked about, and where the question is cancelled, or the log does
// not take it, the box stays as it was left and nothing is written.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, keeps, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, second, stored, upload, yes } from "./keep.mjs";

const LAST = "2026-08-27";
const LIFT = "box squat";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** The last session lost the critical point in its first set: the second of two that did not pass, so the lift stepped back. */
function steppedBack(id) {
  return logOf(id, (log) => {
    const lift = structuredClone(log.events.findLast((one) => one.kind.session_recorded?.lifts.some((each) => each.lift === LIFT)).kind.session_recorded.lifts.find((each) => each.lift === LIFT));
    for (const { marks } of lift.sets) {
      for (const mark of marks.marks) mark.mark = "met";
      marks.acceptable = marks.reps;
      delete marks.first_failing_rep;
    }
    lift.sets[0].marks.marks[0].mark = "not_met";
    further(log, LAST, { session_recorded: { lifts: [lift], pain: [] } });
  });
}
async function at(id, log = steppedBack(id)) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(log));
  await stored(hand, "events", log.events.length);
  await go(hand, "log");
  return { hand, before: log.events.length };
}
const boxes = (hand) => hand.page.locator("dialog[open]");
const pressed = (hand, label) => hand.page.locator(`dialog [aria-label="${label}"] [aria-pressed="true"]`);
const written = async (hand) => JSON.parse((await everything(hand)).events.at(-1).value.text).kind.correction;
/** The first set of the last session, as it should have been written. */
async function putRight(hand) {
  await hand.tap('[data-act="correct"]');
  await hand.tap('[data-act="correct-set"]');
  await hand.tap('[data-act="all-met"]');
  await hand.tap('dialog [aria-label="Left in reserve"] [data-value="4"]');
}
/** What was entered stands in the one box that is open. */
async function asLeft(hand) {
  await counts(boxes(hand), 1);
  await counts(hand.page.locator('[data-act="all-met"][aria-pressed="true"]'), 1);
  assert.deepEqual(await pressed(hand, "Left in reserve").allInnerTexts(), ["4"]);
}

/** Another window has another log in its place, in which the last session was another. */
async function replacedIn(other, id) {
  const log = steppedBack(id);
  log.events.at(-1).kind.session_recorded.lifts[0].cue = "another one";
  await other.page.bringToFront();
  await upload(other, fileOf(log));
  await other.tap('[data-act="replace"]');
  await yes(other);
  await other.page.locator("#open-file").waitFor({ state: "detached" });
}

describe("a set that is put right", () => {
  it("stays as it was left where the question is cancelled, and nothing is written", async () => {
    const { hand, before } = await at("Ida");
    await putRight(hand);
    for (const way of ["Cancel", "Escape"]) {
      await hand.tap('[data-act="save-set"]');
      await says(boxes(hand).last(), /Box squat: a working load of .* then, and not /i);
      if (way === "Cancel") await boxes(hand).last().locator("button.quiet").click();
      else await hand.page.keyboard.press("Escape");
      await asLeft(hand);
      assert.equal((await everything(hand)).events.length, before, way);
    }
    await hand.tap('[data-act="save-set"]');
    await hand.tap("dialog [data-yes]");
    await counts(boxes(hand), 0);
    await stored(hand, "events", before + 1);
    const [set, ...others] = (await written(hand)).with.session_recorded.lifts[0].sets;
    assert.deepEqual([set.effort.rir, set.marks.marks[0].mark, others.length], [4, "met", 2]);
    await hand.close();
  });

  it("stays where the log does not take it", async () => {
    const { hand, before } = await at("Ida");
    const other = await second(hand, false);
    await go(hand, "log");
    await putRight(hand);
    await replacedIn(other, "Ida");
    await hand.page.bringToFront();
    await hand.page.getByText("Another window wrote to Ida").waitFor();
    await hand.tap('[data-act="save-set"]');
    await hand.tap("dialog [data-yes]").catch(() => undefined);
    await says(boxes(hand), /no longer in the log/);
    await asLeft(hand);
    assert.equal((await everything(hand)).events.length, before);
    await hand.close();
  });
});

describe("an entry that is put on another day", () => {
  it("keeps its box where the question is cancelled", async () => {
    // A limit, and a day before it a clearance without any, which would hold if the limit were put before it.
    const said = (more) => ({ clearance_recorded: { who: "invented clinic", ...more } });
    const log = logOf("Ida", (own) => {
      further(own, LAST, said({ status: "cleared_with_limits", limits: [{ load: { kg: 30 } }] }));
      further(own, "2026-08-26", said({ status: "cleared" }));
    });
    const { hand, before } = await at("Ida", log);
    await hand.page.getByRole("button", { name: /^Another day for Clearance of Thu 27 Aug/ }).first().click();
    await hand.page.locator("#other-day").fill("2026-08-25");
    await hand.tap('[data-act="save-day"]');
    await says(boxes(hand).last(), /Is that right\?/);
    await boxes(hand).last().locator("button.quiet").click();
    await counts(boxes(hand), 1);
    assert.equal(await hand.page.locator("#other-day").inputValue(), "2026-08-25");
    assert.equal((await everything(hand)).events.length, before);
    await hand.close();
  });
});

describe("what somebody else saw in a set", () => {
  it("stays where the log does not take it", async () => {
    const { hand, before } = await at("Ida");
    const other = await second(hand, false);
    await go(hand, "log");
    await hand.tap('[data-act="second-marks"]');
    await hand.page.locator("#rater").fill("Bob");
    await hand.tap('dialog [aria-label="Which set"] [data-value="1"]');
    await hand.tap('dialog [aria-label="Good repetitions"] [data-value="5"]');
    for (const point of ["brace held", "even left and right"]) await hand.tap(`dialog [aria-label="${point}"] [data-value="met"]`);
    await replacedIn(other, "Ida");
    await hand.page.bringToFront();
    await hand.page.getByText("Another window wrote to Ida").waitFor();
    // A second try is refused for the same reason, and not because these marks were there already.
    for (let time = 0; time < 2; time += 1) {
      await hand.tap('[data-act="save-marks"]');
      await says(boxes(hand), /no longer in the log/);
      assert.deepEqual(await pressed(hand, "Good repetitions").allInnerTexts(), ["5"]);
      assert.equal(await hand.page.locator("#rater").inputValue(), "Bob");
    }
    assert.equal(await keeps(async () => (await everything(hand)).events.length, (found) => found === before), before);
    await hand.close();
  });
});
