import { kitsMissing, kitsTooMany, kitUnreadable } from "../../diagnostics/quilts/class.ts";
import { NOWHERE } from "../../diagnostics/tell.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { type KitSpec, MOST_KITS, type QuiltSpec, readKitLine } from "../../spec/index.ts";
import { readSizes, type SizeAsked } from "../sizes/read-sizes.ts";

/** Kits of a class that are alike, as asked for. */
export interface KitsAsked {
  kits: number;
  /** Null: the quilt as drawn. */
  size: SizeAsked | null;
  /** Empty: in the quilt's own fabrics. */
  colourway: string;
}

/** What stands for the kits of the file. */
export const KITS_OF_FILE = "file";

/** A comma of a decimal parts no kits: what follows one that does is how many. */
const COMMA = /,(?!\d)|,(?=\d+\s*(?:of|in)\b)/i;

/**
 * Reads `4 of 3x3, 5 of lap in evening`, with semicolons where a size has commas, or `file` for those of the file. Every
 * fault is told.
 */
export function readKits(typed: string, spec: QuiltSpec): Outcome<KitsAsked[]> {
  const ofFile = typed.trim().toLowerCase() === KITS_OF_FILE;
  const diagnostics: Diagnostic[] = [];
  const kits = ofFile ? spec.class.kits : typedKits(typed, spec, diagnostics);
  if (ofFile && kits.length === 0) diagnostics.push(kitsMissing());
  const all = kits.reduce((sum, { count }) => sum + count, 0);
  if (all > MOST_KITS) diagnostics.push(kitsTooMany(NOWHERE, all, MOST_KITS));
  const asked = kits.map(({ count, size, colourway, path, at }): KitsAsked => {
    if (size === "") return { kits: count, size: null, colourway };
    // Beside a semicolon a comma parts no sizes: kits have one.
    const read = readSizes(`${size};`, spec.ruler);
    diagnostics.push(...read.diagnostics.map((found): Diagnostic => ({ ...found, path, at })));
    const [only = null, another] = read.value ?? [];
    if (another !== undefined) diagnostics.push(kitUnreadable({ path, at }, size, { is: "sizes" }));
    return { kits: count, size: only, colourway };
  });
  return { value: diagnostics.some(({ severity }) => severity === "error") ? null : asked, diagnostics };
}

function typedKits(typed: string, spec: QuiltSpec, diagnostics: Diagnostic[]): KitSpec[] {
  const colourways = spec.class.colourways.map(({ name }) => name);
  const parts = typed
    .split(typed.includes(";") ? ";" : COMMA)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length === 0) diagnostics.push(kitUnreadable(NOWHERE, typed, { is: "no-count" }));
  return parts.flatMap((part): KitSpec[] => {
    const read = readKitLine(part, colourways);
    if (read.ok) return [{ ...read.kit, ...NOWHERE }];
    diagnostics.push(kitUnreadable(NOWHERE, part, read.fault));
    return [];
  });
}
