import { _collections } from "svgo";

const SVG = "http://www.w3.org/2000/svg";

/**
 * Elements, their attributes and what may stand in them: the tables of the package svgo, made from the element index
 * of W3C, Scalable Vector Graphics (SVG) 1.1 (Second Edition), 2011.
 */
const { elems, elemsGroups, attrsGroups } = _collections;

/**
 * What SVG 1.1 has no attributes for: a drawing's part in the page for people who hear it. W3C, SVG 2 (Candidate
 * Recommendation), 2018, section 5.13: `role` and `aria-*` on every element (WAI-ARIA 1.2, W3C, 2023).
 */
const ARIA: ReadonlySet<string> = new Set(["role", "aria-labelledby", "aria-hidden"]);

/** Attributes that must be there: #REQUIRED in the document type definition of SVG 1.1, appendix A. */
const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  rect: ["width", "height"],
  circle: ["r"],
  ellipse: ["rx", "ry"],
  path: ["d"],
  polygon: ["points"],
  polyline: ["points"],
};

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?`;
/** Grammars of values: SVG 1.1, sections 4.2 (numbers, lengths), 7.6 (transforms), 8.3.9 (path data), 11.2 (paint). */
const LENGTH = new RegExp(`^${NUMBER}(?:em|ex|px|in|cm|mm|pt|pc|%)?$`);
const TRANSFORM = new RegExp(
  String.raw`^(?:(?:matrix|translate|scale|rotate|skewX|skewY)\s*\(\s*${NUMBER}(?:[\s,]+${NUMBER})*\s*\)\s*)+$`,
);
const PATH = /^\s*[Mm][\s\d.,eE+\-MmZzLlHhVvCcSsQqTtAa]*$/;
const PAINT = /^(?:none|currentColor|#[0-9a-f]{3}|#[0-9a-f]{6}|url\(#[^)\s]+\))$/i;
const LENGTHS: ReadonlySet<string> = new Set(
  "x y x1 y1 x2 y2 cx cy r rx ry width height font-size stroke-width".split(" "),
);

function valueFault(name: string, value: string): boolean {
  if (LENGTHS.has(name)) return !LENGTH.test(value);
  if (name === "transform" || name === "patternTransform") return !TRANSFORM.test(value);
  if (name === "d") return !PATH.test(value);
  if (name === "fill" || name === "stroke") return !PAINT.test(value);
  if (name === "id") return !/^[\p{L}_][\p{L}\p{N}_.-]*$/u.test(value);
  return false;
}

function mayHold(parent: string, child: string): boolean {
  const { content, contentGroups } = elems[parent] ?? {};
  const groups = [...(contentGroups ?? [])].flatMap((group) => [
    ...(elemsGroups[group as keyof typeof elemsGroups] ?? []),
  ]);
  return content?.has(child) === true || groups.includes(child);
}

function mayHave(element: string, attribute: string): boolean {
  const { attrs, attrsGroups: own } = elems[element] ?? {};
  if (attrs?.has(attribute) === true || ARIA.has(attribute)) return true;
  return [...(own ?? [])].some((group) => attrsGroups[group as keyof typeof attrsGroups]?.has(attribute));
}

/** What of a document is not SVG 1.1, the attributes for those who hear it apart. */
export function invalidIn(document: Document): string[] {
  const faults = new Set<string>();
  for (const element of document.querySelectorAll("*")) {
    const name = element.localName;
    if (element.namespaceURI !== SVG || elems[name] === undefined)
      faults.add(`<${name}> is no element of SVG`);
    const parent = element.parentElement;
    if (parent !== null && !mayHold(parent.localName, name))
      faults.add(`<${name}> inside <${parent.localName}>`);
    for (const { name: attribute, value } of element.attributes) {
      if (attribute === "xmlns") continue;
      if (!mayHave(name, attribute)) faults.add(`${attribute} on <${name}>`);
      else if (valueFault(attribute, value)) faults.add(`${attribute}="${value.slice(0, 60)}" on <${name}>`);
    }
    for (const needed of REQUIRED[name] ?? []) {
      if (!element.hasAttribute(needed)) faults.add(`<${name}> without ${needed}`);
    }
  }
  return [...faults];
}
