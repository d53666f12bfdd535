// Opens the built page in Chromium, from the file or from this machine's server, and speaks for a hand on it.
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

/** A hand that counts its taps. */
export class Hand {
  constructor(page) {
    this.page = page;
    this.taps = 0;
    this.complaints = [];
    this.requests = [];
  }

  static async open(browser, { address = FILE, offline = true, ...options } = {}) {
    const context = await browser.newContext({ viewport: { width: 768, height: 1024 }, hasTouch: true, acceptDownloads: true, ...options });
    const hand = new Hand(await context.newPage());
    hand.context = context;
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
