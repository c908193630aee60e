import {
  addBlock,
  copyBlock,
  lengthText,
  nameBlock,
  resizeGrid,
  sizeBlock,
  unitOn,
} from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { putBlock } from "../../../edits/quilt-edits.ts";
import { ringsOf } from "../../../edits/ring-edits.ts";
import { patchesOf } from "../../../edits/unit-patches.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { Faults } from "../faults.tsx";
import { Field } from "../field.tsx";
import { Group } from "../group.tsx";
import { Pile } from "../pile.tsx";
import { QuiltPicture } from "../quilt-picture.tsx";
import { saidOnPaper } from "../said-here.tsx";
import * as state from "../state.ts";
import {
  countTyped,
  Label,
  lengthHeld,
  lengthSaid,
  lengthTyped,
  rulerMark,
  Stepper,
  sizeTyped,
} from "../steps.tsx";
import { NineTogether, Unfit } from "./block-beside.tsx";
import { Swatch } from "./cloth.tsx";
import { Corners, cornersOpen } from "./corners.tsx";
import { blockOnPaper, colour, squareName, turn } from "./laying.ts";
import { MotifLeaf } from "./motifs.tsx";
import { Paper } from "./paper.tsx";
import { Tray } from "./tray.tsx";
import { ColumnFields, UnitFields } from "./unit-fields.tsx";

/** Most squares of a block each way. */
const MOST_SQUARES = 40;
const byFinger = (): boolean => window.matchMedia("(pointer: coarse)").matches;
const help = () => ({
  lay: byFinger() ? words.helpFinger : words.helpPaper,
  colour: words.helpColour,
  off: words.helpOff,
});

const countIn = (key: string): number =>
  state.model.value.setting.rows.reduce(
    (sum, row) => sum + row.filter(({ block }) => block === key).length,
    0,
  );

/** A new block takes the place of every other one of the block in hand, so that it is seen in the quilt at once. */
const anotherBlock = (block: BlockModel): void =>
  newBlock(block, (text) => addBlock(text, block.columns, block.rows), words.anotherBlock);

const copyOf = (block: BlockModel): void =>
  newBlock(block, (text) => copyBlock(text, block.key), words.copyBlock);

function newBlock(
  block: BlockModel,
  make: (text: string) => { text: string; key: string },
  sentence: string,
): void {
  let key = "";
  edit((text) => {
    const added = make(text);
    key = added.key;
    return state.model.value.setting.rows.reduce(
      (made, row, r) =>
        row.reduce(
          (all, one, c) =>
            one.block === block.key && (r + c) % 2 === 1 ? putBlock(all, { row: r, column: c }, key) : all,
          made,
        ),
      added.text,
    );
  }, sentence);
  if (key !== "") state.sheet.value = { block: key };
}

function Facts({ block }: { block: BlockModel }) {
  const size = block.across ?? 0;
  const wide = 8 * rulerMark();
  const resize = (columns: number, rows: number) =>
    edit((text) => resizeGrid(text, block.key, columns, rows), `${columns} × ${rows} ${words.blockSquares}.`);
  const grow = (by: number) => {
    const next = Math.max(wide, Math.round(size / wide) * wide + by * wide);
    edit(
      (text) => sizeBlock(text, block.key, lengthText(next, state.model.value)),
      `${lengthSaid(next)} ${words.finished}.`,
    );
  };
  const same = block.columns === block.rows;
  const [across, down] = [block.across ?? 0, block.down ?? 0];
  const rings = ringsOf(state.text.value, block.key);
  const sizeTo = (wide2: number, high: number) =>
    edit(
      (text) =>
        sizeBlock(
          text,
          block.key,
          `${lengthText(wide2, state.model.value)} x ${lengthText(high, state.model.value)}`,
        ),
      `${lengthSaid(wide2)} × ${lengthSaid(high)} ${words.finished}.`,
    );
  const sized = (wide2: string | null, high: string | null) => {
    if (wide2 === null || high === null) return;
    edit((text) => sizeBlock(text, block.key, `${wide2} x ${high}`), `${wide2} × ${high} ${words.finished}.`);
  };
  // Squares of a long block are counted each way; a square block keeps as many down as across.
  const long = across !== down || !same;
  const half = 4 * rulerMark();
  if (long)
    return (
      <div class="facts">
        <Stepper
          what={words.across}
          value=""
          typed={{
            now: String(block.columns),
            after: words.across,
            take: (wish) => {
              const c = countTyped(wish, MOST_SQUARES);
              if (c !== null) resize(c, block.rows);
            },
          }}
          less={() => resize(block.columns - 1, block.rows)}
          more={() => resize(block.columns + 1, block.rows)}
        />
        <Stepper
          what={words.down}
          value=""
          typed={{
            now: String(block.rows),
            after: words.down,
            take: (wish) => {
              const r = countTyped(wish, MOST_SQUARES);
              if (r !== null) resize(block.columns, r);
            },
          }}
          less={() => resize(block.columns, block.rows - 1)}
          more={() => resize(block.columns, block.rows + 1)}
        />
        <Stepper
          what={words.width2}
          value=""
          typed={{
            now: lengthHeld(across),
            after: words.width2,
            take: (wish) => sized(lengthTyped(wish), lengthText(down, state.model.value)),
          }}
          less={() => sizeTo(Math.max(half, across - half), down)}
          more={() => sizeTo(across + half, down)}
        />
        {rings.length > 0 ? (
          <span class="figure">{`${lengthSaid(down)} ${words.height}`}</span>
        ) : (
          <Stepper
            what={words.height}
            value=""
            typed={{
              now: lengthHeld(down),
              after: words.height,
              take: (wish) => sized(lengthText(across, state.model.value), lengthTyped(wish)),
            }}
            less={() => sizeTo(across, Math.max(half, down - half))}
            more={() => sizeTo(across, down + half)}
          />
        )}
        <Where block={block} />
      </div>
    );
  return (
    <div class="facts">
      <Stepper
        what={words.blockSquares}
        value=""
        typed={{
          now: `${block.columns} × ${block.rows}`,
          after: words.blockSquares,
          take: (wish) => {
            const [wide2 = "", high = wide2, ...more] = wish.split(/\s*[x×]\s*/i);
            const [c, r] = [countTyped(wide2, MOST_SQUARES), countTyped(high, MOST_SQUARES)];
            if (c !== null && r !== null && more.length === 0) resize(c, r);
          },
        }}
        less={() => resize(block.columns - 1, same ? block.rows - 1 : block.rows)}
        more={() => resize(block.columns + 1, same ? block.rows + 1 : block.rows)}
      />
      <Stepper
        what={words.finished}
        value=""
        typed={{
          now: lengthHeld(size),
          after: words.finished,
          take: (wish) => {
            const made = sizeTyped(wish);
            if (made !== null) edit((text) => sizeBlock(text, block.key, made), `${made} ${words.finished}.`);
          },
        }}
        less={() => grow(-1)}
        more={() => grow(1)}
      />
      <Where block={block} />
    </div>
  );
}

/** How often the block is in the quilt, and in which ring it stands. */
function Where({ block }: { block: BlockModel }) {
  const count = countIn(block.key);
  const rings = ringsOf(state.text.value, block.key).map((ring) => words.inRing[ring]);
  const told = [...(count > 0 || rings.length === 0 ? [words.inTheQuilt(count)] : []), ...rings];
  return <span class="figure quiet where">{told.join(", ")}</span>;
}

const wholeOf = ({ columns, rows }: BlockModel) => ({ column: 0, row: 0, columns, rows });

/** The patches of the square in hand, each to be coloured by name. */
function PatchList({ block }: { block: BlockModel }) {
  const at = state.square.value;
  const unit = unitOn(block, at);
  if (unit === null) return null;
  const patches = patchesOf(unit, block, state.model.value) ?? [];
  const parts = patches.filter(({ part }, i) => patches.findIndex((one) => one.part === part) === i);
  return (
    <div class="row patches" role="group" aria-label={words.patchesOf(squareName(at))}>
      {parts.map((patch) => (
        <button
          key={patch.part}
          type="button"
          class="act"
          onClick={() => colour(block, unit, at, patch.part)}
        >
          {patch.fabric === null ? null : <Swatch fabric={patch.fabric} />}
          {patch.part}
        </button>
      ))}
      <button type="button" class="act" onClick={() => turn(block, at, 1)}>
        {words.turnIt}
      </button>
    </div>
  );
}

function InTheQuilt() {
  const { top, stale } = state.laid.value;
  const model = state.model.value;
  return (
    <div class={stale ? "inquilt stale" : "inquilt"}>
      <button type="button" class="act" onClick={() => (state.sheet.value = "quilt")}>
        {words.seeQuilt}
      </button>
      {top === null ? null : (
        <button
          type="button"
          class="bare"
          aria-label={words.seeQuilt}
          onClick={() => (state.sheet.value = "quilt")}
        >
          <QuiltPicture top={top} model={model} prefix="inq-" label={model.name} tile={40} />
        </button>
      )}
    </div>
  );
}

/** A block on squared paper with the units beside it. */
export function BlockSheet() {
  const block = blockOnPaper();
  if (block === null) {
    state.sheet.value = "quilt";
    return null;
  }
  const { blocks } = state.model.value;
  const wished = cornersOpen.value;
  // Squares that are no longer there cannot be drawn on.
  const corners =
    wished === null || wished.column + wished.columns > block.columns || wished.row + wished.rows > block.rows
      ? null
      : wished;
  return (
    <div class="spread draw">
      <section class="leaf work1" aria-label={block.name}>
        <h2>
          <Field
            class="nameinput"
            aria-label={words.blockName}
            value={block.name}
            size={Math.max(6, block.name.length)}
            onChange={({ currentTarget }) =>
              edit((text) => nameBlock(text, block.key, currentTarget.value.trim()), currentTarget.value)
            }
          />
          <button type="button" class="act" onClick={() => copyOf(block)}>
            {words.copyBlock}
          </button>
          <button type="button" class="act" onClick={() => anotherBlock(block)}>
            {words.anotherBlock}
          </button>
        </h2>
        {blocks.length < 2 ? null : (
          <Group name="choice" label={words.blocksLabel}>
            {blocks.map(({ key, name }) => (
              <button
                key={key}
                type="button"
                class="pickword"
                aria-pressed={key === block.key}
                onClick={() => (state.sheet.value = { block: key })}
              >
                {name}
              </button>
            ))}
          </Group>
        )}
        <Facts block={block} />
        {corners === null ? <Paper block={block} /> : <Corners block={block} area={corners} />}
        <Unfit block={block} />
        <p class="said" aria-hidden="true">
          {saidOnPaper() || help()[state.tool.value]}
        </p>
        {corners !== null ? null : (
          <>
            <PatchList block={block} />
            <UnitFields block={block} />
            <div class="row">
              <Label
                pressed={state.spanning.value}
                onClick={() => {
                  state.spanning.value = !state.spanning.value;
                  state.areaFrom.value = null;
                  state.tool.value = "lay";
                  if (state.spanning.value) state.said.value = words.spanStart;
                }}
              >
                {words.span}
              </Label>
              <Label
                onClick={() => {
                  cornersOpen.value = wholeOf(block);
                  state.said.value = words.cornersHelp;
                }}
              >
                {words.drawCorners}
              </Label>
              <Label
                onClick={() => {
                  const unit = unitOn(block, state.square.value);
                  cornersOpen.value = unit ?? { ...state.square.value, columns: 1, rows: 1 };
                  state.said.value = words.cornersHelp;
                }}
              >
                {words.drawCornersHere}
              </Label>
            </div>
            <ColumnFields block={block} />
          </>
        )}
        <Faults />
      </section>
      <Tray />
      <div class="side">
        <NineTogether block={block} />
        <InTheQuilt />
        <MotifLeaf key={block.key} block={block} />
        <Pile />
      </div>
    </div>
  );
}
