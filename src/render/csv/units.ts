import type {
  BatchRecord,
  HeapRecord,
  PatchPart,
  StripSetRecord,
  UnitRecord,
} from "../../cutlist/unit-record.ts";
import { formatLength, type Ruler } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Eighth } from "../../quilt/units/types.ts";
import { csv } from "./index.ts";

/** How the cells of the table say what the record holds. */
const unitCells = {
  header: (unit: string) => [
    ...["unit", "what", "method", "make", "sets", "over", `raw across (${unit})`, `raw along (${unit})`],
    ...["heap", "in heap", "place", "fabric", "bag", "cut as", "pieces", "heads"],
  ],
  part: {
    whole: "whole",
    template: "along the template",
    "top-left": "half, right angle upper left",
    "top-right": "half, right angle upper right",
    "bottom-left": "half, right angle lower left",
    "bottom-right": "half, right angle lower right",
    top: "quarter, long side above",
    right: "quarter, long side right",
    bottom: "quarter, long side below",
    left: "quarter, long side left",
  } satisfies Record<PatchPart, string>,
  heads: ["up", "up right", "right", "down right", "down", "down left", "left", "up left"],
  faceDown: (heads: string) => `${heads}, seen on its wrong side`,
  inSet: (role: string) => `set: ${role}`,
  strip: (set: string, number: number) => `strip set ${set}, strip ${number}`,
  segments: (count: number, width: string, high: string) => `${count} segments of ${width}, ${high} high`,
} as const;

type Row = (string | number)[];

const heads = (up: Eighth | null): string => (up === null ? "" : (unitCells.heads[up] ?? ""));

function looseRows(heap: HeapRecord): Row[] {
  return heap.patches.flatMap(({ spot, fabric, up, from }) =>
    from.map(({ letter, part, count }) => [spot, fabric, letter, unitCells.part[part], count, heads(up)]),
  );
}

function setRows({ sets, laid }: BatchRecord): Row[] {
  return laid.map(({ role, fabric, letter, up, faceDown }) => [
    unitCells.inSet(role),
    fabric,
    letter,
    unitCells.part.whole,
    sets,
    faceDown === null ? heads(up) : unitCells.faceDown(heads(faceDown)),
  ]);
}

function stripRows(set: StripSetRecord, ruler: Ruler): Row[] {
  const { name, strips, fullSets, lastLength, segments, segment, height } = set;
  const cut = unitCells.segments(segments, formatLength(segment, ruler), formatLength(height, ruler));
  return strips.flatMap(({ fabric, letter, lastLetter, up }, i) => {
    const own: [string | null, number][] = [
      [letter, fullSets],
      [lastLetter, lastLength > 0 ? 1 : 0],
    ];
    return own.flatMap(([bag, count]): Row[] =>
      bag === null || count === 0 ? [] : [[unitCells.strip(name, i + 1), fabric, bag, cut, count, heads(up)]],
    );
  });
}

function rowsOf(unit: UnitRecord, ruler: Ruler): Row[] {
  const bare = { unit: false, decimal: undefined } as const;
  const [across, along] = [unit.raw.across, unit.raw.along].map((length) =>
    formatLength(length, ruler, bare),
  );
  const own = [
    unit.name,
    unit.text,
    unit.method,
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
      ...looseRows(heap).map((cells) => row(heap, cells)),
      ...unit.stripSets
        .filter((set) => set.heap === h)
        .flatMap((set) => stripRows(set, ruler).map((cells) => row(heap, cells))),
    ]),
    // Heaps that are sorted out of sets have no bag of their own.
    ...(unit.batches.length === 0 ? [] : unit.heaps.map((heap) => row(heap, ["", "", "", "", "", ""]))),
    ...unit.batches.flatMap((batch) => setRows(batch).map((cells) => row(null, cells))),
  ];
}

/** One line for each place of a unit and the bag that fills it; empty where nothing is sewn. */
export function unitsCsv({ making, ruler }: Plan): string {
  const rows = (making?.units ?? [])
    .filter(({ steps }) => steps.length > 0)
    .flatMap((unit) => rowsOf(unit, ruler));
  return rows.length === 0 ? "" : csv(unitCells.header(ruler.unit), rows);
}
