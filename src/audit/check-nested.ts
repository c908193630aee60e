import type { CutPiece } from "../cutlist/types.ts";
import type { FabricPlan, Part, Plan } from "../plan/types.ts";
import { boxOf, type Edge, edgesOf, isConvex, overlap, type Spot } from "./shapes.ts";
import { at, type Placed, walk } from "./walk.ts";

/** Ticks by which a corner rounded to whole ticks may lie beside where it should. */
const NEAR = 6;

/** Shapes that stand alternately lie in their runs, do not overlap, and are what was asked for. */
export function checkNested({ pieces, lays, print }: FabricPlan, { ruler }: Plan): string[] {
  const faults: string[] = [];
  const look = ({ part, within }: Placed): void => {
    const piece = pieces[part.piece ?? -1];
    if (piece === undefined) return;
    if ((part.shapes === undefined) !== (piece.nest === undefined))
      faults.push(
        `${at(part)} is ${piece.nest === undefined ? "no" : "a"} run of shapes, and is laid otherwise`,
      );
    if (part.shapes === undefined) return;
    const inStrip = within.some(({ role }) => role === "strip") && part.parts.length === 0;
    if (!inStrip) faults.push(`${at(part)} is a run of shapes outside strips`);
    // Along a strip its pieces follow one another.
    const across = within.find(({ role }) => role === "strip")?.cut === "along";
    faults.push(...checkRun(part, piece, print.kind === "one-way", ruler.mark, across));
  };
  for (const { root } of lays) for (const placed of walk(root)) look(placed);
  return [...faults, ...pieces.flatMap((piece) => checkShape(piece, ruler.mark))];
}

/** The outlines of a run as they lie on the cloth. */
function outlinesOf({ x, y, turned, shapes = [] }: Part, cut: readonly Spot[]): Spot[][] {
  const high = boxOf(cut).bottom;
  // A quarter turn clockwise: what was on top comes to the right.
  const laid = turned ? cut.map((spot) => ({ x: high - spot.y, y: spot.x })) : cut;
  const { right, bottom } = boxOf(laid);
  return shapes.map((shape) =>
    laid.map((spot) => ({
      x: x + shape.x + (shape.halfTurned ? right - spot.x : spot.x),
      y: y + shape.y + (shape.halfTurned ? bottom - spot.y : spot.y),
    })),
  );
}

function checkRun(part: Part, piece: CutPiece, oneWay: boolean, mark: number, across: boolean): string[] {
  const faults: string[] = [];
  const cut = piece.shape?.cut ?? [];
  if (!isConvex(cut)) return [`${piece.letter} stands in runs, and its outline has a notch or none`];
  const upsideDown = part.shapes?.some(({ halfTurned }) => halfTurned) === true;
  if (upsideDown && oneWay && !piece.turnable)
    faults.push(`${at(part)} has shapes turned half round, which the print of ${piece.letter} forbids`);
  const outlines = outlinesOf(part, cut);
  const all = boxOf(outlines.flat());
  // Strip and run are cut on the marks: they may be a little larger than the shapes.
  const beyond = { x: part.x + part.across - all.right, y: part.y + part.along - all.bottom };
  const [run, height] = across ? [beyond.x, beyond.y] : [beyond.y, beyond.x];
  const fills =
    all.left === part.x && all.top === part.y && run >= 0 && run < mark && height >= 0 && height < mark;
  if (!fills) faults.push(`${at(part)} is not the box round its shapes`);
  outlines.forEach((a, i) => {
    const { right, bottom } = boxOf(a);
    for (const b of outlines.slice(i + 1)) {
      const { left, top } = boxOf(b);
      if (left >= right || top >= bottom) continue;
      if (overlap(a, b)) faults.push(`${at(part)} has shapes of ${piece.letter} that overlap`);
    }
  });
  return faults;
}

/** How far a spot lies inside an edge of a line that runs clockwise as drawn. */
function inside({ from, run: { x, y } }: Edge, spot: Spot): number {
  return (spot.y - from.y) * x - (spot.x - from.x) * y;
}

/** A shape cut by a ruler: finished as asked, the allowance on every side, all that is set on the marks. */
function checkShape({ letter, along, shape, nest }: CutPiece, mark: number): string[] {
  if (nest?.spec == null) return [];
  if (shape === undefined) return [`${letter} is a shape without an outline`];
  const faults: string[] = [];
  const { spec, setting } = nest;
  const { cut, seam } = shape;
  const box = boxOf(cut);
  if (box.left !== 0 || box.top !== 0 || box.bottom !== along || along % mark !== 0)
    faults.push(`the strip of ${letter}, ${along}, is not on the marks or not as high as its shape`);
  if (setting.step % mark !== 0) faults.push(`${letter} is set to ${setting.step}, off the ruler's marks`);
  for (const edge of edgesOf(cut)) {
    const least = Math.min(...seam.map((spot) => inside(edge, spot)));
    if (least < spec.seam - NEAR) faults.push(`an edge of ${letter} has an allowance of ${least}`);
    // A point that is cut off, and one rounded to the marks, may have more; never as much as would be another shape.
    if (least > 4 * spec.seam + 2 * mark)
      faults.push(`an edge of ${letter} wastes ${least} on its allowance`);
  }
  if (!finishedRight(seam, spec)) faults.push(`${letter} is not the ${spec.kind} that was asked for`);
  if (!setRight(cut, setting)) faults.push(`the cuts of ${letter} are not what its setting makes`);
  return faults;
}

type Nest = NonNullable<CutPiece["nest"]>;

/** The finished shape has the base, height and angle asked for. */
function finishedRight(seam: readonly Spot[], spec: NonNullable<Nest["spec"]>): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= NEAR;
  const { top, bottom } = boxOf(seam);
  const level = edgesOf(seam).filter(({ run: { y }, length }) => Math.abs(y) * length <= NEAR);
  const slanting = edgesOf(seam).filter(({ run: { y }, length }) => Math.abs(y) * length > NEAR);
  const base = Math.max(...level.map(({ length }) => length));
  const degrees = spec.angle ?? (spec.height === null ? 60 : null);
  const wanted = spec.kind === "half hexagon" ? 2 * spec.side : spec.side;
  if (!near(base, wanted)) return false;
  if (spec.height !== null && !near(bottom - top, spec.height)) return false;
  const sideways = spec.kind === "diamond" || spec.kind === "half hexagon";
  if (sideways && !slanting.every(({ length }) => near(length, spec.side))) return false;
  const corners = ["triangle", "right triangle"].includes(spec.kind) ? 3 : 4;
  if (seam.length !== corners) return false;
  if (spec.kind === "right triangle")
    return slanting.some(({ run: { x }, length }) => Math.abs(x) * length <= NEAR);
  const lean = degrees === null ? base / 2 / (bottom - top) : 1 / Math.tan((degrees * Math.PI) / 180);
  return slanting.every(
    ({ run: { x, y }, length }) => Math.abs(Math.abs(x) - lean * Math.abs(y)) * length <= NEAR,
  );
}

/** The outline is what the cuts make when they are set as told. */
function setRight(cut: readonly Spot[], { angle, by, step }: Nest["setting"]): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= NEAR;
  const { right, bottom } = boxOf(cut);
  const all = edgesOf(cut);
  const base = Math.max(
    ...all.filter(({ run: { y }, length }) => Math.abs(y) * length <= NEAR).map(({ length }) => length),
  );
  const slanting = all.filter(
    ({ run: { x, y }, length }) => Math.min(Math.abs(x), Math.abs(y)) * length > NEAR,
  );
  const lean = angle === null ? null : 1 / Math.tan((angle * Math.PI) / 180);
  const ruled =
    lean === null ||
    slanting.every(
      ({ run: { x, y }, length }) => Math.abs(Math.abs(x) - lean * Math.abs(y)) * length <= NEAR,
    );
  if (!ruled) return false;
  switch (by) {
    case "points":
      return angle !== null && cut.length === 3;
    case "edge":
      return angle !== null && near(base, step) && cut.length === 4;
    case "square":
      return angle !== null && slanting.length === 2 && near(base * Math.abs(slanting[0]?.run.y ?? 0), step);
    case "marks":
      return (
        cut.length === 3 &&
        near(base, step) &&
        near(Math.min(...cut.map(({ x }) => (x === 0 || x === right ? step : x))), step / 2)
      );
    case "rectangles":
      return cut.length === 3 && near(right, step) && slanting.length === 1 && bottom > 0;
    case "template":
      return true;
  }
}
