import { fileOpen, fileSave } from "browser-fs-access";
import { said } from "./ui/state.ts";
import { words } from "./words/index.ts";

const MOST_BYTES = 1_000_000;

let handle: FileSystemFileHandle | null = null;
/** When the file was last written, as it was when it was read or saved here. */
let stamp = 0;

/** A file as it is on disk now. */
export interface OnDisk {
  name: string;
  text: string;
  stamp: number;
}

/** The file that is open, where something else has written it since; null where not, or where no browser can tell. */
export async function changedOnDisk(): Promise<OnDisk | null> {
  if (handle === null) return null;
  try {
    const file = await handle.getFile();
    return file.lastModified === stamp
      ? null
      : { name: file.name, text: await file.text(), stamp: file.lastModified };
  } catch {
    // Moved or taken away: saving asks for a place again.
    return null;
  }
}

/** The maker has seen how the file is now. */
export function seenOnDisk(found: OnDisk): void {
  stamp = found.stamp;
}

async function remember(opened: FileSystemFileHandle | null): Promise<void> {
  handle = opened;
  stamp = 0;
  try {
    stamp = opened === null ? 0 : (await opened.getFile()).lastModified;
  } catch {
    handle = null;
  }
}

/** A file as a text, with the hold on it where the browser gives one; it is remembered only once its quilt is taken. */
export type Opened =
  | { text: string; name: string; handle?: FileSystemFileHandle | null }
  | { problem: string }
  | null;

/** The file that what is on the table is saved to from now on. */
export function rememberFile(opened: Exclude<Opened, null>): void {
  void remember("text" in opened ? (opened.handle ?? null) : null);
}

/** A file as a quilt's text; a problem in words where it is none. */
async function readFile(file: File): Promise<Opened> {
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
    return read !== null && "text" in read ? { ...read, handle: file.handle ?? null } : read;
  } catch {
    return null;
  }
}

/** Lets the maker choose a table of fabric; null when she does not. */
export async function openTable(): Promise<Opened> {
  try {
    return await readFile(await fileOpen({ extensions: [".csv", ".tsv", ".txt"], mimeTypes: ["text/csv"] }));
  } catch {
    return null;
  }
}

/** Lets the maker choose a picture, or take one where there is a camera; null when she does not. */
export async function choosePicture(): Promise<File | null> {
  try {
    return await fileOpen({ mimeTypes: ["image/*"] });
  } catch {
    return null;
  }
}

/** A picture among what was dropped; null where it is something else. */
export function pictureIn(data: DataTransfer): File | null {
  const file = data.items[0]?.getAsFile() ?? null;
  return file !== null && (file.type.startsWith("image/") || /\.hei[cf]$/i.test(file.name)) ? file : null;
}

/** A quilt that came from nowhere on disk. */
export function forgetFile(): void {
  void remember(null);
}

/** A file that was dropped on the page, with its handle where the browser gives one. */
export async function readDropped(data: DataTransfer): Promise<Opened> {
  const [item] = data.items;
  const file = item?.getAsFile() ?? null;
  if (item === undefined || file === null) return null;
  const asked = (item as { getAsFileSystemHandle?(): Promise<FileSystemHandle | null> })
    .getAsFileSystemHandle;
  // Asked for at once: the browser forgets what was dropped when the hand is away.
  const opened = asked?.call(item).catch(() => null);
  const read = await readFile(file);
  if (read !== null && "text" in read) {
    const found = (await opened) ?? null;
    return { ...read, handle: found?.kind === "file" ? (found as FileSystemFileHandle) : null };
  }
  return read;
}

/** Where something was saved: at a place chosen, among the browser's downloads, or nowhere. */
export type Saved = { where: "disk" | "downloads"; name: string } | { where: "nowhere" };

const thoughtBetter = (error: unknown): boolean => (error as Error).name === "AbortError";

/** Puts a file among the browser's downloads. Returns its name. */
export function download(blob: Blob, fileName: string): string {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = fileName;
  link.click();
  // The browser reads it after the click has been dealt with.
  window.setTimeout(() => URL.revokeObjectURL(link.href), 30_000);
  return fileName;
}

/** A name that ends as quilt files do. */
export const nameOnDisk = (name: string): string =>
  /\.(ya?ml|json)$/i.test(name) ? name : `${name || "quilt"}.yaml`;

/**
 * Saves to the file that was opened, or under a name to be chosen. Where the browser gives no dialog, or the place
 * cannot be written to, the file goes among the downloads; nowhere when she thinks better of it.
 */
export async function saveFile(text: string, name: string, asNew: boolean): Promise<Saved> {
  const blob = new Blob([text], { type: "text/yaml" });
  const fileName = nameOnDisk(name);
  try {
    const written = await fileSave(
      blob,
      { fileName, extensions: [".yaml", ".yml", ".json"] },
      asNew ? null : handle,
    );
    await remember(written ?? null);
    return { where: "disk", name: handle?.name ?? fileName };
  } catch (error) {
    if (thoughtBetter(error)) return { where: "nowhere" };
    return { where: "downloads", name: download(blob, fileName) };
  }
}

/** Saves something made from the quilt, and says so. */
export async function saveOther(blob: Blob, fileName: string, say = words.saved(fileName)): Promise<void> {
  try {
    await fileSave(blob, { fileName });
    said.value = say;
  } catch (error) {
    if (thoughtBetter(error)) return;
    download(blob, fileName);
    said.value = words.savedAmongDownloads(fileName);
  }
}
