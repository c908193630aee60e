import type { Arrangements } from "../../choices/arrange-blocks.ts";
import { money } from "./buy.ts";
import { choiceWords } from "./choice-words.ts";
import { alignedLines, type Column } from "./table.ts";

/** What each arrangement of the blocks takes: fabric, price, pieces and different sizes to cut. */
export function arrangementsTable({ name, arrangements, alike }: Arrangements, currency: string): string {
  const words = choiceWords.arrange;
  const right = (heading: string): Column => ({ heading, align: "right" });
  const [first] = arrangements;
  const fabrics = first?.planned?.fabrics.map(({ fabric }) => fabric) ?? [];
  const priced = first?.planned?.cost != null;
  const headings: Column[] = [
    { heading: words.way, align: "left" },
    ...fabrics.map(right),
    ...(priced ? [right(words.cost)] : []),
    right(words.pieces),
    right(words.sizes),
  ];
  const rows = arrangements.flatMap((one) => {
    const { planned } = one;
    if (planned === null) return [];
    const sum = (of: "pieces" | "sizes") => planned.fabrics.reduce((total, each) => total + each[of], 0);
    const buys = planned.fabrics.map(({ buy }) => (buy === "" ? choiceWords.kits.none : buy));
    const price = priced ? [planned.cost === null ? "" : money(planned.cost, currency)] : [];
    return [[one.name, ...buys, ...price, String(sum("pieces")), String(sum("sizes"))]];
  });
  const not = arrangements.flatMap((one) =>
    one.planned === null ? [words.impossible(one.name, one.why)] : [],
  );
  return [
    words.title(name),
    "",
    ...alignedLines(headings, rows),
    ...(alike ? ["", words.alike] : []),
    ...(not.length === 0 ? [] : ["", ...not]),
    "",
  ].join("\n");
}
