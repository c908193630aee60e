import type { Making } from "../making/types.ts";
import type { PiecedPart } from "../quilt/foundation/types.ts";
import type { Words } from "../words/index.ts";

/**
 * The pieces of foundation that carry a unit of a design, in its blocks that lie so in the quilt; none where it is not
 * pieced on foundation.
 * @param blockTurn degrees clockwise by which the block is turned; null for all its blocks
 */
export function foundationPartsOf(
  design: number,
  unit: number,
  { foundation }: Pick<Making, "foundation">,
  blockTurn: number | null = null,
): PiecedPart[] {
  if (foundation === null) return [];
  return foundation.parts.filter(
    (part): part is PiecedPart =>
      part.kind === "pieced" &&
      part.places.some(
        (place) =>
          place.design === design &&
          place.units.includes(unit) &&
          (blockTurn === null || place.blockTurns === null || place.blockTurns.includes(blockTurn)),
      ),
  );
}

/** The one piece of foundation that carries a block whole; null where several do, or none. */
export function foundationPartOfBlock(
  design: number,
  units: number,
  making: Pick<Making, "foundation">,
  blockTurn: number,
): PiecedPart | null {
  const [first] = units > 0 ? foundationPartsOf(design, 0, making, blockTurn) : [];
  const whole = first?.places.some((place) => place.design === design && place.units.length === units);
  return whole === true && first !== undefined ? first : null;
}

/** What carries something on foundation, by name; null where nothing does. */
export function foundationPartName(
  parts: readonly PiecedPart[],
  { foundation }: Pick<Making, "foundation">,
  words: Words,
): string | null {
  if (foundation === null || parts.length === 0) return null;
  return words.foundation.part(foundation.per, [...new Set(parts.map(({ letter }) => letter))]);
}
