import type { PlaceTold } from "../../diagnostics/purposes.ts";
import { colourwayUnknown, type InDesign, quiltTooLarge } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { Rational } from "../../length/rational.ts";
import type { BlockSpec, PrintsFollow, QuiltSpec } from "../../spec/quilt-types.ts";
import { exactOfRational, exactOfSurd, fractionOfRational, point, shiftPoint, turnPoint } from "../exact.ts";
import type { LaidBlock, LaidUnit } from "../laid-types.ts";
import { directionsOf, seenInQuilt, type Turns, wantedInUnit } from "../turning/prints.ts";
import { asEighth } from "../turning/whole-turns.ts";
import type {
  BlockDesign,
  DesignUnit,
  Exact,
  Patch,
  PatchPlace,
  PlacedBlock,
  Point,
  SewnStop,
} from "../types.ts";
import type { Eighth } from "../units/types.ts";
import type { BlockPlacing } from "../work-types.ts";
import type { FindFabric } from "./colours.ts";
import { wordsByRole } from "./unit-of-cell.ts";

/** More patches than this make no quilt anyone sews, and no drawing anyone can read. */
const MOST_PATCHES = 60_000;

/** How a block lies: its turn in the setting, the turn of what it lies in, and the eighth-turn on point. */
export interface Lying {
  turn: number;
  placement: number;
  tilted: boolean;
  /** How its prints lie where the place says so; a unit's own word goes before it. */
  follow?: PrintsFollow;
}

/** One unit as it is to be sewn, with how often. Units alike in all but number are one entry. */
export interface UnitInstance {
  unit: LaidUnit;
  fabrics: Record<string, string>;
  /** Wanted print directions by part, for parts whose fabric has one. */
  prints: Record<string, Eighth>;
  label: PlaceTold;
  count: number;
  /** Index of the placing it comes from, as `blockPlacings` lists them, and of the unit in its block. */
  placing: number;
  cell: number;
}

/** What is gathered while the top is laid out. */
export interface Builder {
  spec: QuiltSpec;
  find: FindFabric;
  diagnostics: Diagnostic[];
  directions: Map<string, "one-way" | "two-way">;
  designs: BlockDesign[];
  /** Coloured blocks by design and colourway; null when a fabric was missing. */
  coloured: Map<string, Coloured | null>;
  blocks: PlacedBlock[];
  patches: Patch[];
  placings: Map<
    string,
    { coloured: Coloured; lying: Lying; label: PlaceTold; count: number; blocks: number[] }
  >;
  ids: Map<Coloured, number>;
  /** Fabrics whose print leans on point. */
  tilted: Set<string>;
}

export function newBuilder(spec: QuiltSpec, find: FindFabric, diagnostics: Diagnostic[]): Builder {
  return {
    spec,
    find,
    diagnostics,
    directions: directionsOf(spec),
    designs: [],
    coloured: new Map(),
    blocks: [],
    patches: [],
    placings: new Map(),
    ids: new Map(),
    tilted: new Set(),
  };
}

interface ColouredUnit {
  unit: LaidUnit;
  fabrics: Record<string, string>;
  /** What the unit itself says of its prints. */
  follow: PrintsFollow | null;
  /** Patches in the block's frame, with the part and fabric of each. */
  patches: { outline: Point[]; fabric: string; role: string; spot: string }[];
}

/** A block in one colourway. */
export interface Coloured {
  block: LaidBlock;
  /** Index into the builder's designs; -1 for plain cloth, which needs no picture of its own. */
  design: number;
  across: Exact;
  down: Exact;
  units: ColouredUnit[];
}

/**
 * Colours a block and keeps it, so that it is worked out once however often it is placed.
 * @param plain true for a single piece of cloth that is a block only for counting
 */
function colour(builder: Builder, block: LaidBlock, colourway: string, plain: boolean): Coloured | null {
  const key = `${block.spec.path}\n${block.spec.key}\n${colourway}`;
  const before = builder.coloured.get(key);
  if (before !== undefined) return before;
  const units = block.units.map((unit) => colourUnit(builder, block.spec, unit, colourway));
  if (units.some((unit) => unit === null)) {
    builder.coloured.set(key, null);
    return null;
  }
  const coloured: Coloured = {
    block,
    design: plain ? -1 : builder.designs.length,
    across: exactOfRational(block.across),
    down: exactOfRational(block.down),
    units: units.filter((unit) => unit !== null),
  };
  if (!plain) builder.designs.push(pictureOf(builder, coloured, colourway));
  builder.coloured.set(key, coloured);
  return coloured;
}

function colourUnit(
  builder: Builder,
  block: BlockSpec,
  unit: LaidUnit,
  colourway: string,
): ColouredUnit | null {
  const fabrics: Record<string, string> = {};
  let found = true;
  for (const [role, word] of Object.entries(wordsByRole(unit.cell, unit.kind.roles(unit.design)))) {
    const fabric = builder.find(word, block, colourway);
    if (fabric === null) found = false;
    else fabrics[role] = fabric;
  }
  if (!found) return null;
  const [across, along] = [exactOfRational(unit.design.across), exactOfRational(unit.design.along)];
  const corner = point(exactOfRational(unit.x), exactOfRational(unit.y));
  const patches = unit.kind.patches(unit.design).map((patch) => ({
    outline: patch.outline.map(({ x, y }) =>
      shiftPoint(turnPoint(point(exactOfSurd(x), exactOfSurd(y)), unit.turn, across, along), corner),
    ),
    fabric: fabrics[patch.role] ?? "",
    role: patch.role,
    spot: patch.spot,
  }));
  return {
    unit,
    fabrics,
    follow: unit.cell.prints,
    patches,
  };
}

const stopOf = ({ at, to }: { at: Rational; to: Rational }): SewnStop => ({
  at: fractionOfRational(at),
  to: fractionOfRational(to),
});

/** The block by itself, upright. */
function pictureOf(builder: Builder, coloured: Coloured, colourway: string): BlockDesign {
  const { block } = coloured;
  const upright = { turn: 0, placement: 0, tilted: false };
  return {
    name: block.spec.name,
    colourway,
    across: coloured.across,
    down: coloured.down,
    columns: block.columns,
    rows: block.rows,
    ...(block.sewn === undefined
      ? {}
      : {
          sewn: {
            across: block.sewn.across.map(stopOf),
            down: block.sewn.down.map(stopOf),
          },
        }),
    units: block.units.map(
      (unit): DesignUnit => ({
        kind: unit.kind.name,
        method: unit.method ?? unit.kind.methods[0]?.name ?? "",
        column: unit.column,
        row: unit.row,
        columns: unit.columns,
        rows: unit.rows,
        x: exactOfRational(unit.x),
        y: exactOfRational(unit.y),
        across: exactOfRational(unit.across),
        down: exactOfRational(unit.down),
        turn: unit.turn,
        code: unit.cell.code,
      }),
    ),
    patches: patchesOf(builder, coloured, upright, (p) => p, {
      place: "block",
      block: null,
      border: null,
    }),
    count: 0,
  };
}

/** How the prints of a unit lie in a block that lies so: its own word, its place's, the file's. */
export function followOf(builder: Builder, { follow }: ColouredUnit, lying: Lying): PrintsFollow {
  return follow ?? lying.follow ?? builder.spec.prints;
}

/** Every turn of a unit in a block that lies so. */
export function turnsOf(unit: LaidUnit, lying: Lying): Turns {
  return {
    unit: unit.turn,
    block: lying.turn,
    placement: lying.placement,
    tilted: lying.tilted,
  };
}

function patchesOf(
  builder: Builder,
  coloured: Coloured,
  lying: Lying,
  move: (p: Point) => Point,
  origin: { place: PatchPlace; block: number | null; border: number | null },
): Patch[] {
  return coloured.units.flatMap((own, index) => {
    const turns = turnsOf(own.unit, lying);
    const up = seenInQuilt(wantedInUnit(followOf(builder, own, lying), turns), turns);
    return own.patches.map(
      (patch): Patch => ({
        outline: patch.outline.map(move),
        fabric: patch.fabric,
        up: builder.directions.has(patch.fabric) ? up : null,
        origin: { ...origin, unit: index, part: patch.spot },
      }),
    );
  });
}

/**
 * Places a block: its patches go into the top, its units are counted.
 * @param move takes a point of the upright, unturned block to its place in the top
 * @returns false when the block could not be coloured, or the top has grown too large
 */
export function placeBlock(
  builder: Builder,
  { block, colourway, plain }: { block: LaidBlock; colourway: string; plain: boolean },
  lying: Lying,
  move: (p: Point) => Point,
  as: {
    place: PatchPlace;
    border: number | null;
    row: number;
    column: number;
    label: PlaceTold;
  },
): boolean {
  const coloured = colour(builder, block, colourway, plain);
  if (coloured === null) return false;
  const drawn = coloured.design >= 0;
  if (drawn) {
    const design = builder.designs[coloured.design];
    if (design !== undefined) design.count += 1;
    const zero = exactOfRational({ n: 0n, d: 1n });
    const corners = [
      point(zero, zero),
      point(coloured.across, zero),
      point(coloured.across, coloured.down),
      point(zero, coloured.down),
    ];
    builder.blocks.push({
      place: as.place,
      design: coloured.design,
      row: as.row,
      column: as.column,
      turn: (lying.turn + lying.placement) % 360,
      outline: corners.map(move),
    });
  }
  const index = drawn ? builder.blocks.length - 1 : null;
  builder.patches.push(
    ...patchesOf(builder, coloured, lying, move, {
      place: as.place,
      block: index,
      border: as.border,
    }),
  );
  countPlacing(builder, coloured, lying, as.label, index);
  return true;
}

function countPlacing(
  builder: Builder,
  coloured: Coloured,
  lying: Lying,
  label: PlaceTold,
  index: number | null,
): void {
  const id = builder.ids.get(coloured) ?? builder.ids.size;
  builder.ids.set(coloured, id);
  const key = `${id} ${lying.turn} ${lying.placement} ${lying.tilted} ${lying.follow ?? ""} ${JSON.stringify(label)}`;
  const before = builder.placings.get(key) ?? { coloured, lying, label, count: 0, blocks: [] };
  builder.placings.set(key, before);
  before.count += 1;
  if (index !== null) before.blocks.push(index);
}

/** Every unit to sew, with how often: the placings of each block taken apart. */
export function unitInstances(builder: Builder): UnitInstance[] {
  return [...builder.placings.values()].flatMap(({ coloured, lying, label, count }, placing) =>
    coloured.units.map((own, cell): UnitInstance => {
      const { unit, fabrics } = own;
      const follow = followOf(builder, own, lying);
      const wanted = wantedInUnit(follow, turnsOf(unit, lying));
      const prints: Record<string, Eighth> = {};
      for (const [role, fabric] of Object.entries(fabrics)) {
        const direction = builder.directions.get(fabric);
        if (direction === undefined) continue;
        if (lying.tilted && follow === "quilt") builder.tilted.add(fabric);
        // Upside down is the same for a two-way print: one need, not two.
        prints[role] = asEighth(direction === "two-way" ? wanted % 4 : wanted);
      }
      return { unit, fabrics, prints, label, count, placing, cell };
    }),
  );
}

/** Blocks placed alike, in the order in which they were first placed; which units they take is filled in later. */
export function blockPlacings(builder: Builder): BlockPlacing[] {
  return [...builder.placings.values()].map(({ coloured, lying, count, blocks }) => ({
    design: coloured.design < 0 ? null : coloured.design,
    turn: (lying.turn + lying.placement) % 360,
    count,
    blocks,
    units: coloured.units.map(() => null),
  }));
}

/** False, after reporting it, when there is no colourway of that name. */
export function colourwayKnown(builder: Builder, name: string, where: InDesign): boolean {
  const known = builder.spec.colourways.map((way) => way.name);
  if (name === "" || known.includes(name)) return true;
  builder.diagnostics.push(colourwayUnknown(where, name, known));
  return false;
}

/** Counts the patches a block would add, without laying it out. */
export function patchCount(block: LaidBlock): number {
  return block.units.reduce((sum, unit) => sum + unit.kind.patches(unit.design).length, 0);
}

/** Reports a top with too many patches, before the work is done. */
export function tooLarge(builder: Builder, patches: number): boolean {
  if (patches <= MOST_PATCHES) return false;
  const { setting } = builder.spec;
  builder.diagnostics.push(quiltTooLarge({ path: setting.path, at: setting.at }, patches, MOST_PATCHES));
  return true;
}
