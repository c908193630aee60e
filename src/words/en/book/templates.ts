/** The words of the book's pages with templates. */
export const templates = {
  title: "Templates at full size",
  lead: "Print these pages at 100 %, not fitted to the page, and measure the squares before cutting: where they are off, every piece will be.",
  use: [
    "Cut the rectangles or strips first, as told with each fabric. Then cut each to its template, on the solid line. The dashed line is where you sew.",
    "Lay the thin arrow along the straight grain.",
    "Paste the paper onto card, or trace it onto template plastic. Mark the dots on the wrong side of the fabric, and pin through them when you sew.",
  ],
  up: "Lay the thick arrow so that it points to the top of the print.",
  reversed:
    "Reversed means with the template face down on the right side of the fabric. Cut in a single layer, right side up: of two layers folded together, one comes out reversed.",
  caution:
    "Cut along a ruler laid on the template's edge, or with scissors. Never run the blade along paper or card: it rides over the edge.",
  caption: "Templates and what is cut with them",
  columns: { name: "template", from: "cut from", count: "how many", use: "for", where: "where" },
  sheet: (first: number, last: number) => (first === last ? `sheet ${first}` : `sheets ${first} to ${last}`),
  drawn: "draw it",
  drawTitle: "Draw these yourself",
  drawLead: (fine: string) =>
    `These are large and have few corners. Mark the corners on the fabric, to the nearest ${fine}, and cut from one to the next along a ruler. Each corner is told by how far it lies from the left edge and from the top edge of the piece; on a strip, lay each next one against the last.`,
  draw: (name: string, from: string, corners: readonly string[]) => `${name}, ${from}: ${corners.join("; ")}`,
  corner: (left: string, top: string) => `${left} and ${top}`,
  area: "Templates at full size; scrolls sideways",
} as const;
