/**
 * Whole units for each part so that they add up to exactly the units for the whole: each part is rounded
 * down, and the units still missing go to the largest remainders (the first of equals).
 * `unit` is the size of one unit; parts are not negative.
 */
export function wholeShares(parts: readonly number[], unit: number): { parts: number[]; whole: number } {
  const whole = Math.round(parts.reduce((sum, part) => sum + part, 0) / unit);
  const floors = parts.map((part) => Math.floor(part / unit));
  const byRemainder = parts
    .map((part, index) => ({ index, remainder: part / unit - Math.floor(part / unit) }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  let missing = whole - floors.reduce((sum, floor) => sum + floor, 0);
  for (const { index } of byRemainder) {
    if (missing <= 0) break;
    floors[index] = (floors[index] ?? 0) + 1;
    missing -= 1;
  }
  return { parts: floors, whole };
}
