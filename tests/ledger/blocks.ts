import { escaped, type Part, type Size, type Stock, sumsOf } from "./bags.ts";
import { amountOf, type Line, listed, NUM, numbersIn } from "./printed.ts";

export const SIZE = `(?:about )?(${NUM}) x (${NUM}) (?:in|cm)`;
export const sizeOf = (w = "", h = ""): Size => ({ w: amountOf(w), h: amountOf(h) });

/** A joining as told: `Rows 1 and 3: ... Press ... Each measures ...`. */
export interface Joining {
  makes: string[];
  parts: string[];
  down: boolean | null;
  size: Size;
  about: boolean;
  trim: Size | null;
}

/** Names of blocks may have commas in them: they are taken out before a list is read. */
export class Names {
  constructor(private readonly names: string[]) {
    this.names.sort((a, b) => b.length - a.length);
  }

  /** The parts of a list, each as often as it is told: `2 x U1`. `A, B, with C between them` is read too. */
  parts(text: string): string[] {
    const sash = /^(.*), with ([A-Z]+\d*(?:\/[A-Z]+)* \([^()]*\)) between them( and at both ends)?$/.exec(
      text,
    );
    if (sash !== null) {
      const inner = this.parts(sash[1] ?? "");
      const all = inner.flatMap((part, i) => (i === 0 ? [part] : [sash[2] ?? "", part]));
      return sash[3] === undefined ? all : [sash[2] ?? "", ...all, sash[2] ?? ""];
    }
    let held = text;
    for (const [i, name] of this.names.entries())
      held = held.replace(
        new RegExp(`(^|, |\\d x |and )((?:block )?${escaped(name)})(?=, | turned|$| and)`, "g"),
        `$1⟨${i}⟩$2⟪`,
      );
    held = held.replace(/⟨(\d+)⟩(block )?[^⟪]*⟪/g, "⟨$1⟩$2");
    return listed(held).flatMap((part) => {
      const whole = part.replace(/⟨(\d+)⟩(block )?/, (_, i: string) => this.names[Number(i)] ?? "");
      const many = /^(\d+) x (.*)$/.exec(whole);
      const lines = /^(row|column)s (\d+) to (\d+)$/.exec(whole);
      if (lines !== null)
        return numbersIn(`${lines[2]} to ${lines[3]}`).map((number) => `${lines[1]} ${number}`);
      return many === null ? [whole] : Array<string>(Number(many[1])).fill(many[2] ?? "");
    });
  }
}

const PRESS = String.raw`(?:Press [^.]*\.)`;

export function readJoining(text: string, names: Names, fault: (what: string) => void): Joining | null {
  const at = new RegExp(
    `^\\[ \\] (.+?): (.+?)(, (?:one below another|side by side))?\\.( ${PRESS})? (?:Each|It) measures (about )?${SIZE}(?:; trim it to ${SIZE}, alike on all sides)?\\.$`,
  ).exec(text);
  if (at === null) return null;
  const [, makes = "", told = "", way, press, about, w, h, tw, th] = at;
  const rows = /^(Row|Column)s? ([\d, and to]+)$/.exec(makes);
  const parts = names.parts(told);
  if (parts.length > 1 && press === undefined) fault(`"${makes}" is not pressed`);
  if (rows !== null && press !== undefined) pressedAll(numbersIn(rows[2] ?? ""), press, parts.length, fault);
  return {
    makes:
      rows === null
        ? [makes.replace(/^Part/, "part")]
        : numbersIn(rows[2] ?? "").map((number) => `${(rows[1] ?? "").toLowerCase()} ${number}`),
    parts,
    down:
      way === undefined
        ? rows?.[1] === "Column"
          ? true
          : rows === null
            ? null
            : false
        : way.includes("below"),
    size: sizeOf(w, h),
    about: about !== undefined,
    trim: tw === undefined ? null : sizeOf(tw, th),
  };
}

/** Every line that is told at once is pressed one way, and every seam of a line that is told seam by seam. */
function pressedAll(
  rows: readonly number[],
  press: string,
  parts: number,
  fault: (what: string) => void,
): void {
  const own = [
    ...press.matchAll(/ in (?:rows?|columns?) ((?:\d+(?:, \d+)*(?: and \d+)?|\d+ to \d+))/g),
  ].flatMap((each) => numbersIn(each[1] ?? ""));
  if (own.length > 0 && [...own].sort((a, b) => a - b).join() !== [...rows].sort((a, b) => a - b).join())
    fault(`${press} does not press rows ${rows.join()}`);
  const each = /from the (?:left|top): ([^.]*)\./.exec(press)?.[1]?.split(", ").length;
  if (each !== undefined && each !== parts - 1) fault(`${press} presses ${each} of ${parts - 1} seams`);
  if ((press.includes("both seams") && parts !== 3) || (press.includes("the seam ") && parts !== 2))
    fault(`${press} for ${parts - 1} seams`);
}

/** Whether parts with these sizes sew to the size told. */
export function fits(
  join: Joining,
  sizes: (name: string) => Size[],
  allowance: number,
  mark: number,
): boolean {
  const parts: Part[] = join.parts.map((name) => ({ name, count: 1, sizes: sizes(name) }));
  if (parts.some((part) => part.sizes.length === 0)) return true;
  const room = join.about ? mark : 0;
  return (["w", "h"] as const).some((long) => {
    if (join.down !== null && (long === "h") !== join.down) return false;
    const sums = sumsOf(parts, join.size[long === "w" ? "h" : "w"], long, room);
    return (
      sums?.some(
        (sum) => Math.abs(sum - (parts.length - 1) * 2 * allowance - join.size[long]) <= room + 1e-6,
      ) === true
    );
  });
}

interface Kind {
  count: number;
  leaves: Map<string, number>;
  /** What each row is sewn of, for kinds that differ in one. */
  rows: Map<string, string[]>;
  seams: number;
  size: Size | null;
}

/** The blocks: kinds, their joinings, and what each takes. */
export class BlockReader {
  private readonly kinds = new Map<string, Kind>();
  private current: string[] = [];
  private made = new Map<string, { used: number; size: Size }>();

  constructor(
    private readonly stock: Stock,
    private readonly names: Names,
    private readonly seam: number,
    private readonly mark: number,
  ) {}

  title(text: string): boolean {
    const many = /^Block (.*): (\d+) in all, of (\d+) kinds: (.*)$/.exec(text);
    const one = many === null ? /^Block (.*) \(make (\d+)\)$/.exec(text) : null;
    if (one === null && many === null) return false;
    const own =
      one === null
        ? [...(many?.[4] ?? "").matchAll(/(?:^|, | and )((?:(?!, | and ).)+?) \(make (\d+)\)/g)].map(
            (each): [string, number] => [each[1] ?? "", Number(each[2])],
          )
        : [[one[1] ?? "", Number(one[2])] as [string, number]];
    if (many !== null && own.reduce((sum, [, count]) => sum + count, 0) !== Number(many[2]))
      this.stock.fault(`"${text}" does not add up`);
    if (many !== null && own.length !== Number(many[3]))
      this.stock.fault(`"${text}" does not name ${many[3]} kinds`);
    for (const [name, count] of own)
      this.kinds.set(name, { count, leaves: new Map(), rows: new Map(), seams: 0, size: null });
    this.current = own.map(([name]) => name);
    this.made = new Map();
    return true;
  }

  line({ text }: Line): void {
    const fault = (what: string): void => this.stock.fault(`block ${this.current[0]}: ${what}`);
    const single = /^\[ \] (?:Each is one|Block (.*) \(make (\d+)\): one) (.*)\.$/.exec(text);
    if (single !== null) {
      const name = single[1] ?? this.current[0] ?? "";
      const kind = this.kinds.get(name);
      if (kind === undefined) {
        fault(`cannot read "${text}"`);
        return;
      }
      this.counted(name, single[2], fault);
      kind.leaves.set(single[3] ?? "", 1);
      kind.size = this.stock.sizesOf(single[3] ?? "")[0] ?? null;
      return;
    }
    const like =
      /^\[ \] Block (.*) \(make (\d+)\): sewn as (.*?)(?: with (.*?))?(?:,? of (rows? .*?))?, (pressed alike|but press .*)\.$/.exec(
        text,
      );
    if (like !== null) {
      this.likewise(like, fault);
      return;
    }
    const join = readJoining(text, this.names, fault);
    if (join === null) {
      if (
        !/^The kinds differ in how the seams inside the unit are pressed: |^Made on foundation, not squared up: /.test(
          text,
        )
      )
        fault(`cannot read "${text}"`);
      return;
    }
    this.joined(join, fault);
  }

  private counted(name: string, told: string | undefined, fault: (what: string) => void): void {
    if (told !== undefined && this.kinds.get(name)?.count !== Number(told))
      fault(`${name} is made ${told} times and ${this.kinds.get(name)?.count}`);
  }

  private joined(join: Joining, fault: (what: string) => void): void {
    const name = join.makes[0] ?? "";
    const whole = name.startsWith("Block ") ? name.slice(6) : null;
    const kind = this.kinds.get(whole ?? this.current[0] ?? "");
    if (kind === undefined) {
      fault(`cannot tell what "${name}" is`);
      return;
    }
    const sizes = (part: string): Size[] =>
      this.made.has(part) ? [this.made.get(part)?.size ?? { w: 0, h: 0 }] : this.stock.sizesOf(part);
    if (!fits(join, sizes, this.seam, this.mark))
      fault(`${join.parts.join(", ")} do not measure ${join.size.w} x ${join.size.h}`);
    for (const makes of join.makes) {
      kind.seams += join.parts.length - 1;
      for (const part of join.parts) {
        const own = this.made.get(part);
        if (own === undefined) kind.leaves.set(part, (kind.leaves.get(part) ?? 0) + 1);
        else own.used += 1;
      }
      if (whole === null) {
        kind.rows.set(makes, join.parts);
        if (this.made.has(makes)) fault(`${makes} is made twice`);
        this.made.set(makes, { used: 0, size: join.trim ?? join.size });
      }
    }
    if (whole !== null) {
      kind.size = join.trim ?? join.size;
      for (const [made, { used }] of this.made) if (used !== 1) fault(`${made} is used ${used} times`);
    }
  }

  private likewise(
    [text, name = "", count, as = "", instead, rows]: RegExpExecArray,
    fault: (what: string) => void,
  ): void {
    const [own, other] = [this.kinds.get(name), this.kinds.get(as)];
    if (own === undefined || other === undefined) {
      fault(`cannot read "${text}"`);
      return;
    }
    this.counted(name, count, fault);
    for (const [leaf, times] of other.leaves) own.leaves.set(leaf, times);
    for (const change of instead === undefined ? [] : listed(instead)) {
      const [take = "", of = ""] = change.split(" in place of ");
      const times = other.leaves.get(of);
      if (times === undefined) fault(`${as} has no ${of}`);
      own.leaves.set(of, (own.leaves.get(of) ?? 0) - (times ?? 0));
      own.leaves.set(take, (own.leaves.get(take) ?? 0) + (times ?? 0));
    }
    for (const row of rows === undefined ? [] : rows.split("; ")) {
      const at = /^(rows? [^:]*): (.*)$/.exec(row);
      for (const line of numbersIn((at?.[1] ?? "").replace(/^rows? /, ""))) {
        for (const part of other.rows.get(`row ${line}`) ?? [])
          own.leaves.set(part, (own.leaves.get(part) ?? 0) - 1);
        for (const part of this.names.parts(at?.[2] ?? ""))
          own.leaves.set(part, (own.leaves.get(part) ?? 0) + 1);
      }
    }
    own.seams = other.seams;
    own.size = other.size;
  }

  /** Takes what all blocks need, and puts the blocks where rows find them. */
  done(): void {
    for (const [name, { count, leaves, seams, size }] of this.kinds) {
      if (leaves.size === 0) this.stock.fault(`block ${name} is made of nothing`);
      for (const [leaf, times] of leaves) if (times > 0) this.stock.take(leaf, times * count);
      this.stock.seams += seams * count;
      this.stock.make(name, count, size);
    }
  }
}

/** Names of blocks told in titles. */
export function blockNames(lines: readonly Line[]): string[] {
  return lines.flatMap(({ text, indent }) => {
    if (indent > 0) return [];
    const many = /^Block (.*): \d+ in all, of \d+ kinds: (.*)$/.exec(text)?.[2];
    const one = /^Block (.*) \(make \d+\)$/.exec(text)?.[1];
    if (many === undefined) return one === undefined ? [] : [one];
    return [...many.matchAll(/(?:^|, | and )((?:(?!, | and ).)+?) \(make \d+\)/g)].map(
      (each) => each[1] ?? "",
    );
  });
}
