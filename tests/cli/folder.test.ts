import { linkSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { usualFolder } from "../../src/cli/files/file-names.ts";
import { WRITERS } from "../../src/cli/files/manifest.ts";
import { writeFiles } from "../../src/cli/files/write.ts";
import { said } from "../support/in-words.ts";
import { contents, result } from "./folders.ts";
import { crossgrainHere, emptyFolder, ROOT, SMALL } from "./run.ts";

const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" viewBox="0 0 20 10"><rect width="20" height="10" fill="#c8553d"/></svg>`;

function folderWithQuilt(text = SMALL): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, "tide.yaml"), text);
  return folder;
}

const plan = (folder: string, ...more: string[]) =>
  crossgrainHere(["plan", "tide.yaml", "--out", "made", ...more], folder);

/** Names of what `plan` writes for the small list. */
const NAMES = [
  "book.html",
  "buy.csv",
  "buy.txt",
  "cut-1-night-sea.svg",
  "cut-2-chalk.svg",
  "cuts.csv",
  "plan.json",
  "steps.txt",
  "waste.txt",
];

/** Names that other plans, and options not asked for here, write. */
const NOT_WRITTEN = [
  "book.pdf",
  "handout.md",
  "handout.txt",
  "block-3.png",
  "pressing.svg",
  "cut-7-coral.svg",
  "template-t1.svg",
  "foundation-1.svg",
  "compare.svg",
  "kits.txt",
  "sewing.txt",
  "top.png",
];

describe("files of the maker's", () => {
  test("of names that are not written now stay, whatever they hold", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    mkdirSync(made);
    for (const name of NOT_WRITTEN) writeFileSync(join(made, name), `my ${name}`);
    for (const text of [SMALL, SMALL.replaceAll("Chalk", "Lime")]) {
      writeFileSync(join(folder, "tide.yaml"), text);
      expect((await plan(folder)).code).toBe(0);
      const seen = contents(made);
      for (const name of NOT_WRITTEN) expect(seen[name]).toBe(`my ${name}`);
    }
  });

  test("of names to be written are refused by name, all at once, and nothing is written", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    mkdirSync(made);
    for (const name of NAMES) writeFileSync(join(made, name), `my ${name}`);
    const before = contents(made);
    const { code, stdout, stderr } = await plan(folder);
    expect([code, stdout]).toEqual([1, ""]);
    expect(stderr).toContain("error FOLDER-IN-THE-WAY\n  Nothing was written into made, as");
    for (const name of NAMES) expect(stderr).toContain(`  ${name} (not written by this program)\n`);
    expect(stderr).toContain("or name another folder with --out; with --replace they are written over.");
    expect(contents(made)).toEqual(before);

    // To programs as JSON.
    const asJson = await plan(folder, "--json");
    expect(JSON.parse(asJson.stdout).diagnostics[0]).toMatchObject({ code: "FOLDER-IN-THE-WAY" });
    expect(contents(made)).toEqual(before);

    expect((await plan(folder, "--replace")).code).toBe(0);
    expect(Object.values(contents(made)).filter((text) => text.startsWith("my "))).toEqual([]);
    // From then on they are the program's.
    expect((await plan(folder)).code).toBe(0);
  });

  test("one of each name, empty or binary, stands against the whole result", async () => {
    for (const name of NAMES) {
      const folder = join(emptyFolder(), "made");
      mkdirSync(folder);
      const bytes = name.endsWith("t") ? new Uint8Array() : new Uint8Array([0, 255, 1, 254]);
      writeFileSync(join(folder, name), bytes);
      const files = Object.fromEntries(NAMES.map((each) => [each, each]));
      const { value, diagnostics } = await writeFiles(result(folder, files));
      expect([value, diagnostics.length]).toEqual([null, 1]);
      expect(said(diagnostics[0])?.message).toMatch(
        new RegExp(`:\n  ${name} \\(not written by this program\\)$`),
      );
      expect(new Uint8Array(readFileSync(join(folder, name)))).toEqual(bytes);
      expect(Object.keys(contents(folder))).toEqual([name]);
    }
  });

  test("a file of the program's that she has changed is hers", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    expect((await plan(folder)).code).toBe(0);
    const steps = join(made, "steps.txt");
    writeFileSync(steps, `${readFileSync(steps, "utf8")}\nMy note: mind the gulls.\n`);
    writeFileSync(join(folder, "tide.yaml"), SMALL.replaceAll("26", "27"));
    const before = contents(made);
    const { code, stderr } = await plan(folder);
    expect(code).toBe(1);
    expect(stderr).toContain("  steps.txt (changed since this program wrote it)\n");
    expect(stderr).not.toContain("waste.txt");
    expect(contents(made)).toEqual(before);
    expect((await plan(folder, "--replace")).code).toBe(0);
    expect(contents(made)["steps.txt"]).not.toContain("My note");
  });

  test("a result of an older version, which kept no list, counts as hers", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    expect((await plan(folder)).code).toBe(0);
    const { ".crossgrain.json": _list, ...old } = contents(made);
    const other = join(folder, "older");
    mkdirSync(other);
    for (const [name, text] of Object.entries(old)) writeFileSync(join(other, name), text);
    const again = (...more: string[]) =>
      crossgrainHere(["plan", "tide.yaml", "--out", "older", ...more], folder);
    // The very same again: nothing would be lost, and nothing becomes the program's by that.
    expect((await again()).code).toBe(0);
    expect(contents(other)).toEqual(old);
    writeFileSync(join(folder, "tide.yaml"), SMALL.replaceAll("26", "27"));
    const { code, stderr } = await again();
    expect(code).toBe(1);
    expect(stderr).toContain("steps.txt (not written by this program)");
    expect(contents(other)).toEqual(old);
    expect((await again("--replace")).code).toBe(0);
    expect((await again()).code).toBe(0);
  });

  test("folders and links are not even replaced when asked", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    mkdirSync(join(made, "steps.txt"), { recursive: true });
    writeFileSync(join(made, "steps.txt", "inside"), "mine");
    writeFileSync(join(folder, "elsewhere"), "mine");
    symlinkSync(join(folder, "elsewhere"), join(made, "buy.txt"));
    for (const more of [[], ["--replace"]]) {
      const { code, stderr } = await plan(folder, ...more);
      expect(code).toBe(1);
      for (const name of ["steps.txt", "buy.txt"])
        expect(stderr).toContain(`  ${name} (a folder or a link, not a plain file)\n`);
      expect(stderr).toContain("--replace does not write over buy.txt and steps.txt.");
    }
    expect(readFileSync(join(made, "steps.txt", "inside"), "utf8")).toBe("mine");
    expect(readFileSync(join(folder, "elsewhere"), "utf8")).toBe("mine");
    expect(Object.keys(contents(made))).toEqual(["buy.txt", "steps.txt"]);
  });
});

describe("what a command reads is never written over", () => {
  test("an input named plan.json in the folder, --replace or not, and by any of its names", async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, "made"));
    const input = join(folder, "made", "plan.json");
    writeFileSync(input, SMALL);
    symlinkSync(input, join(folder, "by-link.yaml"));
    linkSync(input, join(folder, "same.yaml"));
    for (const words of [
      ["made/plan.json"],
      ...["made/plan.json", "by-link.yaml", "same.yaml"].map((name) => [name, "--replace"]),
    ]) {
      const { code, stderr } = await crossgrainHere(["plan", ...words, "--out", "made"], folder);
      expect(code).toBe(1);
      expect(stderr).toContain("plan.json (it is what this command reads)");
      expect(contents(join(folder, "made"))).toEqual({ "plan.json": SMALL });
    }
    expect((await crossgrainHere(["plan", "made/plan.json", "--out", "other"], folder)).code).toBe(0);
  });

  test("an input that lies in the folder under a name of its own does no harm", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "tide.yaml"), SMALL);
    for (let run = 0; run < 2; run++) {
      expect((await crossgrainHere(["plan", "tide.yaml", "--out", "."], folder)).code).toBe(0);
      expect(contents(folder)).toMatchObject({ "tide.yaml": SMALL });
    }
  });

  test("a table of cloth named as a list of the plan's", async () => {
    const folder = folderWithQuilt();
    const table = "fabric,width,length\nchalk,21 in,18 in\n";
    mkdirSync(join(folder, "made"));
    writeFileSync(join(folder, "made", "buy.csv"), table);
    const { code, stderr } = await plan(folder, "--stash", "made/buy.csv", "--replace");
    expect(code).toBe(1);
    expect(stderr).toContain("buy.csv (it is what this command reads)");
    expect(contents(join(folder, "made"))).toEqual({ "buy.csv": table });
  });

  test("a drawing named as its own picture", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "top.png"), DRAWING);
    for (const more of [[], ["--replace"]]) {
      const { code, stderr } = await crossgrainHere(["picture", "top.png", ...more], folder);
      expect(code).toBe(1);
      expect(stderr).toContain("top.png (it is what this command reads)");
      expect(stderr).not.toContain("--out");
    }
    expect(contents(folder)).toEqual({ "top.png": DRAWING });
  });

  test("not even where the list says that it is the program's and out of date", async () => {
    const folder = join(emptyFolder(), "made");
    const files = { "plan.json": "one", "cut-1-sky.svg": "two" };
    expect((await writeFiles(result(folder, files))).value).not.toBeNull();
    const inputs = Object.keys(files).map((name) => join(folder, name));
    const { value } = await writeFiles(result(folder, { "plan.json": "new" }, { inputs, replace: true }));
    expect(value).toBeNull();
    expect((await writeFiles(result(folder, { "top.svg": "new" }, { inputs }))).value).toEqual(["top.svg"]);
    expect(contents(folder)).toMatchObject(files);
  });
});

describe("a folder used again", () => {
  test("by another quilt: the first one's diagrams go, hers and what she changed stay", async () => {
    const folder = folderWithQuilt();
    const made = join(folder, "made");
    expect((await plan(folder, "--markdown", "--png", "60")).code).toBe(0);
    writeFileSync(join(made, "cut-9-mine.svg"), "mine");
    writeFileSync(join(made, "handout.md"), "my handout");
    writeFileSync(join(made, "cut-2-chalk.svg"), "my colours");
    const quilt = join(ROOT, "fixtures", "quilts", "nine-stars.yaml");
    const { code, stderr } = await crossgrainHere(["plan", quilt, "--out", "made"], folder);
    expect(code).toBe(0);
    expect(stderr).toContain(
      "warning FOLDER-OLD-LEFT\n  cut-2-chalk.svg and handout.md in made are of an earlier plan.",
    );
    const names = Object.keys(contents(made));
    expect(names).toContain("cut-1-night.svg");
    for (const gone of ["cut-1-night-sea.svg", "cut-1-night-sea.png", "cut-2-chalk.png", "handout.txt"])
      expect(names).not.toContain(gone);
    expect(contents(made)).toMatchObject({
      "cut-9-mine.svg": "mine",
      "handout.md": "my handout",
      "cut-2-chalk.svg": "my colours",
    });
    // They are hers by now, and said once.
    const again = await crossgrainHere(["plan", quilt, "--out", "made"], folder);
    expect([again.code, again.stderr.includes("FOLDER-OLD-LEFT")]).toEqual([0, false]);
  });

  test("by another command: each takes away its own files only", async () => {
    const folder = join(emptyFolder(), "made");
    for (const by of WRITERS.filter((each) => each !== "picture"))
      expect(
        (await writeFiles(result(folder, { [`${by}.svg`]: by, [`${by}-old.svg`]: by }, { by }))).value,
      ).not.toBeNull();
    expect(Object.keys(contents(folder))).toHaveLength(11);
    await writeFiles(result(folder, { "plan.svg": "new" }));
    const { ".crossgrain.json": _list, ...seen } = contents(folder);
    expect(seen).toEqual({
      "arrange-old.svg": "arrange",
      "arrange.svg": "arrange",
      "compare-old.svg": "compare",
      "compare.svg": "compare",
      "page-old.svg": "page",
      "page.svg": "page",
      "plan.svg": "new",
      "savings-old.svg": "savings",
      "savings.svg": "savings",
    });
  });

  test("a picture of a drawing goes when its drawing changes, and stays when it does not", async () => {
    const folder = join(emptyFolder(), "made");
    const drawings = { "top.svg": "one", "cut-1.svg": "one", "old.svg": "one" };
    await writeFiles(result(folder, drawings));
    for (const name of ["top.png", "cut-1.png", "old.png", "hers.png"])
      await writeFiles(result(folder, { [name]: "picture" }, { by: "picture" }));
    await writeFiles(result(folder, { "top.svg": "one", "cut-1.svg": "two" }));
    expect(Object.keys(contents(folder))).toEqual([
      ".crossgrain.json",
      "cut-1.svg",
      "hers.png",
      "top.png",
      "top.svg",
    ]);
  });

  test("a picture is not made over one of hers, and is made anew over its own", async () => {
    const folder = emptyFolder();
    for (const name of ["top.svg", "block.svg"]) writeFileSync(join(folder, name), DRAWING);
    writeFileSync(join(folder, "block.png"), "my photo");
    const refused = await crossgrainHere(["picture", "block.svg"], folder);
    expect(refused.code).toBe(1);
    expect(refused.stderr).toContain("block.png (not written by this program)");
    expect(contents(folder)["block.png"]).toBe("my photo");
    for (const width of ["30", "40"])
      expect((await crossgrainHere(["picture", "top.svg", "--width", width], folder)).code).toBe(0);
    const replaced = await crossgrainHere(["picture", "block.svg", "--width", "20", "--replace"], folder);
    expect(replaced.code).toBe(0);
    expect(contents(folder)["block.png"]).toContain("PNG");
  });
});

describe("the list of what was written", () => {
  const read = (folder: string) =>
    JSON.parse(readFileSync(join(folder, ".crossgrain.json"), "utf8")) as { files: object };

  test("is the same for the same files in any order, and says nothing of the day or the place", async () => {
    const [one, two] = [join(emptyFolder(), "made"), join(emptyFolder(), "other")];
    await writeFiles(result(one, { b: "2", a: "1" }));
    await writeFiles(result(two, { a: "1" }));
    await writeFiles(result(two, { a: "1", b: "2" }));
    expect(contents(one)).toEqual(contents(two));
    // SHA-256 of "1", by any other program that works it out.
    const sha256 = "6b86b273ff34fce19d6b804eff5a3f5747ada4eaa22f1d49c01e52ddb7875b4b";
    expect(read(one).files).toMatchObject({ a: { by: "plan", sha256 } });
  });

  test.each([
    ["no JSON", "<<<<<<< ours"],
    ["another format", '{"files":{}}'],
    ["a later version", '{"format":"crossgrain folder","version":2,"files":{}}'],
    ["names that lead out of the folder", "../tide.yaml"],
  ])("that cannot be read makes every file hers: %s", async (_what, text) => {
    const folder = emptyFolder();
    const made = join(folder, "made");
    writeFileSync(join(folder, "tide.yaml"), "a");
    await writeFiles(result(made, { "steps.txt": "a", "cut-1-sky.svg": "a" }));
    const list = readFileSync(join(made, ".crossgrain.json"), "utf8");
    writeFileSync(
      join(made, ".crossgrain.json"),
      text.startsWith("..") ? list.replace("cut-1-sky.svg", text) : text,
    );
    const before = contents(made);
    const next = { "steps.txt": "b" };
    const { value, diagnostics } = await writeFiles(result(made, next));
    expect(value).toBeNull();
    for (const name of ["steps.txt", ".crossgrain.json"])
      expect(said(diagnostics[0])?.message).toContain(`${name} (not written by this program)`);
    expect(contents(made)).toEqual(before);
    expect((await writeFiles(result(made, next, { replace: true }))).value).not.toBeNull();
    expect(contents(made)).toMatchObject({ "steps.txt": "b", "cut-1-sky.svg": "a" });
    expect(contents(folder)["tide.yaml"]).toBe("a");
    expect(Object.keys(read(made).files)).toEqual(["steps.txt"]);
  });
});

describe("the folder that nobody named", () => {
  // Names that Windows keeps for devices: common practice, documented by its maker.
  const KEPT = ["con", "prn", "aux", "nul", "com1", "com9", "com\u00b9", "lpt1", "lpt9", "lpt\u00b3"];

  test.each([
    ...KEPT.map((name) => [name.toUpperCase(), join("out", `${name}-quilt`)]),
    ["Aux.", join("out", "aux-quilt")],
    [" Con ", join("out", "con-quilt")],
    ["Con fuoco", join("out", "con-fuoco")],
    ["Auxerre", join("out", "auxerre")],
    ["COM10", join("out", "com10")],
    ["..", join("out", "plan")],
    ["../../Sea", join("out", "sea")],
    ["Tide pool...", join("out", "tide-pool")],
    ["a/b\\c:d*e?f", join("out", "a-b-c-d-e-f")],
    ["\u2605\u2605", join("out", "plan")],
    ["", join("out", "plan")],
  ])("of %j is %s", (name, folder) => {
    expect(usualFolder(name)).toBe(folder);
  });

  test("is never too long, cut within a letter, or ended with a dash", () => {
    for (const letter of ["a", "\u00e9", "\u85cd", "\u{20000}", "a-", "ab ", "\u1f600"]) {
      const part = usualFolder(letter.repeat(300)).slice("out/".length);
      expect(Buffer.byteLength(part)).toBeLessThan(200);
      expect(part.length).toBeGreaterThan(30);
      // Half a letter is none.
      expect(part).toMatch(/[\p{L}\p{N}]$/u);
    }
  });

  test("is used by a plan", async () => {
    const folder = folderWithQuilt(SMALL.replace("Tide pool", "Aux"));
    const { code, stderr } = await crossgrainHere(["plan", "tide.yaml"], folder);
    expect([code, stderr]).toEqual([0, `9 files written into ${join("out", "aux-quilt")}\n`]);
  });
});
