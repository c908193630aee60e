import type { Template } from "../../plan/template-types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { moveNodes } from "../scene/move.ts";
import { PAPER } from "../scene/palette.ts";
import { rect, type Scene, type SceneNode } from "../scene/scene.ts";
import { cleanText } from "../scene/text-fit.ts";
import { type Cell, captionBeside, templateAlone, templateCell } from "./template-cells.ts";
import { COLUMN, HEAD, HEAD_WIDTH, templateColumn, templateHead } from "./template-head.ts";
import { fullSize } from "./template-outline.ts";
import { templateTiles, tilingOf } from "./template-tiles.ts";

/**
 * A sheet of templates in page units, 96 to the inch: 181 x 235 mm, inside the margins of A4 and of Letter, so
 * that one set of sheets serves both.
 */
export const SHEET = { width: 684, height: 888 } as const;
const GAP = 22;
const ROOM = { width: SHEET.width - 2, height: SHEET.height - HEAD - 2 } as const;
/** A template that would take more sheets than this is quicker drawn on the cloth. */
const MOST_PARTS = 9;

/** How a template comes onto paper. */
export type OnPaper = "sheet" | "turned" | "tall" | "tall-turned" | "parts" | "draw";

/** Large triangles, and what would take many sheets, are drawn on the cloth with a ruler. */
export function onPaper(template: Template): OnPaper {
  for (const turned of [false, true]) {
    const cell = fullSize(template, turned);
    // A caption takes up to a sixth of the sheet.
    if (cell.width <= ROOM.width - 2 && cell.height <= ROOM.height - 90) return turned ? "turned" : "sheet";
  }
  for (const turned of [false, true]) {
    const { width, height } = fullSize(template, turned);
    if (width <= SHEET.width - COLUMN - 14 && height <= SHEET.height - 4)
      return turned ? "tall-turned" : "tall";
  }
  const { columns, rows } = tilingOf(template, ROOM);
  return template.seam.length === 3 || columns * rows > MOST_PARTS ? "draw" : "parts";
}

function signsOf(templates: readonly Template[], words: Words): string[] {
  const free = templates.some(({ print }) => print.kind === "none");
  const printed = templates.some(({ print }) => print.kind !== "none");
  return [
    words.drawings.templates.lines,
    free && !printed ? words.drawings.templates.grainFree : words.drawings.templates.grain,
    ...(printed ? [words.drawings.templates.up] : []),
  ];
}

function scene(
  title: string,
  idPrefix: string,
  size: { width: number; height: number },
  nodes: SceneNode[],
  words: Words,
): Scene {
  return {
    ...size,
    physical: true,
    idPrefix,
    title: cleanText(title),
    description: words.drawings.templates.print,
    nodes: [rect({ x: 0, y: 0, ...size }, { fill: PAPER }), ...nodes],
  };
}

interface Shelf {
  y: number;
  height: number;
  /** Where the next cell goes. */
  x: number;
}

interface Sheet {
  shelves: Shelf[];
  placed: { cell: Cell; x: number; y: number }[];
}

/** A place for a cell on a shelf of the sheet, or on a new shelf below; null when the sheet is full. */
function placeOn({ shelves }: Sheet, cell: Cell): Shelf | null {
  const shelf = shelves.find(({ x, height }) => x + cell.width <= ROOM.width && cell.height <= height);
  if (shelf !== undefined) return shelf;
  const below = shelves.reduce((y, each) => Math.max(y, each.y + each.height + GAP), 0);
  if (below + cell.height > ROOM.height) return null;
  const fresh = { y: below, height: cell.height, x: 0 };
  shelves.push(fresh);
  return fresh;
}

/** Cells on shelves, the highest first, each on the first shelf it fits; then in the order of their names. */
function shelved(cells: readonly Cell[]): Sheet["placed"][] {
  const sheets: Sheet[] = [];
  for (const cell of [...cells].sort((a, b) => b.height - a.height)) {
    let shelf: Shelf | null = null;
    let sheet = sheets.find((each) => {
      shelf = placeOn(each, cell);
      return shelf !== null;
    });
    if (sheet === undefined) {
      sheet = { shelves: [], placed: [] };
      sheets.push(sheet);
      shelf = placeOn(sheet, cell);
    }
    if (shelf === null) throw new Error(`template ${cell.template.name} fits no sheet`);
    const { x, y }: Shelf = shelf;
    sheet.placed.push({ cell, x, y });
    (shelf as Shelf).x += cell.width + GAP;
  }
  return sheets.map(({ placed }) => placed);
}

/**
 * The templates of a plan as sheets at exactly full size, those that fit together on one sheet, larger ones in
 * parts to be joined. Those that `onPaper` has drawn by hand are left out.
 */
export function templateSheets(plan: Plan, words: Words): { names: string[]; scene: Scene }[] {
  const templates = plan.templates ?? [];
  const cells = templates.flatMap((template) => {
    const how = onPaper(template);
    return how === "sheet" || how === "turned"
      ? [templateCell(template, plan, how === "turned", ROOM.width, words)]
      : [];
  });
  const whole = shelved(cells).map((placed) => ({
    templates: placed.map(({ cell }) => cell.template),
    nodes: placed.flatMap(({ cell, x, y }) => cell.nodesAt(x, HEAD + y)),
  }));
  const tall = templates.flatMap((template) => {
    const how = onPaper(template);
    return how === "tall" || how === "tall-turned" ? [{ template, turned: how === "tall-turned" }] : [];
  });
  const divided = templates
    .filter((template) => onPaper(template) === "parts")
    .flatMap((template) =>
      templateTiles(template, plan, tilingOf(template, ROOM), ROOM, words).map((nodesAt) => ({
        templates: [template],
        nodes: nodesAt(HEAD),
      })),
    );
  const headed = [...whole, ...divided];
  const count = headed.length + tall.length;
  const sheet = (number: number, shown: readonly Template[], nodes: (title: string) => SceneNode[]) => {
    const title = words.drawings.templates.sheet(plan.name, number, count);
    return {
      names: shown.map(({ name }) => name),
      scene: scene(title, `templates-${number}-`, SHEET, nodes(title), words),
    };
  };
  return [
    ...headed.map(({ templates: shown, nodes }, i) =>
      sheet(i + 1, shown, (title) => [
        ...templateHead(title, signsOf(shown, words), SHEET.width, words),
        ...nodes,
      ]),
    ),
    ...tall.map(({ template, turned }, i) =>
      sheet(headed.length + i + 1, [template], (title) => [
        ...templateAlone(template, plan, turned, [1, 2], words),
        ...moveNodes(
          templateColumn(title, signsOf([template], words), captionBeside(template, plan, words), words),
          SHEET.width - COLUMN - 1,
          1,
        ),
      ]),
    ),
  ];
}

/** One template by itself, whole, however large: a file of its own. */
export function templateScene(plan: Plan, template: Template, words: Words): Scene {
  const { width: wide } = fullSize(template, false);
  const eighths = (units: number): number => Math.ceil(units / 12) * 12;
  const width = eighths(Math.max(HEAD_WIDTH, wide + 30));
  const cell = templateCell(template, plan, false, width, words);
  const title = words.drawings.templates.alone(plan.name, template.name);
  const size = { width, height: eighths(HEAD + cell.height + 8) };
  const nodes = [...templateHead(title, signsOf([template], words), width, words), ...cell.nodesAt(0, HEAD)];
  return scene(title, `template-${template.name.toLowerCase()}-`, size, nodes, words);
}

/** One template as SVG at exactly full size. */
export function drawTemplate(plan: Plan, template: Template, words: Words): string {
  return toSvg(templateScene(plan, template, words));
}
