import { ASCENT, DESCENT, textWidth } from "./metrics.ts";
import { INK } from "./palette.ts";
import type { Box, TextNode } from "./scene.ts";
import { shorten } from "./text-fit.ts";

export interface TextLook {
  size: number;
  bold?: boolean;
  fill?: string;
  anchor?: TextNode["anchor"];
}

/**
 * One line set into `frame`, centred in its height (or in its width when it reads upwards) and shortened
 * when it is too long.
 */
export function textIn(text: string, frame: Box, look: TextLook, upwards = false): TextNode {
  const { size, bold = false, fill = INK, anchor = "start" } = look;
  const run = upwards ? frame.height : frame.width;
  const shown = shorten(text, run, size, bold);
  const along = anchor === "start" ? 0 : anchor === "middle" ? run / 2 : run;
  const drop = ((ASCENT - DESCENT) / 2) * size;
  return {
    kind: "text",
    text: shown,
    x: upwards ? frame.x + frame.width / 2 + drop : frame.x + along,
    y: upwards ? frame.y + frame.height - along : frame.y + frame.height / 2 + drop,
    size,
    bold,
    anchor,
    upwards,
    fill,
    frame,
  };
}

/** The box a line of text covers, by the metrics of the drawing's own font. */
export function boxOfText(node: TextNode): Box {
  const width = textWidth(node.text, node.size, node.bold);
  const before = node.anchor === "start" ? 0 : node.anchor === "middle" ? width / 2 : width;
  const height = (ASCENT + DESCENT) * node.size;
  if (node.upwards) {
    return { x: node.x - ASCENT * node.size, y: node.y + before - width, width: height, height: width };
  }
  return { x: node.x - before, y: node.y - ASCENT * node.size, width, height };
}

/** Height one line needs. */
export function lineHeight(size: number): number {
  return (ASCENT + DESCENT) * size;
}
