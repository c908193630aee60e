import type { PatternPart } from "../../../spec/pattern-types.ts";

/** The words of the pattern that is handed out. Sizes arrive already printed. */
export const pattern = {
  subtitle: "A quilt pattern",
  titles: {
    requirements: "What you need",
    cautions: "Safety first",
    cutting: "Cutting",
    units: "Units",
    foundation: "On foundation",
    blocks: "Blocks",
    setting: "Rows and top",
    borders: "Borders",
    finishing: "Finishing",
    templates: "Templates",
    colouring: "Colour it your way",
    words: "Words used here",
    about: "About this pattern",
  } satisfies Record<PatternPart, string>,
  by: (author: string) => `by ${author}`,
  sizes: (sizes: readonly string[]) =>
    `${sizes.length === 1 ? "Finished size" : "Sizes"}: ${sizes.join(" · ")}`,
  level: (level: string) => `For: ${level}`,
  requirements: {
    lead: "Amounts are estimates: check them, and the width of your own fabric, before you cut.",
    fabric: "fabric",
    buy: "buy",
    for: "for",
    usable: (widths: readonly string[]) =>
      `They are for fabric with ${widths.join(" or ")} between the selvages.`,
    caption: "Fabric to buy",
  },
  cutting: {
    /** Heads what goes on over the page. */
    goesOn: (fabric: string) => `${fabric}, continued`,
    lead: "Sizes are as cut, seam allowance included. Put the pieces of one letter into one bag. Straighten the cut end of each fabric first, square to the selvage.",
    caption: (fabric: string) => `Pieces of ${fabric}`,
    bag: "bag",
    size: "size",
    for: "for",
    cut: "cut",
    strips: (heading: string) => `${heading}: how to cut them`,
    steps: "How to cut them",
    /** Marks a bag that the size shown step by step does not have. */
    star: "*",
    starred: "A letter with a star is a bag that only another size has.",
    counted: (count: number, size: string) => `${count} of ${size}`,
    none: "–",
    ofSize: (heading: string) =>
      `The steps after this table are for ${heading}. For another size make as many as it says here, in the same way.`,
  },
  make: {
    caption: "How many to make",
    what: "make",
    unit: (name: string, text: string) => `${name}: ${text}`,
  },
  glance: "Pressing at a glance",
  colouring: "Copy this page as often as you like, for your own use, and try your colours.",
  about: {
    author: "Design",
    contact: "Questions",
    date: "Printed",
    version: "Version",
    credits: "Thanks",
    changes: "Changed since the last printing",
    steps: "A step that reads wrong, a size that does not come out: tell the designer.",
  },
} as const;
