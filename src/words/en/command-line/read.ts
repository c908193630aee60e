export const read = {
  standardInput: "standard input",
};
