import type { FabricPlan, Lay, Part, PartRole, WasteCause } from "../plan/types.ts";
import { at, walk } from "./walk.ts";

/** What each part may be cut into. */
const HOLDS: Readonly<Record<PartRole, readonly PartRole[]>> = {
  stock: ["straightening", "band-section", "strip", "uncut-end"],
  "band-section": ["band", "rest", "waste"],
  band: ["piece", "segment", "waste"],
  rest: ["strip", "waste"],
  strip: ["piece", "segment", "waste"],
  segment: ["piece", "segment", "waste"],
  piece: [],
  waste: [],
  straightening: [],
  "uncut-end": [],
};

/** Parts that may hold a single part filling them; others would be cut by no cut. */
const MAY_HOLD_ONE: readonly PartRole[] = ["stock", "band-section", "strip", "band", "rest"];

/** What waste within a part is called. */
const WASTE_WITHIN: Readonly<Partial<Record<PartRole, WasteCause>>> = {
  "band-section": "strip-end",
  band: "strip-end",
  rest: "strip-end",
  strip: "strip-end",
  segment: "trimming",
};

/** Parts tile their parents exactly, cut edge to edge, in an order the style allows. */
export function checkTree(lay: Lay, fabric: FabricPlan, style: "strips-2" | "strips-3"): string[] {
  const { root } = lay;
  const faults: string[] = [];
  if (root.role !== "stock") faults.push(`the lay ${lay.name} does not begin with its stock`);
  if (root.x !== 0 || root.y !== 0 || root.across !== lay.across || root.along !== lay.along)
    faults.push(`the parts of ${lay.name} do not cover its ${lay.across} x ${lay.along}`);
  if (lay.source === "bolt" && root.cut !== "across") faults.push("the bolt is not cut across first");
  for (const { part, within } of walk(root)) {
    const parent = within.at(-1);
    faults.push(...checkShape(part), ...checkTiling(part));
    if (parent !== undefined) faults.push(...checkPlace(part, parent, within));
    if (part.role === "segment" && style === "strips-2") faults.push(...checkNoStack(part, within));
  }
  faults.push(...checkEnds(lay, fabric));
  return faults;
}

function checkShape(part: Part): string[] {
  const faults: string[] = [];
  const sizes = [part.x, part.y, part.across, part.along, part.number];
  if (!sizes.every(Number.isSafeInteger)) faults.push(`${at(part)} is not in whole ticks`);
  if (part.across <= 0 || part.along <= 0) faults.push(`${at(part)} has no size`);
  if (part.parts.length > 0) {
    if (part.cut === null) faults.push(`${at(part)} holds parts but is not cut`);
    if (part.piece !== null || part.cause !== null || part.keep || part.turned)
      faults.push(`${at(part)} is cut and yet a piece or waste`);
    return faults;
  }
  if (part.cut !== null) faults.push(`${at(part)} is cut into nothing`);
  if ((part.piece === null) === (part.cause === null))
    faults.push(`${at(part)} is neither a piece nor waste`);
  if ((part.role === "piece") !== (part.piece !== null)) faults.push(`${at(part)} is not what its role says`);
  return faults;
}

function checkTiling(part: Part): string[] {
  const faults: string[] = [];
  let { x, y } = part;
  for (const inner of part.parts) {
    if (inner.x !== x || inner.y !== y)
      faults.push(`${at(inner)} leaves a gap or overlaps: expected at ${x}, ${y}`);
    const square = part.cut === "across" ? inner.across === part.across : inner.along === part.along;
    if (!square) faults.push(`${at(inner)} is not cut edge to edge from ${at(part)}`);
    if (part.cut === "across") y = inner.y + inner.along;
    else x = inner.x + inner.across;
  }
  const full = part.cut === "across" ? y === part.y + part.along : x === part.x + part.across;
  if (part.parts.length > 0 && !full) faults.push(`${at(part)} is not filled by its parts`);
  if (part.parts.length === 1 && !MAY_HOLD_ONE.includes(part.role))
    faults.push(`${at(part)} is cut by no cut`);
  return faults;
}

function checkPlace(part: Part, parent: Part, within: readonly Part[]): string[] {
  const faults: string[] = [];
  if (!HOLDS[parent.role].includes(part.role)) faults.push(`${at(part)} cannot come from a ${parent.role}`);
  if (part.cut !== null && part.cut === parent.cut)
    faults.push(`${at(part)} is cut the same way as ${at(parent)}`);
  const called = isTrimmedRun(parent, within.slice(0, -1)) ? "strip-end" : WASTE_WITHIN[parent.role];
  if (part.role === "waste" && part.cause !== called) faults.push(`${at(part)} is called ${part.cause}`);
  if (part.cause === "strip-end" && parent.parts.at(-1) !== part)
    faults.push(`${at(part)} is an end, but does not lie last`);
  const cutsIn = within.filter(({ role }) => role === "segment").length;
  if (part.role === "segment" && cutsIn > 1) faults.push(`${at(part)} is cut once too often`);
  return faults;
}

/**
 * Whether a row of pieces was trimmed in one block that was the last of its strip: the strip's end was trimmed with
 * it, so what is left at the row's end is an end and no trimming.
 */
function isTrimmedRun(run: Part, above: readonly Part[]): boolean {
  const [strip, block] = above.slice(-2);
  return (
    run.role === "segment" &&
    block?.role === "segment" &&
    strip?.role === "strip" &&
    strip.parts.at(-1) === block &&
    block.parts[0] === run &&
    block.parts.every((part) => part === run || part.cause === "trimming")
  );
}

/** What is left at the end of a strip, trimmed with the last block of it or not; undefined where nothing is. */
function endOfStrip(strip: Part): Part | undefined {
  const last = strip.parts.at(-1);
  const inner = last?.role === "segment" ? last.parts[0]?.parts.at(-1) : last;
  return inner?.cause === "strip-end" ? inner : undefined;
}

/** Without stacked subcuts a segment is a row of pieces and the trimming beside it. */
function checkNoStack(segment: Part, within: readonly Part[]): string[] {
  const inBand = within.some(({ role }) => role === "band");
  const nested = within.at(-1)?.role === "segment";
  const rows = segment.parts.filter(({ cause }) => cause === null).length;
  if (!inBand && !nested && rows > 1) return [`${at(segment)} is stacked, which strips-2 does not allow`];
  const trims = segment.parts.some(({ cause }) => cause !== null && cause !== "strip-end");
  if (!inBand && nested && trims) return [`${at(segment)} is trimmed once too often`];
  return [];
}

/** The straightened end comes first, what stays uncut comes last. */
function checkEnds({ root, source, name }: Lay, { straighten: ofBolt, stock = [] }: FabricPlan): string[] {
  const faults: string[] = [];
  // A piece of a fixed size is squared on the side of its first cut, by as much as is said of it.
  const squareUp = stock.find((kind) => kind.name === name)?.squareUp ?? { across: 0, along: 0 };
  const upright = root.cut === "along";
  const straighten = source === "bolt" ? ofBolt : upright ? squareUp.across : squareUp.along;
  const atEnds = source === "bolt" ? 0 : upright ? squareUp.along : squareUp.across;
  for (const strip of root.parts.filter(({ role }) => role === "strip")) {
    const end = endOfStrip(strip);
    const left = end === undefined ? 0 : upright ? end.along : end.across;
    if (left < atEnds) faults.push(`${at(strip)} leaves ${left} to square its end, wanted ${atEnds}`);
  }
  root.parts.forEach((part, index) => {
    const first = index === 0;
    const lost = root.cut === "along" ? part.across : part.along;
    const last = index === root.parts.length - 1;
    if ((part.role === "straightening") !== (part.cause === "straightening"))
      faults.push(`${at(part)} is called ${part.cause}`);
    if ((part.role === "uncut-end") !== (part.cause === "uncut-end"))
      faults.push(`${at(part)} is called ${part.cause}`);
    if (part.role === "straightening" && (!first || lost !== straighten))
      faults.push(`${at(part)} is not the straightened end`);
    if (part.role === "uncut-end" && !last) faults.push(`${at(part)} does not lie last`);
  });
  if (straighten > 0 && root.parts[0]?.role !== "straightening")
    faults.push(`${source === "bolt" ? "the end of the bolt" : name} is not straightened`);
  return faults;
}
