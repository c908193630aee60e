import type { Words } from "../../types.ts";
import { capital, list, plural, small } from "../language.ts";
import { partName } from "../quilt/unit-names.ts";

type Press = Parameters<Words["units"]["insidePressed"]>[3][number];

/** A heap with how many belong to it; 0 where a table says it. */
const counted = (name: string, count: number): string => (count === 0 ? name : `${name} (${count})`);

/** Where the print points. */
const HEADS = {
  0: "Motiv nach oben",
  1: "Motiv nach rechts oben",
  2: "Motiv nach rechts",
  3: "Motiv nach rechts unten",
  4: "Motiv nach unten",
  5: "Motiv nach links unten",
  6: "Motiv nach links",
  7: "Motiv nach links oben",
} as const;

/** The same for a print that reads alike from both ends. */
const RUNS = [
  "Druck aufrecht",
  "Druck nach rechts geneigt",
  "Druck waagerecht",
  "Druck nach links geneigt",
] as const;

const CORNERS = {
  "top-left": "oben links",
  "top-right": "oben rechts",
  "bottom-right": "unten rechts",
  "bottom-left": "unten links",
} as const;

/** From corner to corner, as drawn. */
const LINES = {
  rising: "von der linken unteren zur rechten oberen Ecke",
  falling: "von der linken oberen zur rechten unteren Ecke",
} as const;

/** What of a unit shows which way it stands, where something does. */
const POINTS: Readonly<Record<string, string>> = { "flying geese": "die Gans" };

const TURNED = ["nach oben", "nach rechts", "nach unten", "nach links"] as const;
const AS_DRAWN = [
  "wie gezeichnet",
  "eine Vierteldrehung nach rechts",
  "eine halbe Drehung",
  "eine Vierteldrehung nach links",
] as const;

const PRESSED = { left: "nach links", right: "nach rechts", up: "nach oben", down: "nach unten" } as const;

/** Presses of seams in order: all one way, away from the middle, towards it, or each by itself. */
function pressedTold(presses: readonly Press[]): string {
  const [first] = presses;
  if (first === undefined) return "";
  if (presses.every((press) => press === first)) return PRESSED[first];
  const half = presses.length / 2;
  const [before, after] = [presses.slice(0, half), presses.slice(half)];
  const split = before.every((press) => press === before[0]) && after.every((press) => press === after[0]);
  if (Number.isInteger(half) && split)
    return first === "left" || first === "up" ? "nach außen" : "nach innen";
  return presses.map((press) => PRESSED[press]).join(", ");
}

const PARTS: Readonly<Record<string, string>> = {
  "top-left": "rechter Winkel oben links",
  "top-right": "rechter Winkel oben rechts",
  "bottom-right": "rechter Winkel unten rechts",
  "bottom-left": "rechter Winkel unten links",
  top: "lange Seite oben",
  right: "lange Seite rechts",
  bottom: "lange Seite unten",
  left: "lange Seite links",
};

const sewSets = (count: number): string => `${count} ${plural(count, "Satz", "Sätze")}`;

/** Where a seam turns, in the finished unit. */
const at = (corners: readonly { across: string; down: string }[]): string[] =>
  corners.map(({ across, down }) => `${across} von links und ${down} von oben`);

const eachTime = (press: string): string => (press === "" ? "" : ` Jedes Mal: ${small(press)}`);

const ROUND_A_CORNER = "bis eine Nahtzugabe vor die Ecke nähen, dort die Arbeit drehen und weiternähen";

export const units: Words["units"] = {
  inList: (names, unit) => `${list(names)}: ${unit}`,
  heapOf: (letter) => `Stapel ${letter}`,
  about: (said) => `etwa ${said}`,
  bag: (letter, fabric) => `${letter} (${fabric})`,
  heads: (up, twoWay) => (twoWay ? (RUNS[up % 4] ?? "") : HEADS[up]),
  line: LINES,
  standing: (line, upright) =>
    `${line}, so wie es mit der rechten Seite nach oben liegt, lange Seiten ${upright ? "senkrecht" : "waagerecht"}`,
  corner: (corner) => CORNERS[corner],
  title: (name, text, method, units) => `${name}: ${text}, ${method}: ${units} nähen`,
  groupTitle: (names, text, method, units) => `${list(names)}: ${text}, ${method}: insgesamt ${units} nähen`,
  group: {
    unit: "Einheit",
    make: "Nähen",
    sets: "Sätze",
    over: "Übrig",
    heap: (heap) => `Auf ${heap}`,
    heapOf: (name, count) => `${name}: ${count}`,
    role: (role) => partName(role).toLocaleUpperCase("de"),
    roleBag: (role, number) => `${partName(role).toLocaleUpperCase("de")} ${number}`,
    bag: (number) => `BEUTEL ${number}`,
    alike:
      "Einheiten, die in einer Tabelle stehen, werden gleich genäht: Die Schritte nennen jeden Beutel nach dem Kopf seiner Spalte, und ihre Anzahlen gelten für eine Zeile. Die Einheiten nach Namen getrennt halten.",
    perSet: (perSet) => `Jeder Satz ergibt ${perSet} Einheiten.`,
    own: (names, line) => `${list(names)}: ${line}`,
  },
  sets: (sets, perSet, spare) => {
    const over = spare === 0 ? "" : `; ${spare} ${plural(spare, "bleibt", "bleiben")} übrig`;
    if (perSet === 1) return over === "" ? "" : `${sets} nähen${over}.`;
    const each =
      sets === 1
        ? `1 Satz nähen: ${perSet} Einheiten daraus`
        : `${sets} Sätze nähen: aus jedem ${perSet} Einheiten`;
    return `${each}${over}.`;
  },
  batch: (sets) => `Für ${sewSets(sets)}:`,
  take: (bags, of) =>
    `Für ${of === "set" ? "jeden Satz" : "jede Einheit"} ${list(bags.map(({ count, bag }) => `${count} ${bag}`))} nehmen.`,
  lay: (over, under, underHeads, overHeads) =>
    `${over} auf ${under} legen, rechts auf rechts, Kanten bündig${
      underHeads === "" ? "" : `; unten: ${underHeads}`
    }${overHeads === "" ? "" : `; oben, von links gesehen: ${overHeads}`}.`,
  drawLine: (bag, line) =>
    `So wie es liegt, auf der linken Seite von ${bag} eine Linie ${LINES[line]} anzeichnen.`,
  drawBoth: (bag) => `Auf der linken Seite von ${bag} beide Diagonalen anzeichnen.`,
  sewBoth: (seam) =>
    `Auf beiden Seiten der Linie im Abstand von ${seam} nähen. Auf der Linie auseinanderschneiden.`,
  sewBothDiagonals: (seam) =>
    `Auf beiden Seiten jeder Linie im Abstand von ${seam} nähen. In der Mitte senkrecht und waagerecht durchschneiden, dann auf beiden Linien.`,
  sewEdges: (seam) =>
    `Ringsum ${seam} innerhalb der Kante nähen. Auf beiden Diagonalen schneiden, ohne die Lagen zu verschieben.`,
  biasEdges: "Alle Außenkanten sind jetzt Schrägkanten: bügeln, ohne zu ziehen.",
  crossPair: (seam) =>
    `Bei einer der beiden auf der linken Seite die andere Diagonale anzeichnen, quer über die Naht. Beide aufeinanderlegen, ungleiche Stoffe aufeinander, die Nähte ineinandergreifend. Auf beiden Seiten der Linie im Abstand von ${seam} nähen. Auf der Linie auseinanderschneiden.`,
  ruleSmall: (bag) => `Auf der linken Seite von jedem ${bag} eine Linie von Ecke zu Ecke anzeichnen.`,
  firstSmall: (bag, large, largeHeads, seam) =>
    `Zwei ${bag} auf die Ecken oben links und unten rechts von ${large}${
      largeHeads === "" ? "" : ` (${largeHeads})`
    } legen, rechts auf rechts, Kanten bündig, die Linien in einer Flucht; in der Mitte überlappen sie ein wenig. Auf beiden Seiten der Linie im Abstand von ${seam} nähen. Auf der Linie auseinanderschneiden: zwei Herzen.`,
  secondSmall: (bag, seam) =>
    `Auf jedes Herz ein ${bag} legen, auf die noch freie Ecke des großen Teils, die Linie zur Kerbe des Herzens. Auf beiden Seiten der Linie im Abstand von ${seam} nähen. Auf der Linie auseinanderschneiden: vier Gänse aus jedem Satz.`,
  smallHeads: (corners) =>
    `Die kleinen Quadrate, von links gesehen: ${corners
      .map(({ corner, heads }) => `${CORNERS[corner]} ${heads}`)
      .join(", ")}.`,
  flipBase: (base, heads) => `${base} vor sich hinlegen${heads === "" ? "" : `, ${heads}`}.`,
  itsSquare: "das genannte Quadrat",
  flipEach: (bag, seam) =>
    `Auf jede genannte Ecke legen: ${bag}, rechts auf rechts, Kanten bündig; auf der linken Seite die genannte Linie anzeichnen und darauf nähen. ${seam} außerhalb der Naht abschneiden, das Dreieck über die Ecke nach außen klappen und nach außen bügeln. Eine Ecke nach der anderen:`,
  flipCorner: (corner, bag, line, heads) =>
    `${CORNERS[corner]}${bag === "" ? "" : `, ${bag}`}: ${LINES[line]}${
      heads === "" ? "" : `, das Teil liegt, von links gesehen: ${heads}`
    }`,
  stripSet: (number, strips) =>
    `Streifenset ${number}, Streifen von oben: ${strips.join(", ")}. An den langen Seiten zusammennähen, jede zweite Naht vom anderen Ende her.`,
  setCount: (full, length, short, shortLength, height) => {
    const sets = [
      ...(full > 0 ? [`${full} ${plural(full, "Set", "Sets")} aus ${length} langen Streifen`] : []),
      ...(short > 0 ? [`1 kurzes Set aus ${shortLength} langen Streifen`] : []),
    ];
    return `${list(sets)} nähen; jedes ist ${height} hoch.`;
  },
  longerStrips: (bag, length) =>
    `Die Streifen ${bag} sind länger: vor dem Nähen jeden auf ${length} kürzen und den Rest aufheben.`,
  segments: ({ count, width, perSet, fromLast, full, number, used }) => {
    const long = fromLast > 0 ? "langen " : "";
    const from = [
      ...(full > 0 ? [`${perSet} aus ${full === 1 ? "dem" : "jedem"} ${long}Set`] : []),
      ...(fromLast > 0 ? [`${fromLast} aus dem kurzen`] : []),
    ];
    return `An jedem Set ein Ende begradigen, dann ${count} ${plural(count, "Abschnitt", "Abschnitte")} ${width} breit schneiden (${list(from)}): Abschnitte von Set ${number}, ${used} für jede Einheit.`;
  },
  diamonds: (bag, count, apart) =>
    `Von jedem ${bag} ein Ende im Winkel von 45 Grad abschneiden: die 45-Grad-Linie des Lineals an die Streifenkante legen. Parallel dazu im Abstand von ${apart} weiterschneiden, rechtwinklig zu den Schnitten gemessen: ${count} Rauten.`,
  triangles60: (bag, count) =>
    `Jeden ${bag} in Dreiecke schneiden, die 60-Grad-Linie des Lineals an der Streifenkante, hin und her, jeder Schnitt beginnt, wo der vorige endet: ${count} Dreiecke.`,
  wideShapes:
    "Ihre Breite ist auf die Striche des Lineals aufgerundet, die Kanten liegen also weiter als eine Nahtzugabe von den Nahtlinien: die Nahtlinien nach der Schablone auf der linken Seite anzeichnen und darauf nähen.",
  join: (parts, way, makes, setIn, corners) => {
    const order = way === "across" ? "nebeneinander, von links" : "untereinander, von oben";
    const places = at(corners);
    const where = places.length === 0 ? "" : ` (in der fertigen Einheit ${list(places)})`;
    const how = setIn ? ` Die Naht geht um eine Ecke${where}: ${ROUND_A_CORNER}.` : "";
    const made = makes === "" ? "" : ` Das ergibt ${makes}.`;
    return way === "edge"
      ? `An der gemeinsamen Kante zusammennähen: ${parts.join("; ")}.${how}${made}`
      : `${capital(list(parts))} zusammennähen, ${order}.${how}${made}`;
  },
  segment: (set, turned) => `ein Abschnitt von Set ${set}${turned ? ", um eine halbe Drehung gedreht" : ""}`,
  patch: (letters, fabric, heads) => {
    const said = [fabric, heads].filter((each) => each !== "");
    return said.length === 0 ? letters : `${letters} (${said.join(", ")})`;
  },
  patchFrom: (sources, fabric, heads, minded) => {
    const letters = [...new Set(sources.map(({ letter }) => letter))].join("/");
    const shapes = sources.flatMap(({ part }) => (part === "whole" || part === "template" ? [] : [part]));
    const piece =
      shapes.length === 0 ? "" : shapes[0]?.includes("-") ? "eine Hälfte von " : "ein Viertel von ";
    const ways = minded
      ? sources.flatMap(({ letter, part, count }) =>
          part === "whole" || part === "template"
            ? []
            : [
                `${sources.length > 1 ? `bei ${count} davon ${letter}, ` : ""}${PARTS[part] ?? ""}, wie es geschnitten wurde`,
              ],
        )
      : [];
    const how = [...ways, ...(heads === "" ? [] : [shapes.length === 0 ? heads : `so gelegt: ${heads}`])];
    const said = [fabric, ...how].filter((each) => each !== "");
    return said.length === 0 ? `${piece}${letters}` : `${piece}${letters} (${said.join(", ")})`;
  },
  edgeByEdge: (setIn, press) =>
    `An der gemeinsamen Kante zusammennähen, ein Paar nach dem anderen wie aufgeführt.${
      setIn ? ` Die Naht geht um eine Ecke: ${ROUND_A_CORNER}.` : ""
    }${eachTime(press)}`,
  edgePair: (parts, makes, corners) => {
    const places = at(corners);
    return `${list(parts)}${makes === "" ? "" : `: ${makes}`}${
      places.length === 0 ? "" : `; Ecke, in der fertigen Einheit, ${list(places)}`
    }`;
  },
  begin: (a, b, way) => (way === "across" ? `${a} links von ${b}` : `${a} über ${b}`),
  added: (what, side) => `${what} ${{ left: "links", right: "rechts", top: "oben", bottom: "unten" }[side]}`,
  sized: (what, size, level) =>
    `${what}${size === "" ? "" : `: ${size}`}${level ? ", sobald das überstehende Ende abgeschnitten ist" : ""}`,
  level:
    "Durch das Aufrunden ist ein Teil etwas länger: an einem Ende bündig legen, nähen und das andere Ende gerade abschneiden.",
  oneByOne: (press) =>
    `Eins nach dem anderen annähen wie aufgeführt; dabei steht, was es jedes Mal messen muss.${eachTime(press)}`,
  press: {
    to: (what) => `Zu ${what} bügeln.`,
    outside: "Nach außen bügeln.",
    "one-way": "Alle Nähte nach einer Seite bügeln.",
    "by-turns": "Entgegengesetzt zur vorigen Reihe bügeln.",
    open: "Auseinanderbügeln.",
    darker: "Zu einer Seite bügeln, immer zur selben.",
    all: "Die Nähte ringsum in einer Richtung bügeln.",
  },
  placesIn: (name, which) => `${plural(which.length, "Platz", "Plätze")} ${list(which)} in ${name}`,
  countedSo:
    "Plätze werden im einzeln liegenden Block gezählt, Reihe für Reihe von oben links, nur die dieser Einheit.",
  forKinds: (count, kinds) => `${count} davon, für ${list(kinds)}`,
  insidePressed: (whose, lines, inner, between) => {
    const rows = lines === "rows";
    const ways = new Map<string, number[]>();
    for (const [i, presses] of inner.entries())
      if (presses.length > 0)
        ways.set(pressedTold(presses), [...(ways.get(pressedTold(presses)) ?? []), i + 1]);
    const parts = [...ways].map(
      ([way, numbers]) =>
        `in ${rows ? plural(numbers.length, "Reihe", "Reihen") : plural(numbers.length, "Spalte", "Spalten")} ${list(numbers)} ${way}`,
    );
    const joined = pressedTold(between);
    const from = rows ? "von oben" : "von links";
    const for_ = whose === "" ? "" : `${whose}: `;
    if (parts.length === 0)
      return capital(
        `${for_}${plural(between.length, "die Naht", "die Nähte")} ${joined} bügeln, damit sie später ineinandergreifen.`,
      );
    return capital(
      `${for_}so bügeln, dass die Nähte später ineinandergreifen: vor dem Zusammennähen der ${rows ? "Reihen" : "Spalten"} die Nähte ${list(parts)}, ${from} gezählt; dann die Nähte dazwischen ${joined}.`,
    );
  },
  measures: (size) => `Es misst ${size}.`,
  trim: {
    diagonal: (size) => `Auf ${size} beschneiden, die Diagonale des Lineals auf der Naht.`,
    cross: (size) => `Auf ${size} beschneiden, beide Nähte laufen in die Ecken.`,
    point: (size, seam) =>
      `Auf ${size} beschneiden: ${seam} über der Spitze stehen lassen, nie hineinschneiden.`,
    corners: (size) =>
      `Auf ${size} so beschneiden, dass die Naht durch die Ecken der Nahtlinien läuft, nicht der Schnittkanten.`,
    ends: (size) => `Beide Enden gerade schneiden: ${size}.`,
    round: (size) => `Auf ${size} beschneiden, an allen Seiten gleich viel.`,
  },
  measuresUnit: (size) => `Jede misst ${size}; nichts wird beschnitten.`,
  sort: (heaps) => `In Stapel sortieren, jede so wie die Einheit gezeichnet ist: ${heaps.join("; ")}.`,
  heapPrints: (name, count, prints) =>
    `${counted(name, count)} ${list(prints.map(({ fabric, heads }) => `${fabric} ${heads}`))}`,
  sortUpright: (fabrics, twoWay, heaps) =>
    `In Stapel sortieren: jede Einheit so drehen, dass ${
      twoWay
        ? `der Druck von ${list(fabrics)} aufrecht steht`
        : `das Motiv von ${list(fabrics)} nach oben zeigt`
    }. Dann ${heaps.join("; ")}.`,
  heapUpright: (name, count, kind, turn) => {
    const points = POINTS[kind];
    return points === undefined
      ? `${counted(name, count)}: die Einheit ${AS_DRAWN[turn]}`
      : `${counted(name, count)}: ${points} zeigt ${TURNED[turn]}`;
  },
  heap: (name, count) => (count === 0 ? `Für ${name}:` : `${name} (${count} nähen):`),
  shareOf: (share, bag) =>
    share === "whole" ? bag : `${share === "half" ? "eine Hälfte" : "ein Viertel"} von ${bag}`,
  over: (count, parts, bag) =>
    `${count} ${parts === 2 ? plural(count, "Hälfte", "Hälften") : "Viertel"} von ${bag}`,
  allOver: (bags) => `Übrig, wenn alle Einheiten genäht sind: ${bags.join("; ")}.`,
  ownPieces: (count, bag) => `${count} von ${bag}`,
  allOwn: (bags) => `Hier in keinem Schritt vernäht, da die Datei sie für sich aufführt: ${bags.join("; ")}.`,
  spot: (spot, bag) => `${partName(spot)}, ${bag}`,
};
