export const pieces = {
  usableWidthOfThe: "usable width of the fabric",
  inOrCmIn: "42 in, or 107 cm in centimetres",
  measureOfNumbersWritten: "measure of numbers written without one",
  keepEveryPieceThe: "keep every piece the way it is written, as for a print with an up",
  square: (value: string) => `${value} square`,
  yourPieces: "your pieces",
  aQuickAnswerWith: "a quick answer with no file: sizes and counts as arguments",
  worksOutHowMuch:
    'Works out how much of one fabric holds the pieces given, and how to cut it. Each piece is SIZE:COUNT in quotes, cut size, seam allowance included: "2 1/2 x 4 1/2:24", or "4 1/2:20" for squares.',
  eachAsSizeCount: 'each as SIZE:COUNT, for example "2 1/2 x 4 1/2:24"',
  errorIsNotSize: (word: string) =>
    `error: "${word}" is not SIZE:COUNT. Write for example "2 1/2 x 4 1/2:24" or "4 1/2:20".\n`,
  inText: "42 in",
  cm: "107 cm",
  commandLine: "command line",
  /** Command lines to copy, without the program's name. */
  examples: [
    'pieces "2 1/2 x 4 1/2:24" "4 1/2:20" --width 42in',
    'pieces "6,5 x 11,5:40" --unit cm --width 107cm --fixed',
  ],
};
