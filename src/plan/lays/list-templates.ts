import { matchOnCloth } from "../../cutlist/index.ts";
import type { Print } from "../../spec/types.ts";
import type { Template } from "../template-types.ts";
import type { FabricPlan } from "../types.ts";

/** Cloths on which a template is laid alike. Without direction the axis says nothing. */
function alike(a: Print, b: Print): boolean {
  return a.kind === b.kind && (a.kind === "none" || a.axis === b.axis);
}

/**
 * One template for each outline of the plan, whichever fabrics it is cut from, with every letter it is for. The
 * outline is drawn as the first letter has it; others are cut as drawn or reversed against that.
 */
export function listTemplates(fabrics: readonly FabricPlan[]): Template[] {
  const found: Template[] = [];
  for (const [fabric, { pieces, print }] of fabrics.entries()) {
    for (const [piece, { shape, subcut, nest }] of pieces.entries()) {
      if (shape === undefined) continue;
      const { asDrawn, reversed, ...lines } = shape;
      const from = subcut === "template" && nest === undefined ? ("rectangle" as const) : ("strip" as const);
      const known = found.flatMap((template) => {
        const match = alike(template.print, print) ? matchOnCloth(template, lines, print) : null;
        return match === null ? [] : [{ template, match }];
      })[0];
      if (known === undefined) {
        found.push({
          name: `T${found.length + 1}`,
          ...lines,
          across: Math.max(...lines.cut.map(({ x }) => x)),
          along: Math.max(...lines.cut.map(({ y }) => y)),
          print: print.kind === "none" ? { kind: "none", axis: "along" } : print,
          uses: [{ fabric, piece, asDrawn, reversed, from }],
        });
        continue;
      }
      const { template, match } = known;
      template.marks = match.marks;
      template.uses.push({
        fabric,
        piece,
        asDrawn: match.mirrored ? reversed : asDrawn,
        reversed: match.mirrored ? asDrawn : reversed,
        from,
      });
    }
  }
  return found;
}
