import type { Plan } from "../plan/types.ts";
import type { Files } from "./write.ts";

/** A name as part of a file name: letters and digits of any script, the rest as single dashes. */
export function fileNamePart(name: string): string {
  return name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60);
}

/** Whether a file of this name is a drawing that an earlier plan may have left in the folder. */
export function isDrawingName(name: string): boolean {
  return /^cut-\d+(-.*)?\.svg$/u.test(name);
}

/** Every file of a plan: the plan itself, its book, lists and steps as text, tables, a drawing for each fabric. */
export async function resultFiles(plan: Plan): Promise<Files> {
  const { buyCsv, buyList, cutsCsv, cuttingSteps, loadBook, loadDrawings, planJson, wasteTable } =
    await import("../index.ts");
  const [{ drawFabric }, { bookPage }] = await Promise.all([loadDrawings(), loadBook()]);
  const drawings = plan.fabrics.map((fabric, index) => {
    const name = ["cut", String(index + 1), fileNamePart(fabric.name)]
      .filter((part) => part !== "")
      .join("-");
    return [`${name}.svg`, drawFabric(plan, index)] as const;
  });
  return {
    "plan.json": planJson(plan),
    "book.html": bookPage(plan),
    "buy.txt": buyList(plan),
    "buy.csv": buyCsv(plan),
    "steps.txt": cuttingSteps(plan),
    "cuts.csv": cutsCsv(plan),
    "waste.txt": wasteTable(plan),
    ...Object.fromEntries(drawings),
  };
}
