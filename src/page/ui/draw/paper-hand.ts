import type { RefObject } from "preact";
import { useRef } from "preact/hooks";
import { type Square, unitOn } from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { type PaperPatch, patchesOf } from "../../../edits/unit-patches.ts";
import { words } from "../../words/index.ts";
import * as state from "../state.ts";
import { blockOnPaper, layAt, layOver, squareName } from "./laying.ts";
import { pointIn } from "./quilt-handles.tsx";

type Corner = readonly [number, number];

function inside([x, y]: Corner, corners: readonly Corner[]): boolean {
  let within = false;
  corners.forEach(([x1, y1], i) => {
    const [x2, y2] = corners[(i + 1) % corners.length]!;
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) within = !within;
  });
  return within;
}

interface Place {
  at: Square;
  point: Corner;
}

/** A hand drawn over the paper: where it began, what it was over last, and whether it has changed anything yet. */
interface Stroke {
  begun: Place;
  last: string;
  moved: boolean;
  painted: boolean;
}

export interface PaperHand {
  down(event: PointerEvent): void;
  moved(event: PointerEvent): void;
  up(event: PointerEvent): void;
  cancel(): void;
  /** A pointer is on the paper. */
  isDrawing(): boolean;
  /** One square taken, by pointer or key; `start` is where the hand was put down. */
  tap(at: Square, start: Square | null, point: Corner | null): void;
}

const same = (a: Square, b: Square): boolean => a.column === b.column && a.row === b.row;

/** The patch of a block at a point of it. */
function patchAt(block: BlockModel, at: Square, point: Corner | null): PaperPatch | null {
  const unit = unitOn(block, at);
  if (unit === null || point === null) return null;
  const patches = patchesOf(unit, block, state.model.value) ?? [];
  return patches.findLast(({ corners }) => inside(point, corners)) ?? null;
}

/** The square of a point; null off the paper. */
function placeIn(block: BlockModel, point: Corner): Place | null {
  const within = (all: readonly number[], to: number): number =>
    all.findIndex((start, i) => to >= start && to < (all[i + 1] ?? -1));
  const at = { column: within(block.xs, point[0]), row: within(block.ys, point[1]) };
  return at.column < 0 || at.row < 0 ? null : { at, point };
}

/** Colours, or takes off, what the hand has come over; the paper may not have been drawn anew since the last. */
function paint(block: BlockModel, { at, point }: Place, own: Stroke): void {
  const now = blockOnPaper() ?? block;
  const patch = patchAt(now, at, point);
  const unit = unitOn(now, at);
  const over = unit === null ? "" : `${unit.column},${unit.row},${patch?.part ?? ""}`;
  if (over === own.last) return;
  own.last = over;
  state.square.value = at;
  if (unit === null) return;
  if (layAt(now, at, patch, own.painted)) own.painted = true;
}

/** One square taken: laid on, or the first or last of several. */
function tapOn(block: BlockModel, at: Square, begun: Square | null, point: Corner | null): void {
  let start = begun;
  if (state.spanning.value && (start === null || same(start, at))) {
    if (state.areaFrom.value === null) {
      state.areaFrom.value = at;
      state.square.value = at;
      state.said.value = words.spanFrom(squareName(at));
      return;
    }
    start = state.areaFrom.value;
  }
  state.spanning.value = false;
  state.areaFrom.value = null;
  state.square.value = at;
  if (start !== null && !same(start, at)) layOver(block, start, at);
  else layAt(block, at, patchAt(block, at, point));
}

/** The hand has come to another place: what is laid reaches as far, else what it comes over is painted. */
function goOver(block: BlockModel, own: Stroke, place: Place): void {
  if (state.tool.value === "lay") {
    if (!own.moved && same(place.at, own.begun.at)) return;
    own.moved = true;
    state.areaFrom.value = own.begun.at;
    state.square.value = place.at;
    return;
  }
  const now = blockOnPaper() ?? block;
  const over = ({ at, point }: Place) => `${at.column},${at.row},${patchAt(now, at, point)?.part ?? ""}`;
  if (!own.moved && over(place) === over(own.begun)) return;
  if (!own.moved) paint(block, own.begun, own);
  own.moved = true;
  paint(block, place, own);
}

/**
 * What a pointer does on the squared paper: a tap lays, turns, colours or takes off; drawn over several squares it lays
 * one large unit, or colours or takes off all it goes over, which is one gesture. A second finger moves the page.
 * @param scale units of the drawing to one tick
 */
export function usePaperHand(
  block: BlockModel,
  svg: RefObject<SVGSVGElement | null>,
  scale: number,
): PaperHand {
  const stroke = useRef<Stroke | null>(null);

  const placeOf = (event: PointerEvent): Place | null => {
    const { x, y } = pointIn(svg.current, event);
    return placeIn(block, [x / scale, y / scale]);
  };

  const tap: PaperHand["tap"] = (at, begun, point) => tapOn(block, at, begun, point);

  return {
    down(event) {
      const place = placeOf(event);
      if (!event.isPrimary || place === null || event.button !== 0) {
        stroke.current = null;
        if (!state.spanning.value) state.areaFrom.value = null;
        return;
      }
      // Heard to its end wherever it ends: off the paper it is said that nothing was laid.
      svg.current?.setPointerCapture(event.pointerId);
      stroke.current = { begun: place, last: "", moved: false, painted: false };
    },
    moved(event) {
      const own = stroke.current;
      const place = own === null || event.buttons === 0 ? null : placeOf(event);
      if (own === null || place === null || !event.isPrimary) return;
      goOver(block, own, place);
    },
    up(event) {
      const own = stroke.current;
      stroke.current = null;
      if (own === null) return;
      const place = placeOf(event);
      if (own.moved && state.tool.value !== "lay") return;
      if (place === null) {
        if (!state.spanning.value) state.areaFrom.value = null;
        state.said.value = words.offPaper;
        return;
      }
      tap(place.at, own.begun.at, place.point);
    },
    cancel() {
      stroke.current = null;
      if (!state.spanning.value) state.areaFrom.value = null;
    },
    isDrawing: () => stroke.current !== null,
    tap,
  };
}
