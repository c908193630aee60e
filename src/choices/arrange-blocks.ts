import type { CutPiece, Subcut } from "../cutlist/types.ts";
import { nothingToTurn } from "../diagnostics/choices.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { formatSize } from "../length/index.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { FabricPlan, Plan } from "../plan/types.ts";
import { exactToNumber, fillRows, layOutQuilt, type QuiltTop } from "../quilt/index.ts";
import type { DrawnCell, QuarterTurn, QuiltSpec, Spec } from "../spec/index.ts";
import { quickSolve } from "./quick-solve.ts";
import { mirrorTurns, type Turning, turnings } from "./turnings.ts";

/** One size to cut for an arrangement. */
export interface ArrangedPiece {
  letter: string;
  /** Across x along, as the ruler reads. */
  size: string;
  count: number;
  /** How it is cut further: squares are halved on one diagonal, which a print with an up decides, or on both. */
  subcut: Subcut;
  diagonal: CutPiece["diagonal"];
}

/** What one fabric comes to in an arrangement. */
export interface ArrangedFabric {
  fabric: string;
  buy: string;
  /** Hundredths; null without a price. */
  cost: number | null;
  /** No smaller purchase can do. */
  proven: boolean;
  pieces: ArrangedPiece[];
}

/** How the seams of an arrangement nest, pressed as well as can be. */
export interface Nesting {
  /** Places where two seams meet across a joining seam. */
  places: number;
  /** Those where they lie on one another. */
  unNested: number;
  /** No pressing leaves fewer un-nested. */
  proven: boolean;
  /** Blocks of one design are pressed in this many ways. */
  ways: 1 | 2;
}

/** The blocks of a quilt turned one way, and what that takes. */
export interface Arrangement {
  /** As it is named on the command line; `file` for the file's own. */
  key: string;
  name: string;
  /** The rows of the setting as a file has them. */
  rows: string[];
  /** Null when the quilt cannot be set so; `why` then says why not. */
  planned: {
    top: QuiltTop;
    fabrics: ArrangedFabric[];
    /** Hundredths; null when a fabric has no price. */
    cost: number | null;
    /** Square ticks bought. */
    bought: number;
    /** Null when the top is not laid in rows of whole blocks. */
    nesting: Nesting | null;
    /** What this arrangement makes necessary, as units made another way to keep a print upright. */
    notes: string[];
  } | null;
  why: string;
}

/** Arrangements side by side. Plain data. */
export interface Arrangements {
  name: string;
  seed: number;
  currency: string;
  arrangements: Arrangement[];
  /** All of them buy and cut the same. */
  alike: boolean;
  /** Blocks that no turn shows as their mirror image: in pairs they are only turned to face one another. */
  noMirror: string[];
}

/** Told what is being planned, of how much. */
type Told = (done: number, of: number) => void;

/** The same quilt with every block of the setting turned so, whatever the file says of its turn. */
export function turnBlocks(
  spec: QuiltSpec,
  { turn }: Pick<Turning, "turn">,
  mirrorOf: (cell: DrawnCell) => QuarterTurn | null = () => 0,
): QuiltSpec {
  const blocks = new Set(spec.blocks.map(({ key }) => key));
  const rows = fillRows(spec);
  const across = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const turned = rows.map((row, r) => ({
    ...row,
    cells: row.cells.map((cell, c) => {
      if (!blocks.has(cell.code)) return cell;
      // A shorter row stands half a block in for each block it has fewer.
      const x = c + (across - row.cells.length) / 2 - (across - 1) / 2;
      const y = r - (rows.length - 1) / 2;
      return { ...cell, turn: turn({ row: r, column: c, x, y, mirror: mirrorOf(cell) }) };
    }),
  }));
  return { ...spec, setting: { ...spec.setting, rows: turned, fill: null } };
}

const MARKS: Readonly<Record<QuarterTurn, string>> = { 0: "", 90: ">", 180: "v", 270: "<" };

/** The rows of a setting as they are written in a file. */
export function writtenRows(spec: QuiltSpec): string[] {
  const known = new Set(spec.blocks.map(({ key }) => key));
  const written = ({ code, turn, colourway }: DrawnCell): string => {
    // A code that would be read as another with its mark is turned in degrees.
    const mark = turn !== 0 && known.has(`${code}${MARKS[turn]}`) ? `:${turn}` : MARKS[turn];
    return `${code}${mark}${colourway === "" ? "" : `/${colourway}`}`;
  };
  const rows = fillRows(spec).map(({ cells }) => cells.map(written));
  const width = Math.max(0, ...rows.flat().map((word) => word.length));
  return rows.map((row) =>
    row
      .map((word) => word.padEnd(width))
      .join(" ")
      .trimEnd(),
  );
}

function fabricOf({ name, purchase, bound, pieces }: FabricPlan, { ruler }: Plan): ArrangedFabric {
  return {
    fabric: name,
    buy: purchase?.text ?? "",
    cost: purchase === null ? 0 : purchase.cost,
    proven: bound.purchaseProven,
    pieces: pieces.map(({ letter, across, along, count, subcut, diagonal }) => ({
      letter,
      size: formatSize(across, along, ruler),
      count,
      subcut,
      diagonal,
    })),
  };
}

function nestingOf({ making }: Plan): Nesting | null {
  const pressing = making?.pressing ?? null;
  if (pressing === null) return null;
  const { junctions, open, proven, variants } = pressing;
  return { places: junctions, unNested: open.length, proven, ways: variants };
}

const noted = (diagnostics: readonly Diagnostic[]): string[] =>
  diagnostics.flatMap(({ code, message }) => (code.startsWith("DIRECTION-") ? [message] : []));

function summed(plan: Plan, top: QuiltTop, known: ReadonlySet<string>): NonNullable<Arrangement["planned"]> {
  const fabrics = plan.fabrics.map((fabric) => fabricOf(fabric, plan));
  const costs = fabrics.map(({ cost }) => cost);
  const cost = costs.includes(null) ? null : costs.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const bought = plan.fabrics.reduce((sum, { width, purchase }) => sum + width * (purchase?.length ?? 0), 0);
  const notes = noted(plan.diagnostics).filter((message) => !known.has(message));
  return { top, fabrics, cost, bought, nesting: nestingOf(plan), notes };
}

/**
 * The quarter-turn arrangements of the blocks of a quilt, each planned: as the file has it, all one way in the
 * four ways, left and right by turns, about the centre, in mirrored pairs, and by chance.
 * @param only keys of those wanted besides the file's own; null for all
 */
export async function arrangeBlocks(
  spec: Spec,
  seed: number,
  options: PlanOptions,
  solve: Solve,
  only: readonly string[] | null = null,
  told: Told = () => {},
): Promise<Outcome<Arrangements>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToTurn()] };
  const quick = quickSolve(solve);
  const mirrors = mirrorsOf(spec);
  const ways = turnings(seed).filter(({ key }) => only === null || only.includes(key));
  const all = [
    { key: "file", name: "as the file has it", asked: spec },
    ...ways.map((way) => ({ ...way, asked: turnBlocks(spec, way, mirrors.of) })),
  ];
  const arrangements: Arrangement[] = [];
  let known: ReadonlySet<string> = new Set();
  for (const [done, { key, name, asked }] of all.entries()) {
    told(done, all.length);
    const { value, diagnostics } = await planSpec(asked, options, quick);
    if (done === 0 && value === null) return { value: null, diagnostics };
    const error = diagnostics.find(({ severity }) => severity === "error");
    const planned = value === null || value.top === null ? null : summed(value, value.top, known);
    if (done === 0) known = new Set(noted(diagnostics));
    const oblong = mirrors.oblong.length > 0 && turnsAQuarter(asked);
    const fault = oblong ? notSquare(mirrors.oblong) : (error?.message ?? "");
    const why = planned === null ? fault : "";
    arrangements.push({ key, name, rows: writtenRows(asked), planned, why });
  }
  const figures = arrangements.flatMap(({ planned }) =>
    planned === null ? [] : [JSON.stringify(planned.fabrics)],
  );
  const alike = new Set(figures).size === 1;
  const currency = spec.fabrics.find(({ price }) => price !== null)?.price?.currency ?? "";
  const noMirror = ways.some(({ key }) => key === "pairs") ? mirrors.none : [];
  return { value: { name: spec.name, seed, currency, arrangements, alike, noMirror }, diagnostics: [] };
}

const turnsAQuarter = (spec: QuiltSpec): boolean =>
  fillRows(spec).some(({ cells }) => cells.some(({ turn }) => turn % 180 !== 0));

const notSquare = (blocks: readonly string[]): string =>
  `${blocks.join(", ")} ${blocks.length === 1 ? "is" : "are"} not square, and turned a quarter ${
    blocks.length === 1 ? "it does" : "they do"
  } not fit the rows.`;

interface Mirrors {
  of: (cell: DrawnCell) => QuarterTurn | null;
  none: string[];
  /** Blocks of the rows that are not square. */
  oblong: string[];
}

/** By what turn each block of the rows shows its mirror image. */
function mirrorsOf(spec: QuiltSpec): Mirrors {
  const top = layOutQuilt(spec).value?.top;
  if (top === undefined) return { of: () => 0, none: [], oblong: [] };
  const turns = mirrorTurns(top);
  const rows = fillRows(spec);
  const found = new Map<string, { turn: QuarterTurn | null; name: string }>();
  const keyOf = ({ code, colourway }: DrawnCell) => `${code}/${colourway}`;
  for (const { place, row, column, design } of top.blocks) {
    const cell = rows[row]?.cells[column];
    if (place !== "block" || cell === undefined) continue;
    found.set(keyOf(cell), { turn: turns[design] ?? null, name: top.designs[design]?.name ?? "" });
  }
  const none = [...found.values()].flatMap(({ turn, name }) => (turn === null ? [name] : []));
  const oblong = top.blocks.flatMap(({ place, design }) => {
    const own = top.designs[design];
    if (place !== "block" || own === undefined) return [];
    return exactToNumber(own.across) === exactToNumber(own.down) ? [] : [own.name];
  });
  return {
    of: (cell) => found.get(keyOf(cell))?.turn ?? null,
    none: [...new Set(none)],
    oblong: [...new Set(oblong)],
  };
}
