import fc from "fast-check";
import { fromInteger, type Rational } from "../../../../src/length/rational.ts";
import { plainDesign } from "../../../../src/quilt/units/design.ts";
import type { Corner, HowMade, UnitDesign } from "../../../../src/quilt/units/types.ts";

/** Finished lengths from 1 to 12 in, in sixteenths or half millimetres, in ticks. */
const lengths = fc.oneof(
  fc.integer({ min: 16, max: 192 }).map((n) => n * 1016),
  fc.integer({ min: 50, max: 600 }).map((n) => n * 320),
);

/** 1/4 in, 3/8 in, 6 mm, 7 mm and 0.75 cm; sizes to the tick, an eighth, a sixteenth or a quarter centimetre. */
export const ways: fc.Arbitrary<HowMade> = fc.record({
  seam: fc.constantFrom(4064, 6096, 3840, 4480, 4800).map(fromInteger),
  mark: fc.constantFrom(1, 2032, 1016, 1600),
  rounding: fc.constantFrom("exact", "trade"),
  oversize: fc.constantFrom(0, 2032).map(fromInteger),
});

/** Exact to the tick, nothing to trim. */
export const exactly: fc.Arbitrary<HowMade> = ways.map((how) => ({
  ...how,
  mark: 1,
  rounding: "exact" as const,
  oversize: fromInteger(0),
}));

const CORNERS: readonly Corner[] = ["top-left", "top-right", "bottom-right", "bottom-left"];

function plainOf(across: number, along: number): UnitDesign {
  return plainDesign(fromInteger(across), fromInteger(along));
}

const point = (x: number, y: number): { x: Rational; y: Rational } => ({
  x: fromInteger(x),
  y: fromInteger(y),
});

/** A rectangle cut into four by a point inside and one on each side. */
const drawn = fc
  .tuple(lengths, lengths, fc.array(fc.integer({ min: 15, max: 85 }), { minLength: 6, maxLength: 6 }))
  .map(([w, h, parts]): UnitDesign => {
    const [mx = 0, my = 0, top = 0, right = 0, bottom = 0, left = 0] = parts;
    const share = (whole: number, part: number): number => Math.floor((whole * part) / 100);
    const m = point(share(w, mx), share(h, my));
    const [t, r, b, l] = [
      point(share(w, top), 0),
      point(w, share(h, right)),
      point(share(w, bottom), h),
      point(0, share(h, left)),
    ];
    const [tl, tr, br, bl] = [point(0, 0), point(w, 0), point(w, h), point(0, h)];
    const patch = (spot: string, corners: { x: Rational; y: Rational }[]) => ({
      role: "patch",
      spot,
      corners,
    });
    return {
      ...plainOf(w, h),
      patches: [
        patch("one", [tl, t, m, l]),
        patch("two", [t, tr, r, m]),
        // written the other way round on purpose
        patch("three", [b, br, r, m]),
        patch("four", [l, m, b, bl]),
      ],
    };
  });

const square = lengths.map((side) => plainOf(side, side));
const oblong = fc.tuple(lengths, lengths).map(([across, along]) => plainOf(across, along));

/** Designs a kind accepts, with the fields it reads. */
export function designsOf(kind: string): fc.Arbitrary<UnitDesign> {
  switch (kind) {
    case "flying geese":
      return lengths.map((height) => plainOf(2 * height, height));
    case "rectangle":
    case "four-patch":
    case "nine-patch":
      return oblong;
    case "sixty-degree triangles":
      return fc
        .tuple(lengths, fc.integer({ min: 30, max: 800 }))
        .map(([h, part]) => plainOf(Math.floor((h * part) / 100), h));
    case "half-rectangle triangle":
      return fc
        .tuple(oblong, fc.constantFrom("rising" as const, "falling" as const))
        .map(([design, leaning]) => ({ ...design, leaning }));
    case "snowball":
      return fc
        .tuple(oblong, fc.subarray([...CORNERS], { minLength: 1 }))
        .map(([design, corners]) => ({ ...design, corners }));
    case "rails":
      return fc.tuple(lengths, fc.array(lengths, { minLength: 2, maxLength: 6 })).map(([across, strips]) => ({
        ...plainOf(
          across,
          strips.reduce((sum, strip) => sum + strip, 0),
        ),
        strips: strips.map(fromInteger),
      }));
    case "log cabin":
    case "courthouse steps":
      return fc
        .tuple(square, fc.integer({ min: 1, max: 6 }))
        .map(([design, count]) => ({ ...design, count }));
    case "drawn patches":
      return drawn;
    default:
      return square;
  }
}
