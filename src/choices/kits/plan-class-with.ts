import type { Outcome } from "../../diagnostics/types.ts";
import { type PlanOptions, planSpec } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import type { Spec } from "../../spec/index.ts";
import { planWith, type Sourced, type Sources } from "../plan-with.ts";
import { type ClassPlanned, planClass } from "./plan-class.ts";
import type { KitsAsked } from "./read-kits.ts";

/** A plan with the class it is the cutting of. */
export interface ClassSourced extends Sourced {
  /** Null where no sorts of kits were asked for. */
  planned: ClassPlanned | null;
}

/** What a plan is made with besides its file: how hard to search, and the cloth to start from. */
export interface MadeWith {
  options: PlanOptions;
  sources: Sources;
}

/**
 * The plan of a file from the cloth there is, as `planWith` makes it: of one quilt, or of a class of several sorts of kits.
 * @param kits sorts of kits to be cut together; null for one quilt, or kits that are alike
 */
export async function planClassWith(
  spec: Spec,
  kits: readonly KitsAsked[] | null,
  { options, sources }: MadeWith,
  solve: Solve,
): Promise<Outcome<ClassSourced>> {
  let planned: ClassPlanned | null = null;
  const made = await planWith(spec, options, sources, solve, async (asked, withCloth, by) => {
    if (kits === null || spec.kind !== "quilt") return planSpec(asked, withCloth, by);
    const { value, diagnostics } = await planClass(spec, kits, withCloth, by);
    planned = value;
    return { value: value?.batch ?? null, diagnostics };
  });
  return { ...made, value: made.value === null ? null : { ...made.value, planned } };
}
