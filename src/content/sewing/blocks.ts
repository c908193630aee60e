import { formatCutSize, formatLength } from "../../length/index.ts";
import type { BlockKind, JoinStep, Making, PressedSeam } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { aboutSize } from "../lengths.ts";
import { partNames, patchOfKind, unitNamed } from "./block-names.ts";
import { isOnFoundation } from "./foundation.ts";
import { joiningLines, lineOf, type ToldJoin } from "./joinings.ts";
import { indented, partsTold } from "./making-lines.ts";
import { designName } from "./making-pressing.ts";
import { pressesOf } from "./pressed.ts";

/** What is told of a block is read off its kinds and its joinings. */

/** Names of what is joined, alike ones counted: `rows 1 to 4`, `2 x U1a, C (sky)`. */
export function joinedTold(
  names: readonly string[],
  join: Pick<JoinStep, "takes" | "from" | "way">,
  words: Words,
): string {
  const sashed = withBetween(names, join, words);
  if (sashed !== null) return sashed;
  const line = join.way === "down" ? "row" : "column";
  const made = join.takes.every(({ of }) => of === "made");
  return made &&
    names.length > 2 &&
    join.from.every((part, i) => part.is === "line" && part.line === line && part.number === i + 1)
    ? words.blocks.rows(1, names.length, line)
    : partsTold(names);
}

/** `A, B, with C (sky sash) between them`: the same cloth at every other place; null where it is not so. */
function withBetween(
  names: readonly string[],
  { takes }: Pick<JoinStep, "takes">,
  words: Words,
): string | null {
  if (names.length < 5) return null;
  for (const first of [0, 1] as const) {
    const cloth = names.filter((_, i) => i % 2 === first);
    const others = names.filter((_, i) => i % 2 !== first);
    const isCloth = takes.every(
      (part, i) => i % 2 !== first || (part.of === "cloth" && part.place === "sash"),
    );
    const between = cloth[0];
    if (!isCloth || between === undefined || cloth.some((name) => name !== between)) continue;
    const ends = first === 0 && names.length % 2 === 1;
    if (first === 1 && names.length % 2 === 0) continue;
    return words.blocks.between(partsTold(others), between, ends);
  }
  return null;
}

function joinsOf(kind: BlockKind, making: Making, plan: Plan, words: Words): ToldJoin[] {
  const block = making.blocks[kind.making];
  if (block === undefined) return [];
  const { pressing, scale } = making;
  const seams: readonly PressedSeam[] =
    pressing?.blocks.find(({ design, variant }) => design === block.design && variant === kind.variant)
      ?.seams ?? [];
  const own = making.joins.filter(({ stage, design }) => stage === "block" && design === block.design);
  return own.map((join, i): ToldJoin => {
    const names = partNames(join, block.units, making, plan, words);
    const across = join.way === "across";
    const presses = pressing === null ? [] : pressesOf(join, seams, making);
    const whole = i === own.length - 1;
    const lined = whole
      ? { line: across ? ("column" as const) : ("row" as const), number: "" }
      : lineOf(join.makes);
    const parts = joinedTold(names, join, words);
    const sewn = aboutSize(join.size.across / scale, join.size.down / scale, plan, words);
    const { trim } = join;
    const size =
      trim === undefined
        ? sewn
        : words.blocks.trimmed(sewn, formatCutSize(trim.across / scale, trim.down / scale, plan.ruler));
    return {
      ...lined,
      makes: whole ? words.blocks.whole(kind.name) : words.blocks.made(join.makes),
      names,
      // Rows lie side by side, columns one below another: only what is otherwise is said.
      parts:
        (lined.line === "row") === across && lined.number !== ""
          ? parts
          : words.blocks.withWay(parts, across),
      press: words.blocks.pressed(presses, null, across ? "rows" : "columns"),
      size,
    };
  });
}

/** One name for another wherever it stands; null where one name stands for two. */
function replaced(names: readonly string[], other: readonly string[]): { of: string; take: string }[] | null {
  const found = new Map<string, string>();
  for (const [i, of] of other.entries()) {
    const take = names[i] ?? "";
    if ((found.get(of) ?? take) !== take) return null;
    found.set(of, take);
  }
  return [...found].filter(([of, take]) => of !== take).map(([of, take]) => ({ of, take }));
}

/** A kind sewn as one told before: only what differs is told. */
function likewise(
  kind: BlockKind,
  joins: readonly ToldJoin[],
  as: BlockKind,
  other: readonly ToldJoin[],
  words: Words,
): string {
  const instead = replaced(
    joins.flatMap(({ names }) => names),
    other.flatMap(({ names }) => names),
  );
  const rows = instead === null ? joins.filter(({ parts }, i) => parts !== other[i]?.parts) : [];
  const pressings = joins.flatMap((join, i) => {
    const { press, number, line, makes } = join;
    if (press.sentence === other[i]?.press.sentence) return [];
    const what =
      i === joins.length - 1
        ? words.blocks.lastSeams(joins.length === 1, line)
        : number === ""
          ? makes
          : words.blocks.linesTold([number], line);
    return [press.way === "" ? words.blocks.mapShows(what) : words.blocks.pressedSo(what, press.way)];
  });
  return words.blocks.likewise({
    name: kind.name,
    count: kind.count,
    as: as.name,
    instead: instead ?? [],
    rows: rows.map(({ makes, parts }) => words.blocks.madeOf(makes, parts)),
    pressings,
  });
}

/** Kinds of one design, or of designs that are sewn alike in other colours. */
function groupsOf(making: Making, plan: Plan, words: Words): BlockKind[][] {
  const groups = new Map<string, BlockKind[]>();
  for (const kind of making.kinds) {
    const design = making.blocks[kind.making]?.design ?? -1;
    const name = plan.top?.designs[design]?.name ?? "";
    const shapes = joinsOf(kind, making, plan, words).map(({ number, names, size }) => [
      number,
      names.length,
      size,
    ]);
    const key = JSON.stringify([name, shapes]);
    groups.set(key, [...(groups.get(key) ?? []), kind]);
  }
  return [...groups.values()];
}

function designsOf(kinds: readonly BlockKind[], making: Making): number[] {
  return [...new Set(kinds.map(({ making: at }) => making.blocks[at]?.design ?? -1))];
}

function titleOf(kinds: readonly BlockKind[], making: Making, plan: Plan, words: Words): string {
  const [design = -1, more] = designsOf(kinds, making);
  const name = more === undefined ? designName(plan, design) : (plan.top?.designs[design]?.name ?? "");
  return words.blocks.title(name, kinds);
}

/** Blocks that are told together: their designs, and a title with the lines under it. */
export interface ToldBlocks {
  designs: number[];
  lines: string[];
  /** For how many blocks each line to tick is done. */
  counts: number[];
}

/** Blocks kind by kind, and before them what goes for all: the first of a design in full, the others by what differs. */
export function toldBlocks(
  making: Making,
  plan: Plan,
  words: Words,
): { about: string[]; blocks: ToldBlocks[] } {
  const groups = groupsOf(making, plan, words);
  const sewn = groups.filter(([kind]) => kind !== undefined && joinsOf(kind, making, plan, words).length > 0);
  const isHeld = (kinds: readonly BlockKind[]): boolean =>
    designsOf(kinds, making).some((design) => isOnFoundation(making.foundation, design));
  const measured = sewn.some((kinds) => !isHeld(kinds));
  const about = [
    ...(sewn.length > 0 ? [words.blocks.frame] : []),
    ...(measured ? [words.blocks.checkBlock(formatLength(plan.ruler.mark, plan.ruler))] : []),
  ];
  const blocks = groups.map((kinds): ToldBlocks => {
    const designs = designsOf(kinds, making);
    const [first] = kinds;
    if (first === undefined) return { designs, lines: [], counts: [] };
    const joins = joinsOf(first, making, plan, words);
    if (joins.length === 0) return { designs, ...singleLines(kinds, making, plan, words) };
    const likeFirst = kinds.slice(1);
    const others = likeFirst.map(
      (kind) => `[ ] ${likewise(kind, joinsOf(kind, making, plan, words), first, joins, words)}`,
    );
    const { name = "" } = plan.top?.designs[designs[0] ?? -1] ?? {};
    const size = `${name} ${joins.at(-1)?.size ?? ""}`;
    const held = isHeld(kinds) ? [words.foundation.notSquared([size])] : [];
    const told = joiningLines(joins, words);
    const lines = indented([...told, ...others, ...held]);
    return {
      designs,
      lines: [titleOf(kinds, making, plan, words), ...lines, ""],
      counts: [...told.map(() => first.count), ...likeFirst.map(({ count }) => count)],
    };
  });
  return { about, blocks: blocks.filter(({ lines }) => lines.length > 0) };
}

/** The same as lines. */
export function kindLines(making: Making, plan: Plan, words: Words): string[] {
  const { about, blocks } = toldBlocks(making, plan, words);
  const told = blocks.flatMap(({ lines }) => lines);
  return about.length === 0 ? told : [words.blocks.aboutTitle, ...indented(about), "", ...told];
}

/** A block that is one unit has no seams of its own; only which unit it is is told. */
function singleLines(
  kinds: readonly BlockKind[],
  making: Making,
  plan: Plan,
  words: Words,
): Omit<ToldBlocks, "designs"> {
  const told = kinds.flatMap((kind) => {
    const [only, more] = making.blocks[kind.making]?.units ?? [];
    if (only === undefined || only === null || more !== undefined || patchOfKind(kind, making) !== null)
      return [];
    const drawn = plan.top?.designs[making.blocks[kind.making]?.design ?? -1]?.units[0]?.turn ?? null;
    const unit = unitNamed(only, { turn: 0, drawn }, making, plan, words);
    if (unit === null) return [];
    const { name, count } = kind;
    return [
      { line: kinds.length === 1 ? words.blocks.each(unit) : words.blocks.single(name, count, unit), count },
    ];
  });
  if (told.length === 0) return { lines: [], counts: [] };
  const pressed = kinds.some(({ variant }) => variant !== "") ? [words.blocks.inside] : [];
  return {
    lines: [
      titleOf(kinds, making, plan, words),
      ...indented([...told.map(({ line }) => `[ ] ${line}`), ...pressed]),
      "",
    ],
    counts: told.map(({ count }) => count),
  };
}
