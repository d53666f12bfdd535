// Where things are, for the tests in Node.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const bindings = fileURLToPath(new URL("..", import.meta.url));
export const root = fileURLToPath(new URL("../..", import.meta.url));
export const pkg = join(bindings, "pkg");

function jsonFiles(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return jsonFiles(path);
    return entry.name.endsWith(".json") && entry.name !== "names.json" ? [path] : [];
  });
}

const outside = (process.env.BISMAR_VECTORS ?? "").split(":").filter((folder) => folder !== "");

/** Whether checks of somebody's own run beside those of the project. */
export const withOthers = outside.length > 0;

/** The published checks of the project, then those of the folders named in BISMAR_VECTORS. */
export function publishedDocuments() {
  return [join(root, "tests/published"), ...outside].flatMap((folder) => {
    return jsonFiles(folder).map((path) => ({ name: path, document: JSON.parse(readFileSync(path, "utf8")) }));
  });
}

/**
 * How many checks have to run, and over how many functions: all cases in the project's files, all names that the native run lists;
 * and what the native run itself counted, where it has run (`bindings/checks/native.sh`).
 */
export function wantedCounts() {
  const own = join(root, "tests/published");
  const cases = jsonFiles(own).reduce((sum, path) => sum + (JSON.parse(readFileSync(path, "utf8")).cases ?? []).length, 0);
  const functions = Object.keys(JSON.parse(readFileSync(join(own, "names.json"), "utf8"))).length;
  const counted = process.env.BISMAR_NATIVE ? join(process.env.BISMAR_NATIVE, "counted") : "";
  const native = existsSync(counted) ? readFileSync(counted, "utf8").trim() : `${cases} ${functions}`;
  if (native !== `${cases} ${functions}`) throw new Error(`the native run counted ${native}, the files hold ${cases} ${functions}`);
  return { cases, functions };
}

export function registry() {
  return JSON.parse(readFileSync(join(pkg, "registry.json"), "utf8"));
}

export function keys() {
  return registry().rows.map((row) => row.key);
}

/** Where `bismar-build corpus` has put the corpus. */
export const corpusFolder = process.env.BISMAR_CORPUS ?? join(root, "target/bindings-corpus");
