export const asking = {
  cutSoManyQuilts: "cut so many quilts together, as kits for a class",
  cutKitsOfSorts:
    "cut kits for a class together: how many (12), kits of several sizes and colourways (4 of 3x3, 5 of lap in evening), or file for those the file names",
  kitsOrSorts: (MOST_KITS: number) =>
    `Kits are a whole number from 1 to ${MOST_KITS}, for example 12; several sorts, for example "4 of 3x3, 5 of lap in evening"; or file for those of the file.`,
  notWithSorts: (option: string) => `error: ${option} does not go with kits of several sorts.\n`,
  oneQuilt: "one quilt",
  kitsAreAWhole: (MOST_KITS: number) => `Kits are a whole number from 1 to ${MOST_KITS}, for example 12.`,
  tryAnotherUsableWidth: "try another usable width of fabric, in place of every one up to 60 in",
  takeEveryBoltTo: "take every bolt to end after this length: no strip crosses its end",
  boltAsTheFileSays: "as the file says, else 15 yd or 15 m",
  boltIsNotA: (typed: string, message: string) => `--bolt "${typed}" is not a length: ${message}`,
  boltIsNoLength: (typed: string) => `--bolt ${typed} is no length of a bolt, for example --bolt 12yd`,
  asTheFileSays: "as the file says",
  useTheClothOf: "use the cloth of this table first (CSV)",
  allIsBought: "all is bought",
  takeEveryColourFrom:
    "take every colour from fat quarters (18 x 21 in, or 50 x 55 cm) where its pieces fit one",
  widthIsNotA: (typed: string, message: string) => `--width "${typed}" is not a length: ${message}`,
  widthIsNoWidth: (typed: string) => `--width ${typed} is no width of a fabric`,
};
