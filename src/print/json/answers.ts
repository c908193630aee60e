import type { Arrangement, Arrangements } from "../../choices/arranging/arrange-blocks.ts";
import type { Taken } from "../../choices/arranging/arranged-figures.ts";
import type { Comparison, MethodRow } from "../../choices/methods/comparison.ts";
import type { SeveralSizes, SizePlanned } from "../../choices/sizes/several-sizes.ts";
import type { Suited } from "../../choices/suits.ts";
import type { Head } from "../../diagnostics/answer.ts";
import type { WordedDiagnostic } from "../../diagnostics/types.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { BoughtIn, Savings } from "../../savings/try-ideas.ts";
import type { StashCloth } from "../../stash/types.ts";
import type { SizesWorded, UnitWorded } from "./sizes.ts";

/*
 * What `--json` prints, one type for each answer: the published schemas are made from these. Every answer says first what
 * it is. Lengths in it are whole ticks, areas square ticks, money hundredths.
 */

export type { DiagnosticsAnswer } from "../../diagnostics/answer.ts";

/** How every answer with lengths ends. */
export interface Lengths {
  /** Every length of the answer as the maker's ruler reads it, by its ticks: `"73152": "4 1/2 in"`. */
  lengths: Record<string, string>;
}

/** One default that was filled in, in the words of the language. */
export interface AssumptionAnswer {
  /** Fabric name, or empty for the whole file. */
  fabric: string;
  /** What it is about, in trade words: `usable width`, `straightening`, `sold in`. */
  subject: string;
  /** The value, printed as the maker's ruler reads. */
  value: string;
}

/** `plan --json`, `pieces --json` and the file plan.json. Of cloth laid out, only sizes of whole lays are among the lengths. */
export interface PlanAnswer extends Omit<Plan, "diagnostics" | "assumptions">, Lengths {
  /** What the file left open, and what was taken for granted. */
  assumptions: AssumptionAnswer[];
  /** What planning has to say, assumptions apart. */
  diagnostics: WordedDiagnostic[];
  /**
   * In words: what pieces are for, by fabric, piece and use; what else is said of them, by fabric and piece; what units
   * are called and where they go, as in `making`.
   */
  texts: { uses: string[][][]; notes: string[][]; units: { unit: string; uses: string[] }[] };
}

/** What is bought of one fabric, and how far that is proved. */
export type BoughtFabric = Pick<
  FabricPlan,
  "name" | "usable" | "purchase" | "stock" | "mix" | "price" | "bound" | "sturdiness" | "stacked"
>;

/** `buy --json`. */
export interface BuyAnswer extends Head<"crossgrain buy">, Lengths {
  name: string;
  fabrics: BoughtFabric[];
  diagnostics: WordedDiagnostic[];
}

/** One design in one size. */
export interface SizeAnswer extends Omit<SizePlanned, "from"> {
  /** What a bed comes from: `US queen mattress 60 x 80 in, drop 13 in at both sides and foot`; else empty. */
  from: string;
}

/** `buy --sizes --json`. */
export interface BuySizesAnswer extends Head<"crossgrain buy sizes">, Omit<SeveralSizes, "sizes">, Lengths {
  sizes: SizeAnswer[];
  diagnostics: WordedDiagnostic[];
}

/** `sizes --json`: every kind of unit. */
export interface UnitsAnswer extends Head<"crossgrain units"> {
  units: UnitWorded[];
}

/** `sizes UNIT SIZE --json`. */
export interface SizesAnswer extends Head<"crossgrain sizes">, SizesWorded, Lengths {}

/** A change of the file that would save, and what is then bought of each fabric it concerns. */
export interface SavingTold {
  change: Savings["savings"][number]["idea"]["change"];
  difference: Savings["savings"][number]["difference"];
  fabrics: Pick<BoughtIn, "fabric" | "length" | "cost">[];
  text: string;
}

/** `savings --json`. */
export interface SavingsAnswer extends Head<"crossgrain savings">, Lengths {
  name: string;
  /** Ideas that were planned. */
  tried: number;
  savings: SavingTold[];
  diagnostics: WordedDiagnostic[];
}

/** One way of making all units of a kind, the others as the file says. */
export interface MethodTold extends Omit<MethodRow, "why"> {
  /** Why it cannot be made this way; empty when it can. */
  why: string;
}

/** `compare --json`. */
export interface CompareAnswer extends Head<"crossgrain compare">, Omit<Comparison, "rows">, Lengths {
  rows: MethodTold[];
  diagnostics: WordedDiagnostic[];
}

/** An arrangement without its drawn top, whose rows say the same. */
export interface ArrangementTold extends Omit<Arrangement, "planned" | "why" | "same"> {
  name: string;
  /** Others that come out the same to the eye, and so are not planned again. */
  same: { key: string; name: string }[];
  /** Null when the quilt cannot be set so; `why` then says why not. */
  planned:
    | (Omit<Taken, "top" | "notes" | "methods"> & {
        methods: { unit: string; method: string; count: number }[];
        notes: string[];
      })
    | null;
  why: string;
}

/** `arrange --json`. */
export interface ArrangeAnswer
  extends Head<"crossgrain arrange">,
    Omit<Arrangements, "arrangements">,
    Lengths {
  arrangements: ArrangementTold[];
  diagnostics: WordedDiagnostic[];
}

/** `stash show --json`: a row of the table each. */
export interface StashShown extends Head<"crossgrain stash">, Lengths {
  action: "show";
  cloths: (StashCloth & { line: number })[];
  diagnostics: WordedDiagnostic[];
}

/** `stash add --json`. */
export interface StashAdded extends Head<"crossgrain stash">, Lengths {
  action: "add";
  added: StashCloth;
  diagnostics: WordedDiagnostic[];
}

/** `stash take --json`. */
export interface StashTaken extends Head<"crossgrain stash">, Lengths {
  action: "take";
  used: StashCloth[];
  kept: StashCloth[];
  diagnostics: WordedDiagnostic[];
}

/** `stash undo --json`. */
export interface StashUndone extends Head<"crossgrain stash"> {
  action: "undo";
  /** Changes taken back. */
  steps: number;
  /** How many could still be. */
  left: number;
  diagnostics: WordedDiagnostic[];
}

/** `stash suits --json`. */
export interface StashSuits extends Head<"crossgrain stash">, Lengths {
  action: "suits";
  fabrics: Suited[];
  diagnostics: WordedDiagnostic[];
}

export type StashAnswer = StashShown | StashAdded | StashTaken | StashUndone | StashSuits;
