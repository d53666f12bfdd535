// The capabilities on the page, a test for each that is named after it: a view or a question answers it with a number or a word
// that could be wrong. One browser and one page for all, with the invented lifter and some that are changed (rows_lifters.mjs).
// Where a Rust test has the same number over the demo log (tests/demo.rs, tests/rows), it is the same here.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, describe, it } from "node:test";
import { keeps, launch } from "./browser.mjs";
import { bringIn, fileOf, handOn, yes } from "./keep.mjs";
import { lifterA, lifterB, lifterC, lifterD, lifterE, lifterF, lifterG, lifterH, lifterI, lifterJ, lifterK, lifterL, lifterM, lifterN, lifterO, lifterP, lifterQ, lifterR } from "./rows_lifters.mjs";

const DEMO = "invented-lifter";
/** What the coach said on 26 August: with a reason and an end, without a reason, and with an end that is past. */
const WORDS = [
  ["with a reason", { why: "to look at one set", expires: "2026-09-03" }],
  ["without a reason", { expires: "2026-09-03" }],
  ["past its end", { why: "to look at one set", expires: "2026-08-26" }],
];

let browser;
let hand;
let current;

before(async () => {
  browser = await launch();
  hand = await handOn(browser);
  for (const make of [lifterA, lifterB, lifterC, lifterD, () => lifterE("2026-08-26"), () => lifterE("2026-08-27"), lifterF, lifterG, () => lifterH(), () => lifterH(3), lifterI, lifterJ, () => lifterK(1), () => lifterK(2), () => lifterL(40), () => lifterL(60), lifterM, ...WORDS.map(([name, more]) => () => lifterN(name, more)), lifterO, () => lifterO(false), lifterP, () => lifterQ(47.3), lifterR]) await bringIn(hand, fileOf(make()));
  await hand.view("lifters");
  await hand.page.locator('main [data-act="demo"]').click();
  await hand.page.locator('main[data-view="today"] [data-lift]').first().waitFor();
  current = DEMO;
});
after(async () => {
  assert.deepEqual(hand.complaints, []);
  await browser.close();
});

/** Puts a lifter in view. */
async function as(lifter) {
  if (current === lifter) return;
  await hand.view("lifters");
  await hand.page.locator(`[data-lifter="${lifter}"]`).first().click();
  await hand.page.locator('main[data-view="today"]').waitFor();
  current = lifter;
}

/** All words of the view, those that are folded away too. */
const words = () =>
  hand.page.evaluate(() => {
    const main = document.querySelector("main");
    for (const one of main.querySelectorAll("details")) one.open = true;
    return main.innerText.replaceAll("\u00a0", " ");
  });

/** The view says all of these, as soon as it does. */
async function shows(...patterns) {
  const text = await keeps(words, (found) => patterns.every((one) => one.test(found)));
  for (const one of patterns) assert.match(text, one);
}
async function hides(...patterns) {
  const text = await words();
  for (const one of patterns) assert.doesNotMatch(text, one);
}
/** The big line of the answer is exactly so, as soon as it is. */
async function big(expected) {
  const said = () => hand.big().catch(() => "");
  assert.equal(await keeps(said, (found) => found === expected), expected);
}

/** Leaves pain that came to a stop: it was not so. */
async function wasNotSo() {
  await hand.page.locator('[data-place="today"]').click();
  await hand.tap('[data-act="leave-so"]');
  await hand.page.locator('main[data-view="today"]').waitFor();
}

/** Opens a question of a lifter and answers it: `["pad", label, number]` or a selector to tap. */
async function ask(number, acts = [], lifter = DEMO) {
  await as(lifter);
  await hand.ask(number);
  for (const act of acts) {
    if (Array.isArray(act)) await hand.pad(...act);
    else await hand.tap(act);
  }
}
const choose = (label, value) => `main [aria-label="${label}"] [data-value="${value}"]`;
const lift = (id) => choose("Lift", id);
const disc = (face) => `main [data-disc]:has(b:text-is("${face}"))`;

async function today(lifter = DEMO) {
  await as(lifter);
  await hand.view("today");
}

/** The lines about one lift in a list of all. */
async function about(id, ...patterns) {
  const part = async () => {
    const text = await words();
    const from = text.search(new RegExp(`^${id}$`, "m"));
    const rest = text.slice(from + id.length);
    const to = rest.search(/^(front squat|box squat|strict press|supported row|deadlift|bell press|helped pull-up|slow squat)$/m);
    return to < 0 ? rest : rest.slice(0, to);
  };
  const text = await keeps(part, (found) => patterns.every((one) => one.test(found)));
  for (const one of patterns) assert.match(text, one, id);
}

describe("rows", () => {
  it("row_01: pounds and kilograms", async () => {
    await ask(22, [["Number", "155"]]);
    await big("155 lb = 70.31 kg");
    await shows(/155 kg = 341\.7 lb\. One pound is exactly 0\.45359237 kg/);
  });

  it("row_02: sums of discs are exact to the last digit", async () => {
    // 20 + 2 (5 lb + 1.25 + 0.25) = 20 + 2 (2.26796185 + 1.5); and with collars of 2.5 kg and discs of 20 kg that weigh 20.1, 25 + 2 (20.1 + 10 + 10).
    await ask(2, [disc("5 lb"), disc("1.25 kg"), disc("0.25 kg")]);
    await shows(/Exactly 27\.5359237 kg\./);
    await ask(2, [choose("Bar", "bar 20"), "[data-disc='0']", "[data-disc='1']", "[data-disc='1']"], "A, invented");
    await shows(/Exactly 105\.2 kg\./);
  });

  it("row_03: the total of the discs on the bar", async () => {
    await ask(2, ["[data-disc='0']", "[data-disc='4']"]);
    await big("62.5 kg = 137.8 lb");
  });

  it("row_04: discs from the pairs there are, of which 20 kg is one", async () => {
    await ask(1, [["Load on the bar", "102.5"]]);
    await big("102.5 kg: each end 20 kg + 10 kg + 10 kg + 1.25 kg");
  });

  it("row_05: never over what was wanted", async () => {
    await ask(3, [["Wanted, not over", "63.4"]]);
    await big("63 kg");
    await shows(/−0\.4 kg \(−0\.6 %\)/, /The next load above would be 63\.5 kg/);
  });

  it("row_06: kilograms and pounds on one bar", async () => {
    // 20 + 2 (10 + 2.26796185 + 1.25 + 0.25) = 47.5359 kg.
    await today();
    await about("box squat", /47\.54 kg · 3 × 5/, /Each end\s+10 kg\s+5 lb\s+1\.25 kg\s+0\.25 kg/);
  });

  it("row_07: discs of 20 kg that weigh 20.1", async () => {
    await ask(1, [choose("Bar", "bar 15"), ["Load on the bar", "55.2"]], "A, invented");
    await big("55.2 kg: each end 20 kg");
  });

  it("row_08: collars of 2.5 kg", async () => {
    await ask(1, [choose("Bar", "bar 20"), ["Load on the bar", "65.2"]], "A, invented");
    await big("65.2 kg: each end 20 kg");
  });

  it("row_09: what the discs make, and the widest gap", async () => {
    await ask(23, [["From", "30"], ["To", "50"]]);
    await big("33 loads");
    await shows(/Largest gap: 1\.46 kg, from 38\.54 kg to 40 kg/);
  });

  it("row_10: the height of the bar", async () => {
    await ask(5, ["[data-value='450']"]);
    await big("225 mm");
    await ask(5, ["[data-value='230']"]);
    await big("115 mm");
  });

  it("row_11: blocks for a lighter load at the same height", async () => {
    // 25 kg is 5 lb a side, of 200 mm: 100 mm high, 125 below 225.
    await ask(4, [["Load", "25"]]);
    await big("Only with blocks of 125 mm");
  });

  it("row_12: two heights of the hands", async () => {
    await ask(5, [choose("Bar", "hex bar"), "[data-value='450']"], "A, invented");
    await big("225 mm");
    await shows(/High handles at 355 mm/);
  });

  it("row_13: warm-ups rise to the work", async () => {
    // 60 and 80 % of 47.536 kg are 28.52 and 38.03 kg.
    await today();
    await shows(/20 kg × 3 the empty bar.*28\.04 kg × 3 .*37\.54 kg × 2 .*then 47\.54 kg/s);
  });

  it("row_14: the fewest disc moves", async () => {
    // 1 on; 1 off, 2 on; 2 off, 1 on; 1 on; 1 off, 1 on: ten.
    await ask(6, [["Work load", "80"]]);
    await big("20 kg → 30 kg → 50 kg → 60 kg → 70 kg → 80 kg");
    await shows(/10 disc moves on each end, the fewest there are/);
  });

  it("row_15: two lifters, one bar", async () => {
    await ask(7, [["First lifter", "60"], ["Second lifter", "80"]]);
    await big("6 disc moves on each end");
    await shows(/no order needs fewer/);
    // From their logs, one set of each done: 10 kg at each end and 10 + 10. The lighter one first puts a disc on, then one goes on,
    // off and on: four. The heavier one first would begin with two: five.
    const names = [40, 60].map((load) => `L at ${load} kg, invented`);
    for (const name of names) {
      await today(name);
      await hand.tap('main [data-act="set"]');
      await hand.tap('dialog [data-act="not-watched"]');
      await hand.tap('dialog [data-act="save-set"]');
      await hand.page.locator(".draft").waitFor();
    }
    for (const own of names) {
      const other = names.find((name) => name !== own);
      await ask(7, [choose("Loads", "logs"), choose("Second lifter", other)], own);
      await big("4 disc moves on each end");
      await shows(/^L at 40 kg, invented first; no order needs fewer/m, /L at 40 kg, invented\s+40 kg[^]*L at 60 kg, invented\s+60 kg[^]*L at 40 kg, invented\s+40 kg[^]*L at 60 kg, invented\s+60 kg/);
    }
  });

  it("row_16: the bar does not tip on the way", async () => {
    // The heaviest disc that moves before 47.54 kg is one of 10 kg; all of one end first, 10 + 2.27 + 1.25 + 0.25 less 8.
    await today();
    await about("box squat", /The ends in turn: neither is ever more than 10 kg heavier than the other on the way/, /left on 10 kg, right on 10 kg/);
  });

  it("row_17: dumbbells in their own steps", async () => {
    await today("A, invented");
    await about("bell press", /8 kg each hand · 2 × 5/, /4 kg each hand × 3\s+6 kg each hand × 2\s+8 kg/);
  });

  it("row_18: a step that is too large", async () => {
    // The next dumbbell is 10 kg; 5 % are allowed.
    await ask(17, [lift("bell press")], "A, invented");
    await big("A larger step than is advised: 25 %");
    await shows(/The next load is 10 kg/);
    await ask(11, [], "A, invented");
    await about("bell press", /No loadable step: .* the next that can be loaded is 10 kg each/);
  });

  it("row_19: repetitions bridge it", async () => {
    // By Epley 1985: 8 (1 + r/30) >= 10 (1 + 5/30) from r = 13.75 on.
    await ask(17, [lift("bell press")], "A, invented");
    await shows(/14 at 8 kg each hand, then 5 at 10 kg each hand/);
  });

  it("row_20: more help is less load", async () => {
    await today("A, invented");
    await about("helped pull-up", /30 kg of help · 2 × 5/);
    await ask(11, [], "A, invented");
    await about("helped pull-up", /the next that can be loaded is 20 kg of help/);
  });

  it("row_21: the published equations, one by one", async () => {
    await ask(8, [["Load", "100"], choose("It felt like, of 10", "10")]);
    await shows(/epley 1985\s+117 kg/, /brzycki 1993\s+11[23] kg/, /oconner 1989\s+11[23] kg/, /lombardi 1989\s+117 kg/);
    // From the log: two sets of five at 33.5 kg with 3 left: 33.5 (1 + 8/30) = 42.4 by Epley, 33.5 x 36 / 29 = 41.6 by Brzycki, 33.5 x
    // 8^0.1 = 41.2 by Lombardi.
    await ask(8, [lift("front squat")], "I, invented");
    await shows(/By the sets of front squat on 2 Mar 2026/i, /epley 1985\s+42 kg/, /brzycki 1993\s+42 kg/, /lombardi 1989\s+41 kg/);
    await ask(8, [lift("box squat")], "I, invented");
    await big("No set that can speak");
  });

  it("row_22: a range that holds all of them", async () => {
    await ask(8, [["Load", "100"], choose("It felt like, of 10", "10")]);
    const [low, high] = (await hand.big()).match(/\d+/g).map(Number);
    const each = [...(await words()).matchAll(/^[a-z]+ \d{4}\s+(\d+) kg$/gm)].map((one) => Number(one[1]));
    assert.equal(each.length, 8);
    assert.ok(low < Math.min(...each) && Math.max(...each) < high, `${low} to ${high}: ${each}`);
  });

  it("row_23: the load for repetitions and what is left, and back", async () => {
    // By Epley 1985: 47.536 (1 + 5/30) / (1 + 8/30) = 43.78 kg.
    await ask(9, [lift("box squat"), choose("It felt like so many left", "0")]);
    await big("43.5 kg");
    await ask(17, [lift("front squat"), ["Load now", "25"]]);
    await shows(/6 at 25 kg, then 5 at 25\.04 kg/);
  });

  it("row_24: the own curve recovers a simulated lifter", async () => {
    await ask(18, [lift("front squat")], "F, invented");
    await shows(/Own curve of repetitions and load\s+.*each further repetition takes 4 % off the load, 3\.\d % to|Own curve of repetitions and load\s+.*each further repetition takes 4 % off the load, 3\.\d to 4\.\d %/, /That is enough to use it in place of published equations/, /30 of 30 sets of the last year can speak/);
    await ask(18, [lift("front squat")], "I, invented");
    await shows(/no own curve can be told yet/, /three of them, three repetitions to failure apart, are the least/);
  });

  it("row_25: a rating of 8 is 2 left", async () => {
    // Five and two left: 100 (1 + 7/30) = 123.3 by Epley 1985.
    await ask(8, [["Load", "100"], choose("It felt like, of 10", "8")]);
    await shows(/epley 1985\s+123 kg/);
    // From the log: 33.5 (1 + 7/30) = 41.3 by Epley, 33.5 x 36 / 30 = 40.2 by Brzycki.
    await ask(8, [lift("front squat")], "M, invented");
    await shows(/By the sets of front squat on 2 Mar 2026/i, /epley 1985\s+41 kg/, /brzycki 1993\s+40 kg/);
  });

  it("row_26: what people leave unsaid can be counted", async () => {
    // Five, two left and 0.95 more: 100 (1 + 7.95 / 30) = 126.5 by Epley 1985, 123.3 without.
    await ask(8, [["Load", "100"], choose("It felt like, of 10", "8"), choose("What people leave unsaid", "yes")]);
    await shows(/epley 1985\s+127 kg/, /with 0\.95 repetitions more than called/);
    await hand.tap(choose("What people leave unsaid", "no"));
    await shows(/epley 1985\s+123 kg/);
    // From the log: 33.5 (1 + 8.95/30) = 43.5, 42.4 without; of sets to failure nothing is left unsaid.
    await ask(8, [lift("front squat")], "I, invented");
    await hides(/more than called/);
    await shows(/epley 1985\s+42 kg/);
    await hand.tap(choose("What people leave unsaid", "yes"));
    await shows(/epley 1985\s+43 kg/, /with 0\.95 repetitions more than called/);
  });

  it("row_27: a session passes by its marks", async () => {
    await ask(27, [], "C, invented");
    await shows(/box squat: passed/, /supported row: not scored/, /front squat: did not pass/);
  });

  it("row_28: the repetition that slipped first", async () => {
    await as("C, invented");
    await hand.view("log");
    await shows(/box squat 47\.54 kg × 5 ●●●●● 47\.54 kg × 5 ●●○●● 47\.54 kg × 5 ●●●●●/);
  });

  it("row_29: the cold first set is judged by itself", async () => {
    // Of 20 repetitions 2 may be missed, of the first five 1: the same two lose the first set and not the second.
    await ask(27, [], "K with set 1 missed, invented");
    await shows(/front squat: did not pass/);
    await ask(27, [], "K with set 2 missed, invented");
    await shows(/front squat: passed/);
    await ask(27, [], "C, invented");
    await shows(/front squat: did not pass\s[^]*?33\.5 kg × 5, all good, not met: brace held, 3 left\s+33\.5 kg × 5, all good, 2\.5 left/);
  });

  it("row_30: sessions in a row on other days", async () => {
    await ask(12);
    await big("box squat: 2 more passing sessions in a row, each on another day");
    await about("strict press", /1 more passing session, on another day/);
  });

  it("row_31: how long a gate holds", async () => {
    // Of ten at 0.9 nine or more: p = 0.736; three in a row take (1 - p^3) / ((1 - p) p^3) = 5.7.
    await ask(20, [choose("Gate", "set"), choose("Good of 10", "9"), choose("Sessions in a row", "3"), choose("How much repetitions of a day go together", "0")]);
    await big("About 6 sessions at 9 good of 10");
  });

  it("row_32: a lift that is kept is looked at every four weeks", async () => {
    // Last trained on 20 August.
    await ask(11, [], "D, invented");
    await about("supported row", /A marked session at this place is due by 17 Sep 2026/);
  });

  it("row_33: where each lift has got to", async () => {
    await ask(24);
    await shows(/box squat: holding/, /supported row: gate open/, /deadlift: coming back/);
  });

  it("row_34: everything that is in the way", async () => {
    await ask(11);
    await about("strict press", /4 reasons to stay:/, /Pain in the shoulder/, /gate is not open/, /recently: 7 more days/, /No loadable step/);
    await about("supported row", /Up to 39\.54 kg is on offer\s+Nothing stands in the way/);
  });

  it("row_35: pain in zones", async () => {
    const at = async (score) => ask(13, ['[data-act="no-sign"]', choose("Where", "knee"), choose("How much, 0 to 10", score), "main [data-none]"]);
    for (const [score, said] of [[2, "box squat: train, 47.54 kg · 3 × 5 · leave 3"], [6, "box squat: stop"]]) {
      await at(score);
      await big(said);
      if (score === 6) await wasNotSo();
    }
    await at(4);
    await shows(/^box squat: ease off, /m);
  });

  it("row_36: the morning after takes a pass back", async () => {
    await ask(12, [], "C, invented");
    await about("box squat", /1 more passing session, on another day/);
    await hand.view("today");
    await hand.tap('[data-act="morning-yes"]');
    await hand.tap('dialog [aria-label="Where"] [data-value="knee"]');
    await hand.tap('dialog [aria-label="How much, 0 to 10"] [data-value="4"]');
    await hand.tap("dialog [data-none]");
    await hand.tap('[data-act="write-down"]');
    await hand.page.getByText("Recorded.").waitFor();
    await ask(12, [], "C, invented");
    await about("box squat", /2 more passing sessions in a row/);
    await ask(27, [], "C, invented");
    await shows(/box squat: did not pass: the next morning took it back/);
  });

  it("row_37: a stop sign stops everything", async () => {
    await ask(13, [".sign"]);
    await big("Stop. Every lift, now");
    await hand.view("today");
    await about("supported row", /stop/);
    await hand.view("log");
    await hand.tap('[data-act="undo"]');
    await hand.tap("[data-yes]");
    await hand.page.locator(".stop-band").waitFor({ state: "detached" });
    await hand.view("today");
    await about("supported row", /train/);
  });

  it("row_38: an override has its name and its end", async () => {
    await today("D, invented");
    await about("box squat", /44\.54 kg · 3 × 5/);
    await shows(/invented coach overruled the gate: 45 kg \(high box\) until 3 Sep 2026/);
    await hand.view("log");
    await shows(/box squat: at most 45 kg until .*3 Sep; invented coach: to look at one set/i);
    // More than the working load of 47.54 kg: 49 kg, of which 20 + 2 (10 + 2.268 + 1.25 + 0.5 + 0.25) = 48.54 can be made.
    await today("N with a reason, invented");
    await about("box squat", /48\.54 kg · 3 × 5/);
    await shows(/invented coach overruled the gate: 49 kg \(high box\) until 3 Sep 2026/);
    // Without a reason it is refused, and on the day after its last one nothing of it is left.
    await today("N without a reason, invented");
    await about("box squat", /47\.54 kg · 3 × 5/, /last word for another load was refused: more than the working load needs a reason and a last day/);
    await today("N past its end, invented");
    await about("box squat", /47\.54 kg · 3 × 5/);
    await hides(/overruled the gate/);
  });

  it("row_39: a clearance holds to its last day", async () => {
    await today("E to 2026-08-26, invented");
    await shows(/The clearance ran out on 26 Aug 2026/);
    await today("E to 2026-08-27, invented");
    await shows(/47\.54 kg · 3 × 5/);
    await hides(/ran out/);
  });

  it("row_40: less after a break", async () => {
    // Nine tenths of 47.536 kg are 42.78, eight are 38.03.
    for (const [days, load] of [[21, 42.5], [42, 37.54]]) {
      await ask(14, [choose("Days without lifting", days)]);
      await big(`box squat: ${load} kg`);
    }
  });

  it("row_41: a missed session is shifted, or let go", async () => {
    // Done on 2 March, missed on the 4th, asked on the 5th: a day of rest before it, and before the 11th, but none before the 6th.
    await ask(30, [choose("The next session is planned", "6")], "I, invented");
    await big("Shift: front squat");
    await shows(/A session was missed on 4 Mar 2026: travel\./, /Front squat: as planned, on 5 Mar 2026\./, /Nothing is added to make up for it/);
    await hand.tap(choose("The next session is planned", "1"));
    await big("Let go: front squat");
    await ask(30);
    await big("No missed session within seven days");
    // A front squat missed on Monday the 16th, asked on the 17th: loaded last on the 11th, and the box squat of Wednesday the 18th, as
    // usual, leaves no rest day before it and has no front squat.
    await ask(30, [], "O, invented");
    await big("Into the next: front squat");
    await shows(/A session was missed on 16 Mar 2026: travel\./, /Front squat: .*18 Mar 2026/, /Nothing is added to make up for it/);
    // No increase: the same load and sets as where nothing was missed.
    for (const name of ["O, invented", "O without a miss, invented"]) {
      await today(name);
      await about("front squat", /30 kg · 3 × 5/);
    }
  });

  it("row_42: rungs in the order of their chain", async () => {
    await as(DEMO);
    await hand.view("lift");
    await shows(/Rungs that no chain of “harder than” connects are not compared/);
    const pressed = (rung) => hand.page.locator(`.rungs > * `).filter({ hasText: `${rung} is directly harder than` }).locator("button[aria-pressed='true']").allInnerTexts();
    assert.deepEqual([await pressed("to a parallel box"), await pressed("free")], [["to a high box"], ["to a parallel box"]]);
  });

  it("row_43: a longer range at no more load", async () => {
    await ask(16, [["Load now", "60"]]);
    await big("Start at 60 kg");
    await shows(/From 100 to 50 mm\. Only the range moves, so the load is no higher than before/);
    // From the log: 60 kg at 325 mm, and the ranges that are set for the lift, one after the other.
    await ask(16, [lift("deadlift")], "P, invented");
    await big("Start at 60 kg");
    await shows(/From 325 to 275 mm\. Only the range moves/);
    await hand.tap(choose("From 325 mm to", "225"));
    await big("Start at 60 kg");
    await shows(/From 325 to 225 mm/);
    // The invented lifter's bar lies on the floor, at 225 mm: that is the fullest that is set, and what is typed begins there.
    await ask(16, [lift("deadlift")]);
    await shows(/From 225 to 50 mm\. Only the range moves/);
    await hand.pad("Blocks then", "225");
    await big("Stay at 55.04 kg");
    await shows(/Not a longer range/);
  });

  it("row_44: a tempo in words", async () => {
    await ask(24, [], "A, invented");
    await shows(/slow squat: learning\s+bar 15 \(15 kg\) · standing · 3 s down, 1 s hold, 1 s up/);
  });

  it("row_45: two places of a lift are compared", async () => {
    await as(DEMO);
    await hand.page.evaluate(() => { location.hash = "today"; });
    await hand.view("plan");
    await hand.page.getByRole("button", { name: "front squat: gate, rungs, regions" }).first().evaluate((button) => button.click());
    const said = hand.page.locator("[data-compared]");
    const told = async (pattern) => assert.match(await keeps(() => said.innerText(), (found) => pattern.test(found)), pattern);
    await told(/ Neither harder nor easier in anything that is compared\.$/);
    await hand.tap(choose("Rung there", "2"));
    await told(/^Front squat: from 3 \u00d7 5 at 33\.5 kg .* to 3 \u00d7 5 at 33\.5 kg .*\. Harder: rung\.$/);
    await hand.pad("Load there", "20");
    await told(/ Harder: rung\. Easier: load\.$/);
    await hand.tap(choose("Rung there", "0"));
    await told(/ Easier: load\.$/);
  });

  it("row_46: the strict lift waits for the forgiving one", async () => {
    // 0.6 x 47.536 = 28.5 kg.
    await ask(11, [], "B, invented");
    await about("front squat", /No step of front squat goes past what box squat has shown for it: 28\.52 kg/);
  });

  it("row_47: the own ratio of a pair", async () => {
    await ask(15);
    await big("Usual for this lifter");
    await shows(/box squat is 1\.42 times front squat/, /nine weeks of ten lay between 1\.4 and 1\.45/, /99 % of it is the lifter’s own/);
  });

  it("row_48: pain concerns every lift of its region", async () => {
    await ask(13, ['[data-act="no-sign"]', choose("Where", "back"), choose("How much, 0 to 10", "6"), "main [data-none]"]);
    await about("box squat", /stop/);
    await about("deadlift", /stop/);
    await about("supported row", /train/);
    await wasNotSo();
  });

  it("row_49: nothing moves before a lift is learned", async () => {
    await ask(11, [], "A, invented");
    await about("slow squat", /Learning the lift: 0 of 6 sessions so far/, /3 reasons to stay/);
  });

  it("row_50: a sign against the own usual", async () => {
    await ask(10, ['main [aria-label="Recovered (10: fully)"] [data-value="3"]'], "D, invented");
    await shows(/recovery\s+below own usual\s+7, within 0\.6/);
    // 5, 9, 7, 6, 7, 8: the middle 7, the middle distance from it 1, so within 1.4826; 5 lies 1.35 of them below.
    await ask(10, ['main [aria-label="Recovered (10: fully)"] [data-value="4"]'], "K with set 1 missed, invented");
    await shows(/recovery\s+below own usual\s+7, within 1\.5/);
    await hand.tap('main [aria-label="Recovered (10: fully)"] [data-value="5"]');
    await shows(/recovery\s+(?!below)\S.*\s+7, within 1\.5/);
  });

  it("row_51: two signs make a day below the usual, one does not, and too few are no day", async () => {
    const sign = (label, value) => `main [aria-label^="${label}"] [data-value="${value}"]`;
    const rest = sign("A critical point", "no");
    await ask(10, [rest, sign("Recovered", 3), sign("Slept", 3), sign("Stress", 3)], "D, invented");
    await big("Below the usual");
    await ask(10, [rest, sign("Recovered", 3), sign("Slept", 7), sign("Stress", 3)], "D, invented");
    await big("One sign below the usual");
    await ask(10, [sign("Recovered", 10)], "D, invented");
    await big("Not known yet");
  });

  it("row_52: verdicts that are chance are called chance", async () => {
    await ask(10, [], "G, invented");
    await shows(/Earlier verdicts: no better than chance/, /Of 12 days that fell short, 6 were called; of 12 days that went well, 6 were called/, /50 % were right/);
    await ask(10, [], "A, invented");
    await shows(/Earlier verdicts/);
  });

  it("row_53: the fixed set is compared under equal conditions", async () => {
    const effort = 'main [aria-label^="The fixed warm-up set felt"] [data-value="6"]';
    await ask(10, [effort, choose("Time of day", "morning"), choose("Caffeine before", "no")], "H, invented");
    await shows(/warm up effort\s+below own usual\s+3, within 0\.5/);
    await hand.tap(choose("Caffeine before", "yes"));
    await shows(/warm up effort\s+too few days yet/);
    await hand.tap(choose("Caffeine before", "no"));
    await shows(/warm up effort\s+below own usual/);
    await hand.pad("Load of the fixed set", "25");
    await shows(/warm up effort\s+too few days yet/);
  });

  it("row_54: velocity is compared at its load and makes no maximum", async () => {
    await ask(18, [lift("front squat")], "G, invented");
    await shows(/Bar speed at 33\.5 kg: 0\.01 m\/s a week, .*faster, by more than chance.*it makes no maximum/);
    await ask(18, [lift("front squat")]);
    await shows(/Bar speed: not measured/);
    // It is written down with a set.
    await today("H with a gap, invented");
    await hand.tap('main [data-act="set"]');
    await hand.page.locator("dialog summary").click();
    await hand.pad("Bar speed, if measured", "0.52");
    await hand.tap('dialog [data-act="not-watched"]');
    await hand.tap('dialog [data-act="save-set"]');
    await shows(/33\.5 kg × 5, not watched, 0\.52 m\/s|× 5, not watched, 0\.52 m\/s/);
  });

  it("row_55: the load after a set that was harder than wanted", async () => {
    await ask(9, [lift("box squat"), choose("It felt like so many left", "0")]);
    await shows(/The last set left 0, and 3 were asked for: by a published relation that is 8 % less \(Epley 1985\)/);
    // Whose it is stands below, and nothing that was not used.
    await shows(/epley 1985 \u2014 .*Epley.*1985/);
    // By rule, 4 % a point: 33.5 x 0.92 = 30.82 kg.
    await ask(9, [lift("front squat"), choose("It felt like so many left", "1")], "B, invented");
    await big("30.5 kg");
  });

  it("row_56: back-off sets, 4 % less", async () => {
    // 47.536 x 0.96 = 45.63 kg.
    await ask(9, [lift("box squat")], "B, invented");
    await big("45.54 kg");
    await shows(/The first set is done; the others are 4 % lighter/);
  });

  it("row_57: double progression lowers below the range", async () => {
    // Four where five to eight are asked: one step down, to the next load there is.
    await ask(9, [lift("supported row"), ["Repetitions", "4"]], "B, invented");
    await big("38.5 kg");
  });

  it("row_58: the table of repetitions", async () => {
    await ask(9, [lift("strict press"), ["Repetitions", "4"]], "B, invented");
    await big("Stay at 23.04 kg");
    // Two: the larger decrease, 5 kg: of 18.04 kg 18 can be made.
    await ask(9, [lift("strict press"), ["Repetitions", "2"]], "B, invented");
    await big("18 kg");
  });

  it("row_59: technique ends the set, then the lift", async () => {
    await ask(26, [choose("Did it hurt?", "no")]);
    await big("47.04 kg for the next set");
    await hand.tap(choose("Sets of this lift today in which it slipped", "2"));
    await big("End this lift for today");
  });

  it("row_60: nothing passes the day", async () => {
    await ask(9, [lift("box squat"), ["Load", "60"]]);
    await big("At most 47.54 kg today");
    // Under a limit of 47.3 kg: the load nearest to it is 47.54, and what is given is 47.04, in the session and after a set.
    await today("Q under 47.3 kg, invented");
    await about("box squat", /47\.04 kg · 3 × 5/);
    await ask(9, [lift("box squat"), ["Load", "60"]], "Q under 47.3 kg, invented");
    await big("At most 47.04 kg today");
    await shows(/60 kg is more than this day allows\. .*Nothing goes above today's load, 47\.04 kg/);
  });

  it("row_61: sets and load of the week", async () => {
    await ask(19);
    await shows(/6 sets and 856 kg lifted in seven days/);
  });

  it("row_62: how the sessions felt", async () => {
    await ask(19, [], "C, invented");
    await shows(/rating times minutes: 600 in all, monotony 0\.63, strain 379/);
  });

  it("row_63: the week against the own band", async () => {
    await ask(19);
    await big("Less than usual");
    await shows(/own band 2618 kg to 3927 kg/);
  });

  it("row_64: an easy week counts what life gave", async () => {
    // From the first session, on 12 January, to 24 February there are six whole weeks.
    await ask(31, [], "H, invented");
    await big("May be thought of: 6 weeks without one");
    await shows(/Coaches report \d+ to \d+ days every \d+ to \d+ weeks/, /It would be front squat/i);
    await ask(31, [], "H with a gap, invented");
    await big("Not due: the last was 3 weeks ago");
  });

  it("row_65: the trend with its interval", async () => {
    await ask(18, [choose("Weeks", "8")]);
    await big("Within noise");
    await shows(/\+0\.12 kg a week, −0\.03 kg to \+0\.26 kg with 95 % confidence/);
  });

  it("row_66: the smallest difference that is real", async () => {
    await ask(18, [choose("Weeks", "8")]);
    await shows(/Two estimates closer than 1\.27 kg do not differ for certain/);
  });

  it("row_67: a block is looked back on", async () => {
    await ask(32, [], "G, invented");
    await shows(/Block spring, since 5 Jan 2026, not ended/, /Front squat: 24 sessions; 12 passed, 12 did not, 0 not marked in full/, /front squat\s+24\s+12\s+120 of 120/);
    await ask(32);
    await big("No block to look back on");
  });

  it("row_68: what to expect decades on", async () => {
    await ask(21, [["Strength now", "100"]]);
    await big("60 to 97 kg");
    // From the log: by the fastest band of people who keep training 1.2 % a year to 50 and 1.7 % to 60, by the slowest nothing.
    await ask(21, [choose("Strength of", "front squat"), ["Age then", "60"]], "R, invented");
    const [, now] = await keeps(async () => /About (\d+) kg by the sets of front squat on 8 Mar 2026 at 40/i.exec(await words()) ?? [], (found) => found.length > 0);
    const [low, high] = (await hand.big()).match(/\d+/g).map(Number);
    assert.equal(high, Number(now));
    assert.ok(Math.abs(low - Number(now) * 0.988 ** 10 * 0.983 ** 10) <= 1, `${low} of ${now}`);
    // A load to keep is held against what was shown: 25 kg at 60 may need 25 / (0.988^10 x 0.983^10) = 33.5 kg now, and 30 were shown.
    await shows(/The sack, 25 kg with front squat at 60: 25 kg to 33\.\d+ kg would be needed now, and 30 kg .*was shown on 8 Mar 2026/);
    const [, needed] = /25 kg to (33\.\d+) kg would/.exec(await words());
    assert.ok(Math.abs(Number(needed) - 25 / (0.988 ** 10 * 0.983 ** 10)) < 0.05, needed);
    // It can be named here too: 20 kg at 50 may need 20 / 0.988^10 = 22.6 kg now.
    await hand.tap('main [data-act="keep"]');
    await hand.tap(`dialog ${choose("With which lift", "front squat").replace("main ", "")}`);
    await hand.page.locator("#keep-name").fill("a grandchild");
    await hand.pad("Load to keep", "20");
    await hand.pad("Until the age of", "50");
    await hand.tap('[data-act="save-keep"]');
    await shows(/A grandchild, 20 kg with front squat at 50: 20 kg to 22\.\d+ kg would be needed now/);
    const [, younger] = /20 kg to (22\.\d+) kg would/.exec(await words());
    assert.ok(Math.abs(Number(younger) - 20 / 0.988 ** 10) < 0.05, younger);
    await hand.page.getByRole("button", { name: "Remove a grandchild" }).click();
    await shows(/The sack, 25 kg with front squat at 60: 25 kg to 33/);
    await hides(/grandchild/);
  });

  it("row_69: everyday tests are held against their floors", async () => {
    await ask(21, [], "H, invented");
    await shows(/Grip\s+24 kg, 6 Jan 2026\s+16 kg to 27 kg: between the published floors/);
    await hand.tap(choose("Floors for", "female"));
    await shows(/16 kg: meets it/);
    await hand.tap(choose("Floors for", "male"));
    await shows(/27 kg: does not meet it: worth a talk with a clinician/);
  });

  it("row_70: training kept up, or stopped", async () => {
    await ask(21, [["Strength now", "100"], choose("Training", "untrained")]);
    await big("48 to 72 kg");
    // The 30 kg of the log, at 40: held they are 30 at 60; 1 % more each year to 45, 30 x 1.01^5 = 31.5; 30 % lost by then, 21, which is
    // less than the 25 to keep.
    const what = "Loads to keep: what if strength goes so?";
    await ask(21, [choose(what, "hold")], "R, invented");
    await shows(/The sack, if it goes as asked: 30 kg at 60, 30 kg to 30 kg; 100 % of the courses still reach 25 kg/);
    await hand.tap(choose(what, "gain"));
    await shows(/The sack, if it goes as asked: 31\.5\d? kg at 60, .*100 % of the courses still reach 25 kg/);
    await hand.tap(choose(what, "lapse"));
    await shows(/The sack, if it goes as asked: 21 kg at 60, 21 kg to 21 kg; 0 % of the courses still reach 25 kg/);
    await hand.tap(choose(what, "unasked"));
    await hides(/if it goes as asked/);
  });

  it("row_71: a lift that is kept, and down to where", async () => {
    await ask(11, [], "D, invented");
    await about("supported row", /Stay at 39 kg/, /Kept where it is on purpose/, /down to 36 kg \(chest on the bench\) it is on plan/);
  });

  it("row_72: sources under an answer, and the version on the card", async () => {
    await ask(17, [lift("front squat")]);
    await shows(/American College of Sports Medicine\..*41:687-708, 2009, doi 10\.1249\/MSS\.0b013e3181915670/);
    await ask(24);
    await shows(/Rules of version \d+\.\d+\.\d+, settings [0-9a-f]{16}/);
  });

  it("row_73: what is kept is read again", async () => {
    await ask(24);
    const before = await hand.page.locator(".handover").innerText();
    assert.match(before, /settings a9f342d6678c4028/);
    await hand.page.reload();
    await hand.ready();
    await hand.view("q24");
    const card = () => hand.page.locator(".handover").innerText();
    assert.equal(await keeps(card, (found) => found === before), before);
  });

  it("row_74: taking back adds an event and loses none", async () => {
    await as("D, invented");
    await hand.view("log");
    const events = async () => Number(/(\d+) events/.exec(await words())[1]);
    const before = await events();
    await hand.tap('[data-act="undo"]');
    await yes(hand);
    assert.equal(await keeps(events, (found) => found === before + 1), before + 1);
    await ask(11, [], "D, invented");
    await shows(/Yes, once: supported row/);
  });

  it("row_75: days are counted", async () => {
    // All of it up to 10 days, the next smaller load from 11 on, nine tenths from 21 on.
    for (const [days, load] of [["10", "47.54"], ["20", "47.04"], ["21", "42.5"]]) {
      await ask(14, [["Another number", days]]);
      await big(`box squat: ${load} kg`);
    }
  });

  it("row_76: what is wrong, and what would do", async () => {
    await ask(1, [["Load on the bar", "10"]]);
    await big("Too light: the empty bar is 20 kg");
    await shows(/10 kg is less than bar 20 \(20 kg\) alone\. A lighter bar, if there is one here/);
  });

  it("row_77: this device counts as any other, to the last bit", async () => {
    // The digest is that of the same answers counted natively.
    const elsewhere = readFileSync(new URL("../answers/src/same_bits.txt", import.meta.url), "utf8").trim();
    await hand.view("gym");
    await hand.tap('[data-act="bits"]');
    const said = hand.page.locator("[data-bits]");
    assert.match(await said.innerText(), /^The same to the last bit: [0-9]{3,} answers of [0-9]{3,} functions\./);
    assert.equal(await said.getAttribute("data-bits"), elsewhere);
  });

  it("row_79: a card for another coach", async () => {
    await ask(24);
    await shows(
      /Working load 23\.54 kg\. Today: 23\.04 kg · 3 × 5 · leave 3\. Each end: 5 lb \+ 1\.25 kg \+ 0\.5 kg/,
      /Gate: up after 2 sessions in a row with 9 of 10 good\. So far 1 of 2 passing sessions in a row/,
      /24 Aug 2026: front squat 33\.5 kg × 5, 5, 5; strict press 23\.54 kg × 5, 5, 5/,
    );
    await ask(24, [], "D, invented");
    await shows(/The coach decided: at most 45 kg until 3 Sep 2026/);
  });

  it("row_80: invented lifters are made anew from their seed", async () => {
    const of = "Played through by invented lifters with so many good repetitions";
    const said = hand.page.locator("[data-invented]");
    const played = async (good, seed) => {
      await ask(20, [lift("box squat"), choose(of, good), ["Seed of their luck", seed]]);
      return keeps(() => said.innerText().catch(() => ""), (found) => found.includes(`of seed ${seed},`));
    };
    const first = await played("0.9", "7");
    assert.match(first, /^10 invented lifters of seed 7, 26 weeks of 2 sessions from the beginning of box squat: half of them take \d+\ssteps? up or fewer/);
    const other = await played("0.9", "8");
    assert.notEqual(other.replace("seed 8", "seed 7"), first);
    assert.equal(await played("0.9", "7"), first);
    // With no miss luck has no say: all go the same way.
    const [, half, tenth, most] = /half of them take (\d+)\ssteps? up or fewer, one in ten (\d+) or fewer, nine in ten (\d+) or fewer/.exec(await played("1", "7")) ?? [];
    assert.ok(Number(half) > 0 && tenth === half && most === half, `${tenth} ${half} ${most}`);
  });

  it("row_81: the safety texts of the library, and the same in pounds", async () => {
    // As they stand in the library, under what they belong to.
    const texts = readFileSync(new URL("../../src/caution/mod.rs", import.meta.url), "utf8");
    const of = (key) => new RegExp(`"${key}" "([^"]+)"`).exec(texts)[1];
    for (const [number, key] of [[8, "estimates_are_ranges"], [20, "gates_unproven"]]) {
      await ask(number);
      const said = await keeps(words, (found) => found.includes(of(key)));
      assert.ok(said.includes(of(key)), `${key}: ${said}`);
    }
    // 47.5359 kg are 104.8 lb.
    await today();
    await hand.tap(".unit");
    await about("box squat", /104\.8 lb · 3 × 5/);
    await hand.tap(".unit");
    await about("box squat", /47\.54 kg · 3 × 5/);
  });

  it("row_82: how far two people mark alike", async () => {
    // Eight of ten alike; by chance 0.7 x 0.7 + 0.3 x 0.3 = 0.58, so (0.8 - 0.58) / 0.42 = 0.52.
    await ask(33, [], "J, invented");
    await big("Ann and Bob: 8 of 10 marks alike");
    await shows(/Agreement beyond chance 0\.52, /, /depth reached\s+8 of 10\s+0\.52/);
    await ask(33);
    await big("Nobody else has marked the same sets");
    // What a second person saw is written down without a look at the first marks.
    await as("I, invented");
    await hand.view("log");
    await hand.tap('[data-act="second-marks"]');
    await hand.page.locator("#rater").fill("Bob");
    await hand.tap('dialog [aria-label="Which set"] [data-value="0"]');
    await hand.tap('dialog [aria-label="Good repetitions"] [data-value="5"]');
    for (const [point, mark] of [["brace held", "met"], ["depth reached", "met"]]) await hand.tap(`dialog [aria-label="${point}"] [data-value="${mark}"]`);
    await hand.tap('[data-act="save-marks"]');
    assert.match(await hand.page.locator("dialog .wrong").innerText(), /Every point, please/);
    await hand.tap('dialog [aria-label="knees track feet"] [data-value="not_met"]');
    await hand.tap('[data-act="save-marks"]');
    await hand.page.getByText("Recorded.").waitFor();
    await ask(33, [], "I, invented");
    await big("The coach and Bob: 2 of 3 marks alike");
  });
});
