import * as q from "../../length/rational.ts";
import { alike, type Formula, twoSeams } from "../terms/formulas.ts";
import { METHOD } from "../terms/names.ts";
import type { SeamName } from "../terms/seam-names.ts";
import { halfSquareExtra, quarterSquareExtra } from "./allowance.ts";
import { aroundOf, cutOf, type FoundationCut } from "./foundation-cut.ts";
import { areaOf, edgeLengths, type RootOutline, toRoots, withSeamsBlunted } from "./outlines/outlines.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import { finishRecipe, lie, NOTHING_MORE, type PieceDraft, plain, square, withSeamsAdded } from "./recipe.ts";
import type { Eighth, HowMade, Lie, Recipe, UnitDesign, UnitKind, UnitPatch } from "./types.ts";

/** The name of the method, printed where other units have theirs. */
export const ON_FOUNDATION = METHOD.onFoundation;

/** The same with squares that would stand on their point, and their print lean, from upright rectangles. */
export const FROM_RECTANGLES = METHOD.fromRectangles;

/** A patch of one unit of the set, and how it is cut. */
interface Wanted {
  unit: number;
  patch: UnitPatch;
  cut: FoundationCut;
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
  const eased = (formula: Formula) => alike({ ...formula, ease: true } as Formula);
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
        formula: eased(twoSeams(onPoint ? "side" : "size")),
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
      formula: eased(quarter ? { rule: "quartered", side: "long-side" } : { rule: "halved", side: "leg" }),
      subcut: quarter ? "twice-diagonal" : "once-diagonal",
      diagonal: quarter ? "any" : "falling",
      lies: lists,
    }),
  ];
}

function facesOf(cut: FoundationCut): Eighth {
  return cut.kind === "half" || cut.kind === "quarter" ? cut.faces : 0;
}

function sizeKey(cut: FoundationCut): string {
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
 * @param way.printed roles whose print must not lean: only they go by rectangles
 */
export function foundationRecipe(
  kind: UnitKind,
  design: UnitDesign,
  how: HowMade,
  ease: number,
  way: { method: typeof ON_FOUNDATION | typeof FROM_RECTANGLES; printed: ReadonlySet<string> },
): Recipe {
  const { method, printed } = way;
  const patches = kind.patches(design).map((patch) => {
    const outline = toRoots(patch.outline);
    const cut = cutOf(outline, how.seam);
    const leans = method === FROM_RECTANGLES && cut.kind === "on-point" && printed.has(patch.role);
    return { patch, cut: leans ? aroundOf(outline, how.seam) : cut };
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
      // Derived geometry: finished size, seam allowances and the ease.
    },
    design,
    how,
  );
  // What is larger than it need be ends outside the foundation: it is neatened, no unit is trimmed, and its raw size is
  // that of the printed lines, whatever the ruler's marks.
  const raw = (side: q.Rational): number => r.upToMark(withSeamsAdded(r.whole(side), how), 1);
  return { ...recipe, trimTo: { across: raw(design.across), along: raw(design.along), needed: false } };
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
): { what: SeamName; length: RootSum; count: number; bias: boolean }[] {
  const count = outlines.length - 1;
  if (count < 1) return [];
  // Every inner edge is met by a neighbour, so that lengths of edges count seams twice, and the rim once.
  const edges = r.plus(...outlines.flatMap((outline) => edgeLengths(outline)));
  const rim = r.times(r.whole(q.add(design.across, design.along)), r.whole(q.fromInteger(2)));
  const half = r.whole(q.rational(1n, BigInt(2 * count)));
  const length = withSeamsAdded(r.times(r.minus(edges, rim), half), how);
  const upright = outlines.every((outline) => cutOf(outline, how.seam).kind === "rectangle");
  return [{ what: "patch-to-patch", length, count: count * units, bias: !upright }];
}
