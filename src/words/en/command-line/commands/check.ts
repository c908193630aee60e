export const check = {
  whatIsWrongWith: "what is wrong with a file, all of it at once, without planning",
  theCutListYaml: "the cut list, YAML or JSON",
  noErrors: (name: string) => `${name}: no errors\n`,
  /** Command lines to copy, without the program's name. */
  examples: ["new blocks > my-quilt.yaml", "check my-quilt.yaml"],
};
