import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { goOn, planSpec, quickSolve, readSpecFile, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import {
  addEntry,
  beforeEntry,
  beginWork,
  readFact,
  readWorkFile,
  USUALLY_PLANNED,
  workJsonSchema,
} from "../../src/spec/index.ts";
import {
  clothsOf,
  fingerprint,
  openFrom,
  spoiledFact,
  stopFacts,
  tickFacts,
  toldStrips,
} from "../../src/state/index.ts";
import { english, sayKey } from "../../src/words/index.ts";

const solve = quickSolve(solveHere);
const BEGUN = beginWork(USUALLY_PLANNED);
const FOLDER = join(import.meta.dirname, "../../fixtures/cutlists");
const LISTS = readdirSync(FOLDER).filter((name) => name.endsWith(".yaml"));
/** Some of them every time, all where there is time. */
const SOME = process.env.ANSWERS === "all" ? LISTS : ["tide-pool.yaml", ...LISTS.slice(0, 4)];

async function planOf(name: string) {
  const text = readFileSync(join(FOLDER, name), "utf8");
  const spec = readSpecFile(text, name).value;
  const plan = spec === null ? null : (await planSpec(spec, USUAL_OPTIONS, solve)).value;
  return { text, plan };
}

const said = (facts: readonly string[]) => ({
  facts: facts.map((text) => {
    const read = readFact(text, "in");
    if ("problem" in read) throw new Error(`${text}: ${read.problem}`);
    return { text, fact: read.value, path: "", at: null };
  }),
});

describe("what is ticked at the mat", () => {
  test.each(SOME)(
    "%s: every strip of every cloth is told so that it is meant, and no other",
    async (name) => {
      const { plan } = await planOf(name);
      for (const fabric of plan?.fabrics ?? []) {
        const cloths = clothsOf(fabric);
        for (const [lay, { strips }] of cloths.entries())
          for (const number of strips) {
            const told = toldStrips(fabric, said(tickFacts(cloths, [{ lay, number }])));
            expect(told.filter(({ state }) => state === "cut")).toEqual([{ lay, number, state: "cut" }]);
            // Those before it came off the cloth first.
            expect(told.length).toBe(strips.filter((one) => one <= number).length);
            const spoiled = toldStrips(fabric, said([spoiledFact(cloths, { lay, number })]));
            expect(spoiled.find((each) => each.state === "spoiled")).toMatchObject({ lay, number });
          }
        const all = cloths.flatMap(({ strips }, lay) => strips.map((number) => ({ lay, number })));
        expect(toldStrips(fabric, said(stopFacts(cloths, all))).every(({ state }) => state === "cut")).toBe(
          true,
        );
      }
    },
  );

  test("reads as a maker would say it", () => {
    const cloths = [
      { word: "", strips: [1, 2, 3, 4, 5, 6, 7] },
      { word: "fat quarter 2", strips: [1, 2] },
    ];
    const at = (...numbers: number[]) => numbers.map((number) => ({ lay: 0, number }));
    expect(tickFacts(cloths, at(1, 2, 3, 5))).toEqual(["strips 1 to 3 and 5 cut"]);
    expect(tickFacts(cloths, at(2, 1))).toEqual(["strips 1 and 2 cut"]);
    expect(tickFacts(cloths, [...at(4), { lay: 1, number: 1 }])).toEqual([
      "strip 4 cut",
      "strip 1 of fat quarter 2 cut",
    ]);
    expect(stopFacts(cloths, at(1, 2, 3))).toEqual(["cut to strip 3"]);
    expect(stopFacts(cloths, at(1, 4))).toEqual(["strips 1 and 4 cut", "strips 2 and 3 cut off"]);
    expect(spoiledFact(cloths, { lay: 1, number: 2 })).toBe("strip 2 of fat quarter 2 spoiled");
  });

  test("strips by the hundred are told in facts that can be read", () => {
    const strips = Array.from({ length: 300 }, (_, i) => i + 1);
    const odd = strips.filter((number) => number % 2 === 1).map((number) => ({ lay: 0, number }));
    const facts = tickFacts([{ word: "rest of 11 1/4 x 5 1/4 in", strips }], odd);
    const numbers = said(facts).facts.flatMap(({ fact }) =>
      fact.kind === "cut" && fact.what.of === "strips" ? fact.what.numbers : [],
    );
    expect(numbers).toEqual(odd.map(({ number }) => number));
  });

  test("an entry of ticks is open until something else is said of the fabric", () => {
    const entry = (fabric: string, ...facts: string[]) => ({ fabric, plan: "0", ...said(facts) });
    const ticks = entry("a", "strips 1 and 2 cut");
    expect(openFrom([])).toBe(0);
    expect(openFrom([ticks])).toBe(0);
    expect(openFrom([ticks, entry("b", "strip 1 cut")])).toBe(0);
    expect(openFrom([ticks, entry("a", "strip 1 cut")])).toBe(1);
    expect(openFrom([entry("a", "strip 1 cut", "strip 2 spoiled"), entry("b", "strip 1 cut")])).toBe(1);
    expect(openFrom([ticks, entry("b", "cut to strip 2")])).toBe(2);
  });

  test("ticks taken back leave the file as it was, to the letter", () => {
    const ticked = addEntry(BEGUN, { fabric: "a", plan: "0", facts: ["strip 1 cut"] });
    const more = addEntry(ticked, { fabric: "b", plan: "1", facts: ["strip 2 cut"] });
    expect(beforeEntry(more, 0)).toBe(BEGUN);
    expect(beforeEntry(more, 1)).toBe(ticked);
    expect(beforeEntry(more, 2)).toBe(more);
    // What she wrote into the file herself is not cut away with an entry.
    const noted = `${more}# the good scissors are in the drawer\n`;
    expect(beforeEntry(noted, 2)).toBe(noted);
    const read = readWorkFile(beforeEntry(more.replace("- fabric: b", "- fabric: b # mine"), 1), "w", "in");
    expect(read.value?.said).toHaveLength(1);
  });

  test("the published schema takes what is written, and refuses what is not", () => {
    const schema = new URL("../../src/schemas/work.schema.json", import.meta.url);
    const valid = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(schema, "utf8")));
    expect(JSON.parse(readFileSync(schema, "utf8"))).toEqual({
      ...workJsonSchema(sayKey(english.fileKeys)),
      $id: "urn:crossgrain:work:1",
    });
    const ticked = addEntry(BEGUN, { fabric: "a", plan: "0", facts: ["strip 1 cut", "40 in wide"] });
    expect([BEGUN, ticked].map((text) => valid(parse(text)))).toEqual([true, true]);
    expect(valid(parse(ticked.replace("facts:", "fact:")))).toBe(false);
    expect(valid(parse(BEGUN.replace("crossgrain work", "shopping list")))).toBe(false);
  });

  test("ticks, and the same said by command, give the same file and the same plan", async () => {
    const { text, plan } = await planOf("tide-pool.yaml");
    const sea = plan!.fabrics[0]!;
    const facts = tickFacts(clothsOf(sea), [
      { lay: 0, number: 1 },
      { lay: 0, number: 2 },
    ]);
    const ticked = addEntry(BEGUN, { fabric: sea.name, plan: fingerprint(sea), facts });
    const go = (work: string, words: string[]) =>
      goOn(
        {
          quilt: { text, name: "tide-pool.yaml" },
          work: { text: work, name: "work.yaml" },
          words,
          again: false,
          made: null,
        },
        solve,
      );
    const told = (await go(BEGUN, [`${sea.name}: ${facts.join("; ")}`])).value!;
    expect(told.workText).toBe(ticked);
    const kept = (await go(ticked, [])).value!;
    expect(JSON.stringify(kept.plan)).toBe(JSON.stringify(told.plan));
  });
});
