// Nothing leaking: erased is erased, and "health left out" means it.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, demoPlan, everything, FILE, fileOf, further, go, Hand, handOn, logOf, NEXT_DAY, reload, saved, stored, upload, yes } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const NAME = "Noor Secretname";
const erase = async (hand) => {
  await go(hand, "files");
  await hand.tap('[data-act="erase"]');
  await yes(hand);
  await hand.page.getByText("was erased").waitFor();
};

describe("erased is erased", () => {
  it("in storage: log, session going on, settings, what was set aside", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf(NAME)));
    await upload(hand, fileOf(logOf(NAME, (log) => (log.events.at(-1).note = "said later"))));
    await hand.page.locator('[data-act="replace"], button:text("Replace what is here")').first().click();
    await yes(hand);
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await go(hand, "today");
    await hand.allGood();
    await stored(hand, "drafts", 3);
    assert.match(JSON.stringify(await everything(hand)), /Secretname/);
    await erase(hand);
    await hand.page.waitForTimeout(150);
    assert.doesNotMatch(JSON.stringify(await everything(hand)), /Secretname/);
    await hand.close();
  });

  it("in titles and addresses of every view", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf(NAME)));
    for (const place of ["today", "questions", "lifters", "log", "files", "gym"]) {
      await go(hand, place);
      assert.doesNotMatch(`${await hand.page.title()} ${hand.page.url()} ${JSON.stringify(await hand.page.evaluate(() => history.state))}`, /Secretname/);
    }
    await hand.close();
  });

  it("in the other window, whose writing ends, with entries waiting there or none", async () => {
    for (const waits of [false, true]) {
      const one = await handOn(browser);
      await bringIn(one, fileOf(logOf(NAME)));
      const two = new Hand(await one.context.newPage());
      await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
      await two.page.goto(FILE);
      await two.ready();
      if (waits) await two.page.evaluate(() => {
        const { add } = IDBObjectStore.prototype;
        globalThis.room = () => { IDBObjectStore.prototype.add = add; };
        IDBObjectStore.prototype.add = () => { throw new DOMException("no room is left", "QuotaExceededError"); };
      });
      if (waits) {
        await two.allGood();
        await two.page.waitForSelector(".fault");
      }
      await one.page.bringToFront();
      await erase(one);
      await two.page.bringToFront();
      await two.page.evaluate(() => globalThis.room?.());
      await two.page.evaluate(() => dispatchEvent(new Event("focus")));
      if (waits && (await two.page.locator(".draft").count()) > 0) await two.allGood({ at: 0 }).catch(() => undefined);
      await two.page.waitForTimeout(300);
      await says(two.page.locator("body"), /erased/);
      assert.doesNotMatch(JSON.stringify(await everything(two)), /Secretname/);
      await go(two, "lifters");
      await counts(two.page.locator("[data-lifter]"), 0);
      await reload(two);
      assert.doesNotMatch(await two.page.locator("body").innerText(), /Secretname/);
      await one.close();
    }
  });
});

describe("health left out", () => {
  const SECRET = /chest clinic|knee hurts|asthma clinic|invented clinic|sertraline|grumpy|asthma|afterbirth|no_breath_hold|physio/i;
  const secret = () => logOf(NAME, (log) => {
    const session = log.events.findLast((one) => one.kind.session_recorded).kind.session_recorded;
    for (const lift of session.lifts) lift.cue = "mind the knee hurts";
    for (const one of session.lifts.flatMap((lift) => lift.sets)) if (one.marks) one.marks.rater_id = "Dr Physio";
    log.events.at(-1).note = "sertraline";
    further(log, "2026-08-27", { clearance_recorded: { status: "cleared_with_limits", who: "asthma clinic", limits: [{ no_breath_hold: true, region: "knee" }] } });
    further(log, "2026-08-27", { coach_override: { lift: "strict press", load: { kg: 15 }, who: "physio Kim", why: "grumpy shoulder" } });
    further(log, "2026-08-27", { block_started: "afterbirth" });
    further(log, "2026-08-27", { session_missed: { reason: "chest clinic" } });
    further(log, "2026-08-28", { advance_declined: { lift: "box squat", who: "physio Kim" } });
    further(log, "2026-08-28", { rater_changed: { now: "Dr Physio" } });
  });

  it("means it, in the file, in the table and on the card", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(secret()));
    await go(hand, "today");
    await hand.allGood();
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-plain"]');
    assert.doesNotMatch(copy, SECRET);
    assert.doesNotMatch(copy, /1967/);
    const table = await saved(hand, '[data-act="save-csv"]');
    assert.doesNotMatch(table, SECRET);
    await says(hand.page.locator("main"), /names of lifts, bars/i, "the page says which words stay");
    await hand.ask(24);
    assert.doesNotMatch(await hand.page.locator(".handover").innerText(), SECRET);
    await hand.close();
  });

  it("and the copy can be opened: it begins stopped", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(secret()));
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-plain"]');
    await erase(hand);
    await bringIn(hand, copy);
    await go(hand, "today");
    await says(hand.page.locator("main"), /stopped|until/i);
    await hand.close();
  });

  it("a full copy names the health detail that it holds", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(secret()));
    await go(hand, "files");
    assert.match(await saved(hand, '[data-act="save-full"]'), SECRET);
    await hand.close();
  });
});
