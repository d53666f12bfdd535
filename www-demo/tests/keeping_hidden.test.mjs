// Nothing hidden: what is shown is computed from what is stored, and a file shows every difference before it does anything.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, FILE, fileOf, further, go, Hand, handOn, logOf, NEXT_DAY, reload, setDay, stored, tells, tamper, upload, yes, turnTo } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const stopped = { symptom_report: { signs: ["chest_pain"] } };
/** The same log, the same number of entries, the same last entry: one before it is a stop. */
const calm = () => logOf("Noor, invented");
const withStop = () => logOf("Noor, invented", (log) => (log.events.at(-2).kind = stopped));

describe("what is shown is what is stored", () => {
  it("a log put in place of another shows its stop at once", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    await counts(hand.page.locator(".stop-band"), 0);
    await upload(hand, fileOf(withStop()));
    await hand.page.locator('[data-act="replace"], button:text("Replace what is here")').first().click();
    await yes(hand);
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await hand.page.locator(".stop-band").waitFor({ timeout: 3_000 });
    await hand.close();
  });

  it("so does one that comes in after an erase", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    await go(hand, "files");
    await hand.tap('[data-act="erase"]');
    await yes(hand);
    await hand.page.getByText("Nobody is here yet").waitFor();
    await bringIn(hand, fileOf(withStop()));
    await hand.page.locator(".stop-band").waitFor({ timeout: 3_000 });
    await hand.close();
  });

  it("and one that another window put there", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(calm()));
    const two = new Hand(await one.context.newPage());
    await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
    await two.page.goto(FILE);
    await two.ready();
    await one.page.bringToFront();
    await upload(one, fileOf(withStop()));
    await one.page.locator('[data-act="replace"], button:text("Replace what is here")').first().click();
    await yes(one);
    await one.page.locator("#open-file").waitFor({ state: "detached" });
    await turnTo(two);
    await two.page.locator(".stop-band").waitFor({ timeout: 3_000 });
    await one.close();
  });

  it("every recorded limit stands on the lift, in the log and on the card, in plain words", async () => {
    const hand = await handOn(browser);
    const limits = [{ no_breath_hold: true }, { region: "knee", load: { kg: 30 }, no_loaded_flexion: true }, { effort: 7, range: { mm: 400 } }];
    const log = logOf("Noor, invented", (one) => further(one, "2026-08-27", { clearance_recorded: { status: "cleared_with_limits", who: "invented clinic", limits } }));
    await bringIn(hand, fileOf(log));
    const words = [/no long breath-holding/, /no loaded bending of the spine/, /no more than 30 kg/, /no effort above 7/, /400 mm/];
    for (const one of words) await tells(hand, one, "Today");
    await go(hand, "log");
    for (const one of words) await tells(hand, one, "the log");
    await hand.ask(24);
    await hand.page.locator('[aria-label="Health detail on the card"] [data-value="yes"]').click();
    for (const one of words) await says(hand.page.locator(".handover"), one, "the card");
    await go(hand, "today");
    await hand.tap('[data-act="plan"]');
    await hand.page.locator("main details.more summary").first().click();
    await hand.tap('[data-act="edit-lift"]');
    await tells(hand, /no long breath-holding/, "the lift");
    await hand.close();
  });
});

describe("one wrong clock", () => {
  const ahead = () => logOf("Noor, invented", (log) => further(log, "2031-05-01", { body_mass_recorded: { kg: 80 } }));

  it("in a file is asked about before it comes in, and can be set right there", async () => {
    const hand = await handOn(browser);
    await upload(hand, fileOf(ahead()));
    await says(hand.page.locator("main article"), /1 entry is dated after this device\u2019s day.*1 May 2031/s);
    await hand.close();
  });

  it("does not date what comes after it: the day of the entry is set right in two taps", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(ahead()));
    await go(hand, "today");
    await says(hand.page.locator("[data-ahead]"), /1 entry .*1 May 2031/s);
    await hand.tap('[data-act="days-right"]');
    await hand.page.locator("[data-ahead]").waitFor({ state: "detached" });
    await hand.allGood();
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await go(hand, "log");
    await hand.page.locator('.day >> nth=0').and(hand.page.locator('[data-day="2026-08-28"]')).waitFor({ timeout: 5_000 });
    await reload(hand);
    await counts(hand.page.locator("[data-ahead]"), 0);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("of the device, before the whole log, puts no log on one day with one tap", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    await setDay(hand, "2001-01-01");
    await says(hand.page.locator("[data-ahead]"), /of several days: look at the date of this device first/);
    await counts(hand.page.locator('[data-act="days-right"]'), 0);
    await hand.close();
  });

  it("of the device, years ahead, is asked about before a session is written; a stop is never held up", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    await setDay(hand, "2031-05-01");
    await says(hand.page.locator("[data-far]"), /1 May 2031/);
    await go(hand, "log");
    await hand.page.getByText("Write down something else").click();
    await hand.page.getByRole("button", { name: "Body mass", exact: true }).click();
    await hand.pad("Body mass", 80);
    await hand.page.locator("dialog button.main").last().click();
    const box = hand.page.locator("dialog", { hasText: "Is it really" });
    await box.waitFor();
    await box.locator('[data-act="not-today"]').click();
    await says(hand.page.locator("dialog .wrong"), /Not recorded\. Set the date of this device first/);
    await says(hand.page.locator('dialog [data-pad="Body mass"]'), /80/, "what was entered stays");
    await hand.page.locator("dialog .quiet").click();
    await hand.ask(13);
    await hand.page.locator("main .sign", { hasText: /chest/i }).click();
    await hand.page.locator(".stop-band").waitFor();
    await hand.close();
  });

  for (const [what, fill] of [
    ["a clearance that is refused", async (hand) => {
      await hand.page.getByRole("button", { name: "A clearance", exact: true }).click();
      await hand.page.locator('dialog [data-value="not_cleared"]').click();
      await hand.page.locator("dialog #who").fill("invented clinic");
    }],
    ["an illness", async (hand) => {
      await hand.page.getByRole("button", { name: "A break", exact: true }).click();
      await hand.page.locator('dialog [data-value="ill"]').click();
      await hand.page.locator("dialog #from").fill("2026-08-28");
    }],
  ]) {
    it(`of the device never holds up ${what}`, async () => {
      for (const [log, day] of [[calm(), "2031-05-01"], [ahead(), NEXT_DAY]]) {
        const hand = await handOn(browser);
        await bringIn(hand, fileOf(log));
        await setDay(hand, day);
        await hand.page.locator("[data-far], [data-ahead]").waitFor();
        await go(hand, "log");
        await hand.page.getByText("Write down something else").click();
        await fill(hand);
        await hand.page.locator('[data-act="write-down"]').click();
        await counts(hand.page.locator("dialog"), 0);
        await hand.page.getByText("Recorded.").waitFor({ timeout: 5_000 });
        await stored(hand, "events", log.events.length + 1);
        await hand.close();
      }
    });
  }

  it("can be taken back by a correction of the day, which is all that counts", async () => {
    const hand = await handOn(browser);
    const log = ahead();
    further(log, "2031-05-01", { correction: { replaces: log.events.at(-1).sequence, day: "2026-08-27" } });
    await bringIn(hand, fileOf(log));
    await go(hand, "today");
    await tells(hand, /28 Aug/);
    await counts(hand.page.locator("[data-ahead]"), 0);
    await hand.close();
  });
});

describe("a file shows every difference", () => {
  const plan = { format: "bismar-plan", version: 1, lifts: [{ lift: "box squat", reserve: 5 }] };
  async function changed(log, other, words, hidden) {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(log));
    await upload(hand, fileOf(other));
    for (const one of words) await says(hand.page.locator("main article"), one);
    assert.doesNotMatch(await hand.page.locator("main article").innerText(), hidden ?? /Nothing would change/);
    await hand.close();
  }
  it("in the header: who is invented, and the day of birth", () =>
    changed(calm(), logOf("Noor, invented", () => undefined, { born: "1950-01-01", invented: true }), [/invented/, /1950-01-01/]));
  it("in the plan", () => changed(calm(), { log: calm(), plan }, [/plan/i, /reserve/]));
  it("in the session going on", () => changed(calm(), { log: calm(), plan: JSON.parse(JSON.stringify({})) && undefined, draft: [{ lift: "box squat", set: { load: { kg: 20 }, reps: 5 }, day: NEXT_DAY }] }, [/session going on/i]));
  it("in bars, discs and rules", () =>
    changed(calm(), logOf("Noor, invented", (log) => {
      const last = log.events.filter((one) => one.kind.parameters_changed).at(-1).kind.parameters_changed;
      last.stock.discs[0].count += 2;
    }), [/stock\.discs/, /count/]));

  it("and says that nothing would change only where that is so", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    await upload(hand, fileOf(calm()));
    await says(hand.page.locator("main article"), /Nothing would change/);
    await hand.close();
  });

  it("and never makes a real lifter an invented one unseen", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(calm()));
    const other = logOf("Noor, invented", (log) => further(log, "2026-08-28", { body_mass_recorded: { kg: 80 } }), { invented: true });
    await upload(hand, fileOf(other));
    await says(hand.page.locator("main article"), /marked as invented/);
    await counts(hand.page.locator('[data-act="bring-in"]'), 0, "no plain adding: it is a replacement that is asked about");
    await hand.close();
  });
});

describe("names", () => {
  for (const [what, name] of [["turns the text around", "Noor \u202egnidart"], ["hides a letter", "No\u200bor"], ["is not to be seen", "\u2060\u2060"], ["isolates and never ends", "\u2067Noor"], ["marks a byte order", "Noor\ufeffx"], ["fills with nothing", "\u3164"], ["moves a terminal", "Noor\u001b[2J"]]) {
    it(`refuses one that ${what}`, async () => {
      const hand = await handOn(browser);
      await upload(hand, fileOf(logOf(name)));
      assert.match(await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 }), /name/i);
      await hand.close();
    });
  }

  it("are isolated where they are shown", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("\u05e0\u05d5\u05e8 1")));
    for (const place of ["today", "lifters", "log", "files"]) {
      await go(hand, place);
      const all = await hand.page.evaluate(() => {
        const found = [];
        const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        while (walk.nextNode()) if (walk.currentNode.data.includes("\u05e0")) found.push(walk.currentNode.data);
        return found;
      });
      assert.ok(all.length > 0 && all.every((one) => /\u2068\u05e0[^\u2069]*\u2069/.test(one)), `${place}: ${all}`);
    }
    await hand.close();
  });
});
