import type { Words } from "../types.ts";
import { bladeCautions, estimates } from "./cautions.ts";
import { counted, list, plural } from "./language.ts";
import { bareCloth, clothName } from "./quilt/cloths.ts";
import { wasteCauses } from "./waste.ts";

type Item = Parameters<Words["cutting"]["subcut"]>[0][number];
type Mistake = Parameters<Words["cutting"]["mistake"]>[0];

const FULL_WIDTH = "Stoffbreite";

function item({ count, size, square, letter, later, shape }: Item): string {
  if (shape !== undefined) return `${counted(count, ...shape)} [${letter}]`;
  if (later !== undefined)
    return `${counted(count, "Länge", "Längen")} ${later.width} breit, etwa ${later.long} lang [${letter}]`;
  const noun = square ? counted(count, "Quadrat", "Quadrate") : counted(count, "Rechteck", "Rechtecke");
  return `${noun} ${size} [${letter}]`;
}

const strips = (count: number): string => counted(count, "Streifen", "Streifen");
const letterList = (letters: readonly string[]): string => list(letters.map((letter) => `[${letter}]`));

/** After what is cut: which diagonal, and how the print lies. */
const further = (line: string, heads: string): string =>
  `${line === "" ? "" : `, ${line}`}${heads === "" ? "" : `, ${heads}`}`;

/** The same, as the piece lies in front of one. */
const asItLies = (line: string, heads: string): string =>
  `${line === "" ? "" : `, ${line}`}${heads === "" ? "" : `, ${heads}, wie es mit der rechten Seite nach oben liegt`}`;

export const cutting: Words["cutting"] = {
  // Steps
  straighten: (size) => `Schnittkante rechtwinklig zur Webkante begradigen: ${size} abschneiden`,
  straightenToLine: (size) => `Schnittkante auf einer gedruckten Linie begradigen: ${size} abschneiden`,
  cutStrips: (count, width, run) => `${strips(count)} ${width} x ${run ?? FULL_WIDTH} zuschneiden`,
  cutLengths: (count, length) =>
    count === 1
      ? `Eine Länge von ${length} über die ganze Stoffbreite abschneiden`
      : `${count} Längen von ${length} über die ganze Stoffbreite abschneiden und alle gleich aufteilen`,
  cutBands: (count, width) => `${strips(count)} ${width} breit längs schneiden, entlang der Webkante`,
  cutBeside: (count, width, run) => `aus der Breite daneben ${strips(count)} ${width} x ${run} schneiden`,
  subcut: (items) => `in ${list(items.map(item))} unterteilen`,
  eachStrip: (counts) => ` (${list(counts)} aus jedem Streifen)`,
  eachAndLast: (each, count, last) =>
    count === 1
      ? ` (${each} aus dem ersten, ${last} aus dem letzten)`
      : ` (${each} aus jedem Streifen, ${last} aus dem letzten)`,
  ofStrips: (ranges) => `Streifen ${list(ranges)}:`,
  trimRest: (height) => `den Rest auf ${height} beschneiden und `,
  trim: (height) => `auf ${height} beschneiden und `,
  trimOff: (count, run, height) =>
    count === 1
      ? `${run} abschneiden, das Stück auf ${height} beschneiden und `
      : `von jedem ${run} abschneiden, die Stücke auf ${height} beschneiden und `,
  stack: (segments, run, items) =>
    `in ${counted(segments, "Abschnitt", "Abschnitte")} ${run} unterteilen und ${
      segments === 1 ? "ihn" : "jeden"
    } entlang des Streifens in ${list(items.map(item))} schneiden`,
  rows: (count, height, items) => `${counted(count, "Reihe", "Reihen")} ${height} (${list(items.map(item))})`,
  stackOfRows: (segments, run, rows) =>
    `in ${counted(segments, "Abschnitt", "Abschnitte")} ${run} unterteilen und ${
      segments === 1 ? "ihn" : "jeden"
    } entlang des Streifens in ${list(rows)} schneiden`,
  inDiagram: (ranges) => `; Streifen ${list(ranges)} im Schnittplan`,
  range: (first, last) => (last === first + 1 ? `${first} und ${last}` : `${first} bis ${last}`),
  keepWhole: (count, letter) =>
    count === 1 ? `ganz lassen [${letter}]` : `${count} ganz lassen [${letter}]`,
  stepFlags: {
    "longer-than-ruler":
      "Dieser Schnitt ist länger als das Lineal: schneiden, so weit es reicht, es weiterschieben, sodass noch eine Handlänge am " +
      "Geschnittenen anliegt, prüfen, ob es in einer Flucht liegt, und weiterschneiden.",
    "long-subcut":
      "Schnitte darin sind länger als das Lineal, und der Stoff liegt einfach: ihn ganz auf die Matte legen oder das Ende auf einen " +
      "Stuhl, nie hängen lassen; schneiden, so weit das Lineal reicht, es weiterschieben, sodass noch eine Handlänge am Geschnittenen anliegt, und weiterschneiden.",
    "narrow-segment":
      "Schmale Teile: das Lineal auf dem größeren Teil festhalten und die Finger weit weg halten.",
    refold: "Einmal Anlegen reicht nicht: noch einmal falten, Kante auf Kante, dann reicht das Lineal.",
    "wide-strip":
      "Breiter, als das Lineal lang ist: mit dem Maßband an beiden Webkanten messen und die Linie vor dem Schneiden anzeichnen.",
  },

  // Headings and notes
  buyTitle: (plan) => `Stoffbedarf für ${plan}`,
  stepsTitle: (plan) => `Zuschneiden, Schritt für Schritt: ${plan}`,
  wasteTitle: (plan) => `Wohin der Stoff geht: ${plan}`,
  fabricHeading: (number, count, name) => (count === 1 ? name : `${number}. ${name}`),
  estimates,
  handTitle: "So wird geschnitten",
  hand: {
    folded:
      "Vom Ballen: Webkante auf Webkante falten, beide Lagen glatt, der Falz rechtwinklig zum Lineal. Streifen werden durch beide Lagen geschnitten.",
    unfolded:
      "Vom Ballen: Der Stoff liegt in einer Lage; was über die Tischkante hängt, auf einen Stuhl legen.",
    square: "Nach je vier Streifen das Ende neu begradigen: nur abschneiden, was schief ist.",
    selvages:
      "Von jedem Streifen beide Webkanten abschneiden, bevor er unterteilt oder an einen anderen genäht wird.",
    fixed:
      "Schon zugeschnittene Stücke (Fat Quarters, Quadrate, Reste): in einer Lage, gebügelt, zuerst eine Kante begradigt.",
    rests:
      "Reste des schon Geschnittenen: in einer Lage, gebügelt. Ihre Schnittkanten sind gerade: von einer aus messen.",
    lengthwise:
      "Längsstreifen: zuerst die ganze Länge abschneiden, dann entlang der Webkante schneiden, die Webkante selbst ist dabei ab; die Länge Ende auf Ende falten, wo das Lineal mit einmal Anlegen nicht reicht.",
    aslant:
      "Schräge Schnitte: in einer Lage, rechte Seite oben; von zwei gefalteten Lagen ergibt eine die Form gespiegelt. Nach jedem dritten oder vierten prüfen, ob die Linie des Lineals noch an der Kante liegt, und sonst die Schräge neu schneiden.",
    diagonal:
      "Diagonalen: das Lineal von Ecke zu Ecke legen und vor dem Schneiden beide Ecken prüfen. Die Kanten dehnen sich: nicht ziehen, nicht bügeln.",
  },
  cautionsTitle: "Bevor es ans Schneiden geht",
  cautions: Object.values(bladeCautions),
  alsoTitle: "Außerdem nötig",
  bindingToo: (edge) => `Einfassung für ${edge} Kante und die Ecken: Die Datei nennt keine.`,
  sleeveToo: (size) => `Zum Aufhängen: ${size} aus beliebigem Stoff für einen Tunnel.`,
  threadToo: (piecing, quilting) => `Garn: etwa ${piecing} zum Nähen und ${quilting} zum Quilten.`,
  perQuilt: "Das gilt für einen Quilt.",
  assumptionsTitle: "Angenommen, weil die Datei es nicht sagt",
  assumedFor: (text, fabrics) => `${text} (${list(fabrics)})`,
  notesTitle: "Bitte beachten",
  leftoversTitle: "Reste, die sich aufzuheben lohnen",
  leftoversNone: "Es bleibt nichts übrig, das groß genug zum Aufheben ist.",
  leftover: (count, size) => (count === 1 ? size : `${count} Stück ${size}`),
  noPurchase: "aus vorhandenen Stücken",
  nothingMore: "nichts mehr",
  fromRest: "aus dem, was davon da ist",
  boughtBefore: (amounts) => `schon gekauft: ${list(amounts)}`,
  cutOf: (cut, count) => (cut === count ? "alles geschnitten" : `${cut} geschnitten, noch ${count - cut}`),
  putBy: "weggelegt",
  cloth: bareCloth,
  readyCut: (count, name) => `${count} × ${bareCloth(name)}`,
  together: (parts) => list(parts),
  weighedTitle: "Nach den genannten Preisen abgewogen",
  instead: ([taken = "", ...others]) => `${taken}, gegenüber ${list(others)}`,
  more: (amount) => `${amount} mehr`,
  buyAmount: (amount) => `${amount} kaufen`,
  usableWidth: (size) => `nutzbare Breite ${size}`,
  print: {
    "two-way-along": "Druck mit zwei Richtungen, Linien entlang der Webkante",
    "two-way-across": "Druck mit zwei Richtungen, Linien von Webkante zu Webkante",
    "one-way-along": "Druck mit einer Richtung, oben entlang der Webkante",
    "one-way-across": "Druck mit einer Richtung, oben zu einer Webkante",
  },
  onPieces: (name, alike, isStrip, trimmed, another) =>
    `Auf ${
      alike === 1
        ? `einem ${another ? "weiteren " : ""}Stück`
        : `${alike} ${another ? "weiteren " : ""}Stücken`
    } (${clothName(name)})${isStrip ? ", schon zugeschnitten" : ""}${alike === 1 ? "" : ", alle gleich geschnitten"}${trimmed}:`,
  trimmedFirst: (edge, size) => `, nachdem an jeder Kante ${edge} abgeschnitten sind, auf ${size}`,
  onBolt: "Vom Ballen:",
  onBoltOf: (number, length) => `Von Ballen ${number}, davon sind ${length} da:`,
  fromBolts: (total, runs) =>
    `${total} (${runs
      .map(({ first, last, length }) =>
        first === last ? `${length} von Ballen ${first}` : `je ${length} von Ballen ${first} bis ${last}`,
      )
      .join(", ")})`,
  onLength: "Auf dem Rest des Ballens:",
  fullWidthSize: (width) => `${width} x ${FULL_WIDTH}`,
  square: "Quadrat",
  halved: (line, heads) => `einmal diagonal geschnitten${further(line, heads)}`,
  quartered: (heads) => `auf beiden Diagonalen geschnitten${further("", heads)}`,
  cutFurther: "Weiter schneiden, Beutel für Beutel",
  halveEach: (count, letter, line, heads) =>
    `${count === 1 ? "Das eine" : `Jedes der ${count}`} aus [${letter}] einmal diagonal schneiden${asItLies(line, heads)}: ${2 * count} Hälften`,
  quarterEach: (count, letter, heads) =>
    `${count === 1 ? "Das eine" : `Jedes der ${count}`} aus [${letter}] auf beiden Diagonalen schneiden${asItLies("", heads)}, zwischen den Schnitten nicht verschieben: ${4 * count} Viertel`,
  keepSorted: (corners) =>
    `zwei Stapel, rechte Seite oben, wie sie vom Quadrat kommen: rechter Winkel ${list(corners)}`,
  byShape: (letter, how) => `[${letter}] schneiden: ${how}`,
  borderLater: "auf Länge geschnitten, wenn das Top gemessen ist",
  joinLater: (count) =>
    count === 1
      ? ""
      : `${count} Streifen, aneinandergenäht und auf Länge geschnitten, wenn das Top gemessen ist`,
  flagOf: (said, flag) => `${said} ${flag}`,
  longerLength: (letters, spare) =>
    `Für einen Rand: ${letterList(letters)} ${plural(letters.length, "wird", "werden")} auf Länge geschnitten, wenn das Top gemessen ist. Diese Länge so viel länger schneiden, wie der Stoff es erlaubt (${spare} davon bleiben übrig).`,
  leaveWhole: (letters) =>
    `Für einen Rand: die Streifen ${letterList(letters)} ganz lassen, bis das Top gemessen ist.`,
  leaveLong: (letters) =>
    `Für einen Rand: ${letterList(letters)} ${plural(letters.length, "kann", "können")} warten. Was der Streifen sonst gibt, zuerst vom anderen Ende schneiden und den Rest lang lassen, bis das Top gemessen ist.`,
  byTemplate: (name, asDrawn, reversed) =>
    `dann nach Schablone${name === "" ? "" : ` ${name}`}${
      reversed === 0
        ? ""
        : `, ${asDrawn === 0 ? "alle" : `${asDrawn} wie gezeichnet und ${reversed}`} gespiegelt`
    }`,
  aslant: (name, count) => `schräg in ${count} geschnitten, in Originalgröße in Schablone ${name}`,
  fullWidthMeaning: `${FULL_WIDTH} heißt: von Webkante zu Webkante.`,

  // Proof
  styles: {
    "strips-2": "in Streifen, die unterteilt werden",
    "strips-3": "in Streifen, die unterteilt und noch einmal längs geschnitten werden",
  },
  provenPurchase: (style) => `Bewiesen: ${style}, reicht keine kleinere Menge.`,
  provenLength: (style) => `Bewiesen: ${style}, braucht kein Plan weniger Länge.`,
  notProven: (style, gap) => `Bester gefundener Plan: ${style}, höchstens ${gap} länger als das Mögliche.`,
  stacked: (amount, saved, count) =>
    `${amount} würden reichen, ${saved} weniger, wenn ${count === 1 ? "ein Streifen" : `${count} Streifen`} gedreht und noch einmal der Länge nach geschnitten ${plural(count, "würde", "würden")}: dazu „style: strips-3“ in die Datei schreiben.`,
  saving: (size) => `Spart ${size} gegenüber eigenen Streifen für jedes Maß.`,
  narrowest: (size) => `Reicht auch noch bei nur ${size} nutzbarer Breite.`,
  spareLength: (size) => `Länge, die unzerschnitten bleibt: ${size}.`,
  provenMix: (style) => `Bewiesen: ${style}, reicht zu diesen Preisen nichts Billigeres.`,
  provenPieces: (style) => `Bewiesen: ${style}, reichen nicht weniger Stücke.`,
  openMix: "Bester gefundener Plan: Ein billigerer ist in der gegebenen Zeit nicht ausgeschlossen.",
  mistake: (usual, worst) => {
    const price = ({ cost }: Mistake) => (cost === "" ? "" : ` (${cost})`);
    if (worst.more === "")
      return `Wird ein Streifen falsch geschnitten, reicht die unzerschnittene Länge, um ihn noch einmal zu schneiden (der breiteste ist ${worst.width}).`;
    const needed = `werden ${worst.more} mehr gebraucht${price(worst)}`;
    const wrong = `Wird ein Streifen von ${usual.width} falsch geschnitten,`;
    if (usual.width === worst.width) return `${wrong} ${needed}.`;
    if (usual.more === "") return `${wrong} reicht die übrige Länge; bei einem von ${worst.width} ${needed}.`;
    return `${wrong} werden ${usual.more} mehr gebraucht${price(usual)}; bei einem von ${worst.width} ${worst.more}${price(worst)}.`;
  },

  // Tables
  columns: {
    fabric: "Stoff",
    buy: "kaufen",
    used: "gebrauchte Länge",
    price: "Preis",
    proof: "das Wenigste?",
    cloth: "gekauft",
    pieces: "in Teilen",
    seen: "zu sehen",
    seams: "in Nähten",
    corners: "beim Nähen abgeschnitten",
  },
  proofShort: {
    open: "bester gefundener",
    purchase: "bewiesen",
    length: "bewiesen",
    found: (gap) => `bis auf ${gap}`,
  },
  total: "gesamt",
  turnFree: "beliebig gedreht",
  turnFixed: "wie geschrieben",
  causes: wasteCauses,
  inPercent: "in Prozent des Gekauften",
  inSewing: "was das Nähen aus den Teilen macht, in Prozent der Teile",
  inArea: (unit) => `in ${unit}`,
  squareInches: "Quadratzoll",
  squareCentimetres: "Quadratzentimeter",
};
