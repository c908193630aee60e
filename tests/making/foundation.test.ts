import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { cuttingSteps } from "../../src/content/index.ts";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { listAll, planListed, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import type { PiecedPart, Point } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { INCH } from "../quilt/reading.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { make, pressingOf } from "./fixture.ts";

const FIXTURE = readFileSync(new URL("../../fixtures/quilts/wild-geese-round.yaml", import.meta.url), "utf8");
const withFoundation = (words: string): string =>
  FIXTURE.replace(/^foundation: .*$/m, `foundation: { fabric: gridded web, ${words} }`);

const quilt = make(FIXTURE);
const folded = make(withFoundation("grid: 1/4 in, way: folded"));
const row = make(withFoundation("grid: 1/4 in, way: folded, per: row"));

describe("pieced patch by patch", () => {
  const part = quilt.making.foundation?.parts[0] as PiecedPart;

  test("motifs come off the foundation and are joined; nothing inside them is sewn again", () => {
    const blocks = quilt.making.joins.filter(({ stage }) => stage === "block");
    const [motif, line] = [
      { is: "foundation", per: "motif", letters: ["A"] },
      (number: number) => ({ is: "line", line: "row", number }),
    ];
    expect(blocks.map(({ makes, from }) => ({ makes, from }))).toEqual([
      { makes: line(1), from: [motif, motif] },
      { makes: line(2), from: [motif, motif] },
      { makes: { is: "block", name: "round" }, from: [line(1), line(2)] },
    ]);
    // Each is as large as its squares and two seams: nothing has been squared up or cut smaller.
    const raw = 4 * INCH + 2 * quilt.making.seam;
    for (const size of blocks[0]?.parts ?? [])
      expect([size.across / quilt.making.scale, size.down / quilt.making.scale]).toEqual([raw, raw]);
    expect(quilt.making.units.flatMap(({ steps }) => steps)).toEqual([]);
  });

  // derived geometry: one line of 4 in and two of 2 root 2 in, half an inch more each, 36 times.
  test("its seams are counted from edge to edge", () => {
    const inches = quilt.making.totals.units / INCH;
    expect(inches).toBeCloseTo(36 * (4.5 + 2 * (2 * Math.SQRT2 + 0.5)), 1);
    // Without foundation the same seams are sewn, one by one.
    expect(quilt.making.totals.seams).toBe(3 * 36 + 3 * 9 + 8 + 4);
  });

  /** The number of the patch that holds a point of a block, by the place it lies in. */
  const numberAt = (px: number, py: number): number => {
    const design = quilt.top.designs[0];
    const holds = (outline: readonly Point[]) =>
      outline.every(({ x, y }, i) => {
        const next = outline[(i + 1) % outline.length] ?? { x, y };
        return (next.x.n - x.n) * (py - y.n) - (next.y.n - y.n) * (px - x.n) > 0;
      });
    const patch = design?.patches.find(({ outline }) => holds(outline));
    return part.patches.find((one) => one.part === patch?.origin.part)?.number ?? 0;
  };

  test("allowances inside a motif lie towards the patch added later, in both ways of pressing the block", () => {
    const pressing = pressingOf(quilt);
    const inside = pressing.blocks.map(({ seams }) =>
      seams.filter((seam) =>
        part.places.some(({ x, y, across, down }) => {
          const [mx, my] = [(seam.x1 + seam.x2) / 2, (seam.y1 + seam.y2) / 2];
          return mx > x && mx < x + across && my > y && my < y + down;
        }),
      ),
    );
    expect(inside.map((seams) => seams.length)).toEqual([4, 4]);
    expect(inside[0]).toEqual(inside[1]);
    for (const { x1, y1, x2, y2, press } of inside[0] ?? []) {
      const [mx, my] = [(x1 + x2) / 2, (y1 + y2) / 2];
      const [dx, dy] = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] }[press] as [number, number];
      // A little beside the middle, where no third patch begins.
      const [ax, ay] = [mx + 0.01 * INCH * Math.abs(dy), my + 0.01 * INCH * Math.abs(dx)];
      const near = 0.05 * INCH;
      expect(numberAt(ax + dx * near, ay + dy * near)).toBeGreaterThan(
        numberAt(ax - dx * near, ay - dy * near),
      );
    }
    expect(pressing.open).toEqual([]);
  });
});

describe("folded", () => {
  /** Sews the lines of a foundation one after another: a fold takes up two allowances. Nothing of the program. */
  const sewn = (sizes: readonly number[], allowance: number): number =>
    sizes.reduce((sum, size) => sum + size + 2 * allowance, 0) - 2 * allowance * (sizes.length - 1);

  test.each([
    ["block", folded, 8.5, 8.5],
    ["row", row, 24.5, 8.5],
  ])("a %s reaches the size stated", (_name, made, across, down) => {
    const foundation = made.making.foundation;
    const [part, lines] = [foundation?.parts[0], foundation?.lines[0]];
    if (part?.kind !== "folded" || lines === undefined) throw new Error("not folded");
    const allowance = foundation?.allowance ?? 0;
    expect(sewn(part.columns, allowance) / 4).toBe(across);
    expect(sewn(part.rows, allowance) / 4).toBe(down);
    expect(lines.sewn).toEqual({ across: across * INCH, down: down * INCH });
    // Upright lines run over the whole foundation, level ones over what is left of its width.
    expect([lines.uprightLength, lines.levelLength]).toEqual([9 * INCH, across * INCH]);
  });

  test("a row has five upright lines and one level: its crossings are pinned from the middle out", () => {
    const lines = row.making.foundation?.lines[0];
    expect([lines?.upright, lines?.level, lines?.pins]).toEqual([5, 1, [3, 2, 4, 1, 5]]);
  });

  test("parts of two units are sewn before they are laid; rows come off it finished", () => {
    const parts = row.making.joins.filter(({ stage }) => stage === "unit");
    expect(parts.map(({ makes, from, count }) => [makes, from.length, count])).toEqual([
      [{ is: "alike", number: 1 }, 2, 36],
    ]);
    const top = row.making.joins.filter(({ stage }) => stage === "top");
    expect(top.map(({ makes, from }) => [makes, from])).toEqual([
      [{ is: "centre" }, [1, 2, 3].map((number) => ({ is: "line", line: "row", number }))],
    ]);
  });

  // Folded or joined one by one, blocks of two rows have the same seams but the upright one in one go.
  test("a block sewn in lines has one seam fewer", () => {
    const plain = make(
      FIXTURE.replace(/^foundation: .*\n/m, "").replace(/^ {2}- \{ name: gridded web.*\n/m, ""),
    );
    expect(plain.making.totals.seams - folded.making.totals.seams).toBe(9);
  });
});

describe("planned", () => {
  const planned = async (text: string, kits = 1): Promise<Plan> => {
    const options = { ...USUAL_OPTIONS, kits, effort: 100 };
    const read = readSpecFile(text, "quilt.yaml");
    const listed = read.value === null ? null : listAll(read.value).value;
    if (read.value === null || listed === null) throw new Error("not read");
    const { value } = await planListed(read.value, listed, [], options, solveHere);
    if (value === null) throw new Error("no plan");
    return value;
  };
  const webOf = (plan: Plan) => plan.fabrics.find(({ name }) => name === "gridded web");

  /*
   * By hand: 44 in hold seven squares of 6 in, 36 of them take six strips, 36 in; straightened on the first line 1 in:
   * 37 in, sold in quarters of a yard 45 in, 1 1/4 yd.
   */
  test("the foundation is bought and cut like a fabric, on its lines only", async () => {
    const plan = await planned(FIXTURE);
    const web = webOf(plan);
    expect(web?.purchase).toMatchObject({ text: "1 1/4 yd", length: 45 * INCH });
    expect(web?.bound).toMatchObject({ used: 36 * INCH, lengthProven: true });
    expect(web?.onPrintedLines).toBe(true);
    for (const { x1, y1, x2, y2 } of web?.cuts ?? [])
      for (const place of [x1, y1, x2, y2]) expect(place % INCH).toBe(0);
    expect(cuttingSteps(plan, true, english)).toContain(
      "Straighten the cut end on a printed line: trim off 1 in",
    );
    // What the maker reads: patches in their order, nothing trimmed or squared up.
    const told = makingSteps(plan, english).replaceAll(/\s+/g, " ");
    const order = [
      "patch 1, rectangle, C (dusk)",
      "Line 1: patch 2, flying geese, goose, a quarter of E (straw)",
      "Line 2: patch 3",
      "Line 3: patch 4",
    ];
    const places = order.map((words) => told.indexOf(words));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
    expect(told).toContain("Cut 36 pieces of gridded web 6 x 6 squares (6 x 6 in)");
    expect(told).toContain("Made on foundation, not squared up: round 8 1/2 x 8 1/2 in.");
    expect(told).not.toMatch(/Trim each|Trimmed once sewn|trimmed alike/);
    // What the audit would not let pass.
    const spoil = (change: (copy: Plan) => void): string[] => {
      const copy = structuredClone(plan);
      change(copy);
      return auditPlan(copy).filter((fault) => fault.startsWith("gridded web"));
    };
    const first = (copy: Plan) => copy.making?.foundation?.parts[0];
    expect(spoil(() => undefined)).toEqual([]);
    expect(spoil((copy) => Object.assign(first(copy) ?? {}, { count: 37 }))).toEqual([
      expect.stringContaining("but 37 parts"),
    ]);
    expect(
      spoil((copy) => Object.assign(first(copy) ?? {}, { cut: { across: 5, down: 5 } })).join(),
    ).toContain("smaller than what is made on it");
    expect(
      spoil((copy) => Object.assign(copy.making?.foundation ?? {}, { grid: INCH * 1.5 })).length,
    ).toBeGreaterThan(0);
  });

  // By hand: a panel of 22 x 18 in gives three by three squares of 6 in: four panels for 36.
  test("in panels, and for a class", async () => {
    const panels = FIXTURE.replace(
      "width: 44 in, selvage: 0, sold: by 1/4 yd",
      "width: 22 in, selvage: 0, yardage: no, ready-cut: [22 x 18 in]",
    );
    expect(webOf(await planned(panels))?.lays).toHaveLength(4);
    const two = webOf(await planned(FIXTURE, 2));
    // 72 squares: eleven strips of seven, 66 in and 1 in: 72 in, 2 yd.
    expect(two?.pieces.map(({ count }) => count)).toEqual([72]);
    expect(two?.purchase?.length).toBe(72 * INCH);
  });
});
