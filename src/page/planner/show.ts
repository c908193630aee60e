import {
  bookPage,
  buyList,
  cuttingSteps,
  drawBlock,
  drawFabric,
  drawSewing,
  english,
  makingSteps,
  type Plan,
  planJson,
} from "../../planning.ts";
import type { Shown, ShowWhat } from "./messages.ts";

/** The command line's own drawings and text of a plan. */
export function show(plan: Plan, what: ShowWhat): Shown {
  const { top, making, fabrics, ruler } = plan;
  const cutting = () => fabrics.map(({ name }, index) => ({ name, svg: drawFabric(plan, index) }));
  switch (what) {
    case "cutting":
      return {
        what,
        fabrics: cutting(),
        steps: cuttingSteps(plan, true, english),
        buy: buyList(plan, english),
      };
    case "sewing": {
      const blocks = (top?.designs ?? [])
        .filter(({ count }) => count > 0)
        .map((design) => ({ name: design.name, svg: drawBlock(design, fabrics, ruler) }));
      const sewing = top === null || making === undefined ? [] : drawSewing(top, making, fabrics, ruler);
      return {
        what,
        drawings: [...blocks, ...sewing],
        steps: making === undefined ? "" : makingSteps(plan, english),
      };
    }
    case "book":
      return {
        what,
        json: planJson(plan, english),
        html: bookPage(plan),
      };
  }
}
