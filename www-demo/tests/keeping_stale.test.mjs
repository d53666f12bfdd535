// What stands on the screen of one window while another writes: nothing is taken back, replaced or lost unseen.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, keeps, launch, says } from "./browser.mjs";
import { bringIn, deafen, demoPlan, everything, FILE, fileOf, further, go, Hand, handOn, logOf, main, NEXT_DAY, noRoom, reload, roomAgain, second, stored, turnTo, upload, yes } from "./keep.mjs";

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

async function twoWith(content, { deaf = false, ...options } = {}) {
  const one = await handOn(browser, NEXT_DAY, options);
  await bringIn(one, content);
  return [one, await second(one, deaf)];
}

async function sign(hand, which = /chest/i) {
  await hand.page.bringToFront();
  await hand.view("q13");
  await hand.page.locator("main .sign", { hasText: which }).click();
}
async function signed(hand, which) {
  await sign(hand, which);
  await hand.page.getByText("Recorded.").waitFor();
}
async function erase(hand) {
  await hand.page.bringToFront();
  await go(hand, "files");
  await hand.page.locator('[data-act="erase"]').click();
  await yes(hand);
  await hand.page.getByText("was erased.").waitFor();
}
async function replace(hand, content) {
  await hand.page.bringToFront();
  await upload(hand, content);
  await hand.page.locator('[data-act="replace"]').click();
  await yes(hand);
  await hand.page.getByText("Replaced;").waitFor();
}
/** The texts of a lifter's log on the device. */
async function textsOf(hand, id) {
  return ((await everything(hand)).events ?? []).filter((row) => row.key[0] === id).map((row) => row.value.text);
}
const faint = (id) => logOf(id, (log) => further(log, NEXT_DAY, { symptom_report: { signs: ["faint"] } }));
const corrections = (texts) => texts.filter((text) => text.includes('"correction"')).length;

describe("what is to be taken back", () => {
  for (const boxOpen of [false, true]) {
    it(`is nothing of another lifter where its own was erased${boxOpen ? ", with the box open" : ""}`, async () => {
      const one = await handOn(browser);
      await bringIn(one, fileOf(logOf("Bea")));
      await bringIn(one, fileOf(logOf("Abe")));
      await go(one, "lifters");
      await one.page.locator('[data-lifter="Bea"]').click();
      await signed(one);
      await go(one, "lifters");
      await one.page.locator('[data-lifter="Abe"]').click();
      await signed(one);
      const two = new Hand(await one.context.newPage());
      await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
      await two.page.goto(FILE);
      await two.ready();
      await one.page.bringToFront();
      if (boxOpen) await one.page.locator('[data-act="undo-sign"]').click();
      await erase(two);
      await one.page.bringToFront();
      await one.page.getByText("Abe was erased in another window.").waitFor();
      await counts(one.page.locator("dialog[open]"), 0);
      await counts(one.page.locator('[data-act="undo-sign"]'), 0);
      await counts(one.page.locator(".stop-band"), 1, "the stop of who is in view now");
      assert.equal(corrections((await textsOf(one, "Bea")).slice(703)), 0);
      await one.context.close();
    });
  }

  it("is not the entry that has the number in a log put in its place", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await signed(one);
    await one.page.locator('[data-act="undo-sign"]').click();
    await reload(two);
    await replace(two, fileOf(faint("Ann")));
    await one.page.bringToFront();
    await yes(one);
    await says(one.page.locator("main"), /no longer/);
    await counts(one.page.locator(".stop-band"), 1);
    assert.match(await one.page.locator(".stop-band").innerText(), /faint/i);
    await counts(one.page.locator('[data-act="undo-sign"]'), 0);
    assert.equal((await textsOf(one, "Ann")).length, 704, "nothing is written");
    await one.context.close();
  });

  it("nor is another day written to it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await signed(one);
    await go(one, "log");
    await one.page.locator('[data-act="other-day"]').first().click();
    await one.page.locator("#other-day").fill("2026-08-01");
    await reload(two);
    await replace(two, fileOf(faint("Ann")));
    await one.page.bringToFront();
    await one.page.locator('[data-act="save-day"]').click();
    await says(one.page.locator("main"), /no longer/);
    assert.equal((await textsOf(one, "Ann")).length, 704);
    await one.context.close();
  });

  it("nor is a set corrected in another session, where the window has heard of it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")));
    await go(one, "log");
    await one.page.locator('[data-act="correct"]').first().click();
    await one.page.locator('[data-act="correct-set"]').first().click();
    const other = logOf("Ann", (log) => {
      const last = log.events.findLast((event) => event.kind.session_recorded);
      last.kind.session_recorded.lifts[0].cue = "another one";
    });
    await replace(two, fileOf(other));
    await one.page.bringToFront();
    await one.page.getByText("Another window wrote to Ann").waitFor();
    await one.page.locator('[data-act="save-set"]').click();
    await says(one.page.locator("main"), /no longer/);
    assert.equal((await textsOf(one, "Ann")).length, 703);
    await one.context.close();
  });

  it("can still be taken back where only its number changed", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await two.page.bringToFront();
    await go(two, "log");
    await two.page.getByText("Write down something else").click();
    await two.page.getByRole("button", { name: "Body mass", exact: true }).click();
    await two.pad("Body mass", 80);
    await two.page.locator("dialog button.main").last().click();
    await two.page.getByText("Recorded.").waitFor();
    await signed(one);
    await stored(one, "events", 705);
    await one.page.locator('[data-act="undo-sign"]').click();
    await yes(one);
    await stored(one, "events", 706);
    assert.match((await textsOf(one, "Ann")).at(-1), /"correction":\{"replaces":705\}/);
    await counts(one.page.locator(".stop-band"), 0);
    await one.context.close();
  });
});

describe("a tap just after another window wrote", () => {
  it("on a sign is in the log, and so are the sets of the other", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Two")), { deaf: true });
    await one.allGood();
    await stored(one, "drafts", 3);
    await sign(two);
    await stored(two, "events", 704);
    await counts(two.page.locator(".fault"), 0);
    await stored(two, "asides", 0);
    await reload(two);
    await counts(two.page.locator(".stop-band"), 1);
    await go(two, "today");
    await says(two.page.locator(".draft"), /3 sets/);
    await one.context.close();
  });

  it("on a set joins the list, and the stop of the other is shown", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Two")), { deaf: true });
    await signed(two, /faint/i);
    await one.page.bringToFront();
    await one.allGood();
    await counts(one.page.locator(".stop-band"), 1, "shown without being asked for");
    await stored(one, "drafts", 3);
    await reload(one);
    await counts(one.page.locator(".stop-band"), 1);
    await one.context.close();
  });

  it("at the same time is never lost", async () => {
    for (const first of [0, 1]) {
      const [one, two] = await twoWith(fileOf(logOf("Two")));
      await one.tap('[data-act="all-good"]');
      await one.page.locator('dialog [data-value="yes"]').first().click();
      await one.page.locator('dialog [data-value="3"]').first().click();
      await two.view("q13");
      // A stop that came first has closed the box: then nothing was tapped there.
      let tapped = false;
      const taps = [
        async () => {
          tapped = await one.page.evaluate(() => {
            const save = document.querySelector('[data-act="save-good"]');
            save?.click();
            return save !== null;
          });
        },
        () => two.page.evaluate(() => [...document.querySelectorAll("main .sign")].find((node) => /chest/i.test(node.textContent)).click()),
      ];
      await Promise.all(first === 0 ? taps.map((tap) => tap()) : taps.toReversed().map((tap) => tap()));
      assert.ok(tapped || first === 1, "the box stands open where the set comes first");
      await stored(one, "events", 704);
      await stored(one, "drafts", tapped ? 3 : 0);
      for (const hand of [one, two]) await counts(hand.page.locator(".stop-band"), 1);
      for (const hand of [one, two]) await counts(hand.page.locator(".fault"), 0);
      await stored(one, "asides", 0);
      await one.context.close();
    }
  });

  it("is set aside and said where the library refuses it on the log as it is", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Two")), { deaf: true });
    await go(two, "log");
    await two.page.bringToFront();
    await two.page.getByText("Write down something else").click();
    await two.page.getByRole("button", { name: /clearance/i }).first().click();
    await two.page.locator('dialog [data-value="cleared"]').click();
    await two.page.locator("#who").fill("an invented clinic");
    await signed(one);
    await two.page.bringToFront();
    await two.page.locator('[data-act="write-down"]').click();
    await says(two.page.locator("main"), /set aside/);
    await counts(two.page.locator(".stop-band"), 1);
    await stored(two, "events", 704);
    const { asides } = await everything(two);
    assert.match(JSON.stringify(asides), /clearance_recorded/, "what opens is not put after a stop that nobody saw");
    await one.context.close();
  });

  it("ends one session once, and keeps the pain that was told in the other window", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Two")), { deaf: true });
    await one.allGood();
    await stored(one, "drafts", 3);
    await reload(two);
    await two.page.bringToFront();
    await two.tap('[data-act="finish"]');
    await two.page.locator("dialog").getByRole("button", { name: "Yes, some" }).click();
    await two.page.locator('dialog [aria-label="Where"] .choice').first().click();
    await two.page.locator('dialog [aria-label="How much, 0 to 10"] [data-value="7"]').click();
    await one.page.bringToFront();
    await one.tap('[data-act="finish"]');
    await one.tap('[data-act="no-pain"]');
    await one.page.getByText("Recorded.").waitFor();
    await two.page.bringToFront();
    await two.page.locator("dialog").getByRole("button", { name: "Save the session" }).click();
    await stored(two, "events", 705);
    const texts = await textsOf(two, "Two");
    assert.match(texts.at(-2), /session_recorded/);
    assert.match(texts.at(-1), /pain_report.*"score":7/);
    assert.match(JSON.stringify((await everything(two)).asides), /session_recorded/);
    await says(two.page.locator("main"), /set aside/);
    await counts(two.page.locator(".stop-band"), 1);
    await one.context.close();
  });
});

describe("a window that is being opened", () => {
  it("shows the stop that another wrote after what lies on the device was read", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Ute")));
    const two = new Hand(await one.context.newPage());
    await two.page.addInitScript(deafen);
    await two.page.addInitScript(() => {
      const make = WebAssembly.instantiateStreaming;
      const waits = new Promise((resolve) => (globalThis.goOn = resolve));
      WebAssembly.instantiateStreaming = (...given) => waits.then(() => make.apply(WebAssembly, given));
    });
    await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
    await two.page.goto(FILE);
    // Long enough to read it.
    await two.page.waitForTimeout(1_500);
    await signed(one);
    await stored(one, "events", 704);
    await two.page.bringToFront();
    await two.page.evaluate(() => globalThis.goOn());
    await two.ready();
    await says(two.page.locator(".stop-band"), /chest pain/i);
    await one.context.close();
  });
});

describe("the preview of a file", () => {
  const more = () => fileOf(logOf("Ann", (log) => { log.events.at(-1).note = "in the file"; }));

  it("does not replace a log that changed since it was made, the window having heard of it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")));
    await upload(one, more());
    await one.page.locator('[data-act="replace"]').click();
    await signed(two);
    await one.page.bringToFront();
    await counts(one.page.locator(".stop-band"), 1);
    if ((await one.page.locator("dialog[open]").count()) > 0) await yes(one);
    await counts(one.page.locator(".stop-band"), 1);
    assert.equal((await textsOf(one, "Ann")).length, 704);
    await one.context.close();
  });

  it("nor where only the device knows of it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await upload(one, more());
    await signed(two);
    await one.page.bringToFront();
    await one.page.locator('[data-act="replace"]').click();
    await yes(one);
    await says(one.page.locator("main"), /changed meanwhile/);
    await counts(one.page.locator(".stop-band"), 1);
    assert.equal((await textsOf(one, "Ann")).length, 704);
    await one.context.close();
  });
});

describe("what a file adds", () => {
  it("is added once where two windows open the same file", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    const longer = fileOf(logOf("Ann", (log) => {
      further(log, NEXT_DAY, { body_mass_recorded: { kg: 80 } });
      further(log, NEXT_DAY, { body_mass_recorded: { kg: 81 } });
    }));
    for (const hand of [one, two]) {
      await hand.page.bringToFront();
      await upload(hand, longer);
    }
    await one.page.bringToFront();
    await one.page.locator('[data-act="bring-in"]').click();
    await one.page.getByText("Added.").waitFor();
    await stored(one, "events", 705);
    await two.page.bringToFront();
    await two.page.locator('[data-act="bring-in"]').click();
    await says(two.page.locator("main"), /changed meanwhile/);
    assert.equal((await textsOf(two, "Ann")).length, 705);
    await one.context.close();
  });
});

describe("a set that is undone", () => {
  it("is none that another window put on the list", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await one.allGood();
    await stored(one, "drafts", 3);
    await reload(two);
    await one.allGood();
    await stored(one, "drafts", 5);
    await two.page.bringToFront();
    await two.page.locator('[data-act="undo-set"]').click();
    await says(two.page.locator("main"), /No set was taken off/);
    await says(two.page.locator(".draft"), /5 sets/);
    assert.equal((await everything(two)).drafts.length, 5);
    await one.context.close();
  });
});

describe("what is open while another window writes", () => {
  it("closes where that records a stop, which is shown", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Bob")));
    await one.tap('[data-act="set"]');
    await counts(one.page.locator("dialog[open]"), 1);
    await signed(two);
    await one.page.bringToFront();
    await counts(one.page.locator("dialog[open]"), 0);
    await counts(one.page.locator(".stop-band"), 1);
    await one.context.close();
  });

  it("shows nothing of somebody who was erased there", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Zed")));
    await signed(one);
    await erase(two);
    await one.page.bringToFront();
    await one.page.getByText("Zed was erased in another window.").waitFor();
    assert.doesNotMatch((await main(one)).replace("Zed was erased in another window.", ""), /Zed|chest pain\W* ?or pressure\. Rack|written into the log/i);
    await one.context.close();
  });
});

describe("what is not kept", () => {
  it("is asked about before the page is left", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Fay")));
    const asks = () => hand.page.evaluate(() => !dispatchEvent(new Event("beforeunload", { cancelable: true })));
    assert.equal(await asks(), false);
    await noRoom(hand);
    await go(hand, "today");
    await hand.allGood();
    await hand.page.waitForSelector(".fault");
    assert.equal(await asks(), true);
    await says(hand.page.locator("main"), /Save a file before you leave/);
    await roomAgain(hand);
    await hand.page.evaluate(() => dispatchEvent(new Event("focus")));
    assert.equal(await keeps(asks, (found) => !found), false);
    await hand.context.close();
  });
});

async function planOf(hand) {
  await hand.page.bringToFront();
  await go(hand, "lifters");
  await hand.tap('main [data-act="plan"]');
}

/** Takes the first point of technique away from the first planned lift, without writing it down; gives its name. */
async function pointLess(hand) {
  await planOf(hand);
  await hand.page.locator("main details.more").first().evaluate((more) => { more.open = true; });
  await hand.tap('[data-act="edit-lift"]');
  const remove = hand.page.locator("section", { has: hand.page.getByRole("heading", { name: "Points of technique" }) }).getByRole("button", { name: /^Remove/ }).first();
  const name = (await remove.getAttribute("aria-label")).replace("Remove ", "");
  await remove.click();
  await hand.page.locator('[data-act="save-lift"]').waitFor();
  return name;
}

/** What a lifter's log says last of the first planned lift. */
async function setOf(hand, id, lift = demoPlan.lifts[0].lift) {
  const texts = await textsOf(hand, id);
  const last = texts.map((text) => JSON.parse(text).kind.parameters_changed).findLast((one) => one);
  return last?.lifts.find((one) => one.id === lift);
}

describe("a full device", () => {
  it("that refuses sets beside what another window wrote is said, and nothing is thrown", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Full")), { deaf: true });
    await one.allGood();
    await stored(one, "drafts", 3);
    await sign(two);
    await stored(two, "events", 704);
    await one.page.bringToFront();
    await noRoom(one);
    await one.tap('[data-act="undo-set"]');
    await one.page.locator(".fault").first().waitFor();
    await roomAgain(one);
    assert.deepEqual(one.complaints, []);
    await stored(two, "drafts", 3);
    await one.context.close();
  });
});

describe("what is set for a lift", () => {
  it("is not written over what another window set, and says so where it stands half entered", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")));
    const gone = await pointLess(one);
    await pointLess(two);
    // The other takes a second point away.
    await two.page.getByRole("button", { name: /^Remove/ }).first().click();
    await two.page.locator('[data-act="save-lift"]').click();
    await stored(two, "events", 704);
    await turnTo(one);
    await says(one.page.locator(".draft"), /Another window changed this lift/);
    await counts(one.page.locator('[data-act="save-lift"]'), 0);
    await one.tap('[data-act="lift-now"]');
    await counts(one.page.locator(".draft"), 0);
    await counts(one.page.getByRole("button", { name: `Remove ${gone}`, exact: true }), 0);
    await stored(one, "events", 704);
    await one.context.close();
  });

  it("is set aside and said where only the writing finds the other", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")), { deaf: true });
    const gone = await pointLess(one);
    await pointLess(two);
    // The other takes a second point away.
    await two.page.getByRole("button", { name: /^Remove/ }).first().click();
    await two.page.locator('[data-act="save-lift"]').click();
    await stored(two, "events", 704);
    const left = (await setOf(two, "Set")).criteria.map((point) => point.id);
    assert.ok(!left.includes(gone));
    await one.page.bringToFront();
    await one.page.locator('[data-act="save-lift"]').click();
    await stored(one, "asides", 1);
    await stored(one, "events", 704);
    await one.page.getByText(/Another window wrote to .*Set.*do(es)? not fit it/).first().waitFor();
    assert.deepEqual((await setOf(one, "Set")).criteria.map((point) => point.id), left);
    await one.context.close();
  });

  it("stays as another window set it where a box was opened before", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")));
    await one.page.bringToFront();
    await go(one, "gym");
    const use = one.page.getByRole("button", { name: /^Use this gym/ });
    await use.waitFor();
    // The old view stands: its button was made before the other window wrote.
    const old = await use.elementHandle();
    await pointLess(two);
    await two.page.locator('[data-act="save-lift"]').click();
    await stored(two, "events", 704);
    await turnTo(one);
    await one.page.getByText(/Another window/).first().waitFor().catch(() => undefined);
    await old.evaluate((button) => button.click());
    await stored(one, "events", 704);
    await says(one.page.locator("main"), /Not recorded\. The lifts, bars or discs were changed meanwhile/);
    await one.context.close();
  });

  it("is not written by the button of a view that was drawn before another window wrote", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")));
    await pointLess(one);
    const old = await one.page.locator('[data-act="save-lift"]').elementHandle();
    await pointLess(two);
    // The other takes a second point away.
    await two.page.getByRole("button", { name: /^Remove/ }).first().click();
    await two.page.locator('[data-act="save-lift"]').click();
    await stored(two, "events", 704);
    await turnTo(one);
    await says(one.page.locator(".draft"), /Another window changed this lift/);
    await old.evaluate((button) => button.click());
    await says(one.page.locator("main"), /Not recorded\. The lifts, bars or discs were changed meanwhile/);
    await stored(one, "events", 704);
    await one.context.close();
  });

  it("is not written by a pad that was opened before another window wrote: a pair that was parted stays parted", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")));
    await planOf(one);
    await one.page.getByRole("button", { name: /: at most 100 % of / }).click();
    await planOf(two);
    await two.page.getByRole("button", { name: /^Part them/ }).click();
    await stored(two, "events", 704);
    await turnTo(one);
    await counts(one.page.getByRole("button", { name: /^Part them/ }), 0);
    for (const key of ["9", "0", "ok"]) await one.page.locator(`dialog [data-key="${key}"]`).click();
    await says(one.page.locator("main"), /Not recorded\. The lifts, bars or discs were changed meanwhile/);
    await stored(one, "events", 704);
    assert.doesNotMatch((await textsOf(one, "Set")).at(-1), /"forgiving"/);
    await one.context.close();
  });

  it("is set aside and said where the other took back what had been set", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Set")), { deaf: true });
    const slip = await pointLess(two);
    await two.page.locator('[data-act="save-lift"]').click();
    await stored(two, "events", 704);
    await reload(one);
    // Made from what was set by the slip.
    await pointLess(one);
    await two.page.bringToFront();
    await go(two, "log");
    await two.page.locator('[data-act="undo"]').click();
    await yes(two);
    await stored(two, "events", 705);
    await one.page.bringToFront();
    await one.page.locator('[data-act="save-lift"]').click();
    await stored(one, "asides", 1);
    await stored(one, "events", 705);
    await one.page.getByText(/Another window wrote to .*Set.*do(es)? not fit it/).first().waitFor();
    await planOf(one);
    await one.page.locator("main details.more").first().evaluate((more) => { more.open = true; });
    await one.tap('[data-act="edit-lift"]');
    await counts(one.page.getByRole("button", { name: `Remove ${slip}`, exact: true }), 1, "as it was before the slip");
    await one.context.close();
  });

  it("is written twice running where the other set nothing, the second while the first is being put behind it", async () => {
    const late = 1_000;
    const [one, two] = await twoWith(fileOf(logOf("Set")), { deaf: true, late });
    await planOf(one);
    await one.page.getByText("Begin another lift").click();
    await two.page.bringToFront();
    await go(two, "log");
    await two.page.getByText("Write down something else").click();
    await two.page.getByRole("button", { name: "Body mass", exact: true }).click();
    await two.pad("Body mass", 80);
    await two.page.locator("dialog button.main").last().click();
    await two.page.getByText("Recorded.").waitFor();
    await stored(two, "events", 704);
    await one.page.bringToFront();
    await one.page.evaluate(async (late) => {
      const begin = (lift) => document.querySelector(`[data-new-lift="${lift}"]`).click();
      begin("straight-bar pull");
      // What lies on the device has been read by then, and is being written.
      await new Promise((resolve) => setTimeout(resolve, 1.5 * late));
      begin("bench press");
    }, late);
    await stored(one, "events", 706);
    await stored(one, "asides", 0);
    const { lifts } = JSON.parse((await textsOf(one, "Set")).at(-1)).kind.parameters_changed;
    assert.deepEqual(lifts.slice(-2).map((lift) => lift.id), ["straight-bar pull", "bench press"]);
    await one.context.close();
  });
});

/** The plan of a lifter as it lies on the device: its lifts, each with its days and what is to be left. */
async function planStored(hand, id, right) {
  const look = async () => JSON.parse((await everything(hand)).lifters.find((one) => one.value.id === id).value.plan).lifts;
  const found = await keeps(look, right);
  assert.ok(right(found), JSON.stringify(found));
}
const leaveOut = async (hand, lift) => {
  await planOf(hand);
  await hand.page.locator(`[data-planned="${lift}"] details.more`).evaluate((more) => { more.open = true; });
  await hand.page.getByRole("button", { name: `${lift}: leave out of the plan` }).evaluate((button) => button.click());
};
const names = (lifts) => lifts.map((one) => one.lift);

describe("a plan", () => {
  it("is changed as it is stored, and not as it was when a box was opened over it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Plan")));
    await planOf(one);
    await one.page.locator('[data-sentence="box squat"] .word', { hasText: /^leave / }).click();
    await leaveOut(two, "strict press");
    await planStored(two, "Plan", (lifts) => !names(lifts).includes("strict press"));
    await turnTo(one);
    await counts(one.page.locator('[data-planned="strict press"]'), 0);
    await one.page.locator('dialog [data-value="5"]').click();
    await planStored(one, "Plan", (lifts) => lifts.some((lift) => lift.lift === "box squat" && lift.reserve === 5));
    await planStored(one, "Plan", (lifts) => !names(lifts).includes("strict press"));
    await one.context.close();
  });

  it("says so where the lift that was tapped is no longer in it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Plan")));
    await planOf(one);
    await one.page.locator('[data-sentence="box squat"] .word', { hasText: /^leave / }).click();
    await leaveOut(two, "box squat");
    await planStored(two, "Plan", (lifts) => !names(lifts).includes("box squat"));
    await turnTo(one);
    await counts(one.page.locator('[data-planned="box squat"]'), 0);
    await one.page.locator('dialog [data-value="5"]').click();
    await says(one.page.locator("main"), /Not changed\. The plan is another by now/);
    await planStored(one, "Plan", (lifts) => !names(lifts).includes("box squat"));
    await one.context.close();
  });

  it("that another window wrote unseen keeps that change beside the one made here", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Plan")), { deaf: true });
    await planOf(one);
    await leaveOut(two, "strict press");
    await planStored(two, "Plan", (lifts) => !names(lifts).includes("strict press"));
    await one.page.bringToFront();
    await one.page.locator('[data-week="box squat"] [data-day="2"]').click();
    await planStored(one, "Plan", (lifts) => lifts.some((lift) => lift.lift === "box squat" && lift.days?.includes(2)));
    await planStored(one, "Plan", (lifts) => !names(lifts).includes("strict press"));
    await stored(one, "asides", 0);
    await one.context.close();
  });

  it("that another window wrote unseen stands where the change does not fit it; what was made here is set aside and said", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Plan")), { deaf: true });
    await planOf(one);
    await leaveOut(two, "box squat");
    await planStored(two, "Plan", (lifts) => !names(lifts).includes("box squat"));
    await one.page.bringToFront();
    await one.page.locator('[data-week="box squat"] [data-day="2"]').click();
    await stored(one, "asides", 1);
    await planStored(one, "Plan", (lifts) => !names(lifts).includes("box squat"));
    await says(one.page.locator("body"), /The plan was not changed here/);
    await one.context.close();
  });
});

describe("the gym in two windows", () => {
  const TEN = '[aria-label="10 kg, \u2300 450 mm: one less"]';
  const HALF = '[aria-label="0.5 kg, \u2300 130 mm: one less"]';
  /** How many discs of a kind a window shows. */
  const shows = (hand, which) => hand.page.locator("li", { has: hand.page.locator(which) }).locator("output");
  const countsOf = async (hand) => {
    const row = (await everything(hand)).settings.find((one) => one.key === "kit");
    const { discs } = JSON.parse(row.value).stock;
    return [discs.find((one) => one.nominal.kg === 10).count, discs.find((one) => one.nominal.kg === 0.5).count];
  };

  it("is shown in both, and a change is made of what is shown", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")));
    await go(one, "gym");
    await go(two, "gym");
    await two.tap(TEN);
    await two.tap(TEN);
    await turnTo(one);
    await says(shows(one, TEN), /^0$/, "the other window follows");
    await says(one.page.locator("main"), /Another window changed the list of bars and discs/);
    await one.tap(HALF);
    await says(shows(one, HALF), /^1$/);
    assert.deepEqual(await keeps(() => countsOf(one), ([ten, half]) => ten === 0 && half === 1), [0, 1]);
    await one.context.close();
  });

  it("is not written over by a window that did not hear of it", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")), { deaf: true });
    await go(one, "gym");
    await go(two, "gym");
    await two.tap(TEN);
    await two.tap(TEN);
    await keeps(() => countsOf(two), ([ten]) => ten === 0);
    await one.page.bringToFront();
    await one.tap(HALF);
    await says(one.page.locator("main"), /Not changed: another window changed the list/);
    await says(shows(one, TEN), /^0$/);
    await says(shows(one, HALF), /^2$/, "as it is stored");
    assert.deepEqual(await countsOf(one), [0, 2]);
    await one.tap(HALF);
    assert.deepEqual(await keeps(() => countsOf(one), ([, half]) => half === 1), [0, 1], "the change is made again");
    await one.context.close();
  });

  it("has its units in every window", async () => {
    const [one, two] = await twoWith(fileOf(logOf("Ann")));
    await two.page.locator("button.unit").click();
    await turnTo(one);
    await says(one.page.locator("button.unit"), /lb/);
    await says(one.page.locator("main [data-answer]").first(), / lb/);
    await one.context.close();
  });
});

describe("a window left open over midnight", () => {
  const THEN = "2026-09-28";
  const NOW = /The day has changed: it is 28 Sep 2026 now/;
  async function left(act = async () => undefined) {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Ann")));
    await hand.page.locator('[data-act="all-good"]').waitFor();
    await act(hand);
    await hand.page.clock.setFixedTime(new Date(`${THEN}T00:30:00`));
    return hand;
  }

  for (const name of ["focus", "pageshow", "visibilitychange"]) {
    it(`shows the day that it is, and says so: ${name}`, async () => {
      const hand = await left();
      const before = await hand.big();
      await hand.page.evaluate((name) => (name === "visibilitychange" ? document : globalThis).dispatchEvent(new Event(name)), name);
      await says(hand.page.locator("main"), NOW);
      await says(hand.page.locator(".head"), /28 Sep/);
      assert.notEqual(await hand.big(), before, "after a month it is another load");
      await hand.close();
    });
  }

  it("opens no box with the load of the day before", async () => {
    for (const act of ["set", "all-good"]) {
      const hand = await left();
      await hand.tap(`[data-act="${act}"]`);
      await says(hand.page.locator("main"), NOW);
      await counts(hand.page.locator("dialog"), 0, act);
      await hand.tap(`[data-act="${act}"]`);
      await counts(hand.page.locator("dialog"), 1, act);
      await hand.close();
    }
  });

  it("asks before a set is saved that was opened the day before", async () => {
    const hand = await left(async (one) => {
      await one.tap('[data-act="all-good"]');
      await one.tap('dialog [aria-label="Was it watched?"] [data-value="yes"]');
      await one.tap('dialog [aria-label^="Left in reserve"] [data-value="3"]');
    });
    await hand.tap('[data-act="save-good"]');
    await says(hand.page.locator("dialog .asking"), /The day has changed since this was opened/);
    await stored(hand, "drafts", 0);
    await hand.tap('[data-act="save-good"]');
    await stored(hand, "drafts", 3);
    await hand.close();
  });
});
