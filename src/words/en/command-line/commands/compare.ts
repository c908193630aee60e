export const compare = {
  yourOwnMinutesFor: (value: string) => `your own minutes for a step, as seam=0.5,trim=1; steps are ${value}`,
  theFileSElse: "the file's, else usual ones; printed with the table",
  writeForExampleStrip: (value: string) => `Write for example strip=1,seam=0.5; steps are ${value}.`,
  waysOfMakingThe: "ways of making the units of a quilt side by side, each really planned",
  plansTheWholeQuilt:
    "Plans the whole quilt with every method of each kind of unit in turn, strip-pieced and single, and tells what each takes: fabric and price, strips, subcuts, seams, bias edges, trims, corners cut off, whether prints keep their direction, and an estimate of time; then the best combination and whether it is proved. Writes a picture of the choices (compare.svg). With --json the comparison is printed as JSON, and the picture is written only when --out names a folder.",
  theQuiltFileYaml: "the quilt file, YAML or JSON",
  planningEachWayOf: (done: number, of: number) => `Planning each way: ${done} of at most ${of}`,
  compareSvgWrittenInto: (named: string) => `compare.svg written into ${named}\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new blocks > my-quilt.yaml",
    "compare my-quilt.yaml",
    "compare my-quilt.yaml --minutes seam=0.5,trim=1 --out ~/quilts/ways",
  ],
};
