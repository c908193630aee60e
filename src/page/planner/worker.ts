import type { Plan } from "../../planning.ts";
import { difference, ideasFor, saves, tryIdeas } from "../../savings/index.ts";
import { speakFor } from "../words/index.ts";
import { chooseTurnings, chooseWays } from "./choosing.ts";
import { covered } from "./cover.ts";
import { keepsOf } from "./keeps.ts";
import { kitsFor } from "./kits.ts";
import { matOf } from "./mat.ts";
import type { Answer, Ask, ChooseWhat, ShowWhat } from "./messages.ts";
import { patternFor } from "./pattern.ts";
import type { SeenPhoto } from "./pictured.ts";
import { Overtaken, planText, solveKeeping, tryText, unless } from "./plan-text.ts";
import { show } from "./show.ts";

/** The part of a worker's world that is used; handed in, so that the loop runs in a test too. */
export interface Port {
  post(answer: Answer): void;
  /** Lets waiting messages in. */
  pause(): Promise<void>;
  /** Gives the solver's compiled module to whoever loads it. */
  useSolver(module: WebAssembly.Module): void;
}

/** Characters of jobs and results held by one worker. */
export const MOST_KEPT = 30_000_000;

/** The worker's side: takes asks one after another, the newest `plan` before all older ones. */
export function workerLoop(port: Port): (ask: Ask) => void {
  const keeps = keepsOf(MOST_KEPT);
  let newest = 0;
  let tries = 0;
  let waiting: Extract<Ask, { kind: "plan" }> | null = null;
  let busy = false;
  let last: { plan: Plan; text: string; name: string } | null = null;
  let mats = 0;
  let shows = 0;

  const run = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    while (waiting !== null) {
      const { id, text, name } = waiting;
      waiting = null;
      port.post({ kind: "taken", id });
      const around = {
        keeps,
        overtaken: () => newest !== id,
        pause: port.pause,
        tell(answer: Answer) {
          if (answer.kind === "kept" || newest === id) port.post(answer);
        },
      };
      try {
        const plan = await planText(id, text, name, around);
        if (newest === id) last = plan === null ? null : { plan, text, name };
      } catch (error) {
        port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
      }
    }
    busy = false;
  };

  const tryAll = async (id: number, texts: readonly { key: string; text: string }[]): Promise<void> => {
    for (const { key, text } of texts) {
      await port.pause();
      if (tries !== id) return;
      const around = { keeps, overtaken: () => tries !== id, pause: port.pause, tell: () => {} };
      const amounts = await tryText(text, "", around).catch(() => null);
      if (tries === id) port.post({ kind: "tried", id, key, amounts });
    }
    port.post({ kind: "triedAll", id });
  };

  /** Works out the mat; one that nobody waits for any more is given up between two searches. */
  const layMat = async (id: number, work: string, otherwise: string | undefined): Promise<void> => {
    if (last === null) return;
    const { plan, text, name } = last;
    const at = newest;
    const overtaken = () => mats !== id || newest !== at;
    const tell = (answer: Answer) => void (answer.kind === "kept" && port.post(answer));
    const around = { keeps, overtaken, pause: port.pause, tell };
    try {
      await port.pause();
      if (overtaken()) return;
      const quilt = { text, name };
      const lay = (said: string) =>
        unless(Overtaken, () => matOf({ quilt, work: said, plan }, solveKeeping(around)));
      let laid = await lay(work);
      if (laid !== null && laid.mat.problems.length > 0 && otherwise !== undefined)
        laid = await lay(otherwise);
      if (laid !== null && !overtaken()) port.post({ kind: "mat", id, mat: laid.mat });
    } catch (error) {
      port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
    }
  };

  /** Draws what is looked at of the plan last told; the pattern's further sizes are planned first. */
  const showLast = async (id: number, what: ShowWhat, photos: readonly SeenPhoto[]): Promise<void> => {
    if (last === null) return;
    const { plan, text, name } = last;
    const at = newest;
    const overtaken = () => shows !== id || newest !== at;
    const tell = (answer: Answer) => void (answer.kind === "kept" && port.post(answer));
    const solve = solveKeeping({ keeps, overtaken, pause: port.pause, tell });
    try {
      const pattern =
        what === "book" ? await unless(Overtaken, () => patternFor(text, name, plan, solve)) : null;
      if (!overtaken()) port.post({ kind: "shown", id, shown: show(plan, what, pattern, photos) });
    } catch (error) {
      port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
    }
  };

  /** Tells every change that buys less as it is found. */
  const save = async (id: number, text: string): Promise<void> => {
    const around = { keeps, overtaken: () => tries !== id, pause: port.pause, tell: () => {} };
    const planned = (of: string) => tryText(of, "", around).catch(() => null);
    const now = await planned(text);
    const families = ideasFor(text);
    const of = families.reduce((sum, family) => sum + family.length, 0);
    let done = 0;
    if (now !== null)
      await tryIdeas(now.fabrics, families, async (idea) => {
        await port.pause();
        if (tries !== id) return "stop";
        done += 1;
        port.post({ kind: "trying", id, done, of });
        const amounts = await planned(idea.text);
        if (tries !== id) return "stop";
        if (amounts === null) return null;
        const change = difference(now.fabrics, amounts.fabrics);
        if (saves(change)) port.post({ kind: "saves", id, saving: { ...idea, amounts, difference: change } });
        return amounts.fabrics;
      });
    if (tries === id) port.post({ kind: "triedAll", id });
  };

  /** Sets ways of making, or turnings, beside one another. */
  const choose = async (id: number, what: ChooseWhat, text: string): Promise<void> => {
    const overtaken = () => tries !== id;
    const around = { keeps, overtaken, pause: port.pause, tell: () => {} };
    const told = (done: number, of: number) => {
      if (!overtaken()) port.post({ kind: "choosing", id, done, of });
    };
    try {
      const solve = solveKeeping(around);
      const chosen = await unless(Overtaken, () =>
        what === "ways" ? chooseWays(text, solve, told) : chooseTurnings(text, solve, told),
      );
      if (chosen !== null && !overtaken()) port.post({ kind: "chosen", id, chosen });
    } catch (error) {
      port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
    }
  };

  /** Plans with the drawer used first. */
  const cover = async (id: number, text: string, drawer: string): Promise<void> => {
    const around = { keeps, overtaken: () => tries !== id, pause: port.pause, tell: () => {} };
    try {
      const found = await unless(Overtaken, () => covered(text, drawer, solveKeeping(around)));
      if (tries === id) port.post({ kind: "covered", id, covered: found });
    } catch (error) {
      port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
    }
  };

  /** Plans the kits of a class, cut together, and writes their papers. */
  const kits = async (id: number, text: string, name: string): Promise<void> => {
    const around = { keeps, overtaken: () => tries !== id, pause: port.pause, tell: () => {} };
    try {
      const made = await unless(Overtaken, () => kitsFor(text, name, solveKeeping(around)));
      if (made !== null && tries === id) port.post({ kind: "kits", id, made });
    } catch (error) {
      port.post({ kind: "broken", id, message: String((error as Error)?.message ?? error).slice(0, 500) });
    }
  };

  return (ask) => {
    if ("text" in ask) speakFor(ask.text);
    switch (ask.kind) {
      case "start":
        if (ask.solver !== null) port.useSolver(ask.solver);
        keeps.keep(ask.keeps);
        port.post({ kind: "ready" });
        return;
      case "keep":
        keeps.keep(ask.entries);
        return;
      case "plan":
        newest = ask.id;
        waiting = ask;
        void run();
        return;
      case "show":
        shows = ask.id;
        void showLast(ask.id, ask.what, ask.photos);
        return;
      case "mat":
        mats = ask.id;
        void layMat(ask.id, ask.work, ask.otherwise);
        return;
      case "try":
        tries = ask.id;
        void tryAll(ask.id, ask.texts);
        return;
      case "cover":
        tries = ask.id;
        void cover(ask.id, ask.text, ask.drawer);
        return;
      case "kits":
        tries = ask.id;
        void kits(ask.id, ask.text, ask.name);
        return;
      case "choose":
        tries = ask.id;
        void choose(ask.id, ask.what, ask.text);
        return;
      case "save":
        tries = ask.id;
        void save(ask.id, ask.text);
        return;
    }
  };
}
