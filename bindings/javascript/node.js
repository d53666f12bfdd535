// For Node: the wasm is read from the file beside this one.
import { readFile } from "node:fs/promises";
import { another, startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => source ?? readFile(new URL("./bismar.wasm", import.meta.url)));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export async function create(source) {
  const { startWith: start, ...instance } = another();
  await start(() => source ?? readFile(new URL("./bismar.wasm", import.meta.url)));
  return Object.freeze(instance);
}
