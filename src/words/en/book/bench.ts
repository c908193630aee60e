/**
 * The words of the cutting book that the text lists and the drawings do not have. Counts arrive as numbers
 * and sizes as printed text, so that another language is one more file like this one.
 */

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

export const bench = {
  language: "en",
  title: (plan: string) => plan || "A quilt",
  documentTitle: (plan: string, kind: string) => `${plan || "A quilt"}: ${kind.toLowerCase()}`,
  subtitle: "The bench book",
  contents: "In this book",
  skip: "Skip to the book",
  clear: "Clear all ticks",
  clearSure: "Clear all ticks of this book?",
  progress: "{done} of {all} done",
  print: "Print",
  toolbar: "This page",
  diagramArea: "Cutting diagram; scrolls sideways",
  drawingArea: "Drawing; scrolls sideways",
  page: "page",
  bought: (fabric: string) => `Bought: ${fabric}`,
  coverFabrics: "The fabrics of this plan",
  coverPicture: (names: readonly string[]) =>
    `A folded stack of the fabrics: ${names.join(", ")}. The thicker a fold, the more of it is bought.`,
  coverTop: "Picture of the quilt top",

  facts: {
    finished: "Finished size",
    fabrics: "Fabrics",
    pieces: "Pieces to cut",
    sizes: "Sizes",
    strips: "Strips to cut",
    buy: "To buy in all",
    ruler: "Ruler",
    blocks: "Blocks",
    cost: "Cost",
  },
  rulerLong: (length: string, mark: string) => `${length} long, marked every ${mark}`,

  reading: {
    title: "How to read the diagrams",
    lead: "Each fabric has one diagram. It shows the cloth as it lies on the mat, to scale, selvages left and right and the cut end at the top.",
    items: [
      "Rulers along the top and the left side show how far across the fabric and how far down its length you are.",
      "A number in a circle is a strip, in the order of cutting. The steps beside the diagram use the same numbers.",
      "A letter is a size of piece. Everything with one letter goes in one bag, and the bag labels carry the same letter.",
      "Hatched cloth is in no piece. Each way of hatching is one reason, named above, so that it reads in black and white too.",
      "The long arrow is the lengthwise grain, along the selvage. A second arrow shows which way a print runs.",
      "When many strips are cut just alike, one is drawn and a break in the drawing says how many more there are.",
    ],
    sizes: (size: string, across: string, along: string) =>
      `Sizes are as cut, seam allowance included, across the fabric first: ${size} is ${across} from selvage to selvage and ${along} along it.`,
  },

  cautions: {
    title: "Safety first",
    lead: "Your teacher's advice and the rules of the room you work in come before anything written here.",
    blade: "Blade and ruler",
    iron: "Iron",
    ironRules: [
      "Stand the iron on its heel or its rest, never face down, and unplug it when you leave the room.",
      "Steam burns before the plate does: keep your fingers out of its path and let a pressed seam cool before you lift it.",
      "Lay the cord where nobody can trip on it or pull it.",
    ],
    needle: "Needle and pins",
    needleRules: [
      "Keep your fingers to the sides of the presser foot, and take your foot off the pedal before you reach near the needle.",
      "Take out each pin before the needle comes to it: a struck pin can break and fly. Safety glasses are a good habit.",
      "Switch the machine off to change the needle, and put old needles and blades in a closed tin.",
    ],
  },

  buy: {
    title: "What to buy",
    spare: "spare after cutting",
    narrowest: "works down to",
    have: "from cloth to hand",
    spoiledTaken: (width: string) => `the spare takes a spoiled ${width} strip`,
    spoiledMore: (width: string, more: string) => `a spoiled ${width} strip: ${more} more`,
    none: "–",
    narrowestNote: "Works down to is the narrowest usable width at which the same amount is still enough.",
  },

  cutting: {
    over: (number: number, count: number) =>
      count === 1 ? "Cutting" : `Cutting, fabric ${number} of ${count}`,
    bag: (letter: string, count: number, size: string) => `${letter}: ${count} × ${size}`,
    bags: (bags: readonly string[]) => `Bags: ${bags.join(" · ")}`,
    strips: (ranges: readonly string[], count: number) =>
      `${count === 1 ? "Strip" : "Strips"} ${ranges.join(", ")} in the diagram`,
  },

  labels: {
    title: "Bag labels",
    lead: "Cut along the dashed lines and put one in each bag, or fold it into a clip.",
    count: (count: number) => counted(count, "piece", "pieces"),
    leadKits: (kits: number) =>
      `Print this sheet ${kits} times, once for each kit. Cut along the dashed lines and put one label in each bag.`,
  },

  waste: {
    title: "Waste and leftovers",
    both: (bought: string, sewn: string) => `${bought}; last columns: ${sewn}`,
  },

  assumed: {
    title: "Assumptions and notes",
    lead: "Where the file left something open, this is what was taken. If one does not suit you, say it in the file and plan again.",
    notes: "Please note",
  },

  glossary: {
    title: "Words used here",
    terms: [
      ["WOF", /\bWOF\b/, "Width of fabric: from selvage to selvage, as it comes off the bolt."],
      [
        "Selvage",
        /selvage/i,
        "The woven edge along both sides of the fabric. It is cut away and never sewn into a quilt.",
      ],
      [
        "Usable width",
        /usable width/i,
        "What is left of the width between the selvages, after washing if you wash first. Measure yours.",
      ],
      [
        "Straighten",
        /straighten/i,
        "To trim the cut end so that it runs exactly square to the fold or selvage.",
      ],
      ["Strip", /\bstrips?\b/i, "A piece cut right across the usable width in one go."],
      [
        "Lengthwise strip",
        /lengthwise strip/i,
        "A strip cut along the selvage. It stretches least, which suits long borders.",
      ],
      ["Subcut", /\bsubcut/i, "To cut a strip across into squares and rectangles."],
      ["Segment", /\bsegments?\b/i, "A short length cut off a strip, to be cut once more."],
      ["Trim", /\btrim/i, "To cut a strip or piece down to a smaller size."],
      [
        "Grain",
        /\bgrain\b/i,
        "The direction of the threads: lengthwise along the selvage, crosswise from selvage to selvage.",
      ],
      [
        "Fold once more",
        /fold the fabric once more/i,
        "To lay the folded edge on the selvages, so that the cloth lies in four layers and half as wide.",
      ],
      [
        "One-way print",
        /one-way print|one way, (?:along|across)/i,
        "A print with a top and a bottom. Its pieces may not be turned, so that nothing hangs upside down.",
      ],
      [
        "Two-way print",
        /two-way print|two ways, (?:along|across)/i,
        "A print that reads the same when it is turned upside down.",
      ],
      [
        "Half-square triangle",
        /half-square triangle/i,
        "A square unit made of two triangles, its seam running from corner to corner.",
      ],
      [
        "Flying geese",
        /flying geese/i,
        "A rectangle with one large triangle, the goose, and two small ones, the sky.",
      ],
      ["Unit", /\bunits?\b/i, "A small sewn part that several of make a block."],
      ["Block", /\bblocks?\b/i, "The part that is repeated to make the quilt top."],
      [
        "Chain piecing",
        /chain-piec/i,
        "Sewing one pair after another without cutting the thread between, then snipping them apart.",
      ],
      [
        "Nest",
        /\bnest/i,
        "Seams nest when their allowances lie to opposite sides where they meet, so that they lock and lie flat.",
      ],
      [
        "Press",
        /\bpress\b/i,
        "To set the iron down and lift it, without pushing, so that nothing stretches.",
      ],
      ["Sashing", /sash/i, "Strips set between blocks."],
      ["Cornerstone", /cornerstone/i, "The square where sashes or borders meet."],
      ["Border", /\bborders?\b/i, "A frame of fabric around the middle of the quilt."],
      [
        "Binding",
        /\bbinding\b/i,
        "The narrow strip, often folded double, that covers the raw edges all round.",
      ],
      ["Backing", /\bbacking\b/i, "The fabric on the back of the quilt."],
      ["Wadding", /\bwadding\b/i, "The soft layer between the top and the backing, also called batting."],
      ["Uncut end", /uncut end/i, "What is left of the length after the last cut."],
      ["Strip ends", /strip ends?/i, "What is left at the end of a strip when its pieces are cut."],
      [
        "Proven",
        /\bproven\b/i,
        "The plan was checked against every plan of its kind, and none needs less. Where it says within, a plan that much shorter might exist.",
      ],
    ] as readonly (readonly [string, RegExp, string])[],
  },

  making: {
    bags: "Bags",
    titles: { blocks: "Blocks", setting: "Rows and top" },
  },
  pictureOf: "Pictures of this step",
} as const;
