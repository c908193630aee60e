import { formatExact, formatExactSize, formatLength, formatSize, roomToMark } from "../../../length/index.ts";
import { leastLength } from "../../../plan/proved/index.ts";
import type { FabricPlan, Lay, Plan } from "../../../plan/types.ts";
import { LENGTH_IN_HAND } from "../../../stock/index.ts";
import type { Words } from "../../../words/index.ts";
import { wordAll } from "../../../words/index.ts";
import {
  alikeLays,
  boughtWords,
  layTitle,
  mistakeWords,
  stackedWords,
  stockOfLay,
} from "../buying/bought.ts";
import { diagonalOf, headsOfCut } from "../sewing/diagonals.ts";
import { alignedLines } from "../table.ts";
import { borderLetters } from "./borders-cut.ts";
import { FROM_BAGS, type Instruction, instructionsFor, ranges } from "./instructions.ts";

/** Columns of a line, the margin left of it not counted. */
const WIDEST = 96;

export interface PieceFacts {
  letter: string;
  count: number;
  size: string;
  /** Empty for a square or a strip of full width. */
  turn: string;
  /** What it is for: the maker's label, or what the quilt uses it for. */
  uses: string[];
  /** The same, then how it is cut further, then the maker's note. */
  remarks: string[];
}

function inOneSentence(phrases: readonly string[]): string {
  return `${phrases.join("; ")}.`;
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === "" ? "" : `  ${line}`));
}

/** What a piece is told with: letter, count, size, whether it may turn, and what it is for. */
export function pieceFacts(fabric: FabricPlan, plan: Plan, words: Words): PieceFacts[] {
  const borders = borderLetters(plan);
  const index = plan.fabrics.findIndex(({ name }) => name === fabric.name);
  const shaped = (plan.templates ?? []).flatMap(({ name, uses }) => uses.map((use) => ({ name, ...use })));
  return fabric.pieces.map((piece, number) => {
    const use = shaped.find((each) => each.fabric === index && each.piece === number);
    const across = formatExact(piece.across, plan.ruler);
    const size = piece.fullWidth
      ? words.cutting.fullWidthSize(formatExact(piece.along, plan.ruler))
      : formatExactSize(piece.across, piece.along, plan.ruler);
    const square = piece.across === piece.along && !piece.fullWidth;
    const after = {
      none: "",
      "once-diagonal": words.cutting.halved(
        diagonalOf(piece, fabric, words),
        headsOfCut(piece, fabric, words),
      ),
      "twice-diagonal": words.cutting.quartered(headsOfCut(piece, fabric, words)),
      template: words.cutting.byTemplate(use?.name ?? "", use?.asDrawn ?? 0, use?.reversed ?? 0),
    }[piece.subcut];
    const ruled = piece.nest?.spec == null ? null : piece.nest;
    const standing =
      piece.nest === undefined
        ? []
        : [
            ...words.shapes.shapeFacts(piece.nest, plan.ruler),
            words.shapes.shapeStanding(piece.nest),
            ...(ruled === null || use === undefined ? [] : [words.shapes.shownInTemplate(use)]),
          ];
    const aslant =
      use !== undefined && piece.subcut === "none" && ruled === null
        ? words.cutting.aslant(use.name, use.asDrawn + use.reversed)
        : "";
    // A piece without a label is for its own size, which is told already.
    const told =
      ruled === null
        ? piece.uses.flatMap(({ purpose }) =>
            purpose.for === "size" ? [] : [words.purposes.purpose(purpose, plan.ruler)],
          )
        : piece.label === ""
          ? []
          : [piece.label];
    const uses = piece.label !== "" ? [piece.label] : told;
    // A border's length is what is measured: a printed one would compete with it.
    const note = !borders.has(piece.letter)
      ? words.purposes.notes(piece, plan.ruler)
      : piece.joined === undefined || piece.joined.perKit === true
        ? words.cutting.borderLater
        : words.cutting.joinLater(piece.count);
    const cut = fabric.done?.cut[number] ?? 0;
    const done = cut === 0 ? "" : words.cutting.cutOf(cut, piece.count);
    const sorts = (piece.inKits ?? []).flatMap(({ each }, i) =>
      each === 0 ? [] : [{ number: i + 1, each }],
    );
    const dealt = sorts.length === 0 ? "" : words.choices.kits.each(sorts);
    const remarks = [done, ...uses, after, aslant, ...standing, note, dealt].filter((text) => text !== "");
    const turn =
      square || piece.fullWidth ? "" : piece.turnable ? words.cutting.turnFree : words.cutting.turnFixed;
    return {
      letter: piece.letter,
      count: piece.count,
      size:
        ruled !== null
          ? words.shapes.shapeSize(piece.along, plan.ruler)
          : square
            ? `${across} ${words.cutting.square}`
            : size,
      turn: ruled === null ? turn : "",
      uses,
      remarks,
    };
  });
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
  let lay = fabric.lays.length === 1 && fabric.lays[0]!.source === "bolt" ? 0 : -1;
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
