import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

/** The screen is kept on, as far as the browser lets a page ask for it. */
export const awake = signal(false);

interface Sentinel {
  release(): Promise<void>;
  addEventListener(kind: "release", call: () => void): void;
}
interface Asks {
  wakeLock?: { request(kind: "screen"): Promise<Sentinel> };
}

/** Keeps the screen on while what uses it is in sight; asked for again when the page is looked at again. */
export function useAwake(): void {
  useEffect(() => {
    let held: Sentinel | null = null;
    let gone = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== "visible") return;
      try {
        const got = (await (navigator as Asks).wakeLock?.request("screen")) ?? null;
        if (got === null) return;
        if (gone) {
          void got.release();
          return;
        }
        held = got;
        awake.value = true;
        got.addEventListener("release", () => {
          awake.value = false;
        });
      } catch {
        // A low battery, or a browser that has it not: the page says so.
        awake.value = false;
      }
    };
    void ask();
    document.addEventListener("visibilitychange", ask);
    return () => {
      gone = true;
      document.removeEventListener("visibilitychange", ask);
      void held?.release();
      awake.value = false;
    };
  }, []);
}
