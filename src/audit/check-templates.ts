import type { CutPiece, CutShape } from "../cutlist/types.ts";
import type { Plan } from "../plan/types.ts";
import { edgesOf, signedAreaOf } from "./shapes.ts";

/** Ticks by which a point rounded to whole ticks may lie beside where it should. */
const NEAR = 6;

/** Ticks of an edge below which its direction, taken between whole ticks, says too little. */
const SHORT = 640;

/** How far outside each edge of the seam line an edge of the cut line runs beside it. */
function allowances({ cut, seam }: Pick<CutShape, "cut" | "seam">): number[][] {
  const cuts = edgesOf(cut);
  return edgesOf(seam)
    .filter(({ length }) => length >= SHORT)
    .map(({ from, run, length }) =>
      cuts
        .filter((edge) => {
          const turn = Math.hypot(edge.run.x - run.x, edge.run.y - run.y);
          return turn < 0.001 + 3 / length + 3 / edge.length;
        })
        .map((edge) => (edge.from.x - from.x) * run.y - (edge.from.y - from.y) * run.x)
        .filter((distance) => distance > 0),
    );
}

/** Whether one and the same seam allowance lies outside every edge. */
function evenAllowance(shape: Pick<CutShape, "cut" | "seam">): boolean {
  const beside = allowances(shape);
  if (beside.length === 0) return true;
  return (beside[0] ?? []).some((seam) =>
    beside.every((distances) => distances.some((distance) => Math.abs(distance - seam) <= NEAR)),
  );
}

function checkShape(piece: CutPiece): string[] {
  const { shape, letter } = piece;
  if (shape === undefined)
    return piece.subcut === "template" ? [`piece ${letter} is cut by a template and has no outline`] : [];
  const faults: string[] = [];
  const [right, bottom] = [
    Math.max(...shape.cut.map(({ x }) => x)),
    Math.max(...shape.cut.map(({ y }) => y)),
  ];
  if (shape.cut.some(({ x, y }) => x < 0 || y < 0))
    faults.push(`the outline of ${letter} starts outside its box`);
  if (piece.subcut === "template") {
    if (right > piece.across || bottom > piece.along)
      faults.push(`the outline of ${letter} reaches beyond its rectangle`);
    if (shape.asDrawn + shape.reversed !== piece.count)
      faults.push(`${letter} has another number of outlines than of rectangles`);
  } else if (bottom > piece.along) faults.push(`the outline of ${letter} is higher than its strip`);
  // What is cut by a ruler lies on its marks: its allowances are looked at with its strips.
  if (piece.nest?.spec == null && !evenAllowance(shape))
    faults.push(`the seam allowance round ${letter} is not the same all round`);
  return faults;
}

/** Outlines inside their pieces, the allowance the same all round, and every one of them in one template. */
export function checkTemplates(plan: Plan): string[] {
  const faults: string[] = [];
  const uses = (plan.templates ?? []).flatMap((template) => template.uses.map((use) => ({ template, use })));
  for (const [index, fabric] of plan.fabrics.entries()) {
    for (const [number, piece] of fabric.pieces.entries()) {
      faults.push(...checkShape(piece).map((fault) => `${fabric.name}: ${fault}`));
      const own = uses.filter(({ use }) => use.fabric === index && use.piece === number);
      const { shape } = piece;
      const right =
        shape === undefined
          ? own.length === 0
          : own.length === 1 &&
            own.every(
              ({ use, template }) =>
                use.asDrawn + use.reversed === shape.asDrawn + shape.reversed &&
                template.cut.length === shape.cut.length &&
                Math.abs(signedAreaOf(template.cut) - signedAreaOf(shape.cut)) <=
                  NEAR * (template.across + template.along),
            );
      if (!right) faults.push(`${fabric.name}: the templates do not say what ${piece.letter} is cut to`);
    }
  }
  return faults;
}
