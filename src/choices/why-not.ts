import type { Diagnostic, DiagnosticOf } from "../diagnostics/types.ts";

/** Why a quilt cannot be made, or arranged, in a way that was tried. */
export type WhyNot =
  /** A fault that planning it finds; null when planning ends without one. */
  | { because: "fault"; fault: Diagnostic | null }
  /** A print would not point the way it should. */
  | { because: "print"; fault: DiagnosticOf<"directionByOtherMethod"> }
  /** Its blocks are made on the foundation. */
  | { because: "foundation" }
  /** Its pieces do not fit the width of the fabric. */
  | { because: "width" }
  /** Blocks that are not square do not fit their rows a quarter turned. */
  | { because: "blocks-not-square"; blocks: readonly string[] }
  /** Motifs that are not square turn by halves only. */
  | { because: "motifs-not-square"; blocks: readonly string[] };

/** The first error among what was told. */
export function faultAmong(diagnostics: readonly Diagnostic[]): WhyNot {
  return { because: "fault", fault: diagnostics.find(({ severity }) => severity === "error") ?? null };
}
