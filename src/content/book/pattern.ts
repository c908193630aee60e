import { colouringScene, coverScene } from "../../draw/index.ts";
import { ticksOf } from "../../draw/quilt/patches.ts";
import { spokenSizeNear } from "../../draw/quilt/quilt-words.ts";
import { formatLength } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { PatternPart, PatternSpec } from "../../spec/pattern-types.ts";
import type { Words } from "../../words/index.ts";
import { fabricNotes } from "../cutting/steps.ts";
import { alsoNeeded, boughtWords, handLines, pieceFacts } from "../index.ts";
import { forMakers } from "../sewing/for-makers.ts";
import type { Block, Book, Fact, Section, Table } from "./content.ts";
import { authorWords } from "./parts/author-words.ts";
import { cautionedOnce, cautionSection, glossarySection } from "./parts/front-matter.ts";
import { type MakingPart, makingParts } from "./parts/making-parts.ts";
import { letteredAlike } from "./parts/pattern-letters.ts";
import { fabricBlocks, makeTable, type PatternSize } from "./parts/pattern-sizes.ts";
import { templateSection } from "./parts/templates.ts";
import { sentence, typeset } from "./typeset.ts";

export type { PatternSize } from "./parts/pattern-sizes.ts";

function section(part: PatternPart, blocks: readonly Block[], words: Words): Section | null {
  if (blocks.length === 0) return null;
  const title = words.book.pattern.titles[part];
  return { id: part, over: "", title, swatch: null, newSheet: false, blocks: [...blocks] };
}

function list(items: readonly string[]): Block[] {
  return items.length === 0 ? [] : [{ kind: "list", items: [...items], columns: items.length > 3 ? 2 : 1 }];
}

/** The fabrics of all sizes, each from the first size that has it. */
function fabricsOf(sizes: readonly PatternSize[]): { fabric: Plan["fabrics"][number]; plan: Plan }[] {
  const found = new Map<string, { fabric: Plan["fabrics"][number]; plan: Plan }>();
  for (const { plan } of sizes)
    for (const fabric of plan.fabrics) if (!found.has(fabric.name)) found.set(fabric.name, { fabric, plan });
  return [...found.values()];
}

/** What to buy, for every size in a column of its own. */
function requirements(plan: Plan, sizes: readonly PatternSize[], words: Words): Block[] {
  const { requirements: told } = words.book.pattern;
  const cell = (text: string, notes: string[] = [], swatch: string | null = null) => ({
    text,
    notes,
    swatch,
  });
  const rows = fabricsOf(sizes).map(({ fabric, plan: from }) => {
    const uses = [...new Set(pieceFacts(fabric, from, words).flatMap((piece) => piece.uses))]
      .slice(0, 5)
      .map(typeset);
    return [
      cell(
        fabric.name,
        [fabricNotes(fabric, words).join("; "), uses.join("; ")].filter((note) => note !== ""),
        fabric.colour,
      ),
      ...sizes.map((size) => {
        const own = size.plan.fabrics.find(({ name }) => name === fabric.name);
        return cell(
          own === undefined
            ? words.book.pattern.cutting.none
            : typeset(boughtWords(own, size.plan.ruler, words)),
        );
      }),
    ];
  });
  const table: Table = {
    caption: told.caption,
    captionSeen: false,
    columns: [
      { heading: sentence(told.fabric), align: "left" },
      ...sizes.map(({ heading }) => ({
        heading: sizes.length === 1 ? sentence(told.buy) : heading,
        align: "left" as const,
      })),
    ],
    rows,
    summed: false,
    ticks: [],
  };
  const widths = new Set(
    plan.fabrics.flatMap(({ purchase, usable }) =>
      purchase === null ? [] : [typeset(formatLength(usable, plan.ruler))],
    ),
  );
  const lead = [told.lead, ...(widths.size === 0 ? [] : [told.usable([...widths])])].join(" ");
  const make = makeTable(sizes, words);
  const also = sizes.map(({ heading, plan: own }) => {
    const lines = alsoNeeded(own, words).map(typeset);
    return sizes.length === 1 ? lines : lines.map((line) => `${heading}: ${line}`);
  });
  return [
    { kind: "text", text: lead, tone: "lead" },
    { kind: "table", table },
    ...list(also.flat()),
    ...(make === null ? [] : [{ kind: "table" as const, table: make }]),
  ];
}

function cutting(plan: Plan, sizes: readonly PatternSize[], words: Words): Block[] {
  const all = fabricsOf(sizes);
  const starred = sizes.some((size) =>
    size.plan.fabrics.some(({ pieces }) =>
      pieces.some(({ letter }) => letter.includes(words.book.pattern.cutting.star)),
    ),
  );
  const fabrics = all.flatMap(({ fabric }, index): Block[] => [
    { kind: "heading", text: fabric.name },
    ...fabricBlocks(fabric, index, sizes, words),
  ]);
  return [
    {
      kind: "text",
      text: starred
        ? `${words.book.pattern.cutting.lead} ${words.book.pattern.cutting.starred}`
        : words.book.pattern.cutting.lead,
      tone: "lead",
    },
    ...list(handLines(plan, words).map(typeset)),
    ...fabrics,
    ...(sizes.length < 2
      ? []
      : [
          {
            kind: "text" as const,
            text: words.book.pattern.cutting.ofSize(sizes[0]?.heading ?? ""),
            tone: "lead" as const,
          },
        ]),
  ];
}

function about(pattern: PatternSpec, words: Words): Block[] {
  const { about: told } = words.book.pattern;
  const facts: Fact[] = (["author", "version", "date", "contact"] as const).flatMap((field) =>
    pattern[field] === "" ? [] : [{ caption: told[field], value: pattern[field] }],
  );
  return [
    ...(facts.length === 0 ? [] : [{ kind: "facts" as const, facts }]),
    ...(pattern.credits === ""
      ? []
      : [{ kind: "text" as const, text: `${told.credits}: ${pattern.credits}`, tone: "plain" as const }]),
    ...(pattern.changes.length === 0
      ? []
      : [
          { kind: "heading" as const, text: told.changes },
          { kind: "list" as const, items: pattern.changes },
        ]),
    ...(pattern.copyright === ""
      ? []
      : [{ kind: "text" as const, text: pattern.copyright, tone: "quiet" as const }]),
  ];
}

function colouring(plan: Plan, words: Words): Block[] {
  if (plan.top === null) return [];
  return [
    { kind: "text", text: words.book.pattern.colouring, tone: "lead" },
    { kind: "picture", scene: colouringScene(plan.top, plan.fabrics, words) },
  ];
}

const SEWN: ReadonlySet<string> = new Set<MakingPart>([
  "units",
  "foundation",
  "blocks",
  "setting",
  "borders",
  "finishing",
]);

const isSewn = (part: PatternPart): part is Extract<PatternPart, MakingPart> => SEWN.has(part);

function coverOf(
  plan: Plan,
  pattern: PatternSpec,
  sizes: readonly PatternSize[],
  words: Words,
): Book["cover"] {
  const { top, fabrics, ruler } = plan;
  if (top === null) throw new Error("a pattern without a quilt");
  const scene = coverScene(top, fabrics, {
    title: words.book.bench.coverTop,
    description: words.book.bench.title(top.name),
    idPrefix: "cover-",
    width: 560,
    tallest: 620,
  });
  const { facts } = words.book.bench;
  const finished = sizes.map(({ finished: own }) => typeset(own));
  const lines = [
    ...(pattern.author === "" ? [] : [words.book.pattern.by(pattern.author)]),
    // One size stands among the facts.
    ...(finished.length === 1 ? [] : [words.book.pattern.sizes(finished)]),
    ...(pattern.level === "" ? [] : [words.book.pattern.level(pattern.level)]),
  ];
  return {
    scene,
    lines,
    foot: pattern.copyright,
    facts: [
      ...(finished.length > 1
        ? []
        : [
            { caption: facts.finished, value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler) },
          ]),
      ...(top.blocks.length === 0 ? [] : [{ caption: facts.blocks, value: String(top.blocks.length) }]),
      { caption: facts.fabrics, value: String(fabrics.length) },
      ...(pattern.date === "" && pattern.version === ""
        ? []
        : [
            {
              caption: words.book.pattern.about.version,
              value: [pattern.version, pattern.date].filter(Boolean).join(", "),
            },
          ]),
    ],
  };
}

/** The size that is shown and the further ones, their bags under the same letters. */
function sizesOf(plan: Plan, others: readonly PatternSize[], words: Words): PatternSize[] {
  const { top, ruler } = plan;
  if (top === null) throw new Error("a pattern without a quilt");
  const finished = spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler);
  const given = [{ heading: finished, finished, plan }, ...others];
  const lettered = letteredAlike(
    given.map((size) => size.plan),
    words,
  );
  return given.map((size, i) => ({
    ...size,
    plan: lettered[i] ?? size.plan,
    // A size stands on one line where it heads a column.
    heading: size.heading.replaceAll(" ", "\u00a0"),
  }));
}

/** A part of the sewing; after the setting, the blocks at a glance as they are pressed. */
function sewnSection(part: MakingPart, making: ReturnType<typeof makingParts>, words: Words): Section | null {
  const found = making[part] ?? null;
  const glance = (making.pressing?.blocks ?? []).flatMap((block): Block[] =>
    block.kind === "cards"
      ? block.cards.flatMap(({ pictures }) =>
          pictures.map(({ scene }) => ({ kind: "picture" as const, scene, share: 0.5 })),
        )
      : [],
  );
  if (found === null || part !== "setting" || glance.length === 0) return found;
  const heading = { kind: "heading", text: words.book.pattern.glance } as const;
  return { ...found, blocks: [...found.blocks, heading, ...glance] };
}

/** A part that is no sewing; null for the glossary, which is made of the others. */
function partOf(
  part: Exclude<PatternPart, MakingPart>,
  plan: Plan,
  pattern: PatternSpec,
  sizes: readonly PatternSize[],
  words: Words,
): Section | null {
  switch (part) {
    case "requirements":
      return section(part, requirements(plan, sizes, words), words);
    case "cautions":
      return cautionSection(words);
    case "cutting":
      return section(part, cutting(plan, sizes, words), words);
    case "templates":
      return templateSection(plan, words);
    case "colouring":
      return section(part, colouring(plan, words), words);
    case "about":
      return section(part, about(pattern, words), words);
    case "words":
      return null;
  }
}

/**
 * The pattern of a quilt, to hand out or to sell: the parts its file names, in that order, for every size.
 * @param others further sizes, planned whole; the plan itself is the size that is shown step by step
 */
export function patternOf(
  plan: Plan,
  pattern: PatternSpec,
  ours: Words,
  others: readonly PatternSize[] = [],
): Book {
  const words = forMakers(ours);
  const sizes = sizesOf(plan, others, words);
  const making = makingParts(plan, pattern.parts.includes("cautions") ? cautionedOnce(words) : words);
  const told = pattern.parts.map((part): { part: PatternPart; section: Section | null } => {
    const found = isSewn(part) ? sewnSection(part, making, words) : partOf(part, plan, pattern, sizes, words);
    return { part, section: found === null ? null : { ...found, id: part } };
  });
  const glossary = glossarySection(
    told.flatMap((each) => (each.section === null ? [] : [each.section])),
    words,
  );
  const sections = told.flatMap(({ part, section: found }): Section[] => {
    const whole = part === "words" ? glossary : found;
    const before = authorWords(pattern.before[part] ?? "");
    const after = authorWords(pattern.after[part] ?? "");
    const blocks = [...before, ...(whole?.blocks ?? []), ...after];
    const base = whole ?? section(part, blocks, words);
    return base === null || blocks.length === 0 ? [] : [{ ...base, id: part, blocks }];
  });
  return {
    purpose: "pattern",
    title: words.book.bench.title(plan.name),
    subtitle: words.book.pattern.subtitle,
    cover: coverOf(plan, pattern, sizes, words),
    sections,
    key: "pattern",
  };
}
