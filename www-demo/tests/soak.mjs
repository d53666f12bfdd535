// Goes at random over the page for an hour and compares what is stored with a model after every step: nothing lost, nothing
// hidden, nothing left of somebody who was erased.
//
//   node www-demo/tests/soak.mjs [--minutes 60] [--seed 1]
//
// Two windows on one device, files that add, replace and are broken, windows and the whole browser killed in mid-write, days
// that jump, storage that refuses. Every drawing comes from the seed; it is printed, and a failure prints the last steps.
import { spawnSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { FILE } from "./browser.mjs";
import { demoPlan, fileOf, further, logOf, mute } from "./keep.mjs";

const option = (name, usual) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
};
const minutes = option("minutes", 60);
const seed = option("seed", 1);

/** Numbers from the seed (mulberry32). */
let state = seed >>> 0;
function draw() {
  state = (state + 0x6d2b79f5) >>> 0;
  let mixed = Math.imul(state ^ (state >>> 15), state | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
}
const below = (count) => Math.floor(draw() * count);
const oneOf = (all) => all[below(all.length)];
const chance = (part) => draw() < part;

const folder = await mkdtemp(join(tmpdir(), "bismar-soak-"));
const steps = [];
const counts = {};
let day = "2026-08-28";

// ---- The browser: a real profile on a real disk, so that it can be killed whole.

let context;
let windows = [];

async function start() {
  context = await chromium.launchPersistentContext(join(folder, "profile"), {
    executablePath: process.env.BISMAR_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    viewport: { width: 900, height: 1100 },
    acceptDownloads: true,
  });
  windows = [];
  for (const page of context.pages()) await page.close().catch(() => undefined);
}

/** A window; a deaf one hears nothing from the other and does not look when it comes to the front. */
async function open() {
  const page = await context.newPage();
  page.deaf = chance(0.4);
  page.setDefaultTimeout(8_000);
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.clock.setFixedTime(new Date(`${day}T12:00:00`));
  if (page.deaf) {
    await page.addInitScript(() => {
      globalThis.BroadcastChannel = class { postMessage() {} };
      const { addEventListener: listen } = EventTarget.prototype;
      EventTarget.prototype.addEventListener = function (name, ...rest) {
        if (name !== "focus" && name !== "visibilitychange") listen.call(this, name, ...rest);
      };
    });
  }
  await page.addInitScript(mute, false);
  await page.goto(FILE);
  await page.waitForSelector("html[data-ready]");
  windows.push(page);
  return page;
}
const complaints = [];

// ---- The model: per lifter the texts of the log, the sets of the session going on, and whether a stop is open.

let model = new Map();
/** What was put in place of something else and must be found among what is set aside. */
let aside = [];
/** Names that were erased: nothing may hold them. */
const erased = new Set();
let people = 0;

async function stored() {
  const page = await context.newPage();
  try {
    await page.goto(`${FILE}#none`);
    return await page.evaluate(async () => {
      const base = await new Promise((resolve, reject) => {
        const opening = indexedDB.open("bismar lifters");
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error);
      });
      const found = {};
      for (const name of base.objectStoreNames) {
        const asked = base.transaction(name).objectStore(name).getAll();
        found[name] = await new Promise((resolve, reject) => {
          asked.onsuccess = () => resolve(asked.result);
          asked.onerror = () => reject(asked.error);
        });
      }
      const asked = base.transaction("settings").objectStore("settings").getAllKeys();
      found.keys = await new Promise((resolve) => (asked.onsuccess = () => resolve(asked.result)));
      base.close();
      return found;
    });
  } finally {
    await page.close();
  }
}

function logs(found) {
  const all = new Map();
  for (const { id } of found.lifters) all.set(id, { texts: [], draft: [] });
  for (const row of found.events) (all.get(row.lifter) ?? fail(`events of ${row.lifter} without a row`)).texts.push(row.text);
  for (const row of found.drafts) (all.get(row.lifter) ?? fail(`sets of ${row.lifter} without a row`)).draft.push(row.text);
  return all;
}

class Failed extends Error {}
function fail(words) {
  throw new Failed(words);
}

/** Compares with the model: `may` says what may have come at the end of which log; what is certain must be there. */
async function compare(may = {}) {
  const found = await stored();
  const all = logs(found);
  for (const [id, was] of model) {
    const now = all.get(id);
    const change = may[id];
    if (!now) {
      if (change?.gone) {
        model.delete(id);
        continue;
      }
      fail(`${id} is not there any more`);
    }
    if (change?.replaced && JSON.stringify(contents(now.texts)) === JSON.stringify(contents(change.replaced))) {
      if (JSON.stringify(contents(was.texts)) !== JSON.stringify(contents(now.texts.slice(0, was.texts.length)))) aside.push({ id, texts: was.texts });
      model.set(id, { texts: now.texts, draft: now.draft, stop: change.stop });
      if (JSON.stringify(now.draft) !== JSON.stringify(was.draft)) fail(`the session going on of ${id} was lost with its log`);
      continue;
    }
    was.texts.forEach((text, at) => now.texts[at] === text || fail(`${id}: entry ${at + 1} of ${was.texts.length} is ${now.texts[at]}, was ${text}`));
    const added = now.texts.slice(was.texts.length).map((text) => JSON.parse(text));
    const fits = change?.events ?? [];
    const sets = was.draft.length;
    if (added.length > 0) {
      const options = fits.filter((one) => one.length === added.length && one.every((test, at) => test(added[at])));
      if (options.length === 0) fail(`${id}: ${added.length} entries came that nobody wrote: ${JSON.stringify(added).slice(0, 300)}`);
    } else if (change?.must) fail(`${id}: what was said to be recorded is not there`);
    // Sets leave the list only when a session is written.
    const session = added.some((event) => event.kind.session_recorded);
    if (session) {
      const lifted = added.flatMap((event) => event.kind.session_recorded?.lifts ?? []).reduce((sum, lift) => sum + lift.sets.length, 0);
      // A window that knew of fewer sets ends these; the others stay on the list.
      if (lifted + setsOf(now.draft) < setsOf(was.draft)) fail(`${id}: a session of ${lifted} sets came of ${setsOf(was.draft)}, and ${setsOf(now.draft)} are left`);
      if (now.draft.length > 0 && !change?.both && lifted >= setsOf(was.draft)) fail(`${id}: the sets of a session that was written are still on the list`);
    } else {
      was.draft.forEach((text, at) => now.draft[at] === text || fail(`${id}: set ${at + 1} of ${sets} is gone`));
      const more = now.draft.length - sets;
      if (more > 0 && !(change?.sets ?? []).includes(more)) fail(`${id}: ${more} sets came that nobody lifted`);
      if (more === 0 && change?.mustSets) fail(`${id}: sets that were on the list are not there`);
    }
    const stop = was.stop || added.some((event) => event.kind.symptom_report);
    model.set(id, { texts: now.texts, draft: now.draft, stop });
  }
  for (const [id, now] of all) {
    if (model.has(id)) continue;
    if (!may[id]?.fresh || JSON.stringify(contents(now.texts)) !== JSON.stringify(contents(may[id].fresh))) fail(`${id} came from nowhere`);
    model.set(id, { ...now, stop: may[id].stop });
  }
  for (const one of aside) {
    const there = found.asides.some((row) => row.lifter === one.id && one.texts.every((text) => row.text.includes(JSON.stringify(text).slice(1, -1).replaceAll("\\", "\\").slice(0, 40))));
    if (!there && !erased.has(one.id)) fail(`what ${one.id} had before is not set aside`);
  }
  const raw = JSON.stringify(found);
  for (const name of erased) if (raw.includes(`"${name}"`) || raw.includes(`\\"${name}\\"`)) fail(`${name} was erased and is still stored`);
}
/** Sets that count: an undo takes the last away. */
const setsOf = (draft) => draft.map((text) => JSON.parse(text)).reduce((sum, one) => sum + (one.undo ? -1 : 1), 0);
const contents = (texts) => texts.map((text) => {
  const { sequence, day, kind, note } = JSON.parse(text);
  return JSON.stringify(sorted([sequence, day, kind, note ?? null]));
});
function sorted(tree) {
  if (Array.isArray(tree)) return tree.map(sorted);
  if (typeof tree !== "object" || tree === null) return tree;
  return Object.fromEntries(Object.keys(tree).toSorted().map((key) => [key, sorted(tree[key])]));
}

// ---- Hands.

const go = (page, place) => page.locator(`[data-place="${place}"]`).click();
const shown = (page) => page.locator("header .who").innerText();
async function choose(page, id) {
  if ((await shown(page)) === id) return true;
  await go(page, "lifters");
  const one = page.locator(`[data-lifter="${id}"]`);
  if ((await one.count()) === 0) return false;
  await one.click();
  // Who is in view is written first, then shown.
  await page.locator("header .who", { hasText: id }).waitFor();
  await page.locator('main[data-view="today"]').waitFor();
  return true;
}
/** Answers what the page asks about the day; says whether it is to be recorded. */
async function answerDay(page) {
  await page.waitForTimeout(60);
  const box = page.locator("dialog", { hasText: /Is it really|Which day is it\?/ });
  if ((await box.count()) === 0) return true;
  const act = oneOf(["is-today", "device-day", "log-day", "not-today"]);
  const found = box.locator(`[data-act="${act}"]`);
  const taken = (await found.count()) > 0 ? act : "not-today";
  await box.locator(`[data-act="${taken}"]`).click();
  return taken !== "not-today";
}
/** Leaves whatever box is open, with what is entered in it. */
async function leave(page) {
  for (let times = 0; times < 6 && (await page.locator("dialog[open]").count()) > 0; times += 1) {
    const so = page.locator('dialog [data-act="leave-so"], dialog [data-act="leave-entered"]');
    if ((await so.count()) > 0) await so.last().click();
    else await page.keyboard.press("Escape");
    await page.waitForTimeout(60);
  }
  if ((await page.locator("dialog[open]").count()) > 0) fail("a box could not be left");
  return {};
}
/** What the page says of its writing. */
async function says(page) {
  await page.waitForTimeout(120);
  const text = await page.locator(".says").innerText().catch(() => "");
  return { text, stuck: /Not kept on this device|do(es)? not fit it|no longer in the log|No set was taken off|changed meanwhile/.test(text) };
}
const upload = async (page, text) => {
  const path = join(folder, `file-${steps.length}.json`);
  await writeFile(path, text);
  await go(page, "files");
  await page.locator("#open-file").setInputFiles(path);
  await page.locator("main [data-incoming], [data-refused]").first().waitFor();
  await rm(path);
};

const ACTS = {
  async mass(page, id) {
    await go(page, "log");
    const mass = page.getByRole("button", { name: "Body mass", exact: true });
    if (!(await mass.isVisible())) await page.getByText("Write down something else").click();
    await mass.click();
    const kg = 50 + below(60);
    await page.locator('[data-pad="Body mass"]').click();
    for (const digit of String(kg)) await page.locator(`dialog [data-key="${digit}"]`).click();
    await page.locator('dialog [data-key="ok"]').click();
    await page.locator("dialog button.main").last().click();
    if (!(await answerDay(page))) return leave(page);
    const { stuck } = await says(page);
    return { [id]: { events: [[(event) => event.kind.body_mass_recorded?.kg === kg]], must: !stuck } };
  },
  async sets(page, id) {
    await go(page, "today");
    if ((await page.locator('[data-act="all-good"]').count()) === 0) return {};
    await page.locator('[data-act="all-good"]').first().click();
    await page.locator('dialog [aria-label="Was it watched?"] [data-value="yes"]').click();
    await page.locator('dialog [aria-label^="Left in reserve"] [data-value="3"]').click();
    await page.locator('[data-act="save-good"]').click();
    await page.waitForTimeout(60);
    const again = page.locator('dialog [data-act="save-good"]');
    if ((await again.count()) > 0) await again.click();
    const { stuck } = await says(page);
    return { [id]: { sets: [1, 2, 3, 4, 5, 6], mustSets: !stuck } };
  },
  async undo(page, id) {
    await go(page, "today");
    const undo = page.locator('[data-act="undo-set"]');
    if ((await undo.count()) === 0) return {};
    await undo.click();
    const { stuck } = await says(page);
    return { [id]: { sets: [1], mustSets: !stuck } };
  },
  async finish(page, id) {
    await go(page, "today");
    if ((await page.locator('[data-act="finish"]').count()) === 0) return {};
    await page.locator('[data-act="finish"]').click();
    const days = page.locator('dialog [aria-label="On which day was it lifted?"] button');
    if ((await days.count()) > 0) await days.nth(below(await days.count())).click();
    const none = page.locator('[data-act="no-pain"]');
    if (!(await none.isEnabled())) return leave(page);
    await none.click();
    if (!(await answerDay(page))) return leave(page);
    const { stuck, text } = await says(page);
    return { [id]: { events: [[(event) => event.kind.session_recorded !== undefined]], must: !stuck && /Recorded\./.test(text) } };
  },
  async takeBack(page, id) {
    await go(page, "log");
    const undo = page.locator('[data-act="undo"]');
    if ((await undo.count()) === 0 || /settings|lifts, bars|parameters/i.test(await undo.innerText())) return {};
    // A stop that is taken back opens again; the model keeps to stops that stay.
    if (model.get(id)?.stop) return {};
    await undo.click();
    await page.waitForTimeout(60);
    // It asks where something opens again; then nothing is taken back.
    if ((await page.locator("dialog[open]").count()) > 0) return leave(page);
    const { stuck, text } = await says(page);
    return { [id]: { events: [[(event) => event.kind.correction !== undefined]], must: !stuck && /Recorded\./.test(text) } };
  },
  async point(page, id) {
    await go(page, "lifters");
    await page.locator('main [data-act="plan"]').first().click();
    const edit = page.locator('[data-act="edit-lift"]');
    if ((await edit.count()) === 0) return {};
    await page.evaluate(() => { for (const one of document.querySelectorAll("main details.more")) one.open = true; });
    await edit.nth(below(await edit.count())).click();
    const name = `point ${below(99)}`;
    await page.locator("#criterion").fill(name);
    await page.getByRole("button", { name: "Another point of technique: add", exact: true }).click();
    const save = page.locator('[data-act="save-lift"]');
    if ((await save.count()) === 0) return {};
    await save.click();
    if (!(await answerDay(page))) {
      // What was changed and not written down is asked about.
      await go(page, "today");
      await page.waitForTimeout(60);
      return leave(page);
    }
    const { stuck, text } = await says(page);
    return { [id]: { events: [[(event) => event.kind.parameters_changed?.lifts.some((lift) => lift.criteria.some((one) => one.id === name))]], must: !stuck && /Recorded\./.test(text) } };
  },
  /** A sign that is tapped among the day's questions and left by Escape: asked about, and written or knowingly left. */
  async entered(page, id) {
    await go(page, "today");
    const open = page.locator('main [data-act="day"]');
    if ((await open.count()) === 0) return {};
    await open.first().click();
    await page.locator("dialog").getByRole("button", { name: "A fall since last time" }).click();
    for (let times = below(3); times >= 0; times -= 1) {
      await page.keyboard.press("Escape");
      const asked = page.locator("dialog", { hasText: "it is not in the log yet" });
      await asked.waitFor({ timeout: 2_000 }).catch((error) => fail(`a sign that was tapped was left without a question: ${error.message}`));
      if (times === 0) break;
      await page.locator('[data-act="leave-not"]').click();
      await asked.waitFor({ state: "detached" });
    }
    const act = oneOf(["leave-write", "leave-so"]);
    await page.locator(`[data-act="${act}"]`).click();
    if (act === "leave-so") return {};
    const { stuck } = await says(page);
    await leave(page);
    return { [id]: { events: [[(event) => event.kind.day_report?.asks?.includes("fall")]], must: !stuck } };
  },
  async stop(page, id) {
    await page.locator(".stop-button").click();
    const sign = page.locator("main .sign", { hasText: /chest/i });
    if ((await sign.count()) === 0) return {};
    await sign.click();
    const { stuck } = await says(page);
    return { [id]: { events: [[(event) => event.kind.symptom_report !== undefined]], must: !stuck } };
  },
  async dayRight(page, id) {
    await go(page, "today");
    const right = page.locator('[data-act="days-right"]');
    if ((await right.count()) === 0) return {};
    await right.click();
    await says(page);
    const correction = (event) => event.kind.correction?.day !== undefined;
    return { [id]: { events: Array.from({ length: 60 }, (_, count) => Array(count + 1).fill(correction)) } };
  },
  async fileAdds(page, id) {
    const was = model.get(id);
    const log = { format: "bismar-log", version: 1, lifter: JSON.parse(was.header ?? `{"id":${JSON.stringify(id)},"born":"1967-05-20"}`), events: was.texts.map((text) => JSON.parse(text)) };
    const on = log.events.reduce((most, one) => (one.day > most ? one.day : most), day);
    const kg = 50 + below(60);
    further(log, on, { body_mass_recorded: { kg } });
    if (chance(0.3)) further(log, on, { symptom_report: { signs: ["faint"] } });
    await upload(page, fileOf(log));
    const add = page.locator('[data-act="bring-in"]');
    if ((await add.count()) === 0) return {};
    await add.click();
    await page.waitForTimeout(60);
    // Asked where a load opens by it.
    if ((await page.locator("dialog [data-yes]").count()) > 0) await page.locator("dialog [data-yes]").click();
    await says(page);
    const more = log.events.slice(was.texts.length);
    return { [id]: { events: [more.map((one) => (event) => event.sequence === one.sequence && Object.keys(event.kind)[0] === Object.keys(one.kind)[0])] } };
  },
  async fileReplaces(page, id) {
    const was = model.get(id);
    const keep = Math.max(2, was.texts.length - 1 - below(5));
    const stop = chance(0.5);
    const events = was.texts.slice(0, keep).map((text) => JSON.parse(text));
    const log = { format: "bismar-log", version: 1, lifter: { id, born: "1967-05-20" }, events };
    const on = events.reduce((most, one) => (one.day > most ? one.day : most), day);
    further(log, on, stop ? { symptom_report: { signs: ["chest_pain"] } } : { body_mass_recorded: { kg: 61 } });
    // A log cut before an entry that a kept one corrects is refused; then nothing changes.
    await upload(page, fileOf(log));
    const replace = page.locator('[data-act="replace"]');
    if ((await replace.count()) === 0) return {};
    await replace.click();
    await page.locator("dialog [data-yes]").click();
    await says(page);
    const stays = events.some((one) => one.kind.symptom_report);
    return { [id]: { replaced: log.events.map((one) => JSON.stringify(one)), stop: stop || stays } };
  },
  async fileBroken(page) {
    const text = fileOf(logOf(`Broken ${below(9)}`));
    await upload(page, oneOf([text.slice(0, below(text.length)), text.replace('"version":1', '"version":0'), text.replace('"kg"', '"stone"'), "", "[]"]));
    if ((await page.locator("[data-refused]").count()) === 0) fail("a broken file was not refused");
    return {};
  },
  async newLifter(page) {
    people += 1;
    const id = `Soak ${people}, invented`;
    const log = logOf(id, (one) => (one.events.length = 40 + below(600)));
    await upload(page, fileOf({ log, plan: demoPlan }));
    const bring = page.locator('[data-act="bring-in"]');
    if ((await bring.count()) === 0) return {};
    await bring.click();
    await says(page);
    return { [id]: { fresh: log.events.map((one) => JSON.stringify(one)), stop: false } };
  },
  async erase(page, id) {
    await go(page, "files");
    await page.locator('[data-act="erase"]').click();
    await page.locator("dialog [data-yes]").click();
    const { text } = await says(page);
    if (/was erased/.test(text)) {
      erased.add(id);
      model.delete(id);
      aside = aside.filter((one) => one.id !== id);
      return {};
    }
    return { [id]: { gone: true } };
  },
  async back(page) {
    for (let count = below(5); count >= 0; count -= 1) await page.evaluate(() => history.back()).catch(() => undefined);
    await page.waitForTimeout(200);
    if (!page.url().startsWith(FILE)) await page.goto(FILE);
    await page.waitForSelector("html[data-ready]");
    return {};
  },
  async reload(page) {
    await page.reload();
    await page.waitForSelector("html[data-ready]");
    return {};
  },
};

const merged = (one, other) => {
  const all = { ...one };
  for (const [id, change] of Object.entries(other)) {
    const was = all[id] ?? {};
    all[id] = { ...was, ...change, events: [...(was.events ?? []), ...(change.events ?? [])], sets: [...(was.sets ?? []), ...(change.sets ?? [])] };
  }
  return all;
};
/** Sets that another window put on the list stay when a session is ended without them. */
const apart = (may) => Object.fromEntries(Object.entries(may).map(([id, change]) => [id, { ...change, both: true }]));
const unsure = (may) => Object.fromEntries(Object.entries(may).map(([id, change]) => [id, { ...change, must: false, mustSets: false }]));

/** What every window shows must be what is stored: as many entries, and every stop. */
async function nothingHidden(page) {
  await page.evaluate(() => dispatchEvent(new Event("focus")));
  if (page.deaf) await ACTS.reload(page);
  await page.waitForTimeout(150);
  for (const [id, was] of model) {
    if (!chance(0.5)) continue;
    if (!(await choose(page, id))) fail(`${id} is not to be found in the list of lifters`);
    if (was.stop && (await page.locator(".stop-band").count()) === 0) fail(`the stop of ${id} is not shown`);
    await go(page, "log");
    const text = await page.locator("main").innerText();
    if (!text.includes(`${was.texts.length} event${was.texts.length === 1 ? "" : "s"}.`)) fail(`the log of ${id} shows ${/\d+ events?/.exec(text)?.[0]} of ${was.texts.length}`);
    if (/Something went wrong/.test(text)) fail(text);
  }
}

const KILLS = {
  /** The process of the window stops for ever in mid-write, and is killed. */
  async window(page, act) {
    const wire = await context.browser()?.newBrowserCDPSession?.().catch(() => undefined);
    const last = 1 + below(4);
    await page.evaluate((last) => {
      let count = 0;
      for (const name of ["add", "put", "delete"]) {
        const own = IDBObjectStore.prototype[name];
        IDBObjectStore.prototype[name] = function (...rest) {
          count += 1;
          if (count === last) for (;;);
          return own.apply(this, rest);
        };
      }
    }, last);
    const may = await Promise.race([act().catch(() => undefined), new Promise((resolve) => setTimeout(resolve, 2_500))]);
    void wire;
    await killAll();
    return may;
  },
};
/** Kills the whole browser, as a battery that runs out does, and starts it again on the same profile. */
async function killAll() {
  const pid = browserPid();
  const closed = new Promise((resolve) => context.once("close", resolve));
  if (pid) process.kill(pid, "SIGKILL");
  await Promise.race([closed, new Promise((resolve) => setTimeout(resolve, 3_000))]);
  await new Promise((resolve) => setTimeout(resolve, 300));
  for (const name of ["SingletonLock", "SingletonSocket", "SingletonCookie"]) await rm(join(folder, "profile", name), { force: true });
  await start();
  await open();
  await open();
}
/** The browser of this run: the process that this one started for its own profile. */
function browserPid() {
  const found = spawnSync("ps", ["-eo", "pid,ppid,args"], { encoding: "utf8" }).stdout.split("\n").find((line) => line.includes(`--user-data-dir=${join(folder, "profile")}`) && !line.includes("--type="));
  return found ? Number(found.trim().split(/\s+/)[0]) : undefined;
}

async function step() {
  const page = oneOf(windows);
  await page.bringToFront();
  const names = ["mass", "mass", "sets", "sets", "sets", "finish", "finish", "undo", "takeBack", "stop", "point", "point", "fileAdds", "fileAdds", "fileReplaces", "fileBroken", "newLifter", "erase", "back", "reload", "dayRight", "dayRight", "entered", "entered", "clock", "room", "silent", "kill", "both", "both"];
  let name = oneOf(names);
  if (model.size === 0 || (name === "newLifter" && model.size > 4)) name = model.size === 0 ? "newLifter" : "mass";
  const id = model.size > 0 ? oneOf([...model.keys()]) : "";
  steps.push(`${steps.length + 1} window ${windows.indexOf(page) + 1}${page.deaf ? " (deaf)" : ""}: ${name} ${id}`);
  counts[name] = (counts[name] ?? 0) + 1;
  if (name === "clock") {
    day = oneOf(["2026-08-28", "2026-08-29", "2026-09-03", "2026-12-24", "2031-05-01", "2026-08-28", "2001-01-01"]);
    steps.push(`   the day is ${day}`);
    for (const one of windows) {
      await one.clock.setFixedTime(new Date(`${day}T12:00:00`));
      await ACTS.reload(one);
    }
    return compare();
  }
  const plain = ["mass", "sets", "finish", "undo", "takeBack", "stop", "point", "fileAdds", "fileReplaces", "erase"];
  if (!["newLifter", "fileBroken", "back", "reload"].includes(name) && !(await choose(page, id))) {
    // Where another window began or erased somebody, a deaf one finds out when it is opened anew.
    await ACTS.reload(page);
    if (!(await choose(page, id))) fail(`${id} is not to be found in the list of lifters`);
  }
  if (name === "kill") {
    const inner = oneOf(plain);
    steps.push(`   killed while: ${inner}`);
    const may = await KILLS.window(page, () => ACTS[inner](page, id));
    // What was asked for may be there or not; nothing else may.
    const any = () => true;
    const open = { events: [[any], [any, any]], sets: [1, 2, 3, 4, 5, 6], gone: inner === "erase" };
    return compare(unsure(merged(may ?? {}, { [id]: { ...open, ...(inner === "fileReplaces" ? { replaced: may?.[id]?.replaced } : {}) } })));
  }
  if (name === "room") {
    const inner = oneOf(["mass", "sets", "finish", "fileAdds"]);
    steps.push(`   no room while: ${inner}`);
    await page.evaluate(() => {
      const { add, put } = IDBObjectStore.prototype;
      globalThis.room = () => Object.assign(IDBObjectStore.prototype, { add, put });
      IDBObjectStore.prototype.add = IDBObjectStore.prototype.put = () => { throw new DOMException("no room is left", "QuotaExceededError"); };
    });
    const may = await ACTS[inner](page, id);
    await compare();
    const said = await says(page);
    const wrote = Object.keys(may).length > 0;
    if (wrote && !said.stuck) fail("a write that was refused was not said");
    await page.evaluate(() => globalThis.room());
    await page.evaluate(() => dispatchEvent(new Event("focus")));
    if (page.deaf) await ACTS.mass(page, id).then((more) => Object.assign(may, merged(may, { [id]: { events: [[(event) => event.kind.body_mass_recorded !== undefined], ...pairs(may[id]?.events, more[id]?.events)], sets: may[id]?.sets } })));
    await page.waitForTimeout(200);
    return compare(page.deaf ? unsure(may) : may);
  }
  if (name === "silent") {
    const inner = oneOf(["mass", "sets", "entered", "stop"]);
    steps.push(`   storage says nothing while: ${inner}`);
    await page.evaluate(() => globalThis.hold());
    const may = await ACTS[inner](page, id);
    if (Object.keys(may).length === 0) {
      await page.evaluate(() => globalThis.speak());
      await page.waitForTimeout(200);
      return compare(unsure(may));
    }
    if (/Recorded\./.test(await page.locator(".says").innerText())) fail("what storage never answered was called recorded");
    await page.locator(".fault", { hasText: "does not answer" }).first().waitFor({ timeout: 12_000 }).catch(() => fail("storage that says nothing was not said"));
    await page.evaluate(() => globalThis.speak());
    // What was held up is tried again after some seconds.
    await page.locator(".fault", { hasText: "Not kept on this device" }).waitFor({ state: "detached", timeout: 20_000 }).catch(() => fail("storage that answers again was not taken up"));
    return compare(page.deaf ? apart(unsure(may)) : may);
  }
  if (name === "both") {
    const other = windows.find((one) => one !== page);
    if (!other) return compare();
    const [first, second] = [oneOf(plain.slice(0, 9)), oneOf(plain.slice(0, 9))];
    steps.push(`   one window: ${first}, then the other: ${second}`);
    await other.bringToFront();
    if (!(await choose(other, id))) return compare();
    await page.bringToFront();
    await compare(await ACTS[first](page, id));
    await other.bringToFront();
    const may = await ACTS[second](other, id);
    return compare(apart(unsure(may)));
  }
  const may = await ACTS[name](page, id);
  await compare(page.deaf ? apart(unsure(may)) : unsure(may));
}
const pairs = (one = [], other = []) => one.flatMap((first) => other.map((second) => [...first, ...second]));

const until = Date.now() + minutes * 60_000;
let done = 0;
console.log(`soak: seed ${seed}, ${minutes} minutes`);
await start();
await open();
await open();
let outcome = 0;
try {
  while (Date.now() < until) {
    await step();
    done += 1;
    if (done % 4 === 0) for (const page of windows) await nothingHidden(page);
    if (complaints.length > 0) fail(`the page threw: ${complaints[0]}`);
    if (done % 50 === 0) console.log(`${done} steps, ${model.size} lifters, ${[...model.values()].reduce((sum, one) => sum + one.texts.length, 0)} entries, ${erased.size} erased`);
  }
  console.log(`held: ${done} steps; ${JSON.stringify(counts)}`);
} catch (error) {
  outcome = 1;
  console.log(`FAILED after ${done} steps (seed ${seed}): ${error instanceof Failed ? error.message : error.stack}`);
  console.log(steps.slice(-12).join("\n"));
  for (const [id, was] of model) if (error.message.includes(id)) console.log(`${id}, stop ${was.stop}, the last entries:\n${was.texts.slice(-8).join("\n").slice(0, 4000)}`);
  for (const page of windows) console.log(await page.locator("body").innerText().then((text) => `a window shows: ${text.slice(0, 900)}`, () => "a window is gone"));
} finally {
  await context.close().catch(() => undefined);
  await rm(folder, { recursive: true, force: true }).catch(() => undefined);
}
process.exit(outcome);
