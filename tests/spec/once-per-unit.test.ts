import { expect, test } from "vitest";
import { oncePerUnit } from "../../src/spec/fill/once-per-unit.ts";

test("what is made for a measure is made once for each", () => {
  const made: string[] = [];
  const of = oncePerUnit((unit) => {
    made.push(unit);
    return unit === "in" ? undefined : { unit };
  });
  expect(of("cm")).toBe(of("cm"));
  expect(of("in")).toBe(of("in"));
  expect(made).toEqual(["cm", "in"]);
});
