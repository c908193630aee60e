import type { Comparison } from "../../choices/methods/comparison.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Book, Section } from "./content.ts";
import { labelSection } from "./handouts/labels.ts";
import { buyingSection } from "./parts/buying.ts";
import { comparingSection } from "./parts/comparing.ts";
import { coverOf } from "./parts/cover.ts";
import { cuttingSection } from "./parts/cutting.ts";
import {
  assumptionSection,
  cautionedOnce,
  cautionSection,
  glossarySection,
  handSection,
  readingSection,
} from "./parts/front-matter.ts";
import { type MakingPart, makingParts } from "./parts/making-parts.ts";
import { templateSection } from "./parts/templates.ts";
import { wasteSection } from "./parts/waste.ts";

/** 32 bits that change with the text (Fowler, Noll and Vo's FNV-1a hash), as eight hexadecimal digits. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  }
  return hash.toString(16).padStart(8, "0");
}

const SEWN: readonly MakingPart[] = [
  "units",
  "foundation",
  "blocks",
  "setting",
  "borders",
  "pressing",
  "finishing",
];

/** Every step that is ticked off. */
function stepsOf(sections: readonly Section[]): unknown[] {
  return sections.flatMap(({ blocks }) =>
    blocks.flatMap((block): unknown[] => {
      if (block.kind === "steps" || block.kind === "beside") return block.groups;
      return block.kind === "cards" ? block.cards.map(({ lines }) => lines) : [];
    }),
  );
}

/**
 * Everything the bench book of a plan says, in order; sections without content are left out.
 * `comparison` sets the ways of making side by side, where that was asked.
 */
export function bookOf(plan: Plan, words: Words, comparison: Comparison | null = null): Book {
  const parts = makingParts(plan, cautionedOnce(words));
  const sections = [
    buyingSection(plan, words),
    // What was taken where the file left something open is read before anything is cut.
    assumptionSection(plan, words),
    cautionSection(words),
    handSection(plan, words),
    readingSection(plan, words),
    ...plan.fabrics.map((_, index) => cuttingSection(plan, index, words)),
    labelSection(plan, words),
    ...SEWN.map((part) => parts[part] ?? null),
    wasteSection(plan, words),
    comparison === null ? null : comparingSection(comparison, plan, words),
  ].filter((section): section is Section => section !== null);
  const templates = templateSection(plan, words);
  const glossary = glossarySection(templates === null ? sections : [...sections, templates], words);
  // Sheets at full size come last: what is read goes on without a page left empty before them.
  const after = [glossary, templates].filter((section): section is Section => section !== null);
  return {
    purpose: "bench",
    title: words.book.bench.title(plan.name),
    subtitle: words.book.bench.subtitle,
    cover: coverOf(plan, words),
    sections: [...sections, ...after],
    key: fingerprint(JSON.stringify([plan.name, stepsOf(sections)])),
  };
}
