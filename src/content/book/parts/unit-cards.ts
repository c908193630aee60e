import type { StepPicture } from "../../../draw/steps/draw-step-pictures.ts";
import { COLUMNS, pictureHigh, pictureRows } from "../../../print/paper/measure.ts";
import type { ToldGroup } from "../../sewing/unit-told.ts";
import type { ToldRun } from "../../sewing/units.ts";
import type { Card, CardPicture } from "../content.ts";
import { typeset } from "../typeset.ts";

const pictured = ({ scene, width, height, heading }: StepPicture): CardPicture => ({
  scene,
  width,
  height,
  caption: heading,
});

function lineOf(line: string): string {
  const said = typeset(line.trim()).replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
  return line.startsWith(" ") ? `  ${said}` : said;
}

/** Runs of each batch; what is said before its first step goes with that step. */
function batchesOf(runs: readonly ToldRun[]): ToldRun[][] {
  const batches: ToldRun[][] = [];
  let before: string[] = [];
  let last = Number.POSITIVE_INFINITY;
  for (const run of runs) {
    if (run.from === 0) {
      before = [...run.lines];
      last = Number.POSITIVE_INFINITY;
      continue;
    }
    if (run.from <= last) batches.push([]);
    last = run.from;
    batches.at(-1)?.push({ ...run, lines: [...before, ...run.lines] });
    before = [];
  }
  return batches;
}

/** What is told of each batch, step by step, as cards have it. */
export const toldBatches = ({ runs }: ToldGroup): ToldRun[][] =>
  batchesOf(runs).map((batch) => batch.map((run) => ({ ...run, lines: run.lines.map(lineOf) })));

/** Pictures under their headings, in order: those of one batch or heap together. */
function headed(pictures: readonly StepPicture[]): StepPicture[][] {
  const found: StepPicture[][] = [];
  for (const picture of pictures) {
    if (found.at(-1)?.[0]?.heading === picture.heading) found.at(-1)?.push(picture);
    else found.push([picture]);
  }
  return found;
}

/** Points that the pictures of one card are high at most, a single one excepted. */
const TALLEST = 270;

/** Pictures of a step in as many cards as they need: a card is never broken over two pages. */
function inCards(pictures: readonly CardPicture[]): CardPicture[][] {
  const cards: CardPicture[][] = [];
  const highOf = (some: CardPicture[]): number =>
    pictureRows({ pictures: some }, COLUMNS).reduce((sum, row) => sum + Math.max(...row.map(pictureHigh)), 0);
  for (const picture of pictures) {
    const last = cards.at(-1);
    if (last === undefined || highOf([...last, picture]) > TALLEST) cards.push([picture]);
    else last.push(picture);
  }
  return cards;
}

function cardsOfBatch(runs: readonly ToldRun[], pictures: readonly StepPicture[]): Card[] {
  // What there is when all is done stands with the last step.
  const told = runs.filter(
    ({ lines, from, to }) =>
      lines.length > 0 || pictures.some((each) => each.from >= from && each.to <= to && each.from > 0),
  );
  return told.flatMap(({ from, to, lines }, i): Card[] => {
    const own = pictures.filter(
      (each) =>
        (each.from >= from && each.to <= to && each.from > 0) || (each.from === 0 && i === told.length - 1),
    );
    const number = from === to ? String(from) : `${from}–${to}`;
    const [first = [], ...others] = inCards(own.map(pictured));
    return [
      { number, pictures: first, lines: lines.map(lineOf) },
      // A step of many pictures goes on in cards that need no words of their own.
      ...others.map((some) => ({ number: "", pictures: some, lines: [] })),
    ];
  });
}

/** The steps of units that are sewn alike: each with its pictures and its words. */
export function unitCards({ runs }: ToldGroup, pictures: readonly StepPicture[]): Card[] {
  const batches = batchesOf(runs);
  if (batches.length < 2) return cardsOfBatch(batches[0] ?? [], pictures);
  const own = headed(pictures);
  return batches.flatMap((batch, i) => cardsOfBatch(batch, own[i] ?? []));
}
