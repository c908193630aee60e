import type { Missing, PlanningFacts, Wanting } from "../../../diagnostics/planning.ts";
import { formatLength } from "../../../length/format.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { counted, list, plural } from "../language.ts";
import { bareCloth } from "../quilt/cloths.ts";
import { purposes } from "../quilt/purposes.ts";

const more = ({ cloth, more: count }: Wanting): string => `noch ${count} × ${bareCloth(cloth)}`;

const WAYS = { whole: "in einem Stück", joined: "zusammengenäht", mixed: "teils zusammengenäht" };

const missingSaid = (missing: readonly Missing[]): string =>
  missing.map(({ count, size, letter }) => `${count} Stück ${size} [${letter}]`).join(", ");

export const planning: WordsOf<PlanningFacts> = {
  pieceTooWide: ({ piece, ruler, fabric, found }) => {
    const help = [
      found.turnHelps ? "es drehen lassen, sodass die lange Seite an der Webkante liegt (`turn: free`)" : "",
      found.lengthwiseHelps ? "es entlang der Webkante schneiden (`cut: lengthwise`)" : "",
      "es aus Streifen zusammennähen (`join: straight`)",
      "oder einen breiteren Stoff nehmen",
    ].filter((text) => text !== "");
    return {
      message: `${purposes.piece(piece, ruler)} (${found.size}) passt nicht auf ${fabric}: Die nutzbare Breite ist ${found.usable}, um ${found.over} zu schmal.`,
      hint: `Was helfen würde: ${help.join(", ")}.`,
    };
  },

  pieceLongerThanBolt: ({ piece, ruler, fabric, found }) => ({
    message: `${purposes.piece(piece, ruler)} braucht ${found.size} entlang der Webkante von ${fabric}, mehr, als ein Ballen von ${found.bolt} hergibt, wenn sein Ende begradigt ist.`,
    hint: "Sagen, wie lang ein Ballen dort ist, wo gekauft wird, zum Beispiel `bolt: 15 yd`, oder `bolt: endless`; oder das Teil aus Streifen zusammennähen (`join: straight`).",
  }),

  pieceJoined: ({ piece, ruler, fabric, lengths }) => {
    const [first, ...rest] = lengths.map(({ count, length }, i) =>
      i > 0
        ? `${count} von ${formatLength(length, ruler)}`
        : `${counted(count, "Länge", "Längen")} von ${formatLength(length, ruler)}`,
    );
    const one = lengths.length === 1 && lengths[0]?.count === 1;
    return {
      message: `${purposes.piece(piece, ruler)} aus ${fabric} ist länger, als der Stoff breit ist: ${list([first ?? "", ...rest])} ${one ? "wird" : "werden"} aus aneinandergenähten Streifen geschnitten.`,
      hint: "",
    };
  },

  joinCompared: ({ fabric, chosen, costs }) => {
    const ways = costs
      .map(({ way, buy, used }) => `${WAYS[way]}: ${buy} kaufen (${used} gebraucht)`)
      .join("; ");
    const taken = {
      joined: "aus Streifen zusammengenäht",
      whole: "in einem Stück geschnitten",
      mixed: "zum Teil zusammengenäht",
    }[chosen];
    return { message: `${fabric}: Die langen Teile sind ${taken}. ${ways}.`, hint: "" };
  },

  noneFound: ({ fabric, missing, wanting }) => {
    const left = missing.length === 0 ? "" : ` Dem vollsten Versuch fehlen ${missingSaid(missing)}.`;
    const enough = wanting === null ? "" : ` Mit ${more(wanting)} geht es.`;
    return {
      message: `${fabric}: Es wurde kein Weg gefunden, alles aus diesem Stoff zu schneiden, und es ist nicht bewiesen, dass es keinen gibt.${left}${enough}`,
      hint: "Länger suchen (`--thorough`), mehr Teile drehen lassen, Stoff dazunehmen oder den Rest vom Ballen kaufen.",
    };
  },

  stockShort: ({ fabric, missing, wanting, stacked }) => {
    const short =
      wanting === null
        ? "Der vorhandene Stoff reicht nicht für alles"
        : `Es ${plural(wanting.more, "fehlt", "fehlen")} ${wanting.proven ? "" : "höchstens "}${more(wanting)}: ${wanting.toHand} vorhanden, ${wanting.toHand + wanting.more} reichen für alles`;
    return {
      message: `${fabric}: ${short}. Noch zu schneiden: ${missingSaid(missing)}.`,
      hint: stacked
        ? "Mit noch einmal längs geschnittenen Streifen (`--style strips-3`) kommt alles aus diesem Stoff. Oder Stoff dazunehmen, oder den Rest vom Ballen kaufen."
        : "Stoff dazunehmen, oder den Rest vom Ballen kaufen.",
    };
  },

  searchCutShort: ({ fabrics }) => ({
    message: `Die Suche für ${fabrics.join(", ")} wurde von der Uhr beendet: Auf einem anderen oder weniger beschäftigten Rechner kann dieser Plan anders ausfallen.`,
    hint: "Ohne --budget noch einmal planen: Dann wird die Suche gezählt statt gestoppt und ergibt überall denselben Plan.",
  }),

  notProven: ({ fabric, used, least }) => ({
    message: `${fabric}: Der Plan braucht ${used}; bewiesen ist nur, dass weniger als ${least} nicht reichen.`,
    hint: "Mehr Zeit geben, um weiterzusuchen.",
  }),
};
