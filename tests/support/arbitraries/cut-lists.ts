import fc from "fast-check";
import type { FixedPiece } from "../../../src/plan/pose-problem.ts";
import type { CutListSpec, FabricSpec, FixedClothSpec, PieceSpec } from "../../../src/spec/types.ts";
import { cutListSpec, fabric, IN, piece } from "../cut-list-spec.ts";

/** Sizes as they come out of blocks: whole eighths of an inch, from slivers to big squares. */
const size = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 8, max: 80 }).map((eighths) => eighths / 8) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 160 }).map((eighths) => eighths / 8) },
);

const ordinary: fc.Arbitrary<PieceSpec> = fc
  .record({
    across: size,
    along: size,
    count: fc.integer({ min: 1, max: 30 }),
    turn: fc.constantFrom("free", "free", "fixed"),
    square: fc.boolean(),
  })
  .map(({ across, along, count, turn, square }) =>
    piece("", across, square ? across : along, count, { turn: turn === "fixed" ? "fixed" : "free" }),
  );

const strips: fc.Arbitrary<PieceSpec> = fc
  .record({ along: size, count: fc.integer({ min: 1, max: 6 }) })
  .map(({ along, count }) => piece("strip", 0, along, count, { fullWidth: true, turn: "fixed" }));

const border: fc.Arbitrary<PieceSpec> = fc
  .record({
    across: fc.integer({ min: 8, max: 64 }).map((eighths) => eighths / 8),
    along: fc.integer({ min: 44, max: 100 }),
    count: fc.integer({ min: 1, max: 4 }),
    cut: fc.constantFrom("either", "strips"),
    join: fc.constantFrom("no", "straight", "diagonal"),
    turn: fc.constantFrom("free", "fixed"),
  })
  .map(({ across, along, count, ...how }) =>
    piece("border", across, along, count, how as Partial<PieceSpec>),
  );

const eighths = (min: number, max: number) => fc.integer({ min, max }).map((n) => (n * IN) / 8);

/** Mostly none. */
function few<T>(one: fc.Arbitrary<T>): fc.Arbitrary<T[]> {
  return fc.oneof(
    { weight: 2, arbitrary: fc.constant<T[]>([]) },
    { weight: 1, arbitrary: fc.array(one, { minLength: 1, maxLength: 2 }) },
  );
}

/** Fat quarters, precut squares and strips, scraps, some with edges to trim; half of them of the whole width. */
const fixedCloth: fc.Arbitrary<FixedClothSpec> = fc
  .record({
    name: fc.constantFrom("fat quarter", "10 in square", "2 1/2 in strip", "piece"),
    across: eighths(40, 176),
    along: eighths(12, 160),
    fullWidth: fc.boolean(),
    strip: fc.boolean(),
    trim: fc.constantFrom(0, 0, IN / 8, IN / 4),
    count: fc.integer({ min: 1, max: 3 }),
    price: fc.constant(null),
  })
  .map((one) => ({ ...one, strip: one.strip && one.along < one.across, currency: "" }));

const cloth: fc.Arbitrary<FabricSpec> = fc
  .record({
    pieces: fc.array(
      fc.oneof(
        { weight: 8, arbitrary: ordinary },
        { weight: 1, arbitrary: strips },
        { weight: 1, arbitrary: border },
      ),
      { minLength: 1, maxLength: 5 },
    ),
    width: fc.constantFrom(42, 44, 45, 60),
    selvage: fc.constantFrom(0, 0.5, 1),
    shrinkAcross: fc.constantFrom(0, 0, 20, 37),
    shrinkAlong: fc.constantFrom(0, 0, 30, 51),
    straighten: fc.constantFrom(0, 0.25, 0.5),
    spare: fc.constantFrom(0, 0, 3),
    metres: fc.boolean(),
    price: fc.option(fc.integer({ min: 0, max: 3999 })),
    have: few(fixedCloth),
    readyCut: few(fixedCloth),
  })
  .map(({ pieces, width, selvage, straighten, spare, metres, price, readyCut, ...shrink }) =>
    fabric("cloth", pieces, {
      ...shrink,
      width: width * IN,
      selvage: selvage * IN,
      straighten: straighten * IN,
      spare: spare * IN,
      sold: metres
        ? { unit: "m", step: 64_000, least: 128_000 }
        : { unit: "yd", step: 4.5 * IN, least: 9 * IN },
      price: price === null ? null : { hundredths: price, per: metres ? "m" : "yd", currency: "" },
      // What is sold ready cut is weighed by its price, so that it needs one.
      readyCut: price === null ? [] : readyCut.map((one) => ({ ...one, price: Math.ceil(price / 3) })),
    }),
  );

/** Small cut lists of one fabric in every way a file can ask, most of them sensible. */
export const cutLists: fc.Arbitrary<CutListSpec> = fc
  .record({
    fabric: cloth,
    style: fc.constantFrom("strips-2", "strips-2", "strips-3"),
    prefer: fc.constantFrom("sparing", "simple"),
    folded: fc.boolean(),
    keepFrom: fc.constantFrom(2, 4),
  })
  .map(({ fabric: one, style, prefer, folded, keepFrom }) =>
    cutListSpec([one], {
      style: style === "strips-2" ? "strips-2" : "strips-3",
      prefer: prefer === "simple" ? "simple" : "sparing",
      folded,
      keepFrom: keepFrom * IN,
    }),
  );

/** Now and then some fat quarters or scraps to hand. */
export const clothToHand: fc.Arbitrary<readonly FixedPiece[]> = fc.oneof(
  { weight: 7, arbitrary: fc.constant([]) },
  {
    weight: 1,
    arbitrary: fc.array(
      fc.record({
        name: fc.constantFrom("fat quarter", "scrap"),
        across: fc.integer({ min: 40, max: 176 }).map((eighths) => (eighths * IN) / 8),
        along: fc.integer({ min: 40, max: 176 }).map((eighths) => (eighths * IN) / 8),
        available: fc.integer({ min: 1, max: 4 }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  },
);
