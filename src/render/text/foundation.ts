import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { FoldedLines, FoundationMaking } from "../../making/foundation-types.ts";
import type { Making } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { FoldedPart, FoundationPart, FoundationSeam, PiecedPart } from "../../quilt/foundation/types.ts";
import { bagOfPatch } from "./foundation-bags.ts";
import { foundationWords } from "./foundation-words.ts";

/** `motif A`. */
function named({ per }: FoundationMaking, { letter }: FoundationPart): string {
  return `${per} ${letter}`;
}

function cutLine(part: FoundationPart, foundation: FoundationMaking, plan: Plan): string {
  const { cut, count } = part;
  const size = formatSize(cut.across * foundation.grid, cut.down * foundation.grid, plan.ruler);
  const squares = foundationWords.squares(cut.across, cut.down);
  return foundationWords.cut(count, foundation.fabric, squares, size, named(foundation, part));
}

function patchSaid(patch: PiecedPart["patches"][number], of: PiecedPart, plan: Plan): string {
  const { unit, part, fabric, up } = patch;
  const plain = part === "patch" || part === unit;
  const print = plan.fabrics.find(({ name }) => name === fabric)?.print.kind ?? "none";
  const lies = up === null || print === "none" ? "" : foundationWords.lies(up, print);
  const bag = plan.making === undefined ? fabric : bagOfPatch(patch, of, plan.making);
  return `${plain ? unit : `${unit}, ${part}`}, ${bag}${lies}`;
}

/** Which blocks a part is for, where the others of their design have their prints lying otherwise. */
function forBlocks(part: PiecedPart, plan: Plan): string[] {
  const told = new Set(
    part.places.flatMap(({ design, blockTurns }) =>
      blockTurns === null
        ? []
        : [foundationWords.forBlocks(plan.top?.designs[design]?.name ?? "", blockTurns)],
    ),
  );
  return [...told];
}

function runSaid({ x1, y1, x2, y2, slanting }: FoundationSeam, grid: Ticks): string {
  const [across, down] = [Math.abs(x2 - x1) / grid, Math.abs(y2 - y1) / grid];
  const off = (place: Ticks): boolean => place % grid !== 0;
  if (slanting) return foundationWords.slanting(across, down, [x1, y1, x2, y2].some(off));
  return foundationWords.along(across + down, off(x1 === x2 ? x1 : y1));
}

function piecedLines(part: PiecedPart, foundation: FoundationMaking, seam: string, plan: Plan): string[] {
  const [first] = part.patches;
  const lines = part.seams.map((one) => {
    const patch = part.patches[one.adds - 1];
    const toward = foundationWords.toward(one.toward.x, one.toward.y);
    const what = patch === undefined ? "" : patchSaid(patch, part, plan);
    return foundationWords.line(
      one.number,
      one.adds,
      what,
      runSaid(one, foundation.grid),
      toward,
      patch?.lay === "crease" ? seam : null,
    );
  });
  const squares = foundationWords.squares(part.finished.across, part.finished.down);
  return [
    `[ ] ${foundationWords.make(named(foundation, part), part.count, squares)}`,
    ...forBlocks(part, plan).map((line) => `    ${line}`),
    ...(first === undefined
      ? []
      : [`    ${foundationWords.first(patchSaid(first, part, plan), foundation.hold, seam)}`]),
    ...lines.map((line) => `    ${line}`),
    ...(part.count > 1 ? [`    ${foundationWords.chain}`] : []),
  ];
}

function foldedLines(
  part: FoldedPart,
  lines: FoldedLines | undefined,
  foundation: FoundationMaking,
  plan: Plan,
): string[] {
  const { allowance, grid } = foundation;
  const laid = (sizes: readonly number[]) => sizes.map((size) => size + 2 * allowance);
  const say = (length: Ticks) => formatLength(length, plan.ruler);
  const beside = allowance === 1 ? "1 square" : `${allowance} squares`;
  const finished = foundationWords.squares(part.finished.across, part.finished.down);
  const told = [
    foundationWords.lay(laid(part.columns), laid(part.rows)),
    foundationWords.laid(foundation.hold),
  ];
  if (lines !== undefined && lines.upright > 0) {
    const fold = `${beside}, ${say(allowance * grid)}, from it`;
    told.push(foundationWords.upright(lines.upright, allowance, fold, say(lines.uprightLength)));
    if (lines.level > 0) told.push(foundationWords.snip);
  }
  if (lines !== undefined && lines.level > 0) {
    told.push(foundationWords.level(lines.level, say(lines.levelLength)));
    if (lines.pins.length > 0) told.push(foundationWords.pins(lines.pins), foundationWords.tackFirst);
  }
  if (lines !== undefined) {
    const [across, down] = [part.finished.across + 2 * allowance, part.finished.down + 2 * allowance];
    const size = formatSize(lines.sewn.across, lines.sewn.down, plan.ruler);
    told.push(foundationWords.folded(foundationWords.squares(across, down), size));
  }
  return [
    `[ ] ${foundationWords.make(named(foundation, part), part.count, finished)}`,
    ...told.map((line) => `    ${line}`),
  ];
}

/** How much of the foundation lies beyond what is made on it: the same all round, but for parts that end half-way. */
function beyond(foundation: FoundationMaking): string[] {
  const { allowance, parts } = foundation;
  const uneven = parts.filter(({ cut, finished }) =>
    [cut.across - finished.across, cut.down - finished.down].some((more) => more !== 2 * allowance),
  );
  const told = uneven.map((part) => {
    const { cut, finished } = part;
    const [right, below] = [cut.across - finished.across - allowance, cut.down - finished.down - allowance];
    return foundationWords.uneven(named(foundation, part), [allowance, right, allowance, below]);
  });
  return uneven.length === parts.length ? told : [foundationWords.allowance(allowance), ...told];
}

/** What is made on the foundation, a title and then lines to tick off; empty when nothing is. */
export function foundationLines(making: Making, plan: Plan): string[] {
  const { foundation } = making;
  if (foundation === null || foundation === undefined || foundation.parts.length === 0) return [];
  const { way, grid, per, hold, after, allowance, parts } = foundation;
  const seam = formatLength(making.seam, plan.ruler);
  const level = allowance * grid === making.seam;
  const pieced = way === "pieced";
  const made = parts.flatMap((part) =>
    part.kind === "pieced"
      ? piecedLines(part, foundation, seam, plan)
      : foldedLines(
          part,
          foundation.lines.find(({ letter }) => letter === part.letter),
          foundation,
          plan,
        ),
  );
  const finish = pieced
    ? [level ? foundationWords.neatenLevel : foundationWords.neaten(seam), foundationWords.join(seam)]
    : [];
  const stays = after === "torn away" ? foundationWords.tornAway : foundationWords.leftIn;
  return [
    foundationWords.title,
    ...[
      foundationWords.lead(way, formatLength(grid, plan.ruler), per),
      foundationWords.cautions(hold),
      ...(pieced && after === "torn away" ? [foundationWords.shortStitches] : []),
      ...(pieced ? [foundationWords.each(seam)] : []),
      ...parts.map((part) => `[ ] ${cutLine(part, foundation, plan)}`),
      ...(pieced ? beyond(foundation).map((line) => `    ${line}`) : []),
      ...made,
      ...finish.map((line) => `[ ] ${line}`),
      `[ ] ${pieced ? stays : foundationWords.bulk}`,
      ...(pieced && after === "torn away" ? [`    ${foundationWords.tornPressing}`] : []),
      ...(pieced ? [foundationWords.settled] : []),
    ].map((line) => `  ${line}`),
    "",
  ];
}

/** Whether a block, or parts of it, is made on the foundation. */
export function isOnFoundation(foundation: FoundationMaking | null, design: number): boolean {
  return (foundation?.parts ?? []).some((part) =>
    part.kind === "pieced"
      ? part.places.some((place) => place.design === design)
      : part.blocks.some((block) => block.design === design),
  );
}
