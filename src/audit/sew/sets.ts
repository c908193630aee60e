import type { BatchRecord, StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import { laidPiece, turnsOver } from "./cloth.ts";
import { said, unlike } from "./compare.ts";
import { crossPair, flipped, type Piece, pairOnBoth, pairOnEdges, pairOnLine, smallOnLarge } from "./fold.ts";
import { NEAR, reflectedAngle } from "./polygon.ts";
import { type DesignedUnit, type Seen, use, type Workroom } from "./types.ts";

/*
 * Units that are sewn before they are cut: every batch of sets is laid as told, sewn by its steps, and each unit that
 * comes off it is held against the heap it is said to go to.
 */

const isStep =
  <K extends StepRecord["do"]>(name: K) =>
  (step: StepRecord): step is Extract<StepRecord, { do: K }> =>
    step.do === name;

/** One piece to each place, and as many of each as the set has. */
function laidOf(batch: BatchRecord, record: UnitRecord, room: Workroom): Map<string, Piece> | null {
  const laid = new Map<string, Piece>();
  for (const one of batch.laid) {
    const piece = laidPiece(one, record.name, room);
    use(room, one.letter, batch.sets);
    if (piece === null) return null;
    const key = `${one.piece} ${one.list}`;
    if (laid.has(key)) room.faults.push(`${record.name}: two pieces are laid in one place`);
    laid.set(key, piece);
  }
  return laid;
}

const RISING = { out: { x: Math.SQRT1_2, y: Math.SQRT1_2 }, at: 0 };
const FALLING = { out: { x: Math.SQRT1_2, y: -Math.SQRT1_2 }, at: 0 };
const UPRIGHT = { out: { x: 1, y: 0 }, at: 0 };

/** Units of one set, in the order in which a record numbers them; null where steps cannot be followed. */
function sewSet(record: UnitRecord, laid: ReadonlyMap<string, Piece>, room: Workroom): Seen[][] | null {
  const { seam } = room;
  const complain = (fault: string): null => {
    room.faults.push(`${record.name} ${fault}`);
    return null;
  };
  const at = (piece: number, list = 0): Piece | undefined => laid.get(`${piece} ${list}`);
  const over = (piece: Piece, line: typeof RISING): void => {
    if (!turnsOver(piece.up, piece.faceDown, (angle) => reflectedAngle(angle, line)))
      complain(
        `lays ${piece.fabric} face down with its print another way than it will point once folded out`,
      );
  };
  const used = new Set<Piece | undefined>();
  let units: Seen[][] | null = null;
  const pair = record.steps.find(isStep("pair"));
  const large = record.steps.filter(isStep("small-on-large"));
  const flip = record.steps.find(isStep("flip"));
  if (pair !== undefined) {
    const [low, high] = [at(pair.under), at(pair.over)];
    if (low === undefined || high === undefined) return complain("pairs pieces that are not laid");
    used.add(low).add(high);
    if (
      Math.abs(low.across - high.across) > NEAR ||
      Math.abs(low.along - high.along) > NEAR ||
      Math.abs(low.across - low.along) > NEAR
    )
      return complain(`pairs squares of unequal edges, ${said(low.across)} and ${said(high.across)}`);
    over(high, pair.lines === "edges" ? UPRIGHT : pair.line === "rising" ? RISING : FALLING);
    if (pair.lines === "one") units = pairOnLine(low, high, pair.line, seam);
    else if (pair.lines === "both") units = pairOnBoth(low, high, seam);
    else units = pairOnEdges(low, high, seam);
    const crossed = record.steps.some(isStep("cross-pair"));
    const [one, other] = units;
    if (crossed && one !== undefined && other !== undefined)
      units =
        units.length === 2
          ? crossPair([one, other], pair.line, seam)
          : complain("lays more than two units on each other");
  } else if (large.length > 0) {
    const [first, second] = large;
    const base = first === undefined ? undefined : at(first.large);
    const small = [0, 1, 2, 3].map((list) => (first === undefined ? undefined : at(first.small, list)));
    const known = small.filter((piece) => piece !== undefined);
    if (
      base === undefined ||
      known.length < 4 ||
      first?.round !== 1 ||
      second?.round !== 2 ||
      large.length !== 2
    )
      return complain("does not sew its four small squares in two rounds");
    used.add(base);
    known.forEach((piece, list) => {
      used.add(piece);
      over(piece, list % 2 === 0 ? FALLING : RISING);
    });
    // What each is said to point to is so in the unit whose sky it is on the right.
    units = smallOnLarge(base, known, seam);
  } else if (flip !== undefined) {
    const base = at(flip.base);
    const squares = flip.squares.flatMap(({ piece, corner }) => {
      const square = at(piece);
      return square === undefined ? [] : [{ piece: square, corner }];
    });
    if (base === undefined || squares.length < flip.squares.length)
      return complain("flips pieces that are not laid");
    used.add(base);
    for (const { piece, corner } of squares) {
      used.add(piece);
      over(piece, corner === "top-left" || corner === "bottom-right" ? RISING : FALLING);
    }
    if (
      flip.size !== null &&
      (Math.abs(flip.size.across - base.across) > NEAR || Math.abs(flip.size.along - base.along) > NEAR)
    )
      complain(
        `is said to measure ${said(flip.size.across)} x ${said(flip.size.along)} once flipped, and is ${said(base.across)} x ${said(base.along)}`,
      );
    units = [flipped(base, squares)];
  }
  if (units === null) return complain("has no step that sews its pieces");
  if (used.size < laid.size) return complain("lays pieces that no step sews");
  if (units.length !== record.unitsPerSet)
    return complain(`is said to come ${record.unitsPerSet} to a set, and comes ${units.length}`);
  return units;
}

/** Every batch against the heaps it gives to. */
export function checkSets(
  record: UnitRecord,
  designs: readonly (readonly DesignedUnit[])[],
  play: number,
  room: Workroom,
): void {
  const given = record.heaps.map(() => 0);
  let spare = 0;
  let sets = 0;
  const trimmed = record.steps.some(isStep("trim"));
  const minded =
    !room.givenUp.has(record.path) || record.heaps.some(({ prints }) => Object.keys(prints).length > 0);
  for (const batch of record.batches) {
    sets += batch.sets;
    const laid = laidOf(batch, record, room);
    const units = laid === null ? null : sewSet(record, laid, room);
    if (units === null) continue;
    if (batch.gives.length !== units.length)
      room.faults.push(
        `${record.name}: a set gives ${units.length} units, and is said to give ${batch.gives.length}`,
      );
    const numbered = record.steps.every((step) => step.do !== "pair" || step.lines === "one");
    const wanted = batch.gives.filter((heap) => heap !== null);
    for (const heap of batch.gives) {
      if (heap === null) spare += batch.sets;
      else if (given[heap] !== undefined) given[heap] += batch.sets;
      else room.faults.push(`${record.name}: a set gives to a heap that is not there`);
    }
    const faultOf = (unit: Seen[], heap: number): string | null => {
      for (const designed of designs[heap] ?? []) {
        const fault = unlike(unit, designed, { trimmed, play }, room, minded);
        if (fault !== null) return fault;
      }
      return null;
    };
    if (numbered) {
      units.forEach((unit, i) => {
        const heap = batch.gives[i];
        const fault = heap == null ? null : faultOf(unit, heap);
        if (fault !== null) room.faults.push(`${record.heaps[heap ?? 0]?.name ?? record.name}: ${fault}`);
      });
      continue;
    }
    // Units that come off both diagonals or all edges have no order of their own: each want takes one that serves it.
    const left = [...units];
    for (const heap of wanted) {
      const found = left.findIndex((unit) => faultOf(unit, heap) === null);
      if (found >= 0) left.splice(found, 1);
      else {
        const fault = left[0] === undefined ? "" : faultOf(left[0], heap);
        room.faults.push(
          `${record.heaps[heap]?.name ?? record.name}: no unit of a set serves it: the first ${fault}`,
        );
        break;
      }
    }
  }
  const over = given.reduce((sum, count, heap) => sum + count - (record.heaps[heap]?.count ?? 0), 0) + spare;
  given.forEach((count, heap) => {
    const { name, count: wants } = record.heaps[heap] ?? { name: record.name, count: 0 };
    if (count < wants) room.faults.push(`${name}: its sets give ${count} units, and ${wants} are wanted`);
  });
  if (over !== record.spare)
    room.faults.push(`${record.name}: ${over} units are left over, and ${record.spare} are named`);
  if (sets !== record.sets)
    room.faults.push(`${record.name}: ${record.sets} sets are told, and ${sets} are laid`);
}
