import { type Phrase, sayPhrase } from "../length/phrase.ts";
import type { Ruler } from "../length/types.ts";
import type { Assumption } from "./types.ts";

/** An assumption whose lengths are printed as the ruler reads. */
export function assumed(fabric: string, subject: string, phrase: Phrase, ruler: Ruler): Assumption {
  return { fabric, subject, value: sayPhrase(phrase, ruler), phrase };
}
