// Logs, states and kept states, on the invented demo log.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { root } from "./files.mjs";

await init();
const { Progress, fromJson, toJson, prescription, progression, diagnostics } = bismar;
const document = (name) => JSON.parse(readFileSync(join(root, `examples/data/${name}.json`), "utf8"));
const log = fromJson(document("demo-log"));
const plan = fromJson(document("demo-plan"));
const last = log.events.reduce((day, event) => (event.day > day ? event.day : day), "");

test("documents survive the change of spelling", () => {
  assert.deepEqual(toJson(log), document("demo-log"));
  assert.deepEqual(toJson(plan), document("demo-plan"));
});

test("a kept state answers what the whole log answers", () => {
  const progress = new Progress(log);
  const whole = prescription.nextSession({ log, plan, today: last });
  assert.deepEqual(progress.nextSession(plan, last), whole);
  const state = progression.fold({ log });
  assert.deepEqual(progress.state(), state);
  assert.deepEqual(prescription.nextSessionFrom({ state, plan, today: last }), whole);
  assert.deepEqual(progress.decide(last), progression.decide({ state, today: last }));
  progress.close();
});

test("events applied one by one give the fold", () => {
  const events = [...log.events].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.sequence - b.sequence));
  const half = Math.floor(events.length / 2);
  const progress = new Progress({ ...log, events: events.slice(0, half) });
  let refolded = 0;
  for (const event of events.slice(half)) {
    try {
      progress.apply(event);
    } catch (error) {
      // Only what changes the past asks for a new fold.
      assert.equal(error.code, "needs_refold");
      refolded += 1;
      break;
    }
  }
  if (refolded === 0) assert.deepEqual(progress.state(), progression.fold({ log }));
  progress.close();
});

test("a refused event leaves the state as it was, and a closed one says so", () => {
  const progress = new Progress(log);
  const before = progress.state();
  assert.throws(() => progress.apply(log.events[0]), { code: "needs_refold" });
  assert.throws(() => progress.apply({ ...log.events[0], surplus: 1 }), { code: "unknown_field", field: "event.surplus" });
  assert.throws(() => progress.nextSession(plan, "yesterday"), { code: "not_a_date", field: "today" });
  assert.deepEqual(progress.state(), before);
  progress.close();
  progress.close();
  assert.throws(() => progress.state(), { code: "not_ready" });
  assert.throws(() => new Progress({ ...log, version: 99 }), { name: "BismarError" });
});

test("a thousand kept states, given back, take no more memory", () => {
  const small = { ...log, events: log.events.slice(0, 10) };
  for (let at = 0; at < 50; at += 1) new Progress(small).close();
  const before = diagnostics().memoryBytes;
  for (let at = 0; at < 1_000; at += 1) new Progress(small).close();
  assert.equal(diagnostics().memoryBytes, before);
});
