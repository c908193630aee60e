import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import { blockScene } from "../../src/draw/quilt/draw-block.ts";
import { topScene } from "../../src/draw/quilt/draw-top.ts";
import { ticksOf } from "../../src/draw/quilt/patches.ts";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import type { Scene } from "../../src/draw/scene/scene.ts";
import { layOutQuilt } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { differenceFromGolden, rasterise } from "../support/visual.ts";

const { window } = new JSDOM("");
const folder = fileURLToPath(new URL("../../fixtures/quilts/", import.meta.url));
const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));

function layOut(file: string) {
  const spec = readSpecFile(readFileSync(folder + file, "utf8"), file).value;
  if (spec === null || spec.kind !== "quilt") throw new Error(`${file} is no quilt`);
  const laid = layOutQuilt(spec).value;
  if (laid === null) throw new Error(`${file} cannot be laid out`);
  return { top: laid.top, fabrics: spec.fabrics, ruler: spec.ruler };
}

function expectSound(scene: Scene): void {
  expect(faultsOf(scene)).toEqual([]);
}

/** Corners of every outline in a path of ours: absolute starts, steps from corner to corner. */
function cornersOf(d: string): [number, number][][] {
  return d
    .split("z")
    .filter((part) => part !== "")
    .map((part) => {
      let [x, y] = [0, 0];
      return [...part.matchAll(/([Mhvl])(-?[\d.]+)(?: (-?[\d.]+))?/g)].map(
        ([, step, a, b]): [number, number] => {
          if (step === "M") [x, y] = [Number(a), Number(b)];
          else if (step === "h") x += Number(a);
          else if (step === "v") y += Number(a);
          else [x, y] = [x + Number(a), y + Number(b)];
          return [x, y];
        },
      );
    });
}

describe.each(files)("%s", (file) => {
  const { top, fabrics, ruler } = layOut(file);

  test("the top and its blocks keep their words apart and on the page", () => {
    expectSound(topScene(top, fabrics, ruler, english));
    for (const design of top.designs) expectSound(blockScene(design, fabrics, ruler, english));
  });

  test("every patch lies where the quilt has it, within 0.01 mm", () => {
    const svg = toSvg(topScene(top, fabrics, ruler, english));
    expect(svg.length).toBeLessThan(200_000);
    const document = new window.DOMParser().parseFromString(svg, "image/svg+xml");
    for (const [i, { name }] of fabrics.entries()) {
      const wanted = top.patches.filter(({ fabric }) => fabric === name);
      const d = document.querySelector(`#top-patches-fabric-${i + 1} path`)?.getAttribute("d") ?? "";
      const drawn = cornersOf(d);
      expect(drawn).toHaveLength(wanted.length);
      for (const [n, patch] of wanted.entries()) {
        for (const [k, point] of patch.outline.entries()) {
          expect(Math.abs(drawn[n]![k]![0] - ticksOf(point.x) / 640)).toBeLessThan(0.01);
          expect(Math.abs(drawn[n]![k]![1] - ticksOf(point.y) / 640)).toBeLessThan(0.01);
        }
      }
    }
  });
});

test.each(["nine-stars.yaml", "salsa-on-point.yaml"])(
  "%s looks as it did when it was last looked at",
  (file) => {
    const { top, fabrics, ruler } = layOut(file);
    const name = file.replace(".yaml", "");
    expect(
      differenceFromGolden(`top-${name}`, rasterise(toSvg(topScene(top, fabrics, ruler, english)))),
    ).toBe(0);
    const block = toSvg(blockScene(top.designs[0]!, fabrics, ruler, english));
    expect(differenceFromGolden(`block-${name}`, rasterise(block))).toBe(0);
  },
);
