export { bookOf } from "../content/book/book.ts";
export { classSheet } from "../content/book/class-sheet.ts";
export { kitBook } from "../content/book/kit-book.ts";
export { patternOf } from "../content/book/pattern.ts";
export { classPapers } from "./files/class-papers.ts";
export { handoutMarkdown } from "./handouts/handout-markdown.ts";
export { handoutText } from "./handouts/handout-text.ts";
export { bookPage, pageOf } from "./html/book-page.ts";
export { laidOut } from "./paper/paginate.ts";
