import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import type { Ticks } from "../../../length/types.ts";
import { METHOD, UNIT, type UnitName } from "../../terms/names.ts";
import { notSquare } from "../design.ts";
import { bounds, rectangle, toRoots } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece } from "../recipe.ts";
import type { HowMade, RecipeStep, UnitDesign, UnitKind, UnitMethod, UnitPatch } from "../types.ts";

/*
 *   +-----------+      round: logs go on clockwise, each over the end of the one before:
 *   | t1      | |             top and right are light, bottom and left dark
 *   |-+-----+ |r|
 *   | | cen | |1|      courthouse steps: top and bottom first, then the sides,
 *   |l|     | | |             ends one fabric, sides the other
 *   |1+-----+-+-|
 *   | |   b1    |
 *   +-----------+
 */
type Side = "top" | "right" | "bottom" | "left";
const MOST_ROUNDS = 20;

interface Laying {
  name: UnitName;
  order: readonly Side[];
  roleOf: Readonly<Record<Side, string>>;
}

const ROUND: Laying = {
  name: UNIT.logCabin,
  order: ["top", "right", "bottom", "left"],
  roleOf: { top: "light", right: "light", bottom: "dark", left: "dark" },
};
const COURTHOUSE: Laying = {
  name: UNIT.courthouseSteps,
  order: ["top", "bottom", "left", "right"],
  roleOf: { top: "ends", bottom: "ends", left: "sides", right: "sides" },
};

/** Finished width of the logs: what the centre leaves, shared by the rounds on both sides. */
function logWidth(design: UnitDesign): Rational {
  if (design.centre === null) return q.div(design.across, q.fromInteger(2 * design.count + 1));
  return q.div(q.sub(design.across, design.centre), q.fromInteger(2 * design.count));
}

interface Rectangle {
  x: Rational;
  y: Rational;
  across: Rational;
  along: Rational;
}

/** The log sewn to one side of what is there, and what is there afterwards. */
function addLog(inside: Rectangle, side: Side, width: Rational): { log: Rectangle; grown: Rectangle } {
  const { x, y, across, along } = inside;
  switch (side) {
    case "top": {
      const log = { x, y: q.sub(y, width), across, along: width };
      return { log, grown: { ...inside, y: log.y, along: q.add(along, width) } };
    }
    case "bottom":
      return {
        log: { x, y: q.add(y, along), across, along: width },
        grown: { ...inside, along: q.add(along, width) },
      };
    case "left": {
      const log = { x: q.sub(x, width), y, across: width, along };
      return { log, grown: { ...inside, x: log.x, across: q.add(across, width) } };
    }
    case "right":
      return {
        log: { x: q.add(x, across), y, across: width, along },
        grown: { ...inside, across: q.add(across, width) },
      };
  }
}

function patchesOf(laying: Laying, design: UnitDesign): UnitPatch[] {
  const width = logWidth(design);
  const start = q.mul(width, q.fromInteger(design.count));
  const side = q.sub(design.across, q.mul(start, q.fromInteger(2)));
  const patch = (role: string, spot: string, box: Rectangle): UnitPatch => ({
    role,
    spot,
    outline: rectangle(box.x, box.y, box.across, box.along),
    shape: spot,
    facing: 0,
  });
  let inside: Rectangle = { x: start, y: start, across: side, along: side };
  const patches = [patch("centre", "centre", inside)];
  for (let round = 1; round <= design.count; round += 1)
    for (const name of laying.order) {
      const { log, grown } = addLog(inside, name, width);
      patches.push(patch(laying.roleOf[name], `round ${round} ${name}`, log));
      inside = grown;
    }
  return patches;
}

function check(design: UnitDesign): ReturnType<UnitKind["check"]> {
  const uneven = notSquare(design);
  if (uneven !== null) return uneven;
  if (!Number.isInteger(design.count) || design.count < 1 || design.count > MOST_ROUNDS)
    return {
      fault: { why: "rounds", most: MOST_ROUNDS },
    };
  const centre = design.centre;
  if (centre !== null && (q.sign(centre) <= 0 || q.compare(centre, design.across) >= 0))
    return {
      fault: { why: "centre-size" },
    };
  return null;
}

/** A log as it is cut, and what is there when it is sewn on. */
interface CutLog {
  patch: UnitPatch;
  /** As it lies in the unit, in ticks. */
  across: Rational;
  along: Rational;
  /** Raw size once it is on, and after the trim that ends its round; null where nothing is trimmed. */
  trim: { across: Ticks; along: Ticks } | null;
}

const onMarkAbove = (value: Rational, how: HowMade): Rational =>
  q.fromInteger(r.upToMark(r.whole(value), how.mark));

/**
 * Logs as cut: all as wide as the mark above their finished width and two seams, each as long as the side it is sewn
 * to, which follows from the widths before it. What a round comes out too large is trimmed before the next, so that
 * no rounding adds up. Derived geometry.
 */
function logsAsCut(laying: Laying, design: UnitDesign, how: HowMade): CutLog[] {
  const least = onMarkAbove(q.add(logWidth(design), q.mul(how.seam, q.fromInteger(2))), how);
  // With a seam allowance off the marks a round may come out between two of them: one mark more makes it up.
  return (
    logsOfWidth(least, laying, design, how) ??
    logsOfWidth(q.add(least, q.fromInteger(how.mark)), laying, design, how) ??
    []
  );
}

/** The logs cut so wide; null when a round comes out smaller than the mark it is to be trimmed to. */
function logsOfWidth(width: Rational, laying: Laying, design: UnitDesign, how: HowMade): CutLog[] | null {
  const [centre, ...around] = patchesOf(laying, design);
  if (centre === undefined) return [];
  const seams = q.mul(how.seam, q.fromInteger(2));
  const finished = logWidth(design);
  const inside = q.sub(design.across, q.mul(finished, q.fromInteger(2 * design.count)));
  const middle = onMarkAbove(q.add(inside, seams), how);
  const cut: CutLog[] = [{ patch: centre, across: middle, along: middle, trim: null }];
  let size = { across: middle, along: middle };
  for (const [i, patch] of around.entries()) {
    const upright = /(left|right)$/.test(patch.spot);
    // A side off the marks takes a log cut to the mark above; its end is trimmed level.
    const long = onMarkAbove(upright ? size.along : size.across, how);
    const grown = q.sub(width, seams);
    size = upright
      ? { across: q.add(size.across, grown), along: size.along }
      : { across: size.across, along: q.add(size.along, grown) };
    const log: CutLog = {
      patch,
      across: upright ? width : long,
      along: upright ? long : width,
      trim: null,
    };
    if ((i + 1) % laying.order.length === 0) {
      const round = (i + 1) / laying.order.length;
      const wanted = q.add(inside, q.mul(finished, q.fromInteger(2 * round)));
      const target = onMarkAbove(q.add(wanted, seams), how);
      if (q.compare(size.across, target) < 0) return null;
      if (q.compare(size.across, target) > 0) {
        const side = Number(target.n);
        // The last trim is the unit's own.
        if (round < design.count) log.trim = { across: side, along: side };
        size = { across: target, along: target };
      }
    }
    cut.push(log);
  }
  return cut;
}

function cutLogs(laying: Laying): UnitMethod {
  return methodsOf(laying.name)(METHOD.cutLogs, (design, how) => {
    const logs = logsAsCut(laying, design, how);
    const upright = ({ patch }: CutLog): boolean => /(left|right)$/.test(patch.spot);
    const long = (log: CutLog): Rational => (upright(log) ? log.along : log.across);
    return {
      ...NOTHING_MORE,
      unitsPerSet: 1,
      loose: true,
      pieces: logs.map((log) => {
        const box = bounds(toRoots(log.patch.outline));
        const piece = patchPiece(log.patch.role, box.across, box.along, how, [[lie(0, log.patch.spot, 0)]]);
        return {
          ...piece,
          across: { ...piece.across, meets: r.whole(log.across) },
          along: { ...piece.along, meets: r.whole(log.along) },
        };
      }),
      seams: logs.slice(1).map((log) => ({
        what: "log",
        parts: [log.patch.spot],
        length: r.whole(long(log)),
        count: 1,
        bias: false,
      })),
      steps: logs.slice(1).flatMap(({ patch, trim }, i): RecipeStep[] => {
        const before = i === 0 ? "centre" : `up-to/${logs[i]?.patch.spot}`;
        const makes = i === logs.length - 2 ? "unit" : `up-to/${patch.spot}`;
        const after = /(right|bottom)$/.test(patch.spot);
        const join: RecipeStep = {
          do: "join",
          makes,
          parts: after ? [before, patch.spot] : [patch.spot, before],
          way: /(top|bottom)$/.test(patch.spot) ? "down" : "across",
          press: { to: "outside" },
        };
        return trim === null ? [join] : [join, { do: "trim", by: "round", to: trim }];
      }),
      // Derived geometry: log width + 2 seams, as long as the side it is sewn to.
    };
  });
}

function logs(laying: Laying, alsoCalled: readonly string[]): UnitKind {
  return {
    name: laying.name,
    alsoCalled,
    reads: ["count", "centre"],
    check,
    roles: () => ["centre", ...new Set(laying.order.map((side) => laying.roleOf[side]))],
    patches: (design) => patchesOf(laying, design),
    methods: [cutLogs(laying)],
  };
}

/** Logs laid round a centre. */
export const logCabin: UnitKind = logs(ROUND, ["round log cabin"]);

/** Logs laid on opposite sides of a centre. */
export const courthouseSteps: UnitKind = logs(COURTHOUSE, ["courthouse", "courthouse steps log cabin"]);
