export {
  formatCut,
  formatCutSize,
  formatLength,
  formatMeasure,
  formatNumber,
  formatSize,
  type LengthStyle,
  nearestMark,
} from "./format.ts";
export { onMark, roomToMark, roundDownToMark, roundUpToMark } from "./marks.ts";
export {
  CENTIMETRE,
  EIGHTH_INCH_RULER,
  familyOf,
  INCH,
  METRE,
  type MeasureFamily,
  MILLIMETRE,
  QUARTER_CENTIMETRE_RULER,
  TICKS_PER,
  YARD,
} from "./measures.ts";
export { type LengthProblem, lengthExamples, type ParsedLength, parseLength } from "./parse.ts";
export {
  add,
  ceil,
  compare,
  div,
  equal,
  floor,
  fromInteger,
  mul,
  negate,
  ONE,
  type Rational,
  rational,
  sign,
  sub,
  toNumber,
  toTicksExact,
  ZERO,
} from "./rational.ts";
export { type ParsedSize, parseSize, type SizeFault, sizeExamples } from "./size.ts";
export {
  addSurd,
  compareSurd,
  divSurd,
  floorSurd,
  mulSurd,
  rationalPart,
  roundSurdUpToMark,
  type Surd,
  scaleSurd,
  signOfSurd,
  subSurd,
  surd,
  surdToNumber,
  timesRoot2,
  timesRoot3,
} from "./surd.ts";
export type { DecimalMark, LengthUnit, Ruler, Ticks } from "./types.ts";
