import type { MotifTurningKey } from "../../../choices/arranging/motif-turnings.ts";
import type { TurningKey } from "../../../choices/arranging/turnings.ts";

const twoWays = (ways: 1 | 2) => (ways === 2 ? ", the block pressed in two ways" : "");

const BLOCKS: Readonly<Record<TurningKey, string>> = {
  upright: "all upright",
  right: "all turned right",
  "upside-down": "all upside down",
  left: "all turned left",
  "by-turns": "left and right by turns",
  centre: "about the centre",
  pairs: "mirrored pairs",
  chance: "by chance",
};

const MOTIFS: Readonly<Record<MotifTurningKey, string>> = {
  upright: "motifs all up",
  right: "motifs all right",
  "upside-down": "motifs all down",
  left: "motifs all left",
  facing: "motifs in facing pairs",
  stacked: "motifs facing up and down",
  apart: "motifs back to back",
  "by-turns": "motifs left and right by turns",
  clockwise: "motifs running round clockwise",
  anticlockwise: "motifs running round anticlockwise",
  centre: "motifs about the centre",
  chance: "motifs by chance",
};

/** Blocks and motifs turned one way. */
function turned(blocks: TurningKey | "file", motifs: MotifTurningKey | "file", seed: number): string {
  const seeded = (key: string) => (key === "chance" ? `, seed ${seed}` : "");
  const ofBlocks = blocks === "file" ? "" : `${BLOCKS[blocks]}${seeded(blocks)}`;
  const ofMotifs = motifs === "file" ? "" : `${MOTIFS[motifs]}${seeded(motifs)}`;
  if (ofBlocks === "") return ofMotifs === "" ? "as the file has it" : ofMotifs;
  return ofMotifs === "" ? ofBlocks : `blocks ${ofBlocks} with ${ofMotifs}`;
}

/** The words of arrangements of blocks side by side. */
export const arrange = {
  /** Turnings of blocks and of motifs by their names, as they may be typed. */
  blockTurnings: BLOCKS,
  motifTurnings: MOTIFS,
  turned,
  title: (name: string) => `${name}: its blocks turned, and the motifs in them`,
  way: "Turned",
  motifs: (said: string) => `Motifs that are turned inside their block: ${said}.`,
  motifsOf: (block: string, count: number, size: string, square: boolean) =>
    `${block}, ${count} of ${size}${square ? "" : " (not square: by halves only)"}`,
  noMotifs:
    "No block has alike parts that could be turned by themselves; name them in a block if you see some: motifs: 2 x 2",
  same: "These look the same, and are shown once:",
  looksLike: (name: string, others: readonly string[]) => `${name}: also ${others.join("; ")}`,
  methods: "How units are made:",
  made: (unit: string, method: string, count: number) => `${count} ${unit}, ${method}`,
  cost: "Price",
  pieces: "Pieces",
  sizes: "Sizes to cut",
  nested: "Seams nest",
  unproven: "~",
  notProven: "~ the least found in the time; less is not ruled out",
  unknown: "-",
  nest: (nested: number, places: number) => `${nested} of ${places}`,
  nestShort: (said: string) => `seams nest: ${said}`,
  alikeFabrics: (said: string) => `Alike whichever way: ${said}`,
  alike: "Turning the blocks changes nothing that is bought or cut: choose by eye.",
  cut: "What is cut, where the turning changes it (across x along, with the print's up along):",
  piece: (count: number, size: string) => `${count} of ${size}`,
  subcut: {
    none: "",
    "once-diagonal": " halved",
    "twice-diagonal": " quartered on both diagonals",
    template: " for a template",
  },
  /** As the square lies with the print's up at the top. */
  diagonal: { any: "", rising: " on the diagonal /", falling: " on the diagonal \\" },
  inAll: "in all",
  noMore: "nothing more",
  eachOne: "every one of them",
  nesting:
    "Where two seams meet across a seam that joins them, they nest when they are pressed opposite ways; each arrangement\n" +
    "is pressed so that as many nest as can:",
  allNest: (places: number, ways: 1 | 2) => `all ${places} places nest${twoWays(ways)}`,
  someNest: (open: number, places: number, ways: 1 | 2, proven: boolean) =>
    `${open} of ${places} places ${open === 1 ? "does" : "do"} not nest, pin ${open === 1 ? "it" : "them"}${twoWays(ways)}${
      proven ? "" : "; fewer may be possible"
    }`,
  /** Blocks are turned where that does not show; without it so many places would not nest, or in two ways only. */
  turnedUnseen: (unNested: number, ways: 1 | 2) => {
    const without = [
      ...(unNested === 0 ? [] : [`${unNested} would not`]),
      ...(ways === 2 ? ["the block is pressed in two ways"] : []),
    ];
    return `; blocks are turned for that where it does not show (without it ${without.join(" and ")})`;
  },
  noNesting: "not worked out, as the top is not laid in rows of whole blocks",
  noMirror: (blocks: string) =>
    `No turn shows the mirror image of ${blocks}: in the mirrored pairs it is only turned the other way.`,
  notes: "To keep a print upright:",
  notThisWay: "Not possible:",
  impossible: (way: string, why: string) => `${way}: ${why}`,
  toCopy: (way: string, noFill: boolean) =>
    `For ${way}, write in the file${noFill ? " (and leave `fill` out)" : ""}:`,
  forNesting:
    "For seams that nest like that, the quilt looking as the file has it, write in the file (and leave `fill` out):",
  asInFile: (way: string) => `For ${way}, nothing is to be written: it looks as the file has it.`,
  noSpan: (codes: readonly string[]) => `      # leave \`span\` out of ${codes.join(", ")}`,
  leaveOut: (fields: readonly string[]) =>
    `      # leave ${fields.map((field) => `\`${field}\``).join(" and ")} out`,
  choose:
    "To have the rows of one of them for your file: --only centre (or file, upright, right, upside-down, left, by-turns,\n" +
    "pairs, chance).",
  chooseMotifs:
    "To have the grid of a block with its motifs turned: --motifs facing (or upright, right, upside-down, left, stacked,\n" +
    "apart, by-turns, clockwise, anticlockwise, centre, chance). Both together: --only centre --motifs facing.",
} as const;
