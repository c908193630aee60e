import type { Words } from "../../words/index.ts";
import { figure, type Segment } from "./cloth-layer.ts";
import { boundsOf, sharedEdges } from "./geometry.ts";
import { type JoinWork, type NumberedJoin, SLACK, sewnTogether } from "./join-work.ts";
import type { Panel } from "./panel.ts";

/** Seams that a join sews, in the finished unit. */
function seamsOf({ step }: NumberedJoin, work: JoinWork): Segment[] {
  const outlines = step.parts.map((part) =>
    (work.parts.get(part) ?? []).map((spot) => work.patches.get(spot)?.corners ?? []),
  );
  return outlines.flatMap((own, i) =>
    outlines
      .slice(i + 1)
      .flatMap((others) => own.flatMap((one) => others.flatMap((other) => sharedEdges(one, other, SLACK)))),
  );
}

/**
 * One picture for joins too many to draw one by one: the whole unit, the number of each join on the patch it adds,
 * or on the seam it sews where it joins larger parts.
 */
export function joinMap(joins: readonly NumberedJoin[], work: JoinWork, words: Words): Panel {
  const spots = [...work.patches.keys()];
  const layers = sewnTogether(spots, work);
  const numbers = joins.flatMap((join) => {
    const text = String(join.number);
    const single = join.step.parts.filter((part) => (work.parts.get(part)?.length ?? 0) === 1);
    const grows = join.step.parts.length - single.length === 1;
    if (grows)
      return single.map((part) => ({
        text,
        on: work.patches.get(work.parts.get(part)?.[0] ?? "")?.corners ?? [],
      }));
    return [{ text, on: [], along: seamsOf(join, work) }];
  });
  const smallest = Math.min(
    ...[...work.patches.values()].map(({ corners }) => {
      const { x, y, right, bottom } = boundsOf(corners);
      return Math.min(right - x, bottom - y);
    }),
  );
  const first = joins[0]?.number ?? 0;
  const last = joins.at(-1)?.number ?? 0;
  return {
    number: `${first}–${last}`,
    says: words.drawings.steps.map,
    figures: [figure(layers, { numbers })],
    columns:
      joins.length > 24 || smallest * 14 < boundsOf(layers.flatMap(({ corners }) => corners)).right ? 3 : 2,
  };
}
