import type { StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Press, PressedSeam } from "../../making/types.ts";
import { lengthOf } from "./designed.ts";
import type { Workroom } from "./types.ts";

/* Sums that are told of the whole quilt: how many seams are sewn, and where seams meet and nest. */

/** Seams of one step for one set, where it sews before it cuts; null where it counts by the unit or the strip set. */
function seamsOfSet(step: StepRecord): number | null {
  switch (step.do) {
    case "pair":
      return step.lines === "one" ? 2 : 4;
    case "cross-pair":
      return 2;
    case "small-on-large":
      return step.round === 1 ? 2 : 4;
    case "flip":
      return step.squares.length;
    default:
      return null;
  }
}

function seamsOfUnits({ steps, sets, units, stripSets, heaps }: UnitRecord): number {
  let seams = 0;
  for (const step of steps) {
    const own = seamsOfSet(step);
    if (own !== null) seams += own * sets;
    if (step.do === "join") seams += (step.parts.length - 1) * units;
  }
  for (const { strips, fullSets, lastLength, cut } of stripSets)
    if (cut === "square") seams += (strips.length - 1) * (fullSets + (lastLength > 0 ? 1 : 0));
  return heaps.length === 0 ? 0 : seams;
}

/** Every part of the top but the first has one seam to what is there before it. */
export function checkSeams(room: Workroom): void {
  const { making, top, faults } = room;
  if (making.foundation !== null) return;
  let seams = making.units.reduce((sum, unit) => sum + seamsOfUnits(unit), 0);
  for (const { units, count } of top.designs) seams += (units.length - 1) * count;
  const loose = top.patches.filter(({ origin }) => origin.block === null);
  const bordered = new Set(
    top.patches.flatMap(({ origin }) =>
      origin.border !== null && origin.block !== null ? [origin.block] : [],
    ),
  );
  seams += top.blocks.length - bordered.size - 1;
  seams += loose.filter(({ origin }) => origin.border === null).length;
  top.borders.forEach(({ kind }, index) => {
    const own = loose.filter(({ origin }) => origin.border === index).length;
    // Four strips, and a slanting seam at each corner.
    seams += kind === "mitred" ? own + 4 : own;
  });
  seams += bordered.size;
  if (making.totals.seams !== seams)
    faults.push(`${making.totals.seams} seams are told in all, and ${seams} are sewn`);
}

type Ends = readonly [x1: number, y1: number, x2: number, y2: number];
interface Lying {
  at: Ends;
  press: Press;
}

const TURNED: Record<Press, Press> = { up: "right", right: "down", down: "left", left: "up" };

/** The seams of every block where it lies, and those between the blocks. */
function seamsLying({ making, top }: Workroom): Lying[] {
  const pressing = making.pressing;
  if (pressing === null) return [];
  const lying = (
    seams: readonly PressedSeam[],
    place: (x: number, y: number) => [number, number],
    turns: number,
  ) =>
    seams.map(({ x1, y1, x2, y2, press }): Lying => {
      let way = press;
      for (let i = 0; i < turns; i++) way = TURNED[way];
      const [a, b] = [place(x1, y1), place(x2, y2)];
      const forward = a[0] < b[0] - 1 || (Math.abs(a[0] - b[0]) <= 1 && a[1] <= b[1]);
      return { at: forward ? [...a, ...b] : [...b, ...a], press: way };
    });
  const all = lying(pressing.seams, (x, y) => [x, y], 0);
  top.blocks.forEach(({ design, outline, turn }, index) => {
    const own = pressing.blocks.find(
      (each) => each.design === design && each.variant === (pressing.variantOf[index] ?? ""),
    );
    const corners = outline.map(({ x, y }) => [lengthOf(x), lengthOf(y)] as const);
    const [wide, high] = [top.designs[design]?.across, top.designs[design]?.down];
    if (own === undefined || wide === undefined || high === undefined) return;
    const [w, h] = [lengthOf(wide), lengthOf(high)];
    const left = Math.min(...corners.map(([x]) => x));
    const upper = Math.min(...corners.map(([, y]) => y));
    const turns = Math.round((((turn % 360) + 360) % 360) / 90);
    const place = (x: number, y: number): [number, number] => {
      if (turns === 1) return [left + h - y, upper + x];
      if (turns === 2) return [left + w - x, upper + h - y];
      return turns === 3 ? [left + y, upper + w - x] : [left + x, upper + y];
    };
    all.push(...lying(own.seams, place, turns));
  });
  return all;
}

/** Where a seam goes on beyond another that crosses it, both nest when they are pressed to contrary sides. */
export function checkNesting(room: Workroom): void {
  const { making, top, faults } = room;
  const { pressing } = making;
  if (pressing === null || top.centre.onPoint || making.foundation !== null) return;
  const seams = seamsLying(room);
  const level = ({ at: [, y1, , y2] }: Lying): boolean => Math.abs(y1 - y2) <= 1;
  const key = (x: number, y: number, flat: boolean): string =>
    `${Math.round(x / 8)} ${Math.round(y / 8)} ${flat}`;
  const begins = new Map<string, Lying[]>();
  for (const seam of seams) {
    const own = key(seam.at[0], seam.at[1], level(seam));
    begins.set(own, [...(begins.get(own) ?? []), seam]);
  }
  let [meet, open] = [0, 0];
  for (const seam of seams) {
    const [, , x, y] = seam.at;
    for (const dx of [-8, 0, 8])
      for (const dy of [-8, 0, 8])
        for (const next of begins.get(key(x + dx, y + dy, level(seam))) ?? []) {
          if (Math.abs(next.at[0] - x) > 2 || Math.abs(next.at[1] - y) > 2) continue;
          meet += 1;
          if (next.press === seam.press) open += 1;
        }
  }
  if (meet !== pressing.junctions || open !== pressing.open.length)
    faults.push(
      `${pressing.junctions} places where seams meet are told, ${pressing.open.length} that do not nest; there are ${meet}, and ${open}`,
    );
}
