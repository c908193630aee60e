import type { Words } from "../../../types.ts";

export const picture: Words["commandLine"]["picture"] = {
  widthOfThePicture: "Breite des Bildes; die Höhe ergibt sich",
  aDrawingAsA: "eine Zeichnung als PNG-Bild, in der gewünschten Breite",
  makesAPngPicture:
    "Macht aus einer SVG-Zeichnung, die plan oder arrange geschrieben hat, ein PNG-Bild für ein Mitteilungsblatt, einen Laden oder eine Folie, und legt es neben die Zeichnung.",
  svgDrawings: "SVG-Zeichnungen",
  pngWritten: (value) => `${value}.png geschrieben\n`,
  examples: [
    "new blocks > mein-quilt.yaml",
    "plan mein-quilt.yaml --out meiner",
    "picture meiner/top.svg",
    "picture meiner/top.svg meiner/pressing.svg --width 2400",
  ],
};
