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
  assert.throws(() => new Progress({ ...log, version: 0 }), { code: "wrong_format", field: "version" });
});

/** Canonical bytes of a document: a tag byte a value, numbers as `f64` and lengths as `u32`, little-endian, fields in their order. */
const canonical = (value) => {
  const number = (length, write) => {
    const bytes = Buffer.alloc(length);
    write(bytes);
    return bytes;
  };
  const length = (count) => number(4, (bytes) => bytes.writeUInt32LE(count));
  const text = (content) => [length(Buffer.byteLength(content)), Buffer.from(content)];
  if (value === null) return Buffer.from([0]);
  if (typeof value === "boolean") return Buffer.from([1, Number(value)]);
  if (typeof value === "number") return Buffer.concat([Buffer.from([2]), number(8, (bytes) => bytes.writeDoubleLE(value))]);
  if (typeof value === "string") return Buffer.concat([Buffer.from([3]), ...text(value)]);
  if (Array.isArray(value)) return Buffer.concat([Buffer.from([4]), length(value.length), ...value.map(canonical)]);
  const fields = Object.entries(value).flatMap(([key, field]) => [...text(key), canonical(field)]);
  return Buffer.concat([Buffer.from([5]), length(Object.keys(value).length), ...fields]);
};

/** The stored document with the seal that belongs to it: 64-bit FNV-1a over its canonical bytes without one. */
const sealed = (stored) => {
  const { seal, ...rest } = stored;
  assert.equal(typeof seal, "string");
  const mixed = (hash, byte) => BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  const hash = [...canonical(rest)].reduce(mixed, 0xcbf29ce484222325n);
  return { ...rest, seal: hash.toString(16).padStart(16, "0") };
};

/** A state of the log with a mark that no fold of it would leave, so that it is seen whether it was taken or folded anew. */
const MARK = 7;
const marked = (of = log) => {
  const stored = toJson(progression.fold({ log: of }));
  return fromJson(sealed({ ...stored, shared: { ...stored.shared, unknown: MARK } }));
};
const isTaken = (progress) => progress.state().shared.unknown === MARK;

test("a stored state is taken where it is the one after the log's last event", () => {
  const stored = toJson(progression.fold({ log }));
  assert.equal(sealed(stored).seal, stored.seal);
  const progress = Progress.fromState(fromJson(JSON.parse(JSON.stringify(toJson(marked())))), log);
  assert.ok(progress instanceof Progress);
  assert.ok(isTaken(progress));
  progress.close();
  assert.throws(() => progress.decide(last), { code: "not_ready" });
});

test("a state of another log of the same lifter is not taken: not one event may be another", () => {
  const changed = log.events.map((event) => (event.kind.bodyMassRecorded ? { ...event, kind: { bodyMassRecorded: { kg: 99 } } } : event));
  assert.notDeepEqual(changed, log.events);
  const other = { ...log, events: changed };
  const progress = Progress.fromState(marked(other), log);
  assert.ok(!isTaken(progress));
  assert.deepEqual(progress.state(), progression.fold({ log }));
  progress.close();
  const own = Progress.fromState(marked(other), other);
  assert.ok(isTaken(own));
  own.close();
});

test("a stored state of no use is not an error: the log is folded", () => {
  const note = { sequence: 999_999, day: last, kind: { bodyMassRecorded: { kg: 81 } } };
  for (const [what, state, of] of [
    ["another version of the library", { ...marked(), version: "0.0.1" }, log],
    ["another version, in another shape", { format: "bismar-state", version: "9.0.0", everything: true }, log],
    ["parameters altered", { ...marked(), digest: "0".repeat(64) }, log],
    ["a load altered", { ...marked(), lifts: marked().lifts.map(([id, now]) => [id, { ...now, peak: { kg: 999 } }]) }, log],
    ["one event more", marked(), { ...log, events: [...log.events, note] }],
    ["one event fewer", marked(), { ...log, events: log.events.slice(0, -1) }],
    ["another lifter", marked(), { ...log, lifter: { ...log.lifter, id: "somebody-else" } }],
    ["nothing in it", {}, log],
  ]) {
    const progress = Progress.fromState(state, of);
    assert.ok(!isTaken(progress), what);
    assert.deepEqual(progress.state(), progression.fold({ log: of }), what);
    progress.close();
  }
  assert.throws(() => Progress.fromState(marked(), { ...log, format: "other" }), { code: "wrong_format", field: "format" });
});

test("where a state is given by itself, one of another version is refused as such", () => {
  const other = { format: "bismar-state", version: "9.0.0", everything: true };
  assert.throws(() => progression.decide({ state: other, today: last }), { code: "other_version", field: "state.version", value: "9.0.0" });
  const wrong = { ...progression.fold({ log }), surplus: 1 };
  assert.throws(() => progression.decide({ state: wrong, today: last }), { code: "unknown_field", field: "state.surplus" });
});

test("an unknown kind of event is refused in a log of this version, and counted in a newer one, where nothing moves up", () => {
  const unknown = { sequence: 999_999, day: last, kind: { somethingNew: { howMuch: 3 } } };
  const events = [...log.events, unknown];
  assert.throws(() => progression.fold({ log: { ...log, events } }), { code: "unknown_event", value: "somethingNew", event: 999_999 });
  const newer = { ...log, version: log.version + 1, events };
  const progress = new Progress(newer);
  assert.equal(progress.state().shared.unknown, 1);
  for (const decision of progress.decide(last)) {
    assert.ok(decision.outlook.blocked.by.some((one) => one.unknownEventPresent), decision.lift);
  }
  assert.deepEqual(Progress.fromState(progress.state(), newer).state(), progress.state());
  progress.close();
});

test("a thousand kept states, given back, take no more memory", () => {
  const small = { ...log, events: log.events.slice(0, 10) };
  for (let at = 0; at < 50; at += 1) new Progress(small).close();
  const before = diagnostics().memoryBytes;
  for (let at = 0; at < 1_000; at += 1) new Progress(small).close();
  assert.equal(diagnostics().memoryBytes, before);
});
