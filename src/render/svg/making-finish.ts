import { formatLength } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { Backing, Binding, Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "./canvas.ts";
import { NO_HEAD, PAGE_WIDTH, type Standing } from "./frame.ts";
import { arrow } from "./marks.ts";
import { INK, PAPER, QUIET_INK, WASTE_GROUND } from "./palette.ts";
import { onPaper } from "./paper.ts";
import { ticksOf } from "./patches.ts";
import { spokenSizeNear } from "./quilt-words.ts";
import { type Box, line, path, rect, type Scene, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";
import { cleanText, wrap } from "./text-fit.ts";
import { titleBlock } from "./title-block.ts";

const LEFT = 70;
const TALLEST = 260;
/** Among the words of a page. */
const BARE_TALLEST = 120;

const EDGE = { stroke: INK, strokeWidth: 1.2 } as const;
const SEAM = { stroke: INK, strokeWidth: 1.6 } as const;
const SEWN = { stroke: INK, strokeWidth: 1, dash: "3 2.5" } as const;

function backingNodes(
  backing: Backing,
  top: QuiltTop,
  y: number,
  ruler: Ruler,
  words: Words,
  tallest: number,
): { nodes: SceneNode[]; bottom: number } {
  const { across, down, seamAt, panel, panels } = backing;
  const scale = Math.min((PAGE_WIDTH - LEFT - 100) / across, tallest / down);
  const box: Box = { x: LEFT, y, width: across * scale, height: down * scale };
  const [dx, dy] = [across - ticksOf(top.across), down - ticksOf(top.down)].map(
    (gap) => (gap / 2) * scale,
  ) as [number, number];
  const upright = backing.seams === "vertical";
  const edges = [0, ...seamAt, upright ? across : down].map((place) => place * scale);
  const seams = edges
    .slice(1, -1)
    .map((place) =>
      upright
        ? line(box.x + place, box.y, box.x + place, box.y + box.height, SEAM)
        : line(box.x, box.y + place, box.x + box.width, box.y + place, SEAM),
    );
  const size = spokenSizeNear(panel.across, panel.along, ruler);
  const named = edges.slice(1).flatMap((edge, i): SceneNode[] => {
    const from = edges[i] ?? 0;
    const [x, y, width] = upright
      ? [box.x + from + 3, box.y + box.height / 2 - 20, edge - from - 6]
      : [box.x, box.y + (from + edge) / 2 - 13, box.width];
    const lines = [
      panels === 1 ? words.drawings.sewing.finish.piece : words.drawings.sewing.finish.panel(i + 1),
      size,
    ];
    return lines.map((text, n) =>
      textIn(text, { x, y: y + 13 * n, width, height: 13 }, { size: 9, bold: n === 0, anchor: "middle" }),
    );
  });
  const say = (length: Ticks): string =>
    formatLength(Math.round(length / ruler.mark) * ruler.mark, ruler, { typeset: true });
  const places = seamAt.map((place): SceneNode => {
    const at = place * scale;
    return upright
      ? textIn(
          say(place),
          { x: box.x + at - 45, y: box.y + box.height + 3, width: 90, height: 12 },
          { size: 9, anchor: "middle" },
        )
      : textIn(
          say(place),
          { x: 0, y: box.y + at - 6, width: LEFT - 6, height: 12 },
          { size: 9, anchor: "end" },
        );
  });
  const beyond: SceneNode[] =
    backing.overhang === 0
      ? []
      : [
          ...arrow(
            [box.x + box.width - dx, box.y + box.height * 0.8],
            [box.x + box.width, box.y + box.height * 0.8],
            QUIET_INK,
            2,
            0.8,
          ),
          textIn(
            words.drawings.sewing.finish.overhang(say(backing.overhang)),
            {
              x: box.x + box.width + 5,
              y: box.y + box.height * 0.8 - 7,
              width: PAGE_WIDTH - box.x - box.width - 5,
              height: 14,
            },
            { size: 9 },
          ),
        ];
  const up: SceneNode[] = backing.directional
    ? [
        ...(backing.sideways
          ? arrow([6, box.y + 34], [42, box.y + 34], INK, 1, 1.2)
          : arrow([24, box.y + 52], [24, box.y + 16], INK, 1, 1.2)),
        textIn(
          words.drawings.sewing.finish.up,
          { x: 0, y: box.y + 56, width: LEFT - 4, height: 12 },
          { size: 8.5 },
        ),
      ]
    : [];
  return {
    nodes: [
      rect(box, { fill: WASTE_GROUND, ...EDGE }),
      rect(
        { x: box.x + dx, y: box.y + dy, width: box.width - 2 * dx, height: box.height - 2 * dy },
        { fill: "none", stroke: QUIET_INK, strokeWidth: 0.9, dash: "5 4" },
      ),
      ...seams,
      ...named,
      ...places,
      ...beyond,
      ...up,
    ],
    bottom: box.y + box.height + 26,
  };
}

/** One small picture with its words below. */
interface Sketch {
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
  rect({ x: x + 60, y: y + 36, width: 60, height: 24 }, { fill: PAPER, ...EDGE }),
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
  rect({ x, y: y + 30, width: 124, height: 16 }, { fill: WASTE_GROUND, ...EDGE }),
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
      [x + 44, y + 14],
      [x + 124, y + 14],
      [x + 84, y + 92],
      [x + 4, y + 92],
    ],
    true,
    { fill: WASTE_GROUND, ...EDGE },
  ),
  ...[1, 2, 3, 4].map((i) =>
    line(x + 44 - 8 * i, y + 14 + 15.6 * i, x + 124 - 8 * i, y + 14 + 15.6 * i, SEWN),
  ),
  line(x + 84, y + 14, x + 44, y + 92, EDGE),
];

function sketchesOf(binding: Binding, seam: Ticks, ruler: Ruler, words: Words): Sketch[] {
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

/** The backing with its panels, and how the binding is joined and mitred; null when the file has neither. */
export function finishScene(
  top: QuiltTop,
  making: Making,
  ruler: Ruler,
  words: Words,
  { bare = false }: Standing = {},
): Scene | null {
  const { backing, binding } = making.finishing;
  if (backing === null && binding === null) return null;
  const name = cleanText(top.name);
  const facts = [
    {
      caption: words.drawings.sewing.finishedSize,
      value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler),
    },
  ];
  if (backing !== null)
    facts.push({
      caption: words.drawings.sewing.finish.backingCaption,
      value: spokenSizeNear(backing.across, backing.down, ruler),
    });
  if (binding !== null)
    facts.push({
      caption: words.drawings.sewing.finish.binding,
      value: formatLength(binding.length, ruler, { typeset: true }),
    });
  const head = bare
    ? NO_HEAD
    : titleBlock({ over: words.drawings.sewing.finish.over, name, colour: null, facts });
  const nodes: SceneNode[] = [...head.nodes];
  let y = head.height;
  const caption = (text: string): void => {
    nodes.push(textIn(text, { x: 0, y, width: PAGE_WIDTH, height: 14 }, { size: 10, bold: true }));
    y += 22;
  };
  if (backing !== null) {
    caption(words.drawings.sewing.finish.backing);
    const drawn = backingNodes(backing, top, y, ruler, words, bare ? BARE_TALLEST : TALLEST);
    nodes.push(...drawn.nodes);
    y = drawn.bottom;
  }
  if (binding !== null) {
    caption(words.drawings.sewing.finish.binding);
    const sketches = sketchesOf(binding, making.seam, ruler, words);
    const width = PAGE_WIDTH / Math.max(4, sketches.length);
    let lines = 0;
    for (const [i, { nodes: drawn, text }] of sketches.entries()) {
      const x = i * width;
      nodes.push(...drawn(x, y));
      const told = wrap(text, width - 14, 9, 4);
      lines = Math.max(lines, told.length);
      nodes.push(
        ...told.map((each, n) =>
          textIn(each, { x, y: y + 104 + n * 12, width: width - 12, height: 12 }, { size: 9 }),
        ),
      );
    }
    y += 104 + lines * 12 + 10;
  }
  return {
    idPrefix: "finish-",
    title: `${words.drawings.sewing.finish.over}: ${name}`,
    description: words.drawings.sewing.finish.described(backing?.panels ?? 0, binding?.cut ?? "none"),
    patterns: [],
    ...onPaper(nodes, y),
  };
}

/** Backing and binding as an SVG document; null when the file has neither. */
export function drawFinishing(
  top: QuiltTop,
  making: Making,
  ruler: Ruler,
  words: Words,
  standing: Standing = {},
): string | null {
  const scene = finishScene(top, making, ruler, words, standing);
  return scene === null ? null : toSvg(scene);
}
