import { readFileSync } from "node:fs";
import { quickSolve } from "../../src/choices/quick-solve.ts";
import { solveHere } from "../../src/index.ts";
import { USUAL_OPTIONS } from "../../src/pipeline.ts";
import { type QuiltSpec, readSpecFile } from "../../src/spec/index.ts";

/** The text of a quilt among the fixtures. */
export function textOf(name: string): string {
  return readFileSync(new URL(`../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8");
}

export function quiltOf(text: string): QuiltSpec {
  const { value, diagnostics } = readSpecFile(text, "quilt.yaml");
  if (value === null || value.kind !== "quilt") throw new Error(JSON.stringify(diagnostics));
  return value;
}

export const OPTIONS = { ...USUAL_OPTIONS, budget: 1000 };

/** The engine, each question answered once in all tests of a file; narrower widths are not tried. */
export const solve = quickSolve(solveHere);

/** Eight kinds of unit, one to a block, in a print with an up and five that have none. */
export const SAMPLER = `name: Eight blocks
units: in
all-fabrics: { price: $12 per yd }
fabrics:
  - { name: gulls, print: one-way along }
  - { name: foam }
  - { name: sea }
  - { name: sand }
  - { name: rust }
  - { name: slate }
blocks:
  H: { size: 6, grid: [h h, h h], cells: { h: { half-square triangle: [rust, foam] } } }
  Q: { size: 6, cell: { quarter-square triangle: [rust, sea] } }
  G: { size: 6, grid: [g, g], cells: { g: { flying geese: [gulls, sea] } } }
  D: { size: 6, cell: { square in a square: [sand, sea] } }
  S: { size: 6, cell: { snowball: [sand, slate], corner: 2 } }
  F: { size: 6, grid: [f f, f f], cells: { f: { four-patch: [slate, foam] } } }
  N: { size: 6, cell: { nine-patch: [foam, slate, foam] } }
  R: { size: 6, cell: { rails: [gulls, slate, gulls] } }
setting:
  rows: |
    H Q G D
    S F N R
    N R> H G
`;
