// For browsers and bundlers: the wasm lies beside this file.
import { startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => source ?? fetch(new URL("./bismar.wasm", import.meta.url)));
}
