import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { forKits } from "../../src/cutlist/for-kits.ts";
import { letterPieces, mergePieces } from "../../src/cutlist/index.ts";
import { PLAIN_PIECE } from "../../src/cutlist/of-quilt/quilt-strips.ts";
import type { Plan } from "../../src/plan/types.ts";
import { turnedShape } from "../../src/quilt/units/outlines/shapes.ts";
import { sampleFabric } from "../support/sample-plan.ts";
import { SAILS, templatePlan, templatesOf } from "../support/template-plans.ts";

const INCH = 16256;

/** `canvas A: 2 + 2` for each template: how many as drawn and how many reversed. */
function counts(plan: Plan): string[] {
  return templatesOf(plan).map(({ uses }) =>
    uses
      .map(({ fabric, piece, asDrawn, reversed }) => {
        const cloth = plan.fabrics[fabric];
        return `${cloth?.name} ${cloth?.pieces[piece]?.letter}: ${asDrawn} + ${reversed}`;
      })
      .join(", "),
  );
}

describe("templates of a plan", () => {
  test("mirror images share a template, as drawn and reversed, and a letter where they stand no closer in strips", async () => {
    const plan = await templatePlan(SAILS);
    // Two boats and two blocks of peaks. Of each boat: two skies that mirror, jib and main that mirror, two seas
    // that mirror, a hull. Of each block of peaks: two peaks alike but for a half-turn, four sides of which two
    // mirror the others.
    expect(counts(plan)).toEqual([
      "sky A: 2 + 2",
      "canvas B: 4 + 0",
      "canvas C: 2 + 0, canvas D: 0 + 2",
      "sea E: 4 + 0, sea F: 0 + 4",
      "sea G: 2 + 0",
      "sea I: 2 + 0, sea J: 0 + 2",
    ]);
    expect(plan.templates?.map(({ print }) => print.kind)).toEqual(["one-way", ...Array(5).fill("none")]);
  });

  test("every piece cut by template is counted once, with an outline that lies in its rectangle", async () => {
    const plan = await templatePlan(SAILS);
    for (const [fabric, { pieces }] of plan.fabrics.entries())
      for (const [piece, { subcut, count, across, along }] of pieces.entries()) {
        const uses = templatesOf(plan).flatMap((template) =>
          template.uses
            .filter((use) => use.fabric === fabric && use.piece === piece)
            .map((use) => ({ ...use, template })),
        );
        expect(uses).toHaveLength(subcut === "template" ? 1 : 0);
        for (const { asDrawn, reversed, template } of uses) {
          expect(asDrawn + reversed).toBe(count);
          const [short, long] = [template.across, template.along].sort((a, b) => a - b);
          const [narrow, wide] = [across, along].sort((a, b) => a - b);
          expect(short).toBeLessThanOrEqual(narrow ?? 0);
          expect(long).toBeLessThanOrEqual(wide ?? 0);
          // and no more than one ruler mark is lost on either side
          expect((narrow ?? 0) - (short ?? 0)).toBeLessThan(INCH / 8);
          expect((wide ?? 0) - (long ?? 0)).toBeLessThan(INCH / 8);
        }
      }
  });

  test("a corner of a neighbour on an edge is marked", async () => {
    const hull = templatesOf(await templatePlan(SAILS)).find(({ marks }) => marks.length > 0);
    // Jib and main meet in the middle of the hull's upper edge: 3 in from either end.
    expect(hull?.marks).toHaveLength(1);
    const [mark] = hull?.marks ?? [];
    const far = (hull?.seam ?? []).map((p) => Math.hypot(p.x - (mark?.x ?? 0), p.y - (mark?.y ?? 0)) / INCH);
    expect(far.filter((length) => Math.abs(length - 3) < 1e-3)).toHaveLength(2);
  });

  test("three kits take three times as many of each", async () => {
    const [sky] = (await templatePlan(SAILS)).fabrics;
    const fabric = sampleFabric("sky", []);
    const [piece] = forKits({ fabric, pieces: sky?.pieces ?? [] }, 3).pieces;
    expect(piece?.count).toBe(12);
    expect([piece?.shape?.asDrawn, piece?.shape?.reversed]).toEqual([6, 6]);
  });

  test("equal rectangles with different outlines stay two letters, whatever the order", () => {
    const print = { kind: "none", axis: "along" } as const;
    const line = (points: [number, number][]) => points.map(([x, y]) => ({ x: x * INCH, y: y * INCH }));
    const piece = (corners: [number, number][], count: number) => ({
      ...PLAIN_PIECE,
      across: 4 * INCH,
      along: 4 * INCH,
      count,
      uses: [{ purpose: { for: "label" as const, label: "sail" }, count }],
      subcut: "template" as const,
      shape: { cut: line(corners), seam: line(corners), marks: [], asDrawn: count, reversed: 0 },
    });
    const leaning = piece(
      [
        [0, 0],
        [4, 0],
        [1, 4],
      ],
      3,
    );
    const mirrored = piece(
      [
        [0, 0],
        [4, 0],
        [3, 4],
      ],
      5,
    );
    const upright = piece(
      [
        [0, 0],
        [4, 0],
        [2, 4],
      ],
      7,
    );
    for (const given of [
      [leaning, upright, mirrored],
      [mirrored, leaning, upright],
    ]) {
      const merged = letterPieces(mergePieces(given, print));
      // Turned half round they stand closer: a run holds one hand only, so each has a bag.
      expect(merged.map(({ letter, count }) => `${letter} ${count}`)).toHaveLength(3);
      expect(merged.map(({ count }) => count).toSorted()).toEqual([3, 5, 7]);
      expect(merged.every(({ shape }) => shape?.reversed === 0)).toBe(true);
      // A print with an up forbids the half turn: from rectangles one bag serves both.
      const shared = letterPieces(mergePieces(given, { kind: "one-way", axis: "along" }));
      const hands = shared.map(({ shape }) => [shape?.asDrawn, shape?.reversed].toSorted());
      expect(hands.toSorted()).toEqual([
        [0, 7],
        [3, 5],
      ]);
    }
    // An up to keep lets the template turn over, but not round.
    const turned = { ...upright, shape: { ...upright.shape, ...turnedShape(upright.shape, 2) } };
    expect(mergePieces([upright, turned], print)).toHaveLength(1);
    expect(mergePieces([upright, turned], { kind: "one-way", axis: "along" })).toHaveLength(2);
    expect(mergePieces([leaning, mirrored], { kind: "one-way", axis: "along" })).toHaveLength(1);
  });

  test("a plan with a wrong outline does not pass its audit", async () => {
    const plan = await templatePlan(SAILS);
    expect(auditPlan(plan)).toEqual([]);
    const spoilt = (change: (copy: Plan) => void): string[] => {
      const copy = structuredClone(plan) as Plan;
      change(copy);
      return auditPlan(copy);
    };
    const shapeOf = (copy: Plan) => {
      const { shape } = copy.fabrics[0]?.pieces[0] ?? {};
      if (shape === undefined) throw new Error("no outline");
      return shape as unknown as { cut: { x: number; y: number }[]; asDrawn: number };
    };
    expect(spoilt((copy) => Object.assign(shapeOf(copy).cut[1] ?? {}, { x: 0 }))).not.toEqual([]);
    expect(
      spoilt((copy) => {
        shapeOf(copy).asDrawn += 1;
      }).join(),
    ).toContain("another number of outlines");
    expect(spoilt((copy) => copy.templates?.pop()).join()).toContain("the templates do not say");
    expect(
      spoilt((copy) => {
        for (const point of shapeOf(copy).cut) point.x += INCH;
      }).join(),
    ).toContain("beyond its rectangle");
    expect(
      spoilt((copy) => {
        const piece = copy.fabrics[0]?.pieces[0];
        if (piece !== undefined) delete piece.shape;
      }).join(),
    ).toContain("has no outline");
  });
});
