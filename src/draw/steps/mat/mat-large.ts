import type { BatchRecord, StepRecord, UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Words } from "../../../words/index.ts";
import { type ClothLayer, type Figure, figure, movedBy, opened, reversed, turnedBy } from "../cloth-layer.ts";
import { beside, boundsOf, type Line, lineThrough } from "../geometry.ts";
import type { Made, PanelDraft } from "../panel.ts";
import { chord, chords, laidOf, pieceLayer, pressedAcross } from "./mat.ts";

type SmallOnLarge = Extract<StepRecord, { do: "small-on-large" }>;

/** Hearts after the first round, in the frame of the large square: the upper right one, the lower left one. */
export type Hearts = readonly [ClothLayer[], ClothLayer[]];

function smallAt(step: SmallOnLarge, batch: BatchRecord, list: number, side: number): ClothLayer {
  const small = pieceLayer(laidOf(batch, step.small, list), "wrong");
  const own = boundsOf(small.corners).right;
  const far = side - own;
  // 0 lower right, 1 upper right, 2 upper left, 3 lower left.
  return movedBy(small, list < 2 ? far : 0, list === 0 || list === 3 ? far : 0);
}

/** Both sides of a line sewn and cut, each opened. */
function sides(below: readonly ClothLayer[], above: readonly ClothLayer[], line: Line, seam: number) {
  return [line, reversed(line)].map((cut) => {
    const sewing = beside(cut, seam);
    return { layers: opened(below, above, sewing), sewing };
  });
}

function pressedFigure(
  { layers, sewing }: ReturnType<typeof sides>[number],
  above: readonly ClothLayer[],
  step: SmallOnLarge,
  roles: { below: string; out: string },
  sign: Figure["sign"],
): Figure {
  const pressed = above
    .flatMap((layer) => chords([layer.corners], sewing))
    .flatMap((on) => pressedAcross(sewing, on, step, roles));
  return figure(layers, { pressed, sign });
}

/** Two small squares on opposite corners of the large one, sewn and cut: two hearts. */
export function sewHearts(
  step: SmallOnLarge,
  batch: BatchRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; hearts: Hearts } {
  const large = pieceLayer(laidOf(batch, step.large), "right");
  const side = boundsOf(large.corners).right;
  const smalls = [2, 0].map((list) => smallAt(step, batch, list, side));
  const line = lineThrough([0, 0], [side, side]);
  const on = smalls.map(({ corners }) => corners);
  const ruled = chords(on, line);
  const sewn = [beside(line, seam), beside(line, -seam)].flatMap((each) => chords([large.corners], each));
  // The lower left half is on the right-hand side of the line.
  const [lower, upper] = sides([large], smalls, line, seam);
  if (lower === undefined || upper === undefined) throw new Error("A line has two sides");
  const roles = { below: large.role, out: smalls[0]?.role ?? "" };
  return {
    panels: [
      { says: words.drawings.steps.laySmall, figures: [figure([large, ...smalls], { ruled })] },
      {
        says: words.drawings.steps.sewBothCut,
        figures: [figure([large, ...smalls], { sewn, cuts: chords([large.corners], line), lettered: false })],
      },
      {
        says: words.drawings.steps.hearts,
        figures: [
          pressedFigure(upper, smalls, step, roles, ""),
          pressedFigure(lower, smalls, step, roles, "and"),
        ],
      },
    ],
    hearts: [upper.layers, lower.layers],
  };
}

/** Turned so that the base is below, the point where the raw unit has it: a seam allowance below its upper edge. */
function standing(
  layers: readonly ClothLayer[],
  turn: number,
  goose: string,
  unit: UnitRecord,
  seam: number,
): Made {
  const turned = layers.map((layer) => turnedBy(layer, turn));
  const point = turned
    .filter(({ role }) => role === goose)
    .flatMap(({ corners }) => corners)
    .reduce((best, corner) => (corner[1] < best[1] ? corner : best));
  return { layers: turned.map((layer) => movedBy(layer, unit.raw.across / 2 - point[0], seam - point[1])) };
}

/** A third small square on the bare corner of each heart, sewn and cut: four geese. */
export function sewGeese(
  step: SmallOnLarge,
  batch: BatchRecord,
  hearts: Hearts,
  { unit, seam }: { unit: UnitRecord; seam: number },
  words: Words,
): { panels: PanelDraft[]; made: Made[] } {
  const large = laidOf(batch, step.large);
  const side = large.across;
  const line = lineThrough([0, side], [side, 0]);
  const pairs = hearts.map((heart, i) => {
    const small = smallAt(step, batch, i === 0 ? 1 : 3, side);
    return { heart, small, cut: sides(heart, [small], line, seam) };
  });
  const roles = { below: large.role, out: pairs[0]?.small.role ?? "" };
  const laid = (sewn: boolean) =>
    pairs.map(({ heart, small }, i): Figure => {
      const ruled = chord(small.corners, line);
      const whole = heart[0] === undefined ? [] : [heart[0].corners];
      return figure([...heart, small], {
        ruled: ruled === null || sewn ? [] : [ruled],
        sewn: sewn
          ? [beside(line, seam), beside(line, -seam)].flatMap((each) => chords([small.corners], each))
          : [],
        cuts: sewn ? chords([...whole], line) : [],
        lettered: !sewn,
        sign: i === 0 ? "" : "and",
      });
    });
  const at = (pair: number, which: number): ClothLayer[] => pairs[pair]?.cut[which]?.layers ?? [];
  // On the right-hand side of the rising line lies the goose with its base at the right (or below).
  const raws = [
    { layers: at(1, 0), turn: 0 },
    { layers: at(0, 0), turn: 2 },
    { layers: at(0, 1), turn: 4 },
    { layers: at(1, 1), turn: 6 },
  ];
  const geese = pairs.flatMap(({ cut, small }) => cut.map((each) => ({ each, small })));
  return {
    panels: [
      { says: words.drawings.steps.layThird, figures: laid(false) },
      { says: words.drawings.steps.sewBothCut, figures: laid(true) },
      {
        says: words.drawings.steps.press,
        figures: geese.map(({ each, small }, i) =>
          pressedFigure(each, [small], step, roles, i === 0 ? "" : "and"),
        ),
      },
    ],
    made: raws.map(({ layers, turn }) => standing(layers, turn, large.role, unit, seam)),
  };
}
