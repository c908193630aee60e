import type { ChoicesFacts } from "./choices.ts";
import type { ClothFacts } from "./cloth.ts";
import type { FieldsFacts } from "./fields.ts";
import type { FilesFacts } from "./files.ts";
import type { FoldersFacts } from "./folders.ts";
import type { PicturesFacts } from "./pictures.ts";
import type { PlanningFacts } from "./planning.ts";
import type { ClassFacts } from "./quilts/class.ts";
import type { FoundationFacts } from "./quilts/foundation.ts";
import type { QuiltFacts } from "./quilts/quilt.ts";
import type { QuiltFileFacts } from "./quilts/quilt-file.ts";
import type { QuiltPlanFacts } from "./quilts/quilt-plan.ts";
import type { ReadingFacts } from "./reading.ts";
import type { ShapesFacts } from "./shapes.ts";
import type { StashFacts } from "./stash.ts";
import type { WorkFacts } from "./work.ts";

/** How much a diagnostic matters: an error stops the plan, a warning asks for a look, info only tells. */
export type Severity = "error" | "warning" | "info";

/** A place in the maker's file. Lines and columns count from 1. */
export interface Place {
  file: string;
  line: number;
  column: number;
}

/** Where in the file or in the design a diagnostic speaks of. */
export interface InFile {
  /** The field, for example `fabrics[0].pieces[2].size`; empty when it speaks of the whole. */
  path: string;
  /** Null when there is no file or no single place. */
  at: Place | null;
}

/** What is told with no facts beside it. */
export type Nothing = Readonly<Record<never, never>>;

/** The facts of everything that can be told, by the name of the function that tells it. */
export interface DiagnosticFacts
  extends ChoicesFacts,
    ClassFacts,
    ClothFacts,
    FieldsFacts,
    FilesFacts,
    FoldersFacts,
    FoundationFacts,
    PicturesFacts,
    PlanningFacts,
    QuiltFacts,
    QuiltFileFacts,
    QuiltPlanFacts,
    ReadingFacts,
    ShapesFacts,
    StashFacts,
    WorkFacts {}

/** One thing to tell the maker: a record, put in words only where it is printed. */
export interface DiagnosticOf<Told extends keyof DiagnosticFacts> extends InFile {
  /** Stable upper-case code, for example `SIZE-NOT-POSITIVE`. One code may be told in several ways. */
  code: string;
  severity: Severity;
  /** Which sentence tells it. */
  told: Told;
  facts: DiagnosticFacts[Told];
}

export type Diagnostic = { [Told in keyof DiagnosticFacts]: DiagnosticOf<Told> }[keyof DiagnosticFacts];

/** A diagnostic in the words of one language, as people and programs are given it. */
export interface WordedDiagnostic {
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
}

/** What every phase before the plan returns: a value when one could be made, and all it has to say. */
export interface Outcome<T> {
  value: T | null;
  diagnostics: Diagnostic[];
}
