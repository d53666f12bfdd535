// The same bits: the seeded corpus, natively and in Node, digest by digest.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { differing, digests } from "./corpus-runner.mjs";
import { corpusFolder } from "./files.mjs";

test("row_77: every function gives the same bits natively and in Node", async () => {
  await init();
  const expected = JSON.parse(readFileSync(join(corpusFolder, "digests.json"), "utf8"));
  const found = await digests(bismar, readFileSync(join(corpusFolder, "corpus.bin")));
  const inputs = Object.values(found).reduce((sum, { count }) => sum + count, 0);
  console.log(`same bits: ${inputs} inputs over ${Object.keys(found).length} functions, native and Node`);
  assert.deepEqual(differing(expected, found), []);
});

test("a difference names the function", () => {
  const one = { a: { count: 1, digest: "x" }, b: { count: 1, digest: "y" } };
  assert.deepEqual(differing(one, { ...one, b: { count: 1, digest: "z" } }), ["b"]);
  assert.deepEqual(differing(one, { a: one.a }), ["b"]);
});
