import { speakFor } from "../words/index.ts";
import { keepsOf } from "./keeps.ts";
import type { Ask } from "./messages.ts";
import {
  type AskOf,
  choose,
  cover,
  type Held,
  kits,
  layMat,
  type Port,
  runPlans,
  save,
  showLast,
  tryAll,
  warmUp,
} from "./worker-tasks.ts";

/** Characters of jobs and results held by one worker. */
export const MOST_KEPT = 30_000_000;

/** What is done for each kind of ask; the newest of a kind overtakes all older ones. */
const TASKS: { [K in Ask["kind"]]: (held: Held, ask: AskOf<K>) => unknown } = {
  start({ port, keeps }, ask) {
    if (ask.solver !== null) port.useSolver(ask.solver);
    keeps.keep(ask.keeps);
    port.post({ kind: "ready" });
  },
  keep: ({ keeps }, ask) => keeps.keep(ask.entries),
  warm: warmUp,
  plan(held, ask) {
    held.newest = ask.id;
    held.waiting = ask;
    held.wake();
    return runPlans(held);
  },
  show(held, ask) {
    held.shows = ask.id;
    return showLast(held, ask);
  },
  mat(held, ask) {
    held.mats = ask.id;
    return layMat(held, ask);
  },
  try: (held, ask) => tried(held, ask, tryAll),
  save: (held, ask) => tried(held, ask, save),
  cover: (held, ask) => tried(held, ask, cover),
  kits: (held, ask) => tried(held, ask, kits),
  choose: (held, ask) => tried(held, ask, choose),
};

/** Things tried beside the plan: one at a time. */
function tried<A extends { id: number }>(held: Held, ask: A, task: (held: Held, ask: A) => unknown): unknown {
  held.tries = ask.id;
  return task(held, ask);
}

/** The worker's side: takes asks one after another, the newest `plan` before all older ones. */
export function workerLoop(port: Port): (ask: Ask) => void {
  const held: Held = {
    port,
    keeps: keepsOf(MOST_KEPT),
    newest: 0,
    tries: 0,
    mats: 0,
    shows: 0,
    waiting: null,
    busy: false,
    planned: false,
    last: null,
    wake() {},
  };
  return (ask) => {
    if ("text" in ask) speakFor(ask.text);
    void (TASKS[ask.kind] as (held: Held, ask: Ask) => unknown)(held, ask);
  };
}
