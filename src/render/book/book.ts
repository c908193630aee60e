import type { Comparison } from "../../choices/comparison.ts";
import type { Plan } from "../../plan/types.ts";
import { drawFabric } from "../svg/index.ts";
import { buyingSection } from "./buying.ts";
import { comparingSection } from "./comparing.ts";
import type { Book, Section } from "./content.ts";
import { coverOf } from "./cover.ts";
import { cuttingSection } from "./cutting.ts";
import { foundationSection } from "./foundation.ts";
import {
  assumptionSection,
  cautionSection,
  glossarySection,
  handSection,
  readingSection,
} from "./front-matter.ts";
import { labelSection } from "./labels.ts";
import { quiltSection } from "./quilt-pages.ts";
import { finishingSection, sewingSection } from "./sewing.ts";
import { templateSection } from "./templates.ts";
import { wasteSection } from "./waste.ts";
import { bookWords } from "./words.ts";

/** 32 bits that change with the text (Fowler, Noll and Vo's FNV-1a hash), as eight hexadecimal digits. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  }
  return hash.toString(16).padStart(8, "0");
}

/**
 * Everything the cutting book of a plan says, in order; sections without content are left out.
 * `diagrams` are those of `drawFabric`, one for each fabric, where they are drawn already; `comparison` sets the
 * ways of making side by side, where that was asked.
 */
export function bookOf(plan: Plan, diagrams?: readonly string[], comparison: Comparison | null = null): Book {
  const sections = [
    readingSection(plan),
    cautionSection(),
    handSection(plan),
    buyingSection(plan),
    ...plan.fabrics.map((_, index) =>
      cuttingSection(plan, index, diagrams?.[index] ?? drawFabric(plan, index)),
    ),
    labelSection(plan),
    quiltSection(plan),
    foundationSection(plan),
    sewingSection(plan),
    finishingSection(plan),
    templateSection(plan),
    wasteSection(plan),
    comparison === null ? null : comparingSection(comparison, plan),
    assumptionSection(plan),
  ].filter((section): section is Section => section !== null);
  const glossary = glossarySection(sections);
  const steps = sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "bench" || block.kind === "steps" ? block.groups : [])),
  );
  return {
    title: bookWords.title(plan.name),
    subtitle: bookWords.subtitle,
    cover: coverOf(plan),
    sections: glossary === null ? sections : [...sections, glossary],
    key: fingerprint(JSON.stringify([plan.name, steps])),
  };
}
