import { formatLength, formatSize, roomToMark } from "../../length/index.ts";
import { nth } from "../../length/nth.ts";
import { leastLength } from "../../plan/proved/index.ts";
import type { FabricPlan, Lay, Plan } from "../../plan/types.ts";
import { LENGTH_IN_HAND } from "../../stock/index.ts";
import type { Words } from "../../words/index.ts";
import { wordAll } from "../../words/index.ts";
import {
  alikeLays,
  boughtWords,
  layTitle,
  mistakeWords,
  stackedWords,
  stockOfLay,
} from "../buying/bought.ts";
import { alignedLines } from "../lines/table.ts";
import { FROM_BAGS, type Instruction, instructionsFor, ranges } from "./instructions.ts";
import { pieceFacts } from "./piece-facts.ts";

/** Columns of a line, the margin left of it not counted. */
const WIDEST = 96;

function inOneSentence(phrases: readonly string[]): string {
  return `${phrases.join("; ")}.`;
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === "" ? "" : `  ${line}`));
}

/** What is said of a fabric: the maker's own words, and where it may be cut. */
export function fabricNotes({ note, onPrintedLines }: FabricPlan, words: Words): string[] {
  return [...(note === "" ? [] : [note]), ...(onPrintedLines ? [words.purposes.onPrintedLines] : [])];
}

/** The pieces with their letters, in the order of the letters. */
function pieceLines(fabric: FabricPlan, plan: Plan, words: Words): string[] {
  const rows = pieceFacts(fabric, plan, words).map(({ letter, count, size, turn, remarks }) => [
    `[${letter}]`,
    String(count),
    size,
    turn,
    remarks.join("; "),
  ]);
  return alignedLines(
    [
      { heading: "", align: "left" },
      { heading: "", align: "right" },
      { heading: "", align: "left" },
      { heading: "", align: "left" },
      { heading: "", align: "left" },
    ],
    rows,
  );
}

/** Words in lines of at most `WIDEST` columns. */
function wrapped(text: string): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > WIDEST) {
      lines.push(line);
      line = "";
    }
    line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/** A step on one line; one too long for that starts a new line with each phrase. */
function phraseLines(phrases: readonly string[]): string[] {
  const sentence = inOneSentence(phrases);
  if (sentence.length <= WIDEST) return [sentence];
  return phrases.flatMap((phrase, index) => {
    const [first = "", ...rest] = wrapped(`${phrase}${index === phrases.length - 1 ? "." : ";"}`);
    return [first, ...indented(rest)];
  });
}

function instructionLines(instruction: Instruction, hasDiagrams: boolean, words: Words): string[] {
  const { phrases, parts, strips, flags } = instruction;
  const numbers =
    strips.length > 0 && hasDiagrams ? words.cutting.inDiagram(ranges(strips, words), strips.length) : "";
  const told =
    parts.length === 0
      ? phraseLines([...phrases.slice(0, -1), `${phrases.at(-1) ?? ""}${numbers}`])
      : [`${phrases.join("; ")}:`];
  const each = parts.flatMap((part) => {
    const [first = "", ...rest] = phraseLines([
      `${words.cutting.ofStrips(ranges(part.strips, words), part.strips.length)} ${part.phrases[0] ?? ""}`,
      ...part.phrases.slice(1),
    ]);
    return [first, ...indented(rest)];
  });
  const warned = [...flags.map((flag) => words.cutting.stepFlags[flag]), ...instruction.notes];
  return [...told, ...indented(each), ...warned.flatMap((text) => wrapped(`! ${text}`))];
}

function stepLines(plan: Plan, fabric: FabricPlan, hasDiagrams: boolean, words: Words): string[] {
  const instructions = instructionsFor(plan, fabric, words);
  const numberWidth = String(instructions.length).length;
  const margin = " ".repeat(numberWidth + 2);
  const lines: string[] = [];
  const alike = alikeLays(fabric.lays);
  let lay = fabric.lays.length === 1 && nth(fabric.lays, 0).source === "bolt" ? 0 : -1;
  for (const [index, instruction] of instructions.entries()) {
    const on = fabric.lays[instruction.lay];
    if (instruction.lay === FROM_BAGS && lay !== FROM_BAGS) {
      lay = FROM_BAGS;
      lines.push(`${words.cutting.cutFurther}:`);
    }
    if (on !== undefined && instruction.lay !== lay) {
      lay = instruction.lay;
      lines.push(layTitle(fabric, on, alike[lay] ?? 1, plan, words));
    }
    const [first = "", ...rest] = instructionLines(instruction, hasDiagrams, words);
    lines.push(`${String(index + 1).padStart(numberWidth)}. ${first}`);
    lines.push(...rest.map((line) => `${margin}${line}`));
  }
  return lines;
}

/** Offcuts worth keeping: `2 of 3 x 8 1/2 in (strip ends)`. */
export function leftoverSizes(fabric: FabricPlan, plan: Plan, words: Words): string[] {
  const room = (length: number) => roomToMark(length, plan.ruler);
  // Cloths cut alike leave alike; they are told together.
  const counts = new Map<string, { size: string; cause: string; count: number }>();
  for (const { across, along, count, cause } of fabric.leftovers) {
    const size = formatSize(room(across), room(along), plan.ruler);
    const key = `${size} ${cause}`;
    counts.set(key, {
      size,
      cause: words.cutting.causes[cause],
      count: (counts.get(key)?.count ?? 0) + count,
    });
  }
  // What is in hand and not cut into is put by as well.
  const whole = fabric.done === undefined ? [] : (fabric.stock ?? []).filter(({ from }) => from !== "shop");
  for (const { across, along, available: there, used } of [...whole, ...(fabric.done?.kept ?? [])]) {
    const available = there - used;
    if (available === 0 || Math.min(across, along) < plan.keepFrom) continue;
    const size = formatSize(room(across), room(along), plan.ruler);
    const key = JSON.stringify([size]);
    counts.set(key, { size, cause: words.cutting.putBy, count: (counts.get(key)?.count ?? 0) + available });
  }
  return [...counts.values()].map(
    ({ size, cause, count }) => `${words.cutting.leftover(count, size)} (${cause})`,
  );
}

function leftoverLines(fabric: FabricPlan, plan: Plan, words: Words): string[] {
  const sizes = leftoverSizes(fabric, plan, words);
  if (sizes.length === 0) return [words.cutting.leftoversNone];
  return [`${words.cutting.leftoversTitle}:`, ...indented(sizes)];
}

/** What was proved about a fabric and how much room the plan leaves. */
function proofLines(fabric: FabricPlan, plan: Plan, words: Words): string[] {
  const { bound, sturdiness } = fabric;
  const gap = formatLength(bound.used - roomToMark(bound.least, plan.ruler), plan.ruler);
  const style = words.cutting.styles[bound.style];
  const lines = [...mixProof(fabric, words)];
  // With nothing off the bolt there is no length to prove anything of.
  if (fabric.purchase !== null)
    lines.push(
      leastLength(fabric)
        ? words.cutting.provenLength(style)
        : bound.purchaseProven
          ? words.cutting.provenPurchase(style)
          : words.cutting.notProven(style, gap),
    );
  const saved = bound.ruleOfThumb - bound.used;
  if (saved > 0) lines.push(words.cutting.saving(formatLength(saved, plan.ruler)));
  if (sturdiness.narrowestUsable !== null && sturdiness.narrowestUsable < fabric.usable) {
    lines.push(words.cutting.narrowest(formatLength(sturdiness.narrowestUsable, plan.ruler)));
  }
  if (sturdiness.spareLength > 0)
    lines.push(
      words.cutting.spareLength(formatLength(roomToMark(sturdiness.spareLength, plan.ruler), plan.ruler)),
    );
  const told = [stackedWords(fabric, plan, words), mistakeWords(fabric, plan, words)];
  return [...lines, ...told.filter((text) => text !== "")];
}

/** What was proved of a purchase that has cloth ready cut in it. */
function mixProof({ mix, bound }: FabricPlan, words: Words): string[] {
  if (mix === undefined) return [];
  if (!mix.proven) return [words.cutting.openMix];
  const style = words.cutting.styles[bound.style];
  return [mix.cost === null ? words.cutting.provenPieces(style) : words.cutting.provenMix(style)];
}

/** One fabric's heading: its name, what to buy, usable width and how its print lies. */
function headingLines(fabric: FabricPlan, number: number, plan: Plan, words: Words): string[] {
  const facts = [
    fabric.purchase === null && fabric.mix === undefined
      ? fabric.done === undefined
        ? words.cutting.noPurchase
        : words.cutting.fromRest
      : words.cutting.buyAmount(boughtWords(fabric, plan.ruler, words)),
    ...(fabric.done === undefined || fabric.done.bought.length === 0
      ? []
      : [words.cutting.boughtBefore(fabric.done.bought)]),
    words.cutting.usableWidth(formatLength(roomToMark(fabric.usable, plan.ruler), plan.ruler)),
    ...(fabric.print.kind === "none"
      ? []
      : [words.cutting.print[`${fabric.print.kind}-${fabric.print.axis}`]]),
    ...fabricNotes(fabric, words),
  ];
  return [
    words.cutting.fabricHeading(number, plan.fabrics.length, fabric.name),
    ...indented([facts.join("; ")]),
  ];
}

/** A line of a list, what follows its first set in. */
function hanging(line: string): string[] {
  const [first = "", ...rest] = wrapped(line);
  return indented([first, ...indented(rest)]);
}

/** How every kind of stock is cut, each told once. */
export function handLines(plan: Plan, words: Words): string[] {
  const lays = plan.fabrics.flatMap((fabric) => fabric.lays);
  const steps = plan.fabrics.flatMap((fabric) => fabric.steps);
  const pieces = plan.fabrics.flatMap((fabric) => fabric.pieces);
  const { hand } = words.cutting;
  const isRoll = ({ source, name }: Lay) => source === "bolt" || name === LENGTH_IN_HAND;
  const bolt = lays.some(isRoll);
  const begun = plan.fabrics.flatMap((fabric) =>
    fabric.lays.flatMap((lay) => (isRoll(lay) ? [] : [stockOfLay(fabric, lay)?.begun === true])),
  );
  return [
    ...(bolt ? [plan.folded ? hand.folded : hand.unfolded, hand.square, hand.selvages] : []),
    ...(begun.includes(false) ? [hand.fixed] : []),
    ...(begun.includes(true) ? [hand.rests] : []),
    ...(steps.some(({ kind }) => kind === "bands") ? [hand.lengthwise] : []),
    ...(pieces.some(({ subcut }) => subcut === "once-diagonal" || subcut === "twice-diagonal")
      ? [hand.diagonal]
      : []),
    ...(pieces.some(({ nest }) => nest !== undefined) ? [hand.aslant] : []),
  ];
}

/**
 * Cautions, then for each fabric its pieces, cutting steps, leftovers and proof, as a handout in text.
 * `hasDiagrams` (default true): strip numbers are told, to be found in the cutting diagrams.
 */
export function cuttingSteps(plan: Plan, hasDiagrams: boolean, words: Words): string {
  const usesFullWidth = plan.fabrics.some(({ lays }) => lays.some(({ source }) => source === "bolt"));
  const blocks = plan.fabrics.map((fabric, index) => [
    ...headingLines(fabric, index + 1, plan, words),
    "",
    ...indented(pieceLines(fabric, plan, words)),
    "",
    ...indented(stepLines(plan, fabric, hasDiagrams, words)),
    "",
    ...indented([...leftoverLines(fabric, plan, words), ...proofLines(fabric, plan, words)]),
    "",
  ]);
  // How a border is joined and cut is told with its bag and in its own step.
  const noted = plan.diagnostics.filter(
    ({ severity, told, path }) =>
      severity !== "error" && !(told === "pieceJoined" && path.startsWith("borders")),
  );
  const notes = wordAll(noted, words).map(({ message }) => message);
  return [
    words.cutting.stepsTitle(plan.name),
    "",
    `${words.cutting.cautionsTitle}:`,
    ...indented(words.cutting.cautions),
    "",
    `${words.cutting.handTitle}:`,
    ...handLines(plan, words).flatMap((line) => hanging(line)),
    "",
    words.cutting.estimates,
    ...(usesFullWidth ? [words.cutting.fullWidthMeaning] : []),
    "",
    ...(notes.length === 0 ? [] : [`${words.cutting.notesTitle}:`, ...indented([...new Set(notes)]), ""]),
    ...blocks.flat(),
  ].join("\n");
}
