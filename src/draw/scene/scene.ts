/**
 * A drawing as plain data: what every drawing is made of before it becomes SVG. Lengths are page units
 * (1/96 in on paper), y runs down. Inside a scaled group they are whatever the group is scaled from.
 */

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** How shapes are painted. Left out, a value comes from the group around. */
export interface Paint {
  fill?: string;
  stroke?: string;
  strokeWidth?: number;
  dash?: string;
}

export type Outline = readonly (readonly [number, number])[];

export interface GroupNode {
  kind: "group";
  id: string | null;
  /** Words for screen readers and tool tips. */
  title: string | null;
  move: { x: number; y: number; scale: number } | null;
  /** What is drawn is seen inside these outlines only, which are in the group's own units; null for all of it. */
  clip: readonly Outline[] | null;
  paint: Paint;
  nodes: SceneNode[];
}

export interface RectNode {
  kind: "rect";
  box: Box;
  round: number;
  paint: Paint;
}

export interface LineNode {
  kind: "line";
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  paint: Paint;
}

export interface PathNode {
  kind: "path";
  /** Straight pieces only, from point to point. */
  points: Outline;
  closed: boolean;
  paint: Paint;
}

/** Many outlines painted as one shape: far smaller in the file than as many paths. */
export interface RegionNode {
  kind: "region";
  outlines: Outline[];
  /** The outlines are lines from their first point to their last; else each is closed. */
  open?: true;
  paint: Paint;
}

export interface CircleNode {
  kind: "circle";
  x: number;
  y: number;
  radius: number;
  paint: Paint;
}

/** One line of text. It must lie inside `frame`, which is on the page and never inside a scaled group. */
export interface TextNode {
  kind: "text";
  text: string;
  x: number;
  /** Of the baseline. */
  y: number;
  size: number;
  bold: boolean;
  anchor: "start" | "middle" | "end";
  /** Upright, or reading upwards. */
  upwards: boolean;
  fill: string;
  frame: Box;
}

export type SceneNode = GroupNode | RectNode | LineNode | PathNode | RegionNode | CircleNode | TextNode;

export interface Scene {
  width: number;
  height: number;
  /** Drawn at full size: the file says how wide it is on paper. */
  physical?: boolean;
  /** Starts every id, so that several drawings can stand in one document. */
  idPrefix: string;
  title: string;
  description: string;
  nodes: SceneNode[];
}

export function rect(box: Box, paint: Paint = {}, round = 0): RectNode {
  return { kind: "rect", box, round, paint };
}

export function line(x1: number, y1: number, x2: number, y2: number, paint: Paint = {}): LineNode {
  return { kind: "line", x1, y1, x2, y2, paint };
}

export function path(points: Outline, closed: boolean, paint: Paint = {}): PathNode {
  return { kind: "path", points, closed, paint };
}

export function region(outlines: Outline[], paint: Paint = {}): RegionNode {
  return { kind: "region", outlines, paint };
}

export function circle(x: number, y: number, radius: number, paint: Paint = {}): CircleNode {
  return { kind: "circle", x, y, radius, paint };
}

export function group(
  nodes: SceneNode[],
  options: { id?: string; title?: string; move?: GroupNode["move"]; paint?: Paint } = {},
): GroupNode {
  return {
    kind: "group",
    id: options.id ?? null,
    title: options.title ?? null,
    move: options.move ?? null,
    clip: null,
    paint: options.paint ?? {},
    nodes,
  };
}

/** The corners of a box. */
export function cornersOf({ x, y, width, height }: Box): Outline {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** Every text of a drawing in drawing order. */
export function textsOf(nodes: readonly SceneNode[]): TextNode[] {
  return nodes.flatMap((node) => {
    if (node.kind === "text") return [node];
    if (node.kind !== "group") return [];
    const texts = textsOf(node.nodes);
    if (texts.length > 0 && node.move !== null) throw new Error("Text inside a moved group has no place");
    return texts;
  });
}
