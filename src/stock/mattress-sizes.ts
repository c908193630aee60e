import { CENTIMETRE, INCH } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";

/** Where a mattress of that name is sold. Names differ: a double is a full in the United States. */
type MattressRegion = "US" | "UK" | "EU";

/** A standard mattress: its width, and its length from head to foot. */
export interface MattressSize {
  name: string;
  region: MattressRegion;
  across: Ticks;
  along: Ticks;
  alsoCalled: readonly string[];
}

const inches = (name: string, across: number, along: number, ...alsoCalled: string[]): MattressSize => ({
  name,
  region: "US",
  across: across * INCH,
  along: along * INCH,
  alsoCalled,
});

const centimetres = (region: "UK" | "EU", name: string, across: number, along: number): MattressSize => ({
  name,
  region,
  across: across * CENTIMETRE,
  along: along * CENTIMETRE,
  alsoCalled: [],
});

/**
 * Standard sizes. US: Quick Reference Chart for Standard Mattress Sizes, The Spruce Crafts (sources differ by up to
 * 3 in for king, and by 1 in for the length of twin and full). UK and EU: Bed sizes, gnomon.org.uk. There is no
 * standard depth: the drop is for the maker to measure.
 */
export const MATTRESS_SIZES: readonly MattressSize[] = [
  inches("crib", 28, 52, "cot"),
  inches("twin", 39, 75, "single"),
  inches("twin long", 39, 80, "twin xl", "twin extra long", "long twin"),
  inches("full", 54, 75, "double"),
  inches("queen", 60, 80),
  inches("king", 76, 80),
  inches("california king", 72, 84, "cal king"),
  centimetres("UK", "small single", 75, 190),
  centimetres("UK", "single", 90, 190),
  centimetres("UK", "small double", 120, 190),
  centimetres("UK", "double", 135, 190),
  centimetres("UK", "king", 150, 200),
  centimetres("UK", "super king", 180, 200),
  ...[80, 90, 100, 140, 160, 180].map((width) => centimetres("EU", `${width}`, width, 200)),
];

/**
 * What a quilt hangs down where the maker does not say, at both sides and the foot: 13 in (Common Quilt and Batting
 * Sizes, Honey Be Good, 2012: mattress width + 26 in, length + 13 in), or the same in round centimetres.
 */
export const USUAL_DROP = { imperial: 13 * INCH, metric: 33 * CENTIMETRE } as const;

function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ")
    .trim();
}

const REGIONS: Readonly<Record<string, MattressRegion>> = {
  us: "US",
  american: "US",
  uk: "UK",
  british: "UK",
  eu: "EU",
  european: "EU",
};

/** How a size is called when its region must be told too. */
export function mattressName({ name, region }: MattressSize): string {
  return `${region} ${name}`;
}

/**
 * The mattress of that name: `queen`, `uk king`, `european 140`. Without a region the names of the maker's own
 * measure come first, US for inches and UK for centimetres. Null when there is none.
 */
export function mattressSize(typed: string, family: "imperial" | "metric"): MattressSize | null {
  const [first = "", ...rest] = plain(typed)
    .replaceAll(/\b(bed|mattress)\b/g, " ")
    .trim()
    .split(/\s+/);
  const region = REGIONS[first] ?? null;
  const name = (region === null ? [first, ...rest] : rest).join(" ");
  const order: readonly MattressRegion[] =
    region !== null ? [region] : family === "imperial" ? ["US", "UK"] : ["UK", "US"];
  for (const each of order) {
    const found = MATTRESS_SIZES.find(
      (size) => size.region === each && [size.name, ...size.alsoCalled].includes(name),
    );
    if (found !== undefined) return found;
  }
  return null;
}
