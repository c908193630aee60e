function kitRange(first: number, last: number): string {
  if (first === last) return String(first);
  return `${first} ${last === first + 1 ? "and" : "to"} ${last}`;
}

/** Size and colourway of a sort of kit, as they are called. */
interface SortSaid {
  heading: string;
  finished: string;
  colourway: string;
}

/** The words of the tables that set choices side by side. Sizes and amounts arrive already printed. */
export const choices = {
  fullWidth: "WOF",
  kits: {
    inBag: (letter: string, count: number, size: string, label: string) =>
      `[${letter}] ${count} of ${size}${label === "" ? "" : `, ${label}`}`,
    title: (name: string, kits: number) => `${kits} kits of ${name}`,
    columns: {
      fabric: "Fabric",
      together: "Buy, cut together",
      one: "One kit alone",
      costTogether: "Price together",
      costSeparate: "Price apart",
    },
    separate: (kits: number) => `${kits} bought apart`,
    saved: (amount: string) => `Cutting together saves ${amount}.`,
    shares: "Whole strips for whole kits, at no more fabric: cut these, and they fill these bags.",
    filled: (first: number, last: number, ranges: readonly string[], strips: number) =>
      `${first === last ? "Kit" : "Kits"} ${kitRange(first, last)}: ${
        strips === 1 ? "strip" : "strips"
      } ${ranges.join(", ")}`,
    filledFrom: (
      first: number,
      last: number,
      bolts: readonly { bolt: number; ranges: readonly string[]; strips: number }[],
    ) =>
      `${first === last ? "Kit" : "Kits"} ${kitRange(first, last)}: ${bolts
        .map(
          ({ bolt, ranges, strips }) =>
            `${strips === 1 ? "strip" : "strips"} ${ranges.join(", ")} of bolt ${bolt}`,
        )
        .join("; ")}`,
    dealt: (fabrics: readonly string[]) => `Dealt out by count when all is cut: ${fabrics.join(", ")}.`,
    inYours:
      "In the kit, count it first. Squares that are cut on a diagonal may lie in their bag as halves or quarters.",
    bag: (kits: number) => `Into each of the ${kits} bags:`,
    sort: (number: number, { heading, finished, colourway }: SortSaid) =>
      `Kit ${number}: ${heading === "" || heading === finished ? finished : `${heading}, ${finished}`}${colourway === "" ? "" : `, ${colourway}`}`,
    oneOf: (number: number) => `Kit ${number} alone`,
    bagOf: (sort: string, kits: number) =>
      kits === 1 ? `${sort}. Into its bags:` : `${sort}. Into the bags of each of the ${kits}:`,
    sortColumns: { kit: "Kit", count: "How many", share: "Fabric for one", alone: "One bought alone" },
    shareRule: "The price of a fabric is shared out by what each kit takes of it.",
    each: (kits: readonly { number: number; each: number }[]) =>
      kits.map(({ number, each }) => `${each} into each kit ${number}`).join(", "),
    none: "nothing",
  },
  sources: {
    of: (count: number) => `${count} of`,
    stash: "From the stash",
    fatQuarters: "Fat quarters to buy",
    total: "together",
    pieces: (count: number) => `${count} ${count === 1 ? "piece" : "pieces"}`,
    take: (stash: string) => `When it is cut: crossgrain stash take PLAN.json --stash ${stash}`,
  },
  widths: {
    title: (name: string) => `${name} on another width of fabric`,
    columns: ["Fabric", "Width filed", "Buy", "Width tried", "Buy", "Difference"],
    same: "none",
    changed: (amount: string, more: boolean, price: string) => {
      const way = more ? "more" : "less";
      if (amount === "") return `${price} ${way}`;
      return `${amount} ${way}${price === "" ? "" : ` (${price})`}`;
    },
  },
  drawer: {
    leftFrom: (plan: string) => `left from ${plan}`,
    columns: { fabric: "fabric", count: "how many", size: "width x length", note: "note" },
    empty: "The stash is empty.",
    area: { in: "square yards", cm: "square metres" },
    holds: (count: number, area: string) =>
      `${count} ${count === 1 ? "piece" : "pieces"} of fabric, ${area}.`,
  },
  suits: {
    columns: ["Fabric", "The drawer covers", "Pieces used", "Still to buy", "Without it"],
    title: (name: string) => `What the drawer covers of ${name}`,
    covers: { all: "all of it", partly: "part of it", nothing: "nothing" },
  },
} as const;
