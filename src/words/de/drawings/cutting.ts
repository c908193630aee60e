import type { Words } from "../../types.ts";
import { bladeCautions, estimates } from "../cautions.ts";
import { capital, capitals, counted } from "../language.ts";
import { clothName } from "../quilt/cloths.ts";
import { wasteCauses } from "../waste.ts";

/** All the words that stand in cutting diagrams. */
export const cutting: Words["drawings"]["cutting"] = {
  waste: capitals(wasteCauses),
  headings: {
    drawing: "Schnittplan",
    pieces: "Teile zuzuschneiden",
    waste: "Stoff, der in keinem Teil steckt",
    signs: "Zeichen",
  },
  caution: [bladeCautions.shut, bladeCautions.away, bladeCautions.fingers, estimates].join(" "),
  shape: (angle, kind, width) => `${angle === null ? "" : `${angle}° `}${kind}, aus Streifen ${width}`,
  each: (width) => `je ${width}`,
  proof: {
    mixOpen: "bester gefundener; nicht bewiesen",
    mixFewest: "bewiesen: nicht weniger Stücke",
    mixCheapest: "bewiesen: nichts billiger",
    nothing: "nichts zu kaufen",
    shortest: "bewiesen: kein kürzerer Zuschnitt dieser Art",
    within: (gap) => `Einkauf bewiesen; Länge bis auf ${gap}`,
    open: (gap) => `nicht bewiesen: bis zu ${gap} weniger möglich`,
  },
  print: {
    none: "keine Richtung",
    "one-way": { along: "eine Richtung, längs", across: "eine Richtung, quer" },
    "two-way": { along: "zwei Richtungen, längs", across: "zwei Richtungen, quer" },
  },
  buy: {
    inHand: "nichts: aus vorhandenem Stoff",
    nothingMore: "nichts mehr",
    more: (what) => `${what} mehr`,
  },
  facts: {
    buy: "Kaufen",
    used: "Gebrauchte Länge",
    usable: "Nutzbare Breite",
    inNone: "Verschnitt",
    print: "Druck",
    proof: "Wie gut",
  },
  widthOf: (usable, width) => `${usable} von ${width}`,
  gap: (count, drawn, first, last) => {
    const numbers = first === last ? `Streifen ${first}` : `Streifen ${first} bis ${last}`;
    return [
      `${count} weitere genau wie Streifen ${drawn}: ${numbers}`,
      `${count} weitere wie ${drawn}: ${numbers}`,
      `${count} weitere: ${first === last ? first : `${first}–${last}`}`,
      `+${count}`,
    ];
  },
  keep: (size) => [`Rest ${size}`, "Rest"],
  uncutGap: ["kürzer gezeichnet, als es ist", "gekürzt"],
  described: (buy, strips, pieces, sizes) =>
    `${buy === null ? "Nichts zu kaufen." : `Zu kaufen: ${buy}.`} ${counted(strips, "Streifen", "Streifen")} und ${counted(pieces, "Teil", "Teile")}: ` +
    `${sizes.join("; ")}.`,
  describedPiece: (letter, count, size) => `${letter}, ${count} Stück ${size}`,
  describedProof: (share, proof) => `${share} des Stoffes stecken in keinem Teil. ${capital(proof)}.`,
  count: (count) => counted(count, "Teil", "Teile"),
  allCut: (count) => `alle ${count} geschnitten`,
  stillToCut: (more, cut) => `noch ${more}, ${cut} geschnitten`,
  directions: { grain: "Fadenlauf", "one-way": "Druck oben", "two-way": "Druck" },
  signs: {
    number: "Streifen, in Schnittfolge, mit seiner Breite",
    grain: "Fadenlauf längs: entlang der Webkante",
    "one-way": "wohin die Oberseite des Drucks zeigt",
    "two-way": "wie der Druck verläuft",
    gap: "in der Zeichnung ausgelassen",
    keep: "Rest, groß genug zum Aufheben",
    shaping: "erst auf den Strichen schneiden, wenn das Teil frei liegt, rechte Seite oben",
    key: "Buchstabe von Teilen, die zu klein dafür sind",
  },
  lay: (name, length, alike, part, isTrimmed) => {
    const who = `${capital(clothName(name))}${length === "" ? "" : `, ${length}`}${isTrimmed ? ", beschnitten" : ""}`;
    const many = alike > 1 ? ` – ${alike} gleich geschnitten` : "";
    return part.of > 1 ? `${who}${many} – Teil ${part.n} von ${part.of}` : `${who}${many}`;
  },
};
