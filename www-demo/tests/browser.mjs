// Opens the built page in Chromium, from the file or from this machine's server, and speaks for a hand on it.
import assert from "node:assert/strict";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..");
export const FILE = pathToFileURL(join(root, "dist", "bismar.html")).href;

export async function launch() {
  return chromium.launch({
    executablePath: process.env.BISMAR_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
}

/** What is asked about soon: until it is so, or for this long. */
const SOON = 5_000;

/** As soon as that many are there, or what is there after a while. */
export async function counts(locator, number, where) {
  assert.equal(await keeps(() => locator.count(), (found) => found === number), number, where);
}

/** As soon as the text of it is so, or as it is after a while. */
export async function says(locator, pattern, where) {
  const text = async () => (await locator.innerText({ timeout: SOON })).replaceAll("\u00a0", " ");
  assert.match(await keeps(text, (found) => pattern.test(found)), pattern, where);
}

/** What is looked up, as soon as it is right, or as it is after a while: writing to the device goes on after the view has changed. */
export async function keeps(look, right) {
  const end = Date.now() + SOON;
  let found = await look();
  while (!right(found) && Date.now() < end) {
    await new Promise((resolve) => setTimeout(resolve, 40));
    found = await look();
  }
  return found;
}

/** Runs in the page: storage that answers late, as that of a busy or an old device does. */
function slowly(late) {
  const { addEventListener: listen } = EventTarget.prototype;
  const waits = (target, name) =>
    (name === "complete" && target instanceof IDBTransaction) ||
    // Only what nothing else of the same transaction hangs on: a transaction that is asked nothing ends.
    (name === "success" && target instanceof IDBRequest && target.transaction?.mode === "readonly" && Array.isArray(target.result));
  EventTarget.prototype.addEventListener = function (name, act, ...rest) {
    const own = typeof act === "function" && (this instanceof IDBTransaction || this instanceof IDBRequest);
    listen.call(this, name, own ? (event) => (waits(this, name) ? setTimeout(() => act.call(this, event), late) : act.call(this, event)) : act, ...rest);
  };
}

/** `BISMAR_SLOW=300` in the environment: everything that waits for storage comes that many milliseconds later. */
const LATE = Number(process.env.BISMAR_SLOW ?? 0);
/** `BISMAR_THROTTLE=6`: the processor of every page is that many times slower. */
const THROTTLE = Number(process.env.BISMAR_THROTTLE ?? 1);

/** A hand that counts its taps. */
export class Hand {
  constructor(page) {
    this.page = page;
    this.taps = 0;
    this.complaints = [];
    this.requests = [];
  }

  static async open(browser, { address = FILE, offline = true, late = LATE, ...options } = {}) {
    const context = await browser.newContext({ viewport: { width: 768, height: 1024 }, hasTouch: true, acceptDownloads: true, ...options });
    const hand = new Hand(await context.newPage());
    hand.context = context;
    if (late > 0) await context.addInitScript(slowly, late);
    if (THROTTLE > 1) await (await context.newCDPSession(hand.page)).send("Emulation.setCPUThrottlingRate", { rate: THROTTLE });
    hand.page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warning") hand.complaints.push(message.text());
    });
    hand.page.on("pageerror", (error) => hand.complaints.push(String(error)));
    hand.page.on("request", (request) => {
      if (!/^(file|data|blob):/.test(request.url())) hand.requests.push(request.url());
    });
    if (offline && address.startsWith("file:")) await context.setOffline(true);
    await hand.page.goto(address);
    await hand.ready();
    return hand;
  }

  async ready() {
    await this.page.waitForSelector("html[data-ready]", { timeout: 30_000 });
  }

  /** Has a view on the screen by its address. */
  async view(name) {
    await this.page.evaluate((to) => { location.hash = to; }, name);
    await this.page.waitForFunction((to) => document.querySelector("main").dataset.view === to, name);
  }

  /** What comes a moment after a view is there too. */
  async settled() {
    await this.page.waitForFunction(() => !document.querySelector("main [data-soon]"));
  }

  async tap(selector) {
    this.taps += 1;
    await this.page.locator(selector).first().click({ timeout: 5_000 });
  }

  /** A number pad is one tap by the rule of the count. */
  async pad(label, number) {
    this.taps += 1;
    await this.page.locator(`[data-pad="${label}"]`).first().click({ timeout: 5_000 });
    for (const digit of String(number)) await this.page.locator(`dialog [data-key="${digit}"]`).click();
    await this.page.locator('dialog [data-key="ok"]').click();
  }

  /** What `expected.mjs` says to do once a question is open. */
  async act({ tap, pad, number }) {
    if (pad) await this.pad(pad, number);
    else await this.tap(tap);
  }

  async ask(number) {
    this.taps = 0;
    await this.page.evaluate(() => document.querySelector('[data-place="today"]').click());
    await this.tap('[data-place="questions"]');
    await this.tap(`[data-question="${number}"]`);
  }

  async big() {
    return (await this.page.locator("main [data-answer]").first().innerText()).replaceAll("\u00a0", " ");
  }
  async why() {
    return this.page.locator("main [data-why]").first().innerText();
  }

  /** Every planned set of a lift as it should be: watched, so many left. */
  async allGood({ at = 0, watched = "yes", left = "3" } = {}) {
    if (at > 0) await this.tap(`main [data-row] >> nth=${at - 1}`);
    await this.tap('[data-act="all-good"]');
    await this.tap(`dialog [aria-label="Was it watched?"] [data-value="${watched}"]`);
    await this.tap(`dialog [aria-label^="Left in reserve"] [data-value="${left}"]`);
    await this.tap('[data-act="save-good"]');
    await this.page.locator(".draft").waitFor();
  }

  async demo() {
    await this.page.locator('main [data-act="demo"]').click();
    await this.page.waitForSelector("[data-lift]");
    this.taps = 0;
  }

  async close() {
    await this.context.close();
  }
}
