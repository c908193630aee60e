import { titleFacts } from "../../../draw/cutting/words.ts";
import { fabricScene, fabricScenes } from "../../../draw/index.ts";
import type { FabricPlan, Part, Plan } from "../../../plan/types.ts";
import { LEAF, PER_UNIT, sizeOf } from "../../../print/paper/measure.ts";
import type { Words } from "../../../words/index.ts";
import { fabricNotes } from "../../cutting/steps.ts";
import {
  alikeLays,
  FROM_BAGS,
  type Instruction,
  instructionsFor,
  layTitle,
  leftoverSizes,
  pieceFacts,
  ranges,
} from "../../index.ts";
import type { Section, Step, StepGroup } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";

function stepOf(instruction: Instruction, id: string, words: Words): Step {
  const [title = "", ...details] = instruction.phrases;
  const { strips, parts, flags, notes } = instruction;
  return {
    id,
    title: sentence(title),
    details: details.map(sentence),
    parts: parts.map(({ strips: some, phrases }) => ({
      title: words.cutting.ofStrips(ranges(some, words), some.length),
      details: phrases.map(sentence),
    })),
    where:
      strips.length === 0 || parts.length > 0
        ? ""
        : words.book.bench.cutting.strips(ranges(strips, words), strips.length),
    warnings: [...flags.map((flag) => words.cutting.stepFlags[flag]), ...notes],
  };
}

/** The steps, gathered by the cloth they are done on. */
export function cuttingGroups(plan: Plan, fabric: FabricPlan, id: string, words: Words): StepGroup[] {
  const alike = alikeLays(fabric.lays);
  const several = fabric.lays.length > 1 || fabric.lays.some(({ source }) => source === "fixed");
  const groups = fabric.lays.map((lay, i): StepGroup => {
    const title = typeset(layTitle(fabric, lay, alike[i] ?? 1, plan, words));
    return { title: several ? title : "", steps: [] };
  });
  const further: StepGroup = { title: words.cutting.cutFurther, steps: [] };
  for (const [index, instruction] of instructionsFor(plan, fabric, words).entries()) {
    const group = instruction.lay === FROM_BAGS ? further : groups[instruction.lay];
    group?.steps.push(stepOf(instruction, `${id}-${index + 1}`, words));
  }
  groups.push(further);
  return groups.filter(({ steps }) => steps.length > 0);
}

/** What is cut from a fabric, bag by bag: what the letters in its diagram stand for. */
function bagsOf(plan: Plan, fabric: FabricPlan, words: Words): string {
  const bags = pieceFacts(fabric, plan, words).map(({ letter, count, size }) =>
    words.book.bench.cutting.bag(letter, count, typeset(size)),
  );
  return words.book.bench.cutting.bags(bags);
}

/** What is left and kept is something to do as well: folded, measured and put away. */
function keepSteps(leftovers: readonly string[], id: string, words: Words): Step[] {
  if (leftovers.length === 0) return [];
  const title = `${words.cutting.leftoversTitle}: ${leftovers.map(typeset).join("; ")}.`;
  return [{ id: `${id}-keep`, title, light: true, details: [], parts: [], where: "", warnings: [] }];
}

/** Different strips that a diagram beside its steps still shows, and how wide it is and how high a wide one, in page units. */
const MOST_BESIDE = 7;
const BESIDE_WIDTH = 390;
const TALLEST_BESIDE = 430;
const WIDE_ROOM = 430;
const BAND_ROOM = 480;
const TALLEST_BANDS = 560;
/** A picture higher than a page, under the fabric's name, would be set smaller and its words with it. */
const TALLEST_WIDE = LEAF.height / PER_UNIT - 90;

/** Different strips of a fabric, over all its cloth. */
function kindsOf({ lays }: FabricPlan): number {
  return new Set(lays.flatMap((lay, i) => lay.root.parts.map(({ role, along }) => `${i} ${role} ${along}`)))
    .size;
}

/** Whether strips are cut along the selvage: they are drawn beside one another, each with its mark, and want the height. */
function hasBands({ lays }: FabricPlan): boolean {
  const within = ({ role, parts }: Part): boolean => role === "band" || parts.some(within);
  return lays.some(({ root }) => within(root));
}

/** One fabric at the mat: its diagram beside its steps, then what is left of it. */
export function cuttingSection(plan: Plan, index: number, words: Words): Section {
  const fabric = plan.fabrics[index];
  if (fabric === undefined) throw new Error(`There is no fabric ${index}`);
  const id = `fabric-${index + 1}`;
  const kept = keepSteps(leftoverSizes(fabric, plan, words), id, words);
  const [kinds, bands] = [kindsOf(fabric), hasBands(fabric)];
  const narrow =
    kinds > MOST_BESIDE && !bands
      ? null
      : fabricScene(plan, index, words, {
          bare: { room: bands ? BAND_ROOM : 60 + 44 * kinds, width: BESIDE_WIDTH },
        });
  const wide = narrow === null || sizeOf(narrow).height > (bands ? TALLEST_BANDS : TALLEST_BESIDE);
  const scenes = wide ? fabricScenes(plan, index, words, bands ? BAND_ROOM : WIDE_ROOM, TALLEST_WIDE) : [];
  const told = cuttingGroups(plan, fabric, id, words);
  const [last = { title: "", steps: [] }, ...before] = told.toReversed();
  const groups = [...before.toReversed(), { ...last, steps: [...last.steps, ...kept] }].filter(
    ({ steps }) => steps.length > 0,
  );
  // What is bought, used, spared and proved stands in the list of what to buy.
  const facts = titleFacts(fabric, plan.ruler, words)
    .filter(({ bought }) => !bought)
    .map(({ caption, value }) => `${caption}: ${value}`);
  return {
    id,
    over: "",
    headed: `${words.book.bench.cutting.over(index + 1, plan.fabrics.length)}: ${fabric.name}`,
    title: fabric.name,
    swatch: fabric.colour,
    newSheet: false,
    blocks: [
      {
        kind: "text",
        tone: "quiet",
        text: [
          words.book.bench.cutting.over(index + 1, plan.fabrics.length),
          ...facts,
          bagsOf(plan, fabric, words),
        ].join(" · "),
      },
      ...fabricNotes(fabric, words).map((text) => ({ kind: "text" as const, text, tone: "plain" as const })),
      ...(wide
        ? [
            ...scenes.map((scene) => ({ kind: "picture" as const, scene })),
            { kind: "steps" as const, columns: 2 as const, groups },
          ]
        : [{ kind: "beside" as const, scene: narrow, groups }]),
      ...(kept.length > 0
        ? []
        : [{ kind: "text" as const, tone: "quiet" as const, text: words.cutting.leftoversNone }]),
    ],
  };
}
