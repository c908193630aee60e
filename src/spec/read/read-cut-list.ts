import { linesTooMany, nameRepeated, piecesTooMany } from "../../diagnostics/fields.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { parseLength } from "../../length/parse.ts";
import type { LengthUnit, Ruler } from "../../length/types.ts";
import { type Filled, fillFabric } from "../fill/fill-fabric.ts";
import { type FileSettings, fillFile, gatherAssumptions } from "../fill/fill-file.ts";
import { oncePerUnit } from "../fill/once-per-unit.ts";
import { cutListSchema, fileFields, readMeasure } from "../schema/cut-list-schema.ts";
import { allFabricsSchema, fabricSchema, type WrittenCloth } from "../schema/fabric-schema.ts";
import { describeSchema } from "../schema/json-schema.ts";
import type { CutListSpec, FabricSpec } from "../types.ts";
import { MOST_PIECES } from "../written/written.ts";
import { type Path, pathText, type SourceDocument } from "./document.ts";
import { wordIssues } from "./issues.ts";

const allFabricsFor = oncePerUnit(allFabricsSchema);
const listedFor = oncePerUnit((unit) => fabricSchema(unit, true));
const designedFor = oncePerUnit((unit) => fabricSchema(unit, false));
const cutListFor = oncePerUnit(cutListSchema);
const fieldsFor = oncePerUnit(fileFields);

const MOST_FABRICS = 100;
const MOST_LINES = 500;

type Raw = Readonly<Record<string, unknown>>;

function raw(value: unknown): Raw {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Raw) : {};
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** The measure of bare numbers: as written, else that of the ruler, else inches. */
export function readUnit(value: unknown): { unit: LengthUnit; written: boolean } {
  const { units, ruler } = raw(value);
  const named = typeof units === "string" ? readMeasure(units) : null;
  if (named !== null) return { unit: named, written: true };
  const marks = typeof ruler === "string" ? parseLength(ruler, "in") : null;
  const metric = marks?.ok === true && marks.unit !== null && marks.unit !== "in" && marks.unit !== "yd";
  return { unit: metric ? "cm" : "in", written: false };
}

/** Too many entries are told by number and not read one by one. */
export function countLimits(document: SourceDocument): Diagnostic[] {
  const fabrics = list(raw(document.value).fabrics);
  const told = (path: Path, what: "fabrics" | "sizes", found: number, most: number): Diagnostic[] =>
    found > most ? [linesTooMany({ path: pathText(path), at: document.keyAt(path) }, what, found, most)] : [];
  return [
    ...told(["fabrics"], "fabrics", fabrics.length, MOST_FABRICS),
    ...fabrics.flatMap((fabric, i) =>
      told(["fabrics", i, "pieces"], "sizes", list(raw(fabric).pieces).length, MOST_LINES),
    ),
  ];
}

/** Names written twice, looked for in the file itself so that other problems do not hide them. */
function repeatedNames(document: SourceDocument): Diagnostic[] {
  const first = new Map<string, number>();
  return list(raw(document.value).fabrics).flatMap((fabric, i) => {
    const { name } = raw(fabric);
    if (typeof name !== "string") return [];
    const known = name.normalize("NFC").trim().replace(/\s+/g, " ");
    const before = first.get(known.toLowerCase());
    const path = ["fabrics", i, "name"];
    if (before === undefined) {
      first.set(known.toLowerCase(), i);
      return [];
    }
    const { line } = document.valueAt(["fabrics", before, "name"]);
    return [nameRepeated({ path: pathText(path), at: document.valueAt(path) }, known, line)];
  });
}

/** All fabrics that can be read, filled in; the others are spoken of by the schema's own issues. */
export function readFabrics(
  document: SourceDocument,
  settings: FileSettings,
  piecesNeeded: boolean,
): Filled[] {
  const { ruler, defaultUnit: unit } = settings;
  const file = raw(document.value);
  const readCommon = allFabricsFor(unit).safeParse(file["all-fabrics"] ?? {});
  const common: WrittenCloth = readCommon.success ? readCommon.data : {};
  const schema = piecesNeeded ? listedFor(unit) : designedFor(unit);
  return list(file.fabrics).flatMap((written, i) => {
    const fabric = schema.safeParse(written);
    return fabric.success ? [fillFabric(fabric.data, i, { ruler, unit, common, document })] : [];
  });
}

/** Checks that only the whole file can answer. */
export function checkFabrics(document: SourceDocument, fabrics: readonly FabricSpec[]): Diagnostic[] {
  const total = fabrics.flatMap((fabric) => fabric.pieces).reduce((sum, piece) => sum + piece.count, 0);
  const where = { path: "fabrics", at: document.keyAt(["fabrics"]) };
  const tooMany = total > MOST_PIECES ? [piecesTooMany(where, total, MOST_PIECES)] : [];
  return [...repeatedNames(document), ...tooMany];
}

/** Reads a plain cut list from a document: every problem in one run, a value when there is no error. */
export function readCutList(
  document: SourceDocument,
  fallbackName: string,
  written: Pick<Ruler, "decimal" | "language">,
): Outcome<CutListSpec> {
  const limits = countLimits(document);
  if (limits.length > 0) return { value: null, diagnostics: limits };
  const { unit, written: unitWritten } = readUnit(document.value);
  const schema = cutListFor(unit);
  const read = schema.safeParse(document.value);
  const issues = read.success ? [] : wordIssues(read.error.issues, document, describeSchema(schema));
  const head: Parameters<typeof fillFile>[0] = read.success ? read.data : readHead(document, unit);
  const settings = fillFile(head, unit, unitWritten, fallbackName, written);
  const filled = readFabrics(document, settings, true);
  const fabrics = filled.map(({ fabric }) => fabric);
  const diagnostics = [
    ...issues,
    ...checkFabrics(document, fabrics),
    ...filled.flatMap((each) => each.diagnostics),
  ];
  if (diagnostics.some(({ severity }) => severity === "error")) return { value: null, diagnostics };
  const assumptions = [
    ...settings.assumptions,
    ...gatherAssumptions(
      fabrics,
      filled.flatMap((each) => each.assumptions),
    ),
  ];
  return { value: { kind: "cut-list", ...settings, fabrics, assumptions }, diagnostics };
}

/** Of a file with faults, the fields of its head that are right: enough to look at the fabrics. */
export function readHead(document: SourceDocument, unit: LengthUnit): Parameters<typeof fillFile>[0] {
  const file = raw(document.value);
  const fields = Object.entries(fieldsFor(unit)).flatMap(([key, field]) => {
    const read = field.safeParse(file[key]);
    return read.success && read.data !== undefined ? [[key, read.data] as const] : [];
  });
  return Object.fromEntries(fields);
}
