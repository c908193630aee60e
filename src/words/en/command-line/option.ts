export const option = {
  either: (allowed: readonly string[]) => allowed.join(" or "),
  useOneOf: (value: string) => `Use one of: ${value}.`,
  useANumberAbove: "Use a number above zero, for example 2 or 0.5.",
};

/** What stands for the value of an option: `--out <folder>`. */
export const values = {
  aim: "aim",
  file: "file",
  folder: "folder",
  kits: "kits",
  language: "language",
  length: "length",
  mark: "mark",
  names: "names",
  number: "number",
  pixels: "pixels",
  seconds: "seconds",
  size: "size",
  sizes: "sizes",
  steps: "steps",
  style: "style",
  text: "text",
  unit: "unit",
  way: "way",
  width: "width",
};
