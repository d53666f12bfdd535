// What lies behind a damaged row and makes a day more careful stays in force where the rest is left out: limits, a lower
// word of the coach, a break, a lift at rest, a ceiling.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { counts, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, reload, saved, stored, tamper } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const DAY = "2026-08-27";
const limits = (kg, more = {}) => ({ clearance_recorded: { status: "cleared_with_limits", who: "Dr Inv", limits: [{ load: { kg }, ...more }] } });
const ceiling = (log, kg) => {
  const set = structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
  set.lifts.find((one) => one.id === "box squat").ceiling = { kg };
  return { parameters_changed: set };
};

/** Somebody of whom a row is damaged that stands before these entries. */
async function hurt(...kinds) {
  const hand = await handOn(browser);
  await bringIn(hand, fileOf(logOf("Abe", (log) => {
    for (const kind of kinds) further(log, DAY, typeof kind === "function" ? kind(log) : kind);
  })));
  await stored(hand, "events", 703 + kinds.length);
  await tamper(hand, "events", ["Abe", 701], (row) => ({ ...row, text: `${row.text} ` }));
  await reload(hand);
  await hand.tap('[data-act="look-damage"]');
  return hand;
}
async function leave(hand, ...words) {
  await hand.tap('[data-act="damage-leave"]');
  for (const one of words) await says(hand.page.locator("dialog"), one);
  await hand.tap("dialog [data-yes]");
  await counts(hand.page.locator("[data-damaged]"), 0);
  await hand.view("today");
}
const loadOf = async (hand, lift) => {
  const text = (await hand.page.locator(`main [data-lift="${lift}"]`).innerText()).replaceAll("\u00a0", " ");
  return Number(/([\d.]+) kg · /.exec(text)?.[1] ?? 0);
};

describe("what is left out of a damaged log", () => {
  it("keeps a limit, and names it before", async () => {
    const hand = await hurt(limits(30, { region: "knee" }), { body_mass_recorded: { kg: 80 } });
    await leave(hand, /Clearance.*no more than 30 kg \(knee\)/is);
    await says(hand.page.locator("[data-limits]"), /no more than 30 kg \(knee\)/);
    assert.ok((await loadOf(hand, "box squat")) <= 30, "the load of a lift of the knee");
    await reload(hand);
    await says(hand.page.locator("[data-limits]"), /no more than 30 kg/);
    await hand.close();
  });

  it("keeps the coach's lower word, a rest and a planned break", async () => {
    const hand = await hurt(
      { coach_override: { lift: "box squat", load: { kg: 30 }, who: "Coach" } },
      { role_set: { lift: "deadlift", role: "rest" } },
      { layoff_noted: { from: DAY, reason: "planned" } },
    );
    await leave(hand, /box squat.*30 kg/is, /deadlift.*rest/is, /break/i);
    assert.ok((await loadOf(hand, "box squat")) <= 30, "the coach's word");
    await says(hand.page.locator('main [data-lift="deadlift"]'), /rest|leave it out/i);
    const kinds = (await everything(hand)).events.slice(700).map((row) => Object.keys(JSON.parse(row.value.text).kind)[0]);
    assert.ok(kinds.includes("layoff_noted"), String(kinds));
    await hand.close();
  });

  it("keeps a ceiling, of settings that are left out otherwise", async () => {
    const hand = await hurt((log) => ceiling(log, 31.5));
    await leave(hand, /ceiling.*31\.5 kg.*box squat/is);
    assert.ok((await loadOf(hand, "box squat")) <= 31.5, "the ceiling");
    await hand.close();
  });

  it("keeps a limit beside a later one that would take its place", async () => {
    const hand = await hurt(limits(30), limits(45, { region: "knee" }));
    await leave(hand, /no more than 30 kg; .*no more than 45 kg \(knee\)/is);
    await says(hand.page.locator("[data-limits]"), /no more than 30 kg/);
    await says(hand.page.locator("[data-limits]"), /no more than 45 kg \(knee\)/);
    await hand.close();
  });

  it("names what would open something, and leaves that out", async () => {
    const word = (kg) => ({ coach_override: { lift: "box squat", load: { kg }, who: "Coach", why: "a test", expires: "2026-12-01" } });
    const hand = await hurt(word(30), word(35));
    await leave(hand, /box squat: 30 kg/, /Not put into the log.*box squat: 35 kg/s);
    assert.ok((await loadOf(hand, "box squat")) <= 30, "the lower word");
    await hand.close();
  });

  it("keeps a limit that was thrown away from what was set aside, and one in a full copy", async () => {
    const hand = await hurt(limits(30));
    await go(hand, "files");
    const copy = await saved(hand, '[data-act="save-full"]');
    await hand.tap('[data-act="empty"]');
    await hand.tap("dialog [data-yes]");
    await leave(hand, /no more than 30 kg/is);
    await says(hand.page.locator("[data-limits]"), /no more than 30 kg/);
    await hand.close();
    const other = await handOn(browser);
    await bringIn(other, copy);
    await go(other, "files");
    await leave(other, /no more than 30 kg/is);
    await says(other.page.locator("[data-limits]"), /no more than 30 kg/);
    await other.close();
  });
});
