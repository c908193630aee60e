import type { Section } from "./content.ts";

/** What speaks of the file a plan was made from, or of how far it is proved, is nothing to the reader of a pattern. */
const OF_THE_FILE = /\bfile\b|`|\bprov(?:ed|en)\b|\bassumed\b/i;
const ASIDE = /\s*\([^()]*(?:\bfile\b|`|\bassumed\b|\bprov(?:ed|en)\b)[^()]*\)/gi;

/** A text without its sentences and asides about the file; empty when none is left. */
export function forMakers(text: string): string {
  const open = text.replace(ASIDE, "");
  if (!OF_THE_FILE.test(open)) return open;
  return open
    .split(/(?<=[.:!?])\s+(?=\p{Lu})/u)
    .filter((said) => !OF_THE_FILE.test(said))
    .join(" ");
}

/** Names and marks of ours that are no sentences, and words of the author's. */
const KEPT: ReadonlySet<string> = new Set([
  "id",
  "kind",
  "tone",
  "swatch",
  "colour",
  "align",
  "letter",
  "tick",
  "number",
  "fabric",
]);

function cleaned(value: unknown, key: string): unknown {
  if (typeof value === "string") return KEPT.has(key) ? value : forMakers(value);
  if (Array.isArray(value)) {
    const inner = value.map((each) => cleaned(each, key));
    // A line that spoke of nothing else is gone; cells of a table and columns stay in their places.
    return typeof value[0] === "string" && key !== "ticks" ? inner.filter((said) => said !== "") : inner;
  }
  // A drawing says what it says.
  if (typeof value !== "object" || value === null || key === "scene") return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, cleaned(inner, name)]));
}

/** A section of the bench book as a pattern has it. */
export function sectionForMakers(section: Section): Section {
  return { ...section, blocks: cleaned(section.blocks, "blocks") as Section["blocks"] };
}
