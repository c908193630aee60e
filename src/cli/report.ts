import { diagnosticsJson } from "../diagnostics/answer.ts";
import { NO_PLAN_CODES, NONE_FOUND_CODE } from "../diagnostics/planning.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { formatDiagnostic, wordAll } from "../words/index.ts";
import type { ExitCode } from "./command.ts";
import { EXIT } from "./command.ts";
import type { Io } from "./io.ts";

/** Tells every diagnostic on the talking stream, a fault with a frame of the maker's file. */
export function report(diagnostics: readonly Diagnostic[], source: string | undefined, io: Io): void {
  const colours = { error: "red", warning: "yellow" } as const;
  for (const diagnostic of wordAll(diagnostics, io.words)) {
    if (diagnostic.severity === "info") {
      io.talk(`${io.onTalk("cyan", "note:")} ${diagnostic.message}\n`);
      continue;
    }
    const [first = "", ...rest] = formatDiagnostic(diagnostic, source).trimEnd().split("\n");
    io.talk(`${[io.onTalk(colours[diagnostic.severity], first), ...rest].join("\n")}\n\n`);
  }
}

/** The exit code that a list of diagnostics asks for. */
export function exitCodeOf(diagnostics: readonly Diagnostic[]): ExitCode {
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  if (errors.length === 0) return EXIT.done;
  const noPlan = ({ code }: Diagnostic) => NO_PLAN_CODES.includes(code);
  if (!errors.every((error) => noPlan(error) || error.code === NONE_FOUND_CODE)) return EXIT.fileErrors;
  // One fabric that is proved impossible settles it, whatever was found of the others.
  return errors.some(noPlan) ? EXIT.noPlan : EXIT.noneFound;
}

/** Ends a command that has no result: to people on the talking stream, to programs as JSON as well. */
export function failWith(
  diagnostics: readonly Diagnostic[],
  source: string | undefined,
  asJson: boolean,
  io: Io,
): ExitCode {
  report(diagnostics, source, io);
  if (asJson) io.out(diagnosticsJson(wordAll(diagnostics, io.words)));
  const code = exitCodeOf(diagnostics);
  // A phase that gives neither a value nor an error breaks its contract.
  return code === EXIT.done ? EXIT.ourFault : code;
}
