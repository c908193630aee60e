import { createReadStream } from "node:fs";
import { readdir } from "node:fs/promises";
import { basename, dirname, extname, join, resolve } from "node:path";
import { fileNotText, fileTooLarge, fileUnreadable } from "../../diagnostics/files.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import { languageWritten } from "../../words/index.ts";
import type { Io } from "../io.ts";
import { speakAsWritten } from "../shell/language.ts";
import { systemCode } from "./system-code.ts";

/** Most bytes of a cut list or quilt file. The largest real ones have a few dozen kilobytes. */
const MOST_BYTES = 1_000_000;

/** The text of a maker's file and the name to call it by in messages. */
export interface InputFile {
  text: string;
  name: string;
}

/** Other cut-list files of the folder, most likely meant first, at most three. */
async function filesNear(path: string): Promise<string[]> {
  const wanted = basename(path, extname(path)).toLowerCase();
  const names = await readdir(dirname(path)).catch(() => []);
  const shared = (name: string) => [...name.toLowerCase()].findIndex((letter, i) => letter !== wanted[i]);
  return names
    .filter((name) => [".yaml", ".yml", ".json"].includes(extname(name)))
    .filter((name) => shared(name) >= 3)
    .sort((a, b) => shared(b) - shared(a) || (a < b ? -1 : 1))
    .slice(0, 3);
}

function open(path: string): AsyncIterable<Uint8Array> {
  return createReadStream(path, { end: MOST_BYTES });
}

/** The first bytes of a stream, which may have no end. */
async function readUpTo(most: number, stream: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    length += chunk.length;
    if (length >= most) break;
  }
  return Buffer.concat(chunks);
}

/** Reads a file named on the command line; `-` is standard input. */
export async function readInput(name: string, io: Io): Promise<Outcome<InputFile>> {
  const known = name === "-" ? io.words.commandLine.read.standardInput : name;
  let bytes: Uint8Array;
  try {
    bytes = await readUpTo(MOST_BYTES + 1, name === "-" ? io.stdin() : open(resolve(io.folder, name)));
  } catch (error) {
    const code = systemCode(error) ?? "UNKNOWN";
    const near = code === "ENOENT" ? await filesNear(resolve(io.folder, name)) : [];
    const named = near.map((file) => join(dirname(name), file));
    return { value: null, diagnostics: [fileUnreadable(known, code, named)] };
  }
  if (bytes.length > MOST_BYTES) {
    return { value: null, diagnostics: [fileTooLarge(known, MOST_BYTES)] };
  }
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    if (text.includes("\0")) return { value: null, diagnostics: [fileNotText(known)] };
    await speakAsWritten(languageWritten(text), io);
    return { value: { text, name: known }, diagnostics: [] };
  } catch {
    return { value: null, diagnostics: [fileNotText(known)] };
  }
}
