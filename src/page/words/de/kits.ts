import type { PageWords } from "../index.ts";

/** What the page says of the kits of a class, in German. */
export const kitsWords: PageWords["kits"] = {
  title: "Materialpackungen für einen Kurs",
  help: "Packungen einer Größe oder mehrerer werden zusammen aus dem wenigsten Stoff geschnitten; zu jeder gehört ein eigenes Blatt.",
  begin: "Packungen dieses Quilts, zunächst sechs",
  another: "Packungen einer anderen Art",
  line: (number) => `Packungen der Art ${number}`,
  count: (number) => `Wie viele Packungen der Art ${number}`,
  many: (count) => (count === 1 ? "1 Packung" : `${count} Packungen`),
  size: "Größe",
  asDrawn: "wie gezeichnet",
  colours: "Farben",
  ownColours: "die eigenen",
  said: (number, count) => `${count === 1 ? "1 Packung" : `${count} Packungen`} der Art ${number}.`,
  away: (line) => `${line} wegnehmen`,
  wrongSize: (size) => `„${size}“ ist keine Größe: Blöcke quer mal hoch wie 3x3, oder ein Name wie lap.`,
  unread: (line) => `„${line}“ lässt sich nicht als Packungen lesen: siehe den Text.`,
  colourways: "Andere Farben für den ganzen Quilt",
  colourwayNamed: (number) => `Farben ${number}`,
  anotherColourway: "Noch eine Farbstellung",
  insteadOf: (fabric) => `statt ${fabric}`,
  swapped: (name, from, to) => `${name}: ${to} statt ${from}.`,
  oneFabric: "Für andere Farben braucht es einen zweiten Stoff.",
  plan: "Packungen planen",
  planning: "Die Packungen werden geplant.",
  planned: (kits, sorts) =>
    `${kits} Packungen geplant, zusammen geschnitten: Unten sind das Blatt für die Kursleitung und ${sorts === 1 ? "das Blatt einer Packung" : `die Blätter von ${sorts} Arten von Packungen`}. „Alles, als ZIP“ enthält sie auch.`,
  sheet: "das Blatt für die Kursleitung",
  paper: (number) => `Blatt einer Packung, Art ${number}`,
  save: (paper) => `Sichern: ${paper}`,
};
