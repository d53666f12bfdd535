// What is kept: recording, undoing, correcting, files, faults of storage.
import assert from "node:assert/strict";
import { readFile, writeFile, mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { counts, FILE, Hand, keeps, launch, says } from "./browser.mjs";
import { bringIn, everything, fileOf, go, handOn, logOf, noRoom, reload, roomAgain, saved, setDay, stored, turnTo } from "./keep.mjs";

let browser;
let hostile;
before(async () => void (browser = await launch()));
after(() => browser.close());

const logHolds = (hand, number) => says(hand.page.locator("main .soft").first(), new RegExp(`^${number} events`));
async function upload(hand, name, text) {
  await go(hand, "files");
  const folder = await mkdtemp(join(tmpdir(), "bismar-page-"));
  const path = join(folder, name);
  await writeFile(path, text);
  await hand.page.locator("#open-file").setInputFiles(path);
}

/** How many rows of a list are on the device now. */
const storedNow = (hand, list = "events") => hand.page.evaluate((from) => new Promise((resolve) => {
  const opening = indexedDB.open("bismar lifters");
  opening.onsuccess = () => {
    opening.result.transaction(from).objectStore(from).count().onsuccess = (event) => { opening.result.close(); resolve(event.target.result); };
  };
}), list);

describe("recording", () => {
  it("takes a lift in four taps, since watched and left in reserve are asked, survives a reload in between, and ends the session in two", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.allGood();
    await hand.page.waitForSelector(".done");
    await stored(hand, "drafts", 3);
    await reload(hand);
    await says(hand.page.locator(".done").first(), /3 sets/);
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await reload(hand);
    await go(hand, "log");
    await logHolds(hand, 704);
    assert.equal(hand.taps, 6);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("undoes a set, an entry, and an undo; corrects a set; and never takes an event away", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.allGood();
    await hand.page.waitForSelector(".done");
    await hand.tap('[data-act="undo-set"]');
    await hand.page.getByText("Going on: 2 sets.").waitFor();
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await go(hand, "log");
    await hand.tap('[data-act="undo"]');
    await hand.page.getByText("705 events").waitFor();
    await counts(hand.page.locator(".log .gone"), 1);
    await hand.tap('[data-act="undo"]');
    await hand.page.getByText("706 events").waitFor();
    await counts(hand.page.locator(".log .gone"), 0);
    await hand.page.locator('[data-act="correct"]').first().click();
    await hand.page.locator('[data-act="correct-set"]').first().click();
    await hand.page.getByLabel("Repetitions: less", { exact: true }).click();
    await hand.page.locator('[data-act="save-set"]').click();
    await hand.page.getByText("707 events").waitFor();
    await says(hand.page.locator(".log li").first(), /× 4/);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("files", () => {
  it("shows what a file would change, brings it in, and finds nothing to change the second time", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await go(hand, "files");
    const text = await saved(hand, '[data-act="save-full"]');
    await hand.page.locator('[data-act="erase"]').click();
    await hand.page.locator("[data-yes]").click();
    await hand.page.getByText("Nobody is here yet").waitFor();
    await reload(hand);
    assert.match(await hand.big(), /Nobody is here yet/);
    await upload(hand, "copy.json", text);
    assert.match(await hand.big(), /New here: 703 events/);
    await hand.tap('[data-act="bring-in"]');
    await hand.page.waitForSelector("[data-lift]");
    assert.equal(await hand.big(), "47.54 kg · 3 × 5 · leave 3");
    await upload(hand, "copy.json", text);
    await says(hand.page.locator("main article"), /Nothing would change/);
    const document = JSON.parse(text);
    document.lifters[0].log.events[5].note = "said later";
    document.lifters[0].log.events.pop();
    await upload(hand, "other.json", JSON.stringify(document));
    assert.match(await hand.big(), /Same: 701\. Added: 0\. Different: 1\. Only on this device: 1\./);
    await hand.tap('[data-act="keep-both"]');
    await hand.page.waitForSelector("[data-lift]");
    await go(hand, "lifters");
    await counts(hand.page.locator("[data-lifter]"), 2);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("leaves health detail out unless it is chosen, and saves sets as a table", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await go(hand, "files");
    const full = await saved(hand, '[data-act="save-full"]');
    const copy = await saved(hand, '[data-act="save-plain"]');
    const table = await saved(hand, '[data-act="save-csv"]');
    assert.match(full, /"pain"/);
    for (const word of ["day_report", '"pain"', "next_day_report", "born", "soreness", "layoff_noted"]) assert.ok(!copy.includes(word), word);
    assert.match(table, /^\ufeffday,session,lift,set,load_kg/);
    assert.ok(table.split("\r\n").length > 1000);
    await hand.close();
  });

  const name = '<img src=x onerror="globalThis.hurt=1">';
  const log = (more) => JSON.stringify({ format: "bismar-log", version: 1, lifter: { id: "Mallory" }, events: [], ...more });
  for (const [what, text, says] of [
    ["half a file", log({}).slice(0, 40), /cut off/],
    ["nothing", ""],
    ["a list", "[1,2,3]"],
    ["null", "null"],
    ["a number for a day", log({ events: [{ sequence: 1, day: 5, kind: {} }] })],
    ["a wrong type", log({ events: [{ sequence: "1", day: "2026-01-01", kind: { body_mass_recorded: "heavy" } }] })],
    ["a version that never was", log({ version: 0 }), /version/i],
    ["an unknown field", log({ surprise: true }), /surprise/],
    ["a number beyond all", log({ events: [{ sequence: 1, day: "2026-01-01", kind: { body_mass_recorded: { kg: 1e308 } } }] })],
    ["a prototype", '{"format":"bismar-log","version":1,"lifter":{"id":"A"},"events":[],"__proto__":{"x":1}}'],
    ["a deep nest", `${"[".repeat(20_000)}${"]".repeat(20_000)}`],
    ["a correction of nothing", log({ events: [{ sequence: 1, day: "2026-01-01", kind: { correction: { replaces: 9 } } }] })],
    ["more events than are taken", `{"format":"bismar-log","version":1,"lifter":{"id":"A"},"events":[${Array.from({ length: 200_001 }, (_, at) => `{"sequence":${at + 1},"day":"2026-01-01","kind":{"body_mass_recorded":{"kg":80}}}`).join(",")}]}`],
    ["31 MB", `"${"x".repeat(31_000_000)}"`, /larger than 30 MB/],
    ["lifters that are none", '{"format":"bismar-lifters","version":1,"lifters":[null,5]}'],
  ]) {
    it(`refuses ${what} whole and says why`, async () => {
      hostile ??= await Hand.open(browser);
      await upload(hostile, "hostile.json", text);
      const words = await hostile.page.locator("[data-refused]").innerText({ timeout: 10_000 });
      assert.match(words, /^Nothing was changed\. .{10,}/);
      if (says) assert.match(words, says);
      await go(hostile, "lifters");
      await hostile.page.locator('main[data-view="lifters"]').waitFor();
      await counts(hostile.page.locator("[data-lifter]"), 0);
      assert.deepEqual(hostile.complaints, []);
    });
  }

  it("shows script in a name as text", async () => {
    const hand = await Hand.open(browser);
    await upload(hand, "script.json", log({ lifter: { id: name } }));
    await hand.tap('[data-act="bring-in"]');
    await hand.page.getByText("is here now.").waitFor();
    await go(hand, "lifters");
    await says(hand.page.locator("[data-lifter]"), /<img src=x/);
    assert.equal(await hand.page.evaluate(() => globalThis.hurt), undefined);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });
});

describe("faults of storage", () => {
  it("says that the device keeps nothing, works on, and offers the file", async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const hand = new Hand(page);
    hand.context = context;
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, "indexedDB", { get: () => { throw new DOMException("denied", "SecurityError"); } });
    });
    await page.goto(FILE);
    await hand.ready();
    await hand.demo();
    await says(page.locator(".fault"), /Not kept on this device.*SecurityError/s);
    await hand.allGood();
    await page.waitForSelector(".done");
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator('[data-act="rescue"]').click()]);
    assert.match(await readFile(await download.path(), "utf8"), /"bismar-lifters"/);
    await hand.close();
  });

  it("keeps what a full device refused and writes it when there is room", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await noRoom(hand);
    await hand.allGood();
    await hand.page.waitForSelector(".fault");
    await says(hand.page.locator(".fault"), /QuotaExceededError/);
    await says(hand.page.locator(".done").first(), /3 sets/);
    await roomAgain(hand);
    await hand.allGood();
    await hand.page.getByText("Going on: 6 sets.").waitFor();
    await hand.page.waitForSelector(".fault", { state: "detached" });
    await stored(hand, "drafts", 6);
    await reload(hand);
    await says(hand.page.locator(".draft"), /6 sets/);
    await hand.close();
  });

  it("sets a torn entry and all after it aside and says so", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.page.evaluate(() => new Promise((resolve, reject) => {
      const opening = indexedDB.open("bismar lifters");
      opening.onsuccess = () => {
        const writing = opening.result.transaction("events", "readwrite");
        const rows = writing.objectStore("events");
        rows.get(["invented-lifter", 700]).onsuccess = (event) => {
          const row = event.target.result;
          rows.put({ ...row, text: row.text.slice(0, 20) });
        };
        writing.oncomplete = () => { opening.result.close(); resolve(); };
        writing.onerror = reject;
      };
    }));
    await reload(hand);
    await says(hand.page.locator(".fault"), /3 entries were not as written/);
    await go(hand, "log");
    await logHolds(hand, 700);
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("is whole after the page dies while it writes: a session is in the draft or in the log, never in both or neither", async () => {
    const own = await launch();
    const hand = await Hand.open(own);
    await hand.demo();
    let kept = 703;
    const wire = await own.newBrowserCDPSession();
    for (const step of [1, 2, 3, 4, 5]) {
      if ((await hand.page.locator(".draft").count()) === 0) await hand.allGood();
      await stored(hand, "drafts", 3);
      await hand.tap('[data-act="finish"]');
      // The page stops for ever at its next, second, third ... step of writing; then its process is killed.
      await hand.page.evaluate((last) => {
        let steps = 0;
        for (const name of ["add", "put", "delete"]) {
          const act = IDBObjectStore.prototype[name];
          IDBObjectStore.prototype[name] = function (...rest) {
            steps += 1;
            if (steps === last) for (;;);
            return act.apply(this, rest);
          };
        }
        setTimeout(() => document.querySelector('[data-act="no-pain"]').click(), 20);
      }, step);
      await new Promise((resolve) => setTimeout(resolve, 500));
      const dead = hand.page.waitForEvent("crash", { timeout: 5_000 });
      // That of the page is most likely the busiest; without the others the browser may never open another page.
      const renderers = async () => (await wire.send("SystemInfo.getProcessInfo")).processInfo.filter(({ type }) => type === "renderer");
      const before = new Map((await renderers()).map((one) => [one.id, one.cpuTime]));
      await new Promise((resolve) => setTimeout(resolve, 300));
      const used = (one) => one.cpuTime - (before.get(one.id) ?? one.cpuTime);
      const after = (await renderers()).sort((one, other) => used(other) - used(one) || other.cpuTime - one.cpuTime);
      let crashed = false;
      hand.page.once("crash", () => (crashed = true));
      for (const one of after) {
        if (crashed) break;
        process.kill(one.id, "SIGKILL");
        await new Promise((resolve) => setTimeout(resolve, 500));
      }
      await dead;
      hand.page = await hand.context.newPage();
      await hand.page.goto(FILE);
      await hand.ready();
      await counts(hand.page.locator(".fault"), 0);
      const drafts = await hand.page.locator(".draft").count();
      const now = await storedNow(hand);
      assert.equal(now + drafts, kept + 1, "in one place exactly");
      kept = now;
    }
    await own.close();
  });
});

describe("a coach who has never seen it", () => {
  it("begins with nobody, writes a session down, sees that it is done, and takes the file away and back", async () => {
    const hand = await Hand.open(browser);
    await hand.tap('main [data-act="begin"]');
    await hand.page.locator("#name").fill("Ines, invented");
    await hand.page.locator("#cleared").fill("invented clinician");
    await hand.tap('[data-act="begin-now"]');
    await hand.page.waitForSelector("[data-lift]");
    const lifts = await hand.page.locator("[data-lift]").count();
    await hand.allGood();
    await hand.tap('[data-act="finish"]');
    await hand.tap('[data-act="no-pain"]');
    await hand.page.getByText("Recorded.").waitFor();
    await counts(hand.page.locator("[data-over]"), 1, "the lift that was done says so");
    assert.equal(lifts, 3);
    await counts(hand.page.locator("[data-row][data-lift='box squat'] [data-over]"), 1, "it is a line of its own, and the next lift stands open");
    await counts(hand.page.locator('article[data-lift] [data-act="all-good"]'), 1, "which asks for its own sets");
    await go(hand, "files");
    const text = await saved(hand, '[data-act="save-full"]');
    await hand.tap('[data-act="erase"]');
    await hand.tap("[data-yes]");
    await hand.page.getByText("Nobody is here yet").waitFor();
    await upload(hand, "back.json", text);
    await hand.tap('[data-act="bring-in"]');
    await hand.page.waitForSelector("[data-over]");
    assert.deepEqual(hand.complaints, []);
    await hand.close();
  });

  it("prints a card without health detail unless it is chosen", async () => {
    const hand = await Hand.open(browser);
    await hand.demo();
    await hand.ask(13);
    await hand.tap('[data-act="no-sign"]');
    await hand.page.locator('[aria-label="Where"] [data-value="knee"]').click();
    await hand.page.locator('[aria-label="How much, 0 to 10"] [data-value="3"]').click();
    await hand.page.getByText("Write it into the log").click();
    await hand.page.getByText("Recorded.").waitFor();
    await hand.ask(24);
    const card = hand.page.locator(".handover");
    assert.doesNotMatch(await card.innerText(), /pain|years old/i);
    await hand.page.locator('[aria-label="Health detail on the card"] [data-value="yes"]').click();
    await says(card, /pain/i);
    await hand.close();
  });
});

/** Two windows of one device on the same lifter. */
async function twoWindows({ deaf }) {
  const one = await Hand.open(browser);
  await one.demo();
  const two = new Hand(await one.context.newPage());
  two.context = one.context;
  // Without the word from window to window and without a look on coming back, only the write itself can find out.
  if (deaf) {
    for (const hand of [one, two]) {
      await hand.page.addInitScript(() => {
        globalThis.BroadcastChannel = class { postMessage() {} };
        const { addEventListener: listen } = EventTarget.prototype;
        EventTarget.prototype.addEventListener = function (name, ...rest) {
          if (name !== "focus" && name !== "visibilitychange") listen.call(this, name, ...rest);
        };
      });
    }
    await reload(one);
  }
  await two.page.goto(FILE);
  await two.ready();
  return [one, two];
}
const recorded = async (hand) => {
  await hand.page.bringToFront();
  await hand.allGood();
  await hand.tap('[data-act="finish"]');
  await hand.tap('[data-act="no-pain"]');
};
describe("two windows", () => {
  it("follow each other where nothing is waiting", async () => {
    const [one, two] = await twoWindows({ deaf: false });
    await recorded(one);
    await one.page.getByText("Recorded.").waitFor();
    await turnTo(two);
    await two.page.getByText("Another window wrote to invented-lifter.").waitFor();
    await go(two, "log");
    await logHolds(two, 704);
    await one.close();
  });

  it("keep the entries of both where both wrote, without asking", async () => {
    const [one, two] = await twoWindows({ deaf: true });
    await recorded(one);
    await one.page.getByText("Recorded.").waitFor();
    await two.page.bringToFront();
    await two.allGood();
    await two.page.getByText("Another window wrote to invented-lifter.").waitFor();
    await two.tap('[data-act="finish"]');
    // The invented lifter's day is over with the other's session: the page asks on which day these sets were lifted.
    await two.page.locator('dialog [aria-label="On which day was it lifted?"] button').first().click();
    await two.tap('[data-act="no-pain"]');
    await two.page.getByText("Recorded.").waitFor();
    await stored(two, "events", 705);
    await stored(two, "drafts", 0);
    await go(two, "log");
    await logHolds(two, 705);
    await reload(two);
    await counts(two.page.locator(".fault"), 0, "the log can be read");
    await go(two, "log");
    await logHolds(two, 705);
    assert.deepEqual((await everything(two)).asides, []);
    assert.deepEqual(two.complaints, []);
    await one.close();
  });

  it("write with a number of its own what waited for an answer while the other wrote", async () => {
    const one = await handOn(browser);
    await bringIn(one, fileOf(logOf("Noor, invented")));
    await setDay(one, "2031-05-01");
    const two = new Hand(await one.context.newPage());
    await two.page.clock.setFixedTime(new Date("2031-05-01T12:00:00"));
    await two.page.goto(FILE);
    await two.ready();
    await one.page.bringToFront();
    await go(one, "log");
    await one.page.getByText("Write down something else").click();
    await one.page.getByRole("button", { name: "Body mass", exact: true }).click();
    await one.pad("Body mass", 80);
    await one.page.locator("dialog button.main").last().click();
    await one.page.locator("dialog", { hasText: "Is it really" }).waitFor();
    await two.page.bringToFront();
    await two.ask(13);
    await two.page.locator("main .sign", { hasText: /chest/i }).click();
    await two.page.getByText("Recorded.").waitFor();
    await stored(two, "events", 704);
    await turnTo(one);
    await one.page.getByText("Another window wrote to").waitFor();
    await one.page.locator('[data-act="is-today"]').last().click();
    await one.page.getByText("Recorded.").waitFor();
    await stored(one, "events", 705);
    await reload(one);
    await counts(one.page.locator(".fault"), 0, "the log can be read");
    await go(one, "log");
    await logHolds(one, 705);
    await counts(one.page.locator(".stop-band"), 1);
    await one.close();
  });

  it("finish the session with the sets that the other put on the list meanwhile, after the coach has seen them", async () => {
    const [one, two] = await twoWindows({ deaf: false });
    await one.page.bringToFront();
    await one.allGood();
    await stored(one, "drafts", 3);
    await one.tap('[data-act="finish"]');
    await turnTo(two);
    await two.page.getByText("Going on: 3 sets.").waitFor();
    await two.allGood();
    await two.page.getByText("Going on: 6 sets.").waitFor();
    await stored(two, "drafts", 6);
    await turnTo(one);
    await one.page.getByText("Another window wrote to").waitFor();
    await one.tap('[data-act="no-pain"]');
    await says(one.page.locator("dialog [data-changed]"), /6 sets now, of box squat, strict press/);
    assert.equal(await storedNow(one), 703, "nothing is written unseen");
    await one.tap('[data-act="no-pain"]');
    await one.page.getByText("Recorded.").waitFor();
    await stored(one, "events", 704);
    await stored(one, "drafts", 0);
    const { events } = await everything(one);
    assert.deepEqual(JSON.parse(events.at(-1).value.text).kind.session_recorded.lifts.map((lift) => [lift.lift, lift.sets.length]), [["box squat", 3], ["strict press", 3]]);
    await one.close();
  });

  it("do not finish a session a second time that the other has ended", async () => {
    const [one, two] = await twoWindows({ deaf: false });
    await one.page.bringToFront();
    await one.allGood();
    await stored(one, "drafts", 3);
    await one.tap('[data-act="finish"]');
    await turnTo(two);
    await two.page.getByText("Going on: 3 sets.").waitFor();
    await two.tap('[data-act="finish"]');
    await two.tap('[data-act="no-pain"]');
    await two.page.getByText("Recorded.").waitFor();
    await turnTo(one);
    await one.page.getByText("Another window wrote to").waitFor();
    await one.tap('[data-act="no-pain"]');
    await one.page.getByText("ended in another window").waitFor();
    await stored(one, "events", 704);
    await one.close();
  });

  it("keep a session that both have begun", async () => {
    const [one, two] = await twoWindows({ deaf: true });
    await one.allGood();
    await one.page.getByText("Going on: 3 sets.").waitFor();
    await stored(one, "drafts", 3);
    await two.page.bringToFront();
    await two.allGood({ at: 1 });
    await two.page.getByText("Going on: 6 sets.").waitFor();
    await stored(two, "drafts", 6);
    await reload(two);
    await says(two.page.locator(".draft"), /6 sets/);
    await one.close();
  });

  it("set aside the log of the other where both begin the same name", async () => {
    const [one, two] = await twoWindows({ deaf: true });
    const begin = async (hand) => {
      await hand.page.bringToFront();
      await go(hand, "lifters");
      await hand.page.locator('[data-act="begin"]').click();
      await hand.page.locator("#name").fill("Robin, invented");
      await hand.page.locator('[data-act="begin-now"]').click();
      await hand.page.waitForSelector("[data-lift]");
      await hand.page.getByText("Robin, invented").first().waitFor();
    };
    await begin(one);
    await recorded(one);
    await one.page.getByText("Recorded.").waitFor();
    await begin(two);
    await go(two, "files");
    const [download] = await Promise.all([two.page.waitForEvent("download"), two.page.getByText("Save what was set aside").click()]);
    assert.match(await readFile(await download.path(), "utf8"), /session_recorded/);
    await one.close();
  });
});
