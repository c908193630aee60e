import { type Keeps, type Kept, keepsOf } from "./planner/keeps.ts";
import type { Answer, Ask, ChooseWhat, ShowWhat } from "./planner/messages.ts";
import type { SeenPhoto } from "./planner/pictured.ts";

/** A worker as the session needs it. */
export interface WorkerPort {
  post(ask: Ask): void;
  end(): void;
}

export interface SessionOptions {
  /** Starts a worker that tells `heard` all it answers, and `died` when it breaks down. */
  start(heard: (answer: Answer) => void, died: () => void): WorkerPort;
  /** Calls back after so many milliseconds; returns how to call it off. */
  later(milliseconds: number, call: () => void): () => void;
  heard(answer: Answer): void;
  /** Characters of results kept for workers to come. */
  most: number;
}

export interface Session {
  /** Plans a text; whatever is being planned is given up. Returns the number its answers carry. */
  plan(text: string, name: string): number;
  /** @param photos fabrics that are drawn as in their photos */
  show(what: ShowWhat, photos: readonly SeenPhoto[]): number;
  /** Asks for the mat of the plan last told, with what was said of the work. */
  mat(work: string, otherwise?: string): number;
  /** Plans other texts in a worker of their own; empty ends it. */
  tryTexts(texts: { key: string; text: string }[]): number;
  /** Looks for changes to a text that buy less, in the same worker. */
  save(text: string): number;
  /** Plans a text with what lies in the drawer used first, in the same worker. */
  cover(text: string, drawer: string): number;
  /** Plans the kits of a class, in the same worker. */
  kits(text: string, name: string): number;
  /** Sets ways of making, or turnings, beside one another, in the same worker. */
  choose(what: ChooseWhat, text: string): number;
  end(): void;
}

/** Milliseconds a question waits for a busy worker before the spare is taken: a solve cannot be interrupted. */
const PATIENCE = 150;
/**
 * Milliseconds without a word after which a worker that plans is taken for dead, since nothing tells when one is killed
 * from outside: far longer than any one search may last.
 */
const SILENCE = 45_000;
/** A worker that has died so often in a row is not started again for the same question. */
const MOST_DEATHS = 3;

/** Answers after which no more come to one question. */
const LAST: ReadonlySet<Answer["kind"]> = new Set(["planned", "failed", "broken"]);

interface Hand {
  port: WorkerPort;
  ready: boolean;
  /** It has gone the way of a gesture once. */
  warm: boolean;
}

/** Which worker does what: one plans, a spare stands ready, a third tries suggestions when there are any. */
interface Bench {
  options: SessionOptions;
  keeps: Keeps;
  inHand: Hand;
  spare: Hand;
  trier: Hand | null;
  /** Number of the last question, and of the last plan that a worker has begun. */
  asked: number;
  taken: number;
  current: AskedPlan | null;
  deaths: number;
  callOff(): void;
  listenOff(): void;
}

type AskedPlan = Extract<Ask, { kind: "plan" }>;

const NOBODY: Hand = { port: { post() {}, end() {} }, ready: false, warm: false };

/** A new worker, told all that was found so far. */
function fresh(bench: Bench): Hand {
  const hand: Hand = { ...NOBODY };
  hand.port = bench.options.start(
    (answer) => answered(bench, hand, answer),
    () => died(bench, hand),
  );
  hand.port.post({ kind: "start", solver: null, keeps: bench.keeps.all() });
  return hand;
}

function answered(bench: Bench, hand: Hand, answer: Answer): void {
  if (answer.kind === "ready") {
    hand.ready = true;
    return;
  }
  const planning = hand === bench.inHand;
  if (answer.kind === "kept") {
    share(bench, answer.entries, hand);
    if (planning) listen(bench, bench.asked);
    return;
  }
  if (!planning && hand !== bench.trier) return;
  if (planning) listen(bench, LAST.has(answer.kind) ? 0 : bench.asked);
  if (answer.kind === "taken") bench.taken = Math.max(bench.taken, answer.id);
  if (answer.kind === "planned" || answer.kind === "failed") bench.deaths = 0;
  bench.options.heard(answer);
  if (answer.kind === "planned") warm(bench);
}

/** A spare that has never planned would be slow when it is wanted most. */
function warm({ spare, current }: Bench): void {
  if (!spare.ready || spare.warm || current === null) return;
  spare.warm = true;
  spare.port.post({ kind: "warm", text: current.text, name: current.name });
}

function share(bench: Bench, entries: readonly Kept[], from: Hand): void {
  bench.keeps.keep(entries);
  for (const hand of [bench.inHand, bench.spare])
    if (hand !== from) hand.port.post({ kind: "keep", entries: [...entries] });
}

/** Waits for the next word of the worker in hand; for none where nothing is being planned. */
function listen(bench: Bench, id: number): void {
  bench.listenOff();
  const hand = bench.inHand;
  bench.listenOff =
    id === 0 ? () => {} : bench.options.later(SILENCE, () => hand === bench.inHand && died(bench, hand));
}

/** The spare takes the place of the worker in hand, and its question. */
function swap(bench: Bench): void {
  bench.inHand.port.end();
  bench.inHand = bench.spare;
  bench.spare = fresh(bench);
  if (bench.current !== null) bench.inHand.port.post(bench.current);
  listen(bench, bench.current?.id ?? 0);
}

function died(bench: Bench, hand: Hand): void {
  if (hand !== bench.spare && hand !== bench.inHand) return;
  bench.deaths += 1;
  if (bench.deaths > MOST_DEATHS) {
    if (hand === bench.inHand && bench.current !== null)
      bench.options.heard({ kind: "broken", id: bench.current.id, message: "" });
  } else if (hand === bench.spare) bench.spare = fresh(bench);
  else swap(bench);
}

/** Takes the spare where the worker in hand does not hear of a question in time. */
function watch(bench: Bench, id: number): void {
  bench.callOff();
  bench.callOff = bench.options.later(PATIENCE, () => {
    if (bench.taken >= id || bench.current?.id !== id) return;
    // A spare that has not come up yet would only make the wait longer.
    if (bench.spare.ready) swap(bench);
    else watch(bench, id);
  });
}

/** Asks the worker that tries things beside the plan. */
function askTrier(bench: Bench, ask: Ask): number {
  bench.trier ??= fresh(bench);
  bench.trier.port.post(ask);
  return bench.asked;
}

/** Opens workers to plan with. */
export function openSession(options: SessionOptions): Session {
  const bench: Bench = {
    options,
    keeps: keepsOf(options.most),
    ...{ inHand: NOBODY, spare: NOBODY, trier: null, current: null },
    ...{ asked: 0, taken: 0, deaths: 0, callOff() {}, listenOff() {} },
  };
  bench.inHand = fresh(bench);
  bench.spare = fresh(bench);
  const next = (): number => {
    bench.asked += 1;
    return bench.asked;
  };
  const ask = (made: Ask): number => {
    bench.inHand.port.post(made);
    return bench.asked;
  };
  return {
    plan(text, name) {
      bench.current = { kind: "plan", id: next(), text, name };
      ask(bench.current);
      watch(bench, bench.asked);
      listen(bench, bench.asked);
      return bench.asked;
    },
    show: (what, photos) => ask({ kind: "show", id: next(), what, photos }),
    mat: (work, otherwise) =>
      ask({ kind: "mat", id: next(), work, ...(otherwise === undefined ? {} : { otherwise }) }),
    tryTexts(texts) {
      if (texts.length > 0) return askTrier(bench, { kind: "try", id: next(), texts });
      bench.trier?.port.end();
      bench.trier = null;
      return next();
    },
    save: (text) => askTrier(bench, { kind: "save", id: next(), text }),
    cover: (text, drawer) => askTrier(bench, { kind: "cover", id: next(), text, drawer }),
    kits: (text, name) => askTrier(bench, { kind: "kits", id: next(), text, name }),
    choose: (what, text) => askTrier(bench, { kind: "choose", id: next(), what, text }),
    end() {
      bench.callOff();
      bench.listenOff();
      for (const hand of [bench.inHand, bench.spare, bench.trier]) hand?.port.end();
    },
  };
}
