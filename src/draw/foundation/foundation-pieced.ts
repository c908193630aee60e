import type { FoundationMaking } from "../../making/foundation-types.ts";
import type { FoundationPatch, FoundationSeam, PiecedPart } from "../../quilt/foundation/types.ts";
import type { Words } from "../../words/index.ts";
import { patchNodes } from "../quilt/patches.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { arrow, numberMark } from "../scene/marks.ts";
import { INK, labelOn, PAPER, safeColour } from "../scene/palette.ts";
import { type Box, circle, line, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { wrap } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import {
  asPatch,
  COUNT_ROOM,
  onCloth,
  placingOn,
  printedGrid,
  type Sheet,
  sideFor,
  squareCount,
} from "./foundation-grid.ts";

/** Room for the two sides of a piece of foundation, one beside the other. */
export interface TwoSides {
  /** Room of one side, and between the two. */
  half: number;
  gutter: number;
  tallest: number;
}

const GUTTER = 34;
export const WHOLE_PAGE: TwoSides = { half: (PAGE_WIDTH - GUTTER) / 2, gutter: GUTTER, tallest: 330 };
const CAPTION = { size: 9.5, line: 12.5 };

interface OnSheet {
  sheet: Sheet;
  /** Squares from the sheet's corner to the finished part's. */
  inset: number;
  grid: number;
  /** Seen from behind: left and right change places. */
  mirrored: boolean;
  across: number;
}

function placed(x: number, y: number, { sheet, inset, grid, mirrored, across }: OnSheet): [number, number] {
  const squares = x / grid;
  const along = mirrored ? across - squares : squares;
  const edge = mirrored ? sheet.across - inset - across : inset;
  return [sheet.x + (edge + along) * sheet.side, sheet.y + (inset + y / grid) * sheet.side];
}

function middle({ corners }: FoundationPatch): { x: number; y: number } {
  const sum = corners.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return { x: sum.x / corners.length, y: sum.y / corners.length };
}

function patchNumber(patch: FoundationPatch, on: OnSheet, fabrics: readonly DrawnFabric[]): SceneNode[] {
  const { x, y } = middle(patch);
  const [cx, cy] = placed(x, y, on);
  const colour = safeColour(fabrics.find(({ name }) => name === patch.fabric)?.colour ?? "");
  const room = on.sheet.side * 0.42;
  if (room < 4) return [];
  // A number is read where the drawing stands on a page, however small the squares.
  const radius = Math.max(5.6, Math.min(9, room));
  const box = { x: cx - 12, y: cy - radius, width: 24, height: 2 * radius };
  return [
    circle(cx, cy, radius, { fill: colour, stroke: labelOn(colour), strokeWidth: 0.8 }),
    textIn(String(patch.number), box, {
      size: Math.max(8.3, radius * 1.25),
      bold: true,
      anchor: "middle",
      fill: labelOn(colour),
    }),
  ];
}

function seamArrow(seam: FoundationSeam, on: OnSheet): SceneNode[] {
  const [x, y] = placed((seam.x1 * 3 + seam.x2) / 4, (seam.y1 * 3 + seam.y2) / 4, on);
  const reach = Math.min(9, on.sheet.side * 0.4);
  const length = Math.hypot(seam.toward.x, seam.toward.y);
  const [dx, dy] = [(seam.toward.x / length) * reach, (seam.toward.y / length) * reach];
  const weight = Math.max(0.7, reach / 8);
  return [
    ...arrow([x - dx, y - dy], [x + dx, y + dy], PAPER, 1, weight * 1.9),
    ...arrow([x - dx, y - dy], [x + dx, y + dy], INK, 1, weight),
  ];
}

function seamNumber(seam: FoundationSeam, on: OnSheet): SceneNode[] {
  const [x, y] = placed((seam.x1 + seam.x2) / 2, (seam.y1 + seam.y2) / 2, on);
  return numberMark(String(seam.number), { x: x - 9, y: y - 6.5, width: 18, height: 13 });
}

function seamLine(seam: FoundationSeam, on: OnSheet): SceneNode {
  const [a, b] = [placed(seam.x1, seam.y1, on), placed(seam.x2, seam.y2, on)];
  return line(a[0], a[1], b[0], b[1], { stroke: INK, strokeWidth: 2 });
}

function edges({ sheet, inset, ...on }: OnSheet, part: PiecedPart): SceneNode[] {
  const [left, upper] = placed(on.mirrored ? part.finished.across * on.grid : 0, 0, { sheet, inset, ...on });
  const finished = {
    x: left,
    y: upper,
    width: part.finished.across * sheet.side,
    height: part.finished.down * sheet.side,
  };
  const whole = { x: sheet.x, y: sheet.y, width: sheet.across * sheet.side, height: sheet.down * sheet.side };
  return [
    rect(whole, { fill: "none", stroke: INK, strokeWidth: 1, dash: "6 3" }),
    rect(finished, { fill: "none", stroke: INK, strokeWidth: 1.2, dash: "2.5 2" }),
  ];
}

/** Lines of a caption, one under the other. */
function told(lines: readonly string[], { y, ...frame }: Box, bold: boolean): SceneNode[] {
  return lines.map((text, i) =>
    textIn(text, { ...frame, y: y + i * CAPTION.line }, { size: CAPTION.size, bold }),
  );
}

/** A piece of foundation from both sides: patches in their order, and the lines to sew. */
export function piecedNodes(
  part: PiecedPart,
  foundation: FoundationMaking,
  fabrics: readonly DrawnFabric[],
  words: Words,
  { half, gutter, tallest, top }: TwoSides & { top: number },
): { nodes: SceneNode[]; bottom: number; scale: number } {
  const { cut, finished } = part;
  const side = sideFor(cut.across, cut.down, half - COUNT_ROOM - 2, tallest);
  const captions = [words.drawings.foundation.front, words.drawings.foundation.back].map((text) =>
    wrap(text, half, CAPTION.size, 4, true),
  );
  const lines = Math.max(...captions.map((own) => own.length));
  const upper = top + 7.5 + lines * CAPTION.line + COUNT_ROOM;
  const shared = { y: upper, across: cut.across, down: cut.down, side };
  const frontSheet: Sheet = { ...shared, x: COUNT_ROOM };
  const backSheet: Sheet = { ...shared, x: half + gutter + COUNT_ROOM };
  const common = { inset: foundation.allowance, grid: foundation.grid, across: finished.across };
  const front: OnSheet = { ...common, sheet: frontSheet, mirrored: false };
  const back: OnSheet = { ...common, sheet: backSheet, mirrored: true };
  const inset = { x: foundation.allowance, y: foundation.allowance };
  const at = placingOn(frontSheet, inset, foundation.grid);
  const caption = (own: readonly string[], x: number): SceneNode[] =>
    told(own, { x, y: top, width: half, height: 14 }, true);
  const nodes = [
    ...caption(captions[0] ?? [], 0),
    printedGrid(frontSheet, "front-grid"),
    ...squareCount(frontSheet),
    ...patchNodes(part.patches.map(asPatch), fabrics, at, { id: "patches" }),
    ...edges(front, part),
    ...part.patches.flatMap((patch) => patchNumber(patch, front, fabrics)),
    onCloth(
      part.seams.flatMap((seam) => seamArrow(seam, front)),
      "arrows",
    ),
    ...caption(captions[1] ?? [], half + gutter),
    printedGrid(backSheet, "back-grid"),
    ...squareCount(backSheet),
    onCloth(
      part.seams.map((seam) => seamLine(seam, back)),
      "lines",
    ),
    ...edges(back, part),
    ...part.seams.flatMap((seam) => seamNumber(seam, back)),
  ];
  const bottom = upper + cut.down * side + 12;
  const width = 2 * half + gutter;
  const note = wrap(words.drawings.foundation.edge, width, CAPTION.size, 4);
  nodes.push(...told(note, { x: 0, y: bottom, width, height: 13 }, false));
  return { nodes, bottom: bottom + 9.5 + note.length * CAPTION.line, scale: at.scale };
}
