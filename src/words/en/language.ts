const RULES = new Intl.PluralRules("en");
const LISTS = new Intl.ListFormat("en", { type: "conjunction" });

/** A number with what is counted: `1 strip`, `3 strips`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${plural(count, one, many)}`;
}

/** One of two words, by the language's rule for a number. */
export function plural<Word>(count: number, one: Word, many: Word): Word {
  return RULES.select(count) === "one" ? one : many;
}

/** `A`, `A and B`, `A, B and C`: no comma before the last. */
export function list(parts: readonly (string | number)[]): string {
  const said = LISTS.format(parts.map(String));
  return parts.length > 2
    ? LISTS.formatToParts(parts.map(String))
        .map(({ type, value }) => (type === "literal" ? value.replace(", and ", " and ") : value))
        .join("")
    : said;
}
