import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { pieceFacts } from "../../index.ts";
import type { Label, Section } from "../content.ts";
import { typeset } from "../typeset.ts";

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

/** The bags of one kit of a class of several sorts. */
function kitOf(plan: Plan, sort: number): Plan {
  const fabrics = plan.fabrics.map((fabric) => ({
    ...fabric,
    pieces: fabric.pieces.flatMap(({ inKits, ...piece }) => {
      const count = inKits?.[sort]?.each ?? 0;
      return count === 0 ? [] : [{ ...piece, count }];
    }),
  }));
  return { ...plan, fabrics };
}

/** A sheet of labels for each sort of kit. */
function labelsOfSorts(plan: Plan, sorts: NonNullable<Plan["sorts"]>, words: Words): Section {
  return {
    id: "labels",
    over: "",
    title: words.book.bench.labels.title,
    swatch: null,
    newSheet: false,
    blocks: sorts.flatMap((sort, i): Section["blocks"] => [
      { kind: "heading", text: typeset(words.choices.kits.sort(i + 1, sort)) },
      { kind: "text", text: words.book.bench.labels.leadKits(sort.kits), tone: "lead" },
      { kind: "labels", labels: labelsOf(kitOf(plan, i), words) },
    ]),
  };
}

/** A sheet of labels, one for each bag of pieces. */
export function labelSection(plan: Plan, words: Words): Section | null {
  if (plan.sorts !== undefined) return labelsOfSorts(plan, plan.sorts, words);
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
