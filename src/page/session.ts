import { type Kept, keepsOf } from "./planner/keeps.ts";
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
}

/** Which worker does what: one plans, a spare stands ready, a third tries suggestions when there are any. */
export function openSession({ start, later, heard, most }: SessionOptions): Session {
  const keeps = keepsOf(most);
  let asked = 0;
  let taken = 0;
  let current: Extract<Ask, { kind: "plan" }> | null = null;
  let callOff = () => {};
  let listenOff = () => {};
  let deaths = 0;
  let inHand: Hand;
  let spare: Hand;
  let trier: Hand | null = null;

  const fresh = (): Hand => {
    const hand: Hand = { port: { post() {}, end() {} }, ready: false };
    hand.port = start(
      (answer) => {
        if (answer.kind === "ready") hand.ready = true;
        else if (answer.kind === "kept") {
          share(answer.entries, hand);
          if (hand === inHand) listen(asked);
        } else if (hand === inHand || hand === trier) {
          if (hand === inHand) listen(LAST.has(answer.kind) ? 0 : asked);
          if (answer.kind === "taken") taken = Math.max(taken, answer.id);
          if (answer.kind === "planned" || answer.kind === "failed") deaths = 0;
          heard(answer);
        }
      },
      () => died(hand),
    );
    hand.port.post({ kind: "start", solver: null, keeps: keeps.all() });
    return hand;
  };

  const share = (entries: readonly Kept[], from: Hand): void => {
    keeps.keep(entries);
    for (const hand of [inHand, spare])
      if (hand !== from) hand.port.post({ kind: "keep", entries: [...entries] });
  };

  /** Waits for the next word of the worker in hand; for none where nothing is being planned. */
  const listen = (id: number): void => {
    listenOff();
    const hand = inHand;
    listenOff = id === 0 ? () => {} : later(SILENCE, () => hand === inHand && died(hand));
  };

  const swap = (): void => {
    inHand.port.end();
    inHand = spare;
    spare = fresh();
    if (current !== null) inHand.port.post(current);
    listen(current?.id ?? 0);
  };

  const died = (hand: Hand): void => {
    if (hand === spare) {
      deaths += 1;
      if (deaths <= MOST_DEATHS) spare = fresh();
    } else if (hand === inHand) {
      deaths += 1;
      if (deaths <= MOST_DEATHS) swap();
      else if (current !== null) heard({ kind: "broken", id: current.id, message: "" });
    }
  };

  const watch = (id: number): void => {
    callOff();
    callOff = later(PATIENCE, () => {
      if (taken >= id || current?.id !== id) return;
      // A spare that has not come up yet would only make the wait longer.
      if (spare.ready) swap();
      else watch(id);
    });
  };

  inHand = fresh();
  spare = fresh();
  return {
    plan(text, name) {
      asked += 1;
      current = { kind: "plan", id: asked, text, name };
      inHand.port.post(current);
      watch(asked);
      listen(asked);
      return asked;
    },
    show(what, photos) {
      asked += 1;
      inHand.port.post({ kind: "show", id: asked, what, photos });
      return asked;
    },
    mat(work, otherwise) {
      asked += 1;
      inHand.port.post({ kind: "mat", id: asked, work, ...(otherwise === undefined ? {} : { otherwise }) });
      return asked;
    },
    tryTexts(texts) {
      asked += 1;
      if (texts.length === 0) {
        trier?.port.end();
        trier = null;
        return asked;
      }
      trier ??= fresh();
      trier.port.post({ kind: "try", id: asked, texts });
      return asked;
    },
    save(text) {
      asked += 1;
      trier ??= fresh();
      trier.port.post({ kind: "save", id: asked, text });
      return asked;
    },
    cover(text, drawer) {
      asked += 1;
      trier ??= fresh();
      trier.port.post({ kind: "cover", id: asked, text, drawer });
      return asked;
    },
    kits(text, name) {
      asked += 1;
      trier ??= fresh();
      trier.port.post({ kind: "kits", id: asked, text, name });
      return asked;
    },
    choose(what, text) {
      asked += 1;
      trier ??= fresh();
      trier.port.post({ kind: "choose", id: asked, what, text });
      return asked;
    },
    end() {
      callOff();
      listenOff();
      for (const hand of [inHand, spare, trier]) hand?.port.end();
    },
  };
}
