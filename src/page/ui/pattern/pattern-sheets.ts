/** A book with the photos of its fabrics in it; its policy lets them be shown. */
export const withTiles = (html: string, tiles: string): string =>
  html.replace("style-src", "img-src data:; style-src").replace("</body>", () => `${tiles}</body>`);

export type Paper = "a4" | "letter";

/** Points of paper across, and of what is printed on it. */
const PAPER = { a4: 595.28, letter: 612 } as const;
/** Narrower than this, pages could not be read: there it is laid out for the screen. */
const PAGES_FROM = 700;

const pageRule = (paper: Paper): string => `@page { size: ${paper === "a4" ? "A4" : "letter"} portrait; }`;

/** A paper as it is saved: it prints on what was chosen, whatever the printer is set to. */
export const savedFor = (html: string, paper: Paper): string =>
  html.replace("</head>", () => `<style>${pageRule(paper)}</style></head>`);

/**
 * The book for paper of one size: the printer is told, where it would take what it is set to. Where there is room it is
 * seen as it prints, page under page, since breaks stand only where the pages were worked out to end.
 */
export function onPaper(html: string, paper: Paper, room: number): string {
  const across = PAPER[paper];
  const zoom = Math.min(1, room / (across * (96 / 72)));
  const sheets =
    room < PAGES_FROM
      ? ""
      : `@media screen {
  html { zoom: ${zoom.toFixed(3)}; background: #8b958f; }
  body { background: #fff !important; color: #1d2733; width: ${across}pt; margin: 0 auto !important; padding: 30pt 0; min-height: 0; }
  section.fresh, .part-of.fresh { position: relative; padding-top: 72pt !important; }
  section.fresh::before, .part-of.fresh::before { content: ""; position: absolute; left: -200pt; right: -200pt; height: 18pt; margin-top: -42pt; background: #8b958f; }
}`;
  const rule = `<style>${pageRule(paper)} ${sheets}</style>`;
  // Paper is white in the dark too.
  const seen =
    sheets === ""
      ? html
      : html
          .replaceAll("@media print {", "@media print, screen {")
          .replaceAll("(prefers-color-scheme: dark)", "(max-width: 0)");
  return seen.replace("</head>", () => `${rule}</head>`);
}
