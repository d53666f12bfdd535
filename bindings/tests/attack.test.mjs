// What an attack from outside found, and what holds since: handles, columns, stacks, searches, instances.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { pkg, root } from "./files.mjs";

await init();
const { Progress, batch, create, fromJson, oneRm, statistics, BismarError } = bismar;
const log = fromJson(JSON.parse(readFileSync(join(root, "examples/data/demo-log.json"), "utf8")));
const small = { format: "bismar-log", version: 1, lifter: { id: "A" }, events: [] };
const fine = (one = bismar) => assert.deepEqual(one.oneRm.epley1985({ load: { kg: 100 }, reps: 15 }), { kg: 150 });

test("a getter that closes its handle reaches no other handle", () => {
  const first = new Progress(log);
  let second;
  const given = {
    get sequence() {
      first.close();
      second = new Progress(small); // takes the number that was given back
      return 900;
    },
    day: "2026-08-29",
    kind: { bodyMassRecorded: { kg: 80 } },
  };
  assert.throws(() => first.apply(given), { code: "not_ready", field: "progress" });
  assert.deepEqual(second.state(), new Progress(small).state(), "the other was not written to");
  assert.throws(() => first.state(), { code: "not_ready" });
  // Names that were walked and not sent are not taken as sent: what comes after is read right.
  second.apply({ sequence: 901, day: "2026-08-29", kind: { bodyMassRecorded: { kg: 80 } } });
  second.close();
  fine();
});

test("100 000 handles are open at once, and the last costs no more than the first", () => {
  const held = [];
  const opened = (count) => {
    const from = performance.now();
    for (let at = 0; at < count; at += 1) held.push(new Progress(small));
    return performance.now() - from;
  };
  opened(2_000); // warm
  const first = opened(8_000);
  const most = opened(82_000);
  const last = opened(8_000);
  assert.equal(held.length, 100_000);
  assert.ok(last < first * 5 + 50, `the last 8 000 took ${last.toFixed(0)} ms, the first ${first.toFixed(0)} ms`);
  const from = performance.now();
  for (const one of held) one.close();
  const closed = performance.now() - from;
  assert.ok(closed < most * 2 + 200, `closing took ${closed.toFixed(0)} ms, opening ${most.toFixed(0)} ms`);
  const again = opened(8_000);
  assert.ok(again < first * 5 + 50, "places that were given back are found without a search");
  for (const one of held) one.close();
  fine();
});

test("run lengths are found in a bounded time", () => {
  for (const shift of [0, 0.1, -3, 3, 1e-9]) {
    // Of the processor, so that what else runs does not count.
    const from = process.cpuUsage();
    statistics.westernElectricRunLength({ shift });
    const { user } = process.cpuUsage(from);
    assert.ok(user < 1_500_000, `${shift}: ${(user / 1000).toFixed(0)} ms`);
  }
});

test("an exhausted stack leaves the instance usable, or is instance_failed and a new instance works", async () => {
  const own = await create();
  const seen = [];
  const down = (depth) => {
    try {
      own.oneRm.epley1985({ load: { kg: 100 }, reps: 8 });
      own.batch.oneRm.epley1985({ load: new Float64Array([1, 2]), reps: 5 });
    } catch (error) {
      seen.push(error);
      return;
    }
    down(depth + 1);
  };
  for (let round = 0; round < 20; round += 1) {
    try {
      down(0);
    } catch (error) {
      seen.push(error);
    }
  }
  for (const error of seen) assert.ok(error instanceof BismarError || error instanceof RangeError, `${error}`);
  if (own.diagnostics().failed) {
    assert.throws(() => own.oneRm.epley1985({ load: { kg: 100 }, reps: 8 }), { code: "instance_failed" });
    fine(await create());
  } else fine(own);
  fine();
});

test("instances know nothing of each other: one fails, the others go on", async () => {
  const wasm = readFileSync(join(pkg, "bismar.wasm"));
  const { instantiate } = WebAssembly;
  WebAssembly.instantiate = async (...given) => {
    const made = await instantiate(...given);
    const { exports } = made.instance ?? made;
    return { module: made.module, instance: { exports: { ...exports, raw_room: () => exports.raw_room(0x9000_0000) } } };
  };
  const failing = await create(wasm);
  WebAssembly.instantiate = instantiate;
  assert.throws(() => failing.oneRm.epley1985({ load: { kg: 100 }, reps: 8 }), { code: "instance_failed" });
  assert.equal(failing.diagnostics().failed, true);
  fine();
  assert.equal(bismar.diagnostics().failed, false);
  const next = await create();
  fine(next);
  const progress = new next.Progress(log);
  assert.deepEqual(progress.state(), new Progress(log).state());
  assert.deepEqual(next.batch.oneRm.epley1985({ load: 100, reps: new Float64Array([15]) }), new Float64Array([150]));
  progress.close();
});

test("columns are copied with their true length inside the call", () => {
  const reps = 5;
  const right = batch.oneRm.epley1985({ load: new Float64Array([100, 110]), reps });
  // Of another frame, offset into a larger buffer, following a buffer that grows, of another kind of number.
  const larger = new Float64Array([0, 100, 110, 0]);
  assert.deepEqual(batch.oneRm.epley1985({ load: larger.subarray(1, 3), reps }), right);
  const growing = new ArrayBuffer(8, { maxByteLength: 1 << 20 });
  const following = new Float64Array(growing);
  following[0] = 100;
  const given = { load: following, get reps() { growing.resize(16); following[1] = 110; return reps; } };
  assert.deepEqual(batch.oneRm.epley1985(given), right, "as it was when all were read");
  const gone = new Float64Array(growing, 0, 2);
  growing.resize(0);
  assert.throws(() => batch.oneRm.epley1985({ load: gone, reps }), { code: "wrong_type", field: "load" });
  const transferred = new Float64Array([100, 110]);
  const taking = { load: transferred, get reps() { structuredClone(transferred.buffer, { transfer: [transferred.buffer] }); return reps; } };
  assert.throws(() => batch.oneRm.epley1985(taking), { code: "wrong_type", field: "load" });
  fine();
});

test("messages cut what is long and move no terminal", () => {
  for (const given of [{ load: { kg: 100 }, reps: 8, ["x".repeat(50_000)]: 1 }, { load: { kg: 100 }, reps: "\u001b[2J\u009b\u202e" }, { load: { ["\u001b]0;x\u0007"]: 1 }, reps: 1 }]) {
    try {
      oneRm.epley1985(given);
      assert.fail("refused");
    } catch (error) {
      assert.ok(error instanceof BismarError);
      assert.ok(error.message.length < 700, String(error.message.length));
      // eslint-disable-next-line no-control-regex
      assert.doesNotMatch(error.message, /[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    }
  }
});
