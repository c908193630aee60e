import type { FieldHelp, FieldsFacts } from "../../../diagnostics/fields.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { likely } from "./suggest.ts";

function options(all: readonly string[]): string {
  return all.map((option) => `\`${option}\``).join(", ");
}

function exampleOf(help: FieldHelp): string {
  const [first = "", ...below] = help.example.split("\n").map((line) => line.trim());
  if (first === "") return "";
  return `Zum Beispiel \`${first}\`${below.map((line) => ` und in der nächsten Zeile \`${line}\``).join("")}.`;
}

const before = (line: number | null): string => (line === null ? "" : ` (Zeile ${line})`);

export const fields: WordsOf<FieldsFacts> = {
  choiceUnknown: ({ field, found, options: allowed }) => ({
    message: `\`${field}\` ist ${quote(found)}; möglich ist ${options(allowed)}.`,
    hint: likely(nearest(found, allowed)),
  }),

  clothTooMuch: ({ fabric }) => ({
    message: `${quote(fabric)}: Die Teile ergeben mehr Stoff, als sich auf einmal durchrechnen lässt.`,
    hint: "Die Maße, die Anzahlen und ihre Maßeinheiten prüfen.",
  }),

  colourUnreadable: ({ found }) => ({
    message: `${quote(found)} ist keine Farbe.`,
    hint: 'Sechs Stellen in Anführungszeichen schreiben, zum Beispiel `"#1d3557"`, oder einen einfachen Namen wie `navy`.',
  }),

  countNotWhole: ({ found, most }) => ({
    message: `Die Anzahl ist ${quote(found)}; sie muss eine ganze Zahl von 1 bis ${most} sein.`,
    hint: "Zum Beispiel `24`.",
  }),

  fieldEmpty: ({ field, help }) => {
    const colour = field === "colour" ? " Eine Farbe, die mit # beginnt, braucht Anführungszeichen." : "";
    return { message: `\`${field}\` hat keinen Wert.`, hint: `${exampleOf(help)}${colour}`.trim() };
  },

  fieldMissing: ({ field, help }) => {
    const what = help.description === "" ? "" : `: ${help.description}`;
    return { message: `\`${field}\` fehlt${what}.`, hint: exampleOf(help) };
  },

  fieldType: ({ field, found, expected, help }) => ({
    message: `\`${field}\` ist ${found}; erwartet wird ${expected}.`,
    hint: exampleOf(help),
  }),

  keyUnknown: ({ key, known, hint = "", takenBy = "" }) => {
    const message = `Einen Schlüssel ${quote(key)} gibt es hier nicht.`;
    if (takenBy !== "") return { message, hint: `Es ist ein Wert: \`${takenBy}: ${key}\` schreiben.` };
    const near = nearest(key, known);
    const help = hint !== "" ? hint : near === null ? `Bekannt sind hier: ${options(known)}.` : likely(near);
    return { message, hint: help };
  },

  labelRepeated: ({ label, line }) => ({
    message: `Zwei Teile dieses Stoffes heißen ${quote(label)}${before(line)}.`,
    hint: "Jedem Maß eine eigene Bezeichnung geben, oder keine: Maße ohne Bezeichnung bekommen einen Buchstaben.",
  }),

  lengthNegative: ({ field, found }) => ({
    message: `\`${field}\` ist ${quote(found)}; weniger als null ist nicht möglich.`,
    hint: "",
  }),

  lengthOffMarks: ({ piece, size, mark }) => ({
    message: `${piece}: ${size} liegt zwischen den Strichen des Lineals (alle ${mark}). Es bleibt, wie es geschrieben ist.`,
    hint: "Das Maß prüfen, oder ein Lineal mit feineren Strichen nennen, zum Beispiel `ruler: 1/16 in` oder `ruler: 1 mm`.",
  }),

  lengthRoundedUp: ({ piece, written, size }) => ({
    message: `${piece}: ${quote(written)} steht genau auf keinem Lineal; es wird auf ${size} aufgerundet.`,
    hint: "",
  }),

  lengthTooLong: ({ field, found, most }) => ({
    message: `\`${field}\` ist ${quote(found)}; für mehr als ${most} wird nicht geplant.`,
    hint: "Die Maßeinheit prüfen: in, yd, mm, cm oder m.",
  }),

  lengthUnreadable: ({ written, why, hint }) => ({
    message: `${quote(written)} ist keine Länge: ${why}.`,
    hint,
  }),

  linesTooMany: ({ what, found, most }) => ({
    message: `Es sind ${found} Zeilen (${what}); höchstens ${most} lassen sich auf einmal durchrechnen.`,
    hint: "Teile eines Maßes kommen in eine Zeile mit einer Anzahl.",
  }),

  measuresMixed: ({ written, why, hint }) => ({ message: `${quote(written)}: ${why}.`, hint }),

  minutesUnreadable: ({ field, found, most }) => ({
    message: `\`${field}\` ist ${quote(found)}, keine Minutenzahl von 0 bis ${most}.`,
    hint: "Eine Zahl ohne Einheit schreiben, zum Beispiel `seam: 0.5`.",
  }),

  nameRepeated: ({ name, line }) => ({
    message: `Zwei Stoffe heißen ${quote(name)}${before(line)}.`,
    hint: "Jedem einen eigenen Namen geben, oder alle Teile unter einen davon schreiben.",
  }),

  nameUnusable: ({ field, why }) => ({ message: `\`${field}\` ${why}.`, hint: "Zum Beispiel `Nachtmeer`." }),

  partRepeated: ({ part }) => ({
    message: `Der Teil ${quote(part)} ist zweimal genannt; eine Anleitung hat jeden Teil einmal.`,
    hint: "Jeden Teil einmal nennen, in der gewünschten Reihenfolge, zum Beispiel `parts: [requirements, cutting, units]`.",
  }),

  percentUnreadable: ({ found, most }) => ({
    message: `${quote(found)} ist kein Einlaufen von 0 bis ${most} Prozent in Schritten von einem Zehntel.`,
    hint: "Zum Beispiel `3%` oder `2,5%`.",
  }),

  pieceLineUnreadable: ({ written, why, hint }) => ({
    message: `${quote(written)} ist kein Teil: ${why}.`,
    hint,
  }),

  piecesTooMany: ({ found, most }) => ({
    message: `Es sind insgesamt ${found} Teile; höchstens ${most} lassen sich auf einmal planen.`,
    hint: "Die Anzahlen prüfen, oder den Quilt in Teilen planen.",
  }),

  priceUnreadable: ({ found }) => ({
    message: `${quote(found)} ist kein Preis.`,
    hint: "Zum Beispiel `18,90 EUR per m`, `$12.50 per yd`, oder `12,50` für die Maßeinheit, in der verkauft wird.",
  }),

  selvagesTooWide: ({ selvages, width }) => ({
    message: `Die zwei Webkanten nehmen ${selvages} von einem ${width} breiten Stoff: Es bleibt nichts zum Schneiden.`,
    hint: "`selvage` ist die Breite einer Webkante, meist etwa `1/2 in` oder `1,5 cm`.",
  }),

  sizeNotPositive: ({ field, found }) => ({
    message: `\`${field}\` ist ${quote(found)}; jede Länge darin muss größer als null sein.`,
    hint: "Das Zuschnittmaß schreiben, Nahtzugabe inbegriffen.",
  }),

  sizeUnreadable: ({ written, why, hint }) => ({ message: `${quote(written)} ist kein Maß: ${why}.`, hint }),

  soldUnreadable: ({ found, why }) => ({
    message: `${quote(found)} sagt nicht, wie der Stoff verkauft wird: ${why}.`,
    hint: "Zum Beispiel `by 1/8 yd`, `by 10 cm in m` oder `by 1/4 yd, least 1/2 yd`.",
  }),

  fullWidthLengthwise: ({ name, other }) => ({
    message: `${name} geht über die ganze Stoffbreite (\`WOF\`) und kann darum nicht auch längs geschnitten werden.`,
    hint: `\`lengthwise\` weglassen, oder sagen, wie lang es ist: \`${other} x 60 in, 3, cut lengthwise\`.`,
  }),
};
