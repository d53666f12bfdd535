import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { pkg, publishedDocuments, registry, root } from "./files.mjs";
import { camel } from "./published-runner.mjs";

await init();
const spelled = (name) => name.replace(/_([a-z0-9])/g, (_, letter) => letter.toUpperCase());
const { oneRm, flat, batch, call, BismarError } = bismar;

test("every row of the registry is a function or a number of its module", () => {
  for (const row of registry().rows) {
    const [module, name] = row.key.split(".").map(spelled);
    const member = bismar[module]?.[name];
    if (row.kind === "function") assert.equal(typeof member, "function", row.key);
    else assert.deepEqual(call(row.key, {}), member, row.key);
  }
});

test("plain objects in, plain objects out", () => {
  const answer = oneRm.epley1985({ load: { kg: 100 }, reps: 15 });
  assert.deepEqual(answer, { kg: 150 });
  assert.equal(Object.getPrototypeOf(answer), Object.prototype);
  assert.deepEqual(call("one_rm.epley_1985", { load: { lb: 100 }, reps: 15 }), { kg: 68.0388555 });
});

test("flat and batch give what the objects give", () => {
  assert.equal(flat.oneRm.epley1985(100, 8), oneRm.epley1985({ load: { kg: 100 }, reps: 8 }).kg);
  const answers = batch.oneRm.epley1985({ load: new Float64Array([100, 62.5]), reps: new Uint8Array([8, 3]) });
  assert.deepEqual([...answers], [flat.oneRm.epley1985(100, 8), flat.oneRm.epley1985(62.5, 3)]);
  assert.deepEqual([...batch.oneRm.epley1985({ load: 100, reps: 8 })], [flat.oneRm.epley1985(100, 8)]);
});

test("every flat function gives what the objects give, over the published checks", () => {
  let compared = 0;
  for (const { document } of publishedDocuments()) {
    for (const body of document.cases) {
      const [module, name] = body.function.split(".").map(spelled);
      const short = flat[module]?.[name];
      const row = registry().rows.find((one) => one.key === body.function);
      if (short === undefined || row === undefined || body.expect_error !== undefined) continue;
      const given = camel(body.given);
      const numbers = row.arguments.map(({ name }) => {
        const value = given[spelled(name)] ?? given[name];
        return value?.kg ?? value?.mm ?? value;
      });
      if (!numbers.every((number) => typeof number === "number")) continue;
      const answer = call(body.function, given);
      assert.equal(short(...numbers), answer.kg ?? answer.mm ?? answer, body.function);
      compared += 1;
    }
  }
  console.log(`flat functions: ${compared} cases compared with the objects`);
  assert.ok(compared > 0);
});

test("flat and batch refuse with the same codes", () => {
  const code = (run) => {
    try {
      run();
    } catch (error) {
      assert.ok(error instanceof BismarError, String(error));
      return `${error.code} ${error.field}`;
    }
    return "nothing thrown";
  };
  assert.equal(code(() => flat.oneRm.epley1985(100, 300)), "out_of_range reps");
  assert.equal(code(() => flat.oneRm.epley1985(100, 40)), "reps_out_of_domain reps");
  assert.equal(code(() => flat.oneRm.epley1985(Number.NaN, 5)), "not_finite load");
  assert.equal(code(() => flat.oneRm.epley1985("100", 5)), "wrong_type load");
  assert.equal(code(() => flat.oneRm.epley1985(100)), "missing_field reps");
  assert.equal(code(() => flat.oneRm.epley1985(100n, 5)), "wrong_type load");
  const column = new Float64Array([100, 100, -5]);
  assert.equal(code(() => batch.oneRm.epley1985({ load: column, reps: 5 })), "load_out_of_domain load[2]");
  assert.equal(code(() => batch.oneRm.epley1985({ load: column, reps: new Uint8Array(2) })), "wrong_type reps");
  assert.equal(code(() => batch.oneRm.epley1985({ load: column })), "missing_field reps");
  assert.equal(code(() => batch.oneRm.epley1985({ load: column, reps: 5, rest: 1 })), "unknown_field rest");
  assert.equal(code(() => batch.oneRm.epley1985({ load: [1, 2], reps: 5 })), "wrong_type load");
  assert.equal(code(() => batch.oneRm.epley1985({ load: new BigInt64Array(2), reps: 5 })), "wrong_type load");
  assert.equal(code(() => batch.oneRm.epley1985(null)), "wrong_type ");
  assert.equal(code(() => call("one_rm.nobody", {})), "unknown_function function");
});

test("the README's example runs as printed", async () => {
  const readme = readFileSync(join(pkg, "README.md"), "utf8");
  const code = readme.split("```js\n")[1].split("```")[0].replace('"bismar"', JSON.stringify(join(pkg, "node.js")));
  const printed = [];
  const body = code.replace(/^import (.*) from (.*);$/m, "").replace("console.log(", "printed.push(");
  await new Function("printed", "init", "oneRm", "BismarError", `return (async () => {${body}})()`)(
    printed,
    init,
    oneRm,
    BismarError,
  );
  assert.deepEqual(printed.slice(0, 2), ["out_of_range", "reps"]);
});

test("the project README's JavaScript runs", async () => {
  const readme = readFileSync(join(root, "README.md"), "utf8");
  const code = readme.split("```js\n")[1].split("```")[0];
  const names = code.match(/import init, \{ (.*) \} from "bismar";/)[1].split(", ");
  for (const name of names) assert.notEqual(bismar[name], undefined, name);
  const body = code.replace(/^import .*$/m, "");
  const printed = [];
  const console = { log: (answer) => printed.push(answer) };
  const run = new Function("console", "init", ...names, `return (async () => {${body}})()`);
  await run(console, init, ...names.map((name) => bismar[name]));
  assert.deepEqual(printed, [{ kg: 150 }]);
});

test("codes of the declarations are those of the registry file", () => {
  const text = readFileSync(join(pkg, "index.d.ts"), "utf8");
  const [, body] = text.split("export type Code =");
  const declared = [...body.split(";")[0].matchAll(/\| "([a-z_]+)"/g)].map((match) => match[1]);
  // A semicolon in a sentence ends the match early; the last code tells whether all were seen.
  const all = Object.keys(registry().codes);
  for (const code of declared) assert.ok(all.includes(code), code);
  for (const code of all) assert.ok(text.includes(`| "${code}"`), code);
});
