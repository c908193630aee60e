import { both, type Size, type Stock, sumsOf } from "./bags.ts";
import { amountOf, type Line, listed, NUM, same } from "./printed.ts";

const SIZE = `(?:about )?(${NUM}) x (${NUM}) (?:in|cm)`;

/** Sentences of a unit that say how and carry no count and no bag. */
const SAID = [
  /^Rule both diagonals on the wrong side of /,
  /^As it lies, rule a line on the wrong side of /,
  /^On the wrong side of each [A-Z]+ \(.*\) rule a line from corner to corner\.$/,
  /^The small squares, seen on the wrong side: /,
  /^Their width is rounded up to the ruler's marks/,
  /^All outer edges are bias now: /,
  /^Places are counted in the block as it lies by itself, /,
  /^Rounded up, one part is a little longer: /,
];

const PRESS =
  /^Press (to .+|outwards|all seams one way|the other way from the row before|open|to one side, always the same|the seams all round one way)\.$/;

interface Sets {
  number: number;
  pieces: number;
  segments: number;
  width: number;
  height: number;
  perUnit: number;
  used: number;
}

/** One unit, sentence by sentence. */
export class UnitReader {
  private readonly make: number;
  private readonly name: string;
  private readonly kind: string;
  private now: number;
  private sets = 0;
  private over = 0;
  private perSet = 1;
  private readonly heaps = new Map<string, number>();
  private readonly parts = new Map<string, number>();
  private listing: "flip" | "round" | "edges" | null = null;
  private press = true;
  private nested = 0;
  private isNested = false;
  private size: Size | null = null;
  private batch: { bag: string; count: number }[] = [];
  private laid = new Map<string, number>();
  private small = "";
  private measured: Size | null = null;
  private readonly stripSets: Sets[] = [];
  private strips: { at: string; bags: string[] }[] = [];
  private batches = 0;
  private raw: Size[] = [];

  constructor(
    title: string,
    private readonly stock: Stock,
    private readonly seam: number,
    private readonly keep: { square: number; mark: number },
  ) {
    const at = new RegExp(`^\\[ \\] (U\\d+): (.+?) finishing ${SIZE}(?:, (.+))?: make (\\d+)$`).exec(title);
    this.name = at?.[1] ?? "";
    this.kind = `${at?.[2] ?? ""}, ${at?.[5] ?? ""}`;
    this.make = Number(at?.[6] ?? 0);
    this.now = this.make;
    if (at === null) this.fault(`cannot read "${title}"`);
  }

  private fault(what: string): void {
    this.stock.fault(`${this.name}: ${what}`);
  }

  private seams(count: number, each: number): void {
    this.stock.seams += count * each;
    this.pressed();
    this.press = false;
  }

  /** Before the next seam, and at the end, the last one must have been pressed. */
  private pressed(): void {
    if (!this.press && !this.isNested) this.unpressed = true;
    this.press = true;
  }
  private unpressed = false;

  line({ text, indent }: Line): void {
    if (this.listing !== null && indent >= 8 && this.item(text)) return;
    if (indent <= 6) this.listing = null;
    const heap = /^(U\d+[a-z]) \(make (\d+)\):$/.exec(text);
    if (heap !== null) {
      this.now = Number(heap[2]);
      this.heaps.set(heap[1] ?? "", this.now);
      this.parts.clear();
      return;
    }
    if (indent <= 6 && this.heaps.size > 0 && this.batches === 0) this.now = this.make;
    const told = [this.count, this.take, this.lay, this.strip, this.shapes, this.join, this.finish];
    if (!told.some((read) => read.call(this, text)) && !SAID.some((said) => said.test(text)))
      this.fault(`cannot read "${text}"`);
  }

  /** A line of a list: corners of a flip, pieces put on in turn, pairs on slanting edges. */
  private item(text: string): boolean {
    if (this.listing === "flip") {
      const at =
        /^(upper|lower) (left|right)(?:, ([A-Z]+ \(.*?\)))?: from the (?:lower|upper) left to the (?:lower|upper) right corner/.exec(
          text,
        );
      if (at === null) return false;
      const bag = at[3] ?? this.small;
      this.laid.set(bag, (this.laid.get(bag) ?? 0) + 1);
      this.stock.seams += this.per();
      return true;
    }
    if (this.listing === "round") return this.added(text);
    const at = /^(.+)$/.exec(text.replace(/; corner, in the finished unit, .*$/, ""));
    const [pair = "", makes = "unit"] = (at?.[1] ?? "").split(": ");
    this.edge(
      listed(pair.replace(/^([^,()]+), /, "$1@ ").replace(/ and ([^,()]+), /, " and $1@ ")).map((part) =>
        part.replace("@", ","),
      ),
      makes,
    );
    this.press = true;
    return true;
  }

  private added(text: string): boolean {
    const at = new RegExp(
      `^(.+) (above|below|on its left|on its right|to the left of)(?: (.+))?: ${SIZE}(, once the end that stands out is cut level)?$`,
    ).exec(text);
    if (at === null) return false;
    const [, first = "", side = "", second, w = "", h = "", level] = at;
    const other = second === "it" || second === undefined ? null : second;
    this.take1(first);
    if (other !== null) this.take1(other);
    const long = side === "above" || side === "below" ? "h" : "w";
    const size = { w: amountOf(w), h: amountOf(h) };
    const before =
      other === null ? (this.measured === null ? [] : [this.measured]) : this.stock.sizesOf(other);
    this.fits(
      [
        { name: first, count: 1, sizes: this.stock.sizesOf(first) },
        { name: "", count: 1, sizes: before },
      ],
      long,
      size,
      level !== undefined,
    );
    this.measured = size;
    this.stock.seams += this.now;
    this.press = true;
    return true;
  }

  private fits(
    parts: { name: string; count: number; sizes: Size[] }[],
    long: "w" | "h",
    size: Size,
    level = false,
  ): void {
    if (parts.some(({ sizes }) => sizes.length === 0)) return;
    const count = parts.reduce((sum, part) => sum + part.count, 0);
    const short = long === "w" ? "h" : "w";
    const sums = sumsOf(parts, size[short], long, level ? this.keep.mark * 2 : 0);
    if (sums === null || !sums.some((sum) => same(sum - (count - 1) * 2 * this.seam, size[long])))
      this.fault(`${parts.map(({ name }) => name).join(", ")} do not make ${size.w} x ${size.h}`);
  }

  private take1(text: string): void {
    const [spot, bag] = /^([^(]+?), ((?:a half of |a quarter of )?[A-Z]+\d*(?:\/[A-Z]+\d*)* \(.*\))$/
      .exec(text)
      ?.slice(1) ?? ["", text];
    if (this.parts.has(text)) {
      this.parts.set(text, (this.parts.get(text) ?? 0) - 1);
      return;
    }
    if (spot === "" && !/\(/.test(bag ?? "")) this.fault(`"${text}" is joined before it is made`);
    else this.stock.takeBag(bag ?? text, this.now);
  }

  private edge(parts: readonly string[], makes: string): void {
    for (const part of parts) this.take1(part);
    if (makes !== "unit" && makes !== "") this.parts.set(makes, 1);
    if (parts.length < 2) this.fault(`nothing is joined in "${parts.join()}"`);
    this.seams(this.now, parts.length - 1);
    this.measured = null;
  }

  private count(text: string): boolean {
    const sets = /^Make (\d+) sets?: (\d+) units from (?:each|it)(?:; (\d+) (?:is|are) over)?\.$/.exec(text);
    if (sets !== null) {
      [this.sets, this.perSet, this.over] = [Number(sets[1]), Number(sets[2]), Number(sets[3] ?? 0)];
      if (this.sets * this.perSet !== this.make + this.over)
        this.fault(`${this.sets} sets of ${this.perSet} are not ${this.make} and ${this.over} over`);
      return true;
    }
    const batch = /^For (\d+) sets?:$/.exec(text);
    if (batch === null) return false;
    this.checkLaid();
    this.ofBatch = Number(batch[1]);
    this.batches += this.ofBatch;
    return true;
  }

  private take(text: string): boolean {
    const at = /^For each (set|unit) take (.*)\.$/.exec(text);
    if (at === null) return false;
    this.checkLaid();
    if (this.sets === 0) this.sets = this.make;
    const times = this.per();
    this.batch = listed(at[2] ?? "").map((each) => ({
      count: Number(each.split(" ")[0]),
      bag: each.replace(/^\d+ /, ""),
    }));
    for (const { bag, count } of this.batch) this.stock.takeBag(bag, count * times);
    return true;
  }

  private ofBatch: number | null = null;

  /** How often what is told now is done: for every set, or for those of one way of laying. */
  private per(): number {
    return this.ofBatch ?? this.sets;
  }

  private put(bag: string, count: number): void {
    this.laid.set(bag, (this.laid.get(bag) ?? 0) + count);
  }

  private checkLaid(): void {
    for (const { bag, count } of this.batch)
      if (this.laid.get(bag) !== count) this.fault(`takes ${count} ${bag}, lays ${this.laid.get(bag) ?? 0}`);
    for (const bag of this.laid.keys())
      if (!this.batch.some((own) => own.bag === bag)) this.fault(`lays ${bag}, which was not taken`);
    this.batch = [];
    this.laid = new Map();
  }

  private bagSize(text: string): Size {
    const [bag] = this.stock.bag(text)?.bags ?? [];
    return { w: bag?.across ?? 0, h: bag?.along ?? 0 };
  }

  private lay(text: string): boolean {
    const sewn = new RegExp(
      `^Sew (${NUM}) (?:in|cm) from the line on both sides of it\\. Cut on the line\\.$`,
    ).exec(text);
    if (sewn !== null) {
      this.allowance(sewn[1] ?? "");
      this.seams(this.per(), 2);
      return true;
    }
    const around = new RegExp(
      `^Sew (${NUM}) (?:in|cm) inside the edge all the way round\\. Cut on both diagonals without moving the layers\\.$`,
    ).exec(text);
    const eight = new RegExp(
      `^Sew (${NUM}) (?:in|cm) from each line on both sides of it\\. Cut apart down the middle both ways, then on both lines\\.$`,
    ).exec(text);
    if (around !== null || eight !== null) {
      this.allowance((around ?? eight)?.[1] ?? "");
      this.seams(this.per(), 4);
      return true;
    }
    const cross = new RegExp(
      `^On the wrong side of one of the two, rule the other diagonal, across its seam\\. .* Sew (${NUM}) (?:in|cm) from the line on both sides of it\\. Cut on the line\\.$`,
    ).exec(text);
    if (cross !== null) {
      this.allowance(cross[1] ?? "");
      this.seams(this.per(), 2);
      return true;
    }
    const pair = /^Lay ([A-Z]+ \([^()]*\)) on ([A-Z]+ \([^()]*\)), right sides together, edges even/.exec(
      text,
    );
    if (pair !== null) {
      this.put(pair[1] ?? "", 1);
      this.put(pair[2] ?? "", 1);
      const [a, b] = [this.bagSize(pair[1] ?? ""), this.bagSize(pair[2] ?? "")];
      if (!same(a.w, b.w) || !same(a.h, b.h)) this.fault(`"${text}" with unequal edges`);
      this.raw = [a];
      return true;
    }
    const hearts = new RegExp(
      `^Lay two ([A-Z]+ \\([^()]*\\)) on the upper left and lower right corners of ([A-Z]+ \\([^()]*\\))(?: \\([^()]*\\))?, .* Sew (${NUM}) (?:in|cm) from`,
    ).exec(text);
    if (hearts !== null) {
      this.put(hearts[1] ?? "", 2);
      this.put(hearts[2] ?? "", 1);
      this.allowance(hearts[3] ?? "");
      this.seams(this.per(), 2);
      return true;
    }
    const four = new RegExp(
      `^On each heart lay one ([A-Z]+ \\([^()]*\\)) on .* Sew (${NUM}) (?:in|cm) from .*: four geese from each set\\.$`,
    ).exec(text);
    if (four !== null) {
      this.put(four[1] ?? "", 2);
      this.allowance(four[2] ?? "");
      this.seams(this.per(), 4);
      return true;
    }
    const base = /^Lay ([A-Z]+ \([^()]*\)) in front of you(, .*)?\.$/.exec(text);
    if (base !== null) {
      this.put(base[1] ?? "", 1);
      this.raw = both(this.bagSize(base[1] ?? ""));
      return true;
    }
    const flip = new RegExp(
      `^On each corner named lay (.+?), right sides together, .* Cut (${NUM}) (?:in|cm) outside the stitching, .* press it outwards\\. One corner after another:$`,
    ).exec(text);
    if (flip === null) return false;
    this.small = flip[1] ?? "";
    this.allowance(flip[2] ?? "");
    this.listing = "flip";
    return true;
  }

  private allowance(told: string): void {
    if (!same(amountOf(told), this.seam)) this.fault(`a seam of ${told} where the allowance is ${this.seam}`);
  }

  private strip(text: string): boolean {
    const set =
      /^Set (\d+), strips from the top: (.*)\. Sew them together along their length, every other seam from the other end\.$/.exec(
        text,
      );
    if (set !== null) {
      this.strips.push({ at: set[1] ?? "", bags: listed(set[2] ?? "") });
      this.press = false;
      return true;
    }
    const made = new RegExp(
      `^Make (?:(\\d+) sets? of strips (${NUM}) (?:in|cm) long)?(?: and )?(?:1 short set of strips (${NUM}) (?:in|cm) long)?; each is (${NUM}) (?:in|cm) high\\.$`,
    ).exec(text);
    if (made !== null) {
      this.setsMade(
        Number(made[1] ?? 0),
        amountOf(made[2] ?? "0"),
        made[3] === undefined ? null : amountOf(made[3]),
        amountOf(made[4] ?? ""),
      );
      return true;
    }
    const cut = new RegExp(
      `^Square one end of each set, then cut (\\d+) segments? (${NUM}) (?:in|cm) wide \\((?:(\\d+) from (?:the|each) (?:long )?set)?(?: and )?(?:(\\d+) from the short one)?\\): segments of set (\\d+), (\\d+) for each unit\\.$`,
    ).exec(text);
    if (cut === null) return false;
    const [, segments, width = "", each = "0", last = "0", number, perUnit] = cut;
    const own = this.made1;
    if (own === null || number !== this.strips.at(-1)?.at) this.fault(`"${text}" before its set`);
    else {
      const room = (length: number, count: number): void => {
        if (count * amountOf(width) + this.keep.square > length + 1e-6)
          this.fault(`${count} segments of ${width} from ${length}`);
      };
      if (own.full > 0) room(own.length, Number(each));
      if (own.short !== null) room(own.short, Number(last));
      if (own.full * Number(each) + (own.short === null ? 0 : Number(last)) !== Number(segments))
        this.fault(`"${text}" from ${own.full} sets`);
      this.stripSets.push({
        number: Number(number),
        pieces: 0,
        segments: Number(segments),
        width: amountOf(width),
        height: own.height,
        perUnit: Number(perUnit),
        used: 0,
      });
    }
    return true;
  }

  private made1: { full: number; length: number; short: number | null; height: number } | null = null;

  private setsMade(full: number, length: number, short: number | null, height: number): void {
    const { bags = [] } = this.strips.at(-1) ?? {};
    this.made1 = { full, length, short, height };
    let high = 0;
    for (const text of bags) {
      const found = this.stock.bag(text);
      const letters = found?.letters.split("/") ?? [];
      const [first = "", last = first] = letters;
      const width = (letter: string, long: number): number => {
        const bag = this.stock.cutting.bags.get(letter);
        if (bag === undefined) return 0;
        const longest = bag.whole ? bag.across : Math.max(bag.across, bag.along);
        if (long > longest + 1e-6) this.fault(`${letter} is ${longest} long, the set ${long}`);
        return bag.whole ? bag.along : Math.min(bag.across, bag.along);
      };
      if (full > 0) {
        this.stock.takeBag(text.replace(found?.letters ?? "", first), full);
        high += width(first, length);
      }
      if (short !== null) {
        this.stock.takeBag(text.replace(found?.letters ?? "", last), 1);
        const own = width(last, short);
        if (full === 0) high += own;
      }
    }
    if (!same(high - (bags.length - 1) * 2 * this.seam, height))
      this.fault(`a set of ${bags.join(", ")} is not ${height} high`);
    this.stock.seams += (full + (short === null ? 0 : 1)) * (bags.length - 1);
  }

  private shapes(text: string): boolean {
    const at =
      /^(?:Trim one end of each|Cut each) ([A-Z]+(?:\/[A-Z]+)* \([^()]*\)) .*: (\d+) (?:diamonds|triangles)\.$/.exec(
        text,
      );
    if (at === null) return false;
    const bags = this.stock.bag(at[1] ?? "")?.bags ?? [];
    const all = bags.reduce((sum, bag) => sum + bag.count * bag.parts, 0);
    if (all !== Number(at[2])) this.fault(`"${text}" where the bags hold ${all}`);
    return true;
  }

  private join(text: string): boolean {
    const round =
      /^Sew on one after another, as listed, with the size it must measure each time\.( Every time: press .*\.)?$/.exec(
        text,
      );
    const edges =
      /^Sew together on the edge they share, one pair after another as listed\.( The seam goes round a corner: .*? go on\.)?( Every time: press .*\.)?$/.exec(
        text,
      );
    if (round !== null || edges !== null) {
      this.pressed();
      if ((round?.[1] ?? edges?.[2]) === undefined) this.unpressed = true;
      this.listing = round === null ? "edges" : "round";
      return true;
    }
    const edge =
      /^Sew together on the edge they share: (.*?)\.(?: The seam goes round a corner.*? go on\.)?(?: This makes (.*)\.)?$/.exec(
        text,
      );
    if (edge !== null) {
      this.edge((edge[1] ?? "").split("; "), edge[2] ?? "unit");
      return true;
    }
    const straight =
      /^Sew together (.*), (side by side, from the left|one below another, from the top)\.(?: This makes (.*)\.)?$/.exec(
        text,
      );
    if (straight === null) return false;
    const parts = listed(straight[1] ?? "").map((name) => {
      const segment = /^a segment of set (\d+)( turned half round)?$/.exec(name);
      const own = this.stripSets.find((set) => String(set.number) === segment?.[1]);
      if (segment !== null) {
        if (own === undefined) this.fault(`${name} is never cut`);
        else own.used += 1;
        return { name, count: 1, sizes: own === undefined ? [] : [{ w: own.width, h: own.height }] };
      }
      this.take1(name);
      return { name, count: 1, sizes: this.parts.has(name) ? [] : this.stock.sizesOf(name) };
    });
    if (straight[3] !== undefined) this.parts.set(straight[3], 1);
    this.joined.push({ parts, long: (straight[2] ?? "").startsWith("side") ? "w" : "h" });
    this.seams(this.now, parts.length - 1);
    return true;
  }
  private readonly joined: { parts: { name: string; count: number; sizes: Size[] }[]; long: "w" | "h" }[] =
    [];

  private finish(text: string): boolean {
    if (PRESS.test(text)) {
      this.press = true;
      return true;
    }
    const nest = /^Press (?:(\d+) of them, for .*?, )?so that they nest later: (.*)\.$/.exec(text);
    if (nest !== null) {
      this.isNested = true;
      this.unpressed = false;
      this.press = true;
      this.nested += Number(nest[1] ?? this.make);
      return true;
    }
    const measures = new RegExp(`^(?:It|Each) measures ${SIZE}(; nothing is trimmed)?\\.$`).exec(text);
    const trim = new RegExp(`^Trim (?:to|both ends square:) ${SIZE}(,.*|:.*| so that .*)?\\.?$`).exec(text);
    const found = measures ?? trim;
    if (found !== null) {
      const size = { w: amountOf(found[1] ?? ""), h: amountOf(found[2] ?? "") };
      if (measures !== null && measures[3] === undefined) this.measured = size;
      else {
        if (trim !== null) this.trimmed(size);
        else this.untrimmed(size);
        if (this.measured !== null) this.measured = size;
        this.size = size;
      }
      return true;
    }
    const sort = /^Sort them into heaps(?:, each as the unit is drawn)?: (.*)\.$/.exec(text);
    if (sort === null) return false;
    for (const heap of (sort[1] ?? "").matchAll(/(U\d+[a-z]) \((\d+)\)/g))
      this.heaps.set(heap[1] ?? "", Number(heap[2]));
    return true;
  }

  private untrimmed(size: Size): void {
    if (this.raw.length > 0 && !this.raw.some(({ w, h }) => same(w, size.w) && same(h, size.h)))
      this.fault(`its base does not measure ${size.w} x ${size.h}`);
    if (this.measured !== null && !(same(this.measured.w, size.w) && same(this.measured.h, size.h)))
      this.fault(`measures ${size.w} x ${size.h}, not ${this.measured.w} x ${this.measured.h}`);
    for (const { parts, long } of this.joined) this.fits(parts, long, size);
  }

  /** What is sewn must be at least as large as what it is trimmed to; derived geometry: a seam on the diagonal takes s times root 2. */
  private trimmed(size: Size): void {
    const [raw] = this.raw;
    const takes = this.kind.includes("two at a time") ? (this.kind.startsWith("quarter-square") ? 2 : 1) : 0;
    const spare = raw === undefined ? 0 : Math.min(raw.w, raw.h) - takes * this.seam * Math.SQRT2 - size.w;
    if (takes > 0 && this.kind.includes("-square triangle") && (spare < -1e-6 || spare > this.keep.mark * 2))
      this.fault(`squares of ${raw?.w} do not make ${size.w}`);
    if (this.measured !== null && (this.measured.w < size.w - 1e-6 || this.measured.h < size.h - 1e-6))
      this.fault(`${this.measured.w} x ${this.measured.h} is trimmed to more`);
  }

  /** At the end: everything laid, pressed, counted and put into its heaps. */
  done(): void {
    this.checkLaid();
    this.pressed();
    if (this.unpressed && !this.isNested) this.fault("a seam is not pressed");
    if (this.isNested && this.nested !== this.make) this.fault(`${this.nested} of ${this.make} are pressed`);
    if (this.size === null) this.fault("its size is not told");
    for (const [name, left] of this.parts) if (left > 0) this.fault(`${name} is made and never joined`);
    const [only] = this.stripSets;
    // A unit that is one segment has nothing more to sew.
    if (only !== undefined && this.stripSets.length === 1 && only.perUnit === 1 && this.joined.length === 0)
      only.used = 1;
    for (const set of this.stripSets) {
      if (set.used !== set.perUnit)
        this.fault(`${set.perUnit} segments of set ${set.number} told, ${set.used} sewn`);
      if (set.segments !== set.perUnit * this.make)
        this.fault(`${set.segments} segments of set ${set.number} for ${this.make} units`);
    }
    if (this.batches > 0 && this.batches !== this.sets)
      this.fault(`${this.batches} sets told, ${this.sets} to make`);
    if (this.heaps.size === 0) this.stock.make(this.name, this.make + this.over, this.size, this.over);
    else {
      const sum = [...this.heaps.values()].reduce((a, b) => a + b, 0);
      if (sum !== this.make + this.over) this.fault(`its heaps hold ${sum}`);
      for (const [name, count] of this.heaps) this.stock.make(name, count, this.size);
    }
  }
}
