import { type Motifs, motifsOf, turnMotifs } from "../../quilt/index.ts";
import type { QuarterTurn, QuiltSpec } from "../../spec/index.ts";
import { motifTurnings, suits } from "./motif-turnings.ts";
import { type WrittenGrid, writtenGrid } from "./turned-spec.ts";

/** One way the motifs of a block can be turned, and the grid that says so. */
interface MotifWay {
  /** As `arrange --motifs` names it. */
  key: string;
  grid: WrittenGrid;
}

/** The motifs of one block and their turnings; of those that come out the same the first. */
export interface MotifWays {
  motifs: Motifs;
  ways: MotifWay[];
}

/**
 * Every way in which the motifs of a block are usually turned, drawn as a file has it.
 * @param seed number of the turning by chance
 * @returns null when no part of the block can be turned by itself
 */
export function motifWays(spec: QuiltSpec, key: string, seed: number): MotifWays | null {
  const block = spec.blocks.find((one) => one.key === key);
  const motifs = block === undefined ? null : motifsOf(block, spec);
  if (block === undefined || motifs === null) return null;
  const seen = new Set<string>();
  const ways = motifTurnings(seed).flatMap((turning) => {
    if (!suits(turning, motifs)) return [];
    const turns = motifs.places.map((place) => turning.turn(place, motifs));
    const grid = writtenGrid(turnMotifs(block, spec, turns), spec);
    const drawn = JSON.stringify([grid.grid, grid.columns, grid.lines]);
    if (seen.has(drawn)) return [];
    seen.add(drawn);
    return [{ key: turning.key, grid }];
  });
  return { motifs, ways };
}

/** The block with one of its motifs turned to the next way that fits its place. */
export function motifTurned(spec: QuiltSpec, key: string, index: number): WrittenGrid | null {
  const block = spec.blocks.find((one) => one.key === key);
  const motifs = block === undefined ? null : motifsOf(block, spec);
  const place = motifs?.places[index];
  if (block === undefined || motifs === null || place === undefined) return null;
  const fits = [...place.fits].sort((a, b) => a - b);
  const next: QuarterTurn = fits.find((turn) => turn > place.turn) ?? fits[0] ?? place.turn;
  const turns = motifs.places.map(({ turn }, i) => (i === index ? next : turn));
  return writtenGrid(turnMotifs(block, spec, turns), spec);
}
