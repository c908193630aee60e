export const sizes = {
  measureOfNumbersWritten: "measure of numbers written without one",
  seamAllowance: "seam allowance",
  inOrCm: "1/4 in, or 0.75 cm",
  distanceBetweenTheMarks: "distance between the marks of your ruler",
  inCmOrMm: "1/8 in, 0.25 cm or 1 mm",
  trueGeometryRoundedUp: "true geometry rounded up to the marks, or the constants makers know",
  printAnSvgDrawing: "print an SVG drawing instead: the unit, or all of them, at rest and in their turns",
  theOtherRounding: (other: string) => ` (the other rounding: ${other})`,
  x: (value: string, value2: string, size: string, further: string, other: string) =>
    `  ${value} x ${value2}  ${size}${further}${other}`,
  makesUnit: "makes 1 unit",
  makesUnits: (makes: number) => `makes ${makes} units`,
  trimTheSewnUnit: (trim: string) => `      trim the sewn unit to ${trim}`,
  finishingSeam: (unit: string, finished: string, seamText: string) =>
    `${unit}, finishing ${finished}, seam ${seamText}`,
  asItsFileNames: "as its file names them",
  cutSizesOfA: "cut sizes of a sewn unit by each way of making it; without a unit, the list of units",
  theSizeIsThe: "The size is the finished one: `4`, or `4 x 2` across and down.",
  forExampleFlyingGeese: 'for example "flying geese" or "half-square triangle"',
  finishedSizeX: 'finished size: "4 x 2"',
  thereIsNoUnit: (kind: string | undefined, value: string) =>
    `There is no unit \`${kind}\`. Known here: ${value}.\n`,
  errorSizesNeedsThe: (kind: string) =>
    `error: sizes needs the finished size too, for example: sizes "${kind}" "4 x 2"\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "sizes",
    'sizes "flying geese" "4 x 2"',
    'sizes "half-square triangle" 10 --unit cm --rounding trade',
    "sizes --picture > units.svg",
  ],
};
