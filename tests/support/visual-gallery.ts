import type { DrawOptions } from "../../src/draw/cutting/draw-fabric.ts";
import { CENTIMETRE, INCH, MILLIMETRE, QUARTER_CENTIMETRE_RULER, YARD } from "../../src/length/index.ts";
import type { Plan } from "../../src/plan/types.ts";
import { asFatQuarters, inches, manyPieces, named, samplePlan } from "./gallery-plans.ts";
import { samplePlan as plannedSample, sampleFabric, samplePiece } from "./sample-plan.ts";

/** Invented cloth and cut lists, chosen to be hard on a drawing. */
export interface GalleryCase {
  name: string;
  plan: () => Promise<Plan>;
  options?: DrawOptions;
}

const HOSTILE_NAME = `<script>alert("x")</script> & 'quotes' ]]> \u0000\u0007\u202e\ud800 end ${"x".repeat(500)}`;

export const GALLERY: readonly GalleryCase[] = [
  {
    name: "one-piece",
    plan: () => samplePlan([sampleFabric("Single square", [inches(12.5, 12.5, 1, "centre")])]),
  },
  {
    name: "half-inch-pieces",
    plan: () =>
      samplePlan([
        sampleFabric("Crumbs", [
          inches(0.5, 0.5, 150, "crumbs"),
          inches(4.5, 0.5, 40, "needles"),
          inches(6.5, 1, 7, "rails"),
          inches(3.5, 3.5, 12, "centres"),
        ]),
      ]),
  },
  { name: "three-hundred", plan: manyPieces },
  { name: "three-hundred-full", plan: manyPieces, options: { view: "full" } },
  {
    name: "twelve-yard-backing",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Backing",
          [samplePiece(0, 140 * INCH, 3, { fullWidth: true, turn: "fixed", label: "backing drops" })],
          {
            colour: "#d9c7a3",
          },
        ),
      ]),
  },
  {
    name: "fat-quarters",
    plan: async () =>
      asFatQuarters(
        await samplePlan([
          sampleFabric("Drawer blues", [inches(4.5, 4.5, 8, "stars"), inches(2.5, 2.5, 16, "corners")], {
            width: 21 * INCH,
            selvage: 0,
            straighten: 0,
            sold: { unit: "in", step: 18 * INCH, least: 18 * INCH },
          }),
        ]),
      ),
  },
  {
    name: "all-waste",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Washed check",
          [inches(7, 6.5, 7, "big"), inches(5, 2.25, 11, "bars"), inches(3.125, 1.75, 9)],
          {
            shrinkAcross: 30,
            shrinkAlong: 40,
            spare: 4 * INCH,
            straighten: 1.5 * INCH,
            colour: "#c8553d",
          },
        ),
      ]),
  },
  {
    name: "dark-one-way",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Midnight ferns",
          [
            samplePiece(6.5 * INCH, 9.5 * INCH, 9, { turn: "fixed", label: "windows" }),
            samplePiece(3.5 * INCH, 4.5 * INCH, 22, { turn: "fixed", label: "sills" }),
            samplePiece(2 * INCH, 2 * INCH, 31, { turn: "fixed" }),
          ],
          { colour: "#10131c", print: { kind: "one-way", axis: "along" } },
        ),
      ]),
  },
  {
    name: "light-two-way-across",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Pale stripe",
          [
            samplePiece(8.5 * INCH, 5.5 * INCH, 6, { turn: "fixed", label: "rails" }),
            samplePiece(3 * INCH, 3 * INCH, 26, { turn: "fixed", label: "squares" }),
          ],
          { colour: "#fbf6e4", print: { kind: "two-way", axis: "across" } },
        ),
      ]),
  },
  {
    name: "long-names",
    plan: () =>
      named(
        `The blue one with small white anchors and a border of rope that Grandmother kept in the cedar chest ${"and kept ".repeat(20)}`,
        "half-square triangles for the outer round of every second block",
      ),
  },
  { name: "right-to-left", plan: () => named("בד כחול עם פרחים לבנים (2)", "قطعة مربعة كبيرة") },
  {
    name: "east-asian",
    plan: () =>
      named("藍染めの木綿・菊の花柄（祖母の箪笥より）と、とても長い名前の布地の見本", "四角い布 大きいもの"),
  },
  { name: "hostile", plan: () => named(HOSTILE_NAME, "<b>&amp;\u0001</b>") },
  {
    name: "metric",
    plan: () =>
      samplePlan(
        [
          sampleFabric(
            "Winterblau",
            [
              samplePiece(16.5 * CENTIMETRE, 16.5 * CENTIMETRE, 12, { label: "Mitte" }),
              samplePiece(6.5 * CENTIMETRE, 6.5 * CENTIMETRE, 48, { label: "Ecken" }),
              samplePiece(0, 6.5 * CENTIMETRE, 6, { fullWidth: true, label: "binding" }),
            ],
            {
              width: 112 * CENTIMETRE,
              selvage: CENTIMETRE,
              straighten: 2 * CENTIMETRE,
              sold: { unit: "m", step: 10 * CENTIMETRE, least: 10 * CENTIMETRE },
              colour: "#5b7fa6",
            },
          ),
        ],
        { keepFrom: 15 * CENTIMETRE, rulerLength: 60 * CENTIMETRE },
        QUARTER_CENTIMETRE_RULER,
      ),
  },
  {
    name: "many-kinds",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Sampler",
          Array.from({ length: 18 }, (_, i) =>
            inches(1.25 + ((i * 7) % 11) * 0.75, 1 + i * 0.5, 3 + ((i * 5) % 7), `size ${i + 1}`),
          ),
          { colour: "#7a9e7e" },
        ),
      ]),
  },
  {
    name: "lengthwise-borders",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Border stripe",
          [
            samplePiece(6.5 * INCH, 68.5 * INCH, 4, { cut: "lengthwise", turn: "fixed", label: "borders" }),
            inches(4.5, 4.5, 30, "squares"),
            inches(2.5, 2.5, 40, "corners"),
          ],
          { colour: "#b0708f" },
        ),
      ]),
  },
  {
    name: "long-uncut-end",
    plan: () =>
      samplePlan([
        sampleFabric("Remnant", [inches(5, 5, 20, "charms")], {
          sold: { unit: "yd", step: YARD, least: 4 * YARD },
          colour: "#e0b040",
        }),
      ]),
  },
  {
    name: "one-way-across-dark-metric-narrow",
    plan: () =>
      samplePlan(
        [
          sampleFabric(
            "Smal randig",
            [
              samplePiece(1.25 * CENTIMETRE, 1.25 * CENTIMETRE, 70, { turn: "fixed" }),
              samplePiece(1.25 * CENTIMETRE, 20 * CENTIMETRE, 30, { turn: "fixed", label: "lister" }),
              samplePiece(9 * CENTIMETRE, 12 * CENTIMETRE, 14, { turn: "fixed", label: "rutor" }),
            ],
            {
              width: 90 * CENTIMETRE,
              selvage: CENTIMETRE,
              print: { kind: "one-way", axis: "across" },
              colour: "#4a1f3d",
              sold: { unit: "m", step: 10 * CENTIMETRE, least: 10 * CENTIMETRE },
            },
          ),
        ],
        { keepFrom: 15 * CENTIMETRE },
        QUARTER_CENTIMETRE_RULER,
      ),
  },
  {
    name: "narrowest-strip",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Ribbon",
          [
            samplePiece(0, 0.5 * INCH, 9, { fullWidth: true, turn: "fixed", label: "piping" }),
            samplePiece(0, 0.75 * INCH, 4, { fullWidth: true, turn: "fixed", label: "edge" }),
            inches(20, 0.5, 6, "stems"),
          ],
          { colour: "#2e7d5b" },
        ),
      ]),
  },
  {
    name: "one-way-borders",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Climbing roses",
          [
            samplePiece(3.5 * INCH, 60.5 * INCH, 2, { cut: "lengthwise", turn: "fixed", label: "sides" }),
            samplePiece(6.5 * INCH, 68.5 * INCH, 2, { cut: "lengthwise", turn: "fixed", label: "borders" }),
            samplePiece(6.5 * INCH, 8.5 * INCH, 12, { turn: "fixed", label: "panels" }),
            samplePiece(2 * INCH, 2 * INCH, 24, { turn: "fixed", label: "corners" }),
          ],
          { colour: "#7d1128", print: { kind: "one-way", axis: "along" } },
        ),
      ]),
  },
  {
    name: "strips-beside-bands",
    // The engine itself sets strips beside bands.
    plan: () =>
      plannedSample(
        [
          sampleFabric(
            "Driftwood",
            [
              samplePiece(3.5 * INCH, 40.5 * INCH, 2, { cut: "lengthwise", turn: "fixed", label: "sides" }),
              inches(1.5, 12.5, 22, "planks"),
              inches(3.5, 3.5, 4, "posts"),
            ],
            { colour: "#9c7455" },
          ),
        ],
        { style: "strips-2" },
      ),
  },
  {
    name: "two-way-borders-metric",
    plan: () =>
      samplePlan(
        [
          sampleFabric(
            "Streifen",
            [
              samplePiece(5 * CENTIMETRE, 190 * CENTIMETRE, 4, {
                cut: "lengthwise",
                turn: "fixed",
                label: "Rand",
              }),
              samplePiece(11.5 * CENTIMETRE, 6.5 * CENTIMETRE, 40, { turn: "fixed", label: "Riegel" }),
            ],
            {
              width: 140 * CENTIMETRE,
              selvage: 1.5 * CENTIMETRE,
              print: { kind: "two-way", axis: "along" },
              colour: "#d8e2dc",
              sold: { unit: "m", step: 10 * CENTIMETRE, least: 10 * CENTIMETRE },
            },
          ),
        ],
        { keepFrom: 15 * CENTIMETRE, rulerLength: 60 * CENTIMETRE },
        QUARTER_CENTIMETRE_RULER,
      ),
  },
  {
    name: "twelve-kits",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Twelve kits of one star",
          [inches(4.5, 4.5, 12 * 9, "centres"), inches(2.875, 2.875, 12 * 36, "points")],
          { colour: "#f4a261" },
        ),
      ]),
  },
  {
    name: "millimetres",
    plan: () =>
      samplePlan(
        [
          sampleFabric(
            "Fine lawn",
            [
              samplePiece(63 * MILLIMETRE, 63 * MILLIMETRE, 30, { label: "squares" }),
              samplePiece(37 * MILLIMETRE, 127 * MILLIMETRE, 26, { label: "bars" }),
            ],
            {
              width: 1100 * MILLIMETRE,
              selvage: 10 * MILLIMETRE,
              straighten: 20 * MILLIMETRE,
              sold: { unit: "m", step: 100 * MILLIMETRE, least: 100 * MILLIMETRE },
              colour: "#a7c4bc",
            },
          ),
        ],
        { keepFrom: 150 * MILLIMETRE, rulerLength: 600 * MILLIMETRE },
        { unit: "mm", mark: MILLIMETRE },
      ),
  },
  {
    name: "black",
    plan: () =>
      samplePlan([sampleFabric("Soot", [inches(6.5, 6.5, 11), inches(1, 9.5, 30)], { colour: "#000000" })]),
  },
  {
    name: "white",
    plan: () =>
      samplePlan([sampleFabric("Snow", [inches(6.5, 6.5, 11), inches(1, 9.5, 30)], { colour: "#ffffff" })]),
  },
  {
    name: "wider-than-it-is-long",
    plan: () =>
      samplePlan([
        sampleFabric("Wide back", [inches(90, 9, 1, "back"), inches(9, 9, 3, "pocket")], {
          width: 108 * INCH,
          colour: "#8d99ae",
        }),
      ]),
  },
  {
    name: "every-letter",
    plan: () =>
      samplePlan([
        sampleFabric(
          "Charm sampler",
          Array.from({ length: 30 }, (_, i) => inches(2 + i * 0.25, 2.5, 2, `charm ${i + 1}`)),
          { colour: "#cdb4db" },
        ),
      ]),
  },
];
