import { useRef } from "preact/hooks";
import { type Area, blockNamed, colourPatch, emptySquare, layUnit, type Square, turnUnit, unitOn } from "../document/block-edits.ts";
import type { BlockModel, UnitModel } from "../document/model.ts";
import { type PaperPatch, patchesOf } from "../document/unit-patches.ts";
import { words } from "../words/en.ts";
import { edit } from "./actions.ts";
import { Cloth, pathOf, Textures } from "./cloth.tsx";
import * as state from "./state.ts";
import { comesIn, usualSpan, wordsInHand } from "./tray.tsx";

/** `b4`: lines by letter, squares by number, so that a square has a name that can be said. */
export function squareName({ column, row }: Square): string {
  const letters = row < 26 ? String.fromCharCode(97 + row) : `${String.fromCharCode(96 + Math.floor(row / 26))}${String.fromCharCode(97 + (row % 26))}`;
  return `${letters}${column + 1}`;
}

const squaresOf = (area: Area): string => {
  const first = squareName(area);
  const last = squareName({ column: area.column + area.columns - 1, row: area.row + area.rows - 1 });
  return first === last ? first : `${first} to ${last}`;
};

export const blockOnPaper = (): BlockModel | null => {
  const sheet = state.sheet.value;
  return sheet === "quilt" ? null : blockNamed(state.model.value, sheet.block);
};

const sizeOf = (block: BlockModel, area: Area): { across: number; down: number } => ({
  across: (block.xs[area.column + area.columns] ?? 0) - (block.xs[area.column] ?? 0),
  down: (block.ys[area.row + area.rows] ?? 0) - (block.ys[area.row] ?? 0),
});

/** Where one tap lays a unit: about the square, on free squares if it can, turned as in hand if it can. */
function areaFor(block: BlockModel, kind: string, turn: number, at: Square): { area: Area; turn: number } | null {
  const { columns, rows } = usualSpan(kind);
  const within = (area: Area): boolean =>
    area.column >= 0 && area.row >= 0 && area.column + area.columns <= block.columns && area.row + area.rows <= block.rows;
  const free = (area: Area): boolean =>
    block.units.every(
      (unit) =>
        unit.column >= area.column + area.columns ||
        area.column >= unit.column + unit.columns ||
        unit.row >= area.row + area.rows ||
        area.row >= unit.row + unit.rows,
    );
  const candidates: { area: Area; turn: number }[] = [];
  for (const quarter of [0, 90, 180, 270]) {
    const turned = (turn + quarter) % 360;
    const [wide, high] = turned % 180 === 0 ? [columns, rows] : [rows, columns];
    for (let r = 0; r < high; r++)
      for (let c = 0; c < wide; c++)
        candidates.push({ area: { column: at.column - c, row: at.row - r, columns: wide, rows: high }, turn: turned });
  }
  const good = candidates.filter(({ area }) => within(area));
  const straight = good.filter((one) => one.turn === turn);
  return straight.find(({ area }) => free(area)) ?? good.find(({ area }) => free(area)) ?? straight[0] ?? good[0] ?? null;
}

/** The kind that fills a shape: a long square is a rectangle, a long half-square triangle its long cousin. */
function kindFor(kind: string, columns: number, rows: number, square: boolean): string {
  if (kind === "square" && !square) return "rectangle";
  if (kind === "half-square triangle" && !square && columns !== rows) return "half-rectangle triangle";
  return kind;
}

function lay(block: BlockModel, area: Area, wished: string, turn: number): void {
  const size = sizeOf(block, area);
  const kind = kindFor(wished, area.columns, area.rows, size.across === size.down);
  if (!comesIn(kind, area, size, turn)) {
    state.said.value = words.doesNotFit(kind);
    return;
  }
  edit(
    (text) => layUnit(text, block.key, area, { kind, words: wordsInHand(kind), turn }),
    words.laid(kind, turn, squaresOf(area)),
  );
}

/** Lays the unit in hand over an area that was dragged or chosen; a long unit is turned to lie along it. */
export function layOver(block: BlockModel, a: Square, b: Square): void {
  const area = {
    column: Math.min(a.column, b.column),
    row: Math.min(a.row, b.row),
    columns: Math.abs(a.column - b.column) + 1,
    rows: Math.abs(a.row - b.row) + 1,
  };
  if (area.columns === 1 && area.rows === 1) {
    layAt(block, a);
    return;
  }
  const kind = state.unitInHand.value;
  const turn = state.turnInHand.value;
  const size = sizeOf(block, area);
  const better = [turn, turn + 90, turn + 180].map((one) => one % 360).find((one) => comesIn(kind, area, size, one));
  lay(block, area, kind, better ?? turn);
}

/** One tap on a square with what is in hand. */
export function layAt(block: BlockModel, at: Square, patch: PaperPatch | null = null): void {
  state.square.value = at;
  const unit = unitOn(block, at);
  switch (state.tool.value) {
    case "off":
      if (unit !== null) edit((text) => emptySquare(text, block.key, at), words.tookOff(squareName(at)));
      return;
    case "colour": {
      if (unit === null) {
        state.said.value = words.nothingThere;
        return;
      }
      const chosen = patch ?? (patchesOf(unit, block, state.model.value) ?? [])[0];
      if (chosen !== undefined) colour(block, unit, at, chosen.part);
      return;
    }
    default: {
      const kind = state.unitInHand.value;
      const same = unit !== null && (unit.cell.kind === kind || (kind === "square" && unit.cell.kind === "rectangle"));
      if (same && sameCloth(unit, block)) {
        turn(block, at, 1);
        return;
      }
      // On another unit of the very shape in hand, the new one takes its place and its turn stays the hand's.
      const place = areaFor(block, kind, state.turnInHand.value, at);
      if (place === null) state.said.value = words.noRoom;
      else lay(block, place.area, kind, place.turn);
    }
  }
}

function sameCloth(unit: UnitModel, block: BlockModel): boolean {
  const wanted = wordsInHand(unit.cell.kind);
  const patches = patchesOf(unit, block, state.model.value) ?? [];
  const cloths = new Set(patches.map(({ fabric }) => fabric?.name ?? ""));
  return [...new Set(wanted)].every((name) => cloths.has(name)) && cloths.size === new Set(wanted).size;
}

export function colour(block: BlockModel, unit: UnitModel, at: Square, part: string): void {
  const fabric = state.model.value.fabrics[state.firstFabric.value];
  if (fabric === undefined) return;
  const alike = block.units.filter(({ cell }) => cell.code === unit.cell.code).length;
  const reach = state.reach.value;
  edit(
    (text) => colourPatch(text, block.key, at, part, fabric.name, reach),
    words.coloured(part, fabric.name, reach === "alike" ? alike : 1),
  );
}

export function turn(block: BlockModel, at: Square, quarters: number): void {
  const unit = unitOn(block, at);
  if (unit === null) return;
  edit(
    (text) => turnUnit(text, block.key, at, quarters),
    () => {
      const now = blockOnPaper();
      const turned = now === null ? null : unitOn(now, at);
      return words.turnedTo(turned?.turn ?? 0);
    },
  );
}

function inside([x, y]: readonly [number, number], corners: readonly (readonly [number, number])[]): boolean {
  let within = false;
  corners.forEach(([x1, y1], i) => {
    const [x2, y2] = corners[(i + 1) % corners.length]!;
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) within = !within;
  });
  return within;
}

/** Page units the longer side of the paper takes, margins beside. */
const SIDE = 420;
const MARGIN = 30;

/** Squared paper with the block on it. */
export function Paper({ block }: { block: BlockModel }) {
  const model = state.model.value;
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<Square | null>(null);
  const [wide, high] = [block.xs.at(-1) ?? 1, block.ys.at(-1) ?? 1];
  const scale = SIDE / Math.max(wide, high);
  const x = (ticks: number): number => ticks * scale;
  const [w, h] = [x(wide), x(high)];
  const square = state.square.value;
  const from = state.areaFrom.value;
  const held = unitOn(block, square);

  const placeOf = (event: PointerEvent): { at: Square; point: [number, number] } | null => {
    const box = svg.current?.getBoundingClientRect();
    if (box === undefined) return null;
    const per = (w + 2 * MARGIN) / box.width;
    const [px, py] = [((event.clientX - box.left) * per - MARGIN) / scale, ((event.clientY - box.top) * per - MARGIN) / scale];
    const column = block.xs.findIndex((_, i) => px >= block.xs[i]! && px < (block.xs[i + 1] ?? -1));
    const row = block.ys.findIndex((_, i) => py >= block.ys[i]! && py < (block.ys[i + 1] ?? -1));
    return column < 0 || row < 0 ? null : { at: { column, row }, point: [px, py] };
  };
  const down = (event: PointerEvent) => {
    const place = placeOf(event);
    if (place === null || event.button !== 0) return;
    if (event.pointerType === "mouse" && state.tool.value === "lay") {
      drag.current = place.at;
      state.areaFrom.value = null;
    }
  };
  const moved = (event: PointerEvent) => {
    if (drag.current === null || event.buttons === 0) return;
    const place = placeOf(event);
    if (place === null) return;
    state.areaFrom.value = drag.current;
    state.square.value = place.at;
  };
  const up = (event: PointerEvent) => {
    const place = placeOf(event);
    const start = drag.current;
    drag.current = null;
    if (place === null) {
      state.areaFrom.value = null;
      return;
    }
    tap(place.at, start, place.point);
  };
  const tap = (at: Square, start: Square | null, point: readonly [number, number] | null): void => {
    if (state.spanning.value && start === null) {
      if (state.areaFrom.value === null) {
        state.areaFrom.value = at;
        state.square.value = at;
        state.said.value = words.spanFrom(squareName(at));
        return;
      }
      start = state.areaFrom.value;
      state.spanning.value = false;
    }
    state.areaFrom.value = null;
    state.square.value = at;
    if (start !== null && (start.column !== at.column || start.row !== at.row)) {
      layOver(block, start, at);
      return;
    }
    const unit = unitOn(block, at);
    const patches = unit === null || point === null ? [] : (patchesOf(unit, block, model) ?? []);
    layAt(block, at, patches.findLast(({ corners }) => point !== null && inside(point, corners)) ?? null);
  };
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
      requestAnimationFrame(() => (svg.current?.querySelector('[tabindex="0"]') as SVGElement | null)?.focus());
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
      onPointerDown={down}
      onPointerMove={moved}
      onPointerUp={up}
      onKeyDown={key}
    >
      <Textures prefix="paper-" fabrics={model.fabrics} tile={17} />
      <rect class="sheet" x="0" y="0" width={w} height={h} />
      <path class="fine" d={fineLines(block, x)} />
      {block.units.map((unit, i) => {
        const patches = patchesOf(unit, block, model);
        if (patches === null) return <rect key={i} class="unfit" {...rect(unit)} />;
        return patches.map((patch, j) => (
          <Cloth key={`${i}-${j}`} d={pathOf(patch.corners.map(([px, py]) => [x(px), x(py)]))} fabric={patch.fabric} prefix="paper-" seam={1.4} />
        ));
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
        // biome-ignore lint/a11y/useSemanticElements: a row of a drawing is no table row
        // biome-ignore lint/a11y/useFocusableInteractive: its cells take the focus
        <g role="row" key={row}>
          {columns.map((column) => {
            const unit = unitOn(block, { column, row });
            const name = squareName({ column, row });
            const own = column === square.column && row === square.row;
            return (
              <rect
                key={column}
                class="cell"
                // biome-ignore lint/a11y/useSemanticElements: a cell of a drawing is no table cell
                role="gridcell"
                tabIndex={own ? 0 : -1}
                aria-selected={own}
                aria-label={unit === null ? words.emptySquare(name) : words.unitOn(name, unit.cell.kind, unit.turn)}
                onFocus={() => {
                  if (!own && drag.current === null) state.square.value = { column, row };
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
