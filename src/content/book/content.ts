import type { Scene } from "../../draw/scene/scene.ts";

/**
 * What a cutting book says, before anybody decides how it looks: the web page and the printed file are
 * both made from it. Text is plain; whoever prints it makes it safe.
 */

export interface Fact {
  caption: string;
  value: string;
}

/** Something to do and tick off. */
export interface Step {
  /** Its place among the steps of its section, from 1; set when the book is laid on pages. */
  number?: number;
  /** Unique in the book and the same for the same plan, so that a tick can be remembered. */
  id: string;
  /** Said first, in bold unless it is a whole sentence. */
  title: string;
  light?: boolean;
  details: string[];
  /** Stands before the details: what each of several alike takes. */
  table?: Table;
  /** What is done with some strips only. */
  parts: { title: string; details: string[] }[];
  /** Where to look in the diagram; empty when nowhere. */
  where: string;
  warnings: string[];
}

/** Steps on one piece of cloth; `title` is empty when there is only one. */
export interface StepGroup {
  title: string;
  steps: Step[];
}

interface Column {
  heading: string;
  align: "left" | "right";
  /** Holds words of the maker's, however long. */
  wordy?: boolean;
}

export interface Cell {
  text: string;
  /** More about it, said smaller. */
  notes: string[];
  /** `#rrggbb` of a swatch before the text; null for none. */
  swatch: string | null;
}

export interface Table {
  /** Said to screen readers only when the section's title says it. */
  caption: string;
  captionSeen: boolean;
  columns: Column[];
  rows: Cell[][];
  /** The last row is a sum. */
  summed: boolean;
  /** One for each row to tick, else empty. */
  ticks: string[];
  /** Points of its columns, once it is laid on pages: all parts of a table have the same. */
  widths?: number[];
}

/** For one bag of pieces. */
export interface Label {
  letter: string;
  fabric: string;
  colour: string;
  count: string;
  size: string;
  uses: string[];
}

/** A picture of a step, in page units. */
export interface CardPicture {
  scene: Scene;
  width: number;
  height: number;
  caption: string;
}

/** One step: its pictures, and under or beside them its words. */
export interface Card {
  number: string;
  pictures: CardPicture[];
  lines: string[];
  /** How it is set among its neighbours, where that was worked out. */
  form?: CardForm;
}

/** How a card is set on the columns of a page. */
export interface CardForm {
  /** Columns it takes. */
  span: number;
  /** Columns of its pictures where its words stand beside them; null where they stand below. */
  beside: number | null;
  /** Stands at the foot of its row, level with the last pictures of the card before it, so that it is not read too early. */
  low?: true;
}

export type Block =
  | { kind: "text"; text: string; tone: "plain" | "lead" | "quiet" }
  /** With `tick`: something to do, ticked off as a whole; the id of its box. */
  | { kind: "heading"; text: string; tick?: string }
  /** With `keep`: stays on the page of what follows. */
  | { kind: "list"; items: string[]; columns?: 1 | 2 | 3; keep?: true }
  | { kind: "facts"; facts: Fact[] }
  | { kind: "cautions"; tools: { tool: string; rules: string[] }[] }
  /** With `again`: what heads the part of it that goes on over the page. */
  | { kind: "table"; table: Table; keep?: true; again?: string }
  /** As wide as its share of the page, all of it where nothing is said. */
  | { kind: "picture"; scene: Scene; share?: number }
  /** A drawing that must be printed at exactly its own size, on a page by itself. */
  | { kind: "full-size"; scene: Scene }
  | { kind: "steps"; groups: StepGroup[]; columns?: 1 | 2; again?: string }
  /** A drawing with the steps it is about beside it. */
  | { kind: "beside"; scene: Scene; groups: StepGroup[] }
  | { kind: "cards"; cards: Card[] }
  | { kind: "labels"; labels: Label[] }
  | { kind: "terms"; terms: { term: string; meaning: string }[] };

export interface Section {
  /** Letters, digits and dashes. */
  id: string;
  /** Small line above the title; may be empty. */
  over: string;
  title: string;
  /** How a list without pictures heads it; the small line and the title where nothing is said. */
  headed?: string;
  /** A swatch before the title; null for none. */
  swatch: string | null;
  /** Begins a new sheet in print. */
  newSheet: boolean;
  blocks: Block[];
}

export interface Book {
  /** What it is for: the maker's own bench, or to hand out. */
  purpose: "bench" | "pattern";
  title: string;
  subtitle: string;
  /** `lines` stand under the title, `foot` at the lower edge. */
  cover: { scene: Scene; facts: Fact[]; lines?: string[]; foot?: string };
  sections: Section[];
  /** Changes whenever a step changes, so that old ticks are not taken for new ones. */
  key: string;
}
