import type { Words } from "../../types.ts";

export const planning: Words["commandLine"]["planning"] = {
  makingTheCuttingSimpler: "Das Zuschneiden wird vereinfacht",
  lookingForTheLeast: "Der wenigste Stoff wird gesucht",
  tryingOtherWidthsAnd: "Andere Breiten und Wege werden probiert",
  searchingForLongCtrl: "Die Suche dauert lange; Strg-C behält den besten Plan bis jetzt.\n",
  of: (doing, done, of) => `${doing}: ${done} von ${of}`,
};
