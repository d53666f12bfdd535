// A session is ended under other settings than those it was begun under: pain counts whatever becomes of the sets, what
// fits is written, and what does not is set aside and said.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, FILE, fileOf, further, go, Hand, handOn, logOf, demoPlan, NEXT_DAY, reload, saved, stored, upload } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const LATER = "2026-08-29";
const textsOf = async (hand) => (await everything(hand)).events.map((row) => row.value.text);

/** The settings of a log, changed. */
function settingsOf(log, change) {
  const parameters = structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
  change(parameters);
  return { parameters_changed: parameters };
}
const set = (lift, points, day = NEXT_DAY) => ({ lift, set: { load: { kg: 20 }, reps: 5, marks: { reps: 5, acceptable: 5, marks: points.map((criterion) => ({ criterion, mark: "met" })), rater: "coach" } }, day });
/** A log without a lift that it had. */
const lacking = (id, lift) => logOf(id, (log) => {
  for (const event of log.events) if (event.kind.parameters_changed) event.kind.parameters_changed.lifts = event.kind.parameters_changed.lifts.filter((one) => one.id !== lift);
  for (const event of log.events) if (event.kind.parameters_changed) event.kind.parameters_changed.pairs = [];
  log.events = log.events.filter((event) => event.kind.parameters_changed || event.kind.clearance_recorded);
});
const PLAN = { ...demoPlan, lifts: [] };

/** Ends the session, with a pain or with none. */
async function finish(hand, score) {
  await go(hand, "today");
  await hand.tap('[data-act="finish"]');
  const box = hand.page.locator("dialog");
  if (await box.locator('[aria-label="On which day was it lifted?"]').count()) await box.locator(`[data-value="${NEXT_DAY}"]`).click();
  if (score === undefined) return hand.tap('[data-act="no-pain"]');
  await box.getByRole("button", { name: "Yes, some" }).click();
  await box.locator('[aria-label="Where"] [data-value="knee"]').click();
  await box.locator(`[aria-label="How much, 0 to 10"] [data-value="${score}"]`).click();
  await box.getByRole("button", { name: "Save the session" }).click();
}

describe("a point of technique taken out after the set", () => {
  it("leaves pain and session in the log, and its marks in a note", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf(logOf("Gus")));
    await hand.page.locator('[data-place="today"]').click();
    const lift = await hand.page.locator("main article[data-lift]").first().getAttribute("data-lift");
    await hand.allGood();
    await stored(hand, "drafts", 3);
    const before = (await textsOf(hand)).length;
    await hand.view("plan");
    await hand.page.locator("summary", { hasText: `More about ${lift}` }).click();
    await hand.page.getByRole("button", { name: `${lift}: gate, rungs, regions` }).click();
    const point = "even left and right";
    await hand.page.getByRole("button", { name: `Remove ${point}`, exact: true }).click();
    await hand.page.getByRole("button", { name: "Write it down" }).click();
    await stored(hand, "events", before + 1);
    await finish(hand, 8);
    await counts(hand.page.locator(".stop-band"), 1, "the pain stops at once");
    await says(hand.page.locator("main"), new RegExp(`left out.*${point}`));
    const texts = (await textsOf(hand)).slice(before + 1);
    assert.equal(texts.length, 1, "one entry: the session, with its pain");
    assert.match(texts[0], /session_recorded.*"score":8/);
    assert.match(texts[0], new RegExp(`"note":"Marks left out: .*${point} \\(met, met, met\\)`));
    await stored(hand, "drafts", 0);
    await reload(hand);
    await counts(hand.page.locator(".stop-band"), 1);
    await hand.close();
  });
});

describe("a lift that is not in the settings", () => {
  const draft = [set("bench press", ["elbows"]), set("strict press", ["ribs down", "bar path over mid-foot"])];

  it("does not keep a full copy off a device", async () => {
    const hand = await handOn(browser);
    await upload(hand, fileOf({ log: logOf("Hal"), plan: demoPlan, draft }));
    await says(hand.page.locator("[data-bad-draft]"), /1 set\. .*Set aside when the lifter comes in/s);
    await hand.page.locator('[data-act="bring-in"]').click();
    await counts(hand.page.locator(".draft"), 1);
    await stored(hand, "drafts", 1);
    const [aside] = await stored(hand, "asides", 1);
    assert.match(aside.value.text, /bench press/);
    await hand.close();
  });

  it("is set aside at the end, and the others are written", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf({ log: logOf("Ira"), plan: demoPlan, draft: [set("strict press", ["ribs down"]), set("box squat", ["brace held"])] }));
    await upload(hand, fileOf({ log: lacking("Ira", "box squat"), plan: PLAN }));
    await hand.page.locator('[data-act="replace"]').click();
    await hand.page.locator("dialog [data-yes]").click();
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    const copy = await (async () => { await go(hand, "files"); return saved(hand, '[data-act="save-full"]'); })();
    await finish(hand, 8);
    await counts(hand.page.locator(".stop-band"), 1);
    await says(hand.page.locator("main"), /box squat: 1 set not recorded.*Set aside, see Files/s);
    await stored(hand, "drafts", 0);
    const texts = await textsOf(hand);
    assert.match(texts.at(-1), /session_recorded.*strict press.*"score":8/);
    assert.match(JSON.stringify((await everything(hand)).asides), /box squat/);
    await hand.close();
    const fresh = await handOn(browser);
    await bringIn(fresh, copy);
    await stored(fresh, "drafts", 1);
    await fresh.close();
  });

  it("leaves the pain, where nothing else fits", async () => {
    const hand = await handOn(browser);
    await bringIn(hand, fileOf({ log: logOf("Jon"), plan: demoPlan, draft: [set("box squat", ["brace held"])] }));
    await upload(hand, fileOf({ log: lacking("Jon", "box squat"), plan: PLAN }));
    await hand.page.locator('[data-act="replace"]').click();
    await hand.page.locator("dialog [data-yes]").click();
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await finish(hand, 8);
    await counts(hand.page.locator(".stop-band"), 1);
    await says(hand.page.locator("main"), /The pain is recorded\. box squat: 1 set not recorded/);
    await stored(hand, "drafts", 0);
    assert.match((await textsOf(hand)).at(-1), /pain_report.*"score":8/);
    assert.match(JSON.stringify((await everything(hand)).asides), /box squat/);
    await hand.close();
  });
});

describe("a lift that was added after the session was begun", () => {
  it("is set aside where the session is of the day before, and can be ended on its own day", async () => {
    const hand = await handOn(browser, LATER);
    const log = logOf("Kai", (one) => further(one, LATER, settingsOf(one, ({ lifts }) => lifts.push({ ...structuredClone(lifts.find((lift) => lift.id === "strict press")), id: "seated press" }))));
    await bringIn(hand, fileOf({ log, plan: demoPlan, draft: [set("strict press", ["ribs down"]), { ...set("seated press", ["ribs down"], LATER) }] }));
    await stored(hand, "drafts", 2);
    await finish(hand, 8);
    await counts(hand.page.locator(".stop-band"), 1);
    await says(hand.page.locator("main"), /seated press: 1 set not recorded/);
    assert.match((await textsOf(hand)).at(-1), /session_recorded.*strict press.*"score":8/);
    await go(hand, "files");
    await hand.page.locator('[data-act="bring-back"]').click();
    await stored(hand, "drafts", 1);
    await hand.close();
  });
});

describe("pain of a session none of which fits", () => {
  it("is of the day of the session, not of the day on which it is ended", async () => {
    const hand = await handOn(browser, LATER);
    await bringIn(hand, fileOf({ log: logOf("Lea"), plan: demoPlan, draft: [set("box squat", ["brace held"])] }));
    await upload(hand, fileOf({ log: lacking("Lea", "box squat"), plan: PLAN }));
    await hand.page.locator('[data-act="replace"]').click();
    await hand.page.locator("dialog [data-yes]").click();
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await finish(hand, 8);
    await says(hand.page.locator("main"), /The pain is recorded\. box squat: 1 set not recorded/);
    await counts(hand.page.locator(".stop-band"), 1);
    await stored(hand, "drafts", 0);
    assert.match((await textsOf(hand)).at(-1), new RegExp(`"day":"${NEXT_DAY}".*pain_report.*"score":8`));
    await hand.close();
  });

  it("is written once where one place of it is refused, and the end is tried again", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf({ log: logOf("Max"), plan: demoPlan, draft: [set("box squat", ["brace held"])] }));
    const two = new Hand(await one.context.newPage());
    await two.page.clock.setFixedTime(new Date(`${NEXT_DAY}T12:00:00`));
    await two.page.goto(FILE);
    await two.ready();
    await one.page.bringToFront();
    const tell = async (...pains) => {
      await go(one, "today");
      await one.tap('[data-act="finish"]');
      await one.page.locator("dialog").getByRole("button", { name: "Yes, some" }).click();
      for (const [at, [region, score]] of pains.entries()) {
        if (at > 0) await one.tap('dialog [data-act="another-place"]');
        await one.tap(`dialog [aria-label="Where"] [data-value="${region}"]`);
        await one.tap(`dialog [aria-label="How much, 0 to 10"] [data-value="${score}"]`);
      }
    };
    const save = () => one.page.locator("dialog").getByRole("button", { name: "Save the session" }).click();
    await tell(["knee", 4], ["hip", 3]);
    // Another window puts a log in its place that knows neither the lift nor the hip.
    const less = lacking("Max", "box squat");
    for (const { kind } of less.events) {
      const settings = kind.parameters_changed;
      if (!settings) continue;
      settings.lifts = settings.lifts.filter((lift) => !lift.regions.includes("hip"));
      settings.regions = settings.regions.filter((region) => region.id !== "hip");
    }
    await two.page.bringToFront();
    await upload(two, fileOf({ log: less, plan: { ...demoPlan, lifts: [{ lift: "front squat" }] } }));
    await two.tap('[data-act="replace"]');
    await two.tap("dialog [data-yes]");
    await stored(two, "events", less.events.length);
    await one.page.bringToFront();
    await says(one.page.locator("body"), /Another window wrote to Max/);
    await save();
    await says(one.page.locator("main"), /The session is not ended\..*hip.*The other pain that was told is in the log/);
    await stored(one, "events", less.events.length + 1);
    await stored(one, "drafts", 1);
    // What was told stays until it is left; then the hip is made known, and all is told again.
    await says(one.page.locator("dialog [data-named]"), /knee 4 of 10/);
    await one.page.keyboard.press("Escape");
    await one.tap('[data-act="leave-so"]');
    await one.view("plan");
    await one.page.locator("summary", { hasText: "More about front squat" }).click();
    await one.page.getByRole("button", { name: "front squat: gate, rungs, regions" }).click();
    await one.page.getByLabel("Another region", { exact: true }).fill("hip");
    await one.page.getByRole("button", { name: "Another region: add" }).click();
    await one.tap('[data-act="save-lift"]');
    await stored(one, "events", less.events.length + 2);
    await tell(["knee", 4], ["hip", 3]);
    await save();
    await says(one.page.locator("main"), /The pain is recorded\. box squat: 1 set not recorded/);
    await stored(one, "drafts", 0);
    const texts = await textsOf(one);
    for (const region of ["knee", "hip"]) assert.equal(texts.filter((text) => text.includes("pain_report") && text.includes(region)).length, 1, region);
    await one.context.close();
  });
});
