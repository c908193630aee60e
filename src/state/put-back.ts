import type { CutPiece } from "../cutlist/types.ts";
import { nth } from "../length/nth.ts";
import { asSource, asStock, type FixedPiece, listLeftovers, type Source } from "../plan/index.ts";
import type { Done, FabricPlan, Part } from "../plan/types.ts";
import { isOfBag, isRun, type Wanted } from "./still-wanted.ts";

/** What a fabric's plan is put together from once what is left of it has been planned. */
export interface Parts {
  /** The plan of what is still to cut: its pieces are those alone. */
  rest: FabricPlan;
  wanted: readonly Wanted[];
  bought: readonly string[];
  /** Cloth in hand that was not offered to the plan. */
  kept: readonly FixedPiece[];
  took: Done["took"];
  keepFrom: number;
  kits: number;
}

interface Bag {
  piece: CutPiece;
  cut: number;
}

/**
 * The plan of a fabric that is gone on with: its bags are all that the quilt needs, with how many of each are cut; lays and
 * steps are what is left to do.
 */
export function putBack({ rest, wanted, bought, kept, took, keepFrom, kits }: Parts): FabricPlan {
  const bags: Bag[] = [];
  for (const each of wanted) {
    if (isRun(each.piece)) bags.push(...sourcesOf(each, rest, bags.length));
    else bags.push({ piece: each.piece, cut: each.cut });
  }
  const pieces = bags.map(({ piece }) => piece);
  const places = rest.pieces.map((piece) => {
    const at = pieces.findIndex((one) => sameBag(one, piece));
    if (at < 0) throw new Error(`no bag for ${piece.letter}, ${piece.across} x ${piece.along}`);
    return at;
  });
  const lays = rest.lays.map((lay) => ({ ...lay, root: withPlaces(lay.root, places) }));
  const done: Done = {
    cut: bags.map(({ cut }) => cut),
    bought: [...bought],
    kept: kept.map((piece) => asStock(piece)),
    took: [...took],
  };
  return {
    ...rest,
    pieces,
    lays,
    steps: rest.steps.map((step) => ({
      ...step,
      subcuts: step.subcuts.map((subcut) => ({ ...subcut, piece: nth(places, subcut.piece) })),
    })),
    leftovers: listLeftovers(lays, pieces, keepFrom, kits),
    done,
  };
}

/** In a run strips are told apart by their length, elsewhere bags by their letter. */
function sameBag(bag: CutPiece, piece: CutPiece): boolean {
  if (!isRun(bag)) return bag.letter === piece.letter;
  const run = bag.letter.replace(/\d+$/, "");
  return isRun(piece) && piece.letter.replace(/\d+$/, "") === run && piece.across === bag.across;
}

/** The strips and ends of a run, those cut and those still to cut; ends of one length are one bag. */
function sourcesOf({ piece, sources }: Wanted, rest: FabricPlan, first: number): Bag[] {
  const found: (Source & { letter: string | null; cut: number })[] = [];
  const add = (letter: string | null, across: number, whole: boolean, count: number, cut: number): void => {
    const known = found.find((one) => one.across === across);
    if (known === undefined) found.push({ item: first, across, whole, count, letter, cut });
    else {
      known.count += count;
      known.cut += cut;
    }
  };
  for (const { piece: own, count } of sources)
    add(own.letter, own.across, own.across === rest.usable, count, count);
  for (const own of rest.pieces)
    if (isOfBag(piece, own.letter) && isRun(own)) add(null, own.across, own.fullWidth, own.count, 0);
  const letters = new Set(found.flatMap(({ letter }) => (letter === null ? [] : [letter])));
  return found.map(({ letter, cut, ...source }, index) => {
    const made = asSource(piece, first, found, index);
    return {
      piece: { ...made, across: source.across, letter: letter ?? nextLetter(piece.letter, letters) },
      cut,
    };
  });
}

function nextLetter(letter: string, taken: Set<string>): string {
  let name = letter;
  for (let n = 2; taken.has(name); n++) name = `${letter}${n}`;
  taken.add(name);
  return name;
}

function withPlaces(part: Part, places: readonly number[]): Part {
  if (part.parts.length === 0)
    return part.piece === null ? part : { ...part, piece: nth(places, part.piece) };
  return { ...part, parts: part.parts.map((inner) => withPlaces(inner, places)) };
}
