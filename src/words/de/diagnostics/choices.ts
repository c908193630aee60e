import type {
  ChoicesFacts,
  InBlocksSaid,
  QuiltSizeFault,
  Restatable,
  WholeQuilt,
} from "../../../diagnostics/choices.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";
import { borderName } from "../quilt/border-name.ts";
import { spoken } from "../quilt/spoken.ts";
import { unitName } from "../quilt/unit-names.ts";
import { likely } from "./suggest.ts";

const SIZES_HELP =
  "Blöcke quer und hoch (4x5), eine fertige Größe mit Maßeinheit (60 x 80 in) oder ein Bett " +
  "(queen, queen drop 12 in, single drop 30 cm at sides and foot) schreiben; mehrere durch Komma oder Semikolon getrennt.";

const first = (near: string | null): string => (near === null ? "" : `${likely(near)} `);

/** What follows the size as typed. */
function sizeFault(fault: QuiltSizeFault): string {
  switch (fault.is) {
    case "none":
      return "ist keine Größe eines Quilts";
    case "blocks":
      return `ist nicht von 1 bis ${fault.most} Blöcken in jeder Richtung`;
    case "size":
      return `ist kein Maß: ${lengthWhy(fault.fault)}`;
    case "not-above-nothing":
      return "ist nicht größer als nichts";
    case "no-bed":
      return "ist kein Bett mit einer üblichen Größe";
    case "no-length":
      return `hat keine Länge nach "${fault.of}": ${lengthWhy(fault.fault)}`;
    case "below-nothing":
      return `hat bei "${fault.of}" weniger als nichts`;
    case "no-side":
      return `hängt über an "${fault.found}"; möglich ist sides, left, right, foot, head und all round`;
  }
}

const inBlocks = ({ across, down, size }: InBlocksSaid): string => `${across}x${down} Blöcke, ${size}`;

const WHOLE: Readonly<Record<WholeQuilt, string>> = {
  "printed-squares": "gedruckte Kästchen",
  seam: "Nahtzugabe",
  oversize: "Zugabe zum Beschneiden",
  "straighten-sets": "Begradigen jedes Streifensets",
  sashing: "Zwischenstreifen",
  "binding-width": "Streifen der Einfassung",
  "binding-extra": "Zugabe der Einfassung",
  "backing-overhang": "Überstand der Rückseite",
  "wadding-overhang": "Überstand des Vlieses",
  "quilting-spacing": "Abstand der Quiltlinien",
  "foundation-ease": "Zugabe der Patches auf der Unterlage",
};

const AXIS = { across: "quer", down: "hoch" } as const;
const LINE = { column: "Spalte", line: "Zeile" } as const;
const FIELD = { corner: "Ecke", centre: "Mitte", strip: "Streifen" } as const;

/** What a size is of. */
function restatable(what: Restatable): string {
  switch (what.of) {
    case "block":
      return `Größe von Block ${what.block}, ${AXIS[what.axis]}`;
    case "column":
    case "line":
      return `${LINE[what.of]} von Block ${what.block}`;
    case "corner":
    case "centre":
    case "strip":
      return `${FIELD[what.of]} der Einheit „${unitName(what.unit)}“`;
    case "patch":
      return `Patch ${what.role}`;
    case "border":
      return borderName(what.border);
    case "border-ends":
      return `${borderName(what.border)}, oben und unten`;
    case "over-long":
      return `Überlänge von ${borderName(what.border)}`;
    default:
      return WHOLE[what.of];
  }
}

export const choices: WordsOf<ChoicesFacts> = {
  sizeRestated: ({ what, before, after }) => ({
    message: `${restatable(what)}: aus ${spoken.length(before)} wird ${spoken.length(after)}.`,
    hint: "",
  }),

  sizeNotMet: ({ asked, target, taken, below, above }) => {
    const others = [
      below === null ? [] : [`kleiner: ${inBlocks(below)}`],
      above === null ? [] : [`größer: ${inBlocks(above)}`],
    ].flat();
    return {
      message: `${quote(asked)} verlangt ${target}; am nächsten kommt in ganzen Blöcken ${inBlocks(taken)}.`,
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
    message: `${fabric} wird vom Ballen geschnitten: ${piece ?? "ein Streifen so lang, wie der Stoff breit ist,"} ist mehr, als ein Fat Quarter von ${size} hergibt.`,
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

  quiltSizeUnreadable: ({ found, fault }) => ({
    message: `${quote(found)} ${sizeFault(fault)}.`,
    hint: `${first(fault.is === "no-bed" ? fault.near : null)}${SIZES_HELP}`,
  }),

  sizeOutOfReach: ({ asked, target, nearest: closest }) => ({
    message: `${quote(asked)} verlangt ${target}, was keine Anzahl dieser Blöcke ergibt.`,
    hint:
      closest === null
        ? "Keine ist zu haben: Was an der Datei falsch ist, sagt `check`."
        : `Am nächsten kommt ${inBlocks(closest)}.`,
  }),
};
