import { expect, test } from "vitest";
import { upIn } from "../../src/page/planner/picture.ts";

const strip = [
  [0, 0],
  [1000, 0],
  [1000, 100],
  [0, 100],
] as const;

test("an arrow stays within the patch it stands in, however long that is", () => {
  const across = upIn(strip, 0);
  expect(across).toMatchObject({ x: 500, y: 50 });
  expect(across.long).toBeLessThan(100);
  // Along the strip there is room; the head is as wide as half the arrow is long, and stays inside too.
  expect(upIn(strip, 90).long / 2).toBeLessThan(100);
});
