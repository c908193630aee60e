import { useRef } from "preact/hooks";
import { type Place, setLayout, setSashing, swapPlaced } from "../../../edits/quilt-edits.ts";
import { ringsOf } from "../../../edits/ring-edits.ts";
import { standOnEnd } from "../../../edits/row-edits.ts";
import type { Layout } from "../../../spec/index.ts";
import type { Picture } from "../../planner/picture.ts";
import { UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { counts, onEnd } from "../counts.ts";
import { Faults } from "../faults.tsx";
import { Group } from "../group.tsx";
import { Pile } from "../pile.tsx";
import { Patches } from "../quilt-picture.tsx";
import { saidOnPaper } from "../said-here.tsx";
import * as state from "../state.ts";
import { countTyped, lengthNumber, Stepper } from "../steps.tsx";
import { Beds } from "./beds.tsx";
import { Edges } from "./edges.tsx";
import { nameOf, PlacedHand, placedAt, turnTo } from "./placed-hand.tsx";
import { CornerHandle, type Point, pointIn, RingHandle, ringPath, sizeTo } from "./quilt-handles.tsx";

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

/** The quilt with a place to tap for every block and ring. */
function QuiltPaper({ top }: { top: Picture }) {
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<Place | null>(null);
  const model = state.model.value;
  const { across: w, down: h, blocks } = top;
  const margin = Math.max(w, h) / 16;
  const rows = [...new Set(blocks.map(({ row }) => row))];
  const inHand = state.placed.value ?? { row: 0, column: 0 };
  const held =
    state.placed.value === null
      ? undefined
      : blocks.find(({ row, column }) => row === inHand.row && column === inHand.column);
  const ring = top.borders[state.borderInHand.value ?? -1];
  const per = margin / 20;
  // Numbers of the left ruler lie outside the quilt and want more room than the margin elsewhere.
  const left = per * 34;
  const pointOf = (event: PointerEvent): Point => pointIn(svg.current, event);
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key];
    const placed = placedAt(inHand);
    if (step !== undefined) {
      const next = beside(inHand, step[1]!, step[0]!);
      if (placedAt(next) !== null) {
        const swapping = state.swapping.value;
        if (swapping)
          state.said.value = words.placedAt(
            nameOf(placedAt(next)?.block ?? ""),
            next.row + 1,
            next.column + 1,
          );
        if (swapping) focusOn(next);
        else {
          take(next);
          focusOn(next);
        }
      }
    } else if (event.key === "Enter" || event.key === " ") {
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
  };
  const focusOn = ({ row, column }: Place) =>
    requestAnimationFrame(() =>
      (svg.current?.querySelector(`[data-at="${row},${column}"]`) as SVGElement | null)?.focus(),
    );
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
      <Patches top={top} model={model} prefix="quilt-" tile={Math.max(w, h) / 60} />
      <rect class="hair" x="0" y="0" width={w} height={h} stroke-width={per * 1.4} />
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
      {held === undefined ? null : (
        <g aria-hidden="true">
          <path class="heldhalo" stroke-width={per * 6} d={held.d} />
          <path class="heldline" stroke-width={per * 2.6} d={held.d} />
        </g>
      )}
      <g role="grid" aria-label={words.quiltGrid(rows.length, counts().across)} onKeyDown={key}>
        {rows.map((row) => (
          <g role="row" key={row}>
            {blocks
              .filter((block) => block.row === row)
              .map((block) => {
                const at = { row: block.row, column: block.column };
                const placed = placedAt(at);
                const own = at.row === inHand.row && at.column === inHand.column;
                return (
                  <path
                    key={block.column}
                    class="cell"
                    d={block.d}
                    data-at={`${at.row},${at.column}`}
                    role="gridcell"
                    tabIndex={own ? 0 : -1}
                    aria-selected={state.placed.value !== null && own}
                    aria-label={words.placedCell(
                      nameOf(placed?.block ?? ""),
                      at.row + 1,
                      at.column + 1,
                      placed?.turn ?? 0,
                    )}
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
              })}
          </g>
        ))}
      </g>
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

const MOST_BLOCKS = 100;

function sizeTyped(wish: string, take: (count: number) => void): void {
  const count = countTyped(wish, MOST_BLOCKS);
  if (count !== null) take(count);
}

function Size() {
  const { top } = state.laid.value;
  const { across, down } = counts();
  return (
    <section class="leaf size" aria-labelledby="size-title">
      <h3 id="size-title">{words.size}</h3>
      {top === null ? null : <Beds top={top} />}
      <div class="row">
        <Stepper
          what={words.across}
          value=""
          typed={{
            now: String(across),
            after: words.across,
            take: (wish) => sizeTyped(wish, (n) => sizeTo(n, down)),
          }}
          less={() => sizeTo(across - 1, down)}
          more={() => sizeTo(across + 1, down)}
        />
        <Stepper
          what={words.down}
          value=""
          typed={{
            now: String(down),
            after: words.down,
            take: (wish) => sizeTyped(wish, (n) => sizeTo(across, n)),
          }}
          less={() => sizeTo(across, down - 1)}
          more={() => sizeTo(across, down + 1)}
        />
      </div>
      <p class="hint">{words.hints.size}</p>
    </section>
  );
}

/** Blocks straight or on point. Sashing is not worked out on point: it goes, and that is said. */
function layOut(layout: Layout, triangles: string): void {
  const sashed = layout !== "straight" && state.model.value.setting.sashing !== null;
  edit(
    (text) => setLayout(sashed ? setSashing(text, null) : text, layout, triangles),
    sashed ? `${words.layouts[layout]}. ${words.noSashingOnPoint}` : words.layouts[layout],
  );
}

/** The whole quilt: blocks set, turned and swapped, its edges and its size. */
export function QuiltSheet() {
  const { top, stale } = state.laid.value;
  const model = state.model.value;
  const first = model.fabrics[state.firstFabric.value]?.name ?? "";
  return (
    <div class="spread set">
      <section class="leaf work1" aria-label={words.theQuilt}>
        <h2>{words.theQuilt}</h2>
        <div class="row">
          <Group name="choice" label={words.layoutLabel}>
            {(["straight", "on point"] as const).map((layout) => (
              <button
                key={layout}
                type="button"
                class="pickword"
                aria-pressed={model.setting.layout === layout}
                onClick={() => layOut(layout, first)}
              >
                {words.layouts[layout]}
              </button>
            ))}
          </Group>
          {model.setting.layout !== "straight" ? null : (
            <button
              type="button"
              class="act"
              aria-pressed={onEnd()}
              onClick={() => edit((text) => standOnEnd(text, !onEnd()), words.inColumnsSaid(!onEnd()))}
            >
              {words.inColumns}
            </button>
          )}
          {model.blocks.map((block) => (
            <button
              key={block.key}
              type="button"
              class="act"
              onClick={() => (state.sheet.value = { block: block.key })}
            >
              {whereOf(block)}
            </button>
          ))}
        </div>
        <div class={stale ? "stale" : ""}>{top === null ? null : <QuiltPaper top={top} />}</div>
        <p class="said" aria-hidden="true">
          {saidOnPaper() || words.helpQuilt}
        </p>
        <Faults />
      </section>
      <section class="leaf hand" aria-label={words.inHandFirst}>
        <PlacedHand />
        <Edges />
      </section>
      <div class="side">
        <Pile />
        <Size />
      </div>
    </div>
  );
}

/** A block with how often it is in the rows, or the ring it stands in. */
function whereOf({ key, name }: { key: string; name: string }): string {
  const count = state.model.value.setting.rows.flat().filter(({ block }) => block === key).length;
  const [ring] = ringsOf(state.text.value, key);
  return count === 0 && ring !== undefined ? `${name}, ${words.inRing[ring]}` : words.blockIn(name, count);
}
