import type { MatLay, MatPart, MatStrip } from "../../planner/mat-parts.ts";

/** Letters smaller than this, in points of the screen, are not read at arm's length. */
export const LEAST_READ = 9;

interface Pill {
  wide: number;
  high: number;
}

interface Place {
  x: number;
  y: number;
}

const middleOf = ({ x, y, across, along }: MatPart, { wide, high }: Pill): Place => ({
  x: x + (across - wide) / 2,
  y: y + (along - high) / 2,
});

/**
 * Where the number of a strip stands so that it lies on no letter: beside the cloth where the strip reaches its edge, at the
 * end of a lengthwise strip that has room, else on what is no piece. All in millimetres of the cloth.
 * @param gap what lies between the cloth and a number beside it
 */
export function numberPlace(strip: MatStrip, lay: Pick<MatLay, "across">, pill: Pill, gap: number): Place {
  const { wide, high } = pill;
  const level = strip.y + (strip.along - high) / 2;
  if (!strip.lengthwise && strip.x + strip.across > lay.across - 1) return { x: lay.across + gap, y: level };
  if (strip.lengthwise) {
    const x = strip.x + (strip.across - wide) / 2;
    const top = { x, y: strip.y + high * 0.3 };
    const foot = { x, y: strip.y + strip.along - high * 1.3 };
    return roomAt(strip, top, pill) ? top : roomAt(strip, foot, pill) ? foot : top;
  }
  const spare = strip.parts.find(
    ({ bag, says, across, along }) => bag === null && says === "" && across >= wide && along >= high * 0.9,
  );
  return spare === undefined ? { x: strip.x + 4, y: strip.y + 4 } : middleOf(spare, pill);
}

/** Whether no letter of a piece stands under a number: letters stand in the middle of their pieces. */
function roomAt(strip: MatStrip, at: Place, { high }: Pill): boolean {
  return strip.parts.every(({ bag, y, along }) => {
    const middle = y + along / 2;
    return bag === null || middle + high < at.y || middle - high > at.y + high;
  });
}

/**
 * Which lengths are written below a strip: from its end, as many as do not touch; the last always.
 * @param ends where pieces end, rising
 * @param wide room that a length takes
 */
export function measuresWithRoom(ends: readonly number[], wide: number): number[] {
  const last = ends.at(-1);
  if (last === undefined) return [];
  const told: number[] = [];
  for (const end of ends.slice(0, -1))
    if (last - end >= wide && end - (told.at(-1) ?? Number.NEGATIVE_INFINITY) >= wide) told.push(end);
  return [...told, last];
}
