import type { PatchPart, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { CutPiece } from "../../cutlist/types.ts";
import type { Words } from "../../words/index.ts";
import type { Corner } from "../quilt/patches.ts";
import {
  type ClothLayer,
  cutBy,
  type Figure,
  figure,
  movedBy,
  reversed,
  type Segment,
} from "./cloth-layer.ts";
import { boxCorners, type Line, lineThrough } from "./geometry.ts";
import { chords } from "./mat/mat.ts";
import type { PanelDraft } from "./panel.ts";
import type { StepFabric } from "./step-fabric.ts";

/** A bag whose pieces are cut into triangles before anything is sewn. */
interface Bag {
  piece: CutPiece;
  fabric: StepFabric;
  kind: "half" | "quarter";
  /** Parts that are wanted, as the piece lies on the bolt. */
  parts: Set<PatchPart>;
}

/** Which diagonal makes the halves wanted. */
function diagonalOf({ piece, parts }: Bag): "rising" | "falling" {
  if (piece.diagonal !== "any") return piece.diagonal;
  return parts.has("top-right") || parts.has("bottom-left") ? "falling" : "rising";
}

/** Where the fabric's up points as a piece lies on the bolt, right side up. */
function boltUp({ print }: StepFabric): number | null {
  if (print.kind === "none") return null;
  return print.axis === "across" ? 2 : 0;
}

function bagFigures(bag: Bag, sign: Figure["sign"]): Figure[] {
  const { piece, fabric, kind } = bag;
  const [w, h] = [piece.across, piece.along];
  const whole: ClothLayer = {
    corners: boxCorners({ x: 0, y: 0, right: w, bottom: h }),
    fabric: fabric.name,
    letter: piece.letter,
    role: "",
    up: boltUp(fabric),
    side: "right",
  };
  const rising = lineThrough([0, h], [w, 0]);
  const falling = lineThrough([0, 0], [w, h]);
  const lines: Line[] =
    kind === "quarter" ? [rising, falling] : [diagonalOf(bag) === "rising" ? rising : falling];
  const gap = 0.07 * Math.max(w, h);
  const parts = lines.reduce<ClothLayer[]>(
    (all, line) =>
      all.flatMap((layer) =>
        [line, reversed(line)].flatMap((side) =>
          cutBy(layer, side).map((each) => movedBy(each, -side.run[1] * gap, side.run[0] * gap)),
        ),
      ),
    [whole],
  );
  const cuts: Segment[] = lines.flatMap((line) => chords([whole.corners], line));
  // The first cut moves the halves apart, so that the second must meet them as they lay: moved back for it.
  return [
    figure([whole], { cuts, sign }),
    figure(kind === "quarter" ? quartered(whole, gap) : parts, { sign: "then" }),
  ];
}

/** The four quarters of a square, each moved away from the middle. */
function quartered(whole: ClothLayer, gap: number): ClothLayer[] {
  const [a, , c] = whole.corners;
  if (a === undefined || c === undefined) return [];
  const middle: Corner = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
  return whole.corners.map((from, i): ClothLayer => {
    const to = whole.corners[(i + 1) % 4] ?? from;
    const out: Corner = [(from[0] + to[0]) / 2 - middle[0], (from[1] + to[1]) / 2 - middle[1]];
    const far = Math.hypot(out[0], out[1]);
    return movedBy({ ...whole, corners: [from, to, middle] }, (out[0] / far) * gap, (out[1] / far) * gap);
  });
}

/** The bags of a unit's patches that are halves and quarters. */
function bagsOf(unit: UnitRecord, fabrics: readonly StepFabric[]): Bag[] {
  const bags = new Map<string, Bag>();
  for (const patch of unit.heaps.flatMap(({ patches }) => patches)) {
    for (const { letter, part } of patch.from) {
      if (part === "whole" || part === "template") continue;
      const fabric = fabrics.find(({ name }) => name === patch.fabric);
      const piece = fabric?.pieces.find((each) => each.letter === letter);
      if (fabric === undefined || piece === undefined) continue;
      const kind = part.includes("-") ? "half" : "quarter";
      const bag = bags.get(letter) ?? { piece, fabric, kind, parts: new Set<PatchPart>() };
      bag.parts.add(part);
      bags.set(letter, bag);
    }
  }
  return [...bags.values()];
}

/** A picture for each bag whose squares are cut on the diagonal before sewing, as they lie right side up. */
export function trianglePanels(unit: UnitRecord, fabrics: readonly StepFabric[], words: Words): PanelDraft[] {
  return bagsOf(unit, fabrics).map((bag) => ({
    says: bag.kind === "half" ? words.drawings.steps.cutHalf : words.drawings.steps.cutQuarter,
    figures: bagFigures(bag, ""),
  }));
}

/** The same for triangles that are no part of a unit: those that fill the edges of a top on point. */
export function settingPanels(piece: CutPiece, fabric: StepFabric, words: Words): PanelDraft {
  const kind = piece.subcut === "twice-diagonal" ? "quarter" : "half";
  return {
    says: kind === "half" ? words.drawings.steps.cutHalf : words.drawings.steps.cutQuarter,
    figures: bagFigures({ piece, fabric, kind, parts: new Set() }, ""),
  };
}
