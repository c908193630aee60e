import {
  hasPlan,
  type PackingItem,
  type PackingProblem,
  type PackingResult,
  type Section,
  type SegmentUse,
  type StackUse,
  type StripSection,
} from "../types.ts";

/**
 * Decides whether a result is a right answer to its problem, sharing nothing with the search: sizes fit,
 * turn rules and places are kept, every demand is met exactly, stock is not overdrawn, the cost adds up
 * and the bound does not pass it. Returns what is wrong, in words; empty when all is well.
 */
export function verify(problem: PackingProblem, result: PackingResult): string[] {
  const faults: string[] = [];
  const cut = problem.items.map(() => 0);
  let cost = 0;
  let rollLength = 0;
  const drawn = problem.sheets.map(() => 0);
  for (const layout of result.layouts) {
    const transposed = layout.firstCut === "along";
    const sheet = layout.stock === "sheet" ? problem.sheets[layout.sheet] : null;
    if (layout.stock === "sheet" && !sheet) {
      faults.push(`layout names sheet ${layout.sheet}, which does not exist`);
      continue;
    }
    if (layout.stock === "roll" && (problem.roll === null || transposed)) {
      faults.push("layout on a roll that is not there, or first cut along a roll");
      continue;
    }
    if (transposed && sheet?.firstCut !== "either")
      faults.push("first cut runs along a sheet that forbids it");
    const [only, another] = layout.sections;
    if (sheet?.firstCut === "none" && (only?.kind !== "strips" || only.count !== 1 || another !== undefined))
      faults.push(`sheet ${layout.sheet} is a strip, and is cut into strips`);
    const run = sheet ? (transposed ? sheet.along : sheet.across) : problem.roll!.width;
    // A place is a rule for the roll: on a fixed piece the item's own grain is all that matters.
    const asked = sheet
      ? { ...problem, items: problem.items.map((i) => ({ ...i, place: "either" as const })) }
      : problem;
    const used = checkSections(
      sheet?.firstCut === "none" ? { ...asked, stacks: ANY } : asked,
      layout.sections,
      run,
      transposed,
      layout.count,
      cut,
      faults,
    );
    if (sheet) {
      drawn[layout.sheet]! += layout.count;
      cost += sheet.cost * layout.count;
      const room = transposed ? sheet.across : sheet.along;
      if (used > room) faults.push(`sheet ${layout.sheet}: strips take ${used}, room is ${room}`);
    } else {
      rollLength += used * layout.count;
      cost += used * layout.count * problem.roll!.costPerLength;
    }
  }
  drawn.forEach((count, i) => {
    const available = problem.sheets[i]!.available;
    if (available !== null && count > available)
      faults.push(`sheet ${i}: ${count} used, ${available} available`);
  });
  if (problem.roll?.available != null && rollLength > problem.roll.available)
    faults.push(`roll: ${rollLength} used, ${problem.roll.available} available`);
  const missing = problem.items.map(() => 0);
  for (const m of result.missing) missing[m.item]! += m.count;
  problem.items.forEach((item, i) => {
    if (item.run !== undefined) {
      if (missing[i] === 0 && cut[i]! < item.run.length - item.run.loss)
        faults.push(`item ${i}: its sources make ${cut[i]! + item.run.loss}, ${item.run.length} wanted`);
      return;
    }
    if (cut[i]! + missing[i]! !== item.demand)
      faults.push(`item ${i}: ${cut[i]} cut, ${missing[i]} missing, ${item.demand} wanted`);
  });
  if (!hasPlan(result)) {
    if (result.missing.length === 0) faults.push(`${result.status}, but nothing is missing`);
  } else {
    if (result.missing.length > 0) faults.push("items missing from a plan that claims to be whole");
    if (cost !== result.objective) faults.push(`objective ${result.objective}, layouts cost ${cost}`);
    if (rollLength !== result.rollLength)
      faults.push(`roll length ${result.rollLength}, strips take ${rollLength}`);
    if (result.bound.value > result.objective)
      faults.push(`bound ${result.bound.value} passes objective ${result.objective}`);
    if (result.status === "proven" && result.bound.value !== result.objective)
      faults.push(`proven, but bound ${result.bound.value} is not objective ${result.objective}`);
  }
  return faults;
}

/** What is a strip already may be cut into stacks however high it is. */
const ANY = { height: Infinity, width: Infinity };

/** Length taken by a list of sections on stock of the given run; counts the items cut into `cut`. */
function checkSections(
  problem: PackingProblem,
  sections: readonly Section[],
  run: number,
  transposed: boolean,
  times: number,
  cut: number[],
  faults: string[],
): number {
  let used = 0;
  for (const section of sections) {
    if (!Number.isSafeInteger(section.count) || section.count < 1)
      faults.push(`section count ${section.count}`);
    if (section.kind === "strips") {
      checkStrip(problem, section, run, transposed, times, cut, faults);
      used += section.column.along * section.count;
      continue;
    }
    const banded = section.bands.reduce((sum, band) => sum + band.across * band.count, 0);
    if (banded + section.restAcross > run)
      faults.push(`bands ${banded} and rest ${section.restAcross} pass the run ${run}`);
    for (const band of section.bands)
      checkSegment(problem, band, section.along, transposed, times * section.count, cut, faults, "bands");
    const rest = checkSections(
      problem,
      section.rest,
      section.restAcross,
      transposed,
      times * section.count,
      cut,
      faults,
    );
    if (rest > section.along) faults.push(`rest strips take ${rest} of a section of ${section.along}`);
    used += section.along * section.count;
  }
  return used;
}

function checkStrip(
  problem: PackingProblem,
  { column, count }: StripSection,
  run: number,
  transposed: boolean,
  times: number,
  cut: number[],
  faults: string[],
): void {
  const width = column.segments.reduce((sum, segment) => sum + segment.across * segment.count, 0);
  const { end } = column;
  if (end !== undefined) {
    const item = problem.items[end.item];
    if (item?.run === undefined || transposed)
      faults.push(`the end of a strip is joined to item ${end.item}`);
    else {
      if (item.along !== column.along)
        faults.push(`item ${end.item} is ${item.along} wide, the end of a strip ${column.along}`);
      if (end.across < item.run.leastEnd)
        faults.push(`an end of ${end.across} is joined to item ${end.item}`);
      cut[end.item]! += (end.across - item.run.loss) * times * count;
    }
  }
  if (width + (end?.across ?? 0) > run) faults.push(`segments take ${width} of a strip of ${run}`);
  for (const segment of column.segments)
    checkSegment(problem, segment, column.along, transposed, times * count, cut, faults, "strips");
}

function checkSegment(
  problem: PackingProblem,
  segment: SegmentUse,
  height: number,
  transposed: boolean,
  times: number,
  cut: number[],
  faults: string[],
  place: "strips" | "bands",
): void {
  let stacked = 0;
  let rows = 0;
  for (const use of segment.stack) {
    const item = problem.items[use.item];
    if (item?.nest !== undefined) {
      checkNest(item.nest, use, segment, height, transposed, faults);
      if (place !== "strips" || problem.style !== "strips-2" || segment.stack.length > 1)
        faults.push(`item ${use.item} nests in strips of its own run only`);
      cut[use.item]! += use.count * segment.count * times;
      continue;
    }
    if (item?.run !== undefined) faults.push(`item ${use.item} is joined from strips, and lies in one`);
    if (!item || !Number.isSafeInteger(use.count) || use.count < 1) {
      faults.push(`stack names item ${use.item} ${use.count} times`);
      continue;
    }
    if (use.turned && !item.turnable && item.across !== item.along)
      faults.push(`item ${use.item} lies turned but must not`);
    if (item.place !== "either" && item.place !== place)
      faults.push(`item ${use.item} belongs in ${item.place}, lies in ${place}`);
    // `turned` speaks of the stock's frame; a transposed layout swaps the frame once more.
    const swap = use.turned !== transposed;
    const width = swap ? item.along : item.across;
    stacked += (swap ? item.across : item.along) * use.count;
    rows += use.count;
    // A band is as wide as its widest item; narrower ones are trimmed.
    const exact = problem.style === "strips-2" && place === "strips";
    if (exact ? width !== segment.across : width > segment.across)
      faults.push(`item ${use.item} is ${width} wide in a segment of ${segment.across}`);
    cut[use.item]! += use.count * segment.count * times;
  }
  const { stacks = ANY } = problem;
  if (rows > 1 && place === "strips" && (height > stacks.height || segment.across > stacks.width))
    faults.push(`a stack of ${segment.across} x ${height} is beyond ${stacks.width} x ${stacks.height}`);
  if (stacked > height) faults.push(`a stack of ${stacked} in a height of ${height}`);
  if (problem.style === "strips-2" && rows > 1 && place === "strips")
    faults.push("stacked items in a style without stacked subcuts");
}

/** A run of shapes takes first and the advances between them, in a lie that the stock's direction allows. */
function checkNest(
  { across, along }: NonNullable<PackingItem["nest"]>,
  { item, turned, count }: StackUse,
  segment: SegmentUse,
  height: number,
  transposed: boolean,
  faults: string[],
): void {
  const fits = (transposed ? along : across).some((lie) => {
    if (lie.turned !== turned || lie.height > height) return false;
    let length = lie.first;
    for (let i = 0; i < count - 1; i++) length += lie.advances[i % lie.advances.length]!;
    return length === segment.across;
  });
  if (!fits || !Number.isSafeInteger(count) || count < 1)
    faults.push(`a run of ${count} of item ${item} takes ${segment.across} in a height of ${height}`);
}
