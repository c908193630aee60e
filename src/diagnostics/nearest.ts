/** Letters to add, drop, change or swap to get from `a` to `b`; gives up past `most`. */
function distance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let best = Math.min(change, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      if (a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, (before[j - 2] ?? 0) + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? most + 1;
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[\s_-]/g, "");
}

/** The option most likely meant by a misspelt word, or null when none is near. First listed wins a tie. */
export function nearest(word: string, options: readonly string[]): string | null {
  const wanted = plain(word.slice(0, 60));
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const option of options) {
    const found = distance(wanted, plain(option), bestDistance);
    if (found < bestDistance) [best, bestDistance] = [option, found];
  }
  return best;
}
