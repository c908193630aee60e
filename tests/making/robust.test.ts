import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { listQuiltCuts, recordUnits } from "../../src/cutlist/index.ts";
import { planMaking } from "../../src/making/index.ts";
import { layOutQuilt } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { starters as STARTERS } from "../../src/words/en/starters.ts";
import { oneIn } from "../support/sweep.ts";
import { make, pressingOf, quiltOfSquares } from "./fixture.ts";

const BAD = new URL("../../fixtures/bad/", import.meta.url);
let tried = 0;

function tryOut(text: string, name: string): void {
  const read = readSpecFile(text, name);
  if (read.value === null || read.value.kind !== "quilt") return;
  const laid = layOutQuilt(read.value);
  if (laid.value === null) return;
  const listed = listQuiltCuts(read.value, laid.value.work).value;
  if (listed === null) return;
  tried += 1;
  const making = planMaking(laid.value, recordUnits(listed, read.value), read.value);
  expect(JSON.parse(JSON.stringify(making))).toEqual(making);
}

test("whatever can be laid out can be told how to sew", () => {
  for (const name of oneIn(3, readdirSync(BAD))) {
    const file = new URL(`${name}/input.yaml`, BAD);
    let text = "";
    try {
      text = readFileSync(file, "utf8");
    } catch {
      continue;
    }
    tryOut(text, name);
  }
  for (const { name, text } of STARTERS) tryOut(text, name);
  expect(tried).toBeGreaterThan(10);
});

const base = quiltOfSquares(
  [
    { name: "P", squares: 2 },
    { name: "Q", squares: 3 },
  ],
  [
    [
      { block: 0, turn: 0 },
      { block: 1, turn: 1 },
      { block: 0, turn: 0 },
    ],
    [
      { block: 1, turn: 2 },
      { block: 0, turn: 3 },
      { block: 1, turn: 0 },
    ],
  ],
);

test.each([
  ["mitred", "borders: [{ fabric: red, width: 4, join: straight, corners: mitred }]\n"],
  ["cornerstones", "borders: [{ fabric: red, width: 4, join: straight, cornerstones: red }]\n"],
  ["tops first", "borders: [{ fabric: red, width: 4, join: straight, corners: tops first }]\n"],
  [
    "two rounds",
    "borders: [{ fabric: red, width: 4, join: straight, corners: mitred }, { fabric: red, width: 1/3, join: straight }]\n",
  ],
])("a quilt with borders: %s", (_name, borders) => {
  const made = make(base + borders);
  expect(pressingOf(made).junctions).toBeGreaterThan(0);
});
/** Turned as a whole, nothing meets anything else. */
test("turning the whole centre changes no nesting", () => {
  const turned = pressingOf(make(base.replace("setting:\n", "setting:\n  turn: 180\n")));
  expect(turned.alike).toEqual(pressingOf(make(base)).alike);
  expect(turned.junctions).toBe(pressingOf(make(base)).junctions);
});
