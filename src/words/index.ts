import { type Language, languageWritten, spokenLanguage } from "../length/writing.ts";
import { english } from "./en/index.ts";
import type { Wide, Words } from "./types.ts";

/** The languages there are, each by its own name, and its words, loaded when it is chosen. */
export const languages: Readonly<Record<Language, { name: string; load(): Promise<Words> }>> = {
  en: { name: "English", load: async () => english },
  de: { name: "Deutsch", load: async () => (await import("./de/index.ts")).german },
};

/** The words of a language. */
export function wordsFor(language: Language): Promise<Words> {
  return languages[language].load();
}

export { wordAll, wordDiagnostic } from "./diagnostics.ts";
export { sayKey } from "./file-keys.ts";
export { formatDiagnostic } from "./frame.ts";
export type { Wide, Words };
export { english, type Language, languageWritten, spokenLanguage };
