import type { CutPiece } from "../../cutlist/types.ts";
import { formatExact, formatExactSize } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";
import type { TemplateUse } from "../../plan/template-types.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { diagonalOf, headsOfCut } from "../sewing/diagonals.ts";
import { borderLetters } from "./borders-cut.ts";

/** What is told of the pieces in a bag. */
interface PieceFacts {
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

/** What a piece is told with: letter, count, size, whether it may turn, and what it is for. */
export function pieceFacts(fabric: FabricPlan, plan: Plan, words: Words): PieceFacts[] {
  const borders = borderLetters(plan);
  const index = plan.fabrics.findIndex(({ name }) => name === fabric.name);
  const shaped = (plan.templates ?? []).flatMap(({ name, uses }) => uses.map((use) => ({ name, ...use })));
  return fabric.pieces.map((piece, number) => {
    const use = shaped.find((each) => each.fabric === index && each.piece === number);
    const uses = usesTold(piece, plan.ruler, words);
    const cut = fabric.done?.cut[number] ?? 0;
    const done = cut === 0 ? "" : words.cutting.cutOf(cut, piece.count);
    const sorts = (piece.inKits ?? []).flatMap(({ each }, i) =>
      each === 0 ? [] : [{ number: i + 1, each }],
    );
    const dealt = sorts.length === 0 ? "" : words.choices.kits.each(sorts);
    const remarks = [
      done,
      ...uses,
      cutFurther(piece, fabric, use, words),
      ...shapeTold(piece, use, plan.ruler, words),
      noteOf(piece, borders, plan.ruler, words),
      dealt,
    ].filter((text) => text !== "");
    return {
      letter: piece.letter,
      count: piece.count,
      ...sizeTold(piece, plan.ruler, words),
      uses,
      remarks,
    };
  });
}

/** The use of a template, with its name. */
type NamedUse = TemplateUse & { name: string };

/** A shape that is ruled on its strip, without a template. */
const ruledOf = ({ nest }: CutPiece) => (nest?.spec == null ? null : nest);

/** The size of a piece, and whether it may turn. */
function sizeTold(piece: CutPiece, ruler: Ruler, words: Words): Pick<PieceFacts, "size" | "turn"> {
  if (ruledOf(piece) !== null) return { size: words.shapes.shapeSize(piece.along, ruler), turn: "" };
  if (piece.fullWidth)
    return { size: words.cutting.fullWidthSize(formatExact(piece.along, ruler)), turn: "" };
  if (piece.across === piece.along)
    return { size: `${formatExact(piece.across, ruler)} ${words.cutting.square}`, turn: "" };
  return {
    size: formatExactSize(piece.across, piece.along, ruler),
    turn: piece.turnable ? words.cutting.turnFree : words.cutting.turnFixed,
  };
}

/** What a piece is for. One without a label is for its own size, which is told already. */
function usesTold(piece: CutPiece, ruler: Ruler, words: Words): string[] {
  if (piece.label !== "") return [piece.label];
  if (ruledOf(piece) !== null) return [];
  return piece.uses.flatMap(({ purpose }) =>
    purpose.for === "size" ? [] : [words.purposes.purpose(purpose, ruler)],
  );
}

/** How a piece is cut once it is cut out; empty where it is not. */
function cutFurther(piece: CutPiece, fabric: FabricPlan, use: NamedUse | undefined, words: Words): string {
  switch (piece.subcut) {
    case "none":
      return "";
    case "once-diagonal":
      return words.cutting.halved(diagonalOf(piece, fabric, words), headsOfCut(piece, fabric, words));
    case "twice-diagonal":
      return words.cutting.quartered(headsOfCut(piece, fabric, words));
    case "template":
      return words.cutting.byTemplate(use?.name ?? "", use?.asDrawn ?? 0, use?.reversed ?? 0);
  }
}

/** How a piece is cut aslant from its strip, or stands in it. */
function shapeTold(piece: CutPiece, use: NamedUse | undefined, ruler: Ruler, words: Words): string[] {
  const ruled = ruledOf(piece);
  const aslant =
    use !== undefined && piece.subcut === "none" && ruled === null
      ? [words.cutting.aslant(use.name, use.asDrawn + use.reversed)]
      : [];
  if (piece.nest === undefined) return aslant;
  return [
    ...aslant,
    ...words.shapes.shapeFacts(piece.nest, ruler),
    words.shapes.shapeStanding(piece.nest),
    ...(ruled === null || use === undefined ? [] : [words.shapes.shownInTemplate(use)]),
  ];
}

/** The note to a piece. A border's length is what is measured: a printed one would compete with it. */
function noteOf(piece: CutPiece, borders: ReadonlySet<string>, ruler: Ruler, words: Words): string {
  if (!borders.has(piece.letter)) return words.purposes.notes(piece, ruler);
  return piece.joined === undefined || piece.joined.perKit === true
    ? words.cutting.borderLater
    : words.cutting.joinLater(piece.count);
}
