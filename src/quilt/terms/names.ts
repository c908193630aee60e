/*
 * What a file calls kinds of units and ways of making them. The language of the file is one for all makers: what is
 * printed of a unit or a method is a matter of words.
 */

export const UNIT = {
  square: "square",
  rectangle: "rectangle",
  halfSquareTriangle: "half-square triangle",
  quarterSquareTriangle: "quarter-square triangle",
  threePatchSquare: "three-patch square",
  fourTriangleSquare: "four-triangle square",
  flyingGeese: "flying geese",
  squareInASquare: "square-in-a-square",
  snowball: "snowball",
  halfRectangleTriangle: "half-rectangle triangle",
  fourPatch: "four-patch",
  ninePatch: "nine-patch",
  rails: "rails",
  logCabin: "log cabin",
  courthouseSteps: "courthouse steps",
  eightPointedStar: "eight-pointed star",
  sixtyDegreeTriangles: "sixty-degree triangles",
  drawnPatches: "drawn patches",
} as const;

export type UnitName = (typeof UNIT)[keyof typeof UNIT];

export const METHOD = {
  twoAtATime: "two at a time",
  fourAtATime: "four at a time",
  eightAtATime: "eight at a time",
  singleTriangles: "single triangles",
  cornerTriangles: "corner triangles",
  stitchAndFlip: "stitch-and-flip",
  stripSets: "strip sets",
  twoStripSets: "two strip sets",
  singlePieces: "single pieces",
  cutLogs: "cut logs",
  fromStrips: "from strips",
  templates: "templates",
  onFoundation: "on the foundation",
  /** The same with squares that would stand on their point, and their print lean, from upright rectangles. */
  fromRectangles: "on the foundation, from rectangles",
} as const;

export type MethodName = (typeof METHOD)[keyof typeof METHOD];
