import type { UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Words } from "../../../words/index.ts";
import type { Corner } from "../../quilt/patches.ts";
import { type Figure, figure, movedBy, type Segment } from "../cloth-layer.ts";
import { columnsOf, type Join, type JoinWork } from "../join-work.ts";
import type { Made } from "../panel.ts";
import { pressWays } from "../press-ways.ts";
import { middleOf } from "./mat.ts";
import { isTurned, segmentOf, setNamed } from "./mat-strips.ts";

/** Segments side by side, as the joins name them: the picture, and the unit they make. */
export function segmentUnit(
  unit: UnitRecord,
  heapIndex: number,
  work: JoinWork,
  step: Join,
  words: Words,
): { made: Made; figures: Figure[] } {
  const columns = columnsOf([...work.patches.values()]);
  const own = step.parts.map((name, i) => {
    const set = setNamed(unit, heapIndex, name);
    if (set === null) throw new Error(`No strip set makes the segment ${name}`);
    const turned = isTurned(set, columns[i]?.map(({ role }) => role) ?? []);
    return { name, set, turned, layers: segmentOf(set, turned, work.seam) };
  });
  let raw = 0;
  const seams: Segment[] = [];
  const placedAt = own.map(({ set, layers }, i) => {
    const at = raw;
    raw += set.segment - 2 * work.seam;
    const from = at + (i === 0 ? 0 : work.seam);
    const to = at + set.segment - (i === own.length - 1 ? 0 : work.seam);
    if (i > 0)
      seams.push([
        [from, 0],
        [from, set.height],
      ]);
    return layers.map((layer) => ({
      ...layer,
      corners: layer.corners.map(([x, y]): Corner => [Math.min(Math.max(x + at, from), to), y]),
    }));
  });
  const gap = own[0] === undefined ? 0 : own[0].set.segment * 0.35;
  const apart = own.map(({ layers, set, turned, name }, i) => ({
    layers: layers.map((layer) => movedBy(layer, i * (set.segment + gap), 0)),
    says: turned ? `${name} ${words.drawings.steps.turned}` : name,
  }));
  const ways = pressWays(step, step.parts);
  const pressed = seams.flatMap((seam, i) =>
    (ways[i] ?? []).map((sign): { at: Corner; to: Corner } => ({ at: middleOf(seam), to: [sign, 0] })),
  );
  return {
    made: { layers: placedAt.flat() },
    figures: [
      figure(
        apart.flatMap(({ layers }) => layers),
        { says: apart.map(({ says }) => says).join(" + ") },
      ),
      figure(placedAt.flat(), { sewn: seams, pressed, sign: "then", lettered: false }),
    ],
  };
}
