import type { SearchLimits, SearchStats } from "../types.ts";

/** The search's view of how much it may still do, and of the caller's wish to stop. Everything in milliseconds. */
export interface Clock {
  expired(): boolean;
  /** What is left; Infinity without a limit. */
  left(): number;
  spent(): number;
  /**
   * Tells of work done. Where work is counted this is what time is made of; where the wall's clock runs, nothing
   * need be told.
   */
  charge(milliseconds: number): void;
  /** Work is counted: a search under this clock ends at the same place on every machine. */
  readonly counted: boolean;
  /** Whatever is still allowed by count, the caller's time is up or the caller wants to stop. */
  late(): boolean;
  /** It was once found late: what came out may be otherwise on another machine. */
  wasLate(): boolean;
}

/** What asking whether time is up counts for: about what the searches do between two such questions. */
const ASKED = 0.3;

interface Usage {
  user: number;
  system: number;
}

/**
 * Milliseconds of processor time of this thread; where it is not told, of all threads; in a browser, which tells
 * neither, of the clock on the wall. Another program on the machine then ends no counted search.
 */
function processorTime(): number {
  const { process } = globalThis as { process?: { threadCpuUsage?(): Usage; cpuUsage?(): Usage } };
  const used = process?.threadCpuUsage?.() ?? process?.cpuUsage?.();
  return used === undefined ? performance.now() : (used.user + used.system) / 1000;
}

/** How far, in milliseconds of the wall's clock, the processor time told may lie behind. */
const BEHIND = 5;

/** Processor time, asked of the system only now and then: a search asks its clock oftener than the system answers cheaply. */
function processorClock(): () => number {
  let told = processorTime();
  let askedAt = performance.now();
  return () => {
    const wall = performance.now();
    if (wall - askedAt >= BEHIND) {
      told = processorTime();
      askedAt = wall;
    }
    return told;
  };
}

/**
 * Starts counting now. With `limits.effort` the clock is made of counted work, and processor time
 * (`limits.budget`) only ends what has gone on far too long; without it the wall's clock is the only one.
 * `now` tells milliseconds.
 */
export function startClock(
  limits: SearchLimits,
  now: () => number = limits.effort === undefined ? () => performance.now() : processorClock(),
): Clock {
  const begun = now();
  const end = limits.budget === undefined ? Infinity : begun + limits.budget;
  let foundLate = false;
  const late = () => {
    foundLate ||= now() >= end || limits.shouldStop?.() === true;
    return foundLate;
  };
  const wasLate = () => foundLate;
  const { effort } = limits;
  if (effort === undefined)
    return {
      expired: late,
      late,
      wasLate,
      left: () => end - now(),
      spent: () => now() - begun,
      charge: () => {},
      counted: false,
    };
  let done = 0;
  return {
    expired() {
      done += ASKED;
      return done >= effort || late();
    },
    late,
    wasLate,
    left: () => effort - done,
    spent: () => done,
    charge(milliseconds) {
      done += milliseconds;
    },
    counted: true,
  };
}

/** What ended the search under a clock; null when it came to its own end. */
export function endedBy(clock: Clock): SearchStats["cutShort"] {
  if (clock.wasLate()) return "clock";
  return clock.left() <= 0 ? "work" : null;
}

/** The same limits with so much counted work at most, and at most so many `times` what they allow. */
export function atMost(limits: SearchLimits, most: number, times = 1): SearchLimits {
  return { ...limits, effort: Math.min(most, times * (limits.effort ?? most)) };
}

/** A clock that runs out after a part of what is left, and after so many milliseconds at most. */
export function share(clock: Clock, part: number, most: number): Clock {
  const until = clock.spent() + Math.min(most, clock.left() * part);
  return {
    ...clock,
    expired: () => clock.expired() || clock.spent() >= until,
    left: () => Math.min(clock.left(), until - clock.spent()),
  };
}
