import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { type Frame, NO_HEAD, PAGE_HEIGHT, TICKS_PER_MM } from "../scene/frame.ts";
import { moveNodes } from "../scene/move.ts";
import { labelOn, mix, safeColour } from "../scene/palette.ts";
import { MARGIN, onPaper } from "../scene/paper.ts";
import { group, type Scene, type SceneNode } from "../scene/scene.ts";
import { cleanText } from "../scene/text-fit.ts";
import { type DrawnFabric, photoPaint } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { arrangePanels, GUTTER, hasKeeps, type PlacedPanel, type View } from "./fabric-panels.ts";
import { legend, type SignsUsed } from "./legend.ts";
import { drawPanel } from "./panel.ts";
import { describe, titleFacts } from "./words.ts";

export interface DrawOptions {
  /** `usual` (the default) draws like strips once when there are many; `full` draws every one. */
  view?: View;
  /** Starts every id; default `cut-N-` with N the fabric's number from 1. */
  idPrefix?: string;
  /** Without a head, and so many page units high at most where it can be read so: to stand among words. */
  bare?: { room: number; width?: number };
}

/** Where a print's up points on cloth as it is drawn, its cut end above. */
const UP_ON_CLOTH = { along: 0, across: 90 } as const;

function frameFor(fabric: FabricPlan, plan: Plan, idPrefix: string, scale: number): Frame {
  const colour = safeColour(fabric.colour);
  const label = labelOn(colour);
  const { photo }: DrawnFabric = fabric;
  return {
    fabric,
    ruler: plan.ruler,
    idPrefix,
    colour,
    label,
    photo: photo === undefined ? null : photoPaint(photo, UP_ON_CLOTH[fabric.print.axis]),
    seam: mix(label, colour, 0.2),
    scale,
    perTick: scale / TICKS_PER_MM,
  };
}

/**
 * The cutting diagram of one fabric as plain data: title, cloth in panels, legend.
 * @param fabricIndex into `plan.fabrics`; it must exist.
 */
export function fabricScene(plan: Plan, fabricIndex: number, words: Words, options: DrawOptions = {}): Scene {
  const fabric = plan.fabrics[fabricIndex];
  if (fabric === undefined) throw new Error(`There is no fabric ${fabricIndex}`);
  const idPrefix = options.idPrefix ?? `cut-${fabricIndex + 1}-`;
  const frameAt = (scale: number): Frame => frameFor(fabric, plan, idPrefix, scale);
  const [name, planName] = [cleanText(fabric.name), cleanText(plan.name)];
  const { bare } = options;
  const head =
    bare === undefined
      ? titleBlock({
          over:
            planName === ""
              ? words.drawings.cutting.headings.drawing
              : `${words.drawings.cutting.headings.drawing} · ${planName}`,
          name,
          colour: safeColour(fabric.colour),
          facts: titleFacts(fabric, plan.ruler, words),
        })
      : NO_HEAD;
  const allSigns: SignsUsed = { gathered: true, keys: false, keeps: true };
  const below = legend(frameAt(1), allSigns, 0, words).bottom;
  const room = bare?.room ?? Math.max(380, PAGE_HEIGHT - head.height - below - 2 * MARGIN - 14);
  const { frame, placed, height } = arrangePanels(frameAt, options.view ?? "usual", room, words, bare?.width);

  const drawn = drawPanels(placed, frame, head.height, words);
  const nodes: SceneNode[] = [...head.nodes, ...drawn.nodes];
  const bottom = Math.max(head.height + height, drawn.bottom);
  const used: SignsUsed = {
    gathered: placed.some(({ panel }) => panel.chunks.some(({ kind }) => kind === "gap")),
    keys: drawn.keyed,
    keeps: hasKeeps(placed),
  };
  // On a page the pieces are told, and once for all diagrams what their signs mean.
  const foot = bare === undefined ? legend(frame, used, bottom + 14, words) : { nodes: [], bottom };
  nodes.push(...foot.nodes);
  return {
    idPrefix,
    title: `${words.drawings.cutting.headings.drawing}: ${name}`,
    description: describe(plan, fabric, words),
    ...onPaper(nodes, foot.bottom, bare?.width),
  };
}

/** Panels of cloth on a page, whose cloth begins at `top`. */
function drawPanels(placed: readonly PlacedPanel[], frame: Frame, top: number, words: Words) {
  let [keyed, bottom] = [false, 0];
  const nodes = placed.map(({ panel, x, y }): SceneNode => {
    const drawn = drawPanel(panel, frame, words);
    keyed ||= drawn.keyed;
    bottom = Math.max(bottom, top + y + drawn.size.height);
    return group(moveNodes(drawn.nodes, x, top + y), { id: panel.id });
  });
  return { nodes, keyed, bottom };
}

/**
 * The bare diagram of one fabric, in several pictures where one would be higher than `tallest` page units: rows of panels
 * stay whole.
 */
export function fabricScenes(
  plan: Plan,
  fabricIndex: number,
  words: Words,
  room: number,
  tallest: number,
): Scene[] {
  const whole = fabricScene(plan, fabricIndex, words, { bare: { room } });
  const fabric = plan.fabrics[fabricIndex];
  if (fabric === undefined || whole.height <= tallest) return [whole];
  const frameAt = (scale: number): Frame => frameFor(fabric, plan, whole.idPrefix, scale);
  const { frame, placed, height } = arrangePanels(frameAt, "usual", room, words);
  const rows = [...new Set(placed.map(({ y }) => y))];
  const tops: number[] = [];
  for (const [i, row] of rows.entries()) {
    const top = tops.at(-1);
    const bottom = (rows[i + 1] ?? height + GUTTER) - GUTTER;
    if (top === undefined || bottom - top > tallest) tops.push(row);
  }
  return tops.map((top, i): Scene => {
    const idPrefix = `${whole.idPrefix}${i + 1}-`;
    const own = placed.filter(({ y }) => y >= top && y < (tops[i + 1] ?? Infinity));
    const { nodes, bottom } = drawPanels(own, { ...frame, idPrefix }, -top, words);
    return { ...whole, idPrefix, ...onPaper(nodes, bottom) };
  });
}

/** The cutting diagram of one fabric as an SVG document. Same input, same bytes. */
export function drawFabric(plan: Plan, fabricIndex: number, words: Words, options: DrawOptions = {}): string {
  return toSvg(fabricScene(plan, fabricIndex, words, options));
}
