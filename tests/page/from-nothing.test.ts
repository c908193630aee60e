import { describe, expect, test } from "vitest";
import { drawnFromNothing, patchesOfTop } from "./from-nothing.ts";
import { QUILTS } from "./quilts.ts";

describe("drawn on the page from nothing", () => {
  test.each(QUILTS)("$name: the same patches in the same fabrics", ({ text }) => {
    const drawn = drawnFromNothing(text);
    const [now, wanted] = [patchesOfTop(drawn), patchesOfTop(text)];
    expect(now).toEqual(wanted);
  });
});
