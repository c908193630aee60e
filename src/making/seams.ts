import type { QuiltTop } from "../quilt/types.ts";
import { pressedAlready } from "./foundation.ts";
import { CORE, type ReadTop, type TopCell } from "./read-top.ts";
import { type Box, type Tree, turnBox } from "./tiling.ts";

/** A seam where it lies, upright or level: one side of `box` is 0. */
export interface Seam {
  box: Box;
  upright: boolean;
  /** The joining it belongs to, the same for every copy that is pressed alike, and which of its seams. */
  joining: string;
  index: number;
  /** The choice 1 means right or down, or the contrary when `flip`. */
  flip: boolean;
  level: "unit" | "row" | "rows";
}

/** Which seams are pressed alike besides the copies of a block. */
export interface Sharing {
  /** The seams of one row all one way; else each for itself. */
  byRow: boolean;
  /** Where every seam of a row has a sash (or plain block) on one side: all towards those. */
  towardPlain: boolean;
  /** Variant of each placed block. */
  variantOf: (block: number) => "" | "A" | "B";
}

/** The seams of a tree in its own frame. */
function seamsIn(tree: Tree, name: string, level: Seam["level"] | null, into: Seam[] = []): Seam[] {
  if (tree.kind !== "join") return into;
  const upright = tree.way === "across";
  for (const [index, part] of tree.parts.entries()) {
    seamsIn(part, `${name}.${index}`, level, into);
    const before = tree.parts[index - 1];
    if (before === undefined) continue;
    const box = upright ? between(before.box, part.box, true) : between(before.box, part.box, false);
    const own = level ?? (upright ? "row" : "rows");
    into.push({ box, upright, joining: name, index: index - 1, flip: false, level: own });
  }
  return into;
}

/** The joining of seams that are pressed already: their choice is always 1. */
export const FIXED = "pressed-already";

/** Where two neighbours touch. */
function between(a: Box, b: Box, upright: boolean): Box {
  if (upright) {
    const y = Math.max(a.y, b.y);
    return { x: b.x, y, across: 0, down: Math.min(a.y + a.down, b.y + b.down) - y };
  }
  const x = Math.max(a.x, b.x);
  return { x, y: b.y, across: Math.min(a.x + a.across, b.x + b.across) - x, down: 0 };
}

/** Every seam of a block design in its own frame, those inside units of rectangles included. */
export function seamsOfDesign(read: ReadTop, design: number, name: string): Seam[] {
  const own = read.designs[design];
  if (own === undefined) return [];
  const seams = seamsIn(own.tree, name, null);
  for (const [unit, tree] of own.units.entries()) {
    if (tree !== null) seams.push(...outwards(tree, seamsIn(tree, `${name}/${unit}`, "unit")));
  }
  if (own.fixed.length === 0) return seams;
  return seams.map((seam) => {
    const onwards = pressedAlready(seam.box, seam.upright, own.fixed);
    return onwards === null ? seam : { ...seam, joining: FIXED, index: 0, flip: !onwards };
  });
}

/** Inside a unit sewn in rows or rounds, seams are told as from its middle: as nine-patches are pressed. */
function outwards(tree: Tree, seams: Seam[]): Seam[] {
  if (tree.kind === "join" && tree.parts.every((part) => part.kind === "cell")) return seams;
  const { x, y, across, down } = tree.box;
  return seams.map((seam) => {
    const before = seam.upright ? 2 * (seam.box.x - x) < across : 2 * (seam.box.y - y) < down;
    return before ? { ...seam, flip: true } : seam;
  });
}

/** A block's seams where the block lies, turned with it. */
function placeSeams(seams: readonly Seam[], cell: TopCell, read: ReadTop): Seam[] {
  const { box, turn } = cell;
  const frame = read.designs[cell.design ?? -1]?.tree.box ?? box;
  return seams.map((seam) => {
    const lying = turnBox(seam.box, turn, frame.across, frame.down);
    const quarter = turn === 90 || turn === 270;
    // Right becomes down, left, up; down becomes left, up, right.
    const reversed = seam.upright ? turn === 180 || turn === 270 : turn === 90 || turn === 180;
    return {
      ...seam,
      box: { ...lying, x: lying.x + box.x, y: lying.y + box.y },
      upright: quarter ? !seam.upright : seam.upright,
      flip: seam.flip !== reversed,
    };
  });
}

/** Every seam between blocks, sashes, plain cloth and borders. */
function seamsOfTop(read: ReadTop, sharing: Sharing): Seam[] {
  const seams: Seam[] = [];
  const { centre, rings } = read;
  seams.push(...seamsIn(centre, "top", null).filter(({ joining }) => joining === "top"));
  if (centre.kind === "join") {
    for (const [row, part] of centre.parts.entries()) {
      const own = seamsIn(part, `top.${row}`, null);
      seams.push(...(sharing.towardPlain ? towardPlain(own, part, read) : own));
    }
  }
  for (const { border, tree } of rings) {
    if (tree === null) continue;
    // Border seams are pressed outwards where nothing speaks against it.
    const core = coreOf(tree);
    for (const seam of seamsIn(tree, `border${border}`, null)) {
      const outwards = seam.upright ? seam.box.x <= core.x : seam.box.y <= core.y;
      const joining = `${seam.joining}#${seam.index}`;
      seams.push({ ...seam, joining, flip: outwards });
    }
  }
  return seams;
}

function coreOf(tree: Tree): Box {
  if (tree.kind !== "join") return tree.box;
  for (const part of tree.parts) {
    if (part.kind === "cell" && part.ref === CORE) return part.box;
    if (part.kind === "join" && part.parts.some((each) => each.kind === "cell" && each.ref === CORE)) {
      return coreOf(part);
    }
  }
  return tree.box;
}

/** What the seams of a row are pressed towards when each has it on exactly one side; null when not all do. */
export function softSide(row: Tree, read: ReadTop): "sashes" | "plain-blocks" | null {
  if (row.kind !== "join") return null;
  const cells = row.parts.map((part) => (part.kind === "cell" ? read.cells[part.ref] : undefined));
  if (cells.includes(undefined)) return null;
  const soft = cells.some((cell) => cell?.place === "sash") ? "sashes" : "plain-blocks";
  const found = cells.map((cell) => isSoft(cell, soft, read));
  return found.every((is, i) => i === 0 || is !== found[i - 1]) ? soft : null;
}

function isSoft(cell: TopCell | undefined, soft: "sashes" | "plain-blocks", read: ReadTop): boolean {
  if (cell === undefined) return false;
  if (soft === "sashes") return cell.place === "sash";
  return cell.design === null || (read.designs[cell.design]?.plain ?? false);
}

function towardPlain(seams: readonly Seam[], row: Tree, read: ReadTop): Seam[] {
  const soft = softSide(row, read);
  if (soft === null || row.kind !== "join") return [...seams];
  return seams.map((seam) => {
    const before = row.parts[seam.index];
    const cell = before?.kind === "cell" ? read.cells[before.ref] : undefined;
    return isSoft(cell, soft, read) ? { ...seam, flip: true } : seam;
  });
}

/** Every seam of the quilt where it lies. */
export function allSeams(top: QuiltTop, read: ReadTop, sharing: Sharing): Seam[] {
  const seams = seamsOfTop(read, sharing);
  const known = new Map<string, Seam[]>();
  for (const cell of read.cells) {
    if (cell.block === null || cell.design === null) continue;
    const rows = top.blocks[cell.block]?.place === "block";
    const name = `design${cell.design}${rows ? sharing.variantOf(cell.block) : ""}`;
    const own = known.get(name) ?? seamsOfDesign(read, cell.design, name);
    known.set(name, own);
    seams.push(...placeSeams(own, cell, read));
  }
  return seams;
}

/** Two seams that meet end to end across a joining seam. */
export interface Junction {
  x: number;
  y: number;
  a: Seam;
  b: Seam;
}

/** Every place where two seams meet across a joining seam, from top to bottom and left to right. */
export function junctionsOf(seams: readonly Seam[]): Junction[] {
  const ending = new Map<string, Seam>();
  const key = (upright: boolean, x: number, y: number): string => `${upright ? "u" : "l"}${x},${y}`;
  for (const seam of seams) {
    const { x, y, across, down } = seam.box;
    ending.set(key(seam.upright, x + across, y + down), seam);
  }
  const found: Junction[] = [];
  for (const b of seams) {
    const { x, y } = b.box;
    const a = ending.get(key(b.upright, x, y));
    if (a !== undefined) found.push({ x, y, a, b });
  }
  return found.sort((p, q) => p.y - q.y || p.x - q.x);
}
