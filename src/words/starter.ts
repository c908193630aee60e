/** A file to start from: printed by the command line, edited by the maker. Its names and notes are of the language. */
export interface Starter {
  name: string;
  /** One line for choosing. */
  summary: string;
  text: string;
}
