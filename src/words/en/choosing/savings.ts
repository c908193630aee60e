import type { Change } from "../../../savings/types.ts";
import { borderName } from "../quilt/border-name.ts";
import { methodName, unitName } from "../quilt/unit-names.ts";

const TURNED: Readonly<Record<number, string>> = { 0: "as drawn", 90: "to the right" };

/** The words of what would save, for the list on the terminal and on the page. */
export const savings = {
  title: (name: string) => `${name}: what would save`,
  columns: ["", "Saves", "Change", "Then to buy"],
  none: (tried: number) => `None of the ${tried} changes that were planned buys less.`,
  tried: (tried: number) =>
    `${tried} changes were planned, each as a file of its own; a width is the nearest that buys less.`,
  take: (file: string) =>
    `To make one of them: crossgrain savings ${file} --take 1 --out changed.yaml. Each saving is counted alone.`,
  more: (amount: string) => `${amount} more`,
  and: ", ",
  noLess: "none",
};

/** A change in a few words. */
export function changeSaid(change: Change): string {
  switch (change.kind) {
    case "style":
      return "strips cut once more along their length";
    case "method":
      return `${unitName(change.unit)}: ${methodName(change.method)}`;
    case "print-free":
      return `${change.fabric} may lie any way up`;
    case "blocks-turned":
      return `every ${change.block} block turned ${TURNED[change.turn] ?? `${change.turn}°`}`;
    case "border-width":
      return `${borderName(change.border)} (${change.fabric}) ${change.width} wide`;
    case "border-cut":
      return change.cut === "lengthwise"
        ? `${borderName(change.border)} (${change.fabric}) cut along the selvage, in one piece`
        : `${borderName(change.border)} (${change.fabric}) joined from strips`;
    case "border-join":
      return `${borderName(change.border)} (${change.fabric}) joined straight, not on the slant`;
    case "border-corners":
      return `${borderName(change.border)} (${change.fabric}) sides first, corners not mitred`;
    case "sash-width":
      return `sashing ${change.width} wide`;
    case "binding-join":
      return "binding joined straight, not on the slant";
    case "block-size":
      return `every block ${change.size} finished`;
  }
}
