import type { Words } from "../types.ts";
import { assumed } from "./assumed.ts";
import { book } from "./book/index.ts";
import { arrange } from "./choosing/arrange.ts";
import { choices } from "./choosing/choices.ts";
import { compare } from "./choosing/compare.ts";
import { changeSaid, savings } from "./choosing/savings.ts";
import { sizes } from "./choosing/sizes.ts";
import { whyNot } from "./choosing/why-not.ts";
import { commandLine } from "./command-line/index.ts";
import { cutting } from "./cutting.ts";
import { diagnostics } from "./diagnostics/index.ts";
import { drawings } from "./drawings/index.ts";
import { FACT_EXAMPLES } from "./fact-examples.ts";
import { fileKeys } from "./file-keys/index.ts";
import { goOn, workFile } from "./go-on.ts";
import { lengthFaults } from "./length-faults.ts";
import { makers } from "./makers.ts";
import { purposes } from "./quilt/purposes.ts";
import { spoken } from "./quilt/spoken.ts";
import { unitNames } from "./quilt/unit-names.ts";
import { unitSizes } from "./quilt/unit-sizes.ts";
import { blocks } from "./sewing/blocks.ts";
import { borders } from "./sewing/borders.ts";
import { finishing } from "./sewing/finishing.ts";
import { foundation } from "./sewing/foundation.ts";
import { making } from "./sewing/making.ts";
import { teaching } from "./sewing/teaching.ts";
import { units } from "./sewing/units.ts";
import { shapes } from "./shapes.ts";
import { starters } from "./starters.ts";
import { buyTable, cutsTable, unitsTable } from "./tables.ts";

/** English, as quilters of both measures write it. */
export const english: Words = {
  language: "en",
  diagnostics,
  assumed,
  factExamples: FACT_EXAMPLES,
  fileKeys,
  starters,
  lengthFaults,
  workFile,
  whyNot,
  arrange,
  blocks,
  book,
  borders,
  choices,
  compare,
  cutting,
  drawings,
  finishing,
  foundation,
  goOn,
  spoken,
  makers,
  making,
  purposes,
  savings,
  shapes,
  sizes,
  teaching,
  units,
  unitNames,
  unitSizes,
  changeSaid,
  commandLine,
  tables: { buy: buyTable, cuts: cutsTable, units: unitsTable },
};
