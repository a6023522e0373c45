// The worker: the same program as the page's, but with the desk instead of the page. As the script of a worker it serves the page
// that started it; imported it serves where there are no workers. split_program.sh writes the program's name into it.
//
// A desk starts it once more as a second hand, which takes sizes through the weather and does nothing else.

import init, { bring_lanes, open_desk, take, work } from "./program.js";

const SIZES = true; // whether the page asks how big things should be; split_program.sh says false for one that does not
const HAND = "hand";
const isWorker = typeof document === "undefined";

// A program beside this one takes many sizes through the weather at once, where the browser can run it.
async function startLanes() {
  const lanes = await import("./lanes.js");
  await lanes.default();
  return lanes;
}

// That program here and in a second hand, started when it is first wanted, that comes to meet this one.
function withHand(lanes) {
  let hand;
  let round = 0;
  let free = 0; // rows that it may be asked for: few, so that it is never busy for long with what nobody wants any more
  let done = [];
  const start = () => {
    hand = new Worker(import.meta.url, { type: "module", name: HAND });
    hand.onmessage = ({ data: [own, row] }) => {
      if (own !== round) return;
      free += 1;
      done.push(row);
    };
    // What it was asked for is done here in the end.
    hand.onerror = (event) => {
      event.preventDefault();
      hand = null;
      free = 0;
    };
  };
  return {
    begin(...counting) {
      lanes.begin(...counting);
      if (hand === undefined && isWorker && self.Worker) start();
      round += 1;
      free = hand ? 2 : 0;
      done = [];
      hand?.postMessage(["begin", ...counting]);
    },
    add(year, days) {
      lanes.add(year, days);
      if (!hand) return;
      // A view would take the whole memory along, and a copy that is given away is not copied again.
      const own = days.slice();
      hand.postMessage(["add", year, own], [own.buffer]);
    },
    row: lanes.row,
    ahead(number, stores, arrays, from, to) {
      if (!free) return false;
      free -= 1;
      hand.postMessage(["row", stores.slice(), arrays.slice(), from, to, round, number]);
      return true;
    },
    taken: () => done.shift() ?? new Uint8Array(),
  };
}

// Opens the desk. `answer` is called with each message for the page; what is given back takes the page's messages, of which `null` is a
// pause until the next. One piece of work a turn, so that a newer plan is heard between two.
export async function open(answer) {
  await init();
  await open_desk();
  if (SIZES) {
    startLanes().then(
      (lanes) => bring_lanes(withHand(lanes)),
      (error) => console.info("Sunlarder works out sizes slowly here:", error),
    );
  }
  const turns = new MessageChannel();
  let busy = false;
  let pauses = false;
  turns.port1.onmessage = () => {
    const message = pauses ? undefined : work();
    busy = message !== undefined;
    if (!busy) return;
    if (message) answer(message); // null: there is more to do, and nothing to say yet
    turns.port2.postMessage(0);
  };
  return (message) => {
    pauses = message === null;
    if (pauses) return;
    take(message);
    if (!busy) turns.port2.postMessage(0);
    busy = true;
  };
}

function lendAHand() {
  const started = startLanes();
  addEventListener("message", async ({ data: [what, ...given] }) => {
    const lanes = await started;
    if (what !== "row") return lanes[what](...given);
    const [round, number] = given.splice(-2);
    postMessage([round, Uint8Array.of(number, given[2], ...lanes.row(...given))]);
  });
}

function serve() {
  const desk = open((message) => postMessage(message));
  // Listening at once: messages may come before the program is here. Promises keep their order.
  addEventListener("message", (event) => desk.then((take) => take(event.data)));
  desk.then(() => postMessage(null));
}

if (isWorker) {
  // Whoever started this hears of errors, but not of refused promises, unless told so.
  addEventListener("unhandledrejection", (event) => {
    throw event.reason;
  });
  if (name === HAND) lendAHand();
  else serve();
}
