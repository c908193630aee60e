import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import { bagOf } from "./cloth.ts";
import { said, unlike } from "./compare.ts";
import { checkEdges, followJoins, halfTurned, joinsOf, sameSize, sewGroups } from "./join-steps.ts";
import { checkLoose, type Manner } from "./loose.ts";
import { boxOf, NEAR, type Polygon, rectangleOf } from "./polygon.ts";
import { checkSets } from "./sets.ts";
import { checkStripSet, type Group, segmentOf } from "./strips.ts";
import type { DesignedUnit, Workroom } from "./types.ts";

/** What a unit of a record is by its heaps: every different way in which the quilt has it. */
export type Designs = readonly (readonly DesignedUnit[])[];

/** Follows one record from its bags to its heaps. */
export function checkUnit(record: UnitRecord, designs: Designs, room: Workroom): void {
  const units = record.heaps.reduce((sum, { count }) => sum + count, 0);
  if (units !== record.units)
    room.faults.push(`${record.name}: ${record.units} units are told, and its heaps hold ${units}`);
  const first = designs.flat()[0];
  if (first === undefined) return;
  checkPatches(record, designs, room);
  checkTold(record, first, room);
  const play = playOf(record, room);
  for (const set of record.stripSets) checkStripSet(set, record, room);
  if (record.loose) looseUnit(record, designs, play, room);
  else if (record.batches.length > 0) checkSets(record, designs, play, room);
  else if (record.stripSets.length > 0) stripUnit(record, designs, play, room);
  else room.faults.push(`${record.name} is made of nothing`);
}

/** Rounding up moves a seam by a mark at the most for each piece on the way. */
function playOf(record: UnitRecord, room: Workroom): number {
  const letters = new Set([
    ...record.heaps.flatMap(({ patches }) => patches.flatMap((patch) => patch.letters)),
    ...record.batches.flatMap(({ laid }) => laid.map(({ letter }) => letter)),
  ]);
  const rounded = [...letters].some((letter) => bagOf(letter, room)?.piece.roundedUp === true);
  // Segments are rounded up as their strips are, and no bag tells: what comes out larger is trimmed alike on all sides.
  const segments =
    record.stripSets.some(({ cut }) => cut === "square") &&
    record.steps.some((step) => step.do === "trim" && step.by === "round");
  return rounded || segments ? room.mark : 0;
}

/** Sizes told: the raw unit, and what a trim or a strip set is said to measure. */
function checkTold(record: UnitRecord, designed: DesignedUnit, room: Workroom): void {
  const raw = { across: designed.across + 2 * room.seam, along: designed.along + 2 * room.seam };
  if (!sameSize(record.raw, raw))
    room.faults.push(
      `${record.name}: its raw size is told as ${said(record.raw.across)} x ${said(record.raw.along)}, and is ${said(raw.across)} x ${said(raw.along)}`,
    );
  for (const step of record.steps) {
    // What is trimmed on the way is measured where it is sewn.
    if (step.do === "trim" && step.to === undefined && step.size !== null && !sameSize(step.size, raw))
      room.faults.push(
        `${record.name}: it is trimmed to ${said(step.size.across)} x ${said(step.size.along)}, not its raw size`,
      );
    if (step.do !== "strip-set" || step.size === null) continue;
    const set = record.stripSets.find(({ name }) => name === String.fromCharCode(65 + step.set));
    if (set !== undefined && !sameSize(step.size, { across: set.segment, along: set.height }))
      room.faults.push(`${record.name}: a segment of set ${set.name} does not measure what is said`);
  }
}

/** Patches by name: those of the record are those of the quilt, in its fabrics, as it says they point. */
function checkPatches(record: UnitRecord, designs: Designs, room: Workroom): void {
  record.heaps.forEach(({ name, patches }, heap) => {
    for (const designed of designs[heap] ?? []) {
      const spots = new Set(patches.map(({ spot }) => spot));
      for (const { spot } of designed.patches)
        if (!spots.has(spot)) room.faults.push(`${name}: ${spot} is designed, and nobody makes it`);
      for (const patch of patches) {
        const target = designed.patches.find(({ spot }) => spot === patch.spot);
        if (target === undefined) room.faults.push(`${name}: ${patch.spot} is made, and not designed`);
        else if (target.fabric !== patch.fabric)
          room.faults.push(
            `${name}: ${patch.spot} is made in ${patch.fabric}, and designed in ${target.fabric}`,
          );
        for (const letter of patch.letters)
          if (bagOf(letter, room)?.fabric !== patch.fabric)
            room.faults.push(
              `${name}: ${patch.spot} comes out of bag ${letter}, which does not hold ${patch.fabric}`,
            );
      }
    }
  });
}

function isRectangle(polygon: Polygon): boolean {
  const box = boxOf([polygon]);
  return (
    polygon.length === 4 &&
    polygon.every(
      ({ x, y }) =>
        (Math.abs(x - box.x) < NEAR || Math.abs(x - box.x - box.across) < NEAR) &&
        (Math.abs(y - box.y) < NEAR || Math.abs(y - box.y - box.along) < NEAR),
    )
  );
}

/** Patches cut to shape: upright rectangles are sewn by their sizes as cut, others edge to edge. */
function looseUnit(record: UnitRecord, designs: Designs, play: number, room: Workroom): void {
  const trims = record.steps.filter((step) => step.do === "trim");
  const onLines = room.onLines.has(record);
  const straight = joinsOf(record).every(({ way }) => way !== "edge");
  const spots = record.heaps[0]?.patches.map(({ spot }) => spot) ?? [];
  const rectangles =
    straight &&
    !onLines &&
    designs.every((own) => own.every(({ patches }) => patches.every(({ polygon }) => isRectangle(polygon))));
  const manner: Manner = { trimmed: trims.length > 0 || onLines, onLines, rectangles };
  // Counted once; the other ways in which the quilt has the same heap differ by a turn that prints do not show.
  checkLoose(
    record,
    designs.map((own) => own[0] ?? null),
    manner,
    room,
  );
  checkCutSteps(record, room);
  if (onLines) return;
  const made = followJoins(record, spots, room);
  if (made === null) return;
  if (!rectangles) {
    const designed = designs.flat()[0];
    if (designed !== undefined) checkEdges(record, designed, made, room);
    return;
  }
  record.heaps.forEach((heap, index) => {
    for (const designed of designs[index] ?? []) {
      const groups = new Map<string, Group>();
      for (const { spot, polygon, fabric, up } of designed.patches) {
        const letter = heap.patches.find((patch) => patch.spot === spot)?.from[0];
        const bag = letter === undefined ? null : bagOf(letter.letter, room);
        if (bag === null) return;
        const size = asItLies(bag.piece, letter?.turn ?? null, polygon, room.seam);
        groups.set(spot, { ...size, seen: [{ polygon: rectangleOf(size.across, size.along), fabric, up }] });
      }
      const whole = sewGroups(record, groups, room, index > 0);
      if (whole === null) continue;
      const fault = unlike(
        whole.seen,
        designed,
        { trimmed: manner.trimmed, play: play * groups.size },
        room,
        false,
      );
      if (fault !== null) room.faults.push(`${heap.name} ${fault}`);
    }
  });
}

/** A rectangle as it lies in the unit: turned as told, or the way it fits best. */
function asItLies(
  piece: { across: number; along: number },
  turn: number | null,
  patch: Polygon,
  seam: number,
): { across: number; along: number } {
  const box = boxOf([patch]);
  const off = (across: number, along: number): number =>
    Math.abs(across - box.across - 2 * seam) + Math.abs(along - box.along - 2 * seam);
  const onSide =
    turn === null ? off(piece.along, piece.across) < off(piece.across, piece.along) : turn % 2 === 1;
  return onSide ? { across: piece.along, along: piece.across } : { across: piece.across, along: piece.along };
}

/** Whatever is taken in halves, quarters or slanting shapes has a step that cuts it so. */
function checkCutSteps(record: UnitRecord, room: Workroom): void {
  if (room.onLines.has(record)) return;
  const parts = record.heaps.flatMap(({ patches }) =>
    patches.flatMap(({ from }) => from.map(({ part }) => part)),
  );
  const halved = parts.some((part) => part !== "whole" && part !== "template");
  if (halved && !record.steps.some((step) => step.do === "cut-triangles"))
    room.faults.push(`${record.name}: its triangles are never cut`);
  const slanting = record.stripSets.filter(({ cut }) => cut !== "square").length;
  const shapes = new Set(record.steps.flatMap((step) => (step.do === "cut-shapes" ? [step.set] : [])));
  // Each heap has its own strips; the step speaks of them all.
  const kinds = new Set(record.stripSets.map(({ name }) => name)).size;
  if (slanting > 0 && shapes.size !== kinds) room.faults.push(`${record.name}: its strips are never cut up`);
}

/** Segments of strip sets, each either way up as its picture shows it, sewn to the unit. */
function stripUnit(record: UnitRecord, designs: Designs, play: number, room: Workroom): void {
  const told = record.steps.filter((step) => step.do === "strip-set").length;
  const kinds = new Set(record.stripSets.map(({ name }) => name));
  if (told !== kinds.size)
    room.faults.push(`${record.name}: ${told} strip sets are sewn, and ${kinds.size} are cut`);
  const trimmed = record.steps.some((step) => step.do === "trim");
  let told1 = false;
  record.heaps.forEach((heap, index) => {
    const segments = new Map<string, Group>();
    for (const set of record.stripSets.filter((each) => each.heap === index)) {
      const segment = segmentOf(set, room.seam);
      for (let i = 1; i <= set.segmentsPerUnit; i += 1) segments.set(`${set.name}${i}`, segment);
    }
    if (segments.size === 0) {
      room.faults.push(`${heap.name}: no strip set is sewn for it`);
      return;
    }
    if (!told1 && followJoins(record, [...segments.keys()], room) === null) return;
    const minded = !room.givenUp.has(record.path) || Object.keys(heap.prints).length > 0;
    for (const designed of designs[index] ?? []) {
      let first: string | null = null;
      let found = false;
      const names = [...segments.keys()];
      for (let code = 0; code < 2 ** names.length && !found; code += 1) {
        const laid = new Map(
          names.map((name, i): [string, Group] => {
            const segment = segments.get(name) as Group;
            return [name, Math.floor(code / 2 ** i) % 2 === 1 ? halfTurned(segment) : segment];
          }),
        );
        const whole = sewGroups(record, laid, room, told1 || code > 0);
        if (whole === null) break;
        const fault = unlike(whole.seen, designed, { trimmed, play: play * segments.size }, room, minded);
        found = fault === null;
        first ??= fault;
      }
      told1 = true;
      if (!found && first !== null) room.faults.push(`${heap.name} ${first}`);
    }
  });
}
