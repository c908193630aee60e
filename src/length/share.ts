/** A fraction as it is written: `3/4`, `3 1/3`, `2`. */
export function formatShare(n: number, d: number): string {
  const whole = Math.floor(n / d);
  const rest = n % d;
  if (rest === 0) return String(whole);
  return `${whole > 0 ? `${whole} ` : ""}${rest}/${d}`;
}
