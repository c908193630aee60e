import { Resvg } from "@resvg/resvg-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spread } from "../../src/draw/cutting/labels.ts";
import { textWidth } from "../../src/draw/scene/metrics.ts";
import { cleanText, shorten, wrap } from "../../src/draw/scene/text-fit.ts";
import { FONT } from "../support/visual.ts";

/** Width the font itself gives, by a renderer that reads it: nothing of ours is in this figure. */
function drawnWidth(text: string, bold: boolean): number {
  const escaped = text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
  const weight = bold ? ' font-weight="bold"' : "";
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="4000" height="60"><text xml:space="preserve" x="10" y="40" font-size="20"${weight}>${escaped}</text></svg>`;
  return new Resvg(svg, { font: FONT }).getBBox()?.width ?? 0;
}

describe("text widths", () => {
  test.each([
    "Midnight ferns",
    "6½ × 9½ in",
    "WAVE & <quilt>",
    "Größe 16,5 cm",
    "Ёлка № 7",
    "בד כחול",
    "≈ 40¾ in – 5⁄₁₆",
  ])("%s is never wider than measured, and not much narrower", (text) => {
    for (const bold of [false, true]) {
      const real = drawnWidth(text, bold);
      const measured = textWidth(text, 20, bold);
      expect(measured).toBeGreaterThanOrEqual(real);
      expect(measured).toBeLessThan(real * 1.15 + 4);
    }
  });
});

describe("fitting text", () => {
  test("shortened and wrapped text keeps to its width whatever it is", () => {
    const texts = fc.oneof(fc.string({ unit: "binary", maxLength: 120 }), fc.lorem({ maxCount: 20 }));
    fc.assert(
      fc.property(
        texts,
        fc.integer({ min: 30, max: 400 }),
        fc.integer({ min: 1, max: 3 }),
        (raw, width, most) => {
          const text = cleanText(raw);
          expect(textWidth(shorten(text, width, 9), 9)).toBeLessThanOrEqual(width);
          const lines = wrap(text, width, 9, most);
          expect(lines.length).toBeLessThanOrEqual(most);
          for (const line of lines) expect(textWidth(line, 9)).toBeLessThanOrEqual(width);
        },
      ),
      { seed: 7 },
    );
  });

  test("clean text holds nothing that XML or a reader's eye stumbles over", () => {
    expect(cleanText("a\u0000b\u202ec\ud800d\n\t e ")).toBe("a b c\ufffdd e");
  });
});

test("spread labels keep their order, do not overlap and do not start too early", () => {
  const label = fc.record({
    target: fc.integer({ min: 0, max: 500 }),
    size: fc.integer({ min: 5, max: 30 }),
  });
  fc.assert(
    fc.property(fc.array(label, { maxLength: 40 }), (labels) => {
      const sorted = [...labels].sort((a, b) => a.target - b.target);
      const middles = spread(sorted, 10);
      let end = 10;
      for (const [i, { size }] of sorted.entries()) {
        expect(middles[i]! - size / 2).toBeGreaterThanOrEqual(end - 1e-6);
        end = middles[i]! + size / 2;
      }
    }),
    { seed: 7 },
  );
  expect(spread([{ target: 50, size: 10 }], 0)).toEqual([50]);
});
