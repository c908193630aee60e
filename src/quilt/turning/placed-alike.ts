import { type Builder, type Coloured, followOf, type Lying, turnsOf } from "../layout/builder.ts";
import type { Patch } from "../types.ts";
import { wantedInUnit } from "./prints.ts";

/** A block as some of its copies lie: with its prints as they point in the block's own frame. */
export interface PlacedAlike {
  /** The design's patches, in its order. */
  patches: Patch[];
  count: number;
  /** How those copies are turned in the quilt, in degrees clockwise. */
  turns: number[];
}

/**
 * A print that stands upright in the quilt points another way in a block that is turned: the copies of a block by how
 * their prints lie in them. One entry where no print has a say.
 */
export function placedAlike(builder: Builder, coloured: Coloured): PlacedAlike[] {
  const found = new Map<string, PlacedAlike>();
  for (const placing of builder.placings.values()) {
    if (placing.coloured !== coloured) continue;
    const { lying, count } = placing;
    const turn = (lying.turn + lying.placement) % 360;
    const patches = patchesAsPlaced(builder, coloured, lying);
    const key = patches.map(({ up }) => up ?? "").join(" ");
    const before = found.get(key);
    if (before === undefined) {
      found.set(key, { patches, count, turns: [turn] });
      continue;
    }
    before.count += count;
    if (!before.turns.includes(turn)) before.turns.push(turn);
  }
  return [...found.values()];
}

/** The design's patches with their prints as they point in a block that lies so, in the block's own frame. */
export function patchesAsPlaced(builder: Builder, coloured: Coloured, lying: Lying): Patch[] {
  return (builder.designs[coloured.design]?.patches ?? []).map((patch) => {
    const own = coloured.units[patch.origin.unit ?? -1];
    if (own === undefined || patch.up === null) return patch;
    const turns = turnsOf(own.unit, lying);
    const inBlock = (wantedInUnit(followOf(builder, own, lying), turns) * 45 + turns.unit) % 360;
    // Upside down is the same for a two-way print.
    const up = builder.directions.get(patch.fabric) === "two-way" ? inBlock % 180 : inBlock;
    return { ...patch, up };
  });
}
