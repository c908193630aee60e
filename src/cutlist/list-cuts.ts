import { pieceJoined, pieceTooWide } from "../diagnostics/planning.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { formatLength, formatSize } from "../length/format.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { CutListSpec, FabricSpec, PieceSpec, Print } from "../spec/types.ts";
import { usableWidth } from "../stock/index.ts";
import { type Joining, joinFromStrips, needsJoin } from "./joins.ts";
import { type LettersOfFabric, letterPieces } from "./letters.ts";
import { mergePieces } from "./merge.ts";
import { shapePiece } from "./nested-cut.ts";
import type { CutList, CutPiece } from "./types.ts";

/**
 * Lists what is to be cut from each fabric of a plain cut list: equal sizes gathered, full-width pieces
 * given their width, pieces that are too long joined from strips where the maker allows it, lettered
 * largest first. Every piece that fits in no way is reported; one such piece leaves no value.
 * @param known letters that bags have already, by fabric
 */
export function listCuts(
  spec: CutListSpec,
  known: ReadonlyMap<string, LettersOfFabric> | null = null,
): Outcome<CutList[]> {
  const diagnostics: Diagnostic[] = [];
  let lettered = 0;
  const value = spec.fabrics.map((fabric, index): CutList => {
    const pieces = letterPieces(
      listFabric(fabric, index, spec, diagnostics),
      lettered,
      known?.get(fabric.name) ?? null,
    );
    lettered += pieces.length;
    return { fabric, pieces };
  });
  const failed = diagnostics.some((diagnostic) => diagnostic.severity === "error");
  return { value: failed ? null : value, diagnostics };
}

function listFabric(
  fabric: FabricSpec,
  index: number,
  joining: Joining,
  diagnostics: Diagnostic[],
): CutPiece[] {
  const { ruler } = joining;
  const usable = usableWidth(fabric);
  const pieces = fabric.pieces.map((written, i) => {
    const piece = asCutPiece(written, usable, fabric.print, ruler);
    const where = {
      piece:
        written.label === ""
          ? { for: "number" as const, number: i + 1 }
          : { for: "label" as const, label: written.label },
      ruler,
      fabric: fabric.name,
      path: `fabrics[${index}].pieces[${i}]`,
      at: written.at,
    };
    if (piece.cut === "strips" && needsJoin(piece, usable)) {
      const joined = joinFromStrips(piece, usable, joining);
      if (joined !== null) {
        diagnostics.push(pieceJoined(where, joined.joined!.lengths));
        return joined;
      }
    }
    const over = tooWideBy(piece, usable);
    // A piece that may be cut either way and joined is settled by the plan, which knows what each costs.
    const mayJoin =
      piece.cut === "either" && needsJoin(piece, usable) && joinFromStrips(piece, usable, joining) !== null;
    if (over > 0 && !mayJoin) {
      diagnostics.push(
        pieceTooWide(where, {
          size: formatSize(piece.across, piece.along, ruler),
          usable: formatLength(usable, ruler),
          over: formatLength(over, ruler),
          turnHelps: !piece.turnable && !piece.fullWidth && piece.along <= usable,
          // A free piece would lie lengthwise already; a fixed one must be let turn before it can.
          lengthwiseHelps: false,
        }),
      );
    }
    return piece;
  });
  return mergePieces(pieces, fabric.print);
}

/** How far the piece sticks out of the usable width in the turn that suits it best; 0 when it fits. */
function tooWideBy(piece: CutPiece, usable: Ticks): Ticks {
  // A shape lies one way in its strip, whichever way the strip runs.
  const [lie] = piece.nest?.across ?? [];
  const least = lie?.first ?? (piece.turnable ? Math.min(piece.across, piece.along) : piece.across);
  return Math.max(0, least - usable);
}

function asCutPiece(written: PieceSpec, usable: Ticks, print: Print, ruler: Ruler): CutPiece {
  let { across, along } = written;
  let turnable = written.turn === "free" && across !== along;
  if (written.fullWidth) {
    across = usable;
    turnable = false;
  } else if (turnable && written.cut === "lengthwise") {
    // "Along the selvage" settles the turn of a free piece: its long side lies along the bolt.
    [across, along] = [Math.min(across, along), Math.max(across, along)];
    turnable = false;
  }
  const shaped = written.shape === undefined ? null : shapePiece(written.shape, written, print, ruler);
  if (shaped !== null) ({ across, along, turnable } = shaped);
  return {
    letter: "",
    label: written.label,
    across,
    along,
    fullWidth: written.fullWidth,
    count: written.count,
    turnable,
    cut: written.cut,
    join: written.join,
    uses: [
      {
        purpose:
          written.label === "" ? { for: "size", across, along } : { for: "label", label: written.label },
        count: written.count,
      },
    ],
    subcut: "none",
    diagonal: "any",
    trimTo: null,
    roundedUp: false,
    notes: written.note === "" ? [] : [{ is: "own", text: written.note }],
    ...(shaped === null ? {} : { shape: shaped.shape!, nest: shaped.nest! }),
  };
}
