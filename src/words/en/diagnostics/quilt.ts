import { nearest } from "../../../diagnostics/nearest.ts";
import type { NotMotifs, OffMarks, QuiltFacts, UnitTold } from "../../../diagnostics/quilts/quilt.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { aOrAn, capital, list, number } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { methodName, unitName, unitTold } from "../quilt/unit-names.ts";
import {
  AXES,
  blockSizesFault,
  borderFault,
  cellPlace,
  cutsThrough,
  divideTold,
  onPointFault,
  rowsFault,
  sumFault,
} from "./design.ts";
import { unitFault } from "./units.ts";

/** "Did you mean" when a known word is near, else the list of known words. */
function suggest(word: string, known: readonly string[]): string {
  const near = nearest(word, [...known]);
  if (near !== null) return `Did you mean \`${near}\`?`;
  const shown = known.slice(0, 12).map((each) => `\`${each}\``);
  return shown.length === 0 ? "" : `Known here: ${shown.join(", ")}${known.length > 12 ? " ..." : ""}.`;
}

const NO_OTHER = "No other method can do it either.";

/** A print that would not all point the way it should, made so. */
function directionLost(unit: UnitTold, fabrics: readonly string[], from: string): string {
  return `${unitTold(unit)}: made ${methodName(from)}, the print of ${list(fabrics)} would not all point the way it should.`;
}

/** The same where what is done instead stands elsewhere. */
export function directionLostBy({ unit, fabrics, from, to }: QuiltFacts["directionByOtherMethod"]): string {
  const lost = directionLost(unit, fabrics, from);
  return to.length === 0 ? `${lost} ${NO_OTHER}` : lost;
}

function offMarks({ block, axis, count, whole, cell, mark }: OffMarks): string {
  const { length } = spoken;
  const what =
    count === 1
      ? `Block ${block} has ${AXES[axis]} of ${length(cell)}`
      : `Block ${block}: ${length(whole)} in ${count} ${AXES[axis]} makes ${length(cell)} each`;
  return `${what}, which cannot be cut on ${length(mark)} marks.`;
}

export const quilt: WordsOf<QuiltFacts> = {
  directionByOtherMethod: ({ unit, fabrics, from, to }) => ({
    message: `${directionLost(unit, fabrics, from)} ${
      to.length === 0 ? NO_OTHER : `Made ${list(to.map(methodName))} instead.`
    }`,
    hint: "To keep the first method, let the print turn with the unit: `prints: with unit`.",
  }),

  biasOutside: ({ unit, method }) => ({
    message: `${unitName(unit)} made ${methodName(method)} leaves bias edges on the outside, where they stretch.`,
    hint: "Stay-stitch the edges, add a border, or choose another method.",
  }),

  blockSizeMissing: ({ block }) => ({
    message: `Block ${block} has no finished size.`,
    hint: "Write its size, for example `size: 8`, or the sizes of its columns and lines.",
  }),

  blockSizesDiffer: ({ fault }) => ({
    message: blockSizesFault(fault),
    hint: "Blocks of one row need one height; with sashing, blocks of one column need one width too.",
  }),

  blockUnknown: ({ word, known }) => ({
    message: `There is no block \`${word}\`.`,
    hint: suggest(word, known),
  }),

  blockUnused: ({ block }) => ({ message: `Block ${block} is not used in the quilt.`, hint: "" }),

  borderDoesNotFit: ({ fault }) => borderFault(fault),

  cellEmpty: ({ block, place, mark }) => ({
    message: `Block ${block}, ${cellPlace(place)} is marked \`${mark}\`, but no unit reaches it.`,
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
    message: `${unitTold(unit)}: made ${methodName(method)}, ${spare} ${spare === 1 ? "unit is" : "units are"} left over with the print pointing the wrong way.`,
    hint: "Another method may waste less.",
  }),

  fabricMissing: ({ word, block, known }) => ({
    message: `${block === null ? "The quilt" : `Block ${block}`}: \`${word}\` is neither a fabric nor a role with a fabric.`,
    hint: suggest(word, known),
  }),

  fabricUnused: ({ fabric }) => ({ message: `Fabric ${fabric} is not used in the quilt.`, hint: "" }),

  gridOffMarks: (off) => ({
    message: offMarks(off),
    hint: `Nearest sizes that divide: ${spoken.length(off.below)} or ${spoken.length(off.above)}. Otherwise cut sizes are rounded up and units trimmed.`,
  }),

  methodUnknown: ({ unit, word, known }) => ({
    message: `There is no method \`${word}\` for ${unitName(unit)}.`,
    hint: suggest(word, known),
  }),

  motifsNotAlike: ({ block, found }) => {
    const said: Readonly<Record<NotMotifs["why"], string>> = {
      "no-code": found.why === "no-code" ? `\`${found.code}\` is no code of its grid` : "",
      "one-only": "there is only one of them, and it turns with the block",
      "same-all-round": "they look the same whichever way they are turned",
      "units-across": "a unit lies across the line between two of them",
      "not-alike": "they are not all alike, however they are turned",
    };
    const hint =
      found.why === "no-code"
        ? suggest(found.code, found.known)
        : "Write how many there are across and down, `motifs: 2 x 2`, or codes of the grid, `motifs: g`; or leave it out.";
    return { message: `The motifs of block ${block}: ${said[found.why]}.`, hint };
  },

  onPointUneven: ({ fault }) => onPointFault(fault),

  partialSeam: ({ block, divides }) => ({
    message: `Block ${block} cannot be joined in straight seams alone: one seam is sewn part way and finished later.`,
    hint:
      divides.length === 0
        ? ""
        : `For straight seams throughout divide ${divides.map(divideTold).join(", and ")}.`,
  }),

  printTilted: ({ fabric }) => ({
    message: `${fabric}: in blocks set on point its print leans with the block; upright it would have to be cut on the bias.`,
    hint: "Use a fabric without direction there, or set the blocks straight.",
  }),

  quiltTooLarge: ({ patches, most }) => ({
    message: `The design has ${number(patches)} patches; at most ${number(most)} can be worked out at once.`,
    hint: "Plan one part of it, or give the pieces as a cut list.",
  }),

  roleUnknown: ({ unit, role, known }) => {
    const part = typeof role === "string" ? role : `number ${role.number}`;
    return {
      message: `${capital(aOrAn(unitName(unit)))} has no part \`${part}\`.`,
      hint: suggest(part, known),
    };
  },

  rolesUncovered: ({ unit, role, known }) => ({
    message: `The ${role} of this ${unitName(unit)} has no fabric.`,
    hint: `Give one for each part: ${known.map((each) => `\`${each}\``).join(", ")}.`,
  }),

  rowsUneven: ({ fault }) => ({
    message: rowsFault(fault),
    hint: "Every row must come to the same length.",
  }),

  seamsDoNotMeet: () => ({
    message: "The rows are equally long, but the seams between blocks do not meet those of the first row.",
    hint: "Check that it is meant; otherwise give the blocks one width.",
  }),

  setInSeam: ({ unit, cuts }) => ({
    message: `${unitName(unit)} has patches set into corners: seams that stop one allowance short and turn.`,
    hint:
      cuts.length === 0
        ? ""
        : `For straight seams alone draw it as \`drawn patches\` with ${cuts.map(cutsThrough).join(" and ")}, a seam in the place of each.`,
  }),

  sizesDoNotAddUp: ({ fault }) => sumFault(fault),

  spanOffGrid: ({ code, place, columns, rows }) => ({
    message: `\`${code}\` at ${cellPlace(place)} covers ${columns} x ${rows} cells and runs off the grid.`,
    hint: "Move it, make it smaller, or draw more cells.",
  }),

  unitUnknown: ({ word, known }) => ({
    message: `There is no unit \`${word}\`.`,
    hint: suggest(word, known),
  }),

  unitUnsuited: ({ unit, asked, fault, place }) => {
    const { message, hint } = unitFault(fault, unit);
    const how = "method" in asked ? `made ${methodName(asked.method)}` : spoken.size(asked.finished);
    const look =
      place === null
        ? ""
        : ` Look ${spoken.length(place.across)} from the left and ${spoken.length(place.down)} from the top.`;
    return { message: `${unitName(unit)} ${how}: ${message}${look}`, hint };
  },

  unitsOverlap: ({ code, other, place }) => ({
    message: `\`${code}\` covers ${cellPlace(place)}, where \`${other}\` is drawn.`,
    hint: "Mark cells that a unit covers with `-` (from the left) or `|` (from above).",
  }),
};
