import { formatLength, type Ticks } from "../../length/index.ts";
import type { BorderRound, BorderStrips, Making } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { borderWords } from "./border-words.ts";
import { indented, measured, measuredSize } from "./making-lines.ts";

/** One pair of strips: how long, how it is pieced, what it makes of the top. */
function stripsTold(round: BorderRound, strips: BorderStrips, after: string, plan: Plan): string {
  const say = (length: Ticks): string => measured(length, plan);
  const { sides, sewn, cut, width, blocks, alike, cornerstones } = strips;
  const where = borderWords.sides[sides[0] ?? "left"];
  const what = round.pieced
    ? borderWords.piecedStrips(blocks, say(width), say(sewn)) + (alike ? "" : borderWords.unlike(where))
    : borderWords.strips(say(width), say(cut));
  const over = round.extra > 0 && cut > sewn ? borderWords.trim(say(cut - sewn), say(sewn)) : "";
  const corners = cornerstones ? borderWords.cornerstones : "";
  return borderWords.step(round.name, where, what, over, corners, after);
}

function roundLines(round: BorderRound, making: Making, plan: Plan): string[] {
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
      ? mitreLines(round, making, plan)
      : [stripsTold(round, first, half, plan), stripsTold(round, second, done, plan)];
  return round.fit ? [...lines, borderWords.fit(done)] : lines;
}

function mitreLines(round: BorderRound, { seam }: Making, plan: Plan): string[] {
  const [sides, ends] = round.strips;
  if (sides === undefined || ends === undefined) return [];
  const say = (length: Ticks): string => measured(length, plan);
  const lengths = [sides, ends].map(({ cut }) => say(cut));
  const { across, down } = round.after;
  return [
    borderWords.mitreStrips(
      round.name,
      say(sides.width),
      lengths[0] ?? "",
      lengths[1] ?? "",
      say(round.extra),
    ),
    borderWords.mitreSew(formatLength(seam, plan.ruler)),
    borderWords.mitreFold(formatLength(seam, plan.ruler)),
    borderWords.mitreTrim(formatLength(seam, plan.ruler), measuredSize(across, down, plan)),
  ];
}

/** The borders in the order of sewing. */
export function borderLines(making: Making, plan: Plan): string[] {
  if (making.borders.length === 0) return [];
  const first = making.borders[0]?.before ?? { across: 0, down: 0 };
  const pieced = making.joins.filter(
    ({ stage, from }) => stage === "border" && from.every((part) => part === "border"),
  ).length;
  const steps = making.borders.flatMap((round) => roundLines(round, making, plan));
  return [
    borderWords.title,
    ...indented([
      borderWords.measure(measured(first.across, plan), measured(first.down, plan)),
      borderWords.pin,
      ...(pieced > 0 ? [borderWords.piecedFirst] : []),
      ...steps.map((line) => `[ ] ${line}`),
    ]),
    "",
  ];
}
