import { useRef } from "preact/hooks";
import { type Area, emptySquare, type Square, unitOn } from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { patchesOf, squeezedOf } from "../../../edits/unit-patches.ts";
import { pathOf, UNIT, upIn } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { unitSaid } from "../unit-said.ts";
import { Cloth, Textures, Ups } from "./cloth.tsx";
import { colour, layAt, layOver, squareName, turn } from "./laying.ts";
import { usePaperHand } from "./paper-hand.ts";

/** Page units the longer side of the paper takes, margins beside. */
const SIDE = 420;
const MARGIN = 30;

/** Squared paper with the block on it. */
export function Paper({ block }: { block: BlockModel }) {
  const model = state.model.value;
  const svg = useRef<SVGSVGElement>(null);
  const [wide, high] = [block.xs.at(-1) ?? 1, block.ys.at(-1) ?? 1];
  const scale = SIDE / Math.max(wide, high);
  const x = (ticks: number): number => ticks * scale;
  const [w, h] = [x(wide), x(high)];
  const square = state.square.value;
  const from = state.areaFrom.value;
  const held = unitOn(block, square);

  const hand = usePaperHand(block, svg, scale);
  const { tap } = hand;
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const steps: Record<string, Square> = {
      ArrowLeft: { column: -1, row: 0 },
      ArrowRight: { column: 1, row: 0 },
      ArrowUp: { column: 0, row: -1 },
      ArrowDown: { column: 0, row: 1 },
    };
    const step = steps[event.key];
    if (step !== undefined) {
      if (event.shiftKey) state.areaFrom.value ??= square;
      else if (!state.spanning.value) state.areaFrom.value = null;
      const next = {
        column: Math.min(block.columns - 1, Math.max(0, square.column + step.column)),
        row: Math.min(block.rows - 1, Math.max(0, square.row + step.row)),
      };
      state.square.value = next;
      requestAnimationFrame(() =>
        (svg.current?.querySelector('[tabindex="0"]') as SVGElement | null)?.focus(),
      );
    } else if (event.key === "Enter") {
      const start = state.areaFrom.value;
      if (state.spanning.value) tap(square, null, null);
      else {
        state.areaFrom.value = null;
        if (start === null) layAt(block, square);
        else layOver(block, start, square);
      }
    } else if (event.key === "t" || event.key === "T") turn(block, square, event.shiftKey ? -1 : 1);
    else if (event.key === "Delete" || event.key === "Backspace")
      edit((text) => emptySquare(text, block.key, square), words.tookOff(squareName(square)));
    else if (event.key === " ") {
      if (held !== null) {
        const [patch] = patchesOf(held, block, model) ?? [];
        if (patch !== undefined) colour(block, held, square, patch.part);
      }
    } else if (event.key === "Escape") {
      state.areaFrom.value = null;
      state.spanning.value = false;
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const rows = Array.from({ length: block.rows }, (_, row) => row);
  const columns = Array.from({ length: block.columns }, (_, column) => column);
  const rect = (area: Area) => ({
    x: x(block.xs[area.column] ?? 0),
    y: x(block.ys[area.row] ?? 0),
    width: x((block.xs[area.column + area.columns] ?? wide) - (block.xs[area.column] ?? 0)),
    height: x((block.ys[area.row + area.rows] ?? high) - (block.ys[area.row] ?? 0)),
  });
  const chosen: Area | null =
    from === null
      ? null
      : {
          column: Math.min(from.column, square.column),
          row: Math.min(from.row, square.row),
          columns: Math.abs(from.column - square.column) + 1,
          rows: Math.abs(from.row - square.row) + 1,
        };
  const frame = rect(chosen ?? held ?? { ...square, columns: 1, rows: 1 });
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
      onKeyDown={key}
    >
      <Textures prefix="paper-" fabrics={model.fabrics} tile={17} mm={scale * UNIT} />
      <rect class="sheet" x="0" y="0" width={w} height={h} />
      <path class="fine" d={fineLines(block, x)} />
      {block.units.map((unit, i) => {
        const patches = patchesOf(unit, block, model);
        return (
          <g key={i}>
            {(patches ?? squeezedOf(unit, block, model)).map((patch, j) => (
              <Cloth
                key={j}
                d={pathOf(patch.corners.map(([px, py]) => [x(px), x(py)]))}
                fabric={patch.fabric}
                prefix="paper-"
                seam={1.4}
                up={patch.up ?? null}
              />
            ))}
            {(patches ?? []).map(({ up, corners, fabric }, j) =>
              up === null ? null : (
                <Ups
                  key={j}
                  all={[
                    upIn(
                      corners.map(([px, py]) => [x(px), x(py)]),
                      up,
                    ),
                  ]}
                  fabric={fabric}
                />
              ),
            )}
            {patches === null ? <rect class="unfit" {...rect(unit)} /> : null}
          </g>
        );
      })}
      <path class="squares" d={gridLines(block, x)} />
      <rect class="edge" x="0" y="0" width={w} height={h} />
      <g aria-hidden="true">
        {columns.map((column) => (
          <text key={column} class="co" x={(x(block.xs[column]!) + x(block.xs[column + 1]!)) / 2} y={-10}>
            {column + 1}
          </text>
        ))}
        {rows.map((row) => (
          <text key={row} class="co" x={-14} y={(x(block.ys[row]!) + x(block.ys[row + 1]!)) / 2 + 4}>
            {squareName({ column: 0, row }).replace(/\d+$/, "")}
          </text>
        ))}
      </g>
      <g class="inhand" aria-hidden="true">
        <rect class="heldhalo" {...frame} />
        <rect class={held === null || chosen !== null ? "next" : "heldline"} {...frame} />
      </g>
      {rows.map((row) => (
        <g role="row" key={row}>
          {columns.map((column) => {
            const unit = unitOn(block, { column, row });
            const name = squareName({ column, row });
            const own = column === square.column && row === square.row;
            return (
              <rect
                key={column}
                class="cell"
                role="gridcell"
                tabIndex={own ? 0 : -1}
                aria-selected={own}
                aria-label={
                  unit === null
                    ? words.emptySquare(name)
                    : words.unitOn(name, unitSaid(unit.cell.kind), unit.turn)
                }
                onFocus={() => {
                  if (!own && !hand.isDrawing()) state.square.value = { column, row };
                }}
                {...rect({ column, row, columns: 1, rows: 1 })}
              />
            );
          })}
        </g>
      ))}
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
