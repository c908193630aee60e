export { bookOf } from "./book.ts";
export { bookPage, pageOf } from "./book-page.ts";
export { classPapers } from "./class-papers.ts";
export { classSheet } from "./class-sheet.ts";
export { handoutMarkdown } from "./handouts/handout-markdown.ts";
export { handoutText } from "./handouts/handout-text.ts";
export { kitBook } from "./kit-book.ts";
export { laidOut } from "./paper/paginate.ts";
export { patternOf } from "./pattern.ts";
