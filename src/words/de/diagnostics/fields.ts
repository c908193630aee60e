import type {
  ExpectedKind,
  FieldHelp,
  FieldsFacts,
  FoundKind,
  MadeOf,
  NameFault,
  PieceFault,
} from "../../../diagnostics/fields.ts";
import type { FileKey } from "../../../diagnostics/file-keys.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { exampleOfKey, meaningOfKey } from "../../file-keys.ts";
import { fileKeys } from "../file-keys/index.ts";
import { capital } from "../language.ts";
import { lengthHint, lengthWhy, sizeExamples } from "../length-faults.ts";
import { likely } from "./suggest.ts";

function options(all: readonly string[]): string {
  return all.map((option) => `\`${option}\``).join(", ");
}

const keyExample = (about: FileKey | null, inches: boolean): string =>
  about === null ? "" : String(exampleOfKey(fileKeys[about], inches) ?? "");

/** An example to copy: of a key with the key, of a list in two lines. */
function exampleOf(field: string, { about, inches = true, keyed = false, example }: FieldHelp): string {
  const shown = example ?? keyExample(about, inches);
  if (shown === "") return "";
  if (!keyed) return `Zum Beispiel \`${shown}\`.`;
  if (shown.startsWith("- ")) return `Zum Beispiel \`${field}:\` und in der nächsten Zeile \`${shown}\`.`;
  return `Zum Beispiel \`${field}: ${shown}\`.`;
}

const FOUND: Readonly<Record<FoundKind, string>> = {
  "empty-list": "eine leere Liste",
  list: "eine Liste",
  group: "eine Gruppe von Schlüsseln",
  true: "`true`",
  false: "`false`",
  text: "ein Text",
};

const EXPECTED: Readonly<Record<Exclude<ExpectedKind["is"], "one-of">, string>> = {
  other: "etwas anderes",
  list: "eine Liste, in der etwas steht, jeder Eintrag nach einem `-`",
  group: "eine Gruppe von Schlüsseln",
  boolean: "`true` oder `false`",
  "whole-number": "eine ganze Zahl",
  "line-or-group": "ein Text in einer Zeile, oder eine Gruppe von Schlüsseln",
  "number-or-text": "eine Zahl oder ein Text",
};

const expectedOf = (expected: ExpectedKind): string =>
  expected.is === "one-of" ? `eins von ${options(expected.options)}` : EXPECTED[expected.is];

function nameFault(fault: NameFault): string {
  if (fault.is === "empty") return "ist leer";
  return fault.is === "unprintable"
    ? "hat Zeichen, die sich nicht drucken lassen"
    : `ist länger als ${fault.most} Zeichen`;
}

const PIECE_EXAMPLE =
  "Ein Teil sieht so aus: `himmel 2 1/2 x 4 1/2, 24` oder `rand 4 1/2 x WOF, 6, note äußerer Rand`.";

function pieceFault(fault: PieceFault): { why: string; hint: string } {
  if (fault.is === "no-size") return { why: "es hat kein Maß", hint: sizeExamples(fault.unit) };
  if (fault.is === "too-long") return { why: "es ist zu lang für eine Zeile", hint: PIECE_EXAMPLE };
  if (fault.is === "empty") return { why: "es ist leer", hint: PIECE_EXAMPLE };
  const near = nearest(fault.word, fault.known);
  return {
    why: "dieses Wort ist hier nicht bekannt",
    hint: near === null ? `Bekannte Wörter: ${fault.known.join(", ")}, note ...` : likely(near),
  };
}

const madeOf = (of: MadeOf): string => (of.what === "sashing" ? "die Zwischenstreifen" : `Rand ${of.index}`);

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
    return { message: `\`${field}\` hat keinen Wert.`, hint: `${exampleOf(field, help)}${colour}`.trim() };
  },

  fieldMissing: ({ field, help }) => {
    const what = help.about === null ? "" : `: ${meaningOfKey(fileKeys[help.about], help.of)}`;
    return { message: `\`${field}\` fehlt${what}.`, hint: exampleOf(field, help) };
  },

  fieldType: ({ field, found, expected, help }) => ({
    message: `\`${field}\` ist ${FOUND[found]}; erwartet wird ${expectedOf(expected)}.`,
    hint: exampleOf(field, help),
  }),

  madeOfBoth: (of) => ({
    message: `${capital(madeOf(of))}: Es ist sowohl ein Stoff als auch ein Block genannt.`,
    hint: "Nur eins von `fabric` und `block` behalten.",
  }),

  madeOfNothing: (of) => ({
    message: `\`fabric\` fehlt: woraus ${madeOf(of)} ${of.what === "sashing" ? "sind" : "ist"}.`,
    hint: "Zum Beispiel `fabric: creme`.",
  }),

  keyUnknown: ({ key, known, line = "", takenBy = "" }) => {
    const message = `Einen Schlüssel ${quote(key)} gibt es hier nicht.`;
    if (takenBy !== "") return { message, hint: `Es ist ein Wert: \`${takenBy}: ${key}\` schreiben.` };
    const near = nearest(key, known);
    const asLine = `Um ein Teil in einer Zeile zu schreiben, den Doppelpunkt weglassen: \`- ${line}\`.`.slice(
      0,
      160,
    );
    const help =
      line !== "" ? asLine : near === null ? `Bekannt sind hier: ${options(known)}.` : likely(near);
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

  lengthTooLong: ({ field, found, metres }) => ({
    message: `\`${field}\` ist ${quote(found)}; für mehr als ${metres} m wird nicht geplant.`,
    hint: "Die Maßeinheit prüfen: in, yd, mm, cm oder m.",
  }),

  lengthUnreadable: ({ written, fault, unit }) => ({
    message: `${quote(written)} ist keine Länge: ${lengthWhy(fault)}.`,
    hint: unit === null ? "" : lengthHint(fault, unit),
  }),

  linesTooMany: ({ what, found, most }) => ({
    message: `Es sind ${found} ${what === "fabrics" ? "Stoffe" : "Maße eines Stoffes"}; höchstens ${most} lassen sich auf einmal durchrechnen.`,
    hint: "Teile eines Maßes kommen in eine Zeile mit einer Anzahl.",
  }),

  measuresMixed: ({ written, problem: { fault, unit } }) => ({
    message: `${quote(written)}: ${lengthWhy(fault)}.`,
    hint: lengthHint(fault, unit),
  }),

  minutesUnreadable: ({ field, found, most }) => ({
    message: `\`${field}\` ist ${quote(found)}, keine Minutenzahl von 0 bis ${most}.`,
    hint: "Eine Zahl ohne Einheit schreiben, zum Beispiel `seam: 0.5`.",
  }),

  nameRepeated: ({ name, line }) => ({
    message: `Zwei Stoffe heißen ${quote(name)}${before(line)}.`,
    hint: "Jedem einen eigenen Namen geben, oder alle Teile unter einen davon schreiben.",
  }),

  nameUnusable: ({ field, fault }) => ({
    message: `\`${field}\` ${nameFault(fault)}.`,
    hint: "Zum Beispiel `Nachtmeer`.",
  }),

  partRepeated: ({ part }) => ({
    message: `Der Teil ${quote(part)} ist zweimal genannt; eine Anleitung hat jeden Teil einmal.`,
    hint: "Jeden Teil einmal nennen, in der gewünschten Reihenfolge, zum Beispiel `parts: [requirements, cutting, units]`.",
  }),

  percentUnreadable: ({ found, most }) => ({
    message: `${quote(found)} ist kein Einlaufen von 0 bis ${most} Prozent in Schritten von einem Zehntel.`,
    hint: "Zum Beispiel `3%` oder `2,5%`.",
  }),

  pieceLineUnreadable: ({ written, fault }) => {
    const { why, hint } = pieceFault(fault);
    return { message: `${quote(written)} ist kein Teil: ${why}.`, hint };
  },

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

  sizeUnreadable: ({ written, fault, like }) => {
    const hint =
      "unit" in like
        ? lengthHint(fault, like.unit)
        : like.like === "finished-unit"
          ? "Zum Beispiel `4` oder `4 x 2`, fertig."
          : `Zum Beispiel \`${keyExample(like.like, true)}\`.`;
    return { message: `${quote(written)} ist kein Maß: ${lengthWhy(fault)}.`, hint };
  },

  soldUnreadable: ({ found, fault }) => ({
    message: `${quote(found)} sagt nicht, wie der Stoff verkauft wird: ${
      fault.is === "not-understood"
        ? "es wird nicht verstanden"
        : fault.is === "step-zero"
          ? "der Schritt muss größer als null sein"
          : lengthWhy(fault)
    }.`,
    hint: "Zum Beispiel `by 1/8 yd`, `by 10 cm in m` oder `by 1/4 yd, least 1/2 yd`.",
  }),

  fullWidthLengthwise: ({ name, other }) => ({
    message: `${name} geht über die ganze Stoffbreite (\`WOF\`) und kann darum nicht auch längs geschnitten werden.`,
    hint: `\`lengthwise\` weglassen, oder sagen, wie lang es ist: \`${other} x 60 in, 3, cut lengthwise\`.`,
  }),
};
