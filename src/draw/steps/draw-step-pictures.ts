import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import type { Scene } from "../scene/scene.ts";
import { BETWEEN, layPanel } from "./draw-panel.ts";
import { signsOf, type Told, toldOf } from "./draw-unit-steps.ts";
import { keyNodes } from "./key.ts";
import type { Panel } from "./panel.ts";
import type { StepFabric } from "./step-fabric.ts";

/** One picture of a step, to stand above its sentence. Sizes are in page units. */
export interface StepPicture {
  /** First and last step of the unit that it shows, from 1; 0 for what there is when all is done. */
  from: number;
  to: number;
  /** Heap or batch it is of, where there are several. */
  heading: string;
  scene: Scene;
  width: number;
  height: number;
}

/** Pictures among words are a little smaller than those on a sheet of their own; their letters are not. */
const AMONG_WORDS = 0.52;

const NUMBER = /^(\d+)[a-z]?(?:–(\d+))?$/;

/** Columns of a page that pictures among words keep to. */
export const PICTURE_COLUMNS = 24;
const ONE = (PAGE_WIDTH - (PICTURE_COLUMNS - 1) * BETWEEN) / PICTURE_COLUMNS;
/** How wide a picture is that takes so many of them. One or two alone hold no word. */
const WIDTHS = Array.from({ length: PICTURE_COLUMNS - 2 }, (_, i) => ONE * (i + 3) + BETWEEN * (i + 2));

/** What a picture shows, in the words that stand in it. */
function described({ says, figures }: Panel): string {
  return [says, ...figures.map((each) => each.says)].filter((said) => said !== "").join("; ");
}

function pictureOf(
  panel: Panel,
  { heading, idPrefix, most }: { heading: string; idPrefix: string; most: number },
  fabrics: readonly StepFabric[],
  words: Words,
): StepPicture {
  const laid = layPanel(panel, most * AMONG_WORDS, fabrics, WIDTHS);
  const [, first = "0", last = first] = NUMBER.exec(panel.number) ?? [];
  const [width, height] = [laid.width + 2, Math.ceil(laid.height + 2)];
  const scene: Scene = {
    width,
    height,
    idPrefix,
    title: panel.number === "" ? words.drawings.steps.now : words.drawings.steps.step(panel.number),
    description: described(panel),
    nodes: laid.draw(1, 1, laid.height),
  };
  return { from: Number(first), to: Number(last), heading, scene, width, height };
}

function picturesOf(
  { groups, most }: Told,
  fabrics: readonly StepFabric[],
  idPrefix: string,
  words: Words,
): StepPicture[] {
  return groups.flatMap(({ heading, panels }, g) =>
    panels.map((panel, i) =>
      pictureOf(panel, { heading, most, idPrefix: `${idPrefix}${g + 1}-${i + 1}-` }, fabrics, words),
    ),
  );
}

/** The pictures of every kind of unit that is sewn, by its place in `making.units`; of units alike, of the first. */
export function unitPictures(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): Map<number, StepPicture[]> {
  const told = toldOf(top, making, fabrics, ruler, words);
  return new Map(
    told.flatMap((each, i) =>
      each.unit === null ? [] : [[each.unit, picturesOf(each, fabrics, `step-${i + 1}-`, words)] as const],
    ),
  );
}

/** How squares are cut to setting triangles, each kind with its title. */
export function settingPictures(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): { title: string; pictures: StepPicture[] }[] {
  return toldOf(top, making, fabrics, ruler, words).flatMap((each, i) =>
    each.unit === null
      ? [{ title: each.title, pictures: picturesOf(each, fabrics, `step-${i + 1}-`, words) }]
      : [],
  );
}

/** What the signs of the pictures mean, as a strip across the page; null where there is no picture. */
export function stepKeyScene(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): Scene | null {
  const told = toldOf(top, making, fabrics, ruler, words);
  if (told.length === 0) return null;
  const idPrefix = "step-key-";
  const { nodes, bottom } = keyNodes(fabrics, signsOf(told, fabrics), 0, words, false);
  return {
    width: PAGE_WIDTH,
    height: Math.ceil(bottom - 8),
    idPrefix,
    title: words.drawings.steps.key.heading,
    description: words.drawings.steps.key.about,
    nodes,
  };
}
