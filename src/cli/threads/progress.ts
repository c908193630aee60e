import type { Io } from "../io.ts";

/** Work shorter than this shows nothing: a line that only flickers helps nobody. In milliseconds. */
const QUIET = 300;

/** A line on the terminal that is rewritten as work goes on; nothing at all where there is no terminal. */
export interface Progress {
  show(text: string): void;
  clear(): void;
}

export function startProgress(io: Io): Progress {
  if (!io.showsProgress) return { show: () => {}, clear: () => {} };
  let shown = false;
  const begun = performance.now();
  return {
    show(text) {
      if (performance.now() - begun < QUIET) return;
      shown = true;
      io.talk(`\r\u001b[2K${io.onTalk("dim", text)}`);
    },
    clear() {
      if (shown) io.talk("\r\u001b[2K");
      shown = false;
    },
  };
}
