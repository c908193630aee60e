import { expect, test } from "vitest";
import { make } from "./fixture.ts";

// Derived geometry: in a four-patch the level seams of its two columns go contrary ways, so that neighbours in a row nest
// when pressed alike; the upright seam between the columns must go the contrary way in the one below. Three across and two
// down are therefore pressed in two ways, row by row: places 1 to 3, and 4 to 6, as the block is read along its rows.
test("places of units pressed in several ways are counted along the rows", () => {
  const { making } = make(`name: Places
fabrics: [{ name: tar }, { name: foam }]
blocks:
  net:
    size: 9 x 6
    grid: |
      f f f
      f f f
    cells: { f: { four-patch: [tar, foam] } }
setting: { rows: net, fill: 1 x 1 }
`);
  const [own] = making.unitPressing;
  const which = own?.ways.flatMap(({ places }) => places.map((each) => each.which?.join() ?? "all")).sort();
  expect(which).toEqual(["1,2,3", "4,5,6"]);
  expect(own?.ways.map(({ count }) => count)).toEqual([3, 3]);
});
