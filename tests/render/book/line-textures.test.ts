import { expect, test } from "vitest";
import { bookOf } from "../../../src/render/book/index.ts";
import { lineTextures } from "../../../src/render/book/line-textures.ts";
import { english } from "../../../src/words/index.ts";
import { quiltPlan } from "./book-plans.ts";

/** Shapes of a drawing that are filled with a tile, and clipped groups in its place. */
const count = (svg: string, what: RegExp): number => svg.match(what)?.length ?? 0;

test("every tiled ground of a book's drawings becomes lines clipped to the same shapes", async () => {
  const { cover, sections } = bookOf(await quiltPlan(), english);
  const drawings = sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => {
      if ("svg" in block) return [block.svg];
      return block.kind === "cards" ? block.cards.flatMap((card) => card.pictures.map(({ svg }) => svg)) : [];
    }),
  );
  let tiled = 0;
  for (const svg of [cover.svg, ...drawings]) {
    const lined = lineTextures(svg);
    tiled += count(svg, /fill="url\(#/g);
    expect(lined).not.toMatch(/<pattern|fill="url/);
    expect(count(lined, /<g clip-path="url\(#/g)).toBe(count(svg, /fill="url\(#/g));
    const clips = [...lined.matchAll(/<clipPath id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(clips).size).toBe(clips.length);
    expect(lined).not.toContain("NaN");
  }
  expect(tiled).toBeGreaterThan(20);
});

test("lines lie where the tiles had them", () => {
  const tile = (marks: string): string =>
    `<svg><defs><pattern id="t" patternUnits="userSpaceOnUse" width="8" height="8" patternTransform="scale(2)">${marks}</pattern></defs><path d="M10 10h30v30h-30z" fill="url(#t)" stroke="none"/></svg>`;
  // Derived geometry: tiles are 16 units wide, so a line at 4 in the tile lies at 8, 24, 40.
  expect(
    lineTextures(tile('<line x1="0" y1="4" x2="8" y2="4" stroke="#111" stroke-width="0.5"/>')),
  ).toContain('<path d="M10 8H40M10 24H40M10 40H40" fill="none" stroke="#111" stroke-width="1"/>');
  // A dot of 1 about (2, 2): from 2 to 6 across, its line at 4, 20 and 36 down, drawn 4 of 16.
  const dots = lineTextures(tile('<circle cx="2" cy="2" r="1" fill="#111"/>'));
  expect(dots).toContain('d="M2 4H40M2 20H40M2 36H40"');
  expect(dots).toContain('stroke-width="4" stroke-dasharray="4 12"');
  // Slanting up: x + y = 8 in the tile, 16 in the drawing, and 16 on.
  const slant = lineTextures(tile('<line x1="-1" y1="9" x2="9" y2="-1" stroke="#111" stroke-width="0.5"/>'));
  expect(slant).toContain('d="M10 22L22 10M10 38L38 10M24 40L40 24"');
});
