import { formatLength, type Ticks } from "../../length/index.ts";
import type { JoinStep, Making, RawSize } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { foundationLines, isOnFoundation } from "./foundation.ts";
import { foundationWords } from "./foundation-words.ts";
import { aboutLength, aboutSize } from "./lengths.ts";
import { borderLines } from "./making-borders.ts";
import { finishingLines } from "./making-finishing.ts";
import { indented, longLength, measured, measuredSize, partsTold } from "./making-lines.ts";
import { designName, pressingLines } from "./making-pressing.ts";
import { makingWords } from "./making-words.ts";
import { unitRecordLines } from "./units.ts";
import { wrapLine } from "./wrap-line.ts";

function joinTold(join: JoinStep, makes: string, making: Making, plan: Plan): string {
  const size = ({ across, down }: RawSize): string =>
    aboutSize(across / making.scale, down / making.scale, plan);
  const length = aboutLength(join.seamLength, plan);
  const told = makingWords.join(makes, partsTold(join.from), join.seams, length, size(join.size));
  return join.trim === undefined ? told : makingWords.trimmed(told, size(join.trim));
}

export function unitLines(making: Making, plan: Plan): string[] {
  const blocks = making.units.map((unit) => unitRecordLines(unit, plan)).filter((lines) => lines.length > 0);
  return blocks.length === 0 ? [] : [makingWords.unitsTitle, ...indented(blocks.flat()), ""];
}

/** Blocks sewn alike in different colours are told together. */
export function blockLines(making: Making, plan: Plan): string[] {
  const bySteps = new Map<string, { designs: Map<number, number>; lines: string[] }>();
  const designs = new Map<number, JoinStep[]>();
  for (const join of making.joins) {
    if (join.design === null || join.stage !== "block") continue;
    designs.set(join.design, [...(designs.get(join.design) ?? []), join]);
  }
  for (const [design, joins] of designs) {
    const { name = "" } = plan.top?.designs[design] ?? {};
    const lines = joins.map((join) => joinTold(join, join.makes, making, plan));
    const key = `${name}\n${lines.join("\n")}`;
    const group = bySteps.get(key) ?? { designs: new Map(), lines };
    group.designs.set(design, joins[0]?.count ?? 0);
    bySteps.set(key, group);
  }
  const partial = making.partial.flatMap(({ design, order, divides }) => {
    const units = plan.top?.designs[design]?.units ?? [];
    const where = divides.map(({ unit, way, at }) => {
      const { kind = "", column = 0, row = 0 } = units[unit] ?? {};
      return makingWords.divide(kind, column + 1, row + 1, formatLength(at, plan.ruler), way === "upright");
    });
    const [first, second, ...others] = order ?? [];
    const steps =
      first === undefined || second === undefined
        ? [makingWords.partialGeneric]
        : [
            makingWords.partialFirst(first, second),
            ...[second, ...others].map((side) => makingWords.partialNext(side)),
            makingWords.partialClose(first),
          ];
    const title = makingWords.partial(designName(plan, design), where);
    return [title, ...indented(steps.map((step) => `[ ] ${step}`)), ""];
  });
  return [
    ...[...bySteps.values()].flatMap(({ designs: own, lines }) => {
      const names = [...own].map(([design, count]) => makingWords.block(designName(plan, design), count));
      return [makingWords.blockTitle(names.join(", ")), ...indented(lines.map((line) => `[ ] ${line}`)), ""];
    }),
    ...partial,
  ];
}

/** Parts of several units that are sewn before they are laid on a foundation. */
function partLines(making: Making, plan: Plan): string[] {
  const lines = making.joins
    .filter(({ stage }) => stage === "unit")
    .map((join) => `[ ] ${joinTold(join, makingWords.block(join.makes, join.count), making, plan)}`);
  return lines.length === 0 ? [] : [foundationWords.partsTitle, ...indented(lines), ""];
}

/** Patches go onto a foundation before blocks are joined; parts are sewn before they are laid on one. */
export function onFoundationAndBlocks(making: Making, plan: Plan): string[] {
  const [laid, blocks] = [foundationLines(making, plan), blockLines(making, plan)];
  return [...partLines(making, plan), ...laid, ...blocks];
}

/** Rows on point with their sizes, how they are joined, and the corners. */
function diagonalLines(making: Making, plan: Plan): string[] {
  const { diagonal, square, seam } = making;
  const say = (length: Ticks): string => measured(length, plan);
  const end = (what: "side" | "corner"): string =>
    what === "side" ? makingWords.sideTriangle : makingWords.corner;
  const rows = diagonal.map(({ row, from, ends, upper, lower }) => {
    const parts = partsTold([end(ends[0]), ...from, end(ends[1])]);
    return `[ ] ${makingWords.diagonalRow(row, parts, say(upper), say(lower))}`;
  });
  const { across, down } = making.borders[0]?.before ?? square;
  const size = measuredSize(across, down, plan);
  return [
    makingWords.diagonalTitle,
    ...indented([
      makingWords.diagonalAbout(say(diagonal[0]?.high ?? 0)),
      makingWords.triangles,
      ...rows,
      `[ ] ${makingWords.diagonalJoin(diagonal.length)}`,
      `[ ] ${makingWords.diagonalCorners}`,
      `[ ] ${makingWords.diagonalSquare(size, formatLength(seam, plan.ruler))}`,
    ]),
    "",
  ];
}

/** Rows of the top; rows sewn alike are told once. */
export function topLines(making: Making, plan: Plan): string[] {
  if (making.diagonal.length > 0) return diagonalLines(making, plan);
  const joins = making.joins.filter(({ stage }) => stage === "top");
  const alike = new Map<string, { join: JoinStep; rows: string[] }>();
  for (const join of joins) {
    const row = /^(?:row|column) (\d+)$/.exec(join.makes)?.[1];
    const key = joinTold(join, row === undefined ? join.makes : "", making, plan);
    const group = alike.get(key) ?? { join, rows: [] };
    if (row !== undefined) group.rows.push(row);
    alike.set(key, group);
  }
  const lines = [...alike.values()].map(({ join, rows }) => {
    const line = joins.at(-1)?.way === "across" ? "column" : "row";
    const from = join.from.every((part, i) => part === `${line} ${i + 1}`)
      ? [`${line}s 1 to ${join.from.length}`]
      : join.from;
    const makes = rows.length === 0 ? join.makes : makingWords.sameRows(rows, line);
    return `[ ] ${joinTold({ ...join, from }, makes, making, plan)}`;
  });
  return lines.length === 0 ? [] : [makingWords.rowsTitle, ...indented(lines), ""];
}

/** What is trimmed to which size, what only neatened, and how the top is checked. */
export function trimLines(making: Making, plan: Plan): string[] {
  const size = (across: Ticks, down: Ticks): string => measuredSize(across, down, plan);
  const sewn = making.units.filter(({ steps }) => steps.length > 0);
  const trimmed = sewn.filter((unit) => unit.trimmed);
  const neat = sewn.filter((unit) => !unit.trimmed);
  const blocks = new Map<string, string>();
  const kept = new Map<string, string>();
  for (const { design, makes, size: sewn, trim: raw = sewn, stage } of making.joins) {
    if (stage !== "block" || design === null || makes !== plan.top?.designs[design]?.name) continue;
    const told = size(raw.across / making.scale, raw.down / making.scale);
    if (isOnFoundation(making.foundation, design)) {
      kept.set(makes, makingWords.squareBlockSize(makes, told));
      continue;
    }
    blocks.set(makes, makingWords.squareBlockSize(makes, told));
  }
  const { across, down, diagonal } = making.square;
  return [
    makingWords.trimTitle,
    ...indented([
      ...(trimmed.length === 0
        ? []
        : [
            makingWords.trimUnits([
              ...new Set(
                trimmed.map(({ text, raw }) => makingWords.trimUnit(text, size(raw.across, raw.along))),
              ),
            ]),
          ]),
      ...(neat.length === 0 ? [] : [makingWords.neaten([...new Set(neat.map(({ text }) => text))])]),
      ...(blocks.size === 0
        ? []
        : [makingWords.squareBlock([...blocks.values()], formatLength(plan.ruler.mark, plan.ruler))]),
      ...(kept.size === 0 ? [] : [foundationWords.notSquared([...kept.values()])]),
      makingWords.keepPoints(formatLength(making.seam, plan.ruler)),
      makingWords.squareTop(size(across, down), measured(diagonal, plan)),
    ]),
    "",
  ];
}

/** The amounts before the steps: seam allowance, seams and thread, with the rules they come from. */
export function amountLines(making: Making, plan: Plan): string[] {
  const { totals, thread, quilting } = making;
  const { by, lines, spacing, told, stitched, length, perLine, wastePercent } = quilting;
  const line = makingWords.quilting(by, lines, formatLength(spacing, plan.ruler), told);
  const rule = makingWords.quiltingRule(by, makingWords.times(perLine), wastePercent);
  return [
    makingWords.seam(formatLength(making.seam, plan.ruler)),
    makingWords.total(longLength(totals.total, plan), totals.seams),
    makingWords.thread(
      longLength(thread.length, plan),
      makingWords.times(thread.perSeam),
      thread.wastePercent,
    ),
    makingWords.quiltingThread(line, longLength(stitched, plan), longLength(length, plan), rule),
  ];
}

/** The sewing as a handout in text: units, blocks, rows, borders, pressing; empty for a plain cut list. */
export function makingSteps(plan: Plan): string {
  const { making } = plan;
  if (making === undefined) return "";
  const { pressing } = making;
  return [
    makingWords.title(plan.name),
    "",
    `${makingWords.cautionsTitle}:`,
    ...indented(makingWords.cautions),
    "",
    makingWords.estimates,
    ...amountLines(making, plan),
    "",
    ...unitLines(making, plan),
    ...onFoundationAndBlocks(making, plan),
    ...topLines(making, plan),
    ...borderLines(making, plan),
    ...trimLines(making, plan),
    ...(pressing === null ? [] : [makingWords.pressTitle, ...indented(pressingLines(pressing, plan)), ""]),
    ...finishingLines(making, plan),
  ]
    .flatMap((line) => wrapLine(line))
    .join("\n");
}
