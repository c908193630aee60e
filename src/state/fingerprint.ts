import type { FabricPlan, Part } from "../plan/types.ts";

/** Offset and prime of the 64-bit FNV-1a hash (Fowler, Noll and Vo; RFC 9923, 2025). */
const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/**
 * A mark of all that numbers and letters of a fabric's diagram stand for: its bags, its cloths and how they are cut. Equal
 * for plans that are cut alike, whatever else changes. No guard against forgery.
 */
export function fingerprint({ name, usable, pieces, lays, done }: FabricPlan): string {
  const bags = pieces.map(({ letter, across, along, count }) => [letter, across, along, count]);
  const cloths = lays.map((lay) => [lay.source, lay.name, lay.across, lay.along, asCut(lay.root)]);
  const text = JSON.stringify([name, usable, bags, cloths, done?.cut ?? []]);
  let hash = OFFSET;
  for (let i = 0; i < text.length; i++) {
    // Two bytes of each code unit, so that names in any writing count whole.
    const unit = text.charCodeAt(i);
    hash = BigInt.asUintN(64, (hash ^ BigInt(unit & 0xff)) * PRIME);
    hash = BigInt.asUintN(64, (hash ^ BigInt(unit >> 8)) * PRIME);
  }
  return hash.toString(16).padStart(16, "0");
}

function asCut({ role, across, along, piece, number, parts }: Part): unknown {
  return parts.length === 0 ? [role, across, along, piece, number] : [role, number, parts.map(asCut)];
}
