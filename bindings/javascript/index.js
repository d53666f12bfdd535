// For browsers and bundlers: the wasm lies beside this file.
import { created, startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => source ?? fetch(new URL("./bismar.wasm", import.meta.url)));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export function create(source) {
  return created(() => source ?? fetch(new URL("./bismar.wasm", import.meta.url)));
}
