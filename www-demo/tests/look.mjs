// Pictures of every view for a person to look at: `node tests/look.mjs FOLDER [WIDTHS] [THEMES] [VIEWS]`.
import { mkdir } from "node:fs/promises";
import { Hand, launch } from "./browser.mjs";
import { QUESTIONS } from "./expected.mjs";

const [folder = "looks", widths = "320,768,1180", themes = "light,dark", only = ""] = process.argv.slice(2);
await mkdir(folder, { recursive: true });
const views = only ? only.split(",") : ["today", "questions", "lifters", "log", "files", "gym", "notes", "begin", "plan", "lift", ...Array.from({ length: QUESTIONS.length }, (_, at) => `q${at + 1}`)];
const browser = await launch();
for (const theme of themes.split(",")) {
  for (const width of widths.split(",").map(Number)) {
    const tall = width < 600 ? 640 : 900;
    const hand = await Hand.open(browser, { viewport: { width, height: tall }, colorScheme: theme });
    await hand.demo();
    for (const view of views) {
      await hand.page.evaluate((to) => { location.hash = to; }, view);
      await hand.page.waitForTimeout(150);
      const wide = await hand.page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
      if (wide) console.log(`${view} at ${width}: wider than the screen`);
      // The window is made as tall as the view, so that what sticks to its edges is at its edges.
      const height = await hand.page.evaluate(() => document.documentElement.scrollHeight);
      await hand.page.setViewportSize({ width, height: Math.max(tall, height) });
      await hand.page.waitForTimeout(60);
      await hand.page.screenshot({ path: `${folder}/${view}-${width}-${theme}.png` });
      await hand.page.setViewportSize({ width, height: tall });
    }
    if (hand.complaints.length) console.log(theme, width, hand.complaints);
    await hand.close();
  }
}
await browser.close();
