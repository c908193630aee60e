import { type BlockModel, fabricFor, type PlacedModel, type QuiltModel } from "../../edits/model.ts";
import { patchesOf } from "../../edits/unit-patches.ts";
import { type Corner, type Picture, pathOf, UNIT } from "./picture.ts";

/** Most patches of a top that is drawn though it cannot be sewn so. */
const MOST = 20_000;

interface Lying {
  block: BlockModel;
  placed: PlacedModel;
  across: number;
  down: number;
}

/** A point of an upright rectangle where the rectangle is turned clockwise by quarters. */
function turned([x, y]: Corner, degrees: number, across: number, down: number): Corner {
  switch (((degrees % 360) + 360) % 360) {
    case 90:
      return [down - y, x];
    case 180:
      return [across - x, down - y];
    case 270:
      return [y, across - x];
    default:
      return [x, y];
  }
}

const lying = (across: number, down: number, degrees: number): [number, number] =>
  degrees % 180 === 0 ? [across, down] : [down, across];

function setOut(model: QuiltModel): Lying[][] | null {
  let patches = 0;
  const rows = model.setting.rows.map((row) =>
    row.flatMap((placed): Lying[] => {
      const block = model.blocks.find(({ key }) => key === placed.block);
      if (block?.across == null || block.down === null) return [];
      patches += block.units.length;
      const [across, down] = lying(block.across, block.down, placed.turn);
      return [{ block, placed, across, down }];
    }),
  );
  return patches > MOST || rows.every((row) => row.length === 0) ? null : rows;
}

/**
 * A straight top as far as it goes, where it cannot be laid out as it is to be sewn: rows that do not add up stand as
 * long as they are, what does not come in its shape is left out. Sashes and borders wait until the rows fit.
 * @returns null where there is nothing to draw
 */
export function drawnSoFar(model: QuiltModel): Picture | null {
  const rows = model.setting.layout === "straight" ? setOut(model) : null;
  if (rows === null) return null;
  const high = rows.map((row) => Math.max(0, ...row.map(({ down }) => down)));
  const [across, down] = [
    Math.max(...rows.map((row) => row.reduce((sum, one) => sum + one.across, 0))),
    high.reduce((sum, one) => sum + one, 0),
  ];
  const { turn } = model.setting;
  const into = (corner: Corner): Corner => {
    const [x, y] = turned(corner, turn, across, down);
    return [x / UNIT, y / UNIT];
  };
  const groups = new Map<string, string[]>();
  const blocks: Picture["blocks"] = [];
  let top = 0;
  rows.forEach((row, r) => {
    let left = 0;
    row.forEach(({ block, placed, ...size }, c) => {
      const at = ([x, y]: Corner): Corner => into([left + x, top + y]);
      const corners: Corner[] = [
        [0, 0],
        [size.across, 0],
        [size.across, size.down],
        [0, size.down],
      ];
      blocks.push({ row: r, column: c, d: pathOf(corners.map(at), 1) });
      for (const unit of block.units)
        for (const { word, fabric, corners: outline } of patchesOf(unit, block, model) ?? []) {
          const cloth = fabricFor(word, block, model, placed.colourway) ?? fabric;
          if (cloth === null) continue;
          const moved = outline.map((one) => at(turned(one, placed.turn, block.across!, block.down!)));
          groups.set(cloth.name, [...(groups.get(cloth.name) ?? []), pathOf(moved, 1)]);
        }
      left += size.across;
    });
    top += high[r]!;
  });
  const [wide, tall] = lying(across / UNIT, down / UNIT, turn);
  return {
    across: wide,
    down: tall,
    groups: [...groups].map(([fabric, d]) => ({ fabric, up: null, d: d.join(""), ups: [] })),
    blocks,
    borders: [],
    centre: { across: wide, down: tall },
  };
}
