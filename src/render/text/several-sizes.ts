import type { SizePlanned } from "../../choices/several-sizes.ts";
import { choiceWords } from "./choice-words.ts";
import { alignedLines, type Column } from "./table.ts";

/** One requirement table for all sizes, a column for each. */
export function sizesTable(name: string, sizes: readonly SizePlanned[]): string {
  const { title, fabric, finished, blocks } = choiceWords.sizes;
  const headings: Column[] = [
    { heading: fabric, align: "left" },
    ...sizes.map(
      (size): Column => ({ heading: blocks(size.blocks.across, size.blocks.down), align: "right" }),
    ),
  ];
  const names = [...new Set(sizes.flatMap(({ fabrics }) => fabrics.map((one) => one.fabric)))];
  const buyOf = (size: SizePlanned, wanted: string) => {
    const buy = size.fabrics.find((one) => one.fabric === wanted)?.buy ?? "";
    return buy === "" ? choiceWords.kits.none : buy;
  };
  const rows = [
    [finished, ...sizes.map((size) => size.finished)],
    ...names.map((wanted) => [wanted, ...sizes.map((size) => buyOf(size, wanted))]),
  ];
  return [title(name), "", ...alignedLines(headings, rows), ""].join("\n");
}
