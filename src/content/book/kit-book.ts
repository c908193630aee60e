import type { KitsAlike } from "../../choices/kits/kits.ts";
import type { PatternPart, PatternSpec } from "../../spec/pattern-types.ts";
import type { Words } from "../../words/index.ts";
import { sortName } from "../buying/kits.ts";
import { pieceFacts } from "../index.ts";
import type { Block, Book, Table } from "./content.ts";
import { patternOf } from "./pattern.ts";
import { sentence, typeset } from "./typeset.ts";

/** What a pupil with a kit neither buys nor cuts. */
const NOT_IN_KIT: ReadonlySet<PatternPart> = new Set<PatternPart>(["requirements", "cutting"]);

/** The bags of one fabric, with boxes to tick while they are counted. */
function bagsTable(plan: KitsAlike["dealt"], words: Words): Table {
  const { bag, size, for: use } = words.book.pattern.cutting;
  const rows = plan.fabrics.flatMap((fabric) =>
    pieceFacts(fabric, plan, words).map((piece) => ({ fabric, piece })),
  );
  const cell = (text: string, swatch: string | null = null) => ({ text, notes: [], swatch });
  return {
    caption: words.teaching.kit.holds,
    captionSeen: false,
    columns: [
      { heading: sentence(bag), align: "left" },
      { heading: sentence(words.choices.kits.columns.fabric), align: "left" },
      { heading: sentence(words.teaching.kit.pieces), align: "right" },
      { heading: sentence(size), align: "left" },
      { heading: sentence(use), align: "left", wordy: true },
    ],
    rows: rows.map(({ fabric, piece }) => [
      cell(piece.letter),
      cell(fabric.name, fabric.colour),
      cell(String(piece.count)),
      cell(typeset(piece.size)),
      cell(piece.remarks.map(typeset).join("; ")),
    ]),
    summed: false,
    ticks: [],
  };
}

/** The paper of a pupil: what the kit holds, and the pattern without what is bought and cut already. */
export function kitBook(kit: KitsAlike, index: number, pattern: PatternSpec, words: Words): Book {
  const parts = pattern.parts.filter((part) => !NOT_IN_KIT.has(part));
  const book = patternOf(kit.dealt, { ...pattern, parts }, words);
  const blocks: Block[] = [
    { kind: "text", text: words.teaching.kit.lead, tone: "lead" },
    { kind: "table", table: bagsTable(kit.dealt, words) },
  ];
  return {
    ...book,
    subtitle: words.teaching.kit.subtitle(index + 1, kit.kits),
    cover: { ...book.cover, lines: [...(book.cover.lines ?? []), typeset(sortName(kit, index, words))] },
    sections: [
      {
        ...{ id: "kit", over: "", title: words.teaching.kit.holds, swatch: null, newSheet: false },
        blocks,
      },
      ...book.sections,
    ],
    key: `kit-${index + 1}`,
  };
}
