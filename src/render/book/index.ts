export { bookOf } from "./book.ts";
export { bookPage, pageOf } from "./book-page.ts";
export { classSheet } from "./class-sheet.ts";
export { handoutMarkdown } from "./handout-markdown.ts";
export { handoutText } from "./handout-text.ts";
export { kitBook } from "./kit-book.ts";
export { laidOut } from "./paginate.ts";
export { patternOf } from "./pattern.ts";
