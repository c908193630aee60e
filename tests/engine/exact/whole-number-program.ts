/**
 * A whole-number program written out as text and given to the general-purpose solver HiGHS, one fresh
 * instance a solve. Used only to check the engine; it shares nothing with the engine's own solver port.
 */
import * as highs from "highs";

const load = highs.default as unknown as typeof highs.default.default;
type Solver = Awaited<ReturnType<typeof load>>;
let solver: Promise<Solver> | undefined;

/** A term of a sum: factor times variable. */
export type Term = readonly [factor: number, variable: number];

export class WholeNumberProgram {
  private readonly costs: number[] = [];
  private readonly uppers: number[] = [];
  private readonly whole: boolean[] = [];
  private readonly rows: string[] = [];

  /** A variable from 0 to `upper`, whole unless told otherwise; returns its number. */
  variable(cost: number, upper: number, whole = true): number {
    this.costs.push(cost);
    this.uppers.push(upper);
    this.whole.push(whole);
    return this.costs.length - 1;
  }

  /** A row: sum of terms compared with a constant. Terms with the same variable must not repeat. */
  row(terms: readonly Term[], sense: "<=" | ">=" | "=", constant: number): void {
    if (terms.length === 0) {
      const holds = sense === "<=" ? 0 <= constant : sense === ">=" ? 0 >= constant : constant === 0;
      if (!holds) this.rows.push("0 v0 >= 1");
      return;
    }
    this.rows.push(`${sumText(terms)} ${sense} ${constant}`);
  }

  /**
   * Least total cost, or Infinity when nothing satisfies the rows.
   * Throws when the solver does not end with a proof within `seconds`.
   */
  async least(seconds: number): Promise<number> {
    solver ??= load();
    const answer = (await solver).solve(this.text(), {
      output_flag: false,
      time_limit: seconds,
      mip_rel_gap: 0,
      mip_abs_gap: 0.5,
    });
    if (answer.Status === "Infeasible") return Number.POSITIVE_INFINITY;
    if (answer.Status !== "Optimal") throw new Error(`the checking solver ended with ${answer.Status}`);
    return Math.round(answer.ObjectiveValue);
  }

  private text(): string {
    const numbers = this.costs.map((_, variable) => variable);
    const costly = numbers.filter((v) => this.costs[v] !== 0).map((v): Term => [this.costs[v]!, v]);
    const whole = numbers.filter((v) => this.whole[v]).map((v) => `v${v}`);
    return [
      "Minimize",
      ` obj: ${costly.length === 0 ? "0 v0" : sumText(costly)}`,
      "Subject To",
      ...this.rows.map((row, number) => ` r${number}: ${row}`),
      "Bounds",
      ...numbers.map((v) => ` 0 <= v${v} <= ${this.uppers[v]}`),
      "General",
      ...wrapped(whole),
      "End",
      "",
    ].join("\n");
  }
}

function sumText(terms: readonly Term[]): string {
  return wrapped(
    terms.map(([factor, variable]) => `${factor < 0 ? "-" : "+"} ${Math.abs(factor)} v${variable}`),
  ).join("\n  ");
}

/** Lines of a few words each: the text format limits the length of a line. */
function wrapped(words: readonly string[]): string[] {
  const lines: string[] = [];
  for (let start = 0; start < words.length; start += 12) lines.push(words.slice(start, start + 12).join(" "));
  return lines;
}
