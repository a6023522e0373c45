// Times the lanes as a program of their own, as browsers run it: `node lanes.mjs FOLDER < numbers`.
//
// The numbers: how many there are of a bank, of arrays and of days, as 32-bit whole numbers, then they themselves in 32 bits. It prints
// nanoseconds per cell and step, then what happened in each array, year and month: the same as the engine's own.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const folder = process.argv[2];
const program = await import(pathToFileURL(`${folder}/lanes.js`));
program.initSync({ module: readFileSync(`${folder}/lanes_bg.wasm`) });

const bytes = readFileSync(0);
const given = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
const [bank, arrays, days] = new Uint32Array(given, 0, 3);
const numbers = new Float32Array(given, 12);
const parts = [numbers.subarray(0, bank), numbers.subarray(bank, bank + arrays)];

program.begin(0, 0, 0);
program.add(0, numbers.subarray(bank + arrays, bank + arrays + days));

// The first calls run while the engine still looks for what is worth compiling well.
const times = [];
let counts;
for (let round = 0; round < 60; round += 1) {
    const began = performance.now();
    counts = program.row(...parts, 0, 1);
    times.push(performance.now() - began);
}
const settled = times.slice(20).sort((one, other) => one - other);
const NUMBERS_OF_A_DAY = 1 + 24 * 10;
const steps = arrays * 24 * (days / NUMBERS_OF_A_DAY);
console.log((settled[settled.length >> 1] * 1e6) / steps);
console.log([...counts].join(' '));
