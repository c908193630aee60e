import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { Backing, Binding, Finishing, Making, Wadding } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { finishingWords } from "./finishing-words.ts";
import { measured, measuredSize } from "./making-lines.ts";

/** How the cut list begins to say what these pieces are for. */
const [BACKING, BINDING, BIAS] = ["backing", "binding, ", "bias binding, "] as const;

/** The bag that these pieces are in, or only their fabric. */
function bagFor(plan: Plan, fabric: string, use: string): string {
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  const found = own.filter(({ uses }) => uses.some(({ text }) => text.startsWith(use)));
  return finishingWords.bag(found.map(({ letter }) => letter).join("/"), fabric);
}

function backingTold(backing: Backing, plan: Plan): string[] {
  const size = formatSize(backing.across, backing.down, plan.ruler);
  const panel = formatSize(backing.panel.across, backing.panel.along, plan.ruler);
  const say = (places: readonly Ticks[]): string[] => places.map((place) => measured(place, plan));
  return [
    finishingWords.backing(backing.panels, bagFor(plan, backing.fabric, BACKING), panel, size),
    ...(backing.panels === 1 ? [] : [finishingWords.backingSeams(backing.seams, say(backing.seamAt))]),
    ...(backing.halvedAt === null ? [] : [finishingWords.halved(say(backing.halvedAt))]),
    ...(backing.directional
      ? [backing.sideways ? finishingWords.printSideways : finishingWords.printUp]
      : []),
  ];
}

/** The packaged size that covers it, if any, and what it takes off the roll. */
function waddingBought({ packaged, roll }: Wadding, plan: Plan): [string | null, string] {
  const told =
    packaged === null
      ? null
      : finishingWords.packaged(packaged.name, measuredSize(packaged.across, packaged.along, plan));
  const rolled = finishingWords.roll(
    formatLength(roll.width, plan.ruler),
    roll.widths,
    formatLength(roll.length, plan.ruler),
  );
  return [told, rolled];
}

/** The wadding with what it is bought as; where none is named, what is usual. */
export function waddingTold({ wadding, unnamed }: Finishing, plan: Plan): string[] {
  if (wadding !== null) {
    const [told, rolled] = waddingBought(wadding, plan);
    return [finishingWords.wadding(formatSize(wadding.across, wadding.down, plan.ruler), told, rolled)];
  }
  return unnamed.wadding === null ? [] : [anyWadding(unnamed.wadding, plan)];
}

/** The wadding that the file does not name, as it is bought. */
function anyWadding(wadding: Wadding, plan: Plan): string {
  const [told, rolled] = waddingBought(wadding, plan);
  return finishingWords.anyWadding(formatSize(wadding.across, wadding.down, plan.ruler), told, rolled);
}

/** The backing that the file does not name. */
export function anyBacking({ unnamed }: Finishing, plan: Plan): string[] {
  if (unnamed.backing === null) return [];
  const { across, down, overhang } = unnamed.backing;
  const size = formatSize(across, down, plan.ruler);
  return [finishingWords.anyBacking(size, formatLength(overhang, plan.ruler))];
}

function bindingTold(binding: Binding, making: Making, plan: Plan): string[] {
  const { cut, fold, join, width, length, extra, count, square, fabric } = binding;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const bag = bagFor(plan, fabric, cut === "bias" ? BIAS : BINDING);
  const lost = join === "diagonal" ? width : 2 * making.seam;
  const made =
    cut === "bias" && square !== null
      ? [
          finishingWords.biasBinding(count, say(square), say(width), say(length), say(extra), bag),
          finishingWords.biasTube(say(width)),
        ]
      : [
          finishingWords.straightBinding(count, say(width), say(length), say(extra), bag),
          ...(count > 1 ? [finishingWords.join[join](count - 1, say(lost))] : []),
        ];
  return [
    ...made,
    finishingWords.bindingFold[fold],
    finishingWords.bindingOn(fold, say(making.seam)),
    finishingWords.bindingCorner(say(making.seam)),
    finishingWords.bindingEnds(join),
    finishingWords.bindingBack(fold),
  ];
}

/** Squaring up, backing, wadding, binding and sleeve, a title and then lines to tick off. */
export function finishingLines(making: Making, plan: Plan): string[] {
  const { edge, backing, binding, sleeve } = making.finishing;
  const { square } = making;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const lines = [
    finishingWords.square(measuredSize(square.across, square.down, plan), measured(square.diagonal, plan)),
    ...(backing === null ? anyBacking(making.finishing, plan) : backingTold(backing, plan)),
    ...waddingTold(making.finishing, plan),
    ...(backing === null || backing.overhang === 0 ? [] : [finishingWords.reach(say(backing.overhang))]),
    finishingWords.layers,
    finishingWords.quilt,
    ...(binding === null ? [finishingWords.noBinding(say(edge))] : bindingTold(binding, making, plan)),
    finishingWords.sleeve(formatSize(sleeve.across, sleeve.down, plan.ruler), say(sleeve.hem)),
    finishingWords.label,
    finishingWords.off,
  ];
  return [finishingWords.title, ...lines.map((line) => `  [ ] ${line}`), ""];
}
