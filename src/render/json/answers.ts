import type { Arrangement, Arrangements } from "../../choices/arrange-blocks.ts";
import type { Taken } from "../../choices/arranged-figures.ts";
import type { Comparison } from "../../choices/comparison.ts";
import type { SeveralSizes } from "../../choices/several-sizes.ts";
import type { Suited } from "../../choices/suits.ts";
import type { Head } from "../../diagnostics/answer.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { UnitListed } from "../../quilt/unit-list.ts";
import type { UnitSizes } from "../../quilt/unit-sizes.ts";
import type { BoughtIn, Savings } from "../../savings/try-ideas.ts";
import type { StashCloth } from "../../stash/types.ts";

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

/** `plan --json`, `pieces --json` and the file plan.json. Of cloth laid out, only sizes of whole lays are among the lengths. */
export interface PlanAnswer extends Plan, Lengths {}

/** What is bought of one fabric, and how far that is proved. */
export type BoughtFabric = Pick<
  FabricPlan,
  "name" | "usable" | "purchase" | "stock" | "mix" | "price" | "bound" | "sturdiness" | "stacked"
>;

/** `buy --json`. */
export interface BuyAnswer extends Head<"crossgrain buy">, Lengths {
  name: string;
  fabrics: BoughtFabric[];
  diagnostics: Diagnostic[];
}

/** `buy --sizes --json`. */
export interface BuySizesAnswer extends Head<"crossgrain buy sizes">, SeveralSizes, Lengths {
  diagnostics: Diagnostic[];
}

/** `sizes --json`: every kind of unit. */
export interface UnitsAnswer extends Head<"crossgrain units"> {
  units: UnitListed[];
}

/** `sizes UNIT SIZE --json`. */
export interface SizesAnswer extends Head<"crossgrain sizes">, UnitSizes, Lengths {}

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
  diagnostics: Diagnostic[];
}

/** `compare --json`. */
export interface CompareAnswer extends Head<"crossgrain compare">, Comparison, Lengths {
  diagnostics: Diagnostic[];
}

/** An arrangement without its drawn top, whose rows say the same. */
export interface ArrangementTold extends Omit<Arrangement, "planned"> {
  /** Null when the quilt cannot be set so; `why` then says why not. */
  planned: Omit<Taken, "top"> | null;
}

/** `arrange --json`. */
export interface ArrangeAnswer
  extends Head<"crossgrain arrange">,
    Omit<Arrangements, "arrangements">,
    Lengths {
  arrangements: ArrangementTold[];
  diagnostics: Diagnostic[];
}

/** `stash show --json`: a row of the table each. */
export interface StashShown extends Head<"crossgrain stash">, Lengths {
  action: "show";
  cloths: (StashCloth & { line: number })[];
  diagnostics: Diagnostic[];
}

/** `stash add --json`. */
export interface StashAdded extends Head<"crossgrain stash">, Lengths {
  action: "add";
  added: StashCloth;
  diagnostics: Diagnostic[];
}

/** `stash take --json`. */
export interface StashTaken extends Head<"crossgrain stash">, Lengths {
  action: "take";
  used: StashCloth[];
  kept: StashCloth[];
  diagnostics: Diagnostic[];
}

/** `stash undo --json`. */
export interface StashUndone extends Head<"crossgrain stash"> {
  action: "undo";
  /** Changes taken back. */
  steps: number;
  /** How many could still be. */
  left: number;
  diagnostics: Diagnostic[];
}

/** `stash suits --json`. */
export interface StashSuits extends Head<"crossgrain stash">, Lengths {
  action: "suits";
  fabrics: Suited[];
  diagnostics: Diagnostic[];
}

export type StashAnswer = StashShown | StashAdded | StashTaken | StashUndone | StashSuits;
