import type { BestCombination, Comparison, MethodRow } from "../../choices/methods/comparison.ts";
import type { FabricFigures, Figures } from "../../choices/methods/making-figures.ts";
import { formatLength } from "../../length/format.ts";
import type { Ruler } from "../../length/types.ts";
import type { Words } from "../../words/index.ts";
import { money } from "../buying/buy.ts";

import { alignedLines, type Column } from "../lines/table.ts";

const METRE = 640_000;
const YARD = 585_216;
const INCH = 16_256;

interface Spoken {
  ruler: Ruler;
  currency: string;
}

const right = (heading: string): Column => ({ heading, align: "right" });
const left = (heading: string): Column => ({ heading, align: "left" });

function sewn(length: number, { ruler }: Spoken): string {
  return ruler.unit === "in" ? `${Math.ceil(length / YARD)} yd` : `${Math.ceil(length / METRE)} m`;
}

function area(square: number, { ruler }: Spoken): string {
  if (square === 0) return "0";
  return ruler.unit === "in"
    ? `${Math.ceil(square / INCH ** 2)} sq in`
    : `${Math.ceil((square / METRE ** 2) * 1e4)} sq cm`;
}

function bought({ buy, proven }: FabricFigures, words: Words): string {
  const said = buy === "" ? words.choices.kits.none : buy;
  return proven ? said : `${words.compare.unproven}${said}`;
}

/** Ways under a line that names their kind of unit. */
function byUnit(
  { units, rows, filed }: Comparison,
  cells: (figures: Figures) => string[],
  words: Words,
): string[][] {
  const lines = units.flatMap(({ unit, count }) => [
    [words.compare.unit(words.unitNames.unit(unit), count)],
    ...rows.flatMap(({ unit: own, method, filed: asFiled, figures }) =>
      own === unit && figures !== null
        ? [[`${asFiled ? words.compare.mark : " "} ${method}`, ...cells(figures)]]
        : [],
    ),
  ]);
  return [[words.compare.filed, ...cells(filed)], ...lines];
}

/** Fabrics of which the ways buy unlike amounts; the others are told once. */
function unlike(
  { filed, rows, best }: Comparison,
  words: Words,
): { differ: boolean[]; alike: FabricFigures[] } {
  const all = [...rows.flatMap(({ figures }) => (figures === null ? [] : [figures])), best.figures];
  const differ = filed.fabrics.map((one, i) =>
    all.some(({ fabrics }) => bought(fabrics[i] ?? one, words) !== bought(one, words)),
  );
  return { differ, alike: filed.fabrics.filter((_, i) => !differ[i]) };
}

/** One of the tables of a comparison, with what is said under it. */
export interface ComparisonPart {
  title: string;
  columns: Column[];
  rows: string[][];
  notes: string[];
}

function fabricTable(comparison: Comparison, spoken: Spoken, words: Words): ComparisonPart {
  const { filed } = comparison;
  const { differ, alike } = unlike(comparison, words);
  const priced = filed.cost !== null;
  const said = alike.map((one) => `${one.fabric} ${bought(one, words)}`).join(", ");
  if (!differ.includes(true))
    return { title: "", columns: [], rows: [], notes: [words.compare.allAlike(said)] };
  const columns = [
    left(words.compare.columns.way),
    ...filed.fabrics.flatMap(({ fabric }, i) => (differ[i] ? [right(fabric)] : [])),
    ...(priced ? [right(words.compare.columns.cost)] : []),
  ];
  const cells = ({ fabrics, cost }: Figures): string[] => [
    ...fabrics.flatMap((one, i) => (differ[i] ? [bought(one, words)] : [])),
    ...(priced ? [money(cost ?? 0, spoken.currency, spoken.ruler)] : []),
  ];
  const notes = said === "" ? [] : [words.compare.alike(said)];
  return { title: words.compare.toBuy, columns, rows: byUnit(comparison, cells, words), notes };
}

/** A column of the work, left out where all ways have nothing in it. */
interface WorkColumn {
  heading: string;
  cell: (figures: Figures, spoken: Spoken) => string;
  empty: (figures: Figures) => boolean;
}

function workColumns(words: Words): readonly WorkColumn[] {
  return [
    { heading: words.compare.columns.strips, cell: ({ strips }) => String(strips), empty: () => false },
    { heading: words.compare.columns.subcuts, cell: ({ subcuts }) => String(subcuts), empty: () => false },
    {
      heading: words.compare.columns.apart,
      cell: ({ apart }) => String(apart),
      empty: ({ apart }) => apart === 0,
    },
    { heading: words.compare.columns.seams, cell: ({ seams }) => String(seams), empty: () => false },
    {
      heading: words.compare.columns.length,
      cell: ({ seamLength }, spoken) => sewn(seamLength, spoken),
      empty: () => false,
    },
    {
      heading: words.compare.columns.bias,
      cell: ({ biasEdges }) => String(biasEdges),
      empty: (one) => one.biasEdges === 0,
    },
    {
      heading: words.compare.columns.trims,
      cell: ({ trims }) => String(trims),
      empty: ({ trims }) => trims === 0,
    },
    {
      heading: words.compare.columns.corners,
      cell: ({ corners }, spoken) => area(corners, spoken),
      empty: ({ corners }) => corners === 0,
    },
    {
      heading: words.compare.columns.print,
      cell: ({ direction }) => words.compare.direction[direction],
      empty: ({ direction }) => direction === "none",
    },
    {
      heading: words.compare.columns.time,
      cell: ({ minutes }) => words.compare.hours(minutes),
      empty: () => false,
    },
  ];
}

function workTable(comparison: Comparison, spoken: Spoken, words: Words): ComparisonPart {
  const { filed, rows, best } = comparison;
  const all = [filed, best.figures, ...rows.flatMap(({ figures }) => (figures === null ? [] : [figures]))];
  const used = workColumns(words).filter(({ empty }) => !all.every(empty));
  const columns = [left(words.compare.columns.way), ...used.map(({ heading }) => right(heading))];
  const cells = (figures: Figures) => used.map(({ cell }) => cell(figures, spoken));
  const notes = used.flatMap(({ heading }) => words.compare.explained[heading] ?? []);
  return { title: words.compare.work, columns, rows: byUnit(comparison, cells, words), notes };
}

function tableLines({ title, columns, rows }: ComparisonPart): string[] {
  return rows.length === 0 ? [] : [title, ...alignedLines(columns, rows)];
}

/** Triangles that can be sewn from the corners cut off, way by way. */
function bonusLines({ rows, filed }: Comparison, { ruler }: Spoken, words: Words): string[] {
  const said = (figures: Figures) =>
    figures.bonus
      .map(({ kind, count, unfinished }) =>
        words.compare.bonusOf(count, kind, formatLength(unfinished, ruler)),
      )
      .join(", ");
  const found = rows.flatMap((row) => {
    const { figures } = row;
    if (figures === null || figures.bonus.length === 0 || said(figures) === said(filed)) return [];
    return [words.compare.bonus(nameOf(row), said(figures))];
  });
  const own = filed.bonus.length === 0 ? [] : [words.compare.bonus(words.compare.filed, said(filed))];
  return own.length + found.length === 0 ? [] : ["", words.compare.bonusTitle, ...own, ...found];
}

const nameOf = ({ unit, method }: MethodRow) => `${unit}, ${method}`;

/** What the best saves against the file, in words; empty when nothing. */
function saved(filed: Figures, best: Figures, { currency }: Spoken, words: Words): string {
  const less = best.fabrics.flatMap((one, i) => {
    const old = filed.fabrics[i];
    return old === undefined || old.buy === one.buy
      ? []
      : [words.compare.instead(one.fabric, bought(one, words), bought(old, words))];
  });
  const money_ =
    filed.cost !== null && best.cost !== null && best.cost < filed.cost
      ? [words.compare.saves(money(filed.cost - best.cost, currency, words))]
      : [];
  const time =
    best.minutes < filed.minutes
      ? [words.compare.saves(words.compare.hours(filed.minutes - best.minutes))]
      : [];
  return [...less, ...money_, ...time].join("; ");
}

function proofLine(
  { proven, combinations, tried, least }: BestCombination,
  { measure }: Comparison,
  { currency }: Spoken,
  words: Words,
): string {
  if (proven) return words.compare.proved(combinations, measure);
  const bound = measure === "cost" && least > 0 ? words.compare.atLeast(money(least, currency, words)) : "";
  return words.compare.notProved(tried, combinations, bound);
}

function bestLines(comparison: Comparison, spoken: Spoken, words: Words): string[] {
  const { best, filed } = comparison;
  const methods = Object.entries(best.methods);
  const proof = proofLine(best, comparison, spoken, words);
  if (methods.length === 0) return [words.compare.bestAsFiled, `  ${proof}`];
  const { cost, minutes, fabrics } = best.figures;
  const buys = fabrics.map((one) => `${one.fabric} ${bought(one, words)}`).join(", ");
  return [
    words.compare.best,
    "",
    "  methods:",
    ...methods.map(
      ([unit, method]) => `    ${words.unitNames.unit(unit)}: ${words.unitNames.method(method)}`,
    ),
    "",
    `  ${words.compare.buys(buys)}`,
    ...(cost === null
      ? []
      : [`  ${words.compare.columns.cost}: ${money(cost, spoken.currency, spoken.ruler)}`]),
    `  ${words.compare.columns.time}: ${words.compare.hours(minutes)}`,
    ...[saved(filed, best.figures, spoken, words)].flatMap((said) =>
      said === "" ? [] : [`  ${words.compare.against(said)}`],
    ),
    `  ${proof}`,
  ];
}

/** What a comparison says, part by part, for whoever sets it out. */
export interface ComparisonParts {
  fabric: ComparisonPart;
  work: ComparisonPart;
  /** Ways that cannot be taken, and why. */
  impossible: string[];
  /** Whether an amount is marked as not settled. */
  open: boolean;
  best: string[];
  minutes: string[];
}

/** The parts of a comparison in words, as `comparisonTable` prints them. */
export function comparisonParts(comparison: Comparison, ruler: Ruler, words: Words): ComparisonParts {
  const { rows, filed, best, minutes, currency } = comparison;
  const spoken = { ruler, currency };
  const all = [filed, best.figures, ...rows.map(({ figures }) => figures)];
  const { metre, ...others } = minutes;
  const sewing = ruler.unit === "in" ? { yard: Number((metre * 0.9144).toFixed(2)) } : { metre };
  const said = Object.entries({ ...others, ...sewing }).map(([step, time]) => `${step} ${time}`);
  return {
    fabric: fabricTable(comparison, spoken, words),
    work: workTable(comparison, spoken, words),
    impossible: rows.flatMap((row) =>
      row.why === null ? [] : [words.compare.impossible(nameOf(row), words.whyNot(row.why))],
    ),
    open: all.some((figures) => figures?.fabrics.some(({ proven }) => !proven)),
    best: bestLines(comparison, spoken, words),
    minutes: [words.compare.figures, words.compare.minutes(said.join(", "))],
  };
}

/** Every way of making each kind of unit, side by side, and the best combination. */
export function comparisonTable(comparison: Comparison, ruler: Ruler, words: Words): string {
  const { fabric, work, impossible, open, best, minutes } = comparisonParts(comparison, ruler, words);
  return [
    words.compare.title(comparison.name),
    words.compare.about,
    "",
    ...tableLines(fabric),
    ...fabric.notes,
    ...(open ? [words.compare.notProven] : []),
    "",
    ...tableLines(work),
    "",
    ...work.notes,
    ...bonusLines(comparison, { ruler, currency: comparison.currency }, words),
    ...(impossible.length === 0 ? [] : ["", words.compare.notThisWay]),
    ...impossible,
    "",
    ...best,
    "",
    ...minutes,
    words.compare.change,
    "",
  ].join("\n");
}
