import { countKinds } from "../oracles/oracle.ts";
import { renumbered, type StripCount } from "../problem/assemble.ts";
import { sum } from "../problem/counts.ts";
import { gcd, type Kind } from "../problem/reduce.ts";
import { dividedLimit, mayHold, type RollAnswer, type RollQuestion } from "../problem/roll-question.ts";
import { leastLength } from "./least-length.ts";

/** Solves the roll problem. Every kind must fit the run in some lie (the caller has checked). */
export function solveRoll(question: RollQuestion): RollAnswer {
  const { kinds, run, given, rests = [], stacks } = question;
  // A fixed size as wide as the run can share its strip with nothing: it is set aside and added back.
  const fills = ({ nested, lies }: Kind) =>
    nested === undefined &&
    lies.length === 1 &&
    lies[0]!.width === run &&
    !given.some(({ sheet }) => mayHold(sheet, lies[0]!));
  const set = kinds.filter(fills);
  const others = kinds.filter((kind) => !fills(kind));
  const heights = others.flatMap((kind) => [kind.run ?? [], kind.lies].flat().map(({ height }) => height));
  const step = given.length === 0 && rests.length === 0 ? heights.reduce(gcd, 0) || 1 : 1;
  const setLength = sum(set, ({ lies, demand }) => lies[0]!.height * demand);
  const inSteps = (length: number | null) =>
    length === null ? null : Math.floor((length - setLength) / step);
  const inner = leastLength({
    ...question,
    stacks: stacks === undefined ? undefined : dividedLimit(stacks, step, 1),
    kinds: others.map((kind) => ({
      ...kind,
      lies: kind.lies.map((lie) => ({ ...lie, height: lie.height / step })),
      ...(kind.run && { run: { ...kind.run, height: kind.run.height / step } }),
    })),
    enough: inSteps(question.enough),
    ceiling: inSteps(question.ceiling),
  });
  const indexOf = kinds.flatMap((kind, k) => (fills(kind) ? [] : [k]));
  const strips = inner.strips.map(({ filling, count }) => ({
    filling: renumbered(filling, indexOf, kinds.length, { step }),
    count,
  }));
  return {
    strips: [
      ...strips,
      ...kinds.flatMap((kind, k) => (fills(kind) ? fullStrips(kind, k, kinds.length) : [])),
    ],
    length: inner.length * step + setLength,
    lower: inner.lower * step + setLength,
    boundKind: inner.boundKind,
  };
}

function fullStrips({ lies, demand }: Kind, index: number, kinds: number): StripCount[] {
  const { width, height } = lies[0]!;
  const segments = [{ width, stack: [{ kind: index, lie: 0 }] }];
  const filling = { level: -1, height, counts: countKinds(segments, kinds), segments };
  return demand > 0 ? [{ filling, count: demand }] : [];
}
