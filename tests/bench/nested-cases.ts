import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { NestLie } from "../../src/engine/nested/nest.ts";
import type { PackingItem } from "../../src/engine/types.ts";
import type { BenchCase } from "./cases.ts";

interface NestedShape {
  count: number;
  one_way: boolean;
  lies: { height: number; first: number; advances: number[] }[];
}

interface NestedInstance {
  name: string;
  width: number;
  shapes: NestedShape[];
  pieces: { w: number; h: number; count: number; turn: boolean }[];
  known: {
    "strips-2": { value: number; bound: number; proven: boolean };
    area_bound: number;
    as_rectangles: { value: number };
  };
}

/** Shapes that nest beside rectangles; the rule of thumb takes each shape as its rectangle. */
export function nestedCases(data: string): BenchCase[] {
  const file = join(data, "corpus", "nested.json");
  if (!existsSync(file)) return [];
  const { instances } = JSON.parse(readFileSync(file, "utf8")) as { instances: NestedInstance[] };
  return instances.map(({ name, width, shapes, pieces, known }): BenchCase => {
    const { value, bound, proven } = known["strips-2"];
    const items = [
      ...shapes.map(itemOf),
      ...pieces.map(
        ({ w, h, count, turn }): PackingItem => ({
          ...{ across: w, along: h, demand: count, turnable: turn, place: "strips" },
        }),
      ),
    ];
    const roll = { width, available: null, costPerLength: 1 };
    return {
      ...{ set: "nested", name, style: "strips-2", variant: "strips-2 and shapes that nest" },
      problem: { style: "strips-2", items, roll, sheets: [] },
      known: {
        optimum: proven ? value : null,
        reached: value,
        floor: bound,
        ruleOfThumb: null,
      },
    };
  });
}

/** Lies in a strip that runs along the cloth do not matter on a bolt; those of a rectangle follow from the others. */
function itemOf({ count, lies }: NestedShape): PackingItem {
  const across = lies.map(
    ({ height, first, advances }): NestLie => ({ turned: false, height, first, advances }),
  );
  const [{ first, height }] = lies as [NestedShape["lies"][number]];
  return {
    ...{ across: first, along: height, demand: count, turnable: false, place: "strips" },
    nest: { across, along: across.map((lie) => ({ ...lie, height: lie.first, ...plainRun(lie.height) })) },
  };
}

function plainRun(first: number): Pick<NestLie, "first" | "advances"> {
  return { first, advances: [first] };
}
