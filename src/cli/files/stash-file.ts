import { fileNotText } from "../../diagnostics/files.ts";
import { stashFileMissing } from "../../diagnostics/stash.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import type { LengthUnit } from "../../length/types.ts";
import type { Stash } from "../../stash/types.ts";
import type { Io } from "../io.ts";
import type { Disk } from "./disk.ts";
import { readInput } from "./read.ts";
import { changeSafely, KEPT } from "./safe-file.ts";

/** A table of cloth that was read, with the text it came from for showing a row that is wrong. */
export interface ReadTable {
  stash: Stash;
  text: string;
}

/** Reads a table to look at it. */
export async function openStash(file: string, bare: LengthUnit, io: Io): Promise<Outcome<ReadTable>> {
  const input = await readInput(file, io);
  if (input.value === null) {
    const missing = input.diagnostics.some(
      (each) => each.told === "fileUnreadable" && each.facts.systemCode === "ENOENT",
    );
    return { value: null, diagnostics: missing ? [stashFileMissing(file)] : input.diagnostics };
  }
  const { readStash } = await import("../../index.ts");
  const { text, name } = input.value;
  const { value, diagnostics } = readStash(text, name, bare);
  return { value: value === null ? null : { stash: value, text }, diagnostics };
}

/** A table of cloth to be changed. */
export interface TableFile {
  path: string;
  /** As it was typed, for what is said of it. */
  named: string;
  /** The unit of numbers without one. */
  bare: LengthUnit;
  /** An empty table is begun where there is none yet. */
  mayMake: boolean;
}

/**
 * Changes a table, whole or not at all, with no other run in between.
 * @param change is given an empty table where there is no file yet, when `mayMake` holds
 */
export async function changeStash<T>(
  { path, named, bare, mayMake }: TableFile,
  change: (stash: Stash) => Outcome<{ stash: Stash; told: T }>,
  disk?: Disk,
): Promise<Outcome<T>> {
  const { emptyStash, printStash, readStash } = await import("../../index.ts");
  const readOld = (old: Uint8Array | null): Outcome<Stash> => {
    if (old === null) {
      return mayMake
        ? { value: emptyStash(), diagnostics: [] }
        : { value: null, diagnostics: [stashFileMissing(named)] };
    }
    let text: string;
    try {
      text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(old);
    } catch {
      return { value: null, diagnostics: [fileNotText(named)] };
    }
    return text.trim() === "" && mayMake
      ? { value: emptyStash(), diagnostics: [] }
      : readStash(text, named, bare);
  };
  return changeSafely(
    { path, named, keep: KEPT },
    (old) => {
      const read = readOld(old);
      const told: Diagnostic[] = read.diagnostics;
      if (read.value === null) return { value: null, diagnostics: told };
      const { value, diagnostics } = change(read.value);
      if (value === null) return { value: null, diagnostics: [...told, ...diagnostics] };
      const bytes = new TextEncoder().encode(printStash(value.stash));
      return { value: { bytes, told: value.told }, diagnostics: [...told, ...diagnostics] };
    },
    disk,
  );
}
