import type { Words } from "../../types.ts";

export const option: Words["commandLine"]["option"] = {
  useOneOf: (value) => `Möglich: ${value}.`,
  useANumberAbove: "Eine Zahl größer als null angeben, zum Beispiel 2 oder 0,5.",
};
