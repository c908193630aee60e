import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { rulerWithSeams } from "../../length/marks.ts";
import type { Ruler } from "../../length/types.ts";
import { fillFile, gatherAssumptions } from "../fill/fill-file.ts";
import { straightenedOnLines } from "../fill/foundation-fill.ts";
import { oncePerUnit } from "../fill/once-per-unit.ts";
import { fillQuilt } from "../fill/quilt-fill.ts";
import type { QuiltSpec } from "../quilt-types.ts";
import { describeSchema } from "../schema/json-schema.ts";
import { quiltFields, quiltSchema, type WrittenQuilt } from "../schema/quilt-schema.ts";
import type { SourceDocument } from "./document.ts";
import { wordIssues } from "./issues.ts";
import { checkFabrics, countLimits, readFabrics, readHead, readUnit } from "./read-cut-list.ts";

const schemaFor = oncePerUnit(quiltSchema);
const fieldsFor = oncePerUnit(quiltFields);

/** True when a file is a quilt design: it says how blocks are made or set. */
export function isQuilt(value: object): boolean {
  return "blocks" in value || "setting" in value;
}

/** Reads a quilt design from a document: every problem in one run, a value when there is no error. */
export function readQuilt(
  document: SourceDocument,
  fallbackName: string,
  written: Pick<Ruler, "decimal" | "language">,
): Outcome<QuiltSpec> {
  const limits = countLimits(document);
  if (limits.length > 0) return { value: null, diagnostics: limits };
  const { unit, written: unitWritten } = readUnit(document.value);
  const schema = schemaFor(unit);
  const read = schema.safeParse(document.value);
  const issues = read.success ? [] : wordIssues(read.error.issues, document, describeSchema(schema));
  const settings = fillFile(
    read.success ? read.data : readHead(document, unit),
    unit,
    unitWritten,
    fallbackName,
    written,
  );
  const filled = readFabrics(document, settings, false);
  const fabrics = filled.map(({ fabric }) => fabric);
  const diagnostics: Diagnostic[] = [
    ...issues,
    ...checkFabrics(document, fabrics),
    ...filled.flatMap((each) => each.diagnostics),
  ];
  const design = read.success ? read.data : readDesign(document, unit);
  const part = design === null ? null : fillQuilt(design, settings, fabrics, { document, diagnostics });
  if (part === null || diagnostics.some(({ severity }) => severity === "error"))
    return { value: null, diagnostics };
  const onLines = straightenedOnLines(
    fabrics,
    filled.flatMap((each) => each.assumptions),
    part.quilt.foundation,
  );
  const assumed = gatherAssumptions(fabrics, onLines.assumptions);
  const assumptions = [...settings.assumptions, ...part.assumptions, ...assumed];
  const ruler = rulerWithSeams(settings.ruler, part.quilt.seam);
  return { value: { ...settings, ruler, fabrics: onLines.fabrics, ...part.quilt, assumptions }, diagnostics };
}

/** Of a file with faults, the design when all its own fields are right: a wrong fabric should not hide wrong cells. */
function readDesign(document: SourceDocument, unit: Parameters<typeof quiltFields>[0]): WrittenQuilt | null {
  const value = document.value as Readonly<Record<string, unknown>>;
  const fields: Record<string, unknown> = { fabrics: [] };
  for (const [key, field] of Object.entries(fieldsFor(unit))) {
    const read = field.safeParse(value[key]);
    if (!read.success) return null;
    if (read.data !== undefined) fields[key] = read.data;
  }
  return fields as WrittenQuilt;
}
