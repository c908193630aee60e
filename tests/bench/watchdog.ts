import { Worker } from "node:worker_threads";

/** Milliseconds without a sign of life after which the whole run is ended. */
const SILENCE = 60_000;

/**
 * Watches the run from a second thread. A case that never returns blocks this thread for good, so the
 * watcher names it and ends the process. `beat(name, limit)` is called before each case.
 */
export function startWatchdog(): {
  beat: (name: string, limit: number) => void;
  stop: () => Promise<number>;
} {
  const code = `
    const { parentPort } = require("node:worker_threads");
    const { writeSync } = require("node:fs");
    let timer;
    parentPort.on("message", ({ name, limit }) => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        writeSync(2, "\\nhung: " + name + " has not come back; the run is ended\\n");
        process.kill(process.pid, "SIGKILL");
      }, limit + ${SILENCE});
    });`;
  const worker = new Worker(code, { eval: true });
  worker.unref();
  return {
    beat: (name, limit) => worker.postMessage({ name, limit }),
    stop: () => worker.terminate(),
  };
}
