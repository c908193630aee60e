import type { Recipe } from "../../quilt/index.ts";

/** What the hands do for one set of units, besides cutting strips and pieces across them. */
export interface Handwork {
  /** Lines drawn to sew along. */
  marks: number;
  /** Cuts that make patches of the pieces: on a diagonal, or along a template's slanting edges. */
  shaping: number;
  /** Cuts made after sewing: units cut apart, corners cut off. */
  apart: number;
  seams: number;
  presses: number;
  /** Cut edges off the straight grain that are handled before they lie in a seam. */
  biasEdges: number;
  /** Whether the unit is trimmed to its size. */
  trimmed: boolean;
}

/** Shorter edges of a template are blunted points, not sides. */
const SIDE = 1 / 4;

/** Slanting sides of a template. */
function slantingSides(template: NonNullable<Recipe["pieces"][number]["template"]>["cut"]): number {
  const sides = template.map((from, i) => {
    const to = template[(i + 1) % template.length] ?? from;
    const [x, y] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    // Corners lie to the nearest tick: a straight side may be one tick aslant.
    return { length: Math.hypot(x, y), slants: Math.min(x, y) > 1 };
  });
  const longest = Math.max(0, ...sides.map(({ length }) => length));
  return sides.filter(({ length, slants }) => slants && length > longest * SIDE).length;
}

/** Off-grain edges of what is cut from one piece, and the cuts that make them. */
function shapeOf({ subcut, template }: Recipe["pieces"][number]): { edges: number; cuts: number } {
  switch (subcut) {
    // Two triangles, the long side of each on the bias.
    case "once-diagonal":
      return { edges: 2, cuts: 1 };
    // Four triangles, both short sides of each on the bias.
    case "twice-diagonal":
      return { edges: 8, cuts: 2 };
    case "template": {
      const sides = template === null ? 0 : slantingSides(template.cut);
      return { edges: sides, cuts: sides };
    }
    case "none":
      return { edges: 0, cuts: 0 };
  }
}

const SLANTED = { square: 0, "diamond-45": 2, "triangle-60": 2 } as const;

/**
 * What one set of units takes by hand. Derived geometry, with what is pressed taken as once for every seam (for
 * every unit where a long seam makes several): common practice, no source.
 */
export function handworkOf(recipe: Recipe): Handwork {
  const { pieces, stripSets, seams: sewn, steps, unitsPerSet } = recipe;
  const small = pieces.slice(1).reduce((sum, piece) => {
    return piece.role === pieces[0]?.role ? sum : sum + piece.countPerSet;
  }, 0);
  const lines = { one: 1, both: 2, edges: 0 } as const;
  const marks = steps.reduce((sum, step) => {
    switch (step.do) {
      case "pair":
        return sum + lines[step.lines];
      case "cross-pair":
        return sum + 1;
      case "flip":
        return sum + step.squares.length;
      case "small-on-large":
        return sum + (step.round === 1 ? small : 0);
      default:
        return sum;
    }
  }, 0);
  const shapes = pieces.map((piece) => ({ ...shapeOf(piece), count: piece.countPerSet }));
  const patches = pieces.reduce((sum, { countPerSet }) => sum + countPerSet, 0);
  const templates = recipe.method === "templates";
  const seams = sewn.reduce((sum, { count }) => sum + count, 0);
  const flipped = recipe.method === "stitch-and-flip";
  const whole = recipe.loose || stripSets.length > 0;
  // Two units come apart by one cut, four by two, eight by four; each further round of sewing is cut once more.
  const cutApart = flipped ? seams : Math.ceil(unitsPerSet / 2) + sewn.length - 1;
  const segments = stripSets.reduce(
    (sum, { cut, segmentsPerUnit }) => sum + SLANTED[cut] * segmentsPerUnit,
    0,
  );
  return {
    // A template is laid on every patch and drawn round, or held while cutting.
    marks: templates ? patches : marks,
    shaping: shapes.reduce((sum, { cuts, count }) => sum + cuts * count, 0),
    apart: whole ? 0 : cutApart,
    seams,
    presses: Math.max(seams, unitsPerSet > 1 ? unitsPerSet : 0),
    biasEdges:
      segments +
      (recipe.loose
        ? shapes.reduce((sum, { edges, count }) => sum + edges * count, 0)
        : recipe.biasSides.length * unitsPerSet),
    trimmed: recipe.trimTo.needed && !templates,
  };
}
