export const stopping = {
  stoppingTheBestPlan: `
Halt: Der beste Plan bis jetzt wird behalten. Noch einmal Strg-C beendet sofort.\n`,
};
