// Without any way to find the wasm: the caller brings it.
import { BismarError, startWith } from "./core.js";

EXPORTS

export default function init(source) {
  return startWith(() => {
    if (source === undefined) {
      throw new BismarError({ code: "missing_field", field: "source", allowed: { rule: "wasm bytes, a Response or a Module" } });
    }
    return source;
  });
}
