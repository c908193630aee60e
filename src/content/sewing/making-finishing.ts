import type { Purpose } from "../../diagnostics/purposes.ts";
import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { Backing, Binding, Finishing, Making, Wadding } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

import { bagsFor } from "../cutting/bags.ts";
import { measured, measuredSize } from "./making-lines.ts";

/** What these pieces are for. */
const BACKING = (purpose: Purpose): boolean => purpose.for === "backing" || purpose.for === "backing-panels";
const BINDING = (purpose: Purpose): boolean => purpose.for === "binding" && !purpose.bias;
const BIAS = (purpose: Purpose): boolean => purpose.for === "binding" && purpose.bias;

/** The bag that these pieces are in, or only their fabric. */
function bagFor(plan: Plan, fabric: string, serves: (purpose: Purpose) => boolean, words: Words): string {
  const found = bagsFor(plan, fabric, serves);
  return words.finishing.bag(found.map(({ letter }) => letter).join("/"), fabric);
}

function backingTold(backing: Backing, plan: Plan, words: Words): string[] {
  const size = formatSize(backing.across, backing.down, plan.ruler);
  const panel = formatSize(backing.panel.across, backing.panel.along, plan.ruler);
  const say = (places: readonly Ticks[]): string[] => places.map((place) => measured(place, plan));
  return [
    ...(backing.halvedAt === null ? [] : [words.finishing.halved(say(backing.halvedAt))]),
    words.finishing.backing(backing.panels, bagFor(plan, backing.fabric, BACKING, words), panel, size),
    ...(backing.panels === 1 ? [] : [words.finishing.backingSeams(backing.seams, say(backing.seamAt))]),
    ...(backing.directional
      ? [backing.sideways ? words.finishing.printSideways : words.finishing.printUp]
      : []),
  ];
}

/** The packaged size that covers it, if any, and what it takes off the roll. */
function waddingBought({ packaged, roll }: Wadding, plan: Plan, words: Words): [string | null, string] {
  const told =
    packaged === null
      ? null
      : words.finishing.packaged(packaged.name, measuredSize(packaged.across, packaged.along, plan));
  const rolled = words.finishing.roll(
    formatLength(roll.width, plan.ruler),
    roll.widths,
    formatLength(roll.length, plan.ruler),
  );
  return [told, rolled];
}

/** The wadding with what it is bought as; where none is named, what is usual. */
export function waddingTold({ wadding, unnamed }: Finishing, plan: Plan, words: Words): string[] {
  if (wadding !== null) {
    const [told, rolled] = waddingBought(wadding, plan, words);
    return [words.finishing.wadding(formatSize(wadding.across, wadding.down, plan.ruler), told, rolled)];
  }
  return unnamed.wadding === null ? [] : [anyWadding(unnamed.wadding, plan, words)];
}

/** The wadding that the file does not name, as it is bought. */
function anyWadding(wadding: Wadding, plan: Plan, words: Words): string {
  const [told, rolled] = waddingBought(wadding, plan, words);
  return words.finishing.anyWadding(formatSize(wadding.across, wadding.down, plan.ruler), told, rolled);
}

/** The backing that the file does not name. */
export function anyBacking({ unnamed }: Finishing, plan: Plan, words: Words): string[] {
  if (unnamed.backing === null) return [];
  const { across, down, overhang } = unnamed.backing;
  const size = formatSize(across, down, plan.ruler);
  return [words.finishing.anyBacking(size, formatLength(overhang, plan.ruler))];
}

function bindingTold(binding: Binding, making: Making, plan: Plan, words: Words): string[] {
  const { cut, fold, join, width, length, extra, count, square, fabric } = binding;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const bag = bagFor(plan, fabric, cut === "bias" ? BIAS : BINDING, words);
  const lost = join === "diagonal" ? width : 2 * making.seam;
  const made =
    cut === "bias" && square !== null
      ? [
          words.finishing.biasBinding({
            ...{ count, square: say(square), width: say(width) },
            ...{ length: say(length), extra: say(extra), fabric: bag },
          }),
          words.finishing.biasTube(say(width)),
        ]
      : [
          words.finishing.straightBinding(count, say(width), say(length), say(extra), bag),
          ...(count > 1 ? [words.finishing.join[join](count - 1, say(lost))] : []),
        ];
  return [
    ...made,
    words.finishing.bindingFold[fold],
    words.finishing.bindingOn(fold, say(making.seam)),
    words.finishing.bindingCorner(say(making.seam)),
    words.finishing.bindingEnds(join),
    words.finishing.bindingBack(fold),
  ];
}

/** Squaring up, backing, wadding, binding and sleeve, a title and then lines to tick off. */
export function finishingLines(making: Making, plan: Plan, words: Words): string[] {
  const { edge, backing, binding, sleeve } = making.finishing;
  const { square } = making;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const lines = [
    words.finishing.square(measuredSize(square.across, square.down, plan), measured(square.diagonal, plan)),
    ...(backing === null ? anyBacking(making.finishing, plan, words) : backingTold(backing, plan, words)),
    ...waddingTold(making.finishing, plan, words),
    ...(backing === null || backing.overhang === 0 ? [] : [words.finishing.reach(say(backing.overhang))]),
    words.finishing.layers,
    words.finishing.quilt,
    ...(binding === null
      ? [words.finishing.noBinding(say(edge))]
      : bindingTold(binding, making, plan, words)),
    words.finishing.sleeve(formatSize(sleeve.across, sleeve.down, plan.ruler), say(sleeve.hem)),
    words.finishing.label,
    words.finishing.off,
  ];
  return [words.finishing.title, ...lines.map((line) => `  [ ] ${line}`), ""];
}
