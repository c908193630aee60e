import { hatchesScene } from "../../../draw/index.ts";
import { formatLength, formatSize, TICKS_PER } from "../../../length/index.ts";
import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { wordAll } from "../../../words/index.ts";
import { assumptionsOf, handLines } from "../../index.ts";
import type { Block, Book, Section } from "../content.ts";
import { typeset } from "../typeset.ts";

function section(id: string, title: string, newSheet: boolean, blocks: Block[]): Section {
  return { id, over: "", title, swatch: null, newSheet, blocks };
}

/** A size that shows how sizes are written: 2 1/2 by 4 1/2 in, 6.5 by 11.5 cm. */
const EXAMPLE = {
  inches: [2.5 * TICKS_PER.in, 4.5 * TICKS_PER.in],
  metric: [6.5 * TICKS_PER.cm, 11.5 * TICKS_PER.cm],
} as const;

/** How the diagrams are read. */
export function readingSection(plan: Plan, words: Words): Section {
  const { title, lead, items, sizes } = words.book.bench.reading;
  const [across, along] = plan.ruler.unit === "in" ? EXAMPLE.inches : EXAMPLE.metric;
  const length = (size: number): string => formatLength(size, plan.ruler);
  const said = [...items, sizes(formatSize(across, along, plan.ruler), length(across), length(along))];
  const wide = plan.fabrics.some(
    ({ pieces, lays }) =>
      pieces.some(({ fullWidth }) => fullWidth) || lays.some(({ source }) => source === "bolt"),
  );
  const hatches = hatchesScene(plan, words);
  return section("reading", title, false, [
    { kind: "text", text: lead, tone: "lead" },
    ...(hatches === null ? [] : [{ kind: "picture" as const, scene: hatches }]),
    {
      kind: "list",
      columns: 2,
      items: (wide ? [...said, words.cutting.fullWidthMeaning] : said).map(typeset),
    },
  ]);
}

/** Words of a book that tells what can hurt once, before all work. */
export function cautionedOnce(words: Words): Words {
  return { ...words, making: { ...words.making, cutSewn: words.making.cutSewnToo } };
}

/** What can hurt, and how it does not. */
export function cautionSection(words: Words): Section {
  const { title, lead, blade, iron, ironRules, needle, needleRules } = words.book.bench.cautions;
  return section("cautions", title, false, [
    { kind: "text", text: lead, tone: "lead" },
    {
      kind: "cautions",
      tools: [
        { tool: blade, rules: [...words.cutting.cautions] },
        { tool: iron, rules: [...ironRules] },
        { tool: needle, rules: [...needleRules] },
      ],
    },
  ]);
}

/** How the cuts are made, each kind of stock once. Null when nothing is cut. */
export function handSection(plan: Plan, words: Words): Section | null {
  const items = handLines(plan, words).map(typeset);
  return items.length === 0
    ? null
    : section("hand", words.cutting.handTitle, false, [{ kind: "list", items, columns: 2 }]);
}

/** Notes that say no more than the list of what to buy. */
const TOLD: ReadonlySet<string> = new Set(["WADDING-SIZE"]);

/** What the file left open, and what planning has to say. Null when there is neither. */
export function assumptionSection(plan: Plan, words: Words): Section | null {
  const assumed = assumptionsOf(plan, words).map(typeset);
  const noted = plan.diagnostics.filter(({ severity, code }) => severity !== "error" && !TOLD.has(code));
  const notes = wordAll(noted, words).map(({ message }) => typeset(message));
  if (assumed.length + notes.length === 0) return null;
  const { title, lead } = words.book.bench.assumed;
  return section("assumptions", title, false, [
    ...(assumed.length === 0
      ? []
      : [
          { kind: "text" as const, text: lead, tone: "lead" as const },
          { kind: "list" as const, items: assumed, columns: 3 as const },
        ]),
    ...(notes.length === 0
      ? []
      : [
          { kind: "heading" as const, text: words.book.bench.assumed.notes },
          { kind: "list" as const, items: notes, columns: 2 as const },
        ]),
  ]);
}

/** Every text of a block that a reader might look up. */
function textOf(block: Block): string {
  return JSON.stringify({ ...block, scene: null });
}

/** The terms that the other sections use, in alphabetical order. Null when they use none. */
export function glossarySection(sections: Book["sections"], words: Words): Section | null {
  const text = sections.flatMap(({ title, blocks }) => [title, ...blocks.map(textOf)]).join("\n");
  const terms = words.book.bench.glossary.terms
    .filter(([, used]) => used.test(text))
    .map(([term, , meaning]) => ({ term, meaning }))
    .sort((a, b) => (a.term < b.term ? -1 : 1));
  if (terms.length === 0) return null;
  return section("glossary", words.book.bench.glossary.title, false, [{ kind: "terms", terms }]);
}
