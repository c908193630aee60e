import type { Ruler } from "../../length/types.ts";
import type { MethodSaid, PieceSaid, UnitSizes } from "../../quilt/sizes/unit-sizes.ts";
import type { UnitListed } from "../../quilt/unit-list.ts";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";
import { choice, inWords, takes, text, toggle } from "../option.ts";
import { json } from "../options.ts";
import { failWith } from "../report.ts";

const unit = (words: Words) =>
  choice(
    takes("--unit", words.commandLine.values.unit),
    words.commandLine.sizes.measureOfNumbersWritten,
    "in",
    ["in", "cm", "mm"],
    words,
  );
const seam = (words: Words) =>
  text(
    takes("--seam", words.commandLine.values.length),
    words.commandLine.sizes.seamAllowance,
    words.commandLine.sizes.inOrCm,
  );
const ruler = (words: Words) =>
  text(
    takes("--ruler", words.commandLine.values.length),
    words.commandLine.sizes.distanceBetweenTheMarks,
    words.commandLine.sizes.inCmOrMm,
  );
const rounding = (words: Words) =>
  choice(
    takes("--rounding", words.commandLine.values.way),
    words.commandLine.sizes.trueGeometryRoundedUp,
    "exact",
    ["exact", "trade"],
    words,
  );

const picture = (words: Words) => toggle("--picture", words.commandLine.sizes.printAnSvgDrawing);

function pieceLine(piece: PieceSaid, width: number, ruler: Ruler, words: Words): string {
  const { unitSizes } = words;
  const [further, other] = [unitSizes.further(piece, ruler), unitSizes.other(piece, ruler)];
  return words.commandLine.sizes.x(
    String(piece.count).padStart(3),
    unitSizes.part(piece).padEnd(width),
    unitSizes.size(piece, ruler),
    further === "" ? "" : `, ${further}`,
    other === "" ? "" : words.commandLine.sizes.theOtherRounding(other),
  );
}

function methodText(method: MethodSaid, ruler: Ruler, words: Words): string {
  const { unitNames, unitSizes } = words;
  const width = Math.max(0, ...method.pieces.map((piece) => unitSizes.part(piece).length));
  const trim = unitSizes.trim(method, ruler);
  const makes =
    method.makes === 1 ? words.commandLine.sizes.makesUnit : words.commandLine.sizes.makesUnits(method.makes);
  return [
    `${unitNames.method(method.method)}, ${makes}`,
    ...method.pieces.map((piece) => pieceLine(piece, width, ruler, words)),
    ...(trim === "" ? [] : [words.commandLine.sizes.trimTheSewnUnit(trim)]),
    ...method.notes.map((note) => `      ${unitSizes.note(note)}`),
  ].join("\n");
}

function sizesText(sizes: UnitSizes, words: Words): string {
  const { unit, finished, ruler } = sizes;
  const head = words.commandLine.sizes.finishingSeam(
    words.unitNames.unit(unit),
    words.spoken.size(finished),
    words.unitSizes.seam(sizes),
  );
  return `${head}\n\n${sizes.methods.map((one) => methodText(one, ruler, words)).join("\n\n")}\n`;
}

/** Every kind of unit with its parts and methods, for one who does not know the names yet. */
function listText(units: readonly UnitListed[], words: Words): string {
  const { unit, method: called, summary } = words.unitNames;
  const width = Math.max(...units.flatMap(({ methods }) => methods.map((method) => called(method).length)));
  return units
    .map(({ name, alsoCalled, parts, methods }) => {
      const also = alsoCalled.length === 0 ? "" : ` (or ${alsoCalled.join(", ")})`;
      const fabrics = parts.length === 0 ? words.commandLine.sizes.asItsFileNames : parts.join(", ");
      const lines = methods.map((method) => `  ${called(method).padEnd(width)}  ${summary(name, method)}`);
      return [`${unit(name)}${also}`, `  parts: ${fabrics}`, ...lines, ""].join("\n");
    })
    .join("\n");
}

export const sizes = (words: Words) =>
  defineCommand({
    name: "sizes",
    summary: words.commandLine.sizes.cutSizesOfA,
    about: words.commandLine.sizes.theSizeIsThe,
    arguments: [
      { name: "[unit]", help: words.commandLine.sizes.forExampleFlyingGeese },
      { name: "[size]", help: words.commandLine.sizes.finishedSizeX },
    ],
    options: inWords(words, {
      unit,
      seam,
      ruler,
      rounding,
      picture,
      json,
    }),
    examples: words.commandLine.sizes.examples,
    async run([kind, size], values, io) {
      const { loadDrawings, unitList, unitSizes, unitSizesJson, unitsJson, unitTurns } = await import(
        "../../index.ts"
      );
      if (values.picture) {
        const units = unitTurns(kind ?? null);
        if (units.length === 0) {
          const known = unitList().map(({ name }) => name);
          io.talk(io.words.commandLine.sizes.thereIsNoUnit(kind, known.join(", ")));
          return EXIT.usage;
        }
        io.out((await loadDrawings()).drawUnits(units, words));
        return EXIT.done;
      }
      if (kind === undefined) {
        const units = unitList();
        io.out(values.json ? unitsJson(units, io.words) : listText(units, io.words));
        return EXIT.done;
      }
      if (size === undefined) {
        io.talk(io.words.commandLine.sizes.errorSizesNeedsThe(kind));
        return EXIT.usage;
      }
      const found = unitSizes({
        unit: kind,
        size,
        measure: values.unit ?? "in",
        seam: values.seam,
        ruler: values.ruler,
        rounding: values.rounding ?? "exact",
        language: io.words.language,
      });
      if (found.value === null) {
        failWith(found.diagnostics, undefined, values.json, io);
        return EXIT.usage;
      }
      io.out(values.json ? unitSizesJson(found.value, io.words) : sizesText(found.value, io.words));
      return EXIT.done;
    },
  });
