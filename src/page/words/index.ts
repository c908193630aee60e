import {
  english,
  type Language,
  languages,
  languageWritten,
  spokenLanguage,
  type Words,
  wordsFor,
  writingOf,
} from "../../planning.ts";
import type { Wide } from "../../words/index.ts";
import { words as german } from "./de/index.ts";
import { words as englishPage } from "./en.ts";

/** Every word of the page, in any language. */
export type PageWords = Wide<typeof englishPage>;

const PAGES: Readonly<Record<Language, PageWords>> = { en: englishPage, de: german };

/** The language that is spoken here, on the page as in a worker. */
export let language: Language = "en";
/** The page's own words in it. */
export let words: PageWords = englishPage;
/** The words of the program itself: of lists, drawings and books. */
export let tongue: Words = english;
/** How it writes lengths, for `formatMeasure` and in a ruler. */
export let written: Written = {};

interface Written {
  decimal?: "comma";
  language?: Language;
}

function decimalOf(spoken: Language): Written {
  const { decimal } = writingOf(spoken);
  return decimal === undefined ? {} : { decimal };
}

const loaded = new Map<Language, Words>([["en", english]]);

/** Loads every language: the page is one file, and they are in it. */
export async function loadLanguages(): Promise<void> {
  for (const each of Object.keys(languages) as Language[]) loaded.set(each, await wordsFor(each));
}

/** Speaks the language that a quilt's text asks for, else that of the browser; true where it is another than before. */
export function speakFor(text: string): boolean {
  const browser = globalThis.navigator?.language ?? "";
  const wanted = languageWritten(text) ?? spokenLanguage(browser) ?? "en";
  const said = loaded.get(wanted);
  if (wanted === language || said === undefined) return false;
  language = wanted;
  words = PAGES[wanted];
  tongue = said;
  written = wanted === "en" ? {} : { ...decimalOf(wanted), language: wanted };
  return true;
}
