export const table = {
  printThisHelp: "diese Hilfe ausgeben",
};
