import type { LengthUnit, Ticks } from "../length/types.ts";
import type { Words } from "../words/index.ts";

import type { Read } from "./option.ts";
import { type Option, takes, text, toggle } from "./option.ts";

/** Options that ask a plan for more than the file does. */

/** The most kits of one class; more are a factory. */
const MOST_KITS = 1000;

/** `--kits 30`. */
export const kits = (words: Words): Option<number | null> => ({
  flags: takes("--kits", words.commandLine.values.number),
  help: words.commandLine.asking.cutSoManyQuilts,
  standard: words.commandLine.asking.oneQuilt,
  absent: null,
  read: (typed): Read<number | null> => {
    const value = /^\s*\d+\s*$/.test(typed) ? Number(typed) : 0;
    return value >= 1 && value <= MOST_KITS
      ? { value }
      : { problem: words.commandLine.asking.kitsAreAWhole(MOST_KITS) };
  },
});

/** `--kits 30`, `--kits "4 of 3x3, 5 of lap"`, `--kits file`: sorts of kits are read with the file. */
export const kitsOrSorts = (words: Words): Option<number | string | null> => ({
  flags: takes("--kits", words.commandLine.values.kits),
  help: words.commandLine.asking.cutKitsOfSorts,
  standard: words.commandLine.asking.oneQuilt,
  absent: null,
  read: (typed): Read<number | string | null> => {
    const plain = kits(words).read?.(typed);
    if (plain !== undefined && "value" in plain) return plain;
    return /[a-z,;]/i.test(typed)
      ? { value: typed.trim() }
      : { problem: words.commandLine.asking.kitsOrSorts(MOST_KITS) };
  },
});

/** What `--kits` asks for: how many that are alike, or the sorts as typed. */
export function kitsAsked(typed: number | string | null): { kits: number; sorts: string | null } {
  return typeof typed === "string" ? { kits: 1, sorts: typed } : { kits: typed ?? 1, sorts: null };
}

/** The first option that says nothing to kits of several sorts; null where none is named. */
export function besideSorts(options: Readonly<Record<string, unknown>>): string | null {
  const found = Object.entries(options).find(([, value]) => value !== null && value !== false);
  return found?.[0] ?? null;
}

export const usable = (words: Words) =>
  text(
    takes("--width", words.commandLine.values.length),
    words.commandLine.asking.tryAnotherUsableWidth,
    words.commandLine.asking.asTheFileSays,
  );

export const bolt = (words: Words) =>
  text(
    takes("--bolt", words.commandLine.values.length),
    words.commandLine.asking.takeEveryBoltTo,
    words.commandLine.asking.boltAsTheFileSays,
  );

export const stash = (words: Words) =>
  text(
    takes("--stash", words.commandLine.values.file),
    words.commandLine.asking.useTheClothOf,
    words.commandLine.asking.allIsBought,
  );

export const fatQuarters = (words: Words) =>
  toggle("--fat-quarters", words.commandLine.asking.takeEveryColourFrom);

/** Narrower cloth is ribbon. */
const LEAST = 16256;

/** A shorter bolt is a remnant, and no longer one is wound. */
const LEAST_BOLT = 18 * 16256;
const MOST_BOLT = 100 * 640_000;

/** A width from the command line, in ticks. */
export async function readWidth(
  typed: string,
  bare: LengthUnit,
  words: Words,
): Promise<{ value: Ticks } | { problem: string }> {
  const { floor, parseLength } = await import("../index.ts");
  const read = parseLength(typed, bare);
  if (!read.ok)
    return {
      problem: words.commandLine.asking.widthIsNotA(typed, words.lengthFaults.why(read.problem.fault)),
    };
  const value = Number(floor(read.value));
  if (value < LEAST || value > 400 * LEAST)
    return { problem: words.commandLine.asking.widthIsNoWidth(typed) };
  return { value };
}

/** The length of a bolt from the command line, in ticks. */
export async function readBolt(
  typed: string,
  bare: LengthUnit,
  words: Words,
): Promise<{ value: Ticks } | { problem: string }> {
  const { floor, parseLength } = await import("../index.ts");
  const read = parseLength(typed, bare);
  if (!read.ok)
    return {
      problem: words.commandLine.asking.boltIsNotA(typed, words.lengthFaults.why(read.problem.fault)),
    };
  const value = Number(floor(read.value));
  if (value < LEAST_BOLT || value > MOST_BOLT)
    return { problem: words.commandLine.asking.boltIsNoLength(typed) };
  return { value };
}
