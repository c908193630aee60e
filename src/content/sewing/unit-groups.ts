import type { HeapRecord, LaidRecord, StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Making } from "../../making/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

/*
 * Units that are alike but for their fabrics are one thing to do for hands: they are told once, with a table of the
 * bags each takes. The record stays as it is, one for each unit; what is worked out here is which records say the
 * same once their bags are called by what they are in the unit.
 */

/** One column of bags: what it stands for in the unit, and the bag of every unit of the group. */
interface BagColumn {
  name: string;
  bags: { letters: string[]; fabric: string }[];
}

/** Units that are sewn alike. */
export interface UnitGroup {
  /** In the order of the quilt. */
  units: UnitRecord[];
  /** The same units with their bags called as the columns are; the records themselves where there is but one. */
  told: UnitRecord[];
  columns: BagColumn[];
  /** Names of columns, and roles, whose fabrics have a print that reads alike from both ends. */
  twoWay: string[];
}

interface Renamed {
  told: UnitRecord;
  columns: { name: string; letters: string[]; fabric: string }[];
}

interface Place {
  role: string;
  fabric: string;
  letters: string[];
}

/** Every place in a unit that bags are taken for. */
function placesOf({ batches, heaps, stripSets }: UnitRecord): Place[] {
  return [
    ...batches.flatMap(({ laid }) =>
      laid.map(({ role, fabric, letter }) => ({ role, fabric, letters: [letter] })),
    ),
    ...heaps.flatMap(({ patches }) => patches),
    ...stripSets.flatMap(({ strips }) =>
      strips.map(({ role, fabric, letter, lastLetter }) => ({
        role,
        fabric,
        letters: [letter, lastLetter].filter((each) => each !== null),
      })),
    ),
  ].filter(({ letters }) => letters.length > 0);
}

/** Bags that are taken for one place stand in one column; in the order in which the record names them. */
function bagsOf(unit: UnitRecord): { letters: string[]; roles: string[]; fabric: string }[] {
  const found: { letters: string[]; roles: string[]; fabric: string }[] = [];
  for (const { role, fabric, letters } of placesOf(unit)) {
    const [own, ...others] = found.filter((bag) => bag.letters.some((letter) => letters.includes(letter)));
    const bag = own ?? { letters: [], roles: [], fabric };
    if (own === undefined) found.push(bag);
    for (const other of others) {
      bag.letters.push(...other.letters);
      bag.roles.push(...other.roles);
      found.splice(found.indexOf(other), 1);
    }
    bag.letters = [...new Set([...bag.letters, ...letters])];
    bag.roles = [...new Set([...bag.roles, role])];
  }
  return found;
}

/** Letters of the shortest role that stands for its bag. */
const SHORTEST = 3;

/** A heap in the steps of a group, where each unit has one of its own. */
export function heapCalled(index: number, words: Words): string {
  return words.units.heapOf("abcdefghijklmnopqrstuvwxyz".charAt(index));
}

/** A unit with its bags called by their roles, or numbered where one bag serves several. */
function renamed(unit: UnitRecord, words: Words): Renamed {
  const bags = bagsOf(unit);
  // A short name would be taken for a bag's letter.
  const numbered = bags.some(({ roles }) => roles.length > 1 || roles.some((role) => role.length < SHORTEST));
  const columns = bags.map(({ letters, roles, fabric }, i) => {
    const [role = ""] = roles;
    const alike = bags.filter((bag) => bag.roles[0] === role);
    const place = alike.findIndex((bag) => bag.letters === letters);
    const { bag, role: called, roleBag } = words.units.group;
    const name = numbered ? bag(i + 1) : alike.length === 1 ? called(role) : roleBag(role, place + 1);
    return { name, letters, fabric };
  });
  const named = (letter: string): string =>
    columns.find((each) => each.letters.includes(letter))?.name ?? letter;
  const roleNamed = (role: string): string => {
    const own = columns.filter((_, i) => bags[i]?.roles.includes(role));
    return own.length === 1 ? (own[0]?.name ?? role) : words.units.group.role(role);
  };
  return { columns, told: withNames(unit, { named, roleNamed }, words) };
}

/** What bags are called: by letter, and by the role of what is in them. */
interface Names {
  named(letter: string): string;
  roleNamed(role: string): string;
}

/** A unit with names in place of letters and fabrics. */
function withNames(unit: UnitRecord, { named, roleNamed }: Names, words: Words): UnitRecord {
  const names = (letters: readonly string[]): string[] => [...new Set(letters.map(named))];
  const laid = (each: LaidRecord): LaidRecord => ({
    ...each,
    letter: named(each.letter),
    fabric: named(each.letter),
  });
  const heap = (each: HeapRecord, i: number): HeapRecord => ({
    ...each,
    name: heapCalled(i, words),
    count: 0,
    patches: each.patches.map((patch) => ({
      ...patch,
      fabric: names(patch.letters)[0] ?? roleNamed(patch.role),
      letters: names(patch.letters),
      from: patch.from.map((source) => ({ ...source, letter: named(source.letter) })),
    })),
  });
  const spotRole = new Map(
    unit.heaps.flatMap(({ patches }) => patches.map(({ spot, role }) => [spot, role])),
  );
  const pressTo = (to: NonNullable<StepRecord["pressTo"]>) => {
    const role = spotRole.get(to.part) ?? to.part;
    return to.fabric === "" || !Object.hasOwn(unit.fabrics, role)
      ? to
      : { part: to.part, fabric: roleNamed(role) };
  };
  return {
    ...unit,
    fabrics: Object.fromEntries(Object.keys(unit.fabrics).map((role) => [role, roleNamed(role)])),
    heaps: unit.heaps.map(heap),
    batches: unit.batches.map((batch) => ({ ...batch, laid: batch.laid.map(laid) })),
    stripSets: unit.stripSets.map((set) => ({
      ...set,
      strips: set.strips.map((strip) => {
        const own = strip.letter ?? strip.lastLetter;
        const name = own === null ? null : named(own);
        return { ...strip, letter: name, lastLetter: null, fabric: name ?? roleNamed(strip.role) };
      }),
    })),
    steps: unit.steps.map((step) =>
      step.pressTo === null ? step : { ...step, pressTo: pressTo(step.pressTo) },
    ),
  };
}

/** What two units must share to be told as one: everything but bags, counts and what is told unit by unit. */
function likeness({ told }: Renamed, unit: UnitRecord, twoWay: readonly string[], inBlocks: boolean): string {
  const {
    kind,
    method,
    told: unitTold,
    raw,
    trimmed,
    unitsPerSet,
    loose,
    heaps,
    batches,
    stripSets,
    steps,
  } = told;
  return JSON.stringify([
    { kind, method, unitTold, raw, trimmed, unitsPerSet, loose, heaps, twoWay, inBlocks },
    Object.entries(told.fabrics),
    // Of several ways to lay a set the counts are told in the steps.
    unit.batches.length > 1 ? batches : batches.map(({ laid, gives }) => ({ laid, gives })),
    stripSets.map(({ name, heap, cut, strips, height, segment, segmentsPerUnit, turned, straighten }) => [
      ...[name, heap, cut, strips, height, segment, segmentsPerUnit, turned, straighten],
    ]),
    // Towards which side a seam is pressed is drawn in the pictures too.
    steps,
  ]);
}

/** What of a plan says which units are alike. */
interface Looked {
  making?: Pick<Making, "units" | "unitPressing"> | undefined;
  fabrics: readonly Pick<FabricPlan, "name" | "print">[];
}

/** The units of a quilt that want sewing, those alike but for fabric together; in the order of their first. */
export function unitGroups({ making, fabrics }: Looked, words: Words): UnitGroup[] {
  const both = new Set(fabrics.filter(({ print }) => print.kind === "two-way").map(({ name }) => name));
  const groups = new Map<string, { unit: UnitRecord; renamed: Renamed; twoWay: string[] }[]>();
  for (const [index, unit] of (making?.units ?? []).entries()) {
    if (unit.steps.length === 0) continue;
    const own = renamed(unit, words);
    const twoWay = [
      ...own.columns.flatMap(({ name, fabric }) => (both.has(fabric) ? [name] : [])),
      ...Object.entries(unit.fabrics).flatMap(([role, fabric]) =>
        both.has(fabric) ? [words.units.group.role(role)] : [],
      ),
    ];
    const inBlocks = making?.unitPressing.some((each) => each.unit === index) === true;
    const key = likeness(own, unit, twoWay, inBlocks);
    groups.set(key, [...(groups.get(key) ?? []), { unit, renamed: own, twoWay }]);
  }
  return [...groups.values()].map((own): UnitGroup => {
    const units = own.map(({ unit }) => unit);
    const [first] = own;
    if (units.length === 1 || first === undefined) return { units, told: units, columns: [], twoWay: [] };
    return {
      units,
      told: own.map((each) => each.renamed.told),
      columns: first.renamed.columns.map(({ name }, c) => ({
        name,
        bags: own.map((each) => ({
          letters: each.renamed.columns[c]?.letters ?? [],
          fabric: each.renamed.columns[c]?.fabric ?? "",
        })),
      })),
      twoWay: first.twoWay,
    };
  });
}

/** A table of a group: headings, and a row of texts for each unit. */
export interface UnitTable {
  headings: string[];
  rows: string[][];
}
