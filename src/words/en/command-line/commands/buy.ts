export const buy = {
  oneTableForSeveral:
    "one table for several sizes: blocks (3x3,4x5), finished sizes (60 x 80 in, throw, lap, crib) or beds (queen drop 12 in at sides and foot)",
  theSizeOfThe: "the size of the file",
  printTheListOr: "print the list, or the table of several sizes, as CSV for spreadsheets and layouts",
  planningEachSizeOf: (done: number, of: number) => `Planning each size: ${done} of ${of}`,
  theShoppingListHow: "the shopping list: how much of each fabric to ask for",
  theCutListYaml: "the cut list, YAML or JSON",
  errorSizesDoesNot: (value: string) =>
    `error: --sizes does not go together with ${value}: ask for one of them at a time.\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new blocks > my-quilt.yaml",
    "buy my-quilt.yaml",
    'buy my-quilt.yaml --sizes "3x3, 48 x 60 in, twin drop 12 in"',
  ],
};
