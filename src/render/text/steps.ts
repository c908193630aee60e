import { formatLength, formatSize } from "../../length/index.ts";
import type { CuttingStep, FabricPlan, Plan } from "../../plan/types.ts";
import { stepPhrases } from "./sentence.ts";
import { alignedLines } from "./table.ts";
import { words } from "./words.ts";

/** Columns of a line, the margin left of it not counted. */
const WIDEST = 96;

function inOneSentence(phrases: readonly string[]): string {
  return `${phrases.join("; ")}.`;
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === "" ? "" : `  ${line}`));
}

/** The pieces with their letters, in the order of the letters. */
function pieceLines(fabric: FabricPlan, plan: Plan): string[] {
  const rows = fabric.pieces.map((piece) => {
    const across = formatLength(piece.across, plan.ruler);
    const size = piece.fullWidth
      ? words.fullWidthSize(formatLength(piece.along, plan.ruler))
      : formatSize(piece.across, piece.along, plan.ruler);
    const square = piece.across === piece.along && !piece.fullWidth;
    const after = {
      none: "",
      "once-diagonal": words.halved,
      "twice-diagonal": words.quartered,
      template: words.byTemplate,
    }[piece.subcut];
    const uses = piece.label !== "" ? [piece.label] : piece.uses.map(({ text }) => text);
    const remarks = [...uses, after, piece.note].filter((text) => text !== "");
    const turn = square || piece.fullWidth ? "" : piece.turnable ? words.turnFree : words.turnFixed;
    return [
      `[${piece.letter}]`,
      String(piece.count),
      square ? `${across} ${words.square}` : size,
      turn,
      remarks.join("; "),
    ];
  });
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

/** Which strips of the drawing a step cuts: `; strips 7 to 12 of the diagram`. Empty for a step without. */
function stripNumbers({ strips }: CuttingStep): string {
  const runs: [first: number, last: number][] = [];
  for (const number of strips) {
    const run = runs.at(-1);
    if (run !== undefined && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  const ranges = runs.map(([first, last]) => (first === last ? String(first) : words.range(first, last)));
  return ranges.length === 0 ? "" : words.inDiagram(ranges, strips.length);
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

function stepLines(plan: Plan, fabric: FabricPlan, hasDiagrams: boolean): string[] {
  const numberWidth = String(fabric.steps.length).length;
  const margin = " ".repeat(numberWidth + 2);
  const lines: string[] = [];
  let lay = fabric.lays.length > 1 ? -1 : 0;
  for (const step of fabric.steps) {
    if (step.lay !== lay) {
      lay = step.lay;
      const on = fabric.lays[lay];
      lines.push(on?.source === "fixed" ? words.onPiece(on.name) : words.onBolt);
    }
    const phrases = stepPhrases(plan, fabric, step);
    const last = `${phrases.pop() ?? ""}${hasDiagrams ? stripNumbers(step) : ""}`;
    const [first = "", ...rest] = phraseLines([...phrases, last]);
    lines.push(`${String(step.number).padStart(numberWidth)}. ${first}`);
    lines.push(...rest.map((line) => `${margin}${line}`));
    const flags = step.flags.flatMap((flag) => wrapped(`! ${words.stepFlags[flag]}`));
    lines.push(...flags.map((line) => `${margin}${line}`));
  }
  return lines;
}

function leftoverLines(fabric: FabricPlan, plan: Plan): string[] {
  if (fabric.leftovers.length === 0) return [words.leftoversNone];
  const sizes = fabric.leftovers.map(({ across, along, count, cause }) => {
    const size = words.leftover(count, formatSize(across, along, plan.ruler));
    return `  ${size} (${words.causes[cause]})`;
  });
  return [`${words.leftoversTitle}:`, ...sizes];
}

/** What was proved about a fabric and how much room the plan leaves. */
function proofLines(fabric: FabricPlan, plan: Plan): string[] {
  const { bound, sturdiness } = fabric;
  const gap = formatLength(bound.used - bound.least, plan.ruler);
  const style = words.styles[bound.style];
  const lines = [
    bound.lengthProven
      ? words.provenLength(style)
      : bound.purchaseProven
        ? words.provenPurchase(style)
        : words.notProven(style, gap),
  ];
  const saved = bound.ruleOfThumb - bound.used;
  if (saved > 0) lines.push(words.saving(formatLength(saved, plan.ruler)));
  if (sturdiness.narrowestUsable !== null && sturdiness.narrowestUsable < fabric.usable) {
    lines.push(words.narrowest(formatLength(sturdiness.narrowestUsable, plan.ruler)));
  }
  if (sturdiness.spareLength > 0)
    lines.push(words.spareLength(formatLength(sturdiness.spareLength, plan.ruler)));
  return lines;
}

/** One fabric's heading: its name, what to buy, usable width and how its print lies. */
function headingLines(fabric: FabricPlan, number: number, plan: Plan): string[] {
  const facts = [
    fabric.purchase === null ? words.noPurchase : words.buyAmount(fabric.purchase.text),
    words.usableWidth(formatLength(fabric.usable, plan.ruler)),
    ...(fabric.print.kind === "none" ? [] : [words.print[`${fabric.print.kind}-${fabric.print.axis}`]]),
    ...(fabric.note === "" ? [] : [fabric.note]),
  ];
  return [words.fabricHeading(number, plan.fabrics.length, fabric.name), ...indented([facts.join("; ")])];
}

/** A fabric's cutting steps alone, as numbered sentences for a drawing or a book. */
export function stepSentences(plan: Plan, fabricIndex: number): { step: CuttingStep; text: string }[] {
  const fabric = plan.fabrics[fabricIndex];
  if (fabric === undefined) return [];
  return fabric.steps.map((step) => ({ step, text: inOneSentence(stepPhrases(plan, fabric, step)) }));
}

/**
 * Cautions, then for each fabric its pieces, cutting steps, leftovers and proof, as a handout in text.
 * `hasDiagrams` (default true): strip numbers are told, to be found in the cutting diagrams.
 */
export function cuttingSteps(plan: Plan, hasDiagrams = true): string {
  const usesFullWidth = plan.fabrics.some(({ lays }) => lays.some(({ source }) => source === "bolt"));
  const blocks = plan.fabrics.map((fabric, index) => [
    ...headingLines(fabric, index + 1, plan),
    "",
    ...indented(pieceLines(fabric, plan)),
    "",
    ...indented(stepLines(plan, fabric, hasDiagrams)),
    "",
    ...indented([...leftoverLines(fabric, plan), ...proofLines(fabric, plan)]),
    "",
  ]);
  const notes = plan.diagnostics.filter(({ severity }) => severity !== "error").map(({ message }) => message);
  return [
    words.stepsTitle(plan.name),
    "",
    `${words.cautionsTitle}:`,
    ...indented(words.cautions),
    "",
    words.estimates,
    ...(usesFullWidth ? [words.fullWidthMeaning] : []),
    "",
    ...(notes.length === 0 ? [] : [`${words.notesTitle}:`, ...indented(notes), ""]),
    ...blocks.flat(),
  ].join("\n");
}
