import { beforeEach, describe, expect, test } from "vitest";
import type { MatPart, MatStrip } from "../../src/page/planner/mat-parts.ts";
import { measuresWithRoom, numberPlace } from "../../src/page/ui/cut/mat-room.ts";
import { toldAtTheMat } from "../../src/page/ui/fabric/told-at-the-mat.ts";
import { movedEarlier, placesFor, takenOf } from "../../src/page/ui/pattern/part-places.ts";
import { savedFor } from "../../src/page/ui/pattern/pattern-sheets.ts";
import { madeInShort } from "../../src/page/ui/sew/sew-stops.ts";
import * as state from "../../src/page/ui/state.ts";
import { addEntry, beginWork, PATTERN_PARTS, USUALLY_PLANNED } from "../../src/planning.ts";

describe("the parts of a pattern in their list", () => {
  const all = [...PATTERN_PARTS];

  test("each keeps its place when it is left out and taken again", () => {
    let places = placesFor(all, PATTERN_PARTS, PATTERN_PARTS);
    for (const part of all) {
      const others = takenOf(places, all).filter((one) => one !== part);
      const after = placesFor(others, PATTERN_PARTS, places);
      expect(after).toEqual(places);
      const again = takenOf(after, [...others, part]);
      places = placesFor(again, PATTERN_PARTS, after);
      expect(places).toEqual(all);
    }
  });

  test("in an order of one's own too, with several left out", () => {
    const own = ["finishing", "requirements", "cutting", "blocks"] as const;
    const places = placesFor(own, PATTERN_PARTS, PATTERN_PARTS);
    expect(takenOf(places, own)).toEqual([...own]);
    expect([...places].sort()).toEqual([...all].sort());
    expect(placesFor(["finishing", "cutting", "blocks"], PATTERN_PARTS, places)).toEqual(places);
    // One that is not taken has a place all the same, behind the one it usually follows.
    expect(places[places.indexOf("requirements") + 1]).toBe("cautions");
  });

  test("one moved earlier passes the one taken before it, and nothing else moves", () => {
    const taken = all.filter((part) => part !== "cautions");
    const moved = movedEarlier(all, taken, "cutting");
    expect(takenOf(moved, taken).slice(0, 2)).toEqual(["cutting", "requirements"]);
    expect(moved.filter((part) => part !== "cutting")).toEqual(all.filter((part) => part !== "cutting"));
    expect(movedEarlier(all, taken, "requirements")).toEqual(all);
  });
});

describe("on the mat", () => {
  const part = (x: number, y: number, across: number, along: number, bag: number | null = 0): MatPart => ({
    ...{ x, y, across, along, bag },
    holds: bag === null ? 0 : 1,
    says: "",
    keep: false,
    d: "",
  });
  const strip = (lengthwise: boolean, parts: MatPart[]): MatStrip => {
    const x = Math.min(...parts.map((one) => one.x));
    const y = Math.min(...parts.map((one) => one.y));
    return {
      ...{ lay: 0, number: 1, lengthwise, x, y, parts, width: "" },
      across: Math.max(...parts.map((one) => one.x + one.across)) - x,
      along: Math.max(...parts.map((one) => one.y + one.along)) - y,
    };
  };
  const pill = { wide: 52, high: 34 };
  const clear = ({ x, y }: { x: number; y: number }, one: MatPart): boolean => {
    const [left, top] = [one.x + one.across / 2, one.y + one.along / 2];
    return left < x || left > x + pill.wide || top < y || top > y + pill.high;
  };

  test("the number of a strip lies on no letter of its pieces", () => {
    const lay = { across: 305 + 11 * 69 };
    const squares = Array.from({ length: 11 }, (_, i) => part(305 + i * 69, 0, 69, 73));
    const beside = numberPlace(strip(false, squares), lay, pill, 22);
    expect(beside.x).toBe(lay.across + 22);
    const long = strip(true, [part(0, 0, 152, 2146), part(0, 2146, 152, 40, null)]);
    const first = strip(true, [part(0, 0, 152, 60), part(0, 60, 152, 2000)]);
    const inner = strip(false, [part(0, 0, 400, 73), part(400, 0, 90, 73, null)]);
    for (const one of [long, first, inner]) {
      const at = numberPlace(one, lay, pill, 22);
      for (const piece of one.parts) if (piece.bag !== null) expect(clear(at, piece)).toBe(true);
      expect(at.x).toBeGreaterThanOrEqual(one.x);
      expect(at.x + pill.wide).toBeLessThanOrEqual(one.x + one.across);
    }
  });

  test("lengths below a strip do not touch, and its last is always told", () => {
    expect(measuresWithRoom([], 10)).toEqual([]);
    expect(measuresWithRoom([30, 33, 36, 39, 42], 5)).toEqual([30, 36, 42]);
    expect(measuresWithRoom([30, 33, 36, 39, 42], 50)).toEqual([42]);
    expect(measuresWithRoom([10, 20, 30], 5)).toEqual([10, 20, 30]);
  });

  test("fabrics told of are named before a way puts them aside", () => {
    const entry = (fabric: string) => ({ fabric, plan: "abc", facts: ["strip 1 cut"] });
    const work = ["night", "chalk", "night"].reduce(
      (text, fabric) => addEntry(text, entry(fabric)),
      beginWork(USUALLY_PLANNED, "# work"),
    );
    expect(toldAtTheMat(work)).toEqual(["night", "chalk"]);
    expect(toldAtTheMat("")).toEqual([]);
  });
});

describe("how far a stop of the sewing is", () => {
  const step = (id: string, count: number) => ({ id, title: id, details: [], table: null, count });
  const block = { kind: "blocks" as const, steps: [step("row 1", 54), step("row 2", 54), step("block", 54)] };
  const made = (counts: Record<string, number>) => {
    state.sewn.value = { ...state.sewn.value, made: counts };
  };
  beforeEach(() => made({}));

  test("one block sewn is one of them, not none of its steps", () => {
    expect(madeInShort(block)).toEqual({ kind: "made", made: 0, of: 54 });
    made({ "row 1": 1, "row 2": 1, block: 1 });
    expect(madeInShort(block)).toEqual({ kind: "made", made: 1, of: 54 });
    made({ "row 1": 54, "row 2": 54, block: 54 });
    expect(madeInShort(block)).toEqual({ kind: "done", made: 54, of: 54 });
  });

  test("what is done once is told by its steps", () => {
    const rows = { kind: "rows" as const, steps: [step("a", 1), step("b", 1), step("c", 1)] };
    made({ a: 1 });
    expect(madeInShort(rows)).toEqual({ kind: "steps", made: 1, of: 3 });
    expect(madeInShort({ kind: "rows", steps: [] })).toEqual({ kind: "steps", made: 0, of: 0 });
  });
});

test("a saved paper prints on what was chosen", () => {
  const html = "<html><head><style>@page { margin: 1cm; }</style></head><body></body></html>";
  expect(savedFor(html, "a4")).toContain("@page { size: A4 portrait; }");
  expect(savedFor(html, "letter")).toContain("@page { size: letter portrait; }");
  // What was set before stays, and nothing of the text is lost.
  expect(savedFor(html, "a4").replace(/<style>@page \{ size[^<]*<\/style>/, "")).toBe(html);
});
