/** Hundredths of the currency as `$12.50` or `CHF 12.50`, with the sign or code the maker wrote. */
export function money(hundredths: number, currency: string): string {
  const amount = (hundredths / 100).toFixed(2);
  return /\p{L}$/u.test(currency) ? `${currency} ${amount}` : `${currency}${amount}`;
}
