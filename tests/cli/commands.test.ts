import { spawn } from "node:child_process";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { english, planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import type { Plan } from "../../src/plan/types.ts";
import { planJson } from "../../src/planning.ts";
import { UNIT_KINDS } from "../../src/quilt/units/registry.ts";
import { crossgrain, crossgrainHere, emptyFolder, ROOT, SMALL } from "./run.ts";

function folderWithQuilt(): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, "tide.yaml"), SMALL);
  return folder;
}

describe("plan", () => {
  test("writes everything into out/NAME and prints the lists", () => {
    const folder = folderWithQuilt();
    const ended = crossgrain(["plan", "tide.yaml"], { folder });
    expect(ended.code).toBe(0);
    expect(readdirSync(join(folder, "out", "tide-pool")).sort()).toEqual([
      ".crossgrain.json",
      "book.html",
      "buy.csv",
      "buy.txt",
      "cut-1-night-sea.svg",
      "cut-2-chalk.svg",
      "cuts.csv",
      "plan.json",
      "steps.txt",
      "waste.txt",
    ]);
    expect(ended.stderr).toBe(`9 files written into ${join("out", "tide-pool")}\n`);
    const read = (name: string) => readFileSync(join(folder, "out", "tide-pool", name), "utf8");
    expect(ended.stdout).toBe([read("buy.txt"), read("steps.txt"), read("waste.txt")].join("\n"));
  });

  test("takes away drawings of fabrics that are no longer there, and nothing else", async () => {
    const folder = folderWithQuilt();
    expect((await crossgrainHere(["plan", "tide.yaml", "--out", "here"], folder)).code).toBe(0);
    for (const name of ["cut-3-coral.svg", "my notes.txt"]) writeFileSync(join(folder, "here", name), "mine");
    writeFileSync(join(folder, "tide.yaml"), SMALL.replace("Chalk", "Lime"));
    expect((await crossgrainHere(["plan", "tide.yaml", "--out", "here"], folder)).code).toBe(0);
    const names = readdirSync(join(folder, "here"));
    expect(names).not.toContain("cut-2-chalk.svg");
    for (const name of ["cut-2-lime.svg", "cut-3-coral.svg", "my notes.txt"]) expect(names).toContain(name);
    expect(names.filter((name) => name.startsWith("."))).toEqual([".crossgrain.json"]);
  });

  test("--pdf writes the book as a PDF on the paper asked for, and a later plan without it takes it away", async () => {
    const folder = folderWithQuilt();
    const ended = await crossgrainHere(
      ["plan", "tide.yaml", "--out", "here", "--pdf", "--paper", "a4"],
      folder,
    );
    expect(ended).toMatchObject({ code: 0, stderr: "10 files written into here\n" });
    const bytes = readFileSync(join(folder, "here", "book.pdf"), "latin1");
    expect(bytes.slice(0, 5)).toBe("%PDF-");
    expect(bytes).toContain("595.28 841.89");
    expect((await crossgrainHere(["plan", "tide.yaml", "--out", "here"], folder)).code).toBe(0);
    expect(readdirSync(join(folder, "here"))).not.toContain("book.pdf");
  });

  test("--json prints the plan and writes nothing; with --out it does both", async () => {
    const folder = folderWithQuilt();
    const printed = await crossgrainHere(["plan", "tide.yaml", "--json"], folder);
    expect(readdirSync(folder)).toEqual(["tide.yaml"]);
    expect(JSON.parse(printed.stdout)).toMatchObject({
      format: "crossgrain plan",
      version: 1,
      name: "Tide pool",
    });
    const both = await crossgrainHere(["plan", "tide.yaml", "--json", "--out", "here"], folder);
    expect(both.stdout).toBe(printed.stdout);
    expect(readFileSync(join(folder, "here", "plan.json"), "utf8")).toBe(printed.stdout);
  });

  test("threads change nothing: the same plan as one search after another", async () => {
    const folder = folderWithQuilt();
    const printed = crossgrain(["plan", "tide.yaml", "--json"], { folder }).stdout;
    const { lengths: _told, ...threaded } = JSON.parse(printed) as Plan & { lengths: object };
    const { value } = await planQuilt(SMALL, "tide.yaml", USUAL_OPTIONS, solveHere);
    expect(value).not.toBeNull();
    const { lengths: _lengths, ...alone } = JSON.parse(planJson(value!, english));
    expect(threaded).toEqual(alone);
  });

  test("two runs write the same bytes", async () => {
    const folder = folderWithQuilt();
    for (const out of ["one", "two"]) {
      expect((await crossgrainHere(["plan", "tide.yaml", "--out", out], folder)).stderr).toMatch(
        "9 files written",
      );
    }
    for (const name of readdirSync(join(folder, "one"))) {
      expect(readFileSync(join(folder, "two", name), "utf8")).toBe(
        readFileSync(join(folder, "one", name), "utf8"),
      );
    }
  });

  test("--style, --prefer and --budget are taken before the file", async () => {
    const folder = folderWithQuilt();
    const ended = await crossgrainHere(
      ["plan", "tide.yaml", "--json", "--style", "strips-3", "--prefer", "simple", "--budget", "1,5"],
      folder,
    );
    expect(JSON.parse(ended.stdout)).toMatchObject({ style: "strips-3", prefer: "simple" });
  });
});

describe("buy", () => {
  test("prints amounts and prices", async () => {
    const folder = folderWithQuilt();
    const ended = await crossgrainHere(["buy", "tide.yaml"], folder);
    expect(ended.code).toBe(0);
    expect(ended.stdout).toMatch(/^Fabric to buy for Tide pool$/m);
    expect(ended.stdout).toMatch(/^Night sea +\d.* yd /m);
    expect(ended.stdout).toMatch(/^Chalk +\d.* yd .*\$\d+\.\d\d/m);
    expect(ended.stdout).toMatch(/check them, and your own fabric's usable width, before you cut/);
    expect(readdirSync(folder)).toEqual(["tide.yaml"]);
  });

  test("reads standard input for -", () => {
    const ended = crossgrain(["buy", "-"], { input: SMALL });
    expect(ended.code).toBe(0);
    expect(ended.stdout).toMatch("Tide pool");
  });

  test("--json is for programs, faults included", () => {
    const good = crossgrain(["buy", "-", "--json"], { input: SMALL });
    expect(JSON.parse(good.stdout).fabrics[0]).toMatchObject({
      name: "Night sea",
      purchase: { text: expect.stringContaining("yd") },
    });
    const bad = crossgrain(["buy", "-", "--json"], { input: "fabrics: 3\n" });
    expect(bad.code).toBe(1);
    expect(JSON.parse(bad.stdout).diagnostics[0]).toMatchObject({ severity: "error" });
  });
});

describe("pieces", () => {
  test("answers with no file", async () => {
    const ended = await crossgrainHere(["pieces", "4 1/2:12", "--width", "40in"]);
    expect(ended.code).toBe(0);
    // Twelve 4 1/2 in squares at 40 in usable: eight a strip, so two strips. derived geometry: floor(40 / 4.5) = 8
    expect(ended.stdout).toMatch(/^Fabric +\S.*yd +9 in +proven$/m);
    expect(ended.stdout).toMatch("[A]  12  4 1/2 in square");
  });

  test.each(["6,5 x 11,5:40", "6,5 x 11,5, 40"])(
    "reads centimetres with a comma, and answers so: %s",
    async (words) => {
      const ended = await crossgrainHere(["pieces", words, "--unit", "cm", "--width", "107cm"]);
      expect(ended.code).toBe(0);
      expect(ended.stdout).toMatch("40  6,5 x 11,5 cm  either way");
    },
  );

  test("--fixed keeps the way up", async () => {
    const ended = await crossgrainHere(["pieces", "2 x 40:3", "--width", "30 in", "--fixed", "--json"]);
    expect(JSON.parse(ended.stdout).fabrics[0].pieces[0]).toMatchObject({ turnable: false });
  });

  test("what is wrong is told of the word, not of a file", async () => {
    const noCount = await crossgrainHere(["pieces", "2 1/2 x 4 1/2"]);
    expect(noCount.code).toBe(2);
    expect(noCount.stderr).toMatch('"2 1/2 x 4 1/2" is not SIZE:COUNT');
    const noLength = await crossgrainHere(["pieces", "2 1/x x 4:3"]);
    expect(noLength.code).toBe(2);
    expect(noLength.stderr).toMatch("2 1/x x 4:3");
    expect(noLength.stderr).not.toMatch(/pieces\[0\]|command line:\d/);
    const tooWide = await crossgrainHere(["pieces", "50 x 60:1", "--width", "42in"]);
    expect(tooWide.code).toBe(3);
  });
});

describe("check and schema", () => {
  test("check is content with a good file", async () => {
    const folder = folderWithQuilt();
    expect(await crossgrainHere(["check", "tide.yaml"], folder)).toEqual({
      code: 0,
      stdout: "tide.yaml: no errors\n",
      stderr: "",
    });
  });

  test("schema prints a JSON Schema", async () => {
    const ended = await crossgrainHere(["schema"]);
    expect(ended.code).toBe(0);
    expect(JSON.parse(ended.stdout)).toHaveProperty("$schema");
  });
});

describe("the command line itself", () => {
  test("--version is that of the package", async () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect((await crossgrainHere(["--version"])).stdout).toBe(`${version}\n`);
  });

  test.each([
    [["plan"], /missing required argument 'file'/],
    [["plna", "x"], /unknown command 'plna'\s+\(Did you mean plan\?\)/],
    [["plan", "x", "--stile", "strips-2"], /unknown option '--stile'\s+\(Did you mean --style\?\)/],
    [["plan", "x", "--style", "strips-9"], /Use one of: strips-2, strips-3\./],
    [["plan", "x", "--budget", "soon"], /Use a number above zero/],
    [["plan", "x", "y"], /too many arguments/],
  ])("%j is wrong usage", async (words, says) => {
    const ended = await crossgrainHere(words);
    expect(ended.code).toBe(2);
    expect(ended.stderr).toMatch(says);
    expect(ended.stdout).toBe("");
  });

  test("a reader that closes early is no error", async () => {
    const words = [join(ROOT, "bin", "crossgrain.mjs"), "schema"];
    const child = spawn(process.execPath, words, { stdio: ["ignore", "pipe", "pipe"] });
    let stderr = "";
    child.stderr.on("data", (chunk) => {
      stderr += chunk;
    });
    child.stdout.destroy();
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  });

  test("no colour where there is no terminal", () => {
    const ended = crossgrain(["check", "-"], { input: "fabrics: 3\n", env: { FORCE_COLOR: "1" } });
    expect(ended.stderr).not.toContain("\u001b");
  });

  test("the bin is marked as a program", () => {
    expect(statSync(join(ROOT, "bin", "crossgrain.mjs")).mode & 0o111).not.toBe(0);
  });
});

describe("sizes", () => {
  test("without a unit lists every kind with its parts and methods", async () => {
    const { stdout, code } = await crossgrainHere(["sizes"]);
    expect(code).toBe(0);
    for (const { name } of UNIT_KINDS) expect(stdout).toMatch(new RegExp(`^${name}\\b`, "m"));
    expect(stdout).toContain("parts: goose, sky");
  });

  test("without a size asks for one", async () => {
    const { stderr, code } = await crossgrainHere(["sizes", "hst"]);
    expect(code).toBe(2);
    expect(stderr).toContain("finished size");
  });
});
