import { lengthText, resizeGrid, sizeBlock } from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { ringsOf } from "../../../edits/ring-edits.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { countTyped, lengthHeld, lengthSaid, lengthTyped, rulerMark, Stepper, sizeTyped } from "../steps.tsx";

/** Most squares of a block each way. */
const MOST_SQUARES = 40;

const countIn = (key: string): number =>
  state.model.value.setting.rows.reduce(
    (sum, row) => sum + row.filter(({ block }) => block === key).length,
    0,
  );

const resize = (block: BlockModel, columns: number, rows: number): boolean =>
  edit((text) => resizeGrid(text, block.key, columns, rows), `${columns} × ${rows} ${words.blockSquares}.`);

function sizeTo(block: BlockModel, wide: number, high: number): void {
  const [across, down] = [lengthText(wide, state.model.value), lengthText(high, state.model.value)];
  edit(
    (text) => sizeBlock(text, block.key, `${across} x ${down}`),
    `${lengthSaid(wide)} × ${lengthSaid(high)} ${words.finished}.`,
  );
}

/** A finished side as it was typed, the other as it is. */
function sized(block: BlockModel, wide: string | null, high: string | null): void {
  if (wide === null || high === null) return;
  edit((text) => sizeBlock(text, block.key, `${wide} x ${high}`), `${wide} × ${high} ${words.finished}.`);
}

/** Squares of a long block, counted one way. */
function SquaresOneWay({ block, way }: { block: BlockModel; way: "across" | "down" }) {
  const now = way === "across" ? block.columns : block.rows;
  const to = (count: number) =>
    way === "across" ? resize(block, count, block.rows) : resize(block, block.columns, count);
  return (
    <Stepper
      what={words[way]}
      value=""
      typed={{
        now: String(now),
        after: words[way],
        take: (wish) => {
          const count = countTyped(wish, MOST_SQUARES);
          if (count !== null) to(count);
        },
      }}
      less={() => to(now - 1)}
      more={() => to(now + 1)}
    />
  );
}

/** A finished side of a long block. */
function SideOf({ block, way }: { block: BlockModel; way: "across" | "down" }) {
  const [across, down] = [block.across ?? 0, block.down ?? 0];
  const half = 4 * rulerMark();
  const [now, label] = way === "across" ? [across, words.width2] : [down, words.height];
  const to = (ticks: number) =>
    way === "across" ? sizeTo(block, ticks, down) : sizeTo(block, across, ticks);
  return (
    <Stepper
      what={label}
      value=""
      typed={{
        now: lengthHeld(now),
        after: label,
        take: (wish) =>
          way === "across"
            ? sized(block, lengthTyped(wish), lengthText(down, state.model.value))
            : sized(block, lengthText(across, state.model.value), lengthTyped(wish)),
      }}
      less={() => to(Math.max(half, now - half))}
      more={() => to(now + half)}
    />
  );
}

/** A block that is longer than wide, or has more squares one way: squares and sides are told each way. */
function LongFacts({ block }: { block: BlockModel }) {
  const rings = ringsOf(state.text.value, block.key);
  return (
    <div class="facts">
      <SquaresOneWay block={block} way="across" />
      <SquaresOneWay block={block} way="down" />
      <SideOf block={block} way="across" />
      {rings.length > 0 ? (
        <span class="figure">{`${lengthSaid(block.down ?? 0)} ${words.height}`}</span>
      ) : (
        <SideOf block={block} way="down" />
      )}
      <Where block={block} />
    </div>
  );
}

/** Squares of a square block: as many down as across. */
function SquaresBothWays({ block }: { block: BlockModel }) {
  return (
    <Stepper
      what={words.blockSquares}
      value=""
      typed={{
        now: `${block.columns} × ${block.rows}`,
        after: words.blockSquares,
        take: (wish) => {
          const [wide = "", high = wide, ...more] = wish.split(/\s*[x×]\s*/i);
          const [columns, rows] = [countTyped(wide, MOST_SQUARES), countTyped(high, MOST_SQUARES)];
          if (columns !== null && rows !== null && more.length === 0) resize(block, columns, rows);
        },
      }}
      less={() => resize(block, block.columns - 1, block.rows - 1)}
      more={() => resize(block, block.columns + 1, block.rows + 1)}
    />
  );
}

/** How many squares a block has, how large it is finished, and where it stands. */
export function BlockFacts({ block }: { block: BlockModel }) {
  const size = block.across ?? 0;
  // Squares of a long block are counted each way; a square block keeps as many down as across.
  if (block.across !== block.down || block.columns !== block.rows) return <LongFacts block={block} />;
  const wide = 8 * rulerMark();
  const grow = (by: number) => {
    const next = Math.max(wide, Math.round(size / wide) * wide + by * wide);
    edit(
      (text) => sizeBlock(text, block.key, lengthText(next, state.model.value)),
      `${lengthSaid(next)} ${words.finished}.`,
    );
  };
  return (
    <div class="facts">
      <SquaresBothWays block={block} />
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
