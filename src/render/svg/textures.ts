import { labelOn, mix, safeColour } from "./palette.ts";
import { circle, line, type Paint, type PatternDef, type SceneNode } from "./scene.ts";

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

function idOf(index: number): string {
  return `fabric-${index + 1}`;
}

function isPlain(index: number): boolean {
  return index % TEXTURES.length === 0;
}

/**
 * Paints for a shape of one fabric, one above the other: its colour, then its texture or photo. The tiles have no
 * ground of their own, because tiles with one show their edges.
 * @param up where its print's up is to point, degrees clockwise; null where it may lie any way
 */
export function fabricPaints(
  fabrics: readonly DrawnFabric[],
  index: number,
  idPrefix: string,
  up: number | null = null,
): Paint[] {
  const colour: Paint = { fill: safeColour(fabrics[index]?.colour ?? "") };
  const photo = fabrics[index]?.photo;
  if (photo !== undefined) return [colour, { fill: photoTile(photo, up), stroke: "none" }];
  return isPlain(index) ? [colour] : [colour, { fill: `url(#${idPrefix}${idOf(index)})`, stroke: "none" }];
}

/** The tile of a photo turned so far that the print's up points where it is to, to the nearest eighth of a turn. */
function photoTile({ id, up: own }: FabricPhoto, up: number | null): string {
  const turned = up === null ? 0 : Math.round((up - own) / 45) * 45;
  return `url(#${id}-${((turned % 360) + 360) % 360})`;
}

/** One tile of marks per fabric that is not plain: texture is the second signal beside colour. */
export function fabricPatterns(fabrics: readonly DrawnFabric[], scale: number): PatternDef[] {
  return fabrics.flatMap(({ colour, photo }, index): PatternDef[] => {
    if (isPlain(index) || photo !== undefined) return [];
    const ground = safeColour(colour);
    const ink = mix(labelOn(ground), ground, 0.6);
    const marks = TEXTURES[index % TEXTURES.length] ?? (() => []);
    return [{ id: idOf(index), size: SIZE, scale: 1 / scale, nodes: marks(ink) }];
  });
}
