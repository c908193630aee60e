import type { Words } from "../words/index.ts";

/** One option, declared once: the parser, `--help` and the README's list are all made from it. */
export interface Option<T> {
  /** As commander reads it: `--out <folder>` or `--json`. */
  flags: string;
  help: string;
  /** What happens without it, for the help; empty when that goes without saying. */
  standard: string;
  /** Value without the option. */
  absent: T;
  /** Reads the value; null for a bare switch, whose value is then `true`. */
  read: ((text: string) => Read<T>) | null;
  /** The words it takes, where they are few: a shell can offer them. */
  words?: readonly string[];
}

/** A value, or what is wrong with the text. */
export type Read<T> = { value: T } | { problem: string };

/** The values of a record of options. */
export type Values<O> = { [K in keyof O]: O[K] extends Option<infer T> ? T : never };

// biome-ignore lint/suspicious/noExplicitAny: options with values of many types
type Worded = Readonly<Record<string, (words: Words) => Option<any>>>;

/** Options that several commands take, in the language of this run. */
export function inWords<const O extends Worded>(
  words: Words,
  options: O,
): { [K in keyof O]: ReturnType<O[K]> } {
  const all = Object.entries(options).map(([name, option]) => [name, option(words)]);
  return Object.fromEntries(all) as { [K in keyof O]: ReturnType<O[K]> };
}

/** An option with what stands for its value: `--out <folder>`. */
export function takes(flag: string, value: string): string {
  return `${flag} <${value}>`;
}

/** A switch that is off unless named. */
export function toggle(flags: string, help: string): Option<boolean> {
  return { flags, help, standard: "", absent: false, read: null };
}

/** An option with any text as value. */
export function text(flags: string, help: string, standard: string): Option<string | null> {
  return { flags, help, standard, absent: null, read: (value) => ({ value }) };
}

/** An option that takes one of a few words. */
export function choice<const T extends string>(
  flags: string,
  help: string,
  standard: string,
  allowed: readonly T[],
  words: Words,
): Option<T | null> {
  const read = (typed: string): Read<T | null> => {
    const value = allowed.find((word) => word === typed);
    return value === undefined
      ? { problem: words.commandLine.option.useOneOf(allowed.join(", ")) }
      : { value };
  };
  return { flags, help: `${help}: ${allowed.join(" or ")}`, standard, absent: null, read, words: allowed };
}

/** An option that takes a number above zero. */
export function aboveZero(
  flags: string,
  help: string,
  standard: string,
  words: Words,
): Option<number | null> {
  const read = (typed: string): Read<number | null> => {
    const value = Number(typed.replace(",", "."));
    return typed.trim() !== "" && Number.isFinite(value) && value > 0
      ? { value }
      : { problem: words.commandLine.option.useANumberAbove };
  };
  return { flags, help, standard, absent: null, read };
}
