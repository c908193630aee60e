import type { RefObject } from "preact";
import { useRef } from "preact/hooks";
import { type Place, swapPlaced } from "../../../edits/quilt-edits.ts";
import { type Picture, UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { counts } from "../counts.ts";
import { Patches } from "../quilt-picture.tsx";
import * as state from "../state.ts";
import { lengthNumber } from "../steps.tsx";
import { nameOf, placedAt, turnTo } from "./placed-hand.tsx";
import { CornerHandle, type Point, pointIn, RingHandle, ringPath } from "./quilt-handles.tsx";

function take(at: Place): void {
  const before = state.placed.value;
  if (state.swapping.value && before !== null) {
    state.swapping.value = false;
    edit((text) => swapPlaced(text, before, at), words.swapped);
    state.placed.value = at;
    return;
  }
  state.borderInHand.value = null;
  state.placed.value = at;
  const placed = placedAt(at);
  if (placed !== null)
    state.said.value = `${words.placedAt(nameOf(placed.block), at.row + 1, at.column + 1)}. ${words.placedTurns[placed.turn] ?? ""}`;
}

/** The place beside one, as the quilt is seen: the setting may lie turned, and rows may hold unequal numbers. */
function beside({ row, column }: Place, right: number, low: number): Place {
  const { rows, turn } = state.model.value.setting;
  const [along, on] = (
    { 90: [low, -right], 180: [-right, -low], 270: [-low, right] } as Readonly<Record<number, number[]>>
  )[turn] ?? [right, low];
  const to = row + on!;
  return { row: to, column: Math.min(column + along!, (rows[to]?.length ?? 1) - 1) };
}

function focusOn(svg: SVGSVGElement | null, { row, column }: Place): void {
  requestAnimationFrame(() =>
    (svg?.querySelector(`[data-at="${row},${column}"]`) as SVGElement | null)?.focus(),
  );
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** One block on; while a swap is open only the focus goes, and the block it comes to is said. */
function goOn(svg: SVGSVGElement | null, [right, low]: readonly [number, number]): void {
  const next = beside(state.placed.value ?? FIRST, right, low);
  const placed = placedAt(next);
  if (placed === null) return;
  if (state.swapping.value)
    state.said.value = words.placedAt(nameOf(placed.block), next.row + 1, next.column + 1);
  else take(next);
  focusOn(svg, next);
}

/** Every gesture on a placed block by a key: arrows, enter, T, X. */
function placedKey(event: KeyboardEvent, svg: SVGSVGElement | null): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const step = STEPS[event.key];
  const placed = placedAt(state.placed.value ?? FIRST);
  if (step !== undefined) goOn(svg, step);
  else if (event.key === "Enter" || event.key === " ") {
    const target = event.target as Element;
    const [row, column] = (target.getAttribute("data-at") ?? "").split(",").map(Number);
    if (row !== undefined && column !== undefined && !Number.isNaN(row)) take({ row, column });
  } else if ((event.key === "t" || event.key === "T") && placed !== null)
    turnTo((placed.turn + (event.shiftKey ? 270 : 90)) % 360);
  else if (event.key === "x" || event.key === "X") {
    state.swapping.value = true;
    state.said.value = words.swapTo;
  } else return;
  event.preventDefault();
  event.stopPropagation();
}

const FIRST: Place = { row: 0, column: 0 };

/** The rulers along two edges. */
function Rulers({ top, per }: { top: Picture; per: number }) {
  return (
    <g aria-hidden="true">
      {marks(top, per * 9).map(({ at, text, down }) => (
        <g key={`${down}${at}`}>
          <path
            class="rul"
            stroke-width={per}
            d={down ? `M${-per * 3} ${at}H${-per * 9}` : `M${at} ${-per * 3}V${-per * 9}`}
          />
          <text
            class="ru"
            font-size={per * 9}
            x={down ? -per * 10 : at}
            y={down ? at + per * 3 : -per * 11}
            text-anchor={down ? "end" : "middle"}
          >
            {text}
          </text>
        </g>
      ))}
    </g>
  );
}

/** A place to tap for every border. */
function BorderPlaces({ top }: { top: Picture }) {
  return (
    <g aria-hidden="true">
      {top.borders.map((one, i) => (
        <path
          key={i}
          class="cell"
          d={ringPath(one)}
          fill-rule="evenodd"
          onPointerUp={() => {
            state.placed.value = null;
            state.borderInHand.value = i;
          }}
        />
      ))}
    </g>
  );
}

type PlacedPicture = Picture["blocks"][number];

/** A place to tap for one block, and to drag it by. */
function PlacedCell({ block, drag }: { block: PlacedPicture; drag: RefObject<Place | null> }) {
  const at = { row: block.row, column: block.column };
  const inHand = state.placed.value ?? FIRST;
  const placed = placedAt(at);
  const own = at.row === inHand.row && at.column === inHand.column;
  return (
    <path
      class="cell"
      d={block.d}
      data-at={`${at.row},${at.column}`}
      role="gridcell"
      tabindex={own ? 0 : -1}
      aria-selected={state.placed.value !== null && own}
      aria-label={words.placedCell(nameOf(placed?.block ?? ""), at.row + 1, at.column + 1, placed?.turn ?? 0)}
      onPointerDown={(event) => {
        if (event.pointerType === "mouse") drag.current = at;
      }}
      onPointerUp={() => {
        const from = drag.current;
        drag.current = null;
        if (from !== null && (from.row !== at.row || from.column !== at.column)) {
          edit((text) => swapPlaced(text, from, at), words.swapped);
          state.placed.value = at;
        } else take(at);
      }}
    />
  );
}

/** A place to tap for every block, row by row. */
function PlacedCells({
  top,
  svg,
  drag,
}: {
  top: Picture;
  svg: RefObject<SVGSVGElement | null>;
  drag: RefObject<Place | null>;
}) {
  const rows = [...new Set(top.blocks.map(({ row }) => row))];
  return (
    <g
      role="grid"
      aria-label={words.quiltGrid(rows.length, counts().across)}
      onKeyDown={(event) => placedKey(event, svg.current)}
    >
      {rows.map((row) => (
        <g role="row" key={row}>
          {top.blocks
            .filter((block) => block.row === row)
            .map((block) => (
              <PlacedCell key={block.column} block={block} drag={drag} />
            ))}
        </g>
      ))}
    </g>
  );
}

/** The quilt with a place to tap for every block and ring. */
export function QuiltPaper({ top }: { top: Picture }) {
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<Place | null>(null);
  const { across: w, down: h } = top;
  const margin = Math.max(w, h) / 16;
  const inHand = state.placed.value;
  const held = top.blocks.find(({ row, column }) => row === inHand?.row && column === inHand.column);
  const ring = top.borders[state.borderInHand.value ?? -1];
  const per = margin / 20;
  // Numbers of the left ruler lie outside the quilt and want more room than the margin elsewhere.
  const left = per * 34;
  const pointOf = (event: PointerEvent): Point => pointIn(svg.current, event);
  return (
    <svg
      ref={svg}
      class="paper quilt"
      role="group"
      aria-label={words.theQuilt}
      viewBox={`${-left} ${-margin} ${w + left + margin} ${h + 2 * margin}`}
      onPointerUp={() => {
        drag.current = null;
      }}
    >
      <Patches top={top} model={state.model.value} prefix="quilt-" tile={Math.max(w, h) / 60} />
      <rect class="hair" x="0" y="0" width={w} height={h} stroke-width={per * 1.4} />
      <Rulers top={top} per={per} />
      <BorderPlaces top={top} />
      {held === undefined ? null : (
        <g aria-hidden="true">
          <path class="heldhalo" stroke-width={per * 6} d={held.d} />
          <path class="heldline" stroke-width={per * 2.6} d={held.d} />
        </g>
      )}
      <PlacedCells top={top} svg={svg} drag={drag} />
      {ring === undefined ? null : (
        <RingHandle ring={ring} index={state.borderInHand.value ?? 0} per={per} at={pointOf} />
      )}
      <CornerHandle top={top} per={per} at={pointOf} />
    </svg>
  );
}

/** Widths of a number on the ruler, and of a line of it, in parts of the letters' height. */
const NUMBER = 3.4;
const LINE = 1.5;

/** Marks along two edges, every so many feet or centimetres that no two numbers meet, and where the quilt ends. */
function marks(top: Picture, letter: number): { at: number; text: string; down: boolean }[] {
  const inches = ["in", "yd"].includes(state.model.value.unit);
  const steps = inches ? [12, 24, 36, 72, 120, 240, 480, 1200] : [20, 50, 100, 200, 500, 1000, 2000, 5000];
  const unit = inches ? 25.4 : 10;
  const along = (end: number, down: boolean) => {
    const room = letter * (down ? LINE : NUMBER);
    const step = unit * (steps.find((one) => one * unit >= room) ?? steps.at(-1)!);
    const all = [];
    for (let at = 0; at < end - room; at += step) all.push({ at, text: String(Math.round(at / unit)), down });
    all.push({ at: end, text: lengthNumber(end * UNIT), down });
    return all;
  };
  return [...along(top.across, false), ...along(top.down, true)];
}
