import type { UnitListed } from "../../quilt/unit-list.ts";
import type { MethodSaid, PieceSaid, UnitSizes } from "../../quilt/unit-sizes.ts";
import { defineCommand, EXIT } from "../command.ts";
import { choice, text, toggle } from "../option.ts";
import { json } from "../options.ts";
import { failWith } from "../report.ts";

const unit = choice("--unit <unit>", "measure of numbers written without one", "in", ["in", "cm", "mm"]);
const seam = text("--seam <length>", "seam allowance", "1/4 in, or 0.75 cm");
const ruler = text("--ruler <length>", "distance between the marks of your ruler", "1/8 in, 0.25 cm or 1 mm");
const rounding = choice(
  "--rounding <way>",
  "true geometry rounded up to the marks, or the constants makers know",
  "exact",
  ["exact", "trade"],
);

const picture = toggle(
  "--picture",
  "print an SVG drawing instead: the unit, or all of them, at rest and in their turns",
);

function pieceLine(piece: PieceSaid, width: number): string {
  const further = piece.further === "" ? "" : `, ${piece.further}`;
  const other = piece.other === "" ? "" : ` (the other rounding: ${piece.other})`;
  return `  ${String(piece.count).padStart(3)} x ${piece.part.padEnd(width)}  ${piece.size}${further}${other}`;
}

function methodText(method: MethodSaid): string {
  const width = Math.max(0, ...method.pieces.map(({ part }) => part.length));
  const makes = method.makes === 1 ? "makes 1 unit" : `makes ${method.makes} units`;
  return [
    `${method.method}, ${makes}`,
    ...method.pieces.map((piece) => pieceLine(piece, width)),
    ...(method.trim === "" ? [] : [`      trim the sewn unit to ${method.trim}`]),
    ...method.notes.map((note) => `      ${note}`),
  ].join("\n");
}

function sizesText(sizes: UnitSizes): string {
  const head = `${sizes.unit}, finishing ${sizes.finished}, seam ${sizes.seamText}`;
  return `${head}\n\n${sizes.methods.map(methodText).join("\n\n")}\n`;
}

/** Every kind of unit with its parts and methods, for one who does not know the names yet. */
function listText(units: readonly UnitListed[]): string {
  const width = Math.max(...units.flatMap(({ methods }) => methods.map(({ name }) => name.length)));
  return units
    .map(({ name, alsoCalled, parts, methods }) => {
      const also = alsoCalled.length === 0 ? "" : ` (or ${alsoCalled.join(", ")})`;
      const fabrics = parts.length === 0 ? "as its file names them" : parts.join(", ");
      const lines = methods.map((method) => `  ${method.name.padEnd(width)}  ${method.summary}`);
      return [`${name}${also}`, `  parts: ${fabrics}`, ...lines, ""].join("\n");
    })
    .join("\n");
}

export const sizes = defineCommand({
  name: "sizes",
  summary: "cut sizes of a sewn unit by each way of making it; without a unit, the list of units",
  about: "The size is the finished one: `4`, or `4 x 2` across and down.",
  arguments: [
    { name: "[unit]", help: 'for example "flying geese" or "half-square triangle"' },
    { name: "[size]", help: 'finished size: "4 x 2"' },
  ],
  options: { unit, seam, ruler, rounding, picture, json },
  examples: [
    "sizes",
    'sizes "flying geese" "4 x 2"',
    'sizes "half-square triangle" 10 --unit cm --rounding trade',
    "sizes --picture > units.svg",
  ],
  async run([kind, size], values, io) {
    const { loadDrawings, unitList, unitSizes, unitSizesJson, unitsJson, unitTurns } = await import(
      "../../index.ts"
    );
    if (values.picture) {
      const units = unitTurns(kind ?? null);
      if (units.length === 0) {
        const known = unitList().map(({ name }) => name);
        io.talk(`There is no unit \`${kind}\`. Known here: ${known.join(", ")}.\n`);
        return EXIT.usage;
      }
      io.out((await loadDrawings()).drawUnits(units));
      return EXIT.done;
    }
    if (kind === undefined) {
      const units = unitList();
      io.out(values.json ? unitsJson(units) : listText(units));
      return EXIT.done;
    }
    if (size === undefined) {
      io.talk(`error: sizes needs the finished size too, for example: sizes "${kind}" "4 x 2"\n`);
      return EXIT.usage;
    }
    const found = unitSizes({
      unit: kind,
      size,
      measure: values.unit ?? "in",
      seam: values.seam,
      ruler: values.ruler,
      rounding: values.rounding ?? "exact",
    });
    if (found.value === null) {
      failWith(found.diagnostics, undefined, values.json, io);
      return EXIT.usage;
    }
    io.out(values.json ? unitSizesJson(found.value) : sizesText(found.value));
    return EXIT.done;
  },
});
