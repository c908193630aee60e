import type { Words } from "../../types.ts";
import { counted, either, figure, list, plural } from "../language.ts";

/** Halves as makers write them. */
function halves(squares: number): string {
  const whole = Math.floor(squares);
  if (whole === squares) return figure(squares);
  return whole === 0 ? "1/2" : `${whole} 1/2`;
}

const boxes = (squares: number): string => `${halves(squares)} ${plural(squares, "Kästchen", "Kästchen")}`;

/** `6 Spalten, je 18 Kästchen breit`, or `Spalten 18, 10 und 18 Kästchen breit`. */
function lines(sizes: readonly number[], one: string, many: string, way: string): string {
  const alike = sizes.every((size) => size === sizes[0]);
  if (alike)
    return `${counted(sizes.length, one, many)}${sizes.length === 1 ? "," : ", je"} ${boxes(sizes[0] ?? 0)} ${way}`;
  return `${many} ${list(sizes.map(halves))} Kästchen ${way}`;
}

const SAID_WAY = {
  pieced: "Patch für Patch genäht, jede Naht auf einer gedruckten Linie",
  folded: "aus fertigen Teilen, Kante an Kante gelegt, die Linien dazwischen gefaltet und genäht",
} as const;

const WAYS: Readonly<Record<string, string>> = {
  "0,-1": "nach oben",
  "0,1": "nach unten",
  "-1,0": "nach links",
  "1,0": "nach rechts",
  "-1,-1": "nach links oben",
  "1,-1": "nach rechts oben",
  "-1,1": "nach links unten",
  "1,1": "nach rechts unten",
};

const ORDINALS = ["ersten", "zweiten", "dritten", "vierten", "fünften"];

const HEADS: Readonly<Record<number, string>> = {
  0: "Motiv nach oben",
  90: "Motiv nach rechts",
  180: "Motiv nach unten",
  270: "Motiv nach links",
};

const TURNED: Readonly<Record<number, string>> = {
  0: "nicht gedreht",
  90: "einmal nach rechts gedreht",
  180: "auf den Kopf gedreht",
  270: "einmal nach links gedreht",
};

export const foundation: Words["foundation"] = {
  lies: (up, print) => {
    if (print === "two-way")
      return up % 180 === 0 ? ", Druck von oben nach unten" : ", Druck von Seite zu Seite";
    return `, ${HEADS[up] ?? "wie im Bild"}`;
  },
  forBlocks: (block, turns) =>
    `Für die Blöcke ${block}, die im Quilt ${either(turns.map((turn) => TURNED[turn] ?? "schräg gestellt"))} sind.`,
  part: (per, letters) =>
    `${{ unit: "Einheit", motif: "Motiv", block: "Block", row: "Reihe" }[per]} ${letters.join("/")}`,
  title: "Auf der Rasterunterlage",
  pictures:
    "Diese Bilder neben die Maschine legen: Sie zeigen jedes Stück der Unterlage mit abgezählten Kästchen in der Reihenfolge des Nähens.",
  partsTitle: "Teile, die auf die Unterlage kommen",
  halves,
  squares: (across, down) => `${halves(across)} x ${halves(down)} Kästchen`,
  lead: (way, grid, per) =>
    `Einige gedruckte Kästchen nachmessen: je ${grid}. Auf jedes Stück der Unterlage kommt: ${per}, ${SAID_WAY[way]}.`,
  cut: (count, fabric, squares, size, name) =>
    `${counted(count, "Stück", "Stücke")} ${fabric} ${squares} (${size}) auf den gedruckten Linien zuschneiden, für ${name}.`,
  allowance: (squares) =>
    `Davon ${plural(squares, "liegt", "liegen")} ringsum ${boxes(squares)} außerhalb der äußersten Nahtlinie: von dort zählen.`,
  uneven: (name, [left, right, above, below]) =>
    `Bei ${name} liegt, von vorn gesehen, so viel außerhalb der äußersten Nahtlinie: links ${boxes(left)}, rechts ${halves(right)}, oben ${halves(above)} und unten ${halves(below)}.`,
  cautions: (hold) =>
    hold === "fusible"
      ? "Kleber schmilzt: zuerst an einem Rest trocken bügeln, freie Unterlage mit einem Bügeltuch abdecken und mit dem Eisen nur die Patches berühren."
      : "Das Bügeleisen an einem Rest ausprobieren: Manche Unterlage schrumpft oder schmilzt.",
  make: (name, count, squares) => `${name} (${count} nähen), fertig ${squares}`,
  first: (what, hold, seam) =>
    `Bedruckte Seite nach unten${hold === "fusible" ? ", Kleber oben" : ""}: Patch 1, ${what}, mit der rechten Seite nach oben auf seine Kästchen legen, ringsum mindestens ${seam} darüber hinaus; ${
      hold === "fusible" ? "mit dem Eisen kurz antippen, damit er hält" : "feststecken"
    }.`,
  each: (seam) =>
    `Jeden weiteren Patch so: rechts auf rechts auf das Vorhandene legen, die Kante ${seam} über die Linie hinaus; die Arbeit wenden und auf der Linie nähen, von einigen Stichen davor bis einige danach; ` +
    `die Unterlage zurückfalten und die Nahtzugabe auf ${seam} zurückschneiden; den Patch umschlagen und bügeln.`,
  line: ({ number, patch, what, run, toward, crease }) =>
    `Linie ${number}: Patch ${patch}, ${what}; ${run}; ${
      crease === null
        ? ""
        : `keine seiner Kanten verläuft an dieser Linie: mit der rechten Seite nach oben gerade über seinen Platz legen, ringsum mindestens ${crease} darüber hinaus, entlang der Linie einen Knick bügeln, über den Knick zurückschlagen und im Knick nähen; `
    }${toward} bügeln, zum neuen Patch.`,
  along: (squares, between) =>
    `${between ? "in der Mitte zwischen zwei gedruckten Linien (vorher anzeichnen)" : "auf der Linie"}, ${boxes(squares)}`,
  slanting: (across, down, between) =>
    `${between ? "von Punkt zu Punkt, in der Mitte zwischen Linien, wo das Bild es zeigt," : "von Ecke zu Ecke,"} ${halves(across)} zur Seite und ${halves(down)} nach unten (vorher anzeichnen)`,
  toward: (x, y) => WAYS[`${x},${y}`] ?? "",
  chain: "Linie 1 an allen nähen, dann erst Linie 2.",
  neatenLevel:
    "Kanten säubern: Patches bündig mit der Kante der Unterlage abschneiden. Nichts wird begradigt oder kleiner geschnitten.",
  neaten: (seam) =>
    `Kanten säubern: Patches und Unterlage ${seam} außerhalb der äußersten Nahtlinie abschneiden, nie auf ihr. Nichts wird begradigt oder kleiner geschnitten.`,
  join: (seam) =>
    `Was auf der Unterlage genäht ist, auf den äußersten gedruckten Nahtlinien zusammennähen, die ${seam} von den gesäuberten Kanten liegen: zuerst an den Ecken durch die Linien stecken.`,
  notSquared: (blocks) =>
    `Auf der Unterlage genäht und nicht begradigt: ${blocks.join("; ")}. Die gedruckten Linien halten das Maß; nur die Kanten säubern.`,
  settled:
    "Nähte auf der Unterlage werden zum zuletzt angenähten Patch gebügelt; die anderen richten sich nach ihnen.",
  leftIn:
    "Die Unterlage bleibt darin: An jeder Naht ist sie eine Lage mehr. Die Lagen, die beim Bügeln gezählt sind, rechnen sie nicht mit. Sind zwei Teile zusammengenäht, die Unterlage aus der Nahtzugabe schneiden, wo es dick wird.",
  shortStitches:
    "Mit kurzen Stichen nähen, etwa 1,5 mm (18 auf 1 Zoll), damit sich die Unterlage später daran abreißen lässt.",
  tornAway:
    "Die Unterlage abreißen, wenn das Top ringsum genäht ist: entlang der Naht, nie quer dazu, und die Stiche dabei mit dem Daumen festhalten.",
  tornPressing: "Vor dem Abreißen bügeln: Schrägkanten sind nur so lange gehalten, wie die Unterlage da ist.",
  lay: (columns, rows) =>
    `Bedruckte Seite nach unten, die Teile Kante an Kante auflegen: ${lines(columns, "Spalte", "Spalten", "breit")}, ${lines(rows, "Reihe", "Reihen", "hoch")}.`,
  laid: (hold) =>
    hold === "fusible"
      ? "Mit dem Bild vergleichen, dann alle aufbügeln."
      : "Mit dem Bild vergleichen, dann jedes Teil in der Mitte anheften.",
  upright: (count, allowance, from, length) =>
    `Zuerst ${counted(count, "senkrechte Linie", "senkrechte Linien")}: die Unterlage auf der Linie zwischen zwei Spalten falten, rechts auf rechts, und auf der ${ORDINALS[allowance - 1] ?? `${allowance}.`} gedruckten Linie neben dem Falz nähen (${counted(allowance, "Kästchen", "Kästchen")} davon entfernt, ${from}), ${length} lang.`,
  snip: "Wo waagerechte Linien sie kreuzen werden, die Nahtzugaben dieser Nähte bis an die Naht einschneiden, damit jede Reihe nach ihrer Seite gebügelt werden kann.",
  level: (count, length) =>
    `Dann ${counted(count, "waagerechte Linie", "waagerechte Linien")}: zwischen zwei Reihen ebenso falten und nähen, ${length} lang.`,
  pins: (order) =>
    order.length === 1
      ? "Zuerst die Kreuzung stecken, Naht an Naht."
      : `Zuerst die Kreuzungen stecken, Naht an Naht, die mittlere vor den anderen: ${order.join(", ")} von links.`,
  tackFirst:
    "Eine Kreuzung, die rutscht: von Hand heften, oder einige Stiche darüber nähen und nachsehen, bevor die ganze Linie genäht wird.",
  folded: (squares, size) => `Es misst ${size}, ${squares}: nur Fäden abschneiden, nichts wird begradigt.`,
  bulk: "Jeder Falz ist in seiner Naht mitgefasst: Wo es dick wird, den Falz auf seiner Linie aufschneiden und die Naht auseinanderbügeln.",
};
