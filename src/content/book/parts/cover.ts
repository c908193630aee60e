import { coverScene } from "../../../draw/quilt/draw-picture.ts";
import { ticksOf } from "../../../draw/quilt/patches.ts";
import { spokenSizeNear } from "../../../draw/quilt/quilt-words.ts";
import { INK } from "../../../draw/scene/palette.ts";
import {
  type Box,
  group,
  line,
  type Outline,
  rect,
  type Scene,
  type SceneNode,
} from "../../../draw/scene/scene.ts";
import { cleanText } from "../../../draw/scene/text-fit.ts";
import { fabricNodes } from "../../../draw/scene/textures.ts";
import { formatLength, formatMeasure } from "../../../length/index.ts";
import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { priceOf, totalPrice } from "../../index.ts";
import type { Fact } from "../content.ts";

const WIDTH = 560;
const TALLEST = 640;
const ID = "cover-";

/** A box with round corners, near enough for cloth. */
function rounded({ x, y, width, height }: Box, radius: number): Outline {
  const centres = [
    [x + width - radius, y + height - radius],
    [x + radius, y + height - radius],
    [x + radius, y + radius],
    [x + width - radius, y + radius],
  ] as const;
  const steps = 6;
  return centres.flatMap(([cx, cy], corner) =>
    Array.from({ length: steps + 1 }, (_, i): [number, number] => {
      const angle = ((corner + i / steps) * Math.PI) / 2;
      return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
    }),
  );
}

/** The fabrics folded and stacked, each as thick as there is much of it. */
function stackScene(plan: Plan, words: Words): Scene {
  const { fabrics } = plan;
  const lengths = fabrics.map(({ purchase, bound }) => purchase?.length ?? bound.used);
  const [least, room] = [fabrics.length > 12 ? 12 : 26, 420];
  const whole = lengths.reduce((sum, length) => sum + length, 0) || 1;
  const free = Math.max(0, room - least * fabrics.length);
  let y = 4;
  const nodes = fabrics.flatMap((_, i): SceneNode[] => {
    const height = Math.round(least + ((lengths[i] ?? 0) / whole) * free);
    const shift = [0, 14, 5, 20, 9][i % 5] ?? 0;
    const box = { x: 4 + shift, y, width: WIDTH - 44, height: height - 3 };
    y += height;
    const round = Math.min(13, box.height / 2);
    const shapes = fabricNodes(fabrics, i, [rounded(box, round)], 1);
    const fold = box.y + box.height / 2;
    const edge = { fill: "none", stroke: INK, strokeWidth: 1.1 };
    return [
      group(shapes),
      line(box.x + 20, fold, box.x + box.width, fold, { stroke: INK, strokeWidth: 0.8 }),
      rect(box, edge, round),
    ];
  });
  return {
    width: WIDTH,
    height: y + 2,
    idPrefix: ID,
    title: words.book.bench.coverFabrics,
    description: words.book.bench.coverPicture(fabrics.map(({ name }) => cleanText(name))),
    nodes,
  };
}

/** What all purchases come to, when all are spoken in one measure. */
function allBought(plan: Plan): string | null {
  const bought = plan.fabrics.filter(({ purchase }) => purchase !== null);
  const units = new Set(bought.map(({ sold }) => sold.unit));
  const [unit] = units;
  if (unit === undefined || units.size > 1) return null;
  const length = bought.reduce((sum, { purchase }) => sum + (purchase?.length ?? 0), 0);
  return formatMeasure(length, unit, {
    typeset: true,
    decimal: plan.ruler.decimal,
    language: plan.ruler.language,
  });
}

function coverFacts(plan: Plan, words: Words): Fact[] {
  const { facts } = words.book.bench;
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const pieces = sum(plan.fabrics.flatMap((fabric) => fabric.pieces.map(({ count }) => count)));
  const sizes = sum(plan.fabrics.map((fabric) => fabric.pieces.length));
  const strips = sum(plan.fabrics.flatMap(({ steps }) => steps.map((step) => step.strips.length)));
  const [only] = plan.fabrics;
  const cost =
    totalPrice(plan) ?? (only !== undefined && plan.fabrics.length === 1 ? priceOf(only, plan) : "");
  const bought = allBought(plan);
  const { top, ruler } = plan;
  const mark = formatLength(ruler.mark, ruler, { typeset: true });
  return [
    ...(top === null
      ? []
      : [
          { caption: facts.finished, value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler) },
          ...(top.blocks.length === 0 ? [] : [{ caption: facts.blocks, value: String(top.blocks.length) }]),
        ]),
    { caption: facts.fabrics, value: String(plan.fabrics.length) },
    ...(bought === null ? [] : [{ caption: facts.buy, value: bought }]),
    ...(cost === "" ? [] : [{ caption: facts.cost, value: cost }]),
    { caption: facts.strips, value: String(strips) },
    { caption: facts.pieces, value: String(pieces) },
    { caption: facts.sizes, value: String(sizes) },
    {
      caption: facts.ruler,
      value: words.book.bench.rulerLong(formatLength(plan.rulerLength, ruler, { typeset: true }), mark),
    },
  ];
}

/** The picture and figures a book opens with. */
export function coverOf(plan: Plan, words: Words): { scene: Scene; facts: Fact[] } {
  const scene =
    plan.top === null
      ? stackScene(plan, words)
      : coverScene(plan.top, plan.fabrics, {
          title: words.book.bench.coverTop,
          description: words.book.bench.title(cleanText(plan.top.name)),
          idPrefix: ID,
          width: WIDTH,
          tallest: TALLEST,
        });
  return { scene, facts: coverFacts(plan, words) };
}
