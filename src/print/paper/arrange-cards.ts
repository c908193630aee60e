import type { Card, CardForm } from "../../content/book/content.ts";
import { COLUMNS, cardHigh, columnsFor, GAP, pictureHigh, pictureRows } from "./measure.ts";

/*
 * Cards stand in rows of narrow columns, in order. How each is set is chosen for all of them together, so that they take
 * the least height: words under their pictures, or beside them where columns would stay empty.
 */

/** Columns that words are set in: narrower ones read badly, wider ones where there is room. */
const WORDS = [6, 8, 10, 12, 16] as const;

/** Points above which a row of cards is better two. */
const TALL = 260;

interface Formed {
  form: CardForm;
  height: number;
}

/** Numbers of columns at which the pictures of a card fall into fewer rows than with one less. */
function pictureSpans(card: Card): number[] {
  const widest = Math.max(...card.pictures.map(columnsFor));
  const rowsAt = (span: number): number => pictureRows(card, span).length;
  const spans: number[] = [];
  for (let span = widest; span <= COLUMNS; span += 1)
    if (span === widest || rowsAt(span) < rowsAt(span - 1)) spans.push(span);
  return spans;
}

/** Ways to set a card, none both wider and higher than another. */
function formsOf(card: Card): Formed[] {
  const { pictures, lines, form: given } = card;
  if (given !== undefined) return [{ form: given, height: cardHigh(card) }];
  const wide = (span: number): CardForm[] =>
    [span, ...WORDS, COLUMNS].filter((own) => own >= span).map((own) => ({ span: own, beside: null }));
  const forms =
    pictures.length === 0
      ? wide(WORDS[1])
      : pictureSpans(card).flatMap((span): CardForm[] => {
          if (lines.length === 0) return [{ span, beside: null }];
          const beside = [...WORDS, COLUMNS - span]
            .filter((words) => words >= WORDS[0] && span + words <= COLUMNS)
            .map((words) => ({ span: span + words, beside: span }));
          return [...wide(Math.max(span, WORDS[0])), ...beside];
        });
  const formed = forms.map((form) => ({ form, height: cardHigh({ ...card, form }) }));
  return formed.filter(
    (one, i) =>
      !formed.some(
        (other, j) =>
          other.form.span <= one.form.span &&
          other.height <= one.height &&
          (j < i || other.form.span < one.form.span || other.height < one.height),
      ),
  );
}

interface Arranged {
  height: number;
  forms: CardForm[];
}

/** Height of the pictures of a card that stand above its last row of them. */
function beforeLastRow(card: Card, span: number): number {
  const rows = pictureRows(card, span).map((row) => Math.max(...row.map(pictureHigh)));
  return rows.slice(0, -1).reduce((sum, high) => sum + high, 0);
}

/** Cards with the forms that together stand least high. */
export function arranged(cards: readonly Card[]): Card[] {
  const ways = cards.map(formsOf);
  const known = new Map<string, Arranged>();
  /** The best from card `at` on, which begins a row because `left` columns of the row before do not hold it. */
  const best = (at: number, left: number): Arranged => {
    if (at >= cards.length) return { height: 0, forms: [] };
    const key = `${at} ${left}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let least: Arranged = { height: Number.POSITIVE_INFINITY, forms: [] };
    /** `above`: height of pictures in the row that go on below, beside which a card would be read too early. */
    const row = (next: number, free: number, high: number, forms: CardForm[], above = 0): void => {
      if (forms.length > 0) {
        const rest = best(next, free);
        // A row is never broken over two pages: a tall one leaves a page empty below.
        const height = high + Math.max(0, high - TALL) / 2 + GAP.card + rest.height;
        if (height < least.height - 0.01) least = { height, forms: [...forms, ...rest.forms] };
      }
      const card = cards[next];
      if (card === undefined || high >= least.height) return;
      for (const { form, height } of ways[next] ?? []) {
        // One that would fit beside the last is set wider, so that it begins a row.
        const span = forms.length === 0 ? Math.max(form.span, left + 1) : form.span;
        if (span > free) continue;
        const own = span === form.span ? height : cardHigh({ ...card, form: { ...form, span } });
        if (above > 0 && Math.max(high, own) - own < above) continue;
        const set: CardForm = above > 0 ? { ...form, span, low: true } : { ...form, span };
        const goesOn = Math.max(above, beforeLastRow(card, form.beside ?? span));
        row(next + 1, free - span, Math.max(high, own), [...forms, set], goesOn);
      }
    };
    row(at, COLUMNS, 0, []);
    known.set(key, least);
    return least;
  };
  const { forms } = best(0, 0);
  return cards.map((card, i) => {
    const form = forms[i];
    return form === undefined ? card : { ...card, form };
  });
}
