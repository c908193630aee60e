import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { JSDOM } from "jsdom";
import { expect, test } from "vitest";
import { oneIn } from "../support/sweep.ts";
import { invalidIn } from "../support/valid-svg.ts";

const { window } = new JSDOM("");
const parse = (svg: string): Document => new window.DOMParser().parseFromString(svg, "image/svg+xml");
const out = fileURLToPath(new URL("../../out/", import.meta.url));

/** Every drawing the demo has written: all kinds of them. */
const drawings = readdirSync(out, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".svg"),
);

test("every drawing of the demo is valid SVG and under 200 KB", () => {
  expect(drawings.length).toBeGreaterThan(15);
  for (const name of oneIn(3, drawings)) {
    const svg = readFileSync(out + name, "utf8");
    expect(Buffer.byteLength(svg), name).toBeLessThan(200_000);
    expect(invalidIn(parse(svg)), name).toEqual([]);
  }
});

test("what is not SVG is found", () => {
  const faulty = `<svg xmlns="http://www.w3.org/2000/svg" data-x="1"><rect width="3" height="wide" onclick="x"/>
    <g><circle cx="1" cy="2"/><b/></g><title><rect width="1" height="1"/></title><path d="L1 2" fill="redd"/>
    <text x="1" y="2" transform="turn(3)">a</text></svg>`;
  expect(invalidIn(parse(faulty)).sort()).toEqual(
    [
      "data-x on <svg>",
      'height="wide" on <rect>',
      "<circle> without r",
      "<b> is no element of SVG",
      "<b> inside <g>",
      "<rect> inside <title>",
      'd="L1 2" on <path>',
      'fill="redd" on <path>',
      'transform="turn(3)" on <text>',
    ].sort(),
  );
});
