import { listQuiltCuts, recordUnits } from "../../src/cutlist/of-quilt/quilt-list.ts";
import type { UnitRecord } from "../../src/cutlist/record/unit-record.ts";
import type { CutList } from "../../src/cutlist/types.ts";
import type { Diagnostic } from "../../src/diagnostics/types.ts";
import { layOutQuilt } from "../../src/quilt/lay-out-quilt.ts";
import type { QuiltTop } from "../../src/quilt/types.ts";
import type { QuiltWork } from "../../src/quilt/work-types.ts";
import type { QuiltSpec } from "../../src/spec/quilt-types.ts";
import { readSpecFile } from "../../src/spec/read/read-spec-file.ts";
import { allSaid } from "../support/in-words.ts";

export const INCH = 16256;

export interface WorkedOut {
  spec: QuiltSpec;
  top: QuiltTop;
  work: QuiltWork;
  cutLists: CutList[];
  units: UnitRecord[];
  diagnostics: Diagnostic[];
}

/** Reads a quilt file, lays it out and lists its cuts; throws with what was said when anything is wrong. */
export function workOut(text: string): WorkedOut {
  const read = readSpecFile(text, "quilt.yaml");
  const fail = (diagnostics: readonly Diagnostic[]): never => {
    throw new Error(
      `${allSaid(diagnostics)
        .map((each) => `${each.code} ${each.message}`)
        .join("\n")}\n${text}`,
    );
  };
  if (read.value === null || read.value.kind !== "quilt") return fail(read.diagnostics);
  const laid = layOutQuilt(read.value);
  if (laid.value === null) return fail(laid.diagnostics);
  const listed = listQuiltCuts(read.value, laid.value.work);
  if (listed.value === null) return fail(listed.diagnostics);
  return {
    spec: read.value,
    ...laid.value,
    cutLists: listed.value.cutLists,
    units: recordUnits(listed.value, read.value),
    diagnostics: [...read.diagnostics, ...laid.diagnostics, ...listed.diagnostics],
  };
}

/** Pieces of a fabric as `across x along x count` in inches, in the order of the list. */
export function cutsOf(worked: WorkedOut, fabric: string): string[] {
  const list = worked.cutLists.find((each) => each.fabric.name === fabric);
  return (list?.pieces ?? []).map(
    (piece) => `${piece.across / INCH} x ${piece.along / INCH} x ${piece.count}`,
  );
}
