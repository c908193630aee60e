import type { Card, CardForm } from "./content.ts";
import { cardHigh, GAP, thirdsOf } from "./measure.ts";

/*
 * Cards stand in rows of three thirds, in order. How each is set is chosen for all of a unit together, so that they take
 * the least height: words under their pictures, or beside them where a third would stay empty.
 */

/** Points above which a row of cards is better two. */
const TALL = 290;

function formsOf({ pictures, lines }: Card): CardForm[] {
  const thirds = Math.min(
    3,
    Math.max(
      1,
      pictures.reduce((sum, each) => sum + thirdsOf(each), 0),
    ),
  );
  const spans = ([1, 2, 3] as const).filter((span) => span >= thirds);
  const below = spans.map((span) => ({ span, beside: false }));
  if (pictures.length === 0 || lines.length === 0) return below;
  const widest = Math.max(...pictures.map(thirdsOf));
  const beside = ([2, 3] as const).filter((span) => span > widest).map((span) => ({ span, beside: true }));
  return [...below, ...beside];
}

interface Arranged {
  height: number;
  forms: CardForm[];
}

/** Cards with the forms that together stand least high. */
export function arranged(cards: readonly Card[]): Card[] {
  const known = new Map<string, Arranged>();
  /** The best from card `at` on, which begins a row because `left` thirds of the row before do not hold it. */
  const best = (at: number, left: number): Arranged => {
    if (at >= cards.length) return { height: 0, forms: [] };
    const key = `${at} ${left}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let least: Arranged = { height: Number.POSITIVE_INFINITY, forms: [] };
    const row = (next: number, free: number, high: number, forms: CardForm[]): void => {
      if (forms.length > 0) {
        const rest = best(next, free);
        // A row is never broken over two pages: a tall one leaves a page half empty.
        const height = high + Math.max(0, high - TALL) * 2 + GAP.card + rest.height;
        if (height < least.height - 0.01) least = { height, forms: [...forms, ...rest.forms] };
      }
      const card = cards[next];
      if (card === undefined) return;
      for (const form of formsOf(card)) {
        if (form.span > free || (forms.length === 0 && form.span <= left)) continue;
        const own = cardHigh({ ...card, form });
        row(next + 1, free - form.span, Math.max(high, own), [...forms, form]);
      }
    };
    row(at, 3, 0, []);
    known.set(key, least);
    return least;
  };
  const { forms } = best(0, 0);
  return cards.map((card, i) => {
    const form = forms[i];
    return form === undefined ? card : { ...card, form };
  });
}
