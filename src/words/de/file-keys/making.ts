import type { MakingKey } from "../../../diagnostics/file-keys.ts";
import type { KeyWords } from "../../file-keys.ts";

/** Finishing, foundation, minutes and the pattern. */
export const makingKeys: KeyWords<MakingKey> = {
  "binding.fabric": { says: "Stoff der Einfassung", example: "blau" },
  "binding.width": { says: "Zuschnittbreite der Streifen", example: "2 1/2" },
  "binding.fold": { says: "doppelt oder einfach gelegt", example: "double" },
  "binding.cut": { says: "Streifen quer zum Stoff, oder schräg zum Fadenlauf", example: "straight" },
  "binding.join": { says: "wie Streifen verbunden werden", example: "diagonal" },
  "binding.extra": { says: "Länge über die Kanten hinaus, für Ecken und Schluss", example: "10" },
  binding: { says: "die Einfassung", example: "blau" },
  "backing.fabric": { says: "Stoff der Rückseite", example: "streifen" },
  "backing.overhang": { says: "an jeder Seite über den Quilt hinaus", example: "4" },
  "backing.seams": { says: "wie die Bahnen verbunden werden", example: "either" },
  backing: { says: "die Rückseite", example: "streifen" },
  wadding: { says: "das Vlies", example: "{ overhang: 4 }" },
  "wadding.fabric": { says: "einer der Stoffe, wenn es nach Länge gekauft wird", example: "vlies" },
  "wadding.overhang": { says: "an jeder Seite über den Quilt hinaus", example: "4" },
  quilting: {
    says: "das Quilten: Garn dafür, und wie weit Rückseite und Vlies über den Quilt hinausreichen",
    example: "{ by: hand, lines: crossed, spacing: 2 }",
  },
  "quilting.by": { says: "wie die Lagen gequiltet werden", example: "machine" },
  "quilting.lines": { says: "Linien in einer Richtung, oder in beiden", example: "parallel" },
  "quilting.spacing": {
    says: "Abstand von einer Quiltlinie zur nächsten",
    example: { inches: "2", metric: "5 cm" },
  },
  foundation: {
    says: "eine Rasterunterlage: Ihre gedruckten Linien sind die Nähte",
    example: { inches: "{ fabric: raster, grid: 1 in }", metric: "{ fabric: raster, grid: 2 cm }" },
  },
  "foundation.fabric": {
    says: "die Unterlage: einer der Stoffe, sodass sie wie sie gekauft und zugeschnitten wird",
    example: "raster",
  },
  "foundation.grid": {
    says: "Seite eines gedruckten Kästchens",
    example: { inches: "1 in", metric: "2 cm" },
  },
  "foundation.half-lines": {
    says: "Nähte dürfen auch in der Mitte zwischen zwei Linien liegen",
    example: false,
  },
  "foundation.way": {
    says: "pieced: Patch für Patch auf der flachen Unterlage, Nähte auf den Linien; folded: fertige Teile Kante an Kante, Linien gefaltet und genäht",
    example: "pieced",
  },
  "foundation.per": {
    says: "was auf ein Stück der Unterlage kommt; motif: der größte Teil eines Blocks, der sich Patch für Patch nähen lässt",
    example: "motif",
  },
  "foundation.ease": {
    says: "um so viel größer werden Patches in beiden Richtungen geschnitten; 0 für genau",
    example: { inches: "1/4 in", metric: "0,5 cm" },
  },
  "foundation.hold": { says: "wie Patches beim Nähen gehalten werden", example: "fusible" },
  "foundation.after": { says: "was aus ihr wird, wenn das Top genäht ist", example: "left in" },
  "foundation.blocks": { says: "die Blöcke, die darauf genäht werden; sonst alle mit mehr als einem Patch" },
  "foundation.block": { says: "ein Blockentwurf", example: "gaense" },
  "foundation.allowance": { says: "gedruckte Kästchen außerhalb der äußersten Nahtlinie", example: 1 },
  minutes: {
    says: "eigene Minuten für einen Schritt, für die Schätzung der Zeit",
    example: "{ seam: 0.5, trim: 1 }",
  },
  "minutes.strip": { says: "einen Streifen quer über den Stoff schneiden", example: 1 },
  "minutes.subcut": { says: "ein Schnitt durch einen Streifen oder eine genähte Einheit", example: 0.2 },
  "minutes.mark": { says: "eine Nählinie anzeichnen", example: 0.25 },
  "minutes.seam": { says: "eine Naht stecken und anfangen", example: 0.25 },
  "minutes.metre": { says: "einen Meter nähen", example: 0.5 },
  "minutes.yard": { says: "ein Yard nähen, anstelle von `metre`", example: 0.45 },
  "minutes.press": { says: "eine Naht bügeln", example: 0.25 },
  "minutes.trim": { says: "eine Einheit auf Maß schneiden", example: 0.75 },
  class: {
    says: "der Kurs, der den Quilt aus Materialpackungen näht; geplant mit `--kits file`",
    example: '{ kits: ["4 of 3x3", "5 of lap in evening"] }',
  },
  "class.kits": {
    says: "Materialpackungen, gleiche je in einer Zeile",
    example: '["4 of 3x3", "5 of lap in evening"]',
  },
  "class.kit": {
    says: "wie viele Packungen gleich sind, in welcher Größe und welcher Farbstellung",
    example: "{ count: 5, size: lap, colourway: evening }",
  },
  "class.kit.line": {
    says: "wie viele Packungen, nach `of` die Größe, nach `in` die Farbstellung; ohne beides der Quilt wie gezeichnet",
    example: "5 of lap in evening",
  },
  "class.kit.count": { says: "wie viele Packungen", example: 5 },
  "class.kit.size": { says: "fertige Größe, wie `buy --sizes` sie liest", example: "lap" },
  "class.kit.colourway": { says: "eine Farbstellung des Kurses", example: "evening" },
  "class.colourways": {
    says: "andere Stoffe für den ganzen Quilt, nach Namen",
    example: "{ evening: { navy: plum, sky: rose } }",
  },
  "class.colourway": {
    says: "zu jedem Stoff der, der an seine Stelle tritt",
    example: "{ navy: plum, sky: rose }",
  },
  "class.fabric": { says: "ein Stoff der Datei", example: "plum" },
  "pattern.part": { says: "ein Teil der Anleitung", example: "cutting" },
  "pattern.parts": { says: "Teile der Anleitung, der Reihe nach", example: "[requirements, cutting, units]" },
  pattern: {
    says: "die Anleitung zum Austeilen oder Verkaufen (pattern.html)",
    example: "{ author: die Autorin, level: Anfängerinnen }",
  },
  "pattern.author": { says: "wer sie entworfen hat", example: "die Autorin" },
  "pattern.copyright": {
    says: "Zeile zum Urheberrecht",
    example: "(c) 2026 die Autorin. Für den eigenen Gebrauch.",
  },
  "pattern.level": { says: "für wen sie ist", example: "sichere Anfängerinnen" },
  "pattern.contact": { says: "wohin Fragen gehen", example: "fragen@example.org" },
  "pattern.credits": { says: "wem gedankt wird", example: "Erprobt von der Dienstagsgruppe." },
  "pattern.date": { says: "Datum dieses Drucks", example: "November 2026" },
  "pattern.version": { says: "Fassung dieses Drucks", example: "2" },
  "pattern.changes": { says: "was sich seit dem letzten Druck geändert hat", example: "[Längere Ränder.]" },
  "pattern.change": { says: "eine Änderung", example: "Randstreifen länger geschnitten." },
  "pattern.sizes": {
    says: "fertige Größen, für die sie gilt, wie `buy --sizes` sie liest",
    example: "3x3, 4x5",
  },
  "pattern.before": { says: "eigener Text vor einem Teil", example: "{ cutting: Zuerst bügeln. }" },
  "pattern.before.part": {
    says: (part) => `eigener Text in Markdown, vor dem Teil \`${part}\``,
    example: "Den Stoff zuerst waschen.",
  },
  "pattern.after": { says: "eigener Text nach einem Teil", example: "{ cutting: Zuerst bügeln. }" },
  "pattern.after.part": {
    says: (part) => `eigener Text in Markdown, nach dem Teil \`${part}\``,
    example: "Den Stoff zuerst waschen.",
  },
};
