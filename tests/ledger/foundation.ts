import type { Stock } from "./bags.ts";
import { amountOf, type Line, NUM, same } from "./printed.ts";

const PART = "((?:motif|unit|block) [A-Z]+)";
const BAG = String.raw`((?:a (?:half|quarter) of )?[A-Z]+\d*(?:\/[A-Z]+\d*)* \([^()]*\))`;
const CUT = new RegExp(
  String.raw`^\[ \] Cut (\d+) pieces? of (.+) (\d+) x (\d+) squares \((${NUM}) x (${NUM}) (?:in|cm)\) on the printed lines, for ${PART}\.$`,
);
const MAKE = new RegExp(String.raw`^\[ \] ${PART} \(make (\d+)\), (${NUM}) x (${NUM}) squares finished$`);
const FIRST = new RegExp(`^Printed side down, glue up: lay patch 1, .*?, ${BAG}`);
const NEXT = new RegExp(
  String.raw`^Line (\d+): patch (\d+), .*?, ${BAG}.*; (?:from corner to corner|slanting|along the line|half-way).*?((?:${NUM})) (?:squares?|across)(?: and (${NUM}) down)?.*; press .*\.$`,
);

/** Told of all foundation alike. */
const GENERAL =
  /^(Measure a few printed squares: |Glue melts: |For every patch after the first: |\d+ squares? of each lies? beyond the outermost|Sew line 1 on all of them|For .* turned |\[ \] Neaten the edges: |\[ \] Join what is made on the outermost|\[ \] The foundation stays in: |Seams on the foundation are pressed)/;

/** What is pieced on printed foundation: pieces of it cut, patches taken from their bags, seams sewn, parts made. */
export class FoundationReader {
  private readonly cut = new Map<string, { count: number; across: number; down: number; grid: number }>();
  private now: { name: string; count: number; patches: number; across: number; down: number } | null = null;

  constructor(
    private readonly stock: Stock,
    private readonly seam: number,
  ) {}

  line({ text }: Line): void {
    if (GENERAL.test(text)) return;
    const [cut, make, first, next] = [CUT, MAKE, FIRST, NEXT].map((each) => each.exec(text));
    if (cut) this.cutPiece(cut);
    else if (make) this.make(make);
    else if (first) this.patch(first[1] ?? "", 1);
    else if (next) {
      const [, line = "", patch = "", bag = "", across = "", down = across] = next;
      if (Number(patch) !== Number(line) + 1) this.stock.fault(`line ${line} adds patch ${patch}`);
      const { now } = this;
      if (now !== null && amountOf(across) > Math.max(now.across, now.down))
        this.stock.fault(`${now.name}: line ${line} is longer than the part`);
      if (now !== null && amountOf(down) > Math.max(now.across, now.down))
        this.stock.fault(`${now.name}: line ${line} is higher than the part`);
      this.patch(bag, Number(patch));
      this.stock.seams += now?.count ?? 0;
    } else this.stock.fault(`cannot read "${text}"`);
  }

  private cutPiece([
    ,
    count,
    fabric = "",
    across,
    down,
    wide = "",
    high = "",
    name = "",
  ]: RegExpExecArray): void {
    const [w, h] = [amountOf(wide), amountOf(high)];
    const grid = w / Number(across);
    if (!same(grid, h / Number(down))) this.stock.fault(`${name}: its squares are no squares`);
    const bag = [...this.stock.cutting.bags.values()].find(
      (each) =>
        each.fabric === fabric &&
        each.use.includes(`foundation for ${name},`) &&
        ((same(each.across, w) && same(each.along, h)) || (same(each.across, h) && same(each.along, w))),
    );
    if (bag === undefined) this.stock.fault(`${name}: no bag of ${fabric} holds ${wide} x ${high}`);
    else this.stock.taken.set(bag.letter, (this.stock.taken.get(bag.letter) ?? 0) + Number(count));
    this.cut.set(name, { count: Number(count), across: Number(across), down: Number(down), grid });
  }

  private make([, name = "", count = "", across = "", down = ""]: RegExpExecArray): void {
    const [w, h] = [amountOf(across), amountOf(down)];
    const own = this.cut.get(name);
    if (own === undefined) this.stock.fault(`${name} has no foundation`);
    else {
      if (own.count !== Number(count)) this.stock.fault(`${name}: ${own.count} cut, ${count} made`);
      const [left, above] = [own.across - w, own.down - h];
      if (!same(left, above) || left <= 0) this.stock.fault(`${name}: not as much beyond on every side`);
      const raw = 2 * this.seam;
      this.stock.make(name, Number(count), { w: w * own.grid + raw, h: h * own.grid + raw });
    }
    this.now = { name, count: Number(count), patches: 0, across: w, down: h };
  }

  private patch(bag: string, number: number): void {
    const { now } = this;
    if (now === null) {
      this.stock.fault(`patch ${number} belongs to no part`);
      return;
    }
    now.patches += 1;
    if (now.patches !== number) this.stock.fault(`${now.name}: patch ${number} is its ${now.patches}th`);
    this.stock.takeBag(bag.replace(/^(.*\([^,)]*)[^)]*\)$/, "$1)"), now.count);
  }
}
