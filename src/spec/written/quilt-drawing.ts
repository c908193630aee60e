import { drawingUnreadable, turnNotQuarter } from "../../diagnostics/quilts/quilt-file.ts";
import type { Diagnostic, Place } from "../../diagnostics/types.ts";
import type { DrawnCell, DrawnRow, QuarterTurn } from "../quilt-types.ts";
import { QUARTER_TURNS } from "../quilt-types.ts";
import { type Path, pathText, type SourceDocument } from "../read/document.ts";

/** Marks of a turn after a code: where the unit's top points. */
const TURN_MARKS: Readonly<Record<string, QuarterTurn>> = {
  "^": 0,
  "↑": 0,
  ">": 90,
  "→": 90,
  v: 180,
  "↓": 180,
  "<": 270,
  "←": 270,
};

const MOST_REPEATS = 500;

type ReadCell =
  | { ok: true; cells: DrawnCell[] }
  | { ok: false; build: (where: { path: string; at: Place | null }) => Diagnostic };

/** A code with a mark after it: `g>`. A code that is explained as it stands is taken as it stands. */
function splitTurn(word: string, known: ReadonlySet<string>): { code: string; turn: QuarterTurn | string } {
  if (known.has(word) || word.length < 2) return { code: word, turn: 0 };
  const degrees = /^(.+?):(-?[\d.]+)$/.exec(word);
  if (degrees?.[1] !== undefined) {
    const turn = Number(degrees[2]);
    const quarters = QUARTER_TURNS.find((each) => each === ((turn % 360) + 360) % 360);
    return { code: degrees[1], turn: quarters ?? degrees[2] ?? "" };
  }
  const last = word.at(-1) ?? "";
  const turn = TURN_MARKS[last];
  // `v` is a letter too: it marks a turn only when what stands before it is a code.
  const code = word.slice(0, -1);
  if (turn === undefined || (last === "v" && !known.has(code))) return { code: word, turn: 0 };
  return { code, turn };
}

function readCell(word: string, known: ReadonlySet<string>): ReadCell {
  const repeated = /^(.+)\*(\d{1,4})$/.exec(word);
  const count = repeated === null ? 1 : Number(repeated[2]);
  if (count < 1 || count > MOST_REPEATS) {
    return {
      ok: false,
      build: (where) => drawingUnreadable(where, word, { is: "repeats", count, most: MOST_REPEATS }),
    };
  }
  const [marked = "", colourway = "", more] = (repeated?.[1] ?? word).split("/");
  if (more !== undefined || marked === "") {
    return { ok: false, build: (where) => drawingUnreadable(where, word, { is: "colourway" }) };
  }
  const { code, turn } = splitTurn(marked, known);
  if (typeof turn === "string") return { ok: false, build: (where) => turnNotQuarter(where, turn) };
  return { ok: true, cells: Array.from({ length: count }, () => ({ code, turn, colourway })) };
}

/** Lines of a drawing with their places: from a list, or from one text of several lines. */
function linesOf(
  written: unknown,
  path: Path,
  document: SourceDocument,
): { line: string; path: string; at: Place }[] {
  if (Array.isArray(written)) {
    return written.map((line, i) => ({
      line: String(line),
      path: pathText([...path, i]),
      at: document.valueAt([...path, i]),
    }));
  }
  const start = document.valueAt(path);
  const lines = String(written).split(/\r?\n/);
  // A text block begins on the line after its `|`; a text on one line where it stands.
  const offset = lines.length > 1 ? 1 : 0;
  return lines
    .map((line, i) => ({
      line,
      path: pathText(path),
      at: offset === 0 ? start : { ...start, line: start.line + i + 1, column: 1 },
    }))
    .filter(({ line }) => line.trim() !== "");
}

/**
 * Reads a text drawing: a line for each row, cells apart by spaces.
 * @param known codes that are explained in the file, so that `v` can be told from a turn
 */
export function readDrawing(
  written: unknown,
  path: Path,
  known: ReadonlySet<string>,
  document: SourceDocument,
  diagnostics: Diagnostic[],
): DrawnRow[] {
  return linesOf(written, path, document).map(({ line, ...where }): DrawnRow => {
    const cells: DrawnCell[] = [];
    for (const word of line.trim().split(/\s+/)) {
      const read = readCell(word, known);
      if (read.ok) cells.push(...read.cells);
      else diagnostics.push(read.build(where));
    }
    return { cells, ...where };
  });
}
