/** Minutes a step takes. Every maker has her own: the file, or the command line, can set each. */
export interface StepMinutes {
  /** Cutting one strip across the fabric. */
  strip: number;
  /** One cut across a strip or through a unit. */
  subcut: number;
  /** Drawing a line to sew along. */
  mark: number;
  /** Pinning and starting one seam. */
  seam: number;
  /** Sewing a metre. */
  metre: number;
  /** Pressing once. */
  press: number;
  /** Trimming one unit to size. */
  trim: number;
}

/** Common practice, no source. */
export const USUAL_MINUTES: StepMinutes = {
  strip: 1,
  subcut: 0.2,
  mark: 0.25,
  seam: 0.25,
  metre: 0.5,
  press: 0.25,
  trim: 0.75,
};

/** A yard is 0.9144 m. */
export const METRES_IN_A_YARD = 0.9144;
