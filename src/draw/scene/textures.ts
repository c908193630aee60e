import { labelOn, mix, safeColour } from "./palette.ts";
import { circle, line, type Outline, type Paint, region, type SceneNode } from "./scene.ts";
import { type Tile, textureLines } from "./texture-lines.ts";

/** What a drawing of a quilt needs to know of a fabric. */
export interface DrawnFabric {
  name: string;
  /** `#rrggbb`. */
  colour: string;
  /** How its print reads; absent where nothing says. */
  print?: { kind: "none" | "one-way" | "two-way" };
  /** Its photo, where the document that shows the drawing has it; absent where cloth is drawn in colour and texture. */
  photo?: FabricPhoto;
}

/** A photo as tiles that lie ready in a document, a millimetre of cloth to a user unit. */
export interface FabricPhoto {
  /** What the ids of its tiles begin with; degrees by eighths of a turn follow. */
  id: string;
  /** Where its print's up points in the tile that is not turned, degrees clockwise. */
  up: number;
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
function fabricTile({ colour }: DrawnFabric, index: number): Tile {
  const ground = safeColour(colour);
  const marks = TEXTURES[index % TEXTURES.length] ?? (() => []);
  return { size: SIZE, nodes: marks(mix(labelOn(ground), ground, 0.6)) };
}

/**
 * Shapes of one fabric: its colour, then its photo, or its texture, which ends where they do.
 * @param scale page units to a unit of the outlines
 * @param up where its print's up is to point, degrees clockwise; null where it may lie any way
 */
export function fabricNodes(
  fabrics: readonly DrawnFabric[],
  index: number,
  outlines: readonly Outline[],
  scale: number,
  up: number | null = null,
): SceneNode[] {
  const fabric = fabrics[index];
  const ground = region([...outlines], { fill: safeColour(fabric?.colour ?? "") });
  if (fabric === undefined) return [ground];
  return fabric.photo === undefined
    ? [ground, ...textureLines(fabricTile(fabric, index), outlines, scale)]
    : [ground, region([...outlines], photoPaint(fabric.photo, up))];
}

/** The paint of a photo turned so far that the print's up points where it is to, to the nearest eighth of a turn. */
export function photoPaint({ id, up: own }: FabricPhoto, up: number | null): Paint {
  const turned = up === null ? 0 : Math.round((up - own) / 45) * 45;
  return { fill: `url(#${id}-${((turned % 360) + 360) % 360})`, stroke: "none" };
}

/** One tile of marks for each fabric that is not plain, for what draws by tiles on a screen. */
export function fabricTiles(fabrics: readonly DrawnFabric[]): (Tile & { id: string })[] {
  return fabrics.flatMap((fabric, index) =>
    isPlain(index) || fabric.photo !== undefined
      ? []
      : [{ id: `fabric-${index + 1}`, ...fabricTile(fabric, index) }],
  );
}
