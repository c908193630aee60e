import type { FabricPlan, Plan } from "../../plan/types.ts";
import { english } from "../../words/index.ts";
import { titleFacts } from "../svg/words.ts";
import {
  alikeLays,
  FROM_BAGS,
  type Instruction,
  instructionsFor,
  layTitle,
  leftoverSizes,
  pieceFacts,
  proofLines,
  ranges,
} from "../text/index.ts";

import type { Section, Step, StepGroup, Table } from "./content.ts";
import { sentence, typeset } from "./typeset.ts";
import { bookWords } from "./words.ts";

function stepOf(instruction: Instruction, id: string): Step {
  const [title = "", ...details] = instruction.phrases;
  const { strips, parts, flags, notes } = instruction;
  return {
    id,
    title: sentence(title),
    details: details.map(sentence),
    parts: parts.map(({ strips: some, phrases }) => ({
      title: english.cutting.ofStrips(ranges(some, english), some.length),
      details: phrases.map(sentence),
    })),
    where:
      strips.length === 0 || parts.length > 0
        ? ""
        : bookWords.cutting.strips(ranges(strips, english), strips.length),
    warnings: [...flags.map((flag) => english.cutting.stepFlags[flag]), ...notes],
  };
}

/** The steps, gathered by the cloth they are done on. */
function stepGroups(plan: Plan, fabric: FabricPlan, id: string): StepGroup[] {
  const alike = alikeLays(fabric.lays);
  const several = fabric.lays.some(({ source }) => source === "fixed");
  const groups = fabric.lays.map((lay, i): StepGroup => {
    const title = typeset(layTitle(fabric, lay, alike[i] ?? 1, plan, english));
    return { title: several ? title : "", steps: [] };
  });
  const further: StepGroup = { title: english.cutting.cutFurther, steps: [] };
  for (const [index, instruction] of instructionsFor(plan, fabric, english).entries()) {
    const group = instruction.lay === FROM_BAGS ? further : groups[instruction.lay];
    group?.steps.push(stepOf(instruction, `${id}-${index + 1}`));
  }
  groups.push(further);
  return groups.filter(({ steps }) => steps.length > 0);
}

function piecesTable(plan: Plan, fabric: FabricPlan): Table {
  const { letter, count, size, use } = bookWords.cutting.columns;
  const plain = (text: string, notes: string[] = []) => ({ text, notes, swatch: null });
  return {
    caption: bookWords.cutting.pieces,
    captionSeen: true,
    columns: [
      { heading: sentence(letter), align: "left" },
      { heading: sentence(count), align: "right" },
      { heading: sentence(size), align: "left" },
      { heading: sentence(use), align: "left", wordy: true },
    ],
    rows: pieceFacts(fabric, plan, english).map((piece) => {
      const [first = "", ...more] = piece.remarks.map(typeset);
      return [
        plain(piece.letter),
        plain(String(piece.count)),
        plain(typeset(piece.size), piece.turn === "" ? [] : [piece.turn]),
        plain(first, more),
      ];
    }),
    summed: false,
    ticks: [],
  };
}

/** One fabric at the mat: its diagram (`svg`) beside its pieces and steps, then what is left of it. */
export function cuttingSection(plan: Plan, index: number, svg: string): Section {
  const fabric = plan.fabrics[index];
  if (fabric === undefined) throw new Error(`There is no fabric ${index}`);
  const id = `fabric-${index + 1}`;
  const leftovers = leftoverSizes(fabric, plan, english);
  return {
    id,
    over: bookWords.cutting.over(index + 1, plan.fabrics.length),
    title: fabric.name,
    swatch: fabric.colour,
    running: fabric.name,
    newSheet: true,
    titledByDrawing: true,
    blocks: [
      { kind: "facts", facts: titleFacts(fabric, plan.ruler) },
      ...(fabric.note === "" ? [] : [{ kind: "text" as const, text: fabric.note, tone: "plain" as const }]),
      {
        kind: "bench",
        svg,
        table: piecesTable(plan, fabric),
        groups: stepGroups(plan, fabric, id),
      },
      { kind: "heading", text: bookWords.cutting.after },
      {
        kind: "list",
        items: [
          ...(leftovers.length === 0
            ? [english.cutting.leftoversNone]
            : [`${english.cutting.leftoversTitle}: ${leftovers.map(typeset).join("; ")}.`]),
          ...proofLines(fabric, plan, english).map(typeset),
        ],
      },
    ],
  };
}
