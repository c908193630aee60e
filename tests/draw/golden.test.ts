import { describe, expect, test } from "vitest";
import { drawFabric } from "../../src/draw/index.ts";
import type { Part, Plan } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";
import { differenceFromGolden, rasterise } from "../support/visual.ts";
import { GALLERY } from "../support/visual-gallery.ts";

/** Enough to show every kind of mark; the geometry tests look at the whole gallery. */
const KEPT = [
  "half-inch-pieces",
  "three-hundred",
  "twelve-yard-backing",
  "fat-quarters",
  "all-waste",
  "dark-one-way",
  "light-two-way-across",
  "lengthwise-borders",
  "one-way-borders",
  "right-to-left",
  "long-uncut-end",
  "metric",
  "hostile",
];

describe.each(GALLERY.filter(({ name }) => KEPT.includes(name)))("$name", ({ name, plan, options }) => {
  test("looks as it did when it was last looked at", async () => {
    const png = rasterise(drawFabric(await plan(), 0, english, options));
    expect(differenceFromGolden(`cutting-${name}`, png)).toBe(0);
  });
});

/** The plan with its second strip pushed along by `ticks`, as a wrong layout would have it. */
function withStripMoved(plan: Plan, ticks: number): Plan {
  const wrong = structuredClone(plan);
  const strips = wrong.fabrics[0]!.lays[0]!.root.parts.filter(({ role }) => role === "strip");
  const move = (part: Part): void => {
    part.y += ticks;
    part.parts.forEach(move);
  };
  move(strips[1]!);
  return wrong;
}

test("a strip that lies a quarter of an inch off is noticed", async () => {
  const { plan } = GALLERY.find(({ name }) => name === "dark-one-way")!;
  const wrong = withStripMoved(await plan(), 16256 / 4);
  const changed = differenceFromGolden(
    "cutting-dark-one-way",
    rasterise(drawFabric(wrong, 0, english)),
    false,
  );
  expect(changed).toBeGreaterThan(200);
});
