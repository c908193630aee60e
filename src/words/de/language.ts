// Made when first asked for: making them takes longer than printing the help.
let rules: Intl.PluralRules | undefined;
let lists: Intl.ListFormat | undefined;
let choices: Intl.ListFormat | undefined;
let numbers: Intl.NumberFormat | undefined;

/** A number as German writes it: `0,5`, `12.000`; four figures stand without a mark. */
export function figure(value: number): string {
  numbers ??= new Intl.NumberFormat("de-DE", { maximumFractionDigits: 3, useGrouping: "min2" });
  return numbers.format(value);
}

/** One of two words, by the language's rule for a number. */
export function plural<Word>(count: number, one: Word, many: Word): Word {
  rules ??= new Intl.PluralRules("de");
  return rules.select(count) === "one" ? one : many;
}

/** A number with what is counted: `1 Block`, `3 Blöcke`. */
export function counted(count: number, one: string, many: string): string {
  return `${figure(count)} ${plural(count, one, many)}`;
}

/** `A`, `A und B`, `A, B und C`. */
export function list(parts: readonly (string | number)[]): string {
  lists ??= new Intl.ListFormat("de", { type: "conjunction" });
  return lists.format(parts.map(String));
}

/** `A`, `A oder B`. */
export function either(parts: readonly string[]): string {
  choices ??= new Intl.ListFormat("de", { type: "disjunction" });
  return choices.format(parts);
}

/** With a capital letter, as a sentence or a heading begins. */
export function capital(text: string): string {
  return `${text.charAt(0).toLocaleUpperCase("de")}${text.slice(1)}`;
}

/** Each of several texts with a capital letter. */
export function capitals<Key extends string>(texts: Readonly<Record<Key, string>>): Record<Key, string> {
  const entries = Object.entries<string>(texts).map(([key, text]) => [key, capital(text)]);
  return Object.fromEntries(entries) as Record<Key, string>;
}

/** With a small letter, where a sentence goes on with it; only for words that are no nouns. */
export function small(text: string): string {
  return `${text.charAt(0).toLocaleLowerCase("de")}${text.slice(1)}`;
}

/** Hours and minutes: `45 min`, `3 h 05`. */
export function hours(minutes: number): string {
  return minutes < 60
    ? `${minutes} min`
    : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`;
}

/** `1 bis 7` for numbers in a row, others listed. */
export function rangeOrList(found: readonly number[]): string {
  const [first = 0] = found;
  const inARow = found.length > 2 && found.every((each, i) => each === first + i);
  return inARow ? `${first} bis ${found.at(-1)}` : list(found);
}
