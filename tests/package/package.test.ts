import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROOT, SMALL } from "../cli/run.ts";

/*
 * The package as a user gets it: packed, installed in an empty folder, imported. It takes half a minute, so that it is
 * done where all is asked for, as .ci/run does: `PACKAGE=all npx vitest run --config tests/vitest.config.ts tests/package`.
 */
const wanted = process.env.PACKAGE === "all";

/** Most bytes of the package: 0.8 MB of it are the drawing page, which holds every language too, 0.2 MB the fonts. */
const MOST_BYTES = 1_900_000;
/** Most bytes of all that is installed with it for this machine. */
const MOST_INSTALLED = 45_000_000;

/** Bytes of all files below a folder. */
function bytesBelow(path: string): number {
  return readdirSync(path, { withFileTypes: true }).reduce((sum, entry) => {
    const inside = join(path, entry.name);
    if (entry.isDirectory()) return sum + bytesBelow(inside);
    return sum + (entry.isFile() ? statSync(inside).size : 0);
  }, 0);
}

let folder = "";
let files: string[] = [];
let size = 0;
/** Why it could not be installed; empty when it was. */
let missing = "";

function run(command: string, words: readonly string[], from = folder) {
  const { status, stdout, stderr } = spawnSync(command, words, {
    cwd: from,
    encoding: "utf8",
    timeout: 120_000,
  });
  return { code: status, stdout, stderr };
}

const crossgrain = (...words: string[]) => run(join(folder, "node_modules/.bin/crossgrain"), words);

/** Runs a module in the folder and gives what it prints. */
function imported(name: string, source: string): string {
  writeFileSync(join(folder, name), source);
  const { code, stdout, stderr } = run(process.execPath, [name]);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  return stdout;
}

beforeAll(() => {
  if (!wanted) return;
  folder = mkdtempSync(join(tmpdir(), "crossgrain-packed-"));
  const packed = run("npm", ["pack", "--json", "--pack-destination", folder], ROOT);
  expect(packed.code, packed.stderr).toBe(0);
  const [told] = JSON.parse(packed.stdout.slice(packed.stdout.indexOf("["))) as [
    { filename: string; files: { path: string }[] },
  ];
  files = told.files.map(({ path }) => path);
  size = statSync(join(folder, told.filename)).size;
  writeFileSync(
    join(folder, "package.json"),
    JSON.stringify({ name: "empty", type: "module", private: true }),
  );
  const flags = ["--no-audit", "--no-fund", "--loglevel=error"];
  const install = (how: string) => run("npm", ["install", how, ...flags, `./${told.filename}`]);
  const offline = install("--offline");
  const installed = offline.code === 0 ? offline : install("--prefer-offline");
  if (installed.code !== 0)
    missing = `npm reaches neither its cache nor the registry: ${installed.stderr.split("\n")[0]}`;
}, 200_000);

afterAll(() => rmSync(folder || join(tmpdir(), "none"), { recursive: true, force: true }));

describe.skipIf(!wanted)("the package (skipped unless PACKAGE=all)", () => {
  test("it holds what runs and nothing else", () => {
    const top = files.filter((path) => !path.startsWith("dist/")).sort();
    expect(top).toEqual(["LICENSE", "README.md", "bin/crossgrain.mjs", "package.json"]);
    for (const path of files) expect(path).not.toMatch(/bench|demo|test|promote|\.ts$(?<!\.d\.ts)/);
    expect(size).toBeLessThan(MOST_BYTES);
  });

  describe("installed in an empty folder", () => {
    test("all that is installed stays light", ({ skip }) => {
      if (missing !== "") skip(missing);
      const bytes = bytesBelow(join(folder, "node_modules"));
      expect(bytes).toBeGreaterThan(size);
      expect(bytes).toBeLessThan(MOST_INSTALLED);
    });

    test("every door opens, and plans", ({ skip }) => {
      if (missing !== "") skip(missing);
      const told = imported(
        "use.mjs",
        `import { planQuilt, solveHere, USUAL_OPTIONS, buyList, english } from "crossgrain";
         import * as planning from "crossgrain/planning";
         import { pack, runJob, verify } from "crossgrain/engine";
         import schema from "crossgrain/schema.json" with { type: "json" };
         import planSchema from "crossgrain/plan.schema.json" with { type: "json" };
         import own from "crossgrain/package.json" with { type: "json" };
         const { value } = await planQuilt(${JSON.stringify(SMALL)}, "a.yaml", USUAL_OPTIONS, solveHere);
         console.log(buyList(value, english).includes("Night sea"), typeof planning.planSpec, typeof pack, typeof runJob,
           typeof verify, schema.$id, planSchema.$id, own.name);`,
      );
      expect(told.trim()).toBe(
        "true function function function function urn:crossgrain:file:1 urn:crossgrain:plan:1 crossgrain",
      );
    });

    test("its types hold in the strictest reading", ({ skip }) => {
      if (missing !== "") skip(missing);
      writeFileSync(
        join(folder, "use.ts"),
        `import { auditPlan, buyList, english, type Plan, planQuilt, type PlanAnswer, solveHere, USUAL_OPTIONS, wordAll } from "crossgrain";
import { type LowerBound, pack, type PackingProblem, type PackingResult, verify } from "crossgrain/engine";
import { planSpec, readSpecFile } from "crossgrain/planning";

export async function cloth(text: string): Promise<string[]> {
  const { value, diagnostics } = await planQuilt(text, "quilt.yaml", USUAL_OPTIONS, solveHere);
  if (value === null) return wordAll(diagnostics, english).map(({ message }) => message);
  const plan: Plan = value;
  const first: number = plan.fabrics[0]?.pieces[0]?.across ?? 0;
  return [buyList(plan, english), String(first), ...auditPlan(plan)];
}
export const told = (answer: PlanAnswer): string | undefined => answer.lengths["16256"];
export const faults = (problem: PackingProblem, result: PackingResult): readonly string[] => verify(problem, result);
export const doors = [pack, planSpec, readSpecFile];
export type Least = LowerBound["value"];
// @ts-expect-error a plan has no such thing
export const none = (plan: Plan): unknown => plan.noSuchThing;
`,
      );
      const options = {
        strict: true,
        noEmit: true,
        module: "nodenext",
        target: "es2022",
        types: [],
        skipLibCheck: false,
      };
      const more = { exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, lib: ["es2023"] };
      writeFileSync(
        join(folder, "tsconfig.json"),
        JSON.stringify({ compilerOptions: { ...options, ...more }, files: ["use.ts"] }),
      );
      const { code, stdout } = run(process.execPath, [
        join(ROOT, "node_modules/typescript/bin/tsc"),
        "-p",
        ".",
      ]);
      expect(stdout).toBe("");
      expect(code).toBe(0);
    });

    test("every command runs", ({ skip }) => {
      if (missing !== "") skip(missing);
      expect(crossgrain("--version").stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
      const starter = crossgrain("new", "blocks");
      expect(starter.code).toBe(0);
      writeFileSync(join(folder, "quilt.yaml"), starter.stdout);
      for (const words of [
        ["check", "quilt.yaml"],
        ["buy", "quilt.yaml"],
        ["plan", "quilt.yaml", "--out", "made", "--pdf", "--png", "400"],
        ["compare", "quilt.yaml", "--out", "ways"],
        ["arrange", "quilt.yaml", "--only", "left", "--out", "turned"],
        ["picture", "made/top.svg", "--width", "300"],
        ["page", "quilt.yaml", "--out", "page.html"],
        ["pieces", "2 1/2 x 4 1/2:24"],
        ["sizes", "flying geese", "4 x 2"],
        ["stash", "add", "sky", "fat quarter"],
        ["schema"],
      ]) {
        const { code, stderr } = crossgrain(...words);
        expect(`${words.join(" ")}: ${code} ${code === 0 ? "" : stderr}`).toBe(`${words.join(" ")}: 0 `);
      }
      expect(statSync(join(folder, "page.html")).size).toBeGreaterThan(2_000_000);
      expect(readFileSync(join(folder, "made/book.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    });
  });
});
