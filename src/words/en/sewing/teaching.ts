import { counted, list } from "../language.ts";

/** The sheet of whoever teaches a quilt to a class. Sizes, prices and names arrive already printed. */
export const teaching = {
  subtitle: "The teacher's sheet",
  title: (name: string, kits: number) => `${name}: ${counted(kits, "kit", "kits")}`,
  facts: {
    kits: "Kits",
    sessions: "Sessions",
    costKit: "Fabric for one kit",
    costAlone: "One kit bought alone",
  },
  kits: {
    title: "The kits",
    caption: "Fabric for all kits, and for one",
    perKit: "Price a kit",
    total: "all",
    lead: "All kits are cut together, by the bench book. Count the pieces into bags fabric by fabric, and let a second person check one kit before the rest are filled.",
    leadSorts:
      "All kits are cut together, by the bench book: a bag that several sorts of kits have is cut once for all of them. Count the pieces into bags fabric by fabric, one sort of kit after another, and let a second person check one kit of each sort before the rest are filled.",
    sortCaption: "The sorts of kits, and what one of each costs",
    bags: "In each kit",
    bagsOf: (sort: string, kits: number) => `${sort} (fill ${kits})`,
    forOne: (number: number) => `Kit ${number}`,
    bag: (letter: string, count: number, size: string) => `${letter}: ${count} × ${size}`,
  },
  bring: {
    title: "What each pupil brings",
    fabric: "Kit by kit, as the quilts differ",
    items: [
      "A sewing machine in good order, with its manual, its foot for the seam allowance and a new needle.",
      "Pins, small scissors, a seam ripper, a pencil that shows on the fabric and washes out.",
      "A ruler and a rotary cutter with a sharp blade and a catch that closes, for trimming; mats and irons are shared.",
    ],
  },
  session: {
    title: "Sessions",
    lead: "A session is about an afternoon. Say the cautions of the bench book before the first one, and again whenever the cutters come out.",
    units: (number: number) => `Session ${number}: units`,
    blocks: (number: number) => `Session ${number}: blocks`,
    top: (number: number, borders: boolean) => `Session ${number}: rows${borders ? " and borders" : ""}`,
    finish: (number: number) => `Session ${number}: finishing`,
    show: "Show",
    inClass: "In class",
    homework: "Homework",
    showUnits: (names: readonly string[]) =>
      `Samples sewn beforehand, one stopped after each step: ${list(names)}.`,
    makeUnits: (names: readonly string[]) => `Each makes one of ${list(names)}, presses and measures it.`,
    restUnits: (made: readonly string[]) => `The rest: ${made.join("; ")}.`,
    block: (name: string, count: number) => `${name} (make ${count})`,
    showBlocks: "One block laid out, one with its rows sewn, one whole, with the seams seen from the back.",
    makeBlocks: "Each lays out and sews one block and measures it.",
    ofSort: (number: number, text: string) => `Kit ${number}: ${text}`,
    restBlocks: (made: readonly string[]) => `The rest: ${made.join("; ")}.`,
    showTop: "Two rows pinned where their seams nest.",
    makeTop: "Each lays out the whole top, numbers the rows and sews the first two together.",
    restTop: (borders: boolean) =>
      borders
        ? "The other rows, the top pressed; then the borders, measured through the middle."
        : "The other rows, and the top pressed.",
    showFinish: "A corner of binding at each fold, a join of two strips, three layers basted.",
    makeFinish: "Each joins the binding and sews one corner on a practice piece.",
    restFinish: "Layering, quilting, binding and the label.",
  },
  kit: {
    subtitle: (number: number, kits: number) =>
      kits === 1 ? `Kit ${number}` : `Kit ${number}, one of ${kits}`,
    holds: "What the kit holds",
    pieces: "pieces",
    lead: "Count it first, bag by bag. Squares that are cut on a diagonal may lie in their bag as halves or quarters.",
  },
} as const;
