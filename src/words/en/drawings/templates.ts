/** All the words that stand on templates. Sizes arrive already printed. */
export const templates = {
  sheet: (plan: string, number: number, count: number) =>
    `Templates, sheet ${number} of ${count}: ${plan || "A quilt"}`,
  alone: (plan: string, name: string) => `Template ${name}: ${plan || "A quilt"}`,
  inch: "1 in",
  centimetres: "2 cm",
  print: "Print at 100 %, not fitted to the page; measure the square before cutting.",
  lines:
    "Solid line: cut here. Dashed line: sew here. Dots: corners of the seam. Rings: a neighbour's corner comes here.",
  grain: "Thin arrow: the straight grain, along the selvage.",
  grainFree: "Thin arrow: the straight grain, along the selvage or across.",
  up: "Thick arrow: the top of the print.",
  caution: "Close the blade after every cut, and keep your fingers off the ruler's edge.",
  cut: (count: number) => `cut ${count}`,
  cutReversed: (count: number) => `cut ${count} reversed`,
  cutBoth: (asDrawn: number, reversed: number) => `cut ${asDrawn} as drawn and ${reversed} reversed`,
  part: (name: string, number: number, count: number) => `${name}, part ${number} of ${count}`,
  join: "Lay the parts over each other so that crosses with the same letter meet, and tape them.",
  /** What it is cut from: `Canvas [B], from rectangles 3 3/4 x 5 5/8 in`. */
  from: (fabric: string, letter: string, size: string) => `${fabric} [${letter}] ${size}`,
  fromStrips: (width: string) => `from strips ${width} wide`,
  fromSquares: (side: string) => `from squares ${side}`,
  fromRectangles: (size: string) => `from rectangles ${size}`,
} as const;
