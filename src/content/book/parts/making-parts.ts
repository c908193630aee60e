import {
  besideScenes,
  blockPictureScene,
  foundationBesideScenes,
  mitreScene,
  settingPictures,
  stepKeyScene,
  unitPictures,
} from "../../../draw/index.ts";
import type { Scene } from "../../../draw/scene/scene.ts";
import { formatLength } from "../../../length/index.ts";
import type { Making } from "../../../making/types.ts";
import type { Plan } from "../../../plan/types.ts";
import { sizeOf } from "../../../print/paper/measure.ts";
import type { QuiltTop } from "../../../quilt/types.ts";
import type { Words } from "../../../words/index.ts";
import { partsOver } from "../../cutting/over.ts";
import { toldBlocks } from "../../sewing/blocks.ts";
import { foundationTold } from "../../sewing/foundation.ts";
import { partialLines, partLines, unitsAbout } from "../../sewing/making.ts";
import { borderLines } from "../../sewing/making-borders.ts";
import { finishingLines } from "../../sewing/making-finishing.ts";
import { pressingLines } from "../../sewing/making-pressing.ts";
import { topLines } from "../../sewing/rows.ts";
import { unitGroups } from "../../sewing/unit-groups.ts";
import { type ToldGroup, toldGroup } from "../../sewing/unit-told.ts";
import type { Block, Card, Section, StepGroup, Table } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";
import { stepGroups } from "./told-steps.ts";
import { unitCards } from "./unit-cards.ts";

/*
 * The sewing in the order of work, a section for each part of it: both books hold them. A part that a quilt has nothing
 * for is left out.
 */

export type MakingPart = "units" | "foundation" | "blocks" | "setting" | "borders" | "pressing" | "finishing";
type Drawn = ReturnType<typeof besideScenes>;

function section(id: string, title: string, blocks: Block[]): Section | null {
  if (blocks.length === 0) return null;
  return { id, over: "", title, swatch: null, newSheet: false, blocks };
}

function list(lines: readonly string[]): Block[] {
  const items = lines.map((line) => sentence(line.trim())).filter((line) => line !== "");
  return items.length === 0 ? [] : [{ kind: "list", items, columns: items.length > 1 ? 2 : 1 }];
}

function bagTable(
  { headings, rows }: { headings: readonly string[]; rows: readonly string[][] },
  words: Words,
): Table {
  return {
    caption: words.book.bench.making.bags,
    captionSeen: false,
    columns: headings.map((heading) => ({ heading: sentence(heading), align: "left" })),
    rows: rows.map((row) => row.map((text) => ({ text: typeset(text), notes: [], swatch: null }))),
    summed: false,
    ticks: [],
  };
}

/** Letters of what is said after a unit up to which it stands with the last step. */
const SHORT = 160;

/** The cards of a unit; what is said of all its steps stands in the first and the last where it is short. */
function toldWithCards({ head, after, runs }: ToldGroup, cards: Card[]): Block[] {
  const lines = (some: readonly string[]): string[] =>
    some.map((line) => sentence(line.trim())).filter((line) => line !== "");
  const once = runs.filter(({ from }) => from === 1).length === 1;
  const [first, last] = [cards[0], cards.at(-1)];
  if (!once || first === undefined || last === undefined)
    return [
      ...list(head).map((block) => ({ ...block, keep: true as const })),
      { kind: "cards", cards },
      ...list(after),
    ];
  first.lines = [...lines(head), ...first.lines];
  const ending = lines(after).join(" ");
  if (ending.length <= SHORT) last.lines = [...last.lines, ...lines(after)];
  return [{ kind: "cards", cards }, ...(ending.length <= SHORT ? [] : list(after))];
}

/** How wide every seam is: nothing fits that is sewn with another. */
function seamTold({ seam }: Making, { ruler }: Plan, words: Words): string {
  return words.making.seam(formatLength(seam, ruler));
}

function unitsPart(top: QuiltTop, making: Making, plan: Plan, words: Words): Block[] {
  const { fabrics, ruler } = plan;
  const groups = unitGroups(plan, words);
  const key = stepKeyScene(top, making, fabrics, ruler, words);
  const pictures = unitPictures(top, making, fabrics, ruler, words);
  const told = groups.flatMap((group, i): Block[] => {
    const [first] = group.units;
    const said = toldGroup(group, plan, words);
    if (first === undefined || said === null) return [];
    const own = pictures.get(making.units.indexOf(first)) ?? [];
    return [
      { kind: "heading", text: typeset(said.title), tick: `units-${i + 1}` },
      ...(said.table === null
        ? []
        : [{ kind: "table" as const, table: bagTable(said.table, words), keep: true as const }]),
      ...toldWithCards(said, unitCards(said, own)),
    ];
  });
  if (told.length === 0) return [];
  return [
    ...list([seamTold(making, plan, words), ...unitsAbout(making, plan, words)]),
    ...(key === null ? [] : [{ kind: "picture" as const, scene: key }]),
    ...told,
    ...list(partsOver(plan, words)),
  ];
}

function foundationPart(top: QuiltTop, making: Making, plan: Plan, words: Words): Block[] {
  const { foundation } = making;
  const groups = stepGroups(partLines(making, plan, words), "parts");
  const before = groups.length === 0 ? [] : [{ kind: "steps" as const, groups, columns: 2 as const }];
  const told = foundationTold(making, plan, words);
  if (foundation === null || told === null) return before;
  const steps = (lines: readonly string[], id: string): StepGroup[] =>
    stepGroups(["-", ...lines], id).map((group) => ({ ...group, title: "" }));
  const pictures = foundationBesideScenes(foundation, top, plan.fabrics, words);
  return [
    ...before,
    { kind: "steps", groups: steps(told.before, "foundation"), columns: 2 },
    ...told.parts.flatMap((lines, i): Block[] => {
      const own = steps(lines, `foundation-${i + 1}`);
      const scene = pictures[i];
      if (scene === undefined) return [{ kind: "steps", groups: own, columns: 2 }];
      // What is folded is drawn as wide as the page.
      if (foundation.way === "folded")
        return [
          { kind: "picture", scene },
          { kind: "steps", groups: own, columns: 2 },
        ];
      return [{ kind: "beside", scene, groups: own }];
    }),
    { kind: "steps", groups: steps(told.after, "foundation-after"), columns: 2 },
  ];
}

function blocksPart(
  top: QuiltTop,
  making: Making,
  plan: Plan,
  first: readonly string[],
  words: Words,
): Block[] {
  const { about, blocks } = toldBlocks(making, plan, words);
  const found: Block[] = [];
  for (const [i, { designs, lines }] of blocks.entries()) {
    const groups = stepGroups(lines, `blocks-${i + 1}`);
    const scene = designs
      .map((design) => blockPictureScene({ ...plan, top, making }, design, words))
      .find((each) => each !== null);
    const last = found.at(-1);
    if (scene !== undefined && scene !== null) found.push({ kind: "beside", scene, groups });
    else if (last?.kind === "steps") last.groups.push(...groups);
    else found.push({ kind: "steps", groups, columns: 2 });
  }
  const partial = stepGroups(partialLines(making, plan, words), "partial");
  if (partial.length > 0) found.push({ kind: "steps", groups: partial, columns: 2 });
  return found.length === 0 ? [] : [...list([...first, ...about]), ...found];
}

/** A picture with what is to be said of it beside it. */
function overview(scene: Scene | null, lines: readonly string[]): Block[] {
  const said = lines.map((line) => sentence(line.trim())).filter((line) => line !== "");
  if (scene === null) return list(lines);
  const pictures = [{ scene, ...sizeOf(scene), caption: "" }];
  return [{ kind: "cards", cards: [{ number: "", pictures, lines: said }] }];
}

/** Steps beside their drawing, the title of the only group left to the section. */
function besideDrawing(lines: readonly string[], id: string, scene: Scene | null): Block[] {
  const groups = stepGroups(lines, id).map(({ steps }) => ({ title: "", steps }));
  if (groups.length === 0) return [];
  return scene === null ? [{ kind: "steps", groups, columns: 2 }] : [{ kind: "beside", scene, groups }];
}

function settingPart(top: QuiltTop, making: Making, plan: Plan, drawn: Drawn, words: Words): Block[] {
  const cut = settingPictures(top, making, plan.fabrics, plan.ruler, words);
  const cards = cut.map(({ title, pictures }) => ({
    number: "",
    pictures: pictures.map(({ scene, width, height }) => ({ scene, width, height, caption: "" })),
    lines: [typeset(title)],
  }));
  return [
    ...(cards.length === 0 ? [] : [{ kind: "cards" as const, cards }]),
    ...besideDrawing(topLines(making, plan, words), "setting", drawn.assembly),
  ];
}

function bordersPart(making: Making, plan: Plan, drawn: Drawn, words: Words): Block[] {
  const mitre = mitreScene(making, plan.fabrics, plan.ruler, words);
  return [
    ...besideDrawing(borderLines(making, plan, words), "borders", drawn.borders),
    ...(mitre === null ? [] : [{ kind: "picture" as const, scene: mitre }]),
  ];
}

/** The parts of the sewing that a quilt has; null for a plain cut list. */
export function makingParts(plan: Plan, words: Words): Partial<Record<MakingPart, Section>> {
  const { making, top } = plan;
  if (making === undefined || top === null) return {};
  const drawn = besideScenes(top, making, plan.fabrics, plan.ruler, words);
  const { titles } = words.book.bench.making;
  const finishing = stepGroups(finishingLines(making, plan, words), "finishing").map(({ steps }) => ({
    title: "",
    steps,
  }));
  const units = unitsPart(top, making, plan, words);
  // A quilt of single patches begins with its blocks.
  const first = units.length > 0 ? [] : [seamTold(making, plan, words)];
  const found: Record<MakingPart, Section | null> = {
    units: section("units", words.making.unitsTitle, units),
    foundation: section("foundation", words.foundation.title, foundationPart(top, making, plan, words)),
    blocks: section("blocks", titles.blocks, blocksPart(top, making, plan, first, words)),
    setting: section("setting", titles.setting, settingPart(top, making, plan, drawn, words)),
    borders: section("borders", words.borders.title, bordersPart(making, plan, drawn, words)),
    pressing:
      making.pressing === null
        ? null
        : section("pressing", words.making.pressTitle, [
            ...overview(drawn.pressing, pressingLines(making.pressing, plan, words)),
          ]),
    finishing: section("finishing", words.finishing.title, [
      ...(drawn.finishing === null ? [] : [{ kind: "picture" as const, scene: drawn.finishing }]),
      { kind: "steps", groups: finishing, columns: 2 },
    ]),
  };
  return Object.fromEntries(Object.entries(found).filter(([, part]) => part !== null));
}
