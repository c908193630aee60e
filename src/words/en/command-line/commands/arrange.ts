export const arrange = {
  anotherArrangementByChance: "another arrangement by chance; the same number gives the same one",
  useAWholeNumber: "Use a whole number up to 999999, for example 7.",
  onlyTheseTurningsOf:
    "only these turnings of the blocks, and their rows to copy into the file: upright, right, upside-down, left, by-turns, centre, pairs, chance",
  onlyTheseTurningsOf2:
    "only these turnings of the motifs in a block, and the grid to copy into the file: upright, right, upside-down, left, facing, stacked, apart, by-turns, clockwise, anticlockwise, centre, chance, or all; beside --only, each with each",
  turningsOfBlocksAnd:
    "turnings of blocks, and of the motifs in them, side by side: pictures, and what each takes",
  turnsTheBlocksOf:
    "Turns the blocks of a quilt by quarters: all one way, left and right by turns, about the centre, in mirrored pairs, by chance, and as the file has it. Turns the motifs inside the blocks too, their largest alike parts: all one way, in facing pairs, back to back, by turns, running round. Each is planned; where a print has an up, what is bought and cut may change. What looks the same is shown once. Tells in how many places the seams nest, and writes a picture of all of them (arrangements.svg).",
  theQuiltFileYaml: "the quilt file, YAML or JSON",
  planningEachArrangementOf: (done: number, of: number) => `Planning each arrangement: ${done} of ${of}`,
  arrangementsSvgWrittenInto: (named: string) => `arrangements.svg written into ${named}\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new blocks > my-quilt.yaml",
    "arrange my-quilt.yaml --only centre,pairs",
    "arrange my-quilt.yaml --seed 7 --out ~/quilts/turned",
  ],
};
