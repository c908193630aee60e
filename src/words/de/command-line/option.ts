import type { Words } from "../../types.ts";
import { either } from "../language.ts";

export const option: Words["commandLine"]["option"] = {
  either: (allowed) => either(allowed),
  useOneOf: (value) => `Möglich: ${value}.`,
  useANumberAbove: "Eine Zahl größer als null angeben, zum Beispiel 2 oder 0,5.",
};
