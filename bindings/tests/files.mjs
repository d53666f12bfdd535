// Where things are, for the tests in Node.
import { readdirSync, readFileSync } from "node:fs";
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

/** The published checks of the project, then those of the folders named in BISMAR_VECTORS. */
export function publishedDocuments() {
  const outside = (process.env.BISMAR_VECTORS ?? "").split(":").filter((folder) => folder !== "");
  return [join(root, "tests/published"), ...outside].flatMap((folder) => {
    return jsonFiles(folder).map((path) => ({ name: path, document: JSON.parse(readFileSync(path, "utf8")) }));
  });
}

export function registry() {
  return JSON.parse(readFileSync(join(pkg, "registry.json"), "utf8"));
}

export function keys() {
  return registry().rows.map((row) => row.key);
}

/** Where `bismar-build corpus` has put the corpus. */
export const corpusFolder = process.env.BISMAR_CORPUS ?? join(root, "target/bindings-corpus");
