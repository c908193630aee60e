import { expect, test } from "vitest";
import { unitsScene } from "../../src/draw/quilt/draw-units.ts";
import { textsOf } from "../../src/draw/scene/scene.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { UNIT_KINDS, unitTurns } from "../../src/quilt/index.ts";
import { english } from "../../src/words/index.ts";
import { faultsOf } from "../support/sound-scene.ts";

test("every kind of unit stands on the sheet, its texts apart and on the paper", () => {
  const scene = unitsScene(unitTurns(), english);
  expect(faultsOf(scene)).toEqual([]);
  const texts = textsOf(scene.nodes).map(({ text }) => text);
  for (const { name } of UNIT_KINDS) expect(texts).toContain(name);
});

test("a turn is clockwise: the goose that flies up flies right when turned right", () => {
  const [geese] = unitTurns("flying geese");
  const tipOf = (turn: number): number[] => {
    const shown = geese?.turns.find((each) => each.turn === turn);
    const goose = shown?.patches.find(({ part }) => part === "goose")?.outline ?? [];
    // The tip is the corner on no corner of the unit: half-way along one of its long sides.
    const [wide, high] = [exactToNumber(shown?.across ?? ZERO), exactToNumber(shown?.down ?? ZERO)];
    return goose
      .map(({ x, y }) => [exactToNumber(x) / wide, exactToNumber(y) / high] as const)
      .filter(([x, y]) => x === 0.5 || y === 0.5)
      .flat();
  };
  expect([0, 90, 180, 270].map(tipOf)).toEqual([
    [0.5, 0],
    [1, 0.5],
    [0.5, 1],
    [0, 0.5],
  ]);
});

const ZERO = { n: 0, r: 0, d: 1 };
