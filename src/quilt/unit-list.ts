import { fromInteger } from "../length/rational.ts";
import { plainDesign } from "./units/design.ts";
import { UNIT_KINDS } from "./units/registry.ts";

/** A kind of unit as a maker chooses it. Plain data. */
export interface UnitListed {
  name: string;
  /** Other trade names that are understood. */
  alsoCalled: readonly string[];
  /** Its parts in the order fabrics are given; empty when the file names them. */
  parts: readonly string[];
  /** The usual method first. */
  methods: string[];
}

/** Every kind of unit a file may name, with the order of its fabrics and its methods. */
export function unitList(): UnitListed[] {
  const usual = plainDesign(fromInteger(4), fromInteger(4));
  return UNIT_KINDS.map((kind) => ({
    name: kind.name,
    alsoCalled: kind.alsoCalled,
    parts: kind.reads.includes("patches") ? [] : kind.roles(usual),
    methods: kind.methods.map(({ name }) => name),
  }));
}
