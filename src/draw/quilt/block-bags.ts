import { foundationPartName, foundationPartsOf } from "../../content/foundation-part.ts";
import type { HeapRecord, PatchRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Ruler } from "../../length/types.ts";
import type { BlockMaking, Making } from "../../making/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { BlockDesign, Patch } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { spokenSize } from "../cutting/words.ts";
import { textWidth } from "../scene/metrics.ts";
import { circle, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { type Corner, centreOf, clearance, outlineOf, type Placing } from "./patches.ts";

/** How the blocks of a plan are made, for the letters in their drawings. */
export interface BlockBags {
  making: Making;
  fabrics: readonly FabricPlan[];
  /** Index of the design among the top's. */
  design: number;
}

/** The ways one design is made: the same units out of other heaps where a print has to stand upright. */
function makingsOf({ making, design }: BlockBags): BlockMaking[] {
  return making.blocks.filter((each) => each.design === design);
}

interface UnitMade {
  unit: UnitRecord;
  heap: HeapRecord;
}

/** What makes one unit of a block; null where nothing does. */
function unitMade({ making }: BlockBags, block: BlockMaking | undefined, index: number): UnitMade | null {
  const place = block?.units[index] ?? null;
  if (place === null) return null;
  const unit = making.units[place.unit];
  const heap = unit?.heaps[place.heap];
  return unit === undefined || heap === undefined ? null : { unit, heap };
}

function patchRecord(bags: BlockBags, patch: Patch): PatchRecord | null {
  const [block] = makingsOf(bags);
  const made = unitMade(bags, block, patch.origin.unit ?? -1);
  return made?.heap.patches.find(({ spot }) => spot === patch.origin.part) ?? null;
}

/** What a letter on a fabric is written in, and the ground it has of its own where that is a photo. */
interface LetterLook {
  ink: string;
  plate: string | null;
}

const LARGEST = 15;
const SMALLEST = 8.3;

/** The bag's letter in every patch that has room for it; `shift` moves a patch with its unit, in millimetres. */
export function bagLetters(
  patches: readonly Patch[],
  bags: BlockBags,
  at: Placing,
  shift: (patch: Patch) => Corner,
  lookOn: (fabric: string) => LetterLook,
): SceneNode[] {
  return patches.flatMap((patch): SceneNode[] => {
    const text = patchRecord(bags, patch)?.letters.join("/") ?? "";
    if (text === "") return [];
    const [dx, dy] = shift(patch);
    const corners = outlineOf(patch.outline).map(([x, y]): Corner => [x + dx, y + dy]);
    const [cx, cy] = centreOf(corners);
    const room = clearance([cx, cy], corners) * at.scale * 2;
    // The circle that fits inside the patch holds the letter whole.
    const per = Math.hypot(textWidth(text, 1, true), 1);
    const size = Math.min(LARGEST, (room * 0.92) / per);
    if (size < SMALLEST) return [];
    const [x, y] = [at.x + cx * at.scale, at.y + cy * at.scale];
    const box = { x: x - room, y: y - size * 0.62, width: room * 2, height: size * 1.24 };
    const { ink, plate } = lookOn(patch.fabric);
    const ground = plate === null ? [] : [circle(x, y, (size * per) / 2, { fill: plate })];
    return [...ground, textIn(text, box, { size, bold: true, anchor: "middle", fill: ink })];
  });
}

/** Letters of every bag that the block's patches come out of. */
export function lettersIn(design: BlockDesign, bags: BlockBags): Set<string> {
  return new Set(
    makingsOf(bags).flatMap((block) =>
      design.units.flatMap((_, i) =>
        (unitMade(bags, block, i)?.heap.patches ?? []).flatMap((p) => p.letters),
      ),
    ),
  );
}

/** `A: 4 1/2 x 2 1/2 in hens`: every bag that the block's patches come out of, in the order of the letters. */
export function bagLines(design: BlockDesign, bags: BlockBags, ruler: Ruler, words: Words): string[] {
  const letters = lettersIn(design, bags);
  return bags.fabrics.flatMap(({ name, pieces }) =>
    pieces
      .filter(({ letter }) => letters.has(letter))
      .map(({ letter, across, along, fullWidth, subcut }) =>
        words.drawings.quilt.bag(
          letter,
          fullWidth
            ? words.drawings.quilt.strip(spokenSize(along, along, ruler).split(" × ")[1] ?? "")
            : spokenSize(across, along, ruler),
          words.drawings.quilt.cutFurther[subcut],
          name,
        ),
      ),
  );
}

/** Units by name, kind and method as they are really made, with how many one block takes. */
export function unitMadeLines(design: BlockDesign, bags: BlockBags, words: Words): string[] {
  return makingsOf(bags).flatMap((block, i, all) => {
    const counts = new Map<string, number>();
    for (const [index] of design.units.entries()) {
      const made = unitMade(bags, block, index);
      if (made === null) continue;
      const { unit, heap } = made;
      const parts = block.turns.flatMap((turn) => foundationPartsOf(bags.design, index, bags.making, turn));
      // The same name as where it is pieced.
      const laid = foundationPartName(parts, bags.making, words);
      const called = words.drawings.quilt.unitMade(
        laid ?? heap.name,
        words.unitNames.unit(unit.kind),
        laid === null && unit.steps.length === 0 ? "" : words.unitNames.method(unit.method),
      );
      counts.set(called, (counts.get(called) ?? 0) + 1);
    }
    const lines = [...counts].map(([called, count]) => `${count} × ${called}`);
    return all.length === 1 ? lines : [words.drawings.quilt.made(block.count, block.turns, i), ...lines];
  });
}
