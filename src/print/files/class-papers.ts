import type { Kits } from "../../choices/kits/kits.ts";
import { classSheet } from "../../content/book/class-sheet.ts";
import type { Book } from "../../content/book/content.ts";
import { kitBook } from "../../content/book/kit-book.ts";
import { kitsList } from "../../content/buying/kits.ts";
import { kitSteps } from "../../content/sewing/making.ts";
import type { PatternSpec } from "../../spec/pattern-types.ts";
import type { Words } from "../../words/index.ts";
import { pageOf } from "../html/book-page.ts";

/** The papers of a class: files by name, and the books that are printed too, by name without ending. */
export interface ClassPapers {
  files: Record<string, string>;
  books: Record<string, Book>;
}

/**
 * The teacher's sheet and the list of kits, and for each sort of kit a paper of its own: the command line and the page hand
 * out the same.
 * @param pattern what the author says of the quilt; null where kits have no papers of their own
 */
export function classPapers(kits: Kits, pattern: PatternSpec | null, words: Words): ClassPapers {
  const books: Record<string, Book> = { class: classSheet(kits, words) };
  const files: Record<string, string> = { "kits.txt": kitsList(kits, words) };
  if (pattern !== null)
    for (const [i, kit] of kits.sorts.entries()) {
      files[`kit-${i + 1}.txt`] = kitSteps(kit, i, words);
      books[`kit-${i + 1}`] = kitBook(kit, i, pattern, words);
    }
  for (const [name, book] of Object.entries(books)) files[`${name}.html`] = pageOf(book, words);
  return { files, books };
}
