import type { SizeFrom } from "../../../choices/sizes/read-sizes.ts";
import { list } from "../language.ts";

/** `US queen mattress 60 x 80 in, drop 13 in at both sides and foot`. */
function sizeFrom(from: SizeFrom): string {
  if (from.kind === "usual") return `usual ${from.name} size, common practice`;
  const drops = from.drops.map(({ length, sides }) => {
    const both = sides.includes("left") && sides.includes("right");
    const others = sides.filter((side) => !both || (side !== "left" && side !== "right"));
    return `drop ${length} at ${list([...(both ? ["both sides"] : []), ...others])}`;
  });
  const tuck = from.tuck === null ? [] : [`pillow tuck ${from.tuck}`];
  return [`${from.name} mattress ${from.mattress}`, ...drops, ...tuck].join(", ");
}

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
  from: sizeFrom,
  bed: (asked: string, from: SizeFrom) => `${asked}: ${sizeFrom(from)}`,
  usable: (widths: readonly string[]) =>
    `Amounts are for fabric with a usable width of ${widths.join(" or ")}.`,
  estimates: "Beds differ: measure yours, and check the amounts, before you buy.",
} as const;
