import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { blockNamed } from "../../../edits/block-edits.ts";
import { colourPlaced, setColourway, wordsOfPlaced } from "../../../edits/colourway-edits.ts";
import type { BlockModel, PlacedModel } from "../../../edits/model.ts";
import {
  type FillRule,
  fillBlocks,
  fillTurns,
  type Place,
  type PutRule,
  putBlock,
  turnPlaced,
} from "../../../edits/quilt-edits.ts";
import { insertPlaced, removePlaced } from "../../../edits/row-edits.ts";
import { seenTurn } from "../../../edits/unit-patches.ts";
import { difference } from "../../../savings/index.ts";
import { words } from "../../words/index.ts";
import { edit, sessionInHand } from "../actions.ts";
import { costText } from "../fabric/amount-lines.ts";
import { Group } from "../group.tsx";
import * as state from "../state.ts";
import { Label, Stepper } from "../steps.tsx";
import { BlockPicture, Swatch } from "./cloth.tsx";

export const placedAt = ({ row, column }: Place): PlacedModel | null =>
  state.model.value.setting.rows[row]?.[column] ?? null;

export const nameOf = (key: string): string => blockNamed(state.model.value, key)?.name ?? key;

export function turnTo(turn: number): void {
  const at = state.placed.value;
  const placed = at === null ? null : placedAt(at);
  if (at === null || placed === null) return;
  const seen = turnSeen(placed, turn);
  // A turn that cannot be seen would only be one more kind of block to sew.
  if (seen !== turn && seen === turnSeen(placed, placed.turn) && placed.turn === seen) {
    state.said.value = words.turnUnseen;
    return;
  }
  edit(
    (text) => turnPlaced(text, at, seen),
    seen === turn ? (words.placedTurns[turn] ?? "") : `${words.placedTurns[seen] ?? ""}. ${words.turnUnseen}`,
  );
}

/** The least turn that looks the same as one of a placed block. */
function turnSeen({ block, colourway }: PlacedModel, turn: number): number {
  const own = blockNamed(state.model.value, block);
  return own === null ? turn : seenTurn(own, state.model.value, colourway, turn);
}

const TURNS = [0, 90, 180, 270];

/** Plans the other turns of the block in hand once the amounts stand, where a print has a way up. */
function usePlannedTurns(at: Place | null, printed: boolean): void {
  const settled = state.progress.value === "done";
  const text = state.text.value;
  const place = at === null ? "" : `${at.row},${at.column}`;
  useEffect(() => {
    if (!settled || !printed || place === "") return;
    const [row = 0, column = 0] = place.split(",").map(Number);
    const ideas = TURNS.map((turn) => ({
      key: `turn ${turn}`,
      label: "",
      text: turnPlaced(text, { row, column }, turn),
    }));
    state.suggestions.value = ideas.map((idea) => ({ ...idea, amounts: null, done: false }));
    sessionInHand()?.tryTexts(ideas);
  }, [settled, printed, place, text]);
}

/** What a turn costs against the quilt as it stands; empty while it is not known. */
function costOfTurn(turn: number): string {
  const now = state.amounts.value;
  const then = state.suggestions.value.find(({ key }) => key === `turn ${turn}`)?.amounts;
  if (now === null || then == null) return "";
  return costText(difference(now.fabrics, then.fabrics).length, now.fabrics[0]?.unit ?? "yd");
}

/** Number of the last turning by chance; the same number turns the same blocks the same way again. */
const chance = signal(0);

function fill(block: string, rule: FillRule, first: number, number = chance.value + 1): void {
  if (rule === "chance") chance.value = number;
  const said = rule === "chance" ? words.chanceNumber(number) : words.rules[rule];
  const seen = [0, 90, 180, 270].map((turn) => turnSeen({ block, turn, colourway: "" }, turn));
  if (seen.every((turn) => turn === 0)) {
    state.said.value = words.turnUnseen;
    return;
  }
  edit((text) => fillTurns(text, block, rule, first, number), `${words.fillAll(nameOf(block))}: ${said}`);
}

/** The fabrics of this one placing: each can be another here while the block elsewhere stays as it is. */
function ColoursHere({ at, placed }: { at: Place; placed: PlacedModel }) {
  const model = state.model.value;
  const first = model.fabrics[state.firstFabric.value]?.name ?? "";
  const ways = Object.keys(model.colourways);
  return (
    <>
      <h3>{words.coloursHere}</h3>
      <div class="row patches" role="group" aria-label={words.coloursHere}>
        {wordsOfPlaced(model, at).map(({ word, fabric }) => (
          <button
            key={word}
            type="button"
            class="act"
            aria-label={words.colourHere(word, first)}
            onClick={() =>
              edit((text) => colourPlaced(text, at, word, first), words.colouredHere(word, first))
            }
          >
            {fabric === null ? null : <Swatch fabric={fabric} />}
            {word}
          </button>
        ))}
      </div>
      {ways.length === 0 ? null : (
        <div class="choice" role="group" aria-label={words.colourways}>
          {["", ...ways].map((way) => (
            <button
              key={way}
              type="button"
              class="pickword"
              aria-pressed={placed.colourway === way}
              onClick={() => edit((text) => setColourway(text, at, way), way || words.ownColours)}
            >
              {way || words.ownColours}
            </button>
          ))}
        </div>
      )}
    </>
  );
}

/** The row of the block in hand, longer and shorter by single blocks: rows need not hold as many as one another. */
function RowOf({ at, placed }: { at: Place; placed: PlacedModel }) {
  const { setting } = state.model.value;
  if (setting.layout !== "straight") return null;
  const count = () => words.inRow(state.model.value.setting.rows[at.row]?.length ?? 0);
  return (
    <div class="row" role="group" aria-label={words.rowOf}>
      <span class="figure">{words.rowOf}</span>
      <button
        type="button"
        class="act"
        onClick={() => {
          if (edit((text) => insertPlaced(text, at, placed), count))
            state.placed.value = { ...at, column: at.column + 1 };
        }}
      >
        {words.rowMore}
      </button>
      <button
        type="button"
        class="act"
        disabled={(setting.rows[at.row]?.length ?? 0) < 2}
        onClick={() => {
          if (edit((text) => removePlaced(text, at), count))
            state.placed.value = { ...at, column: Math.max(0, at.column - 1) };
        }}
      >
        {words.rowLess}
      </button>
    </div>
  );
}

interface InHand {
  at: Place;
  placed: PlacedModel;
  block: BlockModel;
}

/** Its four turns as pictures, each with what it costs where a print has a way up. */
function FourTurns({ at, placed, block, printed }: InHand & { printed: boolean }) {
  const { model } = state;
  return (
    <Group name="four" label={words.placedAt(block.name, at.row + 1, at.column + 1)}>
      {TURNS.map((turn) => (
        <button key={turn} type="button" aria-pressed={placed.turn === turn} onClick={() => turnTo(turn)}>
          <BlockPicture block={block} model={model.value} turn={turn} colourway={placed.colourway} />
          {words.placedTurns[turn]}
          <i class="quiet cost">
            {turn !== 0 && turnSeen(placed, turn) !== turn
              ? words.looksTheSame
              : printed && turn !== placed.turn
                ? costOfTurn(turn)
                : ""}
          </i>
        </button>
      ))}
    </Group>
  );
}

/** What is done with it: drawn, swapped, another put in its place. */
function DoWith({ at, block }: InHand) {
  return (
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
      {state.model.value.blocks
        .filter(({ key }) => key !== block.key)
        .map(({ key, name }) => (
          <Label key={key} onClick={() => edit((text) => putBlock(text, at, key), words.putHere(name))}>
            {words.putHere(name)}
          </Label>
        ))}
    </div>
  );
}

/** Rules by which all blocks of its design are turned. */
function TurnRules({ placed, block }: InHand) {
  return (
    <div class="row" role="group" aria-label={words.fillAll(block.name)}>
      <span class="figure">{words.fillAll(block.name)}</span>
      {(Object.keys(words.rules) as FillRule[]).map((rule) => (
        <button key={rule} type="button" class="act" onClick={() => fill(block.key, rule, placed.turn)}>
          {words.rules[rule]}
        </button>
      ))}
      {chance.value === 0 ? null : (
        <Stepper
          what={words.rules.chance}
          value={words.chanceNumber(chance.value)}
          less={() => fill(block.key, "chance", placed.turn, Math.max(1, chance.value - 1))}
          more={() => fill(block.key, "chance", placed.turn)}
        />
      )}
    </div>
  );
}

/** Rules by which its design is put in other places. */
function PutRules({ at, block }: InHand) {
  return (
    <div class="row" role="group" aria-label={words.fillWith(block.name)}>
      <span class="figure">{words.fillWith(block.name)}</span>
      {(Object.keys(words.puts) as PutRule[]).map((rule) => (
        <button
          key={rule}
          type="button"
          class="act"
          onClick={() =>
            edit(
              (text) => fillBlocks(text, block.key, rule, at),
              `${words.fillWith(block.name)} ${words.puts[rule]}.`,
            )
          }
        >
          {words.puts[rule]}
        </button>
      ))}
    </div>
  );
}

/** The block in hand: its four turns, its colours here, and what can be done with it. */
export function PlacedHand() {
  const at = state.placed.value;
  const placed = at === null ? null : placedAt(at);
  const model = state.model.value;
  const block = placed === null ? null : blockNamed(model, placed.block);
  const printed = model.fabrics.some(({ print }) => print !== "none");
  usePlannedTurns(block === null ? null : at, printed);
  if (at === null || placed === null || block === null) return <p class="quiet">{words.turnHelp}</p>;
  const hand = { at, placed, block };
  return (
    <>
      <h3>{words.placedAt(block.name, at.row + 1, at.column + 1)}</h3>
      <FourTurns {...hand} printed={printed} />
      {printed ? <p class="quiet">{words.printTurns}</p> : null}
      <DoWith {...hand} />
      <RowOf at={at} placed={placed} />
      <TurnRules {...hand} />
      {model.blocks.length < 2 ? null : <PutRules {...hand} />}
      <ColoursHere at={at} placed={placed} />
    </>
  );
}
