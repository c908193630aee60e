import { formatCut, formatLength, type Ticks } from "../../length/index.ts";
import type { BorderRound, BorderStrips, Making, PressedSeam } from "../../making/types.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { bagsFor, bagsForUse } from "../cutting/bags.ts";
import { blockNamed, unturned } from "./block-names.ts";
import { borderRow } from "./border-rows.ts";

import { indented, measured, measuredSize } from "./making-lines.ts";

type CutPieceOf = FabricPlan["pieces"][number];

/** The bag of a pair, and whether its strips are sewn to one run before they are cut to length. */
interface Bag {
  letters: string;
  pieces: readonly CutPieceOf[];
  joined: boolean;
}

function bagOf(strips: BorderStrips, plan: Plan): Bag {
  const pieces = bagsForUse(plan, strips.fabric, strips.use);
  return {
    letters: pieces.map(({ letter }) => letter).join("/"),
    pieces,
    joined: pieces.some(({ joined }) => joined !== undefined),
  };
}

const onSide = (side: string, x: number, y: number) => ({ left: x, right: x, top: y, bottom: y })[side] ?? 0;

/** Which way the seams that sew a pair on are pressed: outwards, unless the map says otherwise. */
function pressOf(round: BorderRound, strips: BorderStrips, making: Making, plan: Plan, words: Words): string {
  const border = plan.top?.borders.find(({ number }) => number === round.number);
  const { pressing } = making;
  if (border === undefined || pressing === null || plan.top?.centre.onPoint === true)
    return words.borders.outwards;
  const value = ({ n, r, d }: { n: number; r: number; d: number }): number => (n + r * Math.SQRT2) / d;
  const [x, y] = [value(border.x), value(border.y)];
  const [across, down] = [value(border.across), value(border.down)];
  const [wide, high] = [value(border.side), value(border.end)];
  const presses = strips.sides.map((side) => {
    const upright = side === "left" || side === "right";
    const line = { left: x + wide, right: x + across - wide, top: y + high, bottom: y + down - high }[side];
    const on = ({ x1, y1, x2, y2 }: PressedSeam): boolean =>
      Math.abs(onSide(side, x1, y1) - line) < 3 &&
      Math.abs(onSide(side, x2, y2) - line) < 3 &&
      // A border outside this one may lie on the same line only in its own length.
      Math.abs(upright ? y2 - y1 : x2 - x1) > 0;
    const out = { left: "left", right: "right", top: "up", bottom: "down" }[side];
    const own = pressing.seams.filter(on);
    if (own.length === 0 || own.every(({ press }) => press === out)) return "out";
    return own.every(({ press }) => press !== out) ? "in" : "map";
  });
  if (presses.every((press) => press === "out")) return words.borders.outwards;
  return presses.every((press) => press === "in") ? words.borders.inwards : words.borders.asMap;
}

/** Squares for the corners of a border, by their bag; blocks by their names. */
function cornerBag(round: BorderRound, making: Making, plan: Plan, words: Words): string {
  const bags = plan.fabrics.flatMap(({ name }) =>
    bagsFor(
      plan,
      name,
      (purpose) =>
        purpose.for === "unit" &&
        purpose.made === null &&
        purpose.places.length === 1 &&
        purpose.places.every((place) => place.in === "corners" && place.border === round.name),
    ).map(({ letter }) => `${letter} (${name})`),
  );
  if (bags.length > 0) return words.borders.list(bags);
  const index = round.number - 1;
  const own = new Set(
    (plan.top?.patches ?? []).flatMap(({ origin }) =>
      origin.border === index && origin.place === "cornerstone" && origin.block !== null
        ? [origin.block]
        : [],
    ),
  );
  const named = [...own].flatMap((block) => blockNamed(block, making, plan, unturned(words)) ?? []);
  return [...new Set(named)].join(", ");
}

/** One pair: measured, cut or marked, sewn on, pressed, and what it makes of the top. */
function pairTold(
  round: BorderRound,
  { strips, after }: { strips: BorderStrips; after: string },
  making: Making,
  plan: Plan,
  words: Words,
): string {
  const side = strips.sides[0] ?? "left";
  const say = (length: Ticks): string => measured(length, plan);
  const press = pressOf(round, strips, making, plan, words);
  const corners = strips.cornerstones
    ? [words.borders.cornerstones(cornerBag(round, making, plan, words))]
    : [];
  if (round.pieced) {
    const inCorners = !strips.cornerstones && round.kind === "butted" && round.strips[0] !== strips;
    const rows = strips.sides.map((each) =>
      borderRow({ number: round.number, side: each, corners: inCorners }, making, plan, words),
    );
    const alike = rows.every((row) => row === rows[0]);
    const told = alike
      ? [{ where: words.borders.bothRows(side), blocks: rows[0] ?? "" }]
      : strips.sides.map((each, i) => ({ where: words.borders.rowOf[each], blocks: rows[i] ?? "" }));
    return [
      words.borders.pieced(words.purposes.border(round.name), side, told, words.borders.pressRow),
      words.borders.piecedFits(say(strips.sewn)),
      ...corners,
      words.borders.sewPair(press),
      words.borders.top(after),
    ].join(" ");
  }
  const { letters, joined } = bagOf(strips, plan);
  const bag = joined ? `${letters} (${strips.fabric})` : words.borders.bag(2, letters, strips.fabric);
  const over = round.extra > 0 && strips.cut > strips.sewn;
  const length = over
    ? joined
      ? words.borders.markOnRun(bag, say(strips.cut))
      : words.borders.mark(bag)
    : joined
      ? words.borders.cutFromRun(bag)
      : words.borders.cutToThat(bag);
  return [
    words.borders.measured(words.purposes.border(round.name), side, say(strips.sewn)),
    length,
    ...corners,
    over ? words.borders.sewMarked(press) : words.borders.sewPair(press),
    // One that is to fit is trimmed when it is on all round; until then it measures what its strips give.
    ...(round.fit ? [] : [words.borders.top(after)]),
  ].join(" ");
}

/** Strips that are sewn to one run first; one bag for both pairs is told once. */
function runLines(round: BorderRound, plan: Plan, words: Words): string[] {
  const found = new Map<string, { pieces: CutPieceOf[]; fabric: string; pairs: number }>();
  for (const strips of round.strips) {
    const own = bagOf(strips, plan).pieces.filter(({ joined }) => joined !== undefined);
    const runs = new Set(own.map(({ joined, letter }) => String(joined?.run ?? letter)));
    for (const run of runs) {
      const pieces = own.filter(({ joined, letter }) => String(joined?.run ?? letter) === run);
      found.set(run, { pieces, fabric: strips.fabric, pairs: (found.get(run)?.pairs ?? 0) + 1 });
    }
  }
  const { kits = 1 } = plan;
  return [...found.values()].flatMap(({ pieces, fabric, pairs }) => {
    const count = pieces.reduce((sum, piece) => sum + Math.ceil(piece.count / kits), 0);
    if (count < 2) return [];
    const bag = words.borders.bag(count, words.borders.list(pieces.map(({ letter }) => letter)), fabric);
    const join = pieces[0]?.join === "diagonal" ? "diagonal" : "straight";
    return [words.borders.joined(bag, count - 1, join) + (pairs > 1 ? ` ${words.borders.oneRun}` : "")];
  });
}

function roundLines(round: BorderRound, making: Making, plan: Plan, words: Words): string[] {
  const { strips, before, after } = round;
  const [first, second] = strips;
  if (first === undefined || second === undefined) return [];
  const upright = first.sides[0] === "left";
  const half = upright
    ? measuredSize(after.across, before.down, plan)
    : measuredSize(before.across, after.down, plan);
  const done = measuredSize(after.across, after.down, plan);
  const lines =
    round.kind === "mitred"
      ? mitreLines(round, making, plan, words)
      : [
          pairTold(round, { strips: first, after: half }, making, plan, words),
          pairTold(round, { strips: second, after: done }, making, plan, words),
        ];
  return [
    ...runLines(round, plan, words),
    ...lines,
    ...(round.fit ? [words.borders.fit(cutWidth(first, plan), done)] : []),
  ];
}

/** Width that the strips of a pair are cut in, as the ruler is set. */
function cutWidth(strips: BorderStrips, plan: Plan): string {
  const [piece] = bagOf(strips, plan).pieces;
  if (piece === undefined) return measured(strips.width, plan);
  return formatCut(Math.min(piece.across, piece.along), plan.ruler);
}

function mitreLines(round: BorderRound, { seam }: Making, plan: Plan, words: Words): string[] {
  const [sides, ends] = round.strips;
  if (sides === undefined || ends === undefined) return [];
  const say = (length: Ticks): string => measured(length, plan);
  const told = [sides, ends].map((strips) => {
    const { letters } = bagOf(strips, plan);
    return letters === "" ? say(strips.cut) : `${say(strips.cut)}, ${letters} (${strips.fabric})`;
  });
  const { across, down } = round.after;
  return [
    words.borders.mitreStrips(
      words.purposes.border(round.name),
      told[0] ?? "",
      told[1] ?? "",
      say(round.extra),
    ),
    words.borders.mitreSew(formatLength(seam, plan.ruler)),
    words.borders.mitreFold(formatLength(seam, plan.ruler)),
    words.borders.mitreTrim(formatLength(seam, plan.ruler), measuredSize(across, down, plan)),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The borders in the order of sewing. */
export function borderLines(making: Making, plan: Plan, words: Words): string[] {
  if (making.borders.length === 0) return [];
  const steps = making.borders.flatMap((round) => roundLines(round, making, plan, words));
  return [
    words.borders.title,
    ...indented([words.borders.measure, words.borders.pin, ...steps.map((line) => `[ ] ${capital(line)}`)]),
    "",
  ];
}
