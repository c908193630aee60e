/** A corner in whole steps of the printed grid. */
export type Node = readonly [number, number];

/** One seam of a sequence, from node to node. */
interface SequenceSeam {
  from: Node;
  to: Node;
  /** Signs of the direction in which the added patch lies. */
  toward: Node;
}

/** Patches in the order they are added, and the seam that adds each but the first. */
export interface Sequence {
  order: number[];
  seams: SequenceSeam[];
}

/** On which side of the line through `a` and `b` a point lies: the sign of a cross product. */
function side([ax, ay]: Node, [bx, by]: Node, [px, py]: Node): number {
  return Math.sign((bx - ax) * (py - ay) - (by - ay) * (px - ax));
}

/**
 * The straight line that cuts one patch off all the others, along one of its own edges; null when none does.
 *
 *     +---------+
 *     |  \ 3/ 2 |     2 can be cut off along its edge; 3 cannot, before 2 has gone
 *     | 1 \/    |
 */
function cutOff(patch: readonly Node[], others: readonly (readonly Node[])[]): SequenceSeam | null {
  for (const [i, a] of patch.entries()) {
    const b = patch[(i + 1) % patch.length] ?? a;
    const own = patch.map((corner) => side(a, b, corner)).filter((sign) => sign !== 0);
    const [inward = 0] = own;
    if (inward === 0 || own.some((sign) => sign !== inward)) continue;
    if (others.some((other) => other.some((corner) => side(a, b, corner) === inward))) continue;
    const on = patch.filter((corner) => side(a, b, corner) === 0).sort(byPlace);
    const [from = a, to = b] = [on[0], on.at(-1)];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    // Inward is left or right of the way from `a` to `b`; from `from` to `to` it may be the contrary.
    const turned = side(from, to, patch.find((corner) => side(a, b, corner) !== 0) ?? a);
    return { from, to, toward: [Math.sign(-dy * turned) || 0, Math.sign(dx * turned) || 0] };
  }
  return null;
}

function byPlace(a: Node, b: Node): number {
  return a[0] - b[0] || a[1] - b[1];
}

/**
 * An order in which patches of a rectangle can be added one by one, each with one straight seam right across what
 * is there already; null when there is none. Found backwards: whatever a straight line cuts off all the rest may be
 * the last. Taking one such patch away never stops another from being cut off, so any choice serves; the last in the
 * list goes first, and the order keeps as near to the list as it can.
 */
export function patchByPatch(patches: readonly (readonly Node[])[]): Sequence | null {
  const left = [...patches.keys()];
  const order: number[] = [];
  const seams: SequenceSeam[] = [];
  while (left.length > 1) {
    let found = false;
    for (let i = left.length - 1; i >= 0 && !found; i -= 1) {
      const patch = left[i] ?? 0;
      const others = left.filter((other) => other !== patch).map((other) => patches[other] ?? []);
      const seam = cutOff(patches[patch] ?? [], others);
      if (seam === null) continue;
      order.unshift(patch);
      seams.unshift(seam);
      left.splice(i, 1);
      found = true;
    }
    if (!found) return null;
  }
  return { order: [...left, ...order], seams };
}
