
const INLINED = "WASM";

export default function init() {
  return startWith(() => Uint8Array.from(atob(INLINED), (letter) => letter.charCodeAt(0)));
}
