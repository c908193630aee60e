import { bookPage, buyList, cuttingSteps, drawFabric, type Plan, planJson } from "../../planning.ts";
import type { Shown, ShowWhat } from "./messages.ts";
import { sewingOf } from "./sewing.ts";

/** The command line's own drawings and text of a plan. */
export function show(plan: Plan, what: ShowWhat): Shown {
  const { fabrics } = plan;
  const cutting = () => fabrics.map(({ name }, index) => ({ name, svg: drawFabric(plan, index) }));
  switch (what) {
    case "cutting":
      return { what, fabrics: cutting(), steps: cuttingSteps(plan), buy: buyList(plan) };
    case "sewing":
      return { what, sewing: sewingOf(plan) };
    case "book":
      return {
        what,
        json: planJson(plan),
        html: bookPage(
          plan,
          cutting().map(({ svg }) => svg),
        ),
      };
  }
}
