import { turnNode } from "../quilt/foundation/turned.ts";
import type { FoldedPart, FoundationPlace, FoundationSeam, FoundationWork } from "../quilt/index.ts";
import type { FoldedLines, FoundationMaking } from "./foundation-types.ts";
import type { ReadTop } from "./read-top.ts";
import { type Box, boxAround, type Cell, sewingTree, type Tree } from "./tiling.ts";
import type { SeamTotals } from "./types.ts";

/** What is sewn of a design off the foundation: a tree of joinings, and what it makes. */
export interface ToSew {
  tree: Tree;
  /** Number of a folded part's cell; null for the block itself. */
  like: number | null;
  /** How many of it are made; null: as many as there are blocks. */
  count: number | null;
}

/** Cells made on the foundation already count from here down: section 0 is -2. */
const FIRST_MADE = -2;

/** The section a made cell stands for; null for a unit or the centre of a ring. */
export function sectionOfRef(ref: number): number | null {
  return ref <= FIRST_MADE ? FIRST_MADE - ref : null;
}

/**
 * The places of a design's sections, each once, with the letters of what may lie there: more than one where copies of
 * the block have their prints lying otherwise.
 */
export function sectionsOf(
  foundation: FoundationWork | null,
  design: number,
): { letters: string[]; place: FoundationPlace }[] {
  const found = new Map<string, { letters: string[]; place: FoundationPlace }>();
  for (const part of foundation?.parts ?? []) {
    if (part.kind === "folded") continue;
    for (const place of part.places.filter((each) => each.design === design)) {
      const key = place.units.join();
      const before = found.get(key);
      if (before === undefined) found.set(key, { letters: [part.letter], place });
      else if (!before.letters.includes(part.letter)) before.letters.push(part.letter);
    }
  }
  return [...found.values()];
}

function unitsIn(tree: Tree): number[] {
  if (tree.kind === "cell") return [tree.ref];
  if (tree.kind === "whorl") return tree.cells.map(({ ref }) => ref);
  return tree.parts.flatMap(unitsIn);
}

/** Which section holds all of a tree; -1 when none does. */
function holder(tree: Tree, sections: readonly (readonly number[])[]): number {
  const units = unitsIn(tree);
  return sections.findIndex((own) => units.every((unit) => own.includes(unit)));
}

/** A tree in which what lies on one piece of foundation is one cell: it is sewn already. */
function withSectionsMade(tree: Tree, sections: readonly (readonly number[])[]): Tree {
  const made = (section: number, box: Box): Tree => ({ kind: "cell", box, ref: FIRST_MADE - section });
  const whole = holder(tree, sections);
  if (whole >= 0) return made(whole, tree.box);
  if (tree.kind === "whorl") return whorlWithSections(tree, sections);
  if (tree.kind !== "join") return tree;
  const parts: Tree[] = [];
  let last = -1;
  for (const part of tree.parts) {
    const own = holder(part, sections);
    const before = parts.at(-1);
    if (own >= 0 && own === last && before !== undefined) {
      parts[parts.length - 1] = made(own, boxAround([before.box, part.box]));
    } else parts.push(own >= 0 ? made(own, part.box) : withSectionsMade(part, sections));
    last = own;
  }
  return { ...tree, parts };
}

/** Several cells of a whorl on one piece of foundation are one; straight lines may then run right across. */
function whorlWithSections(
  { cells }: Extract<Tree, { kind: "whorl" }>,
  sections: readonly (readonly number[])[],
): Tree {
  const held = new Map<number, Box[]>();
  const loose: Cell[] = [];
  for (const cell of cells) {
    const section = sections.findIndex((own) => own.includes(cell.ref));
    if (section < 0) loose.push(cell);
    else held.set(section, [...(held.get(section) ?? []), cell.box]);
  }
  const made = [...held].map(([section, boxes]) => ({ box: boxAround(boxes), ref: FIRST_MADE - section }));
  return sewingTree([...made, ...loose]);
}

/**
 * What is left to sew of a design: all of it without a foundation; the joining of its sections when it is pieced on
 * one; and when its lines are folded, the parts of several units that are laid on it.
 */
export function leftToSew(foundation: FoundationWork | null, design: number, tree: Tree): ToSew[] {
  const folded = (foundation?.parts ?? []).filter((part): part is FoldedPart => part.kind === "folded");
  if (folded.some(({ blocks }) => blocks.some((block) => block.design === design)))
    return cellsToSew(folded, design, tree);
  const sections = sectionsOf(foundation, design).map(({ place }) => place.units);
  const left = sections.length === 0 ? tree : withSectionsMade(tree, sections);
  return [{ tree: left, like: null, count: null }];
}

/** Each cell of several units once, told in the design in which it is met first. */
function cellsToSew(parts: readonly FoldedPart[], design: number, tree: Tree): ToSew[] {
  const counts = new Map<number, number>();
  const first = new Map<number, { design: number; units: number[] }>();
  for (const { cells, count } of parts) {
    for (const { like, ...cell } of cells) {
      counts.set(like, (counts.get(like) ?? 0) + count);
      if (!first.has(like)) first.set(like, cell);
    }
  }
  const boxes = new Map(cellsIn(tree).map((cell) => [cell.ref, cell]));
  return [...first].flatMap(([like, cell]): ToSew[] => {
    if (cell.design !== design || cell.units.length < 2) return [];
    const own = cell.units.flatMap((unit) => boxes.get(unit) ?? []);
    return [{ tree: sewingTree(own), like, count: counts.get(like) ?? 0 }];
  });
}

function cellsIn(tree: Tree): Cell[] {
  if (tree.kind === "cell") return [{ box: tree.box, ref: tree.ref }];
  return tree.kind === "whorl" ? tree.cells : tree.parts.flatMap(cellsIn);
}

/** True when the rows of the top come off the foundation finished. */
export function rowsAreMade(foundation: FoundationWork | null): boolean {
  return foundation?.way === "folded" && foundation.per === "row";
}

/** A seam whose allowance lies where the piecing has put it, in parts of a tick in the design's frame. */
export interface FixedSeam {
  upright: boolean;
  /** Place of the line, and from where to where it runs. */
  at: number;
  from: number;
  to: number;
  /** To the right, or down. */
  onwards: boolean;
}

/** The same top with the seams told that the foundation has pressed. */
export function withFixedSeams(read: ReadTop | null, foundation: FoundationWork | null): ReadTop | null {
  if (read === null || foundation === null) return read;
  const designs = read.designs.map((design, i) => ({
    ...design,
    fixed: fixedSeams(foundation, i, read.scale),
  }));
  return { ...read, designs };
}

/** The upright and level seams sewn on foundation: each allowance lies towards the patch that was added. */
function fixedSeams(foundation: FoundationWork | null, design: number, scale: number): FixedSeam[] {
  return (foundation?.parts ?? []).flatMap((part) => {
    if (part.kind === "folded") return [];
    const own = part.places.filter((place) => place.design === design);
    return own.flatMap((place) =>
      part.seams.filter(({ slanting }) => !slanting).map((seam) => fixedSeam(seam, place, scale)),
    );
  });
}

function fixedSeam(
  { x1, y1, x2, y2, toward }: FoundationSeam,
  place: FoundationPlace,
  scale: number,
): FixedSeam {
  const turned = place.turn % 180 !== 0;
  // The part as it is told, before it is turned into its place.
  const [across, down] = turned ? [place.down, place.across] : [place.across, place.down];
  const here = (x: number, y: number) => turnNode([x, y], place.turn, across, down);
  const [a, b] = [here(x1, y1), here(x2, y2)];
  const [dx, dy] = turnedWay(toward.x, toward.y, place.turn);
  const upright = a[0] === b[0];
  const [from, to] = upright ? [a[1] + place.y, b[1] + place.y] : [a[0] + place.x, b[0] + place.x];
  return {
    upright,
    at: (upright ? a[0] + place.x : a[1] + place.y) * scale,
    from: Math.min(from, to) * scale,
    to: Math.max(from, to) * scale,
    onwards: upright ? dx > 0 : dy > 0,
  };
}

/** A direction turned clockwise: right becomes down, down becomes left. */
function turnedWay(x: number, y: number, turn: number): [number, number] {
  switch (turn) {
    case 90:
      return [-y || 0, x];
    case 180:
      return [-x || 0, -y || 0];
    case 270:
      return [y, -x || 0];
    default:
      return [x, y];
  }
}

/** Which way the seam of a box is pressed already: onwards (right, down) or back; null when it is free. */
export function pressedAlready(box: Box, upright: boolean, fixed: readonly FixedSeam[]): boolean | null {
  const [at, from, to] = upright ? [box.x, box.y, box.y + box.down] : [box.y, box.x, box.x + box.across];
  const found = fixed.find(
    (seam) => seam.upright === upright && seam.at === at && seam.from <= from && seam.to >= to,
  );
  return found?.onwards ?? null;
}

/** Numbers from 1, the middle one first, then outwards to both sides. */
function fromTheMiddle(count: number): number[] {
  const middle = (count + 1) / 2;
  return Array.from({ length: count }, (_, i) => i + 1).sort(
    (a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b,
  );
}

/**
 * The lines of a folded part: first every upright one, over the whole foundation; then the level ones, over what is
 * left of its width. Derived geometry: n columns of c squares and 2 a of seams each make
 * sum (c + 2 a) - 2 a (n - 1) = sum c + 2 a squares.
 */
function linesOf(part: FoldedPart, { grid, allowance }: FoundationWork): FoldedLines {
  const [upright, level] = [part.columns.length - 1, part.rows.length - 1];
  return {
    letter: part.letter,
    upright,
    uprightLength: part.cut.down * grid,
    level,
    levelLength: (part.finished.across + 2 * allowance) * grid,
    pins: level === 0 ? [] : fromTheMiddle(upright),
    sewn: {
      across: (part.finished.across + 2 * allowance) * grid,
      down: (part.finished.down + 2 * allowance) * grid,
    },
  };
}

/** What is made on the foundation, with the lines to fold in order. */
export function planFoundation(foundation: FoundationWork | null): FoundationMaking | null {
  if (foundation === null) return null;
  const folded = foundation.parts.filter((part): part is FoldedPart => part.kind === "folded");
  return { ...foundation, lines: folded.map((part) => linesOf(part, foundation)) };
}

/** Seams with those on the foundation: patch to patch with a seam allowance beyond both ends of the line. */
export function withFoundationSeams(
  totals: SeamTotals,
  foundation: FoundationMaking | null,
  seam: number,
): SeamTotals {
  let [units, blocks, seams] = [0, 0, 0];
  for (const part of foundation?.parts ?? []) {
    if (part.kind === "folded") {
      const lines = foundation?.lines.find(({ letter }) => letter === part.letter);
      if (lines === undefined) continue;
      blocks += part.count * (lines.upright * lines.uprightLength + lines.level * lines.levelLength);
      seams += part.count * (lines.upright + lines.level);
      continue;
    }
    units += part.count * part.seams.reduce((sum, { length }) => sum + length + 2 * seam, 0);
    seams += part.count * part.seams.length;
  }
  return {
    ...totals,
    units: totals.units + units,
    blocks: totals.blocks + blocks,
    total: totals.total + units + blocks,
    seams: totals.seams + seams,
  };
}
