import { fileOpen, fileSave } from "browser-fs-access";
import { words } from "./words/en.ts";

const MOST_BYTES = 1_000_000;

let handle: FileSystemFileHandle | null = null;

export type Opened = { text: string; name: string } | { problem: string } | null;

/** A file as a quilt's text; a problem in words where it is none. */
export async function readFile(file: File): Promise<Opened> {
  if (file.size > MOST_BYTES) return { problem: words.tooLarge(file.name) };
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
    return text.includes("\0") ? { problem: words.notText(file.name) } : { text, name: file.name };
  } catch {
    return { problem: words.notText(file.name) };
  }
}

/** Lets the maker choose a file; null when she does not. */
export async function openFile(): Promise<Opened> {
  try {
    const file = await fileOpen({
      extensions: [".yaml", ".yml", ".json"],
      mimeTypes: ["text/yaml", "application/json"],
    });
    const read = await readFile(file);
    handle = read !== null && "text" in read ? (file.handle ?? null) : handle;
    return read;
  } catch {
    return null;
  }
}

/** A quilt that came from nowhere on disk. */
export function forgetFile(): void {
  handle = null;
}

/** Saves to the file that was opened, or under a name to be chosen; null when she thinks better of it. */
export async function saveFile(text: string, name: string, asNew: boolean): Promise<string | null> {
  const blob = new Blob([text], { type: "text/yaml" });
  const fileName = /\.(ya?ml|json)$/i.test(name) ? name : `${name || "quilt"}.yaml`;
  try {
    handle =
      (await fileSave(blob, { fileName, extensions: [".yaml", ".yml", ".json"] }, asNew ? null : handle)) ??
      null;
    return handle?.name ?? fileName;
  } catch (error) {
    if ((error as Error).name === "AbortError") return null;
    throw error;
  }
}

/** Saves something made from the quilt. */
export async function saveOther(blob: Blob, fileName: string): Promise<void> {
  try {
    await fileSave(blob, { fileName });
  } catch {
    // She thought better of it.
  }
}
