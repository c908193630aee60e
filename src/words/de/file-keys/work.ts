import type { WorkKey } from "../../../diagnostics/file-keys.ts";
import type { KeyWords } from "../../file-keys.ts";

/** The file that keeps what is cut. */
export const workKeys: KeyWords<WorkKey> = {
  "work.fact": { says: "etwas, was beim Zuschneiden vom Stoff gesagt wurde", example: "cut to strip 12" },
  "work.cloth.fabric": { says: "von welchem Stoff es ist", example: "elfenbein" },
  "work.cloth.name": { says: "wie es heißt", example: "rest" },
  "work.cloth.size": { says: "sein nutzbares Maß, quer zuerst", example: "21 x 18 in" },
  "work.cloth.count": { says: "wie viele es sind", example: 24 },
  "work.planned.kits": { says: "wie viele Quilts zusammen zugeschnitten werden", example: 24 },
  "work.planned.style": { says: "wie Streifen geschnitten werden dürfen", example: "strips-2" },
  "work.planned.prefer": { says: "worauf geachtet wurde", example: "simple" },
  "work.planned.thorough": { says: "länger gesucht", example: true },
  "work.planned.fat-quarters": { says: "jede Farbe aus Fat Quarters", example: true },
  "work.planned.width": { says: "auf jedem Ballen probierte nutzbare Breite", example: "41 in" },
  "work.planned.bolt": { says: "wo jeder Ballen als zu Ende galt", example: "10 m" },
  "work.planned.ruler": { says: "Lineal, für das der Quilt umgerechnet wurde", example: "cm" },
  "work.planned.budget": { says: "Sekunden, die für jeden Stoff höchstens gesucht wurde", example: 60 },
  "work.planned.cloth": { says: "Stoff, der aus dem Vorrat angeboten war", example: "- fabric: elfenbein" },
  "work.said.fabric": { says: "der Stoff, von dem die Rede ist", example: "elfenbein" },
  "work.said.plan": { says: "Zeichen des Plans, dessen Nummern gemeint sind", example: "5f0c7a2be9d14c31" },
  "work.said.facts": { says: "was gesagt wurde, der Reihe nach", example: "- cut to strip 12" },
  work: {
    title: "Arbeit in Crossgrain",
    says: "was von einem Quilt, der zugeschnitten wird, geschnitten, gemessen und verdorben ist",
  },
  "work.format": { says: "sagt, was diese Datei ist", example: "crossgrain work" },
  "work.version": { says: "Fassung des Formats", example: "1" },
  "work.planned": { says: "wie der Plan gemacht wurde, mit dem das Zuschneiden begann" },
  "work.said": { says: "was von der Arbeit gesagt wurde, der Reihe nach", example: "- fabric: elfenbein" },
};
