import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { crossgrainHere, emptyFolder, ROOT, SMALL } from "./run.ts";

describe("the stash", () => {
  test("is added to, shown, planned from and taken from", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    const run = (...words: string[]) => crossgrainHere(words, folder);
    expect((await run("stash", "show")).stderr).toContain("There is no stash file stash.csv.");
    expect(await run("stash", "add", "chalk", "21 x 18 in", "--count", "2")).toMatchObject({ code: 0 });
    expect((await run("stash", "show")).stdout).toContain("2 pieces of fabric");
    const suits = await run("stash", "suits", "tide.yaml");
    expect(suits.stdout).toMatch(/Night sea +nothing/);
    expect(suits.stdout).toMatch(/Chalk +(all|part) of it/);
    const planned = await run("plan", "tide.yaml", "--stash", "stash.csv", "--out", "made");
    expect(planned.stdout).toContain("From the stash:");
    expect(readFileSync(join(folder, "made", "stash.txt"), "utf8")).toContain("21 x 18 in");
    const before = readFileSync(join(folder, "stash.csv"), "utf8");
    expect(await run("stash", "take", "made/plan.json")).toMatchObject({ code: 0 });
    expect(readFileSync(join(folder, "stash.csv.bak"), "utf8")).toBe(before);
    expect(readFileSync(join(folder, "stash.csv"), "utf8")).not.toBe(before);
  });

  test("wrong words change nothing and end with 2", async () => {
    const folder = emptyFolder();
    for (const words of [["frob"], ["add", "sky"], ["add", "sky", "large"], ["show", "more"]]) {
      expect(await crossgrainHere(["stash", ...words], folder)).toMatchObject({ code: 2, stdout: "" });
    }
    expect(existsSync(join(folder, "stash.csv"))).toBe(false);
  });

  test("a row that cannot be read is told of with its line, the rest is used", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "stash.csv"), "fabric,width,length\nchalk,1-Feb,18 in\nchalk,21 in,18 in\n");
    const { code, stdout, stderr } = await crossgrainHere(["stash", "show"], folder);
    expect([code, stdout.includes("1 piece of fabric")]).toEqual([0, true]);
    expect(stderr).toContain("stash.csv:2:1: warning STASH-ROW-UNREADABLE");
  });
});

describe("choices on the command line", () => {
  test("kits 0, a width that is none, and sizes that are none end with 2", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    const run = (...words: string[]) => crossgrainHere(["buy", "tide.yaml", ...words], folder);
    const kits = await run("--kits", "0");
    expect([kits.code, kits.stderr]).toEqual([2, expect.stringContaining("whole number from 1 to 1000")]);
    const width = await run("--width", "wide");
    expect([width.code, width.stderr]).toEqual([
      2,
      expect.stringContaining('--width "wide" is not a length'),
    ]);
    expect(await run("--sizes", "3")).toMatchObject({ code: 2 });
  });

  test("too few fat quarters end with 3 and say how many are missing; precuts and prices reach every list", async () => {
    const folder = emptyFolder();
    const pool = readFileSync(join(ROOT, "fixtures/cutlists/rock-pool.yaml"), "utf8");
    writeFileSync(join(folder, "few.yaml"), pool.replace("- fat quarter, 2", "- fat quarter, 1"));
    const few = await crossgrainHere(["buy", "few.yaml"], folder);
    expect([few.code, few.stdout]).toEqual([3, ""]);
    expect(few.stderr).toContain("Chalk: 1 more fat quarter is needed: 1 to hand, 2 hold everything.");
    writeFileSync(join(folder, "pool.yaml"), pool);
    const made = await crossgrainHere(["plan", "pool.yaml", "--width", "40in", "--out", "made"], folder);
    expect(made.code).toBe(0);
    expect(made.stdout).toContain("Rock pool on another width of fabric");
    expect(readFileSync(join(folder, "made", "buy.csv"), "utf8")).toContain("ready cut");
    expect(readFileSync(join(folder, "made", "cut-1-night-sea.svg"), "utf8")).toContain(
      "10 in square, trimmed",
    );
    const asked = await crossgrainHere(["buy", "pool.yaml", "--json"], folder);
    const { fabrics } = JSON.parse(asked.stdout) as { fabrics: { mix?: { cost: number } }[] };
    expect(fabrics[0]?.mix?.cost).toBe(740);
  });

  test("a plan of kits has their list beside it", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    const { code, stdout } = await crossgrainHere(
      ["plan", "tide.yaml", "--kits", "3", "--width", "40 in", "--pdf", "--out", "class"],
      folder,
    );
    expect(code).toBe(0);
    expect(stdout).toContain("Into each of the 3 bags:");
    expect(readFileSync(join(folder, "class", "kits.txt"), "utf8")).toContain("3 kits of Tide pool");
    // The teacher's sheet is printed as the books are.
    const printed = readFileSync(join(folder, "class", "class.pdf"), "latin1");
    expect(printed.startsWith("%PDF-")).toBe(true);
    expect(printed).toContain("(Tide pool: 3 kits)");
  });

  test("kits of several sorts have the teacher's lists and a paper for each sort; what they do not go with is refused", async () => {
    const folder = emptyFolder();
    const quilt = readFileSync(join(ROOT, "fixtures/quilts/geese-and-bars.yaml"), "utf8");
    writeFileSync(join(folder, "geese.yaml"), `${quilt}\nclass:\n  kits: [ 2 of 1x1, 1 of 2x2 ]\n`);
    const run = (...words: string[]) => crossgrainHere(["plan", "geese.yaml", ...words], folder);
    const { code, stdout } = await run("--kits", "file", "--out", "class");
    expect(code).toBe(0);
    expect(stdout).toMatch(/Kit 2: 2x2, [^\n]* +1\n/);
    const written = readdirSync(join(folder, "class"));
    for (const name of ["kits.txt", "class.html", "kit-1.txt", "kit-1.html", "kit-2.txt", "kit-2.html"])
      expect(written).toContain(name);
    expect(written).not.toContain("pattern.html");
    for (const more of [["--sizes", "3x3"], ["--width", "40 in"], ["--compare"], ["--fat-quarters"]])
      expect(await run("--kits", "1 of 1x1, 1", ...more)).toMatchObject({
        code: 2,
        stderr: expect.stringContaining("kits of several sorts"),
      });
    expect(await run("--kits", "2 of 1x1 in dusk")).toMatchObject({
      code: 2,
      stderr: expect.stringContaining("KIT-UNREADABLE"),
    });
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    expect(await crossgrainHere(["buy", "tide.yaml", "--kits", "2 of 3x3"], folder)).toMatchObject({
      code: 2,
      stderr: expect.stringContaining("KITS-NEED-QUILT"),
    });
  }, 60_000);

  test("compare and arrange print tables; a cut list has nothing for them", async () => {
    const folder = emptyFolder();
    const quilt = join(import.meta.dirname, "..", "..", "fixtures", "quilts", "geese-and-bars.yaml");
    const compared = await crossgrainHere(
      ["compare", quilt, "--minutes", "seam=1,yard=2", "--out", "ways"],
      folder,
    );
    expect(compared.stdout).toMatch(/flying geese \(100\)\n {2}four at a time/);
    expect(compared.stdout).toContain("  methods:\n    flying geese: four at a time\n");
    expect(compared.stdout).toContain("seam 1, press 0.25, trim 0.75, yard 2.");
    expect(readFileSync(join(folder, "ways", "compare.svg"), "utf8")).toContain(
      "Ways of making Geese and bars",
    );
    const turned = await crossgrainHere(
      ["arrange", quilt, "--only", "upside-down,centre", "--out", "turned"],
      folder,
    );
    expect(turned.stdout).toContain("  about the centre: goose and bar are not square");
    expect(turned.stdout).toContain("    rows: |\n");
    expect(readFileSync(join(folder, "turned", "arrangements.svg"), "utf8")).toContain("<svg");
    const geese = join(ROOT, "fixtures/quilts/wild-geese-round.yaml");
    const inside = await crossgrainHere(
      ["arrange", geese, "--motifs", "facing,clockwise", "--only", "upright", "--out", "inside"],
      folder,
    );
    expect(inside.stdout).toContain("Motifs that are turned inside their block: round, 4 of 4 x 4 in.");
    expect(inside.stdout).toContain("      grid: |\n        b> g> g< b>\n");
    expect(inside.stdout).toContain(
      "as the file has it: also blocks all upright with motifs running round clockwise",
    );
    const told = await crossgrainHere(["arrange", geese, "--motifs", "facing", "--json"], folder);
    const { arrangements } = JSON.parse(told.stdout) as { arrangements: object[] };
    expect(arrangements).toMatchObject([
      { key: "file", grids: [] },
      {
        key: "motifs facing",
        motifs: "facing",
        grids: [{ block: "round", grid: ["b> g> g< b>", "|  |  |  |", "b> g> g< b>", "|  |  |  |"] }],
        planned: { methods: [{ count: 36 }], nesting: { places: 55 } },
      },
    ]);
    expect(await crossgrainHere(["arrange", quilt, "--motifs", "facing"], folder)).toMatchObject({
      code: 1,
      stderr: expect.stringContaining("NO-MOTIFS"),
    });
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    for (const command of ["compare", "arrange"]) {
      expect(await crossgrainHere([command, "tide.yaml"], folder)).toMatchObject({ code: 1 });
    }
    for (const words of [
      ["compare", quilt, "--minutes", "sleep=9"],
      ["arrange", quilt, "--seed", "x"],
      ["arrange", quilt, "--only", "spiral"],
      ["arrange", quilt, "--motifs", "spiral"],
      ["buy", quilt, "--sizes", "3x3", "--kits", "2"],
      ["buy", quilt, "--sizes", "quen"],
    ]) {
      expect(await crossgrainHere(words, folder)).toMatchObject({ code: 2, stdout: "" });
    }
    const sizes = await crossgrainHere(["buy", quilt, "--sizes", "2x2, crib drop 8 in", "--csv"], folder);
    expect(sizes.stdout).toMatch(/^Size,2x2,crib\r\nasked for,,44 x 60 in\r\n/);
    expect(sizes.stderr).toContain("warning QUILT-SIZE-NOT-MET");
  }, 60_000);
});

describe("restating a quilt for another ruler", () => {
  test("plans it in centimetres and tells every size that moved", async () => {
    const quilt = join(ROOT, "fixtures/quilts/nine-stars.yaml");
    const { code, stdout, stderr } = await crossgrainHere(["buy", quilt, "--ruler", "cm"], ROOT);
    expect(code).toBe(0);
    // 8 in blocks on a quarter-centimetre ruler: 1 in becomes 2.5 cm, a factor for the whole design.
    expect(stderr).toMatch("size of block star, across: 8 in is now 20 cm.");
    expect(stderr).toMatch("border 1: 3 in is now 7.5 cm.");
    expect(stdout).toMatch(/night .* cm /);
  });

  test("says why a cut list cannot be restated", async () => {
    const list = join(ROOT, "fixtures/cutlists/tide-pool.yaml");
    const { code, stderr } = await crossgrainHere(["buy", list, "--ruler", "cm"], ROOT);
    expect(code).toBe(1);
    expect(stderr).toMatch("NOTHING-TO-RESTATE");
  });
});

test("savings lists what buys less, and writes the file with a change made, notes kept", async () => {
  const folder = emptyFolder();
  const quilt = join(ROOT, "fixtures", "quilts", "nine-stars.yaml");
  const told = await crossgrainHere(
    ["savings", quilt, "--take", "1", "--out", "less.yaml", "--json"],
    folder,
  );
  const { savings } = JSON.parse(told.stdout) as {
    savings: {
      text: string;
      difference: { length: number };
      fabrics: { fabric: string; length: number }[];
    }[];
  };
  const written = readFileSync(join(folder, "less.yaml"), "utf8");
  expect(written).toBe(savings[0]!.text);
  expect(savings[0]!.difference.length).toBeLessThan(0);
  const bought = JSON.parse((await crossgrainHere(["buy", "less.yaml", "--json"], folder)).stdout) as {
    fabrics: { name: string; purchase: { length: number } | null }[];
  };
  expect(bought.fabrics.map(({ name, purchase }) => [name, purchase?.length ?? null])).toEqual(
    savings[0]!.fabrics.map(({ fabric, length }) => [fabric, length]),
  );
  expect(await crossgrainHere(["savings", quilt, "--take", "1"], folder)).toMatchObject({ code: 2 });
});
