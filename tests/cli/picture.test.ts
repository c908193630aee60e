import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PNG } from "pngjs";
import { expect, test } from "vitest";
import { fontsFor } from "../../src/cli/results/fonts.ts";
import { fontPath } from "../support/fonts.ts";
import { said } from "../support/in-words.ts";
import { crossgrainHere, emptyFolder, SMALL } from "./run.ts";

const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="50" viewBox="0 0 100 50"><rect width="100" height="50" fill="#c8553d"/><text x="4" y="20" font-size="12">Gulls</text></svg>`;
const NO_FONTS = [join(tmpdir(), "no-such-folder")];

test("a drawing becomes a picture of the width asked for, beside it", async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "top.svg"), DRAWING);
  const { code, stderr } = await crossgrainHere(["picture", "top.svg", "--width", "300"], folder);
  expect(stderr).toBe("top.png written\n");
  expect(code).toBe(0);
  const { width, height } = PNG.sync.read(readFileSync(join(folder, "top.png")));
  expect([width, height]).toEqual([300, 150]);
});

test("a wrong width and a file that is no drawing are refused with an example", async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "top.svg"), DRAWING);
  writeFileSync(join(folder, "list.yaml"), "name: no drawing");
  writeFileSync(join(folder, "torn.svg"), "<svg xmlns=");
  for (const width of ["0", "-5", "12.5", "wide", "99999"]) {
    const { code, stderr } = await crossgrainHere(["picture", "top.svg", `--width=${width}`], folder);
    expect(code).toBe(2);
    expect(stderr).toContain("for example 1600");
  }
  for (const file of ["list.yaml", "torn.svg"]) {
    const { code, stderr } = await crossgrainHere(["picture", file], folder);
    expect(code).toBe(1);
    expect(stderr).toContain(`${file} is not an SVG drawing`);
  }
});

test("fonts are looked for only when a letter needs one, and what has none is named", async () => {
  const place = emptyFolder();
  mkdirSync(join(place, "deep"));
  writeFileSync(join(place, "deep", "other.ttf"), readFileSync(fontPath("DejaVuMathTeXGyre")));
  writeFileSync(join(place, "broken.ttf"), "no font");
  const usual = await fontsFor(["Größe", "בד", "قماش"], [], [place]);
  expect([usual.others, usual.undrawn, usual.diagnostics]).toEqual([[], [], []]);
  const found = await fontsFor({ name: "sum \u27c2" }, [], [place]);
  expect(found.others.map(({ path }) => path)).toEqual([join(place, "deep", "other.ttf")]);
  expect(found.undrawn).toEqual([]);
  const none = await fontsFor({ name: ["藍の布", "plain"] }, [join(place, "broken.ttf")], NO_FONTS);
  expect(none.undrawn).toEqual(["藍", "の", "布"]);
  expect(none.diagnostics.map(({ code }) => code)).toEqual(["FONT-UNREADABLE", "LETTERS-WITHOUT-FONT"]);
  expect(said(none.diagnostics[1])?.message).toContain('"藍の布"');
  expect(said(none.diagnostics[1])?.hint).toContain("--font");
});

test("a plan brings pictures and a handout when asked, and takes old ones away when not", async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "small.yaml"), SMALL);
  const asked = ["plan", "small.yaml", "--out", "made"];
  const first = await crossgrainHere([...asked, "--png", "120", "--markdown"], folder);
  expect(first.code).toBe(0);
  const names = readdirSync(join(folder, "made"));
  const drawings = names.filter((name) => name.endsWith(".svg"));
  expect(drawings.length).toBeGreaterThan(0);
  expect(names.filter((name) => name.endsWith(".png"))).toEqual(
    drawings.map((name) => name.replace(/svg$/, "png")),
  );
  const made = readFileSync(join(folder, "made", "handout.md"), "utf8");
  expect(made).toMatch(/^# Tide pool\n/);
  expect(
    PNG.sync.read(readFileSync(join(folder, "made", drawings[0]?.replace(/svg$/, "png") ?? ""))).width,
  ).toBe(120);
  expect((await crossgrainHere(asked, folder)).code).toBe(0);
  const left = readdirSync(join(folder, "made"));
  expect(left.filter((name) => /png$|^handout/.test(name))).toEqual([]);
});

test("a cut list has no ways of making to compare: it is planned all the same, and that is said", async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "small.yaml"), SMALL);
  const { code, stderr } = await crossgrainHere(["plan", "small.yaml", "--compare", "--out", "made"], folder);
  expect(code).toBe(0);
  expect(stderr).toMatch(/cut list/i);
  expect(stderr).not.toContain("error");
  expect(readdirSync(join(folder, "made"))).toContain("book.html");
});
