import type { Ticks } from "../length/types.ts";
import { exactToNumber, type QuiltWork } from "../quilt/index.ts";
import type { QuiltTop, TopBorder } from "../quilt/types.ts";
import type { StripDemand } from "../quilt/work-types.ts";
import type { BorderSpec, QuiltSpec } from "../spec/quilt-types.ts";
import type { BorderRound, BorderStrips } from "./types.ts";

type Sides = BorderStrips["sides"];
const LEFT_RIGHT: Sides = ["left", "right"];
const TOP_BOTTOM: Sides = ["top", "bottom"];

const NO_BLOCKS = { blocks: 0, alike: true };

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
      width:
        written?.fit === true
          ? (stripOf(work, written, sides)?.width ?? raw(side))
          : raw(sides === LEFT_RIGHT ? side : end),
      ...(written?.row == null ? NO_BLOCKS : blocksAlong(top, border, index, sides, sewn - 2 * seam)),
      cornerstones,
    });
    const first = corners === "tops-first";
    const [one, two] = first ? [TOP_BOTTOM, LEFT_RIGHT] : [LEFT_RIGHT, TOP_BOTTOM];
    const across1 = first ? before.across : before.down;
    // A fitted border is trimmed once it is on all round: until then the top is as wide as its strips make it.
    const cut = written?.fit === true ? (stripOf(work, written, one)?.width ?? 0) - 2 * seam : null;
    const met = first ? before.down + 2 * (cut ?? end) : before.across + 2 * (cut ?? side);
    const across2 = kind === "butted" ? Math.round(met) : before.across;
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
  const pair = sides === LEFT_RIGHT ? "sides" : "ends";
  return work.strips.find(
    ({ path, purpose }) => path === border.path && purpose.for === "border" && purpose.pair === pair,
  );
}

function clothOf(strip: StripDemand | undefined): Pick<BorderStrips, "fabric" | "use"> {
  return { fabric: strip?.fabric ?? "", use: strip?.purpose ?? null };
}

/**
 * Blocks laid along one of these sides of a pieced border, those at corners only where this strip reaches into them,
 * and whether the row opposite is the same but for its turn: a print that stands upright lies otherwise in it.
 * @param length finished, along the strip
 */
function blocksAlong(
  top: QuiltTop,
  border: TopBorder,
  index: number,
  sides: Sides,
  length: Ticks,
): Pick<BorderStrips, "blocks" | "alike"> {
  const upright = sides[0] === "left";
  const [x, y] = [exactToNumber(border.x), exactToNumber(border.y)];
  const [across, down] = [exactToNumber(border.across), exactToNumber(border.down)];
  const [side, end] = [exactToNumber(border.side), exactToNumber(border.end)];
  const middle = upright ? y + down / 2 : x + across / 2;
  const inner = upright ? x + side : y + end;
  const outer = upright ? x + across - side : y + down - end;
  const rows: Record<"near" | "far", number[]> = { near: [], far: [] };
  for (const [block, { place, outline }] of top.blocks.entries()) {
    if (place !== "border") continue;
    const [xs, ys] = [outline.map((p) => exactToNumber(p.x)), outline.map((p) => exactToNumber(p.y))];
    const [run, over] = upright ? [ys, xs] : [xs, ys];
    if (run.some((at) => Math.abs(at - middle) > length / 2 + 1)) continue;
    if (over.some((at) => at < (upright ? x : y) - 1 || at > (upright ? x + across : y + down) + 1)) continue;
    if (over.every((at) => at < inner + 1)) rows.near.push(block);
    else if (over.every((at) => at > outer - 1)) rows.far.push(block);
  }
  const own = new Map<number, string[]>();
  for (const { origin, up } of top.patches) {
    if (origin.border !== index || origin.block === null || up === null) continue;
    const turn = top.blocks[origin.block]?.turn ?? 0;
    own.set(origin.block, [
      ...(own.get(origin.block) ?? []),
      `${origin.unit} ${origin.part} ${(up - turn + 360) % 360}`,
    ]);
  }
  const told = (blocks: readonly number[]): string =>
    blocks
      .map((block) => (own.get(block) ?? []).sort().join())
      .sort()
      .join("\n");
  return { blocks: rows.near.length, alike: told(rows.near) === told(rows.far) };
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
  for (const { name, kind, fit, strips, before, after } of rounds) {
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
    if (fit && size.across >= after.across - 2 && size.down >= after.down - 2) size = { ...after };
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
