import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { buyList, cuttingSteps } from "../../src/content/index.ts";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { listAll, type PlanOptions, planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { readStash, takePlan } from "../../src/stash/index.ts";
import { english } from "../../src/words/index.ts";
import { IN, solveHere } from "../support/cut-list-spec.ts";

/** Small quilts whose handout could once not be followed from the first cut to the last row. */
const FILES = new URL("../../fixtures/trials/", import.meta.url);

interface Told {
  plan: Plan;
  steps: string;
  sewing: string;
}

const flat = (text: string): string => text.replace(/\s+/g, " ");

async function told(name: string, kits = 1, until = "", prefer: PlanOptions["prefer"] = null): Promise<Told> {
  const whole = readFileSync(new URL(`${name}.yaml`, FILES), "utf8");
  const text = until === "" ? whole : whole.slice(0, whole.indexOf(until));
  const options = { ...USUAL_OPTIONS, kits, prefer, effort: until === "" ? 60 : 10 };
  const { value } = await planQuilt(text, `${name}.yaml`, options, solveHere);
  if (value === null) throw new Error(`no plan for ${name}`);
  return {
    plan: value,
    steps: flat(cuttingSteps(value, true, english)),
    sewing: flat(makingSteps(value, english)),
  };
}

/** The sewing of a quilt that is listed and not planned: the letters are the same. */
function listed(name: string): { plan: Plan; sewing: string } {
  const text = readFileSync(new URL(`${name}.yaml`, FILES), "utf8");
  const spec = readSpecFile(text, `${name}.yaml`).value;
  const all = spec === null ? null : listAll(spec).value;
  if (spec === null || all === null) throw new Error(`no list for ${name}`);
  const fabrics = all.cutLists.map(({ fabric, pieces }) => ({ ...fabric, pieces }));
  const plan = { name: spec.name, ruler: spec.ruler, top: all.top, making: all.making, fabrics };
  return { plan: plan as unknown as Plan, sewing: flat(makingSteps(plan as unknown as Plan, english)) };
}

/** The sentences in which something is joined, in order, up to a title. */
const between = (text: string, from: string, to: string): string =>
  text.slice(text.indexOf(from), text.indexOf(to, text.indexOf(from)));

// Held the other way round, the same two corners give mirror images: a plain piece has no heads to tell them apart.
test("a plain rectangle that is halved is told with the way it lies", async () => {
  const { steps } = await told("half-rectangles-wide");
  const lies = "as it lies right side up, its long sides upright";
  expect(steps).toContain(
    `once on the diagonal, from the upper left to the lower right corner ${lies}: 2 halves`,
  );
  expect(steps).toContain(
    `once on the diagonal, from the lower left to the upper right corner ${lies}: 2 halves`,
  );
});

describe("triangles of a print, half of the blocks turned", () => {
  let quilt: Told;
  beforeAll(async () => {
    quilt = await told("triangles-turned");
  });

  // derived geometry: four squares on each diagonal, upright on the bolt; a block turned right takes falling ones.
  test("each bag has its own diagonal, told with the piece and once more where it is cut", () => {
    const lines = ["lower left to the upper right", "upper left to the lower right"];
    for (const [i, letter] of ["A", "B"].entries()) {
      expect(quilt.steps).toMatch(
        new RegExp(
          `\\[${letter}\\] 4 6 7/8 in square [^[]*cut once on the diagonal, from the ${lines[i]} corner, heads up`,
        ),
      );
      expect(quilt.steps).toContain(
        `Cut each of the 4 of [${letter}] once on the diagonal, from the ${lines[i]} corner, with the heads up as it lies right side up: 8 halves;`,
      );
    }
    expect(quilt.steps).toContain("right angle upper left and lower right");
    expect(quilt.steps).toContain("right angle upper right and lower left");
    // Plain cloth has no diagonal to mind.
    expect(quilt.steps).toContain("Cut each of the 4 of [C] once on the diagonal: 8 halves.");
  });

  test("blocks are told apart by the heap they take, rows by the turns of their blocks", () => {
    expect(quilt.sewing).toContain("Block A: 8 in all, of 2 kinds: A 1 (make 4) and A 2 (make 4)");
    expect(quilt.sewing).toContain("Block A 1 (make 4): one U1a (heads up).");
    expect(quilt.sewing).toContain("Block A 2 (make 4): one U1b (heads to the left).");
    // A bag is called A too: the block is never called so alone.
    expect(quilt.sewing).toContain(
      "Rows 1 and 2: block A 1, block A 2 turned right, block A 1, block A 2 turned right. Press all seams to the right in row 1, to the left in row 2.",
    );
  });

  test("what the file does not name is said where it is bought", () => {
    const list = buyList(quilt.plan, english);
    expect(list).toContain("Also needed:");
    // derived geometry: 24 1/2 x 12 1/2 in and 4 in more on every side.
    expect(list).toContain("Backing: 32 1/2 x 20 1/2 in or larger");
    expect(list).toContain("Wadding: 32 1/2 x 20 1/2 in or larger");
    expect(list).toContain("Binding for 74 in of edge");
    expect(list).toContain("24 1/2 x 8 1/2 in of any fabric for a sleeve");
  });
});

test("kinds that differ in their heaps only are told by what takes the place of what", () => {
  const { sewing } = listed("triangles-one-way");
  expect(sewing).toContain(
    "Rows 1 and 2: 2 x U1a (heads up). Press the seam to the right in row 1, to the left in row 2.",
  );
  expect(sewing).toContain(
    "Block pin 2 (make 1): sewn as pin 1 with U1b (heads to the left) in place of U1a (heads up), pressed alike.",
  );
  expect(sewing).toContain("Row 1: pin 1, pin 2 turned right. Press the seam to the right.");
  expect(sewing).toContain("Row 2: pin 3 turned left, pin 1. Press the seam to the left.");
  // From the raw edges level on the front to the fold sewn down at the back, in this order.
  const order = ["raw edges level", "Fold the strip straight up", "Join the two tails", "over to the back"];
  const places = order.map((words) => sewing.indexOf(words));
  expect(places).not.toContain(-1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test("flipped corners are told once, corner by corner", () => {
  const { sewing, plan } = listed("geese-one-way");
  expect(sewing).toContain("U1: flying geese finishing 4 x 2 in, stitch-and-flip: make 12");
  expect(sewing).toContain(
    "For each unit take 1 A (hens) and 2 C (sky). Lay A (hens) in front of you, heads up.",
  );
  expect(sewing).toContain(
    "upper left: from the lower left to the upper right corner upper right: from the upper left to the lower right corner",
  );
  expect(sewing.match(/Cut 1\/4 in outside the stitching/g)).toHaveLength(1);
  // The columns are pressed by turns: one name for each way.
  expect(sewing).toContain("Block col 2 (make 1): sewn as col 1, but press its seams downwards.");
  expect(sewing).toContain("Sew together: col 1, col 2, col 1, side by side.");
  expect(plan.making?.kinds.map(({ name, count }) => [name, count])).toEqual([
    ["col 1", 2],
    ["col 2", 1],
  ]);
});

test("a log cabin is a list of logs with sides and sizes; its rows are told by their turns", () => {
  const { sewing } = listed("turned-cabins");
  const list = between(sewing, "Sew on one after another", "Each measures");
  // derived geometry: every log adds an inch across or down.
  const sizes = [...list.matchAll(/: ([\d /]+) x ([\d /]+) in/g)].map(([, a, b]) => `${a} x ${b}`);
  expect(sizes).toHaveLength(20);
  expect(sizes.slice(0, 4)).toEqual(["1 1/2 x 2 1/2", "2 1/2 x 2 1/2", "2 1/2 x 3 1/2", "3 1/2 x 3 1/2"]);
  expect(sizes.at(-1)).toBe("11 1/2 x 11 1/2");
  expect(list.match(/press outwards/gi)).toHaveLength(1);
  expect(sewing).toContain(
    "Rows 1 and 3: cabin, cabin turned right, cabin turned half round, cabin turned left.",
  );
  expect(sewing).toContain(
    "Rows 2 and 4: cabin turned left, cabin turned half round, cabin turned right, cabin.",
  );
});

test("a border's strips are joined, and cut to length when the top is measured", async () => {
  const { steps, sewing } = await told("border-in-one-run");
  expect(sewing).toMatch(/Sew the \d strips [A-Z] \(edge\) end to end/);
  expect(sewing).toMatch(
    /Border 1, left and right: measure the top from top to bottom through its middle \(about 45 1\/2 in\)\. Cut two lengths of that from the run of [A-Z] \(edge\)\./,
  );
  // A length to cut now would compete with the measured one.
  expect(steps).not.toContain("lengths of 45 1/2 in");
  expect(steps).not.toContain("lengths of 44 1/2 in");
  expect(steps).toContain("cut to length when the top is measured");
  // Rows of one patch are told by its bag.
  expect(sewing).toContain("8 x B (charms). Press all seams to the right in rows 1, 3, 5, 7 and 9");
});

test("seams inside a unit are pressed as its blocks need it, in the order in which it is sewn", () => {
  const { sewing, plan } = listed("nine-patches-on-point");
  expect(sewing).toContain(
    "20 of them, for nine 1, so that they nest later: before you join the columns the seams in columns 1 and 3 outwards and column 2 inwards",
  );
  expect(sewing).toContain(
    "12 of them, for nine 2, so that they nest later: before you join the columns the seams in columns 1 and 3 inwards and column 2 outwards",
  );
  expect(sewing).toContain("Row 2: side triangle, nine 1, nine 2, nine 1, side triangle.");
  // Every block of the rows is one of the kinds told, and none twice.
  const kinds = plan.making?.kinds ?? [];
  const placed = plan.making?.kindOf.filter((kind) => kind !== null) ?? [];
  for (const [i, { count }] of kinds.entries())
    expect(placed.filter((kind) => kind === i)).toHaveLength(count);
  // Sets are numbered: a letter is a bag.
  expect(sewing).toContain("a segment of set 1, a segment of set 2 and a segment of set 1");
});

test("lengthwise strips are told by the length they come out of", async () => {
  const { steps } = await told("lengthwise-handles", 1, "  - name: gingham");
  const canvas = steps.slice(steps.indexOf("usable width 59 in"));
  const bands = [...canvas.matchAll(/cut (\d+) strips? 4 in wide lengthwise/g)];
  expect(bands.length).toBeGreaterThan(0);
  for (const { index } of bands) {
    const before = canvas.slice(0, index);
    // Said of lengths that were cut off just before.
    expect(before.lastIndexOf("Cut off")).toBeGreaterThan(before.lastIndexOf(". Cut "));
  }
  // 59 in of canvas hold 14 strips of 4 in: no length gives more.
  for (const [, lengths, told] of canvas.matchAll(
    /Cut off (\d+|one) lengths? of [^:]*:(.*?)(?= \d+\. | Left)/g,
  )) {
    const count = lengths === "one" ? 1 : Number(lengths);
    const strips = [...(told ?? "").matchAll(/cut (\d+) strips? 4 in wide lengthwise/g)];
    expect(strips.reduce((sum, [, each]) => sum + Number(each), 0)).toBeLessThanOrEqual(14 * count);
  }
  // Every strip has its number in the diagram and is told once; 24 handles come off lengthwise.
  const before = canvas.slice(0, canvas.indexOf("Left over"));
  const numbers = [
    ...before.matchAll(/(?:Strips?|strips) ((?:\d+(?: to \d+)?(?:, | and )?)+)(?::| of the diagram)/g),
  ]
    .filter(({ index }) => before.slice(index - 2, index) !== "! ")
    .flatMap(([, list = ""]) => [...list.matchAll(/(\d+)(?: to (\d+))?/g)])
    .flatMap(([, first, last = first]) =>
      Array.from({ length: Number(last) - Number(first) + 1 }, (_, i) => Number(first) + i),
    );
  expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: numbers.length }, (_, i) => i + 1));
  const handles = [...before.matchAll(/(?:subcut (\d+) rectangles 4 x 24 in|keep (\d+) whole) \[B\]/g)];
  expect(handles.reduce((sum, [, cut, kept]) => sum + Number(cut ?? kept), 0)).toBe(24);
});

test("how the cuts are made is said once, by kind of stock; a class's sewing is for one", async () => {
  const { steps, sewing } = await told("geese-one-way", 3);
  expect(steps).toContain("Off the bolt: fold selvage to selvage");
  expect(steps).toContain("Square the end again after every four strips");
  expect(steps).toContain("Cut both selvages off a strip before you cut it up");
  expect(steps.match(/fold selvage to selvage/g)).toHaveLength(1);
  expect(steps).not.toContain("Lengthwise strips:");
  expect(sewing).toMatch(/^3 × Gg dir: sewing, for one of 3 /);
});

describe("leftovers as cut", () => {
  /** `3 1/2` in inches. */
  const inches = (text: string): number =>
    text
      .split(" ")
      .reduce((sum, part) => sum + part.split("/").reduce((n, d, i) => (i === 0 ? +d : n / +d), 0), 0);

  // Followed from the paper alone: every strip is 42 in long, and a trim leaves the rest of the strip as low as it says.
  test("what a trimmed strip leaves is as wide as it was trimmed to, in the list, the plan and the drawer", async () => {
    const { plan, steps } = await told("leftovers-as-cut", 1, "", "sparing");
    const from = /Cut \d+ strips? ([\d /]+) in x WOF:((?:(?! \d+\. ).)*)/g;
    const ends: string[] = [];
    for (const [, width = "", each = ""] of steps.matchAll(from))
      for (const [, numbers = "", cuts = ""] of each.matchAll(/Strips? ([\d ,toand]+): ([^.]*)\./g)) {
        if (cuts.includes("keep")) continue;
        const [first = 0, last = first] = [...numbers.matchAll(/\d+/g)].map(Number);
        const many = last - first + 1;
        let left = 42;
        let high = inches(width);
        for (const cut of cuts.split(";")) {
          const trim = /trim (?:the rest )?to ([\d /]+) in/.exec(cut);
          if (trim !== null) high = inches(trim[1] ?? "");
          for (const [, count = "", a = "", b = ""] of cut.matchAll(
            /(\d+) rectangles? ([\d /]+) x ([\d /]+) in/g,
          ))
            left -= (+count / many) * (inches(a) === high ? inches(b) : inches(a));
        }
        if (left >= 2 && high >= 2) for (let i = 0; i < many; i++) ends.push(`${left} x ${high}`);
      }
    const dusk = plan.fabrics[0];
    const strips = (dusk?.leftovers ?? []).filter(({ cause }) => cause === "strip-end");
    const listed = strips.flatMap(({ across, along, count }) =>
      Array.from({ length: count }, () => `${across / IN} x ${along / IN}`),
    );
    expect(ends.length).toBeGreaterThan(0);
    expect(ends.sort()).toEqual(listed.sort());
    expect(steps).toContain("6 1/2 x 2 1/2 in (strip ends)");
    const empty = readStash("fabric,width,length,pieces,note\n", "drawer.csv", "in").value;
    const kept =
      empty === null ? [] : (takePlan(empty, plan, "drawer.csv", "left from it").value?.kept ?? []);
    expect(kept.map(({ across, along }) => `${across / IN} x ${along / IN}`).sort()).toEqual(
      [...new Set([...listed, "42 x 3.5"])].sort(),
    );
  });
});
