import type { MethodName, UnitName } from "../../../quilt/terms/names.ts";

/** A way of making a unit: one line for a maker choosing between them, and where its sizes are printed or come from. */
interface MethodTold {
  summary: string;
  sources: readonly string[];
}

const TEMPLATES: MethodTold = {
  summary:
    "jeder Patch für sich nach einer Schablone geschnitten; hält jeden Druck aufrecht, braucht am meisten Stoff",
  sources: [
    "hergeleitet: jede Kante um die Nahtzugabe nach außen, Ecken, wo die Kanten sich treffen, spitze gekappt",
  ],
};

/** The ways of making each kind of unit; those with templates are alike for all. */
const METHODS: Readonly<Record<UnitName, Partial<Record<MethodName, MethodTold>>>> = {
  square: {
    "single pieces": {
      summary: "auf fertige Größe und zwei Nahtzugaben geschnitten",
      sources: ["übliche Praxis: fertiges Maß und eine Nahtzugabe auf jeder Seite"],
    },
  },
  rectangle: {
    "single pieces": {
      summary: "auf fertige Größe und zwei Nahtzugaben geschnitten",
      sources: ["übliche Praxis: fertiges Maß und eine Nahtzugabe auf jeder Seite"],
    },
  },
  "half-square triangle": {
    "two at a time": {
      summary: "zwei Quadrate, beiderseits einer Diagonale genäht; zwei Einheiten",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + Wurzel 2)",
        "How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in",
      ],
    },
    "four at a time": {
      summary: "zwei rundum zusammengenähte Quadrate; vier Einheiten mit Schrägkanten",
      sources: ["hergeleitet: Wurzel 2 x (fertig + 2 Nahtzugaben) + 2 Nahtzugaben"],
    },
    "eight at a time": {
      summary: "zwei große Quadrate; acht Einheiten",
      sources: [
        "hergeleitet: 2 x (fertig + Nahtzugabe x (2 + Wurzel 2))",
        "Half square triangles, 8 at a time, Scrapish: 2 x finished + 1 3/4 in",
      ],
    },
    "single triangles": {
      summary: "Quadrate zuerst diagonal geschnitten; zwei Einheiten",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + Wurzel 2)",
        "How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in",
      ],
    },
  },
  "quarter-square triangle": {
    "two at a time": {
      summary: "zwei Quadrate, zweimal genäht und geschnitten; zwei Einheiten",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + 2 Wurzel 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
    "single triangles": {
      summary: "Quadrate zuerst über beide Diagonalen geschnitten; zwei Einheiten",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + 2 Wurzel 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
  },
  "three-patch square": {
    "single triangles": {
      summary: "Dreiecke zuerst geschnitten; vier Einheiten je Satz",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + Wurzel 2) für die Hälfte, + Nahtzugabe x (2 + 2 Wurzel 2) für die Viertel",
      ],
    },
  },
  "four-triangle square": {
    "single triangles": {
      summary: "von jedem Stoff ein Quadrat über beide Diagonalen geschnitten; vier Einheiten",
      sources: [
        "hergeleitet: fertig + Nahtzugabe x (2 + 2 Wurzel 2)",
        "Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in",
      ],
    },
  },
  "flying geese": {
    "four at a time": {
      summary: "ein großes und vier kleine Quadrate; vier Gänse, kein Verschnitt",
      sources: [
        "hergeleitet: Breite + Nahtzugabe x (2 + 2 Wurzel 2), Höhe + Nahtzugabe x (2 + Wurzel 2)",
        "Four-at-a-Time Flying Geese, Quilter's World magazine, 2024: 5 1/4 and 2 7/8 in for 2 x 4",
      ],
    },
    "stitch-and-flip": {
      summary: "ein Rechteck und zwei Quadrate; eine Gans, Ecken abgeschnitten",
      sources: [
        "hergeleitet: jeweils fertiges Maß und 2 Nahtzugaben",
        "Rectangle Method, Quilting Passion, 2004: 4 1/2 x 8 1/2 and two 4 1/2 in squares for 4 x 8",
      ],
    },
    "single triangles": {
      summary: "ein Quadrat geviertelt für vier Gänse, halbierte Quadrate für den Himmel",
      sources: [
        "hergeleitet: Breite + Nahtzugabe x (2 + 2 Wurzel 2), Höhe + Nahtzugabe x (2 + Wurzel 2)",
        "Quilty Math, Christa Quilts: width + 1 1/4 and height + 7/8 in",
      ],
    },
  },
  "square-in-a-square": {
    "corner triangles": {
      summary: "eine gerade geschnittene Mitte und zwei halbierte Quadrate; Kanten im Fadenlauf",
      sources: [
        "hergeleitet: Mitte fertig / Wurzel 2 + 2 Nahtzugaben; Ecken fertig / 2 + Nahtzugabe x (2 + Wurzel 2)",
        "Corner triangles for setting blocks on point, Scrapish: 3 3/4 in squares round a 4 in centre",
      ],
    },
    "stitch-and-flip": {
      summary: "ein großes und vier kleine Quadrate; Ecken abgeschnitten",
      sources: ["hergeleitet: fertig + 2 Nahtzugaben; halbes fertiges Maß + 2 Nahtzugaben"],
    },
  },
  snowball: {
    "stitch-and-flip": {
      summary: "kleine Quadrate über die Ecken genäht und umgeklappt",
      sources: [
        "hergeleitet: fertige Ecke + 2 Nahtzugaben; Schenkel des Verschnitts Quadrat - Wurzel 2 x Nahtzugabe",
      ],
    },
  },
  "half-rectangle triangle": {
    "single triangles": {
      summary: "Rechtecke zuerst diagonal geschnitten; zwei Einheiten, die zu einer Seite neigen",
      sources: ["hergeleitet: Seite + Nahtzugabe x (beide Seiten + Diagonale) / andere Seite"],
    },
  },
  "four-patch": {
    "strip sets": {
      summary: "ein Streifenset, jedes zweite Segment halb gedreht",
      sources: [
        "hergeleitet: Streifen und Segmente halbes fertiges Maß + 2 Nahtzugaben",
        "Orchard Lane, American Patchwork & Quilting, 2014: 4 1/2 in segments for an 8 in block",
      ],
    },
    "two strip sets": {
      summary: "zwei Sätze, damit kein Segment gedreht wird: hält einen Druck mit einer Richtung",
      sources: [
        "hergeleitet: Streifen und Segmente halbes fertiges Maß + 2 Nahtzugaben",
        "Orchard Lane, American Patchwork & Quilting, 2014: 4 1/2 in segments for an 8 in block",
      ],
    },
    "single pieces": {
      summary: "vier einzeln geschnittene Teile",
      sources: ["übliche Praxis: fertiges Maß und eine Nahtzugabe auf jeder Seite"],
    },
  },
  "nine-patch": {
    "strip sets": {
      summary: "zwei Streifensets: zwei Segmente vom einen, eines vom anderen",
      sources: [
        "hergeleitet: Streifen und Segmente ein Drittel des fertigen Maßes + 2 Nahtzugaben",
        "Summer Salsa, American Patchwork & Quilting, 2014: 2 1/2 in strips and segments for a 6 in block",
      ],
    },
    "single pieces": {
      summary: "neun einzeln geschnittene Teile",
      sources: ["übliche Praxis: fertiges Maß und eine Nahtzugabe auf jeder Seite"],
    },
  },
  rails: {
    "strip sets": {
      summary: "Streifen nebeneinandergenäht, in Einheiten geschnitten",
      sources: [
        "hergeleitet: fertiger Streifen + 2 Nahtzugaben",
        "Rail Fence quilt blocks: a strip piecing tutorial, New Quilters: block / rails + 1/2 in",
      ],
    },
    "single pieces": {
      summary: "einzeln geschnittene Streifen",
      sources: ["hergeleitet: fertiger Streifen + 2 Nahtzugaben"],
    },
  },
  "log cabin": {
    "cut logs": {
      summary: "jeder Balken vor dem Nähen auf Länge geschnitten",
      sources: ["hergeleitet: Balkenbreite + 2 Nahtzugaben, so lang wie die Seite, an die er genäht wird"],
    },
  },
  "courthouse steps": {
    "cut logs": {
      summary: "jeder Balken vor dem Nähen auf Länge geschnitten",
      sources: ["hergeleitet: Balkenbreite + 2 Nahtzugaben, so lang wie die Seite, an die er genäht wird"],
    },
  },
  "eight-pointed star": {
    "from strips": {
      summary: "Rauten im 45-Grad-Winkel aus Streifen, Quadrate und Dreiecke eingesetzt",
      sources: [
        "hergeleitet: Block = (2 + Wurzel 2) x Seite der Raute",
        "Rotary cutting, part 7: 45-degree diamonds, Chris and Barbara Quilts, 2015: width + 1/2 in",
      ],
    },
  },
  "sixty-degree triangles": {
    "from strips": {
      summary: "ganze Dreiecke hin und her aus Streifen geschnitten; die Reihe an den Enden beschnitten",
      sources: ["hergeleitet: Höhe + 3 Nahtzugaben; Grundseite = Höhe x 2 / Wurzel 3"],
    },
  },
  "drawn patches": {},
};

/** What there is to say of a method; null for one that no kind of that name has. */
export function methodTold(unit: string, method: string): MethodTold | null {
  const own = METHODS[unit as UnitName]?.[method as MethodName];
  return own ?? (method === "templates" ? TEMPLATES : null);
}
