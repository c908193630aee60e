export const stopping = {
  stoppingTheBestPlan: `
Stopping: the best plan so far is kept. Ctrl-C once more ends at once.\n`,
};
