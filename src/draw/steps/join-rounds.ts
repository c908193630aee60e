import type { JoinWork, NumberedJoin } from "./join-work.ts";
import { meeting } from "./set-apart.ts";

/** One round of joins: parts added one after another to what is there. */
export interface Round {
  joins: NumberedJoin[];
  base: string;
  added: { part: string; number: number }[];
  makes: string;
}

/** Most joins told in one picture. */
const TOGETHER = 4;

/**
 * Joins gathered into pictures: as long as each adds single patches to what the one before made, they are shown
 * round it, numbered. Any other join has a picture of its own.
 */
export function roundsOf(joins: readonly NumberedJoin[], work: JoinWork): Round[] {
  const single = (name: string): boolean => (work.parts.get(name)?.length ?? 0) === 1;
  const rounds: Round[] = [];
  for (const [index, join] of joins.entries()) {
    const { step, number } = join;
    const last = rounds.at(-1);
    const next = joins.slice(index + 1, index + TOGETHER).flatMap((each) => each.step.parts.filter(single));
    const rest = step.parts.filter((part) => part !== last?.makes);
    const goesOn =
      last !== undefined &&
      rest.length < step.parts.length &&
      rest.every(single) &&
      last.joins.length < TOGETHER &&
      last.added.every(({ part }) => single(part)) &&
      (last.joins[0]?.step.setIn === true) === (step.setIn === true) &&
      meeting(rest[0] ?? "", [last.base, ...last.added.map(({ part }) => part)], work).length > 0;
    if (goesOn) {
      last.joins.push(join);
      last.added.push(...rest.map((part) => ({ part, number })));
      last.makes = step.makes;
      continue;
    }
    // What most is sewn to stays in place: of the parts, then of what comes next.
    const size = (name: string): number =>
      (work.parts.get(name)?.length ?? 0) + meeting(name, next, work).length / (1 + next.length);
    const hub = step.parts.reduce((best, part) => {
      const [a, b] = [reach(part, step.parts, work), reach(best, step.parts, work)];
      return a > b || (a === b && size(part) > size(best)) ? part : best;
    });
    // In a row of several each is sewn to the one before.
    const base = step.way !== "edge" && step.parts.length > 2 ? (step.parts[0] ?? hub) : hub;
    rounds.push({
      joins: [join],
      base,
      added: step.parts.filter((part) => part !== base).map((part) => ({ part, number })),
      makes: step.makes,
    });
  }
  return rounds;
}

/** How many of the other parts a part touches. */
function reach(part: string, all: readonly string[], work: JoinWork): number {
  return meeting(
    part,
    all.filter((other) => other !== part),
    work,
  ).length;
}
