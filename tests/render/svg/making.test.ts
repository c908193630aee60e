import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { EIGHTH_INCH_RULER } from "../../../src/length/index.ts";
import { assemblyScene, drawAssembly } from "../../../src/render/svg/making-assembly.ts";
import { drawPressing, pressingScene } from "../../../src/render/svg/making-pressing.ts";
import { make } from "../../making/fixture.ts";
import { faultsOf } from "../../support/sound-scene.ts";

const made = (name: string) =>
  make(readFileSync(new URL(`../../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8"));

const fabricsOf = ({ spec }: ReturnType<typeof make>) => spec.fabrics;

test.each(["allotments", "nine-stars", "salsa-on-point", "many-squares"])(
  "%s is drawn whole, its words apart and on the page",
  (name) => {
    const quilt = made(name);
    const scenes = [
      pressingScene(quilt.top, quilt.making, EIGHTH_INCH_RULER),
      assemblyScene(quilt.top, quilt.making, fabricsOf(quilt), EIGHTH_INCH_RULER),
    ];
    for (const scene of scenes) {
      if (scene === null) throw new Error("nothing drawn");
      expect(faultsOf(scene)).toEqual([]);
    }
  },
);

test("both ways of pressing a block are drawn and lettered", () => {
  const quilt = made("nine-stars");
  const svg = drawPressing(quilt.top, quilt.making, EIGHTH_INCH_RULER) ?? "";
  expect(svg).toContain("star, pressed A: make 5");
  expect(svg).toContain("star, pressed B: make 4");
  expect(svg.match(/>A<\/text>/g)).toHaveLength(5);
  expect(svg.match(/>B<\/text>/g)).toHaveLength(4);
});

test("rows are numbered and the backing shows its panels", () => {
  const quilt = made("allotments");
  const svg = drawAssembly(quilt.top, quilt.making, fabricsOf(quilt), EIGHTH_INCH_RULER) ?? "";
  for (const row of [1, 11]) expect(svg).toContain(`>${row}</text>`);
  expect(svg).not.toContain(">12</text>");
  expect(svg).toContain("panel 2");
  expect(svg).not.toContain("panel 3");
});
