import { fileNotText } from "../../diagnostics/files.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { type NotOurs, workNotOurs } from "../../diagnostics/work.ts";
import { floor, type Rational } from "../../length/rational.ts";
import type { LengthUnit } from "../../length/types.ts";
import { WORK_FORMAT } from "../key-words.ts";
import { describeSchema } from "../schema/json-schema.ts";
import { workSchema } from "../schema/work-schema.ts";
import { type Planned, type SaidOf, USUALLY_PLANNED, type WorkFile } from "../work-types.ts";
import { pathText, readDocument } from "./document.ts";
import { wordIssues } from "./issues.ts";
import { inFileOrder, MOST_CHARACTERS } from "./read-spec-file.ts";

const ticks = (value: Rational): number => Number(floor(value));

/** Why a text is not ours; null for one that is. */
function whatElse(value: unknown): NotOurs | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return { is: "no-group" };
  const { format } = value as { format?: unknown };
  return format === WORK_FORMAT ? null : { is: "no-format", format: WORK_FORMAT };
}

/**
 * Reads the file of the work. Every problem is told in one run, with its place. Never throws on any text.
 * @param unit measure of numbers written without one: that of the quilt's file
 */
export function readWorkFile(text: string, fileName: string, unit: LengthUnit): Outcome<WorkFile> {
  if (text.length > MOST_CHARACTERS) return { value: null, diagnostics: [fileNotText(fileName)] };
  const document = readDocument(text.replace(/^\ufeff/, ""), fileName);
  if (document.value === null)
    return { value: null, diagnostics: inFileOrder(document.diagnostics, fileName) };
  const else_ = whatElse(document.value.value);
  if (else_ !== null) return { value: null, diagnostics: [workNotOurs(fileName, else_)] };
  const schema = workSchema(unit);
  const read = schema.safeParse(document.value.value, { reportInput: true });
  if (!read.success) {
    const told: Diagnostic[] = wordIssues(read.error.issues, document.value, describeSchema(schema));
    return { value: null, diagnostics: inFileOrder(told, fileName) };
  }
  const { planned, said } = read.data;
  const source = document.value;
  const value: WorkFile = {
    planned: {
      ...USUALLY_PLANNED,
      kits: planned?.kits ?? 1,
      style: planned?.style ?? null,
      prefer: planned?.prefer ?? null,
      thorough: planned?.thorough ?? false,
      fatQuarters: planned?.["fat-quarters"] ?? false,
      width: planned?.width === undefined ? null : ticks(planned.width.value),
      bolt: planned?.bolt === undefined ? null : ticks(planned.bolt.value),
      ruler: planned?.ruler ?? null,
      budget: planned?.budget ?? null,
      cloth: (planned?.cloth ?? []).map(({ fabric, name, size, count }): Planned["cloth"][number] => ({
        fabric,
        name,
        across: ticks(size.across),
        along: ticks(size.along),
        count,
      })),
    },
    said: (said ?? []).map(
      (entry, i): SaidOf => ({
        fabric: entry.fabric,
        plan: entry.plan,
        facts: entry.facts.map((each, f) => {
          const path = ["said", i, "facts", f];
          return { ...each, path: pathText(path), at: source.valueAt(path) };
        }),
      }),
    ),
  };
  return { value, diagnostics: [] };
}
