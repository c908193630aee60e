import { type Area, addBlock, copyBlock, nameBlock, unitOn } from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { putBlock } from "../../../edits/quilt-edits.ts";
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
import { Label } from "../steps.tsx";
import { partSaid } from "../unit-said.ts";
import { NineTogether, Unfit } from "./block-beside.tsx";
import { BlockFacts } from "./block-facts.tsx";
import { Swatch } from "./cloth.tsx";
import { Corners, cornersOpen } from "./corners.tsx";
import { blockOnPaper, colour, squareName, turn } from "./laying.ts";
import { MotifLeaf } from "./motifs.tsx";
import { Paper } from "./paper.tsx";
import { Tray } from "./tray.tsx";
import { ColumnFields, UnitFields } from "./unit-fields.tsx";

const byFinger = (): boolean => window.matchMedia("(pointer: coarse)").matches;
const help = () => ({
  lay: byFinger() ? words.helpFinger : words.helpPaper,
  colour: words.helpColour,
  off: words.helpOff,
});

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
          {partSaid(patch.part)}
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

/** Its name, and making another of it. */
function BlockHead({ block }: { block: BlockModel }) {
  const { blocks } = state.model.value;
  return (
    <>
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
    </>
  );
}

function openCorners(area: Area): void {
  cornersOpen.value = area;
  state.said.value = words.cornersHelp;
}

/** Other ways of laying than a tap: over several squares, or patches by their corners. */
function WaysOfLaying({ block }: { block: BlockModel }) {
  return (
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
      <Label onClick={() => openCorners(wholeOf(block))}>{words.drawCorners}</Label>
      <Label
        onClick={() => {
          const at = state.square.value;
          openCorners(unitOn(block, at) ?? { ...at, columns: 1, rows: 1 });
        }}
      >
        {words.drawCornersHere}
      </Label>
    </div>
  );
}

/** The squares open for drawing corners; none that are no longer there. */
function cornersOn({ columns, rows }: BlockModel): Area | null {
  const wished = cornersOpen.value;
  return wished === null || wished.column + wished.columns > columns || wished.row + wished.rows > rows
    ? null
    : wished;
}

/** A block on squared paper with the units beside it. */
export function BlockSheet() {
  const block = blockOnPaper();
  if (block === null) {
    state.sheet.value = "quilt";
    return null;
  }
  const corners = cornersOn(block);
  return (
    <div class="spread draw">
      <section class="leaf work1" aria-label={block.name}>
        <BlockHead block={block} />
        <BlockFacts block={block} />
        {corners === null ? <Paper block={block} /> : <Corners block={block} area={corners} />}
        <Unfit block={block} />
        <p class="said" aria-hidden="true">
          {saidOnPaper() || help()[state.tool.value]}
        </p>
        {corners !== null ? null : (
          <>
            <PatchList block={block} />
            <UnitFields block={block} />
            <WaysOfLaying block={block} />
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
