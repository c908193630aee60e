import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { Backing, Binding, Making, Wadding } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { finishingWords } from "./finishing-words.ts";
import { measured, measuredSize } from "./making-lines.ts";

function backingTold(backing: Backing, plan: Plan): string[] {
  const size = formatSize(backing.across, backing.down, plan.ruler);
  const panel = formatSize(backing.panel.across, backing.panel.along, plan.ruler);
  const say = (places: readonly Ticks[]): string[] => places.map((place) => measured(place, plan));
  return [
    finishingWords.backing(backing.panels, backing.fabric, panel, size),
    ...(backing.panels === 1 ? [] : [finishingWords.backingSeams(backing.seams, say(backing.seamAt))]),
    ...(backing.halvedAt === null ? [] : [finishingWords.halved(say(backing.halvedAt))]),
    ...(backing.directional
      ? [backing.sideways ? finishingWords.printSideways : finishingWords.printUp]
      : []),
  ];
}

function waddingTold({ across, down, packaged, roll }: Wadding, plan: Plan): string {
  const told =
    packaged === null
      ? null
      : finishingWords.packaged(packaged.name, measuredSize(packaged.across, packaged.along, plan));
  const rolled = finishingWords.roll(
    formatLength(roll.width, plan.ruler),
    roll.widths,
    formatLength(roll.length, plan.ruler),
  );
  return finishingWords.wadding(formatSize(across, down, plan.ruler), told, rolled);
}

function bindingTold(binding: Binding, making: Making, plan: Plan): string[] {
  const { cut, fold, join, width, length, extra, count, square, fabric } = binding;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const lost = join === "diagonal" ? width : 2 * making.seam;
  const made =
    cut === "bias" && square !== null
      ? [
          finishingWords.biasBinding(count, say(square), say(width), say(length), say(extra), fabric),
          finishingWords.biasTube(say(width)),
        ]
      : [
          finishingWords.straightBinding(count, say(width), say(length), say(extra), fabric),
          ...(count > 1 ? [finishingWords.join[join](count - 1, say(lost))] : []),
        ];
  return [...made, finishingWords.bindingFold[fold], finishingWords.bindingSewn(say(making.seam))];
}

/** Squaring up, backing, wadding, binding and sleeve, a title and then lines to tick off. */
export function finishingLines(making: Making, plan: Plan): string[] {
  const { edge, backing, wadding, binding, sleeve } = making.finishing;
  const { square } = making;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const lines = [
    finishingWords.square(measuredSize(square.across, square.down, plan), measured(square.diagonal, plan)),
    ...(backing === null ? [] : backingTold(backing, plan)),
    ...(wadding === null ? [] : [waddingTold(wadding, plan)]),
    ...(backing === null || backing.overhang === 0 ? [] : [finishingWords.reach(say(backing.overhang))]),
    finishingWords.layers,
    finishingWords.quilt,
    ...(binding === null ? [finishingWords.noBinding(say(edge))] : bindingTold(binding, making, plan)),
    finishingWords.sleeve(formatSize(sleeve.across, sleeve.down, plan.ruler), say(sleeve.hem)),
    finishingWords.label,
  ];
  return [finishingWords.title, ...lines.map((line) => `  [ ] ${line}`), ""];
}
