/** How much a diagnostic matters: an error stops the plan, a warning asks for a look, info only tells. */
export type Severity = "error" | "warning" | "info";

/** A place in the maker's file. Lines and columns count from 1. */
export interface Place {
  file: string;
  line: number;
  column: number;
}

/** One thing to tell the maker. Data only: wording is fixed where the diagnostic is built. */
export interface Diagnostic {
  /** Stable upper-case code, for example `SIZE-NOT-POSITIVE`. */
  code: string;
  severity: Severity;
  /** What was found and what is expected, in one or two plain sentences. */
  message: string;
  /** What would help, ideally with an example to copy; empty when there is nothing to add. */
  hint: string;
  /** The field in the file, for example `fabrics[0].pieces[2].size`; empty when it speaks of the whole. */
  path: string;
  /** Where in the file; null when there is no file or no single place. */
  at: Place | null;
  /** For those who choose between methods: the kind of unit it speaks of, and why a method cannot be had for it. */
  lost?: { kind: string; why: string };
}

/** What every phase before the plan returns: a value when one could be made, and all it has to say. */
export interface Outcome<T> {
  value: T | null;
  diagnostics: Diagnostic[];
}
