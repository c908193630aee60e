import { formatLength } from "../../length/index.ts";
import type { JoinStep, Making, RawSize } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { unitNamed } from "./block-names.ts";
import { kindLines } from "./blocks.ts";
import { foundationLines } from "./foundation.ts";
import { foundationWords } from "./foundation-words.ts";
import { ownKitLines } from "./kits.ts";
import { aboutSize } from "./lengths.ts";
import { borderLines } from "./making-borders.ts";
import { finishingLines } from "./making-finishing.ts";
import { indented, longLength, partsTold } from "./making-lines.ts";
import { designName, pressingLines } from "./making-pressing.ts";
import { makingWords } from "./making-words.ts";
import { ownPieces, partsOver } from "./over.ts";
import { topLines } from "./rows.ts";
import { withTables } from "./table-lines.ts";
import { unitGroups } from "./unit-groups.ts";
import { unitGroupLines } from "./unit-told.ts";
import { unitWords } from "./unit-words.ts";
import { wrapLine } from "./wrap-line.ts";

function joinTold(join: JoinStep, makes: string, making: Making, plan: Plan): string {
  const size = ({ across, down }: RawSize): string =>
    aboutSize(across / making.scale, down / making.scale, plan);
  const told = makingWords.join(makes, partsTold(join.from), join.seams, size(join.size));
  return join.trim === undefined ? told : makingWords.trimmed(told, size(join.trim));
}

/** What goes for all units, before the first. */
export function unitsAbout(making: Making, plan: Plan): string[] {
  const groups = unitGroups(plan);
  const sewn = making.units.filter(({ steps }) => steps.length > 0);
  const directed = sewn.some(({ heaps }) => heaps.some(({ prints }) => Object.keys(prints).length > 0));
  const trimmed = sewn.some(({ steps }) => steps.some((step) => step.do === "trim"));
  const cut = sewn.some(({ steps }) => steps.some((step) => CUT_ONCE_SEWN.has(step.do)));
  return [
    makingWords.unitsAbout,
    ...(directed ? [makingWords.heads] : []),
    makingWords.beforeTrimming(formatLength(making.seam, plan.ruler), trimmed),
    ...(cut ? [makingWords.cutSewn] : []),
    ...(groups.some(({ units }) => units.length > 1) ? [unitWords.group.alike] : []),
  ];
}

/** The units, after what goes for all of them. */
export function unitLines(making: Making, plan: Plan): string[] {
  const blocks = unitGroups(plan).map((group) => unitGroupLines(group, plan));
  if (blocks.length === 0) return [];
  return [
    makingWords.unitsTitle,
    ...indented([...unitsAbout(making, plan), ...blocks.flat(), ...partsOver(plan)]),
    "",
  ];
}

/** Steps in which what is sewn is cut again. */
const CUT_ONCE_SEWN: ReadonlySet<string> = new Set([
  "pair",
  "cross-pair",
  "small-on-large",
  "flip",
  "strip-set",
]);

/** Blocks kind by kind, then those that need a seam sewn in part first. */
export function blockLines(making: Making, plan: Plan): string[] {
  return [...kindLines(making, plan), ...partialLines(making, plan)];
}

/** Blocks that need a seam sewn in part first. */
export function partialLines(making: Making, plan: Plan): string[] {
  return making.partial.flatMap(({ design, order, divides }) => {
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
    return [
      title,
      ...indented([...whorlParts(design, making, plan), ...steps.map((step) => `[ ] ${step}`)]),
      "",
    ];
  });
}

/** The units of a block that has no rows, by their heaps, kind by kind. */
function whorlParts(design: number, making: Making, plan: Plan): string[] {
  const units = plan.top?.designs[design]?.units ?? [];
  return making.kinds
    .filter((kind) => making.blocks[kind.making]?.design === design)
    .map((kind) => {
      const own = making.blocks[kind.making]?.units ?? [];
      const names = own.map((place, unit) =>
        place === null ? (units[unit]?.kind ?? "") : (unitNamed(place, 0, making, plan) ?? ""),
      );
      return makingWords.whorlParts(kind.name, kind.count, names);
    });
}

/** Parts of several units that are sewn before they are laid on a foundation. */
export function partLines(making: Making, plan: Plan): string[] {
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
  const lines = [
    makingWords.title(plan.name, plan.kits ?? 1),
    "",
    `${makingWords.cautionsTitle}:`,
    ...indented(makingWords.cautions),
    "",
    makingWords.estimates,
    ...amountLines(making, plan),
    "",
    ...ownKitLines(plan),
    ...unitLines(making, plan),
    ...onFoundationAndBlocks(making, plan),
    ...topLines(making, plan),
    ...(pressing === null ? [] : [makingWords.pressTitle, ...indented(pressingLines(pressing, plan)), ""]),
    ...borderLines(making, plan),
    ...finishingLines(making, plan),
    ...indented(ownPieces(plan)),
  ];
  return withTables(lines)
    .flatMap(({ line, row }) => (row ? [line] : wrapLine(line)))
    .join("\n");
}
