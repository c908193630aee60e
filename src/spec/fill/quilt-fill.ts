import { fieldMissing, type MadeOf, madeOfBoth, madeOfNothing } from "../../diagnostics/fields.ts";
import { familyOf, TICKS_PER } from "../../length/measures.ts";
import { ceil } from "../../length/rational.ts";
import type { Ticks } from "../../length/types.ts";
import { BORDER_CORNERS, CORNER_WORDS, ON_POINT } from "../key-words.ts";
import type {
  BackingSpec,
  BindingSpec,
  BorderSpec,
  DrawnCell,
  PlainOrBlock,
  QuiltSpec,
  SashingSpec,
  SettingSpec,
  WaddingSpec,
} from "../quilt-types.ts";
import { type Path, pathText } from "../read/document.ts";
import { fillClass } from "../schema/class-schema.ts";
import { fillMinutes } from "../schema/minutes-schema.ts";
import { fillPattern } from "../schema/pattern-schema.ts";
import type { WrittenQuilt } from "../schema/quilt-schema.ts";
import { fillQuilting, OVERHANG, USUAL_LAYERS } from "../schema/quilting-schema.ts";
import type { Assumed, Assumption, FabricSpec } from "../types.ts";
import { readDrawing } from "../written/quilt-drawing.ts";
import type { WrittenLength } from "../written/written.ts";
import type { FileSettings } from "./fill-file.ts";
import { fillFoundation } from "./foundation-fill.ts";
import {
  FOLLOWS,
  fabricWord,
  fillBlock,
  fillColourway,
  fraction,
  type QuiltFrame,
} from "./quilt-fill-blocks.ts";
import { fillStraightenSets } from "./straighten-sets.ts";

/** Everything of a quilt file beyond its head and fabrics. */
export type QuiltPart = Omit<QuiltSpec, keyof FileSettings | "fabrics">;

interface Filling extends QuiltFrame {
  blockKeys: ReadonlySet<string>;
  inches: boolean;
  settings: FileSettings;
  /** What backing and wadding reach beyond the quilt, in inches and centimetres. */
  beyond: { inches: number; centimetres: number };
  assumptions: Assumption[];
}

const up = (length: WrittenLength): Ticks => Number(ceil(length.value));

/** A length as written, or a default that is told. */
function withDefault(
  filling: Filling,
  written: WrittenLength | undefined,
  is: Extract<Assumed, { moves: true }>["is"],
  inches: number,
  centimetres: number,
): Ticks {
  if (written !== undefined) return up(written);
  const value = filling.inches ? inches * TICKS_PER.in : centimetres * TICKS_PER.cm;
  filling.assumptions.push({ fabric: "", of: { is, length: value, moves: true } });
  return value;
}

/**
 * Fills in what the maker left out of the design. Defaults, each told: seam 1/4 in or 0.75 cm, binding strips
 * 2 1/2 in or 6.5 cm with 10 in or 25 cm to spare, overhang 4 in or 10 cm (less by hand), mitred strips over-long by 2 in or
 * 5 cm. Published figures differ (see the notes in the tests): each is a field of the file.
 */
export function fillQuilt(
  written: WrittenQuilt,
  settings: FileSettings,
  fabrics: readonly FabricSpec[],
  frame: QuiltFrame,
): { quilt: QuiltPart; assumptions: Assumption[] } {
  const inches = familyOf(settings.defaultUnit) === "imperial";
  const blockKeys = new Set(Object.keys(written.blocks));
  const quilting = fillQuilting(written.quilting, inches);
  const beyond = OVERHANG[quilting.by];
  const filling: Filling = { ...frame, blockKeys, inches, settings, beyond, assumptions: [] };
  const seam = withDefault(filling, written.seam, "seam", 1 / 4, 3 / 4);
  const directional = fabrics.some((fabric) => fabric.print.kind !== "none");
  if (written.prints === undefined && directional) {
    filling.assumptions.push({ fabric: "", of: { is: "directional-prints" } });
  }
  const quilt: QuiltPart = {
    kind: "quilt",
    seam,
    rounding: written.rounding ?? "exact",
    oversize: written.oversize === undefined ? 0 : up(written.oversize),
    straightenSets: fillStraightenSets(written["straighten-sets"], familyOf(settings.defaultUnit)),
    prints: FOLLOWS[written.prints ?? "upright"],
    methods: Object.entries(written.methods ?? {}).map(([unit, method]) => {
      const path: Path = ["methods", unit];
      return { unit, method, path: pathText(path), at: frame.document.valueAt(path) };
    }),
    blocks: Object.entries(written.blocks).map(([key, block]) => fillBlock(key, block, filling)),
    colourways: Object.entries(written.colourways ?? {}).map(([name, way]) =>
      fillColourway(name, way, filling),
    ),
    setting: fillSetting(written, filling),
    quilting,
    mostLayers: written["most-layers"] ?? USUAL_LAYERS,
    borders: (written.borders ?? []).map((border, i) => fillBorder(border, i, filling)),
    binding: fillBinding(written.binding, filling),
    backing: fillBacking(written.backing, filling),
    wadding: fillWadding(written.wadding, filling),
    foundation: fillFoundation(written.foundation, { ...filling, seam, fabrics, blockKeys: [...blockKeys] }),
    minutes: fillMinutes(written.minutes),
    pattern: fillPattern(written.pattern),
    class: fillClass(
      written.class,
      fabrics.map(({ name }) => name),
      filling,
    ),
  };
  return { quilt, assumptions: filling.assumptions };
}

type WrittenPlain =
  | string
  | { block: string; turn?: 0 | 90 | 180 | 270 | undefined; colourway?: string | undefined };

function plainOrBlock(written: WrittenPlain, path: Path, filling: Filling): PlainOrBlock {
  const where = { path: pathText(path), at: filling.document.valueAt(path) };
  if (typeof written === "string") {
    return { fabric: fabricWord(written, path, filling), block: null, turn: 0, colourway: "", ...where };
  }
  return {
    fabric: null,
    block: written.block,
    turn: written.turn ?? 0,
    colourway: written.colourway ?? "",
    ...where,
  };
}

function fillSetting(written: WrittenQuilt, filling: Filling): SettingSpec {
  const { setting } = written;
  const path: Path = ["setting"];
  const at = filling.document.keyAt(path);
  const onPoint = setting.layout === ON_POINT;
  const { triangles } = setting;
  if (onPoint && triangles === undefined) {
    const where = { path: "setting.triangles", at };
    const help = { about: "setting.triangles.needed", keyed: true } as const;
    filling.diagnostics.push(fieldMissing(where, "triangles", help));
  }
  const trianglePath: Path = [...path, "triangles"];
  return {
    layout: onPoint ? "on-point" : "straight",
    rows: readDrawing(
      setting.rows,
      [...path, "rows"],
      filling.blockKeys,
      filling.document,
      filling.diagnostics,
    ),
    fill: setting.fill === undefined ? null : { across: setting.fill.columns, down: setting.fill.rows },
    turn: setting.turn ?? 0,
    sashing: setting.sashing === undefined ? null : fillSashing(setting.sashing, filling),
    triangles:
      !onPoint || triangles === undefined
        ? null
        : typeof triangles === "string"
          ? {
              sides: fabricWord(triangles, trianglePath, filling),
              corners: fabricWord(triangles, trianglePath, filling),
            }
          : {
              sides: fabricWord(triangles.sides, [...trianglePath, "sides"], filling),
              corners: fabricWord(triangles.corners, [...trianglePath, "corners"], filling),
            },
    path: pathText(path),
    at,
  };
}

/** One of `fabric` and `block`: both, or neither, is a fault of the file. */
function oneOf(
  written: { fabric?: string | undefined; block?: string | undefined },
  of: MadeOf,
  path: Path,
  filling: Filling,
): void {
  const where = { path: pathText(path), at: filling.document.keyAt(path) };
  if (written.fabric === undefined && written.block === undefined) {
    filling.diagnostics.push(madeOfNothing(where, of));
  } else if (written.fabric !== undefined && written.block !== undefined) {
    filling.diagnostics.push(madeOfBoth(where, of));
  }
}

function fillSashing(
  written: NonNullable<WrittenQuilt["setting"]["sashing"]>,
  filling: Filling,
): SashingSpec {
  const path: Path = ["setting", "sashing"];
  const where = { path: pathText(path), at: filling.document.keyAt(path) };
  oneOf(written, { what: "sashing" }, path, filling);
  const { fabric, block, colourway = "", cornerstones } = written;
  return {
    width: fraction(written.width.value),
    of: {
      fabric: fabric === undefined ? null : fabricWord(fabric, [...path, "fabric"], filling),
      block: block ?? null,
      turn: 0,
      colourway,
      ...where,
    },
    cornerstones:
      cornerstones === undefined ? null : plainOrBlock(cornerstones, [...path, "cornerstones"], filling),
    ring: written.ring ?? false,
    ...where,
  };
}

/** The blocks of a pieced border as drawn; a colourway of the border holds for those without one. */
function borderRow(written: string, colourway: string, path: Path, filling: Filling): DrawnCell[] {
  const rows = readDrawing(written, path, filling.blockKeys, filling.document, filling.diagnostics);
  return rows.flatMap(({ cells }) =>
    cells.map((cell) => (cell.colourway === "" ? { ...cell, colourway } : cell)),
  );
}

function fillBorder(
  written: NonNullable<WrittenQuilt["borders"]>[number],
  index: number,
  filling: Filling,
): BorderSpec {
  const path: Path = ["borders", index];
  const where = { path: pathText(path), at: filling.document.valueAt(path) };
  oneOf(written, { what: "border", index: index + 1 }, path, filling);
  const { fabric, block, cornerstones } = written;
  const mitred = written.corners === "mitred";
  const over = written["over-long"];
  const extra =
    over !== undefined ? up(over) : mitred ? withDefault(filling, undefined, "mitred-over-long", 2, 5) : 0;
  return {
    name: written.name ?? index + 1,
    side: written.width === "fit" ? { n: 0, d: 1 } : fraction(written.width.across),
    end: written.width === "fit" ? { n: 0, d: 1 } : fraction(written.width.down),
    fit: written.width === "fit",
    fabric: fabric === undefined ? null : fabricWord(fabric, [...path, "fabric"], filling),
    row: block === undefined ? null : borderRow(block, written.colourway ?? "", [...path, "block"], filling),
    corners: cornerstones !== undefined ? "cornerstones" : BORDER_CORNERS[written.corners ?? CORNER_WORDS[0]],
    cornerstones:
      cornerstones === undefined ? null : plainOrBlock(cornerstones, [...path, "cornerstones"], filling),
    extra,
    cut: written.cut ?? "strips",
    join: written.join ?? (written.cut === "lengthwise" ? "no" : "straight"),
    prints: written.prints ?? null,
    ...where,
  };
}

function fillBinding(written: WrittenQuilt["binding"], filling: Filling): BindingSpec | null {
  if (written === undefined) return null;
  const path: Path = ["binding"];
  const full = typeof written === "string" ? { fabric: written } : written;
  return {
    fabric: fabricWord(full.fabric, typeof written === "string" ? path : [...path, "fabric"], filling),
    width: withDefault(filling, full.width, "binding-width", 5 / 2, 13 / 2),
    fold: full.fold ?? "double",
    cut: full.cut ?? "straight",
    join: full.join ?? "diagonal",
    extra: withDefault(filling, full.extra, "binding-extra", 10, 25),
    path: pathText(path),
    at: filling.document.keyAt(path),
  };
}

function overhang(
  filling: Filling,
  written: WrittenLength | undefined,
  is: "backing-overhang" | "wadding-overhang",
): Ticks {
  const { inches, centimetres } = filling.beyond;
  return withDefault(filling, written, is, inches, centimetres);
}

function fillBacking(written: WrittenQuilt["backing"], filling: Filling): BackingSpec | null {
  if (written === undefined) return null;
  const path: Path = ["backing"];
  const full = typeof written === "string" ? { fabric: written } : written;
  return {
    fabric: fabricWord(full.fabric, typeof written === "string" ? path : [...path, "fabric"], filling),
    overhang: overhang(filling, full.overhang, "backing-overhang"),
    seams: full.seams ?? "either",
    path: pathText(path),
    at: filling.document.keyAt(path),
  };
}

function fillWadding(written: WrittenQuilt["wadding"], filling: Filling): WaddingSpec | null {
  if (written === undefined) return null;
  const path: Path = ["wadding"];
  return {
    fabric: written.fabric === undefined ? null : fabricWord(written.fabric, [...path, "fabric"], filling),
    overhang: overhang(filling, written.overhang, "wadding-overhang"),
    path: pathText(path),
    at: filling.document.keyAt(path),
  };
}
