import { formatSize } from "../../length/index.ts";
import type { BlockKind, JoinStep, Making, PressedSeam, RawSize } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { kindNamed, partNames, patchOfKind, unitNamed } from "./block-names.ts";
import { blockWords } from "./block-words.ts";
import { indented, partsTold } from "./making-lines.ts";
import { designName } from "./making-pressing.ts";
import { pressesOf } from "./pressed.ts";

/** What is told of a block is read off its kinds and its joinings. */

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

interface ToldJoin {
  makes: string;
  parts: string;
  across: boolean;
  press: string;
  size: string;
  /** How many parts, and from what: alike for kinds that are sewn alike. */
  shape: string;
}

/** Parts in a row told shortly: `rows 1 to 4`. */
function madeTold(names: readonly string[], join: JoinStep): string {
  const line = join.way === "down" ? "row" : "column";
  const made = names.every((part, i) => part === `${line} ${i + 1}`);
  return made && names.length > 2 ? blockWords.rows(1, names.length, line) : partsTold(names);
}

function joinsOf(kind: BlockKind, making: Making, plan: Plan): ToldJoin[] {
  const block = making.blocks[kind.making];
  if (block === undefined) return [];
  const seams: PressedSeam[] =
    making.pressing?.blocks.find(({ design, variant }) => design === block.design && variant === kind.variant)
      ?.seams ?? [];
  const size = ({ across, down }: RawSize): string =>
    formatSize(Math.round(across / making.scale), Math.round(down / making.scale), plan.ruler);
  const own = making.joins.filter(({ stage, design }) => stage === "block" && design === block.design);
  return own.map((join, i) => {
    const names = partNames(join, block.units, making, plan);
    const presses = making.pressing === null ? [] : pressesOf(join, seams, making);
    return {
      makes: i === own.length - 1 ? blockWords.whole(kind.name) : capital(join.makes),
      parts: madeTold(names, join),
      across: join.way === "across",
      press: blockWords.pressed(presses, null, join.way === "across" ? "rows" : "columns"),
      size: size(join.size),
      shape: JSON.stringify([
        i === own.length - 1 ? "" : join.makes,
        join.way,
        names.length,
        size(join.size),
      ]),
    };
  });
}

/** A kind sewn as one told before: only what differs is told. */
function likewise(kind: BlockKind, joins: readonly ToldJoin[], as: BlockKind, other: readonly ToldJoin[]) {
  const rows = joins.filter(({ parts }, i) => parts !== other[i]?.parts);
  const turned = joins.filter(({ press }, i) => press !== other[i]?.press);
  return blockWords.likewise(
    kind.name,
    kind.count,
    as.name,
    rows.map(({ makes, parts }) => blockWords.made(makes === `Block ${kind.name}` ? "all" : makes, parts)),
    turned.map(({ makes, press }) =>
      blockWords.pressedSo(makes === `Block ${kind.name}` ? "the last seams" : makes, press),
    ),
  );
}

/** Kinds of one design, or of designs that are sewn alike in other colours. */
function groupsOf(making: Making, plan: Plan): BlockKind[][] {
  const groups = new Map<string, BlockKind[]>();
  for (const kind of making.kinds) {
    const design = making.blocks[kind.making]?.design ?? -1;
    const name = plan.top?.designs[design]?.name ?? "";
    const shapes = joinsOf(kind, making, plan).map(({ shape }) => shape);
    const key = JSON.stringify([name, shapes]);
    groups.set(key, [...(groups.get(key) ?? []), kind]);
  }
  return [...groups.values()];
}

function titleOf(kinds: readonly BlockKind[], making: Making, plan: Plan): string {
  const designs = new Set(kinds.map(({ making: at }) => making.blocks[at]?.design ?? -1));
  const [design = -1] = designs;
  const name = designs.size === 1 ? designName(plan, design) : (plan.top?.designs[design]?.name ?? "");
  return blockWords.title(name, kinds);
}

/** Blocks kind by kind: the first of a design in full, the others by what differs. */
export function kindLines(making: Making, plan: Plan): string[] {
  return groupsOf(making, plan).flatMap((kinds) => {
    const [first] = kinds;
    if (first === undefined) return [];
    const joins = joinsOf(first, making, plan);
    if (joins.length === 0) return singleLines(kinds, making, plan);
    const lines = joins.map(
      ({ makes, parts, across, press, size }) => `[ ] ${blockWords.join(makes, parts, across, press, size)}`,
    );
    const others = kinds
      .slice(1)
      .map((kind) => `[ ] ${likewise(kind, joinsOf(kind, making, plan), first, joins)}`);
    return [titleOf(kinds, making, plan), ...indented([blockWords.frame, ...lines, ...others]), ""];
  });
}

/** A block that is one unit has no seams of its own; only which unit it is is told. */
function singleLines(kinds: readonly BlockKind[], making: Making, plan: Plan): string[] {
  const told = kinds.flatMap((kind) => {
    const [only] = making.blocks[kind.making]?.units ?? [];
    if (only === undefined || only === null || patchOfKind(kind, making) !== null) return [];
    const unit = unitNamed(only, 0, making, plan);
    return unit === null ? [] : [blockWords.single(kindNamed(kind, making, plan), kind.count, unit)];
  });
  return told.length === 0
    ? []
    : [titleOf(kinds, making, plan), ...indented(told.map((line) => `[ ] ${capital(line)}`)), ""];
}
