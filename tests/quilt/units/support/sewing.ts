/*
 * A cutting mat and a needle, in plain floating point and sharing no code with the recipes: pieces are laid,
 * turned over, stitched, cut and pressed open, and what comes off the mat is measured.
 * x to the right, y down, as everything drawn.
 */
interface Pt {
  x: number;
  y: number;
}

/** A line through a point; `left` of it is the side of the normal (-dy, dx). */
export interface Line {
  x: number;
  y: number;
  dx: number;
  dy: number;
}

/** What shows of one cut piece: its outline on the mat, where its print's up points, and its face. */
export interface Fragment {
  role: string;
  outline: Pt[];
  up: Pt;
  faceUp: boolean;
}

const unitVector = (eighth: number): Pt => ({
  x: Math.sin((eighth * Math.PI) / 4),
  y: -Math.cos((eighth * Math.PI) / 4),
});

/** A piece laid on the mat with its print's up pointing as told, face up or down. */
export function lay(
  role: string,
  x: number,
  y: number,
  across: number,
  along: number,
  up: number,
  faceUp: boolean,
): Fragment {
  const outline = [
    { x, y },
    { x: x + across, y },
    { x: x + across, y: y + along },
    { x, y: y + along },
  ];
  return { role, outline, up: unitVector(up), faceUp };
}

function side(p: Pt, line: Line): number {
  return (line.dx * (p.y - line.y) - line.dy * (p.x - line.x)) / Math.hypot(line.dx, line.dy);
}

/** A line moved sideways: positive towards its positive side. */
function moved(line: Line, by: number): Line {
  const length = Math.hypot(line.dx, line.dy);
  return { ...line, x: line.x - (line.dy / length) * by, y: line.y + (line.dx / length) * by };
}

/** The part of an outline on one side of a line (`sign` 1 or -1). */
function clip(outline: readonly Pt[], line: Line, sign: 1 | -1): Pt[] {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const [da, db] = [side(a, line) * sign, side(b, line) * sign];
    const kept = da >= -1e-7 ? [a] : [];
    if ((da > 1e-7 && db < -1e-7) || (da < -1e-7 && db > 1e-7)) {
      const t = da / (da - db);
      return [...kept, { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }];
    }
    return kept;
  });
}

function reflected(p: Pt, line: Line): Pt {
  const length = Math.hypot(line.dx, line.dy);
  const d = side(p, line);
  return { x: p.x + (2 * d * line.dy) / length, y: p.y - (2 * d * line.dx) / length };
}

function area(outline: readonly Pt[]): number {
  const twice = outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    return sum + a.x * b.y - a.y * b.x;
  }, 0);
  return Math.abs(twice) / 2;
}

function cutTo(fragments: readonly Fragment[], line: Line, sign: 1 | -1): Fragment[] {
  return fragments
    .map((one) => ({ ...one, outline: clip(one.outline, line, sign) }))
    .filter((one) => area(one.outline) > 1);
}

/** A fragment turned over about a line. */
function turnedOver(one: Fragment, line: Line): Fragment {
  const origin = reflected({ x: 0, y: 0 }, line);
  const tip = reflected(one.up, line);
  return {
    role: one.role,
    outline: one.outline.map((p) => reflected(p, line)),
    up: { x: tip.x - origin.x, y: tip.y - origin.y },
    faceUp: !one.faceUp,
  };
}

/** Stitch two layers along a line, keep the cloth on one side of it, and press the top layer open. */
export function stitchAndOpen(
  bottom: readonly Fragment[],
  top: readonly Fragment[],
  line: Line,
  sign: 1 | -1,
): Fragment[] {
  return [...cutTo(bottom, line, sign), ...cutTo(top, line, sign).map((one) => turnedOver(one, line))];
}

/** Both halves of a sandwich sewn either side of a line and cut on it. */
export function sewBothSides(
  bottom: readonly Fragment[],
  top: readonly Fragment[],
  line: Line,
  seam: number,
): Fragment[][] {
  return ([1, -1] as const).map((sign) => {
    const half = { bottom: cutTo(bottom, line, sign), top: cutTo(top, line, sign) };
    return stitchAndOpen(half.bottom, half.top, moved(line, sign * seam), sign);
  });
}

/** A unit off the mat: the quarter or eighth turn that brings it to how it is drawn, and its patches there. */
export interface Spot {
  role: string;
  spot: string;
  outline: readonly Pt[];
}

function centroid(outline: readonly Pt[]): Pt {
  let [x, y, twice] = [0, 0, 0];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const c = a.x * b.y - a.y * b.x;
    twice += c;
    x += (a.x + b.x) * c;
    y += (a.y + b.y) * c;
  });
  return { x: x / (3 * twice), y: y / (3 * twice) };
}

function turnedBack(p: Pt, eighths: number): Pt {
  const a = (-eighths * Math.PI) / 4;
  return { x: p.x * Math.cos(a) - p.y * Math.sin(a), y: p.x * Math.sin(a) + p.y * Math.cos(a) };
}

function holds(outline: readonly Pt[], p: Pt, slack: number): boolean {
  const sign = Math.sign(
    outline.reduce((sum, a, i) => {
      const b = outline[(i + 1) % outline.length] ?? a;
      return sum + a.x * b.y - a.y * b.x;
    }, 0),
  );
  return outline.every((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return length < 1 || sign * ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) >= -slack * length;
  });
}

/**
 * Reads a sewn unit: every turn in which it is the unit as drawn, told as `spot:print` in order of spot.
 * Measured on the way: face up throughout, raw size at least as asked and at most `slack` over, and each
 * finished patch inside the cloth of its role, one seam in from the raw edge.
 * @returns readings, or a sentence saying what is wrong
 */
export function readUnit(
  fragments: readonly Fragment[],
  spots: readonly Spot[],
  size: { across: number; along: number },
  seam: number,
  slack: number,
): string[] | string {
  if (fragments.some((one) => !one.faceUp)) return "a patch shows its wrong side";
  let complaint = "no turn makes it the unit as drawn";
  const readings: string[] = [];
  for (let turn = 0; turn < 8; turn += 1) {
    const lying = fragments.map((one) => ({ ...one, outline: one.outline.map((p) => turnedBack(p, turn)) }));
    const xs = lying.flatMap((one) => one.outline.map((p) => p.x));
    const ys = lying.flatMap((one) => one.outline.map((p) => p.y));
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    const raw = { across: Math.max(...xs) - left, along: Math.max(...ys) - top };
    const over = [raw.across - size.across - 2 * seam, raw.along - size.along - 2 * seam] as const;
    // Points of geese reach past the raw edge by nothing; anything else over is trimmed evenly.
    if (over.some((d) => d < -1e-3)) continue;
    if (over.some((d) => d > slack)) continue;
    const placed = spots.map((spot) => ({
      ...spot,
      outline: spot.outline.map((p) => ({
        x: p.x + left + seam + over[0] / 2,
        y: p.y + top + seam + over[1] / 2,
      })),
    }));
    const reading = placed.map((spot) => {
      const middle = centroid(spot.outline);
      const cloth = lying.filter((one) => one.role === spot.role && holds(one.outline, middle, 0));
      const one = cloth[0];
      if (cloth.length !== 1 || one === undefined) return null;
      if (!spot.outline.every((p) => holds(one.outline, p, slack))) {
        complaint = `${spot.spot} is not covered`;
        return null;
      }
      const up = turnedBack(one.up, turn);
      const print = (Math.round((Math.atan2(up.x, -up.y) * 4) / Math.PI) + 8) % 8;
      return `${spot.spot}:${print}`;
    });
    if (reading.every((each) => each !== null)) readings.push(reading.toSorted().join(" "));
  }
  return readings.length > 0 ? readings : complaint;
}
