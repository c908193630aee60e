import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { auditSewing } from "../../../src/audit/sew/index.ts";
import { forKits as asKits } from "../../../src/cutlist/for-kits.ts";
import { listAll } from "../../../src/pipeline.ts";
import type { QuiltSpec } from "../../../src/spec/quilt-types.ts";
import { readSpecFile } from "../../../src/spec/read/read-spec-file.ts";
import { starters as STARTERS } from "../../../src/words/en/starters.ts";
import { oneIn } from "../../support/sweep.ts";
import { unknown } from "./known.ts";
import { faultsByUnit, mustSew, sewingOf } from "./sewn.ts";

const FIXTURES = fileURLToPath(new URL("../../../fixtures/quilts", import.meta.url));
const MENDED = fileURLToPath(new URL("../../../fixtures/trials", import.meta.url));
/** Files on which something was once wrong, kept beside the project or where `CROSSGRAIN_DATA` says. */
const DATA = process.env.CROSSGRAIN_DATA ?? fileURLToPath(new URL("../../../../shared", import.meta.url));
const TRIALS = `${DATA}/trials`;

const filesOf = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith(".yaml"));

describe("quilts come out as designed", () => {
  test.each(filesOf(FIXTURES))("%s", (name) => {
    expect(auditSewing(mustSew(readFileSync(`${FIXTURES}/${name}`, "utf8")))).toEqual([]);
  });

  test.each(STARTERS.map(({ name, text }) => [name, text]))("starter %s", (_, text) => {
    const sewing = sewingOf(text);
    if (sewing !== null) expect(auditSewing(sewing)).toEqual([]);
  });

  test("the starters with a design are sewn", () => {
    expect(STARTERS.filter(({ text }) => sewingOf(text) !== null).length).toBe(STARTERS.length - 1);
  });
});

describe("mended trials come out as designed", () => {
  test.each(oneIn(2, filesOf(MENDED)))("%s", (name) => {
    const sewing = sewingOf(readFileSync(`${MENDED}/${name}`, "utf8"), name);
    if (sewing !== null) expect(auditSewing(sewing)).toEqual([]);
  });

  test("columns of their own sizes, off the marks, are sewn", () => {
    expect(sewingOf(readFileSync(`${MENDED}/uneven-columns.yaml`, "utf8"))).not.toBeNull();
  });
});

describe.skipIf(!existsSync(TRIALS))("trials (skipped where their folder is missing)", () => {
  test.each(existsSync(TRIALS) ? oneIn(2, filesOf(TRIALS)) : [])("%s", (name) => {
    const sewing = sewingOf(readFileSync(`${TRIALS}/${name}`, "utf8"), name);
    if (sewing !== null) expect(unknown(faultsByUnit(sewing))).toEqual([]);
  });
});

describe("kits", () => {
  const text = readFileSync(`${FIXTURES}/wild-geese-round.yaml`, "utf8");
  const forKits = (kits: number) => {
    const sewing = mustSew(text);
    const { value } = listAll(readSpecFile(text, "quilt.yaml").value as QuiltSpec);
    const fabrics = (value?.cutLists ?? []).map((list) => {
      const { fabric, pieces } = asKits(list, kits);
      return { name: fabric.name, print: fabric.print, pieces };
    });
    return { ...sewing, fabrics, kits };
  };

  test("pieces of twelve quilts make each of them", () => {
    expect(auditSewing(forKits(12))).toEqual([]);
  });

  test("a piece too many in all of them, or another number of kits, is found", () => {
    const sewing = forKits(12);
    const [piece] = sewing.fabrics[0]?.pieces ?? [];
    if (piece !== undefined) piece.count += 1;
    expect(auditSewing(sewing)).not.toEqual([]);
    expect(auditSewing({ ...forKits(12), kits: 6 })).not.toEqual([]);
  });
});
