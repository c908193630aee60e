import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { FILE_SYSTEM_CODES } from "../../src/diagnostics/files.ts";
import type { Diagnostic } from "../../src/diagnostics/types.ts";
import { checkQuilt, planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { allSaid } from "../support/in-words.ts";

const BAD = new URL("../../fixtures/bad/", import.meta.url);
const folders = readdirSync(BAD).sort();

interface ExpectedRecord {
  code: string;
  severity: string;
  message: string;
  hint: string;
  path: string;
  line: number | null;
  column: number | null;
}

function recordsOf(diagnostics: readonly Diagnostic[]): ExpectedRecord[] {
  return allSaid(diagnostics).map(({ at, ...rest }) => ({
    ...rest,
    line: at?.line ?? null,
    column: at?.column ?? null,
  }));
}

const textOf = (folder: string) => readFileSync(new URL(`${folder}/input.yaml`, BAD), "utf8");

/** What only planning finds out. */
const PLANNED = ["STOCK-SHORT", "PIECE-LONGER-THAN-BOLT"];
const planned = new Map<string, ExpectedRecord[]>();
for (const folder of folders.filter((name) => PLANNED.some((code) => name.startsWith(code)))) {
  const { diagnostics } = await planQuilt(textOf(folder), "input.yaml", USUAL_OPTIONS, solveHere);
  planned.set(folder, recordsOf(diagnostics));
}

function told(folder: string): ExpectedRecord[] {
  return planned.get(folder) ?? recordsOf(checkQuilt(textOf(folder), "input.yaml").diagnostics);
}

describe.each(folders)("%s", (folder) => {
  const records = told(folder);

  test("is told as recorded", () => {
    const expected = JSON.parse(readFileSync(new URL(`${folder}/expected.json`, BAD), "utf8")) as unknown;
    expect(records).toEqual(expected);
  });

  test("shows the code it is named after, with a place", () => {
    const shown = records.find(({ code }) => folder.startsWith(code));
    expect(shown).toBeDefined();
    expect(shown?.line).not.toBe(null);
  });
});

/** Codes of the modules whose faults lie in the text of a file. */
function codesIn(module: string): string[] {
  const source = readFileSync(new URL(`../../src/diagnostics/${module}.ts`, import.meta.url), "utf8");
  return [...new Set(source.match(/(?<=")[A-Z]+(?:-[A-Z]+)+(?=")/g) ?? [])];
}

/** Shown by their own tests: a file of megabytes is not kept, and plans need more than a file. */
const ELSEWHERE = [
  ...FILE_SYSTEM_CODES,
  "FILE-TOO-LARGE",
  "JOIN-COMPARED",
  "NONE-FOUND",
  "NOT-PROVEN",
  "SEARCH-CUT-SHORT",
];

test("every code is shown by a bad file", () => {
  const shown = new Set(folders.flatMap((folder) => told(folder).map(({ code }) => code)));
  const codes = [
    "reading",
    "cloth",
    "fields",
    "files",
    "quilts/foundation",
    "planning",
    "quilts/quilt",
    "quilts/quilt-file",
    "quilts/quilt-plan",
  ].flatMap(codesIn);
  expect(codes.filter((code) => !shown.has(code) && !ELSEWHERE.includes(code))).toEqual([]);
});

test("builders stand in the order of their codes", () => {
  for (const module of ["reading", "fields"]) {
    const codes = codesIn(module);
    expect(codes).toEqual([...codes].sort());
  }
});
