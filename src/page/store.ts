import { del, get, set } from "idb-keyval";
import { dropPhotos, keepPhotos, NO_PHOTOS, type Photos, photosOf } from "./photos.ts";
import { keptAt } from "./ui/state.ts";
import { words } from "./words/index.ts";

/** A quilt kept in this browser: its text now, and older states, newest first. */
export interface Draft {
  key: string;
  name: string;
  text: string;
  /** What was said of the work; absent while nothing has been said. */
  work?: string;
  at: number;
  older: { at: number; text: string; work?: string }[];
}

const LIST = "quilts";
/** A state of its own is kept at most this often. */
const EVERY = 60_000;
const MOST_OLDER = 60;

/** When each quilt was last kept as this window knows it: another time in the store is another window's work. */
const seen = new Map<string, number>();

/** A quilt taken up from the store. */
export function tookUp({ key, at }: Pick<Draft, "key" | "at">): void {
  seen.set(key, at);
}

let conflict: (key: string) => void = () => {};
/** What is done when another window has kept the same quilt meanwhile. */
export function onConflict(act: (key: string) => void): void {
  conflict = act;
}

const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("crossgrain");
const mine = `${Date.now()}-${Math.random()}`;

/** Every quilt kept here, newest first; none where the browser keeps nothing for a page. */
export async function drafts(): Promise<Draft[]> {
  try {
    const keys = (await get<string[]>(LIST)) ?? [];
    const all = await Promise.all(keys.map((key) => get<Draft>(`quilt ${key}`)));
    return all.filter((one) => one !== undefined).sort((a, b) => b.at - a.at);
  } catch {
    return [];
  }
}

/** Pictures of quilts taken away since the page was opened, for putting them back. */
const photosGone = new Map<string, Photos>();

/** Takes a quilt off the list of those kept here; `putBack` undoes it. */
export async function takeAway(key: string): Promise<void> {
  try {
    photosGone.set(key, await photosOf(key));
    await dropPhotos(key);
    await set(
      LIST,
      ((await get<string[]>(LIST)) ?? []).filter((one) => one !== key),
    );
    await del(`quilt ${key}`);
  } catch {
    // A browser that keeps nothing has nothing to take away.
  }
}

/** Puts back a quilt that was taken away. */
export async function putBack(draft: Draft): Promise<void> {
  try {
    await set(`quilt ${draft.key}`, draft);
    const keys = (await get<string[]>(LIST)) ?? [];
    if (!keys.includes(draft.key)) await set(LIST, [draft.key, ...keys]);
    const photos = photosGone.get(draft.key) ?? NO_PHOTOS;
    if (photos !== NO_PHOTOS) keepPhotos(draft.key, photos, () => {});
  } catch {
    keptAt.value = words.notKept;
  }
}

/** Begins the keys of quilts handed to a class, which are no quilts of her own to open again. */
export const CLASS = "class-";

/** A quilt kept here; null where it is not, or the browser keeps nothing for a page. */
export async function draftOf(key: string): Promise<Draft | null> {
  try {
    return (await get<Draft>(`quilt ${key}`)) ?? null;
  } catch {
    return null;
  }
}

export function newKey(): string {
  return `${Date.now().toString(36)}${Math.floor(Math.random() * 1e6).toString(36)}`;
}

let waiting: Keeping | null = null;
let writing = false;

interface Keeping {
  key: string;
  text: string;
  name: string;
  work: string;
}

/** Keeps a text at once; while one is being written, of those that come meanwhile the newest. */
export function keepDraft(key: string, text: string, name: string, work: string): void {
  if (key === "" || typeof window === "undefined") return;
  keptAt.value = "";
  waiting = { key, text, name, work };
  if (!writing) void write();
}

async function write(): Promise<void> {
  writing = true;
  while (waiting !== null) {
    const next = waiting;
    waiting = null;
    await keepNow(next);
  }
  writing = false;
}

/** Where there is no room, older states make way before the quilt itself does. */
async function setWithin(draft: Draft): Promise<void> {
  for (const most of [MOST_OLDER, 10, 0]) {
    try {
      await set(`quilt ${draft.key}`, { ...draft, older: draft.older.slice(0, most) } satisfies Draft);
      return;
    } catch (error) {
      if (most === 0) throw error;
    }
  }
}

const worked = (work: string): { work?: string } => (work === "" ? {} : { work });

async function keepNow({ key, text, name, work }: Keeping): Promise<void> {
  try {
    const before = await get<Draft>(`quilt ${key}`);
    if (before !== undefined && before.at !== seen.get(key)) {
      if (before.text !== text || (before.work ?? "") !== work) conflict(key);
      else seen.set(key, before.at);
      return;
    }
    const at = Date.now();
    const older = before?.older ?? [];
    const last = older[0]?.at ?? 0;
    const grown =
      before !== undefined && (before.text !== text || (before.work ?? "") !== work) && at - last > EVERY
        ? [{ at: before.at, text: before.text, ...worked(before.work ?? "") }, ...older]
        : older;
    await setWithin({ key, name, text, ...worked(work), at, older: grown.slice(0, MOST_OLDER) });
    seen.set(key, at);
    const keys = (await get<string[]>(LIST)) ?? [];
    if (!keys.includes(key) && !key.startsWith(CLASS)) await set(LIST, [key, ...keys]);
    const time = new Date(at);
    // A newer text is on its way: only it is worth telling.
    if (waiting === null)
      keptAt.value = words.kept(`${time.getHours()}:${String(time.getMinutes()).padStart(2, "0")}`);
    channel?.postMessage({ key, mine });
  } catch {
    keptAt.value = words.notKept;
  }
}

/**
 * Whether another window has kept a quilt since this one did. Asked when this window is taken up again: pages opened
 * from a folder hear nothing of one another.
 */
export async function keptByAnother(key: string): Promise<boolean> {
  try {
    const kept = key === "" ? undefined : await get<Draft>(`quilt ${key}`);
    return kept !== undefined && seen.has(key) && kept.at !== seen.get(key) && !writing;
  } catch {
    return false;
  }
}

/** Tells when another window keeps the same quilt. */
export function hearOthers(isOurs: (key: string) => boolean, warn: () => void): void {
  if (channel === null) return;
  channel.onmessage = ({ data }: MessageEvent<{ key: string; mine: string }>) => {
    if (data.mine !== mine && isOurs(data.key)) warn();
  };
}
