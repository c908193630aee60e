import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import type { Plan } from "../../src/plan/types.ts";
import { allSaid } from "./in-words.ts";

/*
 * Invented quilts whose patches are cut with templates: mirror images, a print
 * with an up, points blunted, a mark where a neighbour's corner comes, and some too large for a sheet.
 */
export const SAILS = `name: Sails
units: in
all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - { name: sky, colour: "#a9cbe0", print: one-way along }
  - { name: canvas, colour: "#f2ead8" }
  - { name: sea, colour: "#1f4e6b" }
blocks:
  boat:
    size: 8
    cell:
      drawn-on: 8 x 8
      drawn patches: { sky: sky, jib: canvas, main: canvas, hull: sea, sea: sea }
      patches:
        - { part: sky,  corners: [[0, 0], [4, 0], [1, 5], [0, 5]] }
        - { part: jib,  corners: [[4, 0], [4, 5], [1, 5]] }
        - { part: main, corners: [[4, 0], [7, 5], [4, 5]] }
        - { part: sky,  corners: [[4, 0], [8, 0], [8, 5], [7, 5]] }
        - { part: sea,  corners: [[0, 5], [1, 5], [2, 7], [0, 7]] }
        - { part: hull, corners: [[1, 5], [7, 5], [6, 7], [2, 7]] }
        - { part: sea,  corners: [[7, 5], [8, 5], [8, 7], [6, 7]] }
        - { part: sea,  corners: [[0, 7], [8, 7], [8, 8], [0, 8]] }
  peaks:
    size: 8
    grid: |
      l r
    columns: [4, 4]
    lines: [8]
    cells:
      l:
        drawn patches: { peak: canvas, side: sea }
        patches:
          - { part: peak, corners: [[0, 8], [2, 0], [4, 8]] }
          - { part: side, corners: [[0, 0], [2, 0], [0, 8]] }
          - { part: side, corners: [[2, 0], [4, 0], [4, 8]] }
      r:
        drawn patches: { peak: canvas, side: sea }
        patches:
          - { part: peak, corners: [[0, 0], [4, 0], [2, 8]] }
          - { part: side, corners: [[0, 0], [2, 8], [0, 8]] }
          - { part: side, corners: [[4, 0], [4, 8], [2, 8]] }
setting:
  rows: |
    boat peaks
    peaks boat
`;

export const LARGE = `name: Large sails
units: in
all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - { name: canvas, colour: "#f2ead8" }
  - { name: sea, colour: "#1f4e6b" }
blocks:
  sail:
    size: 16
    cell:
      drawn patches: { wing: canvas, sail: sea, rest: canvas }
      patches:
        - { part: wing, corners: [[0, 0], [16, 0], [12, 8], [0, 12]] }
        - { part: sail, corners: [[16, 0], [16, 16], [12, 8]] }
        - { part: rest, corners: [[0, 12], [12, 8], [16, 16], [0, 16]] }
  field:
    size: 16
    cell: { half-square triangle: [canvas, sea], method: templates }
setting:
  rows: sail field
`;

const planned = new Map<string, Promise<Plan>>();

/** The plan of such a quilt, searched for a moment only; the same object to all tests of a file. */
export function templatePlan(text: string): Promise<Plan> {
  const known = planned.get(text);
  if (known !== undefined) return known;
  const plan = planQuilt(text, "sails.yaml", { ...USUAL_OPTIONS, budget: 60 }, solveHere).then(
    ({ value, diagnostics }) => {
      if (value === null)
        throw new Error(
          allSaid(diagnostics)
            .map(({ message }) => message)
            .join("\n"),
        );
      return value;
    },
  );
  planned.set(text, plan);
  return plan;
}

export type Template = NonNullable<Plan["templates"]>[number];

/** Templates of a plan by name, in order. */
export const templatesOf = ({ templates = [] }: Plan): Template[] => templates;
