// A week in a gym of pounds with a lifter whose lower back is sore: led day by day, with a picture of each screen.
import assert from "node:assert/strict";
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { counts, FILE, Hand, launch, says } from "./browser.mjs";

let browser;
let hand;
let folder;
let pictures = 0;
before(async () => {
  browser = await launch();
  folder = process.env.BISMAR_PICTURES ?? (await mkdtemp(join(tmpdir(), "bismar-week-")));
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  hand = new Hand(await context.newPage());
  hand.context = context;
  hand.page.on("console", (message) => { if (["error", "warning"].includes(message.type())) hand.complaints.push(message.text()); });
  await hand.page.clock.setFixedTime(new Date("2026-03-02T17:00:00"));
  await hand.page.goto(FILE);
  await hand.ready();
});
after(async () => {
  console.log(`pictures of the week: ${folder}`);
  await browser.close();
});

const tidy = (text) => text.replaceAll("\u00a0", " ");

/** Runs in the page: numbers of a paragraph that stand on another line than their unit, and lines of text that something cuts off. */
function torn() {
  const found = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    if (!node.parentElement.closest("p, figcaption") || !node.parentElement.checkVisibility()) continue;
    for (const one of node.data.matchAll(/(?:\d+ \u00d7 )?\d\S*[ \u00a0](?:lb|kg|mm|%)/g)) {
      const range = document.createRange();
      range.setStart(node, one.index);
      range.setEnd(node, one.index + one[0].length);
      const lines = new Set([...range.getClientRects()].filter((each) => each.width > 0).map((each) => Math.round(each.top)));
      if (lines.size > 1) found.push(`${one[0]} in: ${node.parentElement.closest("p, figcaption").innerText}`);
    }
  }
  for (const one of document.querySelectorAll("main p, main button, dialog h2, dialog button")) {
    if (one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== "inline") found.push(`cut off: ${one.innerText}`);
  }
  const day = document.querySelector(".head .soft");
  if (day && day.getClientRects().length > 0 && day.offsetHeight > 1.9 * Number.parseFloat(getComputedStyle(day).lineHeight)) found.push(`the day takes two lines: ${day.innerText}`);
  return found;
}

/** A picture, and what holds for every screen of the week: nothing in kilograms, no number without its unit, nothing cut off. */
async function look(name) {
  pictures += 1;
  await hand.page.waitForTimeout(120);
  await hand.page.screenshot({ path: join(folder, `${String(pictures).padStart(2, "0")}-${name}.png`), fullPage: true });
  const text = tidy(await hand.page.locator("body").innerText());
  // The settings and one question name both units.
  assert.doesNotMatch(text.replace(/^(Kilograms|A gym in kilograms|Kilograms or pounds\?)$/gm, ""), /\bkg\b|kilogram/i, name);
  assert.doesNotMatch(text, /NaN|undefined|\[object/, name);
  assert.deepEqual(await hand.page.evaluate(torn), [], name);
  return text;
}

async function day(date) {
  await hand.page.clock.setFixedTime(new Date(`${date}T17:00:00`));
  await hand.page.reload();
  await hand.ready();
  await hand.page.locator('[data-place="today"]').click();
  await hand.page.locator('main[data-view="today"] [data-lift]').first().waitFor();
}

/** The day's questions: pain in the lower back of that much, or none. */
async function ask(pain, features = []) {
  await hand.page.locator('[data-act="day"]').click();
  await hand.page.locator("dialog [data-none]").first().click();
  await hand.page.locator(`dialog [aria-label^="Pain now"] [data-value="${pain > 0 ? "yes" : "no"}"]`).click();
  if (pain > 0) {
    await hand.page.locator('dialog [aria-label="Where"] [data-value="lower back"]').click();
    await hand.page.locator(`dialog [aria-label="How much, 0 to 10"] [data-value="${pain}"]`).click();
    if (features.length === 0) await hand.page.locator("dialog [data-none]").last().click();
    for (const one of features) await hand.page.locator("dialog button").filter({ hasText: one }).click();
  }
  await hand.page.locator('dialog [data-value="within"]').click();
  await look("questions");
  await hand.page.locator('[data-act="save-day"]').click();
  await hand.page.getByText("Recorded.").waitFor();
}

/** Opens a lift's card and gives its words. */
async function card(lift) {
  const row = hand.page.locator(`[data-row][data-lift="${lift}"]`);
  if ((await row.count()) > 0) await row.click();
  return tidy(await hand.page.locator(`article[data-lift="${lift}"]`).innerText());
}

/** Load of a lift on the screen, in pounds; nothing where none is given. */
async function load(lift) {
  await card(lift);
  const found = await hand.page.locator(`article[data-lift="${lift}"] .load`).allInnerTexts();
  return found.length === 0 ? undefined : Number.parseFloat(found[0]);
}

async function finish(pain = "no-pain") {
  await hand.page.locator('[data-act="finish"]').click();
  await look("finish");
  await hand.page.locator(`[data-act="${pain}"]`).click();
  await hand.page.getByText("Recorded.").waitFor();
}

const LIFTS = ["box squat", "straight-bar pull", "seated press", "supported row"];

describe("a week in a gym of pounds with a sore back", () => {
  it("Monday: begins with the empty bars, the pull at the height of full discs", async () => {
    await hand.tap(".unit");
    await hand.page.locator('main [data-act="begin"]').click();
    await hand.page.locator("#name").fill("Robin, invented");
    await hand.page.locator("#cleared").fill("invented clinician");
    await hand.page.getByRole("button", { name: "straight-bar pull", exact: true }).click();
    // The lightest right bar is on offer; the coach takes the full bar for the pull and the squat.
    for (const lift of ["box squat", "straight-bar pull"]) await hand.page.locator(`[aria-label="${lift}"] [data-value="bar 45 lb"]`).click();
    await look("begin");
    await hand.page.locator('[data-act="begin-now"]').click();
    await hand.page.waitForSelector("[data-lift]");
    assert.deepEqual((await hand.page.locator("[data-lift]").evaluateAll((all) => all.map((one) => one.dataset.lift))).toSorted(), LIFTS.toSorted());
    await ask(0);
    await look("monday");
    assert.equal(await load("box squat"), 45, "the empty bar of 45 lb");
    assert.equal(await load("seated press"), 15, "the empty technique bar of 15 lb");
    // By hand: 45 + 2 x 10, the lightest pair of 450 mm, which holds the bar at 225 mm.
    assert.equal(await load("straight-bar pull"), 65);
    assert.match(await card("straight-bar pull"), /bar 45 lb.*225 mm/s);
    await look("monday-pull");
  });

  it("Monday: every lift is written down, watched and with what was left", async () => {
    for (let lift = 0; lift < LIFTS.length; lift += 1) {
      await hand.page.locator('article [data-act="all-good"]').click();
      await hand.page.locator('dialog [data-value="yes"]').first().click();
      await hand.page.locator('dialog [aria-label^="Left in reserve"] [data-value="4"]').click();
      if ((await hand.page.locator('dialog [aria-label="Who is there?"]').count()) > 0) await hand.page.locator('dialog [data-value="spotter"]').click();
      if (lift === 0) await look("all-sets");
      await hand.page.locator('[data-act="save-good"]').click();
    }
    await look("monday-going-on");
    await finish();
    await look("monday-done");
  });

  it("Tuesday: the morning after is asked until it is answered; the back is sore", async () => {
    await day("2026-03-03");
    assert.match(await look("tuesday-morning"), /The morning after Mon 2 Mar/);
    await hand.page.locator('[data-act="morning-yes"]').click();
    await hand.page.locator('dialog [aria-label="Where"] [data-value="lower back"]').click();
    await hand.page.locator('dialog [aria-label="How much, 0 to 10"] [data-value="3"]').click();
    await hand.page.locator("dialog [data-none]").click();
    await look("tuesday-pain");
    await hand.page.locator('[data-act="write-down"]').click();
    await hand.page.getByText("Recorded.").waitFor();
    await counts(hand.page.locator("[data-morning]"), 0);
  });

  it("Wednesday: 4 of 10 eases off what loads the back, never adds, and leaves the press alone", async () => {
    await day("2026-03-04");
    await ask(4);
    await look("wednesday");
    for (const [lift, before] of [["box squat", 45], ["straight-bar pull", 65]]) {
      const words = await card(lift);
      assert.doesNotMatch(words, /▶ train/, `${lift} does not go on as planned`);
      assert.doesNotMatch(words, /step is on offer|Take the step/);
      const now = await load(lift);
      assert.ok(now === undefined || now <= before, `${lift}: ${now}`);
      await look(`wednesday-${lift.replace(" ", "-")}`);
    }
    // Never deeper in silence: a bar that lies lower than the lift's own 225 mm says so beside its load.
    const pull = await card("straight-bar pull");
    // By hand: discs of 200 mm hold the bar at 100 mm, 125 mm below 225 mm.
    if (await load("straight-bar pull") && !/225 mm above the floor/.test(pull)) {
      assert.match(pull, /Height\. .*Blocks of 125 mm under each end bring it back.*leave the lift out/s);
      assert.match(pull, /Pain in the lower back/);
    }
    assert.equal(await load("seated press"), 15);
  });

  it("Wednesday: a set whose critical point is not met changes the card at once", async () => {
    await card("seated press");
    await hand.page.locator('article [data-act="set"]').click();
    await hand.page.locator('[data-rep="4"]').click();
    await hand.page.locator("dialog [data-not-met]").filter({ hasText: "critical" }).first().click();
    await hand.page.locator('dialog [aria-label="Left in reserve"] [data-value="1"]').click();
    await look("set");
    await hand.page.locator('[data-act="save-set"]').click();
    await hand.page.locator("[data-slipped]").waitFor();
    await look("wednesday-slipped");
    // Nothing is lighter than the empty bar of 15 lb.
    await says(hand.page.locator("main"), /End this lift for today/);
    await says(hand.page.locator("main"), /Nothing lighter can be loaded within one step\./);
    await finish();
    await look("wednesday-done");
    // What was to be left is what the plan asks of the lift.
    await hand.view("q9");
    await says(hand.page.locator('main [aria-label="Wanted left"] [aria-pressed="true"]'), /^✓?\s*4$/);
  });

  it("Friday: pain that runs down a limb stops the back's lifts, on every view", async () => {
    await day("2026-03-06");
    const strip = hand.page.locator('[data-act="morning-no"]');
    if ((await strip.count()) > 0) {
      await strip.click();
      await hand.page.getByText("Recorded.").waitFor();
    }
    await ask(6, ["Runs down a limb"]);
    await look("friday");
    for (const lift of ["box squat", "straight-bar pull"]) {
      assert.match(await card(lift), /stop/i, lift);
      assert.equal(await load(lift), undefined, `${lift} gives no load`);
    }
    await counts(hand.page.locator(".stop-band"), 1);
    await hand.view("plan");
    for (const lift of ["box squat", "straight-bar pull", "supported row"]) {
      const words = tidy(await hand.page.locator(`[data-sentence="${lift}"]`).innerText());
      assert.match(words, /stopped: .*no load until this is cleared/s, lift);
      assert.doesNotMatch(words, /lb, \d|\d × \d/, `${lift} stands with no load in the plan`);
    }
    for (const view of ["questions", "lifters", "log", "files", "gym", "plan", "q9", "q12", "q24", "q28"]) {
      await hand.view(view);
      await look(`friday-${view}`);
      // A stop elsewhere stands above, and is not said again as a reason of this lift.
      if (view === "q9") assert.match(tidy(await hand.why()), /^The last set left 1, and 4 were asked for: .* Nothing lighter can be loaded within one step\./);
      if (view === "q12") for (const said of await hand.page.locator("main article .big").allInnerTexts()) assert.match(said, /^[A-Z\d]/);
      assert.equal(await hand.page.locator("main > :not(:empty)").first().evaluate((node) => node.className), "stop-band", view);
    }
  });

  it("Sunday: the stop stands although nothing hurts, until a clearance and the coach's sign-off", async () => {
    await day("2026-03-08");
    const strip = hand.page.locator('[data-act="morning-no"]');
    if ((await strip.count()) > 0) {
      await strip.click();
      await hand.page.getByText("Recorded.").waitFor();
    }
    await ask(0);
    await look("sunday");
    assert.equal(await load("straight-bar pull"), undefined);
    assert.match(await card("straight-bar pull"), /stop/i);
    assert.deepEqual(hand.complaints, []);
    await hand.view("q24");
    await look("card");
  });
});
