import type { Words } from "../../types.ts";

export const options: Words["commandLine"]["options"] = {
  printTheResultAs: "das Ergebnis als JSON ausgeben, für andere Programme",
  howStripsMayBe: "wie Streifen geschnitten werden dürfen",
  asTheFileSays: "wie in der Datei, sonst strips-2",
  leastClothFirstOr:
    "beim selben Einkauf die geringste Länge, oder weniger Linealeinstellungen und einfachere Schnitte",
  asTheFileSays2: "wie in der Datei, sonst simple",
  searchLongerForThe: "länger nach dem wenigsten Stoff und dem Beweis suchen: bis zu 30 Sekunden je Stoff",
  searchEachFabricThis: "jeden Stoff höchstens so lange suchen und dann den besten Plan behalten",
  aboutForAllFabrics: "etwa 3 für alle Stoffe zusammen",
  folderToWriteInto: "Ordner, in den geschrieben wird",
  outNameAfterThe: "out/NAME, nach dem Namen des Plans",
  writeOverFilesThat:
    "Dateien im Weg überschreiben, auch wenn dieses Programm sie nicht geschrieben hat oder sie geändert wurden",
  htmlFileToWrite: "HTML-Datei, die geschrieben wird",
  writeTheCuttingBook: "das Werkbuch, und die Anleitung eines Quilts, auch als PDF schreiben",
  paperOfThePdf: "Papier der PDF",
  letterWhereFabricIs: "letter, wo Stoff nach Yard verkauft wird, sonst a4",
  useWholePixelsFrom: (least, most) => `Ganze Pixel von ${least} bis ${most} angeben, zum Beispiel 1600.`,
  writeEveryDrawingAs: "jede Zeichnung auch als PNG-Bild schreiben, so viele Pixel breit",
  fontForNamesIn: "Schrift für Namen in anderen Schriftzeichen, für PDF und PNG",
  oneOfTheSystem: "eine des Systems",
  writeTheBookWithout:
    "das Buch auch ohne Zeichnungen schreiben, für ein Mitteilungsblatt: Markdown und Text",
  setTheWaysOf: "die Nähweisen eines Quilts im Buch nebeneinanderstellen",
  markBeforeTenthsIn: "Zeichen vor den Zehnteln in allem, was ausgegeben wird",
  asTheFileWrites: "wie Sprache und Datei es schreiben",
  languageOfAll: "Sprache von allem, was ausgegeben wird",
  languageOfTheFile: "die der Datei, sonst die des Systems",
  restateAQuiltFor:
    "einen Quilt auf dieses Lineal umstellen: fertige Maße rücken auf seine Striche, und jede Änderung wird genannt",
  theRulerOfThe: "das Lineal der Datei",
};
