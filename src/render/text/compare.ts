import type { Comparison, MethodRow } from "../../choices/compare-methods.ts";
import type { Figures } from "../../choices/making-figures.ts";
import { money } from "./buy.ts";
import { choiceWords } from "./choice-words.ts";
import { alignedLines, type Column } from "./table.ts";

const METRE = 640_000;
const YARD = 585_216;

interface Spoken {
  metric: boolean;
  currency: string;
}

function sewn(length: number, { metric }: Spoken): string {
  return metric ? `${Math.ceil(length / METRE)} m` : `${Math.ceil(length / YARD)} yd`;
}

function area(square: number, { metric }: Spoken): string {
  if (square === 0) return "0";
  return metric
    ? `${((square / METRE / METRE) * 1e4).toFixed(0)} sq cm`
    : `${(square / (16256 * 16256)).toFixed(0)} sq in`;
}

function cells(figures: Figures, spoken: Spoken): string[] {
  return [
    ...figures.fabrics.map(({ buy, proven }) => {
      const said = buy === "" ? choiceWords.kits.none : buy;
      return proven ? said : `${choiceWords.compare.unproven}${said}`;
    }),
    ...(figures.cost === null ? [] : [money(figures.cost, spoken.currency)]),
    String(figures.strips),
    String(figures.subcuts),
    String(figures.seams),
    sewn(figures.seamLength, spoken),
    String(figures.biasSeams),
    String(figures.trims),
    area(figures.corners, spoken),
    String(figures.bonus),
    choiceWords.compare.hours(figures.minutes),
  ];
}

function nameOf({ unit, method, filed }: MethodRow): string {
  return `${unit}: ${method}${filed ? ` ${choiceWords.compare.mark}` : ""}`;
}

/** Every way of making each kind of unit, side by side, and the best combination. */
export function comparisonTable(comparison: Comparison, metric: boolean, currency: string): string {
  const { name, rows, filed, best, combinations, tried, minutes } = comparison;
  const words = choiceWords.compare;
  const spoken = { metric, currency };
  const { columns } = words;
  const right = (heading: string): Column => ({ heading, align: "right" });
  const headings: Column[] = [
    { heading: columns.way, align: "left" },
    ...filed.fabrics.map(({ fabric }) => right(fabric)),
    ...(filed.cost === null ? [] : [right(columns.cost)]),
    ...[columns.strips, columns.subcuts, columns.seams, columns.length, columns.bias].map(right),
    ...[columns.trims, columns.corners, columns.bonus, columns.time].map(right),
  ];
  const possible = rows.flatMap((row) =>
    row.figures === null ? [] : [[nameOf(row), ...cells(row.figures, spoken)]],
  );
  const impossible = rows.filter(({ figures }) => figures === null);
  const spare = rows.some(({ figures }) => figures?.direction === "spares");
  const open = [filed, ...rows.map(({ figures }) => figures)].some((figures) =>
    figures?.fabrics.some(({ proven }) => !proven),
  );
  const chosen = Object.entries(best.methods).map(([unit, method]) => `  ${unit}: ${method}`);
  const said = Object.entries(minutes).map(([step, time]) => `${step} ${time}`);
  return [
    words.title(name),
    words.about,
    "",
    ...alignedLines(headings, [[words.filed, ...cells(filed, spoken)], ...possible]),
    "",
    words.marked,
    ...(open ? [words.notProven] : []),
    ...(spare ? [words.spares] : []),
    ...impossible.map((row) => words.impossible(nameOf(row), row.why)),
    "",
    words.best(tried >= combinations, tried, combinations),
    ...(chosen.length === 0 ? [`  ${words.filed}`] : chosen),
    "",
    ...alignedLines(headings, [["", ...cells(best.figures, spoken)]]),
    "",
    words.figures(said.join(", ")),
    words.change,
    "",
  ].join("\n");
}
