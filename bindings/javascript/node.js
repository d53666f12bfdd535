// For Node: the wasm is read from the file beside this one.
import { readFile } from "node:fs/promises";
import { startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => source ?? readFile(new URL("./bismar.wasm", import.meta.url)));
}
