import { get, set } from "idb-keyval";

/** How far the sewing of a quilt is: how many of each thing are made, and where she was. */
export interface Sewn {
  made: Record<string, number>;
  stop: string;
  picture: number;
}

export const NOTHING_SEWN: Sewn = { made: {}, stop: "", picture: 0 };

export async function sewnOf(key: string): Promise<Sewn> {
  try {
    return (await get<Sewn>(`sewn ${key}`)) ?? NOTHING_SEWN;
  } catch {
    return NOTHING_SEWN;
  }
}

/** Keeps it at once; `failed` where there is no room for it. */
export function keepSewn(key: string, sewn: Sewn, failed: () => void): void {
  if (key !== "") set(`sewn ${key}`, sewn).catch(failed);
}
