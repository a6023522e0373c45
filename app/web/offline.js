// The service worker: keeps the whole site for use without a network.
//
// `REVISION` and `FILES` stand above these lines; list_offline_files.sh writes them at each build. A new version is fetched
// whole beside the old one and waits until the page says "take over", so that nobody's page changes under their hands.

// Caches belong to the origin, not to the path: two copies on one host must not touch each other's.
const PREFIX = `sunlarder ${self.registration.scope} `;
const CACHE = PREFIX + REVISION;
const INDEX = "./"; // not "index.html", which some hosts redirect, and a redirected answer may not open a page

// Names with a hash never change their content; the rest must be asked for anew. (Mode "reload" would fetch all of it twice.)
const request = (file) => new Request(file, { cache: /-[0-9a-f]{8,}[._]/.test(file) ? "default" : "no-cache" });

async function fetchAll() {
  const cache = await caches.open(CACHE);
  await cache.addAll([INDEX, ...FILES].map(request));
  // A host in the middle of an upload may have answered with the page of another version: its names bear other hashes.
  const index = await (await cache.match(INDEX)).text();
  const hash = /-[0-9a-f]{8,}\.(?=js$|css$)/;
  const strangers = FILES.filter((file) => !index.includes(file.match(hash)?.[0] ?? ""));
  if (strangers.length > 0) {
    await caches.delete(CACHE);
    throw new Error(`the page does not belong to ${strangers.join(", ")}`);
  }
}

async function dropOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

// A worker of a debug build removes itself and what an earlier one kept: whoever is building wants to see the newest files.
async function leave() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX)).map((name) => caches.delete(name)));
  await self.registration.unregister();
}

async function answer(event) {
  const url = new URL(event.request.url);
  const home = new URL(self.registration.scope).pathname;
  const isHome = url.pathname === home || url.pathname === `${home}index.html`;
  const cache = await caches.open(CACHE);
  const kept = await cache.match(isHome ? INDEX : event.request, { ignoreSearch: true });
  return kept ?? fetch(event.request);
}

if (REVISION === "debug") {
  self.addEventListener("install", () => self.skipWaiting());
  self.addEventListener("activate", (event) => event.waitUntil(leave()));
} else {
  self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
  self.addEventListener("activate", (event) => event.waitUntil(dropOthers()));
  self.addEventListener("message", (event) => {
    if (event.data === "take over") self.skipWaiting();
  });
  self.addEventListener("fetch", (event) => {
    const ours = new URL(event.request.url).origin === self.location.origin;
    if (event.request.method === "GET" && ours) event.respondWith(answer(event));
  });
}
