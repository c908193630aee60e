import * as q from "../../length/rational.ts";
import { halfSquareExtra, quarterSquareExtra, sideOf } from "./allowance.ts";
import { areaOf, bounds, edgeLengths, type RootOutline, toRoots, withSeamsBlunted } from "./outlines.ts";
import { finishRecipe, lie, NOTHING_MORE, type PieceDraft, plain, square, withSeamsAdded } from "./recipe.ts";
import type { RootSum } from "./roots.ts";
import * as r from "./roots.ts";
import type { Eighth, HowMade, Lie, Recipe, UnitDesign, UnitKind, UnitPatch } from "./types.ts";

/** The name of the method, printed where other units have theirs. */
export const ON_FOUNDATION = "on the foundation";

/** The same with every patch from a rectangle of its own: whatever way a print must point, it can. */
export const FROM_RECTANGLES = "on the foundation, from rectangles";

/** How a patch is cut when it is placed on foundation by eye: close to its shape, and a little larger. */
type Cut =
  /** The rectangle round the patch and its seam allowances. */
  | { kind: "rectangle"; across: RootSum; along: RootSum }
  /** Standing on its point, cut straight: its side. */
  | { kind: "on-point"; side: RootSum }
  /** A right-angled triangle with two equal sides: the sides, and where the right angle points. */
  | { kind: "half"; leg: RootSum; faces: Eighth }
  /** The same with its long side upright or level: the long side. */
  | { kind: "quarter"; long: RootSum; faces: Eighth };

function sameLength(a: RootSum, b: RootSum): boolean {
  return r.compareRoots(a, b) === 0;
}

/** Eighths clockwise from up of a direction along an axis or a diagonal. */
function eighthOf(x: number, y: number): Eighth {
  const around = ["0,-1", "1,-1", "1,0", "1,1", "0,1", "-1,1", "-1,0", "-1,-1"];
  return Math.max(0, around.indexOf(`${x},${y}`)) as Eighth;
}

function aroundOf(outline: RootOutline, seam: q.Rational): Cut {
  const { across, along } = bounds(withSeamsBlunted(outline, seam));
  return { kind: "rectangle", across, along };
}

/*
 *   half:  +--+     quarter:   /\        on-point:  /\
 *          | /                /__\                  \/
 *          |/
 */
function cutOf(outline: RootOutline, seam: q.Rational): Cut {
  const box = bounds(outline);
  const asRectangle = aroundOf(outline, seam);
  const inBox = outline.map(({ x, y }) => ({
    x: r.signOf(r.minus(r.times(r.whole(q.fromInteger(2)), r.minus(x, box.x)), box.across)),
    y: r.signOf(r.minus(r.times(r.whole(q.fromInteger(2)), r.minus(y, box.y)), box.along)),
  }));
  const area = areaOf(outline);
  const half = r.times(r.times(box.across, box.along), r.whole(q.rational(1n, 2n)));
  if (outline.length === 4 && sameLength(area, half) && inBox.every(({ x, y }) => x === 0 || y === 0))
    return sameLength(box.across, box.along) ? { kind: "on-point", side: sideOf(box.across) } : asRectangle;
  if (outline.length !== 3) return asRectangle;
  if (sameLength(box.across, box.along)) {
    // The right angle is the corner whose neighbours lie level with it and upright to it.
    const corner = outline.findIndex((p, i) => {
      const [a, b] = [outline[(i + 1) % 3], outline[(i + 2) % 3]];
      if (a === undefined || b === undefined) return false;
      const level = (one: typeof p, two: typeof p) => sameLength(one.y, two.y);
      const upright = (one: typeof p, two: typeof p) => sameLength(one.x, two.x);
      return (level(p, a) && upright(p, b)) || (level(p, b) && upright(p, a));
    });
    const at = inBox[corner];
    if (at !== undefined) return { kind: "half", leg: box.across, faces: eighthOf(at.x, at.y) };
  }
  const double = (side: RootSum) => r.times(side, r.whole(q.fromInteger(2)));
  const apex = inBox.findIndex(({ x, y }) => (x === 0) !== (y === 0));
  const at = inBox[apex];
  const onItsSide = sameLength(box.along, double(box.across));
  if (at !== undefined && (sameLength(box.across, double(box.along)) || onItsSide)) {
    const long = onItsSide ? box.along : box.across;
    return { kind: "quarter", long, faces: eighthOf(at.x, at.y) };
  }
  return asRectangle;
}

/** A patch of one unit of the set, and how it is cut. */
interface Wanted {
  unit: number;
  patch: UnitPatch;
  cut: Cut;
}

const turned = (unit: number, { patch }: Wanted, from: Eighth, faces: Eighth): Lie =>
  lie(unit, patch.spot, faces - from);

/** Right angles of the two triangles of a square cut `\`, and of the four of one cut on both diagonals. */
const HALVES: readonly Eighth[] = [1, 5];
const QUARTERS: readonly Eighth[] = [4, 6, 0, 2];

/** Pieces for the patches of one role and cut: triangles two or four to a square. */
function piecesFor(group: readonly Wanted[], how: HowMade, ease: RootSum): PieceDraft[] {
  const [first] = group;
  if (first === undefined) return [];
  const { cut } = first;
  const { role } = first.patch;
  const said = (text: string) => ({ exact: `${text} + the ease`, trade: `${text} + the ease` });
  const asked = (exact: RootSum) => plain(r.plus(exact, ease));
  if (cut.kind === "rectangle" || cut.kind === "on-point") {
    const onPoint = cut.kind === "on-point";
    const onItsPoint = onPoint ? withSeamsAdded(cut.side, how) : [];
    const [across, along] = onPoint ? [onItsPoint, onItsPoint] : [cut.across, cut.along];
    return [
      {
        role,
        across: asked(across),
        along: asked(along),
        subcut: "none",
        diagonal: "any",
        // Cut straight and laid on its point, the print leans by an eighth of a turn.
        lies: group.map(({ unit, patch }) => [lie(unit, patch.spot, onPoint ? 1 : 0)]),
        formula: said(onPoint ? "finished side + 2 seams" : "finished size + 2 seams"),
        template: null,
        freeLay: null,
      },
    ];
  }
  const quarter = cut.kind === "quarter";
  const [faces, share] = quarter ? [QUARTERS, 4] : [HALVES, 2];
  const side = quarter
    ? r.plus(cut.long, quarterSquareExtra(how.seam))
    : r.plus(cut.leg, halfSquareExtra(how.seam));
  const lists: Lie[][] = [];
  for (let i = 0; i < group.length; i += share) {
    lists.push(
      group
        .slice(i, i + share)
        .map((one, j) =>
          turned(one.unit, one, faces[j] ?? 0, one.cut.kind === cut.kind ? facesOf(one.cut) : 0),
        ),
    );
  }
  return [
    square({
      role,
      side: asked(side),
      formula: said(
        quarter ? "finished long side + seams x (2 + 2 root 2)" : "finished leg + seams x (2 + root 2)",
      ),
      subcut: quarter ? "twice-diagonal" : "once-diagonal",
      diagonal: quarter ? "any" : "falling",
      lies: lists,
    }),
  ];
}

function facesOf(cut: Cut): Eighth {
  return cut.kind === "half" || cut.kind === "quarter" ? cut.faces : 0;
}

function sizeKey(cut: Cut): string {
  const { kind } = cut;
  const size = "leg" in cut ? cut.leg : "long" in cut ? cut.long : "side" in cut ? cut.side : null;
  const sizes = size === null ? (cut.kind === "rectangle" ? [cut.across, cut.along] : []) : [size];
  return [kind, ...sizes.map((one) => r.nearest(one))].join(" ");
}

/**
 * How a unit is made on foundation: every patch is cut near to its shape, triangles from squares halved or quartered
 * so that their outer edges lie on the straight grain, all larger by the ease; nothing is trimmed but neatened.
 * Derived geometry: finished size + 2 seams; halved squares + seam x (2 + root 2), quartered + seam x (2 + 2 root 2).
 * @param ease in ticks, added to every size
 */
export function foundationRecipe(
  kind: UnitKind,
  design: UnitDesign,
  how: HowMade,
  ease: number,
  method: typeof ON_FOUNDATION | typeof FROM_RECTANGLES,
): Recipe {
  const patches = kind.patches(design).map((patch) => {
    const outline = toRoots(patch.outline);
    return {
      patch,
      cut: method === FROM_RECTANGLES ? aroundOf(outline, how.seam) : cutOf(outline, how.seam),
    };
  });
  const kinds = new Set(patches.map(({ cut }) => cut.kind));
  // As many units to a set as leave no half or quarter of a square over.
  const units = kinds.has("quarter") ? 4 : kinds.has("half") ? 2 : 1;
  const groups = new Map<string, Wanted[]>();
  for (let unit = 0; unit < units; unit += 1) {
    for (const { patch, cut } of patches) {
      const key = `${patch.role} ${sizeKey(cut)}`;
      groups.set(key, [...(groups.get(key) ?? []), { unit, patch, cut }]);
    }
  }
  const more = r.whole(q.fromInteger(ease));
  const pieces = [...groups.values()].flatMap((group) => piecesFor(group, how, more));
  const used = patches.map(({ patch }) => areaOf(withSeamsBlunted(toRoots(patch.outline), how.seam)));
  const set = r.whole(q.fromInteger(units));
  const cutArea = r.plus(
    ...pieces.map((piece) =>
      r.times(r.whole(q.fromInteger(piece.lies.length)), r.times(piece.across.exact, piece.along.exact)),
    ),
  );
  const spare = r.minus(cutArea, r.times(r.plus(...used), set));
  const recipe = finishRecipe(
    {
      ...NOTHING_MORE,
      kind: kind.name,
      method,
      unitsPerSet: units,
      loose: true,
      pieces,
      seams: seamsBetween(
        patches.map(({ patch }) => toRoots(patch.outline)),
        design,
        units,
        how,
      ),
      steps: [],
      corners: r.signOf(spare) > 0 ? spare : [],
      sources: ["derived geometry: finished size, seam allowances and the ease"],
    },
    design,
    how,
  );
  // What is larger than it need be ends outside the foundation: it is neatened, and no unit is trimmed.
  return { ...recipe, trimTo: { ...recipe.trimTo, needed: false } };
}

/**
 * The seams of a set, each as long as they are on the whole: one for every patch after the first, a seam allowance
 * beyond the line at both ends. Which is sewn where is told with the order of piecing.
 */
function seamsBetween(
  outlines: readonly RootOutline[],
  design: UnitDesign,
  units: number,
  how: HowMade,
): { what: string; length: RootSum; count: number; bias: boolean }[] {
  const count = outlines.length - 1;
  if (count < 1) return [];
  // Every inner edge is met by a neighbour, so that lengths of edges count seams twice, and the rim once.
  const edges = r.plus(...outlines.flatMap((outline) => edgeLengths(outline)));
  const rim = r.times(r.whole(q.add(design.across, design.along)), r.whole(q.fromInteger(2)));
  const half = r.whole(q.rational(1n, BigInt(2 * count)));
  const length = withSeamsAdded(r.times(r.minus(edges, rim), half), how);
  const upright = outlines.every((outline) => cutOf(outline, how.seam).kind === "rectangle");
  return [{ what: "patch to patch, on the whole", length, count: count * units, bias: !upright }];
}
