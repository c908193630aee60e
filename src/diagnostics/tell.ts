import type { Diagnostic, DiagnosticFacts, DiagnosticOf, InFile, Severity } from "./types.ts";

/** For what speaks of the whole: no field, no place in a file. */
export const NOWHERE: InFile = { path: "", at: null };

/**
 * The one place where a diagnostic is made.
 * @param told which sentence of the words it is told with
 * @param facts what that sentence needs
 */
export function tell<Told extends keyof DiagnosticFacts>(
  code: string,
  severity: Severity,
  { path, at }: InFile,
  told: Told,
  facts: DiagnosticFacts[Told],
): DiagnosticOf<Told> {
  return { code, severity, path, at, told, facts };
}

/** The same, where it is no fault that ends anything. */
export function onlySaid<D extends Diagnostic>(diagnostic: D): D {
  return { ...diagnostic, severity: "info" as const };
}
