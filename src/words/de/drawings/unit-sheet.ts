import type { Words } from "../../types.ts";

/** All the words of the sheet of units. */
export const unitSheet: Words["drawings"]["unitSheet"] = {
  over: "Einheiten",
  name: "Einheiten ungedreht und in ihren Drehungen",
  turned: ["ungedreht", "nach rechts  >", "halb gedreht  v", "nach links  <"],
  parts: (parts) => `Stoffe der Reihe nach: ${parts.join(", ")}`,
  description:
    "Jede Einheit ungedreht gezeichnet, eine Vierteldrehung nach rechts, halb gedreht und eine Vierteldrehung nach links.",
};
