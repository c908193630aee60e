import type { ChoicesFacts } from "../../../diagnostics/choices.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { likely } from "./suggest.ts";

const SIZES_HELP =
  "Blöcke quer und hoch (4x5), eine fertige Größe mit Maßeinheit (60 x 80 in) oder ein Bett " +
  "(queen, queen drop 12 in, single drop 30 cm at sides and foot) schreiben; mehrere durch Komma oder Semikolon getrennt.";

const first = (near: string | null): string => (near === null ? "" : `${likely(near)} `);

export const choices: WordsOf<ChoicesFacts> = {
  sizeRestated: ({ what, before, after }) => ({ message: `${what}: aus ${before} wird ${after}.`, hint: "" }),

  sizeNotMet: ({ asked, target, taken, below, above }) => {
    const others = [
      below === null ? [] : [`kleiner: ${below}`],
      above === null ? [] : [`größer: ${above}`],
    ].flat();
    return {
      message: `${quote(asked)} verlangt ${target}; am nächsten kommt in ganzen Blöcken ${taken}.`,
      hint:
        `Am nächsten liegen ${others.join("; ")}. Eine davon in Blöcken verlangen, oder dem Quilt einen einfachen äußeren Rand geben: ` +
        "Er kann zwischen halb und doppelt so breit angepasst werden, wie er gezeichnet ist.",
    };
  },

  arrangementUnknown: ({ found, known }) => ({
    message: `Es gibt keine Anordnung ${quote(found)}.`,
    hint: `${first(nearest(found, known))}Es gibt: ${known.join(", ")}.`,
  }),

  fatQuarterTooSmall: ({ fabric, piece, size }) => ({
    message: `${fabric} wird vom Ballen geschnitten: ${piece} ist mehr, als ein Fat Quarter von ${size} hergibt.`,
    hint: "",
  }),

  nothingToCompare: ({ found }) => {
    const why =
      found === "cut-list"
        ? "Eine Zuschnittliste sagt, was geschnitten wird, nicht, wie es genäht wird"
        : "Jede Einheit dieses Quilts lässt sich nur auf eine Art nähen";
    return {
      message: `${why}: Es gibt nichts zu vergleichen.`,
      hint: "Eine Quiltdatei angeben, mit Blöcken und ihren Einheiten.",
    };
  },

  nothingToRestate: () => ({
    message:
      "Eine Zuschnittliste enthält Zuschnittmaße mit Nahtzugabe: Sie lassen sich nicht auf ein anderes Lineal umstellen.",
    hint: "Eine Quiltdatei angeben, deren fertige Maße auf andere Striche rücken können, oder `--ruler` weglassen.",
  }),

  nothingToRepeat: () => ({
    message: "Eine Zuschnittliste hat keine Blöcke, von denen es mehr oder weniger geben könnte.",
    hint: "Eine Quiltdatei angeben, mit Blöcken und den Reihen, in denen sie liegen, oder `--sizes` weglassen.",
  }),

  nothingToTurn: () => ({
    message: "Eine Zuschnittliste hat keine Blöcke zum Drehen.",
    hint: "Eine Quiltdatei angeben, mit Blöcken und den Reihen, in denen sie liegen.",
  }),

  noMotifs: () => ({
    message: "Kein Block dieses Quilts hat gleiche Teile, die sich für sich drehen lassen.",
    hint: "In der Datei in einem Block nennen: `motifs: 2 x 2` für so viele quer und hoch, oder `motifs: g` für einen Code seines Rasters.",
  }),

  quiltSizeUnreadable: ({ found, why = "ist keine Größe eines Quilts", near = null }) => ({
    message: `${quote(found)} ${why}.`,
    hint: `${first(near)}${SIZES_HELP}`,
  }),

  sizeOutOfReach: ({ asked, target, nearest: closest }) => ({
    message: `${quote(asked)} verlangt ${target}, was keine Anzahl dieser Blöcke ergibt.`,
    hint: `Am nächsten kommt ${closest}.`,
  }),
};
