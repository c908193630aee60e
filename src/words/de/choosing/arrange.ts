import type { Words } from "../../types.ts";
import { list, plural } from "../language.ts";

const twoWays = (ways: 1 | 2): string => (ways === 2 ? ", der Block auf zwei Arten gebügelt" : "");

const BLOCKS: Words["arrange"]["blockTurnings"] = {
  upright: "alle aufrecht",
  right: "alle nach rechts gedreht",
  "upside-down": "alle auf dem Kopf",
  left: "alle nach links gedreht",
  "by-turns": "abwechselnd links und rechts",
  centre: "um die Mitte",
  pairs: "gespiegelte Paare",
  chance: "nach Zufall",
};

const MOTIFS: Words["arrange"]["motifTurnings"] = {
  upright: "Motive alle nach oben",
  right: "Motive alle nach rechts",
  "upside-down": "Motive alle nach unten",
  left: "Motive alle nach links",
  facing: "Motive paarweise einander zugewandt",
  stacked: "Motive oben und unten einander zugewandt",
  apart: "Motive Rücken an Rücken",
  "by-turns": "Motive abwechselnd links und rechts",
  clockwise: "Motive im Uhrzeigersinn herum",
  anticlockwise: "Motive gegen den Uhrzeigersinn herum",
  centre: "Motive um die Mitte",
  chance: "Motive nach Zufall",
};

const turned: Words["arrange"]["turned"] = (blocks, motifs, seed) => {
  const seeded = (key: string) => (key === "chance" ? `, Startzahl ${seed}` : "");
  const ofBlocks = blocks === "file" ? "" : `${BLOCKS[blocks]}${seeded(blocks)}`;
  const ofMotifs = motifs === "file" ? "" : `${MOTIFS[motifs]}${seeded(motifs)}`;
  if (ofBlocks === "") return ofMotifs === "" ? "wie in der Datei" : ofMotifs;
  return ofMotifs === "" ? ofBlocks : `Blöcke ${ofBlocks}, ${ofMotifs}`;
};

/** The words of arrangements of blocks side by side. */
export const arrange: Words["arrange"] = {
  blockTurnings: BLOCKS,
  motifTurnings: MOTIFS,
  turned,
  title: (name) => `${name}: die Blöcke gedreht, und die Motive darin`,
  way: "Gedreht",
  motifs: (said) => `Motive, die in ihrem Block gedreht werden: ${said}.`,
  motifsOf: (block, count, size, square) =>
    `${block}, ${count} Stück ${size}${square ? "" : " (nicht quadratisch: nur um halbe Drehungen)"}`,
  noMotifs:
    "Kein Block hat gleiche Teile, die für sich gedreht werden könnten; wer welche sieht, nennt sie im Block: motifs: 2 x 2",
  same: "Diese sehen gleich aus und sind einmal gezeigt:",
  looksLike: (name, others) => `${name}: auch ${others.join("; ")}`,
  methods: "So werden die Einheiten genäht:",
  made: (unit, method, count) => `${count} ${unit}, ${method}`,
  cost: "Preis",
  pieces: "Teile",
  sizes: "Maße",
  nested: "Nähte greifen ineinander",
  unproven: "~",
  notProven: "~ das Wenigste, was in der Zeit gefunden wurde; weniger ist nicht ausgeschlossen",
  unknown: "-",
  nest: (nested, places) => `${nested} von ${places}`,
  nestShort: (said) => `Nähte greifen ineinander: ${said}`,
  alikeFabrics: (said) => `Bei jeder Drehung gleich: ${said}`,
  alike: "Die Blöcke zu drehen ändert nichts an Einkauf und Zuschnitt: nach Augenmaß wählen.",
  cut: "Was zugeschnitten wird, wo die Drehung es ändert (quer x längs, die Oberseite des Drucks längs):",
  piece: (count, size) => `${count} Stück ${size}`,
  subcut: {
    none: "",
    "once-diagonal": " halbiert",
    "twice-diagonal": " auf beiden Diagonalen geviertelt",
    template: " für eine Schablone",
  },
  diagonal: { any: "", rising: " auf der Diagonale /", falling: " auf der Diagonale \\" },
  inAll: "insgesamt",
  noMore: "nichts weiter",
  eachOne: "jede davon",
  nesting:
    "Wo zwei Nähte an einer Verbindungsnaht aufeinandertreffen, greifen sie ineinander, wenn sie nach entgegengesetzten Seiten\n" +
    "gebügelt sind; jede Anordnung ist so gebügelt, dass möglichst viele ineinandergreifen:",
  allNest: (places, ways) => `alle ${places} Stellen greifen ineinander${twoWays(ways)}`,
  someNest: (open, places, ways, proven) =>
    `${open} von ${places} Stellen ${plural(open, "greift", "greifen")} nicht ineinander, dort stecken${twoWays(ways)}${
      proven ? "" : "; weniger könnten möglich sein"
    }`,
  turnedUnseen: (unNested, ways) => {
    const without = [
      ...(unNested === 0 ? [] : [`${unNested} griffen nicht ineinander`]),
      ...(ways === 2 ? ["der Block würde auf zwei Arten gebügelt"] : []),
    ];
    return `; Blöcke sind dafür gedreht, wo man es nicht sieht (sonst: ${list(without)})`;
  },
  noNesting: "nicht ermittelt, da das Top nicht in Reihen ganzer Blöcke liegt",
  noMirror: (blocks) =>
    `Keine Drehung zeigt das Spiegelbild von ${blocks}: In den gespiegelten Paaren ist es nur anders herum gedreht.`,
  notes: "Damit ein Druck aufrecht steht:",
  notThisWay: "Nicht möglich:",
  impossible: (way, why) => `${way}: ${why}`,
  toCopy: (way, noFill) => `Für ${way} in die Datei schreiben${noFill ? " (und `fill` weglassen)" : ""}:`,
  forNesting:
    "Damit die Nähte so ineinandergreifen und der Quilt aussieht, wie die Datei ihn hat, in die Datei schreiben (und `fill` weglassen):",
  asInFile: (way) => `Für ${way} ist nichts zu schreiben: Es sieht aus, wie die Datei es hat.`,
  noSpan: (codes) => `      # \`span\` weglassen bei ${codes.join(", ")}`,
  leaveOut: (fields) => `      # ${list(fields.map((field) => `\`${field}\``))} weglassen`,
  choose:
    "Um die Reihen einer Anordnung für die Datei zu bekommen: --only centre (oder file, upright, right, upside-down, left,\n" +
    "by-turns, pairs, chance).",
  chooseMotifs:
    "Um das Raster eines Blocks mit gedrehten Motiven zu bekommen: --motifs facing (oder upright, right, upside-down, left,\n" +
    "stacked, apart, by-turns, clockwise, anticlockwise, centre, chance). Beides zusammen: --only centre --motifs facing.",
};
