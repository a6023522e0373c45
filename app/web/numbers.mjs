// Numbers of the binary format of wasm, for the scripts of a release; whole.js reads them in the browser, too.

export { number as leb } from "./whole.js";

// The bytes of a number.
export function lebOf(value) {
  const bytes = [];
  do {
    bytes.push((value & 127) | (value > 127 ? 128 : 0));
    value >>>= 7;
  } while (value);
  return Buffer.from(bytes);
}
