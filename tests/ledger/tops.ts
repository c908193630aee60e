import type { Size, Stock } from "./bags.ts";
import { fits, type Names, readJoining, SIZE, sizeOf } from "./blocks.ts";
import { amountOf, type Line, listed, NUM, numbersIn, same } from "./printed.ts";

const MEASURE = `(${NUM}) (?:in|cm)`;

/** Rows, borders and finishing: what is laid, and what the top measures after every step. */
export class TopReader {
  private top: Size | null = null;
  private readonly rows = new Map<string, { used: number; size: Size }>();
  private readonly runs = new Map<
    string,
    { length: number; width: number; cut: number; cuts: number; fabric: string }
  >();
  private row = { side: 0, corner: 0 };
  private bags = { side: "", corner: "" };
  private high = 0;
  private readonly toldBags = new Map<string, string>();

  constructor(
    private readonly stock: Stock,
    private readonly names: Names,
    private readonly seam: number,
    private readonly mark: number,
    private readonly keep: number,
  ) {}

  private fault(what: string): void {
    this.stock.fault(`top: ${what}`);
  }

  private near(a: number, b: number): boolean {
    return Math.abs(a - b) <= this.mark / 2 + 1e-6;
  }

  line({ text }: Line): void {
    const told = [
      this.joining,
      this.diagonal,
      this.pins,
      this.run,
      this.plain,
      this.pieced,
      this.mitred,
      this.begins,
    ];
    if (!told.some((read) => read.call(this, text))) this.fault(`cannot read "${text}"`);
  }

  private joining(text: string): boolean {
    const join = readJoining(text, this.names, (what) => this.fault(what));
    if (join === null) return false;
    const sizes = (part: string): Size[] =>
      this.rows.has(part) ? [this.rows.get(part)?.size ?? { w: 0, h: 0 }] : this.stock.sizesOf(part);
    if (!fits(join, sizes, this.seam, this.mark))
      this.fault(`${join.parts.join(", ")} do not measure ${join.size.w} x ${join.size.h}`);
    for (const makes of join.makes) {
      this.stock.seams += join.parts.length - 1;
      for (const part of join.parts) {
        const own = this.rows.get(part);
        if (own === undefined) this.stock.take(part, 1);
        else own.used += 1;
      }
      if (makes === "Sew together") this.top = join.size;
      else if (this.rows.has(makes)) this.fault(`${makes} is laid twice`);
      else this.rows.set(makes, { used: 0, size: join.size });
    }
    return true;
  }

  private begins(text: string): boolean {
    const at = new RegExp(`^\\[ \\] The top begins as one (.*), ${SIZE}\\.$`).exec(text);
    if (at === null) return /^Turned right is a quarter turn clockwise, /.test(text);
    this.stock.take(at[1] ?? "", 1);
    this.top = sizeOf(at[2], at[3]);
    const sizes = this.stock.sizesOf(at[1] ?? "");
    if (!sizes.some(({ w, h }) => same(w, this.top?.w ?? 0) && same(h, this.top?.h ?? 0)))
      this.fault(`${at[1]} does not measure so`);
    return true;
  }

  /** Rows on point: k blocks between two triangles; the sharp points reach beyond (derived geometry). */
  private diagonal(text: string): boolean {
    const about = new RegExp(
      `^The rows run from .* Every row is ${MEASURE} high, and so long are its seams\\.$`,
    ).exec(text);
    const from = /^Side triangles come from (.*), corner triangles from (.*)\.$/.exec(text);
    const row = new RegExp(
      `^\\[ \\] Row (\\d+): (.*?)\\.( Press [^.]*\\.)? About ${MEASURE} along its upper edge, ${MEASURE} along its lower\\.$`,
    ).exec(text);
    const square = new RegExp(`^\\[ \\] Square the top: .* it measures ${SIZE}\\.$`).exec(text);
    const join =
      /^\[ \] Join rows 1 to (\d+)(?:, one to the next| one to the next, and rows \d+ to (\d+); .*)\. Match the seams/.exec(
        text,
      );
    if (about !== null) this.high = amountOf(about[1] ?? "");
    else if (from !== null) this.bags = { side: from[1] ?? "", corner: from[2] ?? "" };
    else if (row !== null) {
      const all = this.names
        .parts(row[2] ?? "")
        .filter((part) => part !== "(corner last)")
        .map((part) => this.inFull(part));
      if (row[3] === undefined) this.fault(`row ${row[1]} is not pressed`);
      const own = all.filter((part) => part !== "side triangle");
      const sides = all.length - own.length;
      for (const part of own) this.stock.take(part, 1);
      this.row.side += sides;
      this.stock.seams += all.length - 1;
      const told = [amountOf(row[4] ?? ""), amountOf(row[5] ?? "")].sort((a, b) => a - b);
      this.edges(row[1] ?? "", own, sides, told);
      this.rows.set(`row ${row[1]}`, { used: 0, size: { w: 0, h: this.high } });
    } else if (join !== null) {
      const last = Number(join[2] ?? join[1]);
      if (last !== this.rows.size) this.fault(`${this.rows.size} rows are sewn, ${last} joined`);
      for (const own of this.rows.values()) own.used += 1;
      this.stock.seams += last - 1;
    } else if (square !== null) this.top = sizeOf(square[1], square[2]);
    else if (/^\[ \] Add the four corner triangles last: /.test(text)) {
      this.row.corner += 4;
      this.stock.seams += 4;
      this.stock.takeBag(`a quarter of ${this.bags.side}`, this.row.side);
      this.stock.takeBag(`a half of ${this.bags.corner}`, 4);
    } else
      return /^Side triangles: the long edge belongs|^For every place take the triangle whose print/.test(
        text,
      );
    return true;
  }

  /** A bag that was told with its fabric in a row before is told by its letter alone. */
  private inFull(part: string): string {
    const at = /^([A-Z]+\d*(?:\/[A-Z]+\d*)*) \([^,]*\)$/.exec(part);
    if (at !== null) this.toldBags.set(at[1] ?? "", part);
    return this.toldBags.get(part) ?? part;
  }

  private edges(
    number: string,
    own: readonly string[],
    sides: number,
    [short = 0, long = 0]: number[],
  ): void {
    const sizes = own.map((part) => this.stock.sizesOf(part)[0]);
    if (sizes.some((size) => size === undefined)) return;
    const sum = sizes.reduce((total, size) => total + (size?.w ?? 0) - 2 * this.seam, 0);
    const rest = this.high - 2 * this.seam;
    const [upper, lower] = [sum + this.seam, sum + sides * rest + (1 + 2 * sides) * this.seam];
    if (
      sizes.every((size) => size !== undefined && same(size.w, size.h)) &&
      !(this.near(upper, short) && this.near(lower, long))
    )
      this.fault(`row ${number} is about ${upper} and ${lower} long, told ${short} and ${long}`);
  }

  private pins(text: string): boolean {
    const at =
      /^(?:Below rows?|Right of columns?) ([\d, and to]+): (\d+) places?; first (.*?)(, then outwards, left and right by turns)?\.$/.exec(
        text,
      );
    if (at === null) return /^Long seams: pin or tack the places where seams meet first/.test(text);
    const places = (at[3] ?? "").split(", then ").flatMap(numbersIn);
    const all = [...places].sort((a, b) => a - b);
    const count = Number(at[2]);
    if (at[4] === undefined && (all.length !== count || all.some((place, i) => place !== i + 1)))
      this.fault(`"${text}" does not pin ${count} places`);
    return true;
  }

  private run(text: string): boolean {
    const at =
      /^\[ \] Sew the (\d+) strips (.*) \((.*)\) end to end, (\d+) (straight|slanting) joins?, and press the joins open\. Do not cut this run yet\.( Sides and ends come from this one run\.)?$/.exec(
        text,
      );
    if (at === null) return false;
    const letters = listed(at[2] ?? "").join("/");
    const name = `${letters} (${at[3]})`;
    this.stock.takeBag(name, Number(at[1]));
    const bags = this.stock.bagsOf(letters);
    const long = (letter: string): number => this.stock.cutting.bags.get(letter)?.across ?? 0;
    const width = Math.min(...bags.map((bag) => Math.min(bag.across, bag.along)));
    const sum = bags.reduce(
      (total, bag) => total + bag.count * (bag.whole ? long(bag.letter) : Math.max(bag.across, bag.along)),
      0,
    );
    if (Number(at[4]) !== Number(at[1]) - 1) this.fault(`${at[1]} strips with ${at[4]} joins`);
    const takes = at[5] === "straight" ? 2 * this.seam : width;
    this.runs.set(name, { length: sum - Number(at[4]) * takes, width, cut: 0, cuts: 0, fabric: at[3] ?? "" });
    return true;
  }

  /** The width of a pair out of the run or the bag it comes from, and that it is long enough. */
  private strips(bag: string, length: number): number {
    const run = this.runs.get(bag);
    if (run !== undefined) {
      run.cut += 2 * length;
      run.cuts += 2;
      if (run.cut > run.length + 1e-6) this.fault(`${run.cut} is cut from a run of ${run.length}`);
      return run.width;
    }
    this.stock.takeBag(bag, 2);
    const [own] = this.stock.bag(bag)?.bags ?? [];
    if (own === undefined) return 0;
    const long = Math.max(own.across, own.along);
    if (long < length - this.mark) this.fault(`${bag} is ${long} long, ${length} wanted`);
    return Math.min(own.across, own.along);
  }

  private corners(text: string): string {
    const at = /Sew a corner square(?:, (.*?\)),)? to both ends of each first\. /.exec(text);
    if (at === null) return text;
    if (at[1] === undefined) this.fault("a corner square out of no bag");
    else this.stock.takeBag(at[1], 4);
    this.stock.seams += 4;
    return text.replace(at[0], "");
  }

  private plain(text: string): boolean {
    const at = new RegExp(
      `^\\[ \\] (.*), (left and right|top and bottom): measure the top .* \\(about ${MEASURE}\\)\\. (.*?) (?:Match middles and ends, sew\\.|Match middle to middle and the marks to the ends of the top, sew\\.)( Press [^.]*\\.)?(?: Only now cut the tails level with the top\\.)?(?: The top measures about ${SIZE}\\.)?$`,
    ).exec(this.unCornered(text));
    if (at === null) return false;
    const corners = /Sew a corner square/.test(text);
    this.corners(text);
    const [, name = "", side, about = "", how = "", press, w, h] = at;
    const upright = side === "left and right";
    const before = (upright ? this.top?.h : this.top?.w) ?? 0;
    const cornered = corners ? this.cornered : 0;
    if (press === undefined) this.fault(`${name} is not pressed`);
    if (!this.near(amountOf(about), corners ? before - cornered : before))
      this.fault(`${name}: measures about ${about}, the top ${before}`);
    const from =
      /^Cut two lengths of (?:that|about (.*?) (?:in|cm)) from the run of (.*?)(?:\.|: they are over-long\. .*)$/.exec(
        how,
      );
    const cut =
      /^Cut the 2 strips (.*) to that length\.$/.exec(how) ?? /^The 2 strips (.*) are over-long\. /.exec(how);
    if (from === null && cut === null) this.fault(`${name}: cannot read "${how}"`);
    const width = this.strips(from?.[2] ?? cut?.[1] ?? "", amountOf(from?.[1] ?? about));
    // A border that is to fit tells what the top must measure once it is on all round.
    const more = 2 * (width - 2 * this.seam);
    const made = {
      w: (this.top?.w ?? 0) + (upright ? more : 0),
      h: (this.top?.h ?? 0) + (upright ? 0 : more),
    };
    this.after(name, upright, width, w === undefined ? made : sizeOf(w, h));
    this.cornered = upright ? 2 * (width - 2 * this.seam) : 2 * (width - 2 * this.seam);
    return true;
  }
  private cornered = 0;

  private unCornered(text: string): string {
    return text.replace(/Sew a corner square(?:, .*?\),)? to both ends of each first\. /, "");
  }

  private after(name: string, upright: boolean, width: number, size: Size): void {
    const { w, h } = this.top ?? { w: 0, h: 0 };
    const more = 2 * (width - 2 * this.seam);
    const [wide, high] = upright ? [w + more, h] : [w, h + more];
    if (Math.abs(wide - size.w) > this.mark + 1e-6 || Math.abs(high - size.h) > this.mark + 1e-6)
      this.fault(`${name}: ${wide} x ${high}, told ${size.w} x ${size.h}`);
    this.top = size;
    this.stock.seams += 2;
  }

  private pieced(text: string): boolean {
    const at = new RegExp(
      `^\\[ \\] (.*), (left and right|top and bottom): sew the blocks end to end: (.*?)\\. Press its seams one way\\. Each row measures about ${MEASURE}: .*? Match middles and ends, sew\\.( Press [^.]*\\.)? The top measures about ${SIZE}\\.$`,
    ).exec(this.unCornered(text));
    if (at === null) return false;
    this.corners(text);
    const [, name = "", side, told = "", long = "", press, w, h] = at;
    if (press === undefined) this.fault(`${name} is not pressed`);
    const alike = /^(?:left and right|top and bottom) alike, from the (?:left|top), (.*)$/.exec(told);
    const rows =
      alike === null
        ? told.split("; ").map((row) => row.replace(/^\w+, from the (?:left|top), /, ""))
        : [alike[1] ?? "", alike[1] ?? ""];
    let width = 0;
    for (const row of rows) {
      const parts = this.names.parts(row);
      for (const part of parts) this.stock.take(part, 1);
      this.stock.seams += parts.length - 1;
      const sizes = parts.map((part) => this.stock.sizesOf(part)[0]);
      const sum =
        sizes.reduce((total, size) => total + ((side === "left and right" ? size?.h : size?.w) ?? 0), 0) -
        (parts.length - 1) * 2 * this.seam;
      if (!this.near(sum, amountOf(long))) this.fault(`${name}: a row of ${sum}, told ${long}`);
      width = (side === "left and right" ? sizes[0]?.w : sizes[0]?.h) ?? 0;
    }
    this.after(name, side === "left and right", width, sizeOf(w, h));
    return true;
  }

  private mitre = { width: 0, name: "" };

  private mitred(text: string): boolean {
    const strips = new RegExp(
      `^\\[ \\] (.*), mitred: for left and right two strips of about ${MEASURE}, (.*?\\)), for top and bottom two of about ${MEASURE}, (.*?\\)); ${MEASURE} of it is to spare\\. `,
    ).exec(text);
    if (strips !== null) {
      const [, name = "", sides = "", a = "", ends = "", b = ""] = strips;
      const widths = [this.strips(a, amountOf(sides)), this.strips(b, amountOf(ends))];
      if (!same(widths[0] ?? 0, widths[1] ?? 0)) this.fault(`${name}: strips of two widths`);
      this.mitre = { width: widths[0] ?? 0, name };
      const more = 2 * (this.mitre.width - 2 * this.seam);
      if (amountOf(sides) < (this.top?.h ?? 0) + more || amountOf(ends) < (this.top?.w ?? 0) + more)
        this.fault(`${name}: strips too short for their mitres`);
      return true;
    }
    const done = new RegExp(`^\\[ \\] Open it out: .* the top measures about ${SIZE}\\.$`).exec(text);
    if (done === null) {
      const fit = new RegExp(
        `^\\[ \\] This border(?:, cut ${MEASURE} wide all round,)? makes the pieced one outside it come out: the top must measure ${SIZE} now\\. `,
      ).exec(text);
      if (fit !== null) {
        const size = sizeOf(fit[2], fit[3]);
        const { w, h } = this.top ?? { w: 0, h: 0 };
        if (w < size.w - this.mark || h < size.h - this.mark || w > size.w + 1 || h > size.h + 1)
          this.fault(`"${text}" where the top measures ${w} x ${h}`);
        this.top = size;
        return true;
      }
      return /^\[ \] Pin each strip middle to middle|^\[ \] At each corner fold the top on the diagonal|^Lengths are what you measure through|^Fold strip and top edge in half/.test(
        text,
      );
    }
    const more = 2 * (this.mitre.width - 2 * this.seam);
    const size = sizeOf(done[1], done[2]);
    if (
      Math.abs((this.top?.w ?? 0) + more - size.w) > this.mark + 1e-6 ||
      Math.abs((this.top?.h ?? 0) + more - size.h) > this.mark + 1e-6
    )
      this.fault(`${this.mitre.name}: ${size.w} x ${size.h} told`);
    this.top = size;
    this.stock.seams += 8;
    return true;
  }

  /** Backing, binding and what the top measures; the rest of the finishing takes nothing out of a bag. */
  finish({ text }: Line): void {
    const press = new RegExp(
      `^\\[ \\] Press the top: it measures ${SIZE}, and ${MEASURE} from corner to corner both ways`,
    ).exec(text);
    const backing = new RegExp(
      `^\\[ \\] Backing: (?:(\\d+) panels|one piece) (.*?\\)), ${SIZE}(?: each; .* trim to ${SIZE})?\\.$`,
    ).exec(text);
    const unnamed = new RegExp(
      `^\\[ \\] Backing: ${SIZE} or larger, ${MEASURE} beyond the quilt on each side\\.`,
    ).exec(text);
    const binding = new RegExp(
      `^\\[ \\] Binding: (\\d+) strips? (.*?\\)), ${MEASURE} wide, for ${MEASURE}, of which ${MEASURE} are for the corners and the closing\\.$`,
    ).exec(text);
    const joins = /^\[ \] Join the strips (?:end to end )?with (\d+) (?:diagonal|straight) joins?/.exec(text);
    const edge = new RegExp(`^\\[ \\] The edge to be bound measures ${MEASURE} once round\\.`).exec(text);
    const { w, h } = this.top ?? { w: 0, h: 0 };
    const seam = new RegExp(`^\\[ \\] .*(?:sew|stop) ${MEASURE} (?:in|before)`).exec(text);
    if (press !== null) {
      const size = sizeOf(press[1], press[2]);
      if (!this.near(size.w, w) || !this.near(size.h, h))
        this.fault(`the finished top measures ${w} x ${h}, told ${size.w} x ${size.h}`);
      // A side that is no mark is told to the nearest, and the diagonal of it too.
      if (Math.abs(Math.hypot(size.w, size.h) - amountOf(press[3] ?? "")) > this.mark + 1e-6)
        this.fault(`from corner to corner ${Math.hypot(w, h)}, told ${press[3]}`);
    } else if (backing !== null) this.backed(backing, text);
    else if (unnamed !== null) {
      const beyond = 2 * amountOf(unnamed[3] ?? "");
      const off = [amountOf(unnamed[1] ?? "") - w - beyond, amountOf(unnamed[2] ?? "") - h - beyond];
      if (off.some((more) => more < -1e-6 || more > this.mark + 1e-6))
        this.fault(`"${text}" round ${w} x ${h}`);
    } else if (binding !== null) {
      const [, count, bag = "", wide = "", round = "", more = ""] = binding;
      this.stock.takeBag(bag, Number(count));
      this.bound = Number(count);
      this.binding = { bag, round: amountOf(round) };
      const [own] = this.stock.bag(bag)?.bags ?? [];
      if (own !== undefined && !same(Math.min(own.across, own.along), amountOf(wide)))
        this.fault(`binding ${wide} wide from ${own.along}`);
      if (Math.abs(2 * (w + h) + amountOf(more) - amountOf(round)) > this.mark * 4)
        this.fault(`binding of ${round} round ${w} x ${h}`);
    } else if (joins !== null) {
      const straight = text.includes(" straight join");
      this.boundEnd(Number(joins[1]), straight);
      const [own] = this.stock.bag(this.binding.bag)?.bags ?? [];
      const takes = new RegExp(`each takes ${MEASURE}\\.$`).exec(text)?.[1] ?? "";
      if (
        own !== undefined &&
        !same(amountOf(takes), straight ? 2 * this.seam : Math.min(own.across, own.along))
      )
        this.fault(`a join said to take ${takes}`);
      if (Number(joins[1]) !== this.bound - 1)
        this.fault(`${this.bound} strips of binding with ${joins[1]} joins`);
    } else if (edge !== null) {
      if (Math.abs(2 * (w + h) - amountOf(edge[1] ?? "")) > this.mark * 4)
        this.fault(`${text} round ${w} x ${h}`);
    } else if (seam !== null && !same(amountOf(seam[1] ?? ""), this.seam))
      this.fault(`"${text}" with an allowance of ${this.seam}`);
    else if (!FINISHING.test(text)) this.fault(`cannot read "${text}"`);
  }
  private bound = 1;
  private binding = { bag: "", round: 0 };

  /** What is over of the binding once its strips are joined. */
  private boundEnd(joins: number, straight: boolean): void {
    const bags = this.stock.bag(this.binding.bag)?.bags ?? [];
    const width = Math.min(...bags.map((bag) => Math.min(bag.across, bag.along)));
    const long = bags.reduce(
      (sum, bag) => sum + bag.count * (bag.whole ? bag.across : Math.max(bag.across, bag.along)),
      0,
    );
    const rest = long - joins * (straight ? 2 * this.seam : width) - this.binding.round;
    if (rest < -1e-6) this.fault(`${long} of strips do not bind ${this.binding.round}`);
    this.stock.leave(bags[0]?.fabric ?? "", rest, width, "end of joined strips", 1, this.keep);
  }

  /** Panels and what is trimmed off their sides. */
  private backed([, panels, bag = "", , , across, down]: RegExpExecArray, text: string): void {
    this.stock.takeBag(bag, Number(panels ?? 1));
    const [own] = this.stock.bag(bag)?.bags ?? [];
    if (panels === undefined || own === undefined) return;
    if (across === undefined || down === undefined) {
      this.fault(`cannot read "${text}"`);
      return;
    }
    const [w, h] = [amountOf(across), amountOf(down)];
    // Panels lie side by side or one below another; whichever the trimmed size allows.
    const wide = Number(panels) * own.across - (Number(panels) - 1) * 2 * this.seam;
    const upright = same(own.along, h);
    const rest = wide - (upright ? w : h);
    if (rest < -1e-6) this.fault(`"${text}" from panels ${own.across} wide`);
    this.stock.leave(own.fabric, rest / 2, own.along, "sides of the panels", 2, this.keep);
  }

  done(): void {
    // Lengths are told to the nearest mark, and cut to the next above: half a mark each.
    for (const { length, cut, width, fabric, cuts } of this.runs.values())
      this.stock.leave(
        ...([fabric, length - cut, width, "end of joined strips", 1, this.keep, cuts * this.mark] as const),
      );
    for (const [row, { used }] of this.rows) if (used !== 1) this.fault(`${row} is joined ${used} times`);
    if (this.top === null) this.fault("the size of the top is never told");
  }
}

const FINISHING =
  /^\[ \] (?:Wadding: |The seams run |To keep the seam out of the middle|The backing reaches beyond|Press the backing\.|Quilt it from|Fold the binding|Begin half way|At each corner stop|A hand's length|To hang it: |Sew a label|Switch the iron off|Join the panels|Hem |The print lies on its side behind the quilt: )/;
