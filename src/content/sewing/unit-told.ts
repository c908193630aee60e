import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { CELL } from "../lines/table-lines.ts";
import { indented } from "./making-lines.ts";
import { heapCalled, type UnitGroup, type UnitTable } from "./unit-groups.ts";
import { telling } from "./unit-telling.ts";
import { bodyOf, sortLines, type ToldRun } from "./units.ts";

/** How the seams inside are pressed so that they nest: told in place of the recipe's own pressing. */
function insideLines(unit: UnitRecord, plan: Plan, words: Words): string[] {
  const { making } = plan;
  const own = making?.unitPressing.find((each) => making.units[each.unit] === unit);
  if (making === undefined || own === undefined) return [];
  const counted = own.ways.some(({ places }) => places.some(({ which }) => which !== null));
  const told = own.ways.map(({ places, count, lines, inner, between }) => {
    const names = places.flatMap(({ kind, which }) => {
      const name = making.kinds[kind]?.name;
      if (name === undefined) return [];
      return [which === null ? name : words.units.placesIn(name, which)];
    });
    const whose = own.ways.length === 1 ? "" : words.units.forKinds(count, names);
    return words.units.insidePressed(whose, lines, inner, between);
  });
  return counted ? [...told, words.units.countedSo] : told;
}

/** Lines of several units one beside another: what is the same is told once, what differs for each by name. */
function together(names: readonly string[], lines: readonly (readonly string[])[], words: Words): string[] {
  const most = Math.max(...lines.map((own) => own.length));
  return Array.from({ length: most }, (_, i) => lines.map((own) => own[i] ?? "")).flatMap((told) => {
    const ways = [...new Set(told)].filter((line) => line !== "");
    if (ways.length === 1 && told.every((line) => line !== "")) return ways;
    return ways.map((way) => {
      const whose = names.filter((_, unit) => told[unit] === way);
      // What is set in stays so.
      return way.replace(/^ */, (margin) => `${margin}${words.units.group.own(whose, "")}`);
    });
  });
}

/** What each unit of a group takes, and how many are made. */
function groupTable({ units, columns }: UnitGroup, words: Words): UnitTable {
  const group = words.units.group;
  const [first] = units;
  const heaps = (first?.heaps.length ?? 1) > 1 ? (first?.heaps ?? []) : [];
  const sets = first !== undefined && !first.loose && first.unitsPerSet > 1;
  const over = units.some(({ spare }) => spare > 0);
  return {
    headings: [
      group.unit,
      ...columns.map(({ name }) => name),
      ...(sets ? [group.sets] : []),
      group.make,
      ...heaps.map((_, i) => group.heap(heapCalled(i, words))),
      ...(over ? [group.over] : []),
    ],
    rows: units.map((unit, u) => [
      unit.name,
      ...columns.map(({ bags }) => words.units.bag(bags[u]?.letters.join("/") ?? "", bags[u]?.fabric ?? "")),
      ...(sets ? [String(unit.sets)] : []),
      String(unit.units),
      ...heaps.map((_, i) => group.heapOf(unit.heaps[i]?.name ?? "", unit.heaps[i]?.count ?? 0)),
      ...(over ? [String(unit.spare)] : []),
    ]),
  };
}

function titleOf({ units }: UnitGroup, words: Words): string {
  const [first] = units;
  if (first === undefined) return "";
  if (units.length === 1)
    return words.units.title(
      first.name,
      words.unitNames.told(first.told),
      words.unitNames.method(first.method),
      first.units,
    );
  const all = units.reduce((sum, unit) => sum + unit.units, 0);
  return words.units.groupTitle(
    units.map(({ name }) => name),
    words.unitNames.told(first.told),
    words.unitNames.method(first.method),
    all,
  );
}

/** Units that are sewn alike, told in parts: pictures of the steps stand between them. */
export interface ToldGroup {
  title: string;
  /** Sets, or what a set gives. */
  head: string[];
  /** Bags of each unit of the group; null for one alone. */
  table: UnitTable | null;
  runs: ToldRun[];
  /** Pressing inside, size, heaps. */
  after: string[];
}

/** Units that are sewn alike: what they are, the bags each takes, the steps, the heaps. */
export function toldGroup(group: UnitGroup, plan: Plan, words: Words): ToldGroup | null {
  const { units } = group;
  const names = units.map(({ name }) => name);
  const tells = units.map((_, i) => telling(group, i, plan, words));
  const [[first], [tell]] = [units, tells];
  if (first === undefined || tell === undefined) return null;
  const untrimmed = first.steps.every((step) => step.do !== "trim");
  const sets = first.loose ? "" : words.units.sets(first.sets, first.unitsPerSet, first.spare);
  const alone = units.length === 1;
  const perSet = first.loose || first.unitsPerSet === 1 ? [] : [words.units.group.perSet(first.unitsPerSet)];
  const bodies = tells.map((each) => bodyOf(each, words));
  return {
    title: titleOf(group, words),
    head: alone ? [sets].filter((line) => line !== "") : perSet,
    table: alone ? null : groupTable(group, words),
    runs: (bodies[0] ?? []).map(({ from, to }, i) => ({
      from,
      to,
      lines: together(
        names,
        bodies.map((body) => body[i]?.lines ?? []),
        words,
      ),
    })),
    after: [
      ...together(
        names,
        units.map((unit) => insideLines(unit, plan, words)),
        words,
      ),
      ...(untrimmed ? [words.units.measuresUnit(tell.size(first.raw))] : []),
      // Units that are sewn heap by heap are apart already.
      ...(first.batches.length > 0 ? sortLines(tell, words) : []),
    ],
  };
}

/** The same as lines. A table stands as lines whose cells are parted by tabs. */
export function unitGroupLines(group: UnitGroup, plan: Plan, words: Words): string[] {
  const told = toldGroup(group, plan, words);
  if (told === null) return [];
  const { title, head, table, runs, after } = told;
  const rows = table === null ? [] : [table.headings, ...table.rows].map((row) => row.join(CELL));
  return [
    `[ ] ${title}`,
    ...indented(indented([...rows, ...head, ...runs.flatMap(({ lines }) => lines), ...after])),
  ];
}
