import { readdir, readFile, stat } from "node:fs/promises";
import { homedir } from "node:os";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { fontUnreadable, lettersWithoutFont } from "../../diagnostics/pictures.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";

/** A font file and its bytes. */
interface FontFile {
  path: string;
  bytes: Uint8Array;
}

/** The fonts that come with the program. */
const OURS = {
  plain: "plain",
  plainBold: "plain-bold",
  title: "title",
} as const;

export interface Fonts {
  ours: Readonly<Record<keyof typeof OURS, FontFile>>;
  /** For letters that ours lack. */
  others: FontFile[];
  /** Letters that no font found can draw. */
  undrawn: string[];
  /** What to tell of them, and of fonts named that are none. */
  diagnostics: Diagnostic[];
}

/** Where ours lie: beside the bundle, or in the sources they are bundled from. */
async function ourPlace(): Promise<string> {
  const [bundled, sources] = ["./fonts", "../../draw/fonts"].map((folder) =>
    fileURLToPath(new URL(folder, import.meta.url)),
  ) as [string, string];
  return (await stat(bundled).catch(() => null))?.isDirectory() === true ? bundled : sources;
}

const KINDS: ReadonlySet<string> = new Set([".ttf", ".otf", ".ttc", ".otc"]);

/** Where the usual systems keep their fonts. */
function folders(): string[] {
  const home = homedir();
  return [
    join(home, ".fonts"),
    join(home, ".local/share/fonts"),
    join(home, "Library/Fonts"),
    join(home, "AppData/Local/Microsoft/Windows/Fonts"),
    "/usr/local/share/fonts",
    "/usr/share/fonts",
    "/Library/Fonts",
    "/System/Library/Fonts",
    "C:/Windows/Fonts",
  ];
}

/** Families with the letters of many scripts are looked into first. */
const WIDE = /cjk|noto ?sans|unicode|fallback|gothic|hiragino|pingfang|yahei|malgun|wqy|sans/i;
/** Slanted and light cuts are no first choice for a name. */
const ODD_CUT = /italic|oblique|light|thin|mono/i;
/** Fonts opened at most. */
const MOST_OPENED = 400;

async function fontsBelow(folder: string, deep = 0): Promise<string[]> {
  const inside = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const found = await Promise.all(
    inside.map((entry): Promise<string[]> | string[] => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return deep < 5 ? fontsBelow(path, deep + 1) : [];
      return KINDS.has(extname(entry.name).toLowerCase()) ? [path] : [];
    }),
  );
  return found.flat();
}

async function systemFonts(places: readonly string[]): Promise<string[]> {
  const found = (await Promise.all(places.map((place) => fontsBelow(place)))).flat();
  const rank = (path: string): number => (WIDE.test(path) ? 0 : 2) + (ODD_CUT.test(path) ? 1 : 0);
  return found.sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1)).slice(0, MOST_OPENED);
}

/** Every text in a value that holds one of `letters`. */
function textsWith(value: unknown, letters: ReadonlySet<string>): string[] {
  if (typeof value === "string")
    return Array.from(value).some((letter) => letters.has(letter)) ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap((inner) => textsWith(inner, letters));
}

/**
 * The fonts that draw every text of `value`: ours, and where they lack a letter those named by the maker, then those
 * of the system. Nothing is opened while ours do.
 * @param places folders with fonts; by default those of the usual systems.
 */
export async function fontsFor(
  value: unknown,
  named: readonly string[],
  places: readonly string[] = folders(),
): Promise<Fonts> {
  const { loadFonts } = await import("../../index.ts");
  const { coverageOf, lettersWithout } = await loadFonts();
  const place = await ourPlace();
  const ourFont = async (name: string): Promise<FontFile> => {
    const path = join(place, `${name}.ttf`);
    return { path, bytes: await readFile(path) };
  };
  const ours = Object.fromEntries(
    await Promise.all(Object.entries(OURS).map(async ([face, name]) => [face, await ourFont(name)])),
  ) as Fonts["ours"];
  const text = JSON.stringify(value);
  const first = coverageOf(ours.plain.bytes);
  let left = first === null ? [] : lettersWithout(text, [first]);
  const others: FontFile[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const path of named) {
    const bytes = await readFile(path).catch(() => null);
    const coverage = bytes === null ? null : coverageOf(bytes);
    if (bytes === null || coverage === null) {
      diagnostics.push(fontUnreadable(path, bytes !== null));
      continue;
    }
    others.push({ path, bytes });
    left = lettersWithout(left.join(""), [coverage]);
  }
  for (const path of left.length === 0 ? [] : await systemFonts(places)) {
    if ((await stat(path).catch(() => null)) === null) continue;
    const bytes = await readFile(path).catch(() => null);
    const coverage = bytes === null ? null : coverageOf(bytes);
    if (bytes === null || coverage === null) continue;
    const still = lettersWithout(left.join(""), [coverage]);
    if (still.length === left.length) continue;
    others.push({ path, bytes });
    left = still;
    if (left.length === 0) break;
  }
  if (left.length > 0) {
    const names = [...new Set(textsWith(value, new Set(left)))];
    diagnostics.push(lettersWithoutFont(names, left));
  }
  return { ours, others, undrawn: left, diagnostics };
}
