import { formatLength, formatSize } from "../../../length/format.ts";
import { formatShare } from "../../../length/share.ts";
import type { SpokenLength, SpokenSize } from "../../../length/spoken.ts";

/** Lengths and sizes as they are said in a sentence. */
export const spoken = {
  length: (length: SpokenLength): string => {
    switch (length.as) {
      case "marks":
        return formatLength(length.ticks, length.ruler);
      case "about":
        return `about ${formatLength(length.ticks, length.ruler)}`;
      case "share":
        return `${formatShare(length.n, length.d)} ${length.unit}`;
      case "decimal":
        return `about ${length.value.toFixed(length.digits)} ${length.unit}`;
    }
  },
  size: (size: SpokenSize): string => {
    switch (size.as) {
      case "marks":
        return formatSize(size.across, size.along, size.ruler);
      case "about":
        return `about ${formatSize(size.across, size.along, size.ruler)}`;
      case "decimal": {
        const sides = [size.across, size.along].map((side) => side.toFixed(size.digits));
        return `about ${sides.join(" x ")} ${size.unit}`;
      }
      case "sides":
        return `${spoken.length(size.across)} by ${spoken.length(size.along)}`;
    }
  },
};
