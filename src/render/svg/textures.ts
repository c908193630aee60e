import { labelOn, mix, safeColour } from "./palette.ts";
import { circle, line, type Outline, region, type SceneNode } from "./scene.ts";
import { type Tile, textureLines } from "./texture-lines.ts";

/** What a drawing of a quilt needs to know of a fabric. */
export interface DrawnFabric {
  name: string;
  /** `#rrggbb`. */
  colour: string;
  /** How its print reads; absent where nothing says. */
  print?: { kind: "none" | "one-way" | "two-way" };
}

type Marks = (ink: string) => SceneNode[];

const SIZE = 8;

function stroke(points: readonly (readonly [number, number, number, number])[], width = 0.8): Marks {
  return (ink) => points.map(([x1, y1, x2, y2]) => line(x1, y1, x2, y2, { stroke: ink, strokeWidth: width }));
}

/** Textures in the order fabrics get them: neighbours in the list are easy to tell apart. Then they repeat. */
const TEXTURES: readonly Marks[] = [
  () => [],
  (ink) => [circle(2, 2, 0.8, { fill: ink }), circle(6, 6, 0.8, { fill: ink })],
  stroke([
    [-1, 9, 9, -1],
    [-1, 1, 1, -1],
    [7, 9, 9, 7],
  ]),
  stroke([[0, 4, 8, 4]]),
  (ink) => [circle(4, 4, 1.9, { fill: "none", stroke: ink, strokeWidth: 0.8 })],
  stroke([[4, 0, 4, 8]]),
  stroke([
    [2, 4, 6, 4],
    [4, 2, 4, 6],
  ]),
  stroke([
    [-1, -1, 9, 9],
    [-1, 7, 1, 9],
    [7, -1, 9, 1],
  ]),
  stroke([
    [4, 0, 4, 8],
    [0, 4, 8, 4],
  ]),
  stroke([
    [0, 1.5, 8, 1.5],
    [0, 3.5, 8, 3.5],
  ]),
];

function isPlain(index: number): boolean {
  return index % TEXTURES.length === 0;
}

/** The texture of a fabric: the second signal beside its colour. Every tenth is plain. */
export function fabricTile({ colour }: DrawnFabric, index: number): Tile {
  const ground = safeColour(colour);
  const marks = TEXTURES[index % TEXTURES.length] ?? (() => []);
  return { size: SIZE, nodes: marks(mix(labelOn(ground), ground, 0.6)) };
}

/**
 * Shapes of one fabric: its colour, then its texture, which ends where they do.
 * @param scale page units to a unit of the outlines
 */
export function fabricNodes(
  fabrics: readonly DrawnFabric[],
  index: number,
  outlines: readonly Outline[],
  scale: number,
): SceneNode[] {
  const fabric = fabrics[index];
  const ground = region([...outlines], { fill: safeColour(fabric?.colour ?? "") });
  return fabric === undefined
    ? [ground]
    : [ground, ...textureLines(fabricTile(fabric, index), outlines, scale)];
}

/** One tile of marks for each fabric that is not plain, for what draws by tiles on a screen. */
export function fabricTiles(fabrics: readonly DrawnFabric[]): (Tile & { id: string })[] {
  return fabrics.flatMap((fabric, index) =>
    isPlain(index) ? [] : [{ id: `fabric-${index + 1}`, ...fabricTile(fabric, index) }],
  );
}
