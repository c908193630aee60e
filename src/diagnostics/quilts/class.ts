import { NOWHERE, tell } from "../tell.ts";
import type { Diagnostic, InFile, Nothing } from "../types.ts";

/** Why a text tells no kits. */
export type KitFault =
  | { is: "no-count" }
  | { is: "count"; found: string; most: number }
  | { is: "no-size" | "sizes" }
  | { is: "colourway"; found: string; known: readonly string[] };

/** What is told of classes, to be put in words. */
export interface ClassFacts {
  kitUnreadable: { found: string; fault: KitFault };
  kitsMissing: Nothing;
  kitsNeedQuilt: Nothing;
  kitsTooMany: { found: number; most: number };
  kitsInFile: { kits: number };
  swapDoesNothing: { fabric: string; colourway: string };
}

/** Kits that cannot be read, in a file or on the command line. */
export function kitUnreadable(where: InFile, found: string, fault: KitFault): Diagnostic {
  return tell("KIT-UNREADABLE", "error", where, "kitUnreadable", { found, fault });
}

/** The kits of the file are asked for, and it has none. */
export function kitsMissing(): Diagnostic {
  return tell("KITS-MISSING", "error", NOWHERE, "kitsMissing", {});
}

/** Kits of several sorts are made of a quilt; a cut list has one size and its own fabrics. */
export function kitsNeedQuilt(): Diagnostic {
  return tell("KITS-NEED-QUILT", "error", NOWHERE, "kitsNeedQuilt", {});
}

/** More kits in all than a class has. */
export function kitsTooMany(where: InFile, found: number, most: number): Diagnostic {
  return tell("KITS-TOO-MANY", "error", where, "kitsTooMany", { found, most });
}

/** The file has kits, and one quilt is planned. */
export function kitsInFile(kits: number): Diagnostic {
  return tell("KITS-IN-FILE", "info", { path: "class.kits", at: null }, "kitsInFile", { kits });
}

/** A colourway of the quilt puts a fabric in its own place. */
export function swapDoesNothing(where: InFile, fabric: string, colourway: string): Diagnostic {
  return tell("SWAP-DOES-NOTHING", "warning", where, "swapDoesNothing", { fabric, colourway });
}
