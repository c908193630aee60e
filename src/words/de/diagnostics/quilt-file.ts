import { nearest } from "../../../diagnostics/nearest.ts";
import type { QuiltFileFacts } from "../../../diagnostics/quilts/quilt-file.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const quiltFile: WordsOf<QuiltFileFacts> = {
  blockHasNoDrawing: ({ block }) => ({
    message: `Block ${quote(block)} hat keine Zeichnung.`,
    hint: "`grid:` und `cells:` angeben, oder `cell:`, wenn eine Einheit den ganzen Block füllt.",
  }),

  cornerInSquares: ({ found }) => ({
    message: `${quote(found)} hat eine Maßeinheit, aber Ecken werden hier in Kästchen gezählt (\`drawn-on\`).`,
    hint: "Nur die Zahl der Kästchen schreiben, `2` oder `2 1/2`; oder `drawn-on` weglassen und Längen schreiben.",
  }),

  drawingUnreadable: ({ found, fault }) => ({
    message: `${quote(found)} lässt sich in einer Zeichnung nicht lesen: ${
      fault.is === "colourway"
        ? "eine Farbstellung folgt auf ein `/`"
        : `es wird ${fault.count} Mal wiederholt, höchstens ${fault.most}`
    }.`,
    hint: "Eine Zelle ist ein Code, vielleicht mit Drehung und Farbstellung: `g`, `g>`, `star>/night`; `-` und `|` setzen eine Einheit fort.",
  }),

  gridsizeUnreadable: ({ field, found, most }) => ({
    message: `\`${field}\` ist ${quote(found)}; es zählt Zellen, quer zuerst, je 1 bis ${most}.`,
    hint: `Zum Beispiel \`${field}: 3 x 4\`.`,
  }),

  turnNotQuarter: ({ found }) => ({
    message: `Die Drehung ist ${quote(found)}; Einheiten und Blöcke drehen sich um Viertel, im Uhrzeigersinn: 0, 90, 180 oder 270.`,
    hint: "In einer Zeichnung heißt `>` 90, `v` 180 und `<` 270. Ein Quilt auf der Spitze wird mit `layout: on point` gesetzt.",
  }),

  unitNotOne: ({ found, fields }) => {
    if (found.length === 0)
      return { message: "Diese Zelle nennt keine Einheit.", hint: "Zum Beispiel `{ square: cream }`." };
    const near = found
      .map((word) => [word, nearest(word, fields)] as const)
      .find(([, field]) => field !== null);
    return {
      message: `Diese Zelle nennt ${found.length} Einheiten: ${found.map((word) => quote(word)).join(", ")}.`,
      hint:
        near === undefined
          ? "Nur eine Einheit in eine Zelle schreiben."
          : `Ist mit ${quote(near[0])} \`${near[1]}\` gemeint?`,
    };
  },
};
