/** The colours of the page. Every pair of text and ground reaches 4.5 : 1 by the WCAG 2.2 formula. */
export const INK = "#1d2733";
export const QUIET_INK = "#55606c";
export const RULE = "#9aa4ae";
export const PAPER = "#ffffff";
export const WASTE_GROUND = "#f6f4ef";
export const WASTE_INK = "#6a6f76";

const DARK = "#000000";
const LIGHT = "#ffffff";

/** Red, green and blue, 0 to 255, of a colour written `#rrggbb`. Throws on anything else. */
function channels(colour: string): [number, number, number] {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
  if (match === null) throw new Error(`Not a colour: ${colour}`);
  const channel = (i: number): number => Number.parseInt(match[i] ?? "0", 16);
  return [channel(1), channel(2), channel(3)];
}

/** Relative luminance, 0 to 1 (W3C, Web Content Accessibility Guidelines 2.2, 2023). */
export function luminance(colour: string): number {
  const linear = (channel: number): number => {
    const part = channel / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  };
  const [r, g, b] = channels(colour);
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

/** Contrast ratio of two colours, 1 to 21 (same source). */
export function contrast(a: string, b: string): number {
  const [one, other] = [luminance(a), luminance(b)];
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

/** Black or white, whichever reads better on `ground`: always at least 4.58 : 1. */
export function labelOn(ground: string): string {
  return contrast(ground, DARK) >= contrast(ground, LIGHT) ? DARK : LIGHT;
}

/** `colour` moved towards `other` by `share` (0 to 1). */
export function mix(colour: string, other: string, share: number): string {
  const to = channels(other);
  const mixed = channels(colour).map((channel, i) => Math.round(channel + ((to[i] ?? 0) - channel) * share));
  return `#${mixed.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}

/** A colour safe to draw with: the maker's own, or a quiet grey when it is not `#rrggbb`. */
export function safeColour(colour: string): string {
  return /^#[0-9a-f]{6}$/i.test(colour) ? colour.toLowerCase() : "#c9ccd1";
}
