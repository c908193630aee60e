import { formatLength, formatSize } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { Backing, Binding, Finishing } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { ticksOf } from "../quilt/patches.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { arrow } from "../scene/marks.ts";
import { INK, PAPER, QUIET_INK, WASTE_GROUND } from "../scene/palette.ts";
import { line, path, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { wrap } from "../scene/text-fit.ts";

/* Small pictures of the finishing, each with its sentence: backing, binding, sleeve. */

const EDGE = { stroke: INK, strokeWidth: 1.2 } as const;
const SEAM = { stroke: INK, strokeWidth: 1.6 } as const;
const SEWN = { stroke: INK, strokeWidth: 1, dash: "3 2.5" } as const;

/** Height of a picture, and room of its words below: lines at most, and their height. */
const HIGH = 104;
const WORDS = { size: 9, line: 12, lines: 5 } as const;
/** Pictures in a row, and the room each may fill. */
const PER_ROW = 6;
const WIDE = 110;

/** One small picture with its words below. */
export interface Sketch {
  nodes: (x: number, y: number) => SceneNode[];
  text: string;
}

/** Two strips across each other, the seam from corner to corner of their common square. */
const diagonalJoin = (x: number, y: number): SceneNode[] => [
  rect({ x, y: y + 34, width: 92, height: 24 }, { fill: WASTE_GROUND, ...EDGE }),
  rect({ x: x + 68, y: y + 34, width: 24, height: 56 }, { fill: PAPER, ...EDGE }),
  line(x + 64, y + 30, x + 96, y + 62, SEWN),
];

const straightJoin = (x: number, y: number): SceneNode[] => [
  rect({ x, y: y + 36, width: 60, height: 24 }, { fill: WASTE_GROUND, ...EDGE }),
  rect({ x: x + 60, y: y + 36, width: 46, height: 24 }, { fill: PAPER, ...EDGE }),
  line(x + 60, y + 30, x + 60, y + 66, SEWN),
];

/** The quilt's corner, drawn at the lower right of each of the three sketches. */
const quiltCorner = (x: number, y: number): SceneNode[] => [
  path(
    [
      [x, y + 30],
      [x + 100, y + 30],
      [x + 100, y + 96],
      [x, y + 96],
    ],
    true,
    { fill: PAPER, stroke: QUIET_INK, strokeWidth: 0.9 },
  ),
];

const mitreStop = (x: number, y: number): SceneNode[] => [
  ...quiltCorner(x, y),
  rect({ x, y: y + 30, width: 110, height: 16 }, { fill: WASTE_GROUND, ...EDGE }),
  line(x, y + 40, x + 90, y + 40, SEWN),
  line(x + 90, y + 36, x + 90, y + 44, SEAM),
];

const mitreUp = (x: number, y: number): SceneNode[] => [
  ...quiltCorner(x, y),
  path(
    [
      [x, y + 30],
      [x + 100, y + 30],
      [x + 84, y + 46],
      [x, y + 46],
    ],
    true,
    { fill: WASTE_GROUND, ...EDGE },
  ),
  path(
    [
      [x + 84, y + 46],
      [x + 100, y + 30],
      [x + 100, y],
      [x + 84, y],
    ],
    true,
    { fill: WASTE_GROUND, ...EDGE },
  ),
  line(x, y + 40, x + 88, y + 40, SEWN),
];

const mitreDown = (x: number, y: number): SceneNode[] => [
  ...quiltCorner(x, y),
  path(
    [
      [x, y + 30],
      [x + 84, y + 30],
      [x + 84, y + 46],
      [x, y + 46],
    ],
    true,
    { fill: WASTE_GROUND, ...EDGE },
  ),
  rect({ x: x + 84, y: y + 30, width: 16, height: 66 }, { fill: WASTE_GROUND, ...EDGE }),
  line(x + 90, y + 30, x + 90, y + 96, SEWN),
];

const biasSquare = (x: number, y: number): SceneNode[] => [
  rect({ x: x + 10, y: y + 14, width: 78, height: 78 }, { fill: WASTE_GROUND, ...EDGE }),
  line(x + 10, y + 92, x + 88, y + 14, SEWN),
];

const biasTube = (x: number, y: number): SceneNode[] => [
  path(
    [
      [x + 38, y + 14],
      [x + 108, y + 14],
      [x + 70, y + 92],
      [x, y + 92],
    ],
    true,
    { fill: WASTE_GROUND, ...EDGE },
  ),
  ...[1, 2, 3, 4].map((i) =>
    line(x + 38 - 7.6 * i, y + 14 + 15.6 * i, x + 108 - 7.6 * i, y + 14 + 15.6 * i, SEWN),
  ),
  line(x + 73, y + 14, x + 35, y + 92, EDGE),
];

/** How the binding is joined, and how it turns the corners. */
export function bindingSketches(binding: Binding, seam: Ticks, ruler: Ruler, words: Words): Sketch[] {
  const say = (length: Ticks): string => formatLength(length, ruler, { typeset: true });
  const corner: Sketch[] = [
    { nodes: mitreStop, text: words.drawings.sewing.finish.stop(say(seam)) },
    { nodes: mitreUp, text: words.drawings.sewing.finish.fold },
    { nodes: mitreDown, text: words.drawings.sewing.finish.down },
  ];
  if (binding.cut === "bias") {
    return [
      { nodes: biasSquare, text: words.drawings.sewing.finish.square },
      { nodes: biasTube, text: words.drawings.sewing.finish.tube },
      ...corner,
    ];
  }
  if (binding.count < 2) return corner;
  return binding.join === "diagonal"
    ? [{ nodes: diagonalJoin, text: words.drawings.sewing.finish.join(say(binding.width)) }, ...corner]
    : [{ nodes: straightJoin, text: words.drawings.sewing.finish.straight(say(2 * seam)) }, ...corner];
}

/** The backing to scale: panels numbered, seams, the quilt on it in dashes, and which way its print reads. */
export function backingSketch(backing: Backing, top: QuiltTop, ruler: Ruler, words: Words): Sketch {
  const { across, down, seamAt, seams, panels, panel, overhang } = backing;
  const said = words.drawings.sewing.finish;
  const scale = Math.min(WIDE / across, (HIGH - 16) / down);
  const [width, height] = [across * scale, down * scale];
  const [dx, dy] = [((across - ticksOf(top.across)) / 2) * scale, ((down - ticksOf(top.down)) / 2) * scale];
  const upright = seams === "vertical";
  const edges = [0, ...seamAt, upright ? across : down].map((place) => place * scale);
  const nodes = (x: number, y: number): SceneNode[] => [
    rect({ x, y, width, height }, { fill: WASTE_GROUND, ...EDGE }),
    rect(
      { x: x + dx, y: y + dy, width: width - 2 * dx, height: height - 2 * dy },
      { fill: "none", stroke: QUIET_INK, strokeWidth: 0.9, dash: "5 4" },
    ),
    ...edges
      .slice(1, -1)
      .map((at) =>
        upright ? line(x + at, y, x + at, y + height, SEAM) : line(x, y + at, x + width, y + at, SEAM),
      ),
    ...edges.slice(1).map((edge, i) => {
      const middle = ((edges[i] ?? 0) + edge) / 2;
      const [cx, cy] = upright ? [x + middle, y + height / 2] : [x + width / 2, y + middle];
      return textIn(
        String(i + 1),
        { x: cx - 8, y: cy - 6, width: 16, height: 12 },
        { size: 9, bold: true, anchor: "middle" },
      );
    }),
    ...(backing.directional
      ? backing.sideways
        ? arrow([x + 22, y + 9], [x + 6, y + 9], INK, 1, 1.2)
        : arrow([x + 9, y + 22], [x + 9, y + 6], INK, 1, 1.2)
      : []),
  ];
  const size = formatSize(panel.across, panel.along, ruler, { typeset: true });
  return { nodes, text: said.backingMade(panels, size, formatLength(overhang, ruler, { typeset: true })) };
}

/** The sleeve on the back of the quilt, below its top edge, hemmed at both ends. Its depth is to scale with the quilt. */
export function sleeveSketch(
  { across, down, hem }: Finishing["sleeve"],
  top: QuiltTop,
  ruler: Ruler,
  words: Words,
): Sketch {
  const [wide, high] = [ticksOf(top.across), ticksOf(top.down)];
  const scale = Math.min(WIDE / wide, (HIGH - 16) / high);
  const [width, height] = [wide * scale, high * scale];
  // Sewn to a tube it is half as deep as it is cut; both its ends are hemmed.
  const tube = {
    width: Math.max(12, (across - 2 * hem) * scale),
    height: Math.min(height / 3, Math.max(10, (down / 2) * scale)),
  };
  const nodes = (x: number, y: number): SceneNode[] => {
    const [left, upper] = [x + (width - tube.width) / 2, y + 5];
    const right = left + tube.width;
    const lower = upper + tube.height;
    return [
      rect({ x, y, width, height }, { fill: WASTE_GROUND, ...EDGE }),
      rect({ x: left, y: upper, ...tube }, { fill: PAPER, ...EDGE }),
      line(left, upper + 2, right, upper + 2, SEWN),
      line(left, lower - 2, right, lower - 2, SEWN),
      line(left + 3, upper, left + 3, lower, SEWN),
      line(right - 3, upper, right - 3, lower, SEWN),
    ];
  };
  const size = formatSize(across, down, ruler, { typeset: true });
  return { nodes, text: words.drawings.sewing.finish.sleeve(size) };
}

/** Pictures side by side with their words below, in as many rows as they need. */
export function sketchRow(sketches: readonly Sketch[], top: number): { nodes: SceneNode[]; bottom: number } {
  const columns = Math.max(4, Math.min(PER_ROW, sketches.length));
  const width = PAGE_WIDTH / columns;
  const nodes: SceneNode[] = [];
  let y = top;
  for (let first = 0; first < sketches.length; first += columns) {
    let lines = 0;
    for (const [i, { nodes: drawn, text }] of sketches.slice(first, first + columns).entries()) {
      const x = i * width + 2;
      nodes.push(...drawn(x, y));
      const told = wrap(text, width - 12, WORDS.size, WORDS.lines);
      lines = Math.max(lines, told.length);
      nodes.push(
        ...told.map((each, n) =>
          textIn(
            each,
            { x, y: y + HIGH + n * WORDS.line, width: width - 10, height: WORDS.line },
            { size: WORDS.size },
          ),
        ),
      );
    }
    y += HIGH + lines * WORDS.line + 10;
  }
  return { nodes, bottom: y };
}
