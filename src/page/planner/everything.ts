import {
  bookPage,
  buyCsv,
  buyList,
  cutsCsv,
  cuttingSteps,
  drawBlocks,
  drawFabric,
  drawFoundation,
  drawSewing,
  drawTemplate,
  drawTop,
  drawUnitSteps,
  english,
  makingSteps,
  type Plan,
  pageOf,
  patternOf,
  planJson,
  unitsCsv,
  wasteTable,
} from "../../planning.ts";
import type { OnPaper } from "./pattern.ts";

/** Most letters of a name inside the name of a file. */
const MOST_LETTERS = 60;

function numbered(what: string, index: number, name: string): string {
  const dashed = name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-/, "");
  const part = [...dashed].slice(0, MOST_LETTERS).join("").replace(/-$/, "");
  return `${[what, String(index + 1), part].filter((each) => each !== "").join("-")}.svg`;
}

const named = <T>(all: readonly T[], name: (one: T, i: number) => string, text: (one: T) => string) =>
  Object.fromEntries(all.map((one, i) => [name(one, i), text(one)]));

/** All that the command line writes of a plan but what wants a printer's fonts: names and bytes are the same. */
export function everythingOf(plan: Plan, pattern: OnPaper | null): Record<string, string> {
  const { top, making, fabrics, ruler } = plan;
  const drawings = fabrics.map(({ name }, index) => ({ name, svg: drawFabric(plan, index, english) }));
  const foundation = making?.foundation ?? null;
  const sewn = top !== null && making !== undefined;
  const steps = sewn ? drawUnitSteps(top, making, fabrics, ruler, english) : [];
  const units = unitsCsv(plan, english);
  return {
    "plan.json": planJson(plan, english),
    "book.html": bookPage(plan, english),
    ...(pattern === null
      ? {}
      : { "pattern.html": pageOf(patternOf(plan, pattern.told, english, pattern.sizes), english) }),
    "buy.txt": buyList(plan, english),
    "buy.csv": buyCsv(plan, english),
    "steps.txt": cuttingSteps(plan, true, english),
    ...(making === undefined ? {} : { "sewing.txt": makingSteps(plan, english) }),
    ...(top === null ? {} : { "top.svg": drawTop(top, fabrics, ruler, english) }),
    ...named(
      drawBlocks(plan, false, english),
      ({ name }, i) => numbered("block", i, name),
      ({ svg }) => svg,
    ),
    ...named(
      plan.templates ?? [],
      ({ name }) => `template-${name.toLowerCase()}.svg`,
      (template) => drawTemplate(plan, template, english),
    ),
    ...named(
      top === null || foundation === null ? [] : drawFoundation(foundation, top, fabrics, ruler, english),
      (_, i) => numbered("foundation", i, ""),
      (svg) => svg,
    ),
    ...named(
      steps,
      (_, i) => (steps.length === 1 ? "units.svg" : `units-${i + 1}.svg`),
      (svg) => svg,
    ),
    ...named(
      sewn ? drawSewing(top, making, fabrics, ruler, english) : [],
      ({ name }) => `${name}.svg`,
      ({ svg }) => svg,
    ),
    "cuts.csv": cutsCsv(plan, english),
    ...(units === "" ? {} : { "units.csv": units }),
    "waste.txt": wasteTable(plan, english),
    ...named(
      drawings,
      ({ name }, i) => numbered("cut", i, name),
      ({ svg }) => svg,
    ),
  };
}
