import { useRef } from "preact/hooks";
import { type Area, emptySquare, type Square, unitOn } from "../../../edits/block-edits.ts";
import type { BlockModel, UnitModel } from "../../../edits/model.ts";
import { patchesOf, squeezedOf } from "../../../edits/unit-patches.ts";
import { pathOf, UNIT, upIn } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { unitSaid } from "../unit-said.ts";
import { Cloth, Textures, Ups } from "./cloth.tsx";
import { colour, layAt, layOver, squareName, turn } from "./laying.ts";
import { type PaperHand, usePaperHand } from "./paper-hand.ts";

/** Page units the longer side of the paper takes, margins beside. */
const SIDE = 420;
const MARGIN = 30;

type ToPage = (ticks: number) => number;

/** A rectangle of squares as it is drawn. */
function rectOf(block: BlockModel, area: Area, x: ToPage) {
  const [left, top] = [block.xs[area.column] ?? 0, block.ys[area.row] ?? 0];
  const right = block.xs[area.column + area.columns] ?? block.xs.at(-1) ?? 1;
  const low = block.ys[area.row + area.rows] ?? block.ys.at(-1) ?? 1;
  return { x: x(left), y: x(top), width: x(right - left), height: x(low - top) };
}

const STEPS: Readonly<Record<string, Square>> = {
  ArrowLeft: { column: -1, row: 0 },
  ArrowRight: { column: 1, row: 0 },
  ArrowUp: { column: 0, row: -1 },
  ArrowDown: { column: 0, row: 1 },
};

/** One square on; with shift the squares gone over are taken together. */
function goOn(block: BlockModel, step: Square, svg: SVGSVGElement | null, together: boolean): void {
  const square = state.square.value;
  if (together) state.areaFrom.value ??= square;
  else if (!state.spanning.value) state.areaFrom.value = null;
  state.square.value = {
    column: Math.min(block.columns - 1, Math.max(0, square.column + step.column)),
    row: Math.min(block.rows - 1, Math.max(0, square.row + step.row)),
  };
  requestAnimationFrame(() => (svg?.querySelector('[tabindex="0"]') as SVGElement | null)?.focus());
}

/** Lays what is in hand on the square, or on all that were gone over. */
function layHere(block: BlockModel, tap: PaperHand["tap"]): void {
  const square = state.square.value;
  const start = state.areaFrom.value;
  if (state.spanning.value) {
    tap(square, null, null);
    return;
  }
  state.areaFrom.value = null;
  if (start === null) layAt(block, square);
  else layOver(block, start, square);
}

function colourHere(block: BlockModel): void {
  const square = state.square.value;
  const held = unitOn(block, square);
  const [patch] = held === null ? [] : (patchesOf(held, block, state.model.value) ?? []);
  if (held !== null && patch !== undefined) colour(block, held, square, patch.part);
}

/** Every gesture of the paper by a key: arrows, enter, T, delete, space, escape. */
function paperKey(
  event: KeyboardEvent,
  block: BlockModel,
  svg: SVGSVGElement | null,
  tap: PaperHand["tap"],
): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const square = state.square.value;
  const step = STEPS[event.key];
  if (step !== undefined) goOn(block, step, svg, event.shiftKey);
  else if (event.key === "Enter") layHere(block, tap);
  else if (event.key === "t" || event.key === "T") turn(block, square, event.shiftKey ? -1 : 1);
  else if (event.key === "Delete" || event.key === "Backspace")
    edit((text) => emptySquare(text, block.key, square), words.tookOff(squareName(square)));
  else if (event.key === " ") colourHere(block);
  else if (event.key === "Escape") {
    state.areaFrom.value = null;
    state.spanning.value = false;
  } else return;
  event.preventDefault();
  event.stopPropagation();
}

/** A unit with its patches in their fabrics, and where the prints' up points. */
function UnitOnPaper({ block, unit, x }: { block: BlockModel; unit: UnitModel; x: ToPage }) {
  const { model } = state;
  const patches = patchesOf(unit, block, model.value);
  const drawn = (patches ?? squeezedOf(unit, block, model.value)).map(({ corners, ...patch }) => ({
    ...patch,
    corners: corners.map(([px, py]): [number, number] => [x(px), x(py)]),
  }));
  return (
    <g>
      {drawn.map(({ corners, fabric, up }, i) => (
        <Cloth key={i} d={pathOf(corners)} fabric={fabric} prefix="paper-" seam={1.4} up={up ?? null} />
      ))}
      {drawn.map(({ up, corners, fabric }, i) =>
        up == null ? null : <Ups key={i} all={[upIn(corners, up)]} fabric={fabric} />,
      )}
      {patches === null ? <rect class="unfit" {...rectOf(block, unit, x)} /> : null}
    </g>
  );
}

/** Numbers above the columns and letters beside the lines. */
function SquareNames({ block, x }: { block: BlockModel; x: ToPage }) {
  const middle = (all: readonly number[], i: number): number => (x(all[i] ?? 0) + x(all[i + 1] ?? 0)) / 2;
  return (
    <g aria-hidden="true">
      {Array.from({ length: block.columns }, (_, column) => (
        <text key={column} class="co" x={middle(block.xs, column)} y={-10}>
          {column + 1}
        </text>
      ))}
      {Array.from({ length: block.rows }, (_, row) => (
        <text key={row} class="co" x={-14} y={middle(block.ys, row) + 4}>
          {squareName({ column: 0, row }).replace(/\d+$/, "")}
        </text>
      ))}
    </g>
  );
}

/** The squares that can be taken, by pointer or by key; one of them is the paper's place in the order of keys. */
function Squares({ block, x, isDrawing }: { block: BlockModel; x: ToPage; isDrawing(): boolean }) {
  const square = state.square.value;
  return (
    <>
      {Array.from({ length: block.rows }, (_, row) => (
        <g role="row" key={row}>
          {Array.from({ length: block.columns }, (_, column) => {
            const unit = unitOn(block, { column, row });
            const name = squareName({ column, row });
            const own = column === square.column && row === square.row;
            return (
              <rect
                key={column}
                class="cell"
                role="gridcell"
                tabindex={own ? 0 : -1}
                aria-selected={own}
                aria-label={
                  unit === null
                    ? words.emptySquare(name)
                    : words.unitOn(name, unitSaid(unit.cell.kind), unit.turn)
                }
                onFocus={() => {
                  if (!own && !isDrawing()) state.square.value = { column, row };
                }}
                {...rectOf(block, { column, row, columns: 1, rows: 1 }, x)}
              />
            );
          })}
        </g>
      ))}
    </>
  );
}

/** What is in hand: the squares being taken together, else the unit or the square. */
function InHandOnPaper({ block, x }: { block: BlockModel; x: ToPage }) {
  const square = state.square.value;
  const from = state.areaFrom.value;
  const held = unitOn(block, square);
  const chosen: Area | null =
    from === null
      ? null
      : {
          column: Math.min(from.column, square.column),
          row: Math.min(from.row, square.row),
          columns: Math.abs(from.column - square.column) + 1,
          rows: Math.abs(from.row - square.row) + 1,
        };
  const frame = rectOf(block, chosen ?? held ?? { ...square, columns: 1, rows: 1 }, x);
  return (
    <g class="inhand" aria-hidden="true">
      <rect class="heldhalo" {...frame} />
      <rect class={held === null || chosen !== null ? "next" : "heldline"} {...frame} />
    </g>
  );
}

/** Squared paper with the block on it. */
export function Paper({ block }: { block: BlockModel }) {
  const svg = useRef<SVGSVGElement>(null);
  const [wide, high] = [block.xs.at(-1) ?? 1, block.ys.at(-1) ?? 1];
  const scale = SIDE / Math.max(wide, high);
  const x: ToPage = (ticks) => ticks * scale;
  const [w, h] = [x(wide), x(high)];
  const hand = usePaperHand(block, svg, scale);
  return (
    <svg
      ref={svg}
      class="paper"
      viewBox={`${-MARGIN} ${-MARGIN} ${w + 2 * MARGIN} ${h + 2 * MARGIN}`}
      role="grid"
      aria-label={words.paper(block.name, block.columns, block.rows)}
      onPointerDown={hand.down}
      onPointerMove={hand.moved}
      onPointerUp={hand.up}
      onPointerCancel={hand.cancel}
      onKeyDown={(event) => paperKey(event, block, svg.current, hand.tap)}
    >
      <Textures prefix="paper-" fabrics={state.model.value.fabrics} tile={17} mm={scale * UNIT} />
      <rect class="sheet" x="0" y="0" width={w} height={h} />
      <path class="fine" d={fineLines(block, x)} />
      {block.units.map((unit, i) => (
        <UnitOnPaper key={i} block={block} unit={unit} x={x} />
      ))}
      <path class="squares" d={gridLines(block, x)} />
      <rect class="edge" x="0" y="0" width={w} height={h} />
      <SquareNames block={block} x={x} />
      <InHandOnPaper block={block} x={x} />
      <Squares block={block} x={x} isDrawing={hand.isDrawing} />
    </svg>
  );
}

function gridLines(block: BlockModel, x: (ticks: number) => number): string {
  const [right, low] = [x(block.xs.at(-1) ?? 0), x(block.ys.at(-1) ?? 0)];
  const down = block.xs.slice(1, -1).map((at) => `M${x(at).toFixed(1)} 0V${low.toFixed(1)}`);
  const across = block.ys.slice(1, -1).map((at) => `M0 ${x(at).toFixed(1)}H${right.toFixed(1)}`);
  return [...down, ...across].join("");
}

function fineLines(block: BlockModel, x: (ticks: number) => number): string {
  const [right, low] = [x(block.xs.at(-1) ?? 0), x(block.ys.at(-1) ?? 0)];
  const between = (all: readonly number[]): number[] =>
    all.slice(0, -1).flatMap((at, i) => [1, 2, 3].map((part) => at + ((all[i + 1]! - at) * part) / 4));
  return [
    ...between(block.xs).map((at) => `M${x(at).toFixed(1)} 0V${low.toFixed(1)}`),
    ...between(block.ys).map((at) => `M0 ${x(at).toFixed(1)}H${right.toFixed(1)}`),
  ].join("");
}
