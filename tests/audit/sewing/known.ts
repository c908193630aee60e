/**
 * Faults of the record that are known and being mended, so that the audit itself can stay strict: a fault of a unit
 * whose kind and method match. Each must still occur: what is mended is taken off.
 */
export interface Known {
  unit: RegExp;
  fault: RegExp;
  why: string;
}

export const KNOWN: readonly Known[] = [
  {
    unit: /(single pieces|strip sets|stitch-and-flip)$/,
    fault: /comes out .* nothing brings it to/,
    why: "widths are rounded up to the ruler's marks, and no step trims what is sewn from them",
  },
  {
    unit: /cut logs$/,
    fault: /unequal edges|comes out .* nothing brings it to/,
    why: "logs are as long as exact widths would ask, and the widths are rounded up",
  },
  {
    unit: /(eight-pointed star|sixty-degree triangles), from strips$/,
    fault:
      /give uneven sides|larger than its seams allow|does not cover|is cut .* larger|beyond the raw edge|are cut .* wide/,
    why: "strips are rounded up, and what is cut from them is told for the exact width",
  },
  {
    unit: /templates$/,
    fault: /reaches .* beyond the raw edge|larger than its seams allow/,
    why: "a rectangle among templates is rounded up, and no step trims the unit",
  },
  {
    unit: /(two at a time|four at a time|eight at a time|single triangles|corner triangles)$/,
    fault: /too small/,
    why: "the trade's constants fall short of geometry at metric seam allowances and small sizes",
  },
  {
    unit: /^half-rectangle triangle, single triangles$/,
    fault: /nobody says on which diagonal/,
    why: "the diagonal of a rectangle is told only where a print has a direction",
  },
  {
    unit: /(templates|on the foundation.*)$/,
    fault: /is not turned as its patch lies/,
    why: "two shapes that a two-way print makes one, half a turn apart, are told with one turn",
  },
];

/** Faults that nobody knows of yet; `hit` gathers which of the known ones occur. */
export function unknown(
  faults: readonly { unit: string; fault: string }[],
  hit: Set<Known> = new Set(),
): string[] {
  return faults.flatMap(({ unit, fault }) => {
    const known = KNOWN.find((each) => each.unit.test(unit) && each.fault.test(fault));
    if (known === undefined) return [`${unit}: ${fault}`];
    hit.add(known);
    return [];
  });
}
