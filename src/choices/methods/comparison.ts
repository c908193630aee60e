import type { StepMinutes } from "../../spec/index.ts";
import type { WhyNot } from "../why-not.ts";
import type { Figures } from "./making-figures.ts";
import type { Methods } from "./with-methods.ts";

/** One way of making all units of a kind, the others as the file says. */
export interface MethodRow {
  unit: string;
  method: string;
  /** All units of the kind are made so as the file has it. */
  filed: boolean;
  /** Null when it cannot be made this way; `why` then says why not. */
  figures: Figures | null;
  why: WhyNot | null;
}

/** A kind of unit that can be made in more than one way. */
export interface UnitChoice {
  unit: string;
  /** How many the quilt has. */
  count: number;
  /** Ways the file has it made, prints and width considered. */
  filed: string[];
}

/** The best of all combinations of methods. */
export interface BestCombination {
  /** Method of each kind; a kind not named stays as the file says. */
  methods: Methods;
  figures: Figures;
  /** Combinations there are, and how many of them were worked out whole. */
  combinations: number;
  tried: number;
  /** No other combination is bought for less. */
  proven: boolean;
  /** No combination is bought for less than this: hundredths, or square ticks where a fabric has no price. */
  least: number;
}

/** Ways of making a quilt side by side. Plain data. */
export interface Comparison {
  name: string;
  /** Empty where no fabric has a price. */
  currency: string;
  /** What "less" means: less money, or less cloth where a fabric has no price. */
  measure: "cost" | "cloth";
  minutes: StepMinutes;
  units: UnitChoice[];
  /** The quilt as the file has it. */
  filed: Figures;
  rows: MethodRow[];
  best: BestCombination;
}
