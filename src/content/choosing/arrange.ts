import type { Arrangement, Arrangements } from "../../choices/arranging/arrange-blocks.ts";
import type {
  ArrangedFabric,
  ArrangedPiece,
  Nesting,
  Taken,
} from "../../choices/arranging/arranged-figures.ts";
import type { WrittenGrid } from "../../choices/arranging/turned-spec.ts";
import type { Words } from "../../words/index.ts";
import { wordAll } from "../../words/index.ts";

import { money } from "../buying/buy.ts";

import { alignedLines, type Column } from "../lines/table.ts";
import { wrapLine } from "../lines/wrap-line.ts";

/** Columns of a line of running text. */
const WIDEST = 118;

/** An arrangement with a name to read, and those that look the same. */
type Named = Omit<Arrangement, "same"> & { name: string; same: { key: string; name: string }[] };
type Possible = Named & { planned: Taken };

/** All arrangements by name. */
export function namedArrangements({ arrangements, seed }: Arrangements, words: Words): Named[] {
  const nameOf = (one: Pick<Arrangement, "blocks" | "motifs">) =>
    words.arrange.turned(one.blocks, one.motifs, seed);
  return arrangements.map((one) => ({
    ...one,
    name: nameOf(one),
    same: one.same.map((other) => ({ key: other.key, name: nameOf(other) })),
  }));
}

const right = (heading: string): Column => ({ heading, align: "right" });

const possible = (arrangements: readonly Named[]): Possible[] =>
  arrangements.filter((one): one is Possible => one.planned !== null);

function bought({ buy, proven }: ArrangedFabric, words: Words): string {
  const said = buy === "" ? words.choices.kits.none : buy;
  return proven ? said : `${words.arrange.unproven}${said}`;
}

const nest = (nesting: Nesting | null, words: Words): string =>
  nesting === null
    ? words.arrange.unknown
    : words.arrange.nest(nesting.places - nesting.unNested, nesting.places);

const sayPiece = ({ count, size, subcut, diagonal }: ArrangedPiece, words: Words): string =>
  `${words.arrange.piece(count, size)}${words.arrange.subcut[subcut]}${subcut === "once-diagonal" ? words.arrange.diagonal[diagonal] : ""}`;

const piecesOf = ({ pieces }: ArrangedFabric, words: Words): string =>
  pieces.map((one) => sayPiece(one, words)).join(", ");

/** Whether a fabric comes to the same in all arrangements. */
function isAlike(index: number, all: readonly Possible[], of: (fabric: ArrangedFabric) => string): boolean {
  const found = all.map(({ planned }) => planned.fabrics[index]);
  return new Set(found.map((fabric) => (fabric === undefined ? "" : of(fabric)))).size === 1;
}

/** Arrangements that say the same, together. */
function grouped(
  all: readonly Possible[],
  of: (one: Possible) => string,
): { said: string; names: string[] }[] {
  const groups = new Map<string, string[]>();
  for (const one of all) groups.set(of(one), [...(groups.get(of(one)) ?? []), one.name]);
  return [...groups].map(([said, names]) => ({ said, names }));
}

function table(all: readonly Possible[], currency: string, words: Words): string[] {
  const [first] = all;
  const fabrics = first?.planned.fabrics ?? [];
  const differ = fabrics.map((_, i) => !isAlike(i, all, (one) => bought(one, words)));
  const priced = first?.planned.cost != null;
  const headings: Column[] = [
    { heading: words.arrange.way, align: "left" },
    ...fabrics.flatMap(({ fabric }, i) => (differ[i] ? [right(fabric)] : [])),
    ...(priced ? [right(words.arrange.cost)] : []),
    right(words.arrange.pieces),
    right(words.arrange.sizes),
    right(words.arrange.nested),
  ];
  const rows = all.map(({ name, planned }) => {
    const count = planned.fabrics.reduce(
      (sum, { pieces }) => sum + pieces.reduce((own, piece) => own + piece.count, 0),
      0,
    );
    const sizes = planned.fabrics.reduce((sum, { pieces }) => sum + pieces.length, 0);
    return [
      name,
      ...planned.fabrics.flatMap((one, i) => (differ[i] ? [bought(one, words)] : [])),
      ...(priced ? [money(planned.cost ?? 0, currency, words)] : []),
      String(count),
      String(sizes),
      nest(planned.nesting, words),
    ];
  });
  const alike = fabrics.flatMap((one, i) => (differ[i] ? [] : [`${one.fabric} ${bought(one, words)}`]));
  return [
    ...alignedLines(headings, rows),
    ...(alike.length === 0 ? [] : [words.arrange.alikeFabrics(alike.join(", "))]),
    ...(all.some(({ planned }) => planned.fabrics.some(({ proven }) => !proven))
      ? [words.arrange.notProven]
      : []),
  ];
}

/** What is cut of the fabrics whose pieces depend on the turning; what all cut alike is left out. */
function cutLines(all: readonly Possible[], words: Words): string[] {
  const fabrics = all[0]?.planned.fabrics ?? [];
  const lines = fabrics.flatMap(({ fabric }, i) => {
    if (isAlike(i, all, (one) => piecesOf(one, words))) return [];
    const own = all.map(({ planned }) => planned.fabrics[i]?.pieces ?? []);
    const common = (own[0] ?? [])
      .map((one) => sayPiece(one, words))
      .filter((said) => own.every((pieces) => pieces.some((piece) => sayPiece(piece, words) === said)));
    const groups = grouped(all, ({ planned }) => {
      const said = (planned.fabrics[i]?.pieces ?? []).map((one) => sayPiece(one, words));
      return said.filter((piece) => !common.includes(piece)).join(", ");
    });
    const alike = common.length === 0 ? [] : [`    ${words.arrange.inAll}: ${common.join(", ")}`];
    return [
      `  ${fabric}`,
      ...alike,
      ...groupLines(
        groups.map(({ said, names }) => ({ names, said: said === "" ? words.arrange.noMore : said })),
        all,
        words,
        4,
      ),
    ];
  });
  return lines.length === 0 ? [] : ["", words.arrange.cut, ...lines];
}

const whose = (names: readonly string[], all: readonly Possible[], words: Words): string =>
  names.length === all.length && all.length > 1 ? words.arrange.eachOne : names.join("; ");

/** Arrangements that say the same, on one line (or as many as it takes). */
const groupLines = (
  groups: readonly { said: string; names: string[] }[],
  all: readonly Possible[],
  words: Words,
  indent = 2,
): string[] =>
  groups.flatMap(({ said, names }) =>
    wrapLine(`${" ".repeat(indent)}${whose(names, all, words)}: ${said}`, WIDEST),
  );

/** How the seams nest, in words. */
function nestLines(all: readonly Possible[], words: Words): string[] {
  const groups = grouped(all, ({ planned: { nesting } }) => {
    if (nesting === null) return words.arrange.noNesting;
    const { places, unNested, ways, proven, otherwise } = nesting;
    const said =
      unNested === 0
        ? words.arrange.allNest(places, ways)
        : words.arrange.someNest(unNested, places, ways, proven);
    return otherwise === null
      ? said
      : `${said}${words.arrange.turnedUnseen(otherwise.unNested, otherwise.ways)}`;
  });
  return ["", words.arrange.nesting, ...groupLines(groups, all, words)];
}

/** What prints made necessary, once for all arrangements that it is said of. */
function noteLines(all: readonly Possible[], words: Words): string[] {
  const notesOf = ({ planned }: Possible) => wordAll(planned.notes, words).map(({ message }) => message);
  const notes = [...new Set(all.flatMap(notesOf))];
  const groups = notes.map((said) => ({
    said,
    names: all.filter((one) => notesOf(one).includes(said)).map(({ name }) => name),
  }));
  return groups.length === 0 ? [] : ["", words.arrange.notes, ...groupLines(groups, all, words)];
}

/** How units are made: once when the turning changes nothing of it, else by arrangement. */
function methodLines(all: readonly Possible[], words: Words): string[] {
  const groups = grouped(all, ({ planned }) =>
    planned.methods
      .map(({ unit, method, count }) =>
        words.arrange.made(words.unitNames.told(unit), words.unitNames.method(method), count),
      )
      .join("; "),
  ).filter(({ said }) => said !== "");
  if (groups.length === 0) return [];
  return ["", words.arrange.methods, ...groupLines(groups, all, words)];
}

/** Which motifs are turned. */
function motifLines({ motifs }: Arrangements, words: Words): string[] {
  if (motifs.length === 0) return [words.arrange.noMotifs];
  const said = motifs.map(({ block, count, size, square }) =>
    words.arrange.motifsOf(block, count, size, square),
  );
  return [words.arrange.motifs(said.join("; "))];
}

/** Arrangements that come out the same to the eye. */
function sameLines(arrangements: readonly Named[], words: Words): string[] {
  const lines = arrangements.flatMap(({ name, same }) => {
    if (same.length === 0) return [];
    const others = same.map((other) => other.name);
    return wrapLine(`  ${words.arrange.looksLike(name, others)}`, WIDEST);
  });
  return lines.length === 0 ? [] : ["", words.arrange.same, ...lines];
}

const indented = (lines: readonly string[], by: number): string[] =>
  lines.map((line) => `${" ".repeat(by)}${line}`);

/** A block's drawing as it is written in the file. */
function gridToCopy(
  { block, grid, columns, lines, leaveOut, withoutSpan }: WrittenGrid,
  words: Words,
): string[] {
  return [
    `    ${block}:`,
    ...(columns === null ? [] : [`      columns: [${columns.join(", ")}]`]),
    ...(lines === null ? [] : [`      lines: [${lines.join(", ")}]`]),
    ...(leaveOut.length === 0 ? [] : [words.arrange.leaveOut(leaveOut)]),
    ...(withoutSpan.length === 0 ? [] : [words.arrange.noSpan(withoutSpan)]),
    "      grid: |",
    ...indented(grid, 8),
  ];
}

/**
 * What is to be written in the file for one arrangement: the rows where blocks are turned, also where that does not
 * show, and grids where motifs are.
 */
function toCopy({ name, key, same, blocks, rows, grids, planned }: Possible, words: Words): string[] {
  const turned = blocks !== "file" || (planned.nesting?.otherwise ?? null) !== null;
  const setting = turned ? ["  setting:", "    rows: |", ...indented(rows, 6)] : [];
  if (key === "file") {
    const nested = turned ? ["", words.arrange.forNesting, ...setting] : [];
    return [...nested, ...same.flatMap((other) => ["", words.arrange.asInFile(other.name)])];
  }
  return [
    "",
    words.arrange.toCopy([name, ...same.map((other) => other.name)].join("; "), turned),
    ...(grids.length === 0 ? [] : ["  blocks:", ...grids.flatMap((one) => gridToCopy(one, words))]),
    ...setting,
  ];
}

/**
 * What each arrangement takes: fabric, price, pieces and sizes to cut, methods, and how its seams nest.
 * @param copy print what is to be copied into the file for each arrangement: its rows, and the grids of its blocks
 */
export function arrangementsTable(found: Arrangements, copy: boolean, words: Words): string {
  const { name, alike, noMirror, currency, motifs } = found;
  const arrangements = namedArrangements(found, words);
  const all = possible(arrangements);
  const not = arrangements.flatMap(({ name: way, planned, why }) =>
    planned === null && why !== null ? [`  ${words.arrange.impossible(way, words.whyNot(why))}`] : [],
  );
  const choices = [words.arrange.choose, ...(motifs.length === 0 ? [] : [words.arrange.chooseMotifs])];
  return [
    words.arrange.title(name),
    ...motifLines(found, words),
    "",
    ...table(all, currency, words),
    ...sameLines(arrangements, words),
    ...(alike ? ["", words.arrange.alike] : cutLines(all, words)),
    ...methodLines(all, words),
    ...nestLines(all, words),
    ...(noMirror.length === 0 ? [] : ["", words.arrange.noMirror(noMirror.join(", "))]),
    ...noteLines(all, words),
    ...(not.length === 0 ? [] : ["", words.arrange.notThisWay, ...not]),
    ...(copy ? all.flatMap((one) => toCopy(one, words)) : ["", ...choices]),
    "",
  ].join("\n");
}

/** The pictures of a drawing of all arrangements, each with what it takes written under it. */
export function arrangementPictures(
  found: Arrangements,
  words: Words,
): {
  name: string;
  said: string;
  top: Taken["top"];
}[] {
  const { currency } = found;
  const all = possible(namedArrangements(found, words));
  return all.map(({ name, planned }) => {
    const { fabrics, cost, nesting, top } = planned;
    const differ = fabrics.flatMap((one, i) =>
      isAlike(i, all, (one) => bought(one, words)) ? [] : [`${one.fabric} ${bought(one, words)}`],
    );
    const price = cost === null ? [] : [money(cost, currency, words)];
    const buys = differ.length === 0 ? price : [...price, ...differ];
    return { name, said: [...buys, words.arrange.nestShort(nest(nesting, words))].join(" · "), top };
  });
}
