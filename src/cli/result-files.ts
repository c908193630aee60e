import type { Plan } from "../plan/types.ts";
import type { Files } from "./write.ts";

/** The book for the printer, written when it is asked for. */
export const PDF_NAME = "book.pdf";

/** A name as part of a file name: letters and digits of any script, the rest as single dashes. */
export function fileNamePart(name: string): string {
  return name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60);
}

/** Files that are written only when they are asked for. */
const ASKED_FOR: readonly string[] = [PDF_NAME, "handout.md", "handout.txt"];

/** Whether a file of this name is one that an earlier plan may have left in the folder and this one may not write. */
export function mayBeOutdated(name: string): boolean {
  return (
    ASKED_FOR.includes(name) ||
    /^((cut|block|foundation)-\d+(-.*)?|template-t\d+|top|blocks|pressing|assembly|borders|finishing)\.(svg|png)$/u.test(
      name,
    )
  );
}

function numbered(what: string, index: number, name: string): string {
  return `${[what, String(index + 1), fileNamePart(name)].filter((part) => part !== "").join("-")}.svg`;
}

/** Every file of a plan: the plan itself, its book, lists and steps as text, tables, a drawing for each fabric. */
export async function resultFiles(plan: Plan): Promise<Files> {
  const {
    buyCsv,
    buyList,
    cutsCsv,
    cuttingSteps,
    loadBook,
    loadDrawings,
    makingSteps,
    planJson,
    wasteTable,
  } = await import("../index.ts");
  const [{ drawBlocks, drawFabric, drawFoundation, drawSewing, drawTemplate, drawTop }, { bookPage }] =
    await Promise.all([loadDrawings(), loadBook()]);
  const drawings = plan.fabrics.map(
    (fabric, index) => [numbered("cut", index, fabric.name), drawFabric(plan, index)] as const,
  );
  const { top, making } = plan;
  const blocks = drawBlocks(plan, false).map(
    ({ name, svg }, i) => [numbered("block", i, name), svg] as const,
  );
  const templates = (plan.templates ?? []).map(
    (template) => [`template-${template.name.toLowerCase()}.svg`, drawTemplate(plan, template)] as const,
  );
  const foundation = making?.foundation ?? null;
  const foundations =
    top === null || foundation === null
      ? []
      : drawFoundation(foundation, top, plan.fabrics, plan.ruler).map(
          (svg, i) => [numbered("foundation", i, ""), svg] as const,
        );
  const sewing =
    top === null || making === undefined ? [] : drawSewing(top, making, plan.fabrics, plan.ruler);
  return {
    "plan.json": planJson(plan),
    "book.html": bookPage(
      plan,
      drawings.map(([, svg]) => svg),
    ),
    "buy.txt": buyList(plan),
    "buy.csv": buyCsv(plan),
    "steps.txt": cuttingSteps(plan),
    ...(making === undefined ? {} : { "sewing.txt": makingSteps(plan) }),
    ...(top === null ? {} : { "top.svg": drawTop(top, plan.fabrics, plan.ruler) }),
    ...Object.fromEntries(blocks),
    ...Object.fromEntries(templates),
    ...Object.fromEntries(foundations),
    ...Object.fromEntries(sewing.map(({ name, svg }) => [`${name}.svg`, svg])),
    "cuts.csv": cutsCsv(plan),
    "waste.txt": wasteTable(plan),
    ...Object.fromEntries(drawings),
  };
}
