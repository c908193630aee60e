import { formatLength, roomToMark, type Ticks } from "../../length/index.ts";
import type { CuttingStep, FabricPlan, Lay, Part, Plan, StepFlag } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { alikeLays, stockOfLay } from "../buying/bought.ts";
import { cutPhrase, filledPhrases, groupsOf, subcutPhrases, type Table } from "../sentence.ts";
import { diagonalOf, headsOfCut } from "../sewing/diagonals.ts";
import { borderLetters } from "./borders-cut.ts";

/** One thing to do at the mat: steps of the plan whose strips have one width are cut at one ruler setting. */
export interface Instruction {
  lay: number;
  /** What follows one another: the strips, then what is cut from all of them. */
  phrases: string[];
  /** Numbers of all its strips in the diagram. */
  strips: number[];
  /** What is cut from some strips only; empty when `phrases` says it all. */
  parts: { strips: number[]; phrases: string[] }[];
  flags: StepFlag[];
  /** Said after the flags. */
  notes: string[];
}

/** In place of a lay: what is cut further once it is in its bag. */
export const FROM_BAGS = -1;

function sameCut(a: CuttingStep, b: CuttingStep): boolean {
  return (
    a.kind === "strips" && b.kind === "strips" && a.lay === b.lay && a.width === b.width && a.run === b.run
  );
}

function asInstruction(table: Table, steps: readonly CuttingStep[], words: Words): Instruction {
  const [first, second] = steps;
  if (first === undefined) throw new Error("an instruction without steps");
  const count = steps.reduce((sum, step) => sum + step.count, 0);
  // A strip that is cut already is only subcut.
  const lay = table.fabric.lays[first.lay];
  const isStrip = lay !== undefined && stockOfLay(table.fabric, lay)?.strip === true;
  if (isStrip) return asSubcuts(table, steps, words);
  const cut = cutPhrase(table, first, count, words);
  const warned = flagged(steps, words);
  const whole = {
    lay: first.lay,
    strips: steps.flatMap(({ strips }) => strips),
    flags: warned.flags,
    notes: [...warned.notes, ...borderNotes(table, steps, words)],
  };
  const read = steps.map((step) => ({ groups: groupsOf(table.fabric, step), strips: step.count }));
  const [one, two] = read;
  if (one !== undefined && second === undefined) {
    const told = subcutPhrases(table, one.groups, one.strips, words);
    return { ...whole, phrases: [cut, ...told], parts: [] };
  }
  if (one !== undefined && two !== undefined && steps.length === 2) {
    const filled = filledPhrases(table, one, two, words);
    if (filled !== null) return { ...whole, phrases: [cut, ...filled], parts: [] };
  }
  const parts = steps.map((step) => ({
    strips: step.strips,
    phrases: subcutPhrases(table, groupsOf(table.fabric, step), step.count, words),
  }));
  return { ...whole, phrases: [cut], parts };
}

function asSubcuts(table: Table, steps: readonly CuttingStep[], words: Words): Instruction {
  const phrases = steps.flatMap((step) =>
    subcutPhrases(table, groupsOf(table.fabric, step), step.count, words),
  );
  const [begins = "", ...rest] = phrases;
  return {
    lay: steps[0]?.lay ?? 0,
    phrases: [begins.charAt(0).toUpperCase() + begins.slice(1), ...rest],
    strips: [],
    parts: [],
    flags: [...new Set(steps.flatMap(({ flags }) => flags))],
    notes: borderNotes(table, steps, words),
  };
}

/** What is said of lengths for a border, which wait until the top is measured. */
function borderNotes(
  { plan, fabric, borders }: Table,
  steps: readonly CuttingStep[],
  words: Words,
): string[] {
  const lettersIn = (own: readonly CuttingStep[]): string[] => [
    ...new Set(
      own.flatMap(({ subcuts }) =>
        subcuts.flatMap(({ piece }) => {
          const cut = fabric.pieces[piece];
          return cut !== undefined && borders.has(cut.letter) && !cut.fullWidth ? [cut.letter] : [];
        }),
      ),
    ),
  ];
  const isWhole = ({ kind, subcuts }: CuttingStep): boolean => kind === "bands" && subcuts.length === 1;
  // In a strip that gives nothing else the length can be left as long as the strip.
  const isAlone = ({ kind, subcuts }: CuttingStep): boolean => kind === "strips" && subcuts.length === 1;
  const whole = lettersIn(steps.filter(isWhole));
  const alone = lettersIn(steps.filter(isAlone));
  const parts = lettersIn(steps.filter((step) => !isWhole(step) && !isAlone(step)));
  const spare = roomToMark(fabric.sturdiness.spareLength, plan.ruler);
  return [
    ...(whole.length === 0 || spare <= 0
      ? []
      : [words.cutting.longerLength(whole, formatLength(spare, plan.ruler))]),
    ...(alone.length === 0 ? [] : [words.cutting.leaveWhole(alone)]),
    ...(parts.length === 0 ? [] : [words.cutting.leaveLong(parts)]),
  ];
}

/** Warnings of steps told together: of all where they are the same, else of the strips they are meant for. */
function flagged(
  steps: readonly { strips: readonly number[]; flags: readonly StepFlag[] }[],
  words: Words,
): {
  flags: StepFlag[];
  notes: string[];
} {
  const [first] = steps;
  const alike = steps.every(({ flags }) => flags.join() === first?.flags.join());
  if (first === undefined || alike) return { flags: [...(first?.flags ?? [])], notes: [] };
  const notes = steps.flatMap(({ strips, flags }) =>
    flags.map((flag) =>
      words.cutting.flagOf(
        words.cutting.ofStrips(ranges(strips, words), strips.length),
        words.cutting.stepFlags[flag],
      ),
    ),
  );
  return { flags: [], notes };
}

/** `7 to 12`, `1 and 2`, `4`: numbers of strips, as ranges. */
export function ranges(strips: readonly number[], words: Words): string[] {
  const runs: [first: number, last: number][] = [];
  for (const number of strips) {
    const run = runs.at(-1);
    if (run !== undefined && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([first, last]) => (first === last ? String(first) : words.cutting.range(first, last)));
}

interface Length {
  along: Ticks;
  strips: number[];
}

/** Lengths of cloth that are cut up lengthwise, with the numbers of the strips in each. */
function lengthsIn(lay: Lay): Length[] {
  const numbers = (part: Part): number[] =>
    part.role === "strip" || part.role === "band" ? [part.number] : part.parts.flatMap(numbers);
  return lay.root.parts
    .filter(({ role }) => role === "band-section")
    .map((section) => ({ along: section.along, strips: numbers(section) }));
}

/** Lengths that are cut up alike are one thing to do: the lengths cut off, then the strips of each kind. */
function lengthInstructions(table: Table, lay: number, words: Words): Instruction[] {
  const { fabric, plan } = table;
  const on = fabric.lays[lay];
  if (on === undefined) return [];
  const steps = fabric.steps.filter((step) => step.lay === lay && step.kind !== "straighten");
  const alike = new Map<string, Length[]>();
  for (const length of lengthsIn(on)) {
    const kinds = length.strips.map((strip) => steps.find(({ strips }) => strips.includes(strip))?.number);
    const key = JSON.stringify([length.along, kinds.sort()]);
    alike.set(key, [...(alike.get(key) ?? []), length]);
  }
  return [...alike.values()].map((lengths) => {
    const all = lengths.flatMap(({ strips }) => strips);
    const own = steps.filter(({ strips }) => strips.some((strip) => all.includes(strip)));
    const warned = flagged(
      own.map(({ strips, flags }) => ({ strips: strips.filter((strip) => all.includes(strip)), flags })),
      words,
    );
    return {
      lay,
      phrases: [words.cutting.cutLengths(lengths.length, formatLength(lengths[0]?.along ?? 0, plan.ruler))],
      strips: all,
      parts: own.map((step) => {
        const strips = step.strips.filter((strip) => all.includes(strip));
        return {
          strips,
          phrases: [
            cutPhrase(table, step, strips.length, words),
            ...subcutPhrases(table, groupsOf(fabric, step), strips.length, words),
          ],
        };
      }),
      flags: warned.flags,
      notes: [...warned.notes, ...borderNotes(table, own, words)],
    };
  });
}

/** Where the right angles of the two halves are. */
function cornersOf(diagonal: "rising" | "falling", words: Words): [string, string] {
  return diagonal === "rising"
    ? [words.units.corner("top-left"), words.units.corner("bottom-right")]
    : [words.units.corner("top-right"), words.units.corner("bottom-left")];
}

/** Squares that are halved or quartered and shapes cut by template, once they are in their bags. */
function fromBags({ fabric }: Table, words: Words): Instruction[] {
  return fabric.pieces.flatMap((piece): Instruction[] => {
    const { letter, count, subcut } = piece;
    const heads = headsOfCut(piece, fabric, words);
    const phrases = {
      none: [],
      template: [],
      "once-diagonal": [
        words.cutting.halveEach(count, letter, diagonalOf(piece, fabric, words), heads),
        ...(fabric.print.kind === "one-way" && piece.diagonal !== "any"
          ? [words.cutting.keepSorted(cornersOf(piece.diagonal, words))]
          : []),
      ],
      "twice-diagonal": [words.cutting.quarterEach(count, letter, heads)],
    }[subcut];
    if (phrases.length === 0) return [];
    return [{ lay: FROM_BAGS, phrases, strips: [], parts: [], flags: [], notes: [] }];
  });
}

/** The cutting steps of a fabric as they are followed at the mat. Cloths cut alike are told once. */
export function instructionsFor(plan: Plan, fabric: FabricPlan, words: Words): Instruction[] {
  const table = { plan, fabric, borders: borderLetters(plan) };
  const alike = alikeLays(fabric.lays);
  const inLengths = fabric.lays.map((lay) => new Set(lengthsIn(lay).flatMap(({ strips }) => strips)));
  const told = fabric.lays.flatMap((_, lay): Instruction[] => {
    if (alike[lay] === 0) return [];
    const runs: CuttingStep[][] = [];
    for (const step of fabric.steps) {
      if (step.lay !== lay || step.strips.some((strip) => inLengths[lay]?.has(strip))) continue;
      const run = runs.at(-1);
      const last = run?.at(-1);
      if (run !== undefined && last !== undefined && sameCut(last, step)) run.push(step);
      else runs.push([step]);
    }
    const own = [
      ...runs.map((run) => asInstruction(table, run, words)),
      ...lengthInstructions(table, lay, words),
    ];
    // In the order of the cloth, from its end: what has no strips squares it.
    return own.sort((a, b) => (a.strips[0] ?? 0) - (b.strips[0] ?? 0));
  });
  return [...told, ...fromBags(table, words)];
}
