// JSON Schemas of the documents: every fixture validates, and what the library refuses does not.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import Ajv2020 from "ajv/dist/2020.js";
import init, * as bismar from "../pkg/node.js";
import { pkg, root } from "./files.mjs";

await init();
const schema = (name) => JSON.parse(readFileSync(join(pkg, `schemas/${name}.schema.json`), "utf8"));
const fixture = (name) => JSON.parse(readFileSync(join(root, `examples/data/${name}.json`), "utf8"));
const validator = (name) => new Ajv2020({ strict: false, allErrors: false }).compile(schema(name));

for (const name of ["log", "plan", "state"]) {
  test(`the package has the schema of the ${name}`, () => assert.ok(existsSync(join(pkg, `schemas/${name}.schema.json`))));
}

test("the demo log and plan validate", () => {
  for (const name of ["log", "plan"]) {
    const validate = validator(name);
    assert.ok(validate(fixture(`demo-${name}`)), JSON.stringify(validate.errors?.slice(0, 3)));
  }
});

test("a folded state validates in the spelling of JSON", () => {
  const log = bismar.fromJson(fixture("demo-log"));
  const validate = validator("state");
  const state = bismar.toJson(bismar.progression.fold({ log }));
  assert.ok(validate(state), JSON.stringify(validate.errors?.slice(0, 3)));
});

test("what the library refuses as unknown, the schema refuses too", () => {
  const validate = validator("log");
  const log = fixture("demo-log");
  assert.equal(validate({ ...log, surplus: 1 }), false);
  const [first, ...rest] = log.events;
  assert.equal(validate({ ...log, events: [{ ...first, surplus: 1 }, ...rest] }), false);
  assert.equal(validate({ ...log, events: [{ ...first, day: "yesterday" }, ...rest] }), false);
  assert.throws(() => bismar.progression.fold({ log: bismar.fromJson({ ...log, surplus: 1 }) }), { code: "unknown_field" });
});
