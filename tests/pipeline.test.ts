import { describe, expect, test } from "vitest";
import { checkQuilt, planQuilt, USUAL_OPTIONS } from "../src/pipeline.ts";
import type { Solve } from "../src/plan/index.ts";
import { solveHere } from "./support/cut-list-spec.ts";

const FILE = `name: Test
units: in
all-fabrics: { width: 44 in, selvage: 1 in, sold: by 1/8 yd, straighten: 0 in }
fabrics:
  - name: Sea
    pieces:
      - squares 4 1/2 square, 18
`;

/** The engine, and then a hand that spoils its answer. */
function spoiling(spoil: (result: Awaited<ReturnType<Solve>>[number]) => void): Solve {
  return async (jobs) => {
    const results = structuredClone(await solveHere(jobs));
    for (const result of results) spoil(result);
    return results;
  };
}

describe("from the text of a file to a plan", () => {
  test("a good file becomes an audited plan", async () => {
    const { value, diagnostics } = await planQuilt(FILE, "sea.yaml", USUAL_OPTIONS, solveHere);
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(value?.fabrics[0]?.purchase?.text).toBe("1/4 yd");
    expect(value?.diagnostics).toEqual(diagnostics);
  });

  test("options come before the file", async () => {
    const options = { ...USUAL_OPTIONS, style: "strips-3", prefer: "simple" } as const;
    const { value } = await planQuilt(FILE, "sea.yaml", options, solveHere);
    expect(value).toMatchObject({ style: "strips-3", prefer: "simple" });
    expect(value?.fabrics[0]?.bound.style).toBe("strips-3");
  });

  test("a file with errors gives no plan, but says where", async () => {
    const bad = FILE.replace("18", "1.5");
    const { value, diagnostics } = await planQuilt(bad, "sea.yaml", USUAL_OPTIONS, solveHere);
    expect(value).toBeNull();
    expect(diagnostics[0]?.at).toMatchObject({ file: "sea.yaml", line: 7 });
  });

  test("a piece that fits in no way gives no plan, and `check` finds it too", async () => {
    const bad = FILE.replace("4 1/2 square", "50 square");
    const { value, diagnostics } = await planQuilt(bad, "sea.yaml", USUAL_OPTIONS, solveHere);
    expect(value).toBeNull();
    expect(diagnostics.map(({ code }) => code)).toContain("PIECE-TOO-WIDE");
    expect(checkQuilt(bad, "sea.yaml").diagnostics).toEqual(diagnostics);
  });
});

describe("an answer that is wrong is never given out", () => {
  test.each<[string, Parameters<typeof spoiling>[0]]>([
    [
      "a strip is left out",
      (result) => {
        result.layouts[0]!.sections.pop();
      },
    ],
    [
      "a shorter length is claimed",
      (result) => {
        result.rollLength -= 2032;
      },
    ],
    [
      "a bound is claimed that the plan beats",
      (result) => {
        result.bound.value += 1;
      },
    ],
    [
      "a segment holds more than fits",
      (result) => {
        const [section] = result.layouts[0]!.sections;
        if (section?.kind === "strips") section.column.segments[0]!.count += 1;
      },
    ],
  ])("%s", async (_, spoil) => {
    await expect(planQuilt(FILE, "sea.yaml", USUAL_OPTIONS, spoiling(spoil))).rejects.toThrow(/wrong|audit/);
  });
});
