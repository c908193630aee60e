import axe from "axe-core";
import { JSDOM } from "jsdom";
import { expect, test } from "vitest";
import { bookPage } from "../../../src/print/index.ts";
import { english } from "../../../src/words/index.ts";
import { LEFT_OUT } from "../../support/sweep.ts";
import { listPlan } from "./book-plans.ts";

/** Rules of WCAG 2.2, levels A and AA, and good practice, by axe-core; colours are measured elsewhere,
 * and a quilt's book with them where there is a browser. */
test.skipIf(LEFT_OUT)("the book has no serious fault for people who hear it or use keys", async () => {
  const { window } = new JSDOM(bookPage(await listPlan(), english), {
    runScripts: "outside-only",
    pretendToBeVisual: true,
  });
  // What is inside a drawing is one picture to a reader; its title and description stay.
  for (const part of window.document.querySelectorAll("svg > :not(title, desc), style")) part.remove();
  window.eval(axe.source);
  const inside = (window as unknown as { axe: typeof axe }).axe;
  const { violations } = await inside.run(window.document as unknown as Document, {
    rules: { "color-contrast": { enabled: false } },
  });
  const told = violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
  expect(told).toEqual([]);
  window.close();
});
