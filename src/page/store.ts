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
const PAUSE = 250;

let timer = 0;
let refused = false;
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

/** Keeps a text shortly after the hand rests. */
export function keepDraft(key: string, text: string, name: string): void {
  if (key === "" || typeof window === "undefined") return;
  window.clearTimeout(timer);
  timer = window.setTimeout(() => void keepNow(key, text, name), PAUSE);
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
    keptAt.value = words.kept(`${time.getHours()}:${String(time.getMinutes()).padStart(2, "0")}`);
    channel?.postMessage({ key, mine });
    refused = false;
  } catch {
    if (!refused) keptAt.value = words.notKept;
    refused = true;
  }
}

/** Tells when another window keeps the same quilt. */
export function hearOthers(isOurs: (key: string) => boolean, warn: () => void): void {
  if (channel === null) return;
  channel.onmessage = ({ data }: MessageEvent<{ key: string; mine: string }>) => {
    if (data.mine !== mine && isOurs(data.key)) warn();
  };
}
