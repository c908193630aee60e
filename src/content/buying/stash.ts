import { formatMeasure } from "../../length/index.ts";
import type { Stash, StashCloth } from "../../stash/types.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines } from "../lines/table.ts";

/** Square inches and square metres in square ticks. */
const SQUARE = { in: 16256 * 16256, m: 640_000 * 640_000 } as const;

type Spoken = "in" | "cm";

function sizeOf({ across, along }: StashCloth, spoken: Spoken): string {
  const [width, length] = [across, along].map((ticks) => formatMeasure(ticks, spoken));
  return `${width} x ${length}`;
}

function columns(words: Words) {
  return [
    { heading: words.choices.drawer.columns.fabric, align: "left" },
    { heading: words.choices.drawer.columns.count, align: "right" },
    { heading: words.choices.drawer.columns.size, align: "left" },
    { heading: words.choices.drawer.columns.note, align: "left" },
  ] as const;
}

/** Cloth as lines of a table, in the order given. */
export function clothLines(cloths: readonly StashCloth[], spoken: Spoken, words: Words): string[] {
  return alignedLines(
    columns(words),
    cloths.map((cloth) => [cloth.fabric, String(cloth.count), sizeOf(cloth, spoken), cloth.note]),
  );
}

function areaOf(cloths: readonly StashCloth[], spoken: Spoken, words: Words): string {
  const area = cloths.reduce((sum, { across, along, count }) => sum + across * along * count, 0);
  const measured = spoken === "in" ? area / SQUARE.in / 1296 : area / SQUARE.m;
  return `${measured.toFixed(2)} ${words.choices.drawer.area[spoken]}`;
}

/** What the drawer holds: one line a row of the table, in its order, and the sum. */
export function stashList(stash: Stash, spoken: Spoken, words: Words): string {
  const cloths = stash.rows.flatMap(({ cloth }) => (cloth === null ? [] : [cloth]));
  const count = cloths.reduce((sum, cloth) => sum + cloth.count, 0);
  if (count === 0) return `${words.choices.drawer.empty}\n`;
  return [
    ...clothLines(cloths, spoken, words),
    "",
    words.choices.drawer.holds(count, areaOf(cloths, spoken, words)),
    "",
  ].join("\n");
}
