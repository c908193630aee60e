import { english, wordsFor } from "../words/index.ts";
import { VERSION } from "./about.ts";
import type { ExitCode } from "./command.ts";
import { EXIT } from "./command.ts";
import type { Io } from "./io.ts";
import { processIo } from "./io.ts";
import { runCommandLine } from "./program.ts";
import { spokenAsAsked, systemLanguage } from "./shell/language.ts";
import { lightenSolver } from "./threads/light-solver.ts";

export { english, processIo };

function tellOurFault(error: unknown, io: Io): void {
  const what = error instanceof Error ? error.message : String(error);
  // The solver's errors carry its whole program text.
  const short = what.split("\n", 1)[0]?.slice(0, 300) ?? "";
  const { unwritten } = io.words.commandLine;
  io.talk(`${io.onTalk("red", unwritten.fault)}: ${unwritten.ourFault(short)}`);
  io.talk(unwritten.report);
}

/** Runs one command line and answers with the exit code. Never throws. */
export async function main(words: readonly string[], io: Io): Promise<ExitCode> {
  let spoken = io;
  try {
    spoken = await spokenAsAsked(words, io);
    return await runCommandLine(words, VERSION, spoken);
  } catch (error) {
    tellOurFault(error, spoken);
    return EXIT.ourFault;
  }
}

/** Runs this process's own command line. */
export async function start(): Promise<void> {
  lightenSolver();
  const usual = systemLanguage(process.env, () => Intl.DateTimeFormat().resolvedOptions().locale);
  process.exitCode = await main(process.argv.slice(2), processIo(await wordsFor(usual)));
}
