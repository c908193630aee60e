export const check = {
  whatIsWrongWith: "what is wrong with a file, all of it at once, without planning",
  theCutListYaml: "the cut list, YAML or JSON",
  noErrors: (name: string) => `${name}: no errors\n`,
};
