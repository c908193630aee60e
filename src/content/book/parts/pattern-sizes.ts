import type { FabricPlan, Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { instructionsFor, pieceFacts } from "../../index.ts";
import type { Block, Table } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";
import { cuttingGroups } from "./cutting.ts";

/** A size the pattern is for, planned whole. */
export interface PatternSize {
  /** As it heads a column. */
  heading: string;
  finished: string;
  plan: Plan;
}

interface Row {
  letter: string;
  uses: string[];
  cells: Map<number, { count: number; size: string }>;
}

/** Every piece of a fabric with its count, and its size where sizes differ, in a column for each size. */
function pieceRows(name: string, sizes: readonly PatternSize[], words: Words): Row[] {
  const rows = new Map<string, Row>();
  for (const [s, { plan }] of sizes.entries()) {
    const fabric = plan.fabrics.find((each) => each.name === name);
    for (const { letter, count, size, remarks } of fabric === undefined
      ? []
      : pieceFacts(fabric, plan, words)) {
      const row = rows.get(letter) ?? { letter, uses: remarks, cells: new Map() };
      row.cells.set(s, { count, size: typeset(size) });
      rows.set(letter, row);
    }
  }
  return [...rows.values()];
}

function piecesTable(name: string, sizes: readonly PatternSize[], words: Words): Table {
  const { cutting } = words.book.pattern;
  const cell = (text: string, notes: string[] = []) => ({ text, notes, swatch: null });
  const rows = pieceRows(name, sizes, words).map(({ letter, uses, cells }) => {
    const own = [...new Set([...cells.values()].map(({ size }) => size))];
    const counts = sizes.map((_, s) => {
      const found = cells.get(s);
      if (found === undefined) return cell(cutting.none);
      return cell(own.length === 1 ? String(found.count) : cutting.counted(found.count, found.size));
    });
    return [
      cell(letter),
      cell(own.length === 1 ? (own[0] ?? "") : cutting.none),
      cell(uses.map(typeset).join("; ")),
      ...counts,
    ];
  });
  return {
    caption: cutting.caption(name),
    captionSeen: false,
    columns: [
      { heading: sentence(cutting.bag), align: "left" },
      { heading: sentence(cutting.size), align: "left" },
      { heading: sentence(cutting.for), align: "left", wordy: true },
      ...sizes.map(({ heading }) => ({
        heading: sizes.length === 1 ? sentence(cutting.cut) : heading,
        align: "right" as const,
      })),
    ],
    rows,
    summed: false,
    ticks: [],
  };
}

/** Squaring the end is said once for all fabrics. */
function isStraighten(said: string, words: Words): boolean {
  return said.startsWith(words.cutting.straighten("").trimEnd());
}

/** How a fabric is cut for one size, a line for each setting of the ruler. */
function cutLines(plan: Plan, fabric: FabricPlan, words: Words): string[] {
  return instructionsFor(plan, fabric, words)
    .map(({ phrases, parts, notes }) => {
      const inner = parts.map((part) => part.phrases.join("; "));
      return sentence(`${[...phrases, ...inner, ...notes].join("; ")}.`);
    })
    .filter((said) => !isStraighten(said, words));
}

/** One fabric of the pattern: its pieces for every size, and how they are cut. */
export function fabricBlocks(
  fabric: FabricPlan,
  index: number,
  sizes: readonly PatternSize[],
  words: Words,
): Block[] {
  const { cutting } = words.book.pattern;
  const again = cutting.goesOn(fabric.name);
  const table: Block = { kind: "table", table: piecesTable(fabric.name, sizes, words), again };
  const [only] = sizes;
  if (sizes.length < 2 && only !== undefined) {
    const own = only.plan.fabrics.find(({ name }) => name === fabric.name) ?? fabric;
    const groups = cuttingGroups(only.plan, own, `cut-${index + 1}`, words).map(({ title, steps }) => ({
      title,
      // The pattern has no cutting diagram to look at.
      steps: steps
        .filter(({ title: said }) => !isStraighten(said, words))
        .map((step) => ({ ...step, where: "" })),
    }));
    return [table, { kind: "steps", groups, columns: 2, again }];
  }
  return [
    table,
    ...sizes.flatMap(({ heading, plan }): Block[] => {
      const own = plan.fabrics.find(({ name }) => name === fabric.name);
      const lines = own === undefined ? [] : cutLines(plan, own, words);
      if (lines.length === 0) return [];
      return [
        { kind: "heading", text: cutting.strips(heading) },
        { kind: "list", items: lines, columns: 2 },
      ];
    }),
  ];
}

/** How many units and blocks each size wants. */
export function makeTable(sizes: readonly PatternSize[], words: Words): Table | null {
  const rows = new Map<string, { what: string; counts: Map<number, number> }>();
  const add = (s: number, key: string, what: string, count: number): void => {
    const row = rows.get(key) ?? { what, counts: new Map<number, number>() };
    row.counts.set(s, (row.counts.get(s) ?? 0) + count);
    rows.set(key, row);
  };
  for (const [s, { plan }] of sizes.entries()) {
    for (const unit of plan.making?.units ?? []) {
      if (unit.steps.length === 0) continue;
      const key = JSON.stringify([unit.told, unit.method, Object.entries(unit.fabrics)]);
      add(s, key, words.book.pattern.make.unit(unit.name, words.unitNames.told(unit.told)), unit.units);
    }
    for (const { name, colourway, count } of plan.top?.designs ?? []) {
      if (count === 0) continue;
      const called = colourway === "" ? name : `${name}, ${colourway}`;
      add(s, `block ${called}`, called, count);
    }
  }
  if (rows.size === 0 || sizes.length < 2) return null;
  return {
    caption: words.book.pattern.make.caption,
    captionSeen: true,
    columns: [
      { heading: sentence(words.book.pattern.make.what), align: "left" },
      ...sizes.map(({ heading }) => ({ heading, align: "right" as const })),
    ],
    rows: [...rows.values()].map(({ what, counts }) => [
      { text: typeset(what), notes: [], swatch: null },
      ...sizes.map((_, s) => ({
        text: counts.has(s) ? String(counts.get(s)) : words.book.pattern.cutting.none,
        notes: [],
        swatch: null,
      })),
    ]),
    summed: false,
    ticks: [],
  };
}
