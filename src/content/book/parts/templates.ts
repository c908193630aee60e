import { onPaper, templateSheets } from "../../../draw/index.ts";
import { cornerWords, countWords, fromWords, purposeWords } from "../../../draw/templates/template-words.ts";
import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import type { Block, Section, Table } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";

type Template = NonNullable<Plan["templates"]>[number];

/** On which sheets a template is. */
function whereOf({ name }: Template, sheets: ReturnType<typeof templateSheets>, words: Words): string {
  const on = sheets.flatMap(({ names }, i) => (names.includes(name) ? [i + 1] : []));
  const [first, last] = [on[0], on.at(-1)];
  return first === undefined || last === undefined
    ? words.book.templates.drawn
    : words.book.templates.sheet(first, last);
}

function tableOf(
  templates: readonly Template[],
  sheets: ReturnType<typeof templateSheets>,
  plan: Plan,
  words: Words,
): Table {
  const cell = (text: string, notes: string[] = []) => ({ text, notes, swatch: null });
  const { columns } = words.book.templates;
  const rows = templates.flatMap((template) =>
    template.uses.map((use, i) => [
      cell(template.name),
      { ...cell(fromWords(use, plan, words)), swatch: plan.fabrics[use.fabric]?.colour ?? null },
      cell(countWords(use, words)),
      cell(i === 0 ? typeset(purposeWords(template, plan, words)) : ""),
      cell(whereOf(template, sheets, words)),
    ]),
  );
  return {
    caption: words.book.templates.caption,
    captionSeen: false,
    columns: [
      { heading: columns.name, align: "left" },
      { heading: columns.from, align: "left", wordy: true },
      { heading: columns.count, align: "left" },
      { heading: columns.use, align: "left", wordy: true },
      { heading: columns.where, align: "left" },
    ],
    rows,
    summed: false,
    ticks: [],
  };
}

/** Templates that are drawn on the cloth, told by their corners. */
function drawnByHand(templates: readonly Template[], plan: Plan, words: Words): Block[] {
  const told = templates
    .filter((template) => onPaper(template) === "draw")
    .flatMap((template) =>
      template.uses.map((use) => {
        const corners = template.cut.map(({ x, y }) =>
          words.book.templates.corner(cornerWords(x, plan.ruler), cornerWords(y, plan.ruler)),
        );
        return words.book.templates.draw(
          template.name,
          `${fromWords(use, plan, words)} (${countWords(use, words)})`,
          corners,
        );
      }),
    );
  if (told.length === 0) return [];
  const fine = plan.ruler.unit === "in" ? "1/16 in" : "millimetre";
  return [
    { kind: "heading", text: words.book.templates.drawTitle },
    { kind: "text", text: typeset(words.book.templates.drawLead(fine)), tone: "plain" },
    { kind: "list", items: told },
  ];
}

/** Outlines at full size with how to use them. Null when every piece stays a rectangle. */
export function templateSection(plan: Plan, words: Words): Section | null {
  const templates = plan.templates ?? [];
  if (templates.length === 0) return null;
  const sheets = templateSheets(plan, words);
  const printed = templates.some(({ print }) => print.kind !== "none");
  const reversed = templates.some(({ uses }) => uses.some((use) => use.reversed > 0));
  const use = [
    ...words.book.templates.use,
    ...(printed ? [words.book.templates.up] : []),
    ...(reversed ? [words.book.templates.reversed] : []),
    words.book.templates.caution,
  ];
  return {
    id: "templates",
    over: "",
    title: words.book.templates.title,
    swatch: null,
    newSheet: false,
    blocks: [
      { kind: "text", text: words.book.templates.lead, tone: "lead" },
      { kind: "list", items: use.map(sentence), columns: 2 },
      { kind: "table", table: tableOf(templates, sheets, plan, words) },
      ...drawnByHand(templates, plan, words),
      ...sheets.map(({ scene }) => ({ kind: "full-size" as const, scene })),
    ],
  };
}
