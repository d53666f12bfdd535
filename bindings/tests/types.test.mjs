// The declarations: good and bad uses under `tsc --strict`, and real values against the text.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import init, * as bismar from "../pkg/node.js";
import { bindings, pkg, publishedDocuments, registry, root } from "./files.mjs";
import { camel } from "./published-runner.mjs";
import { askedOf, tableCases } from "./tables.mjs";

await init();
const spelled = (name) => name.replace(/_([a-z0-9])/g, (_, letter) => letter.toUpperCase());
/** Values held against the declarations, a function. */
const MOST = 6;

function project(files) {
  const folder = mkdtempSync(join(tmpdir(), "bismar-types-"));
  mkdirSync(join(folder, "node_modules"));
  symlinkSync(pkg, join(folder, "node_modules/bismar"));
  const compilerOptions = {
    strict: true,
    noEmit: true,
    target: "es2022",
    module: "nodenext",
    lib: ["es2023", "dom"],
    types: [],
    skipLibCheck: false,
    exactOptionalPropertyTypes: true,
  };
  writeFileSync(join(folder, "tsconfig.json"), JSON.stringify({ compilerOptions, include: ["*.ts"] }));
  writeFileSync(join(folder, "package.json"), JSON.stringify({ type: "module" }));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

function compile(files) {
  const folder = project(files);
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(bindings, "node_modules/typescript/bin/tsc"), "-p", folder], {
    encoding: "utf8",
  });
  rmSync(folder, { recursive: true });
  return { status, text: `${stdout}${stderr}` };
}

test("the declarations of each part that is built", () => {
  const parts = readdirSync(pkg).filter((name) => existsSync(join(pkg, name, "index.d.ts")));
  const uses = parts.map((name, at) => `import init${at} from "bismar/${name}"; import type { Code as Code${at} } from "bismar/${name}/slim"; await init${at}();`);
  const strength = parts.includes("strength") ? 'import { oneRm } from "bismar/strength"; const max: number = oneRm.epley1985({ load: { kg: 1 }, reps: 2 }).kg; console.log(max);' : "";
  const { status, text } = compile({ "parts.ts": [...uses, strength, "export {};"].join("\n") });
  assert.equal(status, 0, text.slice(0, 4000));
});

test("good uses compile under --strict, bad ones do not", () => {
  const { status, text } = compile({ "good.ts": readFileSync(join(bindings, "tests/types/good.ts"), "utf8") });
  assert.equal(status, 0, text.slice(0, 4000));
});

test("the sentences take what the other parts give, in a unit that there is", { skip: !existsSync(join(pkg, "english")) && "the part is not built" }, () => {
  const use = (unit) => `
    import english, { text, type SaidSession } from "bismar/english";
    import type { Progress, prescription } from "bismar";
    declare const log: ConstructorParameters<typeof Progress>[0];
    declare const given: Parameters<typeof prescription.nextSession>[0];
    await english();
    export const lines: string[] = text.week({ log, today: "2026-08-27", unit: "${unit}", phrases: { "week.usual": "x" } });
    export const session: SaidSession = text.session({ ...given, unit: "lb" });
    export const first: string | undefined = session.sheet.stop[0] ?? session.lifts[0]?.reasons[0];`;
  const good = compile({ "use.ts": use("kg") });
  assert.equal(good.status, 0, good.text.slice(0, 4000));
  const bad = compile({ "use.ts": use("stone") });
  assert.match(bad.text, /stone/);
});

test("the compiler is asked: an error is an error", () => {
  const { status } = compile({ "bad.ts": 'import { oneRm } from "bismar";\noneRm.epley1985({ reps: 8 });\n' });
  assert.notEqual(status, 0);
});

/** Real calls as TypeScript literals: a field too many, a kind unknown or a type wrong does not compile. */
function realValues() {
  const rows = new Map(registry().rows.map((row) => [row.key, row]));
  const seen = new Map();
  let out = 'import * as bismar from "bismar";\n';
  let held = 0;
  const hold = (key, given, answer) => {
    const [module, name] = key.split(".").map(spelled);
    const member = `typeof bismar.${module}.${name}`;
    if (rows.get(key)?.kind === "constant") {
      out += `export const c${held}: ${member} = ${JSON.stringify(answer)};\n`;
    } else {
      out += `export const g${held}: Parameters<${member}>[0] = ${JSON.stringify(given)};\n`;
      out += `export const a${held}: ReturnType<${member}> = ${JSON.stringify(answer)};\n`;
    }
    held += 1;
  };
  for (const { document } of publishedDocuments()) {
    for (const body of document.cases) {
      const key = body.function;
      if (!rows.has(key) || body.expect_error !== undefined || (seen.get(key) ?? 0) >= MOST) continue;
      seen.set(key, (seen.get(key) ?? 0) + 1);
      const given = camel(body.given);
      hold(key, given, bismar.call(key, given));
    }
  }
  const fixture = (name) => bismar.fromJson(JSON.parse(readFileSync(join(root, `examples/data/${name}.json`), "utf8")));
  const [log, plan] = [fixture("demo-log"), fixture("demo-plan")];
  const today = log.events.at(-1).day;
  const state = bismar.progression.fold({ log });
  hold("progression.fold", { log }, state);
  hold("progression.decide", { state, today }, bismar.progression.decide({ state, today }));
  hold("prescription.next_session", { log, plan, today }, bismar.prescription.nextSession({ log, plan, today }));
  const tables = tableCases();
  for (const one of tables.cases.filter(({ expect, after }) => expect !== undefined && after === undefined)) {
    const given = askedOf(one, tables.log);
    hold("answers.sets_to_log", given, bismar.answers.setsToLog(given));
  }
  return { out, held };
}

test("the declarations hold real values, given and answered", () => {
  const { out, held } = realValues();
  const { status, text } = compile({ "real.ts": out });
  console.log(`declarations held against ${held} real calls`);
  const wrong = text.split("\n").filter((line) => line.includes("error"));
  assert.equal(status, 0, `${wrong.length} errors\n${text.slice(0, 6000)}`);
});

test("every type of the surface is known", () => {
  const text = readFileSync(join(pkg, "index.d.ts"), "utf8");
  const lines = text.split("\n").filter((line) => /: unknown\b|\bunknown\[/.test(line) && !line.includes("*") && !line.includes('"'));
  // `fromJson` takes and `toJson` gives whatever JSON holds.
  assert.deepEqual(lines.filter((line) => !/fromJson|toJson/.test(line)), []);
});

