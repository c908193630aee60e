import type { Place } from "../diagnostics/types.ts";
import type { FabricWord } from "./quilt-types.ts";

/** Fabrics put in the place of others throughout a quilt. */
export interface QuiltColourway {
  name: string;
  swaps: { from: FabricWord; to: FabricWord }[];
}

/** Kits of a class that are alike. */
export interface KitSpec {
  count: number;
  /** As `buy --sizes` reads it; empty: the quilt as drawn. */
  size: string;
  /** Empty: in the quilt's own fabrics. */
  colourway: string;
  path: string;
  at: Place | null;
}

/** A class that sews the quilt from kits. */
export interface ClassSpec {
  colourways: QuiltColourway[];
  kits: KitSpec[];
}
