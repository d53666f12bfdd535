
const INLINED = "WASM";

export default function init() {
  return startWith(() => Uint8Array.from(atob(INLINED), (letter) => letter.charCodeAt(0)));
}

/** A new instance beside the one of this package: its own memory, its own failures. */
export async function create() {
  const { startWith: start, ...instance } = another();
  await start(() => Uint8Array.from(atob(INLINED), (letter) => letter.charCodeAt(0)));
  return Object.freeze(instance);
}
