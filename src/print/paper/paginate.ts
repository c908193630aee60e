import type { Block, Book, Section } from "../../content/book/content.ts";
import { nth } from "../../length/nth.ts";
import { breakable } from "./break-block.ts";
import type { Breakable, Standing } from "./breakable.ts";
import { COVERS, GAP, headHigh, LEAF } from "./measure.ts";
import { bestBreaks, type Cut, PAGE } from "./page-breaks.ts";

/** A block as it stands on its page: the whole of one, or what fits of it. */
export interface LaidBlock {
  block: Block;
  /** Begins a page. */
  fresh: boolean;
  /** Points it is high. */
  height: number;
  /** Points above it, none at the top of a page. */
  gap: number;
  /** Stands closer to what is above, on a page that is tight. */
  close: boolean;
  /** Of a drawing: points to its own unit. */
  scale: number;
}

export interface LaidSection extends Omit<Section, "blocks"> {
  /** Its title begins a page. */
  fresh: boolean;
  gap: number;
  /** Stands closer to what is above, on a page that is tight. */
  close: boolean;
  head: number;
  blocks: LaidBlock[];
}

/** A book broken into pages. */
export interface LaidBook extends Omit<Book, "sections"> {
  sections: LaidSection[];
  /** Points its cover is high. */
  coverHigh: number;
  /** Share of its height that is used of every page after the first; 1 for one that holds a template. */
  fill: number[];
  /** Templates that stand on the last pages, after all that is read. */
  sheets: number;
}

/** A part of a block in the order of the book: no page ends within one. */
interface Atom {
  section: number;
  block: number;
  part: number;
  /** Begins its section. */
  first: boolean;
  /** No page ends after it. */
  keeps: boolean;
}

interface Broken {
  section: Section;
  head: number;
  blocks: { block: Block; parts: Breakable | null }[];
}

/** What stands above something and belongs to it. */
function isHead(block: Block, place: number, leading: number): boolean {
  if (block.kind === "text") return place < leading || block.tone === "lead";
  return block.kind === "heading" || ("keep" in block && block.keep === true);
}

function broken(section: Section): Broken {
  const count = { steps: 0 };
  const blocks = section.blocks
    .map((block) => ({ block, parts: breakable(block, count) }))
    .filter(({ block, parts }) => parts !== null || block.kind === "full-size");
  return { section, head: headHigh(section), blocks };
}

function atomsOf(sections: readonly Broken[]): Atom[] {
  return sections.flatMap(({ blocks }, section) => {
    // Texts that open a section stand on the page of what they open.
    const found = blocks.findIndex(({ block }) => block.kind !== "text");
    const leading = Math.max(found, 0);
    return blocks.flatMap(({ block, parts }, b) => {
      const count = parts?.parts ?? 1;
      const head = isHead(block, b, leading) && b < blocks.length - 1;
      return Array.from(
        { length: count },
        (_, part): Atom => ({
          section,
          block: b,
          part,
          first: b === 0 && part === 0,
          keeps: head && part === count - 1,
        }),
      );
    });
  });
}

/** Something on a page: the title of a section, or a block with what is above it. */
interface Placed {
  section: number;
  head: number;
  gap: number;
  standing: Standing | null;
}

/** What is on a page that holds these atoms, its drawings at their usual size. */
function placedOn(sections: readonly Broken[], atoms: readonly Atom[], empty: boolean): Placed[] {
  const placed: Placed[] = [];
  let at = 0;
  while (at < atoms.length) {
    const { section, block, part, first } = nth(atoms, at);
    let end = at;
    while (atoms[end]?.section === section && atoms[end]?.block === block) end += 1;
    if (first) {
      const gap = placed.length === 0 && empty ? 0 : GAP.section;
      placed.push({ section, head: sections[section]?.head ?? 0, gap, standing: null });
    }
    const own = sections[section]?.blocks[block];
    for (const standing of own?.parts?.stand(part, part + end - at) ?? []) {
      const gap = placed.length === 0 ? 0 : placed.at(-1)?.standing === null ? 0 : GAP.block;
      placed.push({ section, head: 0, gap, standing });
    }
    at = end;
  }
  return placed;
}

/** A gap as it is on a tight page. */
const closer = (gap: number): number =>
  gap === GAP.section ? GAP.closeSection : gap === GAP.block ? GAP.closeBlock : gap;

/** The height of a page with its drawings at their smallest, usual and largest. */
function heightsOf(placed: readonly Placed[]): { least: number; usual: number; most: number } {
  const found = { least: 0, usual: 0, most: 0 };
  for (const { head, gap, standing } of placed) {
    const { height = 0, stretch } = standing ?? {};
    found.usual += head + gap + height;
    found.least += head + closer(gap) + (stretch === undefined ? height : stretch.high * stretch.least);
    found.most += head + gap + (stretch === undefined ? height : stretch.high * stretch.most);
  }
  return found;
}

/** How full a page is made where its drawings can be set larger. */
const AMPLE_PAGE = 0.9;

/** Points left free on a full page: a browser sets a page of many lines a little higher than it is reckoned. */
const SPARE = 3;
const ROOM = LEAF.height - SPARE;

/** Standings of a page with its drawings set so that they fill the room, or what of it looks full. */
function setIn(placed: readonly Placed[], room: number): Placed[] {
  if (heightsOf(placed).usual <= room + 0.01) return scaledIn(placed, room);
  return scaledIn(
    placed.map((each) => ({ ...each, gap: closer(each.gap) })),
    room,
  );
}

/** The same with its gaps as they are. */
function scaledIn(placed: readonly Placed[], room: number): Placed[] {
  const { least, usual, most } = heightsOf(placed);
  const wanted = usual > room ? room : Math.max(usual, Math.min(most, room * AMPLE_PAGE));
  const [low, high] = usual > wanted ? [least, usual] : [usual, most];
  const share = high - low < 0.01 ? 0 : Math.min(1, Math.max(0, (wanted - low) / (high - low)));
  return placed.map((each) => {
    const { standing } = each;
    if (standing?.stretch === undefined) return each;
    const { high: units, least: small, most: large } = standing.stretch;
    const [from, to] = usual > wanted ? [small, standing.scale] : [standing.scale, large];
    const scale = from + (to - from) * share;
    return { ...each, standing: { ...standing, scale, height: units * scale } };
  });
}

/** Where a page may end after these atoms, and how good a place that is. */
function cutsOf(atoms: readonly Atom[], sections: readonly Broken[]): Cut[] {
  return atoms.map((atom, i): Cut => {
    const next = atoms[i + 1];
    const alone = sections[atom.section]?.blocks[atom.block]?.parts === null;
    const nextAlone = next !== undefined && sections[next.section]?.blocks[next.block]?.parts === null;
    const newSheet = next?.first === true && sections[next.section]?.section.newSheet === true;
    const within = next?.section === atom.section && next.block === atom.block;
    const count = sections[atom.section]?.blocks[atom.block]?.parts?.parts ?? 1;
    const lonely = within && (atom.part === 0 || atom.part === count - 2) && count > 2;
    return {
      must: next === undefined || alone || nextAlone || newSheet,
      may: !atom.keeps,
      cost: within ? (lonely ? 12 : 5) : 0,
      alone,
    };
  });
}

/** A drawing in full size has its sheet to itself. */
function layFullSize({ section, block }: Atom, sections: readonly Broken[], laid: LaidSection[]): void {
  const full = sections[section]?.blocks[block]?.block;
  if (full === undefined) return;
  const own = { fresh: true, height: LEAF.height, gap: 0, close: false, scale: 0.75 };
  laid[section]?.blocks.push({ block: full, ...own });
}

/** What stands on one page goes to its sections: their heads, and their blocks. */
function layOnPage(placed: ReturnType<typeof setIn>, fresh: boolean, laid: LaidSection[]): void {
  for (const [i, { section, head, gap, standing }] of placed.entries()) {
    const to = laid[section];
    if (to === undefined) continue;
    const begins = i === 0 && fresh;
    const close = gap === GAP.closeBlock || gap === GAP.closeSection;
    if (standing === null) Object.assign(to, { fresh: begins, gap, close, head });
    else {
      const { block, height, scale } = standing;
      to.blocks.push({ block, fresh: begins, height, gap, close, scale });
    }
  }
}

function laidWith(book: Book, sections: readonly Broken[], cover: number): LaidBook & { cost: number } {
  const atoms = atomsOf(sections);
  const cuts = cutsOf(atoms, sections);
  const alone = cover === LEAF.height;
  const { ends, cost } = bestBreaks(cuts, (from, to) => {
    const under = from === 0 && !alone;
    const { least, usual, most } = heightsOf(placedOn(sections, atoms.slice(from, to), !under));
    const taken = under ? cover : 0;
    return { room: ROOM, least: least + taken, usual: usual + taken, most: most + taken };
  });
  const laid = sections.map(
    ({ section: { blocks: _, ...own }, head }): LaidSection => ({
      ...own,
      fresh: false,
      gap: 0,
      close: false,
      head,
      blocks: [],
    }),
  );
  const fill: number[] = [];
  let from = 0;
  for (const end of ends) {
    const own = atoms.slice(from, end);
    const fresh = from > 0 || alone;
    if (own[0] !== undefined && cuts[from]?.alone === true) {
      layFullSize(own[0], sections, laid);
      fill.push(1);
    } else {
      const placed = setIn(placedOn(sections, own, fresh), fresh ? ROOM : ROOM - cover);
      layOnPage(placed, fresh, laid);
      if (fresh) fill.push(heightsOf(placed).usual / LEAF.height);
    }
    from = end;
  }
  const kinds = laid.flatMap(({ blocks }) => blocks.map(({ block }) => block.kind));
  const sheets = kinds.length - 1 - kinds.findLastIndex((kind) => kind !== "full-size");
  return {
    ...book,
    sections: laid,
    coverHigh: cover,
    fill: fill.map((share) => Math.min(1, share)),
    sheets,
    cost: cost + (alone ? PAGE + PAGE / 100 : 0),
  };
}

/** How full the emptiest page is, but for the last that is read. */
export const emptiest = ({ fill, sheets }: LaidBook): number =>
  Math.min(1, ...fill.slice(0, fill.length - sheets - 1));

/**
 * A book on its pages: nothing that is done at one go is broken over two, and a heading stays with what it heads. Of all
 * ways to end the pages the one with the fewest is taken, and of those the one whose pages are most alike.
 */
export function laidOut(book: Book): LaidBook {
  const sections = book.sections.map(broken);
  const [first, ...others] = COVERS[book.purpose].map((cover) => laidWith(book, sections, cover));
  if (first === undefined) throw new Error("a book without a cover");
  const { cost: _, ...best } = others.reduce((a, b) => (b.cost < a.cost ? b : a), first);
  return best;
}
