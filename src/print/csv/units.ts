import { aboutLength } from "../../content/lengths.ts";
import type {
  BatchRecord,
  HeapRecord,
  StripSetRecord,
  UnitRecord,
} from "../../cutlist/record/unit-record.ts";
import { formatLength, type Ruler } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Eighth } from "../../quilt/units/types.ts";
import type { Words } from "../../words/index.ts";
import { csv } from "./index.ts";

type Row = (string | number)[];

const heads = (up: Eighth | null, words: Words): string =>
  up === null ? "" : (words.tables.units.heads[up] ?? "");

function looseRows(heap: HeapRecord, words: Words): Row[] {
  return heap.patches.flatMap(({ spot, fabric, up, from }) =>
    from.map(({ letter, part, count }) => [
      words.unitNames.part(spot),
      fabric,
      letter,
      words.tables.units.part[part],
      count,
      heads(up, words),
    ]),
  );
}

function setRows({ sets, laid }: BatchRecord, words: Words): Row[] {
  return laid.map(({ role, fabric, letter, up, faceDown }) => [
    words.tables.units.inSet(role),
    fabric,
    letter,
    words.tables.units.part.whole,
    sets,
    faceDown === null ? heads(up, words) : words.tables.units.faceDown(heads(faceDown, words)),
  ]);
}

function stripRows(set: StripSetRecord, ruler: Ruler, words: Words): Row[] {
  const { name, strips, fullSets, lastLength, segments, segment, height } = set;
  const cut = words.tables.units.segments(
    segments,
    formatLength(segment, ruler),
    aboutLength(height, { ruler }, words),
  );
  return strips.flatMap(({ fabric, letter, lastLetter, up }, i) => {
    const own: [string | null, number][] = [
      [letter, fullSets],
      [lastLetter, lastLength > 0 ? 1 : 0],
    ];
    return own.flatMap(([bag, count]): Row[] =>
      bag === null || count === 0
        ? []
        : [[words.tables.units.strip(name, i + 1), fabric, bag, cut, count, heads(up, words)]],
    );
  });
}

function rowsOf(unit: UnitRecord, ruler: Ruler, words: Words): Row[] {
  const bare = { unit: false, decimal: undefined } as const;
  const [across, along] = [unit.raw.across, unit.raw.along].map((length) =>
    formatLength(length, ruler, bare),
  );
  const own = [
    unit.name,
    words.unitNames.told(unit.told),
    words.unitNames.method(unit.method),
    unit.units,
    unit.loose ? "" : unit.sets,
    unit.spare,
    across ?? "",
    along ?? "",
  ];
  const row = (heap: HeapRecord | null, cells: Row): Row => [
    ...own,
    heap?.name ?? "",
    heap?.count ?? "",
    ...cells,
  ];
  return [
    ...unit.heaps.flatMap((heap, h) => [
      ...looseRows(heap, words).map((cells) => row(heap, cells)),
      ...unit.stripSets
        .filter((set) => set.heap === h)
        .flatMap((set) => stripRows(set, ruler, words).map((cells) => row(heap, cells))),
    ]),
    // Heaps that are sorted out of sets have no bag of their own.
    ...(unit.batches.length === 0 ? [] : unit.heaps.map((heap) => row(heap, ["", "", "", "", "", ""]))),
    ...unit.batches.flatMap((batch) => setRows(batch, words).map((cells) => row(null, cells))),
  ];
}

/** One line for each place of a unit and the bag that fills it; empty where nothing is sewn. */
export function unitsCsv({ making, ruler }: Plan, words: Words): string {
  const rows = (making?.units ?? [])
    .filter(({ steps }) => steps.length > 0)
    .flatMap((unit) => rowsOf(unit, ruler, words));
  return rows.length === 0 ? "" : csv(words.tables.units.header(ruler.unit), rows);
}
