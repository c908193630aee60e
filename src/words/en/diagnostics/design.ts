import type {
  BlockSizesFault,
  BorderFault,
  BorderPair,
  CellPlace,
  DivideTold,
  OnPointFault,
  RowsFault,
  SumFault,
} from "../../../diagnostics/quilts/design-faults.ts";
import type { SpokenLength } from "../../../length/spoken.ts";
import type { Said } from "../../diagnostics.ts";
import { counted } from "../language.ts";
import { borderName } from "../quilt/border-name.ts";
import { spoken } from "../quilt/spoken.ts";
import { unitName } from "../quilt/unit-names.ts";

const { length } = spoken;

/** Columns of a block are columns, its rows are lines. */
export const AXES = { across: "columns", down: "lines" } as const;

const PAIRS: Readonly<Record<BorderPair, string>> = { sides: "sides", ends: "top and bottom" };

function by({ across, down }: { across: SpokenLength; down: SpokenLength }): string {
  return `${length(across)} by ${length(down)}`;
}

/** A cell of a drawing. */
export function cellPlace({ line, cell }: CellPlace): string {
  return `line ${line}, cell ${cell}`;
}

/** Where to divide a unit of a block. */
export function divideTold({ unit, column, line, at, from }: DivideTold): string {
  return `the ${unitName(unit)} in column ${column}, line ${line} in two, ${length(at)} from its ${from} edge`;
}

/** Blocks that do not have the size of their neighbours. */
export function blockSizesFault(fault: BlockSizesFault): string {
  switch (fault.why) {
    case "row-heights":
      return `Block ${fault.block} is ${length(fault.high)} high here, but this row begins with a block ${length(fault.begun)} high.`;
    case "column-widths":
      return `Block ${fault.block} is ${length(fault.wide)} wide in column ${fault.column}, but the first row has ${length(fault.first)} there.`;
  }
}

/** Rows that differ. */
export function rowsFault(fault: RowsFault): string {
  switch (fault.why) {
    case "cells":
      return `This line of block ${fault.block} has ${counted(fault.cells, "cell")}, but its first has ${fault.first}.`;
    case "lengths": {
      const [own, first] = [counted(fault.blocks, "block"), counted(fault.first, "block")];
      return `This row is ${length(fault.long)} long (${own}), but the first is ${length(fault.begun)} (${first}).`;
    }
    case "counts":
      return `This row has ${counted(fault.blocks, "block")}, but the first has ${fault.first}.`;
  }
}

/** Widths of a plain border that makes a pieced one come out. */
function coping({ side, end }: { side: SpokenLength; end: SpokenLength | null }): string {
  return end === null
    ? `${length(side)} wide`
    : `${length(side)} wide at the sides and ${length(end)} at top and bottom`;
}

/** A border that cannot be sewn on as it is written. */
export function borderFault(fault: BorderFault): Said {
  const border = borderName(fault.border);
  switch (fault.why) {
    case "nothing-to-fit":
      return {
        message: `${border} has \`width: fit\`, but no pieced border outside it that it could be fitted to.`,
        hint: "`fit` stands on one plain border with a pieced one (`block: ...`) further out; else write its width, for example `width: 2`.",
      };
    case "block-height":
      return {
        message: `${border} is ${length(fault.width)} wide, but block ${fault.block} is ${length(fault.high)} high.`,
        hint: "Make the two alike.",
      };
    case "beside-on-point":
      return {
        message: `${border}: beside an on-point centre no number of blocks comes out exactly.`,
        hint: "Sew a plain border first that makes the sum come out, `- { fabric: ..., width: fit }`, or leave the border plain.",
      };
    case "not-filled": {
      const [one, many] = fault.of === "block" ? ["block", "blocks"] : ["round", "rounds of blocks"];
      const fits = fault.fits.map(({ count, long }) => `${counted(count, one)} ${length(long)} long`);
      const plain =
        fault.coping === null
          ? ""
          : `; or sew a plain border first, ${coping(fault.coping)}, which \`- { fabric: ..., width: fit }\` works out`;
      return {
        message: `${border}: its ${PAIRS[fault.pair]} are ${length(fault.long)} long, which ${many} of ${length(fault.round)} do not fill.`,
        hint: `Fits: ${fits.join(" or ")}${plain}.`,
      };
    }
    case "mitre":
      return {
        message: `${border} cannot be mitred.`,
        hint: "A mitre needs a plain border with one width all round; give a pieced one `cornerstones`.",
      };
    case "corners-no-square":
      return {
        message: `${border} is as wide as no ruler shows, so that no square fits its corners.`,
        hint: "Leave out its `cornerstones`; its corners are then butted.",
      };
    case "corner-block":
      return {
        message: `The corners of ${border} are ${by(fault.corners)}, but block ${fault.block} is ${by(fault.is)} there.`,
        hint: "Use a square block as wide as the border.",
      };
  }
}

/** Sizes of the file that contradict each other. */
export function sumFault(fault: SumFault): Said {
  switch (fault.why) {
    case "sizes-count": {
      return {
        message: `Block ${fault.block} gives ${fault.sizes} sizes for ${fault.count} ${AXES[fault.axis]}.`,
        hint: "Write one finished size for each.",
      };
    }
    case "sum":
      return {
        message: `The ${AXES[fault.axis]} of block ${fault.block} add up to ${length(fault.together)}, but its size is ${length(fault.size)}.`,
        hint: "Change one size, or leave `size` out.",
      };
    case "filling":
      return {
        message: `The ${fault.place} needs ${by(fault.needs)}, but block ${fault.block} is ${by(fault.is)} there.`,
        hint:
          fault.place === "sash"
            ? "Draw the sash block upright: as wide as the sashing and as high as a block."
            : "Give the block the width of the sashing both ways.",
      };
    case "sashes-without-cornerstones":
      return {
        message: "Sashes made of a block need cornerstones where they cross.",
        hint: "Add `cornerstones:` with a fabric or a block.",
      };
  }
}

/** Blocks that cannot be set on point as they are drawn. */
export function onPointFault(fault: OnPointFault): Said {
  switch (fault.why) {
    case "block-size":
      return {
        message: `Block ${fault.block} is ${spoken.size(fault.is)}; on point every block is a square of one size (here ${length(fault.side)}).`,
        hint: "Give all blocks of the setting one size.",
      };
    case "rows-even":
      return {
        message: `On point there are ${fault.rows} rows drawn; the last must be a full row again.`,
        hint: "Draw rows of 3, 2, 3 blocks, or 4, 3, 4, 3, 4.",
      };
    case "row-count":
      return {
        message: `Row ${fault.row} has ${counted(fault.blocks, "block")}, but on point it needs ${fault.expected}.`,
        hint: "Every second row has one block fewer; setting triangles fill its ends.",
      };
    case "sashing":
      return {
        message: "Sashing between blocks on point is not worked out.",
        hint: "Sew the sash to two sides of each block design instead (as columns and lines of its grid), or set the blocks straight.",
      };
  }
}

/** Cuts through patches of one part. */
export function cutsThrough({ role, count }: { role: string; count: number }): string {
  return `${counted(count, "cut")} through ${role}`;
}
