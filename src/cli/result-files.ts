import type { Plan } from "../plan/types.ts";
import type { Words } from "../words/index.ts";
import { fileNamePart } from "./file-names.ts";
import type { Pattern } from "./pattern.ts";
import type { Files } from "./write.ts";

/** The books for the printer, written when they are asked for. */
export const PDF_NAME = "book.pdf";
export const PATTERN_PDF_NAME = "pattern.pdf";

function numbered(what: string, index: number, name: string): string {
  return `${[what, String(index + 1), fileNamePart(name)].filter((part) => part !== "").join("-")}.svg`;
}

/** Every file of a plan: the plan itself, its bench book, the pattern of a quilt, lists and steps as text, tables, a drawing for each fabric. */
export async function resultFiles(plan: Plan, words: Words, pattern: Pattern | null = null): Promise<Files> {
  const {
    buyCsv,
    buyList,
    cutsCsv,
    cuttingSteps,
    loadBook,
    loadDrawings,
    makingSteps,
    planJson,
    unitsCsv,
    wasteTable,
  } = await import("../index.ts");
  const [
    { drawBlocks, drawFabric, drawFoundation, drawSewing, drawTemplate, drawTop, drawUnitSteps },
    { bookPage, pageOf, patternOf },
  ] = await Promise.all([loadDrawings(), loadBook()]);
  const drawings = plan.fabrics.map(
    (fabric, index) => [numbered("cut", index, fabric.name), drawFabric(plan, index, words)] as const,
  );
  const { top, making } = plan;
  const blocks = drawBlocks(plan, false, words).map(
    ({ name, svg }, i) => [numbered("block", i, name), svg] as const,
  );
  const templates = (plan.templates ?? []).map(
    (template) =>
      [`template-${template.name.toLowerCase()}.svg`, drawTemplate(plan, template, words)] as const,
  );
  const foundation = making?.foundation ?? null;
  const foundations =
    top === null || foundation === null
      ? []
      : drawFoundation(foundation, top, plan.fabrics, plan.ruler, words).map(
          (svg, i) => [numbered("foundation", i, ""), svg] as const,
        );
  const sewing =
    top === null || making === undefined ? [] : drawSewing(top, making, plan.fabrics, plan.ruler, words);
  const steps =
    top === null || making === undefined ? [] : drawUnitSteps(top, making, plan.fabrics, plan.ruler, words);
  const units = unitsCsv(plan, words);
  return {
    "plan.json": planJson(plan, words),
    "book.html": bookPage(plan, words),
    ...(pattern === null
      ? {}
      : { "pattern.html": pageOf(patternOf(plan, pattern.told, words, pattern.sizes), words) }),
    "buy.txt": buyList(plan, words),
    "buy.csv": buyCsv(plan, words),
    "steps.txt": cuttingSteps(plan, true, words),
    ...(making === undefined ? {} : { "sewing.txt": makingSteps(plan, words) }),
    ...(top === null ? {} : { "top.svg": drawTop(top, plan.fabrics, plan.ruler, words) }),
    ...Object.fromEntries(blocks),
    ...Object.fromEntries(templates),
    ...Object.fromEntries(foundations),
    ...Object.fromEntries(
      steps.map((svg, i) => [steps.length === 1 ? "units.svg" : `units-${i + 1}.svg`, svg]),
    ),
    ...Object.fromEntries(sewing.map(({ name, svg }) => [`${name}.svg`, svg])),
    "cuts.csv": cutsCsv(plan, words),
    ...(units === "" ? {} : { "units.csv": units }),
    "waste.txt": wasteTable(plan, words),
    ...Object.fromEntries(drawings),
  };
}
