import { unitGroups } from "../../content/sewing/unit-groups.ts";
import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { spokenSize } from "../cutting/words.ts";
import { toSvg } from "../scene/canvas.ts";
import { fabricList } from "../scene/fabric-list.ts";
import { PAGE_HEIGHT, PAGE_WIDTH } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, isolated, wrap } from "../scene/text-fit.ts";
import { titleBlock } from "../scene/title-block.ts";
import { BETWEEN, type LaidPanel, layPanel } from "./draw-panel.ts";
import { keyNodes, type Signs } from "./key.ts";
import type { Panel } from "./panel.ts";
import type { StepFabric } from "./step-fabric.ts";
import { settingPanels } from "./triangles.ts";
import { unitOutlines } from "./unit-outlines.ts";
import { unitPictures } from "./unit-panels.ts";

/** Longest side of a raw unit in its pictures: pieces are drawn to one scale as far as they fit. */
const UNIT_SIDE = 128;
/** No piece is drawn larger than this to the tick, so that small units keep their scale beside large ones. */
const TITLE = 15;
const HEADING = 16;
const UNDER = 10;

export interface Told {
  /** Into `making.units`; null for triangles of the setting. */
  unit: number | null;
  title: string;
  /** Units sewn as the pictures show, with other bags: a line for each. */
  under: string[];
  groups: { heading: string; panels: Panel[] }[];
  /** Page units to a tick. */
  most: number;
}

/** Blocks of a page that are never parted: a row of panels, with the title above it where it is the first. */
interface Strip {
  height: number;
  draw(y: number): SceneNode[];
}

function rowsOf(panels: readonly LaidPanel[]): LaidPanel[][] {
  const rows: LaidPanel[][] = [];
  let used = PAGE_WIDTH + 1;
  for (const panel of panels) {
    if (used + panel.width > PAGE_WIDTH + 0.5) {
      rows.push([panel]);
      used = panel.width + BETWEEN;
    } else {
      rows.at(-1)?.push(panel);
      used += panel.width + BETWEEN;
    }
  }
  return rows;
}

function stripsOf(told: Told, fabrics: readonly StepFabric[]): Strip[] {
  const lines = wrap(cleanText(told.title), PAGE_WIDTH, 11.5, 2, true);
  const under = told.under.flatMap((line) => wrap(cleanText(line), PAGE_WIDTH, UNDER, 3, false));
  return told.groups.flatMap(({ heading, panels }, g) => {
    const laid = panels.map((panel) => layPanel(panel, told.most, fabrics));
    return rowsOf(laid).map((row, r): Strip => {
      const title = g === 0 && r === 0 ? lines : [];
      const sub = r === 0 && heading !== "" ? heading : "";
      const below = title.length > 0 ? under : [];
      const above =
        title.length * TITLE +
        below.length * HEADING +
        (title.length > 0 ? 6 : 0) +
        (sub === "" ? 0 : HEADING);
      const high = Math.max(...row.map(({ height }) => height));
      return {
        height: above + high + BETWEEN,
        draw(y) {
          const nodes: SceneNode[] = title.map((text, i) =>
            textIn(
              text,
              { x: 0, y: y + i * TITLE, width: PAGE_WIDTH, height: TITLE },
              { size: 11.5, bold: true },
            ),
          );
          nodes.push(
            ...below.map((text, i) =>
              textIn(
                text,
                { x: 0, y: y + title.length * TITLE + i * HEADING, width: PAGE_WIDTH, height: HEADING },
                { size: UNDER },
              ),
            ),
          );
          if (sub !== "")
            nodes.push(
              textIn(
                sub,
                { x: 0, y: y + above - HEADING, width: PAGE_WIDTH, height: HEADING - 3 },
                { size: 10 },
              ),
            );
          let x = 0;
          for (const panel of row) {
            nodes.push(...panel.draw(x, y + above, high));
            x += panel.width + BETWEEN;
          }
          return nodes;
        },
      };
    });
  });
}

/** Letters of the bags that units take: the other triangles are those of the setting. */
function ofUnits(making: Making): Set<string> {
  return new Set(
    making.units.flatMap(({ heaps }) =>
      heaps.flatMap(({ patches }) => patches.flatMap(({ letters }) => letters)),
    ),
  );
}

/** What is told of every unit with steps, then of the setting triangles. */
export function toldOf(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): Told[] {
  const outlines = unitOutlines(top, making);
  const of = { seam: making.seam, fabrics, ruler, outlines };
  // Units that are sewn alike have one set of pictures, in the fabrics of the first.
  const units = unitGroups({ making, fabrics }, words).flatMap(({ units: alike, columns }): Told[] => {
    const [unit] = alike;
    const pictures = unit === undefined ? null : unitPictures(unit, making.units.indexOf(unit), of, words);
    if (unit === undefined || pictures === null) return [];
    const others = alike.slice(1).map(({ name, units: count }, i) => {
      // The pictures show the bags of the first unit.
      const bags = columns.flatMap(({ bags: own }) => {
        const { letters = [], fabric = "" } = own[i + 1] ?? {};
        const [shown, taken] = [own[0]?.letters.join("/") ?? "", letters.join("/")];
        return shown === taken ? [] : [words.drawings.steps.instead(shown, taken, isolated(fabric))];
      });
      return words.drawings.steps.alsoTakes(name, count, bags);
    });
    // How the seams are pressed follows from the blocks, and may differ from one to another: the words tell it.
    const inBlocks = making.unitPressing.some((own) => making.units[own.unit] === unit);
    const bare = ({ figures, ...panel }: Panel): Panel => ({
      ...panel,
      figures: figures.map((each) => ({ ...each, pressed: [] })),
    });
    return [
      {
        unit: making.units.indexOf(unit),
        title: titleOf(unit, words),
        under: [...others, ...(inBlocks ? [words.drawings.steps.pressedInBlocks] : [])],
        groups: inBlocks
          ? pictures.groups.map((group) => ({ ...group, panels: group.panels.map(bare) }))
          : pictures.groups,
        most: UNIT_SIDE / Math.max(unit.raw.across, unit.raw.along),
      },
    ];
  });
  const known = ofUnits(making);
  const setting = fabrics.flatMap((fabric) =>
    fabric.pieces
      .filter(({ letter, subcut }) => !known.has(letter) && subcut.endsWith("diagonal"))
      .map(
        (piece): Told => ({
          unit: null,
          under: [],
          title: words.drawings.steps.triangles(
            `${piece.count} ${piece.letter}, ${isolated(fabric.name)}, ${spokenSize(piece.across, piece.along, ruler)}`,
          ),
          groups: [{ heading: "", panels: [{ number: "", ...settingPanels(piece, fabric, words) }] }],
          most: UNIT_SIDE / Math.max(piece.across, piece.along),
        }),
      ),
  );
  return [...units, ...setting];
}

/** Which signs the pictures use. */
export function signsOf(told: readonly Told[], fabrics: readonly StepFabric[]): Signs {
  const figures = told.flatMap(({ groups }) =>
    groups.flatMap(({ panels }) => panels.flatMap((panel) => panel.figures)),
  );
  const layers = figures.flatMap((each) => each.layers);
  const kindOf = (name: string) => fabrics.find((fabric) => fabric.name === name)?.print.kind;
  const ways = new Set(layers.filter(({ up }) => up !== null).map(({ fabric }) => kindOf(fabric)));
  return {
    wrong: layers.some(({ side }) => side === "wrong"),
    ruled: figures.some(({ ruled }) => ruled.length > 0),
    sewn: figures.some(({ sewn }) => sewn.length > 0),
    cut: figures.some(({ cuts }) => cuts.length > 0),
    pressed: figures.some(({ pressed }) => pressed.length > 0),
    oneWay: ways.has("one-way"),
    twoWay: ways.has("two-way"),
    stops: figures.some(({ stops }) => stops.length > 0),
  };
}

/** A strip of pictures at its height on a sheet, and the unit it is of. */
interface OnSheet {
  unit: number;
  strip: Strip;
  y: number;
}

/** Deals the strips of all units out to sheets; the first has a head of its own height. */
function onSheets(
  strips: readonly (readonly Strip[])[],
  [first = 0, further = 0]: readonly number[],
): OnSheet[][] {
  const pages: OnSheet[][] = [[]];
  let y = first;
  for (const [unit, own] of strips.entries()) {
    for (const [i, strip] of own.entries()) {
      if (y + strip.height > PAGE_HEIGHT && (pages.at(-1)?.length ?? 0) > 0) {
        pages.push([]);
        y = further;
      }
      pages.at(-1)?.push({ unit, strip, y });
      y += strip.height + (i === own.length - 1 ? 10 : 0);
    }
  }
  return pages;
}

/** How every unit is sewn, in pictures: one scene for each sheet, none where nothing is sewn from units. */
export function unitStepsScenes(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): Scene[] {
  const told = toldOf(top, making, fabrics, ruler, words);
  if (told.length === 0) return [];
  const name = cleanText(top.name);
  const facts = [
    {
      caption: words.drawings.unitSheet.over,
      value: String(making.units.filter(({ steps }) => steps.length > 0).length),
    },
  ];
  const used = new Set(
    making.units.filter(({ steps }) => steps.length > 0).flatMap(({ fabrics: own }) => Object.values(own)),
  );
  const shown = signsOf(told, fabrics);
  const headOf = (page: number, pages: number): { nodes: SceneNode[]; height: number } => {
    const head = titleBlock({
      over: words.drawings.steps.over,
      name: words.drawings.steps.name(name, page + 1, pages),
      colour: null,
      facts: page === 0 ? facts : [],
    });
    if (page > 0) return head;
    const list = fabricList(fabrics, used, {
      scale: 1,
      heading: words.drawings.quilt.fabrics,
      top: head.height,
    });
    const key = keyNodes(fabrics, shown, list.bottom, words);
    return { nodes: [...head.nodes, ...list.nodes, ...key.nodes], height: key.bottom + 8 };
  };
  // The head of the first sheet is higher than the others'; how many sheets there are does not change them.
  const heights = [headOf(0, 2).height, headOf(1, 2).height];
  const strips = told.map((each) => stripsOf(each, fabrics));
  const pages = onSheets(strips, heights);
  return pages.map((entries, page): Scene => {
    const head = headOf(page, pages.length);
    const nodes = [...head.nodes];
    let bottom = head.height;
    for (const { strip, y } of entries) {
      nodes.push(...strip.draw(y));
      bottom = y + strip.height;
    }
    return {
      idPrefix: `steps-${page + 1}-`,
      title: `${words.drawings.steps.over}: ${words.drawings.steps.name(name, page + 1, pages.length)}`,
      description: words.drawings.steps.description(new Set(entries.map(({ unit }) => unit)).size),
      ...onPaper(nodes, bottom),
    };
  });
}

/** The same as SVG documents, one for each sheet. */
export function drawUnitSteps(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): string[] {
  return unitStepsScenes(top, making, fabrics, ruler, words).map(toSvg);
}

function titleOf({ name, told, method, units }: Making["units"][number], words: Words): string {
  const { drawings, unitNames } = words;
  return drawings.steps.unit(name, unitNames.told(told), unitNames.method(method), units);
}
