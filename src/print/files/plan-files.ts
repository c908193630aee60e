import type { PatternSize } from "../../content/book/pattern.ts";
import { buyList, cuttingSteps, makingSteps, wasteTable } from "../../content/index.ts";
import {
  drawBlocks,
  drawFabric,
  drawFoundation,
  drawSewing,
  drawTemplate,
  drawTop,
  drawUnitSteps,
} from "../../draw/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { PatternSpec } from "../../spec/pattern-types.ts";
import type { Words } from "../../words/index.ts";
import { buyCsv, cutsCsv } from "../csv/index.ts";
import { unitsCsv } from "../csv/units.ts";
import { bookPage, pageOf, patternOf } from "../index.ts";
import { fileNamePart } from "./file-name.ts";

/** What a pattern is made of besides the plan. */
export interface PatternSource {
  told: PatternSpec;
  sizes: PatternSize[];
}

function numbered(what: string, index: number, name: string): string {
  return `${[what, String(index + 1), fileNamePart(name)].filter((part) => part !== "").join("-")}.svg`;
}

/** Drawings under the names of their files. */
const named = <T>(all: readonly T[], name: (one: T, i: number) => string, svg: (one: T) => string) =>
  Object.fromEntries(all.map((one, i) => [name(one, i), svg(one)]));

/**
 * Every file of a plan but `plan.json`, by name: its bench book, the pattern of a quilt, lists and steps as text, tables, a
 * drawing for each fabric. The command line and the page hand out the same.
 */
export function planFiles(plan: Plan, words: Words, pattern: PatternSource | null): Record<string, string> {
  const { top, making, fabrics, ruler } = plan;
  const foundation = making?.foundation ?? null;
  const sewn = top !== null && making !== undefined;
  const steps = sewn ? drawUnitSteps(top, making, fabrics, ruler, words) : [];
  const units = unitsCsv(plan, words);
  return {
    "book.html": bookPage(plan, words),
    ...(pattern === null
      ? {}
      : { "pattern.html": pageOf(patternOf(plan, pattern.told, words, pattern.sizes), words) }),
    "buy.txt": buyList(plan, words),
    "buy.csv": buyCsv(plan, words),
    "steps.txt": cuttingSteps(plan, true, words),
    ...(making === undefined ? {} : { "sewing.txt": makingSteps(plan, words) }),
    ...(top === null ? {} : { "top.svg": drawTop(top, fabrics, ruler, words) }),
    ...named(
      drawBlocks(plan, false, words),
      ({ name }, i) => numbered("block", i, name),
      ({ svg }) => svg,
    ),
    ...named(
      plan.templates ?? [],
      ({ name }) => `template-${name.toLowerCase()}.svg`,
      (template) => drawTemplate(plan, template, words),
    ),
    ...named(
      top === null || foundation === null ? [] : drawFoundation(foundation, top, fabrics, ruler, words),
      (_, i) => numbered("foundation", i, ""),
      (svg) => svg,
    ),
    ...named(
      steps,
      (_, i) => (steps.length === 1 ? "units.svg" : `units-${i + 1}.svg`),
      (svg) => svg,
    ),
    ...named(
      sewn ? drawSewing(top, making, fabrics, ruler, words) : [],
      ({ name }) => `${name}.svg`,
      ({ svg }) => svg,
    ),
    "cuts.csv": cutsCsv(plan, words),
    ...(units === "" ? {} : { "units.csv": units }),
    "waste.txt": wasteTable(plan, words),
    ...named(
      [...fabrics.entries()],
      ([index, { name }]) => numbered("cut", index, name),
      ([index]) => drawFabric(plan, index, words),
    ),
  };
}
