import { signal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { type Area, layUnit } from "../../../edits/block-edits.ts";
import { freePatches, type Ring } from "../../../edits/free-patches.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { pathOf } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { Label, lengthSaid } from "../steps.tsx";
import { pointIn } from "./quilt-handles.tsx";

/** The squares open for drawing patches by their corners: the whole block or some of it; null while none are. */
export const cornersOpen = signal<Area | null>(null);

interface Drawn {
  ring: Ring;
  fabric: string;
}

const ring = signal<Ring>([]);
const drawn = signal<readonly Drawn[]>([]);
const at = signal({ x: 0, y: 0 });

const SIDE = 420;
const MARGIN = 30;

function close(): void {
  cornersOpen.value = null;
  ring.value = [];
  drawn.value = [];
}

/** The points corners may stand on: half squares, and quarters where there are few squares. */
function points({ columns, rows }: Area): { columns: number; rows: number } {
  const each = Math.max(columns, rows) > 2 ? 2 : 4;
  return { columns: each * columns, rows: each * rows };
}

const ends = (all: readonly number[], from: number, count: number): number =>
  (all[from + count] ?? 0) - (all[from] ?? 0);

function finish(block: BlockModel, area: Area): void {
  const { fabrics } = state.model.value;
  const ground = fabrics[state.secondFabric.value]?.name ?? fabrics[0]?.name ?? "";
  const { columns, rows } = points(area);
  const laid = freePatches(drawn.value, ground, columns, rows);
  if (laid === null) {
    state.said.value = words.cornersBad;
    return;
  }
  const on = `${columns} x ${rows}`;
  edit(
    (text) =>
      layUnit(text, block.key, area, { kind: "drawn patches", words: [], turn: 0, drawn: { ...laid, on } }),
    words.cornersDone(drawn.value.length),
  );
  close();
}

function tap(block: BlockModel, area: Area, x: number, y: number): void {
  at.value = { x, y };
  const now = ring.value;
  const [first] = now;
  if (first !== undefined && now.length > 2 && first[0] === x && first[1] === y) {
    closeRing(area);
    return;
  }
  if (now.some(([px, py]) => px === x && py === y)) return;
  ring.value = [...now, [x, y]];
  const { columns, rows } = points(area);
  const across = ends(block.xs, area.column, area.columns);
  const down = ends(block.ys, area.row, area.rows);
  state.said.value = words.corner(
    now.length + 1,
    lengthSaid((across * x) / columns),
    lengthSaid((down * y) / rows),
  );
}

function closeRing(area: Area): void {
  const fabric = state.model.value.fabrics[state.firstFabric.value]?.name ?? "";
  const next = [...drawn.value, { ring: ring.value, fabric }];
  const { columns, rows } = points(area);
  if (freePatches(next, "", columns, rows) === null) {
    state.said.value = words.cornersBad;
    ring.value = [];
    return;
  }
  drawn.value = next;
  ring.value = [];
  state.said.value = words.cornersDone(next.length);
}

/** Arrows go from point to point, space sets a corner, enter closes the patch and then the drawing, escape leaves it. */
function cornerKey(block: BlockModel, area: Area, event: KeyboardEvent): void {
  const { columns, rows } = points(area);
  const { x, y } = at.value;
  const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
  if (step !== undefined)
    at.value = {
      x: Math.min(columns, Math.max(0, x + step[0]!)),
      y: Math.min(rows, Math.max(0, y + step[1]!)),
    };
  else if (event.key === " ") tap(block, area, x, y);
  else if (event.key === "Enter") {
    if (ring.value.length > 2) closeRing(area);
    else if (drawn.value.length > 0) finish(block, area);
  } else if (event.key === "Escape") close();
  else return;
  event.preventDefault();
}

const scaledBy = (ring: Ring, scale: number) => ring.map(([x, y]) => [x * scale, y * scale] as const);

/** The patch that is being drawn: its corners so far. */
function OpenRing({ scale }: { scale: number }) {
  if (ring.value.length === 0) return null;
  const corners = scaledBy(ring.value, scale);
  return (
    <>
      <polyline class="next" points={corners.map((point) => point.join(" ")).join(" ")} />
      {corners.map(([x, y], i) => (
        <circle key={i} class="cornerdot" cx={x} cy={y} r={i === 0 ? 8 : 5} />
      ))}
    </>
  );
}

function CornerButtons({ block, area }: { block: BlockModel; area: Area }) {
  return (
    <div class="row">
      <Label onClick={() => (ring.value.length > 2 ? closeRing(area) : finish(block, area))} strong>
        {words.closeCorners}
      </Label>
      <Label
        onClick={() => {
          close();
          state.said.value = "";
        }}
      >
        {words.stopCorners}
      </Label>
    </div>
  );
}

/** Squared paper on which patches are drawn by their corners; points can be tapped or reached with arrows. */
export function Corners({ block, area }: { block: BlockModel; area: Area }) {
  const svg = useRef<SVGSVGElement>(null);
  const { columns, rows } = points(area);
  const scale = SIDE / Math.max(columns, rows);
  const [w, h] = [columns * scale, rows * scale];
  const colourOf = (name: string): string =>
    state.model.value.fabrics.find((fabric) => fabric.name === name)?.colour ?? "none";
  const pointed = (event: PointerEvent) => {
    const { x, y } = pointIn(svg.current, event);
    const [px, py] = [x / scale, y / scale];
    tap(
      block,
      area,
      Math.min(columns, Math.max(0, Math.round(px))),
      Math.min(rows, Math.max(0, Math.round(py))),
    );
  };
  return (
    <>
      <svg
        ref={svg}
        class="paper"
        viewBox={`${-MARGIN} ${-MARGIN} ${w + 2 * MARGIN} ${h + 2 * MARGIN}`}
        role="application"
        aria-label={words.drawCorners}
        tabindex={0}
        onPointerUp={pointed}
        onKeyDown={(event) => cornerKey(block, area, event)}
      >
        <rect class="sheet" x="0" y="0" width={w} height={h} />
        <path
          class="squares"
          d={
            Array.from({ length: columns - 1 }, (_, i) => `M${(i + 1) * scale} 0V${h}`).join("") +
            Array.from({ length: rows - 1 }, (_, i) => `M0 ${(i + 1) * scale}H${w}`).join("")
          }
        />
        {drawn.value.map(({ ring, fabric }, i) => (
          <path
            key={i}
            class="seam"
            d={pathOf(scaledBy(ring, scale))}
            fill={colourOf(fabric)}
            stroke-width="1.4"
          />
        ))}
        <OpenRing scale={scale} />
        <circle class="heldline" cx={at.value.x * scale} cy={at.value.y * scale} r="11" />
      </svg>
      <CornerButtons block={block} area={area} />
    </>
  );
}
