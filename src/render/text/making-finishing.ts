import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { Backing, Binding, Making } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { finishingWords } from "./finishing-words.ts";

function backingTold(backing: Backing, plan: Plan): string[] {
  const size = formatSize(backing.across, backing.down, plan.ruler);
  const panel = formatSize(backing.panel.across, backing.panel.along, plan.ruler);
  const at = backing.seamAt.map((place) => formatLength(place, plan.ruler));
  const first = finishingWords.backing(backing.panels, backing.fabric, panel, size);
  if (backing.panels === 1) return [first];
  return [
    first,
    finishingWords.backingSeams(backing.seams, at),
    ...(backing.panels === 2 ? [finishingWords.offCentre] : []),
  ];
}

function bindingTold(
  { cut, fold, join, width, length, count, square, fabric }: Binding,
  plan: Plan,
): string[] {
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const made =
    cut === "bias" && square !== null
      ? finishingWords.biasBinding(count, say(square), say(width), say(length), fabric)
      : finishingWords.straightBinding(count, say(width), join, say(length), fabric);
  return [made, finishingWords.bindingFold[fold], finishingWords.bindingSewn(say(plan.making?.seam ?? 0))];
}

/** Squaring up, backing, wadding, binding and sleeve, a title and then lines to tick off. */
export function finishingLines(making: Making, plan: Plan): string[] {
  const { edge, backing, wadding, binding, sleeve } = making.finishing;
  const say = (value: Ticks): string => formatLength(value, plan.ruler);
  const lines = [
    finishingWords.square,
    ...(backing === null ? [] : backingTold(backing, plan)),
    ...(wadding === null
      ? []
      : [
          finishingWords.wadding(
            formatSize(wadding.across, wadding.down, plan.ruler),
            wadding.packaged === null
              ? null
              : finishingWords.packaged(
                  wadding.packaged.name,
                  formatSize(wadding.packaged.across, wadding.packaged.along, plan.ruler),
                ),
          ),
        ]),
    finishingWords.layers,
    ...(binding === null ? [finishingWords.noBinding(say(edge))] : bindingTold(binding, plan)),
    finishingWords.sleeve(formatSize(sleeve.across, sleeve.down, plan.ruler), say(sleeve.hem)),
    finishingWords.label,
  ];
  return [finishingWords.title, ...lines.map((line) => `  [ ] ${line}`), ""];
}
