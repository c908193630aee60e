export const planning = {
  makingTheCuttingSimpler: "Making the cutting simpler",
  lookingForTheLeast: "Looking for the least fabric",
  tryingOtherWidthsAnd: "Trying other widths and ways",
  searchingForLongCtrl: `Searching for long; Ctrl-C keeps the best plan so far.\n`,
  of: (doing: string, done: number, of: number) => `${doing}: ${done} of ${of}`,
};
