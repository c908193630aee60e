import type { JoinStep } from "../../making/types.ts";
import type { BlockDesign, Exact } from "../../quilt/types.ts";
import { said } from "./compare.ts";
import { lengthOf, outlineOf, placeAsSewn, spotOf } from "./designed.ts";
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

const sameBox = (a: Box, b: Box, near: number): boolean =>
  Math.abs(a.x - b.x) <= near &&
  Math.abs(a.y - b.y) <= near &&
  Math.abs(a.across - b.across) <= near &&
  Math.abs(a.along - b.along) <= near;

const joining = ({ makes }: Pick<JoinStep, "makes">): string => `joining ${JSON.stringify(makes)}`;

/** Sizes of one joining: equal edges, and the size it is said to measure. */
function checkSizes(join: JoinStep, room: Workroom): void {
  const { scale } = room.making;
  const { way, parts, size, from, seams, seamLength } = join;
  const where = joining(join);
  const [run, other] = way === "across" ? (["across", "down"] as const) : (["down", "across"] as const);
  const near = 2 * scale;
  const [first] = parts;
  if (parts.some((part) => Math.abs(part[other] - (first?.[other] ?? 0)) > near))
    room.faults.push(`${where}: unequal edges`);
  const sewn = parts.reduce((sum, part) => sum + part[run], 0) - 2 * room.seam * scale * (parts.length - 1);
  if (Math.abs(sewn - size[run]) > near || Math.abs((first?.[other] ?? 0) - size[other]) > near)
    room.faults.push(`${where}: it measures ${said(sewn / scale)}, not ${said(size[run] / scale)}`);
  if (from.length !== parts.length || seams !== parts.length - 1)
    room.faults.push(`${where}: ${seams} seams join ${parts.length} parts`);
  if (Math.abs(seamLength - size[other] / scale) > 2)
    room.faults.push(
      `${where}: its seam is told ${said(seamLength)} long, and is ${said(size[other] / scale)}`,
    );
}

const inScale = ({ x, y, across, along }: Box, scale: number): Box => ({
  x: x * scale,
  y: y * scale,
  across: across * scale,
  along: along * scale,
});

/** Whether boxes fill another, to the tolerance: the parts of a seam that is sewn in two goes have no joinings of their own. */
function fill(boxes: readonly Box[], whole: Box, near: number): boolean {
  const area = boxes.reduce((sum, each) => sum + each.across * each.along, 0);
  return Math.abs(area - whole.across * whole.along) <= near * (whole.across + whole.along);
}

/** The table without the part that fills a box; null where no part on it does. */
function takenFrom(table: readonly Box[], box: Box, near: number, partial: boolean): Box[] | null {
  const found = table.findIndex((each) => sameBox(each, box, near));
  if (found >= 0) return table.filter((_, i) => i !== found);
  const inside = table.filter(
    (each) =>
      each.x >= box.x - near &&
      each.y >= box.y - near &&
      each.x + each.across <= box.x + box.across + near &&
      each.y + each.along <= box.y + box.along + near,
  );
  return partial && fill(inside, box, near) ? table.filter((each) => !inside.includes(each)) : null;
}

/** What joinings make, and what they make it of. */
interface Joined {
  /** Its name, for faults. */
  what: string;
  joins: readonly JoinStep[];
  leaves: readonly Box[];
  whole: Box;
  /** A seam of it is sewn in two goes. */
  partial: boolean;
  design: Pick<BlockDesign, "sewn">;
}

/** Takes parts off the table and lays down what is made of them. */
function followBoxes({ what, joins, leaves, whole, partial, design }: Joined, room: Workroom): void {
  const { scale } = room.making;
  const seam = room.seam * scale;
  const near = 2 * scale;
  let table = leaves.map((leaf) => inScale(leaf, scale));
  for (const join of joins) {
    const sewn = placeAsSewn(design, { x: join.at.x / scale, y: join.at.y / scale });
    const at = { x: sewn.x * scale, y: sewn.y * scale };
    let { x, y } = at;
    join.parts.forEach((part, i) => {
      const box = { x, y, across: part.across - 2 * seam, along: part.down - 2 * seam };
      const left = takenFrom(table, box, near, partial);
      if (left === null)
        room.faults.push(`${what}, ${joining(join)}: part ${i + 1} is not there, or is sewn already`);
      else table = left;
      if (join.way === "across") x += box.across;
      else y += box.along;
    });
    table.push({ ...at, across: join.size.across - 2 * seam, along: join.size.down - 2 * seam });
  }
  const scaled = inScale(whole, scale);
  const [only] = table;
  const done = table.length === 1 && only !== undefined && sameBox(only, scaled, near);
  if (!done && !(partial && fill(table, scaled, near)))
    room.faults.push(`${what}: its joinings leave ${table.length} parts that are never sewn together`);
}

/**
 * A block sewn larger is trimmed once, by its last joining, to the mark at or above its raw size; no other joining is
 * trimmed. One unit is a block by itself and trimmed as such.
 */
function checkTrim(joins: readonly JoinStep[], design: BlockDesign, room: Workroom): void {
  const { scale } = room.making;
  const last = joins.at(-1);
  for (const join of joins)
    if (join.trim !== undefined && (join !== last || design.sewn === undefined))
      room.faults.push(`${design.name}, ${joining(join)}: it is trimmed, and comes out true`);
  if (last === undefined || design.sewn === undefined) return;
  const { trim, size } = last;
  if (trim === undefined) {
    room.faults.push(`${design.name}: it is sewn larger than designed, and nothing trims it`);
    return;
  }
  for (const [told, sewn, finished] of [
    [trim.across, size.across, lengthOf(design.across)],
    [trim.down, size.down, lengthOf(design.down)],
  ] as const) {
    const raw = finished + 2 * room.seam;
    const [to, from] = [told / scale, sewn / scale];
    if (to < raw - NEAR || to >= raw + room.mark - NEAR || to > from + NEAR)
      room.faults.push(
        `${design.name}: sewn to ${said(from)}, it is trimmed to ${said(to)}, and ${said(raw)} is its raw size`,
      );
  }
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
        room.faults.push(
          `${design.name}, ${joining({ makes })}: made ${count} times for ${design.count} blocks`,
        );
    // What is sewn on foundation is followed there.
    if (onFoundation.has(index)) return;
    const asSewn = (x: number, y: number, across: Exact, down: Exact): Box => {
      const from = placeAsSewn(design, { x, y });
      const to = placeAsSewn(design, { x: x + lengthOf(across), y: y + lengthOf(down) });
      return { ...from, across: to.x - from.x, along: to.y - from.y };
    };
    const leaves = design.units.map((unit) =>
      asSewn(lengthOf(unit.x), lengthOf(unit.y), unit.across, unit.down),
    );
    const whole = asSewn(0, 0, design.across, design.down);
    const partial = making.partial.some((each) => each.design === index);
    followBoxes({ what: design.name, joins, leaves, whole, partial, design }, room);
    checkTrim(joins, design, room);
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
  const joins = making.joins.filter(({ stage }) => stage === "top");
  followBoxes({ what: "the centre", joins, leaves, whole, partial: false, design: {} }, room);
}
