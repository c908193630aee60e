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

/** A clock that runs out after a part of what is left, and after so many milliseconds at most. */
export function share(clock: Clock, part: number, most: number): Clock {
  const until = clock.spent() + Math.min(most, clock.left() * part);
  return {
    expired: () => clock.expired() || clock.spent() >= until,
    left: () => Math.min(clock.left(), until - clock.spent()),
    spent: clock.spent,
  };
}
