import { fitText } from "../../draw/scene/text-fit.ts";

/** HTML that is safe to put on a page: made by `element` or `trusted` only. */
export interface Markup {
  readonly html: string;
}

export type Child = Markup | string | null | readonly Child[];
export type Attributes = Readonly<Record<string, string | number | boolean | null>>;

const VOID_ELEMENTS: ReadonlySet<string> = new Set(["input", "col", "meta", "br"]);
const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text as it may stand in an element or between quotes. */
function escapeHtml(text: string): string {
  return fitText(text).replace(/[&<>"']/g, (character) => ENTITIES[character] ?? "");
}

/** Text as it may stand between the quotes of a CSS string inside a style element. */
export function escapeCss(text: string): string {
  const plain = /[\p{L}\p{N} .,;:()+-]/u;
  return Array.from(fitText(text), (character) =>
    plain.test(character) ? character : `\\${(character.codePointAt(0) ?? 32).toString(16)} `,
  ).join("");
}

function childHtml(child: Child): string {
  if (child === null) return "";
  if (typeof child === "string") return escapeHtml(child);
  return "html" in child ? child.html : child.map(childHtml).join("");
}

/** Markup of our own making: drawings, the style and the script. Never give it text from a file. */
export function trusted(html: string): Markup {
  return { html };
}

/** One element. An attribute that is `true` stands bare; one that is `false` or null is left out. */
export function element(tag: string, attributes: Attributes, ...children: Child[]): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== null && value !== false)
    .map(([name, value]) => (value === true ? ` ${name}` : ` ${name}="${escapeHtml(String(value))}"`))
    .join("");
  if (VOID_ELEMENTS.has(tag)) return { html: `<${tag}${written}>` };
  return { html: `<${tag}${written}>${childHtml(children)}</${tag}>` };
}
