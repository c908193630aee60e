import { addBlock, blockNamed, lengthText, sizeBlock } from "./block-edits.ts";
import { type BlockModel, readModel, rulerOf, ticksOf } from "./model.ts";
import { setBorder } from "./quilt-edits.ts";
import { withItem, withoutValue, withValue } from "./text-edit.ts";

/** An edit that made a block, and which. */
export interface Pieced {
  text: string;
  /** Empty where nothing was made. */
  key: string;
}

/** Where else than in the rows a block of the file stands. */
export function ringsOf(text: string, key: string): ("border" | "sashing" | "corners")[] {
  const { borders, setting } = readModel(text);
  const corners = [...borders.map(({ stoneBlock }) => stoneBlock), setting.sashing?.stoneBlock];
  return [
    ...(borders.some(({ block }) => block === key) ? (["border"] as const) : []),
    ...(setting.sashing?.block === key ? (["sashing"] as const) : []),
    ...(corners.includes(key) ? (["corners"] as const) : []),
  ];
}

/** Takes a block out of the file that stands nowhere any more and was pieced for a ring. */
function withoutSpare(text: string, key: string): string {
  const model = readModel(text);
  const placed = model.setting.rows.flat().some(({ block }) => block === key);
  return placed || key === "" || ringsOf(text, key).length > 0 || model.blocks.length < 2
    ? text
    : withoutValue(text, ["blocks", key]);
}

/** The length nearest to `wish` that goes a whole number of times into both; null where none is near. */
function nearestShare(lengths: readonly number[], wish: number, mark: number): number | null {
  let best: number | null = null;
  for (let unit = Math.ceil(wish / 2 / mark) * mark; unit <= 2 * wish; unit += mark) {
    if (lengths.some((length) => Math.abs(length / unit - Math.round(length / unit)) > 1e-9)) continue;
    if (best === null || Math.abs(unit - wish) < Math.abs(best - wish)) best = unit;
  }
  return best;
}

/**
 * A plain border becomes one of blocks: a new, empty block as deep as the border is wide, and squares in the corners.
 * Where no block of about that length goes a whole number of times round, a plain border that is worked out to fit
 * comes before it.
 * @param inside what the border goes round, in ticks
 * @param stones fabric of its corner squares
 * @param spacer fabric of the border that fits
 */
export function pieceBorder(
  text: string,
  index: number,
  inside: { across: number; down: number },
  stones: string,
  spacer: string,
): Pieced {
  const model = readModel(text);
  const border = model.borders[index];
  const width = border === undefined ? null : ticksOf(border.width, model.unit);
  if (border === undefined || width === null || border.block !== "") return { text, key: "" };
  const { mark } = rulerOf(model);
  const share = nearestShare([inside.across, inside.down].map(Math.round), width, mark);
  const size = `${lengthText(share ?? width, model)} x ${lengthText(width, model)}`;
  const added = addBlock(text, 1, 1, size);
  const path = ["borders", index] as const;
  let made = withValue(added.text, [...path, "block"], added.key);
  for (const field of ["fabric", "corners", "cut", "join", "prints", "over-long"])
    made = withoutValue(made, [...path, field]);
  if (border.stones === "" && border.stoneBlock === "")
    made = withValue(made, [...path, "cornerstones"], stones);
  const fitted = model.borders.slice(0, index).some(({ width: own }) => own === "fit");
  if (share === null && !fitted) made = withItem(made, ["borders"], index, { fabric: spacer, width: "fit" });
  return { text: made, key: added.key };
}

/** A pieced border in one fabric again; its block goes where it stands nowhere else. */
export function plainBorder(text: string, index: number, fabric: string): string {
  const border = readModel(text).borders[index];
  if (border === undefined || border.block === "") return text;
  const path = ["borders", index] as const;
  const made = withValue(text, [...path, "fabric"], fabric);
  return withoutSpare(
    withoutValue(withoutValue(made, [...path, "block"]), [...path, "colourway"]),
    border.block,
  );
}

/** A pieced border of another width: its blocks become as deep. */
export function widenPieced(text: string, index: number, marks: number): string {
  const model = readModel(text);
  const border = model.borders[index];
  const now = border === undefined ? null : ticksOf(border.width, model.unit);
  const block = border === undefined ? null : blockNamed(model, border.block);
  const { mark } = rulerOf(model);
  if (border === undefined || now === null || block?.across == null) return text;
  const width = Math.max(mark, Math.round(now / mark) * mark + marks * mark);
  // A square block stays square, so that what lies on it still comes in that shape.
  const across = block.across === block.down ? width : block.across;
  const deep = sizeBlock(text, block.key, `${lengthText(across, model)} x ${lengthText(width, model)}`);
  return setBorder(deep, index, "width", lengthText(width, model));
}

/** Another width of a border as it is written; the blocks of a pieced one become as deep. */
export function setRingWidth(text: string, index: number, width: string): string {
  const model = readModel(text);
  const block = blockNamed(model, model.borders[index]?.block ?? "");
  if (model.borders[index] === undefined) return text;
  if (block?.across == null) return setBorder(text, index, "width", width);
  const across = block.across === block.down ? width : lengthText(block.across, model);
  return setBorder(sizeBlock(text, block.key, `${across} x ${width}`), index, "width", width);
}

/** A plain border before a pieced one, as wide as the pieced one needs to come out; none where there is one. */
export function fitBefore(text: string, index: number, fabric: string): string {
  const { borders } = readModel(text);
  return (borders[index]?.block ?? "") === "" || borders.slice(0, index).some(({ width }) => width === "fit")
    ? text
    : withItem(text, ["borders"], index, { fabric, width: "fit" });
}

/** Squares in the corners of a border, of a fabric; null for none. */
export function setBorderStones(text: string, index: number, fabric: string | null): string {
  const before = readModel(text).borders[index];
  const path = ["borders", index, "cornerstones"];
  const made =
    fabric === null
      ? withoutValue(text, path)
      : withValue(withoutValue(text, ["borders", index, "corners"]), path, fabric);
  return withoutSpare(made, before?.stoneBlock ?? "");
}

/** The corner squares of a border become a block that can be drawn. */
export function pieceBorderStones(text: string, index: number): Pieced {
  const border = readModel(text).borders[index];
  if (border === undefined || border.stoneBlock !== "" || !/^[\d /.,½¼¾⅛⅜⅝⅞]+$/.test(border.width))
    return { text, key: "" };
  const added = addBlock(text, 2, 2, border.width);
  const path = ["borders", index, "cornerstones"];
  return { text: withValue(withoutValue(added.text, path), path, { block: added.key }), key: added.key };
}

/** The blocks of the rows are of one size: what a sash lies along. */
function placedSize(text: string): BlockModel | null {
  const model = readModel(text);
  const [first] = model.setting.rows.flat();
  return first === undefined ? null : blockNamed(model, first.block);
}

/** Sashes become a block of their width, as long as the blocks, upright as it lies beside one. */
export function pieceSashes(text: string): Pieced {
  const model = readModel(text);
  const { sashing } = model.setting;
  const width = sashing === null ? null : ticksOf(sashing.width, model.unit);
  const along = placedSize(text)?.down ?? null;
  if (sashing === null || sashing.block !== "" || width === null || along === null) return { text, key: "" };
  const size = `${lengthText(width, model)} x ${lengthText(along, model)}`;
  const added = addBlock(text, 1, Math.max(1, Math.min(40, Math.round(along / width))), size);
  const made = withValue(added.text, ["setting", "sashing", "block"], added.key);
  return { text: withoutValue(made, ["setting", "sashing", "fabric"]), key: added.key };
}

/** Sashes in one fabric again. */
export function plainSashes(text: string, fabric: string): string {
  const { sashing } = readModel(text).setting;
  if (sashing === null || sashing.block === "") return text;
  const made = withValue(text, ["setting", "sashing", "fabric"], fabric);
  const path = ["setting", "sashing"] as const;
  return withoutSpare(
    withoutValue(withoutValue(made, [...path, "block"]), [...path, "colourway"]),
    sashing.block,
  );
}

/** Where sashes cross: a block that can be drawn. */
export function pieceSashStones(text: string): Pieced {
  const { sashing } = readModel(text).setting;
  if (sashing === null || sashing.stoneBlock !== "") return { text, key: "" };
  const added = addBlock(text, 2, 2, sashing.width);
  const path = ["setting", "sashing", "cornerstones"];
  return { text: withValue(withoutValue(added.text, path), path, { block: added.key }), key: added.key };
}
