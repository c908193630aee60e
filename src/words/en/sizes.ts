/** The words of the table of one design in several sizes. */
export const sizes = {
  title: (name: string) => `Requirements for ${name}, by size`,
  size: "Size",
  asked: "asked for",
  finished: "finished size",
  blocks: "blocks, across x down",
  grid: (across: number, down: number) => `${across} x ${down}`,
  make: (block: string) => `make ${block}`,
  border: (name: string) => `${name}, sides / ends`,
  asDrawn: "as drawn",
  wadding: "wadding, at least",
  price: "price",
  unproven: "~",
  notProven: "~ the least found in the time; less is not ruled out (--budget allows more)",
  bed: (asked: string, from: string) => `${asked}: ${from}`,
  usable: (widths: readonly string[]) =>
    `Amounts are for fabric with a usable width of ${widths.join(" or ")}.`,
  estimates: "Beds differ: measure yours, and check the amounts, before you buy.",
} as const;
