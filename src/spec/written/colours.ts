/** Plain colour names, after the CSS colour keywords (an open standard), for makers without a colour picker. */
const COLOUR_NAMES: Readonly<Record<string, string>> = {
  beige: "#f5f5dc",
  black: "#000000",
  blue: "#0000ff",
  brown: "#a52a2a",
  coral: "#ff7f50",
  crimson: "#dc143c",
  gold: "#ffd700",
  gray: "#808080",
  green: "#008000",
  grey: "#808080",
  indigo: "#4b0082",
  ivory: "#fffff0",
  lavender: "#e6e6fa",
  maroon: "#800000",
  navy: "#000080",
  olive: "#808000",
  orange: "#ffa500",
  pink: "#ffc0cb",
  plum: "#dda0dd",
  purple: "#800080",
  red: "#ff0000",
  salmon: "#fa8072",
  silver: "#c0c0c0",
  tan: "#d2b48c",
  teal: "#008080",
  turquoise: "#40e0d0",
  white: "#ffffff",
  yellow: "#ffff00",
};

/** Drawing colours for fabrics that name none, told apart by lightness as well as by hue. */
const PALETTE = [
  "#2b5c8a",
  "#e9c46a",
  "#8a3b3b",
  "#a8c5a0",
  "#5b4a7a",
  "#f0e6d2",
  "#c97b4a",
  "#7fb0c4",
  "#3f5f4a",
  "#d9a5b3",
];

export function colourFor(index: number): string {
  return PALETTE[index % PALETTE.length] ?? "#2b5c8a";
}

/** `#rrggbb` for `#rgb`, `#rrggbb` or a plain name; null for anything else. */
export function readColour(written: string): string | null {
  const lower = written.toLowerCase();
  if (/^#[0-9a-f]{6}$/.test(lower)) return lower;
  if (/^#[0-9a-f]{3}$/.test(lower))
    return `#${[...lower.slice(1)].map((figure) => figure + figure).join("")}`;
  return Object.hasOwn(COLOUR_NAMES, lower) ? (COLOUR_NAMES[lower] ?? null) : null;
}
