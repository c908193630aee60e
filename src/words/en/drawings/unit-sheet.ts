/** All the words of the sheet of units. */
export const unitSheet = {
  over: "Units",
  name: "Units at rest and in their turns",
  turned: ["at rest", "turned right  >", "half round  v", "turned left  <"],
  parts: (parts: readonly string[]) => `fabrics in order: ${parts.join(", ")}`,
  description: "Every unit drawn at rest, turned a quarter right, half round and a quarter left.",
} as const;
