/**
 * Keys under which answers hold lengths in ticks. `bound.used` is a length only there: the same word counts elsewhere. A
 * test compares them with the types.
 */
export const lengthKeys: ReadonlySet<string> = new Set([
  ...["across", "along", "down", "length", "width", "usable", "selvage", "straighten", "spare", "needed"],
  ...[
    "rulerLength",
    "matLength",
    "keepFrom",
    "trim",
    "trimTo",
    "segmentAcross",
    "setting",
    "steps.run",
    "loss",
    "leastEnd",
  ],
  ...[
    "bound.used",
    "bound.least",
    "sold.step",
    "sold.least",
    "ruleOfThumb",
    "narrowestUsable",
    "spareLength",
  ],
  ...["more", "lengths", "seam", "unfinished", "seamLength", "side", "end", "ruler.mark", "ruler.between"],
]);

/** Not looked into: outlines and places, of which there are many and which nobody reads. */
const NOT_TOLD: ReadonlySet<string> = new Set([
  ...[
    "root",
    "shape",
    "x",
    "y",
    "top",
    "making",
    "templates",
    "diagnostics",
    "assumptions",
    "rest",
    "blocks",
    "minutes",
  ],
]);

function gather(value: unknown, key: string, parent: string, into: Set<number>): void {
  if (typeof value === "number") {
    if (lengthKeys.has(key) || lengthKeys.has(`${parent}.${key}`)) into.add(value);
  } else if (Array.isArray(value)) for (const each of value) gather(each, key, parent, into);
  else if (typeof value === "object" && value !== null)
    for (const [name, each] of Object.entries(value)) if (!NOT_TOLD.has(name)) gather(each, name, key, into);
}

/** Every length of an answer as `say` reads it, by its ticks, shortest first. */
export function lengthTable(answer: object, say: (ticks: number) => string): Record<string, string> {
  const found = new Set<number>();
  gather(answer, "", "", found);
  return Object.fromEntries([...found].sort((a, b) => a - b).map((ticks) => [String(ticks), say(ticks)]));
}
