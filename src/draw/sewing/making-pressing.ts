import type { Making, PressedSeam } from "../../making/types.ts";
import type { BlockDesign, Patch, QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { outlineNodes, type Placing, patchNodes, rectangle, ticksOf } from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import { toSvg } from "../scene/canvas.ts";
import { NO_HEAD, PAGE_WIDTH, type SewnQuilt, type Standing, TICKS_PER_MM } from "../scene/frame.ts";
import { freeStretches } from "../scene/free-stretch.ts";
import { arrow } from "../scene/marks.ts";
import { INK, mix, PAPER, safeColour } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { circle, line, type Scene, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";

const TALLEST = 520;
const PANELS = 3;
const GAP = 16;
const TALLEST_PANEL = 210;
/** Arrows: reach either side of the seam, in page units. */
const LONGEST = 9;
const SHORTEST = 2.6;
/** Below this many page units a letter would not fit its block. */
const LEAST_FOR_LETTER = 14;

const TURN: Record<PressedSeam["press"], number> = { right: 0, down: 90, left: 180, up: 270 };

type Free = ReturnType<typeof freeStretches>;

/** Where the corners of patches lie, in ticks: other seams meet a seam there. */
function cornersOf(patches: readonly Patch[]): (readonly [number, number])[] {
  return patches.flatMap(({ outline }) => outline.map(({ x, y }) => [ticksOf(x), ticksOf(y)] as const));
}

/** An arrow across a seam, where no other seam meets it; none where there is no room for one. */
function pressArrow(seam: PressedSeam, at: Placing, tilt: number, room: number, free: Free): SceneNode[] {
  const angle = ((TURN[seam.press] + tilt) * Math.PI) / 180;
  const per = at.scale / TICKS_PER_MM;
  const stretch = free(seam);
  const [x, y] = [at.x + stretch.x * per, at.y + stretch.y * per];
  const length = stretch.length * per;
  const reach = Math.min(LONGEST, room * 0.48, length * 0.4);
  if (reach < SHORTEST) return [];
  const [dx, dy] = [Math.cos(angle) * reach, Math.sin(angle) * reach];
  const weight = Math.min(1, Math.max(0.7, reach / 7));
  return [
    ...arrow([x - dx, y - dy], [x + dx, y + dy], PAPER, 1, weight * 1.9),
    ...arrow([x - dx, y - dy], [x + dx, y + dy], INK, 1, weight),
  ];
}

/** Seams as lines, those sewn last the heaviest. */
function seamLines(seams: readonly PressedSeam[], at: Placing): SceneNode[] {
  const per = at.scale / TICKS_PER_MM;
  const weights = { unit: 0.5, row: 0.9, rows: 1.5 } as const;
  return seams.map(({ x1, y1, x2, y2, level }) =>
    line(at.x + x1 * per, at.y + y1 * per, at.x + x2 * per, at.y + y2 * per, {
      stroke: INK,
      strokeWidth: weights[level],
    }),
  );
}

/** Share of paper in a fabric's colour, so that seams and arrows stand out from it. */
const PALE = 0.62;

/** The fabrics as pale grounds: which patch is which is still seen. */
function paleFabrics(fabrics: readonly DrawnFabric[]): DrawnFabric[] {
  return fabrics.map(({ name, colour }) => ({ name, colour: mix(safeColour(colour), PAPER, PALE) }));
}

/** Patches as the ground of seams and arrows, without textures. */
function ground(
  patches: readonly Patch[],
  fabrics: readonly DrawnFabric[],
  at: Placing,
  id: string,
): SceneNode[] {
  const pale = paleFabrics(fabrics);
  const used = pale.filter(({ name }) => patches.some(({ fabric }) => fabric === name));
  return used.flatMap((fabric, i) =>
    patchNodes(
      patches.filter((patch) => patch.fabric === fabric.name),
      [fabric],
      at,
      { id: `${id}-${i + 1}`, arrows: false },
    ),
  );
}

/** Smallest distance there is from a seam to its like beside it, in page units: what an arrow may take. */
function roomBetween(seams: readonly PressedSeam[], width: number, at: Placing): number {
  const places = [...new Set(seams.filter(({ x1, x2 }) => x1 === x2).map(({ x1 }) => x1))].sort(
    (a, b) => a - b,
  );
  const gaps = places.slice(1).map((x, i) => x - (places[i] ?? 0));
  return (Math.min(width, ...gaps) * at.scale) / TICKS_PER_MM;
}

/** The number of every block whose design has several kinds. */
function numbers(top: QuiltTop, { kinds, kindOf }: Making, at: Placing): SceneNode[] {
  const per = at.scale / TICKS_PER_MM;
  return top.blocks.flatMap(({ outline }, i): SceneNode[] => {
    const number = kinds[kindOf[i] ?? -1]?.number ?? 0;
    const xs = outline.map(({ x }) => ticksOf(x) * per);
    const ys = outline.map(({ y }) => ticksOf(y) * per);
    const [left, upper] = [Math.min(...xs), Math.min(...ys)];
    const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - upper];
    if (number === 0 || Math.min(width, height) < LEAST_FOR_LETTER) return [];
    const size = Math.min(14, height * 0.4);
    const box = { x: at.x + left, y: at.y + upper, width, height };
    return [textIn(String(number), box, { size, bold: true, anchor: "middle" })];
  });
}

export function blockPanel(
  design: BlockDesign,
  fabrics: readonly DrawnFabric[],
  seams: readonly PressedSeam[],
  title: string,
  frame: { x: number; y: number; width: number; id: string },
): { nodes: SceneNode[]; height: number } {
  const [across, down] = [ticksOf(design.across) / TICKS_PER_MM, ticksOf(design.down) / TICKS_PER_MM];
  const scale = Number(Math.min(frame.width / across, TALLEST_PANEL / down, 2).toFixed(6));
  const at = { x: frame.x + 1, y: frame.y + 18, scale };
  const room = roomBetween(seams, ticksOf(design.across), at);
  const free = freeStretches(cornersOf(design.patches));
  const heading = { x: frame.x, y: frame.y, width: frame.width, height: 14 };
  return {
    nodes: [
      textIn(cleanText(title), heading, { size: 10, bold: true }),
      ...ground(design.patches, fabrics, at, `${frame.id}-patches`),
      ...seamLines(seams, at),
      ...outlineNodes([rectangle(0, 0, across, down)], at, 1.2, `${frame.id}-edge`),
      ...seams.flatMap((seam) => pressArrow(seam, at, 0, room, free)),
    ],
    height: 18 + down * scale + 14,
  };
}

/** What is drawn below the top: blocks pressed alike in different colours once. */
export function panelsOf(
  top: QuiltTop,
  { pressing, kinds, blocks }: Making,
  words: Words,
): { design: number; seams: readonly PressedSeam[]; title: string }[] {
  const alike = new Map<
    string,
    { design: number; seams: PressedSeam[]; names: string[]; counts: number[] }
  >();
  for (const { design, variant, count, seams } of pressing?.blocks ?? []) {
    if (seams.length === 0) continue;
    const key = JSON.stringify([top.designs[design]?.name, variant, seams]);
    const group = alike.get(key) ?? { design, seams, names: [], counts: [] };
    group.counts.push(count);
    const own = kinds.filter((kind) => kind.variant === variant && blocks[kind.making]?.design === design);
    group.names.push(...own.map(({ name }) => name));
    alike.set(key, group);
  }
  return [...alike.values()].map(({ design, seams, names, counts }) => {
    const count = counts.reduce((sum, each) => sum + each, 0);
    const called =
      names.length > 0 && names.length < 4 ? names.join(", ") : (top.designs[design]?.name ?? "");
    return { design, seams, title: words.drawings.sewing.pressing.block(called, count) };
  });
}

/** The pressing map as plain data: the top with an arrow at each seam between blocks, then every block. */
export function pressingScene(
  quilt: SewnQuilt,
  words: Words,
  { bare = false, width: wide = PAGE_WIDTH, tallest = TALLEST }: Standing = {},
): Scene | null {
  const { top, making, ruler } = quilt;
  const { pressing } = making;
  if (pressing === null) return null;
  const [across, down] = [ticksOf(top.across), ticksOf(top.down)];
  const name = cleanText(top.name);
  const facts = [
    { caption: words.drawings.sewing.finishedSize, value: spokenSizeNear(across, down, ruler) },
    { caption: words.drawings.sewing.pressing.places, value: String(pressing.junctions) },
    { caption: words.drawings.sewing.pressing.notNested, value: String(pressing.open.length) },
  ];
  const head = bare
    ? NO_HEAD
    : titleBlock({ over: words.drawings.sewing.pressing.over, name, colour: null, facts });
  const fit = Math.min((wide - 4) / across, tallest / down) * TICKS_PER_MM;
  const scale = Number(Math.min(fit, 1).toFixed(6));
  const per = scale / TICKS_PER_MM;
  const at = { x: Math.max(2, (wide - across * per) / 2), y: head.height + 4, scale };
  const map = pressedTop(quilt, pressing, at);
  // On a page of words a map of many small blocks would show seams and no arrows: the words say it then.
  if (bare && !map.tells) return null;
  const nodes: SceneNode[] = [...head.nodes, ...map.nodes];
  let y = at.y + down * per + 10;
  const notes = pressingNotes(making, pressing, map.arrows, words);
  for (const text of notes.flatMap((note) => wrap(note, wide, 9.5, 3))) {
    nodes.push(textIn(text, { x: 0, y, width: wide, height: 13 }, { size: 9.5 }));
    y += 14;
  }
  // On a page the blocks are shown where they are sewn.
  const panels = bare ? { nodes: [], bottom: y + 8 } : blockPanels(quilt, y + 8, wide, words);
  nodes.push(...panels.nodes);
  return {
    idPrefix: "pressing-",
    title: `${words.drawings.sewing.pressing.over}: ${name}`,
    description: words.drawings.sewing.pressing.described(pressing.junctions, pressing.open.length),
    ...onPaper(nodes, panels.bottom, wide),
  };
}

type Pressing = NonNullable<Making["pressing"]>;

interface PressedTop {
  nodes: SceneNode[];
  /** How many seams have room for their arrow. */
  arrows: number;
  /** It tells more than where seams are: it has arrows at half of them at least, or other signs. */
  tells: boolean;
}

/** The top with its seams, which way each is pressed, and rings and dots where seams do not nest or lie thick. */
function pressedTop({ top, making, fabrics }: SewnQuilt, pressing: Pressing, at: Placing): PressedTop {
  const [across, down] = [ticksOf(top.across), ticksOf(top.down)];
  const per = at.scale / TICKS_PER_MM;
  const tilt = top.centre.onPoint ? 45 : 0;
  const free = freeStretches(cornersOf(top.patches));
  const room = tilt === 0 ? roomBetween(pressing.seams, across, at) : LONGEST * 3;
  const whole = rectangle(0, 0, across / TICKS_PER_MM, down / TICKS_PER_MM);
  const ringed = pressing.open.map(({ x, y }) =>
    circle(at.x + x * per, at.y + y * per, 4.5, { fill: "none", stroke: INK, strokeWidth: 1.4 }),
  );
  const thick = pressing.bulk.over.map(({ x, y }) =>
    circle(at.x + x * per, at.y + y * per, 2.4, { fill: INK, stroke: PAPER, strokeWidth: 0.8 }),
  );
  const arrows = pressing.seams.map((seam) => pressArrow(seam, at, tilt, room, free));
  const there = arrows.filter((one) => one.length > 0).length;
  const numbered = numbers(top, making, at);
  const nodes = [
    ...ground(top.patches, fabrics, at, "patches"),
    ...seamLines(pressing.seams, at),
    ...outlineNodes([whole], at, 1.4, "edge"),
    ...arrows.flat(),
    ...numbered,
    ...thick,
    ...ringed,
  ];
  const signs = [numbered, ringed, thick].some(({ length }) => length > 0);
  return { nodes, arrows: there, tells: signs || there * 2 >= arrows.length };
}

/** What the signs of the map mean, those that are on it. */
function pressingNotes({ kinds }: Making, { open, bulk }: Pressing, arrows: number, words: Words): string[] {
  const said = words.drawings.sewing.pressing;
  return [
    ...(arrows > 0 ? [said.arrows] : []),
    ...(kinds.some(({ number }) => number > 0) ? [said.numbers] : []),
    ...(open.length > 0 ? [said.rings] : []),
    ...(bulk.over.length > 0 ? [said.dots] : []),
  ];
}

/** Every kind of block as it is pressed, in rows from a height down. */
function blockPanels(
  { top, making, fabrics }: SewnQuilt,
  from: number,
  wide: number,
  words: Words,
): { nodes: SceneNode[]; bottom: number } {
  const nodes: SceneNode[] = [];
  const panels = panelsOf(top, making, words);
  const width = (wide - (PANELS - 1) * GAP) / PANELS;
  let y = from;
  for (let first = 0; first < panels.length; first += PANELS) {
    let deepest = 0;
    for (const [i, { design, seams, title }] of panels.slice(first, first + PANELS).entries()) {
      const drawn = top.designs[design];
      if (drawn === undefined) continue;
      const frame = { x: i * (width + GAP), y, width, id: `panel-${first + i + 1}` };
      const panel = blockPanel(drawn, fabrics, seams, title, frame);
      nodes.push(...panel.nodes);
      deepest = Math.max(deepest, panel.height);
    }
    y += deepest;
  }
  return { nodes, bottom: y };
}

/** The pressing map as an SVG document; null when the plan has none. */
export function drawPressing(quilt: SewnQuilt, words: Words): string | null {
  const scene = pressingScene(quilt, words);
  return scene === null ? null : toSvg(scene);
}
