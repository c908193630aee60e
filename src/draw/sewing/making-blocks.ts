import type { Ruler } from "../../length/types.ts";
import type { JoinStep, Making } from "../../making/types.ts";
import type { BlockDesign, Patch, QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { type Corner, outlineOf, type Placing, patchNodes, ticksOf } from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import { arrowBoxes, tag, tagOfUnit } from "../quilt/unit-tags.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Box, Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { whorlOf, whorlPanel } from "./whorl.ts";

const PANELS = 3;
const BETWEEN = 20;
const TALLEST = 210;
/** For the numbers of the rows, left of a block. */
const LEFT = 16;
/** Page units that open at a joining: the last one widest, then those inside it. */
const GAPS = [11, 5, 3] as const;
/** Blocks of one sewing in other colours are not drawn again; more than this are left out. */
const MOST = 24;

interface Apart {
  join: JoinStep;
  gap: number;
  box: { x: number; y: number; right: number; bottom: number };
  /** Where each part but the first begins, along the joining. */
  starts: number[];
}

/** The joinings of one block with what they open, from the last to the first, in millimetres. */
function apartOf(joins: readonly JoinStep[], scale: number, seam: number): Apart[] {
  const mm = (value: number): number => value / scale / TICKS_PER_MM;
  const allowance = 2 * seam * scale;
  const boxes = joins.map((join) => {
    const [x, y] = [mm(join.at.x), mm(join.at.y)];
    const [across, down] = [mm(join.size.across - allowance), mm(join.size.down - allowance)];
    return { join, box: { x, y, right: x + across, bottom: y + down } };
  });
  return boxes.map(({ join, box }): Apart => {
    const inside = boxes.filter(
      (each) =>
        each.box.x <= box.x &&
        each.box.y <= box.y &&
        each.box.right >= box.right &&
        each.box.bottom >= box.bottom &&
        each.box !== box,
    );
    const starts: number[] = [];
    let at = join.way === "across" ? box.x : box.y;
    for (const part of join.parts.slice(0, -1)) {
      at += mm((join.way === "across" ? part.across : part.down) - allowance);
      starts.push(at);
    }
    return { join, box, starts, gap: GAPS[Math.min(inside.length, GAPS.length - 1)] ?? 0 };
  });
}

/** How far a place moves when every joining about it is opened, in page units. */
function shiftOf([x, y]: Corner, aparts: readonly Apart[]): [number, number] {
  let [dx, dy] = [0, 0];
  for (const { join, box, starts, gap } of aparts) {
    if (x < box.x || x > box.right || y < box.y || y > box.bottom) continue;
    const across = join.way === "across";
    const passed = starts.filter((start) => start < (across ? x : y)).length;
    if (across) dx += passed * gap;
    else dy += passed * gap;
  }
  return [dx, dy];
}

function middleOf(patch: Patch): Corner {
  const corners = outlineOf(patch.outline);
  const sum = corners.reduce(([a, b], [x, y]): Corner => [a + x, b + y], [0, 0]);
  return [sum[0] / corners.length, sum[1] / corners.length];
}

/** A block of the top, and its number among the designs. */
interface Block {
  design: BlockDesign;
  index: number;
}

/** A block set apart as it is joined, its units named, its rows (or columns) numbered. */
export function panel(
  { design, index }: Block,
  making: Making,
  fabrics: readonly DrawnFabric[],
  title: string,
  frame: { x: number; y: number; width: number },
): { nodes: SceneNode[]; height: number; scale: number } {
  const joins = making.joins.filter((join) => join.design === index && join.stage === "block");
  const aparts = apartOf(joins, making.scale, making.seam);
  const [across, down] = [ticksOf(design.across) / TICKS_PER_MM, ticksOf(design.down) / TICKS_PER_MM];
  const [wide, high] = shiftOf([across, down], aparts);
  const opened = widest(design, aparts, [wide, high]);
  const room = frame.width - LEFT - opened[0];
  const scale = Number(Math.min(room / across, (TALLEST - opened[1]) / down, 1).toFixed(6));
  const last = aparts.at(-1);
  // The numbers of columns stand above them.
  const above = last?.join.way === "across" ? 34 : 18;
  const at: Placing = { x: frame.x + LEFT, y: frame.y + above, scale };
  const middles = new Map(design.patches.map((patch) => [patch, unitMiddle(patch, design)]));
  const shift = (patch: Patch): Corner => {
    const [dx, dy] = shiftOf(middles.get(patch) ?? middleOf(patch), aparts);
    return [dx / scale, dy / scale];
  };
  const id = `parts-${index + 1}`;
  const arrows = arrowBoxes(design.patches, at, shift);
  const tags = unitTags({ design, index }, making, at, arrows, (x, y) => shiftOf([x, y], aparts));
  const numbers = last === undefined ? [] : lineNumbers(last, at, aparts);
  return {
    nodes: [
      textIn(
        cleanText(title),
        { x: frame.x, y: frame.y, width: frame.width, height: 14 },
        { size: 10, bold: true },
      ),
      ...patchNodes(design.patches, fabrics, at, { id, shift }),
      ...tags,
      ...numbers,
    ],
    height: above + down * scale + opened[1] + 16,
    scale,
  };
}

/** The name of each unit on it, as the steps call it; `moved`: how far a unit with this middle stands off, in page units. */
function unitTags(
  { design, index }: Block,
  making: Making,
  at: Placing,
  arrows: readonly Box[],
  moved: (x: number, y: number) => readonly [number, number],
): SceneNode[] {
  const [made] = making.blocks.filter((each) => each.design === index);
  const mm = (value: BlockDesign["across"]): number => ticksOf(value) / TICKS_PER_MM;
  return design.units.flatMap((unit, i) => {
    const [x, y, across, down] = [mm(unit.x), mm(unit.y), mm(unit.across), mm(unit.down)];
    const [dx, dy] = moved(x + across / 2, y + down / 2);
    return tag(
      tagOfUnit(made?.units[i], making),
      {
        x: at.x + x * at.scale + dx,
        y: at.y + y * at.scale + dy,
        width: across * at.scale,
        height: down * at.scale,
      },
      arrows,
    );
  });
}

/** A unit moves as a whole: by its own middle. */
function unitMiddle(patch: Patch, design: BlockDesign): Corner {
  const unit = design.units[patch.origin.unit ?? -1];
  if (unit === undefined) return middleOf(patch);
  const mm = (value: BlockDesign["across"]): number => ticksOf(value) / TICKS_PER_MM;
  return [mm(unit.x) + mm(unit.across) / 2, mm(unit.y) + mm(unit.down) / 2];
}

/** What all the joinings open together, right and down. */
function widest(design: BlockDesign, aparts: readonly Apart[], corner: [number, number]): [number, number] {
  let [wide, high] = corner;
  for (const { x, y, across, down } of design.units) {
    const mm = (value: BlockDesign["across"]): number => ticksOf(value) / TICKS_PER_MM;
    const [dx, dy] = shiftOf([mm(x) + mm(across) / 2, mm(y) + mm(down) / 2], aparts);
    wide = Math.max(wide, dx);
    high = Math.max(high, dy);
  }
  return [wide, high];
}

/** Numbers of the rows (or columns) joined last. */
function lineNumbers({ join, box, starts, gap }: Apart, at: Placing, aparts: readonly Apart[]): SceneNode[] {
  const rows = join.way === "down";
  const edges = [rows ? box.y : box.x, ...starts, rows ? box.bottom : box.right];
  const inner = (middle: number): number =>
    rows ? shiftOf([box.x, middle], aparts)[1] : shiftOf([middle, box.y], aparts)[0];
  return edges.slice(1).map((edge, i) => {
    const from = edges[i] ?? 0;
    const middle = (from + edge) / 2;
    const size = 9;
    const text = String(i + 1);
    if (rows) {
      const y = at.y + middle * at.scale + Math.max(i * gap, Math.min(inner(middle), i * gap));
      return textIn(
        text,
        { x: at.x - LEFT, y: y - 7, width: LEFT - 5, height: 14 },
        { size, bold: true, anchor: "end" },
      );
    }
    const x = at.x + middle * at.scale + i * gap;
    return textIn(
      text,
      { x: x - 8, y: at.y - 15, width: 16, height: 14 },
      { size, bold: true, anchor: "middle" },
    );
  });
}

/** Every block that is sewn from units, its parts set apart as they are joined; null when there is none. */
export function blocksScene(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): Scene | null {
  const sewn = top.designs.flatMap((design, index) =>
    design.count > 0 &&
    (making.joins.some((join) => join.design === index && join.stage === "block") ||
      whorlOf(making, index) !== null)
      ? [{ design, index }]
      : [],
  );
  if (sewn.length === 0) return null;
  const name = cleanText(top.name);
  const facts = [{ caption: words.drawings.sewing.blocks.count, value: String(sewn.length) }];
  const head = titleBlock({ over: words.drawings.sewing.blocks.over, name, colour: null, facts });
  const nodes: SceneNode[] = [...head.nodes];
  let y = head.height;
  for (const text of wrap(words.drawings.sewing.blocks.order, PAGE_WIDTH, 9.5, 3)) {
    nodes.push(textIn(text, { x: 0, y, width: PAGE_WIDTH, height: 13 }, { size: 9.5 }));
    y += 13;
  }
  y += 9;
  const width = (PAGE_WIDTH - (PANELS - 1) * BETWEEN) / PANELS;
  const shown = sewn.slice(0, MOST);
  for (let first = 0; first < shown.length; first += PANELS) {
    let deepest = 0;
    for (const [i, { design, index }] of shown.slice(first, first + PANELS).entries()) {
      const size = spokenSizeNear(ticksOf(design.across), ticksOf(design.down), ruler);
      const called = design.colourway === "" ? design.name : `${design.name}, ${design.colourway}`;
      const title = words.drawings.sewing.blocks.block(called, design.count, size);
      const frame = { x: i * (width + BETWEEN), y, width };
      const order = whorlOf(making, index);
      const drawn =
        order === null
          ? panel({ design, index }, making, fabrics, title, frame)
          : whorlPanel(design, order, fabrics, title, { ...frame, id: `parts-${index + 1}` });
      nodes.push(...drawn.nodes);
      deepest = Math.max(deepest, drawn.height);
    }
    y += deepest;
  }
  return {
    idPrefix: "parts-",
    title: `${words.drawings.sewing.blocks.over}: ${name}`,
    description: words.drawings.sewing.blocks.described(shown.length),
    ...onPaper(nodes, y),
  };
}

/** The blocks set apart, as an SVG document; null when there is none to show. */
export function drawBlockSteps(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): string | null {
  const scene = blocksScene(top, making, fabrics, ruler, words);
  return scene === null ? null : toSvg(scene);
}
