import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { PAPER } from "../scene/palette.ts";
import { group, type Scene } from "../scene/scene.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { outlineNodes, outlineOf, patchNodes, rectangle, ticksOf } from "./patches.ts";

interface PictureOf {
  title: string;
  description: string;
  idPrefix: string;
  width: number;
  tallest: number;
}

function topPicture(
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  { width, tallest, ...told }: PictureOf,
  arrows: boolean,
): Scene {
  const [across, down] = [ticksOf(top.across) / TICKS_PER_MM, ticksOf(top.down) / TICKS_PER_MM];
  const scale = Number(Math.min((width - 4) / across, (tallest - 4) / down).toFixed(6));
  const at = { x: 2, y: 2, scale };
  return {
    ...told,
    width: Math.ceil(across * scale) + 4,
    height: Math.ceil(down * scale) + 4,
    nodes: [
      ...patchNodes(top.patches, fabrics, at, { id: "patches", arrows }),
      ...outlineNodes([rectangle(0, 0, across, down)], at, 1.6, "edge"),
    ],
  };
}

/** The top alone, without rulers or words, for a cover. */
export function coverScene(top: QuiltTop, fabrics: readonly DrawnFabric[], told: PictureOf): Scene {
  return topPicture(top, fabrics, told, true);
}

/** Between the quilt in outline and the one with textures. */
const COLOURING_GAP = 24;

/** The quilt to colour in: in outline, and with a texture for each fabric in grey. */
export function colouringScene(top: QuiltTop, fabrics: readonly DrawnFabric[], words: Words): Scene {
  const white = fabrics.map((fabric): DrawnFabric => ({ name: fabric.name, colour: PAPER }));
  // Beside one another on a page: two thirds of it, and one.
  const about = { description: words.drawings.quilt.colouring.toColour, width: 440 };
  const { width, height, nodes } = topPicture(
    { ...top, patches: [] },
    white,
    { ...about, title: "", idPrefix: "", tallest: 600 },
    false,
  );
  const across = ticksOf(top.across) / TICKS_PER_MM;
  const at = { x: 2, y: 2, scale: Number(((width - 4) / across).toFixed(6)) };
  const second = topPicture(
    top,
    white,
    { ...about, width: 228, title: "", idPrefix: "colouring-", tallest: 330 },
    false,
  );
  const beside = width + COLOURING_GAP;
  return {
    width: beside + second.width,
    height: Math.max(height, second.height),
    idPrefix: "colouring-",
    title: words.drawings.quilt.colouring.title,
    description: words.drawings.quilt.colouring.toColour,
    nodes: [
      ...nodes,
      ...outlineNodes(
        top.patches.map(({ outline }) => outlineOf(outline)),
        at,
        0.6,
        "lines",
      ),
      group([...second.nodes], { move: { x: beside, y: 0, scale: 1 } }),
    ],
  };
}
