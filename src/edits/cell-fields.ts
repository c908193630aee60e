/** Fields of a cell that name no unit. */
export const FIELDS = new Set([
  ...["turn", "span", "method", "prints", "corner", "corners", "strips", "count", "centre", "leaning"],
  ...["patches", "drawn-on"],
]);
