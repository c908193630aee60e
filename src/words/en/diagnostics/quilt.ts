import { nearest } from "../../../diagnostics/nearest.ts";
import type { NotMotifs, QuiltFacts } from "../../../diagnostics/quilt.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { aOrAn, capital } from "../language.ts";

/** "Did you mean" when a known word is near, else the list of known words. */
function suggest(word: string, known: readonly string[]): string {
  const near = nearest(word, [...known]);
  if (near !== null) return `Did you mean \`${near}\`?`;
  const shown = known.slice(0, 12).map((each) => `\`${each}\``);
  return shown.length === 0 ? "" : `Known here: ${shown.join(", ")}${known.length > 12 ? " ..." : ""}.`;
}

export const quilt: WordsOf<QuiltFacts> = {
  directionByOtherMethod: ({ unit, fabric, from, to }) => ({
    message: `${unit.text}: made ${from}, the print of ${fabric} would not all point the way it should. ${
      to === null ? "No other method can do it either." : `Made ${to} instead.`
    }`,
    hint: "To keep the first method, let the print turn with the unit: `prints: with unit`.",
  }),

  biasOutside: ({ what, hint }) => ({
    message: `${what} leaves bias edges on the outside, where they stretch.`,
    hint,
  }),

  blockSizeMissing: ({ block }) => ({
    message: `Block ${block} has no finished size.`,
    hint: "Write its size, for example `size: 8`, or the sizes of its columns and lines.",
  }),

  blockSizesDiffer: ({ found, expected }) => ({
    message: `${found}, but ${expected}.`,
    hint: "Blocks of one row need one height; with sashing, blocks of one column need one width too.",
  }),

  blockUnknown: ({ word, known }) => ({
    message: `There is no block \`${word}\`.`,
    hint: suggest(word, known),
  }),

  blockUnused: ({ block }) => ({ message: `Block ${block} is not used in the quilt.`, hint: "" }),

  borderDoesNotFit: ({ message, hint }) => ({ message, hint }),

  cellEmpty: ({ cell, mark }) => ({
    message: `${cell} is marked \`${mark}\`, but no unit reaches it.`,
    hint: "`-` continues the unit to the left, `|` the unit above; every other cell needs a code.",
  }),

  codeUnknown: ({ code, known }) => ({
    message: `The drawing uses \`${code}\`, which \`cells\` does not explain.`,
    hint: suggest(code, known),
  }),

  codeUnused: ({ code, block }) => ({
    message: `Code \`${code}\` is explained but not drawn in block ${block}.`,
    hint: "",
  }),

  colourwayCircular: ({ chain }) => ({
    message: `These colours lead back to themselves: ${chain.join(" -> ")}.`,
    hint: "Let one of them name a fabric.",
  }),

  colourwayUnknown: ({ word, known }) => ({
    message: `There is no colourway \`${word}\`.`,
    hint: suggest(word, known),
  }),

  directionSpares: ({ unit, method, spare }) => ({
    message: `${unit}: made ${method}, ${spare} ${spare === 1 ? "unit is" : "units are"} left over with the print pointing the wrong way.`,
    hint: "Another method may waste less.",
  }),

  fabricMissing: ({ word, block, known }) => ({
    message: `${block}: \`${word}\` is neither a fabric nor a role with a fabric.`,
    hint: suggest(word, known),
  }),

  fabricUnused: ({ fabric }) => ({ message: `Fabric ${fabric} is not used in the quilt.`, hint: "" }),

  gridOffMarks: ({ message, below, above }) => ({
    message,
    hint: `Nearest sizes that divide: ${below} or ${above}. Otherwise cut sizes are rounded up and units trimmed.`,
  }),

  methodUnknown: ({ unit, word, known }) => ({
    message: `There is no method \`${word}\` for ${unit}.`,
    hint: suggest(word, known),
  }),

  motifsNotAlike: ({ block, found }) => {
    const said: Readonly<Record<NotMotifs["why"], string>> = {
      "no code": found.why === "no code" ? `\`${found.code}\` is no code of its grid` : "",
      "one only": "there is only one of them, and it turns with the block",
      "same all round": "they look the same whichever way they are turned",
      "units across": "a unit lies across the line between two of them",
      "not alike": "they are not all alike, however they are turned",
    };
    const hint =
      found.why === "no code"
        ? suggest(found.code, found.known)
        : "Write how many there are across and down, `motifs: 2 x 2`, or codes of the grid, `motifs: g`; or leave it out.";
    return { message: `The motifs of block ${block}: ${said[found.why]}.`, hint };
  },

  onPointUneven: ({ message, hint }) => ({ message, hint }),

  partialSeam: ({ block, divides }) => ({
    message: `Block ${block} cannot be joined in straight seams alone: one seam is sewn part way and finished later.`,
    hint: divides.length === 0 ? "" : `For straight seams throughout divide ${divides.join(", and ")}.`,
  }),

  printTilted: ({ fabric }) => ({
    message: `${fabric}: in blocks set on point its print leans with the block; upright it would have to be cut on the bias.`,
    hint: "Use a fabric without direction there, or set the blocks straight.",
  }),

  quiltTooLarge: ({ patches, most }) => ({
    message: `The design has ${patches} patches; at most ${most} can be worked out at once.`,
    hint: "Plan one part of it, or give the pieces as a cut list.",
  }),

  roleUnknown: ({ unit, role, known }) => ({
    message: `${capital(aOrAn(unit))} has no part \`${role}\`.`,
    hint: suggest(role, known),
  }),

  rolesUncovered: ({ unit, role, known }) => ({
    message: `The ${role} of this ${unit} has no fabric.`,
    hint: `Give one for each part: ${known.map((each) => `\`${each}\``).join(", ")}.`,
  }),

  rowsUneven: ({ found, expected }) => ({
    message: `${found}, but ${expected}.`,
    hint: "Every row must come to the same length.",
  }),

  seamsDoNotMeet: ({ message }) => ({
    message,
    hint: "Check that it is meant; otherwise give the blocks one width.",
  }),

  setInSeam: ({ unit, cuts }) => ({
    message: `${unit} has patches set into corners: seams that stop one allowance short and turn.`,
    hint:
      cuts.length === 0
        ? ""
        : `For straight seams alone draw it as \`drawn patches\` with ${cuts.join(" and ")}, a seam in the place of each.`,
  }),

  sizesDoNotAddUp: ({ message, hint }) => ({ message, hint }),

  spanOffGrid: ({ code, cell, span }) => ({
    message: `\`${code}\` at ${cell} covers ${span} cells and runs off the grid.`,
    hint: "Move it, make it smaller, or draw more cells.",
  }),

  unitUnknown: ({ word, known }) => ({
    message: `There is no unit \`${word}\`.`,
    hint: suggest(word, known),
  }),

  unitUnsuited: ({ unit, size, reason, hint }) => ({ message: `${unit} ${size}: ${reason}`, hint }),

  unitsOverlap: ({ code, other, cell }) => ({
    message: `\`${code}\` covers ${cell}, where \`${other}\` is drawn.`,
    hint: "Mark cells that a unit covers with `-` (from the left) or `|` (from above).",
  }),
};
