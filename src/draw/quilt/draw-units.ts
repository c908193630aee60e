import type { UnitTurns } from "../../quilt/turning/unit-turns.ts";
import type { Patch } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { shorten } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { outlineNodes, type Placing, patchNodes, rectangle, ticksOf } from "./patches.ts";

/** Greys and a warm tone that stay apart in print; parts get them in order. */
const TONES = ["#8a5a44", "#efe6d4", "#5f7f8c", "#c9a24b", "#3f4a57", "#b9c2b0"] as const;

const SIDE = 74;
const NAME_COLUMN = 250;
const ROW = SIDE + 26;
const HEAD = 20;
const APART = (PAGE_WIDTH - NAME_COLUMN) / 4;

/** Tone of a part by its place in the order of parts. */
function tones(parts: readonly string[]): DrawnFabric[] {
  return parts.map((name, i) => ({ name, colour: TONES[i % TONES.length] ?? TONES[0] }));
}

function unitRow(unit: UnitTurns, index: number, y: number, words: Words): SceneNode[] {
  const fabrics = tones(unit.parts);
  const nodes: SceneNode[] = [
    textIn(unit.name, { x: 0, y: y + 8, width: NAME_COLUMN - 12, height: 16 }, { size: 12, bold: true }),
    textIn(
      shorten(words.drawings.unitSheet.parts(unit.parts), NAME_COLUMN - 12, 9),
      { x: 0, y: y + 27, width: NAME_COLUMN - 12, height: 13 },
      { size: 9 },
    ),
  ];
  for (const [i, { across, down, patches, turn }] of unit.turns.entries()) {
    const [wide, high] = [ticksOf(across) / TICKS_PER_MM, ticksOf(down) / TICKS_PER_MM];
    const scale = Number((SIDE / Math.max(wide, high)).toFixed(6));
    const at: Placing = { x: NAME_COLUMN + i * APART + 2, y, scale };
    const drawn = patches.map(
      ({ part, outline }): Patch => ({
        outline,
        fabric: part,
        up: null,
        origin: { place: "block", block: null, unit: 0, part, border: null },
      }),
    );
    const id = `unit-${index + 1}-turn-${turn}`;
    nodes.push(
      ...patchNodes(drawn, fabrics, at, { id }),
      ...outlineNodes([rectangle(0, 0, wide, high)], at, 1, `${id}-edge`),
    );
  }
  return nodes;
}

/** Units in rows, each at rest and in its three other turns, as plain data. */
export function unitsScene(units: readonly UnitTurns[], words: Words): Scene {
  const { over, name, turned, description } = words.drawings.unitSheet;
  const head = titleBlock({
    over,
    name,
    colour: null,
    facts: [{ caption: over, value: String(units.length) }],
  });
  const nodes: SceneNode[] = [...head.nodes];
  let y = head.height;
  for (const [i, said] of turned.entries())
    nodes.push(
      textIn(
        said,
        { x: NAME_COLUMN + i * APART, y, width: APART - 4, height: 14 },
        { size: 9.5, bold: true },
      ),
    );
  y += HEAD;
  for (const [i, unit] of units.entries()) {
    nodes.push(...unitRow(unit, i, y, words));
    y += ROW;
  }
  return {
    idPrefix: "units-",
    title: name,
    description,
    ...onPaper(nodes, y),
  };
}

/** The sheet of units, as an SVG document. */
export function drawUnits(units: readonly UnitTurns[], words: Words): string {
  return toSvg(unitsScene(units, words));
}
