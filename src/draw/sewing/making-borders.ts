import { formatLength } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";
import type { BorderRound, Making } from "../../making/types.ts";
import type { Patch, TopBorder } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import {
  type Corner,
  outlineNodes,
  outlineOf,
  type Placing,
  patchNodes,
  rectangle,
  ticksOf,
} from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import { toSvg } from "../scene/canvas.ts";
import { NO_HEAD, PAGE_WIDTH, type SewnQuilt, type Standing, TICKS_PER_MM } from "../scene/frame.ts";
import { numberMark } from "../scene/marks.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import { titleBlock } from "../scene/title-block.ts";

const TALLEST = 480;
/** Page units that open between a border and what it is sewn to. */
const APART = 22;
const MARK = 15;

type Side = "left" | "right" | "top" | "bottom";
const OUT: Record<Side, Corner> = { left: [-1, 0], right: [1, 0], top: [0, -1], bottom: [0, 1] };

interface Inner {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

function innerOf({ x, y, across, down, side, end }: TopBorder): Inner {
  const mm = (value: TopBorder["x"]): number => ticksOf(value) / TICKS_PER_MM;
  return {
    left: mm(x) + mm(side),
    top: mm(y) + mm(end),
    right: mm(x) + mm(across) - mm(side),
    bottom: mm(y) + mm(down) - mm(end),
  };
}

/** The strip a patch of a border belongs to; squares in the corners go on with the second pair. */
function sideOf(patch: Patch, border: TopBorder, inner: Inner): Side {
  const corners = outlineOf(patch.outline);
  const x = corners.reduce((sum, corner) => sum + corner[0], 0) / corners.length;
  const y = corners.reduce((sum, corner) => sum + corner[1], 0) / corners.length;
  const beyond: Record<Side, number> = {
    left: inner.left - x,
    right: x - inner.right,
    top: inner.top - y,
    bottom: y - inner.bottom,
  };
  const order: Side[] =
    border.kind === "butted-tops-first"
      ? ["left", "right", "top", "bottom"]
      : ["top", "bottom", "left", "right"];
  if (border.kind === "mitred") order.sort((a, b) => beyond[b] - beyond[a]);
  return order.find((side) => beyond[side] > 0) ?? "top";
}

/** Number of each pair of strips in the order of sewing. */
function numbersOf(
  rounds: readonly BorderRound[],
): { round: number; sides: readonly Side[]; number: number }[] {
  let number = 0;
  return rounds.flatMap(({ strips, kind }, round) => {
    if (kind === "mitred") {
      number += 1;
      return strips.map(({ sides }) => ({ round, sides, number }));
    }
    return strips.map(({ sides }) => {
      number += 1;
      return { round, sides, number };
    });
  });
}

function legend(
  rounds: readonly BorderRound[],
  seam: number,
  ruler: Ruler,
  words: Words,
): { number: number; text: string }[] {
  const say = (length: number): string =>
    formatLength(Math.round(length / ruler.mark) * ruler.mark, ruler, { typeset: true });
  // Lengths are told to the nearest mark; a seam allowance is what it is.
  const numbered = numbersOf(rounds);
  const seen = new Set<number>();
  return numbered.flatMap(({ round, sides, number }) => {
    const own = rounds[round];
    const strips = own?.strips.find((each) => each.sides === sides);
    if (own === undefined || strips === undefined || seen.has(number)) return [];
    seen.add(number);
    if (own.kind === "mitred")
      return [
        {
          number,
          text: words.drawings.sewing.borders.mitre(
            words.purposes.border(own.name),
            formatLength(seam, ruler, { typeset: true }),
          ),
        },
      ];
    const extra = own.extra > 0 ? words.drawings.sewing.borders.extra(say(own.extra)) : "";
    const where = words.drawings.sewing.borders.sides[sides[0] ?? "left"];
    return [
      {
        number,
        text: words.drawings.sewing.borders.strips(
          words.purposes.border(own.name),
          where,
          say(strips.sewn),
          extra,
        ),
      },
    ];
  });
}

/** The number of each pair of strips, half-way between the border and what it is sewn to. */
function borderNumbers(
  rounds: Making["borders"],
  inners: readonly ReturnType<typeof innerOf>[],
  at: Placing,
): SceneNode[] {
  return numbersOf(rounds).flatMap(({ round, sides, number }) => {
    const inner = inners[round];
    if (inner === undefined) return [];
    const middle: Corner = [(inner.left + inner.right) / 2, (inner.top + inner.bottom) / 2];
    const places: Record<Side, Corner> = {
      left: [inner.left, middle[1]],
      right: [inner.right, middle[1]],
      top: [middle[0], inner.top],
      bottom: [middle[0], inner.bottom],
    };
    return sides.flatMap((side) => {
      const edge = places[side];
      const [dx, dy] = OUT[side];
      const far = (round + 0.5) * APART;
      const [cx, cy] = [at.x + edge[0] * at.scale + dx * far, at.y + edge[1] * at.scale + dy * far];
      return numberMark(String(number), { x: cx - MARK / 2, y: cy - MARK / 2, width: MARK, height: MARK });
    });
  });
}

/** What each number means, from a height down. */
function legendNodes(
  told: ReturnType<typeof legend>,
  top: number,
  width: number,
): { nodes: SceneNode[]; bottom: number } {
  const nodes: SceneNode[] = [];
  const room = width - MARK - 8;
  let y = top;
  for (const { number, text } of told) {
    nodes.push(...numberMark(String(number), { x: 0, y, width: MARK, height: MARK }));
    const lines = wrap(cleanText(text), room, 9.5, 3);
    for (const [i, each] of lines.entries())
      nodes.push(textIn(each, { x: MARK + 8, y: y + 13 * i, width: room, height: MARK }, { size: 9.5 }));
    y += 6 + 13 * lines.length;
  }
  return { nodes, bottom: y };
}

/** The borders set apart and numbered, as plain data; null when there are none. */
export function bordersScene(
  { top, making, fabrics, ruler }: SewnQuilt,
  words: Words,
  { bare = false, width = PAGE_WIDTH, tallest = TALLEST }: Standing = {},
): Scene | null {
  const { borders: rounds } = making;
  if (rounds.length === 0) return null;
  const name = cleanText(top.name);
  const [across, down] = [ticksOf(top.across), ticksOf(top.down)];
  const facts = [
    { caption: words.drawings.sewing.finishedSize, value: spokenSizeNear(across, down, ruler) },
    { caption: words.drawings.sewing.borders.count, value: String(rounds.length) },
  ];
  const head = bare
    ? NO_HEAD
    : titleBlock({ over: words.drawings.sewing.borders.over, name, colour: null, facts });
  const about = wrap(words.drawings.sewing.borders.apart, width, 10, 2, true);
  const reach = rounds.length * APART;
  const room = Math.min(width - 4 - 2 * reach, bare ? width : width * 0.72);
  const scale = Number(
    Math.min((room / across) * TICKS_PER_MM, ((tallest - 2 * reach) / down) * TICKS_PER_MM, 1).toFixed(6),
  );
  const per = scale / TICKS_PER_MM;
  const y = head.height;
  const at: Placing = { x: (width - across * per) / 2, y: y + 8 + 14 * about.length + reach, scale };
  const inners = top.borders.map(innerOf);
  const shift = (patch: Patch): Corner => {
    const index = patch.origin.border;
    const [border, inner] = [top.borders[index ?? -1], inners[index ?? -1]];
    if (index === null || border === undefined || inner === undefined) return [0, 0];
    const [dx, dy] = OUT[sideOf(patch, border, inner)];
    const far = ((index + 1) * APART) / scale;
    return [dx * far, dy * far];
  };
  const core = inners[0] ?? { left: 0, top: 0, right: 0, bottom: 0 };
  const nodes: SceneNode[] = [
    ...head.nodes,
    ...about.map((text, i) =>
      textIn(text, { x: 0, y: y + 14 * i, width, height: 14 }, { size: 10, bold: true }),
    ),
    ...patchNodes(top.patches, fabrics, at, { id: "borders", shift }),
    ...outlineNodes(
      [rectangle(core.left, core.top, core.right - core.left, core.bottom - core.top)],
      at,
      1.2,
      "core",
    ),
  ];
  nodes.push(...borderNumbers(rounds, inners, at));
  const told = legend(rounds, making.seam, ruler, words);
  const below = legendNodes(told, at.y + down * per + reach + 12, width);
  nodes.push(...below.nodes);
  return {
    idPrefix: "borders-",
    title: `${words.drawings.sewing.borders.over}: ${name}`,
    description: words.drawings.sewing.borders.described(rounds.length),
    ...onPaper(nodes, below.bottom, width),
  };
}

/** The borders in the order of sewing, as an SVG document; null when there are none. */
export function drawBorders(quilt: SewnQuilt, words: Words): string | null {
  const scene = bordersScene(quilt, words);
  return scene === null ? null : toSvg(scene);
}
