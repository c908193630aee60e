import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import { textsOf } from "../../src/draw/scene/scene.ts";
import { assemblyScene, drawAssembly } from "../../src/draw/sewing/making-assembly.ts";
import { blocksScene } from "../../src/draw/sewing/making-blocks.ts";
import { bordersScene } from "../../src/draw/sewing/making-borders.ts";
import { finishScene } from "../../src/draw/sewing/making-finish.ts";
import { drawPressing, pressingScene } from "../../src/draw/sewing/making-pressing.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { EVERY_BORDER, make } from "../making/fixture.ts";
import { faultsOf } from "../support/sound-scene.ts";

const made = (name: string) =>
  make(readFileSync(new URL(`../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8"));

const fabricsOf = ({ spec }: ReturnType<typeof make>) => spec.fabrics;

const quilts = {
  ...Object.fromEntries(
    ["allotments", "nine-stars", "salsa-on-point", "many-squares", "meadow-geese"].map((name) => [
      name,
      () => made(name),
    ]),
  ),
  "every border": () => make(EVERY_BORDER),
};

test.each(Object.entries(quilts))("%s is drawn whole, its words apart and on the page", (_, quilt) => {
  const { top, making, ...worked } = quilt();
  const fabrics = worked.spec.fabrics;
  const scenes = [
    blocksScene(top, making, fabrics, EIGHTH_INCH_RULER, english),
    assemblyScene({ top, making, fabrics, ruler: EIGHTH_INCH_RULER }, english),
    pressingScene({ top, making, fabrics, ruler: EIGHTH_INCH_RULER }, english),
    bordersScene({ top, making, fabrics, ruler: EIGHTH_INCH_RULER }, english),
    finishScene(top, making, EIGHTH_INCH_RULER, english),
  ].filter((scene) => scene !== null);
  expect(scenes.length).toBeGreaterThan(1);
  for (const scene of scenes) expect(faultsOf(scene)).toEqual([]);
});

test("both ways of pressing a block are drawn and numbered", () => {
  const quilt = made("nine-stars");
  const { top, making } = quilt;
  const svg =
    drawPressing({ top, making, fabrics: fabricsOf(quilt), ruler: EIGHTH_INCH_RULER }, english) ?? "";
  expect(svg).toContain("star 1: make 5");
  expect(svg).toContain("star 2: make 4");
  expect(svg.match(/>1<\/text>/g)).toHaveLength(5);
  expect(svg.match(/>2<\/text>/g)).toHaveLength(4);
});

test("on a page of words a map without room for its arrows is left to the words, or shows its numbers alone", () => {
  const text = readFileSync(new URL("../../fixtures/quilts/nine-stars.yaml", import.meta.url), "utf8");
  const mapOf = (fill: string) => {
    const { top, making, spec } = make(text.replace("fill: 3 x 3", `fill: ${fill}`));
    const standing = { bare: true, width: 350, tallest: 200 };
    return pressingScene({ top, making, fabrics: spec.fabrics, ruler: EIGHTH_INCH_RULER }, english, standing);
  };
  const { arrows } = english.drawings.sewing.pressing;
  const told = (fill: string) => textsOf(mapOf(fill)?.nodes ?? []).map(({ text }) => text);
  expect(told("3 x 3").join(" ")).toContain(arrows.slice(0, 40));
  // A plain comparison: what is drawn is too long to be printed where this fails.
  expect(mapOf("6 x 9\n  sashing: { width: 1 1/2, fabric: boats }") === null).toBe(true);
  const { top, making, spec } = made("allotments");
  const standing = { bare: true, width: 350, tallest: 200 };
  const few = pressingScene(
    { top, making, fabrics: spec.fabrics, ruler: EIGHTH_INCH_RULER },
    english,
    standing,
  );
  const words = textsOf(few?.nodes ?? []).map(({ text }) => text);
  expect(words.filter((word) => word === "1" || word === "2")).toHaveLength(10);
  expect(words.join(" ")).not.toContain(arrows.slice(0, 40));
});

test("rows are numbered and the backing shows its panels", () => {
  const quilt = made("allotments");
  const { top, making } = quilt;
  const svg =
    drawAssembly({ top, making, fabrics: fabricsOf(quilt), ruler: EIGHTH_INCH_RULER }, english) ?? "";
  for (const row of [1, 11]) expect(svg).toContain(`>${row}</text>`);
  expect(svg).not.toContain(">12</text>");
  const finishing = toSvg(finishScene(quilt.top, quilt.making, EIGHTH_INCH_RULER, english) ?? nothing());
  expect(finishing).toContain("panel 2");
  expect(finishing).not.toContain("panel 3");
});

test("borders are numbered in the order of sewing, mitred strips together", () => {
  const { top, making, spec } = make(EVERY_BORDER);
  const quilt = { top, making, fabrics: spec.fabrics, ruler: EIGHTH_INCH_RULER };
  const scene = bordersScene(quilt, english) ?? nothing();
  const words = textsOf(scene.nodes).map(({ text }) => text);
  // Two marks for each pair and one in the list; the mitred four are one step.
  for (const number of [1, 2, 3, 5, 6])
    expect(words.filter((word) => word === String(number))).toHaveLength(3);
  expect(words.filter((word) => word === "7")).toHaveLength(5);
  expect(words).toContain("tops, top and bottom: 25½ in long, cut 2 in longer and trimmed");
});

test("every joining of a block opens between its parts", () => {
  const { top, making, spec } = made("nine-stars");
  const svg = toSvg(blocksScene(top, making, spec.fabrics, EIGHTH_INCH_RULER, english) ?? nothing());
  expect(svg).toContain("star: make 9, 8 × 8 in");
  for (const row of [1, 2, 3]) expect(svg).toContain(`>${row}</text>`);
});

function nothing(): never {
  throw new Error("nothing drawn");
}
