import { describe, expect, test } from "vitest";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import { type LineNode, type Scene, type SceneNode, textsOf } from "../../src/draw/scene/scene.ts";
import { boxOfText } from "../../src/draw/scene/text.ts";
import { onPaper, SHEET, templateScene, templateSheets } from "../../src/draw/templates/draw-template.ts";
import { ABOVE, OVERLAP, tilingOf } from "../../src/draw/templates/template-tiles.ts";
import { english } from "../../src/words/index.ts";
import { LARGE, SAILS, type Template, templatePlan, templatesOf } from "../support/template-plans.ts";

/** Millimetres to a page unit (96 to the inch), and to a tick. */
const MM = 25.4 / 96;
const TICK = 1 / 640;

type Spot = [number, number];

const hasDash = (node: SceneNode): boolean => node.kind !== "text" && node.paint.dash !== undefined;

/** Closed outlines with so many corners in an SVG, in millimetres of paper. */
function outlinesIn(svg: string, corners: number): Spot[][] {
  return [...svg.matchAll(/<path d="(M[^"]*Z)"/g)].flatMap(([, d = ""]) => {
    const numbers = [...d.matchAll(/-?[\d.]+/g)].map(([number]) => Number(number) * MM);
    const spots = Array.from(
      { length: numbers.length / 2 },
      (_, i): Spot => [numbers[2 * i] ?? 0, numbers[2 * i + 1] ?? 0],
    );
    return spots.length === corners ? [spots] : [];
  });
}

/** Whether an outline on paper is the plan's, upright or turned, to a hundredth of a millimetre. */
function mapsBack(drawn: readonly Spot[], line: Template["cut"]): boolean {
  return [false, true].some((turned) =>
    line.every(({ x, y }, i) => {
      const [dx, dy] = [(x - (line[0]?.x ?? 0)) * TICK, (y - (line[0]?.y ?? 0)) * TICK];
      const [right, down] = turned ? [-dy, dx] : [dx, dy];
      const [px, py] = drawn[i] ?? [0, 0];
      const [ox, oy] = drawn[0] ?? [0, 0];
      return Math.abs(px - ox - right) < 0.01 && Math.abs(py - oy - down) < 0.01;
    }),
  );
}

describe("templates as drawings", () => {
  test("every outline on a sheet and in its own file maps back to the plan", async () => {
    const plan = await templatePlan(SAILS);
    const sheets = templateSheets(plan, english).map(({ names, scene }) => ({ names, svg: toSvg(scene) }));
    for (const template of templatesOf(plan)) {
      const sheet = sheets.filter(({ names }) => names.includes(template.name));
      expect(sheet).toHaveLength(1);
      const own = toSvg(templateScene(plan, template, english));
      for (const svg of [sheet[0]?.svg ?? "", own])
        for (const line of [template.cut, template.seam])
          expect(outlinesIn(svg, line.length).some((drawn) => mapsBack(drawn, line))).toBe(true);
      const [, width, box] = /width="([\d.]+)in"[^>]*viewBox="0 0 ([\d.]+) /.exec(own) ?? [];
      expect(Number(width) * 96).toBeCloseTo(Number(box), 6);
    }
  });

  test("cut lines are solid and seam lines dashed, with a dot at every corner of the seam", async () => {
    const plan = await templatePlan(SAILS);
    const [template] = templatesOf(plan);
    if (template === undefined) throw new Error("no template");
    const { nodes } = templateScene(plan, template, english);
    const paths = nodes.filter((node) => node.kind === "path" && node.closed && node.paint.fill === "none");
    expect(paths.map(hasDash)).toEqual([false, true]);
    const dots = nodes.filter((node) => node.kind === "circle").length;
    expect(dots).toBe(template.seam.length + template.marks.length);
  });

  test.each([
    ["sails", SAILS],
    ["large sails", LARGE],
  ])("words of %s keep inside their frames, the page and each other", async (_, text) => {
    const plan = await templatePlan(text);
    const scenes: Scene[] = [
      ...templateSheets(plan, english).map(({ scene }) => scene),
      ...templatesOf(plan).map((template) => templateScene(plan, template, english)),
    ];
    for (const scene of scenes) {
      const boxes = textsOf(scene.nodes).map((node) => ({ node, box: boxOfText(node) }));
      for (const { node, box } of boxes) {
        expect(box.x).toBeGreaterThanOrEqual(-0.01);
        expect(box.y).toBeGreaterThanOrEqual(-0.8);
        expect(box.x + box.width, node.text).toBeLessThanOrEqual(scene.width + 0.01);
        expect(box.y + box.height, node.text).toBeLessThanOrEqual(scene.height);
        expect(box.width).toBeLessThanOrEqual(node.frame.width + 0.01);
        expect(node.text).not.toContain("…");
      }
      boxes.forEach(({ node, box: a }, i) => {
        for (const { node: other, box: b } of boxes.slice(i + 1)) {
          const apart =
            a.x + a.width <= b.x + 0.01 ||
            b.x + b.width <= a.x + 0.01 ||
            a.y + a.height <= b.y + 0.6 ||
            b.y + b.height <= a.y + 0.6;
          expect(apart, `${node.text} / ${other.text}`).toBe(true);
        }
      });
    }
  });
});

describe("templates larger than a sheet", () => {
  test("so many parts as cover it, each lying a centimetre over the next", () => {
    const room = { width: 690, height: 930 };
    const inch = 25.4 * 640;
    for (let side = 3; side <= 60; side += 0.25) {
      const at = (x: number, y: number) => ({ x: x * side * inch, y: y * side * inch });
      const cut = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
      const square: Template = {
        name: "T1",
        across: side * inch,
        along: side * inch,
        cut,
        seam: cut,
        marks: [],
        print: { kind: "none", axis: "along" },
        uses: [],
      };
      const { columns, rows } = tilingOf(square, room);
      // An inch is 96 page units; above each part stands its name.
      expect(columns * (room.width - OVERLAP) + OVERLAP, `${side} in`).toBeGreaterThanOrEqual(side * 96);
      expect(rows * (room.height - ABOVE - OVERLAP) + OVERLAP, `${side} in`).toBeGreaterThanOrEqual(
        side * 96,
      );
    }
  });

  test("big triangles are drawn by hand, others come in parts", async () => {
    const plan = await templatePlan(LARGE);
    const how = Object.fromEntries(templatesOf(plan).map((t) => [t.seam.length, onPaper(t)]));
    expect(how).toEqual({ 3: "draw", 4: "parts" });
    // A template for every sheet size below: what fits is one piece.
    for (const template of templatesOf(await templatePlan(SAILS)))
      expect(["sheet", "turned", "tall", "tall turned"]).toContain(onPaper(template));
  });

  test("parts laid on each other at their letters make the whole outline", async () => {
    const plan = await templatePlan(LARGE);
    const sheets = templateSheets(plan, english);
    expect(sheets.every(({ scene }) => scene.width === SHEET.width && scene.height === SHEET.height)).toBe(
      true,
    );
    for (const template of templatesOf(plan).filter((each) => onPaper(each) === "parts")) {
      const parts = sheets
        .filter(({ names }) => names.includes(template.name))
        .map(({ scene }) => scene.nodes);
      const crosses = parts.map(crossesOf);
      // Where each part lies on the first, found by the letters alone, as the maker does.
      const shifts = new Map<number, Spot>([[0, [0, 0]]]);
      for (let round = 0; round < parts.length; round += 1)
        for (const [i, own] of crosses.entries()) {
          const shift = shifts.get(i);
          if (shift === undefined) continue;
          for (const [j, other] of crosses.entries())
            for (const [letter, [a1, a2]] of own) {
              const [b1, b2] = other.get(letter) ?? [];
              if (i === j || a1 === undefined || a2 === undefined || b1 === undefined || b2 === undefined)
                continue;
              const found: Spot = [shift[0] + a1[0] - b1[0], shift[1] + a1[1] - b1[1]];
              // Both crosses of a letter say the same.
              expect(Math.hypot(a2[0] - a1[0] - b2[0] + b1[0], a2[1] - a1[1] - b2[1] + b1[1])).toBeLessThan(
                1e-6,
              );
              const known = shifts.get(j);
              if (known !== undefined)
                expect(Math.hypot(found[0] - known[0], found[1] - known[1])).toBeLessThan(1e-6);
              shifts.set(j, found);
            }
        }
      expect(shifts.size).toBe(parts.length);
      const lines = parts.flatMap((nodes, i) => {
        const [dx, dy] = shifts.get(i) ?? [0, 0];
        return nodes
          .filter(
            (node): node is LineNode => node.kind === "line" && node.paint.fill === "none" && !hasDash(node),
          )
          .map(({ x1, y1, x2, y2 }): [Spot, Spot] => [
            [x1 + dx, y1 + dy],
            [x2 + dx, y2 + dy],
          ]);
      });
      expect(covers(lines, template.cut)).toBe(true);
    }
  });
});

/** The two crosses of each joining letter on a sheet. */
function crossesOf(nodes: readonly SceneNode[]): Map<string, Spot[]> {
  const letters = textsOf(nodes).filter(({ text, size }) => size === 10 && /^[a-z]$/.test(text));
  const rings = nodes.flatMap((node): Spot[] =>
    node.kind === "circle" && node.radius === 4 ? [[node.x, node.y]] : [],
  );
  const found = new Map<string, Spot[]>();
  for (const { text, frame } of letters) {
    const near = rings.find(([x, y]) => Math.hypot(frame.x - 4 - x, frame.y + 15 - y) < 0.01);
    if (near === undefined) throw new Error(`the letter ${text} has no cross`);
    found.set(text, [...(found.get(text) ?? []), near]);
  }
  return found;
}

/** Whether lines on paper, in page units, cover every edge of the outline: upright or turned, wherever they lie. */
function covers(lines: readonly [Spot, Spot][], cut: Template["cut"]): boolean {
  const unit = 96 / 16256;
  return [false, true].some((turned) => {
    const corners = cut.map(({ x, y }): Spot => (turned ? [-y * unit, x * unit] : [x * unit, y * unit]));
    const least = (spots: readonly Spot[], axis: 0 | 1): number =>
      Math.min(...spots.map((spot) => spot[axis]));
    const ends = lines.flat();
    const [dx, dy] = [least(ends, 0) - least(corners, 0), least(ends, 1) - least(corners, 1)];
    return corners.every(([ax, ay], i) => {
      const [bx, by] = corners[(i + 1) % corners.length] ?? [0, 0];
      return Array.from({ length: 41 }, (_, k) => k / 40).every((t) => {
        const [x, y] = [ax + t * (bx - ax) + dx, ay + t * (by - ay) + dy];
        return lines.some(([[x1, y1], [x2, y2]]) => {
          const run = Math.hypot(x2 - x1, y2 - y1);
          const beside = run === 0 ? 1 : Math.abs((x - x1) * (y2 - y1) - (y - y1) * (x2 - x1)) / run;
          const along = run === 0 ? 0 : ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / run;
          return beside < 0.03 && along > -0.03 && along < run + 0.03;
        });
      });
    });
  });
}
