import { beforeEach, describe, expect, test } from "vitest";
import { setRepeat } from "../../src/edits/fabric-edits.ts";
import { readModel } from "../../src/edits/model.ts";
import { historyOf } from "../../src/page/history.ts";
import {
  boxOf,
  inBox,
  NO_PHOTOS,
  type Photo,
  shownAs,
  shownBy,
  turnedOn,
  WHOLE,
} from "../../src/page/photos.ts";
import { forgetTextures, textureNumber } from "../../src/page/ui/fabric/texture-numbers.ts";
import * as state from "../../src/page/ui/state.ts";
import { checkQuilt } from "../../src/pipeline.ts";
import { quiltNamed } from "./quilts.ts";

const photo: Photo = {
  picture: new Blob(),
  ...{ wide: 800, high: 600, across: 200, told: false, turn: 0, up: 0, box: WHOLE },
};

describe("a photo of fabric", () => {
  test("shows as much of it as is told, however it lies", () => {
    expect(shownBy(photo)).toEqual({ across: 200, down: 150 });
    expect(shownBy(turnedOn(photo))).toEqual({ across: 150, down: 200 });
    expect(shownBy(shownAs(photo, 400))).toEqual({ across: 400, down: 300 });
    // Told of the picture as it lies turned.
    expect(shownBy(shownAs(turnedOn(photo), 300))).toEqual({ across: 300, down: 400 });
  });

  test("keeps in its box what is in it when it is turned, and is itself again after four quarters", () => {
    const boxed = { ...photo, box: boxOf(0.1, 0.2, 0.4, 0.9) };
    const once = turnedOn(boxed);
    // A quarter clockwise: what was at the left edge is at the top, what was at the foot is at the left.
    expect(once.box.x).toBeCloseTo(0.1);
    expect(once.box.y).toBeCloseTo(0.1);
    expect(inBox(once).across).toBeCloseTo(inBox(boxed).down);
    const [again, { box }] = [turnedOn(turnedOn(turnedOn(once))), boxed];
    expect([again.turn, again.up]).toEqual([0, 0]);
    for (const side of ["x", "y", "wide", "high"] as const) expect(again.box[side]).toBeCloseTo(box[side]);
  });

  test("has a box that stays inside it, whatever corners are tapped", () => {
    expect(boxOf(0.9, 0.8, 0.5, 0.2)).toEqual({ x: 0.5, y: 0.2, wide: 0.4, high: expect.closeTo(0.6) });
    const thin = boxOf(1.4, -3, 1.2, -3);
    expect(thin.x + thin.wide).toBeLessThanOrEqual(1);
    expect(thin.y).toBe(0);
    expect(thin.high).toBeGreaterThan(0);
  });

  test("is undone and done again with the text; pictures that come late are there from the beginning", () => {
    const history = historyOf("one");
    history.push("two", "an edit");
    history.withPhotos({ night: photo });
    history.push("two", "a photo", undefined, { night: photo, gold: photo });
    history.push("three", "another edit");
    expect(history.undo()).toMatchObject({ text: "two", photos: { night: photo, gold: photo } });
    expect(Object.keys(history.undo()?.photos ?? {})).toEqual(["night"]);
    expect(Object.keys(history.undo()?.photos ?? NO_PHOTOS)).toEqual(["night"]);
    expect(history.canUndo()).toBe(false);
    expect(Object.keys(history.redo()?.photos ?? {})).toEqual(["night"]);
  });
});

describe("a repeat in the file", () => {
  const stars = quiltNamed("nine-stars");
  const errors = (text: string): string[] =>
    checkQuilt(text, "quilt.yaml").diagnostics.flatMap(({ severity, code }) =>
      severity === "error" ? [code] : [],
    );

  test("is read, is one length for both ways or two, and goes again to the same letters", () => {
    const said = setRepeat(stars, 0, "6 x 8 in");
    expect(readModel(said).fabrics[0]?.repeat).toEqual({ across: 6 * 16_256, down: 8 * 16_256 });
    expect(errors(said)).toEqual([]);
    expect(errors(setRepeat(stars, 0, "15 cm"))).toEqual([]);
    expect(setRepeat(said, 0, "")).toBe(stars);
  });

  test.each(["large", "6 x", "0 x 4 in", "-2 in"])("%s is refused", (wish) => {
    expect(errors(setRepeat(stars, 0, wish)).length).toBeGreaterThan(0);
  });
});

describe("textures", () => {
  const of = (...names: string[]): string =>
    `fabrics:\n${names.map((name) => `  - { name: ${name} }\n`).join("")}blocks: {}\n`;
  const numbers = (...names: string[]): number[] => {
    state.text.value = of(...names);
    return names.map(textureNumber);
  };
  beforeEach(forgetTextures);

  test("are numbered in the order of the file; one taken away leaves the others theirs", () => {
    expect(numbers("night", "gold", "chalk")).toEqual([0, 1, 2]);
    expect(numbers("night", "chalk")).toEqual([0, 2]);
    expect(numbers("night", "gold", "chalk")).toEqual([0, 1, 2]);
  });

  test("a new fabric takes the first that is free; a renamed one keeps its own", () => {
    numbers("night", "gold", "chalk");
    expect(numbers("night", "chalk", "moss")).toEqual([0, 2, 1]);
    expect(numbers("dusk", "chalk", "moss")).toEqual([0, 2, 1]);
    // Back again where another has its number now: never two alike.
    expect(numbers("dusk", "gold", "chalk", "moss")).toEqual([0, 3, 2, 1]);
  });
});
