import { blockNamed } from "../../../edits/block-edits.ts";
import { fabricFor } from "../../../edits/model.ts";
import { removeBorder, setBorder } from "../../../edits/quilt-edits.ts";
import {
  fitBefore,
  type Pieced,
  pieceBorder,
  pieceBorderStones,
  plainBorder,
  setBorderStones,
} from "../../../edits/ring-edits.ts";
import { UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";

const NO_ROLES = { roles: {} };
export const clothOf = (word: string) => fabricFor(word, NO_ROLES, state.model.value);
export const firstName = (): string => state.model.value.fabrics[state.firstFabric.value]?.name ?? "";
export const secondName = (): string =>
  state.model.value.fabrics[state.secondFabric.value]?.name ?? firstName();
export const nameOf = (key: string): string => blockNamed(state.model.value, key)?.name ?? key;

/** One edit that makes a block, which is then on the table to be drawn. */
export function piece(make: (text: string) => Pieced, sentence: string): void {
  let key = "";
  edit((text) => {
    const made = make(text);
    key = made.key;
    return made.text;
  }, sentence);
  if (key !== "") state.sheet.value = { block: key };
}

/** What a border goes round, in ticks, as the top is laid out; nothing where it is not. */
function insideOf(index: number): { across: number; down: number } {
  const ring = state.laid.value.top?.borders[index];
  return ring === undefined
    ? { across: 0, down: 0 }
    : { across: (ring.across - 2 * ring.side) * UNIT, down: (ring.down - 2 * ring.end) * UNIT };
}

export interface Choice {
  label: string;
  pressed?: boolean;
  act(): void;
}

export function Choices({ all }: { all: readonly Choice[] }) {
  return (
    <div class="row">
      {all.map(({ label, pressed, act }) => (
        <button
          key={label}
          type="button"
          class="act"
          onClick={act}
          {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

type Border = (typeof state.model.value.borders)[number];

/** A plain border can be pieced; a pieced one be drawn, and made to come out. */
function ofItsBlocks(border: Border, index: number): Choice[] {
  if (border.block === "")
    return [
      {
        label: words.pieceIt,
        act: () =>
          piece(
            (text) => pieceBorder(text, index, insideOf(index), secondName(), secondName()),
            words.piecedBorder,
          ),
      },
    ];
  const fitted = state.model.value.borders.slice(0, index).some(({ width }) => width === "fit");
  return [
    {
      label: words.drawBlock(nameOf(border.block)),
      act: () => {
        state.sheet.value = { block: border.block };
      },
    },
    ...(fitted
      ? []
      : [
          {
            label: words.fitIt,
            act: () => {
              state.borderInHand.value = index + 1;
              edit((text) => fitBefore(text, index, secondName()), words.fitIt);
            },
          },
        ]),
  ];
}

/** What stands in its corners: squares, blocks, or a mitre. */
function ofItsCorners(border: Border, index: number): Choice[] {
  const squares = border.stones !== "" || border.stoneBlock !== "";
  const mitred = border.corners === "mitred";
  return [
    {
      label: words.cornerSquares,
      pressed: squares,
      act: () =>
        edit((text) => setBorderStones(text, index, squares ? null : secondName()), words.cornerSquares),
    },
    ...(border.stones === ""
      ? []
      : [
          {
            label: words.pieceCorners,
            act: () => piece((text) => pieceBorderStones(text, index), words.pieceCorners),
          },
        ]),
    ...(border.block !== "" || squares
      ? []
      : [
          {
            label: words.corner4,
            pressed: mitred,
            act: () =>
              edit(
                (text) => setBorder(text, index, "corners", mitred ? "sides first" : "mitred"),
                words.corner4,
              ),
          },
        ]),
  ];
}

/** What can be done with the border in hand: its fabric or its blocks, its corners, taking it away. */
export function BorderHand({ index }: { index: number }) {
  const border = state.model.value.borders[index];
  if (border === undefined) return null;
  const first = firstName();
  const inFabric: Choice = {
    label: words.useFabric(first),
    act: () =>
      edit(
        (text) =>
          border.block === "" ? setBorder(text, index, "fabric", first) : plainBorder(text, index, first),
        words.useFabric(first),
      ),
  };
  const away: Choice = {
    label: words.removeBorder,
    act: () => {
      state.borderInHand.value = null;
      edit((text) => removeBorder(text, index), words.removeBorder);
    },
  };
  const all = [inFabric, ...ofItsBlocks(border, index), ...ofItsCorners(border, index), away];
  return <Choices all={all} />;
}
