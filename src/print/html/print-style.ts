import { COLUMNS, GAP, LABELS, LEAF, spanWidth, TYPE, type Type } from "../paper/measure.ts";

const set = ({ size, line }: Type): string => `font-size: ${size}pt; line-height: ${line}pt;`;

/** Points of the line between two rows of a table. */
const RULE = 0.75;

/** Cards on the columns of a page; `of-4`: pictures on four of them, words on the rest. */
function columnRules(): string {
  return Array.from({ length: COLUMNS }, (_, i) => i + 1)
    .flatMap((span) => [
      `  .card.span-${span} { grid-column: span ${span}; }`,
      `  .card.of-${span} { grid-template-columns: ${spanWidth(span).toFixed(2)}pt minmax(0, 1fr); }`,
    ])
    .join("\n");
}

/**
 * How the web page prints: on the pages that were worked out, so sizes are those that were measured and breaks stand
 * only where `fresh` says so. Browsers shrink a whole print where anything is wider than the paper, and templates must
 * keep their size.
 */
export const PRINT_STYLE = `
@media print {
  :root { color-scheme: light; }
  html { ${set(TYPE.body)} scroll-padding: 0; }
  body { background: none; ${set(TYPE.body)} font-family: "Crossgrain Text", "DejaVu Sans Condensed", "Arial Narrow", Arial, Helvetica, "Liberation Sans", sans-serif; }
  .page { width: ${LEAF.width}pt; max-width: none; margin: 0 auto; padding: 0; overflow-x: clip; }
  nav, .bar, .skip, .progress { display: none; }
  section { background: none; border: 0; border-radius: 0; padding: 0; margin: ${GAP.section}pt 0 0; }
  section.fresh, .part-of.fresh { break-before: page; margin-top: 0; }
  h1, h2, h3, caption, .section-head { break-after: avoid; }
  .over { ${set(TYPE.small)} }
  h2 { ${set(TYPE.title)} padding: 0; margin: 0 0 ${(GAP.head - 1.1).toFixed(1)}pt; border-bottom: 1.1pt dashed var(--line); }
  h2 .swatch { width: 14pt; height: 14pt; margin-right: 8pt; vertical-align: -2pt; }
  h3 { ${set(TYPE.heading)} margin: 0 0 2pt; }
  .part-of { margin-top: ${GAP.block}pt; }
  .part-of.close { margin-top: ${GAP.closeBlock}pt; }
  section.close { margin-top: ${GAP.closeSection}pt; }
  .section-head + .part-of { margin-top: 0; }
  .lead { ${set(TYPE.lead)} max-width: none; }
  .quiet { ${set(TYPE.small)} max-width: none; margin: 0; }
  .plain-list, .plain-list li { max-width: none; }
  .plain-list { padding-left: 10pt; }
  .plain-list li { break-inside: avoid; padding-bottom: ${GAP.item}pt; }
  .plain-list li + li { margin-top: 0; }
  .plain-list.three { columns: 3; }
  .two { columns: 2; column-gap: ${GAP.column}pt; }

  .cover { display: flex; flex-direction: column; align-items: stretch; height: ${LEAF.height}pt; padding: 0; gap: 0; break-after: page; }
  html.bench .cover { break-after: auto; break-inside: avoid; }
  .cover .over { ${set(TYPE.body)} }
  .cover .facts { padding-bottom: 6pt; border-bottom: 1.1pt dashed var(--line); }
  .cover-line { ${set(TYPE.lead)} margin: 0; }
  .cover-picture { flex: 1 1 0; min-height: 0; margin: 10pt 0; }
  .cover-picture svg { height: 100%; max-height: none; width: 100%; }
  .cover-foot { ${set(TYPE.small)} }
  h1 { font-size: 32pt; line-height: 38pt; margin: 2pt 0 6pt; }
  h1.long { font-size: 15pt; line-height: 18pt; }
  .facts { grid-template-columns: repeat(4, 1fr); gap: 3pt ${GAP.column}pt; }
  .facts > div:last-child { grid-column: auto; }
  .facts dt { ${set(TYPE.small)} }

  .drawing { overflow: visible; break-inside: avoid; }
  .drawing svg { min-width: 0; max-width: 100%; height: auto; }
  .full-size { overflow: visible; border: 0; break-inside: avoid; }
  .of-full-size { break-before: page; margin: 0; }
  .of-beside { break-inside: avoid; }
  .beside { display: flex; gap: ${GAP.column}pt; align-items: flex-start; }
  .beside .drawing { flex: none; }
  .beside .work { flex: 1; min-width: 0; }

  .cards { grid-template-columns: repeat(${COLUMNS}, minmax(0, 1fr)); gap: ${GAP.card}pt; }
  .card { break-inside: avoid; }
  .card.low { align-self: end; }
${columnRules()}
  .card.aside { display: grid; gap: ${GAP.card}pt; }
  .card-pictures { gap: 3pt ${GAP.card}pt; }
  .card-pictures figure { flex: none; }
  .card-pictures svg { max-width: none; }
  .card-pictures figcaption { ${set(TYPE.small)} }
  .card-words { margin-top: 2pt; }
  .card.aside .card-words { margin-top: 0; }
  .card-words .inset { padding-left: 9pt; }

  th, td { padding: ${(GAP.row - RULE) / 2}pt ${GAP.cell}pt ${(GAP.row - RULE) / 2}pt 0; border-top-width: ${RULE}pt; }
  th .swatch, td .swatch { width: 9pt; height: 9pt; margin-right: 4pt; vertical-align: -1pt; }
  thead th, thead td { ${set(TYPE.small)} padding: 0 ${GAP.cell}pt 3pt 0; }
  caption { ${set(TYPE.heading)} padding: 0 0 3pt; }
  table.measured { table-layout: fixed; }
  th:last-child, td:last-child { padding-right: 0; }
  .note { ${set(TYPE.small)} }
  tr { break-inside: avoid; }
  .ticks { width: ${GAP.tick}pt; padding-right: 0; }
  .tick-cell { min-width: 0; min-height: 0; padding-top: 0; }
  .tick { width: 10pt; height: 10pt; border-width: 1.1pt; border-radius: 1.6pt; background: none; }
  .tick:checked::before { width: 2.4pt; height: 5pt; border-width: 0 1.1pt 1.1pt 0; }
  .tick:checked { background: none; border-color: var(--ink); }
  .tick:checked::before { border-color: var(--ink); }
  .step:has(> .tick:checked) .what { text-decoration: none; }
  .heading-tick { gap: 7pt; }
  .step { break-inside: avoid; gap: 7pt; padding: ${GAP.step - RULE}pt 0 ${GAP.step}pt; border-top-width: ${RULE}pt; }
  html.pattern .step { padding-left: ${GAP.tick}pt; }
  .step label, .step .label-like { min-height: 0; padding: 0; }
  .part { margin-top: 0; }
  .then { padding-left: 10pt; }
  .where, .warning { ${set(TYPE.small)} }
  .warning { background: none; margin: 0; padding: 0 0 0 6pt; border-left-width: 2pt; }

  .cautions { display: block; columns: 3; column-gap: ${GAP.column}pt; ${set(TYPE.small)} }
  .caution li { break-inside: avoid; }
  .caution { background: none; padding: 0; border: 0; }
  .caution h3 { ${set(TYPE.body)} margin: 0 0 1pt; break-after: avoid; }
  .caution ul { padding-left: 9pt; }
  .caution li + li { margin-top: 1.5pt; }

  .labels { grid-template-columns: repeat(${LABELS.columns}, 1fr); padding: 0; }
  .label { height: ${LABELS.height}pt; min-height: 0; margin: 0; padding: 4pt 6pt; gap: 6pt; break-inside: avoid; border-width: .8pt; ${set(TYPE.small)} }
  .label .letter { font-size: 19pt; min-width: 22pt; }
  .label .fabric { ${set(TYPE.small)} -webkit-line-clamp: 2; }
  .label .size, .label .amount { display: inline; }
  .label .use { font-size: 6.4pt; line-height: 7.8pt; -webkit-line-clamp: 2; }
  .label .use.more { display: none; }
  .terms { display: block; columns: 3; column-gap: ${GAP.column}pt; ${set(TYPE.small)} }
  .terms > div { break-inside: avoid; padding-bottom: 3pt; }
  .terms dt, .terms dd { display: inline; }
  thead { display: table-header-group; }
}
`;
