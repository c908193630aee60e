import type { PatchPart } from "../../cutlist/record/unit-record.ts";
import type { Making } from "../../making/types.ts";
import type { FoundationPatch, PiecedPart } from "../../quilt/foundation/types.ts";
import type { Words } from "../../words/index.ts";

/** Whether a piece is halved or quartered before it is laid. */
function shareOf(part: PatchPart): "whole" | "half" | "quarter" {
  if (part === "whole" || part === "template") return "whole";
  return part.includes("-") ? "half" : "quarter";
}

/**
 * The bag a patch of a part comes out of, in words: `a quarter of E (straw)`. Bags that one place takes by turns are
 * told together; where the record knows none the fabric stands alone.
 */
export function bagOfPatch(patch: FoundationPatch, part: PiecedPart, making: Making, words: Words): string {
  const plain = patch.part === "patch" || patch.part === patch.unit;
  const found = new Map<string, Set<string>>();
  for (const { design, units } of part.places)
    for (const block of making.blocks.filter((each) => each.design === design))
      for (const unit of units) {
        const place = block.units[unit];
        const record = place == null ? undefined : making.units[place.unit];
        if (place == null || record?.kind !== patch.unit) continue;
        for (const own of record.heaps[place.heap]?.patches ?? []) {
          if (own.fabric !== patch.fabric || !(plain || own.spot === patch.part)) continue;
          for (const { letter, part: cut } of own.from) {
            const share = shareOf(cut);
            found.set(share, (found.get(share) ?? new Set()).add(letter));
          }
        }
      }
  const told = [...found].map(([share, letters]) =>
    words.units.shareOf(
      share as ReturnType<typeof shareOf>,
      words.units.bag([...letters].sort().join("/"), patch.fabric),
    ),
  );
  return told.length === 0 ? patch.fabric : told.join(", ");
}
