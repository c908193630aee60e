import { type Language, languages, spokenLanguage, wordsFor } from "../../words/index.ts";
import type { Io } from "../io.ts";

/** The language of the system: the first of its settings that says one; English where it is none that is spoken. */
export function systemLanguage(env: NodeJS.ProcessEnv, locale: () => string): Language {
  const set = [env.LC_ALL, env.LC_MESSAGES, env.LANG].find((value) => value !== undefined && value !== "");
  return spokenLanguage(set ?? locale()) ?? "en";
}

/** The language that `--language` names; null without it, or where it names none: that is told when options are read. */
function languageAsked(typed: readonly string[]): Language | null {
  const end = typed.indexOf("--");
  const options = end < 0 ? typed : typed.slice(0, end);
  const at = options.findLastIndex((word) => word === "--language" || word.startsWith("--language="));
  const word = options[at] ?? "";
  const named = word.includes("=") ? word.slice(word.indexOf("=") + 1) : options[at + 1];
  return at < 0 ? null : named !== undefined && named in languages ? (named as Language) : null;
}

/** The same world in the language that the command line asks for. */
export async function spokenAsAsked(typed: readonly string[], io: Io): Promise<Io> {
  const asked = languageAsked(typed);
  return asked === null ? { ...io } : { ...io, words: await wordsFor(asked), languageAsked: true };
}

/** From here on in the language that a file asks for, unless the command line asked for one. */
export async function speakAsWritten(written: Language | null, io: Io): Promise<void> {
  if (written !== null && io.languageAsked !== true) io.words = await wordsFor(written);
}
