import { get, set } from "idb-keyval";
import { keptAt } from "./ui/state.ts";
import { words } from "./words/en.ts";

/** A quilt kept in this browser: its text now, and older states, newest first. */
export interface Draft {
  key: string;
  name: string;
  text: string;
  at: number;
  older: { at: number; text: string }[];
}

const LIST = "quilts";
/** A state of its own is kept at most this often. */
const EVERY = 60_000;
const MOST_OLDER = 60;

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

export function newKey(): string {
  return `${Date.now().toString(36)}${Math.floor(Math.random() * 1e6).toString(36)}`;
}

let waiting: { key: string; text: string; name: string } | null = null;
let writing = false;

/** Keeps a text at once; while one is being written, of those that come meanwhile the newest. */
export function keepDraft(key: string, text: string, name: string): void {
  if (key === "" || typeof window === "undefined") return;
  keptAt.value = "";
  waiting = { key, text, name };
  if (!writing) void write();
}

async function write(): Promise<void> {
  writing = true;
  while (waiting !== null) {
    const { key, text, name } = waiting;
    waiting = null;
    await keepNow(key, text, name);
  }
  writing = false;
}

async function keepNow(key: string, text: string, name: string): Promise<void> {
  try {
    const before = await get<Draft>(`quilt ${key}`);
    const at = Date.now();
    const older = before?.older ?? [];
    const last = older[0]?.at ?? 0;
    const grown =
      before !== undefined && before.text !== text && at - last > EVERY
        ? [{ at: before.at, text: before.text }, ...older]
        : older;
    await set(`quilt ${key}`, { key, name, text, at, older: grown.slice(0, MOST_OLDER) } satisfies Draft);
    const keys = (await get<string[]>(LIST)) ?? [];
    if (!keys.includes(key)) await set(LIST, [key, ...keys]);
    const time = new Date(at);
    // A newer text is on its way: only it is worth telling.
    if (waiting === null)
      keptAt.value = words.kept(`${time.getHours()}:${String(time.getMinutes()).padStart(2, "0")}`);
    channel?.postMessage({ key, mine });
  } catch {
    keptAt.value = words.notKept;
  }
}

/** Tells when another window keeps the same quilt. */
export function hearOthers(isOurs: (key: string) => boolean, warn: () => void): void {
  if (channel === null) return;
  channel.onmessage = ({ data }: MessageEvent<{ key: string; mine: string }>) => {
    if (data.mine !== mine && isOurs(data.key)) warn();
  };
}
