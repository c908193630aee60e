import type { KitsAlike } from "../../choices/kits/kits.ts";
import { formatLength } from "../../length/index.ts";
import type { JoinStep, Making, RawSize } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { kitLines, ownKitLines, sortName } from "../buying/kits.ts";
import { ownPieces, partsOver } from "../cutting/over.ts";
import { foundationPartName, foundationPartsOf } from "../foundation-part.ts";
import { aboutSize } from "../lengths.ts";
import { withTables } from "../lines/table-lines.ts";
import { wrapLine } from "../lines/wrap-line.ts";
import { unitNamed } from "./block-names.ts";
import { kindLines } from "./blocks.ts";
import { forMakers } from "./for-makers.ts";
import { foundationLines } from "./foundation.ts";
import { borderLines } from "./making-borders.ts";
import { finishingLines } from "./making-finishing.ts";
import { indented, longLength, partsTold } from "./making-lines.ts";
import { designName, pressingLines } from "./making-pressing.ts";
import { topLines } from "./rows.ts";
import { unitGroups } from "./unit-groups.ts";
import { unitGroupLines } from "./unit-told.ts";

function joinTold(join: JoinStep, makes: string, making: Making, plan: Plan, words: Words): string {
  const size = ({ across, down }: RawSize): string =>
    aboutSize(across / making.scale, down / making.scale, plan, words);
  const trim = join.trim === undefined ? null : size(join.trim);
  return words.making.join(
    makes,
    partsTold(join.from.map(words.blocks.named)),
    join.seams,
    size(join.size),
    trim,
  );
}

/** What goes for all units, before the first. */
export function unitsAbout(making: Making, plan: Plan, words: Words): string[] {
  const groups = unitGroups(plan, words);
  const sewn = making.units.filter(({ steps }) => steps.length > 0);
  const directed = sewn.some(({ heaps }) => heaps.some(({ prints }) => Object.keys(prints).length > 0));
  const trimmed = sewn.some(({ steps }) => steps.some((step) => step.do === "trim"));
  const cut = sewn.some(({ steps }) => steps.some((step) => CUT_ONCE_SEWN.has(step.do)));
  return [
    words.making.unitsAbout,
    ...(directed ? [words.making.heads] : []),
    words.making.beforeTrimming(formatLength(making.seam, plan.ruler), trimmed),
    ...(cut ? [words.making.cutSewn] : []),
    ...(groups.some(({ units }) => units.length > 1) ? [words.units.group.alike] : []),
  ];
}

/** The units, after what goes for all of them. */
function unitLines(making: Making, plan: Plan, words: Words): string[] {
  const blocks = unitGroups(plan, words).map((group) => unitGroupLines(group, plan, words));
  if (blocks.length === 0) return [];
  return [
    words.making.unitsTitle,
    ...indented([...unitsAbout(making, plan, words), ...blocks.flat(), ...partsOver(plan, words)]),
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
function blockLines(making: Making, plan: Plan, words: Words): string[] {
  return [...kindLines(making, plan, words), ...partialLines(making, plan, words)];
}

/** The same as lines. */
export function partialLines(making: Making, plan: Plan, words: Words): string[] {
  return partialTold(making, plan, words).flatMap(({ lines }) => lines);
}

/** Blocks that need a seam sewn in part first: a title, then the lines under it. */
export function partialTold(making: Making, plan: Plan, words: Words): { design: number; lines: string[] }[] {
  return making.partial.map(({ design, order, divides }) => {
    const units = plan.top?.designs[design]?.units ?? [];
    const where = divides.map(({ unit, way, at }) => {
      const { kind = "", column = 0, row = 0 } = units[unit] ?? {};
      return words.making.divide(kind, column + 1, row + 1, formatLength(at, plan.ruler), way === "upright");
    });
    const [first, second, ...others] = order ?? [];
    const steps =
      first === undefined || second === undefined
        ? [words.making.partialGeneric]
        : [
            words.making.partialFirst(first, second),
            ...[second, ...others].map((side) => words.making.partialNext(side)),
            words.making.partialClose(first),
          ];
    const title = words.making.partial(designName(plan, design), where);
    const told = [...whorlParts(design, making, plan, words), ...steps.map((step) => `[ ] ${step}`)];
    return { design, lines: [title, ...indented(told), ""] };
  });
}

/** The units of a block that has no rows, by their heaps, kind by kind. */
function whorlParts(design: number, making: Making, plan: Plan, words: Words): string[] {
  const units = plan.top?.designs[design]?.units ?? [];
  return making.kinds
    .filter((kind) => making.blocks[kind.making]?.design === design)
    .map((kind) => {
      const own = making.blocks[kind.making]?.units ?? [];
      const laid = own.map((_, unit) =>
        foundationPartName(foundationPartsOf(design, unit, making), making, words),
      );
      const names = own.map((place, unit) => {
        const unturned = { turn: 0, drawn: null };
        const named = laid[unit] ?? (place === null ? null : unitNamed(place, unturned, making, plan, words));
        return named ?? words.unitNames.unit(units[unit]?.kind ?? "");
      });
      // Several units that lie on one piece of foundation are one part.
      const parts = names.filter((name, unit) => laid[unit] === null || names.indexOf(name) === unit);
      return words.making.whorlParts(kind.name, kind.count, parts);
    });
}

/** Parts of several units that are sewn before they are laid on a foundation. */
export function partLines(making: Making, plan: Plan, words: Words): string[] {
  const lines = making.joins
    .filter(({ stage }) => stage === "unit")
    .map(
      (join) =>
        `[ ] ${joinTold(join, words.making.block(words.blocks.named(join.makes), join.count), making, plan, words)}`,
    );
  return lines.length === 0 ? [] : [words.foundation.partsTitle, ...indented(lines), ""];
}

/** Patches go onto a foundation before blocks are joined; parts are sewn before they are laid on one. */
function onFoundationAndBlocks(making: Making, plan: Plan, words: Words): string[] {
  const [laid, blocks] = [foundationLines(making, plan, words), blockLines(making, plan, words)];
  return [...partLines(making, plan, words), ...laid, ...blocks];
}

/** The amounts before the steps: seam allowance, seams and thread, with the rules they come from. */
function amountLines(making: Making, plan: Plan, words: Words): string[] {
  const { totals, thread, quilting } = making;
  const { by, lines, spacing, told, stitched, length, perLine, wastePercent } = quilting;
  const line = words.making.quilting(by, lines, formatLength(spacing, plan.ruler), told);
  const rule = words.making.quiltingRule(by, words.making.times(perLine), wastePercent);
  return [
    words.making.seam(formatLength(making.seam, plan.ruler)),
    words.making.total(longLength(totals.total, plan), totals.seams),
    words.making.thread(
      longLength(thread.length, plan),
      words.making.times(thread.perSeam),
      thread.wastePercent,
    ),
    words.making.quiltingThread(line, longLength(stitched, plan), longLength(length, plan), rule),
  ];
}

/** The sewing as a handout in text: units, blocks, rows, borders, pressing; empty for a plain cut list. */
export function makingSteps(plan: Plan, words: Words): string {
  const { kits = 1 } = plan;
  // Of kits it is the paper of a pupil.
  const told = kits === 1 ? words : forMakers(words);
  return sewingLines(plan, words.making.title(plan.name, kits), ownKitLines(plan, words), told);
}

/** The same for one who has a kit of a class of several sorts: what it holds, and its sewing. */
export function kitSteps(kit: KitsAlike, index: number, words: Words): string {
  const { dealt } = kit;
  const title = words.making.title(`${dealt.name}, ${sortName(kit, index, words)}`, 1);
  return sewingLines(dealt, title, kitLines(dealt.fabrics, dealt.ruler, words), forMakers(words));
}

function sewingLines(plan: Plan, title: string, kit: readonly string[], words: Words): string {
  const { making } = plan;
  if (making === undefined) return "";
  const { pressing } = making;
  const lines = [
    title,
    "",
    `${words.making.cautionsTitle}:`,
    ...indented(words.making.cautions),
    "",
    words.making.estimates,
    ...amountLines(making, plan, words),
    "",
    ...kit,
    ...unitLines(making, plan, words),
    ...onFoundationAndBlocks(making, plan, words),
    ...topLines(making, plan, words),
    ...(pressing === null
      ? []
      : [words.making.pressTitle, ...indented(pressingLines(pressing, plan, words)), ""]),
    ...borderLines(making, plan, words),
    ...finishingLines(making, plan, words),
    ...indented(ownPieces(plan, words)),
  ];
  return withTables(lines)
    .flatMap(({ line, row }) => (row ? [line] : wrapLine(line)))
    .join("\n");
}
