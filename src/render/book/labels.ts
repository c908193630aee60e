import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { pieceFacts } from "../text/index.ts";
import type { Label, Section } from "./content.ts";
import { typeset } from "./typeset.ts";

/** Uses that fit on a label. */
const MOST_USES = 4;

/** Of a class a bag holds what one kit needs. */
function labelsOf(plan: Plan, words: Words): Label[] {
  const { kits = 1 } = plan;
  return plan.fabrics.flatMap((fabric) =>
    pieceFacts(fabric, plan, words).map((piece) => ({
      letter: piece.letter,
      fabric: fabric.name,
      colour: fabric.colour,
      count: words.book.bench.labels.count(piece.count / kits),
      size: typeset(piece.size),
      uses: [...(piece.turn === "" ? [] : [piece.turn]), ...piece.remarks].slice(0, MOST_USES).map(typeset),
    })),
  );
}

/** A sheet of labels, one for each bag of pieces. */
export function labelSection(plan: Plan, words: Words): Section | null {
  const labels = labelsOf(plan, words);
  const { kits = 1 } = plan;
  const { lead, leadKits } = words.book.bench.labels;
  if (labels.length === 0) return null;
  return {
    id: "labels",
    over: "",
    title: words.book.bench.labels.title,
    swatch: null,
    newSheet: false,
    blocks: [
      { kind: "text", text: kits === 1 ? lead : leadKits(kits), tone: "lead" },
      { kind: "labels", labels },
    ],
  };
}
