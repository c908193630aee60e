import { startsRightToLeft } from "../svg/text-fit.ts";

/** One line of text in a drawing, in the drawing's own units; `y` is its baseline. */
export interface DrawnText {
  text: string;
  x: number;
  y: number;
  size: number;
  bold: boolean;
  anchor: "start" | "middle" | "end";
  upwards: boolean;
  colour: string;
  base: "ltr" | "rtl";
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function unescaped(text: string): string {
  return text
    .replace(/&#x([0-9a-f]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "");
}

const TEXT = /<text ([^>]*)>([^<]*)<\/text>\n?/g;

/**
 * The texts of a drawing of ours, and the drawing without them: the library that draws its shapes knows one font
 * and one direction. No text of ours lies inside a moved group.
 */
export function withoutTexts(svg: string): { shapes: string; texts: DrawnText[] } {
  const texts: DrawnText[] = [];
  const shapes = svg.replace(TEXT, (_, written: string, inner: string) => {
    const of = (name: string): string => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(written)?.[1] ?? "";
    const text = unescaped(inner);
    texts.push({
      text,
      x: Number(of("x")),
      y: Number(of("y")),
      size: Number(of("font-size")),
      bold: of("font-weight") === "bold",
      anchor: (of("text-anchor") || "start") as DrawnText["anchor"],
      upwards: of("transform") !== "",
      colour: of("fill"),
      base: startsRightToLeft(text) ? "rtl" : "ltr",
    });
    return "";
  });
  return { shapes, texts };
}
