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

/** The pieces of one set on the table, and what is wrong with how they are sewn. */
interface SetTable {
  record: UnitRecord;
  seam: number;
  at(piece: number, list?: number): Piece | undefined;
  complain(fault: string): null;
}

/** What a step makes, and the pieces it takes for that. */
interface SewnSet {
  units: Seen[][];
  used: readonly Piece[];
}

type StepNamed<K extends StepRecord["do"]> = Extract<StepRecord, { do: K }>;

/** Folded out over its seam, a piece must point as its unit is said to. */
function checkTurnsOver(piece: Piece, line: typeof RISING, { complain }: SetTable): void {
  if (!turnsOver(piece.up, piece.faceDown, (angle) => reflectedAngle(angle, line)))
    complain(`lays ${piece.fabric} face down with its print another way than it will point once folded out`);
}

function sewPair(pair: StepNamed<"pair">, table: SetTable): SewnSet | null {
  const { at, complain, record, seam } = table;
  const [low, high] = [at(pair.under), at(pair.over)];
  if (low === undefined || high === undefined) return complain("pairs pieces that are not laid");
  if (
    Math.abs(low.across - high.across) > NEAR ||
    Math.abs(low.along - high.along) > NEAR ||
    Math.abs(low.across - low.along) > NEAR
  )
    return complain(`pairs squares of unequal edges, ${said(low.across)} and ${said(high.across)}`);
  checkTurnsOver(high, pair.lines === "edges" ? UPRIGHT : pair.line === "rising" ? RISING : FALLING, table);
  const used = [low, high];
  const units =
    pair.lines === "one"
      ? pairOnLine(low, high, pair.line, seam)
      : pair.lines === "both"
        ? pairOnBoth(low, high, seam)
        : pairOnEdges(low, high, seam);
  const [one, other] = units;
  if (!record.steps.some(isStep("cross-pair")) || one === undefined || other === undefined)
    return { units, used };
  if (units.length !== 2) return complain("lays more than two units on each other");
  return { units: crossPair([one, other], pair.line, seam), used };
}

function sewSmallOnLarge(rounds: readonly StepNamed<"small-on-large">[], table: SetTable): SewnSet | null {
  const { at, complain, seam } = table;
  const [first, second] = rounds;
  const base = first === undefined ? undefined : at(first.large);
  const small = [0, 1, 2, 3].map((list) => (first === undefined ? undefined : at(first.small, list)));
  const known = small.filter((piece) => piece !== undefined);
  if (
    base === undefined ||
    known.length < 4 ||
    first?.round !== 1 ||
    second?.round !== 2 ||
    rounds.length !== 2
  )
    return complain("does not sew its four small squares in two rounds");
  known.forEach((piece, list) => {
    checkTurnsOver(piece, list % 2 === 0 ? FALLING : RISING, table);
  });
  // What each is said to point to is so in the unit whose sky it is on the right.
  return { units: smallOnLarge(base, known, seam), used: [base, ...known] };
}

function sewFlip(flip: StepNamed<"flip">, table: SetTable): SewnSet | null {
  const { at, complain } = table;
  const base = at(flip.base);
  const squares = flip.squares.flatMap(({ piece, corner }) => {
    const square = at(piece);
    return square === undefined ? [] : [{ piece: square, corner }];
  });
  if (base === undefined || squares.length < flip.squares.length)
    return complain("flips pieces that are not laid");
  for (const { piece, corner } of squares)
    checkTurnsOver(piece, corner === "top-left" || corner === "bottom-right" ? RISING : FALLING, table);
  if (
    flip.size !== null &&
    (Math.abs(flip.size.across - base.across) > NEAR || Math.abs(flip.size.along - base.along) > NEAR)
  )
    complain(
      `is said to measure ${said(flip.size.across)} x ${said(flip.size.along)} once flipped, and is ${said(base.across)} x ${said(base.along)}`,
    );
  return { units: [flipped(base, squares)], used: [base, ...squares.map(({ piece }) => piece)] };
}

/** Units of one set, in the order in which a record numbers them; null where steps cannot be followed. */
function sewSet(record: UnitRecord, laid: ReadonlyMap<string, Piece>, room: Workroom): Seen[][] | null {
  const complain = (fault: string): null => {
    room.faults.push(`${record.name} ${fault}`);
    return null;
  };
  const table: SetTable = {
    record,
    seam: room.seam,
    at: (piece, list = 0) => laid.get(`${piece} ${list}`),
    complain,
  };
  const pair = record.steps.find(isStep("pair"));
  const large = record.steps.filter(isStep("small-on-large"));
  const flip = record.steps.find(isStep("flip"));
  if (pair === undefined && large.length === 0 && flip === undefined)
    return complain("has no step that sews its pieces");
  const sewn =
    pair !== undefined
      ? sewPair(pair, table)
      : large.length > 0 || flip === undefined
        ? sewSmallOnLarge(large, table)
        : sewFlip(flip, table);
  if (sewn === null) return null;
  if (new Set(sewn.used).size < laid.size) return complain("lays pieces that no step sews");
  if (sewn.units.length !== record.unitsPerSet)
    return complain(`is said to come ${record.unitsPerSet} to a set, and comes ${sewn.units.length}`);
  return sewn.units;
}

/** What is wrong with a unit in a heap; null when it is as designed everywhere the heap goes. */
type FaultOf = (unit: Seen[], heap: number) => string | null;

function faultIn(
  record: UnitRecord,
  designs: readonly (readonly DesignedUnit[])[],
  play: number,
  room: Workroom,
): FaultOf {
  const trimmed = record.steps.some(isStep("trim"));
  const minded =
    !room.givenUp.has(record.path) || record.heaps.some(({ prints }) => Object.keys(prints).length > 0);
  return (unit, heap) => {
    for (const designed of designs[heap] ?? []) {
      const fault = unlike(unit, designed, { trimmed, play }, room, minded);
      if (fault !== null) return fault;
    }
    return null;
  };
}

/** The units of one set against the heaps that the batch gives them to. */
function checkGiven(
  record: UnitRecord,
  units: readonly Seen[][],
  batch: BatchRecord,
  faultOf: FaultOf,
  room: Workroom,
): void {
  const nameOf = (heap: number): string => record.heaps[heap]?.name ?? record.name;
  const numbered = record.steps.every((step) => step.do !== "pair" || step.lines === "one");
  if (numbered) {
    units.forEach((unit, i) => {
      const heap = batch.gives[i] ?? null;
      const fault = heap === null ? null : faultOf(unit, heap);
      if (heap !== null && fault !== null) room.faults.push(`${nameOf(heap)}: ${fault}`);
    });
    return;
  }
  // Units that come off both diagonals or all edges have no order of their own: each want takes one that serves it.
  const left = [...units];
  for (const heap of batch.gives) {
    if (heap === null) continue;
    const found = left.findIndex((unit) => faultOf(unit, heap) === null);
    if (found >= 0) left.splice(found, 1);
    else {
      const fault = left[0] === undefined ? "" : faultOf(left[0], heap);
      room.faults.push(`${nameOf(heap)}: no unit of a set serves it: the first ${fault}`);
      break;
    }
  }
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
  const faultOf = faultIn(record, designs, play, room);
  for (const batch of record.batches) {
    sets += batch.sets;
    const laid = laidOf(batch, record, room);
    const units = laid === null ? null : sewSet(record, laid, room);
    if (units === null) continue;
    if (batch.gives.length !== units.length)
      room.faults.push(
        `${record.name}: a set gives ${units.length} units, and is said to give ${batch.gives.length}`,
      );
    for (const heap of batch.gives) {
      if (heap === null) spare += batch.sets;
      else if (given[heap] !== undefined) given[heap] += batch.sets;
      else room.faults.push(`${record.name}: a set gives to a heap that is not there`);
    }
    checkGiven(record, units, batch, faultOf, room);
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
