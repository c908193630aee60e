import type { Ask } from "./planner/messages.ts";
import { workerLoop } from "./planner/worker.ts";
import { useSolver } from "./solver.ts";
import { startPage } from "./ui/start.tsx";
import { loadLanguages } from "./words/index.ts";

/*
 * One program in two places: in a worker it plans, on the page it draws. A channel lets messages in between two
 * searches at once, where a timer would take its time.
 */
const ready = loadLanguages();
if (typeof document === "undefined") {
  const { port1, port2 } = new MessageChannel();
  let go = () => {};
  port1.onmessage = () => go();
  const take = workerLoop({
    post: (answer) => self.postMessage(answer),
    pause: () =>
      new Promise<void>((resolve) => {
        go = resolve;
        port2.postMessage(null);
      }),
    later: (milliseconds, call) => void setTimeout(call, milliseconds),
    useSolver,
  });
  self.onmessage = ({ data }: MessageEvent<Ask>) => void ready.then(() => take(data));
} else void ready.then(startPage);
