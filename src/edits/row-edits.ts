import { cellsOf, linesOf } from "./drawing-text.ts";
import { type PlacedModel, readModel } from "./model.ts";
import { type Place, withRows, wordOf } from "./quilt-edits.ts";
import { readText, valueAt, withoutValue, withValue } from "./text-edit.ts";

/** Most blocks of one row. */
const MOST = 100;

/** The words of the rows as they stand once every block is written out. */
function wordsOf(text: string): string[][] {
  const { setting } = readModel(text);
  if (setting.filled) return setting.rows.map((row) => row.map(wordOf));
  return linesOf(valueAt(readText(text), ["setting", "rows"])).map(cellsOf);
}

function withRow(text: string, row: number, words: readonly string[]): string {
  return withRows(
    text,
    wordsOf(text).map((line, r) => (r === row ? words : line).join(" ")),
  );
}

/** One more block in a straight row, behind the place named; the row grows by it, the others stay. */
export function insertPlaced(text: string, { row, column }: Place, placed: PlacedModel): string {
  const words = wordsOf(text)[row];
  if (words?.[column] === undefined || words.length >= MOST || !isStraight(text)) return text;
  return withRow(text, row, words.toSpliced(column + 1, 0, wordOf(placed)));
}

/** Takes one block out of a straight row, which is shorter by it; the last of a row stays. */
export function removePlaced(text: string, { row, column }: Place): string {
  const words = wordsOf(text)[row];
  if (words?.[column] === undefined || words.length < 2 || !isStraight(text)) return text;
  return withRow(text, row, words.toSpliced(column, 1));
}

const isStraight = (text: string): boolean => readModel(text).setting.layout === "straight";

/** Lays the rows on their side, as columns, or level again. The whole setting is turned, blocks and all. */
export function standOnEnd(text: string, onEnd: boolean): string {
  const path = ["setting", "turn"];
  if ((readModel(text).setting.turn % 180 !== 0) === onEnd) return text;
  return onEnd ? withValue(text, path, 90) : withoutValue(text, path);
}
