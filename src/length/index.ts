export {
  formatCut,
  formatCutSize,
  formatExact,
  formatExactSize,
  formatLength,
  formatMeasure,
  formatNumber,
  formatSize,
  nearestMark,
} from "./format.ts";
export {
  isBetweenMarks,
  onMark,
  roomToMark,
  roundDownToMark,
  roundUpToMark,
} from "./marks.ts";
export {
  CENTIMETRE,
  EIGHTH_INCH_RULER,
  familyOf,
  INCH,
  METRE,
  MILLIMETRE,
  QUARTER_CENTIMETRE_RULER,
  TICKS_PER,
  YARD,
} from "./measures.ts";
export { type ParsedLength, parseLength } from "./parse.ts";
export {
  add,
  floor,
  fromInteger,
  type Rational,
  rational,
  sub,
  toNumber,
  toTicksExact,
} from "./rational.ts";
export { parseSize } from "./size.ts";
export {
  addSurd,
  compareSurd,
  divSurd,
  mulSurd,
  roundSurdUpToMark,
  type Surd,
  subSurd,
  surd,
  surdToNumber,
  timesRoot2,
} from "./surd.ts";
export type { LengthUnit, Ruler, Ticks } from "./types.ts";
export { type Language, languageWritten, spokenLanguage, writingOf } from "./writing.ts";
