import type { SeveralSizes, SizeFabric, SizePlanned } from "../../choices/sizes/several-sizes.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines, type Column } from "../lines/table.ts";
import { money } from "./buy.ts";

function bought(fabric: SizeFabric | undefined, words: Words): string {
  if (fabric === undefined || fabric.buy === "") return words.choices.kits.none;
  return fabric.proven ? fabric.buy : `${words.sizes.unproven}${fabric.buy}`;
}

/** A row for each thing to tell, a column for each size; the first cell names the row. */
export function sizesRows(
  { sizes, currency }: SeveralSizes,
  words: Words,
): { heading: string[]; rows: string[][] } {
  const row = (name: string, of: (size: SizePlanned) => string): string[] => [name, ...sizes.map(of)];
  const names = [...new Set(sizes.flatMap(({ fabrics }) => fabrics.map(({ fabric }) => fabric)))];
  const blocks = [...new Set(sizes.flatMap(({ make }) => make.map(({ block }) => block)))];
  const borders = [...new Set(sizes.flatMap(({ border }) => (border === null ? [] : [border.name])))];
  const priced = sizes.every(({ cost }) => cost !== null);
  return {
    heading: [words.sizes.size, ...sizes.map((size) => size.heading)],
    rows: [
      ...(sizes.some(({ target, finished }) => target !== null && target !== finished)
        ? [row(words.sizes.asked, ({ target }) => target ?? "")]
        : []),
      row(words.sizes.finished, ({ finished }) => finished),
      row(words.sizes.blocks, ({ blocks: { across, down } }) => words.sizes.grid(across, down)),
      ...blocks.map((block) =>
        row(words.sizes.make(block), ({ make }) =>
          String(make.find((one) => one.block === block)?.count ?? 0),
        ),
      ),
      ...borders.map((name) =>
        row(words.sizes.border(words.purposes.border(name)), ({ border }) =>
          border?.name === name ? border.width : words.sizes.asDrawn,
        ),
      ),
      ...names.map((name) =>
        row(name, ({ fabrics }) =>
          bought(
            fabrics.find(({ fabric }) => fabric === name),
            words,
          ),
        ),
      ),
      ...(sizes.some(({ wadding }) => wadding !== null)
        ? [row(words.sizes.wadding, ({ wadding }) => wadding ?? "")]
        : []),
      ...(priced ? [row(words.sizes.price, ({ cost }) => money(cost ?? 0, currency, words))] : []),
    ],
  };
}

/** One requirement table for all sizes, a column for each, as a pattern prints it. */
export function sizesTable(several: SeveralSizes, words: Words): string {
  const { name, sizes, usable } = several;
  const { heading, rows } = sizesRows(several, words);
  const columns = heading.map((text, i): Column => ({ heading: text, align: i === 0 ? "left" : "right" }));
  const open = sizes.some(({ fabrics }) => fabrics.some(({ proven }) => !proven));
  const beds = sizes.flatMap((size) =>
    size.from === null ? [] : [words.sizes.bed(size.heading, size.from)],
  );
  return [
    words.sizes.title(name),
    "",
    ...alignedLines(columns, rows),
    ...(open ? [words.sizes.notProven] : []),
    "",
    ...beds,
    words.sizes.usable(usable),
    words.sizes.estimates,
    "",
  ].join("\n");
}
