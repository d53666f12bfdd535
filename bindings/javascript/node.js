// For Node: the wasm is read from the file beside this one.
import { readFile } from "node:fs/promises";
import { created, startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => source ?? readFile(new URL("./bismar.wasm", import.meta.url)));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export function create(source) {
  return created(() => source ?? readFile(new URL("./bismar.wasm", import.meta.url)));
}
