// Edges: encodings of files, several lifters in one, tables for spreadsheets, and the hosted form.
import assert from "node:assert/strict";
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { counts, Hand, keeps, launch, root } from "./browser.mjs";
import { bringIn, everything, fileOf, further, go, handOn, logOf, NEXT_DAY, saved, upload } from "./keep.mjs";

let browser;
before(async () => void (browser = await launch()));
const servers = [];
after(async () => {
  await browser.close();
  for (const server of servers) {
    server.closeAllConnections();
    server.close();
  }
});

describe("files", () => {
  const text = () => fileOf(logOf("Zo\u00eb, invented"));
  const wide = (big) => {
    const bytes = Buffer.from(`\ufeff${text()}`, "utf16le");
    return big ? bytes.swap16() : bytes;
  };
  for (const [what, bytes] of [["UTF-8 with a mark", () => Buffer.from(`\ufeff${text()}`)], ["UTF-16, little end first", () => wide(false)], ["UTF-16, big end first", () => wide(true)]]) {
    it(`in ${what} are recognised`, async () => {
      const hand = await handOn(browser);
      await bringIn(hand, bytes());
      assert.match(await hand.page.locator("header .who").innerText(), /^Zo\u00eb/);
      await hand.close();
    });
  }
  it("in an older encoding are refused, and nothing is brought in with letters lost", async () => {
    const hand = await handOn(browser);
    await upload(hand, Buffer.from(text(), "latin1"));
    assert.match(await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 }), /UTF-8/);
    await hand.close();
  });

  it("with several lifters are one visit", async () => {
    const hand = await handOn(browser);
    await upload(hand, fileOf(logOf("A"), logOf("B"), logOf("C")));
    await hand.page.locator('[data-act="bring-in-all"]').click();
    await hand.page.locator("#open-file").waitFor({ state: "detached" });
    await go(hand, "lifters");
    await counts(hand.page.locator("[data-lifter]"), 3);
    await hand.close();
  });

  it("or one lifter after the other, without opening it again", async () => {
    const hand = await handOn(browser);
    await upload(hand, fileOf(logOf("A"), logOf("B")));
    await hand.page.locator('[data-act="bring-in"]').first().click();
    await hand.page.getByText("A is here now.").waitFor();
    await hand.page.locator('[data-act="bring-in"]').first().click();
    await hand.page.getByText("B is here now.").waitFor();
    await go(hand, "lifters");
    await counts(hand.page.locator("[data-lifter]"), 2);
    await hand.close();
  });

  it("with the same name twice bring in none of them unasked", async () => {
    const hand = await handOn(browser);
    await upload(hand, fileOf(logOf("A"), logOf("A", (log) => log.events.pop())));
    assert.match(await hand.page.locator("[data-refused]").innerText({ timeout: 3_000 }), /twice/);
    await hand.close();
  });

  it("tables open right in spreadsheets: marked as UTF-8, no cell a formula", async () => {
    // Every sign is tried in the tests of the answers.
    const starts = ["=1+1", "\uff1d1+1"];
    const log = logOf("Noor, invented");
    const was = log.events[0].kind.parameters_changed.lifts[0].id;
    for (const start of starts) {
      const hand = await handOn(browser);
      const named = JSON.parse(JSON.stringify(log).replaceAll(`"${was}"`, JSON.stringify(start)));
      await bringIn(hand, fileOf({ log: named, plan: { format: "bismar-plan", version: 1, lifts: [] } }));
      await go(hand, "files");
      const table = await saved(hand, '[data-act="save-csv"]');
      assert.equal(table.charCodeAt(0), 0xfeff);
      assert.ok(!new RegExp(`(^|,)"?${start[0].replace(/[+]/, "\\+")}`, "m").test(table), start);
      await hand.close();
    }
  });
});

describe("a device that is slow to write", () => {
  const LATE = 700;
  const view = (hand, name) => hand.page.locator(`main[data-view="${name}"]`).waitFor({ timeout: 3_000 });
  /** After everything was written, and after whatever comes then. */
  const after = (hand) => hand.page.waitForTimeout(4 * LATE);

  it("takes nobody away from where they went while a file comes in, and says there what came", async () => {
    const hand = await handOn(browser, NEXT_DAY, { late: LATE });
    await upload(hand, fileOf(logOf("A"), logOf("B")));
    await hand.page.locator('[data-act="bring-in"]').first().click();
    await hand.page.getByText("A is here now.").waitFor();
    await hand.page.locator('[data-act="bring-in"]').first().click();
    await go(hand, "lifters");
    await counts(hand.page.locator("[data-lifter]"), 2);
    await hand.page.getByText("B is here now.").waitFor();
    await after(hand);
    await view(hand, "lifters");
    await hand.close();
  });

  it("keeps in view whom the coach goes to while somebody else comes in", async () => {
    const hand = await handOn(browser, NEXT_DAY, { late: LATE });
    await bringIn(hand, fileOf(logOf("A")));
    await upload(hand, fileOf(logOf("B")));
    await hand.page.locator('[data-act="bring-in"]').first().click();
    await go(hand, "lifters");
    await hand.page.locator('[data-lifter="A"]').click();
    await view(hand, "today");
    await after(hand);
    assert.match(await hand.page.locator("header .who").innerText(), /A/);
    await go(hand, "lifters");
    await hand.page.locator('[data-lifter="B"]').click();
    await go(hand, "log");
    await after(hand);
    await view(hand, "log");
    assert.match(await hand.page.locator("header .who").innerText(), /B/);
    await hand.close();
  });

  it("takes nobody away while somebody is begun or erased", async () => {
    const hand = await handOn(browser, NEXT_DAY, { late: LATE });
    await hand.view("begin");
    await hand.page.locator("#name").fill("Kim, invented");
    await hand.page.locator('[data-act="begin-now"]').click();
    await go(hand, "gym");
    await after(hand);
    await view(hand, "gym");
    await go(hand, "files");
    await hand.page.locator('[data-act="erase"]').click();
    await hand.page.locator("[data-yes]").click();
    await go(hand, "questions");
    await hand.page.getByText("was erased").waitFor();
    await after(hand);
    await view(hand, "questions");
    await hand.close();
  });

  it("counts every tap on the list of discs", async () => {
    const hand = await handOn(browser, NEXT_DAY, { late: LATE });
    await go(hand, "gym");
    const shown = hand.page.locator(".kit .stepper output").first();
    const before = Number(await shown.innerText());
    for (let tap = 0; tap < 3; tap += 1) await hand.page.locator(".kit .stepper button").nth(1).click();
    assert.equal(Number(await shown.innerText()), before + 3);
    await after(hand);
    await hand.page.reload();
    await hand.ready();
    assert.equal(Number(await shown.innerText()), before + 3);
    await hand.close();
  });
});

/** A host whose cache says "keep for a year", with folders of its own. */
async function host() {
  const folder = join(root, "dist", "hosted");
  const state = { versions: {}, asked: [] };
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url, "http://localhost");
    state.asked.push(pathname);
    const [, app, name] = /^\/(\w+)\/(.*)$/.exec(pathname) ?? [];
    const types = { html: "text/html; charset=utf-8", js: "text/javascript; charset=utf-8", svg: "image/svg+xml", webmanifest: "application/manifest+json" };
    const file = name === "" ? "index.html" : name;
    let body = await readFile(join(folder, file ?? "none")).catch(() => undefined);
    if (!app || !body) return void response.writeHead(404).end();
    const version = state.versions[app];
    if (version) {
      if (file === "worker.js") body = Buffer.from(body.toString().replace(/bismar-(\w+)/, `bismar-${version}`).replace(/const VERSION = "\w+"/, `const VERSION = "${version}"`));
      if (file === "index.html") body = Buffer.from(body.toString().replace("<title>", `<meta name="test-version" content="${version}"><title>`));
    }
    response.writeHead(200, { "content-type": types[file.split(".").at(-1)], "cache-control": file === "worker.js" ? "no-cache" : "public, max-age=31536000, immutable" }).end(body);
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  servers.push(server);
  return { server, state, at: (app) => `http://localhost:${server.address().port}/${app}/` };
}
const settled = (hand) => hand.page.evaluate(() => navigator.serviceWorker.ready.then(() => new Promise((resolve) => setTimeout(resolve, 300))));

describe("hosted", () => {
  it("a new version is fetched anew whatever the cache says, and says that it is there", async () => {
    const { server, state, at } = await host();
    const hand = await Hand.open(browser, { address: at("one") });
    await settled(hand);
    assert.equal(await hand.page.locator('meta[name="test-version"]').count(), 0);
    state.versions.one = "newer1";
    await hand.page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found.update()));
    await hand.page.getByText(/newer version/i).waitFor({ timeout: 5_000 });
    await hand.page.reload();
    await hand.ready();
    assert.equal(await hand.page.locator('meta[name="test-version"]').getAttribute("content"), "newer1");
    await hand.close();
  });

  it("a version never deletes what another folder keeps, and index.html works offline", async () => {
    const { server, state, at } = await host();
    const one = await Hand.open(browser, { address: at("one") });
    await settled(one);
    const two = new Hand(await one.context.newPage());
    await two.page.goto(at("two"));
    await two.ready();
    await settled(two);
    state.versions.two = "newer2";
    await two.page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found.update()));
    const copies = () => two.page.evaluate(() => caches.keys());
    await keeps(copies, (all) => all.some((one) => one.includes("newer2")));
    await two.page.waitForFunction(() => navigator.serviceWorker.getRegistration().then((found) => !found.installing && !found.waiting));
    await two.page.reload();
    await two.ready();
    await settled(two);
    await new Promise((resolve) => { server.close(resolve); server.closeAllConnections(); });
    await one.context.setOffline(true);
    for (const [hand, app] of [[one, "one"], [two, "two"]]) {
      for (const name of ["", "index.html"]) {
        await hand.page.goto(`${at_(app, one)}${name}`);
        await hand.ready();
      }
    }
    await one.close();

    function at_(app, hand) {
      return new URL(`/${app}/`, hand.page.url()).href;
    }
  });

  it("two folders do not share a log unless told", async () => {
    const { server, at } = await host();
    const one = await Hand.open(browser, { address: at("one") });
    await one.demo();
    const two = new Hand(await one.context.newPage());
    await two.page.goto(at("two"));
    await two.ready();
    await counts(two.page.locator('main [data-act="demo"]'), 1, "nobody is here");
    await two.page.goto(`${at("two")}?log=/one/`);
    await two.ready();
    await two.page.locator("[data-lift]").first().waitFor({ timeout: 5_000 });
    await one.close();
  });
});
