export const goOn = {
  takeBackWhatWas: "take back what was said last",
  whatIsSaidIs: "what is said is the same as last time, and has happened once more",
  thePlanOfWhat: "the plan of what is left: from what is cut, measured and spoiled",
  sayWhatHasHappened: (factExamples: string) =>
    `Say what has happened at the mat, by the strip numbers of the cutting diagram and the letters of the bags. What is left is planned again from what is really there: pieces that lie cut first, then rests and the cloth in hand, and only what they cannot give is bought. Bags keep their letters. All that was said is kept in work.yaml beside the plan; the other files of the folder are those of the new plan. ${factExamples} Where a quilt has several fabrics, begin with the fabric and a colon.`,
  theQuiltOrCut: "the quilt or cut list that was planned",
  whatHasHappenedIvory: 'what has happened: "ivory: cut to strip 6" "40 in wide"',
  kits: (name: string, quilts: number) => `${name}, ${quilts} kits`,
  errorUndoTakesBack: `error: --undo takes back what was said last: say nothing new beside it.\n`,
  errorNothingHasBeen: (factExamples: string) => `error: nothing has been said of the work yet.
${factExamples}\n`,
  filesWrittenIntoWhat: (length: number, named: string, workNamed: string) =>
    `${length} files written into ${named}; what was said is kept in ${workNamed}\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new cut-list > my-cuts.yaml",
    "plan my-cuts.yaml --out mine",
    'go-on my-cuts.yaml "night: cut to strip 1" --out mine',
    'go-on my-cuts.yaml "gulls: strip 1 spoiled" --out mine',
    "go-on my-cuts.yaml --undo --out mine",
  ],
};
