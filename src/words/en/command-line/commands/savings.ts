export const savings = {
  writeTheFileWith: "write the file with this change of the list made, to the file that --out names",
  useANumberOf: "Use a number of the list, for example 1.",
  whereToWriteThe: "where to write the changed file",
  whatWouldSaveChanges: "what would save: changes to a quilt that buy less fabric, each really planned",
  plansTheFileWith:
    "Plans the file with one change at a time and lists those that buy less, the greatest saving first: strips cut once more, another method for a unit, a print that may be turned, blocks all one way, a border cut along the selvage or joined, the nearest narrower border, sashing or block that buys less. The drawing page offers the same list. With --take a change is made: the file is copied with it, comments and order kept. Your file is not changed.",
  theQuiltFileYaml: "the quilt file, YAML or JSON",
  errorTakeAndOut: `error: --take and --out go together. For example: --take 1 --out my-quilt-less.yaml\n`,
  planningEachChangeOf: (done: number, of: number) => `Planning each change: ${done} of at most ${of}`,
  errorThereIsNo: (take: number, length: number) =>
    `error: there is no change ${take} in the list; it has ${length}.\n`,
  written: (out: string, value: string) => `${out} written: ${value}\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new blocks > my-quilt.yaml",
    "savings my-quilt.yaml",
    "savings my-quilt.yaml --take 1 --out my-quilt-less.yaml",
  ],
};
