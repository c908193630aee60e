import {
  blockApart,
  drawSewing,
  findUnitKind,
  forMakers,
  lettersIn,
  type Plan,
  sewingParts,
  unitStepPictures,
} from "../../planning.ts";
import { tongue } from "../words/index.ts";
import { blockPresses, type PressPicture, rowPresses } from "./pressing.ts";
import { type BagFacts, bagFacts, bagsNamed, type TakenBag, takenBags } from "./taken-bags.ts";

type Top = NonNullable<Plan["top"]>;
type Making = NonNullable<Plan["making"]>;
type Parts = NonNullable<ReturnType<typeof sewingParts>>;
type Pictures = ReturnType<typeof unitStepPictures>["units"][number]["pictures"];

/** A picture of a step, and the step in words: what is taken, how it lies, where it is sewn and pressed. */
type ToldPicture = Pictures[number] & { words: string[] };

/** One thing to do, and how many of it are made in all. */
export interface SewStep {
  /** The same as long as it says the same: under it is kept how many are made. */
  id: string;
  title: string;
  details: string[];
  table: { headings: string[]; rows: string[][] } | null;
  /** How many there are to make; 1 for what is done once. */
  count: number;
}

/** Units that are sewn alike, in pictures. */
export interface SewUnit {
  step: SewStep;
  names: string[];
  /** Its kind, where there are several ways of making it; else empty. */
  kind: string;
  /** What it is called in a list of all. */
  short: string;
  bags: TakenBag[];
  pictures: ToldPicture[];
  /** Blocks that take it, by index. */
  blocks: number[];
}

/** What is sewn block by block, or once. */
export interface SewGroup {
  title: string;
  /** What it is called in a list of all. */
  short: string;
  steps: SewStep[];
  pictures: string[];
  /** Bags whose letters stand in the pictures. */
  bags: TakenBag[];
  presses: PressPicture[];
}

export interface Sewing {
  units: SewUnit[];
  /** What the signs in the pictures of units mean. */
  key: string;
  /** What goes for every block. */
  aboutBlocks: string[];
  /** What is meant by the heads of a print; empty where no fabric has an up. */
  aboutHeads: string;
  blocks: SewGroup[];
  rows: SewGroup[];
  borders: SewGroup[];
  finishing: SewGroup[];
  fabrics: { name: string; colour: string }[];
}

function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(36);
}

type Step = Parts["units"][number]["step"];

function sewStep({ title, details, table }: Step, part: string, count: number): SewStep {
  return {
    id: `${part} ${hashOf(`${title} ${details.join(" ")}`)}`,
    title,
    details,
    table:
      table === undefined
        ? null
        : {
            headings: table.columns.map(({ heading }) => heading),
            rows: table.rows.map((row) => row.map(({ text }) => text)),
          },
    count,
  };
}

function groupsOf(all: Parts["rows"], part: string): SewGroup[] {
  return all.map(({ title, steps }) => ({
    title,
    short: title,
    steps: steps.map((step) => sewStep(step, `${part} ${title}`, 1)),
    pictures: [],
    bags: [],
    presses: [],
  }));
}

const STEPS = /^(\d+)[a-z]?(?:–(\d+))?$/;

/** The words of each picture's step; what is said at the end stands with the last picture. */
function withWords(pictures: Pictures, { batches, after }: Parts["units"][number]): ToldPicture[] {
  const headings = [...new Set(pictures.map(({ heading }) => heading))];
  return pictures.map((picture, i): ToldPicture => {
    const batch = batches[batches.length < 2 ? 0 : headings.indexOf(picture.heading)] ?? [];
    const [, first = "0", last = first] = STEPS.exec(picture.number) ?? [];
    const own = batch.filter(({ from, to }) => from <= Number(last) && to >= Number(first));
    const end = i === pictures.length - 1 ? after : [];
    return { ...picture, words: [...own.flatMap(({ lines }) => lines), ...end] };
  });
}

/** What tells of blocks, with the drawing and the pressing of each design where it is told first. */
function blockGroups(parts: Parts, plan: Plan, top: Top, making: Making, facts: BagFacts): SewGroup[] {
  const { fabrics, ruler } = plan;
  const bagsOf = (design: number) => ({ making, fabrics, design });
  const drawn = new Set<number>();
  return parts.blocks.map(({ title, steps, designs, counts }): SewGroup => {
    const fresh = designs.filter((design) => !drawn.has(design) && top.designs[design] !== undefined);
    const pictures = fresh.map((design) => {
      drawn.add(design);
      const bags = bagsOf(design);
      const idPrefix = `sew-block-${design}-`;
      return blockApart(top.designs[design]!, fabrics, ruler, tongue, { bags, idPrefix });
    });
    const [first] = fresh;
    return {
      title,
      short: first === undefined ? title : tongue.blocks.whole(top.designs[first]!.name),
      steps: steps.map((step, i) => sewStep(step, `block ${title}`, counts[i] ?? 1)),
      pictures,
      bags: fresh.flatMap((design) => bagsNamed(lettersIn(top.designs[design]!, bagsOf(design)), facts)),
      presses: blockPresses(fresh, top, making),
    };
  });
}

/** The sewing of a plan as the page goes through it; null where nobody says how it is sewn. */
export function sewingOf(plan: Plan): Sewing | null {
  const { making, top, fabrics, ruler } = plan;
  const parts = sewingParts(plan, forMakers(tongue));
  if (making === undefined || top === null || parts === null) return null;
  const pictures = unitStepPictures(top, making, fabrics, ruler, tongue);
  const picturesOf = (unit: number): Pictures =>
    pictures.units.find((each) => each.unit === unit)?.pictures ?? [];
  const drawn = drawSewing(top, making, fabrics, ruler, tongue);
  const svgOf = (name: string): string => drawn.find((each) => each.name === name)?.svg ?? "";
  const facts = bagFacts(plan);
  const blocks = blockGroups(parts, plan, top, making, facts);
  const withFirst = (groups: SewGroup[], svg: string, presses: PressPicture[] = []): SewGroup[] =>
    groups.map((group, i) => (i === 0 ? { ...group, pictures: svg === "" ? [] : [svg], presses } : group));
  return {
    key: pictures.key,
    fabrics: fabrics.map(({ name, colour }) => ({ name, colour })),
    units: parts.units.map((part): SewUnit => {
      const { units, count, step } = part;
      const indices = units.map((unit) => making.units.indexOf(unit));
      const takes = (design: number): boolean =>
        making.blocks.some(
          (block) =>
            block.design === design &&
            block.units.some((place) => place !== null && indices.includes(place.unit)),
        );
      return {
        step: sewStep(step, "unit", count),
        names: units.map(({ name }) => name),
        kind: (findUnitKind(units[0]?.kind ?? "")?.methods.length ?? 0) < 2 ? "" : (units[0]?.kind ?? ""),
        short: tongue.units.inList(
          units.map(({ name }) => name),
          tongue.unitNames.unit(units[0]?.kind ?? ""),
        ),
        bags: takenBags(units, plan, facts),
        // Groups whose steps have no picture are told in words alone.
        pictures: withWords(picturesOf(indices[0] ?? -1), part),
        blocks: parts.blocks.flatMap(({ designs }, b) => (designs.some(takes) ? [b] : [])),
      };
    }),
    aboutBlocks: parts.aboutBlocks,
    aboutHeads: fabrics.some(({ print }) => print.kind === "one-way") ? tongue.making.heads : "",
    blocks,
    rows: withFirst(groupsOf(parts.rows, "rows"), svgOf("assembly"), rowPresses(top, making)),
    borders: withFirst(groupsOf(parts.borders, "borders"), svgOf("borders")),
    finishing: withFirst(groupsOf(parts.finishing, "finishing"), svgOf("finishing")),
  };
}
