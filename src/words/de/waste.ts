import type { Words } from "../types.ts";

/** Why fabric is in no piece: one name for each, in tables, lists and drawings alike. */
export const wasteCauses: Words["cutting"]["causes"] = {
  shrinkage: "Einlaufen",
  selvage: "Webkante",
  straightening: "Begradigen",
  trimming: "Beschneiden",
  "strip-end": "Streifenenden",
  "uncut-end": "unzerschnittenes Ende",
  "run-end": "Ende verbundener Streifen, nach dem Nähen",
  "panel-side": "Seiten der Bahnen, nach dem Nähen",
  "set-end": "Enden von Streifen, die länger sind als ihr Set",
};
