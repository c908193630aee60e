export { bookPage } from "./book-page.ts";
