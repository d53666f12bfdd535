import assert from "node:assert/strict";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { keys, publishedDocuments, wantedCounts, withOthers } from "./files.mjs";
import { compare, run } from "./published-runner.mjs";

test("every published check holds through the package", async () => {
  await init();
  const report = run(bismar, publishedDocuments(), keys());
  console.log(`published checks: ${report.cases} cases over ${report.functions} functions in Node`);
  if (report.unmapped.length > 0) console.log(`not mapped: ${report.unmapped.join(", ")}`);
  assert.deepEqual(report.failures, []);
  if (!withOthers) assert.deepEqual([{ cases: report.cases, functions: report.functions }, report.unmapped], [wantedCounts(), []]);
});

test("the comparison can fail", () => {
  assert.equal(compare("x", { kg: 1.5 }, { kg: 0.1 }, { kg: 1.7 }).length, 1);
  assert.equal(compare("x", { kg: 1.5 }, undefined, { kg: 1.5 }).length, 1);
  assert.equal(compare("x", [1, 2], undefined, [1]).length, 1);
  assert.equal(compare("x", { a: "b" }, undefined, { a: "c" }).length, 1);
  assert.equal(compare("x", { a: null }, undefined, {}).length, 0);
});
