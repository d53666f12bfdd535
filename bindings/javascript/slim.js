// Without any way to find the wasm: the caller brings it.
import { BismarError, created, startWith } from "./core.js";

EXPORTS

function brought(source) {
  if (source === undefined) {
    throw new BismarError({ code: "missing_field", field: "source", allowed: { rule: "wasm bytes, a Response or a Module" } });
  }
  return source;
}

export default function init(source) {
  return startWith(() => brought(source));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export function create(source) {
  return created(() => brought(source));
}
