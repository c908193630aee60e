import type { JoinStep } from "../../making/types.ts";
import { said } from "./compare.ts";
import { lengthOf, outlineOf, spotOf } from "./designed.ts";
import { boxOf, NEAR } from "./polygon.ts";
import type { Workroom } from "./types.ts";

/*
 * From units to blocks, and from blocks and sashes to rows and the centre: every joining told is laid where it says,
 * takes parts that are there and not sewn yet, edges equal, and the last makes the whole.
 */

interface Box {
  x: number;
  y: number;
  across: number;
  along: number;
}

const sameBox = (a: Box, b: Box, near: number, shift = near): boolean =>
  Math.abs(a.x - b.x) <= shift &&
  Math.abs(a.y - b.y) <= shift &&
  Math.abs(a.across - b.across) <= near &&
  Math.abs(a.along - b.along) <= near;

/** What a joining is trimmed to once it is sewn; else the size it has. */
function broughtTo(join: JoinStep): JoinStep["size"] {
  return (join as JoinStep & { trim?: JoinStep["size"] }).trim ?? join.size;
}

/** Sizes of one joining: equal edges, and the size it is said to measure. */
function checkSizes(join: JoinStep, room: Workroom): void {
  const { scale } = room.making;
  const { way, parts, size, from, seams, seamLength } = join;
  const where = `joining ${join.makes}`;
  const [run, other] = way === "across" ? (["across", "down"] as const) : (["down", "across"] as const);
  const near = 2 * scale;
  const [first] = parts;
  if (parts.some((part) => Math.abs(part[other] - (first?.[other] ?? 0)) > near))
    room.faults.push(`${where}: unequal edges`);
  const sewn = parts.reduce((sum, part) => sum + part[run], 0) - 2 * room.seam * scale * (parts.length - 1);
  if (Math.abs(sewn - size[run]) > near || Math.abs((first?.[other] ?? 0) - size[other]) > near)
    room.faults.push(`${where}: it measures ${said(sewn / scale)}, not ${said(size[run] / scale)}`);
  const trim = broughtTo(join);
  if (trim.across > size.across + near || trim.down > size.down + near)
    room.faults.push(`${where}: it is too small for what it is to be trimmed to`);
  if (from.length !== parts.length || seams !== parts.length - 1)
    room.faults.push(`${where}: ${seams} seams join ${parts.length} parts`);
  if (Math.abs(seamLength - size[other] / scale) > 2)
    room.faults.push(
      `${where}: its seam is told ${said(seamLength)} long, and is ${said(size[other] / scale)}`,
    );
}

/** Takes parts off the table and lays down what is made of them. */
function followBoxes(
  joins: readonly JoinStep[],
  leaves: readonly Box[],
  whole: Box,
  partial: boolean,
  what: string,
  room: Workroom,
  slack = 0,
): void {
  const { scale } = room.making;
  const seam = room.seam * scale;
  const near = 2 * scale;
  // What is sewn larger than designed, to be trimmed, lies so much beside its place.
  const shift = near + slack * scale;
  let table = leaves.map(({ x, y, across, along }) => ({
    x: x * scale,
    y: y * scale,
    across: across * scale,
    along: along * scale,
  }));
  for (const join of joins) {
    let { x, y } = join.at;
    join.parts.forEach((part, i) => {
      const box = { x, y, across: part.across - 2 * seam, along: part.down - 2 * seam };
      const found = table.findIndex((each) => sameBox(each, box, near, shift));
      if (found >= 0) table.splice(found, 1);
      else {
        // The parts of a seam that is sewn in two goes have no joinings of their own.
        const inside = table.filter(
          (each) =>
            each.x >= box.x - near &&
            each.y >= box.y - near &&
            each.x + each.across <= box.x + box.across + near &&
            each.y + each.along <= box.y + box.along + near,
        );
        const area = inside.reduce((sum, each) => sum + each.across * each.along, 0);
        const filled = partial && Math.abs(area - box.across * box.along) <= near * (box.across + box.along);
        if (!filled)
          room.faults.push(`${what}, joining ${join.makes}: part ${i + 1} is not there, or is sewn already`);
        else table = table.filter((each) => !inside.includes(each));
      }
      if (join.way === "across") x += box.across;
      else y += box.along;
    });
    table.push({
      x: join.at.x,
      y: join.at.y,
      across: broughtTo(join).across - 2 * seam,
      along: broughtTo(join).down - 2 * seam,
    });
  }
  const scaled = {
    x: whole.x * scale,
    y: whole.y * scale,
    across: whole.across * scale,
    along: whole.along * scale,
  };
  const [only] = table;
  const done = table.length === 1 && only !== undefined && sameBox(only, scaled, near);
  const area = table.reduce((sum, each) => sum + each.across * each.along, 0);
  const tiled =
    partial && Math.abs(area - scaled.across * scaled.along) <= near * (scaled.across + scaled.along);
  if (!done && !tiled)
    room.faults.push(`${what}: its joinings leave ${table.length} parts that are never sewn together`);
}

/** Units into blocks. */
export function checkBlocks(room: Workroom): void {
  const { making, top } = room;
  for (const join of making.joins) checkSizes(join, room);
  const onFoundation = new Set(
    (making.foundation?.parts ?? []).flatMap((part) =>
      part.kind === "pieced"
        ? part.places.map(({ design }) => design)
        : part.cells.map(({ design }) => design),
    ),
  );
  top.designs.forEach((design, index) => {
    if (design.count === 0) return;
    const placed = top.blocks.filter((block) => block.design === index).length;
    if (placed !== design.count)
      room.faults.push(`${design.name}: ${design.count} blocks are designed, and ${placed} placed`);
    const joins = making.joins.filter((join) => join.design === index);
    for (const { stage, count, makes } of joins)
      if (stage === "block" && count !== design.count)
        room.faults.push(`${design.name}, joining ${makes}: made ${count} times for ${design.count} blocks`);
    // What is sewn on foundation is followed there.
    if (onFoundation.has(index)) return;
    let slack = 0;
    const leaves = design.units.map((unit, number) => {
      const box = {
        x: lengthOf(unit.x),
        y: lengthOf(unit.y),
        across: lengthOf(unit.across),
        along: lengthOf(unit.down),
      };
      // As its record leaves it: rounded up to a mark it is larger than designed, and its block is trimmed.
      const way = making.blocks.find((each) => each.design === index);
      const raw = making.units[way?.units[number]?.unit ?? -1]?.raw;
      if (raw === undefined) return box;
      const onSide = unit.turn % 180 !== 0;
      const [wide, high] = onSide ? [raw.along, raw.across] : [raw.across, raw.along];
      const [across, along] = [wide - 2 * room.seam, high - 2 * room.seam];
      const more = Math.max(across - box.across, along - box.along);
      if (more <= NEAR || more > room.mark * Math.max(unit.columns, unit.rows) + NEAR) return box;
      slack = room.mark * (design.columns + design.rows);
      return { ...box, across, along };
    });
    const whole = { x: 0, y: 0, across: lengthOf(design.across), along: lengthOf(design.down) };
    const partial = making.partial.some((each) => each.design === index);
    followBoxes(joins, leaves, whole, partial, design.name, room, slack);
  });
}

/** Blocks, sashes and squares between them into the centre; what has a border round it is the borders' to say. */
export function checkCentre(room: Workroom): void {
  const { making, top } = room;
  const { centre } = top;
  const rows = making.foundation?.per === "row";
  if (
    centre.onPoint ||
    rows ||
    (making.pressing === null && making.joins.every(({ stage }) => stage !== "top"))
  )
    return;
  const leaves: Box[] = top.blocks
    .filter(({ place }) => place !== "border")
    .map(({ outline }) => boxOf([outline.map(spotOf)]));
  for (const patch of top.patches)
    if (
      patch.origin.block === null &&
      patch.origin.border === null &&
      (patch.origin.place === "sash" || patch.origin.place === "cornerstone")
    )
      leaves.push(boxOf([outlineOf(patch)]));
  const whole = {
    x: lengthOf(centre.x),
    y: lengthOf(centre.y),
    across: lengthOf(centre.across),
    along: lengthOf(centre.down),
  };
  followBoxes(
    making.joins.filter(({ stage }) => stage === "top"),
    leaves,
    whole,
    false,
    "the centre",
    room,
  );
}
