import type { FabricKey } from "../../../diagnostics/file-keys.ts";
import type { KeyWords } from "../../file-keys.ts";

const HAVE =
  "Stoff davon, der schon da ist und vor dem Einkauf verwendet wird: Fat Quarters, Vorgeschnittenes, früher geschnittene Streifen, Reste";
const READY_CUT =
  "Maße, die der Laden fertig zugeschnitten verkauft, jedes mit Preis: gegen Meterware abgewogen";

/** The head of a file, fabrics and the pieces cut from them. */
export const fabricsKeys: KeyWords<FabricKey> = {
  "file.name": { says: "wie der Quilt heißt", example: "Hafenlichter" },
  "file.language": { says: "die Sprache von allem, was gedruckt wird; sonst die des Systems", example: "de" },
  "file.ruler": {
    says: "Abstand zweier Striche auf dem Lineal",
    example: { inches: "1/8 in", metric: "0,25 cm" },
  },
  "file.ruler-length": {
    says: "längster Schnitt, der mit einmal Anlegen des Lineals geht",
    example: { inches: "24 in", metric: "60 cm" },
  },
  "file.mat-length": {
    says: "längere Seite der Schneidematte",
    example: { inches: "36 in", metric: "90 cm" },
  },
  "file.style": { says: "Streifen und unterteilen, oder noch einmal längs schneiden", example: "strips-2" },
  "file.prefer": {
    says: "für denselben Einkauf die kürzeste Länge, oder die wenigste Arbeit an der Matte",
    example: "simple",
  },
  "file.keep-from": {
    says: "Reste, die in beiden Richtungen so groß sind, lohnen sich aufzuheben",
    example: { inches: "2 in", metric: "5 cm" },
  },
  "file.join-from": {
    says: "was aneinandergenäht wird, ein Rand oder eine Einfassung, hat kein kürzeres Stück",
    example: { inches: "16 in", metric: "40 cm" },
  },
  "file.units": { says: "die Maßeinheit von Zahlen ohne eine", example: "cm" },
  "file.folded": {
    says: "ob der Stoff zum Streifenschneiden einmal gefaltet wird, Webkante auf Webkante",
    example: true,
  },
  file: {
    title: "Datei für Crossgrain",
    says: "eine Zuschnittliste oder ein Quiltentwurf, wie Crossgrain sie liest",
  },
  "cut-list": {
    title: "Zuschnittliste für Crossgrain",
    says: "Stoffe und die Teile, die aus jedem geschnitten werden",
  },
  "cut-list.fabrics": { says: "die Stoffe, jeder mit seinen Teilen", example: "- name: Nachtmeer" },
  "all-fabrics": { says: "was für jeden Stoff gilt, wenn er nichts anderes sagt" },
  "fabric.shrinkage.across": { says: "Einlaufen in der Breite", example: "3%" },
  "fabric.shrinkage.along": { says: "Einlaufen in der Länge", example: "3%" },
  "fabric.colour": { says: "die Farbe, in der er gezeichnet wird", example: '"#1d3557"' },
  "fabric.width": {
    says: "Stoffbreite, von Webkante zu Webkante",
    example: { inches: "43 in", metric: "110 cm" },
  },
  "fabric.selvage": { says: "Breite einer Webkante", example: { inches: "1/2 in", metric: "1,5 cm" } },
  "fabric.straighten": {
    says: "Länge, die das Begradigen der Schnittkante kostet",
    example: { inches: "1 in", metric: "2,5 cm" },
  },
  "fabric.square-up": {
    says: "was das Begradigen von Stoff in festen Maßen an je einer Kante in beiden Richtungen nimmt",
    example: { inches: "1/2 in", metric: "1 cm" },
  },
  "fabric.spare": {
    says: "Länge, die über den Plan hinaus gekauft wird",
    example: { inches: "2 in", metric: "5 cm" },
  },
  fabric: { says: "ein Stoff und was daraus geschnitten wird" },
  "fabric.name": { says: "wie der Stoff heißt", example: "Nachtmeer" },
  "fabric.note": { says: "was beim Stoff gedruckt werden soll", example: "für den Rand" },
  "fabric.repeat": {
    says: "der Rapport: wie oft der Druck sich wiederholt, quer und längs",
    example: { inches: "6 x 8 in", metric: "15 x 20 cm" },
  },
  "fabric.bolt": {
    says: "wie lang ein Ballen im Laden ist: kein Streifen liegt über seinem Ende; `endless`: so lang wie gewünscht",
    example: { inches: "12 yd", metric: "10 m" },
  },
  "fabric.shrinkage": {
    says: "wie viel er einläuft, wenn er vor dem Zuschneiden gewaschen wird",
    example: "3%",
  },
  "fabric.print": {
    says: "wie sein Druck zu lesen ist, und ob die Oberseite entlang der Webkante oder quer liegt",
    example: "one-way along",
  },
  "fabric.pieces": {
    says: "die Maße zum Zuschneiden, eines je Zeile",
    example: "- himmel 2 1/2 x 4 1/2, 24",
  },
  "fabric.sold": {
    says: "wie der Laden ihn verkauft: in welchen Schritten, und das Wenigste, was er abschneidet",
    example: "by 10 cm in m",
  },
  "fabric.price": { says: "der Preis je Meter oder Yard", example: "18,90 EUR per m" },
  "fabric.have": { says: HAVE, example: "- fat quarter, 3" },
  "fabric.have.line": { says: HAVE, example: "fat quarter, 3" },
  "fabric.ready-cut": { says: READY_CUT, example: "- fat quarter, 3,50 EUR" },
  "fabric.ready-cut.line": { says: READY_CUT, example: "fat quarter, 3,50 EUR" },
  "fabric.yardage": { says: "ob er vom Ballen zu kaufen ist", example: "no" },
  "sold.by": { says: "die Schritte, in denen abgeschnitten wird", example: "1/8 yd" },
  "sold.least": { says: "das Wenigste, was der Laden abschneidet", example: "1/4 yd" },
  "sold.in": { says: "die Maßeinheit, in der verlangt wird", example: "yd" },
  "piece.label": { says: "ein kurzer Name für das Beuteletikett", example: "himmel" },
  "piece.size": {
    says: "Zuschnittmaß, quer zum Stoff zuerst; `WOF` für die ganze Stoffbreite",
    example: { inches: "2 1/2 x 4 1/2", metric: "6,5 x 11,5" },
  },
  "piece.count": { says: "wie viele geschnitten werden", example: 24 },
  "piece.turn": { says: "ob es um ein Viertel gedreht liegen darf", example: "fixed" },
  "piece.cut": { says: "aus Streifen, oder entlang der Webkante", example: "lengthwise" },
  "piece.join": { says: "ob es aus Streifen zusammengenäht werden darf", example: "diagonal" },
  "piece.note": { says: "was beim Teil gedruckt werden soll", example: "äußerer Rand" },
  "piece.line": {
    says: "ein Teil in einer Zeile: Bezeichnung, Maß, ein Komma, Anzahl",
    example: "himmel 2 1/2 x 4 1/2, 24",
  },
  "count.on-line": { says: "wie viele geschnitten werden, nach einem Komma" },
  "shape.label": { says: "ein kurzer Name für das Beuteletikett", example: "segel" },
  "shape.count": { says: "wie viele geschnitten werden", example: 24 },
  "shape.turn": { says: "ob es gedreht liegen darf", example: "fixed" },
  "shape.note": { says: "was beim Teil gedruckt werden soll", example: "Rand" },
  "shape.shape": { says: "eine Form, die schräg aus Streifen geschnitten wird", example: "triangle" },
  "shape.side": {
    says: "fertige Länge der Seite entlang des Streifens",
    example: { inches: "4", metric: "10" },
  },
  "shape.height": {
    says: "fertige Höhe, rechtwinklig zu dieser Seite",
    example: { inches: "3", metric: "8" },
  },
  "shape.seam": {
    says: "Nahtzugabe; 0, wo die Maße Zuschnittmaße sind",
    example: { inches: "1/4", metric: "0,75" },
  },
  "shape.tips": { says: "ob die Spitze eines Dreiecks abgeschnitten wird", example: "blunt" },
  "shape.lean": { says: "wohin sie sich neigt", example: "left" },
  "shape.angle": { says: "Grad zwischen der Seite und einer schrägen Kante", example: 60 },
};
