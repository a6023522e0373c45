// Judges the built site as it would be hosted: served with brotli, mobile profile. `./dev bench` runs it, with the folder of
// lighthouse in NODE_MODULES; the noise of a busy machine is too great for CI. Prints the median of the runs and fails under the bars.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { pathToFileURL } from "node:url";
import { brotliCompressSync } from "node:zlib";

const BARS = { performance: 95, accessibility: 100, "best-practices": 100, seo: 100 };
const RUNS = 3;
const TYPES = {
  ".html": "text/html; charset=utf-8", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm",
  ".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json", ".txt": "text/plain; charset=utf-8",
};
const dist = process.argv[2] ?? "dist";
const page = process.argv[3] ?? "";

function serve() {
  const packed = new Map();
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://host").pathname);
    const name = normalize(path.endsWith("/") ? `${path}index.html` : path);
    try {
      if (!packed.has(name)) packed.set(name, brotliCompressSync(readFileSync(join(dist, name))));
      response.writeHead(200, {
        "content-type": TYPES[extname(name)] ?? "application/octet-stream",
        "content-encoding": "br",
        "cache-control": "max-age=3600",
      });
      response.end(packed.get(name));
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((done) => server.listen(0, "127.0.0.1", () => done(server)));
}

async function openBrowser() {
  const profile = mkdtempSync(join(tmpdir(), "sunlarder-lighthouse-"));
  const flags = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
    "--disable-background-networking", "--disable-component-update", "--remote-debugging-port=0", `--user-data-dir=${profile}`];
  const browser = spawn(process.env.CHROME_PATH ?? "chromium", flags, { stdio: ["ignore", "ignore", "pipe"] });
  const port = await new Promise((found, failed) => {
    let said = "";
    browser.stderr.on("data", (part) => {
      said += part;
      const port = said.match(/listening on ws:\/\/[^:]+:(\d+)\//)?.[1];
      if (port) found(Number(port));
    });
    browser.on("exit", () => failed(new Error(`the browser ended: ${said}`)));
  });
  const close = async () => {
    const ended = new Promise((done) => browser.on("exit", done));
    browser.kill();
    await ended;
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  return { port, close };
}

const median = (numbers) => numbers.sort((one, other) => one - other)[Math.floor(numbers.length / 2)];

const { default: lighthouse } = await import(pathToFileURL(join(process.env.NODE_MODULES, "lighthouse/core/index.js")));
const server = await serve();
const address = `http://127.0.0.1:${server.address().port}/${page}`;
const scores = Object.fromEntries(Object.keys(BARS).map((name) => [name, []]));
const paints = [];
const wanting = new Set();
for (let run = 0; run < RUNS; run++) {
  const browser = await openBrowser();
  const { lhr } = await lighthouse(address, { port: browser.port, logLevel: "error", onlyCategories: Object.keys(BARS) });
  await browser.close();
  if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
  for (const [name, all] of Object.entries(scores)) {
    all.push(Math.round(100 * lhr.categories[name].score));
    const audits = lhr.categories[name].auditRefs.filter(({ weight }) => weight > 0).map(({ id }) => lhr.audits[id]);
    for (const { id, score, title } of audits) if (score !== null && score < 0.9) wanting.add(`${name}: ${title} (${id}, ${score})`);
  }
  paints.push(lhr.audits["largest-contentful-paint"].numericValue);
}
server.close();

let failed = false;
for (const [name, all] of Object.entries(scores)) {
  const own = median([...all]);
  failed ||= own < BARS[name];
  console.log(`${name.padEnd(16)} ${String(own).padStart(3)} of 100, at least ${BARS[name]} (runs: ${all.join(", ")})`);
}
console.log(`largest paint    ${(median(paints) / 1000).toFixed(1)} s on the profile of a slow phone`);
for (const line of wanting) console.log(`  ${line}`);
process.exit(failed ? 1 : 0);
