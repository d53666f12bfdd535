// What must not get through, and what must not be left behind.
import assert from "node:assert/strict";
import test from "node:test";
import vm from "node:vm";
import init, * as bismar from "../pkg/node.js";

await init();
const { oneRm, BismarError, diagnostics } = bismar;
const good = () => ({ load: { kg: 100 }, reps: 8 });
const call = (given) => oneRm.epley1985(given);

function refused(given) {
  try {
    call(given);
  } catch (error) {
    assert.ok(error instanceof BismarError && error instanceof Error, `${error}`);
    return `${error.code} ${error.field}`.trim();
  }
  return "accepted";
}

class Load {
  kg = 100;
}

const cycle = good();
cycle.load.self = cycle;
const deep = { load: {} };
let inner = deep.load;
for (let depth = 0; depth < 10_000; depth += 1) inner = inner.load = {};
const sparse = [];
sparse.length = 5;

export const BAD = {
  "an unknown key": [{ ...good(), rest: 1 }, "unknown_field rest"],
  "an unknown key in snake_case": [{ ...good(), rest_seconds: 1 }, "unknown_field rest_seconds"],
  "an unknown key in camelCase": [{ ...good(), restSeconds: 1 }, "unknown_field restSeconds"],
  "an unknown key inside": [{ load: { kg: 1, lb: 2 }, reps: 1 }, "wrong_type load"],
  "a missing key": [{ load: { kg: 100 } }, "missing_field reps"],
  "a missing value inside": [{ load: {}, reps: 8 }, "wrong_type load"],
  "nothing": [undefined, "null_not_allowed"],
  "null": [null, "null_not_allowed"],
  "null inside": [{ load: null, reps: 8 }, "null_not_allowed load"],
  "undefined inside": [{ load: { kg: undefined }, reps: 8 }, "null_not_allowed load.kg"],
  "NaN": [{ load: { kg: Number.NaN }, reps: 8 }, "not_finite load.kg"],
  "infinity": [{ load: { kg: 100 }, reps: Number.POSITIVE_INFINITY }, "not_finite reps"],
  "minus infinity": [{ load: { kg: Number.NEGATIVE_INFINITY }, reps: 1 }, "not_finite load.kg"],
  "a BigInt": [{ load: { kg: 100n }, reps: 8 }, "wrong_type load.kg"],
  "a text for a number": [{ load: { kg: "100" }, reps: 8 }, "wrong_type load.kg"],
  "a flag for a number": [{ load: { kg: true }, reps: 8 }, "wrong_type load.kg"],
  "a boxed number": [{ load: { kg: new Number(100) }, reps: 8 }, "wrong_type load.kg"],
  "a function": [{ load: () => 1, reps: 8 }, "wrong_type load"],
  "a symbol": [{ load: Symbol("kg"), reps: 8 }, "wrong_type load"],
  "a symbol as a key": [{ ...good(), [Symbol("x")]: 1 }, "wrong_type"],
  "a date": [new Date(), "wrong_type"],
  "a map": [new Map([["reps", 8]]), "wrong_type"],
  "an instance of a class": [{ load: new Load(), reps: 8 }, "wrong_type load"],
  "an array for an object": [[], "wrong_type"],
  "an object for a number": [{ load: { kg: { kg: 1 } }, reps: 8 }, "wrong_type load.kg"],
  "a number for an object": [5, "wrong_type"],
  "a text": ["load", "wrong_type"],
  "fields in the prototype": [Object.create(good()), "wrong_type"],
  "fields in a bare prototype": [Object.create(Object.assign(Object.create(null), good())), "missing_field load"],
  "__proto__ as an own key": [JSON.parse('{"load":{"kg":100},"reps":8,"__proto__":{}}'), "unknown_field __proto__"],
  "constructor as a key": [{ ...good(), constructor: 1 }, "unknown_field constructor"],
  "a getter that throws": [{ load: { kg: 100 }, get reps() { throw new Error("no"); } }, "wrong_type reps"],
  "a proxy that throws": [new Proxy(good(), { ownKeys() { throw new Error("no"); } }), "wrong_type"],
  "a revoked proxy": [(() => { const { proxy, revoke } = Proxy.revocable({}, {}); revoke(); return proxy; })(), "wrong_type"],
  "an endless array": [{ load: new Proxy([], { get: (_, key) => (key === "length" ? 4e9 : []) }), reps: 1 }, "wrong_type load"],
  "a cycle": [cycle, /^wrong_type load\.self/],
  "ten thousand levels": [deep, /^wrong_type load\.load/],
  "a sparse array": [{ load: sparse, reps: 8 }, "null_not_allowed load[0]"],
  "an array of a class": [{ load: new (class extends Array {})(), reps: 8 }, "wrong_type load"],
  "half a character": [{ load: { kg: "\ud800" }, reps: 8 }, "wrong_type load.kg"],
  "bytes": [{ load: new ArrayBuffer(8), reps: 8 }, "wrong_type load"],
  "a view of bytes": [{ load: new DataView(new ArrayBuffer(8)), reps: 8 }, "wrong_type load"],
  "BigInts in a typed array": [{ load: new BigInt64Array(2), reps: 8 }, "wrong_type load"],
  "NaN in a typed array": [{ load: new Float64Array([1, Number.NaN]), reps: 8 }, "not_finite load[1]"],
  "a typed array with a length of its own": [
    { load: Object.defineProperty(new Float64Array(2), "length", { value: 1e9 }), reps: 8 },
    "wrong_type load",
  ],
  "out of range": [{ load: { kg: 100 }, reps: 300 }, /^out_of_range reps/],
  "out of domain": [{ load: { kg: 100 }, reps: 40 }, "reps_out_of_domain reps"],
};

for (const [what, [given, expected]] of Object.entries(BAD)) {
  test(`refused: ${what}`, () => {
    const found = refused(given);
    if (expected instanceof RegExp) assert.match(found, expected);
    else assert.equal(found, expected);
    assert.deepEqual(call({ load: { kg: 100 }, reps: 15 }), { kg: 150 }); // and the instance stays usable
  });
}

test("accepted: objects without prototype, of another frame, frozen, with hidden fields", () => {
  const bare = Object.assign(Object.create(null), good());
  assert.deepEqual(call(bare), call(good()));
  assert.deepEqual(call(vm.runInNewContext("({ load: { kg: 100 }, reps: 8 })")), call(good()));
  assert.deepEqual(call(Object.freeze(good())), call(good()));
  const hidden = Object.defineProperty(good(), "note", { value: 1, enumerable: false });
  assert.deepEqual(call(hidden), call(good()));
  assert.deepEqual(call(new Proxy(good(), {})), call(good()));
});

test("an error tells code, field, value and what is allowed", () => {
  assert.throws(() => call({ load: { stone: 5 }, reps: 5 }), {
    name: "BismarError",
    code: "unknown_variant",
    field: "load",
    value: "stone",
    allowed: { oneOf: ["kg", "lb"] },
    message: 'unknown_variant: load = "stone" (allowed: kg, lb)',
  });
  assert.throws(() => call({ load: { kg: 5 }, reps: 40 }), {
    code: "reps_out_of_domain",
    value: 40,
    allowed: { low: 1, high: 30 },
  });
});

test("a getter may call the library while its object is read", () => {
  const nested = {
    get load() {
      assert.deepEqual(call({ load: { kg: 100 }, reps: 15 }), { kg: 150 });
      assert.equal(refused({ ...good(), inner: 1 }), "unknown_field inner");
      return { kg: 100 };
    },
    reps: 15,
  };
  assert.deepEqual(call(nested), { kg: 150 });
  const odd = { ...good(), get otherNewKey() { call(good()); return refused({ ...good(), thirdNewKey: 1 }); } };
  assert.equal(refused(odd), "unknown_field otherNewKey");
  assert.deepEqual(call({ load: { kg: 100 }, reps: 15 }), { kg: 150 });
});

test("10 000 bad calls leave memory as it was", () => {
  const cases = Object.values(BAD).filter(([given]) => given !== deep);
  const round = (at) => {
    const [given] = cases[at % cases.length];
    assert.notEqual(refused(given), "accepted");
    // Odd names must not pile up either.
    assert.equal(refused({ ...good(), [`odd${at}`]: 1 }), `unknown_field odd${at}`);
  };
  for (let at = 0; at < 3_000; at += 1) round(at);
  const before = diagnostics().memoryBytes;
  for (let at = 3_000; at < 13_000; at += 1) round(at);
  assert.equal(diagnostics().memoryBytes, before);
  assert.deepEqual(call({ load: { kg: 100 }, reps: 15 }), { kg: 150 });
});

test("columns are read by what they are: subclassed, falsely tagged, handed over, resized, shared", () => {
  const { batch } = bismar;
  const reps = 5;
  const right = batch.oneRm.epley1985({ load: new Float64Array([100, 110]), reps });
  class Longer extends Float64Array {
    get length() {
      return 1_000_000;
    }
  }
  assert.deepEqual(batch.oneRm.epley1985({ load: new Longer([100, 110]), reps }), right);
  const tagged = new Float64Array([100, 110]);
  Object.defineProperty(tagged, Symbol.toStringTag, { value: "Uint8Array" });
  Object.defineProperty(tagged, "length", { value: 7 });
  assert.deepEqual(batch.oneRm.epley1985({ load: tagged, reps }), right);
  const shared = new Float64Array(new SharedArrayBuffer(16));
  shared.set([100, 110]);
  assert.deepEqual(batch.oneRm.epley1985({ load: shared, reps }), right);
  const handedOver = new Float64Array([100, 110]);
  structuredClone(handedOver.buffer, { transfer: [handedOver.buffer] });
  assert.throws(() => batch.oneRm.epley1985({ load: handedOver, reps }), { code: "wrong_type", field: "load" });
  assert.throws(() => batch.oneRm.epley1985({ load: new BigInt64Array(2), reps }), { code: "wrong_type" });
  assert.throws(() => batch.oneRm.epley1985({ load: new DataView(new ArrayBuffer(8)), reps }), { code: "wrong_type" });
  const false_ = Object.setPrototypeOf({ length: 2, [Symbol.toStringTag]: "Float64Array" }, Float64Array.prototype);
  assert.throws(() => batch.oneRm.epley1985({ load: false_, reps }), { code: "wrong_type" });
  // A getter that shrinks what was read before it: the copy is taken after all were read.
  const buffer = new ArrayBuffer(16, { maxByteLength: 16 });
  const shrinking = new Float64Array(buffer);
  shrinking.set([100, 110]);
  const given = { load: shrinking, get reps() { buffer.resize(8); return new Float64Array([5]); } };
  assert.deepEqual(batch.oneRm.epley1985(given), right.slice(0, 1));
  assert.deepEqual(batch.oneRm.epley1985({ load: new Float64Array([100, 110]), reps }), right, "the instance stays alive");
});

test("a message cuts a long value, the error keeps it", () => {
  const long = "x".repeat(50_000);
  try {
    bismar.oneRm.epley1985({ load: { kg: 100 }, reps: long });
    assert.fail();
  } catch (error) {
    assert.ok(error.message.length < 600, String(error.message.length));
  }
});
