import { del, get, set } from "idb-keyval";

/** Degrees clockwise. */
export type Quarter = 0 | 90 | 180 | 270;

/** A part of a picture: every figure a share of its width or height, 0 to 1. */
export interface Box {
  x: number;
  y: number;
  wide: number;
  high: number;
}

/** A picture of a fabric, made small, and how it is to be seen. It is never changed: every change is another. */
export interface Photo {
  picture: Blob;
  /** Pixels of the picture as it was taken. */
  wide: number;
  high: number;
  /** Millimetres of cloth that its width shows, as it was taken; `told` once the maker has said so. */
  across: number;
  told: boolean;
  /** Turned so far that the selvage stands upright. */
  turn: Quarter;
  /** Where its print's up points in the picture so turned. */
  up: Quarter;
  /** What is laid side by side, of the picture so turned. */
  box: Box;
}

/** Pictures of a quilt's fabrics, by the fabric's name as names are compared. */
export type Photos = Readonly<Record<string, Photo>>;
export const NO_PHOTOS: Photos = {};

export const WHOLE: Box = { x: 0, y: 0, wide: 1, high: 1 };

/** Least part of a picture that is laid side by side. */
export const LEAST_BOX = 0.02;

/** Millimetres of cloth that a picture shows as it lies turned. */
export function shownBy({ across, wide, high, turn }: Photo): { across: number; down: number } {
  const down = (across * high) / wide;
  return turn % 180 === 0 ? { across, down } : { across: down, down: across };
}

/** Millimetres of cloth inside its box. */
export function inBox(photo: Photo): { across: number; down: number } {
  const { across, down } = shownBy(photo);
  return { across: across * photo.box.wide, down: down * photo.box.high };
}

/** The same with so many millimetres shown across as it lies. */
export function shownAs(photo: Photo, across: number): Photo {
  const { wide, high, turn } = photo;
  return { ...photo, told: true, across: turn % 180 === 0 ? across : (across * wide) / high };
}

/** A quarter more, clockwise; what is in its box stays in it. */
export function turnedOn(photo: Photo): Photo {
  const { x, y, wide, high } = photo.box;
  return {
    ...photo,
    turn: ((photo.turn + 90) % 360) as Quarter,
    up: ((photo.up + 90) % 360) as Quarter,
    box: { x: 1 - y - high, y: x, wide: high, high: wide },
  };
}

/** A box held inside the picture, its corners in any order. */
export function boxOf(x1: number, y1: number, x2: number, y2: number): Box {
  const within = (at: number): number => Math.min(1, Math.max(0, at));
  const [left, right] = [within(Math.min(x1, x2)), within(Math.max(x1, x2))];
  const [top, low] = [within(Math.min(y1, y2)), within(Math.max(y1, y2))];
  const wide = Math.max(LEAST_BOX, right - left);
  const high = Math.max(LEAST_BOX, low - top);
  return { x: Math.min(left, 1 - wide), y: Math.min(top, 1 - high), wide, high };
}

const keyOf = (draft: string): string => `photos ${draft}`;

/** Pictures kept with a quilt; none where the browser keeps nothing for a page. */
export async function photosOf(draft: string): Promise<Photos> {
  try {
    return (await get<Photos>(keyOf(draft))) ?? NO_PHOTOS;
  } catch {
    return NO_PHOTOS;
  }
}

/** Keeps them at once; `failed` where there is no room for them. */
export function keepPhotos(draft: string, photos: Photos, failed: () => void): void {
  if (draft !== "") set(keyOf(draft), photos).catch(failed);
}

/** Takes them away with their quilt. */
export async function dropPhotos(draft: string): Promise<void> {
  await del(keyOf(draft)).catch(() => {});
}

/** A picture as letters, for a page that is handed on as one file. */
export type WrittenPhoto = Omit<Photo, "picture"> & { picture: string };

async function asLetters(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let letters = "";
  for (let i = 0; i < bytes.length; i += 0x8000)
    letters += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(letters);
}

/** Pictures of the fabrics named, as letters. */
export async function writtenPhotos(
  photos: Photos,
  keys: readonly string[],
): Promise<Record<string, WrittenPhoto>> {
  const own = Object.entries(photos).filter(([key]) => keys.includes(key));
  return Object.fromEntries(
    await Promise.all(
      own.map(async ([key, photo]) => [key, { ...photo, picture: await asLetters(photo.picture) }]),
    ),
  );
}

/** The same read back. Whatever the letters are, they are a picture or nothing: they are only ever drawn. */
export function readPhotos(written: Readonly<Record<string, WrittenPhoto>>): Photos {
  return Object.fromEntries(
    Object.entries(written).map(([key, photo]) => {
      const bytes = Uint8Array.from(atob(photo.picture), (letter) => letter.charCodeAt(0));
      return [key, { ...photo, picture: new Blob([bytes], { type: "image/jpeg" }) }];
    }),
  );
}
