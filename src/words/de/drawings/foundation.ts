import type { Words } from "../../types.ts";
import { either } from "../language.ts";

function turned(degrees: number): string {
  return degrees === 0
    ? "nicht gedreht"
    : degrees === 180
      ? "auf den Kopf gedreht"
      : `nach ${degrees === 90 ? "rechts" : "links"} gedreht`;
}

/** The words that stand in drawings of gridded foundation. */
export const foundation: Words["drawings"]["foundation"] = {
  over: "Rasterunterlage",
  cut: "Zuschnitt, auf den Linien",
  finished: "Fertig",
  make: "Nähen",
  grid: "Gedruckte Kästchen",
  front: "Patches oben: in der Reihenfolge des Annähens",
  back: "Bedruckte Seite, gespiegelt: Linien in der Reihenfolge des Nähens",
  edge: "Gestrichelt: die Kante der Unterlage und des fertigen Teils. Pfeile zeigen, wohin eine Naht gebügelt wird.",
  laid: "Teile Kante an Kante; zu faltende Linien in der Reihenfolge des Nähens nummeriert",
  fold: "Durchgezogene Linien werden gefaltet, auf den gestrichelten daneben wird genäht. Um jedes Teil liegt seine Nahtzugabe. In Kästen: die Reihenfolge des Steckens.",
  places: "Wohin es kommt, und wohin seine Oberseite zeigt",
  blocks: "Die Blöcke darauf, von links, und wohin die Oberseite von jedem zeigt",
  block: (name, turns) =>
    turns === null || turns.length === 0 ? `Block ${name}` : `Block ${name}, ${either(turns.map(turned))}`,
  fabrics: "Stoffe",
  squares: (across, down) => `${across} × ${down} Kästchen`,
};
