import { DAY, NIGHT } from "../paper/inks.ts";
import { FACES } from "./faces.ts";
import { PRINT_STYLE } from "./print-style.ts";

function asVariables(colours: Readonly<Record<keyof typeof DAY, string>>): string {
  return Object.entries(colours)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(" ");
}

const face = (family: string, weight: number, data: string): string =>
  `@font-face { font-family: "${family}"; font-weight: ${weight}; src: url(data:font/woff2;base64,${data}) format("woff2"); }`;

/** The faces that travel in the page, so that it breaks and prints alike on every machine. */
const OWN_FACES = [
  face("Crossgrain Text", 400, FACES.text),
  face("Crossgrain Text", 700, FACES.textBold),
  face("Crossgrain Title", 700, FACES.title),
].join("\n");

/** Everything but the running headers, which depend on the plan. */
export const BOOK_STYLE = `
${OWN_FACES}
:root { ${asVariables(DAY)} color-scheme: light dark; }
@media screen and (prefers-color-scheme: dark) { :root { ${asVariables(NIGHT)} } }
*, *::before, *::after { box-sizing: border-box; }
html { scroll-behavior: smooth; scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--ground); color: var(--ink); line-height: 1.5;
  font-family: "Crossgrain Text", system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif; }
h1, h2, .letter { font-family: "Crossgrain Title", "Iowan Old Style", "Palatino Linotype", Palatino, "Book Antiqua", Georgia,
  "DejaVu Serif", serif; }
h1, h2, h3, p, ul, ol, dl, dd, table, figure { margin: 0; }
ul, ol { padding-left: 1.2rem; }
body { overflow-wrap: break-word; }
bdi, .said, .note, dd, h1, h2, h3, p, .plain-list li, .then li, label { overflow-wrap: anywhere; }
td:not(.ticks) .said { overflow-wrap: break-word; }
td.wordy .said { overflow-wrap: anywhere; }
a { color: var(--accent); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 3px; border-radius: 4px; }
.heard { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.skip { position: absolute; left: 1rem; top: -6rem; z-index: 2; padding: .8rem 1.2rem; background: var(--sheet); }
.skip:focus { top: 1rem; }
.page { max-width: 90rem; margin: 0 auto; padding: 0 clamp(.9rem, 3vw, 2.5rem) 4rem; }

.cover { display: grid; gap: 1.5rem 3rem; padding: clamp(1.5rem, 5vw, 4rem) 0 2.5rem; align-items: center; }
.cover .over { letter-spacing: .14em; text-transform: uppercase; font-size: .8rem; color: var(--accent); font-weight: 600; }
h1 { font-size: clamp(2rem, 6vw, 3.6rem); line-height: 1.08; font-weight: 600; letter-spacing: -.01em; margin: .3rem 0 1.3rem; }
h1.long { font-size: 1.4rem; line-height: 1.25; }
.cover-picture svg { display: block; width: 100%; height: auto; max-height: 30rem; }
.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(7.2rem, 1fr)); gap: .7rem 1.2rem; }
.facts dt { font-size: .78rem; color: var(--quiet); }
.facts dd { font-weight: 600; }
.facts > div:last-child { grid-column: span 2; }
.bar { display: flex; flex-wrap: wrap; gap: .6rem; margin-top: 1.6rem; }
button { font: inherit; color: var(--accent); background: var(--sheet); border: 1.5px solid var(--accent);
  border-radius: 8px; padding: .6rem 1.1rem; min-height: 44px; cursor: pointer; }
nav { margin: 0 0 1rem; padding: 1.2rem 0; border-top: 2px dashed var(--line); }
nav h2 { font-size: 1rem; margin-bottom: .4rem; }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .1rem 1.4rem; }
nav a { display: inline-flex; align-items: center; gap: .45rem; min-height: 44px; }

section { background: var(--sheet); border-radius: 14px; padding: clamp(1rem, 3vw, 2.4rem); margin-top: 1.4rem;
  border: 1px solid var(--line); }
.over { font-size: .8rem; color: var(--quiet); }
h2 { font-size: clamp(1.45rem, 3.4vw, 2rem); line-height: 1.2; font-weight: 600; padding-bottom: .7rem; margin-bottom: 1rem;
  border-bottom: 2px dashed var(--line); }
h2 .swatch { width: 1.35rem; height: 1.35rem; margin-right: .6rem; vertical-align: -.15rem; }
h3 { font-size: 1.05rem; line-height: 1.3; margin: 1.6rem 0 .5rem; }
.lead { font-size: 1.08rem; max-width: 46rem; }
.quiet { color: var(--quiet); font-size: .92rem; margin-top: .8rem; max-width: 46rem; }
.plain-list { max-width: 52rem; }
.plain-list li + li { margin-top: .35rem; }
.swatch { flex: none; vertical-align: -.15em; margin-right: .45rem; }
.note { display: block; font-size: .86rem; font-weight: 400; color: var(--quiet); }

.cautions { display: grid; gap: 1rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 12.5rem), 1fr)); }
.caution { background: var(--alarmWash); border-left: 5px solid var(--alarm); border-radius: 4px 10px 10px 4px; padding: 1rem 1.2rem; }
.caution h3 { margin: 0 0 .5rem; color: var(--alarm); }
.caution li + li { margin-top: .35rem; }

table { width: 100%; border-collapse: collapse; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-weight: 600; padding-bottom: .4rem; }
th, td { text-align: left; vertical-align: top; padding: .5rem .7rem .5rem 0; border-top: 1px solid var(--line); }
thead th, thead td { border-top: 0; font-size: .8rem; color: var(--quiet); font-weight: 500; vertical-align: bottom; }
tbody th { font-weight: 600; }
th .said, td .said { display: inline; min-width: 0; }
.number { text-align: right; }
.sum > * { border-top: 2px solid var(--ink); font-weight: 600; }
.ticks { width: 44px; padding: 0 .6rem 0 0; }
.tick-cell { display: flex; align-items: flex-start; min-width: 44px; min-height: 44px; padding-top: .4rem; }
.tick { flex: none; appearance: none; width: 1.85rem; height: 1.85rem; margin: 0; display: inline-grid; place-content: center;
  background: var(--sheet); border: 2px solid var(--ink); border-radius: 7px; cursor: pointer; }
/* An empty box holds nothing at all: where colours are forced a hidden mark would be seen. */
.tick:checked::before { content: ""; width: .5rem; height: .95rem; margin-top: -.2rem; border: solid transparent; border-width: 0 .22rem .22rem 0;
  transform: rotate(42deg); }
.tick:checked { background: var(--accent); border-color: var(--accent); }
.tick:checked::before { border-color: var(--sheet); }

.drawing { overflow-x: auto; background: #fff; border-radius: 8px; color: #1d2733; }
.drawing svg { display: block; width: 100%; min-width: 36rem; max-width: 60rem; height: auto; margin: 0 auto; }
.full-size { overflow-x: auto; background: #fff; color: #1d2733; border: 1px solid var(--line); }
.full-size svg { display: block; max-width: none; }
.part-of { margin-top: 1rem; }
.part-of > * + * { margin-top: 1rem; }
.two { columns: 2 22rem; column-gap: 2.4rem; }
.two > li, .two .step { break-inside: avoid; }
.beside { display: grid; gap: 1rem 2rem; grid-template-columns: minmax(0, 1fr); }
.beside .drawing svg { min-width: 0; }
.cards { display: grid; gap: 1.2rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr)); align-items: start; }
.card-pictures { display: flex; flex-wrap: wrap; gap: .5rem; background: #fff; color: #1d2733; border-radius: 6px; }
.card-pictures figure { flex: 1 1 14rem; }
.card-pictures svg { display: block; width: 100%; height: auto; max-width: 30rem; }
.card-pictures figcaption { font-size: .8rem; font-weight: 600; }
.card-words { margin-top: .4rem; }
.card-words .inset { padding-left: .9rem; }
.heading-tick { display: inline-flex; gap: .7rem; align-items: flex-start; cursor: pointer; }
.label-like { font-weight: 600; }
.cover-line { font-size: 1.08rem; margin-bottom: .3rem; }
.cover-foot { font-size: .86rem; color: var(--quiet); grid-column: 1 / -1; }
.steps { list-style: none; padding: 0; }
.step { display: flex; gap: .9rem; padding: .8rem 0; border-top: 1px solid var(--line); }
.step .told { flex: 1; min-width: 0; }
.step label { display: block; min-height: 1.85rem; padding: .1rem 0 .25rem; font-weight: 600; cursor: pointer; }
.step.light label, .step.light .label-like { font-weight: 400; }
.step .count { color: var(--accent); }
.then { padding-left: 1.05rem; }
.then li::marker { content: "→  "; color: var(--quiet); }
.part { margin-top: .45rem; }
.where { font-size: .86rem; color: var(--quiet); }
.part .where { color: var(--ink); font-weight: 600; }
.warning { margin-top: .5rem; padding: .4rem .7rem; font-size: .9rem; background: var(--alarmWash); border-left: 4px solid var(--alarm); }
.step:has(> .tick:checked) .what { text-decoration: line-through; text-decoration-thickness: 1px; }
.steps-title { margin-bottom: 0; }
.progress { font-size: .88rem; color: var(--quiet); margin-bottom: .5rem; min-height: 1.3em; }

.labels { list-style: none; padding: 0 1.5px 1.5px 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr)); }
.label { display: flex; gap: .9rem; align-items: flex-start; min-height: 7.2rem; padding: .8rem; border: 1.5px dashed var(--quiet); margin: 0 -1.5px -1.5px 0;
  overflow: hidden; }
.label > div { min-width: 0; }
.letter { font-size: 2.9rem; line-height: 1; min-width: 2.2rem; font-weight: 600; overflow-wrap: normal; }
.label .fabric { font-size: .86rem; }
.label .size { font-weight: 600; }
.label .use { font-size: .82rem; color: var(--quiet); line-height: 1.3; }
.label .fabric, .label .use { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 3; overflow: hidden; }
.terms { display: grid; gap: .8rem 2.4rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr)); }
.terms dt { font-weight: 600; }

@media (min-width: 46rem) { .cover { grid-template-columns: minmax(0, 1fr) minmax(0, 1.05fr); } }
@media screen and (min-width: 68rem) {
  .beside { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); align-items: start; }
  .card.wide { grid-column: span 2; }
  .card.aside { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 1rem; }
}
@media screen and (max-width: 42rem) {
  section { border-radius: 0; margin-left: calc(-1 * clamp(.9rem, 3vw, 2.5rem)); margin-right: calc(-1 * clamp(.9rem, 3vw, 2.5rem));
    border-width: 1px 0; }
  #buy thead, #waste thead { display: block; position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  #buy table, #waste table, #buy tbody, #waste tbody { display: block; }
  #buy caption, #waste caption { display: block; }
  #buy tr, #waste tr { display: block; position: relative; padding: .7rem 0; border-top: 1px solid var(--line); }
  #buy tr { padding-left: 3.2rem; }
  #buy .sum > *, #waste .sum > *, #buy th, #buy td, #waste th, #waste td { display: block; border: 0; padding: .1rem 0; }
  #buy td:not(.ticks), #waste td { display: flex; justify-content: space-between; gap: 1rem; text-align: right; }
  #buy td:not(.ticks)::before, #waste td::before { content: attr(data-heading); color: var(--quiet); text-align: left; font-weight: 400; }
  #buy .ticks { position: absolute; left: 0; top: .5rem; }
  #buy .sum td:has(.said:empty) { display: none; }
  #buy td:not(.ticks) { flex-wrap: wrap; row-gap: 0; }
  #buy td:not(.ticks) .said { overflow-wrap: break-word; }
  #buy td:not(.ticks) .note { flex-basis: 100%; }
  .labels { grid-template-columns: 1fr; }
}

${PRINT_STYLE}`;
