import type { SeveralSizes, SizeFabric, SizePlanned } from "../../choices/several-sizes.ts";
import { money } from "./buy.ts";
import { choiceWords } from "./choice-words.ts";
import { sizesWords as words } from "./sizes-words.ts";
import { alignedLines, type Column } from "./table.ts";

function bought(fabric: SizeFabric | undefined): string {
  if (fabric === undefined || fabric.buy === "") return choiceWords.kits.none;
  return fabric.proven ? fabric.buy : `${words.unproven}${fabric.buy}`;
}

/** A row for each thing to tell, a column for each size; the first cell names the row. */
export function sizesRows({ sizes, currency }: SeveralSizes): { heading: string[]; rows: string[][] } {
  const row = (name: string, of: (size: SizePlanned) => string): string[] => [name, ...sizes.map(of)];
  const names = [...new Set(sizes.flatMap(({ fabrics }) => fabrics.map(({ fabric }) => fabric)))];
  const blocks = [...new Set(sizes.flatMap(({ make }) => make.map(({ block }) => block)))];
  const borders = [...new Set(sizes.flatMap(({ border }) => (border === null ? [] : [border.name])))];
  const priced = sizes.every(({ cost }) => cost !== null);
  return {
    heading: [words.size, ...sizes.map((size) => size.heading)],
    rows: [
      ...(sizes.some(({ target, finished }) => target !== null && target !== finished)
        ? [row(words.asked, ({ target }) => target ?? "")]
        : []),
      row(words.finished, ({ finished }) => finished),
      row(words.blocks, ({ blocks: { across, down } }) => words.grid(across, down)),
      ...blocks.map((block) =>
        row(words.make(block), ({ make }) => String(make.find((one) => one.block === block)?.count ?? 0)),
      ),
      ...borders.map((name) =>
        row(words.border(name), ({ border }) => (border?.name === name ? border.width : words.asDrawn)),
      ),
      ...names.map((name) =>
        row(name, ({ fabrics }) => bought(fabrics.find(({ fabric }) => fabric === name))),
      ),
      ...(sizes.some(({ wadding }) => wadding !== null)
        ? [row(words.wadding, ({ wadding }) => wadding ?? "")]
        : []),
      ...(priced ? [row(words.price, ({ cost }) => money(cost ?? 0, currency))] : []),
    ],
  };
}

/** One requirement table for all sizes, a column for each, as a pattern prints it. */
export function sizesTable(several: SeveralSizes): string {
  const { name, sizes, usable } = several;
  const { heading, rows } = sizesRows(several);
  const columns = heading.map((text, i): Column => ({ heading: text, align: i === 0 ? "left" : "right" }));
  const open = sizes.some(({ fabrics }) => fabrics.some(({ proven }) => !proven));
  const beds = sizes.flatMap((size) => (size.from === "" ? [] : [words.bed(size.heading, size.from)]));
  return [
    words.title(name),
    "",
    ...alignedLines(columns, rows),
    ...(open ? [words.notProven] : []),
    "",
    ...beds,
    words.usable(usable),
    words.estimates,
    "",
  ].join("\n");
}
