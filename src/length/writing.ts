import type { DecimalMark } from "./types.ts";

/** How a language writes what a length needs besides figures. */
interface Writing {
  /** The mark before tenths; absent where the maker's own decides. */
  decimal?: DecimalMark;
  /** What stands behind a number of inches. */
  inch: string;
  /** Set before a length between the ruler's marks. */
  exactly: string;
}

/**
 * The languages that are spoken, by the tag that `Intl` takes. In German `in` is a preposition and cannot stand for a
 * measure.
 */
const WRITINGS = {
  en: { inch: "in", exactly: "exactly" },
  de: { decimal: "comma", inch: "Zoll", exactly: "genau" },
} as const satisfies Record<string, Writing>;

export type Language = keyof typeof WRITINGS;

export const LANGUAGES = Object.keys(WRITINGS) as [Language, ...Language[]];

/** The language of a tag such as `de-AT` or `de_CH.UTF-8`; null for one that is not spoken here. */
export function spokenLanguage(tag: string): Language | null {
  const [main = ""] = tag.toLowerCase().split(/[-_.@]/);
  return LANGUAGES.find((language) => language === main) ?? null;
}

/** The language a file asks for, found also where the rest of it has faults; null where it asks for none that is spoken. */
export function languageWritten(text: string): Language | null {
  const [, tag] = /^\s{0,4}["']?language["']?\s*:\s*["']?([\w-]+)/m.exec(text) ?? [];
  return tag === undefined ? null : spokenLanguage(tag);
}

/** How lengths are written in a language, in English where none is named. */
export function writingOf(language: Language | undefined): Writing {
  return WRITINGS[language ?? "en"];
}
