// The page's script has no `any` and no way round the types, spells no field names by hand, and reads JSON only where
// something that is kept is opened: everything else comes typed from the package.
import assert from "node:assert/strict";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, it } from "node:test";
import { root } from "./browser.mjs";

const files = (await readdir(join(root, "src"), { recursive: true })).filter((name) => name.endsWith(".ts"));
const sources = await Promise.all(files.map(async (name) => [name, await readFile(join(root, "src", name), "utf8")]));

/** Code without what only looks like it: comments, texts, and what stands between the parts of a template. */
function bare(code) {
  return code
    .replaceAll(/\/\*[\s\S]*?\*\//g, " ")
    .replaceAll(/(?<!:)\/\/[^\n]*/g, " ")
    .replaceAll(/"(?:\\.|[^"\\\n])*"/g, '""')
}

const ANY = /(?:[:<|&,(]|\bas|=>|=)\s*any\b(?=\s*[\],;)>|&=[{]|\s*$)/m;
const FORBIDDEN = [
  [ANY, "any"],
  [/@ts-(?:ignore|expect-error|nocheck)|eslint-disable/, "a way round the types"],
  [/replace(?:All)?\(\/_\(|\.toUpperCase\(\)\s*\)\s*,\s*camel|\bfromJson\b|\btoJson\b/, "field names spelled by hand"],
];
/** Where texts that are kept, or come from a file, become values; and the session going on, which is the page's own. */
const READERS = ["app.ts", "asides.ts", "incoming.ts", "kept.ts", "lifters.ts", "files.ts", "rejoin.ts", "store.ts"];

describe("the script", () => {
  it("finds what it looks for", () => {
    for (const code of ["let a: any;", "f<any>()", "x as any;", "type A = any;", "(a: any) => 1", "Record<string, any>", "any[]".replace("any", "let b: any")]) assert.match(bare(code), ANY, code);
    for (const code of ['say("as any other");', "// as any;\nlet a = 1;", "const anyone = many;"]) assert.doesNotMatch(bare(code), ANY, code);
  });

  it("is typed throughout", () => {
    const wrong = sources.flatMap(([name, code]) => FORBIDDEN.filter(([pattern]) => pattern.test(pattern === ANY ? bare(code) : code)).map(([, what]) => `${name}: ${what}`));
    assert.deepEqual(wrong, []);
    assert.ok(sources.length > 30);
  });

  it("reads JSON only where something kept is opened", () => {
    const wrong = sources.filter(([name, code]) => bare(code).includes("JSON.parse(") && !READERS.includes(name)).map(([name]) => name);
    assert.deepEqual(wrong, []);
  });
});
