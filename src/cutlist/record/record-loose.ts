import { quartersToBolt } from "../../quilt/turning/turning.ts";
import { asEighth, asQuarter } from "../../quilt/turning/whole-turns.ts";
import type { Eighth, Recipe } from "../../quilt/units/types.ts";
import { type LooseBatch, sameness } from "../cover.ts";
import type { Listed, RecordOf } from "./record-units.ts";
import type { PatchPart, PatchSource } from "./unit-record.ts";

/** Patches of one likeness that come out of one bag, not yet given a place. */
interface Supply {
  likeness: string;
  letter: string;
  part: PatchPart;
  /** Where its print's up points in a patch that faces as its shape is drawn, in eighths. */
  up: number;
  /** Its bag's template lies half round to it. */
  halfTurned: boolean;
  left: number;
}

const CORNERS: Readonly<Partial<Record<Eighth, PatchPart>>> = {
  1: "top-right",
  3: "bottom-right",
  5: "bottom-left",
  7: "top-left",
};
const SIDES: Readonly<Partial<Record<Eighth, PatchPart>>> = { 0: "top", 2: "right", 4: "bottom", 6: "left" };

/**
 * Which part of its piece a patch is, as the piece lies on the bolt.
 * @param pointing from the middle of the triangle's long side to its right angle, in the unit
 * @param print where the print's up points in the unit
 * @param boltUp where the print's up points on the bolt: 0 along the selvage, 2 across
 */
function partOf(
  subcut: Recipe["pieces"][number]["subcut"],
  pointing: Eighth | null,
  print: number,
  boltUp: number,
): PatchPart {
  if (subcut === "template") return "template";
  if (subcut === "none" || pointing === null) return "whole";
  const onBolt = asEighth(pointing - print + boltUp);
  // A quarter's long side is an edge of its square, opposite to where its right angle points.
  if (subcut === "twice-diagonal") return SIDES[asEighth(onBolt + 4)] ?? "whole";
  return CORNERS[onBolt] ?? "whole";
}

/**
 * Gives the patches of every unit the pieces they come out of: any piece of the right shape and print serves. By
 * want and spot. As the pieces were counted from the same needs, nothing is ever missing.
 */
export function loosePatches(
  batches: readonly LooseBatch[],
  listed: Listed,
  of: RecordOf,
): Map<string, PatchSource[]>[] {
  const { demand, recipe, wants } = listed;
  const facts = new Map(demand.spots.map((spot) => [spot.spot, spot]));
  const printOf = (role: string) => of.fabrics.get(demand.fabrics[role] ?? "")?.print;
  // A batch cut without minding the print (nothing could keep it) is dealt out without minding it.
  const mindedRoles = new Set(
    batches.filter(({ laid }) => laid.turn !== null).map(({ laid }) => recipe.pieces[laid.piece]?.role ?? ""),
  );
  const likenessOf = (spot: string, role: string, print: number): string => {
    const { shape = spot, facing = 0 } = facts.get(spot) ?? {};
    const kind = printOf(role)?.kind ?? "none";
    if (kind === "none" || !mindedRoles.has(role)) return `${role} ${shape}`;
    const turns = sameness(kind);
    return `${role} ${shape} ${(((print - facing) % turns) + turns) % turns}`;
  };
  const supplies = batches.flatMap(({ count, laid }): Supply[] => {
    const piece = recipe.pieces[laid.piece];
    if (piece === undefined) return [];
    const cloth = printOf(piece.role);
    const boltUp = cloth === undefined ? 0 : 2 * quartersToBolt(piece.freeLay ?? piece, cloth);
    return (piece.lies[laid.list] ?? []).map(({ spot, print }) => {
      const up = print + 2 * (laid.turn ?? 0);
      return {
        likeness: likenessOf(spot, piece.role, up),
        letter: of.letterOf(laid.mark),
        part: partOf(piece.subcut, facts.get(spot)?.pointing ?? null, up, boltUp),
        up: up - (facts.get(spot)?.facing ?? 0),
        halfTurned: piece.subcut === "template" && of.halfTurned?.(laid.mark) === true,
        left: count,
      };
    });
  });
  return wants.map((want) => {
    const sources = new Map<string, PatchSource[]>();
    for (const { spot, role } of demand.spots) {
      const print = printOf(role);
      const up = want.prints[role];
      const likeness = likenessOf(spot, role, up ?? 0);
      const boltUp = print?.axis === "across" ? 2 : 0;
      const minded = up !== undefined && mindedRoles.has(role);
      // A print that reads both ways may lie upside down: then the part is turned by half a turn more.
      const turnOf = (supply: Supply): PatchSource["turn"] =>
        minded
          ? asQuarter(
              Math.floor(
                asEighth(supply.up + (facts.get(spot)?.facing ?? 0) - boltUp + (supply.halfTurned ? 4 : 0)) /
                  2,
              ),
            )
          : null;
      sources.set(spot, take(supplies, likeness, want.count, turnOf));
    }
    return sources;
  });
}

function take(
  supplies: readonly Supply[],
  likeness: string,
  count: number,
  turnOf: (supply: Supply) => PatchSource["turn"],
): PatchSource[] {
  const taken: PatchSource[] = [];
  let wanted = count;
  for (const supply of supplies) {
    if (supply.likeness !== likeness || supply.left === 0 || wanted === 0) continue;
    const own = Math.min(supply.left, wanted);
    supply.left -= own;
    wanted -= own;
    const turn = turnOf(supply);
    const before = taken.find(
      (one) => one.letter === supply.letter && one.part === supply.part && one.turn === turn,
    );
    if (before === undefined) taken.push({ letter: supply.letter, part: supply.part, turn, count: own });
    else before.count += own;
  }
  return taken;
}
