// A gym in pounds: nothing on any view is in kilograms, every number of mass has its unit, every disc its own face.
// The same in a gym in kilograms, and in one whose discs carry the other unit than the page shows.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, Hand, launch, says } from "./browser.mjs";
import { QUESTIONS } from "./expected.mjs";

const VIEWS = ["today", "questions", "lifters", "log", "files", "gym", "notes", "plan", "begin"];
/** Question 22 turns one unit into the other: it has to name both. */
const BOTH = 22;
/** Answers that also give the load in the other unit, in brackets or behind an equals sign, so that either list can be read. */
const OTHER = new Set([1, 2]);
const KILOGRAMS = /\b(kg|kilograms?)\b/i;
const POUNDS = /\d\s*lb\b/;

/** All that is shown or said on the view, folded parts opened. */
const shown = async (page) => {
  // What comes a moment later is looked at too.
  await page.waitForFunction(() => !document.querySelector("main [data-soon]"));
  return page.evaluate(shownNow);
};
const shownNow = () => {
  for (const one of document.querySelectorAll("main details")) one.open = true;
  const labels = [...document.querySelectorAll("main [aria-label]")].map((one) => one.getAttribute("aria-label"));
  return `${document.querySelector("main").innerText}\n${labels.join("\n")}`.replaceAll("\u00a0", " ");
};

const NAMES = { gym: /^(Kilograms|A gym in kilograms)$/, questions: /^Kilograms or pounds\?$/ };

/** Lines that hold that. */
const lines = (text, wanted) => text.split("\n").filter((line) => wanted.test(line));

async function inPounds(browser) {
  const hand = await Hand.open(browser);
  await hand.tap(".unit");
  await hand.page.locator('main [data-act="begin"]').click();
  await hand.page.locator("#name").fill("Ash, invented");
  await hand.page.locator('[data-act="begin-now"]').click();
  await hand.page.waitForSelector("[data-lift]");
  return hand;
}

describe("a gym in pounds", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  it("shows no kilogram on any view, and pounds where there are loads", async () => {
    const hand = await inPounds(browser);
    const wrong = [];
    for (const view of VIEWS) {
      await hand.view(view);
      const text = await shown(hand.page);
      // The settings offer both units by name, and one question is about them.
      const kilograms = lines(text, KILOGRAMS).filter((line) => !(NAMES[view]?.test(line.trim())));
      if (kilograms.length > 0) wrong.push(`${view}: ${kilograms.join(" | ")}`);
      if (["today", "gym", "begin"].includes(view) && !POUNDS.test(text)) wrong.push(`${view}: no load in pounds`);
    }
    assert.deepEqual(wrong, []);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("answers every question in pounds, with the faces that its discs carry", async () => {
    const hand = await inPounds(browser);
    const wrong = [];
    let loads = 0;
    for (const [number, act] of QUESTIONS) {
      await hand.ask(number);
      await hand.page.locator(`main[data-view="q${number}"]`).waitFor();
      await hand.settled();
    if (act && (await hand.page.locator("main [data-answer]").count()) === 0) await hand.act(act).catch(() => wrong.push(`${number}: cannot be asked`));
      const text = await shown(hand.page);
      if (POUNDS.test(text)) loads += 1;
      if (number === BOTH) continue;
      const kilograms = lines(text, KILOGRAMS).filter((line) => !OTHER.has(number) || /\d kg\b.*\d kg\b/.test(line) || !POUNDS.test(line));
      if (kilograms.length > 0) wrong.push(`${number}: ${kilograms.join(" | ")}`);
    }
    assert.deepEqual(wrong, []);
    assert.ok(loads >= 15, `${loads} answers hold a load`);
    await hand.close();
  });

  it("gives 95 lb as a bar of 45 lb and 25 lb on each end, and the warm-up in pounds", async () => {
    const hand = await inPounds(browser);
    await hand.ask(1);
    // By hand: 95 = 45 + 2 x 25.
    await hand.pad("Load on the bar", "95");
    assert.equal(await hand.big(), "95 lb: each end 25 lb");
    await says(hand.page.locator("main figcaption").first(), /^bar 45 lb\. Each end, inside first: 25\slb\./);
    // 96 cannot be made: 1.25 lb discs come in one pair, so the next above 95 is 97.5.
    await hand.pad("Load on the bar", "96");
    assert.equal(await hand.big(), "95 lb: each end 25 lb");
    assert.match(await hand.why(), /^96 lb cannot be made here; this is the closest that is not over \(\u22121 lb, \u22121 %\)\./);
    await hand.ask(6);
    await hand.pad("Work load", "145");
    assert.match(await hand.big(), /^45 lb \u2192 .*145 lb$/);
    await hand.close();
  });

  it("keeps the face of a kilogram disc in a gym of both", async () => {
    const hand = await Hand.open(browser);
    await hand.tap(".unit");
    await hand.view("gym");
    await hand.page.locator('[data-act="kit-kg"]').click();
    await hand.page.getByRole("button", { name: "Begin again", exact: true }).click();
    await hand.page.getByText("20 kg", { exact: true }).waitFor();
    await hand.ask(1);
    await hand.pad("Load on the bar", "132.4");
    // By hand: 60 kg is 132.277 lb; the next pair, of 0.5 kg discs, would make 134.48.
    assert.equal(await hand.big(), "132.3 lb: each end 20 kg");
    await hand.close();
  });
});

describe("closest, but not over", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  for (const [wanted, said] of [["63.4", /^63 kg: each end 20 kg \+ 1\.25 kg \+ /], ["300", /^\d+(\.\d+)? kg: each end /]]) {
    it(`${wanted} kg goes under, never over`, async () => {
      const hand = await Hand.open(browser);
      await hand.ask(1);
      await hand.pad("Load on the bar", wanted);
      const big = await hand.big();
      assert.ok(Number.parseFloat(big) <= Number(wanted), big);
      if (wanted === "63.4") assert.match(big, /^(62\.5|63) kg: each end /);
      else assert.match(big, said);
      assert.match(await hand.why(), new RegExp(`^${wanted.replace(".", "\\.")} kg cannot be made here`));
      await hand.close();
    });
  }

  it("18 kg is under the bar of 20 kg, and is refused in words", async () => {
    const hand = await Hand.open(browser);
    await hand.ask(1);
    await hand.pad("Load on the bar", "18");
    assert.equal(await hand.big(), "Too light: the empty bar is 20 kg");
    assert.match(await hand.why(), /^18 kg is less than bar 20 kg alone/);
    await hand.close();
  });
});

/** Numbers with a fraction that say what they are: a unit behind them, or one of these. */
const TOLD = [
  /\d+\.\d+( to \u2212?\d+(\.\d+)?)?\s?(kg|lb|mm|%|m\/s|s\b|times|left|repetitions)/g,
  /(leave|left in reserve|between|confidence|stand at|monotony|version|the rest is what is believed beforehand:)\D{0,4}[\d. ]+(and|to)?[\d. ]*/gi,
  /doi \S+/g,
  /\b\d+\.\d+\.\d+\b/g,
];
/** Views that are about such numbers: ratings in half points, ratios, and the number that is turned from one unit into the other. */
const RATINGS = /^(0\.5|1\.5|2\.5|7\.5|8\.5|9\.5)$/;

/** Names of bars that hold a number, without the unit: "bar 20". */
const BAR = /\bbar \d+(?!\d)(?! ?(kg|lb|mm)\b)(?! ?\(\d+(\.\d+)? (kg|lb)\))(?!: \d+(\.\d+)? (kg|lb))/;

/** What of a text is a number of mass that does not say its unit. */
function bare(text) {
  // A number and its unit in one field are told together.
  const told = text.replace(/\n(?=(kg|lb|mm|%)\n)/g, " ").split("\n");
  return told.filter((line) => {
    const left = TOLD.reduce((rest, known) => rest.replace(known, ""), line);
    return BAR.test(line) || (/\d\.\d/.test(left) && !RATINGS.test(line.trim()) && !/ \u2014 /.test(line));
  });
}

/** Every view and every question of a page in that state. */
async function everywhere(hand) {
  const texts = [];
  for (const view of [...VIEWS, "lift"]) {
    await hand.view(view);
    texts.push([view, await shown(hand.page)]);
  }
  for (const [number, act] of QUESTIONS) {
    await hand.ask(number);
    await hand.page.locator(`main[data-view="q${number}"]`).waitFor();
    await hand.settled();
    if (act && (await hand.page.locator("main [data-answer]").count()) === 0) await hand.act(act);
    texts.push([`q${number}`, await shown(hand.page)]);
  }
  return texts;
}

/** A gym whose discs carry that unit, on a page that shows that other one, and somebody new in it. */
async function inMixed(browser, discs, shows) {
  const hand = await Hand.open(browser);
  if (shows === "lb") await hand.tap(".unit");
  await hand.view("gym");
  await hand.page.locator(`[data-act="kit-${discs}"]`).click();
  await hand.page.locator("[data-yes]").click();
  await counts(hand.page.locator("dialog"), 0);
  await hand.view("begin");
  await hand.page.locator("#name").fill("Sam, invented");
  await hand.page.locator('[data-act="begin-now"]').click();
  await hand.page.waitForSelector("[data-lift]");
  return hand;
}

async function withFullLog(browser, shows) {
  const hand = await Hand.open(browser);
  await hand.demo();
  if (shows === "lb") await hand.tap(".unit");
  return hand;
}

const GYMS = [
  ["pounds", (browser) => inMixed(browser, "lb", "lb")],
  ["kilograms", (browser) => inMixed(browser, "kg", "kg")],
  ["kilograms, shown in pounds", (browser) => inMixed(browser, "kg", "lb")],
  ["pounds, shown in kilograms", (browser) => inMixed(browser, "lb", "kg")],
  ["kilograms, with a full log", (browser) => withFullLog(browser, "kg")],
  ["kilograms, with a full log, shown in pounds", (browser) => withFullLog(browser, "lb")],
];

describe("no number of mass without its unit", () => {
  let browser;
  before(async () => void (browser = await launch()));
  after(() => browser.close());

  for (const [gym, open] of GYMS) {
    it(`in a gym of ${gym}`, async () => {
      const hand = await open(browser);
      const wrong = (await everywhere(hand)).flatMap(([view, text]) => bare(text).map((line) => `${view}: ${line.slice(0, 160)}`));
      assert.deepEqual([...new Set(wrong)], []);
      await hand.close();
    });
  }

  it("kilograms alone in a gym of kilograms, beside the answers that give both", async () => {
    const hand = await inMixed(browser, "kg", "kg");
    const wrong = (await everywhere(hand))
      .filter(([view]) => view !== `q${BOTH}`)
      .flatMap(([view, text]) => lines(text, /\d\s?lb\b|\bpounds?\b/i).filter((line) => !(OTHER.has(Number(view.slice(1))) && /\d kg\b/.test(line)) && !/^(Pounds|A gym in pounds(, rubber discs)?|Kilograms or pounds\?)$/.test(line.trim())).map((line) => `${view}: ${line}`));
    assert.deepEqual(wrong, []);
    await hand.close();
  });

  for (const [whose, open] of [["somebody new", () => inMixed(browser, "kg", "lb")], ["a full log", () => withFullLog(browser, "lb")]]) it(`a disc of kilograms keeps its face on a page in pounds, and only discs and bars are in kilograms there: ${whose}`, async () => {
    const hand = await open();
    // What is marked on the discs, and the names of the bars. A source tells of its people in its own unit.
    const FACES = ["20", "15", "10", "5", "2.5", "1.25", "0.5", "0.25", "8", "25"];
    const wrong = (await everywhere(hand))
      .filter(([view]) => view !== `q${BOTH}`)
      .flatMap(([view, text]) => lines(text, /\d\s?kg\b/).filter((line) => !/ \u2014 /.test(line)).flatMap((line) => [...line.matchAll(/(\d+(?:\.\d+)?)\s?kg\b/g)]
        .filter(([, number]) => !FACES.includes(number) && !(OTHER.has(Number(view.slice(1))) && POUNDS.test(line)))
        .map(([what]) => `${view}: ${what} in ${line.slice(0, 120)}`)));
    assert.deepEqual(wrong, []);
    await hand.close();
  });
});
