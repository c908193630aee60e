import type { QuiltTop } from "../quilt/types.ts";
import { CORE, type ReadTop } from "./read-top.ts";
import type { Box, Tree } from "./tiling.ts";
import type { JoinStep, PartialSeam, RawSize } from "./types.ts";

type Of = Pick<JoinStep, "stage" | "design" | "count">;

/** A finished box with its seam allowance all round. */
function raw({ across, down }: Box, seam: number): RawSize {
  return { across: across + 2 * seam, down: down + 2 * seam };
}

type Way = JoinStep["way"];
type Naming = (name: string, way: Way, index: number) => string;

/** Names of the parts of a joining: rows of the whole, then places within a row. */
function partName(name: string, way: Way, index: number): string {
  const part = `${way === "down" ? "row" : "part"} ${index + 1}`;
  return name === "" ? part : `${name}, ${part}`;
}

/** The same of a round of borders. */
function stripName(name: string, way: Way, index: number): string {
  if (name !== "") return partName(name, way, index);
  const [before, middle, after] =
    way === "down"
      ? ["top border", "centre with side borders", "bottom border"]
      : ["left border", "centre with top and bottom borders", "right border"];
  return [before, middle, after][index] ?? partName(name, way, index);
}

/** Every joining of a tree, what is sewn first standing first. */
function joinsIn(
  tree: Tree,
  name: string,
  whole: string,
  leaf: (ref: number) => string,
  of: Of,
  read: ReadTop,
  seam: number,
  naming: Naming = partName,
): JoinStep[] {
  if (tree.kind !== "join") return [];
  const before = tree.parts.flatMap((part, i) =>
    joinsIn(part, naming(name, tree.way, i), whole, leaf, of, read, seam, naming),
  );
  const from = tree.parts.map((part, i) =>
    part.kind === "cell" ? leaf(part.ref) : naming(name, tree.way, i),
  );
  const size = raw(tree.box, seam);
  const parts = tree.parts.map((part) => raw(part.box, seam));
  const along = tree.way === "across" ? size.down : size.across;
  const own: JoinStep = {
    ...of,
    makes: name === "" ? whole : name,
    from,
    way: tree.way,
    parts,
    size,
    seams: parts.length - 1,
    seamLength: Math.round(along / read.scale),
  };
  return [...before, own];
}

/** The joinings of the blocks, then of the rows and the top, then of the borders, in the order of sewing. */
export function listJoins(
  top: QuiltTop,
  read: ReadTop,
  seam: number,
): { joins: JoinStep[]; partial: PartialSeam[] } {
  const allowance = seam * read.scale;
  const joins: JoinStep[] = [];
  const partial: PartialSeam[] = [];
  for (const [design, { name, units, count }] of top.designs.entries()) {
    const tree = read.designs[design]?.tree;
    if (tree === undefined || count === 0) continue;
    if (hasWhorl(tree)) partial.push({ design });
    const leaf = (ref: number): string => units[ref]?.kind ?? "";
    const of = { stage: "block", design, count } as const;
    joins.push(...joinsIn(tree, "", name, leaf, of, read, allowance));
  }
  const leaf = (ref: number): string => cellName(top, read, ref);
  // Diagonal rows end in triangles, so their sizes and seams are told by the drawing alone.
  if (!read.tilted) {
    const of = { stage: "top", design: null, count: 1 } as const;
    joins.push(...joinsIn(read.centre, "", "centre", leaf, of, read, allowance));
  }
  for (const { border, tree } of read.rings) {
    if (tree === null) continue;
    const of = { stage: "border", design: null, count: 1 } as const;
    const named = top.borders[border]?.name ?? "";
    const whole = `top with ${named === "" ? `border ${border + 1}` : named}`;
    joins.push(...joinsIn(tree, "", whole, leaf, of, read, allowance, stripName));
  }
  return { joins, partial };
}

function hasWhorl(tree: Tree): boolean {
  return tree.kind === "whorl" || (tree.kind === "join" && tree.parts.some(hasWhorl));
}

function cellName(top: QuiltTop, read: ReadTop, ref: number): string {
  if (ref === CORE) return "the top so far";
  const cell = read.cells[ref];
  if (cell === undefined) return "";
  if (cell.design !== null && cell.place === "block") return top.designs[cell.design]?.name ?? "";
  return cell.place === "border" ? "border" : cell.place;
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
  for (const { makes, way, parts, size } of joins) {
    const [run, other] = way === "across" ? (["across", "down"] as const) : (["down", "across"] as const);
    const sewn = parts.reduce((sum, part) => sum + part[run], 0) - allowance * (parts.length - 1);
    if (parts.some((part) => part[other] !== size[other])) faults.push(`${makes}: parts of unlike size`);
    if (sewn !== size[run]) faults.push(`${makes}: comes out ${sewn}, not ${size[run]}`);
  }
  const last = joins.at(-1);
  const done = last === undefined || whole === null;
  if (!done && (last.size.across !== whole.across || last.size.down !== whole.down)) {
    faults.push("the last joining is not the quilt");
  }
  return faults;
}
