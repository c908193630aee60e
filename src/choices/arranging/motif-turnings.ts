import type { MotifPlace, Motifs } from "../../quilt/index.ts";
import type { QuarterTurn } from "../../spec/index.ts";
import { aboutCentre, chance, modulo } from "./turnings.ts";

/** How the motifs of a block are turned. */
export type MotifTurningKey =
  | "upright"
  | "right"
  | "upside-down"
  | "left"
  | "facing"
  | "stacked"
  | "apart"
  | "by-turns"
  | "clockwise"
  | "anticlockwise"
  | "centre"
  | "chance";

export interface MotifTurning {
  /** As typed on the command line. */
  key: MotifTurningKey;
  turn(place: MotifPlace, motifs: Motifs): QuarterTurn;
}

/** The two turns of a motif that is not square: upright or to the right, and the other way. */
function oneWay({ fits }: MotifPlace): [QuarterTurn, QuarterTurn] {
  const [one = 0, other = 180] = fits;
  return [one, other];
}

/** As wanted where that fits; else, for a motif that is not square, upright and right are one way. */
function fitted(wanted: QuarterTurn, place: MotifPlace): QuarterTurn {
  if (place.fits.includes(wanted)) return wanted;
  const [one, other] = oneWay(place);
  return wanted < 180 ? one : other;
}

/**
 * Facing one another, side by side: the right one of each pair the mirror image of the left, or turned the other way
 * where no turn shows one. A motif that is not square faces the middle of its block.
 */
function facing(place: MotifPlace, { square, mirror }: Motifs): QuarterTurn {
  if (!square) return inwards(place);
  const m = mirror ?? 0;
  // A motif turned by s shows its mirror image when turned by m - s; one that is its own mirror image starts upright.
  const first: QuarterTurn = modulo(m - 90) === 90 ? 0 : 90;
  return place.column % 2 === 0 ? first : modulo(m - first);
}

function inwards(place: MotifPlace): QuarterTurn {
  const [one, other] = oneWay(place);
  const lying = one === 90;
  const before = lying ? place.x : place.y;
  const index = lying ? place.column : place.row;
  const first = Math.abs(before) < 1e-9 ? index % 2 === 0 : before < 0;
  // Upright, the lower one points up; lying, the left one points to the right.
  return first === lying ? one : other;
}

/** The same with the pair the other way round. */
function backToBack(place: MotifPlace, motifs: Motifs): QuarterTurn {
  if (!motifs.square) return modulo(inwards(place) + 180);
  const column = place.column % 2 === 0 ? 1 : 0;
  return facing({ ...place, column }, motifs);
}

/** Facing one another, one above the other: seen in a level mirror, which is the upright one and a half-turn. */
function stacked(place: MotifPlace, { square, mirror }: Motifs): QuarterTurn {
  if (!square) return inwards(place);
  const m = modulo((mirror ?? 0) + 180);
  const first: QuarterTurn = modulo(m - 180) === 180 ? 90 : 180;
  return place.row % 2 === 0 ? first : modulo(m - first);
}

/**
 * One after another round the middle of the block, each pointing to the next; a motif in the middle stays as it is.
 *
 *      >  >  v
 *      ^     v
 *      ^  <  <
 */
function clockwise(place: MotifPlace): QuarterTurn {
  const { x, y, turn } = place;
  if (x === 0 && y === 0) return turn;
  return modulo(aboutCentre(place) + 90);
}

/** The mirror image of that: what runs right runs left. */
function anticlockwise(place: MotifPlace): QuarterTurn {
  if (place.x === 0 && place.y === 0) return place.turn;
  return modulo(-clockwise({ ...place, x: -place.x }));
}

/** The turnings of motifs makers usually try first. */
export function motifTurnings(seed: number): MotifTurning[] {
  const random = chance(seed);
  const by = (turn: (place: MotifPlace) => QuarterTurn) => (place: MotifPlace) => fitted(turn(place), place);
  return [
    { key: "upright", turn: by(() => 0) },
    { key: "right", turn: by(() => 90) },
    { key: "upside-down", turn: by(() => 180) },
    { key: "left", turn: by(() => 270) },
    { key: "facing", turn: facing },
    { key: "stacked", turn: stacked },
    { key: "apart", turn: backToBack },
    {
      key: "by-turns",
      turn: by(({ row, column }) => ((row + column) % 2 === 0 ? 270 : 90)),
    },
    { key: "clockwise", turn: by(clockwise) },
    { key: "anticlockwise", turn: by(anticlockwise) },
    { key: "centre", turn: by(aboutCentre) },
    { key: "chance", turn: by(random) },
  ];
}

/** What half-turns are enough for. */
const BY_HALVES: readonly string[] = ["upright", "upside-down", "facing", "apart", "by-turns", "chance"];

/** Whether motifs can be turned so: squares always, others by halves, and round the middle where they lie along it. */
export function suits({ key }: MotifTurning, { square, places }: Motifs): boolean {
  if (square || BY_HALVES.includes(key)) return true;
  const round: Partial<Record<MotifTurningKey, typeof clockwise>> = { clockwise, anticlockwise };
  const way = round[key];
  return way !== undefined && places.every((place) => place.fits.includes(way(place)));
}
