import { borderDoesNotFit } from "../../diagnostics/quilts/quilt.ts";
import { equal, fromInteger } from "../../length/rational.ts";
import { compareSurd } from "../../length/surd.ts";
import type { BorderSpec, FabricWord } from "../../spec/quilt-types.ts";
import {
  addExact,
  exactOfRational,
  point,
  rationalOfExact,
  rectangle,
  sameExact,
  scaleExact,
  subExact,
  surdOfExact,
  ZERO_EXACT,
} from "../exact.ts";
import type { LaidBlock } from "../laid-types.ts";
import { straightMove } from "../layout/block-moves.ts";
import { type Builder, placeBlock } from "../layout/builder.ts";
import { fillingOf, lyingSize } from "../layout/plain-block.ts";
import { addStrip, cutLengthOf, type LaidStrip, onMarkAbove } from "../layout/strips.ts";
import { saySides } from "../say.ts";
import type { Exact, TopBorder } from "../types.ts";
import type { StripDemand } from "../work-types.ts";
import type { BorderWidths } from "./borders-fit.ts";
import { type Frame, mitred, type Piece, piecesOf, SIDE } from "./borders-frame.ts";
import { type BorderPlace, followIn, placePieced } from "./borders-pieced.ts";

/** How far borders reach out on each side altogether: where the centre begins. */
export function borderOffsets(widths: readonly BorderWidths[]): {
  x: Exact;
  y: Exact;
} {
  return {
    x: widths.reduce((sum, { side }) => addExact(sum, side), ZERO_EXACT),
    y: widths.reduce((sum, { end }) => addExact(sum, end), ZERO_EXACT),
  };
}

/** Sews the borders on from the inside out. */
export function placeBorders(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  centre: { x: Exact; y: Exact; across: Exact; down: Exact },
  widths: readonly BorderWidths[],
  strips: StripDemand[],
): TopBorder[] {
  let inner = centre;
  return builder.spec.borders.map((border, index): TopBorder => {
    const { side, end } = widths[index] ?? { side: ZERO_EXACT, end: ZERO_EXACT };
    const frame: Frame = { ...inner, side, end };
    placeBorder(builder, blocks, { border, index, frame }, strips);
    inner = {
      x: subExact(inner.x, side),
      y: subExact(inner.y, end),
      across: addExact(inner.across, scaleExact(side, 2)),
      down: addExact(inner.down, scaleExact(end, 2)),
    };
    const kind = border.row !== null ? "pieced" : border.corners;
    const named = {
      "sides-first": "butted-sides-first",
      "tops-first": "butted-tops-first",
    } as const;
    return {
      number: index + 1,
      name: border.name,
      kind: kind === "sides-first" || kind === "tops-first" ? named[kind] : kind,
      side,
      end,
      ...inner,
    };
  });
}

function placeBorder(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  at: BorderPlace,
  strips: StripDemand[],
): void {
  const { border, frame } = at;
  // Of no width: its fault has been told.
  if (sameExact(frame.side, ZERO_EXACT) || sameExact(frame.end, ZERO_EXACT)) return;
  if (border.corners === "mitred" && (border.row !== null || !sameExact(frame.side, frame.end))) {
    builder.diagnostics.push(borderDoesNotFit(border, { why: "mitre", border: border.name }));
    return;
  }
  for (const piece of piecesOf(frame, border.corners)) {
    if (border.row !== null) placePieced(builder, blocks, at, piece);
    else if (border.fabric !== null) placePlain(builder, at, border.fabric, piece, strips);
  }
  if (border.cornerstones !== null) placeCornerstones(builder, blocks, at);
}

function placePlain(
  builder: Builder,
  { border, index, frame }: BorderPlace,
  word: FabricWord,
  piece: Piece,
  strips: StripDemand[],
): void {
  const upright = piece.name === "left" || piece.name === "right";
  const isMitred = border.corners === "mitred";
  const inside = upright ? piece.down : piece.across;
  const width = upright ? frame.side : frame.end;
  addStrip(builder, strips, {
    purpose: { for: "border", border: border.name, pair: upright ? "sides" : "ends" },
    part: upright ? "sides" : "ends",
    word,
    colourway: "",
    outline: isMitred ? mitred(frame, piece.name) : rectangle(piece.x, piece.y, piece.across, piece.down),
    length: isMitred ? addExact(inside, scaleExact(width, 2)) : inside,
    width,
    // One that is to fit is trimmed to what the pieced one wants anyway: one width serves all round, from one run.
    ...(border.fit ? fitted(builder, border, frame, upright) : {}),
    upright,
    side: SIDE[piece.name],
    mitred: isMitred,
    extra: border.extra,
    cut: border.cut,
    join: border.join,
    place: "border",
    border: index,
    prints: border.prints,
    path: border.path,
    at: border.at,
  });
}

/** The width a fitted border is cut in, and how much longer the pair that is sewn across the other must be. */
function fitted(
  { spec }: Builder,
  border: BorderSpec,
  frame: Frame,
  upright: boolean,
): Pick<LaidStrip, "cutFor" | "longFor"> {
  const cutFor = wider(frame.side, frame.end);
  if (border.corners !== (upright ? "tops-first" : "sides-first")) return { cutFor };
  const cut = onMarkAbove(cutLengthOf(surdOfExact(cutFor), fromInteger(spec.seam), false), spec).ticks;
  const both = fromInteger(2 * (cut - 2 * spec.seam));
  return { cutFor, longFor: addExact(upright ? frame.down : frame.across, exactOfRational(both)) };
}

function wider(a: Exact, b: Exact): Exact {
  return compareSurd(surdOfExact(a), surdOfExact(b)) < 0 ? b : a;
}

function placeCornerstones(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  { border, index, frame }: BorderPlace,
): void {
  const of = border.cornerstones;
  if (of === null) return;
  if (frame.side.r !== 0 || frame.end.r !== 0) {
    builder.diagnostics.push(borderDoesNotFit(border, { why: "corners-no-square", border: border.name }));
    return;
  }
  const [across, down] = [rationalOfExact(frame.side), rationalOfExact(frame.end)];
  const [left, top] = [subExact(frame.x, frame.side), subExact(frame.y, frame.end)];
  const [right, bottom] = [addExact(frame.x, frame.across), addExact(frame.y, frame.down)];
  // A pieced corner turns with its place, so that its top left always lies at the outer corner.
  const places = [
    { x: left, y: top, turn: 0 },
    { x: right, y: top, turn: 90 },
    { x: right, y: bottom, turn: 180 },
    { x: left, y: bottom, turn: 270 },
  ];
  places.forEach((place, i) => {
    const filling = fillingOf(of, { across, down, turned: false }, blocks, builder);
    if (filling === null) return;
    const turn = filling.plain ? 0 : (filling.turn + place.turn) % 360;
    const size = lyingSize({ ...filling, turn });
    if (!equal(size.across, across) || !equal(size.down, down)) {
      const { ruler } = builder.spec;
      builder.diagnostics.push(
        borderDoesNotFit(of, {
          why: "corner-block",
          border: border.name,
          corners: saySides(across, down, ruler),
          block: filling.block.spec.name,
          is: saySides(size.across, size.down, ruler),
        }),
      );
      return;
    }
    const lying = { turn, placement: 0, tilted: false, ...followIn(border) };
    const move = straightMove(filling.block, turn, point(place.x, place.y), (p) => p);
    placeBlock(builder, filling, lying, move, {
      place: "cornerstone",
      border: index,
      row: 0,
      column: i,
      label: { in: "corners", border: border.name },
    });
  });
}
