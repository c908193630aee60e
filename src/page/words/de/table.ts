import type { Wide } from "../../../words/index.ts";
import type { tableWords as english } from "../table.ts";

const inSpeech = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} und ${names.at(-1)}`;

/** What the page says at the table, in German: at the mat, at the machine, in handing out. */
export const tableWords: Wide<typeof english> = {
  // At the mat
  cutTitle: "Zuschneiden",
  matLabel: (fabric) => `${fabric} auf der Matte: die Streifen in der Reihenfolge des Schneidens`,
  stripOf: (fabric, number, of, cloth) =>
    `${fabric}: Streifen ${number} von ${of}${cloth === "" ? "" : ` auf: ${cloth}`}`,
  stripHeard: (number, width, gives, state) =>
    `Streifen ${number}, ${width}${gives === "" ? "" : `: ${gives}`}${state === "" ? "" : `, ${state}`}`,
  stripStates: { cut: "geschnitten", off: "abgeschnitten, nicht unterteilt" },
  pieceHeard: (letter, size) => `Teil für Beutel ${letter}, ${size}`,
  stripIsCut: (number) => `Streifen ${number} ist geschnitten`,
  stripCut: (number, left) =>
    `Streifen ${number} ist geschnitten. ${left === 0 ? "Alle Streifen dieses Stoffes sind geschnitten." : `Noch ${left} Streifen.`}`,
  stripNotCut: (number) => `Streifen ${number} ist doch nicht geschnitten.`,
  stripLine: "Streifen",
  stripNumber: (number) => `Streifen ${number},`,
  allCut: "Alles ist zugeschnitten.",
  nothingOnMat: "Von diesem Stoff ist nichts mehr zu schneiden.",
  stripsLeft: (count) => (count === 0 ? "✓ fertig" : `noch ${count} Streifen`),
  myWidth: "Mein Stoff ist",
  myWidthUnit: "breit, nutzbar",
  widthSaid: (fabric, width) => `${fabric} ist ${width} breit.`,
  narrowestSaid: (width) => `Dieser Plan geht bis hinab zu ${width} nutzbarer Breite.`,
  sayIt: "Neu planen",
  spoiled: "Dieser Streifen ist verdorben",
  spoiledSaid: (number) => `Streifen ${number} ist verdorben.`,
  stopHere: "Hier höre ich auf",
  stoppedSaid: (fabric) => `${fabric}: Der Rest wird von hier an geplant.`,
  noneTicked: "Noch ist kein Streifen abgehakt.",
  lengthLeft: "Länge, die davon da ist",
  leftSaid: (fabric, length) => `${fabric}: noch ${length}.`,
  moreToSay: "Mehr sagen",
  inBag: (letter) => `In Beutel ${letter}`,
  inBagSaid: (letter, count) => `In Beutel ${letter} liegen ${count}.`,
  bagTitle: (letter) => `Beutel ${letter}`,
  bagFacts: (count, size) => `${count} Stück ${size}`,
  bagCut: (cut, of) => (cut >= of ? `alle ${of} geschnitten` : `${cut} von ${of} geschnitten`),
  bagPlace: (letter) => `Wo die Teile aus Beutel ${letter} im Quilt liegen`,
  bags: "Beutel",
  further: "Aus den Beuteln weiter schneiden",
  keepPiece: (size) => `${size} aufheben`,
  furtherLength: (letter, first) =>
    `${letter} gehört zu ${first}: Streifen für dieselbe Stelle, anders lang. Sie werden aneinandergenäht.`,
  staysUncut: (size) => `${size} bleibt ungeschnitten`,
  changedTitle: "Was sich geändert hat",
  again: "Wird neu geplant …",
  anew: "Das Zuschneiden von vorn beginnen",
  anewSaid: "Nichts ist geschnitten.",
  workProblem: "Was vom Zuschneiden gesagt wurde, passt nicht zum Quilt, wie er jetzt gezeichnet ist",
  otherPlan: (fabrics) =>
    `Was von ${inSpeech(fabrics)} geschnitten liegt, wurde für den Quilt geschnitten, wie er war. Rückgängig machen führt dorthin zurück. Von vorn beginnen heißt, alles für den Quilt zu schneiden, wie er jetzt ist; bis dahin geht nichts Abgehaktes verloren.`,
  saveWork: "Speichern, was geschnitten ist",
  openWork: "Öffnen, was geschnitten war",
  workOpened: "Was geschnitten war, liegt auf der Matte.",
  workAlone:
    "Diese Datei sagt, was von einem Quilt geschnitten ist. Zuerst den Quilt öffnen, dann diese Datei.",
  screenOn: "Der Bildschirm bleibt an",
  screenMayDim: "Der Bildschirm darf ausgehen",
  bladeFirst: "Die Klinge jedes Mal schließen, wenn der Rollschneider abgelegt wird.",
  asPrinted: "Die Zeichnung, wie sie gedruckt wird",
  buyFor: (amount) => `Für den Rest zu kaufen: ${amount}.`,
  isEnough: "Was da ist, reicht.",
  saidSoFar: "Was gesagt wurde",

  // Ways of making, turnings
  choicesTitle: "Andere Wege, nebeneinander",
  waysAsk: "Nähweisen",
  turningsAsk: "Drehungen",
  choosing: (done, of) =>
    of === 0
      ? "Jeder Weg wird am ganzen Quilt geplant; das dauert einen Augenblick."
      : `Jeder Weg wird am ganzen Quilt geplant: ${done} von ${of} fertig.`,
  noWays: "Nichts in diesem Quilt lässt sich anders nähen oder drehen.",
  wayColumns: {
    way: "Weg",
    buy: "Kaufen",
    cuts: "Schnitte",
    seams: "Nähte",
    bias: "Schrägkanten",
    minutes: "Minuten",
    nest: "Nähte greifen ineinander",
  },
  unitKind: (unit, count) => `${unit}, ${count}`,
  asNow: "wie jetzt",
  sameBuy: "kauft dasselbe",
  otherWays: "Anders nähen",
  backToSewing: (unit) => `Zurück zum Nähen: ${unit}`,
  putsAside: (fabrics) =>
    `Was von ${inSpeech(fabrics)} schon geschnitten und an der Matte gesagt ist, gehört zum Plan, wie er jetzt ist. Wird dies übernommen, so wird es weggelegt, wo es nicht mehr passt, und das Zuschneiden beginnt dort von vorn. Einmal rückgängig machen holt es zurück.`,
  takeAllTheSame: "Trotzdem übernehmen",
  leaveIt: "So lassen",
  tookAside: (label, fabrics) =>
    `Übernommen: ${label}. Was von ${inSpeech(fabrics)} geschnitten ist, wird weggelegt, wo es nicht mehr passt; rückgängig machen holt es zurück.`,
  bestWay: "Das Beste von allem zusammen",
  takeWay: (name) => `Übernehmen: ${name}`,
  nests: (nested, places) => `${nested} von ${places}`,

  // Handing out
  patternTitle: "Die Anleitung",
  bookTitle: "Das Buch, wie es gedruckt wird",
  print2: "Drucken",
  saveBook: "Das Buch speichern",
  saveZip: "Alles, als ZIP",
  paperLabel: "Papier",
  papers: { a4: "A4", letter: "Letter" },
  oneForClass: "Eine Datei für den Kurs",
  classSaved:
    "Wer sie öffnet, schneidet und näht mit eigenen Haken; der Quilt darin lässt sich nicht ändern.",
  classOnly: "Diese Seite wurde im Kurs ausgeteilt: Der Quilt darin wird nicht geändert.",
  pageCopy: "Diese Seite mit dem Quilt darin",
  inAddress: "Den Quilt in die Adresse legen",
  addressCopied: "Die Adresse enthält den Quilt und ist kopiert. Nichts wird irgendwohin geschickt.",
  addressThere:
    "Die Adresse dieser Seite enthält jetzt den Quilt: von dort kopieren. Nichts wird irgendwohin geschickt.",
  addressTooLong: "Dieser Quilt ist zu lang für eine Adresse. Stattdessen eine Datei weitergeben.",
  fromAddress: "Der Quilt aus der Adresse liegt auf dem Tisch.",
  addressProblem: {
    version: "Der Quilt in dieser Adresse stammt von einer neueren Seite: damit öffnen.",
    broken: "Der Quilt in dieser Adresse ist nicht ganz: Er wurde unterwegs abgeschnitten oder verändert.",
  },

  // At the machine
  sewTitle: "Nähen",
  sewList: "Alles, was genäht wird",
  noSewing: "Eine Zuschnittliste sagt nichts darüber, wie genäht wird.",
  partTitles: {
    unit: "Einheit",
    blocks: "Block",
    rows: "Reihen",
    borders: "Ränder",
    finishing: "Fertigstellen",
  },
  unitOf: (blocks) => (blocks.length === 0 ? "Einheit" : `${blocks.join(", ")}: Einheit`),
  itsUnits: "Die Einheiten",
  makeOf: (made, of) => `${made} von ${of} genäht`,
  allMade: (of) => (of === 1 ? "✓ fertig" : `✓ alle ${of}`),
  madeLabel: (what) => `Genäht: ${what}`,
  makeAll: (count) => `Alle ${count}`,
  isDone: "Fertig",
  takeBags: "Nehmen",
  bagHolds: (fabric, size) => `${fabric}, ${size}`,
  perSet: (count) => `${count} für jeden Satz`,
  back: "Zurück",
  next: "Weiter",
  pictureOf: (at, of) => `Bild ${at} von ${of}`,
  stepsOf: (done, of) => `${done} von ${of} ${of === 1 ? "Schritt" : "Schritten"}`,
  stopOf: (at, of) => `Abschnitt ${at} von ${of}`,
  signs: "Was die Zeichen bedeuten",
  inWords: "In Worten",
  pressTitle: "Bügeln",
  pressName: (name, count) => `Bügeln: ${name}${count === 0 ? "" : ` (${count} nähen)`}`,
  pressOf: (at, of) => `${at} von ${of}`,
  seamOf: (at, of) => `Naht ${at} von ${of}`,
  seamHelp: "Eine Naht antippen, um zu hören, was unter ihr liegt.",
  seamSays: (way, under, beside) =>
    `${way} bügeln. Beide Zugaben liegen unter ${under === "" ? "dem, was auf dieser Seite ist" : under}${beside === "" || beside === under ? "." : `; keine unter ${beside}.`}`,
  ways: { left: "Nach links", right: "Nach rechts", up: "Nach oben", down: "Nach unten" },
  allSewn: "Alles ist genäht.",
};
