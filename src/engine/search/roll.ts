import { countKinds, type Filling } from "../oracles/oracle.ts";
import { renumbered } from "../problem/assemble.ts";
import { gcd, type Kind } from "../problem/reduce.ts";
import { dividedLimit, mayHold, type RollAnswer, type RollQuestion } from "../problem/roll-question.ts";
import { leastLength } from "./least-length.ts";

/** Solves the roll problem. Every kind must fit the run in some lie (the caller has checked). */
export function solveRoll(question: RollQuestion): RollAnswer {
  const { run, rests = [] } = question;
  // A fixed size as wide as the run can share its strip with nothing: it is set aside and added back.
  const alone = question.given.length === 0 && rests.length === 0;
  const fills = (kind: Kind) =>
    kind.nested === undefined &&
    kind.lies.length === 1 &&
    kind.lies[0]!.width === run &&
    !question.given.some(({ sheet }) => mayHold(sheet, kind.lies[0]!));
  const set = question.kinds.filter(fills);
  const others = question.kinds.filter((kind) => !fills(kind));
  const heights = others.flatMap(({ lies, run: joined }) =>
    joined === undefined ? lies.map(({ height }) => height) : [joined.height],
  );
  const step = alone ? heights.reduce(gcd, 0) || 1 : 1;
  const setLength = set.reduce((sum, kind) => sum + kind.lies[0]!.height * kind.demand, 0);
  const inner = leastLength({
    ...question,
    stacks: question.stacks === undefined ? undefined : dividedLimit(question.stacks, step, 1),
    kinds: others.map((kind) => ({
      ...kind,
      lies: kind.lies.map((lie) => ({ ...lie, height: lie.height / step })),
      ...(kind.run === undefined ? {} : { run: { ...kind.run, height: kind.run.height / step } }),
    })),
    enough: question.enough === null ? null : Math.floor((question.enough - setLength) / step),
    ceiling: question.ceiling === null ? null : Math.floor((question.ceiling - setLength) / step),
    report: (length, lower) => question.report(length * step + setLength, lower * step + setLength),
  });
  const indexOf = question.kinds.flatMap((kind, k) => (fills(kind) ? [] : [k]));
  const strips = inner.strips.map(({ filling, count }) => ({
    filling: renumbered(filling, indexOf, question.kinds.length, { step }),
    count,
  }));
  question.kinds.forEach((kind, k) => {
    if (fills(kind) && kind.demand > 0)
      strips.push({ filling: fullStrip(kind, k, question.kinds.length), count: kind.demand });
  });
  return {
    strips,
    length: inner.length * step + setLength,
    lower: inner.lower * step + setLength,
    boundKind: inner.boundKind,
  };
}

function fullStrip(kind: Kind, index: number, kinds: number): Filling {
  const segments = [{ width: kind.lies[0]!.width, stack: [{ kind: index, lie: 0 }] }];
  return { level: -1, height: kind.lies[0]!.height, counts: countKinds(segments, kinds), segments };
}
