// The worker: the same program as the page's, but with the desk instead of the page. As the script of a worker it serves the page
// that started it; imported it serves where there are no workers. split_program.sh writes the program's name into it.

import init, { bring_lanes, open_desk, take, work } from "./program.js";

// A program beside this one takes many sizes through the weather at once, where the browser can run it; else the desk does it by itself.
async function fastLanes() {
  try {
    const lanes = await import("./lanes.js");
    await lanes.default();
    bring_lanes(lanes);
  } catch (error) {
    console.info("Sunlarder works out sizes slowly here:", error);
  }
}

// Opens the desk. `answer` is called with each message for the page; what is given back takes the page's messages.
// One piece of work a turn, so that a newer plan is heard between two.
export async function open(answer) {
  await init();
  await open_desk();
  fastLanes();
  const turns = new MessageChannel();
  let busy = false;
  turns.port1.onmessage = () => {
    const message = work();
    busy = message !== undefined;
    if (!busy) return;
    if (message) answer(message); // null: there is more to do, and nothing to say yet
    turns.port2.postMessage(0);
  };
  return (message) => {
    take(message);
    if (!busy) turns.port2.postMessage(0);
    busy = true;
  };
}

if (typeof document === "undefined") {
  const desk = open((message) => postMessage(message));
  // Listening at once: messages may come before the program is here. Promises keep their order.
  addEventListener("message", (event) => desk.then((take) => take(event.data)));
  // The page hears of errors, but not of refused promises, unless told so.
  addEventListener("unhandledrejection", (event) => {
    throw event.reason;
  });
  desk.then(() => postMessage(null));
}
