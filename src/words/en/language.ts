// Made when first asked for: making them takes longer than printing the help.
let rules: Intl.PluralRules | undefined;
let lists: Intl.ListFormat | undefined;

/** A number with what is counted: `1 strip`, `3 strips`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${plural(count, one, many)}`;
}

/** One of two words, by the language's rule for a number. */
export function plural<Word>(count: number, one: Word, many: Word): Word {
  rules ??= new Intl.PluralRules("en");
  return rules.select(count) === "one" ? one : many;
}

/** `A`, `A and B`, `A, B and C`: no comma before the last. */
export function list(parts: readonly (string | number)[]): string {
  lists ??= new Intl.ListFormat("en-GB", { type: "conjunction" });
  return lists.format(parts.map(String));
}

/** A number with its thousands set apart: `12,000`. */
export function number(value: number): string {
  return value.toLocaleString("en");
}

/** With `a` or `an`, as it is spoken: `an 8 in strip`, `an 11.5 cm strip`, `a unit`. */
export function aOrAn(what: string): string {
  const [number] = /^\d+/.exec(what) ?? [];
  // Eight, eighty and eight hundred; eleven and eighteen, also in thousands.
  const vowel =
    number === undefined
      ? /^(?:[aeio]|u(?!ni|se))/i.test(what)
      : number.startsWith("8") || /^1[18](?:\d{3})*$/.test(number);
  return `${vowel ? "an" : "a"} ${what}`;
}

/** With a capital letter, as a sentence or a heading begins. */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** Each of several texts with a capital letter. */
export function capitals<Key extends string>(texts: Readonly<Record<Key, string>>): Record<Key, string> {
  const entries = Object.entries<string>(texts).map(([key, text]) => [key, capital(text)]);
  return Object.fromEntries(entries) as Record<Key, string>;
}
