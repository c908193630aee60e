import type { Arrangements } from "../../choices/arranging/arrange-blocks.ts";
import type { Comparison } from "../../choices/methods/comparison.ts";
import type { SeveralSizes } from "../../choices/sizes/several-sizes.ts";
import { namedArrangements } from "../../content/choosing/arrange.ts";
import { type Head, head } from "../../diagnostics/answer.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatLength, formatMeasure } from "../../length/index.ts";
import type { LengthUnit, Ruler } from "../../length/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { UnitSizes } from "../../quilt/sizes/unit-sizes.ts";
import type { UnitListed } from "../../quilt/unit-list.ts";
import type { Savings } from "../../savings/try-ideas.ts";
import { type Words, wordAll } from "../../words/index.ts";
import type {
  ArrangeAnswer,
  BuyAnswer,
  BuySizesAnswer,
  CompareAnswer,
  PlanAnswer,
  SavingsAnswer,
  SizesAnswer,
  StashAdded,
  StashAnswer,
  StashShown,
  StashSuits,
  StashTaken,
  StashUndone,
  UnitsAnswer,
} from "./answers.ts";
import { lengthTable } from "./length-keys.ts";
import { readable, readablePortions } from "./readable.ts";
import { sizesWorded, unitsWorded } from "./sizes.ts";

export type * from "./answers.ts";

/** An answer as text, with a line end at the end. */
function printed(answer: object): string {
  return `${readable(answer)}\n`;
}

const onRuler = (ruler: Ruler) => (ticks: number) => formatLength(ticks, ruler);

/** What pieces are for and what units are called, beside the facts. */
function textsOf({ fabrics, making, ruler }: Plan, { purposes, unitNames }: Words): PlanAnswer["texts"] {
  const { notes } = purposes;
  return {
    uses: fabrics.map(({ pieces }) =>
      pieces.map(({ uses }) => uses.map(({ purpose }) => purposes.purpose(purpose, ruler))),
    ),
    notes: fabrics.map(({ pieces }) => pieces.map((piece) => notes(piece, ruler))),
    units: (making?.units ?? []).map(({ told, uses }) => ({
      unit: unitNames.told(told),
      uses: uses.map(({ place }) => purposes.place(place)),
    })),
  };
}

/** The plan as a file, keys in the order of the types, then its lengths in words. */
export function planJson(plan: Plan, words: Words): string {
  return [...planPortions(plan, words)].join("");
}

/** The same, a portion at a time. */
export function* planPortions(plan: Plan, words: Words): Generator<string> {
  const diagnostics = wordAll(plan.diagnostics, words);
  yield* readablePortions({
    ...plan,
    assumptions: plan.assumptions.map((one) => ({ fabric: one.fabric, ...words.assumed(one, plan.ruler) })),
    diagnostics,
    lengths: lengthTable(plan, onRuler(plan.ruler)),
    texts: textsOf(plan, words),
  } satisfies PlanAnswer);
  yield "\n";
}

/** The shopping list for programs. */
export function buyJson({ name, ruler, diagnostics: told, ...plan }: Plan, words: Words): string {
  const diagnostics = wordAll(told, words);
  const fabrics = plan.fabrics.map(
    ({ name, usable, purchase, stock, mix, price, bound, sturdiness, stacked }) => ({
      ...{ name, usable, purchase, price, bound, sturdiness },
      ...(stacked === undefined ? {} : { stacked }),
      ...(stock === undefined ? {} : { stock }),
      ...(mix === undefined ? {} : { mix }),
    }),
  );
  const lengths = lengthTable(fabrics, onRuler(ruler));
  return printed({ ...head("crossgrain buy"), name, fabrics, lengths, diagnostics } satisfies BuyAnswer);
}

/** One design in several sizes. */
export function buySizesJson(
  sizes: SeveralSizes,
  ruler: Ruler,
  diagnostics: readonly Diagnostic[],
  words: Words,
): string {
  const lengths = lengthTable(sizes, onRuler(ruler));
  const told = wordAll(diagnostics, words);
  return printed({
    ...head("crossgrain buy sizes"),
    ...sizes,
    sizes: sizes.sizes.map((size) => ({
      ...size,
      from: size.from === null ? "" : words.sizes.from(size.from),
    })),
    lengths,
    diagnostics: told,
  } satisfies BuySizesAnswer);
}

/** Every kind of unit. */
export function unitsJson(units: UnitListed[], words: Words): string {
  return printed({ ...head("crossgrain units"), units: unitsWorded(units, words) } satisfies UnitsAnswer);
}

/** Cut sizes of one unit. */
export function unitSizesJson(found: UnitSizes, words: Words): string {
  const sizes = sizesWorded(found, words);
  const lengths = lengthTable(sizes, onRuler(sizes.ruler));
  return printed({ ...head("crossgrain sizes"), ...sizes, lengths } satisfies SizesAnswer);
}

/** Ways of making side by side. */
export function comparisonJson(
  comparison: Comparison,
  ruler: Ruler,
  diagnostics: readonly Diagnostic[],
  words: Words,
): string {
  const lengths = lengthTable(comparison, onRuler(ruler));
  const told = wordAll(diagnostics, words);
  return printed({
    ...head("crossgrain compare"),
    ...comparison,
    rows: comparison.rows.map((row) => ({ ...row, why: row.why === null ? "" : words.whyNot(row.why) })),
    lengths,
    diagnostics: told,
  } satisfies CompareAnswer);
}

/** Arrangements side by side. The drawn tops are for the picture; their rows say the same. */
export function arrangementsJson(
  all: Arrangements,
  ruler: Ruler,
  diagnostics: readonly Diagnostic[],
  words: Words,
): string {
  const { arrangements: _, ...found } = all;
  const bare = namedArrangements(all, words).map(({ planned, why: whyNot, ...one }) => {
    const why = whyNot === null ? "" : words.whyNot(whyNot);
    if (planned === null) return { ...one, planned, why };
    const { top: _top, ...figures } = planned;
    const notes = wordAll(planned.notes, words).map(({ message }) => message);
    const methods = figures.methods.map(({ unit, ...made }) => ({
      unit: words.unitNames.told(unit),
      ...made,
    }));
    return { ...one, planned: { ...figures, methods, notes }, why };
  });
  const lengths = lengthTable({ bare, found }, onRuler(ruler));
  const rest = { arrangements: bare, lengths, diagnostics: wordAll(diagnostics, words) };
  return printed({ ...head("crossgrain arrange"), ...found, ...rest } satisfies ArrangeAnswer);
}

/** What is told before it is put in words. */
type Spoken<Answer> = Omit<Answer, "diagnostics"> & { diagnostics: Diagnostic[] };

/** What an action on the drawer tells besides its head and lengths. */
export type StashTold =
  | Spoken<Omit<StashShown, keyof Head<string> | "lengths">>
  | Spoken<Omit<StashAdded, keyof Head<string> | "lengths">>
  | Spoken<Omit<StashTaken, keyof Head<string> | "lengths">>
  | Spoken<Omit<StashSuits, keyof Head<string> | "lengths">>;

/** What an action on the drawer did. `spoken`: the measure its lengths are told in. */
export function stashJson(told: StashTold, spoken: LengthUnit, words: Words): string {
  const { diagnostics, ...rest } = told;
  const lengths = lengthTable(rest, (ticks) => formatMeasure(ticks, spoken));
  return printed({
    ...head("crossgrain stash"),
    ...rest,
    lengths,
    diagnostics: wordAll(diagnostics, words),
  } as StashAnswer);
}

/** Changes of the drawer taken back. */
export function undoneJson(told: Spoken<Omit<StashUndone, keyof Head<string>>>, words: Words): string {
  const diagnostics = wordAll(told.diagnostics, words);
  return printed({ ...head("crossgrain stash"), ...told, diagnostics } satisfies StashUndone);
}

/** What would save: each change with what it alters and what is then bought. */
export function savingsJson({ plan, savings, tried }: Savings, words: Words): string {
  const listed = savings.map(({ idea, bought, difference }) => ({
    change: idea.change,
    difference,
    fabrics: bought.map(({ fabric, length, cost }) => ({ fabric, length, cost })),
    text: idea.text,
  }));
  const lengths = lengthTable(listed, onRuler(plan.ruler));
  const rest = {
    name: plan.name,
    tried,
    savings: listed,
    lengths,
    diagnostics: wordAll(plan.diagnostics, words),
  };
  return printed({ ...head("crossgrain savings"), ...rest } satisfies SavingsAnswer);
}
