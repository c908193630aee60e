import { findUnitKind } from "../../quilt/index.ts";
import type { BlockSpec, QuiltSpec } from "../../spec/index.ts";

/** Method by unit kind, both by their own names. */
export type Methods = Readonly<Record<string, string>>;

/** The same quilt with every unit of these kinds made this way, whatever the file or a cell says of them. */
export function withMethods(spec: QuiltSpec, methods: Methods): QuiltSpec {
  const named = (unit: string) => methods[findUnitKind(unit)?.name ?? ""];
  const cellsOf = (block: BlockSpec): BlockSpec => ({
    ...block,
    cells: block.cells.map((cell) => (named(cell.unit) === undefined ? cell : { ...cell, method: null })),
  });
  return {
    ...spec,
    methods: [
      ...spec.methods.filter(({ unit }) => named(unit) === undefined),
      ...Object.entries(methods).map(([unit, method]) => ({ unit, method, path: "methods", at: null })),
    ],
    blocks: spec.blocks.map(cellsOf),
  };
}
