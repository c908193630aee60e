import type { MethodName, UnitName } from "../../../quilt/terms/names.ts";

/** A way of making a unit: one line for a maker choosing between them, and where its sizes are printed or come from. */
interface MethodTold {
  summary: string;
  sources: readonly string[];
}

const TEMPLATES: MethodTold = {
  summary: "every patch cut by itself to a template; keeps any print upright, takes the most cloth",
  sources: [
    "derived geometry: every edge moved outwards by the seam, corners where the moved edges meet, sharp ones blunted",
  ],
};

/** The ways of making each kind of unit; those with templates are alike for all. */
const METHODS: Readonly<Record<UnitName, Partial<Record<MethodName, MethodTold>>>> = {
  square: {
    "single pieces": {
      summary: "cut to finished size and two seams",
      sources: ["common practice: finished size and one seam on every side"],
    },
  },
  rectangle: {
    "single pieces": {
      summary: "cut to finished size and two seams",
      sources: ["common practice: finished size and one seam on every side"],
    },
  },
  "half-square triangle": {
    "two at a time": {
      summary: "two squares sewn either side of a diagonal; two units",
      sources: [
        "derived geometry: finished + seam x (2 + root 2)",
        "How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in",
      ],
    },
    "four at a time": {
      summary: "two squares sewn all round; four units with bias edges",
      sources: ["derived geometry: root 2 x (finished + 2 seams) + 2 seams"],
    },
    "eight at a time": {
      summary: "two large squares; eight units",
      sources: [
        "derived geometry: 2 x (finished + seam x (2 + root 2))",
        "Half square triangles, 8 at a time, Scrapish: 2 x finished + 1 3/4 in",
      ],
    },
    "single triangles": {
      summary: "squares cut on the diagonal first; two units",
      sources: [
        "derived geometry: finished + seam x (2 + root 2)",
        "How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in",
      ],
    },
  },
  "quarter-square triangle": {
    "two at a time": {
      summary: "two squares, sewn and cut twice; two units",
      sources: [
        "derived geometry: finished + seam x (2 + 2 root 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
    "single triangles": {
      summary: "squares cut on both diagonals first; two units",
      sources: [
        "derived geometry: finished + seam x (2 + 2 root 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
  },
  "three-patch square": {
    "single triangles": {
      summary: "triangles cut first; four units to a set",
      sources: [
        "derived geometry: finished + seam x (2 + root 2) for the half, + seam x (2 + 2 root 2) for the quarters",
      ],
    },
  },
  "four-triangle square": {
    "single triangles": {
      summary: "a square of each fabric cut on both diagonals; four units",
      sources: [
        "derived geometry: finished + seam x (2 + 2 root 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
  },
  "flying geese": {
    "four at a time": {
      summary: "one large and four small squares; four geese, nothing cut off",
      sources: [
        "derived geometry: width + seam x (2 + 2 root 2), height + seam x (2 + root 2)",
        "Four-at-a-Time Flying Geese, Quilter's World magazine, 2024: 5 1/4 and 2 7/8 in for 2 x 4",
      ],
    },
    "stitch-and-flip": {
      summary: "one rectangle and two squares; one goose, corners cut off",
      sources: [
        "derived geometry: each a finished size and 2 seams",
        "Rectangle Method, Quilting Passion, 2004: 4 1/2 x 8 1/2 and two 4 1/2 in squares for 4 x 8",
      ],
    },
    "single triangles": {
      summary: "a square cut twice for four geese, squares cut once for the sky",
      sources: [
        "derived geometry: width + seam x (2 + 2 root 2), height + seam x (2 + root 2)",
        "Quilty Math, Christa Quilts: width + 1 1/4 and height + 7/8 in",
      ],
    },
  },
  "square-in-a-square": {
    "corner triangles": {
      summary: "a straight-cut centre and two squares halved; edges on straight grain",
      sources: [
        "derived geometry: centre finished / root 2 + 2 seams; corners finished / 2 + seam x (2 + root 2)",
        "Corner triangles for setting blocks on point, Scrapish: 3 3/4 in squares round a 4 in centre",
      ],
    },
    "stitch-and-flip": {
      summary: "one large square and four small ones; corners cut off",
      sources: ["derived geometry: finished + 2 seams; half the finished size + 2 seams"],
    },
  },
  snowball: {
    "stitch-and-flip": {
      summary: "small squares sewn over the corners and folded back",
      sources: ["derived geometry: finished corner + 2 seams; offcut legs square - root 2 x seam"],
    },
  },
  "half-rectangle triangle": {
    "single triangles": {
      summary: "rectangles cut on the diagonal first; two units leaning one way",
      sources: ["derived geometry: side + seam x (both sides + diagonal) / other side"],
    },
  },
  "four-patch": {
    "strip sets": {
      summary: "one strip set, every other segment turned half round",
      sources: [
        "derived geometry: strips and segments half the finished size + 2 seams",
        "Orchard Lane, American Patchwork & Quilting, 2014: 4 1/2 in segments for an 8 in block",
      ],
    },
    "two strip sets": {
      summary: "two sets, so that no segment is turned: keeps a one-way print",
      sources: [
        "derived geometry: strips and segments half the finished size + 2 seams",
        "Orchard Lane, American Patchwork & Quilting, 2014: 4 1/2 in segments for an 8 in block",
      ],
    },
    "single pieces": {
      summary: "four pieces cut one by one",
      sources: ["common practice: finished size and one seam on every side"],
    },
  },
  "nine-patch": {
    "strip sets": {
      summary: "two strip sets: two segments of one, one of the other",
      sources: [
        "derived geometry: strips and segments a third of the finished size + 2 seams",
        "Summer Salsa, American Patchwork & Quilting, 2014: 2 1/2 in strips and segments for a 6 in block",
      ],
    },
    "single pieces": {
      summary: "nine pieces cut one by one",
      sources: ["common practice: finished size and one seam on every side"],
    },
  },
  rails: {
    "strip sets": {
      summary: "strips sewn side by side, cut into units",
      sources: [
        "derived geometry: finished rail + 2 seams",
        "Rail Fence quilt blocks: a strip piecing tutorial, New Quilters: block / rails + 1/2 in",
      ],
    },
    "single pieces": {
      summary: "rails cut one by one",
      sources: ["derived geometry: finished rail + 2 seams"],
    },
  },
  "log cabin": {
    "cut logs": {
      summary: "every log cut to its length before sewing",
      sources: ["derived geometry: log width + 2 seams, as long as the side it is sewn to"],
    },
  },
  "courthouse steps": {
    "cut logs": {
      summary: "every log cut to its length before sewing",
      sources: ["derived geometry: log width + 2 seams, as long as the side it is sewn to"],
    },
  },
  "eight-pointed star": {
    "from strips": {
      summary: "diamonds cut from strips at 45 degrees, set-in squares and triangles",
      sources: [
        "derived geometry: block = (2 + root 2) x side of the diamond",
        "Rotary cutting, part 7: 45-degree diamonds, Chris and Barbara Quilts, 2015: width + 1/2 in",
      ],
    },
  },
  "sixty-degree triangles": {
    "from strips": {
      summary: "whole triangles cut to and fro from strips; the row trimmed at its ends",
      sources: ["derived geometry: height + 3 seams; base = height x 2 / root 3"],
    },
  },
  "drawn patches": {},
};

/** What there is to say of a method; null for one that no kind of that name has. */
export function methodTold(unit: string, method: string): MethodTold | null {
  const own = METHODS[unit as UnitName]?.[method as MethodName];
  return own ?? (method === "templates" ? TEMPLATES : null);
}
