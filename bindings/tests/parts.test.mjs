// The parts of the package: each a wasm of its own with some modules, the same core, types and errors.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import whole, * as bismar from "../pkg/node.js";
import { keys, pkg, publishedDocuments, root } from "./files.mjs";
import { run } from "./published-runner.mjs";

const PARTS = ["strength", "loading", "session", "day", "statistics", "horizon", "english"];
// A short run builds one part only and says so; without that word all of them have to be there.
const built = process.env.BISMAR_PARTS?.split(",").filter((name) => name !== "") ?? PARTS;

const loaded = {};
for (const name of built) {
  loaded[name] = await import(join(pkg, name, "node.js"));
  await loaded[name].default();
}
await whole();

const modulesOf = (part) => Object.keys(part).filter((name) => typeof part[name] === "object" && !["batch", "flat"].includes(name));
const demo = () => bismar.fromJson(JSON.parse(readFileSync(join(root, "examples/data/demo-log.json"), "utf8")));

/** The published documents with only those cases. */
const only = (wanted) =>
  publishedDocuments()
    .map(({ name, document }) => ({ name, document: { ...document, cases: (document.cases ?? []).filter(wanted) } }))
    .filter(({ document }) => document.cases.length > 0);

/** What a part offers, as "module.name". */
const offered = (part) => modulesOf(part).flatMap((module) => Object.keys(part[module]).map((name) => `${module}.${name}`));
const some = { skip: built.length < PARTS.length && "not all parts are built" };

test("every registered row is in the whole and in exactly one part", some, () => {
  const names = JSON.parse(readFileSync(join(root, "tests/published/names.json"), "utf8"));
  assert.deepEqual(keys().sort(), Object.keys(names).sort());
  assert.deepEqual(knownTo(bismar), keys());
  const rows = built.map((name) => knownTo(loaded[name]));
  console.log(`rows: ${built.map((name, at) => `${name} ${rows[at].length}`).join(", ")}; ${keys().length} in all`);
  for (const [at, name] of built.entries()) assert.ok(name === "english" ? rows[at].length === 0 : rows[at].length > 5, name);
  assert.equal(rows.flat().length, keys().length);
  assert.deepEqual(rows.flat().sort(), keys().sort());
});

test("every function of the whole, those of logs too, is in exactly one part, and no part has any other but the sentences", some, () => {
  const sentences = offered(loaded.english);
  assert.ok(sentences.length > 15 && sentences.every((name) => name.startsWith("text.")), `${sentences}`);
  const inParts = built.filter((name) => name !== "english").flatMap((name) => offered(loaded[name]));
  assert.equal(new Set(inParts).size, inParts.length);
  assert.deepEqual(inParts.sort(), offered(bismar).sort());
  // What reads a log stands beside the rows, in the parts that read logs: the questions in three of them.
  assert.deepEqual(built.filter((name) => "answers" in loaded[name]), ["session", "day", "horizon"]);
  assert.ok(inParts.length > keys().length, `${inParts.length} functions, ${keys().length} rows`);
});

for (const name of built) {
  const part = loaded[name];

  // What tells in sentences has no row, and so no published check: `english.test.mjs` holds it against the answers.
  const checked = { skip: name === "english" && "it has no rows" };
  test(`${name}: every published check of its functions holds, as many as in the whole`, checked, () => {
    const own = new Set(knownTo(part));
    const cases = only((body) => own.has(body.function));
    const here = run(part, cases, [...own]);
    const there = run(bismar, cases, [...own]);
    console.log(`${name}: ${here.cases} cases over ${here.functions} functions`);
    assert.deepEqual(here.failures, []);
    assert.ok(here.cases > 50, `${here.cases} cases`);
    assert.deepEqual([here.cases, here.functions], [there.cases, there.functions]);
  });

  test(`${name}: what belongs to another part is an unknown function`, () => {
    const foreign = name === "strength" ? "loading.load" : "one_rm.epley_1985";
    assert.throws(() => part.call(foreign, {}), { name: "BismarError", code: "unknown_function" });
  });

  test(`${name}: 10 000 bad calls leave the memory as it was`, () => {
    const [module] = modulesOf(part);
    const method = Object.keys(part[module]).find((one) => typeof part[module][one] === "function");
    const bad = () => assert.throws(() => part[module][method]({ nothing: [1, "x", { of: true }] }), part.BismarError);
    for (let time = 0; time < 1_000; time += 1) bad();
    const before = part.diagnostics().memoryBytes;
    for (let time = 0; time < 10_000; time += 1) bad();
    assert.equal(part.diagnostics().memoryBytes, before);
  });

  test(`${name}: the class of errors is one for all parts`, () => assert.equal(part.BismarError, bismar.BismarError));
}

/** Every key of the registry that the part knows, by asking with nothing. */
function knownTo(part) {
  return keys().filter((key) => {
    try {
      part.call(key, {});
    } catch (error) {
      return error.code !== "unknown_function";
    }
    return true;
  });
}

test("session: a kept state answers as the whole does, and a value of one is taken by the other", { skip: !built.includes("session") }, () => {
  const { session } = loaded;
  const log = demo();
  const plan = bismar.fromJson(JSON.parse(readFileSync(join(root, "examples/data/demo-plan.json"), "utf8")));
  const today = "2026-08-31";
  const [here, there] = [new session.Progress(log), new bismar.Progress(log)];
  assert.deepEqual(here.nextSession(plan, today), there.nextSession(plan, today));
  const carried = session.Progress.fromState(there.state(), log);
  assert.deepEqual(carried.nextSession(plan, today), there.nextSession(plan, today));
  for (const one of [here, there, carried]) one.close();
});

test("a part without logs has no kept states", { skip: built.every((name) => name === "session") }, () => {
  for (const name of built) assert.equal("Progress" in loaded[name], name === "session", name);
});

test("each part has its files", () => {
  for (const name of built) {
    for (const file of ["bismar.wasm", "core.js", "index.js", "node.js", "slim.js", "index.d.ts", "slim.d.ts"]) {
      assert.ok(existsSync(join(pkg, name, file)), `${name}/${file}`);
    }
  }
});
