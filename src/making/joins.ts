import { exactToNumber, straightSplit } from "../quilt/index.ts";
import type { BlockDesign, QuiltTop } from "../quilt/types.ts";
import { asSewn } from "./as-sewn.ts";
import { leftToSew, rowsAreMade, sectionOfRef, sectionsOf } from "./foundation.ts";
import type { FoundationMaking } from "./foundation-types.ts";
import { CORE, type ReadTop } from "./read-top.ts";
import { type Box, boxAround, type Cell, type Tree } from "./tiling.ts";
import type { JoinName, JoinPart, JoinStep, PartialSeam, RawSize } from "./types.ts";

type Of = Pick<JoinStep, "stage" | "design" | "count">;

/** A finished box with its seam allowance all round. */
function raw({ across, down }: Box, seam: number): RawSize {
  return { across: across + 2 * seam, down: down + 2 * seam };
}

/** Rows made on foundation count from here down: row 1 is -2. */
const ROW_MADE = -2;

type Way = JoinStep["way"];
type Naming = (within: JoinName | null, way: Way, index: number) => JoinName;

/** Names of the parts of a joining: rows of the whole, then places within a row. */
function partName(within: JoinName | null, way: Way, index: number): JoinName {
  const number = index + 1;
  if (within === null) return { is: "line", line: way === "down" ? "row" : "column", number };
  return { is: "part", line: way === "down" ? "row" : "part", number, of: within };
}

const STRIPS: Record<Way, readonly JoinName[]> = {
  down: [
    { is: "strip", side: "top" },
    { is: "between", with: "sides" },
    { is: "strip", side: "bottom" },
  ],
  across: [
    { is: "strip", side: "left" },
    { is: "between", with: "ends" },
    { is: "strip", side: "right" },
  ],
};

/** The same of a round of borders. */
function stripName(within: JoinName | null, way: Way, index: number): JoinName {
  return (within === null ? STRIPS[way][index] : undefined) ?? partName(within, way, index);
}

interface Leaf {
  name: JoinName;
  part: JoinPart;
}

const MADE: JoinPart = { of: "made" };

/** What the joinings of a tree have in common. */
interface Joining {
  of: Of;
  /** What the last joining makes. */
  whole: JoinName;
  leaf: (ref: number) => Leaf;
  naming: Naming;
  /** The seam allowance, in the scale of the top as read. */
  seam: number;
  scale: number;
}

/** Every joining of a tree, what is sewn first standing first; `name` is that of the tree, null for the whole. */
function joinsIn(tree: Tree, name: JoinName | null, joining: Joining): JoinStep[] {
  if (tree.kind !== "join") return [];
  const { of, whole, leaf, naming, seam, scale } = joining;
  const before = tree.parts.flatMap((part, i) => joinsIn(part, naming(name, tree.way, i), joining));
  const own = tree.parts.map(
    (part, i): Leaf =>
      part.kind === "cell" ? leaf(part.ref) : { name: naming(name, tree.way, i), part: MADE },
  );
  const size = raw(tree.box, seam);
  const parts = tree.parts.map((part) => raw(part.box, seam));
  const along = tree.way === "across" ? size.down : size.across;
  const made: JoinStep = {
    ...of,
    makes: name ?? whole,
    from: own.map((each) => each.name),
    takes: own.map(({ part }) => part),
    way: tree.way,
    at: { x: tree.box.x, y: tree.box.y },
    parts,
    size,
    seams: parts.length - 1,
    seamLength: Math.round(along / scale),
  };
  return [...before, made];
}

/** Joinings in the order of sewing, and seams that are sewn in two goes, which are no joinings of their own. */
export interface Joinings {
  joins: JoinStep[];
  partial: PartialSeam[];
}

/** The joinings of the blocks, then of the rows and the top, then of the borders, in the order of sewing. */
export function listJoins(
  top: QuiltTop,
  read: ReadTop,
  seam: number,
  foundation: FoundationMaking | null,
  mark: number,
): Joinings {
  const allowance = seam * read.scale;
  const common = { naming: partName, seam: allowance, scale: read.scale };
  const joins: JoinStep[] = [];
  const partial: PartialSeam[] = [];
  for (const [design, { name, units, count }] of top.designs.entries()) {
    const tree = read.designs[design]?.tree;
    if (tree === undefined || count === 0) continue;
    const left = leftToSew(foundation, design, tree);
    // Of parts that are laid on a folded foundation every one is sewn; of one pieced on it, what is not on it.
    const sewn = left.find(({ like }) => like === null)?.tree ?? tree;
    if (hasWhorl(sewn))
      partial.push({ design, ...whorlsOf(sewn, read.scale, seam), divides: dividesOf(units) });
    const sections = sectionsOf(foundation, design);
    const leaf = (ref: number): Leaf => {
      const section = sectionOfRef(ref);
      if (section === null)
        return { name: { is: "unit", kind: units[ref]?.kind ?? "" }, part: { of: "unit", unit: ref } };
      const letters = sections[section]?.letters ?? [];
      return { name: { is: "foundation", per: foundation?.per ?? "unit", letters }, part: MADE };
    };
    for (const own of left) {
      const stage = own.like === null ? "block" : "unit";
      const of = { stage, design, count: own.count ?? count } as const;
      const makes: JoinName = own.like === null ? { is: "block", name } : { is: "alike", number: own.like };
      const sewn = joinsIn(own.tree, null, { ...common, of, whole: makes, leaf });
      const larger = sections.length === 0 ? (top.designs[design] ?? {}) : {};
      joins.push(...asSewn(sewn, larger, allowance, mark * read.scale, read.scale));
    }
  }
  const leaf = (ref: number): Leaf => ({ name: cellName(top, read, ref), part: cellPart(read, ref) });
  // Diagonal rows end in triangles, so their sizes and seams are told by the drawing alone.
  if (!read.tilted) {
    const of = { stage: "top", design: null, count: 1 } as const;
    const centre = rowsAreMade(foundation) ? withRowsMade(read.centre) : read.centre;
    joins.push(...joinsIn(centre, null, { ...common, of, whole: { is: "centre" }, leaf }));
  }
  for (const { border, tree } of read.rings) {
    if (tree === null) continue;
    const of = { stage: "border", design: null, count: 1 } as const;
    const whole: JoinName = { is: "top-with", border: top.borders[border]?.name ?? border + 1 };
    joins.push(...joinsIn(tree, null, { ...common, of, whole, leaf, naming: stripName }));
  }
  return { joins, partial };
}

/** The centre when its rows come off the foundation sewn: nothing is left of a single row. */
function withRowsMade(tree: Tree): Tree {
  if (tree.kind !== "join") return tree;
  if (tree.way === "across") return { kind: "cell", box: tree.box, ref: ROW_MADE };
  const parts = tree.parts.map(({ box }, row): Tree => ({ kind: "cell", box, ref: ROW_MADE - row }));
  return { ...tree, parts };
}

type Sewn = Pick<PartialSeam, "order" | "seams" | "seamLength">;

/** Order and length of the seams of every whorl in a tree; the order of the first that is four units round one. */
function whorlsOf(tree: Tree, scale: number, seam: number): Sewn {
  if (tree.kind === "cell") return { order: null, seams: 0, seamLength: 0 };
  if (tree.kind === "join") {
    const own = tree.parts.map((part) => whorlsOf(part, scale, seam));
    return {
      order: own.find(({ order }) => order !== null)?.order ?? null,
      seams: own.reduce((sum, { seams }) => sum + seams, 0),
      seamLength: own.reduce((sum, { seamLength }) => sum + seamLength, 0),
    };
  }
  const order = orderRound(tree.cells);
  // Each seam is sewn to a side of what is there already: the unit's own long side.
  const long = tree.cells.map(({ box: { across, down } }) => Math.max(across, down) / scale + 2 * seam);
  const length = long.sort((a, b) => b - a).slice(0, -1);
  return { order, seams: length.length, seamLength: Math.round(length.reduce((sum, each) => sum + each, 0)) };
}

/**
 * Four units round one: each reaches past the middle at one end, where the next lies across it. The upper one is
 * sewn first, half-way; then whichever lies along the end where both are even, and so on round.
 */
function orderRound(cells: readonly Cell[]): PartialSeam["order"] {
  const whole = boxAround(cells.map(({ box }) => box));
  const inside = cells.filter(
    ({ box }) =>
      box.x > whole.x &&
      box.y > whole.y &&
      box.x + box.across < whole.x + whole.across &&
      box.y + box.down < whole.y + whole.down,
  );
  const [middle] = inside;
  if (cells.length !== 5 || middle === undefined || inside.length !== 1) return null;
  const upper = cells.find(({ box }) => box.y === whole.y && box.y + box.down === middle.box.y);
  if (upper === undefined) return null;
  return upper.box.x + upper.box.across === middle.box.x + middle.box.across
    ? ["upper", "right", "lower", "left"]
    : ["upper", "left", "lower", "right"];
}

function hasWhorl(tree: Tree): boolean {
  return tree.kind === "whorl" || (tree.kind === "join" && tree.parts.some(hasWhorl));
}

/** More units than this are not looked through for another split. */
const MOST_SPLIT = 200;

/** Units to divide so that the block can be sewn in straight seams, in ticks from the left or top of each. */
function dividesOf(units: BlockDesign["units"]): PartialSeam["divides"] {
  if (units.length > MOST_SPLIT) return [];
  const boxes = units.map(({ x, y, across, down }) => {
    const [left, upper] = [exactToNumber(x), exactToNumber(y)];
    const [right, lower] = [left + exactToNumber(across), upper + exactToNumber(down)];
    return [
      { x: left, y: upper },
      { x: right, y: upper },
      { x: right, y: lower },
      { x: left, y: lower },
    ];
  });
  return (straightSplit(boxes) ?? []).map(({ patch, from, to }) => {
    const upright = Math.abs(from.x - to.x) < Math.abs(from.y - to.y);
    const start = boxes[patch]?.[0] ?? { x: 0, y: 0 };
    const at = Math.round(upright ? from.x - start.x : from.y - start.y);
    return { unit: patch, way: upright ? ("upright" as const) : ("level" as const), at };
  });
}

function cellName(top: QuiltTop, read: ReadTop, ref: number): JoinName {
  if (ref === CORE) return { is: "core" };
  if (ref <= ROW_MADE) return { is: "line", line: "row", number: ROW_MADE - ref + 1 };
  const cell = read.cells[ref];
  if (cell === undefined) throw new Error(`the top has no cell ${ref}`);
  if (cell.design !== null && cell.place === "block")
    return { is: "block", name: top.designs[cell.design]?.name ?? "" };
  return { is: "cloth", place: cell.place };
}

/** What a cell of the top is. */
function cellPart(read: ReadTop, ref: number): JoinPart {
  const cell = read.cells[ref];
  if (cell === undefined) return MADE;
  const { block, place, fabric } = cell;
  return block === null ? { of: "cloth", place, fabric } : { of: "block", block };
}

/**
 * What is wrong with an order of sewing: every joining must have parts that fit, come out at the size stated
 * once its seams are taken up, and the last must be the quilt. Empty when all is right.
 */
export function sewTogether(
  joins: readonly JoinStep[],
  seam: number,
  scale: number,
  whole: RawSize | null,
): string[] {
  const faults: string[] = [];
  const allowance = 2 * seam * scale;
  for (const { makes: made, way, parts, size } of joins) {
    const makes = JSON.stringify(made);
    const [run, other] = way === "across" ? (["across", "down"] as const) : (["down", "across"] as const);
    const sewn = parts.reduce((sum, part) => sum + part[run], 0) - allowance * (parts.length - 1);
    if (parts.some((part) => part[other] !== size[other])) faults.push(`${makes}: parts of unlike size`);
    if (sewn !== size[run]) faults.push(`${makes}: comes out ${sewn}, not ${size[run]}`);
  }
  const last = joins.at(-1);
  const done = last === undefined || whole === null;
  // A quilt of one block may be trimmed to the next mark, where its size lies between two.
  const { size, trim } = last ?? {};
  const ends = (side: "across" | "down"): boolean =>
    trim === undefined ? size?.[side] === whole?.[side] : trim[side] >= (whole?.[side] ?? 0);
  if (!done && !(ends("across") && ends("down"))) faults.push("the last joining is not the quilt");
  return faults;
}
