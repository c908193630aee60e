const COLUMNS = {
  way: "Way",
  cost: "Price",
  strips: "Strips",
  subcuts: "Subcuts",
  apart: "Cut apart",
  seams: "Seams",
  length: "Sewn",
  bias: "Bias edges",
  trims: "Trims",
  corners: "Corners",
  print: "Print",
  time: "Time",
} as const;

/** The words of the comparison of ways of making. */
export const compare = {
  title: (name: string) => `Ways of making ${name}`,
  bookTitle: "Ways of making it",
  about:
    "Each line is a plan of the whole quilt with one kind of unit made that way, the rest as the file says.\n" +
    "A star marks the way the file has it.",
  toBuy: "Fabric to buy",
  work: "Work",
  filed: "as the file says",
  mark: "*",
  unit: (unit: string, count: number) => `${unit} (${count})`,
  unproven: "~",
  notProven: "~ the least found in the time; less is not ruled out (--budget allows more)",
  alike: (said: string) => `Alike whichever way: ${said}`,
  allAlike: (said: string) => `Fabric to buy is the same whichever way: ${said}.`,
  columns: COLUMNS,
  /** What a column counts, by its heading. */
  explained: {
    [COLUMNS.subcuts]: "Subcuts: cuts after the strips, segments of strip sets and triangles included.",
    [COLUMNS.apart]: "Cut apart: cuts after sewing, where units are cut apart or corners cut off.",
    [COLUMNS.bias]: "Bias edges: cut edges off the straight grain, which stretch until they are sewn.",
    [COLUMNS.trims]: "Trims: units brought to size after sewing.",
    [COLUMNS.corners]: "Corners: fabric cut off after sewing, or beside a template.",
    [COLUMNS.print]:
      "Print: whether every print with an up keeps it; `spares`: by sewing more units than are needed.",
  } as Readonly<Record<string, string>>,
  direction: { none: "", kept: "kept", spares: "spares" },
  bonusTitle:
    "From the corners cut off you can make, sewing a second seam before you cut (sizes before they are sewn in):",
  bonusOf: (count: number, kind: string, size: string) => `${count} ${kind}s of ${size}`,
  bonus: (way: string, said: string) => `  ${way}: ${said}`,
  notThisWay: "Not this way:",
  impossible: (way: string, why: string) => `  ${way}: ${why}`,
  best: "The best together; to plan it, write in the file:",
  bestAsFiled: "The best together is the way the file has it.",
  buys: (said: string) => `Fabric: ${said}`,
  instead: (fabric: string, now: string, before: string) => `${fabric} ${now} instead of ${before}`,
  saves: (amount: string) => `${amount} less`,
  against: (said: string) => `Against the file: ${said}.`,
  proved: (of: number, measure: "cost" | "cloth") =>
    measure === "cost"
      ? `Proved: none of the ${of} combinations costs less.`
      : `Proved: none of the ${of} combinations takes less fabric.`,
  notProved: (tried: number, of: number, bound: string) =>
    `Best of ${tried} combinations worked out, of ${of}; a better one is not ruled out${bound}.`,
  atLeast: (amount: string) => ` (none costs less than ${amount})`,
  hours: (minutes: number) =>
    minutes < 60
      ? `${minutes} min`
      : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`,
  figures:
    "Cutting is that of the whole quilt, sewing that of its units; joining them is the same whichever way.",
  minutes: (said: string) => `Time is an estimate, from these minutes for each step: ${said}.`,
  change:
    "Yours differ? Write them in the file (`minutes: { seam: 0.5, trim: 1 }`) or add --minutes seam=0.5,trim=1",
} as const;
