import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import { allParts } from "../../src/draw/cutting/cloth.ts";
import { fabricScene } from "../../src/draw/cutting/draw-fabric.ts";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import type { Part } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { oneIn } from "../support/sweep.ts";
import { invalidIn } from "../support/valid-svg.ts";
import { GALLERY } from "../support/visual-gallery.ts";

const { window } = new JSDOM("");
interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

function parse(svg: string): Document {
  const document = new window.DOMParser().parseFromString(svg, "image/svg+xml");
  expect(document.getElementsByTagName("parsererror")).toHaveLength(0);
  return document;
}

function attribute(element: Element, name: string): number {
  return Number(element.getAttribute(name));
}

function rectsOf(group: Element): Rect[] {
  return Array.from(group.children, (rect) => ({
    x: attribute(rect, "x"),
    y: attribute(rect, "y"),
    width: attribute(rect, "width"),
    height: attribute(rect, "height"),
  }));
}

const MILLIMETRE = 640;

function key(part: Part): string {
  return [part.x, part.y, part.across, part.along].join(" ");
}

/** A drawn rectangle as ticks of the plan, and how far it is from whole ticks of some part, in mm. */
function nearest(rect: Rect, parts: readonly Part[]): { part: Part | undefined; off: number } {
  let best: { part: Part | undefined; off: number } = { part: undefined, off: Number.POSITIVE_INFINITY };
  for (const part of parts) {
    const off = Math.max(
      Math.abs(rect.x - part.x / MILLIMETRE),
      Math.abs(rect.y - part.y / MILLIMETRE),
      Math.abs(rect.width - part.across / MILLIMETRE),
      Math.abs(rect.height - part.along / MILLIMETRE),
    );
    if (off < best.off) best = { part, off };
  }
  return best;
}

describe.each(oneIn(2, GALLERY))("$name", ({ plan, options }) => {
  test("no text overlaps another, leaves its frame or the page, or has a line through it", async () => {
    expect(faultsOf(fabricScene(await plan(), 0, english, options))).toEqual([]);
  });

  test("every piece drawn lies where the plan has it, within 0.01 mm", async () => {
    const made = await plan();
    const scene = fabricScene(made, 0, english, options);
    const document = parse(toSvg(scene));
    const lays = [...new Set(made.fabrics[0]!.lays.map((lay) => JSON.stringify(lay)))].map((text) =>
      JSON.parse(text),
    );
    const drawn = new Set<string>();
    for (const group of document.querySelectorAll('[id$="-pieces"]')) {
      const lay = lays[Number(/lay-(\d+)-/.exec(group.id)?.[1]) - 1];
      const parts = allParts(lay.root).filter((part) => part.piece !== null);
      for (const rect of rectsOf(group)) {
        const { part, off } = nearest(rect, parts);
        expect(off).toBeLessThan(0.01);
        drawn.add(`${lay.name} ${lay.across} ${key(part!)}`);
      }
    }
    const wanted = lays.flatMap((lay) =>
      allParts(lay.root)
        .filter((part) => part.piece !== null)
        .map((part) => `${lay.name} ${lay.across} ${key(part)}`),
    );
    if (options?.view === "full") expect(drawn.size).toBe(new Set(wanted).size);
    else expect(drawn.size).toBeLessThanOrEqual(wanted.length);
    expect(wanted).toEqual(expect.arrayContaining([...drawn]));
  });

  test("cloth is drawn to one scale, and each piece of page stands for one piece of cloth", async () => {
    const scene = fabricScene(await plan(), 0, english, options);
    const document = parse(toSvg(scene));
    const scales = new Set<string>();
    for (const group of document.querySelectorAll('[id*="-cloth-"][transform]')) {
      const match = /^translate\(([-\d.]+) ([-\d.]+)\) scale\(([\d.]+)\)$/.exec(
        group.getAttribute("transform") ?? "",
      );
      expect(match).not.toBeNull();
      scales.add(match![3]!);
    }
    expect(scales.size).toBe(1);
  });

  test("the same plan gives the same bytes, clean and under 200 KB", async () => {
    const made = await plan();
    const svg = toSvg(fabricScene(made, 0, english, options));
    expect(toSvg(fabricScene(made, 0, english, options))).toBe(svg);
    expect(svg.length).toBeLessThan(200_000);
    expect(svg).not.toMatch(/svgjs|data-|NaN|undefined|&nbsp;|<script/);
    expect(svg.match(/xmlns=/g)).toHaveLength(1);
    expect(svg).not.toMatch(/\d\.\d{7,}/);
    const document = parse(svg);
    expect(invalidIn(document)).toEqual([]);
    const ids = Array.from(document.querySelectorAll("[id]"), (element) => element.id);
    expect(new Set(ids).size).toBe(ids.length);
    const root = document.documentElement;
    expect(root.getAttribute("role")).toBe("img");
    expect(root.querySelector(":scope > title")?.textContent).not.toBe("");
    expect(root.querySelector(":scope > desc")?.textContent).not.toBe("");
    for (const [, target] of svg.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(target);
  });
});
