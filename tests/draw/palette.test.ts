import { describe, expect, test } from "vitest";
import {
  contrast,
  INK,
  labelOn,
  luminance,
  PAPER,
  QUIET_INK,
  safeColour,
  WASTE_GROUND,
  WASTE_INK,
} from "../../src/draw/scene/palette.ts";

// W3C, Web Content Accessibility Guidelines (WCAG) 2.2, 2023: relative luminance, contrast ratio,
// success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (graphics 3 : 1).
describe("contrast by the WCAG formula", () => {
  test("black on white is 21 : 1 and white has luminance 1", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(luminance("#ffffff")).toBeCloseTo(1, 10);
  });

  test("a label on any fabric reaches 4.5 : 1", () => {
    for (let r = 0; r <= 255; r += 15) {
      for (let g = 0; g <= 255; g += 15) {
        for (let b = 0; b <= 255; b += 15) {
          const ground = `#${[r, g, b].map((n) => n.toString(16).padStart(2, "0")).join("")}`;
          expect(contrast(ground, labelOn(ground))).toBeGreaterThanOrEqual(4.5);
        }
      }
    }
  });

  test("every text colour reads on the page and the waste ground, and textures show", () => {
    for (const ground of [PAPER, WASTE_GROUND]) {
      for (const ink of [INK, QUIET_INK]) expect(contrast(ground, ink)).toBeGreaterThanOrEqual(4.5);
    }
    expect(contrast(WASTE_GROUND, WASTE_INK)).toBeGreaterThanOrEqual(3);
  });
});

test("a colour that is none is drawn as a quiet grey", () => {
  expect(safeColour(`"/><script>`)).toMatch(/^#[0-9a-f]{6}$/);
  expect(safeColour("#AbCdEf")).toBe("#abcdef");
});
