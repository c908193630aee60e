import { INCH } from "../../length/index.ts";
import type { Ticks } from "../../length/types.ts";
import { beforeWashing, usableWidth } from "../../stock/index.ts";
import type { Spec } from "../spec.ts";

/** Wider cloth is bought wide on purpose, for backings. Common practice, no source. */
const WIDE = 60 * INCH;

/** What is asked of the bolts; null: as the file says. */
export interface BoltsAsked {
  /** Width that can be cut, after washing and without selvages. */
  usable: Ticks | null;
  /** Where they end. Default: as the file says. */
  bolt?: Ticks | null;
}

/**
 * The same file on bolts of another usable width or length. Cloth of more than 60 in keeps its width, and printed
 * foundation is as it is.
 */
export function onBoltsOf<S extends Spec>({ usable, bolt = null }: BoltsAsked, spec: S): S {
  if (usable === null && bolt === null) return spec;
  const fabrics = spec.fabrics.map((fabric) => {
    if (spec.kind === "quilt" && spec.foundation?.fabric.word === fabric.name) return fabric;
    const ends = bolt === null ? fabric : { ...fabric, bolt: { length: bolt, told: true } };
    if (usable === null || usableWidth(fabric) > WIDE) return ends;
    return { ...ends, width: beforeWashing(usable, fabric.shrinkAcross) + 2 * fabric.selvage };
  });
  if (usable === null) return { ...spec, fabrics };
  const assumptions = [
    ...spec.assumptions.filter(({ of }) => of.is !== "usable-width"),
    { fabric: "", of: { is: "usable-width-tried" as const, usable } },
  ];
  return { ...spec, fabrics, assumptions };
}
