export const about = {
  turnsACutList:
    "Macht aus einer Zuschnittliste den Stoffbedarf, einen Schnittplan mit dem geringsten Verschnitt, Zeichnungen dazu und die Reihenfolge des Zuschneidens.",
};
