import { describe, expect, test } from "vitest";
import { drawnFromNothing, patchesOfTop } from "./from-nothing.ts";
import { QUILTS } from "./quilts.ts";

/** Quilts that cannot be drawn on the page from nothing, and why. */
const CANNOT: Readonly<Record<string, string>> = {
  "meadow-geese.yaml":
    // On the quilt's sheet a row has as many blocks as the others, and no gesture lays the setting on its side; opened as
    // a file it is shown, planned and changed as any other.
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
