/**
 * Every word the text output uses, so that another language is one more file like this one.
 * Sizes arrive already printed; counts arrive as numbers, so that each language makes its own plurals.
 */
import { clothName } from "../../stock/index.ts";
import { bladeCautions, estimates } from "./cautions.ts";
import { aOrAn, counted, list } from "./language.ts";
import { wasteCauses } from "./waste.ts";

const FULL_WIDTH = "WOF";

/** `fat quarters`, `10 in squares`, `stash pieces 21 x 18 in`. */
function severalOf(name: string): string {
  return name.replace(/\b(quarter|eighth|square|strip|piece|rest)\b/, "$1s");
}

/** What a spoiled strip costs, printed. */
interface MistakeWords {
  width: string;
  more: string;
  cost: string;
}

/** How an item is named in a step. */
export interface ItemWords {
  /** A length for a border: it is cut when the top is measured, and planned to be so long. */
  later?: { width: string; long: string };
  count: number;
  /** `4 1/2 in` of a square, `2 1/2 x 4 1/2 in` of a rectangle. */
  size: string;
  square: boolean;
  letter: string;
  /** Of shapes cut aslant: what one and what several are called. */
  shape?: readonly [one: string, many: string];
}

function item({ count, size, square, letter, later, shape }: ItemWords): string {
  if (shape !== undefined) return `${counted(count, ...shape)} [${letter}]`;
  if (later !== undefined)
    return `${counted(count, "length", "lengths")} ${later.width} wide, about ${later.long} long [${letter}]`;
  const noun = square ? counted(count, "square", "squares") : counted(count, "rectangle", "rectangles");
  return `${noun} ${size} [${letter}]`;
}

export const cutting = {
  // Steps
  straighten: (size: string) => `Straighten the cut end, square to the selvage: trim off ${size}`,
  straightenToLine: (size: string) => `Straighten the cut end on a printed line: trim off ${size}`,
  cutStrips: (count: number, width: string, run: string | null) =>
    `Cut ${counted(count, "strip", "strips")} ${width} x ${run ?? FULL_WIDTH}`,
  cutLengths: (count: number, length: string) =>
    count === 1
      ? `Cut off one length of ${length}, the whole width of the fabric`
      : `Cut off ${count} lengths of ${length}, the whole width of the fabric, and cut up each alike`,
  cutBands: (count: number, width: string) =>
    `cut ${counted(count, "strip", "strips")} ${width} wide lengthwise, along the selvage`,
  cutBeside: (count: number, width: string, run: string) =>
    `cut ${counted(count, "strip", "strips")} ${width} x ${run} out of the width beside those`,
  subcut: (items: readonly ItemWords[]) => `subcut ${list(items.map(item))}`,
  eachStrip: (counts: readonly number[]) => ` (${list(counts.map(String))} from each strip)`,
  eachAndLast: (each: number, strips: number, last: number) =>
    strips === 1
      ? ` (${each} from the first, ${last} from the last)`
      : ` (${each} from each strip, ${last} from the last)`,
  ofStrips: (ranges: readonly string[], count: number) =>
    `${count === 1 ? "Strip" : "Strips"} ${list(ranges)}:`,
  trimRest: (height: string) => `trim the rest to ${height} and `,
  trim: (height: string) => `trim to ${height} and `,
  trimOff: (strips: number, run: string, height: string) =>
    strips === 1
      ? `cut off ${run}, trim it to ${height} and `
      : `cut ${run} off each, trim that to ${height} and `,
  stack: (segments: number, run: string, items: readonly ItemWords[]) =>
    `subcut ${counted(segments, "segment", "segments")} ${run} and cut ${
      segments === 1 ? "it" : "each"
    } along the strip into ${list(items.map(item))}`,
  rows: (count: number, height: string, items: readonly ItemWords[]) =>
    `${counted(count, "row", "rows")} ${height} (${list(items.map(item))})`,
  stackOfRows: (segments: number, run: string, rows: readonly string[]) =>
    `subcut ${counted(segments, "segment", "segments")} ${run} and cut ${
      segments === 1 ? "it" : "each"
    } along the strip into ${list(rows)}`,
  inDiagram: (ranges: readonly string[], count: number) =>
    `; ${count === 1 ? "strip" : "strips"} ${list(ranges)} of the diagram`,
  range: (first: number, last: number) =>
    last === first + 1 ? `${first} and ${last}` : `${first} to ${last}`,
  keepWhole: (count: number, letter: string) =>
    count === 1 ? `keep it whole [${letter}]` : `keep ${count} whole [${letter}]`,
  stepFlags: {
    "longer-than-ruler":
      "This cut is longer than your ruler: cut as far as it reaches, slide it on with a hand's length of it still along what is " +
      "cut, check that it lies in line, and go on.",
    "long-subcut":
      "Cuts inside this are longer than your ruler and the fabric lies unfolded: lay all of it on the mat or let the end lie on a " +
      "chair, never hang; cut as far as the ruler reaches, slide it on with a hand's length of it still along what is cut, and go on.",
    "narrow-segment": "Narrow pieces: hold the ruler on the larger part and keep your fingers well back.",
    refold: "One placing of the ruler does not reach: fold once more, edge on edge, so that it does.",
    "wide-strip":
      "Wider than your ruler is long: measure it with a tape along both selvages and rule the line before you cut.",
  },

  // Headings and notes
  buyTitle: (plan: string) => `Fabric to buy for ${plan}`,
  stepsTitle: (plan: string) => `Cutting steps for ${plan}`,
  wasteTitle: (plan: string) => `Where the fabric of ${plan} goes`,
  fabricHeading: (number: number, count: number, name: string) => (count === 1 ? name : `${number}. ${name}`),
  estimates,
  handTitle: "How the cuts are made",
  hand: {
    folded:
      "Off the bolt: fold selvage to selvage, both layers flat, the fold square to the ruler. Strips are cut through both layers.",
    unfolded:
      "Off the bolt: the fabric lies in one layer; let what hangs over the edge of the table lie on a chair.",
    square: "Square the end again after every four strips: cut away only what is crooked.",
    selvages: "Cut both selvages off a strip before you cut it up or join it to another.",
    fixed:
      "Pieces cut already (fat quarters, squares, scraps): in one layer, pressed, one edge squared first.",
    rests:
      "Rests of what you have cut: in one layer, pressed. Their cut edges are straight: measure from one of them.",
    lengthwise:
      "Lengthwise strips: cut off the whole length first, then cut along the selvage with the selvage itself cut away; fold the length end to end where one placing of the ruler does not reach.",
    aslant:
      "Slanting cuts: in one layer, right side up; of two layers folded together one gives the shape reversed. After every third or fourth, check that the ruler's line still lies on the edge, and cut the slant afresh where it does not.",
    diagonal:
      "Diagonals: lay the ruler from corner to corner, and check both corners before you cut. The edges stretch: do not pull or press them.",
  },
  cautionsTitle: "Before you pick up the cutter",
  cautions: Object.values(bladeCautions),
  alsoTitle: "Also needed",
  bindingToo: (edge: string) => `Binding for ${edge} of edge and its corners: the file names none.`,
  sleeveToo: (size: string) => `To hang it: ${size} of any fabric for a sleeve.`,
  threadToo: (piecing: string, quilting: string) =>
    `Thread: about ${piecing} for piecing and ${quilting} for quilting.`,
  perQuilt: "These are for one quilt.",
  assumptionsTitle: "Assumed, as the file does not say",
  assumedFor: (text: string, fabrics: readonly string[]) => `${text} (${list(fabrics)})`,
  notesTitle: "Please note",
  leftoversTitle: "Left over and worth keeping",
  leftoversNone: "Nothing big enough to keep is left over.",
  leftover: (count: number, size: string) => (count === 1 ? size : `${count} of ${size}`),
  noPurchase: "cut from pieces you have",
  nothingMore: "nothing more",
  fromRest: "cut from what you have of it",
  boughtBefore: (amounts: readonly string[]) => `bought already: ${list(amounts)}`,
  cutOf: (cut: number, count: number) => (cut === count ? "all cut" : `${cut} cut, ${count - cut} to go`),
  putBy: "put by",
  /** A kind of cloth in a fixed size, bought or in hand. */
  cloth: clothName,
  readyCut: (count: number, name: string) =>
    `${count} ${count === 1 ? clothName(name) : severalOf(clothName(name))}`.replace(
      /^(\d+) (?=\d)/,
      "$1 of ",
    ),
  together: (parts: readonly string[]) => list(parts),
  weighedTitle: "Weighed at the prices given",
  instead: ([taken = "", ...others]: readonly string[]) => `${taken}, against ${list(others)}`,
  more: (amount: string) => `${amount} more`,
  buyAmount: (amount: string) => `buy ${amount}`,
  usableWidth: (size: string) => `usable width ${size}`,
  print: {
    "two-way-along": "two-way print, lines along the selvage",
    "two-way-across": "two-way print, lines from selvage to selvage",
    "one-way-along": "one-way print, up along the selvage",
    "one-way-across": "one-way print, up toward a selvage",
  },
  onPieces: (name: string, alike: number, isStrip: boolean, trimmed: string, another: boolean) =>
    `On ${alike === 1 ? `${another ? "another" : "one"} ${name}` : `${another ? "other " : ""}${severalOf(name)}`}${isStrip ? ", cut already" : ""}${
      alike === 1 ? "" : ` (${alike}, each cut the same)`
    }${trimmed}:`,
  trimmedFirst: (edge: string, size: string) => `, after trimming ${edge} off every edge, to ${size}`,
  onBolt: "On the bolt:",
  onBoltOf: (number: number, length: string) => `On bolt ${number}, of which you have ${length}:`,
  /** A bolt that is too short for all: what is bought of each. */
  fromBolts: (total: string, runs: readonly { first: number; last: number; length: string }[]) =>
    `${total} (${runs
      .map(({ first, last, length }) =>
        first === last ? `${length} from bolt ${first}` : `${length} from each of bolts ${first} to ${last}`,
      )
      .join(", ")})`,
  onLength: "On the rest of the bolt:",
  fullWidthSize: (width: string) => `${width} x ${FULL_WIDTH}`,
  square: "square",
  halved: (line: string, heads: string) =>
    `cut once on the diagonal${line === "" ? "" : `, ${line}`}${heads === "" ? "" : `, ${heads}`}`,
  quartered: (heads: string) => `cut on both diagonals${heads === "" ? "" : `, ${heads}`}`,
  cutFurther: "Cut further, bag by bag",
  halveEach: (count: number, letter: string, line: string, heads: string) =>
    `Cut ${count === 1 ? "the one" : `each of the ${count}`} of [${letter}] once on the diagonal${
      line === "" ? "" : `, ${line}`
    }${heads === "" ? "" : `, with the ${heads} as it lies right side up`}: ${2 * count} halves`,
  quarterEach: (count: number, letter: string, heads: string) =>
    `Cut ${count === 1 ? "the one" : `each of the ${count}`} of [${letter}] on both diagonals${
      heads === "" ? "" : `, with the ${heads} as it lies right side up`
    }, not moving it between the cuts: ${4 * count} quarters`,
  keepSorted: (corners: readonly [string, string]) =>
    `two heaps, right side up as they come off the square: right angle ${list(corners)}`,
  byShape: (letter: string, how: string) => `Cut [${letter}] ${how}`,
  borderLater: "cut to length when the top is measured",
  joinLater: (strips: number) =>
    strips === 1 ? "" : `${strips} strips, sewn end to end and cut to length when the top is measured`,
  flagOf: (strips: string, flag: string) => `${strips} ${flag.charAt(0).toLowerCase()}${flag.slice(1)}`,
  longerLength: (letters: readonly string[], spare: string) =>
    `For a border: ${list(letters.map((letter) => `[${letter}]`))} is cut to length when the top is measured. Cut this length longer by what the fabric allows (${spare} of it is left over).`,
  leaveWhole: (letters: readonly string[]) =>
    `For a border: leave the strips of ${list(letters.map((letter) => `[${letter}]`))} whole until the top is measured.`,
  leaveLong: (letters: readonly string[]) =>
    `For a border: ${list(letters.map((letter) => `[${letter}]`))} may wait. Cut what else the strip gives from its other end first, and leave the rest long until the top is measured.`,
  byTemplate: (name: string, asDrawn: number, reversed: number) =>
    `then by template${name === "" ? "" : ` ${name}`}${
      reversed === 0 ? "" : `, ${asDrawn === 0 ? "all" : `${asDrawn} as drawn and ${reversed}`} reversed`
    }`,
  aslant: (name: string, count: number) => `cut aslant into ${count}, shown full size in template ${name}`,
  fullWidthMeaning: `${FULL_WIDTH} is the width of fabric, from selvage to selvage.`,

  // Proof
  styles: {
    "strips-2": "in strips and subcuts",
    "strips-3": "in strips, subcuts and stacked subcuts",
  },
  provenPurchase: (style: string) => `Proven: cut ${style}, no smaller purchase is enough.`,
  provenLength: (style: string) => `Proven: cut ${style}, no plan uses less length.`,
  notProven: (style: string, gap: string) =>
    `Best found: cut ${style}, at most ${gap} longer than the least possible.`,
  /** Less to buy for more work; `strips` are turned once more. */
  stacked: (amount: string, saved: string, strips: number) =>
    `${amount} would do, ${saved} less, if ${strips === 1 ? "one strip were" : `${strips} strips were`} turned and cut once more along ${strips === 1 ? "its" : "their"} length: write "style: strips-3" in the file.`,
  saving: (size: string) => `Saves ${size} against cutting each size from strips of its own.`,
  narrowest: (size: string) => `Still works on fabric as narrow as ${size} usable.`,
  spareLength: (size: string) => `Length left uncut: ${size}.`,
  provenMix: (style: string) => `Proven: cut ${style}, nothing cheaper is enough at these prices.`,
  provenPieces: (style: string) => `Proven: cut ${style}, no fewer pieces are enough.`,
  openMix: "Best found: a cheaper way is not ruled out in the time allowed.",
  /** A strip cut wrongly: \`more\` and \`cost\` are empty when what is left uncut takes it. */
  mistake: (usual: MistakeWords, worst: MistakeWords) => {
    const price = ({ cost }: MistakeWords) => (cost === "" ? "" : ` (${cost})`);
    if (worst.more === "")
      return `If a strip is cut wrongly, the length left uncut is enough to cut it again (widest ${worst.width}).`;
    const needed = `${worst.more} more is needed${price(worst)}`;
    if (usual.width === worst.width) return `If ${aOrAn(`${worst.width} strip`)} is cut wrongly, ${needed}.`;
    if (usual.more === "")
      return `If ${aOrAn(`${usual.width} strip`)} is cut wrongly, the length left takes it; for ${aOrAn(`${worst.width} one`)} ${needed}.`;
    const often = `${usual.more} more is needed${price(usual)}`;
    return `If ${aOrAn(`${usual.width} strip`)} is cut wrongly, ${often}; for ${aOrAn(`${worst.width} one`)} ${worst.more}${price(worst)}.`;
  },

  // Tables
  columns: {
    fabric: "fabric",
    buy: "buy",
    used: "cut length",
    price: "price",
    proof: "least possible?",
    cloth: "bought",
    pieces: "in pieces",
    seen: "to be seen",
    seams: "hidden in seams",
    corners: "cut off in sewing",
  },
  proofShort: {
    open: "best found",
    purchase: "proven",
    length: "proven",
    found: (gap: string) => `within ${gap}`,
  },
  total: "total",
  turnFree: "either way",
  turnFixed: "as written",
  causes: wasteCauses,
  inPercent: "in percent of what is bought",
  inSewing: "what sewing makes of the pieces, in percent of them",
  inArea: (unit: string) => `in ${unit}`,
  squareInches: "square inches",
  squareCentimetres: "square centimetres",
} as const;
