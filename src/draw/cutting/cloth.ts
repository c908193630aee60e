import type { Part, WasteCause } from "../../plan/types.ts";
import { type Frame, TICKS_PER_MM } from "../scene/frame.ts";
import { hatchLines } from "../scene/hatch.ts";
import { INK, PAPER, WASTE_GROUND, WASTE_INK } from "../scene/palette.ts";
import { type Box, cornersOf, group, path, type RectNode, rect, type SceneNode } from "../scene/scene.ts";
import type { ClothChunk } from "./chunks.ts";
import { runOutlines } from "./run-outlines.ts";
import { shapingLines } from "./shaping-lines.ts";

/** Parts of the tree below and including `part`, parents first. */
export function allParts(part: Part): Part[] {
  return [part, ...part.parts.flatMap(allParts)];
}

/** A part in millimetres of the lay's own frame, cut off at the ends of what is drawn. */
function inMillimetres(part: Part, chunk: ClothChunk): Box {
  const from = Math.max(part.y, chunk.from);
  const to = Math.min(part.y + part.along, chunk.to);
  return {
    x: part.x / TICKS_PER_MM,
    y: from / TICKS_PER_MM,
    width: part.across / TICKS_PER_MM,
    height: (to - from) / TICKS_PER_MM,
  };
}

function selvages(frame: Frame, across: number, from: number, to: number): RectNode[] {
  const width = frame.fabric.selvage / TICKS_PER_MM;
  if (width === 0) return [];
  const [y, height] = [from / TICKS_PER_MM, (to - from) / TICKS_PER_MM];
  return [-width, across / TICKS_PER_MM].map((x) => rect({ x, y, width, height }));
}

/** What lies on the cloth, sorted by how it is painted. */
interface Sorted {
  pieces: SceneNode[];
  /** Lines along which pieces are cut further. */
  shaping: SceneNode[];
  keeps: RectNode[];
  strips: RectNode[];
  waste: Map<WasteCause, RectNode[]>;
}

function sorted(chunks: readonly ClothChunk[], cut: Frame["fabric"]["pieces"]): Sorted {
  const found: Sorted = { pieces: [], shaping: [], keeps: [], strips: [], waste: new Map() };
  const { pieces, shaping, keeps, strips, waste } = found;
  const lose = (cause: WasteCause, shape: RectNode): void => {
    waste.set(cause, [...(waste.get(cause) ?? []), shape]);
  };
  for (const chunk of chunks) {
    for (const part of chunk.parts.flatMap(allParts)) {
      const shape = rect(inMillimetres(part, chunk));
      if (part.role === "strip" || part.role === "band" || part.role === "band-section") strips.push(shape);
      if (part.parts.length > 0) continue;
      if (part.shapes !== undefined) {
        // What lies between the shapes falls away.
        lose("trimming", shape);
        pieces.push(...runOutlines(part, cut).map((points) => path(points, true)));
      } else if (part.piece !== null) {
        pieces.push(shape);
        shaping.push(...shapingLines([part], cut));
      } else if (part.cause !== null) {
        lose(part.cause, shape);
        if (part.keep) keeps.push(shape);
      }
    }
  }
  return found;
}

/**
 * Neighbouring chunks as one group whose coordinates are millimetres of cloth: x from the left selvage's
 * inner edge, y from the cut end, as in the plan. Lines keep their width on the page whatever the scale.
 */
export function clothGroup(
  frame: Frame,
  id: string,
  chunks: readonly ClothChunk[],
  lay: { across: number; isBolt: boolean },
  at: { x: number; y: number },
): SceneNode {
  const { scale } = frame;
  const [from, to] = [chunks[0]?.from ?? 0, chunks.at(-1)?.to ?? 0];
  const { pieces, shaping, keeps, strips, waste } = sorted(chunks, frame.fabric.pieces);
  const lost = new Map(lay.isBolt ? [["selvage" as const, selvages(frame, lay.across, from, to)]] : []);
  const page = (width: number): number => width / scale;
  const some = (name: string, nodes: SceneNode[], paint: Parameters<typeof group>[1]): SceneNode[] =>
    nodes.length === 0 ? [] : [group(nodes, { id: `${id}-${name}`, ...paint })];
  const frameBox = {
    x: lay.isBolt ? -frame.fabric.selvage / TICKS_PER_MM : 0,
    y: from / TICKS_PER_MM,
    width: (lay.across + (lay.isBolt ? 2 * frame.fabric.selvage : 0)) / TICKS_PER_MM,
    height: (to - from) / TICKS_PER_MM,
  };
  const outline = { fill: "none", stroke: INK };
  return group(
    [
      rect(frameBox, { fill: WASTE_GROUND }),
      ...[...lost, ...waste].flatMap(([cause, shapes]) => {
        const outlines = shapes.map(({ box }) => cornersOf(box));
        return some(cause, [...hatchLines(cause, outlines, scale), ...shapes], {
          paint: { fill: "none", stroke: WASTE_INK, strokeWidth: page(0.5) },
        });
      }),
      ...some("pieces", pieces, {
        paint: { fill: frame.colour, stroke: frame.seam, strokeWidth: page(0.7) },
      }),
      ...(frame.photo === null
        ? []
        : some("photo", pieces, {
            paint: { ...frame.photo, stroke: frame.seam, strokeWidth: page(0.7) },
          })),
      ...some("shaping", shaping, {
        paint: {
          fill: "none",
          stroke: frame.label,
          strokeWidth: page(0.8),
          dash: `${page(3).toFixed(2)} ${page(2).toFixed(2)}`,
        },
      }),
      ...some("keep", keeps, {
        paint: { ...outline, strokeWidth: page(1), dash: `${page(4).toFixed(2)} ${page(3).toFixed(2)}` },
      }),
      // On dark cloth a pale line under the dark one keeps the strips apart.
      ...some("strip-edges", frame.label === PAPER ? strips : [], {
        paint: { fill: "none", stroke: PAPER, strokeWidth: page(2.2) },
      }),
      ...some("strips", strips, { paint: { ...outline, strokeWidth: page(1) } }),
      rect(frameBox, { ...outline, strokeWidth: page(1.3) }),
    ],
    { id, move: { x: at.x, y: at.y - (from / TICKS_PER_MM) * scale, scale } },
  );
}
