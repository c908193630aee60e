import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Paint } from "./scene.ts";
import type { DrawnFabric } from "./textures.ts";

/** Widest drawing: 185 mm, which A4 and Letter both take with room for margins. */
export const PAGE_WIDTH = 700;
/** Tallest drawing that still goes on one page of either. */
export const PAGE_HEIGHT = 930;

/** How a drawing that stands among words of a page differs from the same as a file of its own. */
export interface Standing {
  /** Without a head: the page says what it shows. */
  bare?: boolean;
  /** Page units it may be wide, and its picture high. */
  width?: number;
  tallest?: number;
}

/** A quilt with its sewing, as its drawings need it. */
export interface SewnQuilt {
  top: QuiltTop;
  making: Making;
  fabrics: readonly DrawnFabric[];
  ruler: Ruler;
}

/** The head of a drawing that has none. */
export const NO_HEAD = { nodes: [], height: 0 } as const;

/** What every part of one fabric's drawing needs to know. */
export interface Frame {
  fabric: FabricPlan;
  ruler: Ruler;
  idPrefix: string;
  /** The fabric's own colour, and black or white to write on it. */
  colour: string;
  label: string;
  /** Its photo as paint, the print's up where it lies on the cloth; null where it is drawn in its colour alone. */
  photo: Paint | null;
  /** Lines between pieces. */
  seam: string;
  /** Page units to the millimetre of cloth, and to the tick. */
  scale: number;
  perTick: number;
}

/** Ticks to the millimetre: groups of cloth are drawn in millimetres. */
export const TICKS_PER_MM = 640;
