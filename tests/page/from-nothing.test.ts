import { describe, expect, test } from "vitest";
import { drawnFromNothing, patchesOfTop } from "./from-nothing.ts";
import { QUILTS } from "./quilts.ts";

/** Quilts that cannot be drawn on the page from nothing, and why. */
const CANNOT: Readonly<Record<string, string>> = {
  "meadow-geese.yaml":
    "its rows hold unequal numbers of blocks of unequal lengths, and the setting lies on its side",
};

describe("drawn on the page from nothing", () => {
  test.each(QUILTS)("$name: the same patches in the same fabrics", ({ name, text }) => {
    const drawn = drawnFromNothing(text);
    const [now, wanted] = [patchesOfTop(drawn), patchesOfTop(text)];
    if (CANNOT[name] === undefined) expect(now).toEqual(wanted);
    else expect(now).not.toEqual(wanted);
  });
});
