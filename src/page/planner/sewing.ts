import {
  drawBlock,
  drawSewing,
  forMakers,
  type Plan,
  sewingParts,
  unitStepPictures,
} from "../../planning.ts";
import { tongue } from "../words/index.ts";
import { mm, outlinePath, UNIT } from "./picture.ts";

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

/** A bag to take pieces from. */
export interface TakenBag {
  letter: string;
  fabric: string;
  colour: string;
  /** How many for each set; 0 where that differs. */
  perSet: number;
}

/** Units that are sewn alike, in pictures. */
export interface SewUnit {
  step: SewStep;
  names: string[];
  /** What it is called in a list of all. */
  short: string;
  bags: TakenBag[];
  pictures: ToldPicture[];
  /** Blocks that take it, by index. */
  blocks: number[];
}

/** A seam of a row or block, in millimetres of the top or block, and which way it is pressed. */
export interface SewnSeam {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  press: "left" | "right" | "up" | "down";
  /** Fabrics along both its sides: those under which its allowances lie, and the others. */
  under: string;
  beside: string;
}

/** What is pressed in one go, its patches pale. */
export interface PressPicture {
  name: string;
  /** Its upper left corner: patches are told in the frame of the top, or of the block. */
  x: number;
  y: number;
  across: number;
  down: number;
  groups: { fabric: string; d: string }[];
  seams: SewnSeam[];
}

/** What is sewn block by block, or once. */
export interface SewGroup {
  title: string;
  /** What it is called in a list of all. */
  short: string;
  steps: SewStep[];
  svg: string;
  presses: PressPicture[];
}

export interface Sewing {
  units: SewUnit[];
  /** What the signs in the pictures of units mean. */
  key: string;
  /** What goes for every block. */
  aboutBlocks: string[];
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

function groupsOf(all: Parts["rows"], part: string, madeOf: (title: string) => number = () => 1): SewGroup[] {
  return all.map(({ title, steps }) => ({
    title,
    short: title,
    steps: steps.map((step) => sewStep(step, `${part} ${title}`, madeOf(title))),
    svg: "",
    presses: [],
  }));
}

function bagsOf(units: Parts["units"][number]["units"], { fabrics }: Plan): TakenBag[] {
  const found = new Map<string, TakenBag>();
  for (const { batches, heaps, stripSets } of units) {
    const own = new Map<string, TakenBag>();
    const add = (letter: string | null, fabric: string, perSet: number): void => {
      if (letter === null || letter === "") return;
      const bag = own.get(letter);
      const colour = fabrics.find(({ name }) => name === fabric)?.colour ?? "#ffffff";
      if (bag === undefined) own.set(letter, { letter, fabric, colour, perSet });
      else bag.perSet += perSet;
    };
    for (const { laid } of batches)
      for (const { letter, fabric } of laid) add(letter, fabric, batches.length === 1 ? 1 : 0);
    for (const { strips } of stripSets)
      for (const { letter, lastLetter, fabric } of strips) {
        add(letter, fabric, 0);
        add(lastLetter, fabric, 0);
      }
    for (const { patches } of heaps)
      for (const { letters, fabric } of patches) for (const letter of letters) add(letter, fabric, 0);
    for (const bag of own.values()) {
      // Where units alike take unlike numbers of one bag, the words below tell each.
      const other = found.get(bag.letter);
      const perSet = other === undefined || other.perSet === bag.perSet ? bag.perSet : 0;
      found.set(bag.letter, { ...bag, perSet });
    }
  }
  return [...found.values()];
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

interface Box {
  x: number;
  y: number;
  right: number;
  bottom: number;
}

type Patch = Top["patches"][number];
type Point = readonly [number, number];

const cornersOf = ({ outline }: Patch): Point[] => outline.map(({ x, y }) => [mm(x), mm(y)]);

function isIn([x, y]: Point, corners: readonly Point[]): boolean {
  let inside = false;
  corners.forEach(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}

const middleOf = (corners: readonly Point[]): Point => [
  corners.reduce((sum, [x]) => sum + x, 0) / corners.length,
  corners.reduce((sum, [, y]) => sum + y, 0) / corners.length,
];

const AWAY: Readonly<Record<SewnSeam["press"], Point>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** Places along a seam at which the cloth on both sides of it is looked up, off the corners of patches. */
const SAMPLES = [0.07, 0.19, 0.31, 0.43, 0.57, 0.69, 0.81, 0.93];

type Seam = Pick<SewnSeam, "x1" | "y1" | "x2" | "y2" | "press">;

/** Patches and seams inside a box, and which cloth lies along both sides of each seam. */
function pressPicture(
  name: string,
  box: Box,
  patches: readonly Patch[],
  seams: readonly Seam[],
): PressPicture {
  const within = ([x, y]: Point, by: number): boolean =>
    x > box.x - by && x < box.right + by && y > box.y - by && y < box.bottom + by;
  const own = patches
    .map((patch) => ({ patch, corners: cornersOf(patch) }))
    .filter(({ corners }) => within(middleOf(corners), -0.01));
  const fabricAt = (point: Point): string =>
    own.find(({ corners }) => isIn(point, corners))?.patch.fabric ?? "";
  const groups = new Map<string, string>();
  for (const { patch } of own)
    groups.set(patch.fabric, (groups.get(patch.fabric) ?? "") + outlinePath(patch.outline));
  return {
    name,
    x: box.x,
    y: box.y,
    across: box.right - box.x,
    down: box.bottom - box.y,
    groups: [...groups].map(([fabric, d]) => ({ fabric, d })),
    seams: seams
      .map(({ x1, y1, x2, y2, press }) => ({
        x1: x1 / UNIT,
        y1: y1 / UNIT,
        x2: x2 / UNIT,
        y2: y2 / UNIT,
        press,
      }))
      .filter((seam) => {
        const middle: Point = [(seam.x1 + seam.x2) / 2, (seam.y1 + seam.y2) / 2];
        const ends = within([seam.x1, seam.y1], 0.5) && within([seam.x2, seam.y2], 0.5);
        return ends && within(middle, -0.5);
      })
      .map((seam): SewnSeam => {
        const [dx, dy] = AWAY[seam.press];
        const along = (side: 1 | -1): string => {
          const found = SAMPLES.map((t) =>
            fabricAt([
              seam.x1 + (seam.x2 - seam.x1) * t + dx * 2 * side,
              seam.y1 + (seam.y2 - seam.y1) * t + dy * 2 * side,
            ]),
          );
          return [...new Set(found)].filter((fabric) => fabric !== "").join(", ");
        };
        return {
          ...seam,
          under: along(1),
          beside: along(-1),
        };
      }),
  };
}

/** Every row of the top (or column) as it is pressed, then the rows together. */
function rowPresses(top: Top, making: Making): PressPicture[] {
  const { pressing, scale, seam, joins } = making;
  if (pressing === null) return [];
  return joins
    .filter(({ stage }) => stage === "top")
    .map(({ makes, at, size }) => {
      const ticks = (value: number): number => value / scale / UNIT;
      const box = {
        x: ticks(at.x),
        y: ticks(at.y),
        right: ticks(at.x + size.across) - (2 * seam) / UNIT,
        bottom: ticks(at.y + size.down) - (2 * seam) / UNIT,
      };
      // Rows together are pressed along the seams between them; those inside them have been.
      const own = makes.is === "line" ? makes.line : "between";
      const lines = pressing.lines === "rows" ? "level" : "upright";
      const seams = pressing.seams.filter(({ x1, x2 }) => {
        const way = x1 === x2 ? "upright" : "level";
        return own === "between" ? way === lines : way !== lines;
      });
      return pressPicture(tongue.blocks.named(makes), box, top.patches, seams);
    });
}

/** A design as it is pressed inside, in every way there is of it. */
function blockPresses(design: number, top: Top, making: Making): PressPicture[] {
  const own = top.designs[design];
  if (own === undefined || making.pressing === null) return [];
  const box = { x: 0, y: 0, right: mm(own.across), bottom: mm(own.down) };
  return making.pressing.blocks
    .filter((each) => each.design === design && each.seams.length > 0)
    .map(({ variant, count, seams }) => {
      const name = variant === "" ? own.name : `${own.name} ${variant}, ${count}`;
      return pressPicture(name, box, own.patches, seams);
    });
}

/** Groups that tell of blocks, each with its drawing and its pressing; what goes for all of them stands as it is. */
function blockGroups(
  parts: Parts,
  plan: Plan,
  top: Top,
  making: Making,
): { groups: SewGroup[]; designs: number[] } {
  const { fabrics, ruler } = plan;
  const there = top.designs.flatMap(({ count }, i) => (count > 0 ? [i] : []));
  const left = [...there];
  const calledIn = (title: string, design: number): boolean => {
    const { name, colourway } = top.designs[design]!;
    return title.includes(name) && (colourway === "" || title.includes(`${name} ${colourway}`));
  };
  // A title with the name alone speaks of all colourways of the block.
  const named = (title: string): number | undefined =>
    left.find((design) => calledIn(title, design)) ??
    left.find((design) => title.includes(top.designs[design]!.name));
  const madeOf = (title: string): number => {
    const found = there.filter((design) => calledIn(title, design));
    const all =
      found.length > 0 ? found : there.filter((design) => title.includes(top.designs[design]!.name));
    return Math.max(
      1,
      all.reduce((sum, design) => sum + top.designs[design]!.count, 0),
    );
  };
  const designs: number[] = [];
  const groups = groupsOf(parts.blocks, "block", madeOf).map((group): SewGroup => {
    const found = named(group.title);
    designs.push(found ?? -1);
    if (found === undefined) return group;
    left.splice(left.indexOf(found), 1);
    const bags = { making, fabrics, design: found };
    const svg = drawBlock(top.designs[found]!, fabrics, ruler, tongue, {
      bags,
      idPrefix: `sew-block-${found}-`,
    });
    const { name } = top.designs[found]!;
    return { ...group, short: tongue.blocks.whole(name), svg, presses: blockPresses(found, top, making) };
  });
  return { groups, designs };
}

/** The sewing of a plan as the page goes through it; null where nobody says how it is sewn. */
export function sewingOf(plan: Plan): Sewing | null {
  const { making, top, fabrics, ruler } = plan;
  const parts = sewingParts(plan, forMakers(tongue));
  if (making === undefined || top === null || parts === null) return null;
  const pictures = unitStepPictures(top, making, fabrics, ruler, tongue);
  const picturesOf = (name: string): Pictures =>
    pictures.units.find(({ title }) => title.startsWith(`${name}: `))?.pictures ?? [];
  const drawn = drawSewing(top, making, fabrics, ruler, tongue);
  const svgOf = (name: string): string => drawn.find((each) => each.name === name)?.svg ?? "";
  const { groups: blocks, designs } = blockGroups(parts, plan, top, making);
  const withFirst = (groups: SewGroup[], svg: string, presses: PressPicture[] = []): SewGroup[] =>
    groups.map((group, i) => (i === 0 ? { ...group, svg, presses } : group));
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
        short: tongue.units.inList(
          units.map(({ name }) => name),
          tongue.unitNames.unit(units[0]?.kind ?? ""),
        ),
        bags: bagsOf(units, plan),
        // Groups whose steps have no picture are told in words alone.
        pictures: withWords(picturesOf(units[0]?.name ?? ""), part),
        blocks: designs.flatMap((design, b) => (design >= 0 && takes(design) ? [b] : [])),
      };
    }),
    aboutBlocks: parts.aboutBlocks,
    blocks,
    rows: withFirst(groupsOf(parts.rows, "rows"), svgOf("assembly"), rowPresses(top, making)),
    borders: withFirst(groupsOf(parts.borders, "borders"), svgOf("borders")),
    finishing: withFirst(groupsOf(parts.finishing, "finishing"), svgOf("finishing")),
  };
}
