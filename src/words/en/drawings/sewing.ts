import { counted } from "../language.ts";

/** The words of the drawings of sewing: blocks, rows, pressing, borders, finishing. Sizes arrive already printed. */
export const sewing = {
  finishedSize: "Finished size",
  blocks: {
    over: "Blocks, set apart",
    count: "Blocks",
    order:
      "Close together: sewn first. Wide apart: sewn last. Numbers are those of the text; of four units round one, the order.",
    block: (name: string, count: number, size: string) => `${name}: make ${count}, ${size}`,
    described: (blocks: number) => `${counted(blocks, "block")} set apart as they are joined.`,
    pressedSo: "pressed so",
    oneDescribed: (name: string) => `${name} set apart as it is joined, and the way its seams are pressed.`,
  },
  assembly: {
    over: "Rows",
    rows: "The rows, set apart: sew the blocks of each row, then row to row",
    columns: "The columns, set apart: sew the blocks of each column, then column to column",
    diagonalRows:
      "The diagonal rows, set apart: sew the blocks of each row, then row to row; the corners come last",
    pins: "Numbers on the long seams: pin places with 1 first, then 2, and so on outwards.",
    rowCount: "Rows",
    columnCount: "Columns",
    described: (lines: number, columns: boolean) => `${counted(lines, columns ? "column" : "row")}.`,
  },
  pressing: {
    over: "Pressing map",
    places: "Places where seams meet",
    notNested: "Not nested",
    arrows:
      "Each arrow crosses a seam and points to where its allowances are pressed, right side up. Fabrics are drawn pale.",
    dots: "A dot marks a place with more layers than wanted: there press the seam sewn last open, a little way to both sides, or cut off the points within the seam allowances.",
    rings: "A ring marks a place where two seams do not nest: press one of them open there.",
    numbers:
      "The number in a block says which of its kinds it is: pressed as shown below, made as the steps say.",
    block: (name: string, count: number) => `${name}: make ${count}`,
    described: (places: number, open: number) =>
      `${counted(places, "place")} where seams meet, ${open} not nested.`,
  },
  borders: {
    over: "Borders, in the order of sewing",
    count: "Borders",
    apart: "The borders set apart. Strips with the same number go on together, 1 first.",
    strips: (name: string, sides: string, long: string, extra: string) =>
      `${name}, ${sides}: ${long} long${extra}`,
    extra: (extra: string) => `, cut ${extra} longer and trimmed`,
    mitre: (name: string, seam: string) =>
      `${name}: sewn from ${seam} inside one corner to ${seam} inside the next; then its four mitres, at 45 degrees`,
    mitred: {
      title: (name: string) => `The mitred corners of ${name}`,
      described: "One corner in three pictures: sewn up to the seam, folded and sewn at 45 degrees, opened.",
      sew: (seam: string) => `Sew both strips on; stop ${seam} from the corner of the top, at the dots.`,
      fold: "Fold the top on the diagonal, strips on each other; sew at 45 degrees from the dot outwards.",
      open: (seam: string) => `Open it out, trim to ${seam}, press the mitre open.`,
    },
    sides: {
      left: "left and right",
      right: "left and right",
      top: "top and bottom",
      bottom: "top and bottom",
    },
    described: (rounds: number) => `${counted(rounds, "border")} in the order of sewing.`,
  },
  finish: {
    over: "Backing and binding",
    backingCaption: "Backing",
    backing: "Backing: panels and their seams; the dashed line is the quilt",
    panel: (number: number) => `panel ${number}`,
    piece: "one piece",
    overhang: (length: string) => `${length} beyond the quilt`,
    up: "up of the print",
    binding: "Binding",
    backingMade: (panels: number, size: string, overhang: string) =>
      `Backing: ${panels === 1 ? "one piece" : `${counted(panels, "panel")}, each`} ${size}; dashed: the quilt, ${overhang} inside all round.`,
    sleeve: (size: string) => `Sleeve on the back: ${size}, hemmed at both ends, sewn to a tube.`,
    join: (loss: string) => `Join: ends at right angles, sewn corner to corner, trimmed; takes ${loss}.`,
    straight: (loss: string) => `Join: end to end; takes ${loss}.`,
    stop: (seam: string) => `Corner: stop ${seam} from the edge.`,
    fold: "Fold the strip up at 45 degrees ...",
    down: "... and down again; sew on from the edge.",
    square: "Bias: cut the square on one diagonal,",
    tube: "join to a tube one strip out of step, cut round.",
    described: (panels: number, cut: "bias" | "straight" | "none") =>
      `${counted(panels, "backing panel")}; ${{ bias: "bias binding", straight: "straight binding", none: "no binding" }[cut]}.`,
  },
} as const;
