export const about = {
  turnsACutList:
    "Turns a cut list into fabric to buy, a cutting plan with the least waste, cutting diagrams and the order of cutting.",
};
