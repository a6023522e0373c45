// Makes a program whole again whose code was laid out as streams (to_streams.mjs): all instructions one after the other, then all
// that they name of each kind, locals beside locals and offsets beside offsets. So it packs a tenth better. Part of the program's script.

// The streams: instructions, types of blocks, branches, calls, locals, globals and tables, alignments, offsets, whole numbers of 32 and 64
// bits, fractions, what instructions of two parts name, and how many locals of which type.
export const STREAMS = 13;
export const [CODE, BLOCK, BRANCH, CALL, LOCAL, GLOBAL, ALIGN, OFFSET, WHOLE, LONG, FRACTION, SECOND, TYPE] = Array(STREAMS).keys();

// By the first byte of an instruction, the streams that hold the numbers after it. What is not here has none, or is told apart below.
export const SHAPES = Array(256);
const shape = (from, to, ...streams) => SHAPES.fill(streams, from, to + 1);
shape(0x02, 0x04, BLOCK); // block, loop, if
shape(0x0c, 0x0d, BRANCH); // br, br_if
shape(0x10, 0x10, CALL);
shape(0x11, 0x11, CALL, CALL); // call_indirect: type, table
shape(0x20, 0x22, LOCAL);
shape(0x23, 0x26, GLOBAL); // tables, too
shape(0x28, 0x3e, ALIGN, OFFSET); // loads and stores
shape(0x3f, 0x40, GLOBAL); // memory.size, memory.grow
shape(0x41, 0x41, WHOLE);
shape(0x42, 0x42, LONG);
shape(0xd0, 0xd2, GLOBAL); // references
// How many numbers follow the second part of an instruction of two parts: conversions, memory, tables.
export const MORE = [0, 0, 0, 0, 0, 0, 0, 0, 2, 1, 2, 1, 2, 1, 2, 1, 1, 1];
export const NAME = "streams";

// A number of the binary format.
export function number(bytes, at) {
  let value = 0, shift = 0, byte;
  do {
    byte = bytes[at++];
    value |= (byte & 127) << shift;
    shift += 7;
  } while (byte & 128);
  return [value, at];
}

// Five bytes, however small it is.
const wide = (value) => [value & 127 | 128, value >> 7 & 127 | 128, value >> 14 & 127 | 128, value >> 21 & 127 | 128, value >> 28 & 15];

function woven(bytes, at) {
  const places = new Uint32Array(STREAMS);
  let count;
  [count, at] = number(bytes, at);
  for (let stream = 0; stream < STREAMS; stream++) [places[stream], at] = number(bytes, at);
  const code = new Uint8Array(places.reduce((sum, length) => sum + length, 5 * count + 5));
  for (let stream = 0; stream < STREAMS; stream++) [places[stream], at] = [at, at + places[stream]];
  let end = 0;
  const raw = (stream, size) => {
    let place = places[stream];
    while (size-- > 0) code[end++] = bytes[place++];
    places[stream] = place;
  };
  const one = (stream) => {
    let place = places[stream], byte;
    do {
      byte = bytes[place++];
      code[end++] = byte;
    } while (byte & 128);
    places[stream] = place;
  };
  const some = (stream) => {
    const [value] = number(bytes, places[stream]);
    one(stream);
    return value;
  };
  code.set(wide(count));
  end = 5;
  while (count-- > 0) {
    const start = end;
    end += 5;
    for (let kinds = some(TYPE); kinds > 0; kinds--) {
      one(TYPE);
      raw(TYPE, 1);
    }
    for (let depth = 1; depth > 0; ) {
      const what = bytes[places[CODE]];
      raw(CODE, 1);
      const streams = SHAPES[what];
      if (what === 0x0b) depth -= 1;
      else if (what >= 0x02 && what <= 0x04) depth += 1;
      if (streams) {
        for (let place = 0; place < streams.length; place++) one(streams[place]);
      } else if (what === 0x0e) for (let rest = some(BRANCH) + 1; rest > 0; rest--) one(BRANCH);
      else if (what === 0x1c) for (let rest = some(GLOBAL); rest > 0; rest--) one(GLOBAL);
      else if (what === 0x43) raw(FRACTION, 4);
      else if (what === 0x44) raw(FRACTION, 8);
      else if (what === 0xfc) for (let rest = MORE[some(SECOND)]; rest > 0; rest--) one(SECOND);
    }
    code.set(wide(end - start - 5), start);
  }
  return code.subarray(0, end);
}

// The program of which these are the bytes, whole as it is or laid out as streams.
export function whole(buffer) {
  const bytes = new Uint8Array(buffer);
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at < bytes.length; ) {
    const start = at;
    const [size, from] = number(bytes, at + 1);
    at = from + size;
    const named = from + 1 + NAME.length;
    const streams = bytes[start] === 0 && String.fromCharCode(...bytes.subarray(from + 1, named)) === NAME;
    if (!streams) {
      parts.push(bytes.subarray(start, at));
      continue;
    }
    const code = woven(bytes, named);
    parts.push(Uint8Array.of(10, ...wide(code.length)), code);
  }
  const together = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let end = 0;
  for (const part of parts) {
    together.set(part, end);
    end += part.length;
  }
  return together;
}
