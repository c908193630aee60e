import { amountOf, type Fault, NUM, numbersIn, same, unwrapped } from "./printed.ts";

/** A bag as the list of pieces tells it. `across` is null for a strip of the whole width. */
export interface Bag {
  letter: string;
  fabric: string;
  count: number;
  across: number;
  along: number;
  whole: boolean;
  lies: string;
  use: string;
  /** Pieces that come out of one when it is cut further. */
  parts: number;
}

/** All that is cut, fabric by fabric. */
export interface Cutting {
  bags: Map<string, Bag>;
  usable: Map<string, number>;
  unit: string;
  /** Leftovers that are there only once something is sewn: fabric, size and cause to how many. */
  onceSewn: Map<string, number>;
}

function bagOf(line: string, fabric: string, usable: number): Bag | null {
  const at = new RegExp(
    `^\\[([A-Z]+\\d*)\\] +(\\d+) +(?:(${NUM}) (?:in|cm) x WOF|(${NUM}) (?:in|cm) square|(${NUM}) x (${NUM}) (?:in|cm))(?: +(either way|as written))?(?: +(.*))?$`,
  ).exec(line);
  if (at === null) return null;
  const [, letter = "", count, strip, square, across, along, lies = "", use = ""] = at;
  const parts = use.includes("cut on both diagonals") ? 4 : use.includes("cut once on the diagonal") ? 2 : 1;
  const aslant = /cut aslant into (\d+)/.exec(use)?.[1];
  return {
    letter,
    fabric,
    count: Number(count),
    across: strip === undefined ? amountOf(square ?? across ?? "") : usable,
    along: amountOf(strip ?? square ?? along ?? ""),
    whole: strip !== undefined,
    lies,
    use,
    parts: aslant === undefined ? parts : Number(aslant) / Number(count),
  };
}

class Cloth {
  readonly faults: Fault[] = [];
  readonly cut = new Map<string, number>();
  readonly parted = new Map<string, number>();
  readonly leftovers = new Map<string, number>();
  used = 0;
  /** Cut up lengthwise, or by template: what is left is not told strip by strip. */
  inLengths = false;

  constructor(
    readonly fabric: string,
    readonly usable: number,
    readonly bags: ReadonlyMap<string, Bag>,
    readonly keep: number,
  ) {}

  fault(what: string): void {
    this.faults.push(`${this.fabric}: ${what}`);
  }

  take(letter: string, count: number): void {
    this.cut.set(letter, (this.cut.get(letter) ?? 0) + count);
  }

  left(a: number, b: number, cause: string, count: number): void {
    if (Number.isNaN(a) || Math.min(a, b) < this.keep - 1e-6 || count === 0) return;
    const key = `${a.toFixed(4)} x ${b.toFixed(4)} ${cause}`;
    this.leftovers.set(key, (this.leftovers.get(key) ?? 0) + count);
  }
}

/** How many of each listed piece come from every strip. */
function perStrip(total: number, strips: number, told: string, index: number, of: number): number[] | null {
  const each = told === "" ? "" : told.replace(/^\(|\)$/g, "");
  // Strips told together are cut alike.
  if (each === "") return total % strips === 0 ? Array(strips).fill(total / strips) : null;
  const all = /^([\d, and]+) from each strip$/.exec(each);
  if (all !== null) {
    const counts = numbersIn(all[1] ?? "");
    return counts.length === of ? Array(strips).fill(counts[index] ?? 0) : null;
  }
  const last = /^(\d+) from each strip, (\d+) from the last$/.exec(each);
  if (last !== null) return [...Array(strips - 1).fill(Number(last[1])), Number(last[2])];
  const two = /^(\d+) from the first, (\d+) from the last$/.exec(each);
  if (two !== null && strips === 2) return [Number(two[1]), Number(two[2])];
  return null;
}

const ITEM = new RegExp(
  `^(\\d+) (?:(squares?) (${NUM}) (?:in|cm)|rectangles? (${NUM}) x (${NUM}) (?:in|cm)|lengths? (${NUM}) (?:in|cm) wide, about (${NUM}) (?:in|cm) long) \\[([A-Z]+\\d*)\\]$`,
);

/** Pieces that stand alternately in a strip by their template: they take what the template says, which is not told. */
const IN_RUN = /^(\d+) pieces? \[([A-Z]+\d*)\]$/;

/** How such a strip is cut up: nothing is counted in it. */
const ASLANT =
  /^(?:\[[A-Z]+\d*\]: )?lay template T\d+(?: face down)? as in the diagram, (?:every second time half turned|the same way up every time), and cut along a ruler on its edge$/;

/** `subcut 8 squares 4 1/2 in [J] and 2 squares ... (4 and 1 from each strip)` on strips of one kind. */
function subcuts(text: string, strips: number, height: number, rests: number[], cloth: Cloth): void {
  const at = /^(.*?)( \([^()]*(?:from each strip|from the last)[^()]*\))?$/.exec(text);
  const items = (at?.[1] ?? "").split(/(?<=\]), | and /);
  for (const [i, item] of items.entries()) {
    const inRun = IN_RUN.exec(item);
    const shape = cloth.bags.get(inRun?.[2] ?? "");
    if (inRun !== null && shape !== undefined) {
      const counts = perStrip(Number(inRun[1]), strips, (at?.[2] ?? "").trim(), i, items.length);
      if (counts === null || counts.reduce((x, y) => x + y, 0) !== Number(inRun[1]))
        cloth.fault(`"${text}" on ${strips} strips does not add up to ${inRun[1]}`);
      if (![shape.across, shape.along].some((side) => same(side, height)))
        cloth.fault(`"${item}" does not stand in a strip ${height} high`);
      if (!/by template T\d+/.test(shape.use)) cloth.fault(`[${shape.letter}] has no template`);
      rests.fill(Number.NaN);
      cloth.inLengths = true;
      cloth.take(shape.letter, Number(inRun[1]));
      continue;
    }
    const found = ITEM.exec(item);
    const bag = cloth.bags.get(found?.[8] ?? "");
    if (found === null || bag === undefined) {
      cloth.fault(`cannot read "${item}"`);
      continue;
    }
    const [, count, , side, a, b, wide, long] = found;
    const dims = [amountOf(side ?? a ?? wide ?? ""), amountOf(side ?? b ?? long ?? "")];
    const [p = 0, q = 0] = dims;
    if (
      !(
        [p, q].some((d) => same(d, bag.across)) &&
        [p, q].some((d) => same(d, bag.along)) &&
        same(p * q, bag.across * bag.along)
      )
    )
      cloth.fault(`[${bag.letter}] is ${bag.across} x ${bag.along} in its list, cut as ${item}`);
    const run = same(q, height) ? p : same(p, height) ? q : Number.NaN;
    if (Number.isNaN(run)) cloth.fault(`"${item}" does not lie in a strip ${height} high`);
    const counts = perStrip(Number(count), strips, (at?.[2] ?? "").trim(), i, items.length);
    if (counts === null || counts.length !== strips || counts.reduce((x, y) => x + y, 0) !== Number(count))
      cloth.fault(`"${text}" on ${strips} strips does not add up to ${count}`);
    for (const [s, each] of (counts ?? []).entries())
      rests[s] = (rests[s] ?? 0) - each * (Number.isNaN(run) ? 0 : run);
    cloth.take(bag.letter, Number(count));
  }
}

/** What is cut from strips of one kind, phrase by phrase. */
function fromStrips(
  phrases: readonly string[],
  strips: number,
  height: number,
  run: number,
  cloth: Cloth,
): void {
  let high = height;
  const rests = Array<number>(strips).fill(run);
  for (const phrase of phrases) {
    const kept = /^keep (?:(\d+) whole|it whole) \[([A-Z]+\d*)\]$/.exec(phrase);
    const trimmed = new RegExp(`^trim (?:the rest )?to (${NUM}) (?:in|cm) and subcut (.*)$`).exec(phrase);
    const off = new RegExp(
      `^cut (?:off (${NUM}) (?:in|cm), trim it|(${NUM}) (?:in|cm) off each, trim that) to (${NUM}) (?:in|cm) and subcut (.*)$`,
    ).exec(phrase);
    if (kept !== null) {
      const bag = cloth.bags.get(kept[2] ?? "");
      const fits = bag !== undefined && [bag.across, bag.along].some((d) => same(d, high));
      if (!fits || Number(kept[1] ?? 1) !== strips)
        cloth.fault(`"${phrase}" of ${strips} strips ${high} wide`);
      cloth.take(kept[2] ?? "", strips);
      rests.fill(0);
    } else if (trimmed !== null) {
      const lower = amountOf(trimmed[1] ?? "");
      for (const rest of rests) cloth.left(rest, high - lower, "trimming", 1);
      if (lower > high) cloth.fault(`"${phrase}" from ${high}`);
      high = lower;
      subcuts(trimmed[2] ?? "", strips, high, rests, cloth);
    } else if (off !== null) {
      const [block, lower] = [amountOf(off[1] ?? off[2] ?? ""), amountOf(off[3] ?? "")];
      cloth.left(block, high - lower, "trimming", strips);
      const blocks = Array<number>(strips).fill(block);
      subcuts(off[4] ?? "", strips, lower, blocks, cloth);
      if (blocks.some((rest) => !Number.isNaN(rest) && !same(rest, 0)))
        cloth.fault(`"${phrase}" does not use up what is cut off`);
      for (let s = 0; s < strips; s += 1) rests[s] = (rests[s] ?? 0) - block;
    } else if (phrase.startsWith("subcut ")) subcuts(phrase.slice(7), strips, high, rests, cloth);
    else if (!ASLANT.test(phrase)) cloth.fault(`cannot read "${phrase}"`);
  }
  for (const rest of rests) {
    if (rest < -1e-6) cloth.fault(`${phrases.join("; ")} needs more than ${run}`);
    cloth.left(rest, high, "strip ends", 1);
  }
}

/** Lengths of cloth cut up lengthwise: bands along the selvage, and strips out of the width beside them. */
function lengths(count: number, along: number, parts: readonly string[], cloth: Cloth): void {
  cloth.used += count * along;
  cloth.inLengths = true;
  let wide = 0;
  let beside = 0;
  for (const part of parts) {
    const own = new RegExp(
      `^Strips? ([\\d, and to]+): cut (\\d+) strips? (${NUM}) (?:in|cm) (?:wide lengthwise, along the selvage|x (${NUM}) (?:in|cm) out of the width beside those); (.*)\\.$`,
    ).exec(part);
    const strips = numbersIn(own?.[1] ?? "");
    if (own === null || strips.length !== Number(own[2])) {
      cloth.fault(`cannot read "${part}"`);
      continue;
    }
    const [, , , high = "", run] = own;
    if (run === undefined) wide += amountOf(high) * strips.length;
    else beside = Math.max(beside, amountOf(run));
    fromStrips(
      (own[5] ?? "").split("; "),
      strips.length,
      amountOf(high),
      run === undefined ? along : amountOf(run),
      cloth,
    );
  }
  if (wide / count + beside > cloth.usable + 1e-6)
    cloth.fault(`lengths of ${along} are cut ${wide / count} and ${beside} wide`);
}

/** One numbered step, its lines joined to one text and its parts apart. */
function step(text: string, parts: readonly string[], cloth: Cloth): void {
  const straight = new RegExp(
    `^Straighten the cut end(?:, square to the selvage:| on a printed line:) trim off (${NUM}) (?:in|cm)\\.$`,
  ).exec(text);
  if (straight !== null) {
    cloth.used += amountOf(straight[1] ?? "");
    return;
  }
  const further =
    /^Cut (?:each of the (\d+)|the one) of \[([A-Z]+)\] (once on the diagonal|on both diagonals)(.*?): (\d+) (halves|quarters)(; two heaps, [^.]*)?\.$/.exec(
      text,
    );
  if (further !== null) {
    const [, count = "1", letter = "", , , parted, kind] = further;
    const times = kind === "halves" ? 2 : 4;
    if (Number(parted) !== Number(count) * times || Number(count) !== cloth.bags.get(letter)?.count)
      cloth.fault(`"${text}" does not agree with [${letter}]`);
    cloth.parted.set(letter, Number(parted));
    return;
  }
  const length = new RegExp(
    `^Cut off (one|\\d+) lengths? of (${NUM}) (?:in|cm), the whole width of the fabric(?:, and cut up each alike)?:$`,
  ).exec(text);
  if (length !== null) {
    lengths(length[1] === "one" ? 1 : Number(length[1]), amountOf(length[2] ?? ""), parts, cloth);
    return;
  }
  const cut = new RegExp(`^Cut (\\d+) strips? (${NUM}) (?:in|cm) x WOF(?:; (.*)\\.|:)$`).exec(text);
  if (cut === null) {
    cloth.fault(`cannot read "${text}"`);
    return;
  }
  const [, count, high = "", rest] = cut;
  cloth.used += Number(count) * amountOf(high);
  if (rest !== undefined) {
    const at = /^(.*?)(?:; strips? ([\d, and to]+) of the diagram)?$/.exec(rest);
    if (at?.[2] !== undefined && numbersIn(at[2]).length !== Number(count))
      cloth.fault(`strips ${at[2]} are not ${count}`);
    fromStrips((at?.[1] ?? "").split("; "), Number(count), amountOf(high), cloth.usable, cloth);
    return;
  }
  let told = 0;
  for (const part of parts) {
    const own = /^Strips? ([\d, and to]+): (.*)\.$/.exec(part);
    const strips = own === null ? 0 : numbersIn(own[1] ?? "").length;
    if (own === null) cloth.fault(`cannot read "${part}"`);
    else fromStrips((own[2] ?? "").split("; "), strips, amountOf(high), cloth.usable, cloth);
    told += strips;
  }
  if (told !== Number(count)) cloth.fault(`"${text}" tells of ${told} strips`);
}

const LENGTH_OF = { yd: 36, m: 100 } as const;

function purchase(text: string): number {
  const at = new RegExp(`^buy (${NUM}) (yd|m);`).exec(text);
  return at === null ? Number.NaN : amountOf(at[1] ?? "") * LENGTH_OF[at[2] as "yd" | "m"];
}

/** Lines that tell no count of pieces: proof, spare length, what a mistake costs. */
const SAID = [
  /^Proven: |^Best found: |^Saves |^Still works on fabric as narrow as |^If an? (strip|.* strip) is cut wrongly|^Length left uncut/,
  /^!/,
];

/** The leftovers as printed: `2 of 5 1/8 x 4 5/8 in (trimming)`. */
function leftover(text: string): [string, number] | null {
  const at = new RegExp(`^(?:(\\d+) of )?(${NUM}) x (${NUM}) (?:in|cm) \\(([^)]*)\\)$`).exec(text);
  if (at === null) return null;
  const [, count = "1", a = "", b = "", cause = ""] = at;
  return [`${amountOf(a).toFixed(4)} x ${amountOf(b).toFixed(4)} ${cause}`, Number(count)];
}

const turned = (key: string): string => key.replace(/^(\S+) x (\S+)/, "$2 x $1");

function readFabric(name: string, body: string[], keep: number, cutting: Cutting): Fault[] {
  const heading = body[0] ?? "";
  const usable = amountOf(new RegExp(`usable width (${NUM}) `).exec(heading)?.[1] ?? "");
  cutting.usable.set(name, usable);
  const cloth = new Cloth(name, usable, cutting.bags, keep);
  const printed = new Map<string, number>();
  let uncut = 0;
  let own: { text: string; parts: string[] } | null = null;
  const close = (): void => {
    if (own !== null) step(own.text, own.parts, cloth);
    own = null;
  };
  let warned = false;
  for (const text of body.slice(1).filter((line) => line !== "")) {
    if (text.startsWith("!")) warned = true;
    else if (/^(\d+\. |\[|Strips? \d)/.test(text) || SAID.some((said) => said.test(text))) warned = false;
    const bag = text.startsWith("[") ? bagOf(text, name, usable) : null;
    const numbered = /^\d+\. (.*)$/.exec(text);
    const left = leftover(text);
    if (bag !== null) cutting.bags.set(bag.letter, bag);
    else if (numbered !== null) {
      close();
      own = { text: numbered[1] ?? "", parts: [] };
    } else if (
      /^(Left over and worth keeping:|Nothing big enough to keep is left over\.|Cut further, bag by bag:)$/.test(
        text,
      )
    )
      close();
    else if (left?.[0].endsWith(", once sewn")) cutting.onceSewn.set(`${name}: ${left[0]}`, left[1]);
    else if (left !== null) printed.set(left[0], (printed.get(left[0]) ?? 0) + left[1]);
    else if (SAID.some((said) => said.test(text))) {
      const spare = new RegExp(`^Length left uncut: (${NUM}) `).exec(text)?.[1];
      if (spare !== undefined) uncut = amountOf(spare);
    } else if (own !== null && warned) {
      // The rest of a warning.
    } else if (own !== null && /^Strips? [\d, and to]+: /.test(text))
      (own as { parts: string[] }).parts.push(text);
    else if (own !== null) {
      const { parts } = own as { text: string; parts: string[] };
      if (parts.length > 0) parts[parts.length - 1] += ` ${text}`;
      else (own as { text: string }).text += ` ${text}`;
    } else cloth.fault(`cannot read "${text}"`);
  }
  close();
  for (const bag of cutting.bags.values()) {
    if (bag.fabric !== name) continue;
    if (cloth.cut.get(bag.letter) !== bag.count)
      cloth.fault(`[${bag.letter}] lists ${bag.count}, cut ${cloth.cut.get(bag.letter) ?? 0}`);
    if (bag.parts === 2 || bag.parts === 4) {
      if (/diagonal/.test(bag.use) && cloth.parted.get(bag.letter) !== bag.count * bag.parts)
        cloth.fault(`[${bag.letter}] is not cut further`);
    }
  }
  const bought = purchase(heading);
  if (!same(bought, cloth.used + uncut))
    cloth.fault(`bought ${bought}, cut ${cloth.used}, left uncut ${uncut}`);
  cloth.left(usable, uncut, "uncut end", 1);
  for (const key of new Set([...printed.keys(), ...cloth.leftovers.keys()])) {
    if (!cloth.leftovers.has(key) && cloth.leftovers.has(turned(key))) continue;
    if (!printed.has(key) && printed.has(turned(key))) continue;
    if (cloth.inLengths) continue;
    if (printed.get(key) !== cloth.leftovers.get(key))
      cloth.fault(
        `left over ${key}: printed ${printed.get(key) ?? 0}, left ${cloth.leftovers.get(key) ?? 0}`,
      );
  }
  return cloth.faults;
}

/** Reads the cutting steps and follows every cut: what is wrong in them, and the bags they fill. */
export function readCutting(steps: string, keep: number): { cutting: Cutting; faults: Fault[] } {
  const lines = unwrapped(steps, 96);
  const cutting: Cutting = {
    bags: new Map(),
    usable: new Map(),
    onceSewn: new Map(),
    unit: / cm x WOF| cm square/.test(steps) ? "cm" : "in",
  };
  const faults: Fault[] = [];
  const heads = lines.flatMap(({ text, indent }, i) => (indent === 0 && /^\d+\. /.test(text) ? [i] : []));
  // Letters run on through the quilt, so bags are read before any cut is followed.
  for (const [i, head] of heads.entries()) {
    const body = lines.slice(head + 1, heads[i + 1] ?? lines.length).map(({ text }) => text);
    const name = (lines[head]?.text ?? "").replace(/^\d+\. /, "");
    faults.push(...readFabric(name, body, keep, cutting));
  }
  if (heads.length === 0 || cutting.bags.size === 0) faults.push("no fabric is cut");
  return { cutting, faults };
}
