import { Worker } from "node:worker_threads";

/** Milliseconds of processor time without a sign of life after which the whole run is ended. */
const SILENCE = 60_000;

/**
 * Watches the run from a second thread. A case that never returns blocks this thread for good, so the
 * watcher names it and ends the process. `beat(name, limit)` is called before each case. What counts is the
 * processor time of this process: beside other work a case may wait long without being at fault.
 */
export function startWatchdog(): {
  beat: (name: string, limit: number) => void;
  stop: () => Promise<number>;
} {
  const code = `
    const { parentPort } = require("node:worker_threads");
    const { writeSync } = require("node:fs");
    const spent = () => {
      const { user, system } = process.cpuUsage();
      return (user + system) / 1000;
    };
    let now = null;
    parentPort.on("message", ({ name, limit }) => {
      now = { name, end: spent() + limit + ${SILENCE} };
    });
    setInterval(() => {
      if (now === null || spent() < now.end) return;
      writeSync(2, "\\nhung: " + now.name + " has not come back; the run is ended\\n");
      process.kill(process.pid, "SIGKILL");
    }, 1000);`;
  const worker = new Worker(code, { eval: true });
  worker.unref();
  return {
    beat: (name, limit) => worker.postMessage({ name, limit }),
    stop: () => worker.terminate(),
  };
}
