import type {
  ExpectedKind,
  FieldHelp,
  FieldsFacts,
  FoundKind,
  MadeOf,
  NameFault,
  PieceFault,
} from "../../../diagnostics/fields.ts";
import type { FileKey } from "../../../diagnostics/file-keys.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { exampleOfKey, meaningOfKey } from "../../file-keys.ts";
import { fileKeys } from "../file-keys/index.ts";
import { capital } from "../language.ts";
import { lengthHint, lengthWhy, sizeExamples } from "../length-faults.ts";

function list(options: readonly string[]): string {
  return options.map((option) => `\`${option}\``).join(", ");
}

const keyExample = (about: FileKey | null, inches: boolean): string =>
  about === null ? "" : String(exampleOfKey(fileKeys[about], inches) ?? "");

/** An example to copy: of a key with the key, of a list in two lines. */
function exampleOf(field: string, { about, inches = true, keyed = false, example }: FieldHelp): string {
  const shown = example ?? keyExample(about, inches);
  if (shown === "") return "";
  if (!keyed) return `For example \`${shown}\`.`;
  if (shown.startsWith("- ")) return `For example \`${field}:\` and on the next line \`${shown}\`.`;
  return `For example \`${field}: ${shown}\`.`;
}

const FOUND: Readonly<Record<FoundKind, string>> = {
  "empty-list": "an empty list",
  list: "a list",
  group: "a group of keys",
  true: "`true`",
  false: "`false`",
  text: "text",
};

const EXPECTED: Readonly<Record<Exclude<ExpectedKind["is"], "one-of">, string>> = {
  other: "something else",
  list: "a list with something in it, each entry after a `-`",
  group: "a group of keys",
  boolean: "`true` or `false`",
  "whole-number": "a whole number",
  "line-or-group": "a text on one line, or a group of keys",
  "number-or-text": "a number or text",
};

const expectedOf = (expected: ExpectedKind): string =>
  expected.is === "one-of" ? `one of ${list(expected.options)}` : EXPECTED[expected.is];

const madeOf = (of: MadeOf): string => (of.what === "sashing" ? "the sashing" : `border ${of.index}`);

function nameFault(fault: NameFault): string {
  if (fault.is === "empty") return "is empty";
  return fault.is === "unprintable"
    ? "has characters that cannot be printed"
    : `is longer than ${fault.most} characters`;
}

const PIECE_EXAMPLE =
  "A piece looks like `sky 2 1/2 x 4 1/2, 24` or `border 4 1/2 x WOF, 6, note outer border`.";

function pieceFault(fault: PieceFault): { why: string; hint: string } {
  if (fault.is === "no-size") return { why: "it has no size", hint: sizeExamples(fault.unit) };
  if (fault.is === "too-long") return { why: "it is too long for one line", hint: PIECE_EXAMPLE };
  if (fault.is === "empty") return { why: "it is empty", hint: PIECE_EXAMPLE };
  const near = nearest(fault.word, fault.known);
  return {
    why: "this word is not known here",
    hint: near === null ? `Known words: ${fault.known.join(", ")}, note ...` : `Did you mean \`${near}\`?`,
  };
}

export const fields: WordsOf<FieldsFacts> = {
  choiceUnknown: ({ field, found, options }) => {
    const near = nearest(found, options);
    const hint = near === null ? "" : `Did you mean \`${near}\`?`;
    return { message: `\`${field}\` is ${quote(found)}; it can be ${list(options)}.`, hint };
  },

  clothTooMuch: ({ fabric }) => {
    const message = `${quote(fabric)}: its pieces come to more fabric than can be worked out at once.`;
    return { message, hint: "Check the sizes, the counts and their measures." };
  },

  colourUnreadable: ({ found }) => ({
    message: `${quote(found)} is not a colour.`,
    hint: 'Write six figures in quotes, for example `"#1d3557"`, or a plain name such as `navy`.',
  }),

  countNotWhole: ({ found, most }) => ({
    message: `The count is ${quote(found)}; it must be a whole number from 1 to ${most}.`,
    hint: "For example `24`.",
  }),

  fieldEmpty: ({ field, help }) => {
    const colour = field === "colour" ? " A colour that starts with # needs quotes." : "";
    const hint = `${exampleOf(field, help)}${colour}`.trim();
    return { message: `\`${field}\` has no value.`, hint };
  },

  fieldMissing: ({ field, help }) => {
    const what = help.about === null ? "" : `: ${meaningOfKey(fileKeys[help.about], help.of)}`;
    return { message: `\`${field}\` is missing${what}.`, hint: exampleOf(field, help) };
  },

  fieldType: ({ field, found, expected, help }) => {
    const message = `\`${field}\` is ${FOUND[found]}; it should be ${expectedOf(expected)}.`;
    return { message, hint: exampleOf(field, help) };
  },

  madeOfBoth: (of) => ({
    message: `${capital(madeOf(of))} has both a fabric and a block.`,
    hint: "Keep one of `fabric` and `block`.",
  }),

  madeOfNothing: (of) => ({
    message: `\`fabric\` is missing: what ${madeOf(of)} is made of.`,
    hint: "For example `fabric: cream`.",
  }),

  keyUnknown: ({ key, known, line = "", takenBy = "" }) => {
    if (takenBy !== "")
      return {
        message: `There is no key ${quote(key)} here.`,
        hint: `It is a value: write \`${takenBy}: ${key}\`.`,
      };
    const near = nearest(key, known);
    const asLine = `To write a piece on one line leave out the colon: \`- ${line}\`.`.slice(0, 160);
    const hint =
      line !== "" ? asLine : near === null ? `Known here: ${list(known)}.` : `Did you mean \`${near}\`?`;
    return { message: `There is no key ${quote(key)} here.`, hint };
  },

  labelRepeated: ({ label, line }) => {
    const before = line === null ? "" : ` (line ${line})`;
    return {
      message: `Two pieces of this fabric are labelled ${quote(label)}${before}.`,
      hint: "Give each size its own label, or none: sizes without one are lettered for you.",
    };
  },

  lengthNegative: ({ field, found }) => ({
    message: `\`${field}\` is ${quote(found)}; it cannot be less than zero.`,
    hint: "",
  }),

  lengthOffMarks: ({ piece, size, mark }) => ({
    message: `${piece}: ${size} lies between the marks of the ruler (every ${mark}). It is kept as written.`,
    hint: "Check the size, or name a ruler with finer marks, for example `ruler: 1/16 in` or `ruler: 1 mm`.",
  }),

  lengthRoundedUp: ({ piece, written, size }) => ({
    message: `${piece}: ${quote(written)} is on no ruler exactly; it is rounded up to ${size}.`,
    hint: "",
  }),

  lengthTooLong: ({ field, found, metres }) => {
    const message = `\`${field}\` is ${quote(found)}; more than ${metres} m is not planned for.`;
    return { message, hint: "Check its measure: in, yd, mm, cm or m." };
  },

  lengthUnreadable: ({ written, fault, unit }) => ({
    message: `${quote(written)} is not a length: ${lengthWhy(fault)}.`,
    hint: unit === null ? "" : lengthHint(fault, unit),
  }),

  linesTooMany: ({ what, found, most }) => ({
    message: `There are ${found} ${what === "fabrics" ? "fabrics" : "sizes of one fabric"}; at most ${most} can be worked out at once.`,
    hint: "Pieces of one size go on one line with a count.",
  }),

  measuresMixed: ({ written, problem: { fault, unit } }) => ({
    message: `${quote(written)}: ${lengthWhy(fault)}.`,
    hint: lengthHint(fault, unit),
  }),

  minutesUnreadable: ({ field, found, most }) => ({
    message: `\`${field}\` is ${quote(found)}, not minutes from 0 to ${most}.`,
    hint: "Write a number without a unit, for example `seam: 0.5`.",
  }),

  nameRepeated: ({ name, line }) => {
    const before = line === null ? "" : ` (line ${line})`;
    return {
      message: `Two fabrics are called ${quote(name)}${before}.`,
      hint: "Give each its own name, or put all pieces under one of them.",
    };
  },

  nameUnusable: ({ field, fault }) => ({
    message: `\`${field}\` ${nameFault(fault)}.`,
    hint: "For example `Night sea`.",
  }),

  partRepeated: ({ part }) => ({
    message: `The part ${quote(part)} is named twice; a pattern has each part once.`,
    hint: "Name every part once, in the order you want, for example `parts: [requirements, cutting, units]`.",
  }),
  percentUnreadable: ({ found, most }) => ({
    message: `${quote(found)} is not a shrinkage from 0 to ${most} percent in steps of a tenth.`,
    hint: "For example `3%` or `2.5%`.",
  }),

  pieceLineUnreadable: ({ written, fault }) => {
    const { why, hint } = pieceFault(fault);
    return { message: `${quote(written)} is not a piece: ${why}.`, hint };
  },

  piecesTooMany: ({ found, most }) => ({
    message: `There are ${found} pieces in all; at most ${most} can be planned at once.`,
    hint: "Check the counts, or plan the quilt in parts.",
  }),

  priceUnreadable: ({ found }) => ({
    message: `${quote(found)} is not a price.`,
    hint: "For example `$12.50 per yd`, `18,90 EUR per m`, or `12.50` for the measure it is sold in.",
  }),

  selvagesTooWide: ({ selvages, width }) => ({
    message: `The two selvages take ${selvages} of a fabric ${width} wide: nothing is left to cut.`,
    hint: "`selvage` is the width of one selvage, usually about `1/2 in` or `1.5 cm`.",
  }),

  sizeNotPositive: ({ field, found }) => {
    const message = `\`${field}\` is ${quote(found)}; every length in it must be more than zero.`;
    return { message, hint: "Write the size as cut, seam allowance included." };
  },

  sizeUnreadable: ({ written, fault, like }) => {
    const hint =
      "unit" in like
        ? lengthHint(fault, like.unit)
        : like.like === "finished-unit"
          ? "For example `4` or `4 x 2`, finished."
          : `For example \`${keyExample(like.like, true)}\`.`;
    return { message: `${quote(written)} is not a size: ${lengthWhy(fault)}.`, hint };
  },

  soldUnreadable: ({ found, fault }) => ({
    message: `${quote(found)} does not say how the fabric is sold: ${
      fault.is === "not-understood"
        ? "it is not understood"
        : fault.is === "step-zero"
          ? "the step must be more than zero"
          : lengthWhy(fault)
    }.`,
    hint: "For example `by 1/8 yd`, `by 10 cm in m` or `by 1/4 yd, least 1/2 yd`.",
  }),

  fullWidthLengthwise: ({ name, other }) => ({
    message: `${name} runs across the whole width of fabric (\`WOF\`), so it cannot be cut lengthwise as well.`,
    hint: `Leave out \`lengthwise\`, or say how long it is: \`${other} x 60 in, 3, cut lengthwise\`.`,
  }),
};
