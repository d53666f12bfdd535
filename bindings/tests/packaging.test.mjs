// The packed tarball in small real projects.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test, { after } from "node:test";
import { bindings, pkg, root } from "./files.mjs";

const work = mkdtempSync(join(tmpdir(), "bismar-pack-"));
after(() => rmSync(work, { recursive: true }));
const npm = (args, cwd) => execFileSync("npm", args, { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
const tarball = join(work, npm(["pack", "--silent", "--pack-destination", work], pkg).trim().split("\n").at(-1));

// One answer that every project must print.
const PRINT = "oneRm.epley1985({ load: { kg: 100 }, reps: 15 }).kg";

function project(name, files, type = "module") {
  const folder = join(work, name);
  mkdirSync(folder);
  writeFileSync(join(folder, "package.json"), JSON.stringify({ name, version: "1.0.0", private: true, type }));
  npm(["install", "--offline", "--no-audit", "--no-fund", "--no-package-lock", tarball], folder);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(join(folder, file, ".."), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  return folder;
}

const node = (folder, file) => {
  const { stdout, stderr, status } = spawnSync(process.execPath, [file], { cwd: folder, encoding: "utf8" });
  assert.equal(status, 0, stderr);
  return stdout.trim();
};

test("the tarball holds what it should and nothing else", () => {
  const { files } = JSON.parse(npm(["pack", "--dry-run", "--json", "--silent"], pkg))[0];
  const parts = readdirSync(pkg).filter((name) => existsSync(join(pkg, name, "core.js")));
  const own = ["bismar.wasm", "core.js", "index.d.ts", "index.js", "node.js", "slim.d.ts", "slim.js"];
  const names = files.map(({ path }) => path).filter((path) => !parts.includes(path.split("/")[0])).sort();
  const inParts = files.map(({ path }) => path).filter((path) => parts.includes(path.split("/")[0])).sort();
  assert.deepEqual(inParts, parts.flatMap((part) => own.map((file) => `${part}/${file}`)).sort());
  assert.deepEqual(names, [
    "LICENSE", "README.md", "bismar.wasm", "core.js", "error.js", "index.d.ts", "index.js", "inline.d.ts", "inline.js", "node.js",
    "package.json", "registry.json", "schemas/log.schema.json", "schemas/plan.schema.json",
    "schemas/state.schema.json", "slim.d.ts", "slim.js",
  ]);
});

test("nothing in the package tells where it was built", () => {
  for (const name of readdirSync(pkg)) {
    if (name === "schemas") continue;
    const inside = existsSync(join(pkg, name, "core.js")) ? ["core.js", "bismar.wasm", "index.d.ts"].map((file) => join(name, file)) : [name];
    const text = inside.map((file) => readFileSync(join(pkg, file), "latin1")).join("");
    for (const trace of ["/root/", "/home/", process.env.HOME, bindings]) {
      assert.ok(trace === undefined || trace === "/" || !text.includes(trace), `${name} mentions ${trace}`);
    }
  }
});

test("Node, ES module", () => {
  const folder = project("esm", { "main.js": `import init, { oneRm } from "bismar"; await init(); console.log(${PRINT});` });
  assert.equal(node(folder, "main.js"), "150");
});

test("the Node example, as it stands", () => {
  const folder = project("example", { "next_session.mjs": readFileSync(join(root, "examples/node/next_session.mjs"), "utf8") });
  const run = (...args) => spawnSync(process.execPath, ["next_session.mjs", ...args], { cwd: folder, encoding: "utf8" });
  const [log, plan] = ["demo-log", "demo-plan"].map((name) => join(root, `examples/data/${name}.json`));
  const printed = run(log, plan, "2026-08-27", "state.json");
  assert.ok([0, 3].includes(printed.status), printed.stderr);
  assert.match(printed.stdout, /^box squat: train, [0-9.]+ kg, /m);
  assert.equal(JSON.parse(readFileSync(join(folder, "state.json"), "utf8")).version, JSON.parse(readFileSync(join(pkg, "package.json"), "utf8")).version);
  const refused = run(log, plan, "2026-02-30");
  assert.equal(refused.status, 2, refused.stderr);
});

test("the first JavaScript of both READMEs, pasted", () => {
  for (const readme of ["README.md", "bindings/README.md"]) {
    const [, snippet] = readFileSync(join(root, readme), "utf8").match(/```js\n([\s\S]*?)```/);
    node(project(readme.replaceAll(/\W/g, "-").toLowerCase(), { "main.js": snippet }), "main.js");
  }
});

test("Node, CommonJS with dynamic import", () => {
  const text = `import("bismar").then(async ({ default: init, oneRm }) => { await init(); console.log(${PRINT}); });`;
  assert.equal(node(project("cjs", { "main.js": text }, "commonjs"), "main.js"), "150");
});

test("Node, slim with the raw wasm, and the data files", () => {
  const text = `
    import { readFile } from "node:fs/promises";
    import init, { oneRm } from "bismar/slim";
    await init(readFile(new URL(import.meta.resolve("bismar/bismar.wasm"))));
    const rows = JSON.parse(await readFile(new URL(import.meta.resolve("bismar/registry.json")), "utf8")).rows;
    await readFile(new URL(import.meta.resolve("bismar/schemas/log.schema.json")));
    console.log(${PRINT}, rows.length > 0);`;
  assert.equal(node(project("slim", { "main.js": text }), "main.js"), "150 true");
});

test("two parts beside each other, in Node and bundled", { skip: !["strength", "loading"].every((part) => existsSync(join(pkg, part))) && "both parts are not built" }, async () => {
  const text = `
    import start, { oneRm } from "bismar/strength";
    import begin, { loading } from "bismar/loading";
    await Promise.all([start(), begin()]);
    const max = oneRm.epley1985({ load: { kg: 100 }, reps: 15 });
    console.log(max.kg, loading.stepHigh);`;
  const folder = project("parts", { "main.js": text });
  assert.equal(node(folder, "main.js"), "150 10");
  const slim = `
    import strength from "bismar/strength/bismar.wasm"; import loading from "bismar/loading/bismar.wasm";
    import start, { oneRm } from "bismar/strength/slim"; import begin, { loading as bars } from "bismar/loading/slim";
    Promise.all([start(strength), begin(loading)]).then(() => console.log(oneRm.epley1985({ load: { kg: 100 }, reps: 15 }).kg, bars.stepHigh));`;
  const { build } = await import("esbuild");
  const bundled = project("parts-bundled", { "main.js": slim });
  await build({ absWorkingDir: bundled, entryPoints: ["main.js"], bundle: true, logLevel: "silent", format: "cjs", platform: "node", outfile: "out/main.cjs", target: "node20", loader: { ".wasm": "binary" } });
  assert.equal(node(bundled, "out/main.cjs"), "150 10");
});

test("Node, a worker thread", () => {
  const files = {
    "main.js": `
      import { Worker } from "node:worker_threads";
      new Worker(new URL("./worker.js", import.meta.url)).on("message", (answer) => console.log(answer));`,
    "worker.js": `
      import { parentPort } from "node:worker_threads";
      import init, { oneRm } from "bismar";
      await init();
      parentPort.postMessage(${PRINT});`,
  };
  assert.equal(node(project("worker", files), "main.js"), "150");
});

test("esbuild, inline, for browsers and for Node as CommonJS", async () => {
  const { build } = await import("esbuild");
  const text = `import init, { oneRm } from "bismar/inline"; init().then(() => console.log(${PRINT}));`;
  const folder = project("esbuild", { "main.js": text });
  const shared = { absWorkingDir: folder, entryPoints: ["main.js"], bundle: true, logLevel: "silent", minify: true };
  await build({ ...shared, outfile: "out/node.cjs", format: "cjs", platform: "node" });
  assert.equal(node(folder, "out/node.cjs"), "150");
  const result = await build({ ...shared, outfile: "out/web.js", format: "iife", platform: "browser" });
  assert.deepEqual(result.warnings, []);
  assert.equal(node(folder, "out/web.js"), "150");
});

test("esbuild, slim with the wasm as bytes", async () => {
  const { build } = await import("esbuild");
  const text = `import wasm from "bismar/bismar.wasm"; import init, { oneRm } from "bismar/slim";
    init(wasm).then(() => console.log(${PRINT}));`;
  const folder = project("esbuild-slim", { "main.js": text });
  await build({
    absWorkingDir: folder, entryPoints: ["main.js"], bundle: true, logLevel: "silent", outfile: "out/main.mjs",
    format: "esm", target: "es2022", loader: { ".wasm": "binary" },
  });
  assert.equal(node(folder, "out/main.mjs"), "150");
});

test("Vite builds the page with the wasm beside it", async () => {
  const files = {
    "index.html": '<!doctype html><title>t</title><script type="module" src="./main.js"></script>',
    "main.js": `import init, { oneRm } from "bismar"; await init(); document.title = String(${PRINT});`,
  };
  const folder = project("vite", files);
  symlinkSync(join(bindings, "node_modules/vite"), join(folder, "node_modules/vite"));
  const { build } = await import("vite");
  await build({ root: folder, logLevel: "silent", build: { target: "es2022" } });
  const assets = readdirSync(join(folder, "dist/assets"));
  assert.ok(assets.some((name) => name.endsWith(".wasm")), assets.join(", "));
  assert.ok(existsSync(join(folder, "dist/index.html")));
  // The browser test opens it.
  if (process.env.BISMAR_VITE_OUT !== undefined) {
    rmSync(process.env.BISMAR_VITE_OUT, { recursive: true, force: true });
    execFileSync("cp", ["-r", join(folder, "dist"), process.env.BISMAR_VITE_OUT]);
  }
});
