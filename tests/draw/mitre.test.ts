import { expect, test } from "vitest";
import { mitreScene, mitreShape, mitreSketches } from "../../src/draw/finish/draw-mitre.ts";
import { type LineNode, type SceneNode, textsOf } from "../../src/draw/scene/scene.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { make } from "../making/fixture.ts";

const QUILT = (corners: string): string => `fabrics: [{ name: sea }, { name: sand, colour: "#d8c49a" }]
blocks: { b: { size: 6, cell: { square: sea } } }
setting: { rows: "b b", fill: 2 x 2 }
borders: [{ fabric: sand, width: 3, corners: ${corners} }]
`;

const stitches = (nodes: readonly SceneNode[]): LineNode[] =>
  nodes.filter((node): node is LineNode => node.kind === "line");

test("a mitred corner: stitches end a seam from it, the mitre leaves there at 45 degrees, the border's corner is its end", () => {
  const { making, spec } = make(QUILT("mitred"));
  const [round] = making.borders;
  if (round === undefined) throw new Error("no border");
  const shape = mitreShape(round, making.seam);
  const [cx, cy] = shape.corner;
  // A quarter inch to three: the seam keeps to the border's scale, or is as small as can be seen.
  expect(shape.seam / shape.width).toBeCloseTo(Math.max(0.25 / 3, 4 / shape.width), 6);
  const [sewn, folded, opened] = mitreSketches(shape, "#ffffff", ["a", "b", "c"]).map(({ nodes }) =>
    nodes(0, 0),
  );
  const [along, up] = stitches(sewn ?? []);
  expect([along?.x2, along?.y2]).toEqual([cx - shape.seam, cy]);
  expect([up?.x1, up?.y1]).toEqual([cx, cy + shape.seam]);
  const [, mitre] = stitches(folded ?? []);
  expect([mitre?.x1, mitre?.y1]).toEqual([cx - shape.seam, cy]);
  expect((mitre?.x2 ?? 0) - (mitre?.x1 ?? 0)).toBeCloseTo((mitre?.y1 ?? 0) - (mitre?.y2 ?? 0), 9);
  // Right across the strip, from its seam to its outer edge.
  expect((mitre?.y1 ?? 0) - (mitre?.y2 ?? 0)).toBeCloseTo(shape.width, 9);
  expect(stitches(opened ?? [])).toEqual([]);
  const scene = mitreScene(making, spec.fabrics, EIGHTH_INCH_RULER, english);
  const said = textsOf(scene?.nodes ?? []).map(({ text }) => text);
  expect(said.join(" ")).toContain("Sew both strips on");
  expect(mitreScene(make(QUILT("sides first")).making, spec.fabrics, EIGHTH_INCH_RULER, english)).toBeNull();
});
