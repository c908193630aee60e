import { formatLength, formatSize } from "../../../length/format.ts";
import { formatShare } from "../../../length/share.ts";
import type { Words } from "../../types.ts";

const decimal = (value: number, digits: number): string => value.toFixed(digits).replace(".", ",");

/** Lengths and sizes as they are said in a sentence. */
export const spoken: Words["spoken"] = {
  length: (length) => {
    switch (length.as) {
      case "marks":
        return formatLength(length.ticks, length.ruler);
      case "about":
        return `etwa ${formatLength(length.ticks, length.ruler)}`;
      case "share":
        return `${formatShare(length.n, length.d)} ${length.unit}`;
      case "decimal":
        return `etwa ${decimal(length.value, length.digits)} ${length.unit}`;
    }
  },
  size: (size) => {
    switch (size.as) {
      case "marks":
        return formatSize(size.across, size.along, size.ruler);
      case "about":
        return `etwa ${formatSize(size.across, size.along, size.ruler)}`;
      case "decimal": {
        const sides = [size.across, size.along].map((side) => decimal(side, size.digits));
        return `etwa ${sides.join(" x ")} ${size.unit}`;
      }
      case "sides":
        return `${spoken.length(size.across)} mal ${spoken.length(size.along)}`;
    }
  },
};
