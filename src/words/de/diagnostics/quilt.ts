import type { NotMotifs, QuiltFacts } from "../../../diagnostics/quilt.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { either, list, plural } from "../language.ts";
import { suggest } from "./suggest.ts";

export const quilt: WordsOf<QuiltFacts> = {
  directionByOtherMethod: ({ unit, fabric, from, to }) => ({
    message: `${unit.text}: ${from} genäht, zeigte der Druck von ${fabric} nicht überall, wohin er soll. ${
      to === null ? "Auch keine andere Methode kann das." : `Stattdessen ${to} genäht.`
    }`,
    hint: "Um die erste Methode zu behalten, den Druck mit der Einheit drehen lassen: `prints: with unit`.",
  }),

  biasOutside: ({ what, hint }) => ({
    message: `${what} hat außen Schrägkanten, wo sie sich dehnen.`,
    hint,
  }),

  blockSizeMissing: ({ block }) => ({
    message: `Block ${block} hat keine fertige Größe.`,
    hint: "Seine Größe schreiben, zum Beispiel `size: 8`, oder die Größen seiner Spalten und Zeilen.",
  }),

  blockSizesDiffer: ({ found, expected }) => ({
    message: `${found}, aber ${expected}.`,
    hint: "Blöcke einer Reihe brauchen eine Höhe; mit Zwischenstreifen brauchen Blöcke einer Spalte auch eine Breite.",
  }),

  blockUnknown: ({ word, known }) => ({
    message: `Es gibt keinen Block \`${word}\`.`,
    hint: suggest(word, known),
  }),

  blockUnused: ({ block }) => ({ message: `Block ${block} kommt im Quilt nicht vor.`, hint: "" }),

  borderDoesNotFit: ({ message, hint }) => ({ message, hint }),

  cellEmpty: ({ cell, mark }) => ({
    message: `${cell} ist mit \`${mark}\` bezeichnet, aber keine Einheit reicht dorthin.`,
    hint: "`-` setzt die Einheit links fort, `|` die darüber; jede andere Zelle braucht einen Code.",
  }),

  codeUnknown: ({ code, known }) => ({
    message: `Die Zeichnung verwendet \`${code}\`, was \`cells\` nicht erklärt.`,
    hint: suggest(code, known),
  }),

  codeUnused: ({ code, block }) => ({
    message: `Code \`${code}\` ist erklärt, aber in Block ${block} nicht gezeichnet.`,
    hint: "",
  }),

  colourwayCircular: ({ chain }) => ({
    message: `Diese Farben führen auf sich selbst zurück: ${chain.join(" -> ")}.`,
    hint: "Eine davon muss einen Stoff nennen.",
  }),

  colourwayUnknown: ({ word, known }) => ({
    message: `Es gibt keine Farbstellung \`${word}\`.`,
    hint: suggest(word, known),
  }),

  directionSpares: ({ unit, method, spare }) => ({
    message: `${unit}: ${method} genäht, ${plural(spare, "bleibt eine Einheit", `bleiben ${spare} Einheiten`)} übrig, deren Druck falsch herum steht.`,
    hint: "Eine andere Methode verbraucht vielleicht weniger.",
  }),

  fabricMissing: ({ word, block, known }) => ({
    message: `${block}: \`${word}\` ist weder ein Stoff noch eine Rolle mit einem Stoff.`,
    hint: suggest(word, known),
  }),

  fabricUnused: ({ fabric }) => ({ message: `Stoff ${fabric} kommt im Quilt nicht vor.`, hint: "" }),

  gridOffMarks: ({ message, below, above }) => ({
    message,
    hint: `Die nächsten Größen, die sich teilen lassen: ${below} oder ${above}. Sonst werden Zuschnittmaße aufgerundet und Einheiten beschnitten.`,
  }),

  methodUnknown: ({ unit, word, known }) => ({
    message: `Es gibt keine Methode \`${word}\` für ${unit}.`,
    hint: suggest(word, known),
  }),

  motifsNotAlike: ({ block, found }) => {
    const said: Readonly<Record<NotMotifs["why"], string>> = {
      "no code": found.why === "no code" ? `\`${found.code}\` ist kein Code seines Rasters` : "",
      "one only": "es gibt nur eines davon, und das dreht sich mit dem Block",
      "same all round": "sie sehen in jeder Drehung gleich aus",
      "units across": "eine Einheit liegt über der Linie zwischen zweien",
      "not alike": "sie sind nicht alle gleich, wie man sie auch dreht",
    };
    const hint =
      found.why === "no code"
        ? suggest(found.code, found.known)
        : "Schreiben, wie viele es quer und hoch sind, `motifs: 2 x 2`, oder Codes des Rasters, `motifs: g`; oder weglassen.";
    return { message: `Die Motive von Block ${block}: ${said[found.why]}.`, hint };
  },

  onPointUneven: ({ message, hint }) => ({ message, hint }),

  partialSeam: ({ block, divides }) => ({
    message: `Block ${block} lässt sich nicht allein mit geraden Nähten zusammennähen: Eine Naht wird zum Teil genäht und später geschlossen.`,
    hint: divides.length === 0 ? "" : `Für lauter gerade Nähte teilen: ${divides.join(", und ")}.`,
  }),

  printTilted: ({ fabric }) => ({
    message: `${fabric}: In Blöcken, die auf der Spitze stehen, neigt sich der Druck mit dem Block; aufrecht müsste er schräg zum Fadenlauf geschnitten werden.`,
    hint: "Dort einen Stoff ohne Richtung nehmen, oder die Blöcke gerade setzen.",
  }),

  quiltTooLarge: ({ patches, most }) => ({
    message: `Der Entwurf hat ${patches} Patches; höchstens ${most} lassen sich auf einmal durchrechnen.`,
    hint: "Einen Teil davon planen, oder die Teile als Zuschnittliste angeben.",
  }),

  roleUnknown: ({ unit, role, known }) => ({
    message: `Einheit „${unit}“ hat kein Teil \`${role}\`.`,
    hint: suggest(role, known),
  }),

  rolesUncovered: ({ unit, role, known }) => ({
    message: `In dieser Einheit „${unit}“ hat das Teil ${role} keinen Stoff.`,
    hint: `Für jedes Teil einen nennen: ${known.map((each) => `\`${each}\``).join(", ")}.`,
  }),

  rowsUneven: ({ found, expected }) => ({
    message: `${found}, aber ${expected}.`,
    hint: "Jede Reihe muss gleich lang werden.",
  }),

  seamsDoNotMeet: ({ message }) => ({
    message,
    hint: "Prüfen, ob das gewollt ist; sonst den Blöcken eine Breite geben.",
  }),

  setInSeam: ({ unit, cuts }) => ({
    message: `${unit} hat Patches, die in Ecken eingesetzt sind: Nähte, die eine Nahtzugabe vorher enden und abbiegen.`,
    hint:
      cuts.length === 0
        ? ""
        : `Für lauter gerade Nähte als \`drawn patches\` mit ${list(cuts)} zeichnen, eine Naht an der Stelle von jedem.`,
  }),

  sizesDoNotAddUp: ({ message, hint }) => ({ message, hint }),

  spanOffGrid: ({ code, cell, span }) => ({
    message: `\`${code}\` bei ${cell} deckt ${span} Zellen und läuft über das Raster hinaus.`,
    hint: "Verschieben, kleiner machen oder mehr Zellen zeichnen.",
  }),

  unitUnknown: ({ word, known }) => ({
    message: `Es gibt keine Einheit \`${word}\`.`,
    hint: suggest(word, known),
  }),

  unitUnsuited: ({ unit, size, reason, hint }) => ({ message: `${unit} ${size}: ${reason}`, hint }),

  unitsOverlap: ({ code, other, cell }) => ({
    message: `\`${code}\` deckt ${cell}, wo schon \`${other}\` gezeichnet ist.`,
    hint: `Zellen, die eine Einheit deckt, mit ${either(["`-` (von links)", "`|` (von oben)"])} bezeichnen.`,
  }),
};
