import type { Words } from "../../../types.ts";

export const arrange: Words["commandLine"]["arrange"] = {
  anotherArrangementByChance: "eine andere zufällige Anordnung; dieselbe Zahl ergibt dieselbe",
  useAWholeNumber: "Eine ganze Zahl bis 999999 angeben, zum Beispiel 7.",
  onlyTheseTurningsOf:
    "nur diese Drehungen der Blöcke, und ihre Reihen zum Kopieren in die Datei: upright, right, upside-down, left, by-turns, centre, pairs, chance",
  onlyTheseTurningsOf2:
    "nur diese Drehungen der Motive in einem Block, und das Raster zum Kopieren in die Datei: upright, right, upside-down, left, facing, stacked, apart, by-turns, clockwise, anticlockwise, centre, chance, oder all; neben --only jede mit jeder",
  turningsOfBlocksAnd:
    "Drehungen der Blöcke und der Motive darin nebeneinander: Bilder, und was jede braucht",
  turnsTheBlocksOf:
    "Dreht die Blöcke eines Quilts um Viertel: alle gleich, abwechselnd links und rechts, um die Mitte, in gespiegelten Paaren, zufällig und wie in der Datei. Dreht auch die Motive in den Blöcken, ihre größten gleichen Teile: alle gleich, in zugewandten Paaren, Rücken an Rücken, abwechselnd, im Kreis. Jede Anordnung wird geplant; hat ein Druck ein Oben, können sich Einkauf und Zuschnitt ändern. Was gleich aussieht, ist einmal gezeigt. Nennt, an wie vielen Stellen die Nähte ineinandergreifen, und schreibt ein Bild von allen (arrangements.svg).",
  theQuiltFileYaml: "die Quiltdatei, YAML oder JSON",
  planningEachArrangementOf: (done, of) => `Jede Anordnung wird geplant: ${done} von ${of}`,
  arrangementsSvgWrittenInto: (named) => `arrangements.svg geschrieben in ${named}\n`,
  examples: [
    "new blocks > mein-quilt.yaml",
    "arrange mein-quilt.yaml --only centre,pairs",
    "arrange mein-quilt.yaml --seed 7 --out ~/quilts/gedreht",
  ],
};
