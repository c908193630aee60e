import { onBolt } from "../../quilt/turning/turning.ts";
import type { StripDemand, TriangleDemand } from "../../quilt/work-types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import type { CutPiece } from "../types.ts";

/** What every piece of a quilt has in common until something says otherwise. */
export const PLAIN_PIECE = {
  letter: "",
  label: "",
  fullWidth: false,
  turnable: false,
  cut: "strips",
  join: "no",
  subcut: "none",
  diagonal: "any",
  trimTo: null,
  roundedUp: false,
  notes: [],
} as const satisfies Partial<CutPiece>;

/**
 * A border or long sash as a piece. A print with a direction settles how it lies: a strip along which the
 * print runs must lie along the selvage (or across, on a fabric printed sideways) and is then cut in one piece.
 */
export function stripPiece(strip: StripDemand, fabric: FabricSpec): CutPiece {
  const cut = strip.run * strip.width * strip.count;
  const shared = {
    ...PLAIN_PIECE,
    count: strip.count,
    uses: [{ purpose: strip.purpose, count: strip.count }],
    roundedUp: strip.roundedUp,
    notes: strip.overLong ? [{ is: "over-long" as const }] : [],
    ...(strip.path.startsWith("borders") && strip.print === null ? { pair: true as const } : {}),
    corners: 0,
    seams: Math.max(0, cut - strip.finished),
  };
  if (strip.print === null) {
    const lengthwise = strip.cut === "lengthwise";
    return lengthwise
      ? { ...shared, across: strip.width, along: strip.run, cut: "lengthwise", join: strip.join }
      : {
          ...shared,
          across: strip.run,
          along: strip.width,
          turnable: strip.run !== strip.width,
          cut: strip.cut,
          join: strip.join,
        };
  }
  const alongSelvage = (strip.print === "along") === (fabric.print.axis === "along");
  return alongSelvage
    ? {
        ...shared,
        across: strip.width,
        along: strip.run,
        cut: strip.cut === "lengthwise" ? "lengthwise" : "either",
      }
    : { ...shared, across: strip.run, along: strip.width, join: strip.join };
}

/**
 * Squares for setting triangles, halved or quartered. With a direction each square gives one triangle facing
 * each way (two, opposite, when halved), so the most wanted way decides.
 *
 *      quartered: right angles point down, left, up, right     halved `/`: up left and down right
 *                                                              halved `\`: up right and down left
 */
export function trianglePieces(demand: TriangleDemand, fabric: FabricSpec): CutPiece[] {
  const at = (...eighths: number[]): number[] =>
    eighths.map((eighth) => demand.facing.find((each) => each.eighth === eighth)?.count ?? 0);
  const total = demand.facing.reduce((sum, { count }) => sum + count, 0);
  const twoWay = fabric.print.kind === "two-way";
  const pair = (a: number, b: number): number => {
    const [x = 0, y = 0] = at(a, b);
    return twoWay ? Math.ceil((x + y) / 2) : Math.max(x, y);
  };
  const share = demand.subcut === "twice-diagonal" ? 4 : 2;
  const piece = (count: number, diagonal: CutPiece["diagonal"], used: number): CutPiece => {
    const cut = demand.square * demand.square * count;
    const spare = Math.round((cut * (count * share - used)) / (count * share));
    return {
      ...PLAIN_PIECE,
      across: demand.square,
      along: demand.square,
      count,
      uses: [{ purpose: { for: "triangles", part: demand.part, used, of: count * share }, count }],
      subcut: demand.subcut,
      diagonal,
      roundedUp: demand.roundedUp,
      corners: spare,
      seams: Math.max(0, cut - spare - Math.round((demand.finished * used) / Math.max(1, total))),
    };
  };
  if (fabric.print.kind === "none") return [piece(Math.ceil(total / share), "any", total)];
  if (demand.subcut === "twice-diagonal") return [piece(Math.max(pair(0, 4), pair(2, 6)), "any", total)];
  const square = { across: demand.square, along: demand.square, template: null };
  const onCloth = (diagonal: "rising" | "falling"): CutPiece["diagonal"] =>
    onBolt({ ...square, diagonal }, fabric.print.axis).diagonal;
  const halves = [
    { diagonal: onCloth("rising"), count: pair(7, 3), used: at(7, 3) },
    { diagonal: onCloth("falling"), count: pair(1, 5), used: at(1, 5) },
  ];
  return halves
    .filter(({ count }) => count > 0)
    .map(({ diagonal, count, used }) =>
      piece(
        count,
        diagonal,
        used.reduce((sum, n) => sum + n, 0),
      ),
    );
}
