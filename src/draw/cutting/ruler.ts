import { TICKS_PER } from "../../length/measures.ts";
import { lastOf } from "../../length/nth.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { textWidth } from "../scene/metrics.ts";
import { QUIET_INK } from "../scene/palette.ts";
import { line, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";

/** Steps a ruler's figures may go up by, in its own measure, and how many ticks stand in each step. */
const STEPS = {
  in: [
    [1, 4],
    [2, 2],
    [5, 5],
    [10, 10],
    [20, 4],
    [50, 5],
    [100, 10],
  ],
  cm: [
    [1, 2],
    [2, 2],
    [5, 5],
    [10, 10],
    [20, 4],
    [50, 5],
    [100, 10],
    [200, 4],
  ],
  mm: [
    [10, 2],
    [20, 2],
    [50, 5],
    [100, 10],
    [200, 4],
    [500, 5],
    [1000, 10],
    [2000, 4],
  ],
} as const;

/** Page units: 6 pt where a drawing is set among words. */
const SIZE = 8.3;

export interface RulerScale {
  /** Figures stand this far apart. */
  figure: Ticks;
  /** Marks stand this far apart. */
  mark: Ticks;
  measure: Ticks;
}

/** The finest figures that have room: `perTick` page units to the tick, figures `apart` units apart or more. */
export function rulerScale(ruler: Ruler, perTick: number, apart: number, longest: Ticks): RulerScale {
  const measure = TICKS_PER[ruler.unit];
  const room = Math.max(apart, textWidth(String(Math.round(longest / measure)), SIZE) + 8);
  const steps: readonly (readonly [number, number])[] = STEPS[ruler.unit];
  const [step, parts] = steps.find(([step]) => step * measure * perTick >= room) ?? lastOf(steps);
  return { figure: step * measure, mark: (step * measure) / parts, measure };
}

/** Where a ruler's zero lies in the plan, how far it runs there, and where it stands on the page. */
export interface RulerRun {
  zero: Ticks;
  from: Ticks;
  to: Ticks;
  perTick: number;
  /** Page place of `from`. */
  start: number;
  /** Page place of the cloth's edge, from which the marks grow outwards. */
  edge: number;
}

function marks(run: RulerRun, scale: RulerScale): { at: number; figure: string | null }[] {
  const first = Math.ceil((run.from - run.zero) / scale.mark) * scale.mark + run.zero;
  const found: { at: number; figure: string | null }[] = [];
  for (let tick = first; tick <= run.to; tick += scale.mark) {
    const value = tick - run.zero;
    const figure = value >= 0 && value % scale.figure === 0 ? String(value / scale.measure) : null;
    found.push({ at: run.start + (tick - run.from) * run.perTick, figure });
  }
  return found;
}

const STROKE = { stroke: QUIET_INK, strokeWidth: 0.7 };

/** A ruler along the top edge: marks stand on `edge` and grow upwards. */
export function rulerAcross(run: RulerRun, scale: RulerScale): SceneNode[] {
  return marks(run, scale).flatMap(({ at, figure }): SceneNode[] => {
    const mark = line(at, run.edge, at, run.edge - (figure === null ? 3 : 5), STROKE);
    if (figure === null) return [mark];
    const width = textWidth(figure, SIZE) + 1;
    const frame = { x: at - width / 2, y: run.edge - 15, width, height: 9 };
    return [mark, textIn(figure, frame, { size: SIZE, fill: QUIET_INK, anchor: "middle" })];
  });
}

/** A ruler down the left edge; figures nearer than `clear` to an end of the run are left out. */
export function rulerAlong(run: RulerRun, scale: RulerScale, clear: number): SceneNode[] {
  const end = run.start + (run.to - run.from) * run.perTick;
  return marks(run, scale).flatMap(({ at, figure }): SceneNode[] => {
    const mark = line(run.edge, at, run.edge - (figure === null ? 3 : 5), at, STROKE);
    if (figure === null || at < run.start + clear || at > end - clear) return [mark];
    const width = textWidth(figure, SIZE) + 1;
    const frame = { x: run.edge - 7 - width, y: at - 5, width, height: 10 };
    return [mark, textIn(figure, frame, { size: SIZE, fill: QUIET_INK, anchor: "end" })];
  });
}
