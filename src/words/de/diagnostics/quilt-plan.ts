import type { QuiltPlanFacts } from "../../../diagnostics/quilts/quilt-plan.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { list } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { partName, unitTold } from "../quilt/unit-names.ts";

export const quiltPlan: WordsOf<QuiltPlanFacts> = {
  cannotBeCut: ({ what, fabric, usable }) => ({
    message: `Nicht aus ${fabric} zu schneiden: ${what}. Die nutzbare Breite ist ${usable}.`,
    hint: "Einen breiteren Stoff nehmen.",
  }),

  backingSideways: ({ fabric, seams, along }) => {
    const other = seams === "vertical" ? "horizontal" : "vertical";
    return {
      message: `Die Nähte der Rückseite verlaufen ${seams === "vertical" ? "senkrecht" : "waagerecht"}, sodass der Druck von ${fabric}, dessen Oberseite ${along ? "entlang der Webkante" : "quer zum Stoff"} liegt, hinter dem Quilt auf der Seite liegt.`,
      hint: `Damit er aufrecht steht, \`seams: ${other}\` schreiben, oder \`seams\` weglassen: Dann richten sich die Nähte nach dem Druck.`,
    };
  },

  backingTooNarrow: ({ what, fabric, found }) => {
    const { usable, seams, size } = found;
    return {
      message: `Nicht aus ${fabric} zusammenzunähen: ${what}, ${size}. Die nutzbare Breite ist ${usable}, und die Nähte an beiden Seiten einer Bahn nehmen davon ${seams}.`,
      hint: `Nötig ist ein Stoff, der viel breiter ist als ${seams}, zum Beispiel \`- { name: ${fabric}, width: 44 in }\`, oder ein breiter Rückseitenstoff, \`width: 108 in\`.`,
    };
  },

  mitreDirectional: ({ border, fabric, round }) => {
    const what = round
      ? "er läuft um den Quilt, und seine Motive treffen sich in den Ecken nur, wo sie abgestimmt sind"
      : "er steht an allen vier Seiten aufrecht und trifft in den Ecken im Winkel auf sich selbst";
    const needed =
      "Zum Abstimmen nötig: vier gleich geschnittene Streifen, an jedem ein Rapport Zugabe (`over-long:`), ein Motiv in der Mitte jeder Seite";
    return {
      message: `${typeof border === "number" ? `Rand ${border}` : `Der Rand „${border}“`} ist auf Gehrung aus ${fabric}, einem Druck mit Richtung: ${what}.`,
      hint: round
        ? `${needed}. Oder die Ecken stumpf stoßen: \`corners: sides first\`.`
        : `Aufrecht sieht er stumpf gestoßen am besten aus: \`corners: sides first\`. Damit er um den Quilt läuft, in diesem Rand \`prints: round\` schreiben. ${needed}.`,
    };
  },

  roundingDiffers: ({ what, taken: cut, other: otherwise, by }) => {
    const [taken, other] = [spoken.size(cut), spoken.size(otherwise)];
    const told =
      "unit" in what
        ? `${unitTold(what.unit)}, ${list(what.parts.map(partName))}`
        : { side: "Seitendreiecke", corner: "Eckdreiecke" }[what.triangles];
    const [exactly, usual] = ["nach genauer Geometrie", "nach den üblichen Zugaben"];
    const messages = {
      exact: `Quadrate von ${taken} ${exactly}, aufgerundet; ${other} ${usual}.`,
      trade: `Quadrate von ${taken} ${usual}; ${other} ${exactly}.`,
      "too-small": `Quadrate von ${taken} ${exactly}, aufgerundet, da ${other} ${usual} hier zu klein sind.`,
    };
    const hints = {
      exact: "Für die üblichen Zugaben `rounding: trade` schreiben.",
      trade: "Für genaue Maße `rounding: exact` schreiben.",
      "too-small": "",
    };
    return { message: `${told}: ${messages[by]}`, hint: hints[by] };
  },

  waddingSize: ({ size }) => ({ message: `Vlies: ${size}.`, hint: "" }),

  waddingOverPackages: ({ size, largest }) => ({
    message: `Vlies: ${size}, größer als die größte Packung (${largest}).`,
    hint: "Von der Rolle kaufen: `- { name: wadding roll, width: 96 in, selvage: 0 }` zu den Stoffen setzen und `wadding: { fabric: wadding roll }` schreiben, dann werden die Längen geplant; oder zwei Packungen Kante an Kante legen und von Hand verbinden.",
  }),
};
