import { useRef } from "preact/hooks";
import { blockNamed } from "../document/block-edits.ts";
import type { PlacedModel } from "../document/model.ts";
import {
  type FillRule,
  fillTurns,
  type Place,
  putBlock,
  setLayout,
  sizeQuilt,
  swapPlaced,
  turnPlaced,
} from "../document/quilt-edits.ts";
import { words } from "../words/en.ts";
import { edit } from "./actions.ts";
import { Beds } from "./beds.tsx";
import { BlockPicture, pathOf, UNIT } from "./cloth.tsx";
import { Edges } from "./edges.tsx";
import { Faults } from "./faults.tsx";
import { Pile } from "./pile.tsx";
import { mm, outline, Patches, type Top } from "./quilt-picture.tsx";
import * as state from "./state.ts";
import { Label, lengthSaid, Stepper } from "./steps.tsx";

const placedAt = ({ row, column }: Place): PlacedModel | null =>
  state.model.value.setting.rows[row]?.[column] ?? null;

const nameOf = (key: string): string => blockNamed(state.model.value, key)?.name ?? key;

/** Columns and rows of blocks as the file counts them: on point every second row stands between. */
export function counts(): { across: number; down: number } {
  const { rows, layout } = state.model.value.setting;
  const across = Math.max(0, ...rows.map((row) => row.length));
  return { across, down: layout === "on point" ? Math.ceil(rows.length / 2) : rows.length };
}

export function take(at: Place): void {
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

/** The quilt with a place to tap for every block and ring. */
function QuiltPaper({ top }: { top: Top }) {
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<Place | null>(null);
  const model = state.model.value;
  const [w, h] = [mm(top.across), mm(top.down)];
  const margin = Math.max(w, h) / 16;
  const blocks = top.blocks
    .map((block, index) => ({ ...block, index }))
    .filter(({ place }) => place === "block");
  const rows = [...new Set(blocks.map(({ row }) => row))];
  const inHand = state.placed.value ?? { row: 0, column: 0 };
  const held =
    state.placed.value === null
      ? undefined
      : blocks.find(({ row, column }) => row === inHand.row && column === inHand.column);
  const ring = top.borders[state.borderInHand.value ?? -1];
  const per = margin / 20;
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key];
    const placed = placedAt(inHand);
    if (step !== undefined) {
      const next = { row: inHand.row + step[0]!, column: inHand.column + step[1]! };
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
      viewBox={`${-margin} ${-margin} ${w + 2 * margin} ${h + 2 * margin}`}
      role="grid"
      aria-label={words.quiltGrid(rows.length, counts().across)}
      onKeyDown={key}
      onPointerUp={() => {
        drag.current = null;
      }}
    >
      <Patches top={top} model={model} prefix="quilt-" tile={Math.max(w, h) / 60} />
      <rect class="hair" x="0" y="0" width={w} height={h} stroke-width={per * 1.4} />
      <g aria-hidden="true">
        {marks(top).map(({ at, text, down }) => (
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
      {ring === undefined ? null : <RingLine ring={ring} per={per} />}
      {held === undefined ? null : (
        <g aria-hidden="true">
          <path class="heldhalo" stroke-width={per * 6} d={pathOf(outline(held.outline))} />
          <path class="heldline" stroke-width={per * 2.6} d={pathOf(outline(held.outline))} />
        </g>
      )}
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
                  key={block.index}
                  class="cell"
                  d={pathOf(outline(block.outline))}
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
    </svg>
  );
}

/** Stitches down the middle of a ring. */
function RingLine({ ring, per }: { ring: Top["borders"][number]; per: number }) {
  const [side, end] = [mm(ring.side) / 2, mm(ring.end) / 2];
  const box = {
    x: mm(ring.x) + side,
    y: mm(ring.y) + end,
    width: mm(ring.across) - 2 * side,
    height: mm(ring.down) - 2 * end,
  };
  return (
    <g aria-hidden="true">
      <rect class="heldhalo" stroke-width={per * 5} {...box} />
      <rect class="next" stroke-width={per * 3} stroke-dasharray={`${per * 8} ${per * 5}`} {...box} />
    </g>
  );
}

/** Marks along two edges, every foot or every half metre, and where the quilt ends. */
function marks(top: Top): { at: number; text: string; down: boolean }[] {
  const inches = ["in", "yd"].includes(state.model.value.unit);
  const step = inches ? 304.8 : 200;
  const along = (end: number, down: boolean) => {
    const all = [];
    for (let at = 0; at < end - step / 2; at += step)
      all.push({ at, text: String(Math.round(inches ? at / 25.4 : at / 10)), down });
    all.push({ at: end, text: lengthSaid(end * UNIT).replace(/ .*$/, ""), down });
    return all;
  };
  return [...along(mm(top.across), false), ...along(mm(top.down), true)];
}

function turnTo(turn: number): void {
  const at = state.placed.value;
  if (at !== null) edit((text) => turnPlaced(text, at, turn), words.placedTurns[turn] ?? "");
}

/** The block in hand: its four turns, and what can be done with it. */
function PlacedHand() {
  const at = state.placed.value;
  const placed = at === null ? null : placedAt(at);
  const model = state.model.value;
  const block = placed === null ? null : blockNamed(model, placed.block);
  if (at === null || placed === null || block === null) return <p class="quiet">{words.turnHelp}</p>;
  return (
    <>
      <h3>{words.placedAt(block.name, at.row + 1, at.column + 1)}</h3>
      <div class="four" role="group" aria-label={words.placedAt(block.name, at.row + 1, at.column + 1)}>
        {[0, 90, 180, 270].map((turn) => (
          <button key={turn} type="button" aria-pressed={placed.turn === turn} onClick={() => turnTo(turn)}>
            <BlockPicture block={block} model={model} turn={turn} colourway={placed.colourway} />
            {words.placedTurns[turn]}
          </button>
        ))}
      </div>
      <div class="row">
        <Label onClick={() => (state.sheet.value = { block: block.key })}>{words.drawIt}</Label>
        <Label
          pressed={state.swapping.value}
          onClick={() => {
            state.swapping.value = !state.swapping.value;
            if (state.swapping.value) state.said.value = words.swapTo;
          }}
        >
          {words.swapWith}
        </Label>
        {model.blocks
          .filter(({ key }) => key !== block.key)
          .slice(0, 6)
          .map(({ key, name }) => (
            <Label key={key} onClick={() => edit((text) => putBlock(text, at, key), words.putHere(name))}>
              {words.putHere(name)}
            </Label>
          ))}
      </div>
      <div class="row" role="group" aria-label={words.fillAll(block.name)}>
        <span class="figure">{words.fillAll(block.name)}</span>
        {(Object.keys(words.rules) as FillRule[]).map((rule) => (
          <button key={rule} type="button" class="act" onClick={() => fill(block.key, rule, placed.turn)}>
            {words.rules[rule]}
          </button>
        ))}
      </div>
    </>
  );
}

let chance = 0;

function fill(block: string, rule: FillRule, first: number): void {
  if (rule === "chance") chance += 1;
  edit(
    (text) => fillTurns(text, block, rule, first, chance),
    `${words.fillAll(nameOf(block))}: ${words.rules[rule]}`,
  );
}

function Size() {
  const { top } = state.laid.value;
  const { across, down } = counts();
  const resize = (wide: number, high: number) =>
    edit(
      (text) => sizeQuilt(text, wide, high),
      () => `${wide} ${words.across}, ${high} ${words.down}.`,
    );
  return (
    <section class="leaf size" aria-labelledby="size-title">
      <h3 id="size-title">{words.size}</h3>
      {top === null ? null : <Beds top={top} />}
      <div class="row">
        <Stepper
          what={words.across}
          value={`${across} ${words.across}`}
          less={() => resize(across - 1, down)}
          more={() => resize(across + 1, down)}
        />
        <Stepper
          what={words.down}
          value={`${down} ${words.down}`}
          less={() => resize(across, down - 1)}
          more={() => resize(across, down + 1)}
        />
      </div>
    </section>
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
          <span class="choice" role="group" aria-label={words.layoutLabel}>
            {(["straight", "on point"] as const).map((layout) => (
              <button
                key={layout}
                type="button"
                class="pickword"
                aria-pressed={model.setting.layout === layout}
                onClick={() => edit((text) => setLayout(text, layout, first), words.layouts[layout])}
              >
                {words.layouts[layout]}
              </button>
            ))}
          </span>
          {model.blocks.map((block) => (
            <button
              key={block.key}
              type="button"
              class="act"
              onClick={() => (state.sheet.value = { block: block.key })}
            >
              {words.blockIn(
                block.name,
                model.setting.rows.flat().filter((one) => one.block === block.key).length,
              )}
            </button>
          ))}
        </div>
        <div class={stale ? "stale" : ""}>{top === null ? null : <QuiltPaper top={top} />}</div>
        <p class="said" aria-hidden="true">
          {state.said.value}
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
