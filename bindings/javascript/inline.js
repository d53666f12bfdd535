
const INLINED = "WASM";

export default function init() {
  return startWith(() => Uint8Array.from(atob(INLINED), (letter) => letter.charCodeAt(0)));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export function create() {
  return created(() => Uint8Array.from(atob(INLINED), (letter) => letter.charCodeAt(0)));
}
