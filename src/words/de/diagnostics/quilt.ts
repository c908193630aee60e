import type { NotMotifs, OffMarks, QuiltFacts, UnitTold } from "../../../diagnostics/quilts/quilt.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { either, figure, list, plural } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { methodName, unitName, unitTold } from "../quilt/unit-names.ts";
import {
  AXES,
  blockSizesFault,
  borderFault,
  cellPlace,
  cutsThrough,
  divideTold,
  onPointFault,
  rowsFault,
  sumFault,
} from "./design.ts";
import { suggest } from "./suggest.ts";
import { unitFault } from "./units.ts";

const NO_OTHER = "Auch keine andere Methode kann das.";

/** A print that would not all point the way it should, made so. */
function directionLost(unit: UnitTold, fabrics: readonly string[], from: string): string {
  return `${unitTold(unit)}: ${methodName(from)} genäht, zeigte der Druck von ${list(fabrics)} nicht überall, wohin er soll.`;
}

/** The same where what is done instead stands elsewhere. */
export function directionLostBy({ unit, fabrics, from, to }: QuiltFacts["directionByOtherMethod"]): string {
  const lost = directionLost(unit, fabrics, from);
  return to.length === 0 ? `${lost} ${NO_OTHER}` : lost;
}

function offMarks({ block, axis, count, whole, cell, mark }: OffMarks): string {
  const { length } = spoken;
  const what =
    count === 1
      ? `Block ${block} hat ${AXES[axis]} von ${length(cell)}`
      : `Block ${block}: ${length(whole)} in ${count} ${AXES[axis]} ergibt je ${length(cell)}`;
  return `${what}, was sich auf Strichen von ${length(mark)} nicht schneiden lässt.`;
}

export const quilt: WordsOf<QuiltFacts> = {
  directionByOtherMethod: ({ unit, fabrics, from, to }) => ({
    message: `${directionLost(unit, fabrics, from)} ${
      to.length === 0 ? NO_OTHER : `Stattdessen ${list(to.map(methodName))} genäht.`
    }`,
    hint: "Um die erste Methode zu behalten, den Druck mit der Einheit drehen lassen: `prints: with unit`.",
  }),

  biasOutside: ({ unit, method }) => ({
    message: `Einheit „${unitName(unit)}“, ${methodName(method)} genäht, hat außen Schrägkanten, wo sie sich dehnen.`,
    hint: "Die Kanten mit einer Stütznaht sichern, einen Rand annähen oder eine andere Methode wählen.",
  }),

  blockSizeMissing: ({ block }) => ({
    message: `Block ${block} hat keine fertige Größe.`,
    hint: "Seine Größe schreiben, zum Beispiel `size: 8`, oder die Größen seiner Spalten und Zeilen.",
  }),

  blockSizesDiffer: ({ fault }) => ({
    message: blockSizesFault(fault),
    hint: "Blöcke einer Reihe brauchen eine Höhe; mit Zwischenstreifen brauchen Blöcke einer Spalte auch eine Breite.",
  }),

  blockUnknown: ({ word, known }) => ({
    message: `Es gibt keinen Block \`${word}\`.`,
    hint: suggest(word, known),
  }),

  blockUnused: ({ block }) => ({ message: `Block ${block} kommt im Quilt nicht vor.`, hint: "" }),

  borderDoesNotFit: ({ fault }) => borderFault(fault),

  cellEmpty: ({ block, place, mark }) => ({
    message: `Block ${block}, ${cellPlace(place)}, ist mit \`${mark}\` bezeichnet, aber keine Einheit reicht dorthin.`,
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
    message: `${unitTold(unit)}: ${methodName(method)} genäht, ${plural(spare, "bleibt eine Einheit", `bleiben ${spare} Einheiten`)} übrig, deren Druck falsch herum steht.`,
    hint: "Eine andere Methode verbraucht vielleicht weniger.",
  }),

  fabricMissing: ({ word, block, known }) => ({
    message: `${block === null ? "Der Quilt" : `Block ${block}`}: \`${word}\` ist weder ein Stoff noch eine Rolle mit einem Stoff.`,
    hint: suggest(word, known),
  }),

  fabricUnused: ({ fabric }) => ({ message: `Stoff ${fabric} kommt im Quilt nicht vor.`, hint: "" }),

  gridOffMarks: (off) => ({
    message: offMarks(off),
    hint: `Die nächsten Größen, die sich teilen lassen: ${spoken.length(off.below)} oder ${spoken.length(off.above)}. Sonst werden Zuschnittmaße aufgerundet und Einheiten beschnitten.`,
  }),

  methodUnknown: ({ unit, word, known }) => ({
    message: `Es gibt keine Methode \`${word}\` für ${unitName(unit)}.`,
    hint: suggest(word, known),
  }),

  motifsNotAlike: ({ block, found }) => {
    const said: Readonly<Record<NotMotifs["why"], string>> = {
      "no-code": found.why === "no-code" ? `\`${found.code}\` ist kein Code seines Rasters` : "",
      "one-only": "es gibt nur eines davon, und das dreht sich mit dem Block",
      "same-all-round": "sie sehen in jeder Drehung gleich aus",
      "units-across": "eine Einheit liegt über der Linie zwischen zweien",
      "not-alike": "sie sind nicht alle gleich, wie man sie auch dreht",
    };
    const hint =
      found.why === "no-code"
        ? suggest(found.code, found.known)
        : "Schreiben, wie viele es quer und hoch sind, `motifs: 2 x 2`, oder Codes des Rasters, `motifs: g`; oder weglassen.";
    return { message: `Die Motive von Block ${block}: ${said[found.why]}.`, hint };
  },

  onPointUneven: ({ fault }) => onPointFault(fault),

  partialSeam: ({ block, divides }) => ({
    message: `Block ${block} lässt sich nicht allein mit geraden Nähten zusammennähen: Eine Naht wird zum Teil genäht und später geschlossen.`,
    hint:
      divides.length === 0
        ? ""
        : `Für lauter gerade Nähte teilen: ${divides.map(divideTold).join(", und ")}.`,
  }),

  printTilted: ({ fabric }) => ({
    message: `${fabric}: In Blöcken, die auf der Spitze stehen, neigt sich der Druck mit dem Block; aufrecht müsste er schräg zum Fadenlauf geschnitten werden.`,
    hint: "Dort einen Stoff ohne Richtung nehmen, oder die Blöcke gerade setzen.",
  }),

  quiltTooLarge: ({ patches, most }) => ({
    message: `Der Entwurf hat ${figure(patches)} Patches; höchstens ${figure(most)} lassen sich auf einmal durchrechnen.`,
    hint: "Einen Teil davon planen, oder die Teile als Zuschnittliste angeben.",
  }),

  roleUnknown: ({ unit, role, known }) => {
    const part = typeof role === "string" ? `\`${role}\`` : `Nummer ${role.number}`;
    return {
      message: `Einheit „${unitName(unit)}“ hat kein Teil ${part}.`,
      hint: suggest(typeof role === "string" ? role : "", known),
    };
  },

  rolesUncovered: ({ unit, role, known }) => ({
    message: `In dieser Einheit „${unitName(unit)}“ hat das Teil ${role} keinen Stoff.`,
    hint: `Für jedes Teil einen nennen: ${known.map((each) => `\`${each}\``).join(", ")}.`,
  }),

  rowsUneven: ({ fault }) => ({
    message: rowsFault(fault),
    hint: "Jede Reihe muss gleich lang werden.",
  }),

  seamsDoNotMeet: () => ({
    message:
      "Die Reihen sind gleich lang, aber die Nähte zwischen den Blöcken treffen nicht auf die der ersten Reihe.",
    hint: "Prüfen, ob das gewollt ist; sonst den Blöcken eine Breite geben.",
  }),

  setInSeam: ({ unit, cuts }) => ({
    message: `${unitName(unit)} hat Patches, die in Ecken eingesetzt sind: Nähte, die eine Nahtzugabe vorher enden und abbiegen.`,
    hint:
      cuts.length === 0
        ? ""
        : `Für lauter gerade Nähte als \`drawn patches\` mit ${list(cuts.map(cutsThrough))} zeichnen, eine Naht an der Stelle von jedem.`,
  }),

  sizesDoNotAddUp: ({ fault }) => sumFault(fault),

  spanOffGrid: ({ code, place, columns, rows }) => ({
    message: `\`${code}\` bei ${cellPlace(place)} deckt ${columns} x ${rows} Zellen und läuft über das Raster hinaus.`,
    hint: "Verschieben, kleiner machen oder mehr Zellen zeichnen.",
  }),

  unitUnknown: ({ word, known }) => ({
    message: `Es gibt keine Einheit \`${word}\`.`,
    hint: suggest(word, known),
  }),

  unitUnsuited: ({ unit, asked, fault, place }) => {
    const { message, hint } = unitFault(fault, unit);
    const how = "method" in asked ? `${methodName(asked.method)} genäht` : spoken.size(asked.finished);
    const look =
      place === null
        ? ""
        : ` Zu sehen ${spoken.length(place.across)} von links und ${spoken.length(place.down)} von oben.`;
    return { message: `${unitName(unit)}, ${how}: ${message}${look}`, hint };
  },

  unitsOverlap: ({ code, other, place }) => ({
    message: `\`${code}\` deckt ${cellPlace(place)}, wo schon \`${other}\` gezeichnet ist.`,
    hint: `Zellen, die eine Einheit deckt, mit ${either(["`-` (von links)", "`|` (von oben)"])} bezeichnen.`,
  }),
};
