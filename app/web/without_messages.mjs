// Run by split_program.sh on a release: takes out what the program would say of its own faults. A fault then ends in a trap, which
// start.js notices all the same; its message, file and line are for whoever develops, and a debug build has them. That saves a
// visitor 6 kB. Usage: without_messages.mjs PART.wasm... with all parts of one program, changed in place.

import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { leb } from "./numbers.mjs";

const binaryen = (await import(createRequire(import.meta.url).resolve("binaryen", { paths: [process.env.NODE_MODULES] }))).default;

// What ends a program: nothing comes back from these, by the names that the standard library gives them.
const ENDS =
  /9panicking(5panic|9panic_fmt|18panic_bounds_check|13assert_failed|19assert_failed_inner|11panic_const\d+panic_const|13panic_display|19unreachable_display|14panic_explicit|15panic_with_hook|11begin_panicReEB|13panic_handler0)|6(option|result)13(unwrap|expect)_failed|_fail(_rt)?( |$)|raw_vec12handle_error|17capacity_overflow|assert_failed( |$)|18handle_alloc_error|10rust_panic|panic_already|panic_access_error|panic_for_nonpos|panic_poisoned|panic_on_ord/;
// What describes a value for such a message.
const DESCRIBES = /3fmt5Debug3fmt|core\.\.fmt\.\.Debug\$GT\$3fmt/;
// What only carries a message, and what drops one, is gone with it.
const CARRIES = /drop_in_place|Payload/;

// ---- Where in the source

// The pieces of memory that a module fills, each with its address and its place in the file.
function pieces(bytes) {
  const found = [];
  for (let at = 8; at < bytes.length; ) {
    const kind = bytes[at];
    let [size, start] = leb(bytes, at + 1);
    at = start + size;
    if (kind !== 11) continue;
    let [count, next] = leb(bytes, start);
    while (count-- > 0) {
      let [flags, body] = leb(bytes, next), address = null;
      if (flags === 0) {
        // i32.const ADDRESS end
        [address, body] = leb(bytes, body + 1);
        body += 1;
      }
      const [length, data] = leb(bytes, body);
      if (address !== null) found.push({ address, data: bytes.subarray(data, data + length) });
      next = data + length;
    }
  }
  return found;
}

// Blanks file, line and column of every place in the source: four words, the first two of which are a text that names a file.
function blankPlaces(parts) {
  const all = parts.flatMap(pieces);
  const text = (address, length) => {
    const own = all.find((p) => address >= p.address && address + length <= p.address + p.data.length);
    return own?.data.subarray(address - own.address, address - own.address + length);
  };
  const files = [];
  for (const { address, data } of all) {
    const view = new DataView(data.buffer, data.byteOffset, data.length);
    for (let at = (4 - (address % 4)) % 4; at + 16 <= data.length; at += 4) {
      const [file, length, line, column] = [0, 4, 8, 12].map((word) => view.getUint32(at + word, true));
      if (length < 8 || length > 255 || line === 0 || line > 99999 || column === 0 || column > 999) continue;
      const name = text(file, length);
      if (!name || !/^[\w\-./+]+\.rs$/.test(Buffer.from(name).toString("latin1"))) continue;
      data.fill(0, at, at + 16);
      files.push(name);
    }
  }
  for (const name of files) name.fill(0);
  return files.length;
}

// ---- Messages

// Empties what ends the program and what describes values; the optimizer takes away what only they needed.
function quiet(bytes) {
  const module = binaryen.readBinary(bytes);
  let count = 0;
  for (let at = module.getNumFunctions() - 1; at >= 0; at--) {
    const { name, module: from, params, results } = binaryen.getFunctionInfo(module.getFunctionByIndex(at));
    const ends = ENDS.test(name), describes = DESCRIBES.test(name) && results === binaryen.i32;
    if (from || CARRIES.test(name) || !(ends || describes)) continue;
    module.removeFunction(name);
    module.addFunction(name, params, results, [], ends ? module.unreachable() : module.i32.const(0));
    count++;
  }
  const quieted = module.emitBinary();
  module.dispose();
  return [quieted, count];
}

const names = process.argv.slice(2);
const parts = names.map((name) => readFileSync(name));
const places = blankPlaces(parts);
let emptied = 0;
parts.forEach((bytes, at) => {
  const [quieted, count] = quiet(bytes);
  emptied += count;
  writeFileSync(names[at], quieted);
});
// A toolchain that names things otherwise would leave everything in, and nobody would notice.
if (places < 100 || emptied < 20) throw new Error(`only ${places} places and ${emptied} messages were found`);
