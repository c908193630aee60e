import { expect, test } from "vitest";
import { INCH, workOut } from "../quilt/reading.ts";
import { allSaid } from "../support/in-words.ts";

// derived geometry: a top of 12 1/2 in raw and 4 in beyond it on each side, in cloth 90 in wide: one piece of 20 1/2 in.
test("wadding cut from a fabric of the file reaches beyond the quilt on both sides", () => {
  const { cutLists, diagnostics } = workOut(`name: W
fabrics: [{ name: tar }, { name: fleece, width: 90 in, selvage: 0 }]
blocks: { a: { size: 12, cell: { square: tar } } }
setting: { rows: a }
wadding: { fabric: fleece, overhang: 4 }
`);
  const fleece = cutLists.find(({ fabric }) => fabric.name === "fleece");
  expect(fleece?.pieces.map(({ across, along, count }) => [across / INCH, along / INCH, count])).toEqual([
    [20.5, 20.5, 1],
  ]);
  const said = allSaid(diagnostics)
    .map(({ message }) => message)
    .join(" ");
  expect(said).toContain("20 1/2 x 20 1/2 in");
});
