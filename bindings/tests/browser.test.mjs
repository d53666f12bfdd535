// The package in Chromium: the published checks, the same bits, a worker, the inline form from a file, Vite's page.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { pathToFileURL } from "node:url";
import test, { after, before } from "node:test";
import { chromium } from "playwright-core";
import { bindings, corpusFolder, keys, pkg, publishedDocuments, root, wantedCounts, withOthers } from "./files.mjs";
import { differing } from "./corpus-runner.mjs";

const KINDS = { ".js": "text/javascript", ".mjs": "text/javascript", ".wasm": "application/wasm", ".html": "text/html", ".json": "application/json" };
const viteOut = process.env.BISMAR_VITE_OUT ?? "";
const profile = mkdtempSync(join(tmpdir(), "bismar-chromium-"));
const FOLDERS = { pkg, tests: join(bindings, "tests"), corpus: corpusFolder, vite: viteOut };
const PAGES = {
  "/": "<!doctype html><meta charset=utf-8><title>checks</title>",
  "/published.json": () => JSON.stringify(publishedDocuments()),
  "/worker.js": `
    import init, { oneRm } from "/pkg/index.js";
    await init();
    postMessage(oneRm.epley1985({ load: { kg: 100 }, reps: 15 }).kg);`,
};
let server;
let context;
let origin;

function serve(request, response) {
  const { pathname } = new URL(request.url, "http://localhost");
  const page = PAGES[pathname];
  const [, first, ...rest] = normalize(decodeURIComponent(pathname)).split("/");
  const path = FOLDERS[first] ? join(FOLDERS[first], ...rest) : "";
  if (page !== undefined) {
    response.writeHead(200, { "content-type": pathname === "/" ? "text/html" : (KINDS[extname(pathname)] ?? "text/plain") });
    response.end(typeof page === "function" ? page() : page);
  } else if (path !== "" && existsSync(path) && statSync(path).isFile()) {
    response.writeHead(200, { "content-type": KINDS[extname(path)] ?? "application/octet-stream" });
    response.end(readFileSync(path));
  } else {
    response.writeHead(404).end();
  }
}

before(async () => {
  server = createServer(serve).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  origin = `http://127.0.0.1:${server.address().port}`;
  const executablePath = process.env.CHROMIUM ?? execFileSync("sh", ["-c", "command -v chromium"], { encoding: "utf8" }).trim();
  context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    timeout: 120_000,
  });
  context.setDefaultTimeout(240_000);
});

after(async () => {
  await context?.close();
  server?.close();
  rmSync(profile, { recursive: true, force: true });
});

async function open(url) {
  const page = await context.newPage();
  const problems = [];
  page.on("pageerror", (error) => problems.push(String(error)));
  await page.goto(url);
  return { page, problems };
}

test("every published check holds in Chromium", async () => {
  const { page, problems } = await open(`${origin}/`);
  const report = await page.evaluate(async (known) => {
    const [bismar, runner, documents] = await Promise.all([
      import("/pkg/index.js"), import("/tests/published-runner.mjs"), fetch("/published.json").then((answer) => answer.json()),
    ]);
    await bismar.default();
    return runner.run(bismar, documents, known);
  }, keys());
  console.log(`published checks: ${report.cases} cases over ${report.functions} functions in Chromium ${context.browser()?.version() ?? ""}`);
  assert.deepEqual(report.failures, []);
  if (!withOthers) assert.deepEqual([{ cases: report.cases, functions: report.functions }, report.unmapped], [wantedCounts(), []]);
  assert.deepEqual(problems, []);
});

test("every function gives the same bits natively and in Chromium", async () => {
  const { page } = await open(`${origin}/`);
  const found = await page.evaluate(async () => {
    const [bismar, runner] = await Promise.all([import("/pkg/index.js"), import("/tests/corpus-runner.mjs")]);
    await bismar.default();
    const corpus = new Uint8Array(await (await fetch("/corpus/corpus.bin")).arrayBuffer());
    return runner.digests(bismar, corpus);
  });
  const expected = JSON.parse(readFileSync(join(corpusFolder, "digests.json"), "utf8"));
  console.log(`same bits: ${Object.keys(found).length} functions, native and Chromium`);
  assert.deepEqual(differing(expected, found), []);
});

test("a module worker in Chromium", async () => {
  const { page } = await open(`${origin}/`);
  const answer = await page.evaluate(() => new Promise((resolve, reject) => {
    const worker = new Worker("/worker.js", { type: "module" });
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = (event) => reject(new Error(event.message));
  }));
  assert.equal(answer, 150);
});

test("the inline form inside a page opened from a file", async () => {
  const text = readFileSync(join(pkg, "inline.js"), "utf8");
  const file = join(profile, "page.html");
  // The module is not imported but stands in the page, as `file://` allows no imports beside it.
  const body = text.replace("export default function init", "function init").replace(/^export /gm, "");
  writeFileSync(file, `<!doctype html><meta charset=utf-8><title>waiting</title><script type="module">${body}
    init().then(() => { document.title = String(oneRm.epley1985({ load: { kg: 100 }, reps: 15 }).kg); });</script>`);
  const { page, problems } = await open(pathToFileURL(file).href);
  await page.waitForFunction(() => document.title !== "waiting");
  assert.equal(await page.title(), "150");
  assert.deepEqual(problems, []);
});

test("the example page without a framework, the package copied beside it", async () => {
  FOLDERS.web_page = join(profile, "web_page");
  cpSync(join(root, "examples/web_page"), FOLDERS.web_page, { recursive: true });
  cpSync(pkg, join(FOLDERS.web_page, "bismar"), { recursive: true });
  const { page, problems } = await open(`${origin}/web_page/index.html`);
  await page.waitForFunction(() => document.querySelectorAll("tbody tr").length === 5);
  await page.fill("input[name=reps]", "15");
  await page.fill("input[name=load]", "100");
  assert.match(await page.textContent("tbody"), /epley1985150\.0/);
  await page.fill("input[name=reps]", "many");
  assert.match(await page.textContent("#answer"), /^reps: /);
  assert.deepEqual(problems, []);
});

test("the page that Vite built", { skip: viteOut === "" }, async () => {
  const index = join(viteOut, "index.html");
  // Served below a folder: Vite writes absolute addresses.
  writeFileSync(index, readFileSync(index, "utf8").replaceAll('"/assets/', '"/vite/assets/'));
  PAGES["/assets/"] = undefined;
  FOLDERS.assets = join(viteOut, "assets");
  const { page, problems } = await open(`${origin}/vite/index.html`);
  await page.waitForFunction(() => document.title === "150");
  assert.deepEqual(problems, []);
});
