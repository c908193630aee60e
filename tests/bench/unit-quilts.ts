import { UNIT_KINDS } from "../../src/quilt/units/registry.ts";
import { type Known, unknown } from "../audit/sewing/known.ts";
import { faultsByUnit, mustSew } from "../audit/sewing/sewn.ts";

/** Finished sizes: on the marks, odd eighths, a third, and metric ones. */
export const UNIT_SIZES = [
  ["in", 4],
  ["in", 3.125],
  ["in", 2.625],
  ["in", 6.5],
  ["in", "2 1/3"],
  ["cm", 10],
  ["cm", 7.3],
  ["cm", 12.5],
] as const;
const SEAMS = { in: ["1/4", "3/8", "1/8"], cm: ["0.75", "1", "0.6"] } as const;
const PRINTS = ["none", "one-way along", "two-way along", "one-way across", "two-way across"];
const PARTS = ["x", "y", "z", "w"];

const TWICE = ["rectangle", "rails", "nine-patch", "snowball"];
const DRAWN =
  "drawn-on: 4 x 4, patches: [{ part: a, corners: [[0, 0], [4, 0], [0, 4]] }, { part: b, corners: [[4, 0], [4, 4], [1, 4], [1, 3]] }, { part: c, corners: [[1, 3], [1, 4], [0, 4]] }]";

interface Way {
  kind: string;
  method: string;
  roles: number;
  shape: "square" | "wide" | "high";
}

/** Every kind with every method, at the shapes that suit it. */
const WAYS: Way[] = UNIT_KINDS.flatMap((kind) =>
  kind.methods.flatMap(({ name: method }): Way[] => {
    const roles = kind.name === "drawn patches" ? 3 : partsOf(kind.name);
    const one = { kind: kind.name, method, roles };
    if (kind.name === "half-rectangle triangle")
      return [
        { ...one, shape: "high" },
        { ...one, shape: "wide" },
      ];
    if (kind.name === "flying geese" || kind.name === "sixty-degree triangles")
      return [{ ...one, shape: "wide" }];
    return TWICE.includes(kind.name)
      ? [
          { ...one, shape: "square" },
          { ...one, shape: "wide" },
          { ...one, shape: "high" },
        ]
      : [{ ...one, shape: "square" }];
  }),
).filter(({ kind, shape }) => !(kind === "rectangle" && shape === "square"));

function partsOf(kind: string): number {
  if (kind === "square" || kind === "rectangle") return 1;
  if (
    kind === "three-patch square" ||
    kind === "nine-patch" ||
    kind.endsWith("cabin") ||
    kind.endsWith("steps")
  )
    return 3;
  return kind === "four-triangle square" || kind === "eight-pointed star" ? 4 : 2;
}

function cellOf({ kind, method, roles }: Way): string {
  const words = PARTS.slice(0, roles);
  if (kind === "drawn patches") return `{ drawn patches: { a: x, b: y, c: z }, ${DRAWN} }`;
  const more = kind.endsWith("cabin") || kind.endsWith("steps") ? ", count: 2" : "";
  const fabrics = roles === 1 ? "x" : `[${words.join(", ")}]`;
  return `{ ${kind}: ${fabrics}, method: ${method}${more} }`;
}

/** One quilt with a block of every way that has this shape, turned four ways where it is square. */
function quilt(
  unit: "in" | "cm",
  size: number | string,
  seam: string,
  rounding: string,
  shape: Way["shape"],
  print: number,
  share: (way: number) => boolean,
): string | null {
  const twice = typeof size === "number" ? String(2 * size) : "4 2/3";
  const said =
    shape === "square" ? String(size) : shape === "wide" ? `${twice} x ${size}` : `${size} x ${twice}`;
  const ways = WAYS.filter((way, i) => way.shape === shape && share(i));
  if (ways.length === 0) return null;
  const blocks = ways.map((way, i) => `  b${i}: { size: ${said}, cell: ${cellOf(way)} }`);
  const turns = shape === "square" ? ["", ">", "v", "<"] : ["", "v"];
  const rows = ways.map((_, i) => `"${turns.map((turn) => `b${i}${turn}`).join(" ")}"`);
  const fabrics = PARTS.map(
    (name, i) =>
      `{ name: ${name}, print: ${print % 3 === 0 ? "none" : PRINTS[(print + i * 2) % PRINTS.length]} }`,
  );
  return `name: t
units: ${unit}
seam: ${seam}
rounding: ${rounding}
fabrics: [ ${fabrics.join(", ")} ]
blocks:
${blocks.join("\n")}
setting: { rows: [ ${rows.join(", ")} ] }
`;
}

/**
 * Sews every unit by every method at one size, with every seam allowance, exact and by the trade's constants; prints go
 * round. Returns what is wrong and not known to be.
 * @param parts of each six ways of seam and rounding, how many every unit is sewn in: 6 for all of them
 */
export function unitFaults(size: number, parts: number, hit: Set<Known>): string[] {
  const [unit, length] = UNIT_SIZES[size] ?? UNIT_SIZES[0];
  const wrong: string[] = [];
  let combination = size;
  for (const seam of SEAMS[unit])
    for (const rounding of ["exact", "trade"]) {
      combination += 1;
      for (const [number, shape] of (["square", "wide", "high"] as const).entries()) {
        const own = combination;
        const print = own + size + number;
        const text = quilt(unit, length, seam, rounding, shape, print, (way) => (way + own) % 6 < parts);
        if (text === null) continue;
        for (const fault of unknown(faultsByUnit(mustSew(text)), hit))
          wrong.push(
            `${length} ${unit}, seam ${seam}, ${rounding}, print ${print % PRINTS.length}: ${fault}`,
          );
      }
    }
  return wrong;
}
