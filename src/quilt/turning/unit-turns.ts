import { fromInteger, type Rational } from "../../length/rational.ts";
import { exactOfRational, exactOfSurd, point, turnPoint } from "../exact.ts";
import { UNIT } from "../terms/names.ts";
import type { Exact, Point } from "../types.ts";
import { plainDesign } from "../units/design.ts";
import { findUnitKind, UNIT_KINDS } from "../units/registry.ts";
import type { UnitDesign, UnitKind } from "../units/types.ts";

/** One unit as it stands at rest and in its other turns, to be drawn. Plain data. */
export interface UnitTurns {
  name: string;
  /** Its parts in the order in which a file gives their fabrics. */
  parts: string[];
  turns: {
    /** Degrees clockwise from rest. */
    turn: 0 | 90 | 180 | 270;
    /** How the turn is written behind a code in the drawing of a block; empty at rest. */
    mark: string;
    across: Exact;
    down: Exact;
    patches: { part: string; outline: Point[] }[];
  }[];
}

const TURNS = [
  { turn: 0, mark: "" },
  { turn: 90, mark: ">" },
  { turn: 180, mark: "v" },
  { turn: 270, mark: "<" },
] as const;

/** Finished shapes at which kinds look as makers know them, in inches; the others are square. */
const SHAPES: Readonly<Record<string, readonly [number, number]>> = {
  rectangle: [4, 2],
  [UNIT.flyingGeese]: [4, 2],
  [UNIT.halfRectangleTriangle]: [2, 4],
  [UNIT.sixtyDegreeTriangles]: [6, 2],
};

const INCH = 16256;

/** What a design needs to be drawn that a file would say. */
function shown(kind: UnitKind): UnitDesign {
  const [across, down] = SHAPES[kind.name] ?? [4, 4];
  const inches = (n: number): Rational => fromInteger(n * INCH);
  const plain = plainDesign(inches(across), inches(down));
  const half = across / 2;
  const corners = (...all: (readonly [number, number])[]) =>
    all.map(([x, y]) => ({ x: inches(x), y: inches(y) }));
  return {
    ...plain,
    count: kind.reads.includes("centre") ? 2 : plain.count,
    patches: kind.reads.includes("patches")
      ? [
          {
            role: "first",
            spot: "first 1",
            corners: corners([0, 0], [across, 0], [half, half], [half, down], [0, down]),
          },
          {
            role: "second",
            spot: "second 2",
            corners: corners([across, 0], [across, down], [half, down], [half, half]),
          },
        ]
      : plain.patches,
  };
}

/** Every kind of unit in its four turns; those of one kind alone when it is named. */
export function unitTurns(kindName: string | null = null): UnitTurns[] {
  const kinds = kindName === null ? UNIT_KINDS : [findUnitKind(kindName)].filter((kind) => kind !== null);
  return kinds.map((kind) => {
    const design = shown(kind);
    const [across, down] = [exactOfRational(design.across), exactOfRational(design.along)];
    const patches = kind.patches(design);
    return {
      name: kind.name,
      parts: [...kind.roles(design)],
      turns: TURNS.map(({ turn, mark }) => ({
        turn,
        mark,
        across: turn % 180 === 0 ? across : down,
        down: turn % 180 === 0 ? down : across,
        patches: patches.map(({ role, outline }) => ({
          part: role,
          outline: outline.map(({ x, y }) =>
            turnPoint(point(exactOfSurd(x), exactOfSurd(y)), turn, across, down),
          ),
        })),
      })),
    };
  });
}
