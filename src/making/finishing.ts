import { backingPanels, bindingLength, bindingPiece, packagedFor } from "../cutlist/index.ts";
import { CENTIMETRE, familyOf, INCH, type Ticks } from "../length/index.ts";
import type { QuiltWork } from "../quilt/index.ts";
import type { FabricWord, QuiltSpec } from "../spec/quilt-types.ts";
import type { FabricSpec } from "../spec/types.ts";
import { usableWidth } from "../stock/usable-width.ts";
import type { Backing, Binding, Finishing, Wadding } from "./types.ts";

/** Wadding off the roll, 96 in wide or 240 cm. Width: Common Quilt and Batting Sizes; 240 cm common practice. */
const ROLL = { imperial: 96 * INCH, metric: 240 * CENTIMETRE } as const;

/** Wadding off the roll: as many widths as fill one way, butted without a seam, each as long as the other way. */
export function rollFor(across: Ticks, down: Ticks, width: Ticks): Wadding["roll"] {
  const ways = [
    { widths: Math.ceil(across / width), run: down },
    { widths: Math.ceil(down / width), run: across },
  ].sort((a, b) => a.widths * a.run - b.widths * b.run);
  const { widths = 1, run = down } = ways[0] ?? {};
  return { width, widths, length: widths * run };
}

function fabricOf(word: FabricWord | null, spec: QuiltSpec): FabricSpec | null {
  return spec.fabrics.find(({ name }) => name === word?.word) ?? null;
}

/**
 * Where the seams of a backing lie: n panels of width w make n w - 2 (n - 1) s, trimmed alike on both sides.
 * Derived geometry.
 */
export function seamsAt(count: number, width: Ticks, seam: Ticks, wanted: Ticks): Ticks[] {
  const sewn = count * width - 2 * seam * (count - 1);
  const trimmed = Math.max(0, sewn - wanted) / 2;
  return Array.from({ length: count - 1 }, (_, i) =>
    Math.round((i + 1) * (width - 2 * seam) + seam - trimmed),
  );
}

/**
 * Seams of a backing of half a panel, a whole one and half a one: together 2 w - 4 s wide, a seam more than two whole
 * ones; null when that is too narrow. Derived geometry; the split: Quilt Backings - Fabric Calculation.
 */
export function halvesAt(width: Ticks, seam: Ticks, wanted: Ticks): Ticks[] | null {
  const sewn = 2 * width - 4 * seam;
  if (sewn < wanted) return null;
  const first = Math.round(width / 2 - seam - (sewn - wanted) / 2);
  // A seam in what is trimmed away, or hardly inside it, is no gain.
  return first < wanted / 8 ? null : [first, first + width - 2 * seam];
}

function planBacking(work: QuiltWork, spec: QuiltSpec): Backing | null {
  const { backing } = spec;
  const fabric = fabricOf(backing?.fabric ?? null, spec);
  const panels = backing === null || fabric === null ? null : backingPanels(backing, fabric, work, spec);
  if (backing === null || fabric === null || panels === null) return null;
  const [across, down] = [work.top.across + 2 * backing.overhang, work.top.down + 2 * backing.overhang];
  const wanted = panels.seams === "vertical" ? across : down;
  const width = panels.count === 1 ? wanted : usableWidth(fabric);
  return {
    fabric: fabric.name,
    across,
    down,
    panels: panels.count,
    panel: { across: width, along: panels.along },
    seams: panels.seams,
    seamAt: seamsAt(panels.count, width, spec.seam, wanted),
    halvedAt: panels.count === 2 ? halvesAt(width, spec.seam, wanted) : null,
    directional: fabric.print.kind !== "none",
    sideways: panels.sideways,
    overhang: backing.overhang,
  };
}

function planBinding(work: QuiltWork, spec: QuiltSpec): Binding | null {
  const { binding } = spec;
  const fabric = fabricOf(binding?.fabric ?? null, spec);
  const piece = binding === null || fabric === null ? null : bindingPiece(binding, fabric, work, spec);
  if (binding === null || fabric === null || piece === null) return null;
  const { cut, fold, join, width, extra } = binding;
  const length = bindingLength(work.top, binding);
  const square = cut === "bias" ? piece.across : null;
  return { fabric: fabric.name, cut, fold, join, width, length, extra, count: piece.count, square };
}

/** Backing and wadding reach beyond the quilt by 4 in or 10 cm, as where the file says nothing of it. Common practice. */
const USUAL_OVERHANG = { imperial: 4 * INCH, metric: 10 * CENTIMETRE } as const;

function waddingOf(across: Ticks, down: Ticks, system: keyof typeof ROLL): Wadding {
  return { across, down, packaged: packagedFor(across, down), roll: rollFor(across, down, ROLL[system]) };
}

/** Wadding, backing, binding and a sleeve to hang the quilt by. */
export function planFinishing(work: QuiltWork, spec: QuiltSpec): Finishing {
  const { across, down } = work.top;
  const system = familyOf(spec.ruler.unit) === "imperial" ? "imperial" : "metric";
  const beyond = spec.wadding?.overhang ?? 0;
  const usual = USUAL_OVERHANG[system];
  const around = { across: across + 2 * usual, down: down + 2 * usual };
  const backing = planBacking(work, spec);
  return {
    edge: 2 * (across + down),
    wadding: spec.wadding === null ? null : waddingOf(across + 2 * beyond, down + 2 * beyond, system),
    backing,
    binding: planBinding(work, spec),
    unnamed: {
      backing: backing === null ? { ...around, overhang: usual } : null,
      wadding: spec.wadding === null ? waddingOf(around.across, around.down, system) : null,
    },
    // A sleeve 4 in (10 cm) deep, an inch short of the quilt at both ends. Common practice, no source.
    sleeve:
      system === "imperial"
        ? { across, down: (17 * INCH) / 2, hem: INCH }
        : { across, down: 22 * CENTIMETRE, hem: 2.5 * CENTIMETRE },
  };
}
