// No bound is shown past what it is: what is allowed at the most is rounded down, what is to be kept at the least up, and what
// was told is shown as it was told. A load that is on the bar is shown in one way everywhere.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { build } from "esbuild";
import { counts, keeps, launch, root, says } from "./browser.mjs";
import { bringIn, fileOf, further, go, handOn, logOf } from "./keep.mjs";

const LAST = "2026-08-27";
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** Somebody cleared within these limits, with other settings if need be; loads are shown in pounds. */
async function limited(limits, change = () => undefined, unit = "lb") {
  const log = logOf("Lim, invented", (own) => {
    const all = structuredClone(own.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
    change(all);
    further(own, LAST, { parameters_changed: all });
    further(own, LAST, { clearance_recorded: { status: "cleared_with_limits", who: "invented clinician", limits } });
  }, { invented: true });
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(log));
  if (unit === "lb") await hand.tap(".unit");
  await says(hand.page.locator("main"), unit === "lb" ? /\blb\b/ : /\bkg\b/);
  return hand;
}

/** All words of the view, folded ones too, as soon as they hold all of these. */
async function shows(hand, ...patterns) {
  const words = () =>
    hand.page.evaluate(() => {
      const main = document.querySelector("main");
      for (const one of main.querySelectorAll("details")) one.open = true;
      return main.innerText.replaceAll("\u00a0", " ");
    });
  const text = await keeps(words, (found) => patterns.every((one) => one.test(found)));
  for (const one of patterns) assert.match(text, one);
  return text;
}

describe("a limit that nothing here can load", () => {
  // 7.03 kg are 15.498 lb, and no bar here is that light.
  it("is one number wherever it stands: 15.4 lb, never 15.5 lb", async () => {
    const hand = await limited([{ load: { kg: 7.03 } }]);
    await hand.ask(24);
    await hand.tap('[aria-label="Health detail on the card"] [data-value="yes"]');
    assert.doesNotMatch(await shows(hand, /Working load 15\.4 lb/, /no more than 15\.4 lb/), /15\.5 lb/);
    await hand.ask(11);
    assert.doesNotMatch(await shows(hand, /Stay at 15\.4 lb/), /15\.5 lb/);
    await hand.ask(9);
    await hand.tap("[aria-label='Lift'] [data-value='strict press']");
    await says(hand.page.locator('main [data-pad="Load"]'), /^15\.4\s+lb$/);
    // Nothing of it can be loaded: what is typed changes nothing about that.
    await hand.pad("Load", "15.5");
    assert.equal(await hand.big(), "Leave it out today");
    assert.match(await hand.why(), /no more than 15\.4 lb/);
    await hand.close();
  });
});

describe("a load that is just within a limit", () => {
  // 20 kg are 44.092 lb: the limit is 44 lb in words, and the empty bar of 20 kg would be 44.1 lb.
  it("is nowhere shown above it: 44 lb, never 44.1 lb", async () => {
    const hand = await limited([{ load: { kg: 20 } }]);
    await hand.tap('main [data-lift="box squat"]');
    assert.doesNotMatch(await shows(hand, /no more than 44 lb/, /44 lb · \d × \d/), /44\.1 lb/);
    await hand.tap('article[data-lift="box squat"] [data-act="set"]');
    await says(hand.page.locator("dialog .stepper .number"), /^44 lb$/);
    await hand.tap('[data-act="all-met"]');
    await hand.tap('[data-act="save-set"]');
    assert.doesNotMatch(await shows(hand, /44 lb × \d, all good/), /44\.1 lb/);
    for (const [number, words] of [[11, /Stay at 44 lb/], [24, /44 lb/], [9, /44\s+lb/]]) {
      await hand.ask(number);
      if (number === 9) await hand.tap("[aria-label='Lift'] [data-value='box squat']");
      if (number === 24) await hand.tap('[aria-label="Health detail on the card"] [data-value="yes"]');
      assert.doesNotMatch(await shows(hand, words), /44\.1 lb/, `question ${number}`);
    }
    await hand.close();
  });
});

describe("the load of the day", () => {
  it("is never called the most in the words of what is more", async () => {
    const hand = await limited([{ effort: 6 }], undefined, "kg");
    await hand.ask(9);
    await hand.tap("[aria-label='Lift'] [data-value='strict press']");
    // As much left as is asked: nothing but the day's load speaks. With a pair of 5 lb on the bar it is 23.0359 kg.
    await hand.tap("[aria-label='It felt like so many left'] [data-value='5']");
    await hand.pad("Load", "23.04");
    assert.equal(await hand.big(), "At most 23.03 kg today");
    assert.match(await hand.why(), /^23\.04 kg is more than this day allows/);
    await hand.pad("Load", "23.036");
    assert.equal(await hand.big(), "At most 23.03 kg today");
    assert.match(await hand.why(), /^23\.036 kg is more than this day allows/);
    await hand.close();
  });
});

describe("a limit of range", () => {
  it("is shown as it was told, and so are the ranges of the lift beside it", async () => {
    const hand = await limited([{ range: { mm: 400.6 } }, { region: "shoulder", range: { mm: 299.95 } }], (all) => {
      all.lifts.find((one) => one.id === "strict press").ranges = [{ mm: 250.4 }, { mm: 400.65 }];
    }, "kg");
    await go(hand, "log");
    await shows(hand, /no range beyond 400\.6 mm/, /no range beyond 299\.95 mm/);
    await go(hand, "today");
    await hand.tap('main [data-lift="strict press"]');
    await shows(hand, /· 250\.4 mm/);
    await hand.page.evaluate(() => { location.hash = "plan"; });
    await hand.page.locator('[data-sentence="strict press"] button').first().click();
    await shows(hand, /From easiest to full: 250\.4 mm, 400\.65 mm\./);
    await hand.close();
  });

  it("is shown as it is typed", async () => {
    const hand = await limited([{ effort: 6 }]);
    await box(hand, "A clearance");
    await hand.tap('dialog [aria-label="What was said"] [data-value="cleared_with_limits"]');
    await typed(hand, "Deepest range", "400.6");
    await says(hand.page.locator('dialog [data-pad="Deepest range"]'), /^400\.6\s+mm$/);
    await hand.close();
  });
});

async function box(hand, name) {
  await go(hand, "log");
  await hand.page.evaluate(() => { for (const one of document.querySelectorAll("main details")) one.open = true; });
  await hand.page.getByRole("button", { name, exact: true }).click();
}
async function typed(hand, label, number) {
  await hand.tap(`[data-pad="${label}"]`);
  const pad = hand.page.locator(`dialog[aria-label="${label}"]`);
  await pad.locator("input").fill(number);
  await pad.locator('[data-key="ok"]').click();
}

describe("the word of the coach", () => {
  it("is the same where it is typed and in the log", async () => {
    const hand = await limited([{ effort: 6 }]);
    await box(hand, "The coach decides otherwise");
    await hand.tap('dialog [data-value="strict press"]');
    await typed(hand, "Load allowed", "15.75");
    await says(hand.page.locator('dialog [data-pad="Load allowed"]'), /^15\.75\s+lb$/);
    await hand.page.locator("dialog #who").fill("invented coach");
    await hand.tap('dialog [data-act="write-down"]');
    await shows(hand, /at most 15\.75 lb/);
    await hand.close();
  });

  it("as what a question is asked of, stays as it was typed", async () => {
    const hand = await limited([{ effort: 6 }]);
    await hand.ask(16);
    await hand.pad("Blocks then", "100");
    await hand.pad("Load now", "15.75");
    await says(hand.page.locator('main [data-pad="Load now"]'), /^15\.75\s+lb$/);
    assert.equal(await hand.big(), "Stay at 15.75 lb");
    await hand.close();
  });

  it("on how much of another lift is allowed keeps its tenths of a percent", async () => {
    const hand = await limited([{ effort: 6 }], (all) => { all.pairs[0].ratio_cap = 0.666; });
    await hand.page.evaluate(() => { location.hash = "plan"; });
    await shows(hand, /At most 66\.6 %/);
    await counts(hand.page.getByRole("button", { name: /: at most 66\.6 % of / }), 1);
    await hand.close();
  });
});

describe("a band", () => {
  it("holds all that it stands for: its low end is rounded down, its high end up", async () => {
    const hand = await limited([{ effort: 6 }], undefined, "kg");
    await hand.ask(2);
    // 20 kg and a pair of 5 lb, 24.5359 kg: 2 % less are 24.0452 kg, 2 % more 25.0266 kg.
    await hand.page.getByRole("button", { name: /^5 lb/ }).click();
    await shows(hand, /within 2 % of its face: 24\.04 kg to 25\.03 kg\./);
    await hand.close();
  });

  it("of two ends that differ is never called less than it is", async () => {
    const hand = await limited([{ effort: 6 }]);
    await hand.tap('main [data-lift="box squat"]');
    // Discs of 10 kg, 22.046 lb, go on one end and then on the other.
    await shows(hand, /neither is ever more than 22\.1 lb heavier than the other/);
    await hand.close();
  });
});

describe("numbers", () => {
  let numbers;
  before(async () => {
    const packaged = join(root, "dist", "package", "slim.js");
    const { outputFiles } = await build({
      stdin: { contents: 'export * from "./numbers.ts"; export * from "./engine.ts"; export { default as init } from "bismar-page-package";', resolveDir: join(root, "src"), loader: "ts" },
      bundle: true,
      write: false,
      format: "esm",
      target: "es2022",
      define: { WASM_BASE64: '""' },
      plugins: [{ name: "package", setup: (setup) => setup.onResolve({ filter: /^bismar-page-package$/ }, () => ({ path: packaged })) }],
    });
    numbers = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString("base64")}`);
    await numbers.init(await readFile(join(root, "dist", "package", "bismar.wasm")));
  });

  it("what is allowed is not wider in words than it is", () => {
    numbers.setUnit("lb");
    // 7 kg are 15.432 lb, 14.2 kg 31.306 and 14 kg 30.865.
    assert.equal(numbers.allowed({ unit: "kg", low: 7, high: 14.2 }), " Allowed: 15.5 lb to 31.3 lb.");
    assert.equal(numbers.allowed({ unit: "kg", low: 7, high: 14 }), " Allowed: 15.5 lb to 30.8 lb.");
    // As much help as that, and no more: 4409.245 lb.
    assert.equal(numbers.allowed({ unit: "kg", low: -2000, high: 2000 }), " Allowed: 4409.2 lb of help to 4409.2 lb.");
    // The refused value is said as it was typed, and so on its own side of the bound.
    const { refused } = numbers.attempt("page.mass", { mass: { lb: 4409.25 } });
    assert.match(refused.message, /4409\.25 lb\b.* to 4409\.2 lb\.$/);
    // One that is far beyond what the library takes is refused in words too.
    assert.match(numbers.attempt("page.mass", { mass: { kg: 9_999_999 } }).refused.message, /22046224 lb\b.* to 4409\.2 lb\.$/);
  });

  it("no part is shown past what it is", () => {
    // As it was told, though 0.57 times 100 and 0.669 times 100 are no whole numbers in binary.
    for (const [part, words] of [[0.57, "57 %"], [0.666, "66.6 %"], [0.669, "66.9 %"], [0.9, "90 %"], [1, "100 %"], [0.0255, "2.55 %"], [2 / 3, "66.6 %"], [0, "0 %"]])
      assert.equal(numbers.atMostPart(part), words);
  });

  it("no load passes a limit that it is within, in words, in either unit", () => {
    const read = (text) => Number.parseFloat(text) * (text.endsWith("of help") ? -1 : 1);
    let sooner = 0;
    for (const unit of ["kg", "lb"]) {
      numbers.setUnit(unit);
      for (let at = -150; at < 400; at += 1) {
        const most = { kg: at * 0.50021 + 0.0005 * (at % 7) };
        for (const less of [0, 1e-4, 0.004, 0.0226, 0.05, 3]) {
          const load = { kg: most.kg - less };
          numbers.setLimiting([]);
          const alone = [numbers.mass(load), numbers.written(load)].map(read);
          numbers.setLimiting([{ kg: most.kg + 40 }, most]);
          const shown = [numbers.mass(load), numbers.written(load), numbers.atMostOf(most, load)].map(read);
          const limit = read(numbers.atMost(most));
          for (const one of shown.slice(0, 2)) assert.ok(one <= limit, `${load.kg} kg as ${one} under ${limit} ${unit}`);
          if (less > 0) assert.ok(shown[2] <= limit);
          sooner += alone.some((one) => one > limit) ? 1 : 0;
          // No further down than the last digit that is shown.
          for (const [which, one] of shown.slice(0, 2).entries()) assert.ok(alone[which] - one <= 0.11);
        }
      }
    }
    numbers.setLimiting([]);
    assert.ok(sooner > 100, `${sooner} loads would have been shown above their limit`);
  });

  it("no bound passes itself, in either unit, with help and without", () => {
    for (const unit of ["kg", "lb"]) {
      numbers.setUnit(unit);
      const own = (kg) => (unit === "kg" ? kg : kg / 0.45359237);
      const read = (text) => Number.parseFloat(text) * (text.endsWith("of help") ? -1 : 1);
      for (let at = -400; at < 400; at += 1) {
        const kg = at * 1.23457 + 0.001;
        const [most, least] = [read(numbers.atMost({ kg })), read(numbers.atLeast({ kg }))];
        assert.ok(most <= own(kg) + 1e-9 && own(kg) - most <= 0.1, `${most} for ${own(kg)}`);
        assert.ok(least >= own(kg) - 1e-9 && least - own(kg) <= 0.1, `${least} for ${own(kg)}`);
      }
    }
  });

  it("a load of the day is that on the bar, or else never above its limit", () => {
    numbers.setUnit("lb");
    const [limit, granted] = [{ kg: 7.03 }, { kg: 60 }];
    assert.equal(numbers.limitOfDay({ limit, granted: { work: { load: granted } } }), "15.4 lb");
    // 60 kg, 132.277 lb, are on the bar: as everywhere else.
    assert.equal(numbers.limitOfDay({ limit: granted, load: granted, granted: { work: { load: granted } } }), "132.3 lb");
    assert.equal(numbers.limitOfDay({ limit: granted, load: { kg: 40 }, granted: { work: { load: granted } } }), "132.3 lb");
    assert.equal(numbers.loadOfDay({ limit }), "15.4 lb");
    assert.equal(numbers.loadOfDay({ limit, load: granted }), "132.3 lb");
  });
});
