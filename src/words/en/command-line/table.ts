export const table = {
  printThisHelp: "print this help",
};
