import type { Bag, Cutting } from "./cutting.ts";
import { type Fault, same } from "./printed.ts";

export interface Size {
  w: number;
  h: number;
}

/** A thing that is sewn with: how many sizes it may have as it lies, empty where they do not follow from its cut. */
export interface Part {
  /** As printed, so that two mentions of one thing are one. */
  name: string;
  count: number;
  sizes: Size[];
}

const TURN = " turned (?:right|left|half round)";
const BAG = /^(?:a (half|quarter) of )?([A-Z]+\d*(?:\/[A-Z]+\d*)*) \((.*)\)$/;
const UNIT = new RegExp(`^(U\\d+[a-z]?|(?:motif|unit|block) [A-Z]+)(${TURN})?(?: \\(([^()]*)\\))?$`);

/** Both ways a rectangle may lie. */
export const both = ({ w, h }: Size): Size[] =>
  same(w, h)
    ? [{ w, h }]
    : [
        { w, h },
        { w: h, h: w },
      ];

/** What there is of everything, and what has been used. All counts are of single parts: halves are counted as halves. */
export class Stock {
  readonly faults: Fault[] = [];
  readonly taken = new Map<string, number>();
  readonly made = new Map<string, { made: number; used: number; over: number; size: Size | null }>();
  readonly over = new Map<string, number>();
  seams = 0;
  private readonly rests = new Map<string, number>();

  constructor(readonly cutting: Cutting) {}

  fault(what: string): void {
    this.faults.push(what);
  }

  make(name: string, count: number, size: Size | null, over = 0): void {
    if (this.made.has(name)) this.fault(`${name} is made twice`);
    this.made.set(name, { made: count, used: 0, over, size });
  }

  bagsOf(letters: string): Bag[] {
    const bags = letters.split("/").map((letter) => this.cutting.bags.get(letter));
    for (const [i, bag] of bags.entries())
      if (bag === undefined) this.fault(`there is no bag ${letters.split("/")[i]}`);
    return bags.filter((bag) => bag !== undefined);
  }

  /** A bag by its letters and its fabric, `A/B (hens, heads up)`; null for what is no bag. */
  bag(text: string): { letters: string; part: 1 | 2 | 4; bags: Bag[]; how: string } | null {
    const at = BAG.exec(text);
    if (at === null) return null;
    const [, piece, letters = "", inside = ""] = at;
    if (/^U\d/.test(letters)) return null;
    const bags = this.bagsOf(letters);
    for (const { fabric, letter } of bags)
      if (
        inside !== fabric &&
        !inside.startsWith(`${fabric},`) &&
        !new RegExp(`^${escaped(fabric)} (sash|cornerstone)$`).test(inside)
      )
        this.fault(`${letter} is ${fabric}, told as ${text}`);
    const part = piece === "half" ? 2 : piece === "quarter" ? 4 : 1;
    const how = inside.slice(bags[0]?.fabric.length ?? 0);
    return { letters, part, bags, how };
  }

  /** Takes so many out of a bag, or out of two that hold the same. */
  takeBag(text: string, count: number): void {
    const found = this.bag(text);
    if (found === null) {
      this.fault(`cannot read "${text}" as a bag`);
      return;
    }
    for (const bag of found.bags) {
      const parts = bag.use.includes("diagonal") ? bag.parts : 1;
      if (parts !== found.part) this.fault(`${text}: ${bag.letter} is cut in ${parts}`);
    }
    this.taken.set(found.letters, (this.taken.get(found.letters) ?? 0) + count);
  }

  /** Takes a part by its printed name. */
  take(text: string, count: number): void {
    const at = UNIT.exec(text);
    const name = at?.[1] ?? text.replace(new RegExp(`${TURN}$`), "");
    const own = this.made.get(name) ?? this.made.get(name.replace(/^block /, ""));
    if (own !== undefined) own.used += count;
    else if (at !== null && !BAG.test(text)) this.fault(`${name} is used and never made`);
    else this.takeBag(text, count);
  }

  /** Sizes a part may have where it lies. */
  sizesOf(text: string): Size[] {
    const at = UNIT.exec(text);
    const name = at?.[1] ?? text.replace(new RegExp(`${TURN}$`), "");
    const own = this.made.get(name) ?? this.made.get(name.replace(/^block /, ""));
    if (own !== undefined) {
      if (own.size === null) return [];
      if (/turned (right|left)$/.test(text)) return [{ w: own.size.h, h: own.size.w }];
      return at?.[3] === undefined ? [own.size] : both(own.size);
    }
    const found = this.bag(text);
    if (found === null || found.part !== 1) return [];
    return found.bags.flatMap((bag) => {
      const [small, large] = [Math.min(bag.across, bag.along), Math.max(bag.across, bag.along)];
      if (found.how.includes("standing")) return [{ w: small, h: large }];
      if (found.how.includes("lying")) return [{ w: large, h: small }];
      return both({ w: bag.across, h: bag.along });
    });
  }

  /** What is left of joined strips and panels, by their fabric; smaller ends are not kept. */
  leave(fabric: string, a: number, b: number, cause: string, count: number, keep: number, slack = 0): void {
    if (Math.min(a, b) < keep - 1e-6) return;
    const told = [...this.cutting.onceSewn.keys()].find((key) => {
      const at = /^(.*): ([\d.]+) x ([\d.]+) (.*), once sewn$/.exec(key);
      const near = Number(at?.[2]) <= a + 1e-6 && Number(at?.[2]) >= a - slack - 1e-6;
      return at?.[1] === fabric && at[4] === cause && near && same(Number(at[3]), b);
    });
    if (told !== undefined) this.rests.set(told, count);
    else this.rests.set(`${fabric}: ${a.toFixed(4)} x ${b.toFixed(4)} ${cause}, once sewn`, count);
  }

  private settleRests(): void {
    for (const key of new Set([...this.rests.keys(), ...this.cutting.onceSewn.keys()])) {
      const [told, left] = [this.cutting.onceSewn.get(key) ?? 0, this.rests.get(key) ?? 0];
      if (told !== left) this.fault(`left over of ${key}: printed ${told}, left ${left}`);
    }
  }

  /** That every bag is used up, or what is over is named. */
  settle(): void {
    this.settleRests();
    const groups: { letters: Set<string>; taken: number }[] = [];
    for (const letters of [...this.cutting.bags.keys(), ...this.taken.keys()]) {
      const own = new Set(letters.split("/"));
      const meets = groups.filter((group) => [...own].some((letter) => group.letters.has(letter)));
      for (const group of meets) {
        groups.splice(groups.indexOf(group), 1);
        for (const letter of group.letters) own.add(letter);
      }
      groups.push({ letters: own, taken: 0 });
    }
    for (const { letters } of groups) {
      const all = [...letters];
      const sum = (of: (letter: string) => number): number =>
        all.reduce((total, letter) => total + of(letter), 0);
      const cut = sum(
        (letter) => (this.cutting.bags.get(letter)?.count ?? 0) * (this.cutting.bags.get(letter)?.parts ?? 1),
      );
      const taken = [...this.taken].reduce(
        (total, [key, count]) => (letters.has(key.split("/")[0] ?? "") ? total + count : total),
        0,
      );
      const over = sum((letter) => this.over.get(letter) ?? 0);
      if (cut !== taken + over)
        this.fault(`bag ${all.join("/")}: ${cut} cut, ${taken} used, ${over} named as over`);
    }
    for (const [name, { made, used, over }] of this.made)
      if (made !== used + over) this.fault(`${name}: ${made} made, ${used} used, ${over} named as over`);
  }
}

export const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** All widths that parts may add up to when their other side is `level`; null where none fits. */
export function sumsOf(
  parts: readonly Part[],
  level: number,
  long: "w" | "h",
  mark: number,
): number[] | null {
  const short = long === "w" ? "h" : "w";
  let sums = [0];
  for (const { sizes, count } of parts) {
    const lengths = sizes
      .filter((size) => Math.abs(size[short] - level) <= mark + 1e-6)
      .map((size) => size[long]);
    if (lengths.length === 0) return null;
    sums = sums.flatMap((sum) => lengths.map((length) => sum + count * length));
    sums = [...new Set(sums.map((sum) => sum.toFixed(5)))].map(Number);
  }
  return sums;
}
