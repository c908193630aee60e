import { foundationBlock, foundationUnit } from "../../diagnostics/quilts/foundation.ts";
import type { InDesign } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { FoundationSpec } from "../../spec/foundation-types.ts";
import type { BlockDesign } from "../types.ts";
import { type ClothFor, laidCloth } from "./laid.ts";
import type { GridPatch, Lines } from "./on-grid.ts";
import { type Node, patchByPatch, type Sequence } from "./sequence.ts";
import { pictureKey, QUARTERS, type Quarter } from "./turned.ts";
import type { FoundationPatch, FoundationPlace, FoundationSeam, PiecedPart } from "./types.ts";

/** A design to be made on foundation, its patches in steps of the grid. */
export interface GridDesign {
  /** Index into the top's `designs`. */
  index: number;
  design: BlockDesign;
  patches: GridPatch[];
  /** Turns of the copies that are meant; null when all of them are. */
  blockTurns: number[] | null;
  where: { units: readonly InDesign[]; block: InDesign };
}

/** Some units of a design that go onto one piece of foundation, in the order they are pieced. */
interface Section {
  units: number[];
  patches: GridPatch[];
  sequence: Sequence;
}

function patchesIn(units: readonly number[], { patches }: GridDesign): GridPatch[] {
  return patches.filter(({ patch }) => units.includes(patch.origin.unit ?? -1));
}

/** Null where the patches do not fill a rectangle, or no order adds them one by one. */
function sectionOf(units: readonly number[], grid: GridDesign): Section | null {
  const patches = patchesIn(units, grid);
  // Anything but a rectangle would have to be set into a corner, and so would its neighbour.
  if (!fillARectangle(patches)) return null;
  const sequence = patchByPatch(patches.map(({ corners }) => corners));
  return sequence === null ? null : { units: [...units], patches, sequence };
}

function fillARectangle(patches: readonly GridPatch[]): boolean {
  const corners = patches.flatMap((each) => each.corners);
  const [[left, right], [upper, lower]] = [span(corners, 0), span(corners, 1)];
  const twice = patches.reduce((sum, each) => sum + Math.abs(doubleArea(each.corners)), 0);
  return twice === 2 * (right - left) * (lower - upper);
}

function doubleArea(corners: readonly Node[]): number {
  return corners.reduce((sum, [x1, y1], i) => {
    const [x2, y2] = corners[(i + 1) % corners.length] ?? [x1, y1];
    return sum + x1 * y2 - x2 * y1;
  }, 0);
}

function span(corners: readonly Node[], axis: 0 | 1): [number, number] {
  const places = corners.map((corner) => corner[axis]);
  return [Math.min(...places), Math.max(...places)];
}

/** Groups of units between the lines that run right across without cutting any: rows, or else columns. */
function divide(units: readonly number[], grid: GridDesign): number[][] {
  for (const axis of [1, 0] as const) {
    const spans = units
      .map((unit) => ({
        unit,
        span: span(
          patchesIn([unit], grid).flatMap(({ corners }) => corners),
          axis,
        ),
      }))
      .sort((a, b) => a.span[0] - b.span[0] || a.unit - b.unit);
    const groups: number[][] = [];
    let end = Number.NEGATIVE_INFINITY;
    for (const { unit, span: own } of spans) {
      if (own[0] >= end) groups.push([]);
      groups.at(-1)?.push(unit);
      end = Math.max(end, own[1]);
    }
    if (groups.length > 1) return groups.map((group) => group.sort((a, b) => a - b));
  }
  return units.map((unit) => [unit]);
}

function unitRefused(unit: number, { design, where }: GridDesign): Diagnostic {
  return foundationUnit(where.units[unit] ?? where.block, design.units[unit]?.kind ?? "", "no-order");
}

/** The sections of a design as the file asks for them; what does not go is told. */
function sectionsOf(grid: GridDesign, per: FoundationSpec["per"], diagnostics: Diagnostic[]): Section[] {
  const { design, where } = grid;
  const all = design.units.map((_, unit) => unit);
  const alone = all.flatMap((unit): Section[] => {
    const section = sectionOf([unit], grid);
    if (section === null) diagnostics.push(unitRefused(unit, grid));
    return section === null ? [] : [section];
  });
  if (per === "unit" || alone.length < all.length) return alone;
  if (per === "block") {
    const whole = sectionOf(all, grid);
    if (whole !== null) return [whole];
    diagnostics.push(foundationBlock(where.block, { why: "not-one-piece", block: design.name }));
    return [];
  }
  return largestSections(all, grid);
}

/**
 * The fewest sections of a rectangle of units, each of neighbours between two lines that run right across. What can
 * be pieced can be pieced without its first or last part too, so taking as many neighbours as go, from the first on,
 * leaves the fewest.
 */
function largestSections(units: readonly number[], grid: GridDesign): Section[] {
  const whole = sectionOf(units, grid);
  if (whole !== null) return [whole];
  const sections: Section[] = [];
  let run: Section | null = null;
  for (const group of divide(units, grid)) {
    const longer: Section | null = run === null ? null : sectionOf([...run.units, ...group], grid);
    if (longer !== null) {
      run = longer;
      continue;
    }
    if (run !== null) sections.push(run);
    run = sectionOf(group, grid);
    if (run === null) sections.push(...largestSections(group, grid));
  }
  return run === null ? sections : [...sections, run];
}

/** The pieces of foundation a quilt takes when it is pieced patch by patch, parts alike but for a turn as one. */
export function piecedParts(
  grids: readonly GridDesign[],
  foundation: Pick<FoundationSpec, "per" | "allowance">,
  lines: Lines,
  cloth: ClothFor,
  diagnostics: Diagnostic[],
): PiecedPart[] {
  const found: Found = { parts: [], known: new Map() };
  for (const grid of grids) {
    for (const section of sectionsOf(grid, foundation.per, diagnostics)) {
      // A single patch is plain cloth: it needs nothing under it.
      if (section.patches.length < 2) continue;
      addSection(framed(section, grid), foundation.allowance, lines, cloth, found);
    }
  }
  return found.parts;
}

/** Parts found so far, and by picture, in every turn, the part it is. */
interface Found {
  parts: PiecedPart[];
  known: Map<string, { part: PiecedPart; turn: Quarter }>;
}

/** A section of a block in its own frame, in steps of the lines. */
interface Framed extends Section {
  grid: GridDesign;
  left: number;
  upper: number;
  across: number;
  down: number;
  tiles: { corners: Node[]; fabric: string; up: AreaUp }[];
}

type AreaUp = Section["patches"][number]["patch"]["up"];

function framed(section: Section, grid: GridDesign): Framed {
  const corners = section.patches.flatMap((each) => each.corners);
  const [[left, right], [upper, lower]] = [span(corners, 0), span(corners, 1)];
  const tiles = section.patches.map(({ patch, corners: own }) => ({
    corners: own.map(([x, y]): Node => [x - left, y - upper]),
    fabric: patch.fabric,
    up: patch.up,
  }));
  return { ...section, grid, left, upper, across: right - left, down: lower - upper, tiles };
}

function addSection(
  section: Framed,
  allowance: number,
  lines: Lines,
  cloth: ClothFor,
  { parts, known }: Found,
): void {
  const { grid, across, down, tiles, left, upper } = section;
  const { step, grid: side } = lines;
  const place = (turn: Quarter): FoundationPlace => ({
    design: grid.index,
    units: section.units,
    x: left * step,
    y: upper * step,
    across: across * step,
    down: down * step,
    turn,
    blockTurns: grid.blockTurns,
  });
  const { count } = grid.design;
  const before = known.get(pictureKey(tiles, 0, across, down));
  // A part lies one way in all copies of a block: its seams are pressed as they are told there.
  const otherWay = before?.part.places.some(
    ({ design, units, turn }) =>
      design === grid.index && turn !== before.turn && units.join() === section.units.join(),
  );
  if (before !== undefined && otherWay !== true) {
    before.part.count += count;
    before.part.places.push(place(before.turn));
    return;
  }
  const squares = (steps: number): number => (steps * step) / side;
  const cut = (steps: number): number => Math.ceil(squares(steps)) + 2 * allowance;
  const seams = seamsOf(section, step);
  const part: PiecedPart = {
    kind: "pieced",
    letter: letterOf(parts.length),
    count,
    finished: { across: squares(across), down: squares(down) },
    cut: { across: cut(across), down: cut(down) },
    places: [place(0)],
    patches: patchesOf(section, seams, step, cloth),
    seams,
  };
  parts.push(part);
  for (const turn of QUARTERS) {
    const key = pictureKey(tiles, turn, across, down);
    if (!known.has(key)) known.set(key, { part, turn });
  }
}

/** The seams of a section in the order of sewing, in ticks from its upper left. */
function seamsOf({ sequence, left, upper }: Framed, step: number): FoundationSeam[] {
  return sequence.seams.map(({ from, to, toward: [x, y] }, i): FoundationSeam => {
    const [x1, y1, x2, y2] = [from[0] - left, from[1] - upper, to[0] - left, to[1] - upper];
    return {
      number: i + 1,
      adds: i + 2,
      x1: x1 * step,
      y1: y1 * step,
      x2: x2 * step,
      y2: y2 * step,
      length: Math.round(Math.hypot(x2 - x1, y2 - y1) * step),
      slanting: x1 !== x2 && y1 !== y2,
      toward: { x: signOf(x), y: signOf(y) },
    };
  });
}

const signOf = (direction: number): -1 | 0 | 1 => (direction < 0 ? -1 : direction > 0 ? 1 : 0);

/** The patches of a section in the order in which they are sewn, with the cloth that is laid for each. */
function patchesOf(
  { sequence, patches, tiles, grid }: Framed,
  seams: readonly FoundationSeam[],
  step: number,
  cloth: ClothFor,
): FoundationPatch[] {
  return sequence.order.map((index, i): FoundationPatch => {
    const patch = patches[index]?.patch;
    const corners = (tiles[index]?.corners ?? []).map(([x, y]) => ({ x: x * step, y: y * step }));
    const up = patch?.up ?? null;
    return {
      number: i + 1,
      unit: grid.design.units[patch?.origin.unit ?? -1]?.kind ?? "",
      part: patch?.origin.part ?? "",
      fabric: patch?.fabric ?? "",
      up,
      corners,
      ...laidCloth(corners, up !== null, seams[i - 1] ?? null, cloth),
    };
  });
}

/** A, B, ... Z, AA. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}
