import { INCH } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";

/** Wadding as it is sold in a packet. */
export interface WaddingPacket {
  name: string;
  across: Ticks;
  along: Ticks;
}

/** Packaged wadding in US trade, in inches, smallest first: Common Quilt and Batting Sizes. */
const PACKAGED = [
  ["crib", 45, 60],
  ["twin", 72, 90],
  ["full", 81, 96],
  ["queen", 90, 108],
  ["king", 120, 120],
] as const;

export const PACKETS: readonly WaddingPacket[] = PACKAGED.map(([name, across, along]) => ({
  name,
  across: across * INCH,
  along: along * INCH,
}));

/** Smallest package, either way round, that covers the size; null when it is larger than any. */
export function packagedFor(across: Ticks, down: Ticks): WaddingPacket | null {
  const [short, long] = [Math.min(across, down), Math.max(across, down)];
  return PACKETS.find((packet) => short <= packet.across && long <= packet.along) ?? null;
}
