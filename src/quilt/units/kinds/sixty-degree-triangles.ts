import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import {
  addSurd,
  compareSurd,
  mulSurd,
  type Surd,
  scaleSurd,
  subSurd,
  surd,
  timesRoot3,
} from "../../../length/surd.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { areaOf, atSurd, toRoots } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { enlargedShape } from "../outlines/shapes.ts";
import { lie, methodsOf, NOTHING_MORE, plain, type SetDraft } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { ExactPoint, HowMade, UnitDesign, UnitKind, UnitPatch } from "../types.ts";

/*
 *   +-----------------+     a row of triangles with three equal sides, up and down by turns,
 *   |\ down /\ down / |     from half a triangle at the left, trimmed square at both ends
 *   | \   / up \   /  |
 *   +-----------------+
 */
const NAME = UNIT.sixtyDegreeTriangles;
const MOST = 200;

/** Half the base of a triangle: height / root 3 = height x root 3 / 3. */
function halfBase(height: Rational): Surd {
  return scaleSurd(timesRoot3(height), q.rational(1n, 3n));
}

/** How many triangles show in the row, part ones included. */
function countOf(design: UnitDesign): number {
  const step = halfBase(design.along);
  // Triangle k starts at step k - 1.
  let count = 2;
  while (count <= MOST && compareSurd(scaleSurd(step, q.fromInteger(count - 1)), surd(design.across)) < 0)
    count += 1;
  return count;
}

/** Triangle `k` of the row, whole; with a seam allowance it is the same triangle enlarged, points left on. */
function whole(k: number, design: UnitDesign, seam: Rational): [ExactPoint, ExactPoint, ExactPoint] {
  const middle = scaleSurd(halfBase(design.along), q.fromInteger(k));
  const reach = halfBase(q.add(design.along, q.mul(seam, q.fromInteger(3))));
  const [left, right] = [subSurd(middle, reach), addSurd(middle, reach)];
  const beyond = q.mul(seam, q.fromInteger(2));
  if (k % 2 === 0) {
    const base = surd(q.add(design.along, seam));
    return [atSurd(middle, surd(q.negate(beyond))), atSurd(right, base), atSurd(left, base)];
  }
  const base = surd(q.negate(seam));
  return [atSurd(left, base), atSurd(right, base), atSurd(middle, surd(q.add(design.along, beyond)))];
}

/** What is left of an outline on the side of an upright line where `keep` holds. */
function clip(outline: readonly ExactPoint[], line: Surd, keepRight: boolean): ExactPoint[] {
  const inside = (p: ExactPoint): boolean => compareSurd(p.x, line) * (keepRight ? 1 : -1) >= 0;
  return outline.flatMap((from, i) => {
    const to = outline[(i + 1) % outline.length] ?? from;
    const kept = inside(from) ? [from] : [];
    if (compareSurd(from.x, line) * compareSurd(to.x, line) >= 0) return kept;
    // Slanting edges rise root 3 for every one across.
    const run = subSurd(line, from.x);
    const down = compareSurd(to.y, from.y) * compareSurd(to.x, from.x);
    const y = down === 0 ? from.y : addSurd(from.y, mulSurd(run, timesRoot3(q.fromInteger(down))));
    return [...kept, atSurd(line, y)];
  });
}

function patches(design: UnitDesign): readonly UnitPatch[] {
  const last = surd(design.across);
  return Array.from({ length: countOf(design) }, (_, k): UnitPatch => {
    const full = whole(k, design, q.ZERO);
    const outline = clip(clip(full, surd(q.ZERO), true), last, false);
    const role = k % 2 === 0 ? "up" : "down";
    const cutShort = k === 0 || compareSurd(full[1].x, last) > 0 || compareSurd(full[2].x, last) > 0;
    return {
      role,
      spot: `${role} ${Math.floor(k / 2) + 1}`,
      outline,
      shape: cutShort ? `end ${k}` : "triangle",
      facing: role === "up" ? 0 : 4,
    };
  });
}

/** Cut height with full points: three seams more than finished (derived geometry). */
function stripWidth(design: UnitDesign, how: HowMade): RootSum {
  return r.whole(q.add(design.along, q.mul(how.seam, q.fromInteger(3))));
}

function strip(
  name: string,
  role: string,
  row: readonly UnitPatch[],
  design: UnitDesign,
  how: HowMade,
): SetDraft {
  const mine = row.filter((patch) => patch.role === role);
  const width = stripWidth(design, how);
  const start = role === "up" ? 0 : 4;
  return {
    name,
    cut: "triangle-60",
    segment: plain(r.times(width, r.times(r.rootOf(q.fromInteger(3)), r.whole(q.rational(2n, 3n))))),
    segmentsPerUnit: mine.length,
    // Every triangle in the strip is this one, every second one on its head.
    shape: enlargedShape(
      toRoots(whole(0, design, q.ZERO)),
      r.over(r.whole(q.fromInteger(r.upToMark(width, how.mark))), r.whole(design.along)),
    ),
    strips: [
      {
        role,
        width: plain(width),
        formula: { rule: "seams", side: "height", seams: 3 },
        // Along the strip every other triangle stands on its head.
        lies: mine.map((patch, i) => [lie(0, patch.spot, start + 4 * (i % 2))]),
      },
    ],
  };
}

const fromStrips = methodsOf(NAME)(METHOD.fromStrips, (design, how) => {
  const row = patches(design);
  const width = stripWidth(design, how);
  const base = r.times(width, r.times(r.rootOf(q.fromInteger(3)), r.whole(q.rational(2n, 3n))));
  const triangle = r.times(r.times(width, base), r.whole(q.rational(1n, 2n)));
  const used = row.map((_, k) => {
    const left = clip(whole(k, design, how.seam), surd(q.negate(how.seam)), true);
    return areaOf(toRoots(clip(left, surd(q.add(design.across, how.seam)), false)));
  });
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: [],
    stripSets: [strip("A", "up", row, design, how), strip("B", "down", row, design, how)].filter(
      (set) => set.segmentsPerUnit > 0,
    ),
    seams: [{ what: "triangle-to-triangle", length: base, count: row.length - 1, bias: true }],
    corners: r.minus(r.times(triangle, r.whole(q.fromInteger(row.length))), r.plus(...used)),
    steps: [
      ...[0, 1].slice(0, row.length).map((set) => ({ do: "cut-shapes" as const, set })),
      ...row.slice(1).map(({ spot }, i) => ({
        do: "join" as const,
        makes: i === row.length - 2 ? "unit" : `row-to/${spot}`,
        parts: [i === 0 ? (row[0]?.spot ?? "") : `row-to/${row[i]?.spot}`, spot],
        way: "edge" as const,
        press: { to: "one-way" as const },
      })),
      { do: "trim", by: "ends" },
    ],
    biasSides: [],
    // Derived geometry: height + 3 seams; base = height x 2 / root 3.
  };
});

/** A row of triangles with three equal sides. */
export const sixtyDegreeTriangles: UnitKind = {
  name: NAME,
  alsoCalled: ["60-degree triangles", "equilateral triangles"],
  reads: [],
  check: (design) =>
    countOf(design) > MOST
      ? {
          fault: { why: "triangles-too-many", most: MOST },
        }
      : null,
  roles: (design) => [...new Set(patches(design).map((patch) => patch.role))],
  patches,
  methods: [fromStrips, templatesMethod(NAME, patches)],
};
