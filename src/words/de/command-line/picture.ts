import type { Words } from "../../types.ts";

export const picture: Words["commandLine"]["picture"] = {
  widthOfThePicture: "Breite des Bildes; die Höhe ergibt sich",
  aDrawingAsA: "eine Zeichnung als PNG-Bild, in der gewünschten Breite",
  makesAPngPicture:
    "Macht aus einer SVG-Zeichnung, die plan oder arrange geschrieben hat, ein PNG-Bild für ein Mitteilungsblatt, einen Laden oder eine Folie, und legt es neben die Zeichnung.",
  svgDrawings: "SVG-Zeichnungen",
  pngWritten: (value) => `${value}.png geschrieben\n`,
};
