import { english } from "../en/index.ts";
import type { Words } from "../types.ts";
export const german: Words = { ...english, language: "de" };
