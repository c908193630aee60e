export const plan = {
  buyListCuttingPlan: "buy list, cutting plan, drawings and steps, written into a folder",
  worksOutWhatTo:
    "Works out what to buy and how to cut it with the least waste, prints the buy list, the cutting steps and where the cloth goes, and writes them into a folder (files of yours in the way are named and not written over) together with a cutting diagram for each fabric (SVG), a bench book to work from (book.html, which also prints), for a quilt the pattern to hand out or to sell (pattern.html), how it is sewn (sewing.txt, and blocks, assembly, pressing, borders and finishing as SVG), tables (CSV) and the whole plan (plan.json). With --json the plan is printed instead, and files are written only when --out names a folder.",
  sizesOfThePattern:
    "sizes the pattern is for besides the file's own: blocks (3x3,4x5), finished sizes (60 x 80 in, throw, lap, crib) or beds (queen); each is planned whole",
  sizesInTheFile: "those that `pattern: sizes` in the file names",
  theCutListYaml: "the cut list, YAML or JSON",
  filesWrittenInto: (length: number, named: string) => `${length} files written into ${named}\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new cut-list > my-cuts.yaml",
    "plan my-cuts.yaml",
    "plan my-cuts.yaml --out ~/quilts/mine --prefer sparing",
    "plan my-cuts.yaml --kits 12 --out kits",
    "plan my-cuts.yaml --pdf --paper letter --out printed",
    "new blocks > my-quilt.yaml",
    'plan my-quilt.yaml --kits "4 of 3x3, 5 of lap" --out class',
    "plan my-quilt.yaml --sizes 3x3,4x5 --out for-sale",
    "plan my-cuts.yaml --png 1600 --markdown --out pictures",
  ],
};
