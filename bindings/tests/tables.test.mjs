// Tables of sets become sessions of a log: the cases that Rust and the other languages run, with the whole answer of each,
// through the whole package and the part that has this question.
import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import whole, * as bismar from "../pkg/node.js";
import { pkg } from "./files.mjs";
import { camelKey } from "./published-runner.mjs";
import { askedOf, tableCases } from "./tables.mjs";

const part = join(pkg, "session", "node.js");
const packages = { "the whole": bismar, ...(existsSync(part) ? { session: await import(part) } : {}) };
await whole();
await packages.session?.default();
const { log, cases } = tableCases();

for (const [name, { answers, toJson, fromJson, BismarError }] of Object.entries(packages)) {
  test(`${name}: tables of sets become what the cases say`, () => {
    const ends = new Map();
    for (const { shows, after, expect, expectError, ...one } of cases) {
      const before = after === undefined ? log : ends.get(after);
      let told;
      try {
        told = answers.setsToLog(askedOf(one, before));
      } catch (error) {
        assert.ok(error instanceof BismarError, `${shows}: ${error}`);
        assert.deepEqual({ code: error.code, field: error.field }, { ...expectError, field: camelKey(expectError?.field ?? "") }, shows);
        continue;
      }
      const { log: end, ...report } = told;
      ends.set(shows, end);
      const at = before.events.length;
      assert.deepEqual({ ...report, added: end.events.slice(at) }, expect, shows);
      assert.deepEqual(end.events.slice(0, at).map((event) => event.sequence), before.events.map((event) => event.sequence), shows);
      // Stored as JSON and read back it is the same log.
      assert.deepEqual(fromJson(JSON.parse(JSON.stringify(toJson(end)))), end, shows);
    }
    console.log(`${name}: ${cases.length} cases of tables`);
    assert.ok(cases.length >= 30);
  });
}
