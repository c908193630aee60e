import type { BatchRecord, StepRecord, UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Words } from "../../../words/index.ts";
import type { Corner } from "../../quilt/patches.ts";
import {
  type ClothLayer,
  cutBy,
  type Figure,
  figure,
  foldedOver,
  movedBy,
  opened,
  reversed,
  type Segment,
  turnedBy,
} from "../cloth-layer.ts";
import { beside, boundsOf, type Line, lineThrough } from "../geometry.ts";
import type { Made, PanelDraft } from "../panel.ts";
import { centred, chord, chords, laidOf, middleOf, pieceLayer, pressedAcross } from "./mat.ts";

type Pair = Extract<StepRecord, { do: "pair" }>;
type CrossPair = Extract<StepRecord, { do: "cross-pair" }>;

/** The upper layer lies a little off the lower one in a picture, so that both are seen. */
const OFF = 0.035;

/** A pair as it lies: the piece below right side up, the one above face down. */
interface Laid {
  under: ClothLayer;
  over: ClothLayer;
  across: number;
  along: number;
}

function laidPair(step: Pair, batch: BatchRecord): Laid {
  const [under, over] = [laidOf(batch, step.under), laidOf(batch, step.over)];
  return {
    under: pieceLayer(under, "right"),
    over: pieceLayer(over, "wrong"),
    across: under.across,
    along: under.along,
  };
}

/** Both layers with the lower one peeping out. */
function stacked(under: readonly ClothLayer[], over: readonly ClothLayer[], size: number): ClothLayer[] {
  return [...under.map((layer) => movedBy(layer, -OFF * size, OFF * size)), ...over];
}

function diagonals({ across: w, along: h }: Laid): { rising: Line; falling: Line } {
  return { rising: lineThrough([0, h], [w, 0]), falling: lineThrough([0, 0], [w, h]) };
}

/** A half cut off along a line and opened over its seam, with what is told of it. */
interface Half {
  layers: ClothLayer[];
  /** Both layers still face to face. */
  closed: ClothLayer[];
  seam: Line;
  sewn: Segment | null;
}

/** The half on the right-hand side of a cut. */
function half(under: readonly ClothLayer[], over: readonly ClothLayer[], cut: Line, seam: number): Half {
  const sewing = beside(cut, seam);
  const keep = (layers: readonly ClothLayer[]) => layers.flatMap((layer) => cutBy(layer, cut));
  const below = keep(under);
  return {
    layers: opened(under, over, sewing),
    closed: [...below, ...keep(over)],
    seam: sewing,
    sewn: below[0] === undefined ? null : chord(below[0].corners, sewing),
  };
}

function openedFigure(
  halves: readonly Half[],
  step: Pair | CrossPair,
  roles: { below: string; out: string },
): Figure[] {
  return halves.map((each, i) => {
    const outlines = each.layers.map(({ corners }) => corners);
    const on = chords(outlines, each.seam)[0];
    return figure(each.layers, {
      pressed: on === undefined ? [] : pressedAcross(each.seam, on, step, roles),
      sign: i === 0 ? "then" : "and",
    });
  });
}

/** Cut halves side by side as they come apart, each moved away from the cut. */
function apart(halves: readonly Half[], gap: number): Figure {
  const moved = halves.map(({ closed, seam, sewn }) => {
    const [dx, dy] = [-seam.run[1] * gap, seam.run[0] * gap];
    const shift = ([x, y]: Corner): Corner => [x + dx, y + dy];
    return {
      layers: closed.map((layer) => movedBy(layer, dx, dy)),
      sewn: sewn === null ? [] : [[shift(sewn[0]), shift(sewn[1])] as const],
    };
  });
  return figure(
    moved.flatMap(({ layers }) => layers),
    { sewn: moved.flatMap(({ sewn }) => sewn), lettered: false },
  );
}

function upright(layers: readonly ClothLayer[], turn: number, raw: UnitRecord["raw"]): Made {
  return { layers: centred(turn === 0 ? layers : layers.map((layer) => turnedBy(layer, turn)), raw) };
}

/** Two units: the line drawn, sewn on both sides, cut on it. */
function one(
  step: Pair,
  laid: Laid,
  unit: UnitRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[]; loose: ClothLayer[][] } {
  const { under, over, across, along } = laid;
  const line = diagonals(laid)[step.line];
  // Unit 0 keeps the upper half of what lies below: on the left of a line walked from left to right.
  const halves = [reversed(line), line].map((cut) => half([under], [over], cut, seam));
  const ruled = chord(over.corners, line);
  const lines = ruled === null ? [] : [ruled];
  const sewn = [beside(line, seam), beside(line, -seam)]
    .map((each) => chord(over.corners, each))
    .filter((each) => each !== null);
  const size = Math.max(across, along);
  const roles = { below: under.role, out: over.role };
  return {
    panels: [
      {
        says: words.drawings.steps.layRule,
        figures: [figure([over], { ruled: lines }), figure([under], { sign: "onto" })],
      },
      {
        says: words.drawings.steps.sewBoth,
        figures: [figure(stacked([under], [over], size), { ruled: lines, sewn })],
      },
      {
        says: words.drawings.steps.cutPress,
        figures: [apart(halves, size * 0.07), ...openedFigure(halves, step, roles)],
      },
    ],
    made: halves.map(({ layers }, i) => upright(layers, 4 * i, unit.raw)),
    loose: halves.map(({ layers }) => layers),
  };
}

/** Eight units: both diagonals drawn and sewn beside, the square quartered, every quarter cut on its diagonal. */
function both(
  step: Pair,
  laid: Laid,
  unit: UnitRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[] } {
  const { under, over, across: w, along: h } = laid;
  const { rising, falling } = diagonals(laid);
  const [upright_, level] = [lineThrough([w / 2, h], [w / 2, 0]), lineThrough([0, h / 2], [w, h / 2])];
  const quarter = (layer: ClothLayer, right: boolean, below: boolean): ClothLayer[] =>
    cutBy(layer, right ? upright_ : reversed(upright_)).flatMap((each) =>
      cutBy(each, below ? level : reversed(level)),
    );
  // Rising quarters first, as the recipe counts them: upper right, upper left, lower left, lower right.
  const quarters = [
    { right: true, below: false, line: rising, turns: [0, 4] },
    { right: false, below: false, line: reversed(falling), turns: [6, 2] },
    { right: false, below: true, line: rising, turns: [0, 4] },
    { right: true, below: true, line: reversed(falling), turns: [6, 2] },
  ];
  const halves = quarters.flatMap(({ right, below, line, turns }) => {
    const [a, b] = [quarter(under, right, below), quarter(over, right, below)];
    // A falling line walked upwards has the upper right half on its right-hand side.
    const cuts = line === rising ? [reversed(line), line] : [line, reversed(line)];
    return cuts.map((cut, i) => ({ ...half(a, b, cut, seam), turn: turns[i] ?? 0 }));
  });
  const lines = chords([over.corners], rising).concat(chords([over.corners], falling));
  const sewn = [rising, falling]
    .flatMap((line) => [beside(line, seam), beside(line, -seam)])
    .flatMap((line) => chords([over.corners], line));
  const crosswise = chords([over.corners], upright_).concat(chords([over.corners], level));
  const stack = stacked([under], [over], w);
  const roles = { below: under.role, out: over.role };
  return {
    panels: [
      {
        says: words.drawings.steps.layRuleBoth,
        figures: [figure([over], { ruled: lines }), figure([under], { sign: "onto" })],
      },
      { says: words.drawings.steps.sewBothEach, figures: [figure(stack, { ruled: lines, sewn })] },
      {
        says: words.drawings.steps.cutQuarters,
        figures: [figure(stack, { sewn, cuts: [...crosswise, ...lines], lettered: false })],
      },
      {
        says: words.drawings.steps.press,
        figures: openedFigure(halves.slice(0, 2), step, roles).map((each, i) => ({
          ...each,
          sign: i === 0 ? "" : "and",
        })),
      },
    ],
    made: halves.map(({ layers, turn }) => upright(layers, turn, unit.raw)),
  };
}

/** Four units: sewn all round, cut on both diagonals, opened over the edges. */
function edges(
  step: Pair,
  laid: Laid,
  unit: UnitRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[] } {
  const { under, over, across: w, along: h } = laid;
  const { rising, falling } = diagonals(laid);
  const corners: Corner[] = [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ];
  // Top, right, bottom, left: what lies below is turned from where it comes to lie to the upper left.
  const turns = [3, 1, 7, 5];
  const halves = corners.map((from, i) => {
    const to = corners[(i + 1) % 4] ?? from;
    const middle: Corner = [w / 2, h / 2];
    const keep = (layer: ClothLayer): ClothLayer[] =>
      cutBy(layer, lineThrough(from, to))
        .flatMap((each) => cutBy(each, lineThrough(to, middle)))
        .flatMap((each) => cutBy(each, lineThrough(middle, from)));
    const sewing = beside(lineThrough(from, to), seam);
    const [a, b] = [keep(under), keep(over)];
    const sewn = a[0] === undefined ? null : chord(a[0].corners, sewing);
    return { layers: opened(a, b, sewing), closed: [...a, ...b], seam: sewing, sewn, turn: turns[i] ?? 0 };
  });
  const inner = corners.map((from, i) => beside(lineThrough(from, corners[(i + 1) % 4] ?? from), seam));
  const sewn = inner.flatMap((line) => chords([over.corners], line));
  const cuts = chords([over.corners], rising).concat(chords([over.corners], falling));
  const stack = stacked([under], [over], w);
  return {
    panels: [
      { says: words.drawings.steps.lay, figures: [figure([over]), figure([under], { sign: "onto" })] },
      { says: words.drawings.steps.sewRound, figures: [figure(stack, { sewn })] },
      { says: words.drawings.steps.cutDiagonals, figures: [figure(stack, { sewn, cuts, lettered: false })] },
      {
        says: words.drawings.steps.press,
        figures: openedFigure(halves, step, { below: under.role, out: over.role }).map((each, i) => ({
          ...each,
          sign: i === 0 ? "" : "and",
        })),
      },
    ],
    made: halves.map(({ layers, turn }) => upright(layers, turn, unit.raw)),
  };
}

/** A pair of pieces sewn before it is cut: its pictures, and the units that come off by their number in the set. */
export function sewPair(
  step: Pair,
  batch: BatchRecord,
  unit: UnitRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[]; loose: ClothLayer[][] } {
  const laid = laidPair(step, batch);
  if (step.lines === "one") return one(step, laid, unit, seam, words);
  const sewn =
    step.lines === "both" ? both(step, laid, unit, seam, words) : edges(step, laid, unit, seam, words);
  return { ...sewn, loose: [] };
}

/**
 * The two units of a pair on each other, unlike fabrics facing, the other diagonal sewn and cut.
 * @param pair both halves as they lay when they were cut apart, opened
 */
export function sewCrossPair(
  step: CrossPair,
  pair: readonly ClothLayer[][],
  unit: UnitRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[] } {
  const squared = pair.map((layers) => {
    const box = boundsOf(layers.flatMap(({ corners }) => corners));
    return {
      layers: layers.map((layer) => movedBy(layer, -box.x, -box.y)),
      side: box.right - box.x,
    };
  });
  const [first, second] = squared;
  if (first === undefined || second === undefined) throw new Error("A cross pair needs two units");
  const side = first.side;
  const line = lineThrough([0, 0], [side, side]);
  // Turned over about the line to be drawn, the second brings its other fabric onto each fabric of the first.
  const over = second.layers.map((layer) => foldedOver(layer, line)).reverse();
  const halves = [reversed(line), line].map((cut) => half(first.layers, over, cut, seam));
  const whole = [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ] as const;
  const ruled = chords([whole], line);
  const sewn = [beside(line, seam), beside(line, -seam)].flatMap((each) => chords([whole], each));
  return {
    panels: [
      {
        says: words.drawings.steps.layCross,
        figures: [figure(over, { ruled }), figure(first.layers, { sign: "onto" })],
      },
      {
        says: words.drawings.steps.sewBoth,
        figures: [figure(stacked(first.layers, over, side), { ruled, sewn, lettered: false })],
      },
      {
        says: words.drawings.steps.cutPress,
        figures: halves.map(({ layers, seam: sewing }, i) => {
          const on = chord(whole, sewing);
          // The middle of the seam is where four points meet: the arrow stands beside it.
          const beyond: Segment | null = on === null ? null : [on[0], middleOf(on)];
          return figure(layers, {
            pressed: beyond === null ? [] : pressedAcross(sewing, beyond, step, { below: "", out: "" }),
            sign: i === 0 ? "" : "and",
          });
        }),
      },
    ],
    made: halves.map(({ layers }, i) => upright(layers, 2 * i, unit.raw)),
  };
}
