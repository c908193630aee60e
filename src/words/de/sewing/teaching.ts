import type { Words } from "../../types.ts";
import { counted, list } from "../language.ts";

/** The sheet of whoever teaches a quilt to a class. */
export const teaching: Words["teaching"] = {
  subtitle: "Blatt für die Kursleitung",
  title: (name, kits) => `${name}: ${counted(kits, "Materialpackung", "Materialpackungen")}`,
  facts: {
    kits: "Materialpackungen",
    sessions: "Kurstage",
    costKit: "Stoff für eine Packung",
    costAlone: "Eine Packung allein gekauft",
  },
  kits: {
    title: "Die Materialpackungen",
    caption: "Stoff für alle Packungen und für eine",
    perKit: "Preis je Packung",
    total: "alle",
    lead: "Alle Packungen werden zusammen nach dem Werkbuch zugeschnitten. Die Teile Stoff für Stoff in Beutel abzählen, und eine zweite Person prüft eine Packung, bevor die übrigen gefüllt werden.",
    leadSorts:
      "Alle Packungen werden zusammen nach dem Werkbuch zugeschnitten: Ein Beutel, den mehrere Arten von Packungen haben, wird für alle auf einmal geschnitten. Die Teile Stoff für Stoff in Beutel abzählen, eine Art nach der anderen, und eine zweite Person prüft von jeder Art eine Packung, bevor die übrigen gefüllt werden.",
    sortCaption: "Die Arten von Packungen und was eine davon kostet",
    bags: "In jeder Packung",
    bagsOf: (sort, kits) => `${sort} (${kits} füllen)`,
    forOne: (number) => `Packung ${number}`,
    bag: (letter, count, size) => `${letter}: ${count} × ${size}`,
  },
  bring: {
    title: "Was alle mitbringen",
    fabric: "Je nach Packung, weil die Quilts verschieden sind",
    items: [
      "Eine funktionierende Nähmaschine mit Anleitung, dem Fuß für die Nahtzugabe und einer neuen Nadel.",
      "Stecknadeln, kleine Schere, Nahttrenner, einen Stift, der auf dem Stoff zu sehen ist und sich auswaschen lässt.",
      "Ein Lineal und einen Rollschneider mit scharfer Klinge und schließbarer Sicherung, zum Beschneiden; Matten und Bügeleisen werden geteilt.",
    ],
  },
  session: {
    title: "Kurstage",
    lead: "Ein Kurstag ist etwa ein Nachmittag. Die Sicherheitshinweise des Werkbuchs vor dem ersten vorlesen und jedes Mal wieder, wenn die Rollschneider zur Hand genommen werden.",
    units: (number) => `Kurstag ${number}: Einheiten`,
    blocks: (number) => `Kurstag ${number}: Blöcke`,
    top: (number, borders) => `Kurstag ${number}: Reihen${borders ? " und Ränder" : ""}`,
    finish: (number) => `Kurstag ${number}: Fertigstellen`,
    show: "Zeigen",
    inClass: "Im Kurs",
    homework: "Zu Hause",
    showUnits: (names) => `Vorher genähte Muster, nach jedem Schritt eines angehalten: ${list(names)}.`,
    makeUnits: (names) => `Alle nähen je eine ${list(names)}, bügeln und messen sie.`,
    restUnits: (made) => `Die übrigen: ${made.join("; ")}.`,
    block: (name, count) => `${name} (${count} nähen)`,
    showBlocks: "Ein ausgelegter Block, einer mit genähten Reihen, ein ganzer, die Nähte von hinten gezeigt.",
    makeBlocks: "Alle legen einen Block aus, nähen und messen ihn.",
    ofSort: (number, text) => `Packung ${number}: ${text}`,
    restBlocks: (made) => `Die übrigen: ${made.join("; ")}.`,
    showTop: "Zwei Reihen, gesteckt, wo ihre Nähte ineinandergreifen.",
    makeTop: "Alle legen das ganze Top aus, nummerieren die Reihen und nähen die ersten zwei zusammen.",
    restTop: (borders) =>
      borders
        ? "Die übrigen Reihen, das Top gebügelt; dann die Ränder, durch die Mitte gemessen."
        : "Die übrigen Reihen, und das Top gebügelt.",
    showFinish:
      "Eine Ecke der Einfassung bei jedem Falz, die Verbindung zweier Streifen, drei geheftete Lagen.",
    makeFinish: "Alle nähen die Einfassung zusammen und eine Ecke an einem Probestück.",
    restFinish: "Heften, quilten, einfassen und das Etikett.",
  },
  kit: {
    subtitle: (number, kits) => (kits === 1 ? `Packung ${number}` : `Packung ${number}, eine von ${kits}`),
    holds: "Was in der Packung ist",
    pieces: "Teile",
    lead: "Zuerst nachzählen, Beutel für Beutel. Quadrate, die diagonal geschnitten werden, können als Hälften oder Viertel im Beutel liegen.",
  },
};
