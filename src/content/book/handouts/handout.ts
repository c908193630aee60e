import type { Block, Book, Section, Step, StepGroup, Table } from "../content.ts";

/**
 * The book without its drawings, as parts that any plain file can print: for a newsletter, a mail or a reader who
 * listens. Text is plain still; whoever prints it makes it safe.
 */
export type HandoutPart =
  | { kind: "title"; level: 1 | 2 | 3; text: string }
  | { kind: "paragraph"; text: string }
  | { kind: "list"; items: string[] }
  | { kind: "facts"; facts: { caption: string; value: string }[] }
  | { kind: "table"; headings: string[]; right: boolean[]; rows: string[][] }
  /** Numbered steps, each with what belongs to it; `inner` has a title of its own or none. */
  | {
      kind: "steps";
      steps: {
        number: number;
        title: string;
        table: StepTable | null;
        inner: { title: string; lines: string[] }[];
      }[];
    };

/** What each of several alike takes, before what is done with them. */
export interface StepTable {
  headings: string[];
  rows: string[][];
}

/** Sections that speak of drawings, or are printed to be cut up. */
const WITH_DRAWINGS: ReadonlySet<string> = new Set(["reading", "labels", "pressing", "waste", "templates"]);

function tablePart({ columns, rows, caption, captionSeen }: Table): HandoutPart[] {
  const titled: HandoutPart[] = captionSeen ? [{ kind: "title", level: 3, text: caption }] : [];
  const said = rows.map((row) => row.map(({ text, notes }) => [text, ...notes].filter(Boolean).join(" · ")));
  const headings = columns.map(({ heading }) => heading);
  return [
    ...titled,
    { kind: "table", headings, right: columns.map(({ align }) => align === "right"), rows: said },
  ];
}

function stepOf({ title, table, details, parts, warnings }: Step, number: number) {
  const inner = [
    { title: "", lines: details },
    ...parts.map((part) => ({ title: part.title, lines: part.details })),
  ];
  return {
    number,
    title,
    table:
      table === undefined
        ? null
        : {
            headings: table.columns.map(({ heading }) => heading),
            rows: table.rows.map((row) => row.map(({ text }) => text)),
          },
    inner: [...inner, { title: "", lines: warnings }].filter(({ lines }) => lines.length > 0),
  };
}

function stepParts(groups: readonly StepGroup[]): HandoutPart[] {
  let number = 0;
  return groups.flatMap(({ title, steps }): HandoutPart[] => [
    ...(title === "" ? [] : [{ kind: "title" as const, level: 3 as const, text: title }]),
    { kind: "steps", steps: steps.map((step) => stepOf(step, ++number)) },
  ]);
}

function partsOf(block: Block): HandoutPart[] {
  switch (block.kind) {
    case "text":
      return [{ kind: "paragraph", text: block.text }];
    case "heading":
      return [{ kind: "title", level: 3, text: block.text }];
    case "list":
      return [{ kind: "list", items: block.items }];
    case "facts":
      return [{ kind: "facts", facts: block.facts }];
    case "cautions":
      return block.tools.flatMap(({ tool, rules }): HandoutPart[] => [
        { kind: "title", level: 3, text: tool },
        { kind: "list", items: rules },
      ]);
    case "table":
      return tablePart(block.table);
    case "cards":
      return [
        {
          kind: "steps",
          steps: block.cards
            .filter(({ lines }) => lines.length > 0)
            .map(({ lines: [title = "", ...lines] }, i) => ({
              number: i + 1,
              title: title.trim(),
              table: null,
              inner: lines.length === 0 ? [] : [{ title: "", lines: lines.map((line) => line.trim()) }],
            })),
        },
      ];
    case "beside":
    case "steps":
      return stepParts(block.groups);
    case "terms":
      return [{ kind: "list", items: block.terms.map(({ term, meaning }) => `${term}: ${meaning}`) }];
    default:
      // Drawings and what is printed to be cut up.
      return [];
  }
}

function sectionParts({ title, over, headed, blocks }: Section): HandoutPart[] {
  const parts = blocks.flatMap(partsOf);
  // A heading of a drawing that is left out has nothing under it.
  const kept = parts.filter((part, i) => part.kind !== "title" || (parts[i + 1] ?? part).kind !== "title");
  if (kept.length === 0) return [];
  return [{ kind: "title", level: 2, text: headed ?? (over === "" ? title : `${over}: ${title}`) }, ...kept];
}

/** Buy list first, as a maker needs it; then the book's own order. */
function inOrder(sections: readonly Section[]): Section[] {
  const told = sections.filter(({ id }) => !WITH_DRAWINGS.has(id));
  return [...told.filter(({ id }) => id === "buy"), ...told.filter(({ id }) => id !== "buy")];
}

/** What a handout says, in order. */
export function handoutOf(book: Book): HandoutPart[] {
  return [
    { kind: "title", level: 1, text: book.title },
    { kind: "facts", facts: book.cover.facts },
    ...inOrder(book.sections).flatMap(sectionParts),
  ];
}
