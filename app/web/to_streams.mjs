// Run by split_program.sh on a release: lays the code of programs out as streams, which whole.js weaves together again in the browser.
// The file stays a program in form: the streams are a section with a name in the place of the code.
// Usage: to_streams.mjs PROGRAM.wasm..., changed in place.

import { readFileSync, writeFileSync } from "node:fs";
import { lebOf } from "./numbers.mjs";
import { ALIGN, BRANCH, CODE, FRACTION, GLOBAL, MORE, NAME, SECOND, SHAPES, STREAMS, TYPE, number, whole } from "./whole.js";

function unwoven(code) {
  const streams = Array.from({ length: STREAMS }, () => []);
  let [count, at] = number(code, 0);
  const all = count;
  const raw = (stream, size) => {
    while (size-- > 0) streams[stream].push(code[at++]);
  };
  const one = (stream) => {
    const [value, end] = number(code, at);
    if (stream === ALIGN) {
      // A hint that browsers pay no heed to: 7 kB of them.
      streams[stream].push(0);
      at = end;
    } else raw(stream, end - at);
    return value;
  };
  while (count-- > 0) {
    const [size, start] = number(code, at);
    at = start;
    for (let kinds = one(TYPE); kinds > 0; kinds--) {
      one(TYPE);
      raw(TYPE, 1);
    }
    while (at < start + size) {
      const what = code[at];
      raw(CODE, 1);
      if (SHAPES[what]) for (const stream of SHAPES[what]) one(stream);
      else if (what === 0x0e) for (let rest = one(BRANCH) + 1; rest > 0; rest--) one(BRANCH);
      else if (what === 0x1c) for (let rest = one(GLOBAL); rest > 0; rest--) one(GLOBAL);
      else if (what === 0x43) raw(FRACTION, 4);
      else if (what === 0x44) raw(FRACTION, 8);
      else if (what === 0xfc) {
        const more = MORE[one(SECOND)];
        if (more === undefined) throw new Error("an instruction of two parts that nobody knows");
        for (let rest = more; rest > 0; rest--) one(SECOND);
      } else if (what > 0xc4 || (what >= 0x06 && what <= 0x0a)) throw new Error(`instruction ${what} is not known`);
    }
  }
  return Buffer.from([...lebOf(all), ...streams.flatMap((stream) => [...lebOf(stream.length)]), ...streams.flat()]);
}

function laidOut(wasm) {
  const parts = [wasm.subarray(0, 8)];
  for (let at = 8; at < wasm.length; ) {
    const start = at;
    const [size, from] = number(wasm, at + 1);
    at = from + size;
    if (wasm[start] !== 10) {
      parts.push(wasm.subarray(start, at));
      continue;
    }
    const streams = unwoven(wasm.subarray(from, at));
    const named = Buffer.from([NAME.length, ...Buffer.from(NAME)]);
    parts.push(Buffer.from([0, ...lebOf(named.length + streams.length)]), named, streams);
  }
  return Buffer.concat(parts);
}

for (const file of process.argv.slice(2)) {
  const streams = laidOut(readFileSync(file));
  // Woven together it is a program, and laid out again the same.
  const again = whole(streams);
  if (!WebAssembly.validate(again) || !laidOut(again).equals(streams)) throw new Error(`${file} does not come back whole`);
  writeFileSync(file, streams);
}
