import type { SearchLimits } from "./types.ts";

/** The search's view of time and of the caller's wish to stop. */
export interface Clock {
  expired(): boolean;
  /** Milliseconds left; Infinity without a budget. */
  left(): number;
  spent(): number;
}

/** Starts counting now. */
export function startClock(limits: SearchLimits): Clock {
  const begun = performance.now();
  const end = limits.budget === undefined ? Infinity : begun + limits.budget;
  return {
    expired: () => performance.now() >= end || limits.shouldStop?.() === true,
    left: () => end - performance.now(),
    spent: () => performance.now() - begun,
  };
}
