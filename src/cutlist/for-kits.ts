import type { CutList, CutPiece } from "./types.ts";

/**
 * The cut list of so many kits cut together. Strips that are joined end to end stay whole strips of one kit, so
 * that a narrower bolt is not tried for them.
 */
export function forKits(cutList: CutList, kits: number): CutList {
  if (kits === 1) return cutList;
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
