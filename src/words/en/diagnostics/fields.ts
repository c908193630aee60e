import type { FieldHelp, FieldsFacts } from "../../../diagnostics/fields.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

function list(options: readonly string[]): string {
  return options.map((option) => `\`${option}\``).join(", ");
}

function exampleOf(help: FieldHelp): string {
  const [first = "", ...below] = help.example.split("\n").map((line) => line.trim());
  if (first === "") return "";
  return `For example \`${first}\`${below.map((line) => ` and on the next line \`${line}\``).join("")}.`;
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
    const hint = `${exampleOf(help)}${colour}`.trim();
    return { message: `\`${field}\` has no value.`, hint };
  },

  fieldMissing: ({ field, help }) => {
    const what = help.description === "" ? "" : `: ${help.description}`;
    return { message: `\`${field}\` is missing${what}.`, hint: exampleOf(help) };
  },

  fieldType: ({ field, found, expected, help }) => {
    const message = `\`${field}\` is ${found}; it should be ${expected}.`;
    return { message, hint: exampleOf(help) };
  },

  keyUnknown: ({ key, known, hint = "", takenBy = "" }) => {
    if (takenBy !== "")
      return {
        message: `There is no key ${quote(key)} here.`,
        hint: `It is a value: write \`${takenBy}: ${key}\`.`,
      };
    const near = nearest(key, known);
    const help =
      hint !== "" ? hint : near === null ? `Known here: ${list(known)}.` : `Did you mean \`${near}\`?`;
    return { message: `There is no key ${quote(key)} here.`, hint: help };
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

  lengthTooLong: ({ field, found, most }) => {
    const message = `\`${field}\` is ${quote(found)}; more than ${most} is not planned for.`;
    return { message, hint: "Check its measure: in, yd, mm, cm or m." };
  },

  lengthUnreadable: ({ written, why, hint }) => ({
    message: `${quote(written)} is not a length: ${why}.`,
    hint,
  }),

  linesTooMany: ({ what, found, most }) => ({
    message: `There are ${found} ${what}; at most ${most} can be worked out at once.`,
    hint: "Pieces of one size go on one line with a count.",
  }),

  measuresMixed: ({ written, why, hint }) => ({ message: `${quote(written)}: ${why}.`, hint }),

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

  nameUnusable: ({ field, why }) => ({ message: `\`${field}\` ${why}.`, hint: "For example `Night sea`." }),

  partRepeated: ({ part }) => ({
    message: `The part ${quote(part)} is named twice; a pattern has each part once.`,
    hint: "Name every part once, in the order you want, for example `parts: [requirements, cutting, units]`.",
  }),
  percentUnreadable: ({ found, most }) => ({
    message: `${quote(found)} is not a shrinkage from 0 to ${most} percent in steps of a tenth.`,
    hint: "For example `3%` or `2.5%`.",
  }),

  pieceLineUnreadable: ({ written, why, hint }) => ({
    message: `${quote(written)} is not a piece: ${why}.`,
    hint,
  }),

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

  sizeUnreadable: ({ written, why, hint }) => ({ message: `${quote(written)} is not a size: ${why}.`, hint }),

  soldUnreadable: ({ found, why }) => ({
    message: `${quote(found)} does not say how the fabric is sold: ${why}.`,
    hint: "For example `by 1/8 yd`, `by 10 cm in m` or `by 1/4 yd, least 1/2 yd`.",
  }),

  fullWidthLengthwise: ({ name, other }) => ({
    message: `${name} runs across the whole width of fabric (\`WOF\`), so it cannot be cut lengthwise as well.`,
    hint: `Leave out \`lengthwise\`, or say how long it is: \`${other} x 60 in, 3, cut lengthwise\`.`,
  }),
};
