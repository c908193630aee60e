import type { WhyNot } from "../choices/why-not.ts";
import type { Ruler } from "../length/types.ts";
import type { Language } from "../length/writing.ts";
import type { Assumption } from "../spec/types.ts";
import type { DiagnosticWords } from "./diagnostics.ts";
import type { AssumptionSaid } from "./en/assumed.ts";
import type { book } from "./en/book/index.ts";
import type { arrange } from "./en/choosing/arrange.ts";
import type { choices } from "./en/choosing/choices.ts";
import type { compare } from "./en/choosing/compare.ts";
import type { changeSaid, savings } from "./en/choosing/savings.ts";
import type { sizes } from "./en/choosing/sizes.ts";
import type { commandLine } from "./en/command-line/index.ts";
import type { cutting } from "./en/cutting.ts";
import type { drawings } from "./en/drawings/index.ts";
import type { goOn, workFile } from "./en/go-on.ts";
import type { lengthFaults } from "./en/length-faults.ts";
import type { makers } from "./en/makers.ts";
import type { purposes } from "./en/quilt/purposes.ts";
import type { spoken } from "./en/quilt/spoken.ts";
import type { unitNames } from "./en/quilt/unit-names.ts";
import type { unitSizes } from "./en/quilt/unit-sizes.ts";
import type { blocks } from "./en/sewing/blocks.ts";
import type { borders } from "./en/sewing/borders.ts";
import type { finishing } from "./en/sewing/finishing.ts";
import type { foundation } from "./en/sewing/foundation.ts";
import type { making } from "./en/sewing/making.ts";
import type { teaching } from "./en/sewing/teaching.ts";
import type { units } from "./en/sewing/units.ts";
import type { shapes } from "./en/shapes.ts";
import type { buyTable, cutsTable, unitsTable } from "./en/tables.ts";
import type { FileKeyWords } from "./file-keys.ts";
import type { Starter } from "./starter.ts";

/** The shape of a table of words without its English: any text, any list of as many. */
export type Wide<Table> = Table extends RegExp
  ? RegExp
  : Table extends string
    ? string
    : Table extends (...facts: infer Facts) => infer Text
      ? (...facts: Facts) => Wide<Text>
      : { readonly [Key in keyof Table]: Wide<Table[Key]> };

/**
 * Everything a language must be able to say. It is handed down from the doors as an argument; a second language is a
 * second folder beside `en/` that makes another value of this type.
 */
export interface Words {
  /** The language's tag, as `Intl` takes it. */
  language: Language;
  diagnostics: DiagnosticWords;
  /** A default that was filled in: about what, and which value. */
  assumed: (assumption: Assumption, ruler: Ruler) => AssumptionSaid;
  /** What every key of a file means, with an example. */
  fileKeys: FileKeyWords;
  /** Files to start from. */
  starters: readonly Starter[];
  /** What is told of a length that cannot be read. */
  lengthFaults: Wide<typeof lengthFaults>;
  /** What the file of the work begins with, for whoever opens it. */
  workFile: Wide<typeof workFile>;
  /** What can be said of the work while it is done, by examples. */
  factExamples: string;
  /** Why a way of making or arranging that was tried cannot be taken. */
  whyNot: (why: WhyNot) => string;
  /** Arrangements side by side. */
  arrange: Wide<typeof arrange>;
  /** How blocks are joined. */
  blocks: Wide<typeof blocks>;
  /** The bench book and the pattern. */
  book: Wide<typeof book>;
  /** Borders and their corners. */
  borders: Wide<typeof borders>;
  /** Kits, other widths, the drawer. */
  choices: Wide<typeof choices>;
  /** Ways of making side by side. */
  compare: Wide<typeof compare>;
  /** What to buy and how to cut it. */
  cutting: Wide<typeof cutting>;
  /** What stands in drawings. */
  drawings: Wide<typeof drawings>;
  /** Layers, quilting, binding. */
  finishing: Wide<typeof finishing>;
  /** What is made on a foundation. */
  foundation: Wide<typeof foundation>;
  /** A plan gone on with. */
  goOn: Wide<typeof goOn>;
  /** Lengths and sizes in a sentence. */
  spoken: Wide<typeof spoken>;
  /** Sewing the quilt together: headings, cautions, pressing. */
  making: Wide<typeof making>;
  /** What pieces of cloth are for. */
  purposes: Wide<typeof purposes>;
  /** What would save. */
  savings: Wide<typeof savings>;
  /** Pieces cut aslant, shapes in strips. */
  shapes: Wide<typeof shapes>;
  /** One design in several sizes. */
  sizes: Wide<typeof sizes>;
  /** The sheet of whoever teaches a class. */
  teaching: Wide<typeof teaching>;
  /** What stands in papers for others in place of sentences about the file. */
  makers: Wide<typeof makers>;
  /** Names of units and of ways of making them. */
  unitNames: Wide<typeof unitNames>;
  /** Cut sizes of a unit. */
  unitSizes: Wide<typeof unitSizes>;
  /** How units are sewn. */
  units: Wide<typeof units>;
  /** A change of a file in a few words. */
  changeSaid: Wide<typeof changeSaid>;
  /** Tables for spreadsheets: headings and cells. */
  tables: { buy: Wide<typeof buyTable>; cuts: Wide<typeof cutsTable>; units: Wide<typeof unitsTable> };
  /** The command line: its help, what it tells while it works, what is wrong with a command. */
  commandLine: Wide<typeof commandLine>;
}
