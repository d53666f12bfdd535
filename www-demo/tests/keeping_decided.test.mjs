// What was set aside or damaged is decided on once: nothing is thrown away that did not come back, and nothing comes back twice,
// whichever windows are open.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, demoPlan, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, noRoom, reload, roomAgain, second, stored, tamper, upload, yes } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const weighed = (log, ...all) => all.forEach((kg) => further(log, NEXT_DAY, { body_mass_recorded: { kg } }));
const textsOf = async (hand) => (await everything(hand)).events.map((row) => row.value.text);
const times = (texts, what) => texts.filter((text) => text.includes(what)).length;

/** Somebody whose longer log was replaced by a shorter one: the longer lies set aside, whole. */
async function heldAside() {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf("Hal", (log) => weighed(log, 80, 81))));
  await upload(hand, fileOf(logOf("Hal")));
  await hand.tap('[data-act="replace"]');
  await yes(hand);
  await stored(hand, "events", 703);
  await stored(hand, "asides", 1);
  return hand;
}
async function lookAt(hand) {
  await hand.page.bringToFront();
  await go(hand, "files");
  await hand.page.locator('[data-act="bring-back"]').first().click();
}
async function weigh(hand, kg, words = "Recorded.") {
  await hand.page.bringToFront();
  await go(hand, "log");
  await hand.page.getByText("Write down something else").click();
  await hand.page.getByRole("button", { name: "Body mass", exact: true }).click();
  await hand.pad("Body mass", kg);
  await hand.page.locator('[data-act="write-down"]').click();
  await hand.page.getByText(words).first().waitFor();
}

describe("a copy that was held aside", () => {
  it("is gone from what is set aside once all of it is back", async () => {
    const hand = await heldAside();
    await lookAt(hand);
    await hand.tap('[data-act="bring-in"]');
    await stored(hand, "events", 705);
    await stored(hand, "asides", 0);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  for (const [name, deaf] of [["the window having heard of it", false], ["only the device knowing of it", true]]) {
    it(`stays there where the log has moved on since it was looked at, ${name}`, async () => {
      const one = await heldAside();
      const two = await second(one, deaf);
      await lookAt(one);
      await one.page.locator('[data-act="bring-in"]').waitFor();
      // The button as it was drawn: a tap that was on its way.
      const tap = await one.page.locator('[data-act="bring-in"]').elementHandle();
      await weigh(two, 90);
      await stored(two, "events", 704);
      await one.page.bringToFront();
      if (!deaf) await says(one.page.locator("body"), /Another window wrote to Hal/);
      await tap.evaluate((button) => button.click());
      await says(one.page.locator("body"), /changed meanwhile/);
      await stored(one, "events", 704);
      const [held] = await stored(one, "asides", 1);
      assert.equal(times([held.value.text], "body_mass_recorded"), 1);
      assert.match(held.value.text, /body_mass_recorded\D+80.*body_mass_recorded\D+81/s, "both are still in it");
      await one.context.close();
    });
  }

  it("stays there where the session going on in it is not taken, since another is going on", async () => {
    const hand = await handOn(browser);
    const draft = [{ lift: "box squat", set: { load: { kg: 20 }, reps: 5 }, day: NEXT_DAY }];
    await bringIn(hand, fileOf({ log: logOf("Hal", (log) => weighed(log, 80)), plan: demoPlan, draft }));
    await stored(hand, "drafts", 1);
    // The session set aside is made another one than that which goes on.
    await upload(hand, fileOf(logOf("Hal")));
    await hand.tap('[data-act="replace"]');
    await yes(hand);
    const [held] = await stored(hand, "asides", 1);
    await tamper(hand, "asides", held.key, (row) => {
      const whole = JSON.parse(row.text);
      return { ...row, text: JSON.stringify({ ...whole, draft: whole.draft.map((text) => text.replace('"reps":5', '"reps":4')) }) };
    });
    await lookAt(hand);
    await says(hand.page.locator("[data-incoming]"), /The session going on here stays/);
    await hand.tap('[data-act="bring-in"]');
    await stored(hand, "events", 704);
    await stored(hand, "drafts", 1);
    await stored(hand, "asides", 1);
    await hand.close();
  });

  it("stays there where only its plan is taken", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf({ log: logOf("Hal", (log) => weighed(log, 80)), plan: demoPlan }));
    await upload(hand, fileOf({ log: logOf("Hal"), plan: { ...demoPlan, lifts: demoPlan.lifts.slice(1) } }));
    await hand.tap('[data-act="replace"]');
    await yes(hand);
    await stored(hand, "asides", 1);
    await lookAt(hand);
    await hand.tap('[data-act="take-plan"]');
    await hand.page.getByText("The plan is that of the file now.").waitFor();
    await stored(hand, "events", 703);
    const [held] = await stored(hand, "asides", 1);
    assert.equal(times([held.value.text], "body_mass_recorded"), 1);
    await hand.close();
  });
});

describe("entries that were set aside", () => {
  /** Two entries of another window's making lie set aside, the second of a region that nobody has set. */
  async function withAside(events, draft = []) {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Ida")));
    await stored(hand, "events", 703);
    const text = JSON.stringify({ events: events.map((kind, at) => JSON.stringify({ sequence: 704 + at, day: NEXT_DAY, kind })), draft: draft.map((one) => JSON.stringify(one)) });
    await hand.page.evaluate(async (row) => {
      const [{ name }] = await indexedDB.databases();
      const base = await new Promise((resolve) => (indexedDB.open(name).onsuccess = (event) => resolve(event.target.result)));
      const writing = base.transaction("asides", "readwrite");
      writing.objectStore("asides").add(row);
      await new Promise((resolve) => (writing.oncomplete = resolve));
      base.close();
    }, { lifter: "Ida", text, why: "entered while another window wrote" });
    await reload(hand);
    return hand;
  }
  const mass = { body_mass_recorded: { kg: 77 } };
  const nowhere = { pain_report: { region: "left ear", score: 2, features: [] } };

  it("come back once where two windows bring them back", async () => {
    const one = await withAside([mass], [{ lift: "box squat", set: { load: { kg: 20 }, reps: 5 }, day: NEXT_DAY }]);
    const two = await second(one);
    for (const hand of [one, two]) {
      await hand.page.bringToFront();
      await go(hand, "files");
      await hand.page.locator('[data-act="bring-back"]').waitFor();
    }
    await lookAt(one);
    await one.page.getByText("1 entry brought back").waitFor();
    await stored(one, "events", 704);
    await two.page.bringToFront();
    await two.tap('[data-act="bring-back"]');
    await says(two.page.locator("body"), /decided on what was set aside: nothing was put a second time/);
    await stored(two, "asides", 0);
    await stored(two, "events", 704);
    await stored(two, "drafts", 1);
    assert.deepEqual([...one.complaints, ...two.complaints], []);
    await reload(two);
    await counts(two.page.locator(".fault"), 0);
    await one.context.close();
  });

  it("do not come back where another window threw them away", async () => {
    const one = await withAside([mass]);
    const two = await second(one);
    for (const hand of [one, two]) {
      await hand.page.bringToFront();
      await go(hand, "files");
      await hand.page.locator('[data-act="bring-back"]').waitFor();
    }
    await one.page.bringToFront();
    await one.tap('[data-act="empty"]');
    await yes(one);
    await stored(one, "asides", 0);
    await two.page.bringToFront();
    await two.tap('[data-act="bring-back"]');
    await says(two.page.locator("body"), /decided on what was set aside/);
    await stored(two, "events", 703);
    await one.context.close();
  });

  it("that fit in part stay set aside in part, and their sets are not put on the list twice", async () => {
    const hand = await withAside([mass, nowhere], [{ lift: "box squat", set: { load: { kg: 20 }, reps: 5 }, day: NEXT_DAY }]);
    for (let time = 0; time < 2; time += 1) {
      await lookAt(hand);
      await says(hand.page.locator("body"), /1 of them do(es)? not fit the log/);
      await stored(hand, "events", 704);
      await stored(hand, "drafts", 1);
      const [held] = await stored(hand, "asides", 1);
      assert.equal(times([held.value.text], "body_mass"), 0);
      assert.equal(times([held.value.text], "left ear"), 1);
      await go(hand, "today");
    }
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("a damaged log in two windows", () => {
  const changed = (row) => ({ ...row, text: row.text.replace(/"reps":\d/, '"reps":6') });
  async function hurt() {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Jo", (log) => {
      weighed(log, 80);
      further(log, NEXT_DAY, { symptom_report: { signs: ["chest_pain"] } });
      weighed(log, 81);
    })));
    await stored(one, "events", 706);
    await tamper(one, "events", ["Jo", 703], (row) => ({ ...row, text: row.text.replace("80", "60") }));
    await reload(one);
    await stored(one, "asides", 3);
    const two = await second(one);
    for (const hand of [one, two]) {
      await hand.page.bringToFront();
      await go(hand, "files");
      await hand.page.locator('[data-act="damage-leave"]').waitFor();
    }
    await one.page.bringToFront();
    return [one, two];
  }
  const back = (hand) => hand.tap('[data-act="damage-back"]');
  const leave = async (hand) => {
    await hand.tap('[data-act="damage-leave"]');
    await hand.tap("dialog [data-yes]");
  };
  for (const [name, first, then, log] of [
    ["both bring back what fits", back, back, 706],
    ["one leaves it out after the other brought it back", back, leave, 706],
    ["one brings it back after the other left it out", leave, back, 704],
    ["both leave it out", leave, leave, 704],
  ]) {
    it(`is decided on once: ${name}`, async () => {
      const [one, two] = await hurt();
      await first(one);
      await counts(one.page.locator("[data-damaged]"), 0);
      await stored(one, "events", log);
      const held = (await everything(one)).asides?.length ?? 0;
      await two.page.bringToFront();
      await then(two);
      await says(two.page.locator("body"), /decided on what was set aside: nothing was put a second time/);
      const texts = (await stored(two, "events", log)).map((row) => row.value.text);
      assert.equal(times(texts, "chest_pain"), 1, "the stop is there, once");
      await stored(two, "asides", held);
      for (const hand of [one, two]) {
        await hand.page.bringToFront();
        await reload(hand);
        await counts(hand.page.locator(".fault"), 0);
        await says(hand.page.locator(".stop-band"), /chest pain/i);
        assert.deepEqual(hand.complaints, []);
      }
      await one.context.close();
    });
  }
});

describe("pain that could not be written", () => {
  async function tell(hand, score) {
    await hand.view("q13");
    await hand.tap('[data-act="no-sign"]');
    await hand.tap('main [aria-label="Where"] [data-value="knee"]');
    await hand.tap(`main [aria-label="How much, 0 to 10"] [data-value="${score}"]`);
    await hand.page.getByRole("button", { name: "Write it into the log" }).click();
  }
  it("for want of room is tried again, and is there once, behind what another window wrote", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Kim")));
    const two = await second(one);
    await noRoom(one);
    await tell(one, 7);
    await one.page.locator(".fault").first().waitFor();
    await counts(one.page.locator(".stop-band"), 1, "it stops at once, stored or not");
    await weigh(two, 82);
    await stored(two, "events", 704);
    await one.page.bringToFront();
    // A try that fails again, after the other wrote.
    await weigh(one, 83, "could not be written to this device");
    await roomAgain(one);
    // The next try comes by itself after some seconds; so would a second one.
    await one.page.waitForTimeout(12_000);
    const texts = await textsOf(one);
    assert.equal(texts.length, 706);
    assert.equal(times(texts, '"score":7'), 1);
    await counts(one.page.locator(".fault"), 0);
    for (const hand of [one, two]) {
      await hand.page.bringToFront();
      await reload(hand);
      await says(hand.page.locator(".stop-band"), /knee/i);
    }
    await one.context.close();
  });

  it("with its session is in the log once, though the session is brought back later", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Lou")));
    const two = await second(one);
    await one.page.bringToFront();
    await go(one, "today");
    await one.allGood();
    await stored(one, "drafts", 3);
    await reload(two);
    await two.page.bringToFront();
    await go(two, "today");
    await two.tap('[data-act="finish"]');
    await two.page.locator("dialog").getByRole("button", { name: "Yes, some" }).click();
    await two.tap('dialog [aria-label="Where"] [data-value="knee"]');
    await two.tap('dialog [aria-label="How much, 0 to 10"] [data-value="7"]');
    await one.page.bringToFront();
    await one.tap('[data-act="finish"]');
    await one.tap('[data-act="no-pain"]');
    await one.page.getByText("Recorded.").waitFor();
    await two.page.bringToFront();
    await two.page.locator("dialog").getByRole("button", { name: "Save the session" }).click();
    await stored(two, "events", 705);
    await stored(two, "asides", 1);
    await lookAt(two);
    await stored(two, "events", 706);
    const texts = await textsOf(two);
    assert.match(texts.at(-1), /session_recorded/);
    assert.equal(times(texts, '"score":7'), 1, "told once");
    assert.doesNotMatch(texts.at(-1), /"pain":\[\]/, "and nobody said that there was none");
    await says(two.page.locator(".stop-band"), /knee/i);
    await one.context.close();
  });
});
