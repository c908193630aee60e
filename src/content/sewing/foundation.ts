import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { FoldedLines, FoundationMaking } from "../../making/foundation-types.ts";
import type { Making } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { FoldedPart, FoundationPart, FoundationSeam, PiecedPart } from "../../quilt/foundation/types.ts";
import type { Words } from "../../words/index.ts";
import { bagOfPatch } from "./foundation-bags.ts";

function named({ per }: FoundationMaking, { letter }: FoundationPart, words: Words): string {
  return words.foundation.part(per, [letter]);
}

function cutLine(part: FoundationPart, foundation: FoundationMaking, plan: Plan, words: Words): string {
  const { cut, count } = part;
  const size = formatSize(cut.across * foundation.grid, cut.down * foundation.grid, plan.ruler);
  const squares = words.foundation.squares(cut.across, cut.down);
  return words.foundation.cut(count, foundation.fabric, squares, size, named(foundation, part, words));
}

function patchSaid(patch: PiecedPart["patches"][number], of: PiecedPart, plan: Plan, words: Words): string {
  const { unitNames } = words;
  const { unit, part, fabric, up } = patch;
  const plain = part === "patch" || part === unit;
  const print = plan.fabrics.find(({ name }) => name === fabric)?.print.kind ?? "none";
  const lies = up === null || print === "none" ? "" : words.foundation.lies(up, print);
  const bag = plan.making === undefined ? fabric : bagOfPatch(patch, of, plan.making, words);
  return `${plain ? unitNames.unit(unit) : `${unitNames.unit(unit)}, ${unitNames.part(part)}`}, ${bag}${lies}`;
}

/** Which blocks a part is for, where the others of their design have their prints lying otherwise. */
function forBlocks(part: PiecedPart, plan: Plan, words: Words): string[] {
  const told = new Set(
    part.places.flatMap(({ design, blockTurns }) =>
      blockTurns === null
        ? []
        : [words.foundation.forBlocks(plan.top?.designs[design]?.name ?? "", blockTurns)],
    ),
  );
  return [...told];
}

function runSaid({ x1, y1, x2, y2, slanting }: FoundationSeam, grid: Ticks, words: Words): string {
  const [across, down] = [Math.abs(x2 - x1) / grid, Math.abs(y2 - y1) / grid];
  const off = (place: Ticks): boolean => place % grid !== 0;
  if (slanting) return words.foundation.slanting(across, down, [x1, y1, x2, y2].some(off));
  return words.foundation.along(across + down, off(x1 === x2 ? x1 : y1));
}

function piecedLines(
  part: PiecedPart,
  foundation: FoundationMaking,
  seam: string,
  plan: Plan,
  words: Words,
): string[] {
  const [first] = part.patches;
  const lines = part.seams.map((one) => {
    const patch = part.patches[one.adds - 1];
    const toward = words.foundation.toward(one.toward.x, one.toward.y);
    const what = patch === undefined ? "" : patchSaid(patch, part, plan, words);
    return words.foundation.line({
      number: one.number,
      patch: one.adds,
      what,
      run: runSaid(one, foundation.grid, words),
      toward,
      crease: patch?.lay === "crease" ? seam : null,
    });
  });
  const squares = words.foundation.squares(part.finished.across, part.finished.down);
  return [
    `[ ] ${words.foundation.make(named(foundation, part, words), part.count, squares)}`,
    ...forBlocks(part, plan, words).map((line) => `    ${line}`),
    ...(first === undefined
      ? []
      : [`    ${words.foundation.first(patchSaid(first, part, plan, words), foundation.hold, seam)}`]),
    ...lines.map((line) => `    ${line}`),
    ...(part.count > 1 ? [`    ${words.foundation.chain}`] : []),
  ];
}

function foldedLines(
  part: FoldedPart,
  lines: FoldedLines | undefined,
  foundation: FoundationMaking,
  plan: Plan,
  words: Words,
): string[] {
  const { allowance, grid } = foundation;
  const laid = (sizes: readonly number[]) => sizes.map((size) => size + 2 * allowance);
  const say = (length: Ticks) => formatLength(length, plan.ruler);
  const finished = words.foundation.squares(part.finished.across, part.finished.down);
  const told = [
    words.foundation.lay(laid(part.columns), laid(part.rows)),
    words.foundation.laid(foundation.hold),
  ];
  if (lines !== undefined && lines.upright > 0) {
    const fold = say(allowance * grid);
    told.push(words.foundation.upright(lines.upright, allowance, fold, say(lines.uprightLength)));
    if (lines.level > 0) told.push(words.foundation.snip);
  }
  if (lines !== undefined && lines.level > 0) {
    told.push(words.foundation.level(lines.level, say(lines.levelLength)));
    if (lines.pins.length > 0) told.push(words.foundation.pins(lines.pins), words.foundation.tackFirst);
  }
  if (lines !== undefined) {
    const [across, down] = [part.finished.across + 2 * allowance, part.finished.down + 2 * allowance];
    const size = formatSize(lines.sewn.across, lines.sewn.down, plan.ruler);
    told.push(words.foundation.folded(words.foundation.squares(across, down), size));
  }
  return [
    `[ ] ${words.foundation.make(named(foundation, part, words), part.count, finished)}`,
    ...told.map((line) => `    ${line}`),
  ];
}

/** How much of the foundation lies beyond what is made on it: the same all round, but for parts that end half-way. */
function beyond(foundation: FoundationMaking, words: Words): string[] {
  const { allowance, parts } = foundation;
  const uneven = parts.filter(({ cut, finished }) =>
    [cut.across - finished.across, cut.down - finished.down].some((more) => more !== 2 * allowance),
  );
  const told = uneven.map((part) => {
    const { cut, finished } = part;
    const [right, below] = [cut.across - finished.across - allowance, cut.down - finished.down - allowance];
    return words.foundation.uneven(named(foundation, part, words), [allowance, right, allowance, below]);
  });
  return uneven.length === parts.length ? told : [words.foundation.allowance(allowance), ...told];
}

/** What is made on the foundation: what goes for all of it, each part, and what is done when they are made. */
export interface FoundationTold {
  title: string;
  before: string[];
  /** Lines of every part, in their order. */
  parts: string[][];
  after: string[];
}

/** The same told; null when nothing is made on a foundation. Lines to tick begin with a box. */
export function foundationTold(making: Making, plan: Plan, words: Words): FoundationTold | null {
  const { foundation } = making;
  if (foundation === null || foundation === undefined || foundation.parts.length === 0) return null;
  const { way, grid, per, hold, after, allowance, parts } = foundation;
  const seam = formatLength(making.seam, plan.ruler);
  const level = allowance * grid === making.seam;
  const pieced = way === "pieced";
  const finish = pieced
    ? [level ? words.foundation.neatenLevel : words.foundation.neaten(seam), words.foundation.join(seam)]
    : [];
  const stays = after === "torn away" ? words.foundation.tornAway : words.foundation.leftIn;
  return {
    title: words.foundation.title,
    before: [
      words.foundation.lead(way, formatLength(grid, plan.ruler), per),
      words.foundation.cautions(hold),
      ...(pieced && after === "torn away" ? [words.foundation.shortStitches] : []),
      ...(pieced ? [words.foundation.each(seam)] : []),
      ...parts.map((part) => `[ ] ${cutLine(part, foundation, plan, words)}`),
      ...(pieced ? beyond(foundation, words).map((line) => `    ${line}`) : []),
    ],
    parts: parts.map((part) =>
      part.kind === "pieced"
        ? piecedLines(part, foundation, seam, plan, words)
        : foldedLines(
            part,
            foundation.lines.find(({ letter }) => letter === part.letter),
            foundation,
            plan,
            words,
          ),
    ),
    after: [
      ...finish.map((line) => `[ ] ${line}`),
      `[ ] ${pieced ? stays : words.foundation.bulk}`,
      ...(pieced && after === "torn away" ? [`    ${words.foundation.tornPressing}`] : []),
      ...(pieced ? [words.foundation.settled] : []),
    ],
  };
}

/** What is made on the foundation, a title and then lines to tick off; empty when nothing is. */
export function foundationLines(making: Making, plan: Plan, words: Words): string[] {
  const told = foundationTold(making, plan, words);
  return told === null ? [] : [told.title, ...inOrder(told).map((line) => `  ${line}`), ""];
}

/** Every line of the work on a foundation, in the order of work. */
export const inOrder = ({ before, parts, after }: FoundationTold): string[] => [
  ...before,
  ...parts.flat(),
  ...after,
];

/** Whether a block, or parts of it, is made on the foundation. */
export function isOnFoundation(foundation: FoundationMaking | null, design: number): boolean {
  return (foundation?.parts ?? []).some((part) =>
    part.kind === "pieced"
      ? part.places.some((place) => place.design === design)
      : part.blocks.some((block) => block.design === design),
  );
}
