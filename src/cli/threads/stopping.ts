import type { Words } from "../../words/index.ts";

/** Set to 1 when the maker wants no more searching; all threads look at it. */
const flag = new Int32Array(new SharedArrayBuffer(4));

/** Shared with the threads that search. */
export const stopFlag = (): Int32Array => flag;

/** Whether the maker wants the best plan so far. */
export const wantsStop = (watched: Int32Array = flag): boolean => Atomics.load(watched, 0) === 1;

/** What a program ends with that was stopped by Ctrl-C. */
const STOPPED = 130;

let searching = 0;

/** What hears Ctrl-C while searches go on. */
let listener = (): void => {};

function stop(words: Words): void {
  if (wantsStop()) process.exit(STOPPED);
  Atomics.store(flag, 0, 1);
  process.stderr.write(words.commandLine.stopping.stoppingTheBestPlan);
}

/**
 * Does some searching, during which a first Ctrl-C asks for the best plan so far and a second ends the program. Whatever
 * else the program does, a first Ctrl-C ends it, as everywhere.
 */
export async function whileSearching<T>(search: () => Promise<T>, words: Words): Promise<T> {
  searching += 1;
  if (searching === 1) {
    listener = () => stop(words);
    process.on("SIGINT", listener);
  }
  try {
    return await search();
  } finally {
    searching -= 1;
    if (searching === 0) process.off("SIGINT", listener);
  }
}
