// Starts the program, tends the offline copy, and keeps the way to saved plans open when the program has stopped.
// It is a file of its own because the page's policy allows no inline script.
//
// Events on `document`, between this script and the program:
//   sunlarder:stopped    from a debug build of the program: it has panicked; `detail` is the message
//   sunlarder:update     to the program: a new version waits (also as `data-update="waiting"` on <html>)
//   sunlarder:take-over  from the program: the person agreed to the new version
//   sunlarder:stands     from the program: the page answers, and what can wait may begin
//   sunlarder:picture    from the program: `detail` is a figure, `svg` or `png`, the name of the plan, the title of the picture
//   sunlarder:ask        from the program: `detail` is a list of messages for the worker, complete in itself
//   sunlarder:tell       from the program: one more message for the worker; null: something else is about to be asked, and it may rest until then
//   sunlarder:answer     to the program: `detail` is a message of the worker, or null when there will be none

const root = document.documentElement;
const own = document.querySelector("script[data-wasm]");
const OUR_KEYS = "sunlarder.";

// ---- The language

// Each language has a page of its own, which names the others. The one that somebody chose on this device comes first. Nobody has
// chosen at a first visit: then the page at the root, and only that, gives way to the one that the browser prefers.
function wantedLanguage(pages) {
  let chosen = null;
  try {
    chosen = localStorage.getItem("sunlarder.language");
  } catch {
    // Storage is refused, so nobody's choice is known.
  }
  if (chosen || root.lang !== pages[0]?.dataset.language) return chosen;
  const known = pages.map((page) => page.dataset.language);
  return navigator.languages.map((tag) => tag.slice(0, 2)).find((tag) => known.includes(tag));
}

// Whether the page is on its way to another.
async function goesElsewhere() {
  const pages = [...document.querySelectorAll("link[data-language]")];
  const wanted = wantedLanguage(pages);
  const page = pages.find((own) => own.dataset.language === wanted);
  if (!page || wanted === root.lang) return false;
  // Without a network only a page that is kept can be opened.
  if (!navigator.onLine && !(await self.caches?.match(page.href))) return false;
  location.replace(page.href + location.search + location.hash);
  return true;
}

// ---- When the program has stopped

function showCalm(detail) {
  const calm = document.getElementById("calm");
  if (!calm.hidden) return; // the first cause is the one that tells
  for (const element of document.body.children) {
    if (element !== calm && element.tagName !== "SCRIPT") element.hidden = true;
  }
  document.getElementById("calm-detail").textContent = String(detail ?? "");
  calm.hidden = false;
  document.getElementById("calm-download").focus();
}

function storedPlans() {
  const plans = {};
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i);
      if (key.startsWith(OUR_KEYS)) plans[key] = localStorage.getItem(key);
    }
  } catch {
    // Storage is refused, so nothing was ever stored.
  }
  return plans;
}

function downloadPlans() {
  const plans = storedPlans();
  if (Object.keys(plans).length === 0) {
    document.getElementById("calm-nothing").hidden = false;
    return;
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([JSON.stringify(plans, null, 2)], { type: "application/json" }));
  link.download = "sunlarder-plans.json";
  link.click();
}

// Not every end comes with a panic's message: a full stack or memory just traps.
function onError(error) {
  if (error instanceof WebAssembly.RuntimeError) showCalm(error);
}

document.addEventListener("sunlarder:stopped", (event) => showCalm(event.detail));
addEventListener("error", (event) => onError(event.error));
addEventListener("unhandledrejection", (event) => onError(event.reason));
document.getElementById("calm-download").addEventListener("click", downloadPlans);
document.getElementById("calm-reload").addEventListener("click", () => location.reload());

// ---- The offline copy

function announce(registration) {
  // The very first worker replaces nothing: only a later one is news.
  if (!registration.waiting || !registration.active) return;
  root.dataset.update = "waiting";
  document.dispatchEvent(new CustomEvent("sunlarder:update"));
}

function follow(registration) {
  registration.installing?.addEventListener("statechange", () => announce(registration));
}

function takeOver(registration) {
  // Other open tabs keep running what they have loaded; only the one that asked starts anew.
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  registration.waiting?.postMessage("take over");
}

async function keepOffline() {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(new URL("offline.js", document.baseURI), {
      updateViaCache: "none",
    });
    document.addEventListener("sunlarder:take-over", () => takeOver(registration));
    registration.addEventListener("updatefound", () => follow(registration));
    // What began before anybody listened, or had ended by then.
    follow(registration);
    announce(registration);
    // The browser looks for a new version only some time after a page was opened. Without a network it finds none.
    registration.update().catch(() => {});
    await navigator.serviceWorker.ready;
    root.dataset.offline = "ready";
  } catch (error) {
    // Refused by the browser or its settings: the page works all the same, with a network.
    console.info("Sunlarder is not kept for offline use:", error);
  }
}

// ---- The worker

const workerScript = new URL(own.dataset.worker, document.baseURI);
let desk; // takes messages; nothing before the worker is wanted
let asked = []; // what was asked last, for a worker that comes later or anew
let year; // the year of weather last brought, for the same
let hasStood = false;
let renewals = 1;

function answer(message) {
  document.dispatchEvent(new CustomEvent("sunlarder:answer", { detail: message }));
}

function openDesk(take) {
  desk = take;
  if (year) take(year);
  asked.forEach(take);
}

function startWorker() {
  const worker = new Worker(workerScript, { type: "module" });
  worker.addEventListener("message", (event) => {
    hasStood = true;
    if (event.data) answer(event.data);
  });
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    worker.terminate();
    // One that never stood will not stand the next time either: no module in a worker here, or none that may be loaded.
    if (!hasStood) workHere();
    else if (renewals-- > 0) startWorker();
    else giveUp();
  });
  openDesk((message) => worker.postMessage(message));
}

// Without workers the page does the same work itself.
async function workHere() {
  desk = () => {}; // what is asked meanwhile waits in `asked`
  try {
    const program = await import(workerScript);
    openDesk(await program.open(answer));
  } catch {
    giveUp();
  }
}

function giveUp() {
  openDesk(() => answer(null));
}

function open() {
  if (desk) return;
  try {
    startWorker();
  } catch {
    workHere();
  }
}

document.addEventListener("sunlarder:ask", (event) => {
  asked = event.detail;
  if (desk) asked.forEach(desk);
  else open();
});
document.addEventListener("sunlarder:tell", (event) => desk?.(event.detail));
document.addEventListener("sunlarder:year", (event) => {
  year = event.detail;
  desk?.(year);
});
document.addEventListener("sunlarder:stands", () => (self.requestIdleCallback ?? setTimeout)(open), { once: true });

// ---- Pictures to take along

document.addEventListener("sunlarder:picture", async (event) => {
  const { save } = await import(new URL("picture.js", document.baseURI));
  await save(...event.detail);
});

// ---- Start

if (await goesElsewhere()) await new Promise(() => {});
try {
  const program = await import(new URL(own.dataset.js, document.baseURI));
  await program.default({ module_or_path: new URL(own.dataset.wasm, document.baseURI) });
} catch (error) {
  showCalm(error);
}
keepOffline();
