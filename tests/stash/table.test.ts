import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/types.ts";
import { removeCloth } from "../../src/stash/change-stash.ts";
import {
  addCloth,
  clothToHand,
  emptyStash,
  printStash,
  readCloth,
  readStash,
  type Stash,
  takePlan,
} from "../../src/stash/index.ts";
import { said } from "../support/in-words.ts";

const IN = 16256;
const CM = 6400;

function read(text: string, bare: "in" | "cm" = "in") {
  const { value, diagnostics } = readStash(text, "drawer.csv", bare);
  const cloths = value?.rows.flatMap(({ cloth }) => (cloth === null ? [] : [cloth])) ?? [];
  return { value, cloths, told: diagnostics.map(({ code, at }) => `${code} ${at?.line ?? ""}`.trim()) };
}

function stashOf(text: string): Stash {
  const { value } = read(text);
  if (value === null) throw new Error("no table");
  return value;
}

describe("a table as makers keep it", () => {
  test("lengths are read as everywhere: fractions, typeset ones, marks, centimetres with a comma", () => {
    const { cloths, told } = read(
      [
        "fabric,width,length,how many,note",
        'Sky,21",18",3,drawer',
        "Sky,2½ in,1 3/8 yd,1,",
        'Moss,"55,5 cm",50 cm,2,"blue, ""good"" one"',
        "Moss,fat quarter,,4,",
        "",
      ].join("\n"),
    );
    expect(told).toEqual([]);
    expect(cloths.map(({ across, along, count }) => [across, along, count])).toEqual([
      [21 * IN, 18 * IN, 3],
      [2.5 * IN, 1.375 * 36 * IN, 1],
      [55.5 * CM, 50 * CM, 2],
      [21 * IN, 18 * IN, 4],
    ]);
    expect(cloths[2]?.note).toBe('blue, "good" one');
  });

  test("a spreadsheet's own: byte order mark, CRLF, semicolons, columns moved and added, measures in headings", () => {
    const text =
      "\ufeffshelf;How many;Length (cm);Fabric;Width (cm);bought\r\nA;2;50;Sky;55,5;2019\r\n;;;;;\r\nB;;50,00;Moss;110;\r\n";
    const { value, cloths, told } = read(text);
    expect(told).toEqual([]);
    expect(cloths).toEqual([
      { fabric: "Sky", across: 55.5 * CM, along: 50 * CM, count: 2, note: "" },
      { fabric: "Moss", across: 110 * CM, along: 50 * CM, count: 1, note: "" },
    ]);
    const more = addCloth(
      value!,
      { fabric: "Rust", across: 10 * CM, along: 12.5 * CM, count: 3, note: "" },
      "cm",
    );
    expect(printStash(more)).toBe(`${text};3;12,5;Rust;10;\r\n`);
    const fewer = removeCloth(value!, {
      fabric: "sky",
      across: 55.5 * CM,
      along: 50 * CM,
      count: 1,
      note: "",
    });
    expect(printStash(fewer!)).toBe(text.replace("A;2;", "A;1;"));
  });

  test("rows that cannot be read are named by line and kept to the letter", () => {
    const text =
      'fabric,width,length,how many\n"two\nlines",21 in,18 in,1\nSky,1-Feb,18 in,1\nSky,,18 in,1\n,21 in,18 in,1\nSky,21 in,18 in,a few\nSky,-3 in,18 in,1\nSky,0,18 in,1\nSky,5 in,5 in,9';
    const { value, cloths, told } = read(text);
    expect(told).toEqual([4, 5, 6, 7, 8, 9].map((line) => `STASH-ROW-UNREADABLE ${line}`));
    expect(cloths.map(({ count }) => count)).toEqual([1, 9]);
    const more = addCloth(value!, { fabric: "Moss", across: IN, along: IN, count: 1, note: "lost" }, "in");
    expect(printStash(more)).toBe(`${text}\nMoss,1 in,1 in,1\n`);
  });

  test("numbers without a measure are read as the measure given, and that is said", () => {
    expect(read("fabric,width,length\nSky,21,18\n").told).toEqual(["STASH-MEASURE-TAKEN"]);
    expect(read("fabric,width,length\nSky,55,50\n", "cm").cloths[0]?.across).toBe(55 * CM);
    // One measure in a row holds for both.
    expect(read("fabric,width,length\nSky,55,50 cm\n").cloths[0]?.across).toBe(55 * CM);
    expect(read("fabric,width,length\nSky,55,50 cm\n").told).toEqual([]);
  });

  test("a bare number beside metres is in centimetres, beside yards in inches; a heading holds for its neighbour", () => {
    const sizes = (text: string) => read(text).cloths.map(({ across, along }) => [across, along]);
    expect(sizes("fabric;width;length\nMoss;110;1,5 m\nMoss;44;2 yd\n")).toEqual([
      [110 * CM, 150 * CM],
      [44 * IN, 72 * IN],
    ]);
    expect(sizes("fabric,width (cm),length\nMoss,55,50\n")).toEqual([[55 * CM, 50 * CM]]);
    expect(read("fabric;width;length\nMoss;110;1,5 m\n").told).toEqual([]);
  });

  test("rewritten by a spreadsheet: a line with its sign, empty columns at the end, counts with decimals", () => {
    const text =
      '\ufeffsep=;\r\nFabric;Width;Length;How many;Note;;\r\nSky;"53,5 cm";21½ in;3,0;"blue ""one""; left";;\r\n' +
      "Old;big;18 in;1;keep me;;\r\nChalk;2 1/2 in strips;;4;;;\r\nChalk;10 in squares;;12;;;\r\n;;;;;;\r\n";
    const { value, cloths, told } = read(text);
    expect(told).toEqual([4, 5].map((line) => `STASH-ROW-UNREADABLE ${line}`));
    expect(cloths).toEqual([
      { fabric: "Sky", across: 53.5 * CM, along: 21.5 * IN, count: 3, note: 'blue "one"; left' },
      { fabric: "Chalk", across: 10 * IN, along: 10 * IN, count: 12, note: "" },
    ]);
    expect(printStash(value!)).toBe(text);
    const cloth = { fabric: "Moss", across: IN, along: IN, count: 2, note: "" };
    expect(printStash(addCloth(value!, cloth, "in"))).toBe(`${text}Moss;1 in;1 in;2;;;\r\n`);
  });

  test("what is no table is refused whole", () => {
    expect(read("").told).toEqual(["STASH-NO-HEADINGS 1"]);
    expect(read("Sky,21,18,3\n").told).toEqual(["STASH-NO-HEADINGS 1"]);
    expect(read('fabric,width,length\n"Sky,21 in,18 in\nMoss,1 in,1 in\n').told[0]).toMatch(
      /^STASH-UNCLOSED/,
    );
  });

  test("law: printing what was read gives the same letters, whatever they are", () => {
    const cell = fc.oneof(
      fc.constantFrom(
        "Sky",
        "21 in",
        "18 1/2 in",
        "3",
        "",
        '"a, b"',
        '"x ""y"""',
        "½",
        "ü\u0301",
        '"two\r\nlines"',
      ),
      fc.string({ maxLength: 6 }),
    );
    const end = fc.constantFrom("\n", "\r\n", "\r");
    const line = fc
      .tuple(fc.array(cell, { maxLength: 6 }), end)
      .map(([cells, sign]) => cells.join(",") + sign);
    fc.assert(
      fc.property(fc.constantFrom("", "\ufeff"), fc.array(line, { maxLength: 8 }), (mark, lines) => {
        const text = `${mark}fabric,width,length,how many,note\n${lines.join("")}`;
        const { value } = readStash(text, "drawer.csv", "in");
        if (value !== null) expect(printStash(value)).toBe(text);
      }),
      { numRuns: 400, seed: 7 },
    );
  });

  test("law: what is added is read back as it was, and no other row changes", () => {
    fc.assert(
      fc.property(
        fc
          .string({ minLength: 1, maxLength: 8 })
          .filter((name) => /^[^\p{Cc}]+$/u.test(name) && name.trim() === name),
        // Lengths a ruler has marks for: 1/128 in or 0.05 mm.
        fc.tuple(fc.constantFrom(127, 32), fc.integer({ min: 1, max: 50_000 })).map(([mark, n]) => mark * n),
        fc.tuple(fc.constantFrom(127, 32), fc.integer({ min: 1, max: 50_000 })).map(([mark, n]) => mark * n),
        fc.constantFrom("fabric,width,length,how many\n", "fabric;length (in);width (cm);how many\r\n"),
        (fabric, across, along, head) => {
          const before = stashOf(`${head}Sky,1,2,3\n`);
          const cloth = { fabric, across, along, count: 2, note: "" };
          const text = printStash(addCloth(before, cloth, "in"));
          expect(text.startsWith(printStash(before))).toBe(true);
          expect(read(text).cloths.at(-1)).toEqual(cloth);
        },
      ),
      { numRuns: 300, seed: 11 },
    );
  });
});

describe("cloth added and taken", () => {
  const table = "fabric,width,length,how many\nSky,21 in,18 in,2\nsky,21 in,18 in,1\nSky,10 in,10 in,1\n";

  test("like cloth is counted with the row that has it", () => {
    const more = addCloth(
      stashOf(table),
      { fabric: " SKY", across: 10 * IN, along: 10 * IN, count: 4, note: "" },
      "in",
    );
    expect(printStash(more)).toBe(table.replace("10 in,1\n", "10 in,5\n"));
  });

  test("it is taken from the rows in order; more than there is cannot be", () => {
    const cloth = { fabric: "Sky", across: 21 * IN, along: 18 * IN, count: 3, note: "" };
    expect(printStash(removeCloth(stashOf(table), cloth)!)).toBe(
      "fabric,width,length,how many\nSky,10 in,10 in,1\n",
    );
    expect(removeCloth(stashOf(table), { ...cloth, count: 4 })).toBeNull();
  });

  test("a table that does not count has a row for each", () => {
    const more = addCloth(
      stashOf("fabric,width,length"),
      { fabric: "Sky", across: IN, along: IN, count: 2, note: "" },
      "in",
    );
    expect(printStash(more)).toBe("fabric,width,length\nSky,1 in,1 in\nSky,1 in,1 in\n");
  });

  test("a new table has the headings", () => {
    const cloth = readCloth("Night sea", "fat quarter", 3, "", "in").value!;
    expect(printStash(addCloth(emptyStash(), cloth, "in"))).toBe(
      "fabric,width,length,how many,note\nNight sea,21 in,18 in,3,\n",
    );
    expect(readCloth("Sky", "21", 1, "", "in").diagnostics[0]?.code).toBe("STASH-CLOTH-UNREADABLE");
    expect(readCloth("Sky", "1 x 1 in", 1.5, "", "in").value).toBeNull();
  });

  test("cloth cut off the bolt is the whole usable width long, and that is told", () => {
    for (const [size, across, along] of [
      ["1/2 yd", 42 * IN, 18 * IN],
      ["WOF x 20 in", 42 * IN, 20 * IN],
      ["50 cm", 107 * CM, 50 * CM],
      ["wof x 0,5 m", 107 * CM, 50 * CM],
    ] as const) {
      const { value, diagnostics } = readCloth("Sky", size, 1, "", "in");
      expect(value, size).toMatchObject({ across, along });
      expect(diagnostics.map(({ code }) => code)).toEqual(["STASH-SIZE-TAKEN"]);
      expect(said(diagnostics[0])?.message).toContain("the whole usable width");
    }
  });

  test("a fat quarter written the other way round is taken as written, and doubted", () => {
    const { value, diagnostics } = readCloth("Sky", "18 x 21 in", 1, "", "in");
    expect(value).toMatchObject({ across: 18 * IN, along: 21 * IN });
    expect(said(diagnostics[0])?.message).toContain("18 in across the fabric and 21 in along the selvage");
    expect(said(diagnostics[0])?.message).toContain('"21 in x 18 in"');
    expect(readCloth("Sky", "50 x 55 cm", 1, "", "in").diagnostics).toHaveLength(1);
    for (const plain of ["21 x 18 in", "20 x 20 in", "fat quarter"])
      expect(readCloth("Sky", plain, 1, "", "in").diagnostics).toEqual([]);
  });

  test("a name that a spreadsheet would run is guarded, and read back as it was", () => {
    const cloth = { fabric: "=1+1", across: 21 * IN, along: 18 * IN, count: 2, note: "-5 off" };
    const text = printStash(addCloth(emptyStash(), cloth, "in"));
    expect(text).toContain("'=1+1,21 in,18 in,2,'-5 off\n");
    const again = readStash(text, "stash.csv", "in").value!;
    expect(again.rows[0]?.cloth).toEqual(cloth);
    expect(removeCloth(again, cloth)?.rows).toEqual([]);
  });

  test("cloth to hand: alike sizes together, the biggest first, near names told", () => {
    const ruler = { unit: "in", mark: IN / 8 } as const;
    const { toHand, diagnostics } = clothToHand(stashOf(table), ["SKY", "Sky blue"], ruler);
    expect(toHand).toEqual([
      {
        fabric: "SKY",
        pieces: [
          { name: "stash piece 21 x 18 in", across: 21 * IN, along: 18 * IN, available: 3, from: "stash" },
          { name: "stash piece 10 x 10 in", across: 10 * IN, along: 10 * IN, available: 1, from: "stash" },
        ],
      },
    ]);
    expect(diagnostics).toEqual([]);
    expect(clothToHand(stashOf(table), ["Skye"], ruler).diagnostics[0]?.code).toBe("STASH-NEAR-NAME");
  });

  test("a plan takes all it uses or nothing", () => {
    const lay = { source: "fixed", name: "stash piece", across: 21 * IN, along: 18 * IN };
    const plan = {
      name: "Tide pool",
      ruler: { unit: "in", mark: IN / 8 },
      fabrics: [
        {
          name: "Sky",
          stock: [{ name: "stash piece", from: "stash" }],
          lays: [lay, lay],
          leftovers: [{ lay: 0, across: 5 * IN, along: 6 * IN, count: 2, cause: "uncut-end" }],
        },
      ],
    } as unknown as Plan;
    const taken = takePlan(stashOf(table), plan, "drawer.csv", "left from it");
    expect(printStash(taken.value!.stash)).toBe(
      "fabric,width,length,how many\nsky,21 in,18 in,1\nSky,10 in,10 in,1\nSky,5 in,6 in,2\n",
    );
    const again = takePlan(taken.value!.stash, plan, "drawer.csv", "left from it");
    expect(again.value).toBeNull();
    expect(said(again.diagnostics[0])?.message).toContain("2 of Sky 21 x 18 in");
  });
});
