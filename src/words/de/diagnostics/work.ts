import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { FactFault, WorkFacts } from "../../../diagnostics/work.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { FACT_EXAMPLES } from "../fact-examples.ts";
import { plural } from "../language.ts";
import { lengthWhy } from "../length-faults.ts";
import { clothName } from "../quilt/cloths.ts";

function factWhy(fault: FactFault): string {
  switch (fault.is) {
    case "no-strip-range":
      return `\`${fault.text}\` ist keine Streifennummer und kein Bereich wie 3 to 7`;
    case "no-strip-number":
      return `\`${fault.text}\` ist keine Streifennummer`;
    case "no-strips":
      return "es sagt nicht, welche Streifen";
    case "no-piece-count":
      return `\`${fault.text}\` ist keine Anzahl von Teilen`;
    case "no-cloth-length":
      return `\`${fault.text}\` ist keine Stofflänge`;
    case "no-cloth-size":
      return `\`${fault.text}\` ist kein Stoffmaß`;
    case "nothing":
      return "es sagt nichts";
    case "too-long":
      return "es ist zu lang";
    case "no-happening":
      return "es sagt nicht, was geschehen ist (`cut`, `cut off`, `spoiled`, `wide`, `left`, `in hand`)";
    case "bag-unlettered":
      return "ein Beutel wird mit seinem Buchstaben genannt, wie in `20 of A in the bag`";
    case "pieces-cut-off":
      return "Teile werden geschnitten, Streifen abgeschnitten";
    default:
      return lengthWhy(fault);
  }
}

const MEASURE_HINT = "Zwischen den Webkanten messen; eine Länge vom geraden Ende an.";

export const work: WordsOf<WorkFacts> = {
  factUnreadable: ({ written, fault }) => ({
    message: `${quote(written)} wird nicht verstanden: ${factWhy(fault)}.`,
    hint: FACT_EXAMPLES,
  }),

  workFabricUnknown: ({ found, fabrics }) => {
    const near = nearest(found, fabrics);
    const hint =
      near === null ? `Bekannt sind hier: ${fabrics.map(quote).join(", ")}.` : `Ist ${quote(near)} gemeint?`;
    return { message: `Kein Stoff dieses Plans heißt ${quote(found)}.`, hint };
  },

  workFabricUnsaid: ({ said, fabrics }) => {
    const first = fabrics[0] ?? "ivory";
    return {
      message: `${quote(said)} sagt nicht, welcher Stoff gemeint ist. Dieser Plan hat ${fabrics.map(quote).join(", ")}.`,
      hint: `Den Stoff und einen Doppelpunkt davorschreiben: "${first}: ${said}".`,
    };
  },

  workLetterUnknown: ({ letter, letters }) => ({
    message: `Es gibt keinen Beutel [${letter}] von diesem Stoff; es gibt ${letters.map((each) => `[${each}]`).join(", ")}.`,
    hint: "Die Buchstaben sind die des Schnittplans und der Beuteletiketten.",
  }),

  workStripUnknown: ({ strip, cloth: name, fabric, last, begun }) => {
    const cloth = name === null ? fabric : `${clothName(name)} von ${fabric}`;
    const there =
      last === 0
        ? "davon ist kein Streifen mehr zu schneiden"
        : last === 1
          ? "es gibt nur Streifen 1"
          : `es gibt die Streifen 1 bis ${last}`;
    return {
      message: `Es gibt keinen Streifen ${strip} (${cloth}): ${there}.`,
      hint: begun
        ? "Die Nummern sind die des neuesten Schnittplans. Was vorher geschnitten wurde, wird mit seinem Beutel genannt: `2 of A spoiled`."
        : "Die Nummern sind die des Schnittplans.",
    };
  },

  workClothUnknown: ({ cloth, known }) => ({
    message:
      cloth === ""
        ? "Dieser Stoff wird aus mehreren Stücken geschnitten, und keines ist genannt."
        : `${quote(cloth)} ist kein Stück, aus dem dieser Stoff geschnitten wird.`,
    hint:
      known.length === 0
        ? "Davon ist nichts mehr zu schneiden."
        : `Eines davon nennen: ${known.map(quote).join(", ")}; zum Beispiel \`strip 1 of ${known[0]} cut\`.`,
  }),

  workTooMany: ({ letter, count, most }) => ({
    message: `${count} aus [${letter}] sollen geschnitten sein; der Plan schneidet insgesamt ${most}.`,
    hint: "Sagen, wie viele insgesamt im Beutel liegen, die früher geschnittenen mitgezählt.",
  }),

  workTooFew: ({ letter, count, cut }) => ({
    message: `${count} aus [${letter}] sollen geschnitten sein, aber nach dem zuvor Gesagten sind es schon ${cut}.`,
    hint: `Sagen, wie viele es insgesamt sind. Sind welche verloren: \`${cut - count} of ${letter} spoiled\`, oder \`${count} of ${letter} in the bag\`.`,
  }),

  workNoneToSpoil: ({ letter, count, cut }) => ({
    message: `${count} aus [${letter}] sollen verdorben sein, aber ${cut === 0 ? "keines ist" : plural(cut, "nur 1 ist", `nur ${cut} sind`)} geschnitten.`,
    hint: "Zuerst sagen, was geschnitten ist: `cut to strip 3`. Bei einem Streifen mit allem darin: `strip 4 spoiled`.",
  }),

  workMeasureWrong: ({ why }) => ({
    message: `${why}.`,
    hint: MEASURE_HINT,
  }),

  workWidthTooWide: () => ({
    message: "Die nutzbare Breite kann nicht größer sein als die Stoffbreite mit ihren Webkanten.",
    hint: MEASURE_HINT,
  }),

  workOtherPlan: ({ fabric, first }) => ({
    message: first
      ? `Was hier von ${quote(fabric)} gesagt ist, galt einem anderen Plan: Die Quiltdatei, oder wie sie geplant wird, hat sich seither geändert.`
      : `Was hier von ${quote(fabric)} gesagt ist, galt einem Plan, den es nicht mehr gibt: Etwas zuvor Gesagtes hat sich geändert.`,
    hint: first
      ? "Die Quiltdatei so nehmen, wie sie beim Beginn des Zuschneidens war, oder die geänderte in einen eigenen Ordner planen und unter `have:` nennen, was geschnitten ist."
      : "Zurücksetzen, was davor herausgenommen wurde, oder auch diesen Eintrag herausnehmen und ihn zum neuesten Schnittplan noch einmal sagen.",
  }),

  workNotOurs: ({ file, found }) => ({
    message: `${file} ist keine Arbeitsdatei dieses Programms: ${
      found.is === "no-group"
        ? "es ist keine Gruppe von Schlüsseln"
        : `sie beginnt nicht mit \`format: ${found.format}\``
    }. Sie bleibt, wie sie ist.`,
    hint: "Sie verschieben oder umbenennen, oder mit --out einen anderen Ordner nennen.",
  }),

  workNoPlan: ({ folder }) => ({
    message: `In ${folder} gibt es keine plan.json: Nichts sagt, mit welchem Plan das Zuschneiden begann.`,
    hint: "Zuerst planen (crossgrain plan DATEI), oder den Ordner des Plans mit --out nennen.",
  }),

  workChangedMeanwhile: ({ file }) => ({
    message: `${file} wurde geändert, während dies ausgerechnet wurde. Nichts wurde geschrieben.`,
    hint: "Noch einmal sagen: Die Streifennummern können jetzt andere sein.",
  }),

  workPlannedOtherwise: ({ folder, fabrics }) => ({
    message: `Der Plan in ${folder} ist nicht der, von dem dieser Befehl ausgeht: ${
      fabrics.length === 0
        ? "Es sind andere Stoffe"
        : `${fabrics.map(quote).join(", ")} ${plural(fabrics.length, "ist", "sind")} dort anders zugeschnitten`
    }.`,
    hint: "Denselben Quilt und dieselben Optionen nennen, mit denen geplant wurde, etwa --kits 12 oder --stash stash.csv; oder zuerst neu planen.",
  }),

  workPlannedFixed: ({ option }) => ({
    message: `${option} ist mit dem Plan festgelegt, mit dem das Zuschneiden begann, und kann mittendrin nicht wechseln.`,
    hint: "Die Option weglassen.",
  }),

  workLeftOut: ({ file }) => ({
    message: `Was gesagt wurde, ist in ${file} aufgehoben; die Dateien des Plans sind noch die von vorher.`,
    hint: "Wenn nichts mehr im Weg ist, crossgrain go-on DATEI aufrufen, ohne Neues zu sagen.",
  }),

  workSaidAgain: ({ fabric }) => ({
    message: `Von ${quote(fabric)} wurde zuletzt dasselbe gesagt: Es gilt als einmal gesagt.`,
    hint: "Ist es noch einmal geschehen, nach dem neuesten Schnittplan, mit --again sagen.",
  }),

  workNothingToUndo: ({ file }) => ({
    message: `In ${file} steht nichts, was zurückgenommen werden könnte.`,
    hint: "",
  }),

  workLeftAside: ({ file }) => ({
    message: `${file} sagt, was schon geschnitten ist. Dieser Plan beginnt von vorn und berücksichtigt nichts davon.`,
    hint: "Um mit dem Geschnittenen weiterzumachen: crossgrain go-on DATEI",
  }),
};
