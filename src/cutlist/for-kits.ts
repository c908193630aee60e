import type { CutList, CutPiece } from "./types.ts";

/**
 * The cut list of so many kits cut together. Strips that are joined end to end stay whole strips of one kit, so
 * that a narrower bolt is not tried for them.
 * @param amongOthers kits of other sorts are cut with them: what is one kit's stays so where it is the only one
 */
export function forKits(cutList: CutList, kits: number, amongOthers = false): CutList {
  if (kits === 1 && !amongOthers) return cutList;
  const times = ({ joined, ...piece }: CutPiece): CutPiece => ({
    ...piece,
    ...(joined === undefined ? {} : { joined: { ...joined, perKit: true as const } }),
    count: piece.count * kits,
    uses: piece.uses.map((use) => ({ ...use, count: use.count * kits })),
    ...(piece.shape === undefined
      ? {}
      : {
          shape: {
            ...piece.shape,
            asDrawn: piece.shape.asDrawn * kits,
            reversed: piece.shape.reversed * kits,
          },
        }),
    ...(piece.rests === undefined
      ? {}
      : { rests: piece.rests.map((rest) => ({ ...rest, count: rest.count * kits })) }),
    ...(piece.corners === undefined ? {} : { corners: piece.corners * kits }),
    ...(piece.seams === undefined ? {} : { seams: piece.seams * kits }),
  });
  return { ...cutList, pieces: cutList.pieces.map(times) };
}
