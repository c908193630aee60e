import type { WhyNot } from "../choices/why-not.ts";
import type { DiagnosticWords } from "./diagnostics.ts";

/**
 * Everything a language must be able to say. It is handed down from the doors as an argument; a second language is a
 * second folder beside `en/` that makes another value of this type.
 */
export interface Words {
  /** The language's tag, as `Intl` takes it. */
  language: string;
  diagnostics: DiagnosticWords;
  /** What can be said of the work while it is done, by examples. */
  factExamples: string;
  /** Why a way of making or arranging that was tried cannot be taken. */
  whyNot: (why: WhyNot) => string;
}
