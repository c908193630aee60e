/*
 * What a cut size is made from, as a record: which rule, and the finished length it starts from. Words say it.
 */

/** The finished length a formula starts from. */
export type FormulaSide =
  | "size"
  | "side"
  | "width"
  | "height"
  | "half-size"
  | "corner"
  | "leg"
  | "long-side"
  | "diamond-side"
  | "between-parallels";

/** The constants makers know by heart at a seam allowance; `seams`: told as a number of seams. */
export type TradeConstants = "quarter-inch" | "three-quarter-cm" | "seams";

/** How the trade's constant is told beside the rule it stands for. */
type ByConstant = { trade: TradeConstants };

export type Formula =
  /** Side and so many seams. */
  | { rule: "seams"; side: FormulaSide; seams: 2 | 3; ease?: true }
  /** A square halved, or quartered: side + seam x (2 + root 2), or x (2 + 2 root 2). */
  | ({ rule: "halved" | "quartered"; side: FormulaSide; ease?: true } & Partial<ByConstant>)
  /** Two squares sewn all round. `trade`: divided by 0.64. */
  | { rule: "four-at-a-time"; trade: boolean }
  /** Two squares sewn along both diagonals. */
  | ({ rule: "eight-at-a-time" } & Partial<ByConstant>)
  /** A square on its point in a square. `trade`: by 1.414. */
  | { rule: "on-point"; trade: boolean }
  /** A rectangle halved on its diagonal. */
  | { rule: "half-rectangle" }
  /** A patch cut to a line of its own. */
  | { rule: "template" }
  /** Triangles round blocks on point. */
  | ({ rule: "setting-side" | "setting-corner" } & Partial<ByConstant>);

/** One rule for both ways of rounding. */
export function alike(formula: Formula): { exact: Formula; trade: Formula } {
  return { exact: formula, trade: formula };
}

/** A finished length and two seams. */
export function twoSeams(side: FormulaSide): Formula {
  return { rule: "seams", side, seams: 2 };
}
