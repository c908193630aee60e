import { getDocumentProxy } from "unpdf";

/** A part of the reading order of a PDF, as PDF.js (in the package unpdf) reads it: nothing of ours is in it. */
export interface Tagged {
  role: string;
  alt: string;
  /** What it says itself; `parts` say the rest. */
  text: string;
  parts: Tagged[];
}

export interface ReadPdf {
  language: string;
  marked: boolean;
  bookmarks: { title: string; page: number }[];
  pages: {
    tagged: Tagged[];
    /** What is written outside every mark, which a reader would not know what to do with. */
    stray: string[];
    /** Lines as they stand: what they say, their left end and the height of their letters in points. */
    texts: { said: string; x: number; y: number; size: number }[];
  }[];
}

interface Node {
  role?: string;
  alt?: string;
  type?: string;
  id?: string;
  children?: Node[];
}

/** Language, bookmarks and the reading order of a PDF. */
export async function readPdf(file: Uint8Array): Promise<ReadPdf> {
  const document = await getDocumentProxy(new Uint8Array(file));
  const { info } = (await document.getMetadata()) as { info: { Language?: string } };
  const marks = (await document.getMarkInfo()) as { Marked?: boolean } | null;
  const outline = (await document.getOutline()) ?? [];
  const bookmarks = await Promise.all(
    outline.map(async ({ title, dest }) => {
      const [place] = (Array.isArray(dest) ? dest : []) as [Parameters<typeof document.getPageIndex>[0]];
      return { title, page: (await document.getPageIndex(place)) + 1 };
    }),
  );
  const pages: ReadPdf["pages"] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const said = new Map<string, string>();
    const stray: string[] = [];
    const texts: ReadPdf["pages"][number]["texts"] = [];
    const open: string[] = [];
    for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
      if ("type" in item) {
        if (item.type === "endMarkedContent") open.pop();
        else open.push(item.id ?? "");
        continue;
      }
      if (item.str.trim() === "") continue;
      const [a, b, , , x, y] = item.transform as number[] as [number, number, number, number, number, number];
      texts.push({
        said: item.str,
        x,
        y,
        size: Math.hypot(item.transform[2], item.transform[3]) || Math.hypot(a, b),
      });
      const mark = open.at(-1);
      if (mark === undefined) stray.push(item.str);
      else said.set(mark, `${said.get(mark) ?? ""}${said.has(mark) ? " " : ""}${item.str}`);
    }
    const read = ({ role = "", alt = "", children = [] }: Node): Tagged => ({
      role,
      alt,
      text: children
        .flatMap(({ type, id }) => (type === "content" ? [said.get(id ?? "") ?? ""] : []))
        .join(" "),
      parts: children.filter(({ type }) => type === undefined).map(read),
    });
    const tree = (await page.getStructTree()) as Node | null;
    pages.push({ tagged: tree === null ? [] : read(tree).parts, stray, texts });
  }
  return { language: info.Language ?? "", marked: marks?.Marked === true, bookmarks, pages };
}

/** Every part in reading order, those inside it after it. */
export function inOrder(parts: readonly Tagged[]): Tagged[] {
  return parts.flatMap((part) => [part, ...inOrder(part.parts)]);
}
