/** Set to 1 when the maker wants no more searching; all threads look at it. */
const flag = new Int32Array(new SharedArrayBuffer(4));

/** Shared with the threads that search. */
export const stopFlag = (): Int32Array => flag;

/** Whether the maker wants the best plan so far. */
export const wantsStop = (watched: Int32Array = flag): boolean => Atomics.load(watched, 0) === 1;

/** What a program ends with that was stopped by Ctrl-C. */
const STOPPED = 130;

let searching = 0;

function stop(): void {
  if (wantsStop()) process.exit(STOPPED);
  Atomics.store(flag, 0, 1);
  process.stderr.write("\nStopping: the best plan so far is kept. Ctrl-C once more ends at once.\n");
}

/**
 * Does some searching, during which a first Ctrl-C asks for the best plan so far and a second ends the program. Whatever
 * else the program does, a first Ctrl-C ends it, as everywhere.
 */
export async function whileSearching<T>(search: () => Promise<T>): Promise<T> {
  searching += 1;
  if (searching === 1) process.on("SIGINT", stop);
  try {
    return await search();
  } finally {
    searching -= 1;
    if (searching === 0) process.off("SIGINT", stop);
  }
}
