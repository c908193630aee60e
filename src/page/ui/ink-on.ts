/** Parts of red, green and blue, 0 to 1, of `#rrggbb`. */
function parts(colour: string): [number, number, number] {
  const at = (i: number): number => Number.parseInt(colour.slice(i, i + 2), 16) / 255 || 0;
  return [at(1), at(3), at(5)];
}

/** Relative luminance as the Web Content Accessibility Guidelines 2.2 (W3C, 2023) define it. */
function luminance(colour: string): number {
  const [red, green, blue] = parts(colour).map((part) =>
    part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4,
  ) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** So much of a colour laid over another. */
export function mixed(colour: string, part: number, over: string): string {
  const [a, b] = [parts(colour), parts(over)];
  return `#${a
    .map((value, i) => Math.round(255 * (value * part + (b[i] ?? 0) * (1 - part))))
    .map((value) => value.toString(16).padStart(2, "0"))
    .join("")}`;
}

/** Dark or pale, whichever is read better on a colour. */
export const inkOn = (colour: string): string => (luminance(colour) > 0.2 ? "#101c1e" : "#f3f1e6");
