import { Stock } from "./bags.ts";
import { BlockReader, blockNames, Names } from "./blocks.ts";
import { readCutting } from "./cutting.ts";
import { FoundationReader } from "./foundation.ts";
import { amountOf, type Fault, type Line, NUM, unwrapped } from "./printed.ts";
import { withoutTables } from "./tables.ts";
import { TopReader } from "./tops.ts";
import { UnitReader } from "./units.ts";

/** Titles under which lines are read, each in its own way. */
const TITLES =
  /^(On the gridded foundation|Units|Blocks|Block .*|Rows and top|Diagonal rows and top|Columns and top|The top|Borders|Finishing|Pressing, looked at as a whole|With needle and iron:)$/;

/** Told of all units or blocks alike: no bag, no count. */
const GENERAL =
  /^(Make one first, measure it|Heads are the ends of a print's figures|Measure before you cut anything off\.|You also cut apart what is sewn|Every block lies upright|Measure each block\.|Turned right is a quarter turn|Chain-piece|Units that stand in a table are sewn alike)/;

function section(lines: readonly Line[]): { title: string; lines: Line[] }[] {
  const found: { title: string; lines: Line[] }[] = [];
  for (const line of lines) {
    if (line.indent === 0 && line.text !== "" && (TITLES.test(line.text) || found.length === 0))
      found.push({ title: line.text, lines: [] });
    else if (line.text !== "") found.at(-1)?.lines.push(line);
  }
  return found;
}

/** What stands before the first title that is work: allowance, totals, thread. */
function amounts(lines: readonly Line[], faults: Fault[]): { seam: number; seams: number } {
  let [seam, seams] = [Number.NaN, Number.NaN];
  for (const { text } of lines) {
    const allowance = new RegExp(
      `^Seam allowance (${NUM}) (?:in|cm)\\. Sizes are as sewn, seam allowance included\\.$`,
    ).exec(text);
    const total = /^About \d+ (?:yd|m) of piecing seams, (\d+) seams? in all\.$/.exec(text);
    if (allowance !== null) seam = amountOf(allowance[1] ?? "");
    else if (total !== null) seams = Number(total[1]);
    else if (
      !/^(Lengths and amounts are estimates|About \d+ (yd|m) of thread|Quilting |Keep fingers|Take pins|An iron burns)/.test(
        text,
      )
    )
      faults.push(`cannot read "${text}"`);
  }
  return { seam, seams };
}

/** Pieces that steps.txt itself says are over: `side setting triangles (34 of 36)`. */
function namedOver(stock: Stock): void {
  for (const { letter, use } of stock.cutting.bags.values()) {
    const at = /\((\d+) of (\d+)\)/.exec(use);
    if (at !== null) stock.over.set(letter, Number(at[2]) - Number(at[1]));
  }
}

/** `Over when all is sewn: 5 halves of B (hens), 2 of C (sky).` and pieces of the maker's own. */
function over(text: string, stock: Stock): boolean {
  const at =
    /^(?:Over when all units are sewn|Sewn by no step here, as the file lists them by themselves): (.*)\.$/.exec(
      text,
    );
  if (at === null) return false;
  for (const each of (at[1] ?? "").split("; ")) {
    const own = /^(\d+) (?:halves of |half of |quarters? of |of )([A-Z]+\d*) \(.*\)$/.exec(each);
    if (own === null) stock.fault(`cannot read "${each}"`);
    else stock.over.set(own[2] ?? "", (stock.over.get(own[2] ?? "") ?? 0) + Number(own[1]));
  }
  return true;
}

/** Lines of pressing as a whole tell of places found by geometry; their sums are held elsewhere. */
const WHOLE =
  /^(Every step says how its seams|All \d+ places? where|Of \d+ places? where|No seams meet|Blocks that are pressed in two ways|Where seams meet, at most|That is within|More than \d+ layers|\d+ layers |and \d+ (places? )?more|[\d /.]+ (in|cm) from the left)/;

/** A block that has no rows: its units are joined round its middle, the first seam in two goes. */
const WHORL = /^Block .* cannot be sewn in straight seams alone\./;

function whorl(lines: readonly Line[], stock: Stock): void {
  for (const { text } of lines) {
    const at = /^(.+) \(make (\d+)\), its units line by line from the upper left: (.*)\.$/.exec(text);
    if (at !== null) {
      const [, name = "", count, units = ""] = at;
      const parts = units.split(", ");
      for (const part of parts) stock.take(part, Number(count));
      stock.seams += (parts.length - 1) * Number(count);
      stock.make(name, Number(count), null);
    } else if (!/^\[ \] (Sew the .* unit to the middle one|Sew on the|Close the first seam)/.test(text))
      stock.fault(`cannot read "${text}"`);
  }
}

/** Follows every piece from the first cut to the last row, by the two texts alone. */
export function follow(steps: string, sewing: string): Fault[] {
  const metric = / cm x WOF| cm square/.test(steps);
  const [keep, mark, square] = metric ? [5, 0.25, 1] : [2, 1 / 8, 1 / 2];
  const { cutting, faults } = readCutting(steps, keep);
  const stock = new Stock(cutting);
  const lines = unwrapped(sewing, 98);
  const sections = section(lines);
  const names = new Names(blockNames(lines));
  const head = sections
    .filter(({ title }) => title === sections[0]?.title || title.startsWith("With needle"))
    .flatMap((own) => own.lines);
  const before = lines.filter(
    ({ text, indent }) => indent === 0 && /^(Lengths and amounts|Seam allowance|About |Quilting )/.test(text),
  );
  const { seam, seams } = amounts([...before, ...head.filter(({ indent }) => indent > 0)], faults);
  const blocks = new BlockReader(stock, names, seam, mark);
  const top = new TopReader(stock, names, seam, mark, keep);
  let made = false;
  const blocksDone = (): void => {
    if (!made) blocks.done();
    made = true;
  };
  namedOver(stock);
  for (const { title, lines: own } of sections) {
    if (title === "Units") readUnits(withoutTables(own, stock.faults), stock, seam, { square, mark });
    else if (title === "On the gridded foundation") {
      const foundation = new FoundationReader(stock, seam);
      for (const line of own) foundation.line(line);
    } else if (WHORL.test(title)) whorl(own, stock);
    else if (blocks.title(title))
      for (const line of own.filter(({ text }) => !GENERAL.test(text))) blocks.line(line);
    else if (title === "Blocks")
      for (const { text } of own) !GENERAL.test(text) && stock.fault(`cannot read "${text}"`);
    else if (/top$|^Borders$/.test(title)) {
      blocksDone();
      for (const line of own) top.line(line);
    } else if (title === "Finishing") {
      blocksDone();
      for (const line of own) if (!over(line.text, stock)) top.finish(line);
    } else if (title.startsWith("Pressing, looked"))
      for (const { text } of own) !WHOLE.test(text) && stock.fault(`cannot read "${text}"`);
    else if (title !== sections[0]?.title && !title.startsWith("With needle"))
      stock.fault(`cannot read "${title}"`);
  }
  top.done();
  stock.settle();
  if (stock.seams !== seams) stock.fault(`${seams} seams in all, ${stock.seams} sewn`);
  return [...faults, ...stock.faults];
}

function readUnits(
  lines: readonly Line[],
  stock: Stock,
  seam: number,
  keep: { square: number; mark: number },
): void {
  let unit: UnitReader | null = null;
  for (const line of lines) {
    if (GENERAL.test(line.text) || over(line.text, stock)) continue;
    if (/^\[ \] U\d+: /.test(line.text)) {
      unit?.done();
      unit = new UnitReader(line.text, stock, seam, keep);
    } else if (unit === null) stock.fault(`cannot read "${line.text}"`);
    else unit.line(line);
  }
  unit?.done();
}
