/** Money in minor units as people read it, with the currency if there is one: `123.40 EUR`. */
export function money(minor: number, currency: string): string {
  return `${(minor / 100).toFixed(2)} ${currency}`.trim();
}
