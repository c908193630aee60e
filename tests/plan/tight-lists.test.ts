import { describe, expect, test } from "vitest";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { Dice } from "../engine/exact/random-problems.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { firstOf } from "../support/sweep.ts";

/*
 * Lists made by cutting up one whole piece of cloth, strips first, then across them, so that it holds them with
 * nothing, or next to nothing, to spare. Whether the search finds that again is its own affair; what it may never say is
 * that it cannot be done.
 */

/** A length cut at random marks of a quarter inch into parts of at least `least`; in quarter inches. */
function cutUp(dice: Dice, length: number, least: number, most: number): number[] {
  const parts: number[] = [];
  let left = length;
  while (left >= 2 * least && parts.length < 8) {
    const part = dice.between(least, Math.min(most, left - least));
    parts.push(part);
    left -= part;
  }
  return [...parts, left];
}

/** Every third list comes from a larger piece, of four times as many parts. */
const clothOf = (seed: number): [across: number, along: number] => (seed % 3 === 0 ? [42, 36] : [21, 18]);

/** Lines of a cut list that comes out of the piece of cloth of its seed. */
function tightList(seed: number): string[] {
  const dice = new Dice(seed);
  const [across, along] = clothOf(seed);
  const counts = new Map<string, number>();
  for (const height of cutUp(dice, 4 * along, 6, 28)) {
    for (const width of cutUp(dice, 4 * across, 6, 40)) {
      // Now and then trimmed, as a strip may hold pieces lower than itself.
      const low = dice.chance(1, 4) ? Math.max(4, height - dice.between(1, 6)) : height;
      const key = `${width / 4} x ${low / 4}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return [...counts].map(([size, count], i) => `      - p${i + 1} ${size}, ${count}, turn fixed`);
}

const tightFabric = (seed: number, name: string): string => `  - name: ${name}
    width: 43 in
    selvage: 1/2 in
    yardage: no
    have:
      - ${clothOf(seed).join(" x ")} in, 1, usable size
    pieces:
${tightList(seed).join("\n")}
`;

const file = (fabrics: readonly string[]): string => `name: Tight\nunits: in\nfabrics:\n${fabrics.join("")}`;

/** Whether there is a plan, and the codes of what is told besides. */
async function outcome(text: string): Promise<{ planned: boolean; codes: string[] }> {
  const { value, diagnostics } = await planQuilt(text, "tight.yaml", USUAL_OPTIONS, solveHere);
  return { planned: value !== null, codes: diagnostics.map(({ code }) => code) };
}

const SEEDS = Array.from({ length: 25 }, (_, i) => 700 + i);

/** A square or two of yardage: nothing hard, but a search each. */
const easy = Array.from(
  { length: 9 },
  (_, i) => `  - name: easy ${i + 1}\n    pieces: ["sq ${i + 2} square, ${3 * i + 2}"]\n`,
);

describe("lists that one piece of cloth holds by construction", () => {
  test.each(firstOf(SEEDS, 2))("seed %i is never called impossible", async (seed) => {
    const alone = await outcome(file([tightFabric(seed, "Tight")]));
    expect(alone.codes).not.toContain("STOCK-SHORT");
    if (!alone.planned) expect(alone.codes).toContain("NONE-FOUND");
  });

  test.each(firstOf(SEEDS, 1))("seed %i has the same answer among nine other fabrics", async (seed) => {
    const tight = tightFabric(seed, "Tight");
    expect(await outcome(file([...easy.slice(0, 4), tight, ...easy.slice(4)]))).toEqual(
      await outcome(file([tight])),
    );
  });
});
