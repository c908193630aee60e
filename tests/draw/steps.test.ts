import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { unitGroups } from "../../src/content/sewing/unit-groups.ts";
import type { UnitRecord } from "../../src/cutlist/record/unit-record.ts";
import type { Corner } from "../../src/draw/quilt/patches.ts";
import { textsOf } from "../../src/draw/scene/scene.ts";
import type { ClothLayer, Figure } from "../../src/draw/steps/cloth-layer.ts";
import { clothNodes, printNodes } from "../../src/draw/steps/draw-figure.ts";
import { unitStepsScenes } from "../../src/draw/steps/draw-unit-steps.ts";
import { type StepsOf, unitPictures } from "../../src/draw/steps/unit-panels.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { type Made, make } from "../making/fixture.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { quiltOfUnit, STEP_WAYS, stepFabrics, stepsOf } from "../support/step-quilts.ts";
import { firstOf, oneIn } from "../support/sweep.ts";

type Point = readonly [number, number];

function area(corners: readonly Point[]): number {
  return Math.abs(
    corners.reduce((sum, [x, y], i) => {
      const [nx, ny] = corners[(i + 1) % corners.length] ?? [0, 0];
      return sum + x * ny - nx * y;
    }, 0) / 2,
  );
}

/** Area that two outlines share: one, cut into triangles that fan from its middle, clipped by each edge of the other. */
function shared(one: readonly Point[], other: readonly Point[]): number {
  const clip = (points: Point[], [ax, ay]: Point, [bx, by]: Point): Point[] => {
    const side = ([x, y]: Point): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    return points.flatMap((p, i): Point[] => {
      const q = points[(i + 1) % points.length] ?? p;
      const [s, t] = [side(p), side(q)];
      const cross: Point = [p[0] + ((q[0] - p[0]) * s) / (s - t), p[1] + ((q[1] - p[1]) * s) / (s - t)];
      return [...(s >= 0 ? [p] : []), ...(s * t < 0 ? [cross] : [])];
    });
  };
  return area(
    other.reduce<Point[]>((left, a, i) => clip(left, a, other[(i + 1) % other.length] ?? a), [...one]),
  );
}

/** What is wrong with the units that a record's pictures end in, against the design's outlines and prints. */
function wrongIn(unit: UnitRecord, index: number, of: StepsOf): string[] {
  const outline = of.outlines.get(index);
  const pictures = unitPictures(unit, index, of, english);
  if (outline === undefined || pictures === null) return [];
  const kindOf = (fabric: string) => of.fabrics.find(({ name }) => name === fabric)?.print.kind;
  const heaps = new Set(pictures.finished.map(({ heap }) => heap));
  const lacking = unit.heaps.filter((_, i) => !heaps.has(i)).map(({ name }) => `${name} is never shown`);
  const wrong = pictures.finished.flatMap(({ heap, layers }) => {
    const own = heap === null ? undefined : unit.heaps[heap];
    return (own?.patches ?? []).flatMap((patch) => {
      const { corners = [] } = outline.patches.find(({ spot }) => spot === patch.spot) ?? {};
      const inRaw = corners.map(([x, y]): Point => [x + of.seam, y + of.seam]);
      const half = kindOf(patch.fabric) === "two-way" ? 4 : 8;
      const alike = layers.filter(
        ({ fabric, up, side }) =>
          fabric === patch.fabric &&
          side === "right" &&
          (patch.up === null || (up !== null && (up - patch.up) % half === 0)),
      );
      const covered = alike.reduce((sum, layer) => sum + Math.max(0, shared(inRaw, layer.corners)), 0);
      return Math.abs(covered / area(inRaw) - 1) < 0.02
        ? []
        : [`${own?.name} ${patch.spot}: ${covered / area(inRaw)}`];
    });
  });
  return [...lacking, ...wrong];
}

const figuresOf = (unit: UnitRecord, index: number, of: StepsOf): Figure[] =>
  (unitPictures(unit, index, of, english)?.groups ?? []).flatMap(({ panels }) =>
    panels.flatMap(({ figures }) => figures),
  );

describe.each(oneIn(2, STEP_WAYS))("%s, %s", (kind, method) => {
  test.each(firstOf(["one-way", "two-way across", "none"], 1))(
    "ends in the unit of the design, print %s",
    (print) => {
      const quilt = quiltOfUnit(kind, method, print);
      const of = stepsOf(quilt);
      for (const [index, unit] of quilt.making.units.entries()) {
        const sewn = unit.steps.length > 0;
        expect(unitPictures(unit, index, of, english) !== null, unit.name).toBe(sewn);
        // Outlines that turn inwards cannot be clipped by: drawn patches are checked by the pieces they are cut to.
        if (kind === "drawn patches") continue;
        expect(wrongIn(unit, index, of)).toEqual([]);
      }
    },
  );

  test("names every bag of its patches", () => {
    const quilt = quiltOfUnit(kind, method, "none");
    const of = stepsOf(quilt);
    for (const [index, unit] of quilt.making.units.entries()) {
      if (unit.steps.length === 0) continue;
      const told = new Set(
        figuresOf(unit, index, of).flatMap(({ layers, lettered }) =>
          lettered ? layers.flatMap(({ letter }) => letter.split("/")) : [],
        ),
      );
      const bags = unit.heaps.flatMap(({ patches }) => patches.flatMap(({ letters }) => letters));
      expect([...new Set(bags)].filter((letter) => !told.has(letter))).toEqual([]);
    }
  });

  test("is drawn with its words apart and on the page", () => {
    for (const scene of scenesOf(quiltOfUnit(kind, method, "one-way"))) expect(faultsOf(scene)).toEqual([]);
  });
});

const scenesOf = ({ top, making, cutLists }: Made) =>
  unitStepsScenes(top, making, stepFabrics(cutLists), EIGHTH_INCH_RULER, english);

describe("a record that is wrong gives another picture", () => {
  const pairs = quiltOfUnit("half-square triangle", "two at a time", "one-way");
  const index = pairs.making.units.findIndex(({ steps }) => steps.some(({ do: what }) => what === "pair"));
  const unit = pairs.making.units[index] as UnitRecord;
  const changed = (change: (copy: UnitRecord) => void): string[] => {
    const copy = structuredClone(unit);
    change(copy);
    return wrongIn(copy, index, stepsOf(pairs));
  };

  test("a print that lies another way when it is laid", () => {
    expect(changed(() => {})).toEqual([]);
    const found = changed((copy) => {
      for (const { laid } of copy.batches)
        for (const piece of laid) if (piece.up !== null) piece.up = ((piece.up + 2) % 8) as 0;
    });
    expect(found).not.toEqual([]);
  });

  test("the other diagonal", () => {
    const found = changed((copy) => {
      for (const step of copy.steps) if (step.do === "pair") step.line = "falling";
    });
    expect(found).not.toEqual([]);
  });

  test("a heap that gets the other unit", () => {
    const found = changed((copy) => {
      for (const batch of copy.batches) batch.gives = batch.gives.map(() => 0);
    });
    expect(found).not.toEqual([]);
  });
});

test("the line ruled on a pair is the diagonal told, on the wrong side of the upper piece", () => {
  const quilt = quiltOfUnit("half-square triangle", "two at a time", "none");
  const of = stepsOf(quilt);
  const [first] = figuresOf(quilt.making.units[0] as UnitRecord, 0, of);
  const [
    [from, to] = [
      [0, 0],
      [0, 0],
    ],
  ] = first?.ruled ?? [];
  const side = quilt.making.units[0]?.batches[0]?.laid[0]?.across ?? 0;
  expect(first?.layers.map((layer) => layer.side)).toEqual(["wrong"]);
  // Rising: from the lower left to the upper right corner, y running down.
  expect([from, to].map((p) => p.map(Math.round))).toEqual([
    [0, side],
    [side, 0],
  ]);
});

test("seams of a pair lie a seam allowance to both sides of the line", () => {
  const quilt = quiltOfUnit("half-square triangle", "two at a time", "none");
  const figures = figuresOf(quilt.making.units[0] as UnitRecord, 0, stepsOf(quilt));
  const sewing = figures.find(({ sewn, ruled }) => sewn.length === 2 && ruled.length === 1);
  const side = quilt.making.units[0]?.batches[0]?.laid[0]?.across ?? 0;
  const off = (sewing?.sewn ?? []).map(([[x, y]]) => Math.round((x + y - side) / Math.SQRT2));
  expect(off.toSorted((a, b) => a - b)).toEqual([-quilt.making.seam, quilt.making.seam]);
});

test.each(["four at a time", "stitch-and-flip", "single triangles"])(
  "geese %s are pressed to the sky",
  (method) => {
    const quilt = quiltOfUnit("flying geese", method, "none");
    const sky = quilt.making.units[0]?.fabrics.sky;
    const figures = figuresOf(quilt.making.units[0] as UnitRecord, 0, stepsOf(quilt));
    const arrows = figures.flatMap(({ pressed, layers }) =>
      pressed.map(({ at, to }) => ({ tip: [at[0] + to[0] * 6000, at[1] + to[1] * 6000] as const, layers })),
    );
    expect(arrows.length).toBeGreaterThan(1);
    for (const { tip, layers } of arrows) expect(topmost(layers, tip)?.fabric).toBe(sky);
  },
);

function topmost(layers: readonly ClothLayer[], at: Point): ClothLayer | undefined {
  const dot: Point[] = [
    [at[0] - 10, at[1] - 10],
    [at[0] + 10, at[1] - 10],
    [at[0] + 10, at[1] + 10],
    [at[0] - 10, at[1] + 10],
  ];
  return layers.findLast(({ corners }) => shared(dot, corners) > 200);
}

test("triangles taken from a cut square have their right angle where the unit has it", () => {
  const middle = (points: readonly Point[]): Point => [
    points.reduce((sum, [x]) => sum + x, 0) / points.length,
    points.reduce((sum, [, y]) => sum + y, 0) / points.length,
  ];
  const CORNERS: Record<string, Point> = {
    "top-left": [-1, -1],
    "top-right": [1, -1],
    "bottom-right": [1, 1],
    "bottom-left": [-1, 1],
  };
  let seen = 0;
  for (const kind of ["half-square triangle", "flying geese", "half-rectangle triangle"]) {
    const quilt = quiltOfUnit(kind, "single triangles", "one-way");
    const of = stepsOf(quilt);
    for (const [index, unit] of quilt.making.units.entries()) {
      for (const patch of unit.heaps.flatMap(({ patches }) => patches)) {
        const corners =
          of.outlines.get(index)?.patches.find(({ spot }) => spot === patch.spot)?.corners ?? [];
        for (const { part, turn } of patch.from) {
          const on = CORNERS[part];
          if (on === undefined || turn === null || corners.length !== 3) continue;
          const [x, y] = Array.from({ length: turn }).reduce<Point>(([px, py]) => [-py, px], on);
          // Of an upright right triangle the right angle is the corner both others share a coordinate with.
          const box = [Math.min, Math.max].map((pick) =>
            [0, 1].map((k) => pick(...corners.map((c) => c[k as 0] ?? 0))),
          );
          const at: Point = [box[x < 0 ? 0 : 1]?.[0] ?? 0, box[y < 0 ? 0 : 1]?.[1] ?? 0];
          expect(
            corners.some((c) => Math.hypot(c[0] - at[0], c[1] - at[1]) < 1),
            `${kind} ${patch.spot}`,
          ).toBe(true);
          const opposite: Point = [at[0] - x, at[1] - y];
          const [mx, my] = middle(corners);
          expect(Math.hypot(mx - opposite[0], my - opposite[1])).toBeLessThan(
            Math.hypot(mx - at[0], my - at[1]),
          );
          seen += 1;
        }
      }
    }
  }
  expect(seen).toBeGreaterThan(5);
});

test("a print's arrow points where its up does, and has two heads for a print of two ways", () => {
  const tips: Record<number, Corner> = { 0: [0, -7], 2: [7, 0], 4: [0, 7], 6: [-7, 0] };
  for (const [up, tip] of Object.entries(tips)) {
    const [shaft, head, ...more] = printNodes([0, 0], 7, "#000000", {
      up: Number(up),
      side: "right",
      twoWay: false,
    });
    expect(more).toEqual([]);
    expect(shaft?.kind === "line" ? [shaft.x2, shaft.y2].map((v) => Math.round(v) + 0) : []).toEqual(tip);
    expect(head?.kind === "path" ? head.points[0]?.map((v) => Math.round(v) + 0) : []).toEqual(tip);
  }
  expect(printNodes([0, 0], 7, "#000000", { up: 0, side: "right", twoWay: true })).toHaveLength(3);
});

test("a wrong side is told by a sign, not by its tint alone", () => {
  const layer = { corners: [], fabric: "x", letter: "", role: "", up: null };
  const view = {
    fabrics: [
      { name: "x", colour: "#336699", print: { kind: "none" as const, axis: "along" as const }, pieces: [] },
    ],
  };
  const corners = [
    [0, 0],
    [30, 0],
    [30, 30],
  ] as const;
  const drawn = (side: "right" | "wrong") => {
    const node = clothNodes({ ...layer, side }, corners, view);
    if (node.kind !== "group") throw new Error(node.kind);
    const [ground, sign, more] = node.nodes;
    return { fill: ground?.kind === "region" ? ground.paint.fill : "", sign, more };
  };
  expect(drawn("right")).toEqual({ fill: "#336699", sign: undefined, more: undefined });
  const { fill, sign, more } = drawn("wrong");
  expect([fill, more]).toEqual(["#c6d4e2", undefined]);
  // Crosses: short strokes both ways, inside the cloth and nowhere else.
  if (sign?.kind !== "group") throw new Error("no sign");
  expect(sign.clip).toEqual([corners]);
  const ways = sign.nodes.flatMap((node) => (node.kind === "region" ? node.outlines : []));
  const slopes = new Set(
    ways.map(([[x1, y1] = [0, 0], [x2, y2] = [0, 0]]) => Math.sign((x2 - x1) * (y2 - y1))),
  );
  expect(slopes).toEqual(new Set([1, -1]));
  for (const node of sign.nodes) expect(node.kind === "region" && node.paint.dash).toBeTruthy();
});

const DRAWN = Array.from({ length: 20 }, (_, i) => {
  const [x, y] = [(i % 4) * 2, Math.floor(i / 4) * 2];
  return [
    `{ part: ${i % 3 === 0 ? "one" : "two"}, corners: [[${x}, ${y}], [${x + 2}, ${y}], [${x}, ${y + 2}]] }`,
    `{ part: ${i % 2 === 0 ? "three" : "one"}, corners: [[${x + 2}, ${y}], [${x + 2}, ${y + 2}], [${x}, ${y + 2}]] }`,
  ].join(", ");
}).join(", ");

const CLOTH = "fabrics: [{ name: ink }, { name: rust, print: one-way }, { name: sage, print: two-way }]";
const busiest = {
  "a log cabin of twelve rounds": `{ log cabin: { centre: ink, light: rust, dark: sage }, count: 12 }`,
  "sixty rails": `{ rails: [${Array.from({ length: 60 }, (_, i) => ["ink", "rust", "sage"][i % 3]).join(", ")}] }`,
  "sixty rails cut one by one": `{ rails: [${Array.from({ length: 60 }, (_, i) => ["ink", "rust", "sage"][i % 3]).join(", ")}], method: single pieces }`,
  "forty drawn patches": `{ drawn-on: 8 x 10, drawn patches: { one: ink, two: rust, three: sage }, patches: [${DRAWN}] }`,
};

test.each(Object.entries(busiest))(
  "%s: words apart, every join and strip told, no sheet over a page",
  (name, cell) => {
    const quilt = make(
      `${CLOTH}\nblocks: { b: { size: ${name.includes("forty") ? "16 x 20" : name.includes("sixty") ? 30 : 20}, cell: ${cell} } }\nsetting: { rows: b }\n`,
    );
    const scenes = scenesOf(quilt);
    for (const scene of scenes) {
      expect(faultsOf(scene)).toEqual([]);
      expect(scene.height).toBeLessThanOrEqual(950);
      for (const { size } of textsOf(scene.nodes)) expect(size).toBeGreaterThanOrEqual(8);
    }
    const texts = scenes.flatMap(({ nodes }) => textsOf(nodes).map(({ text }) => text));
    const steps = quilt.making.units[0]?.steps ?? [];
    if (steps.length > 1)
      // A trim on the way, after a round that rounding up made too large, is told in words.
      for (const [number, step] of steps.entries())
        if (step.do === "join") expect(texts, `join ${number + 1}`).toContain(String(number + 1));
        else expect(texts.filter((text) => /^[A-Z]$/.test(text)).length).toBeGreaterThanOrEqual(60);
  },
);

test.each([
  "nine-stars",
  "meadow-geese",
  "lighthouse-sampler",
  "allotments",
  "salsa-on-point",
  "sashed-nine-patches",
  "regatta",
  "stars-and-geese-sashes",
])("%s: every step drawn, its words apart and on the page", (name) => {
  const quilt = make(readFileSync(new URL(`../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8"));
  const scenes = scenesOf(quilt);
  for (const scene of scenes) {
    expect(faultsOf(scene)).toEqual([]);
    expect(scene.height).toBeLessThanOrEqual(950);
  }
  const texts = scenes.flatMap(({ nodes }) => textsOf(nodes).map(({ text }) => text));
  const groups = unitGroups({ making: quilt.making, fabrics: stepFabrics(quilt.cutLists) }, english);
  expect(groups.flatMap(({ units }) => units)).toHaveLength(
    quilt.making.units.filter(({ steps }) => steps.length > 0).length,
  );
  for (const { units } of groups)
    for (const [i, { name: unit, heaps, units: count }] of units.entries()) {
      // Units sewn alike are drawn once; of the others a line says which bags they take.
      const told = texts.filter(
        (text) =>
          text.startsWith(i === 0 ? `${unit}: ` : `${unit} is sewn so too, with `) &&
          !/: \d+$/.test(text.replace(/make \d+$/, "")),
      );
      expect(told).toHaveLength(1);
      if (i > 0) expect(told[0]).toContain(`make ${count}`);
      else for (const heap of heaps) expect(texts).toContain(`${heap.name}: ${heap.count}`);
    }
  const of = stepsOf(quilt);
  for (const [index, unit] of quilt.making.units.entries())
    if (unit.kind !== "drawn patches") expect(wrongIn(unit, index, of)).toEqual([]);
});
