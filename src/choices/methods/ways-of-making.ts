import { type Listed, listQuiltCuts } from "../../cutlist/index.ts";
import type { CutList } from "../../cutlist/types.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { PlanOptions } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import type { FabricPlan } from "../../plan/types.ts";
import { layOutQuilt, ON_FOUNDATION, type QuiltWork } from "../../quilt/index.ts";
import type { QuiltSpec, StepMinutes } from "../../spec/index.ts";
import { fabricPlanner, type PlanFabrics } from "../plan-fabrics.ts";
import { withoutEasing } from "../quick-solve.ts";
import { faultAmong, type WhyNot } from "../why-not.ts";
import { type Figures, makingFigures } from "./making-figures.ts";
import { type Methods, withMethods } from "./with-methods.ts";

/** A quilt planned one way. */
export interface Made {
  work: QuiltWork;
  lists: CutList[];
  fabrics: FabricPlan[];
  figures: Figures;
  /** How the units of the demands of `work` are really made. */
  madeBy: Listed[];
}

/** The same, or why it cannot be made so. */
type Way =
  | { made: Made; why: null; diagnostics: Diagnostic[] }
  | { made: null; why: WhyNot; diagnostics: Diagnostic[] };

export interface WaysOfMaking {
  (methods: Methods): Promise<Way>;
  planFabrics: PlanFabrics;
  /** What is bought, without easing the work of cutting it. */
  buyFabrics: PlanFabrics;
}

/** Plans one quilt by one set of methods after another; what they share is planned once. */
export function waysOfMaking(
  spec: QuiltSpec,
  options: PlanOptions & { effort: number },
  minutes: StepMinutes,
  solve: Solve,
): WaysOfMaking {
  const planFabrics = fabricPlanner(spec, options, solve);
  const plan = async (methods: Methods): Promise<Way> => {
    const asked = withMethods(spec, methods);
    const laid = layOutQuilt(asked);
    if (laid.value === null) return refused(laid.diagnostics);
    const { work } = laid.value;
    const listed = listQuiltCuts(asked, work);
    if (listed.value === null) return refused(listed.diagnostics);
    const { cutLists: lists, made: madeBy } = listed.value;
    const other = otherwise(methods, work, madeBy, listed.diagnostics);
    if (other !== null) return { made: null, why: other, diagnostics: listed.diagnostics };
    const planned = await planFabrics(lists);
    if (planned.fabrics === null) return refused(planned.diagnostics);
    const { fabrics } = planned;
    const figures = makingFigures({ fabrics, diagnostics: listed.diagnostics }, madeBy, minutes);
    return { made: { work, lists, fabrics, figures, madeBy }, why: null, diagnostics: [] };
  };
  const buyFabrics = fabricPlanner(spec, options, withoutEasing(solve));
  return Object.assign(plan, { planFabrics, buyFabrics });
}

/** Why units are not made by the method asked after all; null when they are. */
function otherwise(
  methods: Methods,
  work: QuiltWork,
  made: readonly Listed[],
  diagnostics: readonly Diagnostic[],
): WhyNot | null {
  // Of the kinds chosen here only: another kind may be made two ways in the file too. What is done instead is of
  // no interest: it stands in a row of its own.
  for (const fault of diagnostics) {
    if (fault.told === "directionByOtherMethod" && Object.hasOwn(methods, fault.facts.unit.kind))
      return { because: "print", fault };
  }
  const kept = work.units.some(({ recipes: [recipe] }) => {
    const { kind = "", method = "" } = recipe ?? {};
    return method === ON_FOUNDATION && Object.hasOwn(methods, kind);
  });
  if (kept) return { because: "foundation" };
  const missed = made.some(({ recipe: { kind, method } }) => (methods[kind] ?? method) !== method);
  // A segment longer than the fabric is wide is cut some other way.
  return missed ? { because: "width" } : null;
}

function refused(diagnostics: Diagnostic[]): Way {
  return { made: null, why: faultAmong(diagnostics), diagnostics };
}
