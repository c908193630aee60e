import type { Words } from "../types.ts";
import { arrange } from "./arrange.ts";
import { assumed } from "./assumed.ts";
import { blocks } from "./blocks.ts";
import { book } from "./book/index.ts";
import { borders } from "./borders.ts";
import { choices } from "./choices.ts";
import { commandLine } from "./command-line/index.ts";
import { compare } from "./compare.ts";
import { cutting } from "./cutting.ts";
import { diagnostics } from "./diagnostics/index.ts";
import { drawings } from "./drawings/index.ts";
import { FACT_EXAMPLES } from "./fact-examples.ts";
import { fileKeys } from "./file-keys/index.ts";
import { finishing } from "./finishing.ts";
import { foundation } from "./foundation.ts";
import { goOn, workFile } from "./go-on.ts";
import { lengths } from "./lengths.ts";
import { makers } from "./makers.ts";
import { making } from "./making.ts";
import { lengths as spoken } from "./quilt/lengths.ts";
import { purposes } from "./quilt/purposes.ts";
import { unitNames } from "./quilt/unit-names.ts";
import { unitSizes } from "./quilt/unit-sizes.ts";
import { changeSaid, savings } from "./savings.ts";
import { shapes } from "./shapes.ts";
import { sizes } from "./sizes.ts";
import { starters } from "./starters.ts";
import { buyTable, cutsTable, unitsTable } from "./tables.ts";
import { teaching } from "./teaching.ts";
import { units } from "./units.ts";
import { whyNot } from "./why-not.ts";

/** German, as patchwork is written of in it: what to do stands in the infinitive. */
export const german: Words = {
  language: "de",
  diagnostics,
  assumed,
  factExamples: FACT_EXAMPLES,
  fileKeys,
  starters,
  lengths,
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
  makers,
  making,
  purposes,
  savings,
  shapes,
  sizes,
  spoken,
  teaching,
  units,
  unitNames,
  unitSizes,
  changeSaid,
  commandLine,
  tables: { buy: buyTable, cuts: cutsTable, units: unitsTable },
};
