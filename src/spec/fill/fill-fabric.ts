import { mixUnpriced, type Unweighed } from "../../diagnostics/cloth.ts";
import {
  clothTooMuch,
  fullWidthLengthwise,
  labelRepeated,
  lengthOffMarks,
  lengthRoundedUp,
  selvagesTooWide,
} from "../../diagnostics/fields.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatLength, formatSize } from "../../length/format.ts";
import { onMark, roundUpToMark } from "../../length/marks.ts";
import { familyOf } from "../../length/measures.ts";
import { ceil, floor, type Rational, toTicksExact } from "../../length/rational.ts";
import type { LengthUnit, Ruler, Ticks } from "../../length/types.ts";
import { clothDefaults } from "../../stock/defaults.ts";
import { usableWidth } from "../../stock/usable-width.ts";
import { type Path, pathText, type SourceDocument } from "../read/document.ts";
import type { WrittenCloth, WrittenFabric } from "../schema/fabric-schema.ts";
import type { ReadPiece } from "../schema/piece-schema.ts";
import type { ReadShape } from "../schema/shape-schema.ts";
import type {
  Assumed,
  Assumption,
  FabricSpec,
  FixedClothSpec,
  PieceSpec,
  Print,
  ShapeSpec,
  SoldBy,
} from "../types.ts";
import type { WrittenCut } from "../written/cloth-line.ts";
import { colourFor } from "../written/colours.ts";
import type { WrittenPrice } from "../written/sold.ts";

/** What filling in a fabric needs to know of the file around it. */
export interface FileFrame {
  ruler: Ruler;
  unit: LengthUnit;
  common: WrittenCloth;
  document: SourceDocument;
}

/** A fabric with its defaults, what was assumed, and what has to be said. */
export interface Filled {
  fabric: FabricSpec;
  assumptions: Assumption[];
  diagnostics: Diagnostic[];
}

/** A length that no whole number of ticks says goes to the next tick on the safe side: 1/640 mm, never seen. */
const up = (value: Rational): Ticks => Number(ceil(value));
const down = (value: Rational): Ticks => Number(floor(value));

/** Above this an area in square ticks is no longer a safe whole number. */
const MOST_AREA = 2 ** 52;

/** Fills in what the maker left out, from `all-fabrics` first and trade defaults last. */
export function fillFabric(written: WrittenFabric, index: number, frame: FileFrame): Filled {
  const defaults = clothDefaults(familyOf(frame.unit));
  const path: Path = ["fabrics", index];
  const { fabric, assumed } = clothOf(written, index, frame);
  const diagnostics = clothFaults(written, path, fabric, frame);
  const pieces = (written.pieces ?? []).map((piece, i) =>
    piece.shape === null
      ? fillPiece(piece, [...path, "pieces", i], fabric.print, frame, diagnostics)
      : fillShape(
          piece,
          piece.shape,
          frame.document.valueAt([...path, "pieces", i]),
          fabric.print,
          defaults.seam,
        ),
  );
  if ((written.pieces ?? []).some(({ shape }) => shape !== null && shape.seam === null))
    assumed.push({ is: "seam-of-shapes", length: defaults.seam });
  diagnostics.push(...repeatedLabels(pieces, path, frame.document));
  const area = pieces.reduce(
    (sum, piece) => sum + (piece.fullWidth ? fabric.width : piece.across) * piece.along * piece.count,
    0,
  );
  if (area > MOST_AREA) diagnostics.push(clothTooMuch({ path: pathText(path), at: fabric.at }, written.name));
  const assumptions = assumed.map((of): Assumption => ({ fabric: written.name, of }));
  return { fabric: { ...fabric, pieces }, assumptions, diagnostics };
}

/** What is wrong with a cloth as bought: pieces that cannot be weighed by their prices, selvages with nothing between. */
function clothFaults(
  written: WrittenFabric,
  path: Path,
  fabric: FabricSpec,
  { common, document, ruler }: FileFrame,
): Diagnostic[] {
  const diagnostics: Diagnostic[] = [];
  const { width, selvage, yardage, price } = fabric;
  const readyCut = written["ready-cut"] ?? common["ready-cut"] ?? [];
  const unpriced = whyUnweighed(readyCut, yardage, price);
  if (unpriced !== null) {
    const key = written["ready-cut"] === undefined ? ["all-fabrics", "ready-cut"] : [...path, "ready-cut"];
    diagnostics.push(mixUnpriced({ path: pathText(key), at: document.keyAt(key) }, written.name, unpriced));
  }
  if (usableWidth(fabric) === 0) {
    const key = written.selvage ? "selvage" : written.width ? "width" : "name";
    const where = { path: pathText([...path, key]), at: document.valueAt([...path, key]) };
    const say = (ticks: Ticks) => formatLength(ticks, ruler);
    diagnostics.push(selvagesTooWide(where, say(2 * selvage), say(width)));
  }
  return diagnostics;
}

/** Where a bolt of it ends; null where it goes on as far as is wanted. */
function boltOf(
  written: WrittenFabric,
  common: FileFrame["common"],
  usual: Ticks,
): NonNullable<FabricSpec["bolt"]> | null {
  const asked = written.bolt ?? (written.bolt === undefined ? common.bolt : null);
  if (asked === undefined) return { length: usual, told: false };
  return asked && { length: down(asked.value), told: true };
}

/** The cloth itself, without its pieces, and what of it was assumed. */
function clothOf(
  written: WrittenFabric,
  index: number,
  { common, document, unit }: FileFrame,
): { fabric: FabricSpec; assumed: Assumed[] } {
  const defaults = clothDefaults(familyOf(unit));
  const assumed: Assumed[] = [];
  const assume = (of: Assumed) => assumed.push(of);
  const widthWritten = written.width ?? common.width;
  const selvageWritten = written.selvage ?? common.selvage;
  const width = widthWritten ? down(widthWritten.value) : defaults.width;
  const selvage = selvageWritten ? up(selvageWritten.value) : defaults.selvage;
  const shrinkage = written.shrinkage ?? common.shrinkage;
  const cloth = { width, selvage, shrinkAcross: shrinkage?.across ?? 0 };
  if (!widthWritten) assume({ is: "usable-width", usable: usableWidth(cloth), width, selvage });
  else if (!selvageWritten) assume({ is: "selvage", length: selvage });

  const straighten = written.straighten ?? common.straighten;
  if (!straighten) assume({ is: "straightening", length: defaults.straighten });
  const soldWritten = written.sold ?? common.sold;
  const sold: SoldBy = soldWritten
    ? { unit: soldWritten.unit, step: up(soldWritten.step), least: up(soldWritten.least) }
    : { ...defaults.sold };
  const bolt = boltOf(written, common, defaults.bolt);
  if (!soldWritten) assume({ is: "sold-in", step: sold.step, unit: sold.unit });
  if (!shrinkage) assume({ is: "shrinkage" });
  const print: Print = written.print ?? common.print ?? { kind: "none", axis: "along" };
  if (!written.print && !common.print) assume({ is: "print" });
  const price = written.price ?? common.price ?? null;
  const readyCut = written["ready-cut"] ?? common["ready-cut"] ?? [];
  const have = written.have ?? common.have ?? [];
  const squareUpWritten = written["square-up"] ?? common["square-up"];
  const squareUp = squareUpWritten ? up(squareUpWritten.value) : defaults.squareUp;
  if (!squareUpWritten && [...have, ...readyCut].some(({ square }) => !square))
    assume({ is: "squaring", off: squareUp });
  const yardage = written.yardage ?? common.yardage ?? true;

  const fabric: FabricSpec = {
    name: written.name,
    colour: written.colour ?? colourFor(index),
    width,
    selvage,
    print,
    shrinkAcross: cloth.shrinkAcross,
    shrinkAlong: shrinkage?.along ?? 0,
    straighten: straighten ? up(straighten.value) : defaults.straighten,
    sold,
    ...(bolt === null ? {} : { bolt }),
    price: price && { ...price, per: price.per ?? (familyOf(sold.unit) === "imperial" ? "yd" : "m") },
    spare: up((written.spare ?? common.spare)?.value ?? { n: 0n, d: 1n }),
    squareUp,
    have: have.map((cut) => fixedCloth(cut, squareUp)),
    readyCut: readyCut.map((cut) => fixedCloth(cut, squareUp)),
    yardage,
    note: written.note ?? "",
    pieces: [],
    at: document.valueAt(["fabrics", index]),
  };
  return { fabric, assumed };
}

function fixedCloth({ across, price, square, ...cut }: WrittenCut, squareUp: Ticks): FixedClothSpec {
  return {
    ...cut,
    ...(square || squareUp === 0 ? {} : { squareUp }),
    across: across ?? 0,
    fullWidth: across === null,
    price: price?.hundredths ?? null,
    currency: price?.currency ?? "",
  };
}

/** Why what is sold ready cut cannot be weighed by its prices; null when it can. */
function whyUnweighed(
  readyCut: readonly WrittenCut[],
  yardage: boolean,
  bolt: WrittenPrice | null,
): Unweighed | null {
  if (readyCut.length === 0) return null;
  const prices = [...readyCut.map(({ price }) => price), ...(yardage ? [bolt] : [])];
  const known = prices.filter((price) => price !== null);
  if (yardage ? known.length < prices.length : known.length > 0 && known.length < prices.length) {
    if (yardage && bolt === null) return "no-price";
    return "not-every-price";
  }
  return new Set(known.map(({ currency }) => currency)).size > 1 ? "two-currencies" : null;
}

function fillPiece(
  piece: ReadPiece,
  path: Path,
  print: Print,
  { ruler, document }: FileFrame,
  diagnostics: Diagnostic[],
): PieceSpec {
  const at = document.valueAt(path);
  const where = { path: pathText(path), at };
  const name = piece.label === "" ? `Piece ${Number(path.at(-1)) + 1}` : piece.label;
  const side = (value: Rational) => toTicksExact(value) ?? roundUpToMark(value, ruler.mark);
  const { size } = piece;
  const sides = size.fullWidth ? [size.along] : [size.across, size.along];
  const [across, along] = [size.fullWidth ? 0 : side(size.across), side(size.along)];
  const shown = size.fullWidth ? formatLength(along, ruler) : formatSize(across, along, ruler);
  if (sides.some((value) => toTicksExact(value) === null)) {
    diagnostics.push(lengthRoundedUp(where, name, size.text, shown));
  }
  if (!onMark(across, ruler) || !onMark(along, ruler)) {
    diagnostics.push(lengthOffMarks(where, name, shown, formatLength(ruler.mark, ruler)));
  }
  const cut = piece.cut ?? "strips";
  if (size.fullWidth && cut === "lengthwise") diagnostics.push(fullWidthLengthwise(where, name, shown));
  return {
    label: piece.label,
    across,
    along,
    fullWidth: size.fullWidth,
    count: piece.count,
    turn: piece.turn ?? (print.kind === "none" ? "free" : "fixed"),
    cut: size.fullWidth ? "strips" : cut,
    join: piece.join ?? "no",
    note: piece.note,
    at,
  };
}

/** A shape keeps its finished sizes: what is cut lies on the marks, whatever they are. */
function fillShape(
  piece: ReadPiece,
  { kind, side, height, angle, seam, tips, lean }: ReadShape,
  at: PieceSpec["at"],
  print: Print,
  usualSeam: Ticks,
): PieceSpec {
  const shape: ShapeSpec = {
    ...{ kind, angle, tips, lean, side: up(side) },
    height: height === null ? null : up(height),
    seam: seam === null ? usualSeam : up(seam),
  };
  return {
    label: piece.label,
    across: up(piece.size.across),
    along: up(piece.size.along),
    fullWidth: false,
    count: piece.count,
    turn: piece.turn ?? (print.kind === "none" ? "free" : "fixed"),
    cut: "strips",
    join: "no",
    shape,
    note: piece.note,
    at,
  };
}

function repeatedLabels(pieces: readonly PieceSpec[], fabric: Path, document: SourceDocument): Diagnostic[] {
  const first = new Map<string, PieceSpec>();
  return pieces.flatMap((piece, i) => {
    if (piece.label === "") return [];
    const before = first.get(piece.label.toLowerCase());
    if (before === undefined) {
      first.set(piece.label.toLowerCase(), piece);
      return [];
    }
    const path = [...fabric, "pieces", i];
    return [
      labelRepeated(
        { path: pathText(path), at: document.valueAt(path) },
        piece.label,
        before.at?.line ?? null,
      ),
    ];
  });
}
