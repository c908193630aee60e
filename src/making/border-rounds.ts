import type { Ticks } from "../length/types.ts";
import { exactToNumber, type QuiltWork } from "../quilt/index.ts";
import type { QuiltTop, TopBorder } from "../quilt/types.ts";
import type { StripDemand } from "../quilt/work-types.ts";
import type { BorderSpec, QuiltSpec } from "../spec/quilt-types.ts";
import type { BorderRound, BorderStrips } from "./types.ts";

type Sides = BorderStrips["sides"];
const LEFT_RIGHT: Sides = ["left", "right"];
const TOP_BOTTOM: Sides = ["top", "bottom"];

/** The borders from the inside out, in the order of sewing, with the lengths of their strips. */
export function borderRounds(top: QuiltTop, work: QuiltWork, spec: QuiltSpec): BorderRound[] {
  const { seam } = spec;
  return top.borders.map((border, index): BorderRound => {
    const written = spec.borders[index];
    const [side, end] = [exactToNumber(border.side), exactToNumber(border.end)];
    const [across, down] = [exactToNumber(border.across), exactToNumber(border.down)];
    const raw = (finished: number): Ticks => Math.round(finished + 2 * seam);
    const before = { across: raw(across - 2 * side), down: raw(down - 2 * end) };
    const after = { across: raw(across), down: raw(down) };
    const corners = written?.corners ?? "sides-first";
    const kind = corners === "mitred" || corners === "cornerstones" ? corners : "butted";
    const strip = (sides: Sides, sewn: Ticks, cornerstones = false): BorderStrips => ({
      sides,
      ...clothOf(written === undefined ? undefined : stripOf(work, written, sides)),
      sewn,
      cut: (written === undefined ? undefined : stripOf(work, written, sides))?.run ?? sewn,
      width: raw(sides === LEFT_RIGHT ? side : end),
      blocks: written?.row == null ? 0 : blocksAlong(top, border, index, sides),
      cornerstones,
    });
    const first = corners === "tops-first";
    const [one, two] = first ? [TOP_BOTTOM, LEFT_RIGHT] : [LEFT_RIGHT, TOP_BOTTOM];
    const across1 = first ? before.across : before.down;
    const across2 = kind === "butted" ? (first ? after.down : after.across) : before.across;
    return {
      number: border.number,
      name: border.name,
      kind,
      pieced: written?.row != null,
      fit: written?.fit ?? false,
      extra: written?.extra ?? 0,
      strips: [strip(one, across1), strip(two, across2, kind === "cornerstones")],
      before,
      after,
    };
  });
}

/** As the cut list has it, over-long allowance included. */
function stripOf(work: QuiltWork, border: BorderSpec, sides: Sides): StripDemand | undefined {
  const what = sides === LEFT_RIGHT ? "sides" : "top and bottom";
  return work.strips.find(({ path, text }) => path === border.path && text.endsWith(`, ${what}`));
}

function clothOf(strip: StripDemand | undefined): Pick<BorderStrips, "fabric" | "use"> {
  return { fabric: strip?.fabric ?? "", use: strip?.text ?? "" };
}

/** Blocks of a pieced border along one of these sides. */
function blocksAlong(top: QuiltTop, border: TopBorder, index: number, sides: Sides): number {
  const blocks = new Set(
    top.patches.flatMap(({ origin }) =>
      origin.border === index && origin.block !== null && top.blocks[origin.block]?.place === "border"
        ? [origin.block]
        : [],
    ),
  );
  const [left, upper] = [
    exactToNumber(border.x) + exactToNumber(border.side),
    exactToNumber(border.y) + exactToNumber(border.end),
  ];
  const along = sides[0];
  return [...blocks].filter((block) => {
    const corners = top.blocks[block]?.outline ?? [];
    const reach = corners.map(({ x, y }) => exactToNumber(along === "left" ? x : y));
    const edge = along === "left" ? left : upper;
    return Math.max(...reach) < edge + 1;
  }).length;
}

/**
 * What is wrong with a round of borders: its strips, sewn on in order, must take the top from the size before to the
 * size after, each as long as the edge it meets. Empty when all is right; two ticks are let go for roots.
 */
export function borderFaults(
  rounds: readonly BorderRound[],
  seam: Ticks,
  whole: { across: Ticks; down: Ticks },
): string[] {
  const faults: string[] = [];
  const near = (a: Ticks, b: Ticks): boolean => Math.abs(a - b) <= 2;
  let size: { across: Ticks; down: Ticks } | null = null;
  for (const { name, kind, strips, before, after } of rounds) {
    if (size !== null && !(near(size.across, before.across) && near(size.down, before.down))) {
      faults.push(`${name} does not begin where the last border ended`);
    }
    size = { ...before };
    for (const { sides, sewn, width, cornerstones } of strips) {
      const upright = sides[0] === "left";
      const edge = upright ? size.down : size.across;
      // Mitred strips meet the top where it is, whatever is on already; squares at the ends make up the rest.
      const met = kind === "mitred" ? (upright ? before.down : before.across) : edge;
      const other = strips.find(({ sides: [one] }) => one !== sides[0])?.width ?? 0;
      const long = cornerstones ? sewn + 2 * (other - 2 * seam) : sewn;
      if (!near(long, met)) faults.push(`${name}: a strip of ${long} on an edge of ${met}`);
      const wider = 2 * (width - 2 * seam);
      if (upright) size.across += wider;
      else size.down += wider;
    }
    if (!(near(size.across, after.across) && near(size.down, after.down))) {
      faults.push(`${name} comes out at another size`);
    }
  }
  const last = rounds.at(-1)?.after;
  if (last !== undefined && !(near(last.across, whole.across) && near(last.down, whole.down))) {
    faults.push("the last border does not make the quilt");
  }
  return faults;
}
