// Run by split_program.sh on a release: gives what the program takes from its script short names. Each has a hash in its name, which
// stands in both files and packs badly: 4 kB. Usage: short_names.mjs PROGRAM.wasm SCRIPT.js, changed in place.

import { readFileSync, writeFileSync } from "node:fs";
import { leb, lebOf } from "./numbers.mjs";

const named = (text) => Buffer.concat([lebOf(text.length), Buffer.from(text)]);
const LONG = /\b__wb(?:g|indgen)_\w*_[0-9a-f]{16}\b/g;

const [wasmFile, scriptFile] = process.argv.slice(2);
const script = readFileSync(scriptFile, "utf8");
const shorts = new Map([...new Set(script.match(LONG))].sort().map((name, at) => [name, `w${at.toString(36)}`]));

// The section of what is taken from outside, with the new names. Each entry: where from, its name, its kind and what it is.
function renamed(section) {
  let [count, at] = leb(section, 0);
  const parts = [lebOf(count)];
  while (count-- > 0) {
    const texts = [];
    for (let text = 0; text < 2; text++) {
      const [length, start] = leb(section, at);
      at = start + length;
      texts.push(section.toString("utf8", start, at));
    }
    const body = at;
    const kind = section[at++];
    if (kind === 1) at++; // of a table
    if (kind === 1 || kind === 2) {
      const flags = section[at++];
      [, at] = leb(section, at);
      if (flags & 1) [, at] = leb(section, at);
    } else if (kind === 3) at += 2;
    else [, at] = leb(section, at);
    parts.push(named(texts[0]), named(shorts.get(texts[1]) ?? texts[1]), section.subarray(body, at));
  }
  return Buffer.concat(parts);
}

const wasm = readFileSync(wasmFile);
const kept = [wasm.subarray(0, 8)];
for (let at = 8; at < wasm.length; ) {
  const [size, start] = leb(wasm, at + 1);
  const end = start + size;
  if (wasm[at] === 2) {
    const section = renamed(wasm.subarray(start, end));
    kept.push(Buffer.from([2]), lebOf(section.length), section);
  } else kept.push(wasm.subarray(at, end));
  at = end;
}
writeFileSync(wasmFile, Buffer.concat(kept));
writeFileSync(scriptFile, script.replace(LONG, (name) => shorts.get(name)));
if (shorts.size < 50) throw new Error(`only ${shorts.size} long names were found`);
