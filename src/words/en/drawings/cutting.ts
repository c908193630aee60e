import { bladeCautions, estimates } from "../cautions.ts";
import { capital, capitals, counted } from "../language.ts";
import { wasteCauses } from "../waste.ts";

/** All the words that stand in cutting diagrams. Sizes arrive already printed. */
export const cutting = {
  waste: capitals(wasteCauses),
  headings: {
    drawing: "Cutting diagram",
    pieces: "Pieces to cut",
    waste: "Fabric that is in no piece",
    signs: "Signs",
  },
  caution: [bladeCautions.shut, bladeCautions.away, bladeCautions.fingers, estimates].join(" "),
  shape: (angle: number | null, kind: string, width: string) =>
    `${angle === null ? "" : `${angle}° `}${kind}, from strips ${width}`,
  each: (width: string) => `${width} each`,
  proof: {
    mixOpen: "best found; not proven least",
    mixFewest: "proven: no fewer pieces",
    mixCheapest: "proven: nothing cheaper",
    nothing: "nothing need be bought",
    shortest: "proven: no shorter cutting of this kind",
    within: (gap: string) => `purchase proven least; length within ${gap}`,
    open: (gap: string) => `not proven: up to ${gap} might be saved`,
  },
  print: {
    none: "no direction",
    "one-way": { along: "one way, along the selvage", across: "one way, across the width" },
    "two-way": { along: "two ways, along the selvage", across: "two ways, across the width" },
  },
  buy: {
    inHand: "nothing: cut from fabric in hand",
    nothingMore: "nothing more",
    more: (what: string) => `${what} more`,
  },
  facts: {
    buy: "Buy",
    used: "Length used",
    usable: "Usable width",
    inNone: "Fabric in no piece",
    print: "Print",
    proof: "How good",
  },
  widthOf: (usable: string, width: string) => `${usable} of ${width}`,
  /** Ways of naming strips left out of the drawing, longest first. */
  gap: (count: number, drawn: number, first: number, last: number) => {
    const numbers = first === last ? `strip ${first}` : `strips ${first} to ${last}`;
    return [
      `${count} more cut just like strip ${drawn}: ${numbers}`,
      `${count} more like ${drawn}: ${numbers}`,
      `${count} more: ${first === last ? first : `${first}–${last}`}`,
      `+${count}`,
    ];
  },
  /** On an offcut worth keeping, longest first. */
  keep: (size: string) => [`keep ${size}`, "keep"],
  uncutGap: ["drawn shorter than it is", "shortened"],
  /** One sentence for people who hear the drawing. */
  described: (buy: string | null, strips: number, pieces: number, sizes: readonly string[]) =>
    `${buy === null ? "Nothing to buy." : `Buy ${buy}.`} ${counted(strips, "strip")} and ${counted(pieces, "piece")}: ` +
    `${sizes.join("; ")}.`,
  describedPiece: (letter: string, count: number, size: string) => `${letter}, ${count} of ${size}`,
  describedProof: (share: string, proof: string) => `${share} of the fabric is in no piece. ${proof}.`,
  count: (count: number) => counted(count, "piece"),
  allCut: (count: number) => `all ${count} cut`,
  stillToCut: (more: number, cut: number) => `${more} more, ${cut} cut`,
  /** Beside the arrows that show how the cloth lies. */
  directions: { grain: "grain", "one-way": "print up", "two-way": "print" },
  signs: {
    number: "strip, in cutting order, with its width",
    grain: "lengthwise grain: along the selvage",
    "one-way": "the way the print's top points",
    "two-way": "the way the print runs",
    gap: "part left out of the drawing",
    keep: "offcut big enough to keep",
    shaping: "cut on the dashes once the piece is free, right side up",
    key: "letter of pieces too small to hold it",
  },
  lay: (
    name: string,
    /** What is bought of it; empty where the title says it. */
    length: string,
    alike: number,
    part: { n: number; of: number },
    isTrimmed: boolean,
  ) => {
    const who = `${capital(name)}${length === "" ? "" : `, ${length}`}${isTrimmed ? ", trimmed" : ""}`;
    const many = alike > 1 ? ` – ${alike} cut alike` : "";
    return part.of > 1 ? `${who}${many} – part ${part.n} of ${part.of}` : `${who}${many}`;
  },
} as const;
