import type { Box, Outline, SceneNode } from "./scene.ts";

function moveBox(box: Box, dx: number, dy: number): Box {
  return { ...box, x: box.x + dx, y: box.y + dy };
}

function moveOutlines<All extends readonly Outline[] | null>(outlines: All, dx: number, dy: number): All {
  return (outlines?.map((points) => points.map(([x, y]) => [x + dx, y + dy] as const)) ?? null) as All;
}

function moved(node: SceneNode, dx: number, dy: number): SceneNode {
  switch (node.kind) {
    case "group":
      return node.move === null
        ? { ...node, clip: moveOutlines(node.clip, dx, dy), nodes: moveNodes(node.nodes, dx, dy) }
        : { ...node, move: { ...node.move, x: node.move.x + dx, y: node.move.y + dy } };
    case "rect":
      return { ...node, box: moveBox(node.box, dx, dy) };
    case "line":
      return { ...node, x1: node.x1 + dx, x2: node.x2 + dx, y1: node.y1 + dy, y2: node.y2 + dy };
    case "path":
      return { ...node, points: node.points.map(([x, y]) => [x + dx, y + dy] as const) };
    case "region":
      return {
        ...node,
        outlines: moveOutlines(node.outlines, dx, dy),
      };
    case "circle":
      return { ...node, x: node.x + dx, y: node.y + dy };
    case "text":
      return { ...node, x: node.x + dx, y: node.y + dy, frame: moveBox(node.frame, dx, dy) };
  }
}

/** Nodes moved on the page. What lies inside a moved group stays as it is: the group itself is moved. */
export function moveNodes(nodes: readonly SceneNode[], dx: number, dy: number): SceneNode[] {
  return nodes.map((node) => moved(node, dx, dy));
}
