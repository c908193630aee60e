import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Plan } from "../../plan/types.ts";
import { checkBags, checkJoined, takeFinishing, takeStrips, takeTriangles } from "./counts.ts";
import { checkFoundationParts } from "./foundation.ts";
import { designsByHeap } from "./heaps.ts";
import { checkBlocks, checkCentre } from "./joins.ts";
import { checkBorders, checkDiagonal } from "./top.ts";
import { checkNesting, checkSeams } from "./totals.ts";
import type { Bag, Sewing, Workroom } from "./types.ts";
import { checkUnit } from "./units.ts";

export type { Sewing } from "./types.ts";

/**
 * Sews the quilt on paper: from the pieces as cut, with their print arrows, by the steps told to units, blocks, rows and
 * borders. Returns in plain words what does not come out as designed; empty when all does.
 */
export function auditSewing(sewing: Sewing): string[] {
  const room = workroom(sewing);
  const designs = designsByHeap(room);
  for (const [unit, record] of sewing.making.units.entries()) checkUnit(record, designs[unit] ?? [], room);
  checkFoundationParts(room);
  checkBlocks(room);
  checkCentre(room);
  checkDiagonal(room);
  checkBorders(room);
  takeTriangles(room);
  takeFinishing(room);
  takeStrips(room);
  checkJoined(room);
  checkBags(room);
  checkSeams(room);
  checkNesting(room);
  return [...new Set(room.faults)];
}

/** The same for a whole plan; a plan from a plain cut list has nothing to sew. */
export function auditPlanSewing(plan: Plan): string[] {
  const { fabrics, making, top, kits = 1, ruler, diagnostics } = plan;
  if (making === undefined || top === null) return [];
  return auditSewing({ fabrics, making, top, kits, mark: ruler.mark, givenUp: givenUpIn(diagnostics) });
}

/** Places of the file whose print could not be kept: no other method could do it, as a warning says. */
export function givenUpIn(diagnostics: Plan["diagnostics"]): ReadonlySet<string> {
  return new Set(diagnostics.filter(({ code }) => code === GIVEN_UP).map(({ path }) => path));
}

const GIVEN_UP = "DIRECTION-OTHER-METHOD";

function workroom(sewing: Sewing): Workroom {
  const bags = new Map<string, Bag>();
  const faults: string[] = [];
  const same = new Map<string, 0 | 180 | 360>();
  for (const { name, print, pieces } of sewing.fabrics) {
    const alike = print.kind === "none" ? 0 : print.kind === "two-way" ? 180 : 360;
    same.set(name, alike);
    for (const piece of pieces) {
      if (bags.has(piece.letter)) faults.push(`two bags have the letter ${piece.letter}`);
      bags.set(piece.letter, {
        fabric: name,
        piece,
        same: alike,
        boltUp: alike !== 0 && print.axis === "across" ? 90 : 0,
      });
    }
  }
  const { making } = sewing;
  return {
    ...sewing,
    bags,
    same,
    seam: making.seam,
    faults,
    used: new Map(),
    parts: new Map(),
    onLines: onLinesOf(sewing),
  };
}

/** Records of what is pieced patch by patch on a foundation. */
function onLinesOf({ making }: Sewing): ReadonlySet<UnitRecord> {
  const found = new Set<UnitRecord>();
  for (const part of making.foundation?.parts ?? []) {
    if (part.kind !== "pieced") continue;
    for (const { design, units } of part.places)
      for (const block of making.blocks.filter((each) => each.design === design))
        for (const unit of units) {
          const record = making.units[block.units[unit]?.unit ?? -1];
          if (record !== undefined) found.add(record);
        }
  }
  return found;
}
