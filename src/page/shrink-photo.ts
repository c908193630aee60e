import { type Photo, type Photos, WHOLE } from "./photos.ts";

/** Longest side of a picture that is kept, in pixels: a repeat of a foot has its threads still. */
const LONGEST = 900;
const QUALITY = 0.82;
/** Fewer pixels each way show no print. */
const COARSE = 300;
const FEWEST = 8;
/** A file beyond this is no picture that a browser could open. */
const MOST_BYTES = 80_000_000;

/** Why a file is not taken for a picture of fabric. */
type Refused = "drawing" | "heic" | "large" | "none" | "tiny";

/** A picture made small, with the colour it has all in all and how large it came; or why it is none. */
export type Shrunk = { photo: Photo; colour: string; from: number; coarse: boolean } | { refused: Refused };

const latin = (bytes: Uint8Array): string => String.fromCharCode(...bytes);

/** What its first letters say it is, whatever its name says. */
async function kindOf(file: Blob): Promise<Refused | ""> {
  const head = new Uint8Array(await file.slice(0, 512).arrayBuffer());
  const text = latin(head);
  // ISO/IEC 14496-12: a file of boxes names its kind behind `ftyp`; HEIF (ISO/IEC 23008-12) has these.
  if (/^[\s\S]{4}ftyp(?:hei[cxms]|hev[cx]|mif1|msf1)/.test(text)) return "heic";
  if (/^(?:\xef\xbb\xbf)?\s*<(?:\?xml|!doctype|!--|svg)/i.test(text)) return "drawing";
  return "";
}

async function loaded(file: Blob): Promise<HTMLImageElement | null> {
  const address = URL.createObjectURL(file);
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
    return image;
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The mean of all its points, as the file writes colours. */
function meanOf(data: Uint8ClampedArray): string {
  const sum = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4) for (let c = 0; c < 3; c++) sum[c]! += data[i + c]!;
  const count = data.length / 4;
  return `#${sum
    .map((all) =>
      Math.round(all / count)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
}

/**
 * A file as a picture of fabric, small enough to be kept. It is decoded by the browser and drawn anew, so that nothing
 * else that stands in the file is kept.
 * @param across millimetres of cloth its width is taken to show until the maker says
 */
export async function shrunkPhoto(file: Blob, across: number): Promise<Shrunk> {
  if (file.size > MOST_BYTES) return { refused: "large" };
  const kind = await kindOf(file);
  if (kind !== "") return { refused: kind };
  const image = await loaded(file);
  if (image === null) return { refused: "none" };
  const [w, h] = [image.naturalWidth, image.naturalHeight];
  if (Math.min(w, h) < FEWEST) return { refused: "tiny" };
  const scale = Math.min(1, LONGEST / Math.max(w, h));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(FEWEST, Math.round(w * scale));
  canvas.height = Math.max(FEWEST, Math.round(h * scale));
  const context = canvas.getContext("2d");
  if (context === null) return { refused: "none" };
  // What is clear in a picture is the table under it.
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = "high";
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  const colour = meanOf(context.getImageData(0, 0, canvas.width, canvas.height).data);
  const picture = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  if (picture === null) return { refused: "none" };
  const size = { wide: canvas.width, high: canvas.height };
  return {
    photo: { picture, ...size, across, told: false, turn: 0, up: 0, box: WHOLE },
    colour,
    from: file.size,
    coarse: Math.max(w, h) < COARSE,
  };
}

/** Longest sides and qualities tried, where pictures have to travel in one file. */
const SMALLER = [
  [720, 0.78],
  [560, 0.72],
  [420, 0.68],
  [320, 0.6],
  [240, 0.5],
  [160, 0.4],
] as const;

/** A picture drawn anew, smaller; as it is where no browser can. */
async function smaller(photo: Photo, longest: number, quality: number): Promise<Photo> {
  const image = await loaded(photo.picture);
  if (image === null) return photo;
  const scale = Math.min(1, longest / Math.max(image.naturalWidth, image.naturalHeight));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const picture = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
  return picture === null || picture.size >= photo.picture.size ? photo : { ...photo, picture };
}

/** Pictures made so small that written as letters they take no more than `most` of them, or as small as shows a print. */
export async function fittingPhotos(photos: Photos, most: number): Promise<Photos> {
  const lettersOf = (all: Photos): number =>
    Object.values(all).reduce((sum, { picture }) => sum + (picture.size * 4) / 3 + 200, 0);
  let now = photos;
  for (const [longest, quality] of SMALLER) {
    if (lettersOf(now) <= most) break;
    const made = Object.entries(photos).map(
      async ([key, photo]) => [key, await smaller(photo, longest, quality)] as const,
    );
    now = Object.fromEntries(await Promise.all(made));
  }
  return now;
}
