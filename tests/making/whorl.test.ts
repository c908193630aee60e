import { expect, test } from "vitest";
import { make } from "./fixture.ts";

const IN = 16256;

test("each seam of a whorl is as long as the piece that it is sewn to, seam allowances and all", () => {
  const { making } = make(`fabrics: [{ name: hay }, { name: barn }]
blocks:
  W:
    size: 9
    grid: |
      a - b
      d m |
      | c -
    cells:
      a: { rectangle: hay }
      b: { rectangle: barn }
      c: { rectangle: hay }
      d: { rectangle: barn }
      m: { square: hay }
setting: { rows: W W }
`);
  // derived geometry: four pieces of 3 x 6 in finished about a square of 3: 6 1/2 in each as cut.
  expect(making.partial.map(({ seams, seamLength }) => [seams, seamLength / IN])).toEqual([[4, 26]]);
});
