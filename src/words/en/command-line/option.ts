export const option = {
  either: (allowed: readonly string[]) => allowed.join(" or "),
  useOneOf: (value: string) => `Use one of: ${value}.`,
  useANumberAbove: "Use a number above zero, for example 2 or 0.5.",
};
