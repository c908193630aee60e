import { INCH } from "../length/index.ts";
import type { Ticks } from "../length/types.ts";
import { beforeWashing, usableWidth } from "../stock/index.ts";
import type { Spec } from "./spec.ts";

/** Wider cloth is bought wide on purpose, for backings. Common practice, no source. */
const WIDE = 60 * INCH;

/**
 * The same file on bolts of another usable width. Cloth of more than 60 in, and printed foundation, stay as they are.
 * @param usable width that can be cut, after washing and without selvages
 */
export function onBoltsOf(usable: Ticks, spec: Spec): Spec {
  const fabrics = spec.fabrics.map((fabric) => {
    const foundation = spec.kind === "quilt" && spec.foundation?.fabric.word === fabric.name;
    if (usableWidth(fabric) > WIDE || foundation) return fabric;
    return { ...fabric, width: beforeWashing(usable, fabric.shrinkAcross) + 2 * fabric.selvage };
  });
  const assumptions = [
    ...spec.assumptions.filter(({ of }) => of.is !== "usable-width"),
    { fabric: "", of: { is: "usable-width-tried" as const, usable } },
  ];
  return { ...spec, fabrics, assumptions };
}
