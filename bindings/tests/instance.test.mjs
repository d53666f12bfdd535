// Setting up, builds that do not fit, and the end of an instance.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import { pkg } from "./files.mjs";

const wasm = readFileSync(join(pkg, "bismar.wasm"));
let copies = 0;
/** A copy of the package with a state of its own. */
async function fresh(file) {
  copies += 1;
  // Only the core has state; a query makes another module of it, and inline.js is a core of its own.
  return import(`${join(pkg, file)}?copy=${copies}`);
}

test("before init every door says not_ready", async () => {
  const { oneRm, flat, batch, diagnostics } = await fresh("core.js");
  const given = { load: { kg: 100 }, reps: 8 };
  assert.throws(() => oneRm.epley1985(given), { code: "not_ready" });
  assert.throws(() => flat.oneRm.epley1985(100, 8), { code: "not_ready" });
  assert.throws(() => batch.oneRm.epley1985({ load: 100, reps: 8 }), { code: "not_ready" });
  assert.equal(diagnostics().ready, false);
});

test("init may be called many times, and again after it failed", async () => {
  const { startWith, flat } = await fresh("core.js");
  await assert.rejects(startWith(() => new Uint8Array([1, 2, 3])), WebAssembly.CompileError);
  let asked = 0;
  const source = () => {
    asked += 1;
    return wasm;
  };
  await Promise.all([startWith(source), startWith(source)]);
  await startWith(source);
  assert.equal(asked, 1);
  assert.equal(flat.oneRm.epley1985(100, 15), 150);
});

test("slim takes bytes, a module, a response, or a promise of them, and nothing else", async () => {
  for (const source of [wasm, new WebAssembly.Module(wasm), Promise.resolve(wasm),
    new Response(wasm, { headers: { "content-type": "application/wasm" } })]) {
    const { startWith, flat } = await fresh("core.js");
    await startWith(() => source);
    assert.equal(flat.oneRm.epley1985(100, 15), 150);
  }
  const { default: init } = await import(join(pkg, "slim.js"));
  await assert.rejects(init(), { code: "missing_field", field: "source" });
});

test("inline needs nothing beside it", async () => {
  const { default: init, flat } = await fresh("inline.js");
  await init();
  assert.equal(flat.oneRm.epley1985(100, 15), 150);
  assert.doesNotMatch(readFileSync(join(pkg, "inline.js"), "utf8"), /^import |import\(/m);
});

test("a wasm of another build is refused", async () => {
  const { diagnostics, startWith } = await fresh("core.js");
  const { build } = diagnostics();
  const other = Buffer.from(wasm.toString("latin1").replace(build, "0".repeat(build.length)), "latin1");
  assert.notDeepEqual(other, wasm);
  await assert.rejects(startWith(() => other), { code: "build_mismatch", value: "0".repeat(build.length) });
  assert.equal(diagnostics().ready, false);
});

test("after a fault inside, every door says instance_failed from then on", async () => {
  const { call, startWith, diagnostics, oneRm, flat, batch } = await fresh("core.js");
  let memory;
  const { instantiate } = WebAssembly;
  WebAssembly.instantiate = async (...given) => {
    const made = await instantiate(...given);
    memory = (made.instance ?? made).exports.memory;
    return made;
  };
  await startWith(() => wasm);
  WebAssembly.instantiate = instantiate;
  const given = { load: { kg: 100 }, reps: 8 };
  oneRm.epley1985(given);
  // Nothing in the library faults; memory spoilt from outside stands for what cannot happen.
  new Uint8Array(memory.buffer).fill(0xff);
  let failed;
  for (let round = 0; round < 50 && failed === undefined; round += 1) {
    try {
      call("one_rm.epley_1985", given);
    } catch (error) {
      failed = error;
    }
  }
  assert.equal(failed?.code, "instance_failed");
  assert.ok(failed.cause !== undefined);
  for (const door of [() => oneRm.epley1985(given), () => flat.oneRm.epley1985(100, 8), () => batch.oneRm.epley1985({ load: 100, reps: 8 })]) {
    assert.throws(door, { code: "instance_failed" });
  }
  await assert.rejects(startWith(() => wasm), { code: "instance_failed" });
  assert.equal(diagnostics().failed, true);
});

test("a panic inside is instance_failed with what the panic said", async () => {
  const { startWith, diagnostics, oneRm } = await fresh("core.js");
  const { instantiate } = WebAssembly;
  WebAssembly.instantiate = async (...given) => {
    const made = await instantiate(...given);
    const { exports } = made.instance ?? made;
    // No call of the package makes the library panic; this asks it for more memory than can be addressed.
    return { module: made.module, instance: { exports: { ...exports, raw_room: () => exports.raw_room(0x9000_0000) } } };
  };
  await startWith(() => wasm);
  WebAssembly.instantiate = instantiate;
  const given = { load: { kg: 100 }, reps: 8 };
  for (let round = 0; round < 2; round += 1) {
    assert.throws(() => oneRm.epley1985(given), (error) => {
      assert.equal(error.code, "instance_failed");
      assert.match(error.value, /panicked at .*capacity overflow/s);
      return true;
    });
  }
  assert.equal(diagnostics().failed, true);
});

test("an exhausted stack is an error of this package, not a bare RangeError", async () => {
  const { startWith, oneRm, BismarError } = await fresh("core.js");
  await startWith(() => wasm);
  let thrown;
  const down = () => {
    try {
      oneRm.epley1985({ load: { kg: 100 }, reps: 8 });
    } catch (error) {
      thrown ??= error;
      return;
    }
    down();
  };
  try {
    down();
  } catch {
    // the test's own recursion may end first
  }
  if (thrown !== undefined) assert.ok(thrown instanceof BismarError || thrown instanceof RangeError, `${thrown}`);
});
