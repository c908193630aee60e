import { describe, expect, test } from "vitest";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { pictured, type SeenPhoto } from "../../src/page/planner/pictured.ts";
import { show } from "../../src/page/planner/show.ts";
import { STARTS } from "../../src/page/starts.ts";
import type { Plan } from "../../src/plan/types.ts";
import { planJson } from "../../src/print/json/index.ts";
import { english } from "../../src/words/index.ts";

const NIGHT = { fabric: "night", id: "photo-3", up: 0 };

/** What the shapes of a drawing are filled with that lies in the document around it. */
const tilesIn = (svg: string): string[] => [
  ...new Set([...svg.matchAll(/fill="url\(#(photo-[^)]+)\)/g)].map(([, id = ""]) => id)),
];

async function planned(text: string): Promise<Plan> {
  const { value } = await planQuilt(text, "quilt.yaml", USUAL_OPTIONS, solveHere);
  if (value === null) throw new Error("it cannot be planned");
  return value;
}

describe("drawings in the photos of fabrics", () => {
  const text = STARTS[1]!.text.replace("name: night,", "name: night, print: one-way,");

  test("step pictures, blocks, rows and books name the tiles; what is handed out knows nothing of them", async () => {
    expect(text).toContain("one-way");
    const plan = await planned(text);
    const shown = show(plan, "sewing", null, [NIGHT]);
    const sewing = shown.what === "sewing" ? shown.sewing : null;
    const geese = sewing?.units[0]?.pictures.map(({ svg }) => svg) ?? [];
    expect(geese.length).toBeGreaterThan(3);
    // Its print stands upright in the quilt: geese of four blocks' sides hold it turned every way.
    expect(tilesIn(geese.join("")).sort()).toEqual(["photo-3-0", "photo-3-180", "photo-3-270", "photo-3-90"]);
    // No texture is laid over a photo; the fabrics without one keep theirs.
    const textures = (photos: SeenPhoto[]): number => {
      const seen = show(plan, "sewing", null, photos);
      const drawn = seen.what === "sewing" ? (seen.sewing?.blocks[0]?.pictures[0] ?? "") : "";
      return drawn.split("clip-path=").length;
    };
    expect(textures([{ ...NIGHT, fabric: "chalk" }])).toBeLessThan(textures([]));
    expect(textures([{ ...NIGHT, fabric: "chalk" }])).toBeGreaterThan(1);
    for (const group of [sewing?.blocks[0], sewing?.rows[0], sewing?.borders[0]])
      expect(tilesIn(group?.pictures[0] ?? ""), group?.title).toContain("photo-3-0");

    const book = show(plan, "book", null, [NIGHT]);
    const plain = show(plan, "book", null, []);
    if (book.what !== "book" || plain.what !== "book") throw new Error("asked for the book");
    expect(tilesIn(book.looks["book.html"] ?? "")).toContain("photo-3-0");
    // On the mat too, under letters with a ground of their own.
    const cut = (book.looks["book.html"] ?? "").match(/<g [^>]*-photo"[^>]*>/g) ?? [];
    expect(cut.length).toBeGreaterThan(0);
    for (const pieces of cut) expect(pieces).toContain("url(#photo-3-0)");
    expect(book.files).toEqual(plain.files);
    expect(book.files["plan.json"]).toBe(planJson(plan, english));
    expect(Object.values(book.files).filter((file) => file.includes("photo-3"))).toEqual([]);
    expect(plain.looks["book.html"]).toBe(plain.files["book.html"]);
  });

  test("a print whose up lies to the right in its photo is turned back by a quarter", async () => {
    const plan = await planned(text);
    const patches = (up: number) => {
      const shown = show(plan, "sewing", null, [{ ...NIGHT, up }]);
      return shown.what === "sewing" ? tilesIn(shown.sewing?.borders[0]?.pictures[0] ?? "") : [];
    };
    expect(patches(0)).toEqual(["photo-3-0"]);
    expect(patches(90)).toEqual(["photo-3-270"]);
  });

  test("cloth in a step's picture is drawn a millimetre to a unit of the tile", async () => {
    const plan = await planned(text);
    const shown = show(plan, "sewing", null, [NIGHT]);
    const svg =
      shown.what === "sewing" ? (shown.sewing?.units[0]?.pictures.map((one) => one.svg).join("") ?? "") : "";
    const inCloth =
      /<g[^>]*transform="[^"]*scale\(([\d.]+)\)"[^>]*>\s*<path[^>]*?\sd="([^"]+)"[^>]*fill="url\(#photo-3/g;
    const all = [...svg.matchAll(inCloth)];
    expect(all.length).toBeGreaterThan(0);
    // The smaller piece of its geese is cut 2 7/8 in: 73 mm, 2 1/2 in of it are left in a goose.
    const widths = all.map(([, , d = ""]) => {
      let x = 0;
      const xs = [...d.matchAll(/([MLhl])\s*(-?[\d.]+)/g)].map(([, step = "", by]) => {
        x = /[ML]/.test(step) ? Number(by) : x + Number(by);
        return x;
      });
      return Math.max(...xs) - Math.min(...xs);
    });
    expect(Math.max(...widths)).toBeLessThan(2.875 * 25.4 + 0.5);
    expect(Math.max(...widths)).toBeGreaterThan(2.5 * 25.4 - 0.5);
  });

  test("each picture of a unit has the words of its step: bags, ways a print lies, sizes, pressing", async () => {
    const plan = await planned(text);
    const shown = show(plan, "sewing", null, []);
    const units = (shown.what === "sewing" ? shown.sewing?.units : null) ?? [];
    expect(units.length).toBeGreaterThan(1);
    for (const { step, bags, pictures } of units) {
      const told = pictures.map(({ words }) => words.join(" "));
      for (const [i, words] of told.entries())
        expect(words, `${step.title}: ${pictures[i]?.says}`).not.toBe("");
      // Where several are sewn alike the words name parts, and the table beside them the bags of each.
      const all = `${told.join(" ")} ${step.table?.rows.flat().join(" ") ?? ""}`;
      for (const { letter, fabric } of bags)
        expect(all, step.title).toMatch(new RegExp(`\\b${letter}\\b[^.]*${fabric}`));
      expect(all, step.title).toMatch(/Trim to \d|Each measures \d/);
      expect(all, step.title).toMatch(/Press /);
    }
    const [geese] = units;
    const [first] = geese?.pictures ?? [];
    expect(first?.words.join(" ")).toContain(
      "The small squares, seen on the wrong side: upper left heads down",
    );
    // What a reader hears of the picture itself is said once.
    expect(first?.svg).toMatch(
      /<title[^>]*>rule the lines, lay two on opposite corners<\/title>\s*<desc[^>]*(?:\/>|><\/desc>)/,
    );
  });

  test("a plan without photos is drawn as it was", async () => {
    const plan = await planned(STARTS[0]!.text);
    expect(pictured(plan, [])).toBe(plan);
  });
});
