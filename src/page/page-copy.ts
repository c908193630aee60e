import type { WrittenPhoto } from "./photos.ts";

/** A quilt inside the page, as the page finds it when it is opened. */
export interface Given {
  text: string;
  /** What was said of the work on it; absent where nothing was. */
  work?: string;
  /** The page is a copy for a class: the quilt is to be cut and sewn, and not to be changed. */
  class?: true;
  /** Pictures of its fabrics, by name; absent where there are none. */
  photos?: Record<string, WrittenPhoto>;
}

/** No letter of it can end the element that holds it. */
const asData = (given: Given): string => JSON.stringify(given).replaceAll("<", "\\u003c");

/**
 * This very page as one file with a quilt in it, program, solver and all: what was drawn since it was opened is left out.
 * @param page the document as it stands
 */
export function pageWith(page: Document, given: Given): string {
  const root = page.documentElement.cloneNode(true) as HTMLElement;
  root.querySelector("#page")?.replaceChildren();
  root.querySelector("#spoken")?.remove();
  for (const started of root.querySelectorAll("script[src]")) started.remove();
  // Editors put their styles into the head when they are first opened.
  for (const style of [...root.querySelectorAll("style")].slice(1)) style.remove();
  const held = root.querySelector("#quilt");
  if (held !== null) held.textContent = asData(given);
  return `<!doctype html>\n${root.outerHTML}\n`;
}

/** The quilt that this page was handed out with; null for a page without one. */
export function givenIn(page: Document): Given | null {
  return JSON.parse(page.getElementById("quilt")?.textContent ?? "null") as Given | null;
}
