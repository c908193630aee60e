import { readCellModel, type UnitModel } from "../../../edits/model.ts";
import { outlinesOf } from "../../../edits/unit-patches.ts";
import { findUnitKind, TICKS_PER, unitList } from "../../../planning.ts";
import { pathOf, UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { PhotoFills } from "../fabric/photo-fills.tsx";
import { Group } from "../group.tsx";
import * as state from "../state.ts";
import { unitSaid } from "../unit-said.ts";
import { Cloth } from "./cloth.tsx";

/** Units of the tray with how many squares one usually takes. Patches of free shape have a drawing of their own. */
const LONG = new Set(["flying geese", "half-rectangle triangle"]);
const UNITS = unitList()
  .map(({ name }) => name)
  .filter((name) => name !== "drawn patches" && name !== "rectangle");

/** Squares a unit takes where one tap lays it, before it is turned. */
export const usualSpan = (kind: string): { columns: number; rows: number } => ({
  columns: LONG.has(kind) ? 2 : 1,
  rows: 1,
});

/** Fabrics of a unit from the two in hand, in the order of its parts: first, second, first ... */
export function wordsInHand(kind: string): string[] {
  const { fabrics } = state.model.value;
  const first = fabrics[state.firstFabric.value]?.name ?? fabrics[0]?.name ?? "";
  const second = fabrics[state.secondFabric.value]?.name ?? first;
  return partsOf(kind).map((_, i) => (i % 2 === 0 ? first : second));
}

/** Parts of a kind as it is at rest. */
function partsOf(kind: string): readonly string[] {
  return unitList().find(({ name }) => name === kind)?.parts ?? [];
}

/** Turns of a unit that look different at rest: a square has one, rails two. */
function turnsOf(kind: string): number[] {
  const at = (turn: number): string => JSON.stringify(shapes(kind, turn, ["a", "b"]).sort());
  const seen = new Set<string>();
  return [0, 90, 180, 270].filter((turn) => {
    const shape = at(turn);
    if (seen.has(shape)) return false;
    seen.add(shape);
    return true;
  });
}

function shapes(kind: string, turn: number, cloths: readonly string[]): string[] {
  // The corners of a patch in any order: it is where they lie that is seen.
  const corners = (d: string): string => d.replace(/[MZ]/g, "").split("L").sort().join(" ");
  return specimen(kind, turn).map(
    ({ part, d }) => `${cloths[partsOf(kind).indexOf(part) % 2]} ${corners(d)}`,
  );
}

const SIDE = 32 * UNIT;

function specimen(kind: string, turn: number): { part: string; d: string }[] {
  const { columns } = usualSpan(kind);
  const [wide, high] = [SIDE, SIDE / columns];
  const made = outlinesOf(readCellModel("", { [kind]: "x" }), wide, high, "in");
  const lies = turn % 180 === 0;
  const [w, h] = lies ? [wide, high] : [high, wide];
  return (made?.patches ?? []).map(({ part, corners }) => ({
    part,
    d: pathOf(
      corners.map(([x, y]) => {
        const [px, py] =
          turn === 90
            ? [high - y, x]
            : turn === 180
              ? [wide - x, high - y]
              : turn === 270
                ? [y, wide - x]
                : [x, y];
        return [(px + (SIDE - w) / 2) / UNIT, (py + (SIDE - h) / 2) / UNIT];
      }),
      1,
    ),
  }));
}

const TURNS = new Map(UNITS.map((kind) => [kind, turnsOf(kind)]));

/** Whether a unit looks otherwise when it is turned. */
export const looksTurned = (kind: string): boolean => (TURNS.get(kind)?.length ?? 4) > 1;

/** Pictures of the fabrics as large as they are on one square of the block in hand, and on two. */
function UnitFills() {
  const { sheet, model } = state;
  const key = sheet.value === "quilt" ? "" : sheet.value.block;
  const block = model.value.blocks.find((one) => one.key === key);
  const square = (block?.xs[1] ?? 2 * TICKS_PER.in) / UNIT;
  return (
    <svg class="photodefs" width="0" height="0" aria-hidden="true">
      <PhotoFills prefix="unit1-" mm={32 / square} />
      <PhotoFills prefix="unit2-" mm={16 / square} />
    </svg>
  );
}

function UnitPicture({ kind, turn }: { kind: string; turn: number }) {
  const { fabrics } = state.model.value;
  const [first, second] = [fabrics[state.firstFabric.value], fabrics[state.secondFabric.value]];
  const parts = partsOf(kind);
  const { columns } = usualSpan(kind);
  return (
    <svg viewBox="-1 -1 34 34" aria-hidden="true">
      {specimen(kind, turn).map(({ part, d }, i) => (
        <Cloth
          key={i}
          d={d}
          fabric={(parts.indexOf(part) % 2 === 0 ? first : second) ?? null}
          prefix={null}
          photos={`unit${columns}-`}
          seam={0.6}
        />
      ))}
    </svg>
  );
}

/** On a phone the units lie over the foot of the screen: with a unit in hand all of the paper comes out from under them. */
function paperIntoSight(): void {
  const boxes = [".draw .paper", ".specimens", ".tools"].map((one) => document.querySelector(one));
  const [paper, units, tools] = boxes.map((one) => one?.getBoundingClientRect());
  if (boxes[1] == null || getComputedStyle(boxes[1]).position !== "sticky") return;
  if (paper === undefined || units === undefined || tools === undefined) return;
  const hidden = paper.bottom - units.top;
  if (hidden > 0) window.scrollBy({ top: Math.min(hidden, Math.max(0, tools.top)) });
  else if (paper.top < 0) window.scrollBy({ top: Math.max(hidden, Math.min(0, tools.top)) });
}

function takeUnit(kind: string, turn: number): void {
  state.tool.value = "lay";
  state.unitInHand.value = kind;
  state.turnInHand.value = turn;
}

/** What a tap on the paper does. */
function Tools() {
  const tools = ["lay", "colour", "off"] as const;
  return (
    <div class="tools">
      <Group name="choice" label={words.toolsLabel}>
        {tools.map((tool) => (
          <button
            key={tool}
            type="button"
            class="pickword"
            aria-pressed={state.tool.value === tool}
            onClick={() => (state.tool.value = tool)}
          >
            {words.tools[tool]}
          </button>
        ))}
      </Group>
      {state.tool.value === "colour" ? (
        <Group name="choice" label={words.reachLabel}>
          {(["patch", "alike"] as const).map((reach) => (
            <button
              key={reach}
              type="button"
              class="pickword"
              aria-pressed={state.reach.value === reach}
              onClick={() => (state.reach.value = reach)}
            >
              {words.reach[reach]}
            </button>
          ))}
        </Group>
      ) : null}
    </div>
  );
}

/** The unit in hand with its turns by itself, where the list is too narrow to show them: it stays in sight. */
function InHand() {
  const kind = state.unitInHand.value;
  const turns = TURNS.get(kind) ?? [0];
  return (
    <div class="unitinhand">
      <b>{unitSaid(kind)}</b>
      {turns.length < 2 ? null : (
        <Group name="handturns" label={unitSaid(kind)}>
          {turns.map((turn) => (
            <button
              key={turn}
              type="button"
              aria-label={words.unitTurned(unitSaid(kind), turn)}
              aria-pressed={state.tool.value === "lay" && state.turnInHand.value === turn}
              onClick={() => takeUnit(kind, turn)}
            >
              <UnitPicture kind={kind} turn={turn} />
            </button>
          ))}
        </Group>
      )}
    </div>
  );
}

/** Arrow keys move in the table as in any: up and down to another unit, left and right to another turn. */
function moveInTray(event: KeyboardEvent): void {
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (step === undefined && event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
  event.preventDefault();
  const kind = state.unitInHand.value;
  if (step !== undefined)
    takeUnit(UNITS[(UNITS.indexOf(kind) + step + UNITS.length) % UNITS.length] ?? kind, 0);
  else {
    const turns = TURNS.get(kind) ?? [0];
    const next = turns.indexOf(state.turnInHand.value) + (event.key === "ArrowRight" ? 1 : -1);
    takeUnit(kind, turns[(next + turns.length) % turns.length] ?? 0);
  }
  const pressed = step === undefined ? ".tray .turns [aria-pressed=true]" : ".tray .rest[aria-pressed=true]";
  requestAnimationFrame(() => document.querySelector<HTMLElement>(pressed)?.focus());
}

/** A unit as a row: at rest, and in each of its turns that looks otherwise. */
function UnitRow({ unit }: { unit: string }) {
  const inHand = unit === state.unitInHand.value;
  const held = inHand && state.tool.value === "lay";
  const turns = TURNS.get(unit) ?? [0];
  return (
    <li class={held ? "unit held" : "unit"} data-unit={unit}>
      <button
        type="button"
        class="rest"
        aria-pressed={held}
        tabIndex={inHand ? 0 : -1}
        onClick={() => {
          takeUnit(unit, 0);
          paperIntoSight();
        }}
      >
        <UnitPicture kind={unit} turn={0} />
        <span>{unitSaid(unit)}</span>
      </button>
      {turns.length < 2 ? null : (
        <span class="turns">
          {turns.map((turn) => (
            <button
              key={turn}
              type="button"
              aria-label={words.unitTurned(unitSaid(unit), turn)}
              aria-pressed={held && state.turnInHand.value === turn}
              tabIndex={-1}
              onClick={() => takeUnit(unit, turn)}
            >
              <UnitPicture kind={unit} turn={turn} />
            </button>
          ))}
        </span>
      )}
    </li>
  );
}

/** A table of specimens: a row a unit, a column a turn. */
export function Tray() {
  return (
    <section class="leaf tray" aria-labelledby="units-title">
      <h3 id="units-title">{words.units}</h3>
      <UnitFills />
      <Tools />
      <div class="specimens">
        <InHand />
        <ul onKeyDown={moveInTray}>
          {UNITS.map((unit) => (
            <UnitRow key={unit} unit={unit} />
          ))}
        </ul>
      </div>
    </section>
  );
}

/** Whether a unit comes in a shape of so many squares of a block. */
export function comesIn(
  kind: string,
  unit: Pick<UnitModel, "columns" | "rows">,
  size: { across: number; down: number },
  turn: number,
): boolean {
  if (findUnitKind(kind) === null) return false;
  const [w, h] = turn % 180 === 0 ? [size.across, size.down] : [size.down, size.across];
  return (
    unit.columns > 0 &&
    unit.rows > 0 &&
    outlinesOf(readCellModel("", { [kind]: "x" }), w, h, state.model.value.unit) !== null
  );
}
