import type { Plan } from "../../planning.ts";
import { difference, ideasFor, saves, tryIdeas } from "../../savings/index.ts";
import { chooseTurnings, chooseWays } from "./choosing.ts";
import { covered } from "./cover.ts";
import type { Keeps } from "./keeps.ts";
import { kitsFor } from "./kits.ts";
import { matOf } from "./mat.ts";
import type { Answer, Ask } from "./messages.ts";
import { patternFor } from "./pattern.ts";
import { type Around, Overtaken, planText, readyAgain, solveKeeping, tryText, unless } from "./plan-text.ts";
import { show } from "./show.ts";

/** The part of a worker's world that is used; handed in, so that the loop runs in a test too. */
export interface Port {
  post(answer: Answer): void;
  /** Lets waiting messages in. */
  pause(): Promise<void>;
  /** Calls back after so many milliseconds. */
  later(milliseconds: number, call: () => void): void;
  /** Gives the solver's compiled module to whoever loads it. */
  useSolver(module: WebAssembly.Module): void;
}

/** Asks of one kind. */
export type AskOf<K extends Ask["kind"]> = Extract<Ask, { kind: K }>;

/** What a worker knows between two asks: the newest of each kind overtakes the older ones. */
export interface Held {
  port: Port;
  keeps: Keeps;
  newest: number;
  tries: number;
  mats: number;
  shows: number;
  /** The text to be planned next. */
  waiting: AskOf<"plan"> | null;
  busy: boolean;
  /** A text was planned before: more gestures may follow at once. */
  planned: boolean;
  /** The plan last told, with what it is the plan of. */
  last: { plan: Plan; text: string; name: string } | null;
  /** Ends a rest. */
  wake(): void;
}

/** Milliseconds without a gesture after which the hand is taken to rest: what only the plan needs is worked out then. */
const REST = 200;

const said = (error: unknown): string => String((error as Error)?.message ?? error).slice(0, 500);

/** Does a task; what breaks in it is told, and nothing else ends. */
async function guarded({ port }: Held, id: number, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    port.post({ kind: "broken", id, message: said(error) });
  }
}

/** Kept results found for the plan in hand are shared with the other workers. */
function sharing({ keeps, port }: Held, overtaken: () => boolean): Around {
  const tell = (answer: Answer) => void (answer.kind === "kept" && port.post(answer));
  return { keeps, overtaken, pause: port.pause, rest: port.pause, tell };
}

/** What is tried beside the plan keeps its results to itself. */
function beside({ keeps, port }: Held, overtaken: () => boolean): Around {
  return { keeps, overtaken, pause: port.pause, rest: port.pause, tell: () => {} };
}

/** Plans the newest text until none waits. */
export async function runPlans(held: Held): Promise<void> {
  if (held.busy) return;
  held.busy = true;
  const { port, keeps } = held;
  while (held.waiting !== null) {
    const { id, text, name } = held.waiting;
    held.waiting = null;
    port.post({ kind: "taken", id });
    const around: Around = {
      keeps,
      overtaken: () => held.newest !== id,
      pause: port.pause,
      rest: held.planned ? () => resting(held) : port.pause,
      tell(answer) {
        if (answer.kind === "kept" || held.newest === id) port.post(answer);
      },
    };
    await guarded(held, id, async () => {
      const plan = await planText(id, text, name, around);
      if (held.newest === id) held.last = plan === null ? null : { plan, text, name };
    });
    held.planned = true;
  }
  held.busy = false;
}

function resting(held: Held): Promise<void> {
  return new Promise<void>((resolve) => {
    held.wake = resolve;
    held.port.later(REST, resolve);
  });
}

/** Goes the way of a gesture once without telling, so that the first that counts finds everything ready to run. */
export async function warmUp(held: Held, { text, name }: AskOf<"warm">): Promise<void> {
  if (held.busy || held.planned) return;
  await readyAgain(text, name, held.keeps).catch(() => {});
}

/** Plans other texts one by one. */
export async function tryAll(held: Held, { id, texts }: AskOf<"try">): Promise<void> {
  for (const { key, text } of texts) {
    await held.port.pause();
    if (held.tries !== id) return;
    const around = beside(held, () => held.tries !== id);
    const amounts = await tryText(text, "", around).catch(() => null);
    if (held.tries === id) held.port.post({ kind: "tried", id, key, amounts });
  }
  held.port.post({ kind: "triedAll", id });
}

/** Works out the mat; one that nobody waits for any more is given up between two searches. */
export async function layMat(held: Held, { id, work, otherwise }: AskOf<"mat">): Promise<void> {
  if (held.last === null) return;
  const { plan, text, name } = held.last;
  const at = held.newest;
  const overtaken = () => held.mats !== id || held.newest !== at;
  const around = sharing(held, overtaken);
  await guarded(held, id, async () => {
    await held.port.pause();
    if (overtaken()) return;
    const quilt = { text, name };
    const lay = (done: string) =>
      unless(Overtaken, () => matOf({ quilt, work: done, plan }, solveKeeping(around)));
    let laid = await lay(work);
    if (laid !== null && laid.mat.problems.length > 0 && otherwise !== undefined) laid = await lay(otherwise);
    if (laid !== null && !overtaken()) held.port.post({ kind: "mat", id, mat: laid.mat });
  });
}

/** Draws what is looked at of the plan last told; the pattern's further sizes are planned first. */
export async function showLast(held: Held, { id, what, photos }: AskOf<"show">): Promise<void> {
  if (held.last === null) return;
  const { plan, text, name } = held.last;
  const at = held.newest;
  const overtaken = () => held.shows !== id || held.newest !== at;
  const solve = solveKeeping(sharing(held, overtaken));
  await guarded(held, id, async () => {
    const pattern =
      what === "book" ? await unless(Overtaken, () => patternFor(text, name, plan, solve)) : null;
    if (!overtaken()) held.port.post({ kind: "shown", id, shown: show(plan, what, pattern, photos) });
  });
}

/** Tells every change that buys less as it is found. */
export async function save(held: Held, { id, text }: AskOf<"save">): Promise<void> {
  const { port } = held;
  const around = beside(held, () => held.tries !== id);
  const planned = (of: string) => tryText(of, "", around).catch(() => null);
  const now = await planned(text);
  const families = ideasFor(text);
  const of = families.reduce((sum, family) => sum + family.length, 0);
  let done = 0;
  if (now !== null)
    await tryIdeas(now.fabrics, families, async (idea) => {
      await port.pause();
      if (held.tries !== id) return "stop";
      done += 1;
      port.post({ kind: "trying", id, done, of });
      const amounts = await planned(idea.text);
      if (held.tries !== id) return "stop";
      if (amounts === null) return null;
      const change = difference(now.fabrics, amounts.fabrics);
      if (saves(change)) port.post({ kind: "saves", id, saving: { ...idea, amounts, difference: change } });
      return amounts.fabrics;
    });
  if (held.tries === id) port.post({ kind: "triedAll", id });
}

/** Sets ways of making, or turnings, beside one another. */
export async function choose(held: Held, { id, what, text }: AskOf<"choose">): Promise<void> {
  const overtaken = () => held.tries !== id;
  const told = (done: number, of: number) => {
    if (!overtaken()) held.port.post({ kind: "choosing", id, done, of });
  };
  await guarded(held, id, async () => {
    const solve = solveKeeping(beside(held, overtaken));
    const chosen = await unless(Overtaken, () =>
      what === "ways" ? chooseWays(text, solve, told) : chooseTurnings(text, solve, told),
    );
    if (chosen !== null && !overtaken()) held.port.post({ kind: "chosen", id, chosen });
  });
}

/** Plans with the drawer used first. */
export async function cover(held: Held, { id, text, drawer }: AskOf<"cover">): Promise<void> {
  const solve = solveKeeping(beside(held, () => held.tries !== id));
  await guarded(held, id, async () => {
    const found = await unless(Overtaken, () => covered(text, drawer, solve));
    if (held.tries === id) held.port.post({ kind: "covered", id, covered: found });
  });
}

/** Plans the kits of a class, cut together, and writes their papers. */
export async function kits(held: Held, { id, text, name }: AskOf<"kits">): Promise<void> {
  const solve = solveKeeping(beside(held, () => held.tries !== id));
  await guarded(held, id, async () => {
    const made = await unless(Overtaken, () => kitsFor(text, name, solve));
    if (made !== null && held.tries === id) held.port.post({ kind: "kits", id, made });
  });
}
