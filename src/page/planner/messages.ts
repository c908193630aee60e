import type { Diagnostic } from "../../planning.ts";
import type { Change, Difference } from "../../savings/index.ts";
import type { Amounts } from "./amounts.ts";
import type { Chosen } from "./choosing.ts";
import type { Kept } from "./keeps.ts";
import type { KitsMade } from "./kits.ts";
import type { Mat } from "./mat.ts";
import type { Picture } from "./picture.ts";
import type { SeenPhoto } from "./pictured.ts";
import type { Sewing } from "./sewing.ts";

/** What the page asks of a worker. A newer `plan` overtakes an older one. */
export type Ask =
  | { kind: "start"; solver: WebAssembly.Module | null; keeps: Kept[] }
  | { kind: "plan"; id: number; text: string; name: string }
  | { kind: "keep"; entries: Kept[] }
  /** A text of which nothing is told: a spare goes the way of a gesture once, so that it is quick when it is wanted. */
  | { kind: "warm"; text: string; name: string }
  /** Drawings and text of the plan last told, made when they are looked at. */
  | { kind: "show"; id: number; what: ShowWhat; photos: readonly SeenPhoto[] }
  /** The mat of the plan last told, as the work stands, or `otherwise` where that does not fit; a newer one overtakes. */
  | { kind: "mat"; id: number; work: string; otherwise?: string }
  /** Other texts of the same quilt, each to be planned and set beside it. */
  | { kind: "try"; id: number; texts: { key: string; text: string }[] }
  /** Changes to a text that buy less, each really planned. */
  | { kind: "save"; id: number; text: string }
  /** A text planned with what lies in the drawer used first. */
  | { kind: "cover"; id: number; text: string; drawer: string }
  /** The papers of the class that the text names. */
  | { kind: "kits"; id: number; text: string; name: string }
  /** Ways of making its units, or turnings of its blocks. */
  | { kind: "choose"; id: number; what: ChooseWhat; text: string };

/** What is set beside one another, each really planned. */
export type ChooseWhat = "ways" | "turnings";

export type ShowWhat = "sewing" | "book";

/** What is made for looking at. */
export type Shown =
  | { what: "sewing"; sewing: Sewing | null }
  /**
   * Every file, the book and the pattern among them, and these two as they are looked at, in photos where fabrics have
   * any; `problem` where a size of the pattern cannot be planned.
   */
  | { what: "book"; files: Record<string, string>; looks: Record<string, string>; problem: string };

/** What a worker answers, in this order for one `plan`: taken, laid, amounts (perhaps), planned or failed. */
export type Answer =
  | { kind: "ready" }
  | { kind: "taken"; id: number }
  | { kind: "laid"; id: number; picture: Picture | null; diagnostics: Diagnostic[]; empty: number }
  | { kind: "amounts"; id: number; amounts: Amounts }
  | { kind: "planned"; id: number; amounts: Amounts; diagnostics: Diagnostic[]; whole: boolean }
  | { kind: "failed"; id: number; diagnostics: Diagnostic[] }
  | { kind: "broken"; id: number; message: string }
  | { kind: "kept"; entries: Kept[] }
  | { kind: "mat"; id: number; mat: Mat }
  | { kind: "shown"; id: number; shown: Shown }
  | { kind: "tried"; id: number; key: string; amounts: Amounts | null }
  | { kind: "trying"; id: number; done: number; of: number }
  | { kind: "saves"; id: number; saving: FoundSaving }
  | { kind: "triedAll"; id: number }
  | { kind: "covered"; id: number; covered: Covered | null }
  | { kind: "kits"; id: number; made: KitsMade }
  | { kind: "choosing"; id: number; done: number; of: number }
  | { kind: "chosen"; id: number; chosen: Chosen };

/** What is still bought where the drawer is used first, and what is cut of it. */
export interface Covered {
  amounts: Amounts;
  used: { fabric: string; across: number; along: number; count: number }[];
}

/** A change that buys less, with the text it makes and what is then bought. */
export interface FoundSaving {
  key: string;
  change: Change;
  text: string;
  amounts: Amounts;
  difference: Difference;
}
